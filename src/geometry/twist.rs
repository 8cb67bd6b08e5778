//! Two sets of sectors about one axis, one of them turning: when they meet, and how far they stand over each other.

use std::f64::consts::TAU;

use super::sector::{AnnularSector, Interval, overlap_length, wrapped};

/// Angles nearer than this are the same, radians.
const SAME_ANGLE: f64 = 1e-12;

/// The first meeting of a moving sector with a fixed one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// How far it has turned, radians, with the sign of the twist.
    pub turn_rad: f64,
    /// Index of the moving sector.
    pub moving: usize,
    /// Index of the fixed sector.
    pub fixed: usize,
}

/// Where the moving sectors, turned from 0 to `twist_rad` (clockwise positive), first meet a fixed one; sectors that
/// overlap from the start meet at 0. `None` when they pass the whole twist free.
#[must_use]
pub fn first_contact(moving: &[Interval], fixed: &[Interval], twist_rad: f64) -> Option<Contact> {
    earliest(moving.len(), fixed.len(), twist_rad, |one, two| {
        Some((moving[one], fixed[two]))
    })
}

/// The same for sectors with radii: only those that overlap radially can meet.
#[must_use]
pub fn first_contact_of_sectors(
    moving: &[AnnularSector],
    fixed: &[AnnularSector],
    twist_rad: f64,
) -> Option<Contact> {
    earliest(moving.len(), fixed.len(), twist_rad, |one, two| {
        let (part, other) = (&moving[one], &fixed[two]);
        let shares_radii = part.inner.max(other.inner) < part.outer.min(other.outer);
        shares_radii.then_some((part.interval, other.interval))
    })
}

fn earliest(
    moving: usize,
    fixed: usize,
    twist_rad: f64,
    pair: impl Fn(usize, usize) -> Option<(Interval, Interval)>,
) -> Option<Contact> {
    (0..moving)
        .flat_map(|one| (0..fixed).map(move |two| (one, two)))
        .filter_map(|(one, two)| {
            let (part, other) = pair(one, two)?;
            let turn = room(part, other, twist_rad);
            (turn <= twist_rad.abs() + SAME_ANGLE).then_some(Contact {
                turn_rad: turn.min(twist_rad.abs()).copysign(twist_rad),
                moving: one,
                fixed: two,
            })
        })
        .min_by(|a, b| a.turn_rad.abs().total_cmp(&b.turn_rad.abs()))
}

/// How far a sector may turn before it meets another, in the direction of the twist.
fn room(part: Interval, other: Interval, twist_rad: f64) -> f64 {
    if part.overlap_length(other) > 0.0 {
        return 0.0;
    }
    let way = if twist_rad >= 0.0 {
        wrapped(other.start_rad - part.end_rad())
    } else {
        wrapped(part.start_rad - other.end_rad())
    };
    // Two that touch are not a whole turn apart because of rounding.
    if way >= TAU - SAME_ANGLE { 0.0 } else { way }
}

/// The angle over which moving sectors stand over fixed ones when turned by `turn_rad`, radians.
#[must_use]
pub fn engaged_rad(moving: &[Interval], fixed: &[Interval], turn_rad: f64) -> f64 {
    overlap_length(&shifted(moving, turn_rad), fixed)
}

/// Turn and engaged angle at `steps` equal steps of the twist, the first at 0 and the last at the full twist.
#[must_use]
pub fn engagement(
    moving: &[Interval],
    fixed: &[Interval],
    twist_rad: f64,
    steps: u32,
) -> Vec<(f64, f64)> {
    let steps = steps.max(1);
    (0..=steps)
        .map(|step| {
            let turn = twist_rad * f64::from(step) / f64::from(steps);
            (turn, engaged_rad(moving, fixed, turn))
        })
        .collect()
}

/// The sectors turned, clockwise positive.
#[must_use]
pub fn shifted(moving: &[Interval], turn_rad: f64) -> Vec<Interval> {
    moving
        .iter()
        .map(|interval| interval.shifted(turn_rad))
        .collect()
}

/// Everything that a sector passes over while it turns from 0 to `twist_rad`.
#[must_use]
pub fn swept(interval: Interval, twist_rad: f64) -> Interval {
    let start_rad = wrapped(interval.start_rad + twist_rad.min(0.0));
    Interval {
        start_rad,
        extent_rad: (interval.extent_rad + twist_rad.abs()).min(TAU),
    }
}

/// The angles that a disc, a pin or a hole, covers at the radii from `inner` to `outer`; `None` where it does not
/// reach them.
#[must_use]
pub fn interval_of_disc(
    circle: f64,
    clock_rad: f64,
    disc: f64,
    inner: f64,
    outer: f64,
) -> Option<Interval> {
    let (inner, outer) = (inner.max(circle - disc), outer.min(circle + disc));
    if inner > outer || !(circle > 0.0 && disc > 0.0) {
        return None;
    }
    if disc >= circle {
        return Some(Interval::full_turn());
    }
    // It is widest where a radial line touches it, or as near to there as the radii reach.
    let tangent = ((circle - disc) * (circle + disc)).sqrt();
    let widest = tangent.clamp(inner, outer);
    let cosine = (widest * widest + (circle - disc) * (circle + disc)) / (2.0 * widest * circle);
    let half = cosine.clamp(-1.0, 1.0).acos();
    Interval::new(clock_rad - half, 2.0 * half)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn degrees(list: &[(f64, f64)]) -> Vec<Interval> {
        list.iter()
            .map(|(start, extent)| Interval::from_degrees(*start, *extent).unwrap())
            .collect()
    }

    #[test]
    fn the_first_of_several_meetings_either_way() {
        let lugs = degrees(&[(0.0, 40.0), (120.0, 40.0)]);
        let stops = degrees(&[(75.0, 5.0), (190.0, 10.0)]);
        let clockwise = first_contact(&lugs, &stops, 1.0).unwrap();
        assert!((clockwise.turn_rad.to_degrees() - 30.0).abs() < 1e-9);
        assert_eq!((clockwise.moving, clockwise.fixed), (1, 1));
        let back = first_contact(&lugs, &stops, -1.0).unwrap();
        assert!((back.turn_rad.to_degrees() + 40.0).abs() < 1e-9);
        assert_eq!((back.moving, back.fixed), (1, 0));
        assert_eq!(first_contact(&lugs, &stops, 0.5), None);
        let just = first_contact(&lugs, &stops, 30_f64.to_radians());
        assert!(just.is_some());
    }

    #[test]
    fn meeting_from_the_start_and_by_touch() {
        let lugs = degrees(&[(350.0, 20.0)]);
        assert!(
            first_contact(&lugs, &degrees(&[(5.0, 20.0)]), 1.0)
                .unwrap()
                .turn_rad
                .abs()
                < 1e-15
        );
        assert!(
            first_contact(&lugs, &degrees(&[(10.0, 20.0)]), 1.0)
                .unwrap()
                .turn_rad
                .abs()
                < 1e-12
        );
        assert_eq!(first_contact(&lugs, &degrees(&[(10.0, 20.0)]), -1.0), None);
    }

    #[test]
    fn a_clash_in_mid_travel_is_not_stepped_over() {
        // Free at entry and at lock, but a pin half a degree wide stands in between.
        let lug = degrees(&[(0.0, 10.0)]);
        let pin = degrees(&[(30.2, 0.5)]);
        let twist = 60_f64.to_radians();
        assert!(engaged_rad(&lug, &pin, 0.0) <= 0.0 && engaged_rad(&lug, &pin, twist) <= 0.0);
        let contact = first_contact(&lug, &pin, twist).unwrap();
        assert!((contact.turn_rad.to_degrees() - 20.2).abs() < 1e-9);
        assert!(swept(lug[0], twist).overlap_length(pin[0]) > 0.0);
    }

    #[test]
    fn engagement_grows_from_entry_to_lock() {
        let lugs = degrees(&[(70.0, 40.0), (190.0, 40.0), (310.0, 40.0)]);
        let ears = degrees(&[(0.0, 60.0), (120.0, 60.0), (240.0, 60.0)]);
        let steps = engagement(&lugs, &ears, 60_f64.to_radians(), 6);
        let engaged: Vec<f64> = steps.iter().map(|(_, angle)| angle.to_degrees()).collect();
        for (found, expected) in engaged
            .iter()
            .zip([0.0, 0.0, 30.0, 60.0, 90.0, 120.0, 120.0])
        {
            assert!((found - expected).abs() < 1e-9, "{engaged:?}");
        }
        assert!((swept(lugs[0], -1.0).start_rad - (70_f64.to_radians() - 1.0)).abs() < 1e-12);
    }

    #[test]
    fn only_sectors_at_the_same_radii_meet() {
        let sector = |inner, outer, start| {
            AnnularSector::new(inner, outer, Interval::from_degrees(start, 10.0).unwrap()).unwrap()
        };
        let lug = [sector(24.0, 27.0, 0.0)];
        assert_eq!(
            first_contact_of_sectors(&lug, &[sector(27.5, 30.0, 20.0)], 1.0),
            None
        );
        assert!(first_contact_of_sectors(&lug, &[sector(26.5, 30.0, 20.0)], 1.0).is_some());
    }

    #[test]
    fn the_angle_a_pin_covers() {
        let whole = interval_of_disc(20.0, 1.0, 2.0, 10.0, 30.0).unwrap();
        assert!((whole.extent_rad - 2.0 * 0.1_f64.asin()).abs() < 1e-12);
        let beyond = interval_of_disc(20.0, 1.0, 2.0, 21.0, 30.0).unwrap();
        let half = ((441.0 + 400.0 - 4.0) / (2.0 * 21.0 * 20.0_f64)).acos();
        assert!((beyond.extent_rad - 2.0 * half).abs() < 1e-12);
        assert!((beyond.middle_rad() - 1.0).abs() < 1e-12);
        assert_eq!(interval_of_disc(20.0, 1.0, 2.0, 22.5, 30.0), None);
    }
}
