//! Where the faces of a ring lie in the half-section, for dimensions between them.

use crate::document::{Design, Face, SeatKind};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Segment};
use crate::ring::{Feature, ResolvedRing};

/// The faces of one ring.
pub struct Faces<'a> {
    design: &'a Design,
    ring: &'a ResolvedRing,
    pieces: Vec<(Segment, Feature)>,
}

/// Faces nearer than this are one, mm.
const SAME: f64 = 1e-6;

impl<'a> Faces<'a> {
    /// The faces of a ring; none of them where it has no shape.
    #[must_use]
    pub fn of(design: &'a Design, evaluation: &Evaluation, ring: &'a ResolvedRing) -> Self {
        let outline = evaluation.parts.as_ref().map(|parts| &parts.through_lug);
        let pieces = outline.map_or_else(Vec::new, |outline| outline.pieces().collect());
        Self {
            design,
            ring,
            pieces,
        }
    }

    /// The faces that this ring has, each once: of two in one plane the first.
    #[must_use]
    pub fn all(&self) -> Vec<Face> {
        let mut found: Vec<(Face, f64)> = Vec::new();
        for face in Face::ALL {
            let Some(place) = self.place(face) else {
                continue;
            };
            if !found.iter().any(|(_, z)| (z - place.x).abs() < SAME) {
                found.push((face, place.x));
            }
        }
        found.into_iter().map(|(face, _)| face).collect()
    }

    /// The distances between two faces that the drawing does not have yet.
    #[must_use]
    pub fn open_distances(&self, from: Face) -> Vec<Face> {
        let is_open = |other: &Face| {
            let distance = crate::document::DimensionId::between(from, *other);
            distance.is_some_and(|distance| self.design.sheet.override_of(distance).is_none())
        };
        self.all().into_iter().filter(is_open).collect()
    }

    /// Where a dimension takes hold of a face; none where the ring has no such face.
    #[must_use]
    pub fn place(&self, face: Face) -> Option<Point> {
        match face {
            Face::Seat => self.outermost(Feature::Seat),
            Face::PlateFront if self.ring.seat == SeatKind::Flush => None,
            Face::PlateFront => self.outermost(Feature::PlateFront),
            Face::FlangeRear => self.outermost(Feature::FlangeRearFace),
            Face::LugFront => self.outermost(Feature::LugFront),
            Face::LugRear => self.outermost(Feature::LugRear),
            Face::Nose => self.outermost(Feature::NoseFace),
            Face::ThreadEnd => self.innermost(Feature::ReliefStart),
            Face::ReliefEnd => self.innermost(Feature::ReliefEnd),
            Face::LipFront => self.innermost(Feature::LipFace),
            Face::LipRear => self.lip_rear(),
            Face::AnnulusFloor => self.innermost(Feature::AnnulusFloor),
        }
    }

    fn ends(&self, feature: Feature) -> impl Iterator<Item = Point> + '_ {
        self.pieces
            .iter()
            .filter(move |(_, own)| *own == feature)
            .flat_map(|(piece, _)| [piece.a, piece.b])
    }

    fn outermost(&self, feature: Feature) -> Option<Point> {
        self.ends(feature).max_by(|a, b| a.y.total_cmp(&b.y))
    }

    fn innermost(&self, feature: Feature) -> Option<Point> {
        self.ends(feature).min_by(|a, b| a.y.total_cmp(&b.y))
    }

    /// The end of the lip bore toward the sensor.
    fn lip_rear(&self) -> Option<Point> {
        self.ends(Feature::LipBore)
            .max_by(|a, b| a.x.total_cmp(&b.x))
    }
}
