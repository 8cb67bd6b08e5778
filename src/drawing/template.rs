//! The lug template: the pattern at 1:1 on A4, seen from the body side, to lay on the blank or check the finished ring.

use thiserror::Error;

use crate::document::Design;
use crate::drawing::lettering::{Anchor, LINE_PITCH, Text, width_mm};
use crate::drawing::lug_table::{lug_table, numbered};
use crate::drawing::number::DecimalMark;
use crate::drawing::path::Path;
use crate::drawing::plan_view::{PlanOptions, plan_view};
use crate::drawing::ring_sheet::why_no_ring;
use crate::drawing::sheet::SheetFormat;
use crate::drawing::{LineType, Role, Scene, Shape, TextBox};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side, plan_point, seen_from};
use crate::ring::ResolvedRing;

/// Why a template cannot be made.
#[derive(Debug, Clone, PartialEq, Error)]
pub enum TemplateError {
    /// The ring is not whole.
    #[error("there is no whole ring to draw: {0}")]
    NoRing(String),
    /// The pattern is larger than the paper.
    #[error(
        "a flange of {0:.1} mm does not fit on A4 at 1:1; export the drawing as DXF, which has the pattern at its true size"
    )]
    TooLarge(f64),
    /// The list of angles is longer than the paper.
    #[error(
        "{0} lugs are too many for the table on A4; the sheet of the drawing lists their angles"
    )]
    TooManyLugs(usize),
}

/// The sheet.
pub const FORMAT: SheetFormat = SheetFormat::A4Portrait;

/// Length of the printed scale, mm.
pub const SCALE_MM: f64 = 50.0;

/// Lower left end of the printed scale; the level one runs to the right, the upright one stands at the right edge.
pub const SCALE_AT: Point = Point { x: 20.0, y: 20.0 };

/// Where the upright scale begins.
pub const UPRIGHT_AT: Point = Point { x: 195.0, y: 20.0 };

/// Left edge of everything written, mm.
const LEFT: f64 = 20.0;
/// Bottom of the table, mm.
const BOTTOM: f64 = 36.0;
/// Right edge of the table, mm.
const RIGHT: f64 = 180.0;
/// Top of the pattern's room, mm.
const TOP: f64 = 258.0;
/// How far the lines of the lug edges run out past the rim, mm.
const OVERRUN: f64 = 6.0;
/// Room past the rim for these lines and the numbers, mm.
const ROUND_RIM: f64 = 11.0;
/// Half the length of the cross in the lock hole over its radius, mm.
const CROSS: f64 = 1.5;
/// Room from the pattern to the table, mm.
const GAP: f64 = 6.0;
/// Lettering heights of the table, the first that fits, mm.
const HEIGHTS_MM: [f64; 2] = [2.5, 1.8];

/// The template.
///
/// # Errors
/// [`TemplateError`] when the ring is not whole or does not fit.
pub fn template(design: &Design, evaluation: &Evaluation) -> Result<Scene, TemplateError> {
    let (Some(ring), Some(_)) = (&evaluation.derivation.ring, &evaluation.plan) else {
        return Err(TemplateError::NoRing(why_no_ring(evaluation)));
    };
    let (width, height) = FORMAT.size_mm();
    let mut sheet = Scene::sheet(width, height);
    let reach = ring.sizes.flange_diameter / 2.0 + ROUND_RIM;
    let centre = Point {
        x: width / 2.0,
        y: TOP - reach,
    };
    if reach > width / 2.0 - 10.0 {
        return Err(TemplateError::TooLarge(ring.sizes.flange_diameter));
    }
    let options = PlanOptions {
        side: Side::Body,
        body: false,
        entry: false,
        cut_deg: None,
    };
    let mut pattern = plan_view(design, evaluation, &options);
    edges(ring, &mut pattern);
    sheet.place(&pattern, 1.0, centre);
    head(design, &mut sheet);
    table(design, ring, centre.y - reach - GAP, &mut sheet)?;
    scales(&mut sheet);
    Ok(sheet)
}

/// Lines along the lug edges out past the rim, lug numbers beyond them, and a cross in the lock hole.
fn edges(ring: &ResolvedRing, pattern: &mut Scene) {
    let sizes = &ring.sizes;
    let rim = sizes.flange_diameter / 2.0;
    let at = |radius: f64, clock_deg: f64| {
        plan_point(radius, seen_from(Side::Body, clock_deg.to_radians()))
    };
    let mut narrow = |from: Point, to: Point| {
        pattern.draw(
            Shape::Path(Path::line(from, to)),
            LineType::ContinuousNarrow,
            Role::Annotation,
        );
    };
    for lug in &ring.lugs {
        for edge_deg in [lug.start_deg, lug.end_deg()] {
            narrow(
                at(sizes.lug_diameter / 2.0, edge_deg),
                at(rim + OVERRUN, edge_deg),
            );
        }
    }
    if sizes.lock_hole_diameter > 0.0 {
        let (radius, angle) = (sizes.lock_hole_circle / 2.0, sizes.lock_hole_angle);
        let half = sizes.lock_hole_diameter / 2.0 + CROSS;
        narrow(at(radius - half, angle), at(radius + half, angle));
        let middle = at(radius, angle);
        let across = Point {
            x: -middle.y / radius * half,
            y: middle.x / radius * half,
        };
        narrow(
            Point {
                x: middle.x - across.x,
                y: middle.y - across.y,
            },
            Point {
                x: middle.x + across.x,
                y: middle.y + across.y,
            },
        );
    }
    numbers(ring, pattern);
}

/// The numbers of the lugs past the rim; where lugs stand close, those that have room.
fn numbers(ring: &ResolvedRing, pattern: &mut Scene) {
    const HEIGHT: f64 = 2.5;
    let radius = ring.sizes.flange_diameter / 2.0 + OVERRUN + HEIGHT;
    let mut taken: Vec<TextBox> = Vec::new();
    for (number, lug) in numbered(ring) {
        let angle = seen_from(Side::Body, lug.middle_deg().to_radians());
        let middle = plan_point(radius, angle);
        let at = Point {
            x: middle.x,
            y: middle.y - HEIGHT / 2.0,
        };
        let text = Text::level(at, HEIGHT, number.to_string()).anchored(Anchor::Centre);
        if taken.iter().all(|other| !other.overlaps(&text.text_box())) {
            taken.push(text.text_box());
            write(text, pattern);
        }
    }
}

fn write(text: Text, scene: &mut Scene) {
    scene.draw(
        Shape::Text(text),
        LineType::ContinuousNarrow,
        Role::Annotation,
    );
}

/// What it is, from which side, and how to print it.
fn head(design: &Design, sheet: &mut Scene) {
    let mut line = |y: f64, height: f64, words: &str| {
        write(Text::level(Point { x: LEFT, y }, height, words), sheet);
    };
    line(281.0, 5.0, "Lug template 1:1, seen from the body side");
    line(273.5, 3.5, &design.name);
    line(
        267.5,
        2.5,
        "Ring in the locked position; the triangle is its index mark. Lines at the rim run along the lug edges.",
    );
    line(
        262.5,
        2.5,
        "Print at 100 %, not fitted to the page. Use it only if both scales below measure 50.0 mm.",
    );
}

/// The angles, in as many columns as are needed.
fn table(
    design: &Design,
    ring: &ResolvedRing,
    top: f64,
    sheet: &mut Scene,
) -> Result<(), TemplateError> {
    let mark = if design.sheet.decimal_comma {
        DecimalMark::Comma
    } else {
        DecimalMark::Point
    };
    let lines = lug_table(ring, mark);
    for height in HEIGHTS_MM {
        let pitch = height * LINE_PITCH;
        let widest = lines
            .iter()
            .map(|line| width_mm(line, height))
            .fold(0.0, f64::max);
        let column = widest + 2.0 * height;
        let (mut x, mut y) = (LEFT, top - height);
        let mut places = Vec::new();
        for line in &lines {
            if y < BOTTOM {
                (x, y) = (x + column, top - height);
            }
            places.push(Text::level(Point { x, y }, height, line.clone()));
            y -= pitch;
        }
        if x + widest <= RIGHT && top - height >= BOTTOM {
            for text in places {
                write(text, sheet);
            }
            return Ok(());
        }
    }
    Err(TemplateError::TooManyLugs(ring.lugs.len()))
}

/// Two scales, since printers seldom stretch both ways alike.
fn scales(sheet: &mut Scene) {
    scale(SCALE_AT, Point { x: 1.0, y: 0.0 }, sheet);
    scale(UPRIGHT_AT, Point { x: 0.0, y: 1.0 }, sheet);
    let level = Point {
        x: SCALE_AT.x + SCALE_MM / 2.0,
        y: SCALE_AT.y - 6.0,
    };
    write(
        Text::level(level, 2.5, "50 mm").anchored(Anchor::Centre),
        sheet,
    );
    let upright = Text {
        rotation_deg: 90.0,
        ..Text::level(
            Point {
                x: UPRIGHT_AT.x + 7.0,
                y: UPRIGHT_AT.y + SCALE_MM / 2.0,
            },
            2.5,
            "50 mm",
        )
    };
    write(upright.anchored(Anchor::Centre), sheet);
}

/// A scale with a tick every 10 mm, short ones every 5 mm. Its line is as long as the outermost ticks are apart.
fn scale(from: Point, along: Point, sheet: &mut Scene) {
    let at = |mm: f64, aside: f64| Point {
        x: from.x + mm * along.x - aside * along.y,
        y: from.y + mm * along.y + aside * along.x,
    };
    let mut narrow = |a: Point, b: Point| {
        sheet.draw(
            Shape::Path(Path::line(a, b)),
            LineType::ContinuousNarrow,
            Role::Annotation,
        );
    };
    narrow(at(0.0, 0.0), at(SCALE_MM, 0.0));
    for tick in 0..=10_u8 {
        let length = if tick % 2 == 0 { 4.0 } else { 2.5 };
        let mm = f64::from(tick) * 5.0;
        narrow(at(mm, 0.0), at(mm, length));
    }
}
