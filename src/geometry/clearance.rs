//! The true least distance between two shapes, with the two nearest places and how the shapes stand to each other.

use super::closest::{Pair, closest};
use super::piece::{Piece, bounds_of};
use super::split::{Sides, sides};
use super::{BoundingBox, CONTACT, Outline, Path, Point, SHORTEST, Segment};

pub use super::clearance_of_paths::clearance_of_paths;

/// How two shapes stand to each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Relation {
    /// They keep apart.
    Apart,
    /// They touch, but nothing of one is inside the other.
    Touching,
    /// Each has a part inside the other, or they are the same shape.
    Overlapping,
    /// The first lies wholly inside the second; it may touch from within.
    AInsideB,
    /// The second lies wholly inside the first; it may touch from within.
    BInsideA,
}

/// The least distance between two contours and the two places where it is found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Clearance<A = (), B = ()> {
    /// Distance between the contours, mm; 0 where they cross or come within [`CONTACT`] of each other.
    /// For a shape inside another this is the distance of its contour to the other's contour.
    pub distance: f64,
    /// The place on the first.
    pub a: Point,
    /// The place on the second.
    pub b: Point,
    /// What the place on the first belongs to.
    pub tag_a: A,
    /// What the place on the second belongs to.
    pub tag_b: B,
    /// How the two stand to each other.
    pub relation: Relation,
}

impl<A: Copy, B: Copy> Clearance<A, B> {
    pub(super) fn from_pair(pair: Pair, tag_a: A, tag_b: B, relation: Relation) -> Self {
        let distance = if is_contact(&pair) {
            0.0
        } else {
            pair.square.sqrt()
        };
        Self {
            distance,
            a: pair.on_first,
            b: pair.on_second,
            tag_a,
            tag_b,
            relation,
        }
    }

    /// The same seen from the other shape.
    #[must_use]
    pub const fn swapped(self) -> Clearance<B, A> {
        let relation = match self.relation {
            Relation::AInsideB => Relation::BInsideA,
            Relation::BInsideA => Relation::AInsideB,
            Relation::Apart => Relation::Apart,
            Relation::Touching => Relation::Touching,
            Relation::Overlapping => Relation::Overlapping,
        };
        Clearance {
            distance: self.distance,
            a: self.b,
            b: self.a,
            tag_a: self.tag_b,
            tag_b: self.tag_a,
            relation,
        }
    }

    /// Whether nothing of one shape is inside the other.
    #[must_use]
    pub const fn is_free(&self) -> bool {
        matches!(self.relation, Relation::Apart | Relation::Touching)
    }
}

pub(super) fn is_contact(pair: &Pair) -> bool {
    pair.square <= CONTACT * CONTACT
}

/// The clearance between two outlines.
#[must_use]
pub fn clearance<A, B>(a: &Outline<A>, b: &Outline<B>) -> Clearance<A, B>
where
    A: Copy + PartialEq,
    B: Copy + PartialEq,
{
    let (pieces_a, pieces_b) = (a.pieces_in_order(), b.pieces_in_order());
    let nearest = nearest_of(pieces_a, pieces_b);
    let relation = if nearest.is_plain_crossing(pieces_a, pieces_b) {
        Relation::Overlapping
    } else if is_contact(&nearest.pair) {
        relation_in_contact(sides(pieces_a, b), sides(pieces_b, a))
    } else if b.contains(nearest.pair.on_first) {
        Relation::AInsideB
    } else if a.contains(nearest.pair.on_second) {
        Relation::BInsideA
    } else {
        Relation::Apart
    };
    nearest.told(pieces_a, pieces_b, relation)
}

/// The clearance between an outline and a path. The path is [`Relation::BInsideA`] when it nowhere leaves the
/// outline, [`Relation::Overlapping`] when it runs through the contour.
#[must_use]
pub fn clearance_to_path<A, B>(outline: &Outline<A>, path: &Path<B>) -> Clearance<A, B>
where
    A: Copy + PartialEq,
    B: Copy + PartialEq,
{
    let (pieces_a, pieces_b) = (outline.pieces_in_order(), path.pieces_in_order());
    let nearest = nearest_of(pieces_a, pieces_b);
    let relation = if is_contact(&nearest.pair) {
        let path_sides = sides(pieces_b, outline);
        match (path_sides.inside, path_sides.outside) {
            (true, true) => Relation::Overlapping,
            (true, false) => Relation::BInsideA,
            (false, _) => Relation::Touching,
        }
    } else if outline.contains(nearest.pair.on_second) {
        Relation::BInsideA
    } else {
        Relation::Apart
    };
    nearest.told(pieces_a, pieces_b, relation)
}

/// The clearance between the pieces of two outlines whose tags are chosen; `None` when none is.
///
/// The relation tells only whether these pieces meet ([`Relation::Touching`]) or not ([`Relation::Apart`]):
/// a few pieces have no inside.
#[must_use]
pub fn clearance_where<A, B>(
    a: &Outline<A>,
    is_of_a: impl Fn(A) -> bool,
    b: &Outline<B>,
    is_of_b: impl Fn(B) -> bool,
) -> Option<Clearance<A, B>>
where
    A: Copy + PartialEq,
    B: Copy + PartialEq,
{
    let chosen_a: Vec<_> = a
        .pieces_in_order()
        .iter()
        .filter(|piece| is_of_a(piece.tag))
        .copied()
        .collect();
    let chosen_b: Vec<_> = b
        .pieces_in_order()
        .iter()
        .filter(|piece| is_of_b(piece.tag))
        .copied()
        .collect();
    if chosen_a.is_empty() || chosen_b.is_empty() {
        return None;
    }
    let nearest = nearest_of(&chosen_a, &chosen_b);
    let meets = is_contact(&nearest.pair);
    let relation = if meets {
        Relation::Touching
    } else {
        Relation::Apart
    };
    Some(nearest.told(&chosen_a, &chosen_b, relation))
}

/// The two nearest pieces of two runs.
pub(super) struct Nearest {
    first: usize,
    second: usize,
    pub pair: Pair,
}

impl Nearest {
    pub fn told<A: Copy, B: Copy>(
        &self,
        first: &[Piece<A>],
        second: &[Piece<B>],
        relation: Relation,
    ) -> Clearance<A, B> {
        // The indices come from runs with at least one piece each.
        Clearance::from_pair(
            self.pair,
            first[self.first].tag,
            second[self.second].tag,
            relation,
        )
    }
}

/// Contours crossing at more than this sine cross for certain.
const PLAIN: f64 = 1e-3;

impl Nearest {
    /// Whether the two pieces cross in their middles and at an angle: then each shape has a part in the other, and
    /// no more need be asked.
    fn is_plain_crossing<A, B>(&self, first: &[Piece<A>], second: &[Piece<B>]) -> bool {
        if self.pair.square > 0.0 {
            return false;
        }
        let place = self.pair.on_first;
        // The indices come from runs with at least one piece each.
        let pair = [&first[self.first].segment, &second[self.second].segment];
        let is_clear = |segment: &Segment| {
            segment.a.distance(place) > SHORTEST && segment.b.distance(place) > SHORTEST
        };
        let [one, two] = pair.map(|segment| segment.tangent_at(segment.share_of(place)));
        pair.into_iter().all(is_clear) && one.cross(two).abs() > PLAIN
    }
}

/// Box-pruned search over all pairs; both runs have at least one piece.
pub(super) fn nearest_of<A, B>(first: &[Piece<A>], second: &[Piece<B>]) -> Nearest {
    let whole = bounds_of(second);
    let mut best = likely_pair(first, second, whole);
    for (one, piece) in first.iter().enumerate() {
        if piece.bounds.gap_squared(whole) >= best.pair.square {
            continue;
        }
        for (two, other) in second.iter().enumerate() {
            if piece.bounds.gap_squared(other.bounds) >= best.pair.square {
                continue;
            }
            let pair = closest(&piece.segment, &other.segment);
            if pair.square < best.pair.square {
                best = Nearest {
                    first: one,
                    second: two,
                    pair,
                };
                if pair.square <= 0.0 {
                    return best;
                }
            }
        }
    }
    best
}

/// A first guess: the piece nearest to the other's box, and the piece there nearest to it.
fn likely_pair<A, B>(first: &[Piece<A>], second: &[Piece<B>], whole: BoundingBox) -> Nearest {
    let one = least_index(first, |piece| piece.bounds.gap_squared(whole));
    // The index is one of the run's own.
    let beside = first[one].bounds;
    let two = least_index(second, |piece| piece.bounds.gap_squared(beside));
    Nearest {
        first: one,
        second: two,
        pair: closest(&first[one].segment, &second[two].segment),
    }
}

fn least_index<T>(pieces: &[Piece<T>], of: impl Fn(&Piece<T>) -> f64) -> usize {
    let mut best = (0, f64::INFINITY);
    for (index, piece) in pieces.iter().enumerate() {
        let value = of(piece);
        if value < best.1 {
            best = (index, value);
        }
    }
    best.0
}

fn relation_in_contact(of_a: Sides, of_b: Sides) -> Relation {
    if !(of_a.inside || of_b.inside || of_a.along_same_way) {
        return Relation::Touching;
    }
    match (of_a.outside, of_b.outside) {
        (false, true) => Relation::AInsideB,
        (true, false) => Relation::BInsideA,
        (true, true) | (false, false) => Relation::Overlapping,
    }
}

#[cfg(test)]
mod tests {
    use super::super::OutlineBuilder;
    use super::*;

    fn plate(x: f64, y: f64, width: f64, height: f64) -> Outline<char> {
        OutlineBuilder::start(Point::new(x, y))
            .line_to(Point::new(x + width, y), 'b')
            .line_to(Point::new(x + width, y + height), 'r')
            .line_to(Point::new(x, y + height), 't')
            .close('l')
            .unwrap()
    }

    fn disc(x: f64, y: f64, radius: f64) -> Outline<char> {
        OutlineBuilder::start(Point::new(x + radius, y))
            .arc_to(Point::new(x - radius, y), 1.0, 'u')
            .close_with(1.0, 'd')
            .unwrap()
    }

    #[test]
    fn every_relation_of_two_plates() {
        let plate_a = plate(0.0, 0.0, 4.0, 2.0);
        let cases = [
            (plate(5.0, 0.0, 1.0, 1.0), 1.0, Relation::Apart),
            (plate(4.0, 0.5, 1.0, 1.0), 0.0, Relation::Touching),
            (plate(4.0, 2.0, 1.0, 1.0), 0.0, Relation::Touching),
            (plate(3.0, 1.0, 5.0, 5.0), 0.0, Relation::Overlapping),
            (plate(0.0, 0.0, 4.0, 2.0), 0.0, Relation::Overlapping),
            (plate(-1.0, 0.5, 6.0, 1.0), 0.0, Relation::Overlapping),
            (plate(1.0, 0.5, 1.0, 1.0), 0.5, Relation::BInsideA),
            (plate(1.0, 0.0, 1.0, 1.0), 0.0, Relation::BInsideA),
            (plate(0.0, 0.0, 1.0, 2.0), 0.0, Relation::BInsideA),
            (plate(-1.0, -2.0, 9.0, 9.0), 1.0, Relation::AInsideB),
        ];
        for (plate_b, distance, relation) in cases {
            let found = clearance(&plate_a, &plate_b);
            assert_eq!(found.relation, relation, "{:?}", plate_b.bounding_box());
            assert!((found.distance - distance).abs() < 1e-15);
            let back = clearance(&plate_b, &plate_a);
            assert_eq!(back.swapped().relation, relation);
            assert!((back.distance - distance).abs() < 1e-15);
        }
    }

    #[test]
    fn the_two_places_and_their_tags() {
        let found = clearance(&plate(0.0, 0.0, 4.0, 2.0), &disc(7.0, 1.0, 1.5));
        assert!((found.distance - 1.5).abs() < 1e-15);
        assert!(found.a.distance(Point::new(4.0, 1.0)) < 1e-14);
        assert!(found.b.distance(Point::new(5.5, 1.0)) < 1e-14);
        assert_eq!(found.tag_a, 'r');
        let only_top = clearance_where(
            &plate(0.0, 0.0, 4.0, 2.0),
            |tag| tag == 't',
            &disc(7.0, 1.0, 1.5),
            |_| true,
        )
        .unwrap();
        assert!((only_top.distance - (10.0_f64.sqrt() - 1.5)).abs() < 1e-14);
        assert!(
            clearance_where(
                &disc(0.0, 0.0, 1.0),
                |_| false,
                &disc(3.0, 0.0, 1.0),
                |_| true
            )
            .is_none()
        );
    }

    #[test]
    fn rounding_at_a_shared_face_is_contact_not_overlap() {
        let left = plate(0.0, 0.0, 0.1 + 0.2, 2.0);
        let right = plate(0.3, 0.5, 1.0, 1.0);
        let found = clearance(&left, &right);
        assert_eq!(found.relation, Relation::Touching);
        assert!(found.distance <= 0.0);
        let tangent = clearance(&disc(0.0, 0.0, 1.1), &disc(3.3, 0.0, 2.2));
        assert_eq!(tangent.relation, Relation::Touching);
    }

    #[test]
    fn paths_against_a_plate() {
        let plate = plate(0.0, 0.0, 4.0, 2.0);
        let path = |points: [(f64, f64); 2]| {
            Path::straight(points.map(|(x, y)| Point::new(x, y)), ()).unwrap()
        };
        let relation = |points| clearance_to_path(&plate, &path(points)).relation;
        assert_eq!(relation([(1.0, 3.0), (3.0, 3.0)]), Relation::Apart);
        assert_eq!(relation([(1.0, 2.0), (3.0, 2.0)]), Relation::Touching);
        assert_eq!(relation([(1.0, 1.0), (3.0, 3.0)]), Relation::Overlapping);
        assert_eq!(relation([(1.0, 1.0), (3.0, 1.0)]), Relation::BInsideA);
        assert_eq!(relation([(1.0, 1.0), (3.0, 2.0)]), Relation::BInsideA);
        let apart = clearance_to_path(&plate, &path([(1.0, 3.0), (3.0, 3.5)]));
        assert!((apart.distance - 1.0).abs() < 1e-15);
    }
}
