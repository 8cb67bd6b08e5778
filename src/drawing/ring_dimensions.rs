//! Which sizes the drawing of a ring carries, and on which side of the half-section.
//!
//! Axial sizes run from the flange rear face, the lip and the thread from the lens seat: that is how they are
//! measured. A size that follows from others stands in brackets.

use crate::document::Design;
use crate::document::{RingKey, SeatKind, Tolerance as Stated};
use crate::drawing::dimension::{Ends, Kind, Label, Size, Style, Tolerance};
use crate::drawing::dimension_side::{Edge, SideDimension};
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::ring::{Feature, PinUse, ResolvedRing};

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
    style: Style,
    scale: f64,
}

/// The dimensions of the half-section, side by side, for a view placed at `scale`; diameters first, for the axial
/// ones under the axis must keep clear of their lettering.
#[must_use]
pub fn section_dimensions(
    design: &Design,
    evaluation: &Evaluation,
    ring: &ResolvedRing,
    style: Style,
    scale: f64,
) -> [SectionSide; 4] {
    let labels = Labels {
        design,
        evaluation,
        ring,
        style,
        scale,
    };
    let (outside, inside) = (labels.outside_axial(), labels.inside_axial());
    // What is measured comes first; the spigot length is the first to follow from the others.
    let mut chains = Chains::default();
    let is_measured = |length: &Length| length.key != RingKey::SpigotLength;
    let mut closing: Vec<RingKey> = Vec::new();
    for measured in [true, false] {
        for length in outside.iter().chain(&inside) {
            if is_measured(length) == measured && !chains.join(length.from.x, length.to.x) {
                closing.push(length.key);
            }
        }
    }
    let drawn = |lengths: Vec<Length>| {
        lengths
            .into_iter()
            .map(|length| labels.axial(&length, closing.contains(&length.key)))
            .collect()
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
            dimensions: drawn(outside),
        },
        SectionSide {
            edge: Edge::Bottom,
            dimensions: drawn(inside),
        },
    ]
}

/// A length along the axis that the drawing gives.
struct Length {
    key: RingKey,
    from: Point,
    to: Point,
}

impl Length {
    const fn new(key: RingKey, from: Point, to: Point) -> Self {
        Self { key, from, to }
    }
}

/// Stations along the axis, grouped by the lengths that join them.
#[derive(Default)]
struct Chains {
    groups: Vec<Vec<f64>>,
}

impl Chains {
    /// Joins two stations; false where they are joined already, so that a length between them closes a chain.
    fn join(&mut self, one: f64, other: f64) -> bool {
        let first = self.take(one);
        if first.iter().any(|known| (known - other).abs() < SAME) {
            self.groups.push(first);
            return false;
        }
        let second = self.take(other);
        self.groups.push([first, second].concat());
        true
    }

    /// Takes out the group of a station.
    fn take(&mut self, station: f64) -> Vec<f64> {
        let place = self
            .groups
            .iter()
            .position(|group| group.iter().any(|known| (known - station).abs() < SAME));
        place.map_or_else(|| vec![station], |place| self.groups.swap_remove(place))
    }
}

const fn point(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Labels<'_> {
    /// The label of a size with the tolerance that the stack needs; general tolerances are not repeated.
    fn of(&self, key: RingKey, kind: Kind) -> Label {
        self.size(key, kind).label(self.style.mark)
    }

    fn size(&self, key: RingKey, kind: Kind) -> Size {
        let value = self.ring.sizes.get(key);
        let Some(state) = self.evaluation.derivation.dimension(key) else {
            return Size::new(kind, value.abs());
        };
        // A seat behind the flange is dimensioned by how far behind: its deviations change sides with its sign.
        let (lower, upper) = if value < 0.0 {
            (-state.deviations.1, -state.deviations.0)
        } else {
            state.deviations
        };
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
        Size::new(kind, value.abs()).within(tolerance)
    }

    /// A length, in brackets where it follows from others.
    fn axial(&self, length: &Length, follows: bool) -> SideDimension {
        let size = self.size(length.key, Kind::Length);
        let label = if follows {
            Size::new(Kind::Length, size.value)
                .in_brackets()
                .label(self.style.mark)
        } else {
            size.label(self.style.mark)
        };
        SideDimension::new(length.key as u32, length.from, length.to, label)
    }

    fn outside_axial(&self) -> Vec<Length> {
        let sizes = &self.ring.sizes;
        let (flange, tip) = (sizes.flange_diameter / 2.0, sizes.lug_diameter / 2.0);
        let rear_face = point(0.0, flange);
        let seat_radius = match self.ring.seat {
            SeatKind::Flush => flange,
            SeatKind::Boss | SeatKind::Counterbore => sizes.seat_diameter / 2.0,
        };
        let mut list = vec![Length::new(
            RingKey::SeatHeight,
            point(-sizes.seat_height, seat_radius),
            rear_face,
        )];
        if self.ring.seat != SeatKind::Flush {
            let front = point(-sizes.plate_thickness, flange);
            list.push(Length::new(RingKey::PlateThickness, front, rear_face));
        }
        let groove_end = point(sizes.groove_width, tip);
        list.push(Length::new(
            RingKey::GrooveWidth,
            point(0.0, sizes.groove_root_diameter / 2.0),
            groove_end,
        ));
        let lug_end = point(
            sizes.groove_width + sizes.lug_thickness,
            tip - sizes.lug_lead_in,
        );
        list.push(Length::new(RingKey::LugThickness, groove_end, lug_end));
        let nose = point(sizes.spigot_length, sizes.nose_diameter / 2.0);
        list.push(Length::new(RingKey::SpigotLength, rear_face, nose));
        list
    }

    /// How far the rear of the lip stands behind the nose face, mm; negative ahead of it.
    fn lip_past_nose(&self) -> f64 {
        let sizes = &self.ring.sizes;
        sizes.lip_face_depth + sizes.lip_thickness - sizes.seat_height - sizes.spigot_length
    }

    /// Whether a lip's rear is the nose face, so that lip depth and thickness already fix the spigot length.
    fn lip_ends_the_nose(&self) -> bool {
        self.ring.pin == PinUse::Pressed && self.lip_past_nose().abs() < SAME
    }

    /// Whether the lip's thickness is given. Without a pin to press, what stands behind the relief follows from
    /// the spigot length.
    fn has_lip_thickness(&self) -> bool {
        self.lip_ends_the_nose() || self.lip_past_nose() <= -SAME
    }

    /// The pocket of a pin left free: its floor from the inner to the outer wall, where the outline has one.
    fn pocket(&self) -> Option<(Point, Point)> {
        let outline = &self.evaluation.parts.as_ref()?.through_lug;
        let (floor, _) = outline
            .pieces()
            .find(|(_, feature)| *feature == Feature::AnnulusFloor)?;
        let (a, b) = (floor.a, floor.b);
        Some(if a.y <= b.y { (a, b) } else { (b, a) })
    }

    fn inside_axial(&self) -> Vec<Length> {
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
            Length::new(RingKey::ThreadLength, mouth, thread_end),
            Length::new(RingKey::LipFaceDepth, mouth, face),
        ];
        let relief_end = sizes.thread_length + sizes.relief_width;
        if relief_end < sizes.lip_face_depth - SAME {
            let end = point(seat + relief_end, thread);
            list.push(Length::new(RingKey::ReliefWidth, thread_end, end));
        }
        if self.has_lip_thickness() {
            let rear = point(face.x + sizes.lip_thickness, sizes.lip_bore / 2.0);
            list.push(Length::new(RingKey::LipThickness, face, rear));
        }
        if let Some((inner, _)) = self.pocket() {
            list.push(Length::new(RingKey::AnnulusDepth, mouth, inner));
        }
        list
    }

    /// A diameter of the half-section: its line runs from past the axis up to the edge.
    fn diameter(&self, id: u32, edge: Point, label: Label) -> SideDimension {
        let stop = point(edge.x, -self.style.tail_mm() / self.scale);
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
        if let Some((inner, outer)) = self.pocket() {
            if inner.y > sizes.lip_bore / 2.0 + SAME {
                add(RingKey::AnnulusInner, inner.x, inner.y);
            }
            if outer.y < self.ring.thread_minor / 2.0 - SAME {
                add(RingKey::AnnulusOuter, outer.x, outer.y);
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
