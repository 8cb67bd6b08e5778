//! The dimensioned half-section on the sheet.

use crate::document::Design;
use crate::drawing::dimension::{FIRST_LINE_MM, Style};
use crate::drawing::dimension_side::{Edge, SideDimension, side};
use crate::drawing::extent::Extent;
use crate::drawing::outlines::pieces_of;
use crate::drawing::ring_dimensions::section_dimensions;
use crate::drawing::ring_sheet::format_of;
use crate::drawing::section_view::{SectionOptions, in_any, section_view};
use crate::drawing::tiers::TEXT_CLEARANCE_MM;
use crate::drawing::{Annotation, Item, LineType, Role, Scene, Shape};
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::ring::{Feature, ResolvedRing};

/// Distance of the hatch lines on paper, mm.
const HATCH_MM: f64 = 1.8;
/// How far the axis runs past the part on paper, mm: not as far as the first dimension line.
const AXIS_OVERRUN_MM: f64 = 3.0;
/// Least distance of two lines that must be told apart, mm on paper (ISO 128-2).
const APART_MM: f64 = 0.7;

/// The half-section of a ring at a scale, for its sheet.
pub struct RingSection<'a> {
    /// The design.
    pub design: &'a Design,
    /// What it came to.
    pub evaluation: &'a Evaluation,
    /// Its ring.
    pub ring: &'a ResolvedRing,
    /// The lettering.
    pub style: Style,
    /// Paper mm per mm of the part.
    pub factor: f64,
}

impl RingSection<'_> {
    /// The half-section as drawn on paper: the axis at height 0.
    #[must_use]
    pub fn drawn(&self) -> Annotation {
        let mut drawn = self.view();
        let Some(part) = self.part_extent() else {
            return drawn;
        };
        let sides = section_dimensions(
            self.design,
            self.evaluation,
            self.ring,
            self.style,
            self.factor,
        );
        for one in sides {
            let wanted: Vec<SideDimension> = one
                .dimensions
                .into_iter()
                .map(|dimension| SideDimension {
                    from: self.on_paper(dimension.from),
                    to: self.on_paper(dimension.to),
                    ..dimension
                })
                .collect();
            let around = if one.edge == Edge::Bottom {
                lowered(part, &drawn, &wanted, &self.style)
            } else {
                part
            };
            for done in side(&wanted, one.edge, &around, &self.style) {
                drawn.join(done.drawn);
            }
        }
        drawn
    }

    fn on_paper(&self, point: Point) -> Point {
        Point {
            x: point.x * self.factor,
            y: point.y * self.factor,
        }
    }

    /// The cut ring; where the cut runs between the lugs, with a lug turned into it.
    fn view(&self) -> Annotation {
        let group = format_of(self.design).line_group();
        let angle_deg = self.design.sheet.section_angle_deg;
        let apart_mm = APART_MM.max(2.0 * LineType::ContinuousWide.width_mm(group));
        let options = SectionOptions {
            angle_deg,
            partners: false,
            edges_behind: true,
            least_thread_gap_mm: apart_mm / self.factor,
            hatch_spacing_mm: HATCH_MM,
            axis_overrun_mm: AXIS_OVERRUN_MM / self.factor,
        };
        let mut view = section_view(self.design, self.evaluation, &options);
        if let Some(parts) = self
            .evaluation
            .parts
            .as_ref()
            .filter(|_| !in_any(&self.ring.lugs, angle_deg))
        {
            for (path, feature) in pieces_of(&parts.through_lug) {
                if is_of_a_lug(feature) {
                    view.draw(
                        Shape::Path(path),
                        LineType::LongDashDoubleDotNarrow,
                        Role::Ring,
                    );
                }
            }
        }
        let mut placed = Scene::default();
        placed.place(&view, self.factor, Point { x: 0.0, y: 0.0 });
        Annotation {
            items: placed.items,
            boxes: Vec::new(),
        }
    }

    /// What the ring itself covers on paper, axis included.
    fn part_extent(&self) -> Option<Extent> {
        let bounds = self.evaluation.parts.as_ref()?.through_lug.bounding_box();
        let (low, high) = (self.on_paper(bounds.min), self.on_paper(bounds.max));
        Some(Extent {
            left: low.x,
            bottom: 0.0,
            right: high.x,
            top: high.y,
        })
    }
}

/// The part reaching down so far that the first level dimension under it, lettering included, keeps clear of all
/// that is drawn there already.
fn lowered(part: Extent, drawn: &Annotation, wanted: &[SideDimension], style: &Style) -> Extent {
    let lowest = drawn
        .items
        .iter()
        .filter_map(Item::extent)
        .map(|extent| extent.bottom)
        .fold(part.bottom, f64::min);
    let rise = wanted
        .iter()
        .map(|one| one.label.baseline_mm(style) + one.label.rise_mm(style))
        .fold(0.0, f64::max);
    let spare = FIRST_LINE_MM - rise - TEXT_CLEARANCE_MM;
    Extent {
        bottom: part.bottom.min(lowest + spare.max(0.0)),
        ..part
    }
}

const fn is_of_a_lug(feature: Feature) -> bool {
    match feature {
        Feature::LugFront | Feature::LugTip | Feature::LugLeadIn | Feature::LugRear => true,
        Feature::Seat
        | Feature::BossSide
        | Feature::CounterboreSide
        | Feature::PlateFront
        | Feature::Rim
        | Feature::FlangeRearFace
        | Feature::GrooveRoot
        | Feature::Nose
        | Feature::NoseFace
        | Feature::RearBore
        | Feature::LipBore
        | Feature::LipFace
        | Feature::AnnulusFloor
        | Feature::AnnulusSide
        | Feature::ReliefEnd
        | Feature::ReliefFloor
        | Feature::ReliefStart
        | Feature::Thread
        | Feature::ThreadChamfer => false,
    }
}
