//! Everything that the present readings and trials of a design say, as one pure function of it.

use super::doubt::Doubt;
use super::functional_size::{FunctionalSize, functional_sizes, register_method};
use super::infinity_trial::{InfinityTrial, TrialError, TrialWorked, worked};
use super::instrument_choice::better_instrument;
use super::judgement::{DEFAULT_RULE, Judgement, Unjudged, judge};
use super::proposal::Measured;
use super::register::{Register, RegisterMethod, register};
use crate::document::{Design, FieldRef, LimitKey, Reading, RingKey, SeatKind, SizeOf, Trial};
use crate::evaluate::Evaluation;
use crate::mount::{LensField, Unit};
use crate::optics::{FocusScale, half_depth_of_focus};
use crate::ring::wrapped_deg;
use crate::tolerance::{Conformity, Limits};
use crate::workshop::{Instrument, Workshop};

/// The seat height.
const SEAT: SizeOf = SizeOf::Ring(RingKey::SeatHeight);

/// A functional size with what its present readings prove.
#[derive(Clone, Debug, PartialEq)]
pub struct InspectedSize {
    /// The size.
    pub size: FunctionalSize,
    /// The place of its present readings in the design's list.
    pub place: Option<usize>,
    /// What they prove, or why they prove nothing.
    pub judged: Result<Judgement, Unjudged>,
    /// An instrument of the workshop that reads it better than the one that was used.
    pub better: Option<String>,
}

/// What an error of the register is known from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Basis {
    /// Readings of the seat height: the ring alone.
    SeatReadings,
    /// An infinity trial: lens, ring and body together.
    Trial,
}

impl Basis {
    /// Both.
    pub const ALL: [Self; 2] = [Self::SeatReadings, Self::Trial];

    /// The words for it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::SeatReadings => "readings of the seat height",
            Self::Trial => "the infinity trial",
        }
    }
}

/// Everything that is known of the finished ring at present.
#[derive(Clone, Debug, PartialEq)]
pub struct Inspection {
    /// How the seat stands to the flange.
    pub seat: SeatKind,
    /// What the seat height should be, mm.
    pub seat_height_mm: f64,
    /// How the seat height is measured.
    pub method: RegisterMethod,
    /// Every functional size, the seat height first.
    pub sizes: Vec<InspectedSize>,
    /// Seat height and parallelism.
    pub register: Option<Register>,
    /// What the present infinity trial says.
    pub trial: Option<Result<Measured, TrialError>>,
}

/// How many sizes stand how.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Proved inside.
    pub inside: usize,
    /// Proved outside.
    pub outside: usize,
    /// Read, and proved neither.
    pub not_provable: usize,
    /// Without readings that can be judged.
    pub to_read: usize,
}

/// Inspects a design; `None` where it makes no whole ring.
#[must_use]
pub fn inspect(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
) -> Option<Inspection> {
    let ring = evaluation.derivation.ring.as_ref()?;
    let method = register_method(ring, workshop);
    let found = design
        .present_reading(SEAT, ring.seat)
        .and_then(|place| design.readings.get(place))
        .and_then(|reading| {
            register(
                &reading.values,
                reading.places,
                method,
                instrument(workshop, reading).ok()?,
            )
            .ok()
        });
    let sizes = functional_sizes(evaluation, workshop)
        .into_iter()
        .map(|size| {
            let place = design.present_reading(size.of, ring.seat);
            let reading = place.and_then(|place| design.readings.get(place));
            InspectedSize {
                judged: judged(workshop, &size, reading, found.as_ref()),
                better: reading
                    .and_then(|reading| instrument(workshop, reading).ok())
                    .and_then(|in_hand| {
                        let all = &workshop.instruments;
                        better_instrument(all, size.grip, size.nominal.abs(), in_hand)
                    })
                    .map(|better| better.name.clone()),
                place,
                size,
            }
        })
        .collect();
    let trial = design
        .present_trial()
        .and_then(|place| design.trials.get(place))
        .map(|trial| error_by(design, trial));
    Some(Inspection {
        seat: ring.seat,
        seat_height_mm: ring.sizes.seat_height,
        method,
        sizes,
        register: found,
        trial,
    })
}

/// The register error that a trial shows with the lens of a design.
///
/// # Errors
/// [`TrialError`] where the focal length is unknown, nothing was read, or a distance is out of reach.
pub fn error_by(design: &Design, trial: &Trial) -> Result<Measured, TrialError> {
    trial_worked(design, trial).map(|found| Measured {
        error_mm: found.error_mm,
        doubt: Doubt::of(&found.causes),
    })
}

/// A trial with the lens of a design, worked out.
///
/// # Errors
/// As [`error_by`].
pub fn trial_worked(design: &Design, trial: &Trial) -> Result<TrialWorked, TrialError> {
    let focal_length =
        design.lens.focal_length.number().ok_or_else(|| {
            TrialError::Lacks(FieldRef::Lens(LensField::FocalLength).long_label())
        })?;
    let far = |distance: Option<f64>| distance.unwrap_or(f64::INFINITY);
    let read = InfinityTrial {
        object_mm: far(trial.object_mm),
        object_error_mm: trial.object_error_mm,
        scale_mm: trial.scale_mm.iter().map(|reading| far(*reading)).collect(),
        scale_error_mm: trial.scale_error_mm,
        half_depth_mm: half_depth_of_focus(design).ok().map(|term| term.value()),
    };
    worked(&read, &FocusScale::thin(focal_length))
}

fn judged(
    workshop: &Workshop,
    size: &FunctionalSize,
    reading: Option<&Reading>,
    found: Option<&Register>,
) -> Result<Judgement, Unjudged> {
    let reading = reading.ok_or(Unjudged::NoReadings)?;
    let instrument = instrument(workshop, reading)?;
    // Of the seat height the spread is that about its lean.
    if let Some(found) = found.filter(|_| size.of == SEAT) {
        return Ok(Judgement::of(
            reading.values.len(),
            (found.mean_mm, found.range_mm),
            found.causes.clone(),
            size.limits,
            DEFAULT_RULE,
        ));
    }
    let values = near(&reading.values, size);
    judge(&values, instrument, &[], size.limits, DEFAULT_RULE)
}

/// Readings of an angle on the side of twelve o'clock on which the nominal lies: 359.9 is read of 0 as -0.1.
fn near(values: &[f64], size: &FunctionalSize) -> Vec<f64> {
    let placed = |value: &f64| match size.unit {
        Unit::Deg => size.nominal + wrapped_deg(value - size.nominal),
        Unit::Mm
        | Unit::M
        | Unit::Um
        | Unit::N
        | Unit::G
        | Unit::Mpa
        | Unit::S
        | Unit::Mm2
        | Unit::One
        | Unit::Percent
        | Unit::Turns
        | Unit::Stops
        | Unit::K
        | Unit::Nmm => *value,
    };
    values.iter().map(placed).collect()
}

/// The instrument of the workshop with which these readings were taken.
///
/// # Errors
/// [`Unjudged::NoInstrument`] where the workshop has none of that name.
pub fn instrument<'w>(
    workshop: &'w Workshop,
    reading: &Reading,
) -> Result<&'w Instrument, Unjudged> {
    workshop
        .instruments
        .iter()
        .find(|instrument| instrument.name == reading.instrument)
        .ok_or_else(|| Unjudged::NoInstrument(reading.instrument.clone()))
}

/// The register errors that are allowed: by the tolerance of the seat height where the ring alone was measured; where
/// the trial measured everything together, from as thin as the scale bears to the half depth of focus, as far as that
/// is known.
#[must_use]
pub fn allowed_errors(basis: Basis, design: &Design, evaluation: &Evaluation) -> Option<Limits> {
    let (low_mm, high_mm) = evaluation
        .derivation
        .dimension(RingKey::SeatHeight)?
        .deviations;
    Some(match basis {
        Basis::SeatReadings => Limits { low_mm, high_mm },
        Basis::Trial => Limits {
            low_mm: -design.limits.get(LimitKey::ThinCaution),
            high_mm: half_depth_of_focus(design).map_or(high_mm, |term| term.value()),
        },
    })
}

impl Inspection {
    /// The size of this name.
    #[must_use]
    pub fn size(&self, of: SizeOf) -> Option<&InspectedSize> {
        self.sizes.iter().find(|one| one.size.of == of)
    }

    /// The error of the register by one basis, where it is known.
    #[must_use]
    pub fn error(&self, basis: Basis) -> Option<Measured> {
        match basis {
            Basis::SeatReadings => self.register.as_ref().map(|found| Measured {
                error_mm: found.mean_mm - self.seat_height_mm,
                doubt: found.doubt,
            }),
            Basis::Trial => self.trial.as_ref().and_then(|found| found.clone().ok()),
        }
    }

    /// The basis that a correction rests on where nobody has chosen: the trial, which has seen lens and body too, else
    /// the readings.
    #[must_use]
    pub fn usual_basis(&self) -> Option<Basis> {
        [Basis::Trial, Basis::SeatReadings]
            .into_iter()
            .find(|basis| self.error(*basis).is_some())
    }

    /// How many sizes stand how.
    #[must_use]
    pub fn tally(&self) -> Tally {
        let mut tally = Tally::default();
        for one in &self.sizes {
            match one.judged.as_ref().map(|judged| judged.verdict) {
                Ok(Conformity::Inside) => tally.inside += 1,
                Ok(Conformity::Outside) => tally.outside += 1,
                Ok(Conformity::NotProvable) => tally.not_provable += 1,
                Err(_) => tally.to_read += 1,
            }
        }
        tally
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Correction, demo_designs};
    use crate::evaluate::evaluate;

    fn inspected(change: impl FnOnce(&mut Design, f64)) -> Inspection {
        let workshop = Workshop::default_set().unwrap();
        let mut design = demo_designs().unwrap().remove(0);
        let seat = evaluate(&design, &workshop)
            .derivation
            .dimension(RingKey::SeatHeight)
            .unwrap()
            .value
            .unwrap();
        change(&mut design, seat);
        inspect(&design, &workshop, &evaluate(&design, &workshop)).unwrap()
    }

    fn reading(dimension: SizeOf, values: &[f64], instrument: &str) -> Reading {
        Reading {
            dimension,
            values: values.to_vec(),
            instrument: instrument.to_owned(),
            places: 0,
            after_corrections: 0,
        }
    }

    #[test]
    fn nothing_is_known_before_a_reading() {
        let found = inspected(|_, _| {});
        let tally = found.tally();
        assert_eq!((tally.inside, tally.to_read), (0, found.sizes.len()));
        assert_eq!(found.usual_basis(), None);
    }

    /// The spread of a leaning seat is that about its wave, in the verdict as in the register.
    #[test]
    fn the_seat_height_has_one_uncertainty() {
        let found = inspected(|design, seat| {
            let leaning = [0.02, 0.015, 0.0, -0.01, -0.01, 0.005].map(|off| seat + off);
            design
                .readings
                .push(reading(SEAT, &leaning, "depth micrometer"));
        });
        let judged = found.size(SEAT).unwrap().judged.clone().unwrap();
        let register = found.register.unwrap();
        assert!((judged.doubt.expanded - register.doubt.expanded).abs() < 1e-15);
        assert!(register.tilt.unwrap().parallelism_mm > 0.02);
    }

    #[test]
    fn a_lug_at_twelve_o_clock_is_read_on_both_sides_of_it() {
        let found = inspected(|design, _| {
            let workshop = Workshop::default_set().unwrap();
            let evaluation = evaluate(design, &workshop);
            let at = evaluation.derivation.ring.unwrap().lugs[0].start_deg;
            let round = [at + 360.02, at - 0.02, at - 360.0];
            let lug = SizeOf::LugStart(1);
            design
                .readings
                .push(reading(lug, &round, "protractor photograph"));
        });
        let lug = found.size(SizeOf::LugStart(1)).unwrap();
        let mean = lug.judged.as_ref().unwrap().mean;
        assert!((mean - lug.size.nominal).abs() < 1e-9, "{mean}");
    }

    #[test]
    fn readings_from_before_a_skim_are_no_longer_present() {
        let found = inspected(|design, seat| {
            design
                .readings
                .push(reading(SEAT, &[seat, seat + 0.01], "depth micrometer"));
            design.corrections.push(Correction {
                date: "May".to_owned(),
                note: String::new(),
                skim_mm: 0.05,
                remade: false,
                found: None,
                expected: None,
                mark_before_deg: None,
            });
        });
        assert_eq!(found.register, None);
        assert_eq!(found.size(SEAT).unwrap().place, None);
    }

    #[test]
    fn a_better_instrument_is_named_beside_a_verdict() {
        let found = inspected(|design, seat| {
            design
                .readings
                .push(reading(SEAT, &[seat, seat, seat], "caliper 0.02"));
        });
        let seat = found.size(SEAT).unwrap();
        assert_eq!(
            seat.judged.as_ref().unwrap().word(),
            "not provable with this instrument"
        );
        assert!(seat.better.is_some());
    }

    /// Thin lens: an object at infinity sharp where the scale reads f + f²/e from the principal plane.
    #[test]
    fn a_trial_speaks_for_lens_ring_and_body() {
        let found = inspected(|design, _| {
            let f = design.lens.focal_length.number().unwrap();
            let mark = f * f / 0.06 + 2.0 * f + 0.06;
            design.trials.push(Trial {
                object_mm: None,
                object_error_mm: 0.0,
                scale_mm: vec![Some(mark), Some(mark * 1.02), Some(mark * 0.98)],
                scale_error_mm: 500.0,
                after_corrections: 0,
            });
        });
        assert_eq!(found.usual_basis(), Some(Basis::Trial));
        let error = found.error(Basis::Trial).unwrap();
        assert!((error.error_mm + 0.06).abs() < 1e-3, "{error:?}");
    }
}
