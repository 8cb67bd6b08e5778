//! Which instrument of the workshop reads a size best.

use crate::workshop::Instrument;

/// How a size is taken hold of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grip {
    /// Between two faces from outside.
    Outside,
    /// Between two walls from inside.
    Inside,
    /// From one face down to another.
    Depth,
    /// An angle in the plan.
    Angle,
}

impl Grip {
    /// How a size is measured with it, in words.
    #[must_use]
    pub const fn how(self) -> &'static str {
        match self {
            Self::Outside => {
                "at five or more places evenly round; what a three-jaw chuck has squeezed shows three lobes, which two \
                 opposite anvils do not see: turn it in a vee block under an indicator as well"
            }
            Self::Inside => {
                "at five or more places evenly round, rocked to the greatest reading across and the least along"
            }
            Self::Depth => {
                "from the face that the drawing measures it from, at five or more places evenly round"
            }
            Self::Angle => {
                "seen from the lens side with the ring locked, clockwise from 12 o'clock; each reading from zero anew"
            }
        }
    }
}

/// Whether an instrument can take hold of a size, by its name and the span that a name such as `micrometer 50-75`
/// states.
#[must_use]
pub fn suits(instrument: &Instrument, grip: Grip, size_mm: f64) -> bool {
    let name = instrument.name.to_lowercase();
    let has = |word: &str| name.contains(word);
    let takes_hold = match grip {
        Grip::Outside => has("caliper") || (has("micrometer") && !has("depth") && !has("inside")),
        Grip::Inside => has("caliper") || has("bore") || has("inside"),
        Grip::Depth => has("caliper") || has("depth") || has("indicator"),
        Grip::Angle => has("protractor") || has("angle"),
    };
    takes_hold && span_of(&name).is_none_or(|(from, to)| (from..=to).contains(&size_mm))
}

/// The span in a name: two numbers joined by a dash.
fn span_of(name: &str) -> Option<(f64, f64)> {
    name.split_whitespace().find_map(|word| {
        let (from, to) = word.split_once('-')?;
        Some((from.parse().ok()?, to.parse().ok()?))
    })
}

/// The suitable instrument with the smallest permissible error.
#[must_use]
pub fn best_instrument(
    instruments: &[Instrument],
    grip: Grip,
    size_mm: f64,
) -> Option<&Instrument> {
    instruments
        .iter()
        .filter(|instrument| suits(instrument, grip, size_mm))
        .min_by(|a, b| a.permissible_error_mm.total_cmp(&b.permissible_error_mm))
}

/// The suitable instrument with the smallest permissible error, where that is less than the one in hand has.
#[must_use]
pub fn better_instrument<'w>(
    instruments: &'w [Instrument],
    grip: Grip,
    size_mm: f64,
    in_hand: &Instrument,
) -> Option<&'w Instrument> {
    best_instrument(instruments, grip, size_mm)
        .filter(|best| best.permissible_error_mm < in_hand.permissible_error_mm)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::Workshop;

    #[test]
    fn a_better_one_is_named_and_the_best_has_none_better() {
        let all = Workshop::default_set().unwrap().instruments;
        let named = |name: &str| all.iter().find(|one| one.name == name).unwrap();
        let better = |in_hand| better_instrument(&all, Grip::Depth, 1.46, named(in_hand));
        assert_eq!(better("caliper 0.02").unwrap().name, "depth micrometer");
        assert_eq!(better("depth micrometer"), None);
    }

    #[test]
    fn the_shipped_instruments_take_what_they_can() {
        let all = Workshop::default_set().unwrap().instruments;
        let best = |grip, size| best_instrument(&all, grip, size).unwrap().name.as_str();
        assert_eq!(best(Grip::Outside, 53.7), "micrometer 50-75");
        assert_eq!(best(Grip::Outside, 1.3), "micrometer 0-25");
        assert_eq!(best(Grip::Outside, 80.0), "caliper 0.02");
        assert_eq!(best(Grip::Depth, 1.46), "depth micrometer");
        assert_eq!(best(Grip::Inside, 34.0), "caliper 0.02");
        assert_eq!(best(Grip::Angle, 60.0), "protractor photograph");
        assert_eq!(best_instrument(&[], Grip::Angle, 1.0), None);
    }
}
