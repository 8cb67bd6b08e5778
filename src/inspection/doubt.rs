//! How far a measured or corrected size may be off.

use crate::tolerance::{Component, combine, student_factor};

/// Share that an expanded uncertainty holds.
const SHARE: f64 = 0.95;

/// Standard and expanded uncertainty of a size, in its unit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Doubt {
    /// Combined standard uncertainty (JCGM 100 5.1.2).
    pub standard: f64,
    /// What holds 95 % either way.
    pub expanded: f64,
}

impl Doubt {
    /// Of several causes. Each is expanded by the factor of its own degrees of freedom, and the root of the sum of
    /// squares is taken. One common factor by effective degrees of freedom (JCGM 100 G.4.1) promises too much where
    /// few readings happen to agree: in a simulated loop of measuring and correcting it held 94 % instead of 95. Own
    /// choice.
    #[must_use]
    pub fn of(causes: &[Component]) -> Self {
        let squares: f64 = causes
            .iter()
            .map(|cause| {
                let factor = student_factor(SHARE, cause.dof);
                (factor * cause.sensitivity * cause.standard_uncertainty).powi(2)
            })
            .sum();
        Self {
            standard: combine(causes).standard_uncertainty,
            expanded: squares.sqrt(),
        }
    }

    /// With another, independent cause.
    #[must_use]
    pub fn and(self, cause: Component) -> Self {
        let other = Self::of(&[cause]);
        Self {
            standard: self.standard.hypot(other.standard),
            expanded: self.expanded.hypot(other.expanded),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A cause known by its limits alone: a / √3, and 1.96 of it (normal distribution); five readings alone: t = 2.776
    /// (JCGM 100 table G.2).
    #[test]
    fn one_cause_alone_is_expanded_as_printed() {
        let limits = Doubt::of(&[Component::within("limits", 0.003)]);
        assert!((limits.expanded / limits.standard - 1.96).abs() < 1e-3);
        let spread = Component {
            name: "readings".into(),
            sensitivity: 1.0,
            standard_uncertainty: 0.002,
            dof: 4.0,
        };
        let readings = Doubt::of(std::slice::from_ref(&spread));
        assert!((readings.expanded / 0.002 - 2.776).abs() < 1e-3);
        let both = Doubt::of(&[spread, Component::within("limits", 0.003)]);
        let joined = readings.and(Component::within("limits", 0.003));
        assert!((both.expanded - joined.expanded).abs() < 1e-15);
        assert!((both.standard - joined.standard).abs() < 1e-15);
    }
}
