//! Nose and lugs of a ring as one outline of the plan.

use crate::drawing::plan_view::lug_flank_border;
use crate::geometry::{Outline, OutlineBuilder, OutlineError, Point, plan_point};
use crate::mount::Sector;
use crate::ring::ResolvedRing;

const AXIS: Point = Point { x: 0.0, y: 0.0 };

/// The border of nose and lugs, seen from the lens side, flanks and root fillets as the cutter leaves them: what is drawn
/// of them in the plan. Bores and holes are not in it.
///
/// # Errors
/// [`OutlineError`] where lugs run into each other.
pub fn lug_pattern(ring: &ResolvedRing) -> Result<Outline, OutlineError> {
    let nose = ring.sizes.nose_diameter / 2.0;
    let mut lugs = ring.lugs.clone();
    let start = |lug: &Sector| lug.start_deg.rem_euclid(360.0);
    lugs.sort_by(|a, b| start(a).total_cmp(&start(b)));
    let flank = lug_flank_border(ring);
    let foot_deg = flank.last().map_or(0.0, |(_, off_deg)| *off_deg);
    let Some(first) = lugs.first() else {
        return OutlineBuilder::start(Point::new(0.0, nose))
            .arc_about(AXIS, std::f64::consts::TAU, ())
            .close(());
    };
    let begin_deg = first.start_deg - foot_deg;
    let nexts = lugs.iter().skip(1).map(|lug| lug.start_deg);
    let nexts = nexts.chain([first.start_deg + 360.0]);
    let mut builder = OutlineBuilder::start(plan_point(nose, begin_deg.to_radians()));
    for (lug, next_deg) in lugs.iter().zip(nexts) {
        builder = round_lug(builder, *lug, &flank);
        let foot_ends_deg = lug.end_deg() + foot_deg;
        let gap_deg = (next_deg - foot_deg - foot_ends_deg).rem_euclid(360.0);
        builder = builder.arc_about(AXIS, -gap_deg.to_radians(), ());
    }
    builder.close(())
}

/// Up the flank where the lug begins, over its tip, and down the other one, clockwise seen from the lens side.
fn round_lug(builder: OutlineBuilder, lug: Sector, flank: &[(f64, f64)]) -> OutlineBuilder {
    let at = |radius: f64, clock_deg: f64| plan_point(radius, clock_deg.to_radians());
    let tip_off_deg = flank.first().map_or(0.0, |(_, off_deg)| *off_deg);
    let up = flank.iter().rev().skip(1);
    let builder = up.fold(builder, |built, (radius, off_deg)| {
        built.line_to(at(*radius, lug.start_deg - off_deg), ())
    });
    let over_deg = lug.extent_deg + 2.0 * tip_off_deg;
    let builder = builder.arc_about(AXIS, -over_deg.to_radians(), ());
    flank
        .iter()
        .skip(1)
        .fold(builder, |built, (radius, off_deg)| {
            built.line_to(at(*radius, lug.end_deg() + off_deg), ())
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{MillingMethod, demo_designs};
    use crate::evaluate::evaluate;
    use crate::geometry::{AnnularSector, Interval};
    use crate::workshop::Workshop;
    use std::f64::consts::PI;

    /// Offset feed leaves a true radial flank: nose disc and annular sectors in closed form, but for the root fillet.
    #[test]
    fn the_area_is_that_of_nose_and_lugs() {
        for design in demo_designs().unwrap() {
            let evaluation = evaluate(&design, &Workshop::default_set().unwrap());
            let Some(ring) = evaluation.derivation.ring else {
                continue;
            };
            let (nose, tip) = (
                ring.sizes.nose_diameter / 2.0,
                ring.sizes.lug_diameter / 2.0,
            );
            let lugs: f64 = ring
                .lugs
                .iter()
                .map(|lug| {
                    let interval = Interval::from_degrees(lug.start_deg, lug.extent_deg).unwrap();
                    AnnularSector::new(nose, tip, interval).unwrap().area()
                })
                .sum();
            let pattern = lug_pattern(&ring).unwrap();
            // A fillet of the cutter's radius leaves (1 - pi/4) r^2 at each root, and is drawn as chords.
            let count = f64::from(u32::try_from(ring.lugs.len()).unwrap());
            let fillets = 2.0 * count * (1.0 - PI / 4.0) * ring.cutter_radius.powi(2);
            let over = pattern.area() - PI * nose * nose - lugs;
            match ring.milling {
                MillingMethod::OffsetFeed => {
                    assert!(over >= -1e-6 && over <= 1.2 * fillets, "{over} {fillets}");
                }
                MillingMethod::CentreFeed
                | MillingMethod::PlungeAndTurn
                | MillingMethod::RadialCutter => {}
            }
            // Only with a lug where the list says so is the tip inside.
            for lug in &ring.lugs {
                let middle = lug.middle_deg().to_radians();
                assert!(pattern.contains(plan_point(tip - 0.01, middle)));
            }
        }
    }

    #[test]
    fn lugs_that_run_into_each_other_are_refused() {
        let design = demo_designs().unwrap().remove(0);
        let evaluation = evaluate(&design, &Workshop::default_set().unwrap());
        let mut ring = evaluation.derivation.ring.unwrap();
        let lug = ring.lugs[0];
        ring.lugs.push(Sector {
            start_deg: lug.start_deg + 1.0,
            ..lug
        });
        assert!(lug_pattern(&ring).is_err());
    }
}
