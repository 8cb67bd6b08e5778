//! Which sizes the drawing of a ring carries, and on which side of the half-section.
//!
//! Axial sizes run from the flange rear face, the lip and the thread from the lens seat: that is how they are
//! measured. A size that follows from others stands in brackets.

use crate::checks::rests_on_assumed;
use crate::document::{Design, DimensionId, Face, Lengths, RingKey, SeatKind, Tolerance as Stated};
use crate::drawing::chains::Chains;
use crate::drawing::dimension::{Ends, Kind, Label, Size, Style, Tolerance};
use crate::drawing::dimension_side::Edge;
use crate::drawing::number::{DecimalMark, plain};
use crate::drawing::ring_faces::Faces;
use crate::evaluate::Evaluation;
use crate::geometry::Point;
use crate::ring::{Feature, PinUse, ResolvedRing};

/// Sizes nearer than this are the same, mm.
pub(super) const SAME: f64 = 1e-6;

/// The dimensions of one side of the half-section, in the lengths of the part.
pub struct SectionSide {
    /// The side.
    pub edge: Edge,
    /// Its dimensions.
    pub dimensions: Vec<SectionSize>,
}

/// A dimension of the half-section, in the lengths of the part.
pub struct SectionSize {
    /// Which one.
    pub id: DimensionId,
    /// First place on the part.
    pub from: Point,
    /// Second place on the part.
    pub to: Point,
    /// What it says.
    pub label: Label,
    /// Which ends lie on the part.
    pub ends: Ends,
}

/// The relief by its width and diameter, on one leader.
pub struct ReliefNote {
    /// End of the relief at the thread, on its floor.
    pub from: Point,
    /// Far end of the relief, on its floor.
    pub to: Point,
    /// What it says.
    pub label: Label,
}

/// Builds the labels of one ring.
pub(super) struct Labels<'a> {
    design: &'a Design,
    evaluation: &'a Evaluation,
    pub(super) ring: &'a ResolvedRing,
    pub(super) style: Style,
    pub(super) scale: f64,
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
    let all: Vec<&Length> = outside.iter().chain(&inside).collect();
    let closing = labels.closing(&all);
    let (added_outside, added_inside) = labels.added();
    let drawn = |lengths: Vec<Length>, added: Vec<SectionSize>| {
        lengths
            .into_iter()
            .map(|length| labels.axial(&length, closing.contains(&length.key)))
            .chain(added)
            .collect()
    };
    let side = |edge: Edge, mut dimensions: Vec<SectionSize>| {
        dimensions.retain(|size| !design.sheet.hides(size.id));
        SectionSide { edge, dimensions }
    };
    [
        side(Edge::Left, labels.inside_diameters()),
        side(Edge::Right, labels.outside_diameters()),
        side(Edge::Top, drawn(outside, added_outside)),
        side(Edge::Bottom, drawn(inside, added_inside)),
    ]
}

/// The relief, where there is one.
#[must_use]
pub fn relief_note(
    design: &Design,
    evaluation: &Evaluation,
    ring: &ResolvedRing,
    style: Style,
) -> Option<ReliefNote> {
    let labels = Labels {
        design,
        evaluation,
        ring,
        style,
        scale: 1.0,
    };
    let (from, to) = labels.relief()?;
    let width = labels.of(RingKey::ReliefWidth, Kind::Length).text();
    let diameter = labels.of(RingKey::ReliefDiameter, Kind::Diameter).text();
    Some(ReliefNote {
        from,
        to,
        label: Label::plain(format!("relief {width} \u{d7} {diameter}")),
    })
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

pub(super) const fn point(x: f64, y: f64) -> Point {
    Point { x, y }
}

impl Labels<'_> {
    /// The label of a size with the tolerance that the stack needs; general tolerances are not repeated.
    pub(super) fn of(&self, key: RingKey, kind: Kind) -> Label {
        self.lettered(key, &self.size(key, kind))
    }

    /// A star where the size rests on an assumed value, and inches where they are wanted.
    fn lettered(&self, key: RingKey, size: &Size) -> Label {
        let mut label = size.label(self.style.mark);
        if rests_on_assumed(self.design, &self.evaluation.derivation, key) {
            label.end_with(ASSUMED_MARK);
        }
        self.with_inches(label, size.value)
    }

    fn with_inches(&self, mut label: Label, value_mm: f64) -> Label {
        if self.design.sheet.lengths == Lengths::WithInches {
            label.end_with(&format!(" [{}]", inches(value_mm, self.style.mark)));
        }
        label
    }

    /// The lengths that close a chain: what is measured comes first, and of the others the thread length follows before
    /// the spigot length does.
    fn closing(&self, lengths: &[&Length]) -> Vec<RingKey> {
        const LAST: [RingKey; 2] = [RingKey::ThreadLength, RingKey::SpigotLength];
        let rank = |key: RingKey| {
            LAST.iter()
                .position(|last| *last == key)
                .map_or(0, |place| place + 1)
        };
        let mut chains = Chains::default();
        if let Some((from, to)) = self.relief() {
            chains.join(from.x, to.x);
        }
        let mut closing = Vec::new();
        for turn in 0..=LAST.len() {
            for length in lengths.iter().filter(|length| rank(length.key) == turn) {
                if !chains.join(length.from.x, length.to.x) {
                    closing.push(length.key);
                }
            }
        }
        closing
    }

    /// Both ends of the relief on its floor, thread end first.
    fn relief(&self) -> Option<(Point, Point)> {
        let outline = &self.evaluation.parts.as_ref()?.through_lug;
        let (floor, _) = outline
            .pieces()
            .find(|(_, feature)| *feature == Feature::ReliefFloor)?;
        let (a, b) = (floor.a, floor.b);
        let (from, to) = if a.x <= b.x { (a, b) } else { (b, a) };
        (to.x - from.x > SAME).then_some((from, to))
    }

    /// The distances that the user added: those between faces of the outside, and the others.
    fn added(&self) -> (Vec<SectionSize>, Vec<SectionSize>) {
        let faces = Faces::of(self.design, self.evaluation, self.ring);
        let mut sides = (Vec::new(), Vec::new());
        for own in &self.design.sheet.overrides {
            let DimensionId::Between(one, other) = own.dimension else {
                continue;
            };
            let (Some(from), Some(to)) = (faces.place(one), faces.place(other)) else {
                continue;
            };
            let length = (to.x - from.x).abs();
            let label = Size::new(Kind::Length, length)
                .in_brackets()
                .label(self.style.mark);
            let size = SectionSize {
                id: own.dimension,
                from,
                to,
                label: self.with_inches(label, length),
                ends: Ends::Both,
            };
            if is_outside(one) && is_outside(other) {
                sides.0.push(size);
            } else {
                sides.1.push(size);
            }
        }
        sides
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
    fn axial(&self, length: &Length, follows: bool) -> SectionSize {
        let size = self.size(length.key, Kind::Length);
        let size = if follows {
            Size::new(Kind::Length, size.value).in_brackets()
        } else {
            size
        };
        SectionSize {
            id: DimensionId::Size(length.key),
            from: length.from,
            to: length.to,
            label: self.lettered(length.key, &size),
            ends: Ends::Both,
        }
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
    pub(super) fn pocket(&self) -> Option<(Point, Point)> {
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
        if self.has_lip_thickness() {
            let rear = point(face.x + sizes.lip_thickness, sizes.lip_bore / 2.0);
            list.push(Length::new(RingKey::LipThickness, face, rear));
        }
        if let Some((inner, _)) = self.pocket() {
            list.push(Length::new(RingKey::AnnulusDepth, mouth, inner));
        }
        list
    }
}

/// What stands behind a size that rests on an assumed value.
pub const ASSUMED_MARK: &str = "*";

/// A length in inches, to the nearest ten-thousandth.
#[must_use]
pub fn inches(value_mm: f64, mark: DecimalMark) -> String {
    const MM: f64 = 25.4;
    plain(value_mm / MM, 4, mark)
}

const fn is_outside(face: Face) -> bool {
    match face {
        Face::Seat
        | Face::PlateFront
        | Face::FlangeRear
        | Face::LugFront
        | Face::LugRear
        | Face::Nose => true,
        Face::ThreadEnd | Face::ReliefEnd | Face::LipFront | Face::LipRear | Face::AnnulusFloor => {
            false
        }
    }
}
