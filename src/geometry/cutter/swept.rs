//! The gap as the union of the cutter's circles along its real path.

use super::{CutterError, Flank, Method, Side};
use crate::geometry::{CONTACT, Point, Segment};

/// The way of the cutter's centre for a gap of `gap_rad` about the x axis of the work: both edges, and the turning
/// between them. Empty for a cutter that points at the axis, which sweeps no circles in the plan.
///
/// # Errors
/// [`CutterError::GapTooNarrow`].
pub fn centre_path(flank: &Flank, gap_rad: f64) -> Result<Vec<Segment>, CutterError> {
    flank.check_gap(gap_rad)?;
    let edge = gap_rad / 2.0;
    let away = match flank.side() {
        Side::Outward => 4.0 * (flank.centre_radius() + flank.cutter()),
        Side::Inward => 0.0,
    };
    let path = match flank.method() {
        Method::CentreFeed => {
            // The edge stands at the drawing's angle where the drawing's radius is.
            let at = edge - flank.least_gap_rad() / 2.0;
            let [from, to] = [away, flank.centre_radius()].map(|radius| Point::polar(radius, at));
            with_mirror_and_turns(Segment::line(from, to), &[flank.centre_radius()], at)
        }
        Method::OffsetFeed => {
            let [from, to] = [away, flank.tangent_radius()]
                .map(|along| Point::new(along, -flank.cutter()).rotated(edge));
            let at = edge - flank.half_angle_rad();
            with_mirror_and_turns(Segment::line(from, to), &[flank.centre_radius()], at)
        }
        Method::PlungeAndTurn => flank
            .plunge_radii()
            .into_iter()
            .flat_map(|radius| turn(radius, edge - (flank.cutter() / radius).min(1.0).asin()))
            .collect(),
        Method::RadialOnCentre | Method::RadialOffset => Vec::new(),
    };
    Ok(path)
}

fn with_mirror_and_turns(feed: Segment, radii: &[f64], at: f64) -> Vec<Segment> {
    let flip = |point: Point| Point::new(point.x, -point.y);
    let mirrored = Segment::line(flip(feed.a), flip(feed.b));
    let turns = radii.iter().flat_map(|radius| turn(*radius, at));
    [feed, mirrored].into_iter().chain(turns).collect()
}

/// The work turned from one side to the other with the cutter standing at a radius.
fn turn(radius: f64, half_rad: f64) -> Vec<Segment> {
    let stops = [-half_rad, 0.0, half_rad].map(|angle| Point::polar(radius, angle));
    let bulge = (half_rad / 4.0).tan();
    vec![
        Segment::new(stops[0], stops[1], bulge),
        Segment::new(stops[1], stops[2], bulge),
    ]
}

/// The largest angle from the x axis, below half a turn, that the circles along `path` reach at a radius, radians;
/// `None` where they do not reach that radius at all. Exact: the edge lies on an end circle or on a line beside the
/// path.
#[must_use]
pub fn swept_edge_rad(path: &[Segment], cutter: f64, radius: f64) -> Option<f64> {
    let is_on_edge = |angle: &f64| {
        let place = Point::polar(radius, *angle);
        let distances = path.iter().map(|leg| leg.nearest(place).distance(place));
        (distances.fold(f64::INFINITY, f64::min) - cutter).abs() <= CONTACT
    };
    path.iter()
        .flat_map(|leg| crossings(leg, cutter, radius))
        .filter(is_on_edge)
        .max_by(f64::total_cmp)
}

/// Angles at which the rim of the circles along one leg crosses a circle about the axis.
fn crossings(leg: &Segment, cutter: f64, radius: f64) -> Vec<f64> {
    let mut angles = Vec::new();
    let mut on_line = |direction: Point, distance: f64| {
        let cosine = distance / radius;
        if cosine.abs() <= 1.0 {
            let middle = direction.y.atan2(direction.x);
            angles.extend([middle - cosine.acos(), middle + cosine.acos()]);
        }
    };
    for end in [leg.a, leg.b] {
        // Points of both circles lie on their common chord.
        let apart = end.norm();
        if let Some(unit) = end.unit() {
            let ahead = (radius * radius + (apart - cutter) * (apart + cutter)) / (2.0 * apart);
            on_line(unit, ahead);
        }
    }
    if leg.is_line()
        && let Some(square) = leg.chord().left().unit()
    {
        let distance = square.dot(leg.a);
        on_line(square, distance + cutter);
        on_line(square, distance - cutter);
    }
    let half_turn = std::f64::consts::PI;
    angles
        .iter()
        .map(|angle| (angle + half_turn).rem_euclid(2.0 * half_turn) - half_turn)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Largest angle at which a point of the circle is within the cutter of its path, by halving from far outside.
    fn edge_by_halving(path: &[Segment], cutter: f64, radius: f64) -> f64 {
        let is_cut = |angle: f64| {
            let place = Point::polar(radius, angle);
            path.iter()
                .any(|leg| leg.nearest(place).distance(place) <= cutter)
        };
        let steps = 4000;
        let outermost = (0..steps)
            .rev()
            .map(|step| f64::from(step) / f64::from(steps))
            .find(|angle| is_cut(*angle));
        let mut cut = outermost.unwrap();
        let mut clear = cut + 1.0 / f64::from(steps);
        for _ in 0..50 {
            let middle = f64::midpoint(cut, clear);
            if is_cut(middle) {
                cut = middle;
            } else {
                clear = middle;
            }
        }
        cut
    }

    #[test]
    fn formulas_agree_with_the_union_of_circles() {
        let gap = 0.5;
        let methods = [
            Method::CentreFeed,
            Method::OffsetFeed,
            Method::PlungeAndTurn,
        ];
        let lugs = [(24.0, 27.0), (24.0, 31.0), (27.0, 24.0), (27.0, 22.5)];
        for method in methods {
            for (floor, tip) in lugs {
                for cutter in [0.8, 1.5, 2.0, 3.0, 4.0] {
                    let flank = Flank::new(method, floor, tip, cutter).unwrap();
                    let path = centre_path(&flank, gap).unwrap();
                    for step in 1..=20 {
                        let radius = floor + (tip - floor) * (f64::from(step) - 0.5) / 20.0;
                        let formula = gap / 2.0 - flank.intrusion_rad(radius).unwrap();
                        let exact = swept_edge_rad(&path, cutter, radius).unwrap();
                        let brute = edge_by_halving(&path, cutter, radius);
                        assert!(
                            (exact - brute).abs() < 1e-6,
                            "{flank:?} {radius} {exact} {brute}"
                        );
                        assert!(
                            (formula - exact).abs() < 1e-6,
                            "{flank:?} {radius} {formula} {exact}"
                        );
                    }
                }
            }
        }
    }

    /// A radial cutter removes a point when, seen along its axis, the point is within its radius and above its end.
    #[test]
    fn radial_cutters_agree_with_their_solid() {
        let (floor, tip, gap) = (24.0, 27.0, 0.5);
        for method in [Method::RadialOnCentre, Method::RadialOffset] {
            for cutter in [1.5, 2.0, 3.0] {
                let flank = Flank::new(method, floor, tip, cutter).unwrap();
                // Last place of the cutter's axis, seen from the edge at half the gap.
                let (turned, aside) = if method == Method::RadialOnCentre {
                    (
                        gap / 2.0 - (cutter / tip).asin().min((floor / tip).acos()),
                        0.0,
                    )
                } else {
                    (gap / 2.0, -cutter)
                };
                for step in 1..=20 {
                    let radius = floor + (tip - floor) * f64::from(step) / 20.0;
                    let is_cut = |angle: f64| {
                        (0..=400).any(|turn| {
                            let at = turned * (1.0 - f64::from(turn) / 400.0);
                            let place = Point::polar(radius, angle - at);
                            place.x >= floor && (place.y - aside).abs() <= cutter
                        })
                    };
                    let (mut cut, mut clear) = (turned, 1.0);
                    assert!(is_cut(cut - 1e-9) || method == Method::RadialOffset);
                    for _ in 0..50 {
                        let middle = f64::midpoint(cut, clear);
                        if is_cut(middle) {
                            cut = middle;
                        } else {
                            clear = middle;
                        }
                    }
                    let formula = gap / 2.0 - flank.intrusion_rad(radius).unwrap();
                    assert!(
                        (formula - cut).abs() < 1e-6,
                        "{flank:?} {radius} {formula} {cut}"
                    );
                }
            }
        }
    }

    #[test]
    fn a_gap_too_narrow_has_no_path() {
        let flank = Flank::new(Method::OffsetFeed, 24.0, 27.0, 2.0).unwrap();
        assert!(matches!(
            centre_path(&flank, 0.1),
            Err(CutterError::GapTooNarrow { .. })
        ));
        assert_eq!(
            swept_edge_rad(&centre_path(&flank, 0.5).unwrap(), 2.0, 10.0),
            None
        );
    }
}
