//! The best place for a note or sign on a leader: clear of everything, crossing little, near, and inside the view.

use crate::drawing::free_room::Occupied;
use crate::drawing::placement::polar;
use crate::drawing::ring_signs::Signs;
use crate::drawing::{Annotation, Extent};
use crate::geometry::Point;

/// Lengths of leaders that are tried, mm.
const LENGTHS_MM: [f64; 12] = [
    4.0, 6.0, 8.0, 11.0, 14.0, 18.0, 23.0, 28.0, 34.0, 41.0, 50.0, 62.0,
];
/// What a crossed line costs, in mm of leader.
const CROSSING_COST: f64 = 9.0;
/// What a millimetre beyond the view costs, in mm of leader.
const GROWTH_COST: f64 = 3.0;

/// What rounding may add to a view, mm.
const ROUNDING_MM: f64 = 1e-6;

/// Where leaders may begin and which way they may go.
pub struct Search<'a> {
    /// Places on the part, the best first.
    pub tips: &'a [Point],
    /// Directions of the leader, degrees counter-clockwise from x, the best first.
    pub directions_deg: &'a [f64],
    /// What the view covers so far.
    pub view: Extent,
    /// Whether what is drawn may go beyond it.
    pub signs: Signs,
}

impl Search<'_> {
    /// The tip and elbow of the best place for what `drawn` draws there; none where nothing fits.
    #[must_use]
    pub fn best(
        &self,
        occupied: &Occupied,
        drawn: impl Fn(Point, Point) -> Annotation,
    ) -> Option<(Point, Point)> {
        let mut best: Option<(f64, Point, Point)> = None;
        for (tip_place, tip) in (0_u32..).zip(self.tips) {
            for length in LENGTHS_MM {
                for (place, direction) in (0_u32..).zip(self.directions_deg) {
                    let elbow = polar(*tip, length, *direction);
                    let order = f64::from(place) * 0.3 + f64::from(tip_place);
                    let least = length + order;
                    if best.is_some_and(|(cost, ..)| least >= cost) {
                        continue;
                    }
                    let note = drawn(*tip, elbow);
                    let cost = least + self.cost(occupied, *tip, elbow, &note);
                    if cost.is_finite()
                        && best.is_none_or(|(known, ..)| cost < known)
                        && occupied.takes(&note)
                    {
                        best = Some((cost, *tip, elbow));
                    }
                }
            }
        }
        best.map(|(_, tip, elbow)| (tip, elbow))
    }

    fn cost(&self, occupied: &Occupied, tip: Point, elbow: Point, note: &Annotation) -> f64 {
        let crossed = crate::drawing::whole::as_f64(occupied.crossings(tip, elbow));
        let boxes = note.boxes.iter().map(crate::drawing::TextBox::extent);
        let around = boxes.fold(self.view, Extent::union);
        if self.signs == Signs::Inside && !self.view.grown(ROUNDING_MM).contains(&around) {
            return f64::INFINITY;
        }
        let growth = around.width() - self.view.width() + around.height() - self.view.height();
        CROSSING_COST.mul_add(crossed, GROWTH_COST * growth)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::dimension::{Label, Leader, Style, Terminator, leader};

    #[test]
    fn a_note_goes_where_nothing_is_in_its_way() {
        let style = Style::default();
        let tip = Point { x: 0.0, y: 0.0 };
        let note = |tip: Point, elbow: Point| {
            leader(
                &Leader {
                    tip,
                    elbow,
                    lines: vec![Label::plain("note")],
                    terminator: Terminator::Arrow,
                },
                &style,
            )
        };
        let view = Extent {
            left: -60.0,
            bottom: -60.0,
            right: 60.0,
            top: 60.0,
        };
        let search = Search {
            tips: &[tip],
            directions_deg: &[45.0, 135.0],
            view,
            signs: Signs::Anywhere,
        };
        let free = search.best(&Occupied::default(), note).unwrap().1;
        assert!(free.x > 0.0);
        // A block of lettering to the right sends the note to the left.
        let mut wall = Annotation::default();
        let lettering = Label::plain("############");
        let middle_x = 4.0 + lettering.width_mm(&style) / 2.0;
        for row in 0..20 {
            let at = Point {
                x: middle_x,
                y: -10.0 + 5.0 * f64::from(row),
            };
            wall.join(lettering.centred(at, 0.0, &style));
        }
        let (_, elbow) = search.best(&Occupied::by(&wall), note).unwrap();
        assert!(elbow.x < 0.0);
    }
}
