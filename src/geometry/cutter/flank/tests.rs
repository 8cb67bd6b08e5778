//! Flanks against printed values.

use super::*;

const FLOOR: f64 = 24.0;
const TIP: f64 = 27.0;

fn flank(method: Method, cutter: f64) -> Flank {
    Flank::new(method, FLOOR, TIP, cutter).unwrap()
}

fn degrees(flank: &Flank, radius: f64) -> f64 {
    flank.intrusion_rad(radius).unwrap().to_degrees()
}

fn assert_digits(value: f64, printed: f64, half_digit: f64) {
    assert!(
        (value - printed).abs() <= half_digit,
        "{value} printed as {printed}"
    );
}

/// Own table for floor 24, tip 27: cutter, Rc, s, rt, least gap.
#[test]
fn sizes_of_four_cutters() {
    let rows = [
        (1.5, 25.5, 3.3723, 25.4558, 6.745),
        (2.0, 26.0, 4.4117, 25.9230, 8.823),
        (3.0, 27.0, 6.3794, 26.8328, 12.759),
        (4.0, 28.0, 8.2132, 27.7128, 16.426),
    ];
    for (cutter, centre, half, tangent, least) in rows {
        let flank = flank(Method::OffsetFeed, cutter);
        assert_digits(flank.centre_radius(), centre, 1e-12);
        assert_digits(flank.half_angle_rad().to_degrees(), half, 5e-5);
        assert_digits(flank.tangent_radius(), tangent, 5e-5);
        assert_digits(flank.least_gap_rad().to_degrees(), least, 5.1e-4);
        assert_eq!(
            flank.straight_length() > 0.0,
            cutter <= (TIP * TIP - FLOOR * FLOOR) / 48.0
        );
    }
    // Largest cutter that leaves a straight flank: (tip^2 - floor^2) / (2 floor).
    assert!(flank(Method::OffsetFeed, 3.1875).straight_length().abs() < 1e-12);
}

/// The same table: offset feed, intrusion in degrees and in mm.
#[test]
fn offset_feed_at_three_radii() {
    let rows = [
        (
            24.2,
            [
                (1.5, 1.646, 0.695),
                (2.0, 2.420, 1.022),
                (3.0, 3.965, 1.675),
                (4.0, 5.464, 2.308),
            ],
        ),
        (
            25.0,
            [
                (1.5, 0.163, 0.071),
                (2.0, 0.5185, 0.226),
                (3.0, 1.447, 0.631),
                (4.0, 2.481, 1.083),
            ],
        ),
        (
            25.5,
            [
                (1.5, 0.0, 0.0),
                (2.0, 0.1017, 0.045),
                (3.0, 0.704, 0.313),
                (4.0, 1.514, 0.674),
            ],
        ),
    ];
    for (radius, cells) in rows {
        for (cutter, angle, length) in cells {
            let flank = flank(Method::OffsetFeed, cutter);
            assert_digits(degrees(&flank, radius), angle, 5.1e-4);
            assert_digits(flank.intrusion(radius).unwrap(), length, 5.1e-4);
        }
    }
}

/// The same table: edge angle at the tip by the centre-line feed, and where the straight flank begins.
#[test]
fn centre_feed_at_the_tip() {
    let rows = [
        (1.5, 3.1847, 25.544),
        (2.0, 4.2480, 26.077),
        (3.0, 6.3695, 27.166),
        (4.0, 8.0773, 28.284),
    ];
    for (cutter, edge, straight) in rows {
        let flank = flank(Method::CentreFeed, cutter);
        assert_digits(flank.centre_edge_rad(TIP).to_degrees(), edge, 5.1e-5);
        assert_digits(flank.straight_from(), straight, 5.1e-4);
        assert_digits(flank.least_gap_rad().to_degrees(), 2.0 * edge, 1.1e-4);
    }
}

/// The same table: what too much the centre-line feed removes, cutter radius 2.
#[test]
fn centre_feed_by_reference_radius() {
    let by_tip = flank(Method::CentreFeed, 2.0);
    let by_middle = by_tip.referred_to(26.5).unwrap();
    let tangent = by_tip.tangent_radius();
    for (radius, length) in [
        (25.5, -0.028),
        (tangent, -0.074),
        (26.5, -0.037),
        (27.0, 0.0),
    ] {
        assert_digits(by_tip.intrusion(radius).unwrap(), length, 5.1e-4);
    }
    for (radius, length) in [(25.5, 0.008), (tangent, -0.038), (26.5, 0.0), (27.0, 0.038)] {
        assert_digits(by_middle.intrusion(radius).unwrap(), length, 5.1e-4);
    }
}

/// The same table: plunge and turn, edge angle at the tip and what it is short of s.
#[test]
fn plunge_and_turn_at_the_tip() {
    for (cutter, edge, short) in [
        (1.5, 0.0, 3.372),
        (2.0, 3.7462, 0.666),
        (3.0, 6.3695, 0.010),
        (4.0, 8.0773, 0.136),
    ] {
        let flank = flank(Method::PlungeAndTurn, cutter);
        assert_digits(flank.arc_rad(TIP).to_degrees(), edge, 5.1e-5);
        assert_digits(degrees(&flank, TIP), short, 5.1e-4);
        if flank.tangent_radius() < TIP {
            assert!(degrees(&flank, flank.tangent_radius()).abs() < 1e-5);
        }
    }
    assert_eq!(flank(Method::PlungeAndTurn, 1.5).plunge_radii(), vec![25.5]);
    assert_eq!(
        flank(Method::PlungeAndTurn, 1.0).plunge_radii(),
        vec![25.0, 26.0, 27.0]
    );
}

/// Own check values for lugs standing inward: floor 27, tip 24, cutter 2.
#[test]
fn inward_lugs() {
    let flank = Flank::new(Method::OffsetFeed, 27.0, 24.0, 2.0).unwrap();
    assert_digits(flank.centre_radius(), 25.0, 1e-12);
    assert_digits(flank.half_angle_rad().to_degrees(), 4.5886, 5.1e-5);
    assert_digits(flank.tangent_radius(), 24.9199, 5.1e-5);
    assert_digits(degrees(&flank, 26.0), 0.6953, 1e-4);
    assert_digits(degrees(&flank, 26.5), 1.6435, 1e-4);
    assert_digits(degrees(&flank, 24.5), 0.0, 1e-15);
    assert!((flank.straight_length() - 0.9199).abs() < 1e-4);
}

/// Own check values for the cutter pointing at the axis.
#[test]
fn radial_cutter() {
    for (cutter, left) in [(2.0, 0.083), (3.0, 0.187), (4.0, 0.331)] {
        assert_digits(
            flank(Method::RadialOnCentre, cutter).floor_left(),
            left,
            5.1e-4,
        );
    }
    let least = flank(Method::RadialOffset, 2.0)
        .least_gap_rad()
        .to_degrees();
    assert_digits(least, 9.462, 5.1e-4);
    let on_centre = flank(Method::RadialOnCentre, 2.0)
        .least_gap_rad()
        .to_degrees();
    assert_digits(on_centre, 9.527, 5.1e-4);
    assert_digits(degrees(&flank(Method::RadialOffset, 2.0), 24.2), 0.0, 1e-15);
}

#[test]
fn refusals_name_the_way_out() {
    assert!(matches!(
        Flank::new(Method::OffsetFeed, 24.0, 24.0, 2.0),
        Err(CutterError::Radii { .. })
    ));
    assert!(matches!(
        Flank::new(Method::OffsetFeed, 24.0, f64::NAN, 2.0),
        Err(CutterError::Radii { .. })
    ));
    assert_eq!(
        Flank::new(Method::RadialOffset, 27.0, 24.0, 2.0),
        Err(CutterError::RadialInside)
    );
    assert!(matches!(
        Flank::new(Method::OffsetFeed, 6.0, 5.0, 4.0),
        Err(CutterError::TooLarge { .. })
    ));
    assert!(
        flank(Method::OffsetFeed, 2.0)
            .check_gap(9_f64.to_radians())
            .is_ok()
    );
    assert!(
        flank(Method::OffsetFeed, 2.0)
            .check_gap(8_f64.to_radians())
            .is_err()
    );
    assert_eq!(flank(Method::OffsetFeed, 2.0).intrusion_rad(28.0), None);
    assert!(flank(Method::CentreFeed, 2.0).referred_to(28.0).is_err());
}
