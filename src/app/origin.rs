//! What becomes of a value's origin when its number is typed anew.

use crate::mount::{Citation, Interface, Known, Origin};

/// The kinds of origin, as the origin editor lists them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum OriginKind {
    /// Fixed by a standard.
    Standard,
    /// Printed somewhere.
    Published,
    /// Measured on the part.
    Measured,
    /// Assumed.
    Assumed,
}

impl OriginKind {
    /// Every kind, in the order shown.
    pub const ALL: [Self; 4] = [
        Self::Standard,
        Self::Published,
        Self::Measured,
        Self::Assumed,
    ];

    /// The kind of an origin.
    #[must_use]
    pub const fn of(origin: &Origin) -> Self {
        match origin {
            Origin::Standard(_) => Self::Standard,
            Origin::Published(_) => Self::Published,
            Origin::Measured { .. } => Self::Measured,
            Origin::Assumed(_) => Self::Assumed,
        }
    }

    /// The word on screen.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Standard => "standard",
            Self::Published => "published",
            Self::Measured => "measured",
            Self::Assumed => "assumed",
        }
    }

    /// What is to be typed beside it.
    #[must_use]
    pub const fn asks(self) -> &'static str {
        match self {
            Self::Standard => "Which standard",
            Self::Published => "Where printed",
            Self::Measured => "Instrument",
            Self::Assumed => "Why assumed",
        }
    }
}

/// The one text of an origin: source, instrument or reason.
#[must_use]
pub fn origin_words(origin: &Origin) -> String {
    match origin {
        Origin::Standard(text) | Origin::Assumed(text) => text.clone(),
        Origin::Measured { instrument, .. } => instrument.clone(),
        Origin::Published(citations) => citations
            .first()
            .map(|citation| citation.source.clone())
            .unwrap_or_default(),
    }
}

/// An origin of `kind` with `words` beside it; what else the old one held is kept where it fits.
#[must_use]
pub fn restated(old: &Origin, kind: OriginKind, words: String, says: Option<f64>) -> Origin {
    match kind {
        OriginKind::Standard => Origin::Standard(words),
        OriginKind::Assumed => Origin::Assumed(words),
        OriginKind::Measured => {
            let readings = match old {
                Origin::Measured { readings, .. } => readings.clone(),
                Origin::Standard(_) | Origin::Published(_) | Origin::Assumed(_) => Vec::new(),
            };
            Origin::Measured {
                readings,
                instrument: words,
            }
        }
        OriginKind::Published => {
            let mut citations = match old {
                Origin::Published(citations) => citations.clone(),
                Origin::Standard(_) | Origin::Measured { .. } | Origin::Assumed(_) => Vec::new(),
            };
            match citations.first_mut() {
                Some(first) => first.source = words,
                None => citations.extend(says.map(|says| Citation {
                    says,
                    source: words,
                })),
            }
            Origin::Published(citations)
        }
    }
}

/// A new number typed over an old value. A measured value stays measured, without the readings that gave
/// another mean; anything else becomes assumed, because no standard or print says the new number.
#[must_use]
pub fn retyped(old: &Interface<f64>, value: f64) -> Interface<f64> {
    let Interface::Known(known) = old else {
        return Interface::assumed(value, "typed in, origin not stated");
    };
    let origin = match &known.origin {
        Origin::Measured { instrument, .. } => Origin::Measured {
            readings: Vec::new(),
            instrument: instrument.clone(),
        },
        Origin::Published(citations)
            if citations.iter().any(|citation| same(citation.says, value)) =>
        {
            known.origin.clone()
        }
        Origin::Standard(_) | Origin::Published(_) => Origin::Assumed(format!(
            "typed over {} ({})",
            known.value,
            old.origin_text()
        )),
        Origin::Assumed(why) => Origin::Assumed(why.clone()),
    };
    Interface::Known(Known {
        value,
        uncertainty: known.uncertainty,
        origin,
    })
}

/// The same origin and uncertainty for a new list or thread.
#[must_use]
pub fn revised<T>(old: &Interface<T>, value: T) -> Interface<T> {
    match old {
        Interface::Unknown => Interface::assumed(value, "typed in, origin not stated"),
        Interface::Known(known) => Interface::Known(Known {
            value,
            uncertainty: known.uncertainty,
            origin: known.origin.clone(),
        }),
    }
}

fn same(a: f64, b: f64) -> bool {
    const NEAR: f64 = 1e-9;
    (a - b).abs() < NEAR
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mount::Standing;
    use crate::tolerance::Measurement;

    #[test]
    fn no_standard_says_a_number_typed_by_hand() {
        let old = Interface::standard(17.526, "a standard");
        let new = retyped(&old, 17.6);
        assert_eq!(new.standing(), Standing::Assumed);
        assert!(
            new.origin_text().contains("17.526"),
            "{}",
            new.origin_text()
        );
    }

    #[test]
    fn a_measured_value_stays_measured_but_loses_readings_of_another_mean() {
        let readings = vec![44.01, 44.03];
        let known = Measurement::of(&readings, None)
            .unwrap()
            .known(readings, "caliper".to_owned());
        let old = Interface::Known(known);
        assert!((old.number().unwrap() - 44.02).abs() < 1e-12);
        let new = retyped(&old, 44.1);
        assert_eq!(new.standing(), Standing::Measured);
        assert!(new.origin_text().ends_with("caliper"));
        assert!((new.uncertainty() - 0.01).abs() < 1e-12);
    }

    #[test]
    fn typing_what_a_print_says_keeps_the_print() {
        let citations = vec![
            Citation {
                says: 44.0,
                source: "a".to_owned(),
            },
            Citation {
                says: 44.2,
                source: "b".to_owned(),
            },
        ];
        let old = Interface::Known(Known {
            value: 44.0,
            uncertainty: 0.0,
            origin: Origin::Published(citations),
        });
        assert_eq!(retyped(&old, 44.2).standing(), Standing::Disputed);
        assert_eq!(retyped(&old, 44.1).standing(), Standing::Assumed);
    }
}
