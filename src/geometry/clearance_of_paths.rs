//! The clearance between two open paths.

use super::clearance::{is_contact, nearest_of};
use super::closest::{closest, crossings};
use super::piece::Piece;
use super::{CONTACT, Clearance, Path, Point, Relation};

/// The clearance between two paths: [`Relation::Overlapping`] when one runs through the other,
/// [`Relation::Touching`] when they meet without crossing.
#[must_use]
pub fn clearance_of_paths<A, B>(a: &Path<A>, b: &Path<B>) -> Clearance<A, B>
where
    A: Copy + PartialEq,
    B: Copy + PartialEq,
{
    let (pieces_a, pieces_b) = (a.pieces_in_order(), b.pieces_in_order());
    let nearest = nearest_of(pieces_a, pieces_b);
    let relation = if !is_contact(&nearest.pair) {
        Relation::Apart
    } else if cross_somewhere(pieces_a, pieces_b) {
        Relation::Overlapping
    } else {
        Relation::Touching
    };
    nearest.told(pieces_a, pieces_b, relation)
}

fn cross_somewhere<A: Copy, B: Copy>(first: &[Piece<A>], second: &[Piece<B>]) -> bool {
    let meeting_places = first.iter().flat_map(|one| {
        second.iter().flat_map(move |two| {
            let pair = closest(&one.segment, &two.segment);
            let nearest = is_contact(&pair).then_some(pair.on_first);
            crossings(&one.segment, &two.segment)
                .into_iter()
                .flatten()
                .chain(nearest)
        })
    });
    meeting_places
        .filter_map(|place| rays_at(first, place).zip(rays_at(second, place)))
        .any(|(one, two)| are_crossed(one, two))
}

/// The directions in which a path comes back from and goes on from one of its places; `None` at its ends.
fn rays_at<T>(pieces: &[Piece<T>], place: Point) -> Option<(Point, Point)> {
    let mut back = None;
    let mut on = None;
    for piece in pieces {
        let segment = &piece.segment;
        if segment.nearest(place).distance(place) > CONTACT {
            continue;
        }
        let share = segment.share_of(place);
        if segment.a.distance(place) > CONTACT {
            back = Some(-segment.tangent_at(share));
        }
        if segment.b.distance(place) > CONTACT {
            on = Some(segment.tangent_at(share));
        }
    }
    back.zip(on)
}

/// Whether the two rays of one lie on either side of the other.
fn are_crossed(one: (Point, Point), two: (Point, Point)) -> bool {
    let from_back = |ray: Point| {
        one.0
            .cross(ray)
            .atan2(one.0.dot(ray))
            .rem_euclid(std::f64::consts::TAU)
    };
    let opening = from_back(one.1);
    let (first, second) = (from_back(two.0), from_back(two.1));
    let is_clear = [first, second]
        .iter()
        .all(|angle| angle.sin().abs() > CONTACT && (angle - opening).sin().abs() > CONTACT);
    is_clear && (first < opening) != (second < opening)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn path(points: &[(f64, f64)]) -> Path {
        Path::straight(points.iter().map(|(x, y)| Point::new(*x, *y)), ()).unwrap()
    }

    #[test]
    fn crossing_touching_and_apart() {
        let bent = path(&[(0.0, 0.0), (2.0, 2.0), (4.0, 0.0)]);
        let cases: [(&[(f64, f64)], Relation); 6] = [
            (&[(0.0, 1.0), (4.0, 1.0)], Relation::Overlapping),
            (&[(2.0, 0.0), (2.0, 4.0)], Relation::Overlapping),
            (&[(0.0, 2.0), (4.0, 2.0)], Relation::Touching),
            (&[(1.0, 1.0), (1.0, 5.0)], Relation::Touching),
            (&[(0.0, 4.0), (2.0, 2.0), (4.0, 4.0)], Relation::Touching),
            (&[(0.0, 3.0), (4.0, 3.0)], Relation::Apart),
        ];
        for (points, relation) in cases {
            let found = clearance_of_paths(&bent, &path(points));
            assert_eq!(found.relation, relation, "{points:?}");
            assert_eq!(found.distance > 0.0, relation == Relation::Apart);
        }
    }
}
