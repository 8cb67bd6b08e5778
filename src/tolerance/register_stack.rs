//! The stack behind infinity focus: what adds up between the lens's own infinity and the sensor.
//!
//! The gap is the focus error, positive where the ring holds the lens too far from the sensor:
//! seat height + body register - lens register, and what coating, play and warmth add.

use super::distribution::Distribution;
use super::stack::{Contributor, Stack};
use crate::document::{Design, FieldRef, RingKey, Term};
use crate::mount::{BodyField, Interface, LensField, Origin, Presence};
use crate::optics::Number;
use crate::ring::Derivation;
use crate::workshop::{Material, Workshop};

/// How much warmer or colder than the 20 °C of the workshop a ring is used, K, where nothing else is asked for;
/// common practice, no source.
pub const TEMPERATURE_SPAN_K: f64 = 20.0;

/// The stack of the focus error.
#[derive(Clone, Debug, PartialEq)]
pub struct RegisterStack {
    /// The sizes.
    pub stack: Stack,
    /// Fields that would add to it but are unknown.
    pub left_out: Vec<FieldRef>,
}

/// Growth of a length with warmth, mm: `α L ΔT`, expansion in 1e-6/K.
#[must_use]
pub fn growth_mm<N: Number>(expansion_um_m_k: N, length_mm: N, span_k: N) -> N {
    expansion_um_m_k * length_mm * span_k / N::from(1e6)
}

impl RegisterStack {
    /// Builds the stack of a derived ring that is used up to `temperature_span_k` warmer or colder than when it
    /// was measured.
    ///
    /// # Errors
    /// The registers and the seat height, where they are unknown.
    pub fn of(
        design: &Design,
        derivation: &Derivation,
        workshop: &Workshop,
        temperature_span_k: f64,
    ) -> Result<Self, Vec<FieldRef>> {
        let limits = &design.limits;
        let lens = register(
            FieldRef::Lens(LensField::Register),
            &design.lens.register,
            limits.lens_register_tolerance,
        );
        let body = register(
            FieldRef::Body(BodyField::Register),
            &design.body.register,
            limits.body_register_tolerance,
        );
        let (seat, mut lens, body) = all_known(seat_height(derivation), lens, body)?;
        lens.sensitivity = -1.0;
        let height_mm = seat.nominal_mm;
        let mut found = Self {
            stack: Stack {
                contributors: vec![seat, body, lens],
            },
            left_out: Vec::new(),
        };
        found.add_coating(design);
        found.add_play(design, derivation);
        found.add_growth(
            workshop.material(&design.ring.material),
            height_mm,
            temperature_span_k,
        );
        Ok(found)
    }

    /// Share of the rings whose lens reaches infinity, 0 to 1, in closed form: the focus error is at most the
    /// half depth of focus, mm. A ring too thin focuses past infinity and counts.
    #[must_use]
    pub fn share_reaching_infinity(&self, half_depth_mm: f64) -> f64 {
        self.stack.share_inside(f64::NEG_INFINITY, half_depth_mm)
    }

    /// A coat on seat and flange adds its thickness twice; its own spread is not known and not counted.
    fn add_coating(&mut self, design: &Design) {
        let finish = &design.ring.finish;
        if finish.build_up_mm > 0.0 && !finish.faces_masked {
            let exact = Distribution::Uniform { half_mm: 0.0 };
            let coat = Contributor::new("coat on both faces", 2.0, finish.build_up_mm, exact);
            self.stack
                .contributors
                .push(coat.in_field(FieldRef::Finish));
        }
    }

    /// Without springs the ring may stand off the body's flange by anything up to the play of the ears.
    fn add_play(&mut self, design: &Design, derivation: &Derivation) {
        match design.body.springs {
            Presence::Present => return,
            Presence::Absent | Presence::Unknown => {}
        }
        let body = &design.body;
        let groove = derivation
            .dimension(RingKey::GrooveWidth)
            .and_then(|state| {
                state
                    .value
                    .map(|width| width + state.deviations.0.max(state.deviations.1))
            });
        match (
            groove,
            body.ear_front_depth.number(),
            body.ear_thickness.number(),
        ) {
            (Some(widest), Some(front), Some(thickness)) => {
                let half_mm = (widest - front - thickness).max(0.0) / 2.0;
                let spread = Distribution::Uniform { half_mm };
                let play = Contributor::new("play of the ears in the groove", 1.0, 0.0, spread);
                let field = FieldRef::Ring(RingKey::GrooveWidth);
                self.stack
                    .contributors
                    .push(play.off_by(half_mm).in_field(field));
            }
            (_, front, thickness) => {
                let known = [
                    (groove.is_some(), FieldRef::Ring(RingKey::GrooveWidth)),
                    (front.is_some(), FieldRef::Body(BodyField::EarFrontDepth)),
                    (thickness.is_some(), FieldRef::Body(BodyField::EarThickness)),
                ];
                let unknown = known.into_iter().filter(|(is_known, _)| !is_known);
                self.left_out.extend(unknown.map(|(_, field)| field));
            }
        }
    }

    fn add_growth(&mut self, material: Option<&Material>, height_mm: f64, span_k: f64) {
        let Some(material) = material else {
            self.left_out.push(FieldRef::Material);
            return;
        };
        let half_mm = growth_mm(material.expansion_um_m_k, height_mm.abs(), span_k);
        let spread = Distribution::Uniform { half_mm };
        let growth = Contributor::new("growth with warmth", 1.0, 0.0, spread);
        self.stack
            .contributors
            .push(growth.in_field(FieldRef::Material));
    }

    /// Half of the worst-case focus error with its working.
    #[must_use]
    pub fn worst_case(&self) -> Term {
        self.stack.worst_case().unwrap_or_else(|| 0.0.into())
    }
}

fn all_known<T>(
    first: Result<T, FieldRef>,
    second: Result<T, FieldRef>,
    third: Result<T, FieldRef>,
) -> Result<(T, T, T), Vec<FieldRef>> {
    match (first, second, third) {
        (Ok(first), Ok(second), Ok(third)) => Ok((first, second, third)),
        (first, second, third) => Err([first.err(), second.err(), third.err()]
            .into_iter()
            .flatten()
            .collect()),
    }
}

/// The turner works toward the middle of the tolerance and stops once inside: rather in the middle than at the
/// limits.
fn seat_height(derivation: &Derivation) -> Result<Contributor, FieldRef> {
    let field = FieldRef::Ring(RingKey::SeatHeight);
    let state = derivation.dimension(RingKey::SeatHeight).ok_or(field)?;
    let height = state.value.ok_or(field)?;
    let (lower, upper) = state.deviations;
    let half_mm = (upper - lower).abs() / 2.0;
    let seat = Contributor::new(
        "seat height",
        1.0,
        height,
        Distribution::Triangular { half_mm },
    );
    Ok(seat.in_field(field).off_by(f64::midpoint(lower, upper)))
}

/// A register by its own stated uncertainty; else anywhere in the prints that disagree, and the tolerance that
/// such parts have in practice.
fn register(
    field: FieldRef,
    value: &Interface<f64>,
    tolerance_mm: f64,
) -> Result<Contributor, FieldRef> {
    let Interface::Known(known) = value else {
        return Err(field);
    };
    let contributor =
        |spread| Contributor::new(field.long_label(), 1.0, known.value, spread).in_field(field);
    if known.uncertainty > 0.0 {
        return Ok(contributor(Distribution::Normal {
            sigma_mm: known.uncertainty,
        }));
    }
    let printed: Vec<f64> = match &known.origin {
        Origin::Published(citations) => citations.iter().map(|citation| citation.says).collect(),
        Origin::Standard(_) | Origin::Measured { .. } | Origin::Assumed(_) => Vec::new(),
    };
    let least = printed.iter().copied().fold(known.value, f64::min);
    let greatest = printed.iter().copied().fold(known.value, f64::max);
    let spread = Distribution::Uniform {
        half_mm: (greatest - least) / 2.0 + tolerance_mm,
    };
    Ok(contributor(spread).off_by(f64::midpoint(least, greatest) - known.value))
}

#[cfg(test)]
#[path = "register_stack_tests.rs"]
mod tests;
