//! The sentences of the shop plan, one wording for text, pages and window.

use super::order::ShopPlan;
use crate::document::Design;
use crate::mount::Unit;
use crate::workshop::Workshop;

/// What stands above everything.
pub const CAUTIONS: [&str; 4] = [
    "The rules of the workshop you stand in come first, with the machine's own manual and licensed practice: where they \
     and this sheet differ, follow them.",
    "Eye protection, guards closed. No gloves, loose sleeves, rings, ties or open hair near a turning spindle. The chuck \
     key is out of the chuck before the switch is touched.",
    "Stop and wait for standstill before measuring or clearing chips; hook or brush, never fingers, rag or air.",
    "Turn the chuck once by hand before every new setting: jaws and work clear slides and tool.",
];

/// What the speeds of the plan stand for.
pub const SPEEDS_ARE: &str =
    "Speeds are for high-speed steel, the low end; carbide goes about twice as fast.";

/// From where the angles of the plan are seen.
pub const SEEN_FROM_WORDS: &str = "Seen from the body side, where the gaps are milled: angles run clockwise from datum \
                                   zero, 12 o'clock of the locked ring.";

/// How a dividing head is worked.
pub const COUNTED_FROM_ZERO: &str = "every row counts from datum zero, never from the row before. Always come to the \
                                     hole from the same side; past it, go back a quarter turn and come again. The sector \
                                     arms take in one hole more than the spaces counted.";

/// The bar, the part in it, and what it costs.
#[must_use]
pub fn stock_words(design: &Design, workshop: &Workshop, plan: &ShopPlan) -> Vec<String> {
    let material = workshop.material(&design.ring.material);
    let Some((bar, material)) = plan.stock.zip(material) else {
        return vec!["The workshop does not know the material: enter it there.".to_owned()];
    };
    let cost = bar.cost.map_or_else(
        || "cost unknown: enter the price of a kilogram in the workshop".to_owned(),
        |cost| {
            format!(
                "cost {cost:.2} in your money at {:.2} a kilogram",
                material.price_per_kg
            )
        },
    );
    vec![
        format!(
            "{}, round bar {:.0} mm, sawn {:.0} mm long ({:.3} kg)",
            material.name, bar.diameter_mm, bar.length_mm, bar.mass_kg
        ),
        format!(
            "ring {} long, {} parted off, {:.0} mm in the chuck",
            Unit::Mm.show(bar.ring_length_mm),
            Unit::Mm.show(bar.kerf_mm),
            bar.grip_mm
        ),
        format!(
            "ring {:.1} g, waste {:.3} kg, bar over ring {:.1} : 1, {cost}",
            bar.ring_kg * 1000.0,
            bar.waste_kg(),
            bar.buy_to_use()
        ),
    ]
}

/// Where neighbouring steps may change places.
#[must_use]
pub fn exchange_words(plan: &ShopPlan) -> Vec<String> {
    plan.exchangeable
        .iter()
        .map(|(one, next)| format!("{one}, and {next}: either first"))
        .collect()
}

/// Where the order is free, and what the other routes cost.
#[must_use]
pub fn freedom_words(plan: &ShopPlan) -> Vec<String> {
    let mut lines = exchange_words(plan);
    for other in &plan.alternatives {
        lines.push(format!(
            "Other route: {}. It costs {}.",
            other.route.word(),
            other.route.cost()
        ));
        lines.extend(
            other
                .lacking
                .iter()
                .map(|lacking| format!("Not with this workshop, {lacking}.")),
        );
    }
    lines
}

/// A reason, with everything that it holds apart.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reason {
    /// What comes first.
    pub befores: String,
    /// What comes after.
    pub afters: String,
    /// Why.
    pub reason: &'static str,
}

impl Reason {
    /// The reason as a sentence.
    #[must_use]
    pub fn text(&self) -> String {
        format!("{}; then {}: {}", self.befores, self.afters, self.reason)
    }
}

/// Each reason of the order once.
#[must_use]
pub fn reason_words(plan: &ShopPlan) -> Vec<Reason> {
    let mut reasons: Vec<&'static str> = Vec::new();
    for rule in &plan.rules {
        if !reasons.contains(&rule.reason) {
            reasons.push(rule.reason);
        }
    }
    reasons
        .into_iter()
        .map(|reason| {
            let of_it = || plan.rules.iter().filter(move |rule| rule.reason == reason);
            Reason {
                befores: joined(of_it().map(|rule| rule.before.label())),
                afters: joined(of_it().map(|rule| rule.after.label())),
                reason,
            }
        })
        .collect()
}

fn joined<'a>(labels: impl Iterator<Item = &'a str>) -> String {
    let mut each: Vec<&str> = Vec::new();
    for label in labels {
        if !each.contains(&label) {
            each.push(label);
        }
    }
    each.join(", ")
}
