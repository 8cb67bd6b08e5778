//! Reads the pieces of a thread designation one after another.

use super::designation_error::DesignationError;
use super::designation_tokens::{Kind, Token, short};
use super::thread::{NOMINAL_MM, UnifiedSeries};

/// A diameter as typed: its number, and whether it was a fraction.
#[derive(Clone, Copy)]
pub(super) struct Size {
    pub(super) value: f64,
    pub(super) is_fraction: bool,
}

/// Unit written behind a diameter.
#[derive(Clone, Copy, PartialEq)]
pub(super) enum Unit {
    Millimetre,
    Inch,
}

/// The pieces still to be read.
#[derive(Clone, Copy)]
pub(super) struct Cursor<'a> {
    pub(super) tokens: &'a [Token],
    pub(super) input: &'a str,
    /// A right designation of the form being read.
    pub(super) example: &'static str,
}

impl Cursor<'_> {
    pub(super) fn skip(&mut self) {
        self.tokens = self.tokens.get(1..).unwrap_or_default();
    }

    fn take(&mut self, fits: impl Fn(&Token) -> bool) -> bool {
        let found = self.tokens.first().is_some_and(fits);
        if found {
            self.skip();
        }
        found
    }

    pub(super) fn take_word(&mut self, word: &str) -> bool {
        self.take(|token| token.is_word(word))
    }

    pub(super) fn take_sign(&mut self, sign: char) -> bool {
        self.take(|token| token.kind == Kind::Sign(sign))
    }

    pub(super) fn unexpected(&self, expected: &'static str) -> DesignationError {
        let (input, example) = (short(self.input), self.example);
        match self.tokens.first() {
            Some(token) => {
                let piece = short(&token.text);
                DesignationError::NotUnderstood {
                    input,
                    piece,
                    expected,
                    example,
                }
            }
            None => DesignationError::Unfinished {
                input,
                expected,
                example,
            },
        }
    }

    pub(super) fn end(&self) -> Result<(), DesignationError> {
        if self.tokens.is_empty() {
            Ok(())
        } else {
            Err(self.unexpected("the end, or LH"))
        }
    }

    /// A plain number; a minus sign before it is refused by the name of the value, with what is allowed.
    pub(super) fn number(
        &mut self,
        (what, range, unit): (&'static str, (f64, f64), &'static str),
        expected: &'static str,
    ) -> Result<f64, DesignationError> {
        match self.tokens {
            [
                Token {
                    kind: Kind::Number(value),
                    ..
                },
                ..,
            ] => {
                self.skip();
                Ok(*value)
            }
            [
                Token {
                    kind: Kind::Sign('-'),
                    ..
                },
                Token {
                    kind: Kind::Number(value),
                    ..
                },
                ..,
            ] => Err(DesignationError::out_of_range(what, -value, range, unit)),
            _ => Err(self.unexpected(expected)),
        }
    }

    /// A diameter: `1`, `0.625`, `15/16`, `2 1/2` or `2-1/2`.
    pub(super) fn size(&mut self, expected: &'static str) -> Result<Size, DesignationError> {
        let first = self.number(("nominal diameter", NOMINAL_MM, "mm"), expected)?;
        if let Some(fraction) = self.fraction_below(first)? {
            return Ok(Size {
                value: fraction,
                is_fraction: true,
            });
        }
        let mut ahead = *self;
        ahead.take_sign('-');
        let [
            Token {
                kind: Kind::Number(numerator),
                ..
            },
            rest @ ..,
        ] = ahead.tokens
        else {
            return Ok(Size {
                value: first,
                is_fraction: false,
            });
        };
        let mut after = Self {
            tokens: rest,
            ..ahead
        };
        let Some(fraction) = after.fraction_below(*numerator)? else {
            return Ok(Size {
                value: first,
                is_fraction: false,
            });
        };
        if first.fract() != 0.0 || fraction >= 1.0 {
            return Err(ahead.unexpected("a whole number and a fraction below one, such as 2 1/2"));
        }
        *self = after;
        Ok(Size {
            value: first + fraction,
            is_fraction: true,
        })
    }

    /// The rest of a fraction whose numerator has been read: `/16`.
    fn fraction_below(&mut self, numerator: f64) -> Result<Option<f64>, DesignationError> {
        if !self.take_sign('/') {
            return Ok(None);
        }
        let whole = |value: f64| value.fract() == 0.0 && (1.0..=1000.0).contains(&value);
        match self.tokens {
            [
                Token {
                    kind: Kind::Number(denominator),
                    ..
                },
                ..,
            ] if whole(*denominator) && whole(numerator) => {
                self.skip();
                Ok(Some(numerator / denominator))
            }
            _ => Err(self.unexpected("a fraction of whole numbers, such as 15/16")),
        }
    }

    pub(super) fn unit(&mut self) -> Option<Unit> {
        if self.take_word("mm") {
            Some(Unit::Millimetre)
        } else if self.take_sign('"') || self.take_word("in") || self.take_word("inch") {
            Some(Unit::Inch)
        } else {
            None
        }
    }

    pub(super) fn series(&mut self) -> Result<UnifiedSeries, DesignationError> {
        let all = [
            UnifiedSeries::Unc,
            UnifiedSeries::Unf,
            UnifiedSeries::Unef,
            UnifiedSeries::Un,
            UnifiedSeries::Uns,
        ];
        all.into_iter()
            .find(|series| self.take_word(&series.to_string()))
            .ok_or_else(|| self.unexpected("the series UNC, UNF, UNEF, UN or UNS"))
    }

    /// One digit of a class.
    pub(super) fn grade(&mut self, expected: &'static str) -> Result<u8, DesignationError> {
        let grade = match self.tokens.first() {
            Some(Token {
                kind: Kind::Number(_),
                text,
            }) => text.parse().ok(),
            _ => None,
        };
        let grade = grade.ok_or_else(|| self.unexpected(expected))?;
        self.skip();
        Ok(grade)
    }
}
