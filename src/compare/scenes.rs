//! The pictures of a comparison: each ring by itself, and one laid over another. All are in the lengths of the part, with
//! z = 0 at the flange rear face, so that pictures placed alike line up there.

use super::lug_pattern::lug_pattern;
use super::overlay::{Cut, Difference};
use super::subject::Subject;
use crate::drawing::outlines::{path_of, pieces_of};
use crate::drawing::section_view::{SectionOptions, section_view};
use crate::drawing::{
    Hatch, Item, LineType, Path, PlanOptions, Role, Scene, Shape, Tone, plan_view, tag_of,
};
use crate::geometry::{Outline, Point, Side};

/// Distance of section lines, mm on paper.
const HATCH_MM: f64 = 1.8;
/// Distance of the lines in a difference: closer, so that a thin one has some, mm on paper.
const DIFFERENCE_HATCH_MM: f64 = 0.9;
/// Direction of the lines in metal that is added, degrees; in removed metal they run the other way.
pub const ADDED_DEG: f64 = 45.0;

/// The half-section of one ring, with lens and body where they are wanted; empty while the ring is not whole.
#[must_use]
pub fn section_scene(subject: &Subject<'_>, cut: Cut, partners: bool) -> Scene {
    let Some(ring) = &subject.evaluation.derivation.ring else {
        return Scene::default();
    };
    let options = SectionOptions {
        partners,
        hatch_spacing_mm: HATCH_MM,
        ..SectionOptions::on_screen(cut.angle_deg(ring))
    };
    section_view(subject.design, subject.evaluation, &options)
}

/// The lug pattern of one ring, with the body where it is wanted; empty while the ring is not whole.
#[must_use]
pub fn plan_scene(subject: &Subject<'_>, side: Side, partners: bool) -> Scene {
    let options = PlanOptions {
        side,
        body: partners,
        entry: false,
        cut_deg: None,
    };
    plan_view(subject.design, subject.evaluation, &options)
}

/// The half-sections of two rings over each other: the first dashed, the second in full lines, what differs hatched.
#[must_use]
pub fn section_overlay(
    first: &Subject<'_>,
    second: &Subject<'_>,
    cut: Cut,
    difference: &Difference,
) -> Scene {
    let mut scene = Scene::default();
    difference_areas(difference, Seen { mirrored: false }, &mut scene);
    for (subject, line, role) in pair(first, second) {
        if let Some(parts) = &subject.evaluation.parts {
            for (path, feature) in pieces_of(cut.outline(parts)) {
                let item = Item::new(Shape::Path(path), line, role);
                scene.items.push(item.tagged(tag_of(feature)));
            }
        }
    }
    if let Some(extent) = scene.bounds() {
        let ends = [extent.left - 3.0, extent.right + 3.0].map(|x| Point { x, y: 0.0 });
        let axis = Shape::Path(Path::open(ends));
        scene.draw(axis, LineType::LongDashDotNarrow, Role::Axis);
    }
    scene
}

/// Nose and lugs of two rings over each other, with rim and lock hole of both: the first dashed, the second in full lines.
#[must_use]
pub fn plan_overlay(
    first: &Subject<'_>,
    second: &Subject<'_>,
    side: Side,
    difference: &Difference,
) -> Scene {
    let mut scene = Scene::default();
    let seen = Seen {
        mirrored: side == Side::Body,
    };
    difference_areas(difference, seen, &mut scene);
    for (subject, line, role) in pair(first, second) {
        let Some(ring) = &subject.evaluation.derivation.ring else {
            continue;
        };
        let mut drawn = |shape| scene.draw(shape, line, role);
        if let Ok(pattern) = lug_pattern(ring) {
            drawn(Shape::Path(seen.path(&pattern)));
        }
        drawn(Shape::Circle {
            centre: Point { x: 0.0, y: 0.0 },
            radius_mm: ring.sizes.flange_diameter / 2.0,
        });
        if let Some(hole) = subject
            .evaluation
            .plan
            .as_ref()
            .and_then(|plan| plan.lock_hole)
        {
            drawn(Shape::Circle {
                centre: super::places::in_plan(hole.radius_mm, hole.angle_deg, side),
                radius_mm: hole.diameter_mm / 2.0,
            });
        }
    }
    scene
}

fn pair<'a>(
    first: &'a Subject<'a>,
    second: &'a Subject<'a>,
) -> [(&'a Subject<'a>, LineType, Role); 2] {
    [
        (first, LineType::DashedNarrow, Role::Hidden),
        (second, LineType::ContinuousWide, Role::Ring),
    ]
}

/// From which hand a region is seen.
#[derive(Clone, Copy)]
struct Seen {
    mirrored: bool,
}

impl Seen {
    fn path(self, outline: &Outline) -> Path {
        if self.mirrored {
            path_of(&outline.mirrored())
        } else {
            path_of(outline)
        }
    }
}

fn difference_areas(difference: &Difference, seen: Seen, scene: &mut Scene) {
    let areas = [
        (&difference.added, Role::Added, ADDED_DEG),
        (&difference.removed, Role::Removed, -ADDED_DEG),
    ];
    for (region, role, angle_deg) in areas {
        if region.is_empty() {
            continue;
        }
        let borders = region.outer.iter().chain(&region.holes);
        let loops: Vec<Path> = borders.map(|outline| seen.path(outline)).collect();
        let fill = Shape::Fill {
            loops: loops.clone(),
            tone: Tone::Tint,
        };
        scene.draw(fill, LineType::ContinuousNarrow, role);
        let hatch = Hatch {
            angle_deg,
            ..Hatch::at_45_deg(loops, DIFFERENCE_HATCH_MM)
        };
        scene.draw(Shape::Hatch(hatch), LineType::ContinuousNarrow, role);
    }
}
