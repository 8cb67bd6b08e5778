//! `vignetting`: the bores leave the light to the corner of the image.

use super::aspects::both;
use super::context::{Context, NotJudged};
use super::finding::{Change, Finding, FindingKey, Place, Remedy};
use super::judge::at_most;
use crate::document::{LimitKey, RingKey, Term, Working};
use crate::mount::{BodyField, LensField, Unit, show_number};
use crate::optics::{
    BoreEdge, ExitPupil, RayCone, Vignetting, corner_height, exit_pupil_distance, lost_stops,
};
use crate::ring::{Feature, PinUse, bore_corners};

const KEY: FindingKey = FindingKey::Vignetting;
const SOURCE: &str = "area common to the exit pupil and every bore edge thrown on its plane (Modern Optical Engineering, ch. 9); log2";
const SLANT_SOURCE: &str = "cos⁴ law, thin lens; not the ring's doing";
/// More than this is as good as dark, stops.
const DARK_STOPS: f64 = 20.0;
/// Less than this is rounding, stops.
const UNSEEN_STOPS: f64 = 5e-4;
/// Bores are offered in such steps, mm.
const STEP_MM: f64 = 0.1;

/// Judges the light clipped at the sensor's corner at the widest f-number; what the lens itself loses there is apart.
///
/// # Errors
/// [`NotJudged`] while exit pupil, f-number, sensor or register of the body are unknown.
pub fn check(cx: &Context) -> Result<Finding, NotJudged> {
    let optics = both(
        exit_pupil_distance(&cx.design.lens).map_err(NotJudged),
        cx.lens(LensField::FNumber),
    );
    let image = both(
        corner_height(&cx.design.body).map_err(NotJudged),
        cx.body(BodyField::Register),
    );
    let ((pupil, stop), (corner, register)) = both(optics, image)?;
    let lands = lands(cx, register.value());
    let edges: Vec<BoreEdge> = lands.iter().map(|land| land.edge).collect();
    let seen = Vignetting::new(ExitPupil::at_infinity(pupil.value()), edges);
    let light = seen.light(corner.value(), stop.value());
    let lost = light.lost_stops.min(DARK_STOPS);
    let share = Term::named(
        "share of the pupil that is clear",
        light.clear_share,
        Unit::One,
    );
    let stops = share.apply("stops lost", |_| lost);
    let working = Working::new("light clipped at the corner", stops, Unit::Stops, SOURCE)
        .assuming("the exit pupil is a round disc, evenly lit, focused at infinity");
    let bounds = cx.bounds(LimitKey::VignettingClash, LimitKey::VignettingCaution);
    let mut finding = at_most(KEY, working, bounds);
    let slant = lost_stops(light.slant_share);
    let ends = seen.clipping_ends_at(corner.value());
    finding = finding.saying(told(lost, stop.value(), ends, bounds.caution, slant));
    for term in [corner, pupil, stop] {
        let name = term.formula();
        finding = finding.worked(Working::new(name, term, Unit::One, "as entered"));
    }
    let slant = Term::named("share by the slant alone", light.slant_share, Unit::One);
    finding = finding.worked(Working::new(
        "the lens itself darkens the corner to",
        slant,
        Unit::One,
        SLANT_SOURCE,
    ));
    let Some(worst) = light.worst_edge.and_then(|index| lands.get(index)) else {
        return Ok(finding);
    };
    Ok(finding
        .at(Place::Feature(worst.feature))
        .cured_by(remedy(cx, &lands, worst, ends)))
}

fn told(lost: f64, stop: f64, ends: Option<f64>, limit: f64, slant: f64) -> String {
    let slant = format!(
        "the slant of the light takes {} by itself (cos⁴)",
        Unit::Stops.show(slant)
    );
    if lost < UNSEEN_STOPS {
        return format!(
            "nothing clipped at the corner at f/{}; {slant}",
            show_number(stop, 1)
        );
    }
    let ends = ends.map_or_else(
        || "clipped at every f-number".to_owned(),
        |ends| format!("clipping ends at f/{}", show_number(ends, 1)),
    );
    format!(
        "{} clipped at the corner at f/{}, wanted at most {}: {ends}; {slant}",
        Unit::Stops.show(lost),
        show_number(stop, 1),
        Unit::Stops.show(limit)
    )
}

/// One edge of a land of the ring's bores.
struct Land {
    edge: BoreEdge,
    feature: Feature,
    /// The bore that makes it, where it has a diameter of its own.
    bore: Option<RingKey>,
}

/// Every edge of the section, with the bore that a remedy can open.
fn lands(cx: &Context, register: f64) -> Vec<Land> {
    bore_corners(&cx.parts.through_lug, register)
        .into_iter()
        .map(|corner| Land {
            edge: corner.edge,
            feature: corner.feature,
            bore: bore_of(corner.feature),
        })
        .collect()
}

/// The dimension of a bore; thread and counterbore are as wide as the lens has them.
fn bore_of(feature: Feature) -> Option<RingKey> {
    let own = [
        (Feature::LipBore, RingKey::LipBore),
        (Feature::RearBore, RingKey::RearBore),
    ];
    own.into_iter()
        .find_map(|(bore, key)| (bore == feature).then_some(key))
}

/// The bore that clips most, opened to the cone of rays; not where the pin or the thread would lose its hold.
fn remedy(cx: &Context, lands: &[Land], worst: &Land, ends: Option<f64>) -> Remedy {
    let stop_down = ends.map_or_else(
        || "take a body with a smaller sensor".to_owned(),
        |ends| format!("stop the lens down to f/{}", show_number(ends, 1)),
    );
    let (Some(key), Ok(cone)) = (
        worst.bore,
        RayCone::to_the_corner(&cx.design.lens, &cx.design.body),
    ) else {
        return Remedy::words(format!(
            "the thread itself clips and cannot be opened: {stop_down}"
        ));
    };
    let radius = lands
        .iter()
        .filter(|land| land.bore == worst.bore)
        .map(|land| cone.radius_at(land.edge.distance_mm.into()).value())
        .fold(0.0, f64::max);
    let clear = (2.0 * radius / STEP_MM - 1e-9).ceil() * STEP_MM;
    if clear >= widest(cx, key) {
        return Remedy::words(format!(
            "a bore of {} would clear the corner, but would leave no metal for the pin or the nose: {stop_down}",
            Unit::Mm.show(clear)
        ));
    }
    let rear_is_set = cx
        .derivation
        .dimension(RingKey::RearBore)
        .is_some_and(|state| state.is_set);
    if key == RingKey::LipBore && rear_is_set && clear > cx.ring.sizes.rear_bore {
        return Remedy {
            text: format!(
                "let the rear bore follow its rule again, then open the lip bore to {}",
                Unit::Mm.show(clear)
            ),
            change: Some(Change::LetGo(RingKey::RearBore)),
        };
    }
    Remedy::dimension(key, clear)
}

/// The widest this bore can be, mm.
fn widest(cx: &Context, key: RingKey) -> f64 {
    let nose = cx.ring.sizes.nose_diameter - 2.0 * cx.limits().wall_clash;
    let lens = &cx.design.lens;
    match (
        key,
        cx.ring.pin,
        lens.pin_circle.number(),
        lens.pin_diameter.number(),
    ) {
        (RingKey::LipBore, PinUse::Pressed, Some(circle), Some(pin)) => {
            circle - pin - 2.0 * cx.limits().pin_landing_clash
        }
        (RingKey::LipBore, _, _, _) => nose.min(cx.ring.thread_minor),
        (_, _, _, _) => nose,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::checks::Severity;
    use crate::checks::fixture::{cured, design, judged, lacking, measured, with};
    use crate::document::{Design, FieldRef};
    use crate::mount::Interface;

    #[test]
    fn the_rules_clear_the_corner_and_the_slant_is_apart() {
        let finding = judged(check, &design());
        assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        assert!(
            finding.message.starts_with("nothing clipped"),
            "{}",
            finding.message
        );
        // cos⁴ of 19.82° is 0.7832: 0.35 stops (worked by hand for a corner of 21.63 and a pupil at 60).
        assert!(
            finding.message.contains("0.35 stops by itself"),
            "{}",
            finding.message
        );
    }

    fn narrow(bore: f64) -> Design {
        with(&[(RingKey::LipBore, bore), (RingKey::RearBore, bore + 1.0)])
    }

    #[test]
    fn a_narrow_lip_clips_and_is_opened() {
        for (bore, severity) in [(26.5, Severity::Caution), (22.0, Severity::Clash)] {
            let mut design = narrow(bore);
            let mut finding = judged(check, &design);
            assert_eq!(finding.severity, severity, "{bore}: {}", finding.message);
            assert!(finding.message.contains("clipping ends at f/") || bore < 25.0);
            for _ in 0..2 {
                if finding.severity != Severity::Ok {
                    design = cured(&design, &finding);
                    finding = judged(check, &design);
                }
            }
            assert_eq!(finding.severity, Severity::Ok, "{}", finding.message);
        }
    }

    /// 44 + 1.46 - 7.0 from the image, corner 21.63, pupil at 60: 2 x (21.63 (1 - z / 60) + z / 5.6).
    #[test]
    fn clipping_ends_where_the_cone_just_fits() {
        let z = 44.0 + 1.46 - 8.0;
        let height = 36.0_f64.hypot(24.0) / 2.0;
        let radius = height * (1.0 - z / 60.0) + z / (2.0 * 5.0);
        let mut design = with(&[(RingKey::LipBore, 2.0 * radius)]);
        design.limits.vignetting_clash = 10.0;
        let finding = judged(check, &design);
        assert!(
            finding.message.contains("clipping ends at f/5.0"),
            "{}",
            finding.message
        );
    }

    #[test]
    fn a_pressed_pin_keeps_its_lip() {
        let mut design = with(&[(RingKey::LipBore, 30.0)]);
        design.lens.f_number = measured(1.4);
        design.lens.pin_circle = measured(33.0);
        let finding = judged(check, &design);
        assert_ne!(finding.severity, Severity::Ok, "{}", finding.message);
        let remedy = finding.remedy.unwrap();
        assert!(
            remedy.change.is_none() && remedy.text.contains("stop the lens down"),
            "{remedy:?}"
        );
    }

    #[test]
    fn everything_unknown_is_named() {
        let mut design = design();
        design.lens.exit_pupil_distance = Interface::Unknown;
        design.lens.pupil_magnification = Interface::Unknown;
        design.lens.f_number = Interface::Unknown;
        design.body.sensor_width = Interface::Unknown;
        assert_eq!(
            lacking(check, &design),
            NotJudged(vec![
                FieldRef::Lens(LensField::ExitPupilDistance),
                FieldRef::Lens(LensField::FNumber),
                FieldRef::Body(BodyField::SensorWidth)
            ])
        );
    }
}
