//! Which sizes the drawing of a ring carries, and on which side of the half-section.
//!
//! Axial sizes run from the flange rear face, the lip and the thread from the lens seat: that is how they are
//! measured. A size that follows from others stands in brackets.

use crate::document::Design;
use crate::document::{RingKey, SeatKind, Tolerance as Stated};
use crate::drawing::dimension::{Ends, Kind, Label, Size, Tolerance};
use crate::drawing::dimension_side::{Edge, SideDimension};
use crate::drawing::number::DecimalMark;
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::ring::{PinUse, ResolvedRing};

/// Where the axis end of a half diameter stands, mm below the axis on paper.
const BELOW_AXIS: f64 = 7.0;
/// Sizes nearer than this are the same, mm.
const SAME: f64 = 1e-6;

/// The dimensions of one side of the half-section, in the lengths of the part.
pub struct SectionSide {
    /// The side.
    pub edge: Edge,
    /// Its dimensions.
    pub dimensions: Vec<SideDimension>,
}

/// Builds the labels of one ring.
struct Labels<'a> {
    design: &'a Design,
    evaluation: &'a Evaluation,
    ring: &'a ResolvedRing,
    mark: DecimalMark,
    scale: f64,
}

/// The dimensions of the half-section, side by side, for a view placed at `scale`; diameters first, for the axial
/// ones under the axis must keep clear of their lettering.
#[must_use]
pub fn section_dimensions(
    design: &Design,
    evaluation: &Evaluation,
    ring: &ResolvedRing,
    mark: DecimalMark,
    scale: f64,
) -> [SectionSide; 4] {
    let labels = Labels {
        design,
        evaluation,
        ring,
        mark,
        scale,
    };
    [
        SectionSide {
            edge: Edge::Left,
            dimensions: labels.inside_diameters(),
        },
        SectionSide {
            edge: Edge::Right,
            dimensions: labels.outside_diameters(),
        },
        SectionSide {
            edge: Edge::Top,
            dimensions: labels.outside_axial(),
        },
        SectionSide {
            edge: Edge::Bottom,
            dimensions: labels.inside_axial(),
        },
    ]
}

const fn point(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Labels<'_> {
    /// The label of a size with the tolerance that the stack needs; general tolerances are not repeated.
    fn of(&self, key: RingKey, kind: Kind) -> Label {
        self.size(key, kind).label(self.mark)
    }

    fn size(&self, key: RingKey, kind: Kind) -> Size {
        let value = self.ring.sizes.get(key);
        let Some(state) = self.evaluation.derivation.dimension(key) else {
            return Size::new(kind, value);
        };
        let (lower, upper) = state.deviations;
        // Fits are spelt out in the notes.
        let fit = match &self.design.ring.dimensions.get(key).tolerance {
            Stated::Fit(code) => Some(code.clone()),
            Stated::Derived if state.tolerance_text.starts_with('h') => {
                Some(state.tolerance_text.clone())
            }
            Stated::Derived | Stated::PlusMinus(_) | Stated::Deviations(..) => None,
        };
        let tolerance = match fit {
            Some(code) => Tolerance::Class {
                code,
                deviations: None,
            },
            None if state.tolerance_text.is_empty() => Tolerance::General,
            None => Tolerance::Deviations { upper, lower },
        };
        Size::new(kind, value).within(tolerance)
    }

    fn axial(&self, key: RingKey, from: Point, to: Point, auxiliary: bool) -> SideDimension {
        let size = self.size(key, Kind::Length);
        let label = if auxiliary {
            Size::new(Kind::Length, size.value)
                .in_brackets()
                .label(self.mark)
        } else {
            size.label(self.mark)
        };
        SideDimension::new(key as u32, from, to, label)
    }

    fn outside_axial(&self) -> Vec<SideDimension> {
        let sizes = &self.ring.sizes;
        let (flange, tip) = (sizes.flange_diameter / 2.0, sizes.lug_diameter / 2.0);
        let rear_face = point(0.0, flange);
        let seat_radius = match self.ring.seat {
            SeatKind::Flush => flange,
            SeatKind::Boss | SeatKind::Counterbore => sizes.seat_diameter / 2.0,
        };
        let mut list = vec![self.axial(
            RingKey::SeatHeight,
            point(-sizes.seat_height, seat_radius),
            rear_face,
            false,
        )];
        if self.ring.seat != SeatKind::Flush {
            let front = point(-sizes.plate_thickness, flange);
            list.push(self.axial(RingKey::PlateThickness, front, rear_face, false));
        }
        let groove_end = point(sizes.groove_width, tip);
        list.push(self.axial(
            RingKey::GrooveWidth,
            point(0.0, sizes.groove_root_diameter / 2.0),
            groove_end,
            false,
        ));
        let lug_end = point(
            sizes.groove_width + sizes.lug_thickness,
            tip - sizes.lug_lead_in,
        );
        list.push(self.axial(RingKey::LugThickness, groove_end, lug_end, false));
        let nose = point(sizes.spigot_length, sizes.nose_diameter / 2.0);
        list.push(self.axial(
            RingKey::SpigotLength,
            rear_face,
            nose,
            self.lip_ends_the_nose(),
        ));
        list
    }

    /// Whether a lip's rear is the nose face, so that lip depth and thickness already fix the spigot length.
    fn lip_ends_the_nose(&self) -> bool {
        let sizes = &self.ring.sizes;
        let behind =
            sizes.lip_face_depth + sizes.lip_thickness - sizes.seat_height - sizes.spigot_length;
        self.ring.pin == PinUse::Pressed && behind.abs() < SAME
    }

    fn inside_axial(&self) -> Vec<SideDimension> {
        if self.ring.thread_runs_through {
            return Vec::new();
        }
        let sizes = &self.ring.sizes;
        let seat = -sizes.seat_height;
        let thread = self.ring.thread_minor / 2.0;
        let mouth = point(seat, thread + sizes.thread_chamfer);
        let thread_end = point(seat + sizes.thread_length, thread);
        let face = point(seat + sizes.lip_face_depth, sizes.lip_bore / 2.0);
        let mut list = vec![
            self.axial(RingKey::ThreadLength, mouth, thread_end, false),
            self.axial(RingKey::LipFaceDepth, mouth, face, false),
        ];
        let relief_end = sizes.thread_length + sizes.relief_width;
        if (relief_end - sizes.lip_face_depth).abs() > SAME {
            let end = point(seat + relief_end, thread);
            list.push(self.axial(RingKey::ReliefWidth, thread_end, end, false));
        }
        // Without a pin to press, what stands behind the relief follows from the spigot length.
        if self.ring.pin == PinUse::Pressed {
            let rear = point(face.x + sizes.lip_thickness, sizes.lip_bore / 2.0);
            list.push(self.axial(RingKey::LipThickness, face, rear, false));
        }
        if sizes.annulus_depth > SAME {
            let floor = point(seat + sizes.annulus_depth, sizes.annulus_inner / 2.0);
            list.push(self.axial(RingKey::AnnulusDepth, mouth, floor, false));
        }
        list
    }

    /// A diameter of the half-section: its line runs from past the axis up to the edge.
    fn diameter(&self, id: u32, edge: Point, label: Label) -> SideDimension {
        let stop = point(edge.x, -BELOW_AXIS / self.scale);
        SideDimension {
            ends: Ends::OnlyTo,
            ..SideDimension::new(id, stop, edge, label)
        }
    }

    fn inside_diameters(&self) -> Vec<SideDimension> {
        let sizes = &self.ring.sizes;
        let seat = -sizes.seat_height;
        let thread_label = Label::plain(thread_note(self.ring));
        let mut list = vec![self.diameter(
            1000,
            point(seat, self.ring.thread_major / 2.0),
            thread_label,
        )];
        let mut add = |key: RingKey, x: f64, radius: f64| {
            list.push(self.diameter(key as u32, point(x, radius), self.of(key, Kind::Diameter)));
        };
        if !self.ring.thread_runs_through {
            let face = seat + sizes.lip_face_depth;
            add(RingKey::LipBore, face, sizes.lip_bore / 2.0);
            if sizes.relief_width > SAME {
                add(
                    RingKey::ReliefDiameter,
                    seat + sizes.thread_length,
                    sizes.relief_diameter / 2.0,
                );
            }
        }
        if self.ring.seat != SeatKind::Flush {
            add(
                RingKey::SeatDiameter,
                seat.min(-sizes.plate_thickness),
                sizes.seat_diameter / 2.0,
            );
        }
        list
    }

    fn outside_diameters(&self) -> Vec<SideDimension> {
        let sizes = &self.ring.sizes;
        let mut list = Vec::new();
        let mut add = |key: RingKey, x: f64| {
            let radius = sizes.get(key) / 2.0;
            list.push(self.diameter(key as u32, point(x, radius), self.of(key, Kind::Diameter)));
        };
        add(RingKey::NoseDiameter, sizes.spigot_length);
        if (sizes.groove_root_diameter - sizes.nose_diameter).abs() > SAME {
            add(RingKey::GrooveRootDiameter, sizes.groove_width / 2.0);
        }
        if !self.ring.thread_runs_through && sizes.rear_bore > sizes.lip_bore + SAME {
            add(RingKey::RearBore, sizes.spigot_length);
        }
        add(
            RingKey::LugDiameter,
            sizes.groove_width + sizes.lug_thickness - sizes.lug_lead_in,
        );
        add(RingKey::FlangeDiameter, 0.0);
        list
    }
}

/// The thread as the drawing names it: designation with the class of the ring's side.
#[must_use]
pub fn thread_note(ring: &ResolvedRing) -> String {
    let class = match ring.thread.form() {
        crate::standards::ThreadForm::Metric => "-6H",
        crate::standards::ThreadForm::Unified { .. } => "-2B",
        crate::standards::ThreadForm::Whitworth => "",
    };
    format!("{}{class}", ring.thread)
}
