//! What must come before what, and why; and an order that breaks none of it.
//!
//! The rules are common practice, no source. They make a graph; an order exists where it has no cycle.

use std::fmt;

use thiserror::Error;

use super::operation::Operation as Op;
use super::route::Setting;
use crate::document::Route;

/// One operation before another, with the reason.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rule {
    /// What comes first.
    pub before: Op,
    /// What comes after.
    pub after: Op,
    /// Why.
    pub reason: &'static str,
}

impl fmt::Display for Rule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} before {}: {}", self.before, self.after, self.reason)
    }
}

/// Rules that contradict each other.
#[derive(Clone, Debug, Error, PartialEq, Eq)]
#[error("no order of cuts: these rules go round in a circle: {}", self.text())]
pub struct Cycle {
    /// The rules of the circle and what hangs on it.
    pub rules: Vec<Rule>,
}

impl Cycle {
    fn text(&self) -> String {
        let rules: Vec<String> = self.rules.iter().map(ToString::to_string).collect();
        rules.join("; ")
    }
}

/// Everything that must wait for another operation: `(befores, afters, reason)`.
type Row = (&'static [Op], &'static [Op], &'static str);

const ALWAYS: [Row; 20] = [
    (
        &[Op::FaceEnd],
        &[
            Op::RoughOutside,
            Op::RoughBore,
            Op::Rim,
            Op::SeatFace,
            Op::FlangeRear,
            Op::PartOff,
        ],
        "the bar's end is rough and not square; the faced end is the axial datum",
    ),
    (
        &[Op::RoughOutside, Op::RoughBore],
        &[
            Op::Rim,
            Op::SeatSide,
            Op::SeatFace,
            Op::ThreadBore,
            Op::RearBore,
            Op::BayonetDiameters,
            Op::FlangeRear,
            Op::PlateFront,
        ],
        "roughing heats the ring and lets stress out: no close size before it is done",
    ),
    (
        &[Op::RoughBore],
        &[Op::PartOff],
        "only the wall is left to part",
    ),
    (
        &[Op::ThreadBore],
        &[Op::ThreadChamfer, Op::Relief, Op::PinAnnulus, Op::Thread],
        "the bore is the gauged minor diameter, everything behind it starts there",
    ),
    (
        &[Op::SeatFace, Op::SeatSide],
        &[Op::ThreadChamfer, Op::ThreadBore],
        "depths are counted from the seat",
    ),
    (
        &[Op::PlateFront],
        &[Op::SeatSide],
        "boss and counterbore are measured from the plate",
    ),
    (
        &[Op::ThreadChamfer],
        &[Op::Thread],
        "the chamfer keeps the first thread from burring and shows the depth",
    ),
    (
        &[Op::Relief],
        &[Op::Thread],
        "the tool needs the relief to run out in",
    ),
    (
        &[Op::SetScrews],
        &[Op::Thread],
        "the drill burrs what the thread would meet",
    ),
    (
        &[Op::Thread],
        &[Op::ThreadMouth],
        "threading raises a burr on the face",
    ),
    (
        &[Op::ThreadMouth],
        &[Op::FinalSkim],
        "a burr under the depth gauge spoils the register",
    ),
    (
        &[Op::BayonetDiameters],
        &[Op::Groove, Op::LugLeadIn],
        "groove and chamfer start from the finished diameter",
    ),
    (
        &[Op::FlangeRear],
        &[Op::Groove],
        "the groove is measured from the flange",
    ),
    (
        &[Op::Groove, Op::LugLeadIn],
        &[Op::MillGaps],
        "the mill runs out in the groove; turning interrupted lugs hammers the tool and burrs them",
    ),
    (
        &[Op::AngleMark],
        &[Op::MillGaps, Op::LockHole, Op::IndexMark],
        "every angle is counted from datum zero",
    ),
    (&[Op::MillGaps], &[Op::DeburrLugs], "milling burrs the lugs"),
    (
        &[Op::PartOff],
        &[Op::FaceSecondSide, Op::MakeArbor, Op::BoreJaws],
        "the other side is reached only then",
    ),
    (
        &[
            Op::FaceSecondSide,
            Op::PlateFront,
            Op::SeatFace,
            Op::FlangeRear,
            Op::Groove,
            Op::Relief,
            Op::PinAnnulus,
            Op::ThreadBore,
        ],
        &[Op::FinalSkim],
        "the face that makes the register is cut last of all lengths and takes up their errors",
    ),
    (
        &[
            Op::DeburrLugs,
            Op::LockHole,
            Op::IndexMark,
            Op::FinalSkim,
            Op::ThreadMouth,
        ],
        &[Op::DeburrAndWash],
        "burrs and chips spoil every measurement",
    ),
    (
        &[Op::DeburrAndWash],
        &[Op::Measure],
        "a burr is measured with the part",
    ),
];

const LAST: [Row; 2] = [
    (
        &[Op::Measure],
        &[Op::TrialFit],
        "nothing is fitted to a lens that has not been measured",
    ),
    (
        &[Op::Measure, Op::TrialFit],
        &[Op::Coat],
        "a skim after coating takes the coat off",
    ),
];

/// Rules of one route.
const fn of_route(route: Route) -> &'static [Row] {
    match route {
        Route::LugsInTheBar => &[
            (
                &[Op::MillGaps, Op::LockHole, Op::IndexMark, Op::DeburrLugs],
                &[Op::PartOff],
                "the bar is a stiff handle and keeps the angles",
            ),
            (
                &[Op::BoreJaws],
                &[Op::FaceSecondSide],
                "the jaws' step sets the flange true",
            ),
            (
                &[Op::FaceSecondSide],
                &[Op::PlateFront, Op::SeatSide, Op::SeatFace],
                "the parted face is hollow and rough",
            ),
        ],
        Route::LugsOnAMandrel => &[
            (
                &[Op::BoreJaws],
                &[Op::FaceSecondSide],
                "the jaws' step sets the flange true",
            ),
            (
                &[Op::FaceSecondSide],
                &[Op::PlateFront, Op::SeatSide, Op::SeatFace],
                "the parted face is hollow and rough",
            ),
            (
                &[Op::FinalSkim],
                &[Op::AngleMark],
                "the mandrel goes into the finished bore",
            ),
        ],
        Route::ThreadFirst => &[
            (
                &[Op::ThreadMouth, Op::SeatFace],
                &[Op::PartOff],
                "thread and seat are cut in one setting",
            ),
            (
                &[Op::MakeArbor],
                &[Op::FaceSecondSide],
                "the ring is held by its thread, seat on the shoulder",
            ),
            (
                &[Op::FaceSecondSide],
                &[Op::BayonetDiameters, Op::RearBore, Op::FlangeRear],
                "the parted face is hollow and rough",
            ),
            (
                &[Op::FinalSkim],
                &[Op::AngleMark],
                "no turning after the lugs are interrupted",
            ),
        ],
    }
}

/// The rules of a route between the operations that are there.
#[must_use]
pub fn rules(route: Route, operations: &[Op]) -> Vec<Rule> {
    ALWAYS
        .iter()
        .chain(of_route(route))
        .chain(&LAST)
        .flat_map(|(befores, afters, reason)| {
            befores.iter().flat_map(move |before| {
                afters.iter().map(move |after| Rule {
                    before: *before,
                    after: *after,
                    reason,
                })
            })
        })
        .filter(|rule| operations.contains(&rule.before) && operations.contains(&rule.after))
        .collect()
}

/// An order of the operations that breaks no rule and finishes one setting before the next; of those that may come
/// next, the one that stands first in [`Op`].
///
/// # Errors
/// [`Cycle`] where rules, or rules and settings, contradict each other.
pub fn arrange(
    operations: &[Op],
    rules: &[Rule],
    setting: impl Fn(Op) -> Setting,
) -> Result<Vec<Op>, Cycle> {
    let mut left: Vec<Op> = operations.to_vec();
    left.sort_by_key(|op| (setting(*op), *op));
    let mut done = Vec::with_capacity(left.len());
    while let Some(first) = left.first().copied() {
        let is_free = |op: &Op| {
            setting(*op) == setting(first)
                && !rules
                    .iter()
                    .any(|rule| rule.after == *op && left.contains(&rule.before))
        };
        let Some(place) = left.iter().position(is_free) else {
            let rules = rules
                .iter()
                .filter(|rule| left.contains(&rule.before) && left.contains(&rule.after))
                .copied()
                .collect();
            return Err(Cycle { rules });
        };
        done.push(left.remove(place));
    }
    Ok(done)
}

/// Neighbours of an order that may change places: no rule stands between them and they are done in one setting.
#[must_use]
pub fn exchangeable(
    order: &[Op],
    rules: &[Rule],
    setting: impl Fn(Op) -> Setting,
) -> Vec<(Op, Op)> {
    order
        .iter()
        .zip(order.iter().skip(1))
        .filter(|(one, next)| {
            setting(**one) == setting(**next)
                && !rules
                    .iter()
                    .any(|rule| rule.before == **one && rule.after == **next)
        })
        .map(|(one, next)| (*one, *next))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const fn rule(before: Op, after: Op) -> Rule {
        Rule {
            before,
            after,
            reason: "test",
        }
    }

    /// Milling in the bar and milling on an arbor held by the finished thread exclude each other.
    #[test]
    fn a_circle_is_named_with_its_rules() {
        let operations = [Op::MillGaps, Op::PartOff, Op::Thread, Op::DeburrAndWash];
        let contradicting = [
            rule(Op::MillGaps, Op::PartOff),
            rule(Op::PartOff, Op::Thread),
            rule(Op::Thread, Op::MillGaps),
        ];
        let cycle = arrange(&operations, &contradicting, |_| Setting::First).unwrap_err();
        assert_eq!(cycle.rules.len(), 3);
        assert!(cycle.to_string().contains("part off before cut the thread"));
        assert!(arrange(&operations, &contradicting[..2], |_| Setting::First).is_ok());
    }

    #[test]
    fn a_rule_against_the_settings_is_a_circle_too() {
        let setting = |op| {
            if op == Op::PartOff {
                Setting::First
            } else {
                Setting::Second
            }
        };
        let operations = [Op::PartOff, Op::MillGaps];
        assert!(arrange(&operations, &[rule(Op::MillGaps, Op::PartOff)], setting).is_err());
        assert!(arrange(&operations, &[rule(Op::PartOff, Op::MillGaps)], setting).is_ok());
    }

    #[test]
    fn neighbours_without_a_rule_may_change_places() {
        let order = [Op::MillGaps, Op::LockHole, Op::DeburrLugs];
        let rules = [rule(Op::LockHole, Op::DeburrLugs)];
        assert_eq!(
            exchangeable(&order, &rules, |_| Setting::First),
            [(Op::MillGaps, Op::LockHole)]
        );
    }
}
