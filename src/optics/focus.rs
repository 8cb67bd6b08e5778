//! What an error of the register does to focus, and how much of it is hidden by the depth of focus.

use crate::document::{Design, FieldRef, LimitKey, Term};
use crate::mount::LensField;

use super::depth_of_focus::{circle_of_format_mm, half_depth_mm, image_diagonal};
use super::focus_scale::object_distance_mm;

/// Circle of confusion by the format: sensor diagonal over the divisor of the limits, mm.
///
/// # Errors
/// The fields that are unknown.
pub fn circle_of_confusion(design: &Design) -> Result<Term, Vec<FieldRef>> {
    let divisor = Term::field(
        FieldRef::Limit(LimitKey::CocDivisor),
        design.limits.coc_divisor,
    );
    Ok(circle_of_format_mm(image_diagonal(design)?, divisor))
}

/// Half band of the depth of focus at infinity, mm: `N c` (thin lens, distant object).
///
/// # Errors
/// The fields that are unknown.
pub fn half_depth_of_focus(design: &Design) -> Result<Term, Vec<FieldRef>> {
    let field = FieldRef::Lens(LensField::FNumber);
    let stop = design
        .lens
        .f_number
        .number()
        .map(|value| Term::field(field, value));
    match (stop, circle_of_confusion(design)) {
        (Some(stop), Ok(circle)) => Ok(half_depth_mm(stop, circle)),
        (None, Ok(_)) => Err(vec![field]),
        (None, Err(mut missing)) => {
            missing.insert(0, field);
            Err(missing)
        }
        (Some(_), Err(missing)) => Err(missing),
    }
}

/// What is left of the depth of focus for the ring after body and lens had their share, mm; never under the
/// least budget of the limits. `None` where the depth of focus is unknown: then the least budget alone counts.
#[must_use]
pub fn register_budget(design: &Design) -> (Term, Option<Vec<FieldRef>>) {
    let limit = |key: LimitKey| Term::field(FieldRef::Limit(key), design.limits.get(key));
    let least = limit(LimitKey::ThickLeast);
    match half_depth_of_focus(design) {
        Ok(half) => {
            let left = half
                - limit(LimitKey::BodyRegisterTolerance)
                - limit(LimitKey::LensRegisterTolerance);
            (left.max(least), None)
        }
        Err(missing) => (least, Some(missing)),
    }
}

/// Farthest distance that is still sharp when the ring is `error` mm too thick, mm from the front principal
/// plane: `f^2 / e + f` (thin lens, scale at infinity). `None` where the lens still reaches infinity.
#[must_use]
pub fn farthest_sharp(focal_length: f64, error: f64) -> Option<f64> {
    (error > 0.0).then(|| object_distance_mm(focal_length, error))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Thin-lens equation, worked by hand: f 28 and 50 with e 0.05 give 15.708 m and 50.050 m.
    #[test]
    fn farthest_sharp_distance() {
        assert!((farthest_sharp(28.0, 0.05).unwrap() - 15_708.0).abs() < 0.5);
        assert!((farthest_sharp(50.0, 0.05).unwrap() - 50_050.0).abs() < 1e-6);
        assert_eq!(farthest_sharp(50.0, -0.05), None);
        let (f, e) = (50.0, 0.05);
        let u = farthest_sharp(f, e).unwrap();
        assert!((1.0 / f - 1.0 / u - 1.0 / (f + e)).abs() < 1e-15);
    }
}
