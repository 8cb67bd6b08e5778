//! Numbers that remember how they were made: the shown working comes from the code that computes.

use std::borrow::Cow;
use std::fmt::Write as _;
use std::ops::{Add, Div, Mul, Neg, Sub};
use std::sync::Arc;

use super::FieldRef;
use crate::mount::{Unit, show_number};

/// A value that enters a formula.
#[derive(Clone, Debug, PartialEq)]
pub struct Input {
    /// The name in the formula.
    pub name: Cow<'static, str>,
    /// The value, in `unit`.
    pub value: f64,
    /// Its unit.
    pub unit: Unit,
    /// The field it stands in, if it is one.
    pub field: Option<FieldRef>,
}

#[derive(Debug)]
enum Node {
    /// A field; its name is looked up only when the formula is written out.
    Field(FieldRef),
    Named(Cow<'static, str>, Unit),
    Number,
    Negative(Term),
    Binary(char, Term, Term),
    Call(&'static str, Vec<Term>),
}

/// A number with the tree of operations that made it.
#[derive(Clone, Debug)]
pub struct Term {
    value: f64,
    node: Arc<Node>,
}

impl Term {
    /// A value of a field; the formula names it by the field's long label.
    #[must_use]
    pub fn field(field: FieldRef, value: f64) -> Self {
        Self {
            value,
            node: Arc::new(Node::Field(field)),
        }
    }

    /// A value that is not a field: from a table, or from a geometric search that `name` describes.
    pub fn named(name: impl Into<Cow<'static, str>>, value: f64, unit: Unit) -> Self {
        Self {
            value,
            node: Arc::new(Node::Named(name.into(), unit)),
        }
    }

    /// The input that this term is, if it is one.
    fn input(&self) -> Option<Input> {
        let (name, unit, field) = match &*self.node {
            Node::Field(field) => (field.long_label().into(), field.unit(), Some(*field)),
            Node::Named(name, unit) => (name.clone(), *unit, None),
            Node::Number | Node::Negative(_) | Node::Binary(..) | Node::Call(..) => return None,
        };
        Some(Input {
            name,
            value: self.value,
            unit,
            field,
        })
    }

    /// The value.
    #[must_use]
    pub const fn value(&self) -> f64 {
        self.value
    }

    /// The smaller of two.
    #[must_use]
    pub fn min(self, other: impl Into<Self>) -> Self {
        let other = other.into();
        Self {
            value: self.value.min(other.value),
            node: Arc::new(Node::Call("min", vec![self, other])),
        }
    }

    /// The larger of two.
    #[must_use]
    pub fn max(self, other: impl Into<Self>) -> Self {
        let other = other.into();
        Self {
            value: self.value.max(other.value),
            node: Arc::new(Node::Call("max", vec![self, other])),
        }
    }

    /// A function of one term, shown under `name`.
    #[must_use]
    pub fn apply(self, name: &'static str, function: impl FnOnce(f64) -> f64) -> Self {
        Self {
            value: function(self.value),
            node: Arc::new(Node::Call(name, vec![self])),
        }
    }

    /// The formula in plain notation.
    #[must_use]
    pub fn formula(&self) -> String {
        let mut text = String::new();
        self.write(&mut text, false, 0);
        text
    }

    /// The same formula with numbers in it.
    #[must_use]
    pub fn numbers(&self) -> String {
        let mut text = String::new();
        self.write(&mut text, true, 0);
        text
    }

    /// The inputs, each once, in the order of the formula.
    #[must_use]
    pub fn inputs(&self) -> Vec<Input> {
        let mut found = Vec::new();
        self.collect(&mut found);
        found
    }

    /// The fields among the inputs, in the order of the formula; one that enters twice is listed twice.
    #[must_use]
    pub fn fields(&self) -> Vec<FieldRef> {
        let mut found = Vec::new();
        self.collect_fields(&mut found);
        found
    }

    fn collect_fields(&self, found: &mut Vec<FieldRef>) {
        match &*self.node {
            Node::Field(field) => found.push(*field),
            Node::Named(..) | Node::Number => {}
            Node::Negative(inner) => inner.collect_fields(found),
            Node::Binary(_, left, right) => {
                left.collect_fields(found);
                right.collect_fields(found);
            }
            Node::Call(_, parts) => parts.iter().for_each(|part| part.collect_fields(found)),
        }
    }

    fn collect(&self, found: &mut Vec<Input>) {
        match &*self.node {
            Node::Field(_) | Node::Named(..) => {
                found.extend(self.input().filter(|input| !found.contains(input)));
            }
            Node::Number => {}
            Node::Negative(inner) => inner.collect(found),
            Node::Binary(_, left, right) => {
                left.collect(found);
                right.collect(found);
            }
            Node::Call(_, parts) => parts.iter().for_each(|part| part.collect(found)),
        }
    }

    /// `tightness` is that of the operation around: 0 none, 1 sum, 2 product, 3 right of minus or divide.
    fn write(&self, text: &mut String, with_numbers: bool, tightness: u8) {
        match &*self.node {
            Node::Field(field) if with_numbers => {
                push_number(
                    text,
                    &show_number(self.value, field.unit().decimals()),
                    tightness,
                );
            }
            Node::Field(field) => text.push_str(&field.long_label()),
            Node::Named(_, unit) if with_numbers => {
                push_number(text, &show_number(self.value, unit.decimals()), tightness);
            }
            Node::Named(name, _) => text.push_str(name),
            Node::Number => push_number(text, &short_number(self.value), tightness),
            Node::Negative(inner) => {
                text.push('-');
                inner.write(text, with_numbers, 3);
            }
            Node::Binary(sign, left, right) => {
                let own = if matches!(sign, '+' | '-') { 1 } else { 2 };
                let open = tightness > own;
                if open {
                    text.push('(');
                }
                left.write(text, with_numbers, own);
                text.push(' ');
                text.push(*sign);
                text.push(' ');
                let right_tightness = match sign {
                    '-' => 2,
                    '/' => 3,
                    _ => own,
                };
                right.write(text, with_numbers, right_tightness);
                if open {
                    text.push(')');
                }
            }
            Node::Call(name, parts) => {
                text.push_str(name);
                text.push('(');
                for (index, part) in parts.iter().enumerate() {
                    if index > 0 {
                        text.push_str(", ");
                    }
                    part.write(text, with_numbers, 0);
                }
                text.push(')');
            }
        }
    }
}

fn push_number(text: &mut String, number: &str, tightness: u8) {
    if number.starts_with('-') && tightness > 0 {
        let _infallible = write!(text, "({number})");
    } else {
        text.push_str(number);
    }
}

/// A number of a formula: whole numbers without decimals.
fn short_number(value: f64) -> String {
    if value.fract() == 0.0 && value.abs() < 1e6 {
        format!("{value:.0}")
    } else {
        show_number(value, 6)
    }
}

impl From<f64> for Term {
    fn from(value: f64) -> Self {
        Self {
            value,
            node: Arc::new(Node::Number),
        }
    }
}

macro_rules! operator {
    ($trait:ident, $method:ident, $sign:literal) => {
        impl<R: Into<Term>> $trait<R> for Term {
            type Output = Self;

            fn $method(self, right: R) -> Self {
                let right = right.into();
                Self {
                    value: self.value.$method(right.value),
                    node: Arc::new(Node::Binary($sign, self, right)),
                }
            }
        }

        impl $trait<Term> for f64 {
            type Output = Term;

            fn $method(self, right: Term) -> Term {
                Term::from(self).$method(right)
            }
        }
    };
}

operator!(Add, add, '+');
operator!(Sub, sub, '-');
operator!(Mul, mul, '×');
operator!(Div, div, '/');

impl Neg for Term {
    type Output = Self;

    fn neg(self) -> Self {
        Self {
            value: -self.value,
            node: Arc::new(Node::Negative(self)),
        }
    }
}

/// One line of working: what was computed, how, from what, and what would make it wrong.
#[derive(Clone, Debug)]
pub struct Working {
    /// What the line computes.
    pub result: Cow<'static, str>,
    /// The number and its tree.
    pub term: Term,
    /// The unit of the result.
    pub unit: Unit,
    /// The source of the formula, or "common practice, no source".
    pub source: &'static str,
    /// The assumption that would make it wrong; empty where there is none.
    pub assumption: &'static str,
}

/// The source line of workshop lore.
pub const LORE: &str = "common practice, no source";

impl Working {
    /// A line of working.
    pub fn new(
        result: impl Into<Cow<'static, str>>,
        term: Term,
        unit: Unit,
        source: &'static str,
    ) -> Self {
        Self {
            result: result.into(),
            term,
            unit,
            source,
            assumption: "",
        }
    }

    /// The same with the assumption that would make it wrong.
    #[must_use]
    pub const fn assuming(mut self, assumption: &'static str) -> Self {
        self.assumption = assumption;
        self
    }

    /// The line as text: formula, numbers, result, source.
    #[must_use]
    pub fn text(&self) -> String {
        let formula = self.term.formula();
        let numbers = self.term.numbers();
        let value = self.unit.show(self.term.value());
        let mut text = if matches!(&*self.term.node, Node::Field(_) | Node::Named(..)) {
            format!("{} = {formula} = {value}", self.result)
        } else {
            format!("{} = {formula} = {numbers} = {value}", self.result)
        };
        let _infallible = write!(text, " [{}]", self.source);
        if !self.assumption.is_empty() {
            let _infallible = write!(text, " Holds if {}.", self.assumption);
        }
        text
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn term(name: &'static str, value: f64) -> Term {
        Term::named(name, value, Unit::Mm)
    }

    #[test]
    fn formula_and_numbers_come_from_the_same_tree() {
        let seat = term("lens register", 45.46) - term("body register", 44.0) + term("trim", -0.03);
        assert_eq!(seat.formula(), "lens register - body register + trim");
        assert_eq!(seat.numbers(), "45.46 - 44.00 + (-0.03)");
        assert!((seat.value() - 1.43).abs() < 1e-12);
    }

    #[test]
    fn brackets_stand_only_where_they_are_needed() {
        let spread = (term("a", 3.0) - (term("b", 1.0) - term("c", 2.0))) / (term("d", 4.0) * 2.0);
        assert_eq!(spread.formula(), "(a - (b - c)) / (d × 2)");
        assert_eq!(
            (2.0 * (term("a", 1.0) + term("b", 2.0))).formula(),
            "2 × (a + b)"
        );
        assert_eq!((-(term("a", 1.0) + term("b", 2.0))).formula(), "-(a + b)");
        assert_eq!(term("a", 1.0).max(term("b", 2.0)).formula(), "max(a, b)");
    }

    #[test]
    fn inputs_are_listed_once() {
        let area = term("r", 2.0) * term("r", 2.0);
        assert_eq!(area.inputs().len(), 1);
    }
}
