//! Values that no ring and no limit may have.

use super::fault::{Fault, range, sector_faults};
use super::{Choice, Clocking, Design, FieldRef, LimitKey, Pieces, Ring, RingKey, Tolerance};
use crate::mount::Unit;
use crate::standards::FitClass;

pub(super) fn ring_faults(ring: &Ring, faults: &mut Vec<Fault>) {
    for key in RingKey::ALL {
        let dimension = ring.dimensions.get(*key);
        let label = format!("ring {}", key.name().replace('_', " "));
        if let Choice::Set(value) = dimension.value {
            range(faults, &label, value, key.unit(), key.range());
        }
        let widest = (-5.0, 5.0);
        match &dimension.tolerance {
            Tolerance::Derived => {}
            Tolerance::PlusMinus(half) => range(
                faults,
                &format!("{label}, tolerance"),
                *half,
                key.unit(),
                (0.0, 5.0),
            ),
            Tolerance::Deviations(lower, upper) => {
                range(
                    faults,
                    &format!("{label}, lower deviation"),
                    *lower,
                    key.unit(),
                    widest,
                );
                range(
                    faults,
                    &format!("{label}, upper deviation"),
                    *upper,
                    key.unit(),
                    widest,
                );
                if lower > upper {
                    faults.push(Fault::new(
                        label.clone(),
                        Unit::Mm.show(*lower),
                        "the lower deviation must not exceed the upper",
                    ));
                }
            }
            Tolerance::Fit(fit) => {
                if let Err(error) = fit.parse::<FitClass>() {
                    faults.push(Fault::new(label.clone(), fit.clone(), error.to_string()));
                }
            }
        }
    }
    if let Choice::Set(lugs) = &ring.lugs {
        sector_faults(faults, "ring lugs", "lug", lugs);
        if lugs.is_empty() {
            faults.push(Fault::new(
                "ring lugs",
                "none",
                "a bayonet needs at least one lug",
            ));
        }
    }
    range(faults, "trim", ring.trim_mm, Unit::Mm, (-5.0, 5.0));
    clocking_faults(&ring.clocking, faults);
    range(
        faults,
        "finish build-up",
        ring.finish.build_up_mm,
        Unit::Mm,
        (0.0, 0.5),
    );
    if let Pieces::Two {
        clamp_wall_mm,
        screw_diameter_mm,
        screw_count,
    } = ring.pieces
    {
        range(faults, "clamp wall", clamp_wall_mm, Unit::Mm, (0.2, 30.0));
        range(
            faults,
            "set-screw diameter",
            screw_diameter_mm,
            Unit::Mm,
            (0.8, 8.0),
        );
        range(
            faults,
            "number of set-screws",
            f64::from(screw_count),
            Unit::One,
            (1.0, 12.0),
        );
    }
}

fn clocking_faults(clocking: &Clocking, faults: &mut Vec<Fault>) {
    let angles = [
        ("thread start", clocking.thread_start_deg),
        ("thread start of the lens", clocking.lens_start_deg),
        ("lens mark in the trial fit", clocking.trial_reading_deg),
    ];
    for (field, angle) in angles {
        if let Some(angle) = angle {
            range(faults, field, angle, Unit::Deg, (-720.0, 720.0));
        }
    }
}

pub(super) fn limit_faults(design: &Design, faults: &mut Vec<Fault>) {
    for key in LimitKey::ALL {
        let allowed = match key {
            LimitKey::CocDivisor => (100.0, 10_000.0),
            _ => (0.0, 1000.0),
        };
        range(
            faults,
            &FieldRef::Limit(*key).long_label(),
            design.limits.get(*key),
            key.unit(),
            allowed,
        );
    }
}
