//! The one gate through which lines and arcs become an outline or a path.

use std::f64::consts::PI;

use super::closest::{closest, crossings};
use super::outline::Outline;
use super::path::Path;
use super::piece::Piece;
use super::{CONTACT, FARTHEST, OutlineError, Point, SHORTEST, Segment};

/// Gathers lines and arcs end to end, and lets nothing through that later work could stumble over.
///
/// ```
/// use flangewright::geometry::{OutlineBuilder, Point};
/// let plate = OutlineBuilder::start(Point::new(0.0, 10.0))
///     .line_to(Point::new(2.5, 10.0), "rear")
///     .line_to(Point::new(2.5, 30.0), "rim")
///     .line_to(Point::new(0.0, 30.0), "front")
///     .close("bore")?;
/// assert!((plate.area() - 50.0).abs() < 1e-12);
/// # Ok::<(), flangewright::geometry::OutlineError>(())
/// ```
#[derive(Clone, Debug)]
pub struct OutlineBuilder<T = ()> {
    start: Point,
    at: Point,
    given: usize,
    pieces: Vec<(Segment, T)>,
    fault: Option<OutlineError>,
}

impl<T: Copy + PartialEq> OutlineBuilder<T> {
    /// Begins at a place.
    #[must_use]
    pub fn start(place: Point) -> Self {
        let mut builder = Self {
            start: place,
            at: place,
            given: 0,
            pieces: Vec::new(),
            fault: None,
        };
        builder.check(place, 0.0);
        builder
    }

    /// Goes on with a line.
    #[must_use]
    pub fn line_to(self, place: Point, tag: T) -> Self {
        self.arc_to(place, 0.0, tag)
    }

    /// Goes on with an arc: `bulge` is the tangent of a quarter of its angle, positive counter-clockwise.
    /// More than half a turn is split in two.
    #[must_use]
    pub fn arc_to(mut self, place: Point, bulge: f64, tag: T) -> Self {
        self.push(place, bulge, tag);
        self
    }

    /// Goes on with an arc about a centre, counter-clockwise when `sweep_rad` is positive, up to a full turn.
    #[must_use]
    pub fn arc_about(mut self, centre: Point, sweep_rad: f64, tag: T) -> Self {
        let arm = self.at - centre;
        if sweep_rad.abs() <= PI {
            self.push(
                centre + arm.rotated(sweep_rad),
                (sweep_rad / 4.0).tan(),
                tag,
            );
        } else {
            let bulge = (sweep_rad / 8.0).tan();
            self.push(centre + arm.rotated(sweep_rad / 2.0), bulge, tag);
            self.push(centre + arm.rotated(sweep_rad), bulge, tag);
        }
        self
    }

    /// Where the last piece ended.
    #[must_use]
    pub const fn at(&self) -> Point {
        self.at
    }

    /// Closes with a line to the start, unless the last piece already ended there.
    ///
    /// # Errors
    /// [`OutlineError`] when the pieces are no outline.
    pub fn close(self, tag: T) -> Result<Outline<T>, OutlineError> {
        self.close_with(0.0, tag)
    }

    /// Closes with an arc to the start, unless the last piece already ended there.
    ///
    /// # Errors
    /// [`OutlineError`] when the pieces are no outline.
    pub fn close_with(mut self, bulge: f64, tag: T) -> Result<Outline<T>, OutlineError> {
        self.push(self.start, bulge, tag);
        let pieces = self.loop_pieces()?;
        match self_crossing(&pieces, true) {
            Some(crossing) => Err(crossing),
            None => Outline::from_loop(pieces).ok_or(OutlineError::NoArea),
        }
    }

    /// The loop as it stands, not looked through for crossings: for what a boolean gave back.
    pub(super) fn closed_loop(&self) -> Result<Outline<T>, OutlineError> {
        Outline::from_loop(self.loop_pieces()?).ok_or(OutlineError::NoArea)
    }

    fn loop_pieces(&self) -> Result<Vec<Piece<T>>, OutlineError> {
        if let Some(fault) = self.fault {
            return Err(fault);
        }
        let pieces = self.joined(true);
        let has_arc = pieces.iter().any(|piece| !piece.segment.is_line());
        if pieces.len() < 2 || (pieces.len() < 3 && !has_arc) {
            return Err(OutlineError::TooFewPieces {
                pieces: pieces.len(),
            });
        }
        Ok(pieces)
    }

    /// Ends as an open path.
    ///
    /// # Errors
    /// [`OutlineError`] when there is not one piece with length, or the pieces cross each other.
    pub fn open(self) -> Result<Path<T>, OutlineError> {
        if let Some(fault) = self.fault {
            return Err(fault);
        }
        let pieces = self.joined(false);
        if pieces.is_empty() {
            return Err(OutlineError::TooFewPieces { pieces: 0 });
        }
        match self_crossing(&pieces, false) {
            Some(crossing) => Err(crossing),
            None => Ok(Path::from_pieces(pieces)),
        }
    }

    fn push(&mut self, place: Point, bulge: f64, tag: T) {
        self.given += 1;
        self.check(place, bulge);
        if self.fault.is_some() {
            return;
        }
        if bulge.abs() > 1.0 {
            let half = (bulge.atan() / 2.0).tan();
            // The arc's middle lies from the chord's middle by bulge times half the chord.
            let middle = Segment::new(self.at, place, bulge).midpoint();
            self.push_part(middle, half, tag);
            self.push_part(place, half, tag);
        } else {
            self.push_part(place, bulge, tag);
        }
    }

    fn push_part(&mut self, place: Point, bulge: f64, tag: T) {
        let chord = (place - self.at).norm();
        if chord < SHORTEST {
            return;
        }
        let flat = bulge.abs() * chord / 2.0 < SHORTEST;
        let segment = Segment::new(self.at, place, if flat { 0.0 } else { bulge });
        let bounds = segment.bounding_box();
        self.check(bounds.min, 0.0);
        self.check(bounds.max, 0.0);
        self.pieces.push((segment, tag));
        self.at = place;
    }

    fn check(&mut self, place: Point, bulge: f64) {
        let fault = if !place.is_finite() || !bulge.is_finite() {
            Some(OutlineError::NotFinite {
                piece: self.given.saturating_sub(1),
            })
        } else if place.x.abs() >= FARTHEST || place.y.abs() >= FARTHEST {
            Some(OutlineError::TooFar { at: place })
        } else {
            None
        };
        self.fault = self.fault.or(fault);
    }

    /// The pieces, the last one led exactly to the start where it ends a hair beside it.
    fn joined(&self, closed: bool) -> Vec<Piece<T>> {
        let mut pieces = self.pieces.clone();
        if closed && let Some((last, _)) = pieces.last_mut() {
            last.b = self.start;
        }
        pieces
            .into_iter()
            .map(|(segment, tag)| Piece::new(segment, tag))
            .collect()
    }
}

/// The first place where pieces cross or touch that should not.
fn self_crossing<T: Copy>(pieces: &[Piece<T>], closed: bool) -> Option<OutlineError> {
    let count = pieces.len();
    let mut order: Vec<usize> = (0..count).collect();
    let left = |index: &usize| pieces[*index].bounds.min.x;
    order.sort_by(|one, two| left(one).total_cmp(&left(two)));
    for (rank, &one) in order.iter().enumerate() {
        let reach = pieces[one].bounds.max.x + CONTACT;
        for &two in order[rank + 1..]
            .iter()
            .take_while(|index| left(index) <= reach)
        {
            if pieces[one].bounds.gap_squared(pieces[two].bounds) > CONTACT * CONTACT {
                continue;
            }
            let (first, second) = (one.min(two), one.max(two));
            let meets = meeting(&pieces[first].segment, &pieces[second].segment, {
                match second - first {
                    1 if count == 2 && closed => Joint::Both,
                    1 => Joint::EndToStart,
                    _ if closed && first == 0 && second == count - 1 => Joint::StartToEnd,
                    _ => Joint::Apart,
                }
            });
            if let Some(at) = meets {
                return Some(OutlineError::CrossesItself { at, first, second });
            }
        }
    }
    None
}

/// Which ends two pieces share.
#[derive(Clone, Copy)]
enum Joint {
    Apart,
    EndToStart,
    StartToEnd,
    Both,
}

fn meeting(first: &Segment, second: &Segment, joint: Joint) -> Option<Point> {
    let (shared, far_first, far_second) = match joint {
        Joint::Apart => {
            let pair = closest(first, second);
            return (pair.square <= CONTACT * CONTACT).then_some(pair.on_first);
        }
        // Two circles meet in two places at most, and these two pieces share both.
        Joint::Both => return None,
        Joint::EndToStart => (first.b, first.a, second.b),
        Joint::StartToEnd => (first.a, first.b, second.a),
    };
    let folded =
        |end: Point, other: &Segment| (other.nearest(end).distance(end) <= CONTACT).then_some(end);
    crossings(first, second)
        .into_iter()
        .flatten()
        .find(|place| place.distance(shared) > SHORTEST)
        .or_else(|| folded(far_first, second))
        .or_else(|| folded(far_second, first))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn polygon(corners: &[(f64, f64)]) -> Result<Outline, OutlineError> {
        let start = Point::new(corners[0].0, corners[0].1);
        corners[1..]
            .iter()
            .fold(OutlineBuilder::start(start), |builder, (x, y)| {
                builder.line_to(Point::new(*x, *y), ())
            })
            .close(())
    }

    #[test]
    fn a_clockwise_square_is_turned_round() {
        let square = polygon(&[(0.0, 0.0), (0.0, 2.0), (2.0, 2.0), (2.0, 0.0)]).unwrap();
        assert!((square.area() - 4.0).abs() < 1e-15);
        let turning: f64 = square
            .pieces()
            .map(|(segment, ())| segment.a.cross(segment.b))
            .sum();
        assert!((turning - 8.0).abs() < 1e-14);
    }

    #[test]
    fn a_bow_tie_is_refused_with_its_crossing() {
        let fault = polygon(&[(0.0, 0.0), (2.0, 2.0), (2.0, 0.0), (0.0, 2.0)]).unwrap_err();
        let OutlineError::CrossesItself { at, .. } = fault else {
            panic!("{fault}")
        };
        assert!(at.distance(Point::new(1.0, 1.0)) < 1e-12);
    }

    #[test]
    fn folding_back_and_zero_walls_are_refused() {
        let spike = polygon(&[(0.0, 0.0), (4.0, 0.0), (2.0, 0.0), (2.0, 2.0)]);
        assert!(matches!(spike, Err(OutlineError::CrossesItself { .. })));
        let touching = polygon(&[(0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (2.0, 0.0), (0.0, 2.0)]);
        assert!(matches!(touching, Err(OutlineError::CrossesItself { .. })));
        let flat = polygon(&[(0.0, 0.0), (4.0, 0.0), (2.0, 0.0)]);
        assert!(flat.is_err());
    }

    #[test]
    fn bad_numbers_are_named() {
        let not_a_number = polygon(&[(0.0, 0.0), (1.0, f64::NAN), (1.0, 1.0)]);
        assert!(matches!(
            not_a_number,
            Err(OutlineError::NotFinite { piece: 0 })
        ));
        let far = polygon(&[(0.0, 0.0), (1.0, 2e4), (1.0, 1.0)]);
        assert!(matches!(far, Err(OutlineError::TooFar { .. })));
        let doubled = polygon(&[(0.0, 0.0), (1e-9, 0.0), (1.0, 0.0), (1.0, 1e-10)]);
        assert!(matches!(doubled, Err(OutlineError::TooFewPieces { .. })));
    }

    #[test]
    fn a_circle_from_one_bulge_and_from_a_full_sweep() {
        let disc = OutlineBuilder::start(Point::new(1.0, 0.0))
            .arc_to(Point::new(0.0, 1.0), (-3.0 * PI / 8.0).tan(), ())
            .close_with(-(PI / 8.0).tan(), ())
            .unwrap();
        assert!((disc.area() - PI).abs() < 1e-14);
        let turned = OutlineBuilder::start(Point::new(3.0, 0.0))
            .arc_about(Point::new(2.0, 0.0), 2.0 * PI, ())
            .close(())
            .unwrap();
        assert!((turned.area() - PI).abs() < 1e-14);
        assert!(turned.centroid().distance(Point::new(2.0, 0.0)) < 1e-14);
    }
}
