//! The plan of a workpiece while gaps, lock hole and index mark are cut.

use crate::drawing::plan_view::{CENTRE, PlanPen};
use crate::drawing::{LineType, Path, Role, Scene, Shape};
use crate::evaluate::Evaluation;
use crate::geometry::Side;

/// What of the ring is cut already, in the plan of a workpiece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct WorkOptions {
    /// From which side it is seen.
    pub side: Side,
    /// Whether the gaps between the lugs are milled.
    pub gaps: bool,
    /// Whether the lock hole is drilled.
    pub lock_hole: bool,
    /// Whether the index mark is engraved.
    pub index_mark: bool,
}

/// How far the witness line of datum zero reaches inward from the rim, mm.
const WITNESS_MM: f64 = 4.0;

/// The plan of the workpiece while gaps, hole and mark are cut, with the witness line of datum zero; empty while the
/// ring is not whole.
#[must_use]
pub fn work_view(evaluation: &Evaluation, options: &WorkOptions) -> Scene {
    let mut scene = Scene::default();
    let (Some(ring), Some(plan)) = (&evaluation.derivation.ring, &evaluation.plan) else {
        return scene;
    };
    let pen = PlanPen {
        side: options.side,
        ring,
    };
    pen.circles(&mut scene);
    if options.gaps {
        pen.lugs(plan, &mut scene);
    } else {
        let whole = Shape::Circle {
            centre: CENTRE,
            radius_mm: ring.sizes.lug_diameter / 2.0,
        };
        scene.draw(whole, LineType::ContinuousWide, Role::Ring);
    }
    if let Some(hole) = plan.lock_hole.filter(|_| options.lock_hole) {
        let shape = Shape::Circle {
            centre: pen.at(hole.radius_mm, hole.angle_deg),
            radius_mm: hole.diameter_mm / 2.0,
        };
        scene.draw(shape, LineType::ContinuousWide, Role::Ring);
    }
    let rim = ring.sizes.flange_diameter / 2.0;
    if options.index_mark {
        pen.triangle(
            plan.index_deg,
            rim - 0.3,
            rim - 2.3,
            Role::Annotation,
            &mut scene,
        );
    }
    let witness = Path::line(pen.at(rim, 0.0), pen.at(rim - WITNESS_MM, 0.0));
    scene.draw(
        Shape::Path(witness),
        LineType::ContinuousWide,
        Role::Highlight,
    );
    scene
}
