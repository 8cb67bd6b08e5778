//! A size with its tolerance, and how it is written.

use crate::drawing::dimension::label::{Label, Stack};
use crate::drawing::number::{DecimalMark, MOST_DECIMALS, decimals, deviation, plain};
use crate::drawing::signs;

/// What kind of size it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Kind {
    /// A distance, mm.
    Length,
    /// A diameter, mm.
    Diameter,
    /// A radius, mm.
    Radius,
    /// An angle, degrees.
    Angle,
}

/// How far a size may be off.
#[derive(Debug, Clone, PartialEq)]
pub enum Tolerance {
    /// As the general tolerance note says.
    General,
    /// As much above as below; mm or degrees.
    PlusMinus(f64),
    /// Upper and lower deviation; mm or degrees.
    Deviations {
        /// Upper deviation.
        upper: f64,
        /// Lower deviation.
        lower: f64,
    },
    /// A tolerance class such as "h9", with its deviations in brackets when they are known.
    Class {
        /// The class.
        code: String,
        /// Upper and lower deviation, mm.
        deviations: Option<(f64, f64)>,
    },
    /// At least the size.
    Minimum,
    /// At most the size.
    Maximum,
}

/// A size as it stands on the drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Size {
    /// How often the feature occurs; 1 is not written.
    pub count: u32,
    /// What kind of size.
    pub kind: Kind,
    /// The size, mm or degrees.
    pub value: f64,
    /// How far it may be off.
    pub tolerance: Tolerance,
    /// Whether it is only for information and stands in brackets.
    pub auxiliary: bool,
}

impl Size {
    /// A size under the general tolerance.
    #[must_use]
    pub fn new(kind: Kind, value: f64) -> Self {
        Self {
            count: 1,
            kind,
            value,
            tolerance: Tolerance::General,
            auxiliary: false,
        }
    }

    /// The same size with a tolerance.
    #[must_use]
    pub fn within(self, tolerance: Tolerance) -> Self {
        Self { tolerance, ..self }
    }

    /// The same size in brackets, for information only.
    #[must_use]
    pub fn in_brackets(self) -> Self {
        Self {
            auxiliary: true,
            ..self
        }
    }

    /// The lettering.
    #[must_use]
    pub fn label(&self, mark: DecimalMark) -> Label {
        let nominal = self.nominal(mark);
        let label = match &self.tolerance {
            Tolerance::General => Label::plain(nominal),
            Tolerance::PlusMinus(amount) => self.plus_minus(&nominal, *amount, mark),
            Tolerance::Deviations { upper, lower } => {
                if is_balanced(*upper, *lower) {
                    self.plus_minus(&nominal, *upper, mark)
                } else {
                    Label {
                        main: nominal,
                        stack: Some(self.stack(*upper, *lower, mark)),
                        tail: String::new(),
                    }
                }
            }
            Tolerance::Class { code, deviations } => match deviations {
                None => Label::plain(format!("{nominal} {code}")),
                Some((upper, lower)) => Label {
                    main: format!("{nominal} {code} ("),
                    stack: Some(self.stack(*upper, *lower, mark)),
                    tail: ")".to_owned(),
                },
            },
            Tolerance::Minimum => Label::plain(format!("{nominal} min")),
            Tolerance::Maximum => Label::plain(format!("{nominal} max")),
        };
        if self.auxiliary {
            Label {
                main: format!("({}", label.main),
                tail: format!("{})", label.tail),
                ..label
            }
        } else {
            label
        }
    }

    /// Count, sign, figure and unit without the tolerance.
    fn nominal(&self, mark: DecimalMark) -> String {
        let figure = plain(self.value, MOST_DECIMALS, mark);
        let marked = match self.kind {
            Kind::Length => figure,
            Kind::Diameter => format!("{}{figure}", signs::DIAMETER),
            Kind::Radius => format!("R{figure}"),
            Kind::Angle => format!("{figure}\u{b0}"),
        };
        if self.count > 1 {
            format!("{}\u{d7} {marked}", self.count)
        } else {
            marked
        }
    }

    /// The unit written after a deviation.
    fn unit(&self) -> &'static str {
        match self.kind {
            Kind::Length | Kind::Diameter | Kind::Radius => "",
            Kind::Angle => "\u{b0}",
        }
    }

    fn plus_minus(&self, nominal: &str, amount: f64, mark: DecimalMark) -> Label {
        let amount = plain(amount.abs(), MOST_DECIMALS, mark);
        Label::plain(format!("{nominal} \u{b1}{amount}{}", self.unit()))
    }

    /// Both deviations with as many decimals as the finer one needs (ISO 129-1).
    fn stack(&self, upper: f64, lower: f64, mark: DecimalMark) -> Stack {
        let finest = decimals(upper, MOST_DECIMALS).max(decimals(lower, MOST_DECIMALS));
        let row = |value| format!("{}{}", deviation(value, finest, mark), self.unit());
        Stack {
            upper: row(upper),
            lower: row(lower),
        }
    }
}

/// True when upper and lower deviation are equal and opposite to the last written decimal.
fn is_balanced(upper: f64, lower: f64) -> bool {
    const LAST_DECIMAL: f64 = 0.0005;
    upper > 0.0 && (upper + lower).abs() < LAST_DECIMAL
}

#[cfg(test)]
mod tests {
    use super::*;

    const COMMA: DecimalMark = DecimalMark::Comma;

    #[test]
    fn tolerances_are_written_as_the_standard_shows_them() {
        // ISO 129-1 as public excerpts show it: "35 ±0,02"; unequal ones stacked, "0" bare; "Ø40 H7".
        let size = Size::new(Kind::Length, 35.0);
        let label = size.clone().within(Tolerance::PlusMinus(0.02)).label(COMMA);
        assert_eq!(label.main, "35 \u{b1}0,02");
        let unequal = Tolerance::Deviations {
            upper: 0.05,
            lower: 0.0,
        };
        let stack = size.within(unequal).label(COMMA).stack.unwrap();
        assert_eq!((stack.upper.as_str(), stack.lower.as_str()), ("+0,05", "0"));
        // ISO 286-2: 40 H7 is +25/0 um.
        let fit = Size::new(Kind::Diameter, 40.0)
            .within(Tolerance::Class {
                code: "H7".to_owned(),
                deviations: Some((0.025, 0.0)),
            })
            .label(COMMA);
        assert_eq!(fit.main, "\u{2300}40 H7 (");
        assert_eq!(fit.stack.unwrap().upper, "+0,025");
        assert_eq!(fit.tail, ")");
    }

    #[test]
    fn equal_deviations_become_plus_minus() {
        let size = Size::new(Kind::Angle, 60.0).within(Tolerance::Deviations {
            upper: 0.5,
            lower: -0.5,
        });
        assert_eq!(size.label(COMMA).main, "60\u{b0} \u{b1}0,5\u{b0}");
    }

    #[test]
    fn sizes_for_information_stand_in_brackets() {
        // ISO 129-1: auxiliary dimensions in brackets.
        let label = Size::new(Kind::Length, 12.5).in_brackets().label(COMMA);
        assert_eq!(format!("{}{}", label.main, label.tail), "(12,5)");
    }

    #[test]
    fn printed_value_is_the_value_given() {
        for step in 0..5000 {
            let value = f64::from(step) * 0.013;
            let text = Size::new(Kind::Length, value)
                .label(DecimalMark::Point)
                .main;
            assert!((text.parse::<f64>().unwrap() - value).abs() <= 0.0005 + 1e-12);
        }
    }
}
