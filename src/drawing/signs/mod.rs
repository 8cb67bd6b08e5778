//! Signs of the drawing standards, drawn as lines because fonts seldom carry them.
//!
//! Sizes are in lettering heights h with strokes of h/10, as ISO 7083 and ISO 1101 proportion them
//! (from memory; the annexes were not at hand).

pub mod datum;
pub mod edge;
pub mod projection;
pub mod surface;
pub mod tolerance_frame;

use crate::drawing::path::Path;
use crate::drawing::placement::polar;
use crate::geometry::Point;

/// Stroke width of a sign in lettering heights.
pub const STROKE: f64 = 0.1;

/// Diameter sign (drawn in front of a size).
pub const DIAMETER: char = '\u{2300}';
/// Parallelism.
pub const PARALLELISM: char = '\u{2225}';
/// Perpendicularity.
pub const PERPENDICULARITY: char = '\u{27C2}';
/// Circular run-out.
pub const CIRCULAR_RUN_OUT: char = '\u{2197}';
/// Total run-out.
pub const TOTAL_RUN_OUT: char = '\u{2330}';
/// Flatness.
pub const FLATNESS: char = '\u{23E5}';
/// Position.
pub const POSITION: char = '\u{2316}';
/// Concentricity.
pub const CONCENTRICITY: char = '\u{25CE}';
/// Depth of a hole.
pub const DEPTH: char = '\u{21A7}';
/// Counterbore.
pub const COUNTERBORE: char = '\u{2334}';
/// Countersink.
pub const COUNTERSINK: char = '\u{2335}';
/// Square.
pub const SQUARE: char = '\u{25A1}';

/// Every sign that is drawn.
pub const ALL: [char; 12] = [
    DIAMETER,
    PARALLELISM,
    PERPENDICULARITY,
    CIRCULAR_RUN_OUT,
    TOTAL_RUN_OUT,
    FLATNESS,
    POSITION,
    CONCENTRICITY,
    DEPTH,
    COUNTERBORE,
    COUNTERSINK,
    SQUARE,
];

/// A sign in lettering heights: baseline at 0, capitals to 1, its cell starting at x = 0.
#[derive(Debug, Clone, PartialEq)]
pub struct Sign {
    /// Width of its cell.
    pub advance: f64,
    /// Lines to draw `STROKE` wide.
    pub strokes: Vec<Path>,
    /// Areas to fill.
    pub fills: Vec<Path>,
}

/// Clear space on either side of a sign in its cell.
const SIDE: f64 = 0.2;

/// The slant of the strokes of several signs, degrees.
const SLANT_DEG: f64 = 60.0;

/// The drawn sign for a letter; none for letters that come from the font.
#[must_use]
pub fn sign(letter: char) -> Option<Sign> {
    let (width, strokes, fills) = match letter {
        DIAMETER => diameter(),
        PARALLELISM => parallelism(),
        PERPENDICULARITY => perpendicularity(),
        CIRCULAR_RUN_OUT => run_out(1),
        TOTAL_RUN_OUT => run_out(2),
        FLATNESS => flatness(),
        POSITION => position(),
        CONCENTRICITY => concentricity(),
        DEPTH => depth(),
        COUNTERBORE => counterbore(),
        COUNTERSINK => countersink(),
        SQUARE => square(),
        _ => return None,
    };
    let shift = crate::drawing::placement::Placement::translation(SIDE, 0.0);
    let shifted = |paths: Vec<Path>| paths.iter().map(|path| path.placed(&shift)).collect();
    Some(Sign {
        advance: 2.0_f64.mul_add(SIDE, width),
        strokes: shifted(strokes),
        fills: shifted(fills),
    })
}

/// Width, strokes and filled areas of a sign, starting at x = 0.
type Strokes = (f64, Vec<Path>, Vec<Path>);

fn at(x: f64, y: f64) -> Point {
    Point { x, y }
}

fn line(from: (f64, f64), to: (f64, f64)) -> Path {
    Path::line(at(from.0, from.1), at(to.0, to.1))
}

/// A line through a middle point at an angle.
fn slash(middle: Point, half_length: f64, angle_deg: f64) -> Path {
    Path::line(
        polar(middle, half_length, angle_deg + 180.0),
        polar(middle, half_length, angle_deg),
    )
}

/// A filled arrowhead 0.6 long with its tip at a point.
fn head(tip: Point, direction_deg: f64) -> Path {
    const LENGTH: f64 = 0.6;
    const HALF_ANGLE_DEG: f64 = 15.0;
    let back = |turn: f64| polar(tip, LENGTH, direction_deg + 180.0 + turn);
    Path::polygon([tip, back(HALF_ANGLE_DEG), back(-HALF_ANGLE_DEG)])
}

fn diameter() -> Strokes {
    let middle = at(0.45, 0.5);
    (
        0.9,
        vec![Path::circle(middle, 0.4), slash(middle, 0.65, SLANT_DEG)],
        Vec::new(),
    )
}

fn parallelism() -> Strokes {
    // Two strokes 1.5 h high, 0.6 h apart.
    let half = 0.75 / SLANT_DEG.to_radians().sin();
    let lean = 0.75 / SLANT_DEG.to_radians().tan();
    (
        2.0_f64.mul_add(lean, 0.6),
        vec![
            slash(at(lean, 0.5), half, SLANT_DEG),
            slash(at(lean + 0.6, 0.5), half, SLANT_DEG),
        ],
        Vec::new(),
    )
}

fn perpendicularity() -> Strokes {
    // Upright 1.5 h on a base of 2 h.
    (
        2.0,
        vec![
            line((0.0, -0.25), (2.0, -0.25)),
            line((1.0, -0.25), (1.0, 1.25)),
        ],
        Vec::new(),
    )
}

fn run_out(arrows: u8) -> Strokes {
    // Arrows of 1.5 h at 45 degrees; the feet of two are joined.
    const APART: f64 = 1.0;
    let reach = 1.5 * 45.0_f64.to_radians().cos();
    let feet: Vec<f64> = (0..arrows).map(|arrow| f64::from(arrow) * APART).collect();
    let tip = |foot: f64| at(foot + reach, 0.5 + reach / 2.0);
    let mut strokes: Vec<Path> = feet
        .iter()
        .map(|&foot| {
            let end = tip(foot);
            // The line stops inside the head so that the point stays sharp.
            line((foot, 0.5 - reach / 2.0), (end.x - 0.2, end.y - 0.2))
        })
        .collect();
    let last = feet.last().copied().unwrap_or_default();
    if last > 0.0 {
        strokes.push(line((0.0, 0.5 - reach / 2.0), (last, 0.5 - reach / 2.0)));
    }
    let heads = feet.iter().map(|&foot| head(tip(foot), 45.0)).collect();
    (last + reach, strokes, heads)
}

fn flatness() -> Strokes {
    let lean = 1.0 / SLANT_DEG.to_radians().tan();
    let width = 1.5 + lean;
    let outline = Path::polygon([at(0.0, 0.0), at(1.5, 0.0), at(width, 1.0), at(lean, 1.0)]);
    (width, vec![outline], Vec::new())
}

fn position() -> Strokes {
    (
        2.0,
        vec![
            Path::circle(at(1.0, 0.5), 0.5),
            line((0.0, 0.5), (2.0, 0.5)),
            line((1.0, -0.5), (1.0, 1.5)),
        ],
        Vec::new(),
    )
}

fn concentricity() -> Strokes {
    let middle = at(0.75, 0.5);
    (
        1.5,
        vec![Path::circle(middle, 0.5), Path::circle(middle, 0.75)],
        Vec::new(),
    )
}

fn depth() -> Strokes {
    (
        0.8,
        vec![line((0.0, 1.0), (0.8, 1.0)), line((0.4, 1.0), (0.4, 0.3))],
        vec![head(at(0.4, 0.0), 270.0)],
    )
}

fn counterbore() -> Strokes {
    let outline = Path::open([at(0.0, 1.0), at(0.0, 0.0), at(1.6, 0.0), at(1.6, 1.0)]);
    (1.6, vec![outline], Vec::new())
}

fn countersink() -> Strokes {
    let outline = Path::open([at(0.0, 1.0), at(1.0, 0.0), at(2.0, 1.0)]);
    (2.0, vec![outline], Vec::new())
}

fn square() -> Strokes {
    let corners = [at(0.0, 0.0), at(1.0, 0.0), at(1.0, 1.0), at(0.0, 1.0)];
    (1.0, vec![Path::polygon(corners)], Vec::new())
}

#[cfg(test)]
mod drawn_tests;
