//! Where lettering finds room among what is drawn already.

use crate::drawing::path::{Path, Piece};
use crate::drawing::scene::{Item, Shape, Tone};
use crate::drawing::text_box::TextBox;
use crate::drawing::{Annotation, placement::polar};
use crate::geometry::Point;

/// Least clear space between lettering and any line that is not its own, mm (common practice, no source).
const CLEAR_MM: f64 = 0.6;

/// Arcs are looked at in pieces of so many degrees: a fiftieth of a millimetre off the arc at 50 mm radius.
const ARC_STEP_DEG: f64 = 3.0;

/// What is drawn already.
#[derive(Debug, Clone, Default)]
pub struct Occupied {
    lines: Vec<(Point, Point)>,
    lettering: Vec<TextBox>,
}

impl Occupied {
    /// The lines and lettering of a drawing.
    #[must_use]
    pub fn by(drawn: &Annotation) -> Self {
        let mut occupied = Self::default();
        occupied.add(drawn);
        occupied
    }

    /// Takes in more.
    pub fn add(&mut self, drawn: &Annotation) {
        for item in &drawn.items {
            self.add_lines(item);
        }
        self.lettering.extend(&drawn.boxes);
    }

    fn add_lines(&mut self, item: &Item) {
        match &item.shape {
            Shape::Path(path) => self.add_path(path),
            Shape::Circle { centre, radius_mm } => {
                self.add_path(&Path::circle(*centre, *radius_mm));
            }
            Shape::Arc {
                centre,
                radius_mm,
                start_deg,
                sweep_deg,
            } => self.add_path(&Path::arc(*centre, *radius_mm, *start_deg, *sweep_deg)),
            Shape::Fill {
                loops,
                tone: Tone::Solid,
            } => loops.iter().for_each(|path| self.add_path(path)),
            Shape::Hatch(hatch) => hatch.lines().iter().for_each(|path| self.add_path(path)),
            // Lettering is known by its boxes; a tint may lie under it.
            Shape::Text(_)
            | Shape::Fill {
                tone: Tone::Tint, ..
            } => {}
        }
    }

    fn add_path(&mut self, path: &Path) {
        for piece in path.pieces() {
            match piece {
                Piece::Line { from, to } => self.lines.push((from, to)),
                Piece::Arc {
                    centre,
                    radius_mm,
                    start_deg,
                    sweep_deg,
                } => {
                    let mut from = polar(centre, radius_mm, start_deg);
                    let mut turned = 0.0_f64;
                    while turned < sweep_deg.abs() {
                        turned = (turned + ARC_STEP_DEG).min(sweep_deg.abs());
                        let to = polar(centre, radius_mm, start_deg + turned.copysign(sweep_deg));
                        self.lines.push((from, to));
                        from = to;
                    }
                }
            }
        }
    }

    /// Whether all lettering of a drawing lies clear of every line and of other lettering.
    #[must_use]
    pub fn leaves_room_for(&self, drawn: &Annotation) -> bool {
        drawn.boxes.iter().all(|text| {
            let space = text.grown(CLEAR_MM);
            !self
                .lines
                .iter()
                .any(|(from, to)| space.meets_line(*from, *to))
                && !self.lettering.iter().any(|other| space.overlaps(other))
        })
    }

    /// Whether a drawing fits in: its lettering is clear of all there is, and its lines cross no lettering.
    #[must_use]
    pub fn takes(&self, drawn: &Annotation) -> bool {
        self.leaves_room_for(drawn)
            && Self::by(drawn)
                .lines
                .iter()
                .all(|(from, to)| self.lets_pass(*from, *to))
    }

    /// How many of the lines that are there a new one would cross; where it begins or ends on one is no crossing.
    #[must_use]
    pub fn crossings(&self, from: Point, to: Point) -> usize {
        self.lines
            .iter()
            .filter(|(a, b)| cross((from, to), (*a, *b)))
            .count()
    }

    /// Whether a line keeps clear of all lettering.
    #[must_use]
    pub fn lets_pass(&self, from: Point, to: Point) -> bool {
        !self
            .lettering
            .iter()
            .any(|text| text.grown(CLEAR_MM).meets_line(from, to))
    }
}

/// True when two straight lines cross between their ends.
fn cross(one: (Point, Point), other: (Point, Point)) -> bool {
    // Twice the area of a triangle, positive counter-clockwise; touching is not crossing.
    const TOUCH: f64 = 1e-6;
    let turn = |p: Point, q: Point, r: Point| (q.x - p.x) * (r.y - p.y) - (q.y - p.y) * (r.x - p.x);
    let parts = |line: (Point, Point), ends: (Point, Point)| {
        let (a, b) = (turn(line.0, line.1, ends.0), turn(line.0, line.1, ends.1));
        (a > TOUCH && b < -TOUCH) || (a < -TOUCH && b > TOUCH)
    };
    parts(one, other) && parts(other, one)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::dimension::{Label, Style};
    use crate::drawing::{LineType, Role};

    fn number_at(x: f64, y: f64) -> Annotation {
        Label::plain("7").centred(Point { x, y }, 0.0, &Style::default())
    }

    #[test]
    fn room_is_inside_a_circle_and_outside_it_but_not_on_it() {
        let mut drawn = Annotation::default();
        let circle = Shape::Circle {
            centre: Point { x: 0.0, y: 0.0 },
            radius_mm: 20.0,
        };
        drawn
            .items
            .push(Item::new(circle, LineType::ContinuousWide, Role::Ring));
        let occupied = Occupied::by(&drawn);
        assert!(occupied.leaves_room_for(&number_at(10.0, 0.0)));
        assert!(occupied.leaves_room_for(&number_at(26.0, 0.0)));
        assert!(!occupied.leaves_room_for(&number_at(20.0, 0.0)));
    }

    #[test]
    fn lettering_keeps_others_and_lines_away() {
        let occupied = Occupied::by(&number_at(0.0, 0.0));
        assert!(!occupied.leaves_room_for(&number_at(1.0, 1.0)));
        assert!(occupied.leaves_room_for(&number_at(9.0, 0.0)));
        let point = |x, y| Point { x, y };
        assert!(!occupied.lets_pass(point(-9.0, 1.0), point(9.0, 1.0)));
        assert!(occupied.lets_pass(point(-9.0, 9.0), point(9.0, 9.0)));
    }
}
