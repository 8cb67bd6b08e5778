//! The scales of ISO 5455 and the choice among them.

/// A scale: lengths on paper to lengths of the part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Scale {
    /// Paper.
    pub paper: u32,
    /// Part.
    pub part: u32,
}

/// Enlargements, full size and reductions of ISO 5455:1979 clause 3, largest first.
pub const SCALES: [Scale; 13] = [
    Scale::enlarged(50),
    Scale::enlarged(20),
    Scale::enlarged(10),
    Scale::enlarged(5),
    Scale::enlarged(2),
    Scale::FULL,
    Scale::reduced(2),
    Scale::reduced(5),
    Scale::reduced(10),
    Scale::reduced(20),
    Scale::reduced(50),
    Scale::reduced(100),
    Scale::reduced(200),
];

impl Scale {
    /// Full size.
    pub const FULL: Self = Self { paper: 1, part: 1 };

    const fn enlarged(paper: u32) -> Self {
        Self { paper, part: 1 }
    }

    const fn reduced(part: u32) -> Self {
        Self { paper: 1, part }
    }

    /// Paper mm per mm of the part.
    #[must_use]
    pub fn factor(self) -> f64 {
        f64::from(self.paper) / f64::from(self.part)
    }
}

impl std::fmt::Display for Scale {
    /// As ISO 5455 writes it in a title block: "2:1".
    fn fmt(&self, formatter: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(formatter, "{}:{}", self.paper, self.part)
    }
}

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
    fn scales_are_those_of_the_standard() {
        // ISO 5455:1979 clause 3: 50:1 20:1 10:1 5:1 2:1, 1:1, 1:2 1:5 1:10 and tenfold on.
        let written: Vec<String> = SCALES.iter().map(ToString::to_string).collect();
        assert_eq!(
            written.join(" "),
            "50:1 20:1 10:1 5:1 2:1 1:1 1:2 1:5 1:10 1:20 1:50 1:100 1:200"
        );
    }

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
