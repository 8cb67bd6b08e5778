//! Where a field lies in the half-section and in the plan of one design, for what no edge of the ring shows.

use super::subject::Subject;
use crate::document::{Design, FieldRef, RingKey};
use crate::drawing::outlines::{path_of, pieces_of};
use crate::drawing::{Item, LineType, Path, Role, Scene, Shape};
use crate::geometry::{Outline, Point, Side, plan_point, seen_from};
use crate::mount::{BodyField, LensField, Sector};
use crate::ring::{Feature, Parts, ResolvedRing};

/// The lit places of one design.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Places {
    /// In the half-section.
    pub section: Scene,
    /// In the plan.
    pub plan: Scene,
}

/// A place of the plan by radius and clock angle, as it is seen from a side.
#[must_use]
pub fn in_plan(radius_mm: f64, clock_deg: f64, side: Side) -> Point {
    plan_point(radius_mm, seen_from(side, clock_deg.to_radians()))
}

/// Where a field of lens, body or ring lies. Empty for what has no place, as a mass; the edges of ring dimensions are
/// found by their tags and are not in it.
#[must_use]
pub fn places_of(subject: &Subject<'_>, field: FieldRef, side: Side) -> Places {
    let mut pen = Pen {
        places: Places::default(),
        side,
    };
    let made = subject.evaluation.derivation.ring.as_ref();
    let (Some(ring), Some(parts)) = (made, subject.evaluation.parts.as_ref()) else {
        return pen.places;
    };
    match field {
        FieldRef::Ring(key) => pen.ring(ring, parts, key),
        FieldRef::Lens(key) => pen.lens(subject.design, ring, parts, key),
        FieldRef::Body(key) => pen.body(subject.design, parts, key),
        FieldRef::LensThread => pen.part(parts.male_thread.as_ref()),
        FieldRef::BarrelAtInfinity => pen.part(parts.barrel_at_infinity.as_ref()),
        FieldRef::BarrelAtCloseFocus => pen.part(parts.barrel_swept.as_ref()),
        FieldRef::ApertureRing => pen.part(parts.aperture_ring.as_ref()),
        FieldRef::StopDownPin | FieldRef::PinHandling => pen.part(parts.pin.as_ref()),
        FieldRef::Ears | FieldRef::TwistHand | FieldRef::Springs => {
            pen.ears(subject.design, parts);
        }
        FieldRef::Stop => pen.stop(subject.design),
        FieldRef::LockPin => {
            pen.part(parts.lock_pin.as_ref());
            pen.lock_pin(subject.design);
        }
        FieldRef::Obstacles => pen.obstacles(subject.design, parts),
        FieldRef::FreeDepth => pen.behind(parts),
        FieldRef::SeatKind | FieldRef::Trim => pen.features(parts, &[Feature::Seat]),
        FieldRef::ThreadHold | FieldRef::Clocking | FieldRef::Pieces => {
            pen.features(parts, &[Feature::Thread]);
        }
        FieldRef::Finish | FieldRef::Material => pen.part(Some(&parts.between_lugs)),
        FieldRef::Cutter => {
            for lug in &ring.lugs {
                let (nose, tip) = (ring.sizes.nose_diameter, ring.sizes.lug_diameter);
                pen.sector(*lug, nose / 2.0, tip / 2.0);
            }
        }
        // The lugs are found by their tags; a limit has no place.
        FieldRef::Lugs | FieldRef::Limit(_) => {}
    }
    pen.places
}

struct Pen {
    places: Places,
    side: Side,
}

fn lit(shape: Shape) -> Item {
    Item::new(shape, LineType::ContinuousWide, Role::Highlight)
}

impl Pen {
    fn part<T: Copy + PartialEq>(&mut self, outline: Option<&Outline<T>>) {
        let items = outline.map(|outline| lit(Shape::Path(path_of(outline))));
        self.places.section.extend(items);
    }

    fn features(&mut self, parts: &Parts, features: &[Feature]) {
        let wanted = |feature: &Feature| features.contains(feature);
        let items = pieces_of(&parts.between_lugs)
            .filter(|(_, feature)| wanted(feature))
            .map(|(path, _)| lit(Shape::Path(path)));
        self.places.section.extend(items);
    }

    fn along(&mut self, from: (f64, f64), to: (f64, f64)) {
        let point = |(x, y): (f64, f64)| Point { x, y };
        let line = Path::line(point(from), point(to));
        self.places.section.extend([lit(Shape::Path(line))]);
    }

    fn circle(&mut self, diameter_mm: Option<f64>) {
        let shape = diameter_mm.map(|diameter| Shape::Circle {
            centre: Point { x: 0.0, y: 0.0 },
            radius_mm: diameter / 2.0,
        });
        self.places.plan.extend(shape.map(lit));
    }

    fn dot(&mut self, radius_mm: f64, clock_deg: f64, half_mm: f64) {
        let centre = in_plan(radius_mm, clock_deg, self.side);
        let shape = Shape::Circle {
            centre,
            radius_mm: half_mm,
        };
        self.places.plan.extend([lit(shape)]);
    }

    fn spoke(&mut self, clock_deg: f64, from_mm: f64, to_mm: f64) {
        let end = |radius| in_plan(radius, clock_deg, self.side);
        let line = Path::line(end(from_mm), end(to_mm));
        self.places.plan.extend([lit(Shape::Path(line))]);
    }

    fn sector(&mut self, sector: Sector, inner_mm: f64, outer_mm: f64) {
        // The picture's degrees run anticlockwise from the right, the clock's clockwise from the top; from the body side
        // the clock runs the other way.
        let (start, sweep) = match self.side {
            Side::Lens => (90.0 - sector.start_deg, -sector.extent_deg),
            Side::Body => (90.0 + sector.start_deg, sector.extent_deg),
        };
        let centre = Point { x: 0.0, y: 0.0 };
        let mut path = Path::arc(centre, outer_mm, start, sweep);
        let back = Path::arc(centre, inner_mm, start + sweep, -sweep);
        path.vertices.extend(back.vertices);
        path.closed = true;
        self.places.plan.extend([lit(Shape::Path(path))]);
    }

    fn ring(&mut self, ring: &ResolvedRing, parts: &Parts, key: RingKey) {
        let sizes = &ring.sizes;
        let rim = sizes.flange_diameter / 2.0;
        match key {
            RingKey::IndexMarkAngle => self.spoke(sizes.index_mark_angle, rim - 3.0, rim),
            RingKey::LipThickness => {
                self.features(parts, &[Feature::LipFace, Feature::LipBore]);
            }
            // A flush plate has its front face in the seat.
            RingKey::PlateThickness => self.features(parts, &[Feature::PlateFront, Feature::Seat]),
            RingKey::LockHoleDepth => self.dot(
                sizes.lock_hole_circle / 2.0,
                sizes.lock_hole_angle,
                sizes.lock_hole_diameter / 2.0,
            ),
            RingKey::FlangeDiameter
            | RingKey::NoseDiameter
            | RingKey::LipBore
            | RingKey::RearBore
            | RingKey::SeatDiameter => self.circle(Some(sizes.get(key))),
            RingKey::SeatHeight
            | RingKey::GrooveRootDiameter
            | RingKey::LugDiameter
            | RingKey::GrooveWidth
            | RingKey::LugThickness
            | RingKey::LugLeadIn
            | RingKey::ThreadChamfer
            | RingKey::LipFaceDepth
            | RingKey::ReliefWidth
            | RingKey::ReliefDiameter
            | RingKey::ThreadLength
            | RingKey::SpigotLength
            | RingKey::AnnulusInner
            | RingKey::AnnulusOuter
            | RingKey::AnnulusDepth
            | RingKey::LockHoleDiameter
            | RingKey::LockHoleCircle
            | RingKey::LockHoleAngle
            | RingKey::EdgeBreak => {}
        }
    }

    fn lens(&mut self, design: &Design, ring: &ResolvedRing, parts: &Parts, key: LensField) {
        let lens = &design.lens;
        match key {
            LensField::Register => {
                let seat = -ring.sizes.seat_height;
                let reach = lens.register.number().unwrap_or_default();
                self.along((seat, 0.0), (seat + reach, 0.0));
                self.features(parts, &[Feature::Seat]);
            }
            LensField::MaleThreadLength | LensField::ThreadRunOut | LensField::ShoulderFillet => {
                self.part(parts.male_thread.as_ref());
            }
            LensField::ShoulderDiameter => {
                self.part(parts.shoulder.as_ref());
                self.circle(lens.shoulder_diameter.number());
            }
            LensField::ApertureRingInner | LensField::ApertureRingOuter => {
                self.part(parts.aperture_ring.as_ref());
                self.circle(lens.field(key).number());
            }
            LensField::ApertureRingAhead => self.part(parts.aperture_ring.as_ref()),
            LensField::PinCircle
            | LensField::PinDiameter
            | LensField::PinFree
            | LensField::PinStoppedDown
            | LensField::PinBottom
            | LensField::PinForce => {
                self.part(parts.pin.as_ref());
                self.circle(lens.pin_circle.number());
            }
            LensField::FocalLength
            | LensField::FNumber
            | LensField::ExitPupilDistance
            | LensField::PupilMagnification
            | LensField::Mass
            | LensField::CentreOfGravityAhead => {}
        }
    }

    fn body(&mut self, design: &Design, parts: &Parts, key: BodyField) {
        let body = &design.body;
        match key {
            BodyField::Register => {
                self.along(
                    (0.0, 0.0),
                    (body.register.number().unwrap_or_default(), 0.0),
                );
            }
            BodyField::Throat | BodyField::SlotDiameter => {
                self.part(parts.ear.as_ref());
                self.circle(body.field(key).number());
            }
            BodyField::FlangeInner | BodyField::FlangeOuter => {
                self.part(parts.flange.as_ref());
                self.circle(body.field(key).number());
            }
            BodyField::EarFrontDepth | BodyField::EarThickness => self.ears(design, parts),
            BodyField::SpringCircle => self.circle(body.spring_circle.number()),
            BodyField::StopAngle | BodyField::StopRadius | BodyField::StopDepth => {
                self.stop(design);
            }
            BodyField::LockPinCircle => {
                self.part(parts.lock_pin.as_ref());
                self.circle(body.lock_pin_circle.number());
            }
            BodyField::LockPinDiameter | BodyField::LockPinProtrusion | BodyField::LockPinAngle => {
                self.part(parts.lock_pin.as_ref());
                self.lock_pin(design);
            }
            BodyField::IndexAngle => {
                let rim = body.flange_outer.number().unwrap_or_default() / 2.0;
                if let Some(angle) = body.index_angle.number() {
                    self.spoke(angle, rim, rim + 3.0);
                }
            }
            BodyField::SpringForce
            | BodyField::Twist
            | BodyField::SensorWidth
            | BodyField::SensorHeight
            | BodyField::PixelPitch => {}
        }
    }

    fn ears(&mut self, design: &Design, parts: &Parts) {
        self.part(parts.ear.as_ref());
        let body = &design.body;
        if let (Some(throat), Some(slot)) = (body.throat.number(), body.slot_diameter.number()) {
            for ear in body.ears.value().into_iter().flatten() {
                self.sector(*ear, throat / 2.0, slot / 2.0);
            }
        }
    }

    fn stop(&mut self, design: &Design) {
        let body = &design.body;
        if let (Some(angle), Some(radius)) = (body.stop_angle.number(), body.stop_radius.number()) {
            self.dot(radius, angle, 1.0);
        }
    }

    fn lock_pin(&mut self, design: &Design) {
        let body = &design.body;
        if let (Some(angle), Some(circle), Some(diameter)) = (
            body.lock_pin_angle.number(),
            body.lock_pin_circle.number(),
            body.lock_pin_diameter.number(),
        ) {
            self.dot(circle / 2.0, angle, diameter / 2.0);
        }
    }

    fn obstacles(&mut self, design: &Design, parts: &Parts) {
        for outline in &parts.obstacles {
            self.part(Some(outline));
        }
        for obstacle in design.body.obstacles.value().into_iter().flatten() {
            self.sector(
                obstacle.sector,
                obstacle.inner_radius_mm,
                obstacle.outer_radius_mm,
            );
        }
    }

    fn behind(&mut self, parts: &Parts) {
        let Some(behind) = &parts.behind_flange else {
            return;
        };
        for (segment, _) in behind.pieces() {
            self.along((segment.a.x, segment.a.y), (segment.b.x, segment.b.y));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::demo_designs;
    use crate::drawing::Extent;
    use crate::evaluate::evaluate;
    use crate::workshop::Workshop;

    fn lit_at(field: FieldRef, side: Side) -> (Option<Extent>, Option<Extent>) {
        let design = demo_designs().unwrap().remove(0);
        let evaluation = evaluate(&design, &Workshop::default_set().unwrap());
        let subject = Subject {
            name: "demo",
            design: &design,
            evaluation: &evaluation,
        };
        let places = places_of(&subject, field, side);
        (places.section.bounds(), places.plan.bounds())
    }

    #[test]
    fn a_throat_is_lit_as_its_circle_and_a_mass_nowhere() {
        let throat = demo_designs()
            .unwrap()
            .remove(0)
            .body
            .throat
            .number()
            .unwrap();
        let (section, plan) = lit_at(FieldRef::Body(BodyField::Throat), Side::Lens);
        assert!(section.is_some());
        assert!((plan.unwrap().width() - throat).abs() < 1e-9);
        let mass = lit_at(FieldRef::Lens(LensField::Mass), Side::Lens);
        assert_eq!(mass, (None, None));
    }

    #[test]
    fn every_dimension_of_the_ring_lights_something_but_the_break_of_its_edges() {
        let design = demo_designs().unwrap().remove(0);
        let evaluation = evaluate(&design, &Workshop::default_set().unwrap());
        let parts = evaluation.parts.as_ref().unwrap();
        let sizes = &evaluation.derivation.ring.as_ref().unwrap().sizes;
        for key in RingKey::ALL {
            // The lock hole is tagged in the plan; what is 0 is not there.
            let tagged = matches!(
                key,
                RingKey::LockHoleDiameter | RingKey::LockHoleCircle | RingKey::LockHoleAngle
            );
            let edge = parts
                .through_lug
                .pieces()
                .any(|(_, feature)| feature.dimensions().contains(key));
            let (section, plan) = lit_at(FieldRef::Ring(*key), Side::Lens);
            let lights = tagged || edge || section.is_some() || plan.is_some();
            let is_there = *key != RingKey::EdgeBreak && sizes.get(*key) != 0.0;
            assert!(lights || !is_there, "{key}");
        }
    }

    #[test]
    fn an_angle_lies_on_the_other_hand_seen_from_the_body_side() {
        let field = FieldRef::Body(BodyField::LockPinAngle);
        let (_, lens) = lit_at(field, Side::Lens);
        let (_, body) = lit_at(field, Side::Body);
        let (lens, body) = (lens.unwrap(), body.unwrap());
        assert!((lens.left + body.right).abs() < 1e-9 && (lens.top - body.top).abs() < 1e-9);
    }
}
