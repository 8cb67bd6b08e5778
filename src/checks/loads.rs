//! What a lens weighs on its ring when it is handled hard, and what the ring's material bears.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::judge::Bounds;
use crate::document::{FieldRef, LimitKey, RingKey, Term};
use crate::mount::{BodyField, LensField, Presence, Sector, Unit};
use crate::ring::lug_intrusion;

/// Gravity, m/s² (rounded as handbooks do).
const GRAVITY: f64 = 9.81;
/// Seat edges nearer the axis than this share of the lugs' radius press one lug harder than `M / R` says: from the
/// heel model.
const NARROW_SEAT: f64 = 0.2;
/// Directions of the moment that the heel model looks at, all round.
const DIRECTIONS: u32 = 360;
/// A limit lower than this asks for no stress at all, MPa: keeps what it would take a number.
const NO_STRESS_MPA: f64 = 0.01;
/// A root narrower than this is none, mm: keeps the stress a number.
const NO_ROOT_MM: f64 = 0.01;

pub(super) const LOAD_SOURCE: &str =
    "one lug takes the moment and the whole pull: conservative; common practice, no source";
/// What every strength check rests on.
pub(super) const ESTIMATE: &str =
    "it is an estimate and no certification; support a lens over about a kilogram";

/// The pull along the axis, lens hung face down, and the moment that it makes when held level.
#[derive(Clone, Debug)]
pub(super) struct Loads {
    /// N.
    pub(super) axial: Term,
    /// N·mm.
    pub(super) moment: Term,
}

impl Loads {
    /// The moment about the flange rear face.
    pub(super) fn about_the_flange(cx: &Context) -> Result<Self, NotJudged> {
        Self::with_lever(cx, |ahead| ahead + cx.size(RingKey::SeatHeight))
    }

    /// The moment about the lens seat.
    pub(super) fn about_the_seat(cx: &Context) -> Result<Self, NotJudged> {
        Self::with_lever(cx, |ahead| ahead)
    }

    fn with_lever(cx: &Context, lever: impl Fn(Term) -> Term) -> Result<Self, NotJudged> {
        let (mass, ahead) = both(
            cx.lens(LensField::Mass),
            cx.lens(LensField::CentreOfGravityAhead),
        )?;
        let axial = mass / 1000.0 * GRAVITY * cx.limit(LimitKey::Handling);
        let moment = axial.clone() * lever(ahead).apply("abs", f64::abs);
        Ok(Self { axial, moment })
    }

    /// The load in words, for messages.
    pub(super) fn told(&self, cx: &Context) -> String {
        format!(
            "{} and {} of a lens handled at {} times its weight",
            Unit::N.show(self.axial.value()),
            Unit::Nmm.show(self.moment.value()),
            cx.limits().handling
        )
    }
}

/// The force on one lug, N: it alone takes the moment, and the pull, and its part of the springs.
pub(super) fn force_on_one_lug(cx: &Context, loads: &Loads) -> Term {
    let radius = (cx.size(RingKey::NoseDiameter) + cx.size(RingKey::LugDiameter)) / 4.0;
    let bearing = bearing_radius(cx);
    let by_moment = if bearing.value() < NARROW_SEAT * radius.value() {
        let middles: Vec<f64> = cx.ring.lugs.iter().map(Sector::middle_deg).collect();
        let worst = heel_load_n(
            loads.moment.value(),
            bearing.value(),
            radius.value(),
            &middles,
        );
        Term::named("worst lug by the heel model", worst, Unit::N)
    } else {
        loads.moment.clone() / radius
    };
    let force = by_moment + loads.axial.clone();
    match (cx.design.body.springs, cx.body(BodyField::SpringForce)) {
        (Presence::Present, Ok(springs)) => {
            // At most a few dozen lugs.
            let count = u32::try_from(cx.ring.lugs.len().max(1)).map_or(1.0, f64::from);
            force + springs / Term::named("number of lugs", count, Unit::One)
        }
        (Presence::Present | Presence::Absent | Presence::Unknown, _) => force,
    }
}

/// Where the flange's edge stands on the body, mm from the axis.
pub(super) fn bearing_radius(cx: &Context) -> Term {
    let flange = cx.size(RingKey::FlangeDiameter);
    match cx.body(BodyField::FlangeOuter) {
        Ok(outer) => flange.min(outer) / 2.0,
        Err(_) => flange / 2.0,
    }
}

/// The greatest force on one lug, N, of a rigid ring that pivots on the edge of its seat, over every direction of
/// the moment: `M d / Σ d²`, d the distance of each lug from the pivot (bolts of a bracket; common practice).
pub(super) fn heel_load_n(
    moment_nmm: f64,
    seat_radius_mm: f64,
    lug_radius_mm: f64,
    lugs_deg: &[f64],
) -> f64 {
    let worst_in = |direction_deg: f64| {
        let arms = lugs_deg.iter().map(|lug| {
            let along = (lug - direction_deg).to_radians().cos();
            (seat_radius_mm + lug_radius_mm * along).max(0.0)
        });
        let (most, squares) = arms.fold((0.0_f64, 0.0), |(most, squares), arm| {
            (most.max(arm), squares + arm * arm)
        });
        if squares > 0.0 {
            moment_nmm * most / squares
        } else {
            0.0
        }
    };
    (0..DIRECTIONS)
        .map(|step| worst_in(f64::from(step) * 360.0 / f64::from(DIRECTIONS)))
        .fold(0.0, f64::max)
}

/// The narrowest lug and the width of its root, mm: the arc at the nose, less what the cutter ate into both flanks.
pub(super) fn narrowest_root(cx: &Context) -> Result<(Sector, Term), NotJudged> {
    let narrowest = cx
        .ring
        .lugs
        .iter()
        .copied()
        .min_by(|a, b| a.extent_deg.total_cmp(&b.extent_deg))
        .ok_or(FieldRef::Lugs)?;
    let root = cx.size(RingKey::NoseDiameter) / 2.0;
    let eaten = (-lug_intrusion(cx.ring, root.value())).max(0.0);
    let arc = root
        * Term::named("narrowest lug", narrowest.extent_deg, Unit::Deg)
            .apply("radians", f64::to_radians);
    let width = if eaten > 0.0 {
        arc - 2.0 * Term::named("eaten by the cutter", eaten, Unit::Mm)
    } else {
        arc
    };
    Ok((narrowest, width.max(NO_ROOT_MM)))
}

/// What the material bears.
pub(super) struct Strength {
    pub(super) material: String,
    /// Yield strength, of a plastic the share that counts, MPa.
    pub(super) reckoned: Term,
    pub(super) bounds: Bounds,
    pub(super) youngs_modulus_mpa: f64,
}

impl Strength {
    /// Of the ring's material.
    pub(super) fn of(cx: &Context) -> Result<Self, NotJudged> {
        let material = cx
            .workshop
            .material(&cx.design.ring.material)
            .ok_or(FieldRef::Material)?;
        let mut strength = Term::named("yield strength", material.yield_mpa, Unit::Mpa);
        if material.creeps() {
            strength = strength * cx.limit(LimitKey::CreepShare) / 100.0;
        }
        let limits = cx.limits();
        let bounds = Bounds {
            clash: (strength.value() * limits.stress_clash / 100.0).max(NO_STRESS_MPA),
            caution: (strength.value() * limits.stress_caution / 100.0).max(NO_STRESS_MPA),
            scale: 1.0,
        };
        Ok(Self {
            material: material.name.clone(),
            reckoned: strength,
            bounds,
            youngs_modulus_mpa: material.youngs_modulus_gpa * 1000.0,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::fixture::{Bench, design};

    /// 1.5 kg, 80 mm ahead, three times over: 3.532 N·m on lugs at 25.5; the heel model worked in another program.
    /// Without a seat two of three lugs pull, at 43° and 77°: 0.7314 / (0.7314² + 0.2250²) = 1.249 M / R.
    #[test]
    fn the_heel_model_and_what_one_lug_covers() {
        let moment = 1.5 * GRAVITY * 80.0 * 3.0;
        assert!((moment - 3531.6).abs() < 0.1);
        let lugs = [0.0, 120.0, 240.0];
        for (seat, force) in [
            (24.0, 64.7),
            (25.5, 61.6),
            (30.0, 53.3),
            (20.0, 73.9),
            (15.0, 86.7),
            (10.0, 101.3),
            (5.0, 126.6),
            (0.0, 173.0),
        ] {
            let worst = heel_load_n(moment, seat, 25.5, &lugs);
            assert!((worst - force).abs() < 0.1, "{seat}: {worst}");
        }
        let one = moment / 25.5;
        assert!((one - 138.5).abs() < 0.1);
        assert!(heel_load_n(moment, NARROW_SEAT * 25.5, 25.5, &lugs) < one);
    }

    /// 220 g three times over is 6.475 N; 18 + 1.46 mm ahead of the flange.
    #[test]
    fn weight_lever_and_springs() {
        let bench = Bench::of(design());
        let cx = bench.cx();
        let loads = Loads::about_the_flange(&cx).unwrap();
        assert!((loads.axial.value() - 6.4746).abs() < 1e-4);
        assert!((loads.moment.value() - 6.4746 * 19.46).abs() < 0.01);
        let at_seat = Loads::about_the_seat(&cx).unwrap();
        assert!((at_seat.moment.value() - 6.4746 * 18.0).abs() < 0.01);
        let force = force_on_one_lug(&cx, &loads).value();
        let radius = (49.7 + 53.7) / 4.0;
        assert!((force - (6.4746 * 19.46 / radius + 6.4746 + 20.0 / 3.0)).abs() < 0.01);
    }
}
