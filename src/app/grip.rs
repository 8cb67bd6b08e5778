//! What a hand can take hold of in a drawing: a dimension, an end of a lug, a whole lug.

use super::edit::Edit;
use crate::document::{Choice, FieldRef, RingKey};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side};
use crate::mount::{Sector, Unit};
use crate::ring::EdgeMotion;

/// A value that follows the hand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grip {
    /// A dimension of the ring.
    Dimension(RingKey),
    /// Where a lug begins, by its place in the list; its end stays.
    LugStart(usize),
    /// Where a lug ends; its beginning stays.
    LugEnd(usize),
    /// A whole lug; its extent stays.
    Lug(usize),
}

/// How the value follows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Follow {
    /// An edge of the half-section.
    Edge(EdgeMotion),
    /// Round the axis, in the plan seen from this side.
    Round(Side),
    /// Away from the axis; the value is a diameter.
    Diameter,
    /// Not by hand: by keys and typing alone.
    Keys,
}

/// A grip, how it follows, and where on the drawing it was taken, mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taken {
    /// What is held.
    pub grip: Grip,
    /// How it follows.
    pub follow: Follow,
    /// Where, mm of the drawing.
    pub place: Point,
    /// Its value when it was taken, in its unit.
    pub value: f64,
}

/// The way of an arrow key on the screen: right and up are positive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Arrow {
    /// To the right.
    Right,
    /// To the left.
    Left,
    /// Up.
    Up,
    /// Down.
    Down,
}

impl Grip {
    /// The name of the value.
    #[must_use]
    pub fn label(self) -> String {
        match self {
            Self::Dimension(key) => key.label().to_owned(),
            Self::LugStart(place) => format!("Lug {} begins at", place + 1),
            Self::LugEnd(place) => format!("Lug {} ends at", place + 1),
            Self::Lug(place) => format!("Lug {} turned to", place + 1),
        }
    }

    /// The field it belongs to.
    #[must_use]
    pub const fn field(self) -> FieldRef {
        match self {
            Self::Dimension(key) => FieldRef::Ring(key),
            Self::LugStart(_) | Self::LugEnd(_) | Self::Lug(_) => FieldRef::Lugs,
        }
    }

    /// The unit of the value.
    #[must_use]
    pub const fn unit(self) -> Unit {
        match self {
            Self::Dimension(key) => key.unit(),
            Self::LugStart(_) | Self::LugEnd(_) | Self::Lug(_) => Unit::Deg,
        }
    }

    /// The value in force; angles of lugs from 0 to 360 degrees.
    #[must_use]
    pub fn value(self, evaluation: &Evaluation) -> Option<f64> {
        let lug = |place: usize| lugs(evaluation)?.get(place);
        match self {
            Self::Dimension(key) => evaluation.derivation.dimension(key)?.value,
            Self::LugStart(place) | Self::Lug(place) => {
                Some(lug(place)?.start_deg.rem_euclid(360.0))
            }
            Self::LugEnd(place) => Some(lug(place)?.end_deg().rem_euclid(360.0)),
        }
    }

    /// The change that gives it a value.
    #[must_use]
    pub fn edit(self, evaluation: &Evaluation, value: f64) -> Option<Edit> {
        let with_lug = |place: usize, change: &dyn Fn(Sector) -> Sector| {
            let mut lugs = lugs(evaluation)?.to_vec();
            let lug = lugs.get_mut(place)?;
            *lug = change(*lug);
            Some(Edit::Lugs(Choice::Set(lugs)))
        };
        match self {
            Self::Dimension(key) => Some(Edit::Dimension(key, value)),
            Self::LugStart(place) => with_lug(place, &|lug| Sector {
                start_deg: value.rem_euclid(360.0),
                extent_deg: (lug.end_deg() - value).rem_euclid(360.0),
            }),
            Self::LugEnd(place) => with_lug(place, &|lug| Sector {
                extent_deg: (value - lug.start_deg).rem_euclid(360.0),
                ..lug
            }),
            Self::Lug(place) => with_lug(place, &|lug| Sector {
                start_deg: value.rem_euclid(360.0),
                ..lug
            }),
        }
    }

    /// The step that a hand moves it by: 0.05 mm or a whole degree; finer 0.01 mm or a tenth of a degree.
    #[must_use]
    pub const fn step(self, fine: bool) -> f64 {
        match (matches!(self.unit(), Unit::Deg), fine) {
            (true, false) => 1.0,
            (true, true) => 0.1,
            (false, false) => 0.05,
            (false, true) => 0.01,
        }
    }
}

fn lugs(evaluation: &Evaluation) -> Option<&[Sector]> {
    Some(evaluation.derivation.ring.as_ref()?.lugs.as_slice())
}

impl Taken {
    /// The value once the hand, which took hold at `from`, has come to `to`, mm of the drawing; not yet on a step.
    #[must_use]
    pub fn value_at(&self, from: Point, to: Point) -> f64 {
        match self.follow {
            Follow::Edge(motion) => motion.value_after(Point {
                x: to.x - from.x,
                y: to.y - from.y,
            }),
            Follow::Round(side) => {
                let turned = clock_deg(to, side) - clock_deg(from, side);
                self.value + (turned + 180.0).rem_euclid(360.0) - 180.0
            }
            Follow::Diameter => self.value + 2.0 * (to.x.hypot(to.y) - from.x.hypot(from.y)),
            Follow::Keys => self.value,
        }
    }

    /// Whether an arrow key makes the value greater (1) or less (-1); none where it does not go that way.
    #[must_use]
    pub fn sign_of(&self, arrow: Arrow) -> Option<f64> {
        let (x, y) = match arrow {
            Arrow::Right => (1.0, 0.0),
            Arrow::Left => (-1.0, 0.0),
            Arrow::Up => (0.0, 1.0),
            Arrow::Down => (0.0, -1.0),
        };
        match self.follow {
            Follow::Edge(motion) => {
                let along = x * motion.per_mm.x + y * motion.per_mm.y;
                let size = motion.per_mm.x.hypot(motion.per_mm.y);
                (along.abs() > 0.5 * size).then(|| along.signum())
            }
            Follow::Round(_) | Follow::Diameter | Follow::Keys => Some(x + y),
        }
    }

    /// Where the grip is once its value is another one, mm of the drawing.
    #[must_use]
    pub fn place_at(&self, value: f64) -> Point {
        match self.follow {
            Follow::Edge(motion) => Point {
                x: self.place.x + motion.per_mm.x * (value - self.value),
                y: self.place.y + motion.per_mm.y * (value - self.value),
            },
            Follow::Round(_) | Follow::Diameter | Follow::Keys => self.place,
        }
    }
}

/// The clock angle of a place of the plan as it is seen from a side, degrees seen from the lens side.
#[must_use]
pub fn clock_deg(place: Point, side: Side) -> f64 {
    let across = match side {
        Side::Lens => place.x,
        Side::Body => -place.x,
    };
    across.atan2(place.y).to_degrees().rem_euclid(360.0)
}

/// The nearest whole step; no crumbs of binary fractions are left.
#[must_use]
pub fn on_step(value: f64, step: f64) -> f64 {
    let per_unit = (1.0 / step).round();
    (value * per_unit).round() / per_unit
}

#[cfg(test)]
mod tests {
    use super::*;

    fn taken(follow: Follow, value: f64) -> Taken {
        Taken {
            grip: Grip::Lug(0),
            follow,
            place: Point { x: 0.0, y: 0.0 },
            value,
        }
    }

    fn at(clock_deg: f64, radius: f64) -> Point {
        let (sin, cos) = clock_deg.to_radians().sin_cos();
        Point {
            x: radius * sin,
            y: radius * cos,
        }
    }

    #[test]
    fn steps_are_whole() {
        assert_eq!(on_step(31.4637, 0.05).to_string(), "31.45");
        assert_eq!(on_step(31.4637, 0.01).to_string(), "31.46");
        assert_eq!(on_step(0.1 + 0.2, 0.05).to_string(), "0.3");
        assert_eq!(on_step(17.6, 1.0).to_string(), "18");
        assert!((Grip::Dimension(RingKey::LockHoleAngle).step(false) - 1.0).abs() < 1e-12);
        assert!((Grip::Dimension(RingKey::LipBore).step(true) - 0.01).abs() < 1e-12);
    }

    #[test]
    fn round_the_axis_the_short_way_counts_over_noon_too() {
        let hand = taken(Follow::Round(Side::Lens), 355.0);
        assert!((hand.value_at(at(350.0, 20.0), at(10.0, 24.0)) - 375.0).abs() < 1e-9);
        assert!((hand.value_at(at(10.0, 20.0), at(350.0, 20.0)) - 335.0).abs() < 1e-9);
    }

    #[test]
    fn from_the_body_side_the_same_move_turns_the_other_way() {
        // A hand that goes from 12 o'clock to the right.
        let (from, to) = (at(0.0, 20.0), at(30.0, 20.0));
        assert!((taken(Follow::Round(Side::Lens), 0.0).value_at(from, to) - 30.0).abs() < 1e-9);
        assert!((taken(Follow::Round(Side::Body), 0.0).value_at(from, to) + 30.0).abs() < 1e-9);
    }

    #[test]
    fn a_diameter_grows_by_twice_what_the_hand_goes_out() {
        let hand = taken(Follow::Diameter, 51.2);
        assert!((hand.value_at(at(40.0, 25.0), at(70.0, 25.3)) - 51.8).abs() < 1e-9);
    }

    #[test]
    fn an_arrow_moves_an_edge_its_own_way_only() {
        let motion = EdgeMotion {
            key: RingKey::SeatHeight,
            value: 1.46,
            per_mm: Point { x: -1.0, y: 0.0 },
        };
        let hand = taken(Follow::Edge(motion), 1.46);
        assert_eq!(hand.sign_of(Arrow::Left), Some(1.0));
        assert_eq!(hand.sign_of(Arrow::Right), Some(-1.0));
        assert_eq!(hand.sign_of(Arrow::Up), None);
        assert!((hand.place_at(1.96).x + 0.5).abs() < 1e-12);
    }
}
