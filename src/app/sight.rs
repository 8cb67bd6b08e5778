//! From millimetres of the part to points of the screen and back: zoom, pan, show all.

use egui::{Pos2, Rect, Vec2, pos2};

use crate::drawing::{Extent, LineGroup};
use crate::geometry::Point;

/// Where a canvas looks.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub enum Sight {
    /// At the ring and a little round it, whatever the window's size.
    #[default]
    Ring,
    /// At everything.
    Everything,
    /// At a place of the user's choice.
    Place(Look),
}

/// What there is to look at.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Scope {
    /// The ring with a little room round it.
    pub ring: Option<Extent>,
    /// Everything that is drawn.
    pub everything: Option<Extent>,
}

impl Scope {
    /// The scope that holds both.
    #[must_use]
    pub fn union(self, other: Self) -> Self {
        let both = |one: Option<Extent>, two: Option<Extent>| match (one, two) {
            (Some(one), Some(two)) => Some(one.union(two)),
            (one, two) => one.or(two),
        };
        Self {
            ring: both(self.ring, other.ring),
            everything: both(self.everything, other.everything),
        }
    }
}

/// A place and how large it is shown.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Look {
    middle: Point,
    points_per_mm: f64,
}

/// How what is measured on paper is shown: lettering, line widths, dashes, hatching.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Print {
    /// Points of the screen for a millimetre of paper.
    pub points_per_mm: f64,
    /// The line widths.
    pub group: LineGroup,
}

impl Print {
    /// As on the views of the part: of one size on the screen, whatever the zoom.
    pub const STEADY: Self = Self {
        points_per_mm: 3.4,
        group: LineGroup::Half,
    };
}

/// The way from millimetres to the screen. Worked in `f64`; only the last step is single precision.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ToScreen {
    /// Points of the screen for a millimetre of the part.
    pub points_per_mm: f64,
    /// How lettering, line widths and hatching are shown.
    pub print: Print,
    middle: Point,
    screen: (f64, f64),
}

/// Closest and farthest that a canvas zooms, points for a millimetre.
const ZOOM_RANGE: (f64, f64) = (0.2, 400.0);
/// Free border round everything, points; on a small canvas less, as a share of its side.
const BORDER: f64 = 26.0;
const BORDER_SHARE: f64 = 0.08;

#[expect(
    clippy::cast_possible_truncation,
    reason = "the screen is painted in single precision"
)]
fn single(value: f64) -> f32 {
    value as f32
}

impl ToScreen {
    /// The same for a sheet: lettering and line widths grow with it.
    #[must_use]
    pub const fn of_a_sheet(self, group: LineGroup) -> Self {
        let print = Print {
            points_per_mm: self.points_per_mm,
            group,
        };
        Self { print, ..self }
    }

    /// A point of the part on the screen.
    #[must_use]
    pub fn at(&self, point: Point) -> Pos2 {
        pos2(
            single(self.screen.0 + (point.x - self.middle.x) * self.points_per_mm),
            single(self.screen.1 - (point.y - self.middle.y) * self.points_per_mm),
        )
    }

    /// A point of the screen on the part.
    #[must_use]
    pub fn back(&self, at: Pos2) -> Point {
        Point {
            x: self.middle.x + (f64::from(at.x) - self.screen.0) / self.points_per_mm,
            y: self.middle.y - (f64::from(at.y) - self.screen.1) / self.points_per_mm,
        }
    }
}

impl Sight {
    /// The way to the screen for a rectangle of it.
    #[must_use]
    pub fn to_screen(self, rect: Rect, scope: Scope) -> ToScreen {
        let look = match self {
            Self::Ring => fitting(rect, scope.ring.or(scope.everything)),
            Self::Everything => fitting(rect, scope.everything),
            Self::Place(look) => look,
        };
        let screen = (f64::from(rect.center().x), f64::from(rect.center().y));
        ToScreen {
            points_per_mm: look.points_per_mm,
            print: Print::STEADY,
            middle: look.middle,
            screen,
        }
    }

    /// The place that is looked at, so that several canvases of one size look at the same.
    #[must_use]
    pub fn at_place(self, rect: Rect, scope: Scope) -> Self {
        let way = self.to_screen(rect, scope);
        Self::Place(Look {
            middle: way.middle,
            points_per_mm: way.points_per_mm,
        })
    }

    /// Moves with the pointer.
    pub fn pan(&mut self, way: &ToScreen, by: Vec2) {
        let middle = Point {
            x: way.middle.x - f64::from(by.x) / way.points_per_mm,
            y: way.middle.y + f64::from(by.y) / way.points_per_mm,
        };
        *self = Self::Place(Look {
            middle,
            points_per_mm: way.points_per_mm,
        });
    }

    /// Zooms by a factor; what lies under `about` stays there.
    pub fn zoom(&mut self, way: &ToScreen, factor: f64, about: Pos2) {
        let points_per_mm = (way.points_per_mm * factor).clamp(ZOOM_RANGE.0, ZOOM_RANGE.1);
        let fixed = way.back(about);
        let middle = Point {
            x: fixed.x - (f64::from(about.x) - way.screen.0) / points_per_mm,
            y: fixed.y + (f64::from(about.y) - way.screen.1) / points_per_mm,
        };
        *self = Self::Place(Look {
            middle,
            points_per_mm,
        });
    }
}

fn fitting(rect: Rect, everything: Option<Extent>) -> Look {
    let Some(extent) = everything else {
        return Look {
            middle: Point { x: 0.0, y: 0.0 },
            points_per_mm: 5.0,
        };
    };
    let room = |side: f32| {
        let side = f64::from(side);
        (side - 2.0 * BORDER.min(BORDER_SHARE * side)).max(20.0)
    };
    let across = room(rect.width()) / extent.width().max(1e-3);
    let up = room(rect.height()) / extent.height().max(1e-3);
    let points_per_mm = across.min(up).clamp(ZOOM_RANGE.0, ZOOM_RANGE.1);
    Look {
        middle: extent.centre(),
        points_per_mm,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rect() -> Rect {
        Rect::from_min_size(pos2(100.0, 50.0), Vec2::new(600.0, 400.0))
    }

    fn extent() -> Scope {
        let everything = Some(Extent::between(
            Point { x: -8.0, y: 0.0 },
            Point { x: 8.0, y: 34.0 },
        ));
        Scope {
            ring: None,
            everything,
        }
    }

    #[test]
    fn everything_lies_inside() {
        let way = Sight::default().to_screen(rect(), extent());
        for corner in extent().everything.unwrap().corners() {
            assert!(rect().contains(way.at(corner)));
        }
    }

    #[test]
    fn up_is_up() {
        let way = Sight::default().to_screen(rect(), extent());
        assert!(way.at(Point { x: 0.0, y: 30.0 }).y < way.at(Point { x: 0.0, y: 0.0 }).y);
    }

    #[test]
    fn what_is_under_the_pointer_stays_there() {
        let mut sight = Sight::default();
        let pointer = pos2(231.0, 322.0);
        let way = sight.to_screen(rect(), extent());
        let held = way.back(pointer);
        sight.zoom(&way, 2.5, pointer);
        let now = sight.to_screen(rect(), extent());
        assert!((now.points_per_mm / way.points_per_mm - 2.5).abs() < 1e-12);
        assert!((now.at(held) - pointer).length() < 1e-3);
        sight.pan(&now, Vec2::new(10.0, -4.0));
        let moved = sight.to_screen(rect(), extent()).at(held);
        assert!((moved - pointer - Vec2::new(10.0, -4.0)).length() < 1e-3);
    }

    #[test]
    fn zoom_stops_at_its_ends() {
        let mut sight = Sight::default();
        for _ in 0..200 {
            let way = sight.to_screen(rect(), extent());
            sight.zoom(&way, 2.0, rect().center());
        }
        assert!((sight.to_screen(rect(), extent()).points_per_mm - ZOOM_RANGE.1).abs() < 1e-9);
    }
}
