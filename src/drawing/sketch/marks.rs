//! The strokes and marks that the sketches are made of.

use crate::drawing::dimension::{
    Angular, Label, Leader, Linear, Style, Terminator, angular, leader, linear,
};
use crate::drawing::{LineType, Path, Role, Scene, Shape, Text, Tone};
use crate::geometry::Point;

/// The style of what is asked for.
fn asked() -> Style {
    Style {
        role: Role::Highlight,
        ..Style::default()
    }
}

/// A point of a sketch: along the axis or to the right, and upward, mm.
pub(super) const fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

/// A cut part above the axis and its picture below it; one that begins and ends on the axis is whole.
pub(super) fn turned_part(scene: &mut Scene, role: Role, above: &[(f64, f64)]) {
    let on_the_axis = |corner: Option<&(f64, f64)>| corner.is_some_and(|(_, y)| *y <= 0.0);
    if on_the_axis(above.first()) && on_the_axis(above.last()) {
        let below = above.iter().rev().map(|(x, y)| at(*x, -y));
        let around = above.iter().map(|(x, y)| at(*x, *y)).chain(below);
        part(scene, role, around.filter(|corner| corner.y.abs() > 0.0));
        return;
    }
    for side in [1.0, -1.0] {
        part(scene, role, above.iter().map(|(x, y)| at(*x, y * side)));
    }
}

/// A cut part.
pub(super) fn part(scene: &mut Scene, role: Role, corners: impl IntoIterator<Item = Point>) {
    let path = Path::polygon(corners);
    let loops = vec![path.clone()];
    let fill = Shape::Fill {
        loops,
        tone: Tone::Tint,
    };
    scene.draw(fill, LineType::ContinuousNarrow, role);
    scene.draw(Shape::Path(path), LineType::ContinuousWide, role);
}

/// A thin line.
pub(super) fn line(scene: &mut Scene, role: Role, kind: LineType, from: Point, to: Point) {
    scene.draw(Shape::Path(Path::line(from, to)), kind, role);
}

/// The axis.
pub(super) fn axis(scene: &mut Scene, from: f64, to: f64) {
    let kind = LineType::LongDashDotNarrow;
    line(scene, Role::Axis, kind, at(from, 0.0), at(to, 0.0));
}

/// Words that are not asked for, on their middle.
pub(super) fn words(scene: &mut Scene, middle: Point, text: &str) {
    let text = Text::level(middle, 2.5, text).anchored(crate::drawing::Anchor::Centre);
    let kind = LineType::ContinuousNarrow;
    scene.draw(Shape::Text(text), kind, Role::Annotation);
}

/// A distance along the axis, its line at the height `y`.
pub(super) fn along(scene: &mut Scene, from: Point, to: Point, y: f64, name: &str) {
    let wanted = Linear::level(from, to, y, Label::plain(name));
    scene.extend(linear(&wanted, &asked()).items);
}

/// A distance across the axis, its line at the place `x`.
pub(super) fn across(scene: &mut Scene, from: Point, to: Point, x: f64, name: &str) {
    let wanted = Linear::upright(from, to, x, Label::plain(name));
    scene.extend(linear(&wanted, &asked()).items);
}

/// A diameter at the place `z` of the part, its line at `x`.
pub(super) fn diameter(scene: &mut Scene, z: f64, radius: f64, x: f64, name: &str) {
    across(scene, at(z, -radius), at(z, radius), x, name);
}

/// A place with its name on a landing.
pub(super) fn pointed(scene: &mut Scene, tip: Point, elbow: Point, name: &str) {
    let wanted = Leader {
        tip,
        elbow,
        lines: vec![Label::plain(name)],
        terminator: Terminator::Arrow,
    };
    scene.extend(leader(&wanted, &asked()).items);
}

/// An angle from one clock angle on, clockwise, degrees; its line at a radius.
pub(super) fn clockwise(
    scene: &mut Scene,
    from_deg: f64,
    by_deg: f64,
    radius: f64,
    part: f64,
    name: &str,
) {
    let wanted = Angular {
        apex: at(0.0, 0.0),
        radius_mm: radius,
        start_deg: 90.0 - from_deg,
        sweep_deg: -by_deg,
        part_radius_mm: [part, part],
        label: Label::plain(name),
    };
    scene.extend(angular(&wanted, &asked()).items);
}
