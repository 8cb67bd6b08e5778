//! The page of a comparison: as wide as A3, as long as its tables need.

use super::overlay::{Difference, pattern_difference, section_difference};
use super::scenes::{plan_overlay, plan_scene, section_overlay, section_scene};
use super::sheet::SheetChoices;
use super::sheet_table::{Lanes, tables};
use super::subject::{Subject, distinct_names};
use crate::drawing::lettering::{LINE_PITCH, width_mm};
use crate::drawing::scales::{SCALES, Scale};
use crate::drawing::{
    Anchor, Extent, Hatch, LineType, PaperSize, Path, Placement, Role, Scene, Shape, Text, Tone,
};
use crate::geometry::{Point, Side};
use crate::mount::Unit;

/// Width of the page, mm: that of A3 lying (ISO 216).
const WIDTH: f64 = 420.0;
/// Free border, mm.
const BORDER: f64 = 14.0;
/// Height of ordinary lettering, mm.
pub(super) const LETTERS: f64 = 2.5;
/// Height of the title, mm.
const TITLE: f64 = 5.0;
/// Room for the names of the rows, mm.
const NAMES: f64 = 72.0;
/// Tallest row of half-sections or of lug patterns, mm.
const TALLEST: f64 = 120.0;
/// Free room beside a view in its column, mm.
const BESIDE: f64 = 4.0;

/// A page under way: everything is drawn downward from 0 and moved up at the end.
pub(super) struct Page {
    pub(super) scene: Scene,
    /// Where the next thing begins; negative.
    pub(super) at_mm: f64,
}

impl Page {
    /// A line of lettering with its baseline at a height, cut short where it is too wide.
    pub(super) fn write(&mut self, x_mm: f64, y_mm: f64, height_mm: f64, words: &str, room: f64) {
        let words = fitted(words, height_mm, room);
        let text = Text::level(Point { x: x_mm, y: y_mm }, height_mm, words);
        self.scene.draw(
            Shape::Text(text),
            LineType::ContinuousNarrow,
            Role::Annotation,
        );
    }

    /// A line of lettering over the whole width, under what is there already.
    fn line(&mut self, height_mm: f64, words: &str) {
        self.at_mm -= LINE_PITCH * height_mm;
        self.write(BORDER, self.at_mm, height_mm, words, WIDTH - 2.0 * BORDER);
    }

    pub(super) fn rule(&mut self) {
        let ends = [BORDER, WIDTH - BORDER].map(|x| Point { x, y: self.at_mm });
        let line = Shape::Path(Path::open(ends));
        self.scene
            .draw(line, LineType::ContinuousNarrow, Role::Annotation);
    }
}

/// The words, or as many letters of them as fit, with three points behind.
fn fitted(words: &str, height_mm: f64, room_mm: f64) -> String {
    if width_mm(words, height_mm) <= room_mm {
        return words.to_owned();
    }
    let mut cut = words.to_owned();
    while cut.pop().is_some() {
        let shown = format!("{}...", cut.trim_end());
        if width_mm(&shown, height_mm) <= room_mm {
            return shown;
        }
    }
    String::new()
}

/// The whole page.
pub(super) fn page(subjects: &[Subject<'_>], choices: &SheetChoices) -> Scene {
    let names = distinct_names(subjects.iter().map(|subject| subject.name));
    let mut page = Page {
        scene: Scene::view(),
        at_mm: -BORDER,
    };
    let lanes = lanes(subjects.len());
    page.line(TITLE, &format!("Comparison of {}", names.join(", ")));
    page.at_mm -= 2.0;
    page.line(LETTERS, &said(choices));
    page.at_mm -= 3.0;
    heads(&mut page, &names, lanes);
    let scenes: [Vec<Scene>; 2] = [
        subjects
            .iter()
            .map(|subject| without_axis(section_scene(subject, choices.cut, choices.partners)))
            .collect(),
        subjects
            .iter()
            .map(|subject| plan_scene(subject, choices.side, choices.partners))
            .collect(),
    ];
    let titles = ["Half-section", "Lug pattern"];
    let mut scales = Vec::new();
    for (title, scenes) in titles.into_iter().zip(&scenes) {
        scales.push(row_of_views(&mut page, title, scenes, lanes));
    }
    overlay_row(&mut page, (subjects, &names), choices, &scales, lanes);
    legend(&mut page, choices.partners);
    tables(&mut page, subjects, &names, lanes);
    finished(&page)
}

fn lanes(count: usize) -> Lanes {
    let count = f64::from(u32::try_from(count.max(1)).unwrap_or(1));
    Lanes {
        left: BORDER,
        names: NAMES,
        column: (WIDTH - 2.0 * BORDER - NAMES) / count,
    }
}

fn said(choices: &SheetChoices) -> String {
    format!(
        "Half-sections cut {} of each, light from the left, z = 0 at the flange rear face, the axis under them not drawn. Lug patterns and every angle \
         seen from the {} side: {}. Lengths in mm.",
        choices.cut.words(),
        side_word(choices.side),
        match choices.side {
            Side::Lens => "clockwise from 12 o'clock in pictures and tables",
            Side::Body =>
                "pictures run anticlockwise; the tables give angles as seen from the lens side",
        }
    )
}

const fn side_word(side: Side) -> &'static str {
    match side {
        Side::Lens => "lens",
        Side::Body => "body",
    }
}

fn heads(page: &mut Page, names: &[String], lanes: Lanes) {
    page.at_mm -= LINE_PITCH * LETTERS;
    for (name, x_mm) in names.iter().zip(lanes.columns()) {
        page.write(x_mm, page.at_mm, LETTERS, name, lanes.column - 2.0);
    }
    page.at_mm -= 1.5;
    page.rule();
}

/// The picture without the axis, which would lie far under the cut metal of a half-section.
fn without_axis(mut scene: Scene) -> Scene {
    scene.items.retain(|item| item.pen.role != Role::Axis);
    scene
}

/// Views in a row, one in each column, all at the largest scale at which every one fits; gives that scale.
fn row_of_views(page: &mut Page, title: &str, scenes: &[Scene], lanes: Lanes) -> Option<Scale> {
    let around = scenes
        .iter()
        .filter_map(Scene::bounds)
        .reduce(Extent::union)?;
    let room_mm = lanes.column - 2.0 * BESIDE;
    let scale = SCALES.into_iter().find(|scale| {
        around.width() * scale.factor() <= room_mm && around.height() * scale.factor() <= TALLEST
    })?;
    let factor = scale.factor();
    page.at_mm -= 4.0;
    let floor = page.at_mm - around.height() * factor;
    for (scene, x_mm) in scenes.iter().zip(lanes.columns()) {
        // The same offset in every column: all stand on one axis and at one distance from z = 0.
        let origin = Point {
            x: x_mm + lanes.column / 2.0 - around.centre().x * factor,
            y: floor - around.bottom * factor,
        };
        page.scene.place(scene, factor, origin);
    }
    page.write(
        lanes.left,
        floor + around.height() * factor / 2.0,
        LETTERS,
        &format!("{title}, {scale}"),
        lanes.names - 2.0,
    );
    page.at_mm = floor - 2.0;
    Some(scale)
}

/// Two of them over each other, with what the differences come to.
fn overlay_row(
    page: &mut Page,
    (subjects, names): (&[Subject<'_>], &[String]),
    choices: &SheetChoices,
    scales: &[Option<Scale>],
    lanes: Lanes,
) {
    let (from, to) = choices.pair;
    let (Some(first), Some(second)) = (subjects.get(from), subjects.get(to)) else {
        return;
    };
    let (Ok(section), Ok(plan)) = (
        section_difference(first, second, choices.cut),
        pattern_difference(first, second),
    ) else {
        return;
    };
    let pictures = [
        without_axis(section_overlay(first, second, choices.cut, &section)),
        plan_overlay(first, second, choices.side, &plan),
    ];
    page.rule();
    page.at_mm -= 4.0;
    let top = page.at_mm;
    let mut floor = top - 6.0 * LINE_PITCH * LETTERS;
    let mut x_mm = lanes.left + lanes.names + BESIDE;
    for (picture, scale) in pictures.iter().zip(scales) {
        let (Some(extent), Some(scale)) = (picture.bounds(), scale) else {
            continue;
        };
        let factor = scale.factor();
        let origin = Point {
            x: x_mm - extent.left * factor,
            y: top - extent.top * factor,
        };
        page.scene.place(picture, factor, origin);
        x_mm += extent.width() * factor + 4.0 * BESIDE;
        floor = floor.min(top - extent.height() * factor);
    }
    let name = |place: usize| names.get(place).map_or("", String::as_str);
    let words = [
        format!("{} over {}", name(to), name(from)),
        format!("Half-section: {}", areas(&section)),
        format!("Nose and lugs: {}", areas(&plan)),
    ];
    for (line, words) in (1_u8..).zip(&words) {
        // The first beside the pictures in the room of the row names, the areas to their right.
        let y_mm = top - f64::from(line) * LINE_PITCH * LETTERS;
        let (x_mm, room) = if line == 1 {
            (lanes.left, lanes.names - 2.0)
        } else {
            (x_mm, WIDTH - BORDER - x_mm)
        };
        page.write(x_mm, y_mm, LETTERS, words, room);
    }
    page.at_mm = floor - 2.0;
}

fn areas(difference: &Difference) -> String {
    if difference.is_none() {
        return "no difference".to_owned();
    }
    format!(
        "{} added, {} removed",
        Unit::Mm2.show(difference.added.area()),
        Unit::Mm2.show(difference.removed.area())
    )
}

/// What the lines and hatches stand for.
fn legend(page: &mut Page, partners: bool) {
    page.rule();
    page.at_mm -= 2.0 * LINE_PITCH * LETTERS;
    let mut x_mm = BORDER;
    let lines = [
        (
            LineType::ContinuousWide,
            "edge of the ring, in an overlay of the second",
            true,
        ),
        (
            LineType::DashedNarrow,
            "out of sight, in an overlay the first",
            true,
        ),
        (LineType::LongDashDoubleDotNarrow, "lens and body", partners),
    ];
    for (line, words, _) in lines.into_iter().filter(|(_, _, is_there)| *is_there) {
        let ends = [x_mm, x_mm + 14.0].map(|x| Point {
            x,
            y: page.at_mm + LETTERS / 2.0,
        });
        page.scene
            .draw(Shape::Path(Path::open(ends)), line, Role::Ring);
        x_mm = named(page, x_mm + 16.0, words);
    }
    for (angle_deg, sign, words, role) in [
        (45.0, "+", "metal added by the second", Role::Added),
        (
            -45.0,
            "\u{2212}",
            "metal removed by the second",
            Role::Removed,
        ),
    ] {
        let corner = Point {
            x: x_mm,
            y: page.at_mm - 0.6,
        };
        let patch = Path::polygon(Extent::sized(corner, 9.0, LETTERS + 1.2).corners());
        let fill = Shape::Fill {
            loops: vec![patch.clone()],
            tone: Tone::Tint,
        };
        page.scene.draw(fill, LineType::ContinuousNarrow, role);
        let hatch = Hatch {
            angle_deg,
            ..Hatch::at_45_deg(vec![patch.clone()], 0.9)
        };
        page.scene
            .draw(Shape::Hatch(hatch), LineType::ContinuousNarrow, role);
        page.scene
            .draw(Shape::Path(patch), LineType::ContinuousNarrow, role);
        x_mm = named(page, x_mm + 11.0, &format!("{sign} {words}"));
    }
    page.at_mm -= 3.0;
}

fn named(page: &mut Page, x_mm: f64, words: &str) -> f64 {
    page.write(x_mm, page.at_mm, LETTERS, words, WIDTH);
    x_mm + width_mm(words, LETTERS) + 7.0
}

/// Moved up so that its lower left corner is the origin, with its size.
fn finished(page: &Page) -> Scene {
    let height_mm = BORDER - page.at_mm;
    let mut scene = page
        .scene
        .transformed(&Placement::translation(0.0, height_mm));
    scene.size = Some(PaperSize {
        width_mm: WIDTH,
        height_mm,
    });
    let note = Text::level(
        Point {
            x: WIDTH - BORDER,
            y: BORDER / 2.0,
        },
        1.8,
        "Flangewright",
    )
    .anchored(Anchor::Right);
    scene.draw(
        Shape::Text(note),
        LineType::ContinuousNarrow,
        Role::Annotation,
    );
    scene
}

#[cfg(test)]
#[path = "sheet_page_tests.rs"]
mod tests;
