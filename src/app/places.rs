//! Where a finding or a field lies in the two drawings.

use super::pick::Picked;
use super::view::{Lit, Selection};
use crate::checks::{Finding, Place};
pub use crate::compare::places::in_plan;
use crate::document::FieldRef;
use crate::drawing::{Item, LineType, Path, Role, Scene, Shape, Vertex};
use crate::evaluate::Evaluation;
use crate::geometry::{Point, Side};
use crate::mount::Sector;

/// What is to light up: numbered items, and places that no item shows.
#[derive(Clone, Debug, Default)]
pub struct Light {
    fields: Vec<FieldRef>,
    features: Vec<crate::ring::Feature>,
    places: Vec<Place>,
    /// Changes with what is lit.
    pub number: u64,
}

impl Light {
    /// The light of what is pointed at.
    #[must_use]
    pub fn of(selection: &Selection, evaluation: &Evaluation) -> Self {
        Self::of_lit(selection.lit(), evaluation)
    }

    /// The light of a field or a finding in one design of several.
    #[must_use]
    pub fn of_lit(lit: Option<Lit>, evaluation: &Evaluation) -> Self {
        match lit {
            None => Self::default(),
            Some(Lit::Field(field)) => Self {
                fields: vec![field],
                number: hashed(&("field", field)),
                ..Self::default()
            },
            Some(Lit::Finding(key)) => {
                let number = hashed(&("finding", key));
                let light = evaluation
                    .finding(key)
                    .map(Self::of_finding)
                    .unwrap_or_default();
                Self { number, ..light }
            }
        }
    }

    fn of_finding(finding: &Finding) -> Self {
        let mut light = Self::default();
        for place in &finding.places {
            match place {
                Place::Feature(feature) => light.features.push(*feature),
                Place::Field(field) => light.fields.push(*field),
                Place::Span { .. } | Place::Plan { .. } | Place::Hole { .. } => {
                    light.places.push(place.clone());
                }
            }
        }
        light
    }

    /// Whether the item of this number lights up.
    #[must_use]
    pub fn falls_on(&self, tag: u32) -> bool {
        let Some(picked) = Picked::of(tag) else {
            return false;
        };
        let by_feature =
            matches!(picked, Picked::Feature(feature) if self.features.contains(&feature));
        by_feature || self.fields.iter().any(|field| picked.belongs_to(*field))
    }

    /// The places in the half-section that no item shows.
    #[must_use]
    pub fn in_section(&self) -> Scene {
        let mut scene = Scene::view();
        for place in &self.places {
            match place {
                Place::Span { a, b } => {
                    let (a, b) = (Point { x: a.0, y: a.1 }, Point { x: b.0, y: b.1 });
                    scene.items.extend(span(a, b));
                }
                Place::Plan { .. } | Place::Hole { .. } | Place::Feature(_) | Place::Field(_) => {}
            }
        }
        scene
    }

    /// The places in the plan that no item shows.
    #[must_use]
    pub fn in_plan(&self, side: Side) -> Scene {
        let mut scene = Scene::view();
        for place in &self.places {
            let shape = match place {
                Place::Plan {
                    sector,
                    inner_mm,
                    outer_mm,
                } => Shape::Path(sector_path(*sector, *inner_mm, *outer_mm, side)),
                Place::Hole {
                    angle_deg,
                    radius_mm,
                    diameter_mm,
                } => Shape::Circle {
                    centre: in_plan(*radius_mm, *angle_deg, side),
                    radius_mm: diameter_mm / 2.0,
                },
                Place::Span { .. } | Place::Feature(_) | Place::Field(_) => continue,
            };
            scene.draw(shape, LineType::ContinuousWide, Role::Highlight);
        }
        scene
    }
}

/// A stretch with a ring at both ends, so that a very short one is seen too.
fn span(a: Point, b: Point) -> [Item; 3] {
    const END_MM: f64 = 0.18;
    let lit = |shape| Item::new(shape, LineType::ContinuousWide, Role::Highlight);
    [
        lit(Shape::Path(Path::line(a, b))),
        lit(Shape::Circle {
            centre: a,
            radius_mm: END_MM,
        }),
        lit(Shape::Circle {
            centre: b,
            radius_mm: END_MM,
        }),
    ]
}

/// The border of an annular sector, in steps of two degrees.
fn sector_path(sector: Sector, inner_mm: f64, outer_mm: f64, side: Side) -> Path {
    const STEP_DEG: f64 = 2.0;
    let steps = (sector.extent_deg / STEP_DEG).ceil().max(1.0);
    let at = |radius: f64, share: f64| {
        let angle_deg = sector.start_deg + sector.extent_deg * share;
        Vertex::straight(in_plan(radius, angle_deg, side))
    };
    let shares: Vec<f64> = std::iter::successors(Some(0.0), |step| Some(step + 1.0))
        .take_while(|step| *step <= steps)
        .map(|step| step / steps)
        .collect();
    let outer = shares.iter().map(|share| at(outer_mm, *share));
    let inner = shares.iter().rev().map(|share| at(inner_mm, *share));
    Path {
        vertices: outer.chain(inner).collect(),
        closed: true,
    }
}

fn hashed(of: &impl std::hash::Hash) -> u64 {
    use std::hash::Hasher as _;
    // Fixed keys: the same light has the same number in every run.
    let mut hasher = std::hash::DefaultHasher::new();
    of.hash(&mut hasher);
    hasher.finish()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_sector_closes_over_its_whole_extent() {
        let sector = Sector {
            start_deg: 350.0,
            extent_deg: 20.0,
        };
        let path = sector_path(sector, 10.0, 12.0, Side::Lens);
        assert!(path.closed);
        let extent = path.extent().unwrap();
        // Symmetric about 12 o'clock, 12 mm up, half width 12 sin 10 degrees = 2.0838 mm.
        assert!((extent.top - 12.0).abs() < 1e-9);
        assert!((extent.right - 2.083_778).abs() < 1e-5 && (extent.left + 2.083_778).abs() < 1e-5);
    }

    #[test]
    fn seen_from_the_body_side_a_place_lies_on_the_other_hand() {
        let sector = Sector {
            start_deg: 80.0,
            extent_deg: 20.0,
        };
        let lens = sector_path(sector, 10.0, 12.0, Side::Lens)
            .extent()
            .unwrap();
        let body = sector_path(sector, 10.0, 12.0, Side::Body)
            .extent()
            .unwrap();
        assert!(lens.left > 0.0 && body.right < 0.0);
    }
}
