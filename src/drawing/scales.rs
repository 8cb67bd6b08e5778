//! The choice among the scales of ISO 5455.

pub use crate::standards::{SCALES, Scale};

/// The largest scale at which the views fit, by the caller's own judgement; none when none does.
pub fn largest_scale(mut fits: impl FnMut(Scale) -> bool) -> Option<Scale> {
    SCALES.into_iter().find(|&scale| fits(scale))
}

/// The largest scale at which a view of `size_mm` (width and height of the part) fits into a field of
/// paper, with `around_mm` of paper taken by dimensions in width and in height; none when none fits.
#[must_use]
pub fn fit_scale(
    size_mm: (f64, f64),
    around_mm: (f64, f64),
    field: &crate::drawing::extent::Extent,
) -> Option<Scale> {
    largest_scale(|scale| {
        size_mm.0 * scale.factor() + around_mm.0 <= field.width()
            && size_mm.1 * scale.factor() + around_mm.1 <= field.height()
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawing::extent::Extent;
    use crate::geometry::Point;

    #[test]
    fn largest_scale_that_fits_is_taken() {
        // A ring of 60 with 40 mm of dimensions around, on 180 x 200: 2:1 takes 160, 5:1 takes 340.
        let field = Extent::sized(Point { x: 0.0, y: 0.0 }, 180.0, 200.0);
        let fitted = fit_scale((60.0, 60.0), (40.0, 40.0), &field);
        assert_eq!(
            fitted.map(|scale| scale.to_string()).as_deref(),
            Some("2:1")
        );
        assert_eq!(fit_scale((60_000.0, 1.0), (0.0, 0.0), &field), None);
    }
}
