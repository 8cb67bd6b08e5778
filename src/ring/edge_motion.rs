//! Which dimension moves an edge of the half-section, and which way: by a difference quotient of the outline.

use crate::document::{Choice, Design, RingKey};
use crate::geometry::{Outline, Point, Segment};
use crate::workshop::Workshop;

use super::derive::derive;
use super::feature::Feature;
use super::parts::Parts;
use super::parts_of;

/// How an edge goes with a dimension.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct EdgeMotion {
    /// The dimension that moves it.
    pub key: RingKey,
    /// The dimension's present value, in its unit.
    pub value: f64,
    /// How far (z, r) the edge goes for one more millimetre of the dimension, mm.
    pub per_mm: Point,
}

impl EdgeMotion {
    /// The value of the dimension once the edge has gone as far as a hand that moved by (z, r), mm.
    ///
    /// What the hand moves beside the edge's own way does not count.
    #[must_use]
    pub fn value_after(&self, by: Point) -> f64 {
        let own = self.per_mm.x.hypot(self.per_mm.y).powi(2);
        self.value + (by.x * self.per_mm.x + by.y * self.per_mm.y) / own
    }

    /// Whether the edge goes along the axis rather than away from it.
    #[must_use]
    pub fn is_axial(&self) -> bool {
        self.per_mm.x.abs() > self.per_mm.y.abs()
    }
}

/// Which outline an edge is looked for in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Cut {
    /// Through a lug.
    ThroughLug,
    /// Between the lugs.
    BetweenLugs,
}

impl Cut {
    /// The outline of this cut.
    #[must_use]
    pub const fn outline(self, parts: &Parts) -> &Outline<Feature> {
        match self {
            Self::ThroughLug => &parts.through_lug,
            Self::BetweenLugs => &parts.between_lugs,
        }
    }
}

/// The step of the quotient, mm: well above rounding, well below every size.
const STEP_MM: f64 = 0.005;
/// Less than this for a millimetre is no motion but noise.
const LEAST: f64 = 0.05;

/// Which dimension moves the piece of this feature that lies nearest to a point (z, r), and which way.
///
/// Of the feature's own dimensions the first that moves the piece across itself is taken, then the first that makes
/// it longer at one end; last those of [`neighbours`]. None where the ring is not whole, where the piece is the datum
/// that everything is drawn from, or where no value near the present one makes a ring.
#[must_use]
pub fn edge_motion(
    design: &Design,
    workshop: &Workshop,
    feature: Feature,
    near: Point,
    cut: Cut,
) -> Option<EdgeMotion> {
    let derivation = derive(design, workshop);
    let parts = parts_of(design, derivation.ring.as_ref()?).ok()?;
    let place = nearest_piece(cut.outline(&parts), feature, near)?;
    let here = piece(cut.outline(&parts), feature, place)?;
    let quotient = |key: RingKey| {
        let value = derivation.dimension(key)?.value?;
        [STEP_MM, -STEP_MM].into_iter().find_map(|step| {
            let changed = with(design, key, value + step);
            let ring = derive(&changed, workshop).ring?;
            let parts = parts_of(&changed, &ring).ok()?;
            let there = piece(cut.outline(&parts), feature, place)?;
            let ends = [(here.a, there.a), (here.b, there.b)];
            let per_mm = ends.map(|(from, to)| Point {
                x: (to.x - from.x) / step,
                y: (to.y - from.y) / step,
            });
            moves(per_mm).then_some((key, value, per_mm))
        })
    };
    let own = feature.dimensions();
    let across = |key: RingKey| {
        let (key, value, ends) = quotient(key)?;
        let per_mm = across_itself(here, ends)?;
        Some(EdgeMotion { key, value, per_mm })
    };
    let at_an_end = |key: RingKey| {
        let (key, value, ends) = quotient(key)?;
        let per_mm = farther(ends);
        Some(EdgeMotion { key, value, per_mm })
    };
    own.iter()
        .copied()
        .find_map(across)
        .or_else(|| neighbours(feature).iter().copied().find_map(across))
        .or_else(|| own.iter().copied().find_map(at_an_end))
        .or_else(|| neighbours(feature).iter().copied().find_map(at_an_end))
}

/// The dimensions that move a feature where its own do not, as the half-section is built up.
const fn neighbours(feature: Feature) -> &'static [RingKey] {
    match feature {
        // The far end of the relief is the lip face, or the end of the thread chamber.
        Feature::ReliefEnd => &[RingKey::LipFaceDepth],
        // The relief begins where the thread ends.
        Feature::ReliefStart => &[RingKey::ThreadLength],
        // The spigot may end at the lip or behind the lug.
        Feature::NoseFace => &[RingKey::LipThickness, RingKey::LugThickness],
        // A lug that ends at the nose goes with it; so does a thread that runs right through.
        Feature::LugRear | Feature::Thread => &[RingKey::SpigotLength],
        Feature::Seat
        | Feature::BossSide
        | Feature::CounterboreSide
        | Feature::PlateFront
        | Feature::Rim
        | Feature::FlangeRearFace
        | Feature::GrooveRoot
        | Feature::LugFront
        | Feature::LugTip
        | Feature::LugLeadIn
        | Feature::Nose
        | Feature::RearBore
        | Feature::LipBore
        | Feature::LipFace
        | Feature::AnnulusFloor
        | Feature::AnnulusSide
        | Feature::ReliefFloor
        | Feature::ThreadChamfer => &[],
    }
}

fn with(design: &Design, key: RingKey, value: f64) -> Design {
    let mut changed = design.clone();
    changed.ring.dimensions.get_mut(key).value = Choice::Set(value);
    changed
}

fn of_feature(outline: &Outline<Feature>, feature: Feature) -> impl Iterator<Item = Segment> {
    outline
        .pieces()
        .filter(move |(_, tag)| *tag == feature)
        .map(|(segment, _)| segment)
}

fn piece(outline: &Outline<Feature>, feature: Feature, place: usize) -> Option<Segment> {
    of_feature(outline, feature).nth(place)
}

fn nearest_piece(outline: &Outline<Feature>, feature: Feature, near: Point) -> Option<usize> {
    of_feature(outline, feature)
        .map(|segment| distance_mm(&segment, near))
        .enumerate()
        .min_by(|(_, one), (_, other)| one.total_cmp(other))
        .map(|(place, _)| place)
}

/// The middle of a piece, taken on its chord.
#[must_use]
pub fn middle_of(segment: &Segment) -> Point {
    Point {
        x: f64::midpoint(segment.a.x, segment.b.x),
        y: f64::midpoint(segment.a.y, segment.b.y),
    }
}

/// Distance of a point from the chord of a piece, mm.
fn distance_mm(segment: &Segment, at: Point) -> f64 {
    let (along_x, along_y) = (segment.b.x - segment.a.x, segment.b.y - segment.a.y);
    let length_squared = along_x * along_x + along_y * along_y;
    let share = if length_squared > 0.0 {
        (((at.x - segment.a.x) * along_x + (at.y - segment.a.y) * along_y) / length_squared)
            .clamp(0.0, 1.0)
    } else {
        0.0
    };
    (segment.a.x + share * along_x - at.x).hypot(segment.a.y + share * along_y - at.y)
}

fn moves(ends: [Point; 2]) -> bool {
    ends.iter().any(|end| end.x.hypot(end.y) > LEAST)
}

/// The motion of the middle of a piece, as far as it goes across the piece.
fn across_itself(segment: Segment, ends: [Point; 2]) -> Option<Point> {
    let [a, b] = ends;
    let middle = Point {
        x: f64::midpoint(a.x, b.x),
        y: f64::midpoint(a.y, b.y),
    };
    let (along_x, along_y) = (segment.b.x - segment.a.x, segment.b.y - segment.a.y);
    let length = along_x.hypot(along_y);
    if length <= 0.0 {
        return None;
    }
    let normal = Point {
        x: -along_y / length,
        y: along_x / length,
    };
    let across = middle.x * normal.x + middle.y * normal.y;
    (across.abs() > LEAST).then_some(Point {
        x: normal.x * across,
        y: normal.y * across,
    })
}

/// The motion of the end that goes farther.
fn farther(ends: [Point; 2]) -> Point {
    let [a, b] = ends;
    if a.x.hypot(a.y) >= b.x.hypot(b.y) {
        a
    } else {
        b
    }
}

#[cfg(test)]
#[path = "edge_motion_tests.rs"]
mod tests;
