//! The dimensioned half-section on the sheet.

use crate::document::{Design, DimensionId, RingKey};
use crate::drawing::dimension::{Leader, Linear, Style, Terminator, detail_circle, leader};
use crate::drawing::dimension_side::{Edge, SideDimension, side};
use crate::drawing::extent::Extent;
use crate::drawing::free_room::Occupied;
use crate::drawing::outlines::pieces_of;
use crate::drawing::placed_dimension::{Form, PlacedDimension, SheetView};
use crate::drawing::ring_detail::Detail;
use crate::drawing::ring_dimensions::{SectionSide, SectionSize, relief_note, section_dimensions};
use crate::drawing::ring_sheet::format_of;
use crate::drawing::ring_signs::{RingSigns, Signs};
use crate::drawing::section_view::{SectionOptions, in_any, section_view};
use crate::drawing::spot::Search;
use crate::drawing::{Annotation, LineType, Role, Scene, Shape};
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::ring::{Feature, ResolvedRing};

/// Distance of the hatch lines on paper, mm.
pub const HATCH_MM: f64 = 1.8;
/// How far the axis runs past what is drawn, mm on paper (common practice, no source).
const AXIS_OVERRUN_MM: f64 = 3.0;
/// Least distance of two lines that must be told apart, mm on paper (ISO 128-2).
const APART_MM: f64 = 0.7;
/// Directions of the leader to the relief, degrees: into the bore.
const TO_THE_BORE_DEG: [f64; 8] = [300.0, 315.0, 240.0, 225.0, 285.0, 255.0, 330.0, 210.0];
/// Places round its circle where the letter of a detail may stand.
const LETTER_PLACES: u32 = 24;
/// How much farther from its circle it may stand, in lettering heights.
const LETTER_FARTHER: [f64; 4] = [0.0, 0.5, 1.0, 1.6];

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
    /// The details that are drawn enlarged beside it.
    pub details: &'a [Detail],
    /// Where signs may stand.
    pub signs: Signs,
}

impl RingSection<'_> {
    /// The half-section with its dimension lines as drawn on paper, the axis at height 0, and the line of the spigot's
    /// diameter; none where the ring has no shape.
    #[must_use]
    pub fn dimensioned(&self) -> Option<(SheetView, Option<Linear>)> {
        let part = self.part_extent()?;
        let mut view = SheetView {
            part: self.view(),
            ..SheetView::default()
        };
        let mut spigot = None;
        for one in section_dimensions(
            self.design,
            self.evaluation,
            self.ring,
            self.style,
            self.factor,
        ) {
            let around = if one.edge == Edge::Bottom {
                lowered(part, &view.settled(&self.style))
            } else {
                part
            };
            for (id, line) in self.lines(&one, &around) {
                if id == DimensionId::Size(RingKey::NoseDiameter) {
                    spigot = Some(line.clone());
                }
                view.dimensions.push(PlacedDimension {
                    id,
                    form: Form::Linear(line),
                });
            }
        }
        Some((view, spigot))
    }

    /// The same with call-outs and signs; none where the letter of a detail finds no room.
    #[must_use]
    pub fn with_signs(&self, (mut view, spigot): (SheetView, Option<Linear>)) -> Option<SheetView> {
        self.call_outs(self.part_extent()?, spigot.as_ref(), &mut view)?;
        Some(view)
    }

    /// The dimension lines of a side in their places.
    fn lines(&self, side_of: &SectionSide, around: &Extent) -> Vec<(DimensionId, Linear)> {
        let wanted: Vec<SideDimension> = (0..)
            .zip(&side_of.dimensions)
            .map(|(id, size)| self.on_side(id, size))
            .collect();
        let placed = side(&wanted, side_of.edge, around, &self.style);
        side_of
            .dimensions
            .iter()
            .zip(placed)
            .map(|(size, done)| (size.id, done.line))
            .collect()
    }

    fn on_side(&self, id: u32, size: &SectionSize) -> SideDimension {
        SideDimension {
            id,
            from: self.on_paper(size.from),
            to: self.on_paper(size.to),
            label: size.label.clone(),
            ends: size.ends,
        }
    }

    /// Circles of the details, then call-outs and signs, each where it finds room among what is there.
    fn call_outs(&self, part: Extent, spigot: Option<&Linear>, view: &mut SheetView) -> Option<()> {
        let settled = view.settled(&self.style);
        let mut occupied = Occupied::by(&settled);
        for detail in self.details {
            let circle = self.circle(detail, &occupied)?;
            occupied.add(&circle);
            view.part.join(circle);
        }
        let around = settled.bounds().unwrap_or(part);
        if let Some(relief) = self.relief(&occupied, around) {
            occupied.add(&relief.settled(&self.style));
            view.dimensions.push(relief);
        }
        let signs = RingSigns {
            design: self.design,
            evaluation: self.evaluation,
            ring: self.ring,
            style: self.style,
            factor: self.factor,
            part,
            signs: self.signs,
        };
        let (placed, notes) = signs.placed(&mut occupied, around, spigot);
        view.dimensions.extend(placed);
        view.notes.extend(notes);
        Some(())
    }

    /// The circle round a detail, its letter where there is room: a circle may run through the lines of dimensions, but
    /// through no lettering.
    fn circle(&self, detail: &Detail, occupied: &Occupied) -> Option<Annotation> {
        let centre = self.on_paper(detail.centre);
        let radius = detail.radius_mm * self.factor;
        let farther = LETTER_FARTHER.map(|heights| heights * self.style.height_mm);
        let places = farther.into_iter().flat_map(|farther_mm| {
            (0..LETTER_PLACES).map(move |place| {
                let turn = 360.0 * f64::from(place) / f64::from(LETTER_PLACES);
                (farther_mm, 45.0 + turn)
            })
        });
        places
            .map(|(farther_mm, letter_deg)| {
                detail_circle(
                    centre,
                    radius,
                    detail.letter,
                    letter_deg,
                    farther_mm,
                    &self.style,
                )
            })
            .find(|drawn| occupied.takes(drawn))
    }

    /// The relief on a leader, unless a detail has it.
    fn relief(&self, occupied: &Occupied, view: Extent) -> Option<PlacedDimension> {
        let id = DimensionId::Relief;
        if self.design.sheet.hides(id) || self.details.iter().any(Detail::shows_relief) {
            return None;
        }
        let relief = relief_note(self.design, self.evaluation, self.ring, self.style)?;
        let (from, to) = (self.on_paper(relief.from), self.on_paper(relief.to));
        let tips = [0.5, 0.3, 0.7].map(|share| Point {
            x: from.x + (to.x - from.x) * share,
            y: from.y,
        });
        let note = |tip: Point, elbow: Point| Leader {
            tip,
            elbow,
            lines: vec![relief.label.clone()],
            terminator: Terminator::Arrow,
        };
        let search = Search {
            tips: &tips,
            directions_deg: &TO_THE_BORE_DEG,
            view,
            signs: Signs::Anywhere,
        };
        let best = search.best(occupied, |tip, elbow| {
            leader(&note(tip, elbow), &self.style)
        });
        // Under everything there is always room.
        let under = Point {
            x: from.x + 8.0,
            y: view.bottom - 3.0 * self.style.height_mm,
        };
        let (tip, elbow) = best.unwrap_or_else(|| (tips[0], under));
        Some(PlacedDimension {
            id,
            form: Form::Leader(note(tip, elbow)),
        })
    }

    fn on_paper(&self, point: Point) -> Point {
        Point {
            x: point.x * self.factor,
            y: point.y * self.factor,
        }
    }

    /// The cut ring; where the cut runs between the lugs, with a lug turned into it.
    fn view(&self) -> Annotation {
        let angle_deg = self.design.sheet.section_angle_deg;
        let options = SectionOptions {
            angle_deg,
            partners: false,
            edges_behind: true,
            least_thread_gap_mm: apart_mm(self.design) / self.factor,
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

/// Least distance of the two lines of a thread on paper, mm (ISO 6410-1).
#[must_use]
pub fn apart_mm(design: &Design) -> f64 {
    let group = format_of(design).line_group();
    APART_MM.max(2.0 * LineType::ContinuousWide.width_mm(group))
}

/// The part reaching down to the lowest of what is drawn so far.
fn lowered(part: Extent, drawn: &Annotation) -> Extent {
    let lowest = drawn
        .items
        .iter()
        .filter_map(crate::drawing::Item::extent)
        .map(|extent| extent.bottom)
        .fold(part.bottom, f64::min);
    Extent {
        bottom: lowest,
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
