//! Two rings laid over each other: the metal that the second has more, and the metal that it has less.

use thiserror::Error;

use super::lug_pattern::lug_pattern;
use super::subject::Subject;
use crate::geometry::{BooleanError, Outline, OutlineError, Region, difference};
use crate::ring::{Parts, ResolvedRing, cut_through_a_lug, gaps_between};

/// Where the half-sections are cut.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Cut {
    /// Through the first lug of each.
    #[default]
    ThroughLug,
    /// Through a gap between the lugs of each.
    BetweenLugs,
}

/// What the second of two shapes has more and less than the first.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Difference {
    /// Metal in the second that is not in the first.
    pub added: Region,
    /// Metal in the first that is not in the second.
    pub removed: Region,
}

/// Why two rings cannot be laid over each other.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum OverlayError {
    /// One of them is not whole.
    #[error("\"{0}\" is no whole ring yet: the page Design lists what is missing")]
    NoRing(String),
    /// Its lugs run into each other.
    #[error("the lugs of \"{name}\" make no pattern: {error}")]
    Pattern {
        /// Which one.
        name: String,
        /// What is wrong with it.
        error: OutlineError,
    },
    /// The shapes cannot be combined.
    #[error(transparent)]
    Boolean(#[from] BooleanError),
}

/// Regions thinner than this on the average are rounding, not metal, mm: a hundredth of a micrometre.
const THINNEST: f64 = 1e-5;

impl Cut {
    /// Both, in the order shown.
    pub const ALL: [Self; 2] = [Self::ThroughLug, Self::BetweenLugs];

    /// The words on screen.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::ThroughLug => "through a lug",
            Self::BetweenLugs => "between the lugs",
        }
    }

    /// The clock angle at which a ring is cut, degrees seen from the lens side.
    #[must_use]
    pub fn angle_deg(self, ring: &ResolvedRing) -> f64 {
        match self {
            Self::ThroughLug => cut_through_a_lug(ring),
            Self::BetweenLugs => gaps_between(&ring.lugs)
                .first()
                .map_or(0.0, |gap| gap.middle_deg().rem_euclid(360.0)),
        }
    }

    pub(super) fn outline(self, parts: &Parts) -> &Outline<crate::ring::Feature> {
        match self {
            Self::ThroughLug => &parts.through_lug,
            Self::BetweenLugs => &parts.between_lugs,
        }
    }
}

impl Difference {
    /// The difference of two outlines.
    ///
    /// # Errors
    /// [`BooleanError`]; not for outlines from the builder.
    pub fn between<A: Copy + PartialEq, B: Copy + PartialEq>(
        first: &Outline<A>,
        second: &Outline<B>,
    ) -> Result<Self, BooleanError> {
        if first.retagged(|_| ()) == second.retagged(|_| ()) {
            return Ok(Self::default());
        }
        Ok(Self {
            added: without_dust(difference(second, first)?),
            removed: without_dust(difference(first, second)?),
        })
    }

    /// Whether the two shapes are the same.
    #[must_use]
    pub const fn is_none(&self) -> bool {
        self.added.is_empty() && self.removed.is_empty()
    }
}

fn without_dust(mut region: Region) -> Region {
    let is_metal = |outline: &Outline| outline.area() > THINNEST * outline.perimeter() / 2.0;
    region.outer.retain(is_metal);
    region
}

/// What the half-section of the second has more and less than that of the first, both at z = 0 on the flange rear face.
/// The lock hole is not in it.
///
/// # Errors
/// [`OverlayError`] where one is no whole ring.
pub fn section_difference(
    first: &Subject<'_>,
    second: &Subject<'_>,
    cut: Cut,
) -> Result<Difference, OverlayError> {
    let (a, b) = (parts_of(first)?, parts_of(second)?);
    Ok(Difference::between(cut.outline(a), cut.outline(b))?)
}

/// What nose and lugs of the second cover in the plan more and less than those of the first, seen from the lens side.
///
/// # Errors
/// [`OverlayError`] where one is no whole ring, or its lugs run into each other.
pub fn pattern_difference(
    first: &Subject<'_>,
    second: &Subject<'_>,
) -> Result<Difference, OverlayError> {
    let (a, b) = (pattern_of(first)?, pattern_of(second)?);
    Ok(Difference::between(&a, &b)?)
}

fn parts_of<'a>(subject: &Subject<'a>) -> Result<&'a Parts, OverlayError> {
    let parts = subject.evaluation.parts.as_ref();
    parts.ok_or_else(|| OverlayError::NoRing(subject.name.to_owned()))
}

fn pattern_of(subject: &Subject<'_>) -> Result<Outline, OverlayError> {
    let ring = subject.evaluation.derivation.ring.as_ref();
    let ring = ring.ok_or_else(|| OverlayError::NoRing(subject.name.to_owned()))?;
    lug_pattern(ring).map_err(|error| OverlayError::Pattern {
        name: subject.name.to_owned(),
        error,
    })
}

#[cfg(test)]
#[path = "overlay_tests.rs"]
mod tests;
