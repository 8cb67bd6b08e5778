//! The diameters that the half-section carries: bores on the lens side, the outside on the body side.

use crate::document::{DimensionId, RingKey, SeatKind};
use crate::drawing::dimension::{Ends, Kind, Label};
use crate::drawing::ring_dimensions::{Labels, SAME, SectionSize, point};
use crate::geometry::Point;
use crate::ring::ResolvedRing;

impl Labels<'_> {
    /// A diameter of the half-section: its line runs from past the axis up to the edge.
    fn diameter(&self, id: DimensionId, edge: Point, label: Label) -> SectionSize {
        SectionSize {
            id,
            from: point(edge.x, -self.style.tail_mm() / self.scale),
            to: edge,
            label,
            ends: Ends::OnlyTo,
        }
    }

    /// Those of the bores, thread first.
    pub(super) fn inside_diameters(&self) -> Vec<SectionSize> {
        let sizes = &self.ring.sizes;
        let seat = -sizes.seat_height;
        let thread_label = Label::plain(thread_note(self.ring));
        let mut list = vec![self.diameter(
            DimensionId::Thread,
            point(seat, self.ring.thread_major / 2.0),
            thread_label,
        )];
        let mut add = |key: RingKey, x: f64, radius: f64| {
            list.push(self.diameter(
                DimensionId::Size(key),
                point(x, radius),
                self.of(key, Kind::Diameter),
            ));
        };
        if !self.ring.thread_runs_through {
            let face = seat + sizes.lip_face_depth;
            add(RingKey::LipBore, face, sizes.lip_bore / 2.0);
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

    /// Those of the outside, and the rear bore.
    pub(super) fn outside_diameters(&self) -> Vec<SectionSize> {
        let sizes = &self.ring.sizes;
        let mut list = Vec::new();
        let mut add = |key: RingKey, x: f64| {
            let radius = sizes.get(key) / 2.0;
            list.push(self.diameter(
                DimensionId::Size(key),
                point(x, radius),
                self.of(key, Kind::Diameter),
            ));
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
fn thread_note(ring: &ResolvedRing) -> String {
    let class = match ring.thread.form() {
        crate::standards::ThreadForm::Metric => "-6H",
        crate::standards::ThreadForm::Unified { .. } => "-2B",
        crate::standards::ThreadForm::Whitworth => "",
    };
    format!("{}{class}", ring.thread)
}
