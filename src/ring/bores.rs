//! The edges of the ring's bores, as light on its way to the sensor meets them.

use crate::geometry::Outline;
use crate::optics::BoreEdge;

use super::feature::Feature;

/// One edge of a bore.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BoreCorner {
    /// Where it stands, from the image plane, and how wide it is.
    pub edge: BoreEdge,
    /// The bore it belongs to.
    pub feature: Feature,
}

/// Every corner of the inside of a half-section, each once, from the image plane `body_register_mm` behind the
/// flange. Light runs straight, so a land cuts with its two edges and nothing between them. A corner where a straight
/// land meets a tapered one belongs to the straight land.
#[must_use]
pub fn bore_corners(section: &Outline<Feature>, body_register_mm: f64) -> Vec<BoreCorner> {
    let inside = |straight: bool| {
        section.pieces().filter(move |(piece, feature)| {
            is_inside(*feature) && ((piece.a.y - piece.b.y).abs() < SAME_MM) == straight
        })
    };
    let mut corners: Vec<BoreCorner> = Vec::new();
    for (piece, feature) in inside(true).chain(inside(false)) {
        for corner in [piece.a, piece.b] {
            let edge = BoreEdge {
                distance_mm: body_register_mm - corner.x,
                radius_mm: corner.y,
            };
            if !corners.iter().any(|one| is_same(one.edge, edge)) {
                corners.push(BoreCorner { edge, feature });
            }
        }
    }
    corners
}

/// Corners nearer than this are one, mm.
const SAME_MM: f64 = 1e-9;

fn is_same(a: BoreEdge, b: BoreEdge) -> bool {
    (a.distance_mm - b.distance_mm).abs() < SAME_MM && (a.radius_mm - b.radius_mm).abs() < SAME_MM
}

const fn is_inside(feature: Feature) -> bool {
    match feature {
        Feature::CounterboreSide
        | Feature::ThreadChamfer
        | Feature::Thread
        | Feature::LipBore
        | Feature::RearBore => true,
        // These lie between corners of the bores or stand back from them: they add no edge of their own.
        Feature::LipFace
        | Feature::AnnulusFloor
        | Feature::AnnulusSide
        | Feature::ReliefEnd
        | Feature::ReliefFloor
        | Feature::ReliefStart
        | Feature::Seat
        | Feature::BossSide
        | Feature::PlateFront
        | Feature::Rim
        | Feature::FlangeRearFace
        | Feature::GrooveRoot
        | Feature::LugFront
        | Feature::LugTip
        | Feature::LugLeadIn
        | Feature::LugRear
        | Feature::Nose
        | Feature::NoseFace => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{RingKey, demo_designs};
    use crate::ring::{cut_through_a_lug, derive, parts_of};
    use crate::workshop::Workshop;

    #[test]
    fn the_lip_of_the_demo_stands_where_its_sizes_say() {
        let design = demo_designs().unwrap().remove(0);
        let ring = derive(&design, &Workshop::default_set().unwrap())
            .ring
            .unwrap();
        let parts = parts_of(&design, &ring).unwrap();
        let register = design.body.register.number().unwrap();
        let corners = bore_corners(&parts.through_lug, register);
        let lip: Vec<_> = corners
            .iter()
            .filter(|corner| corner.feature == Feature::LipBore)
            .collect();
        assert_eq!(lip.len(), 2);
        let places: Vec<_> = corners.iter().map(|corner| corner.edge).collect();
        for (place, edge) in places.iter().enumerate() {
            assert!(!places[place + 1..].contains(edge), "twice: {edge:?}");
        }
        let face =
            register + ring.sizes.get(RingKey::SeatHeight) - ring.sizes.get(RingKey::LipFaceDepth);
        assert!(
            lip.iter()
                .any(|corner| (corner.edge.distance_mm - face).abs() < 1e-9)
        );
        let radius = ring.sizes.get(RingKey::LipBore) / 2.0;
        assert!(
            lip.iter()
                .all(|corner| (corner.edge.radius_mm - radius).abs() < 1e-9)
        );
        let cut = cut_through_a_lug(&ring);
        assert!(
            ring.lugs
                .iter()
                .any(|lug| (cut - lug.start_deg).rem_euclid(360.0) < lug.extent_deg)
        );
    }
}
