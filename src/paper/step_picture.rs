//! The workpiece as it stands after a step: half-section, or the lug plan from the body side where gaps are milled.

use crate::drawing::outlines::path_of;
use crate::drawing::work_view::{WorkOptions, work_view};
use crate::drawing::{Extent, Hatch, LineType, Path, Role, Scene, Shape, Tone};
use crate::evaluate::Evaluation;
use crate::geometry::{Outline, Point, Side};
use crate::plan::{Operation, Stage};
use crate::ring::ResolvedRing;

/// Distance of the hatch lines on paper, mm.
const HATCH_MM: f64 = 1.5;
/// Work that keeps farther from the axis than this is drawn without it, larger, mm.
const NEAR_THE_AXIS_MM: f64 = 3.0;
/// How far the axis runs past what is drawn, mm of the part.
const AXIS_OVERRUN_MM: f64 = 2.0;

/// What the words under a picture say of it.
#[must_use]
pub const fn caption(stage: &Stage) -> &'static str {
    if stage.in_plan {
        "seen from the body side, datum zero up"
    } else if stage.taken.is_empty() {
        "lens side left, axis below"
    } else {
        "lens side left, axis below; dashed: cut here"
    }
}

/// The picture; empty while the ring is not whole.
#[must_use]
pub fn step_picture(stage: &Stage, evaluation: &Evaluation) -> Scene {
    let Some(ring) = &evaluation.derivation.ring else {
        return Scene::view();
    };
    if stage.in_plan {
        let options = WorkOptions {
            side: Side::Body,
            gaps: stage.has(Operation::MillGaps),
            lock_hole: stage.has(Operation::LockHole),
            index_mark: stage.has(Operation::IndexMark),
        };
        return work_view(evaluation, &options);
    }
    section(stage, ring)
}

fn section(stage: &Stage, ring: &ResolvedRing) -> Scene {
    let mut scene = Scene::view();
    for outline in &stage.held {
        tinted(
            outline,
            LineType::LongDashDoubleDotNarrow,
            Role::Body,
            &mut scene,
        );
    }
    for outline in &stage.taken {
        tinted(outline, LineType::DashedNarrow, Role::Highlight, &mut scene);
    }
    let loops: Vec<Path> = stage
        .metal
        .outer
        .iter()
        .chain(&stage.metal.holes)
        .map(path_of)
        .collect();
    scene.draw(
        Shape::Hatch(Hatch::at_45_deg(loops.clone(), HATCH_MM)),
        LineType::ContinuousNarrow,
        Role::RingHatch,
    );
    for path in loops {
        scene.draw(Shape::Path(path), LineType::ContinuousWide, Role::Ring);
    }
    if stage.has(Operation::Thread) {
        thread(ring, &mut scene);
    }
    if let Some(bounds) = scene
        .bounds()
        .filter(|bounds| bounds.bottom < NEAR_THE_AXIS_MM)
    {
        axis(&bounds, &mut scene);
    }
    scene
}

fn tinted(outline: &Outline, line: LineType, role: Role, scene: &mut Scene) {
    let path = path_of(outline);
    let fill = Shape::Fill {
        loops: vec![path.clone()],
        tone: Tone::Tint,
    };
    scene.draw(fill, LineType::ContinuousNarrow, role);
    scene.draw(Shape::Path(path), line, role);
}

/// The root of the thread as a narrow line (ISO 6410-1).
fn thread(ring: &ResolvedRing, scene: &mut Scene) {
    let sizes = &ring.sizes;
    let begin = -sizes.seat_height;
    let end = if ring.thread_runs_through {
        sizes.spigot_length
    } else {
        begin + sizes.thread_length.min(sizes.lip_face_depth)
    };
    let root = ring.thread_major / 2.0;
    let line = Path::line(Point { x: begin, y: root }, Point { x: end, y: root });
    scene.draw(Shape::Path(line), LineType::ContinuousNarrow, Role::Ring);
}

fn axis(bounds: &Extent, scene: &mut Scene) {
    let line = Path::line(
        Point {
            x: bounds.left - AXIS_OVERRUN_MM,
            y: 0.0,
        },
        Point {
            x: bounds.right + AXIS_OVERRUN_MM,
            y: 0.0,
        },
    );
    scene.draw(Shape::Path(line), LineType::LongDashDotNarrow, Role::Axis);
}
