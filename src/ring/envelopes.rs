//! Lens and body as outlines round the ring, as far as they are known.

use crate::document::Design;
use crate::geometry::{Outline, OutlineBuilder, Path, Point};
use crate::mount::{BarrelStep, Body, Lens, Presence};

use super::feature::{BodyPart, LensPart};
use super::parts::Parts;
use super::resolved::{PinUse, ResolvedRing};
use super::section::{ShapeFault, outlines};

/// How much of lens and body is drawn away from the ring, mm.
const SHOWN: f64 = 7.0;
/// Bodies of revolution are drawn down to this radius: the axis itself would make a piece of no length, mm.
const AXIS: f64 = 0.0;

/// The shapes of a resolved ring and its partners.
///
/// # Errors
/// [`ShapeFault`] when the sizes make no ring that can be turned.
pub fn parts_of(design: &Design, ring: &ResolvedRing) -> Result<Parts, ShapeFault> {
    let (through_lug, between_lugs) = outlines(ring)?;
    let (lens, body) = (&design.lens, &design.body);
    let seat = -ring.sizes.seat_height;
    let shoulder = lens.shoulder_diameter.number().and_then(|diameter| {
        rectangle(
            (seat - SHOWN, seat),
            (AXIS, diameter / 2.0),
            LensPart::Shoulder,
        )
    });
    let male_thread = lens.male_thread_length.number().and_then(|length| {
        rectangle(
            (seat, seat + length),
            (AXIS, ring.thread_major / 2.0),
            LensPart::MaleThread,
        )
    });
    let at_infinity = lens
        .barrel_at_infinity
        .value()
        .map_or(&[] as &[BarrelStep], Vec::as_slice);
    let at_close = lens
        .barrel_at_close_focus
        .value()
        .map_or(&[] as &[BarrelStep], Vec::as_slice);
    Ok(Parts {
        through_lug,
        between_lugs,
        shoulder,
        male_thread,
        barrel_at_infinity: stepped(seat, at_infinity),
        barrel_swept: stepped(seat, &swept_steps(at_infinity, at_close)),
        aperture_ring: aperture_ring(lens, seat),
        pin: pin(lens, ring, seat),
        flange: flange(body),
        ear: ear(body),
        lock_pin: lock_pin(body),
        behind_flange: behind_flange(body),
        obstacles: obstacles(body),
    })
}

fn rectangle<T: Copy + PartialEq>(z: (f64, f64), r: (f64, f64), tag: T) -> Option<Outline<T>> {
    OutlineBuilder::start(Point::new(z.0, r.0))
        .line_to(Point::new(z.1, r.0), tag)
        .line_to(Point::new(z.1, r.1), tag)
        .line_to(Point::new(z.0, r.1), tag)
        .close(tag)
        .ok()
}

/// The barrel as a body of revolution from the seat back.
fn stepped(seat: f64, steps: &[BarrelStep]) -> Option<Outline<LensPart>> {
    let last = steps.last()?;
    let tag = LensPart::Barrel;
    let mut pen = OutlineBuilder::start(Point::new(seat, AXIS));
    pen = pen.line_to(Point::new(seat + last.depth_mm, AXIS), tag);
    let mut end = seat + last.depth_mm;
    for (index, step) in steps.iter().enumerate().rev() {
        let begin = if index == 0 {
            0.0
        } else {
            steps.get(index - 1).map_or(0.0, |before| before.depth_mm)
        };
        pen = pen.line_to(Point::new(end, step.diameter_mm / 2.0), tag);
        end = seat + begin;
        pen = pen.line_to(Point::new(end, step.diameter_mm / 2.0), tag);
    }
    pen.close(tag).ok()
}

/// The barrel over its whole motion, as steps: screwing in, every station sees all that goes deeper; focusing, a
/// step moves between its two depths and its diameter between the two, so both ends bound all between.
fn swept_steps(at_infinity: &[BarrelStep], at_close: &[BarrelStep]) -> Vec<BarrelStep> {
    let mut all: Vec<BarrelStep> = at_infinity.iter().chain(at_close).copied().collect();
    all.sort_by(|a, b| b.depth_mm.total_cmp(&a.depth_mm));
    let mut swept: Vec<BarrelStep> = Vec::with_capacity(all.len());
    for step in all {
        match swept.last_mut() {
            Some(deeper) if deeper.diameter_mm >= step.diameter_mm => {}
            Some(deeper) if deeper.depth_mm <= step.depth_mm => {
                deeper.diameter_mm = step.diameter_mm;
            }
            Some(_) | None => swept.push(step),
        }
    }
    swept.reverse();
    swept
}

fn aperture_ring(lens: &Lens, seat: f64) -> Option<Outline<LensPart>> {
    if lens.aperture_ring != Presence::Present {
        return None;
    }
    let rear = seat - lens.aperture_ring_ahead.number()?;
    let (inner, outer) = (
        lens.aperture_ring_inner.number()?,
        lens.aperture_ring_outer.number()?,
    );
    rectangle(
        (rear - SHOWN, rear),
        (inner / 2.0, outer / 2.0),
        LensPart::ApertureRing,
    )
}

fn pin(lens: &Lens, ring: &ResolvedRing, seat: f64) -> Option<Outline<LensPart>> {
    let length = match ring.pin {
        PinUse::None => return None,
        PinUse::Pressed => ring.sizes.lip_face_depth,
        PinUse::LeftFree => lens.pin_free.number()?,
    };
    let (circle, diameter) = (lens.pin_circle.number()?, lens.pin_diameter.number()?);
    let tip = seat + length;
    rectangle(
        (seat, tip),
        ((circle - diameter) / 2.0, f64::midpoint(circle, diameter)),
        LensPart::Pin,
    )
}

fn flange(body: &Body) -> Option<Outline<BodyPart>> {
    let outer = body.flange_outer.number()? / 2.0;
    let slot = body.slot_diameter.number()? / 2.0;
    let face = body
        .flange_inner
        .number()
        .map_or(slot, |inner| (inner / 2.0).max(slot));
    let back = body.ear_front_depth.number()? + body.ear_thickness.number()?;
    let tag = BodyPart::Flange;
    // The bearing face stands a little proud of the bore behind it where it begins wider than the slots.
    let step = back / 4.0;
    let mut pen = OutlineBuilder::start(Point::new(0.0, face));
    if face > slot {
        pen = pen.line_to(Point::new(step, face), tag);
        pen = pen.line_to(Point::new(step, slot), tag);
    }
    pen = pen.line_to(Point::new(back, slot), tag);
    pen = pen.line_to(Point::new(back, outer), tag);
    pen = pen.line_to(Point::new(0.0, outer), tag);
    pen.close(tag).ok()
}

fn ear(body: &Body) -> Option<Outline<BodyPart>> {
    let front = body.ear_front_depth.number()?;
    let back = front + body.ear_thickness.number()?;
    let radii = (
        body.throat.number()? / 2.0,
        body.slot_diameter.number()? / 2.0,
    );
    rectangle((front, back), radii, BodyPart::Ear)
}

fn lock_pin(body: &Body) -> Option<Outline<BodyPart>> {
    if body.lock_pin != Presence::Present {
        return None;
    }
    let (circle, diameter) = (
        body.lock_pin_circle.number()?,
        body.lock_pin_diameter.number()?,
    );
    let tip = -body.lock_pin_protrusion.number()?;
    rectangle(
        (tip, 0.0),
        ((circle - diameter) / 2.0, f64::midpoint(circle, diameter)),
        BodyPart::LockPin,
    )
}

fn behind_flange(body: &Body) -> Option<Path<BodyPart>> {
    let mut points: Vec<_> = body
        .free_depth
        .value()?
        .iter()
        .map(|free| (free.radius_mm, free.depth_mm))
        .collect();
    points.sort_by(|a, b| a.0.total_cmp(&b.0));
    let mut places = points
        .into_iter()
        .map(|(radius, depth)| Point::new(depth, radius));
    let mut pen = OutlineBuilder::start(places.next()?);
    for place in places {
        pen = pen.line_to(place, BodyPart::BehindFlange);
    }
    pen.open().ok()
}

fn obstacles(body: &Body) -> Vec<Outline<BodyPart>> {
    let listed = body.obstacles.value().map_or(&[] as &[_], Vec::as_slice);
    listed
        .iter()
        .enumerate()
        .filter_map(|(index, obstacle)| {
            let (z, r) = (
                (obstacle.from_z_mm, obstacle.to_z_mm),
                (obstacle.inner_radius_mm, obstacle.outer_radius_mm),
            );
            rectangle(z, r, BodyPart::Obstacle(index))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_swept_barrel_narrows_toward_the_sensor() {
        let at_infinity = [
            BarrelStep {
                depth_mm: 2.0,
                diameter_mm: 30.0,
            },
            BarrelStep {
                depth_mm: 5.0,
                diameter_mm: 34.0,
            },
            BarrelStep {
                depth_mm: 7.0,
                diameter_mm: 20.0,
            },
        ];
        let at_close = [BarrelStep {
            depth_mm: 4.0,
            diameter_mm: 36.0,
        }];
        let swept = swept_steps(&at_infinity, &at_close);
        assert_eq!(
            swept,
            vec![
                BarrelStep {
                    depth_mm: 4.0,
                    diameter_mm: 36.0
                },
                BarrelStep {
                    depth_mm: 5.0,
                    diameter_mm: 34.0
                },
                BarrelStep {
                    depth_mm: 7.0,
                    diameter_mm: 20.0
                },
            ]
        );
    }
}
