//! The whole plan of a ring: the order of cuts on the best route there is, and what the others would cost.

use thiserror::Error;

use super::as_it_stands::{Stage, stages};
use super::dividing::{DividingList, dividing_list};
use super::operation::Operation;
use super::precedence::{Cycle, Rule, arrange, exchangeable, rules};
use super::shortfall::{Shortfall, shortfalls};
use super::step::{Bench, Step};
use super::stock::{Stock, stock};
use super::threading::{Threading, threading};
use crate::checks::{FindingKey, Severity};
use crate::document::Route;
use crate::document::{Choice, Design};
use crate::evaluate::Evaluation;
use crate::ring::ResolvedRing;
use crate::workshop::Workshop;

/// A route that could be taken instead, or why it could not.
#[derive(Clone, Debug, PartialEq)]
pub struct Alternative {
    /// The route.
    pub route: Route,
    /// What the workshop lacks for it; empty where it is free to take.
    pub lacking: Vec<Shortfall>,
}

/// The plan.
#[derive(Clone, Debug, PartialEq)]
pub struct ShopPlan {
    /// The route taken.
    pub route: Route,
    /// What must be put right before metal is cut: every clash of the design, and values that nobody has measured.
    pub before_cutting: Vec<String>,
    /// The steps in order.
    pub steps: Vec<Step>,
    /// The rules behind the order.
    pub rules: Vec<Rule>,
    /// Neighbouring steps that may change places.
    pub exchangeable: Vec<(Operation, Operation)>,
    /// The other routes.
    pub alternatives: Vec<Alternative>,
    /// The bar; none where the workshop does not know the material.
    pub stock: Option<Stock>,
    /// The settings of the dividing head.
    pub dividing: DividingList,
    /// The thread.
    pub threading: Threading,
}

/// Why there is no plan.
#[derive(Clone, Debug, Error, PartialEq)]
pub enum PlanError {
    /// No whole ring.
    #[error("there is no whole ring to plan: {0}")]
    NoRing(String),
    /// Tools are missing.
    #[error("no order of cuts with this workshop. It lacks {}", list(.0))]
    Lacking(Vec<Shortfall>),
    /// The rules contradict each other.
    #[error(transparent)]
    Cycle(#[from] Cycle),
}

fn list(lacking: &[Shortfall]) -> String {
    let texts: Vec<String> = lacking.iter().map(ToString::to_string).collect();
    texts.join("; ")
}

/// The plan on the route that the design chooses, else on the first that the workshop can take.
///
/// # Errors
/// [`PlanError`]: no whole ring, or tools that no route can do without.
pub fn shop_plan(
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
) -> Result<ShopPlan, PlanError> {
    let ring = whole_ring(evaluation)?;
    if let Choice::Set(route) = design.ring.route {
        return shop_plan_on(route, design, workshop, evaluation);
    }
    let free = Route::ALL
        .into_iter()
        .find(|route| shortfalls(*route, ring, workshop).is_empty());
    // Where none is free, the route that asks for the fewest tools says which.
    let fewest = || {
        Route::ALL
            .into_iter()
            .min_by_key(|route| shortfalls(*route, ring, workshop).len())
    };
    let route = free.or_else(fewest).unwrap_or(Route::LugsInTheBar);
    shop_plan_on(route, design, workshop, evaluation)
}

/// The plan on a given route.
///
/// # Errors
/// [`PlanError`]: no whole ring, tools that the route lacks, or rules that contradict each other.
pub fn shop_plan_on(
    route: Route,
    design: &Design,
    workshop: &Workshop,
    evaluation: &Evaluation,
) -> Result<ShopPlan, PlanError> {
    let ring = whole_ring(evaluation)?;
    let lacking = shortfalls(route, ring, workshop);
    if !lacking.is_empty() {
        return Err(PlanError::Lacking(lacking));
    }
    let operations = route.operations(design, ring);
    let rules = rules(route, &operations);
    let order = arrange(&operations, &rules, |operation| route.setting(operation))?;
    let threading = threading(design, ring, workshop);
    let stock = workshop
        .material(&design.ring.material)
        .zip(evaluation.solid.as_ref())
        .map(|(material, solid)| stock(ring, solid, material, workshop));
    let bench = Bench {
        design,
        workshop,
        derivation: &evaluation.derivation,
        ring,
        route,
        bar_mm: stock.map_or(ring.sizes.flange_diameter, |bar| bar.diameter_mm),
        run_out: threading.run_out,
    };
    Ok(ShopPlan {
        route,
        before_cutting: before_cutting(evaluation),
        steps: order
            .iter()
            .map(|operation| bench.step(*operation))
            .collect(),
        exchangeable: exchangeable(&order, &rules, |operation| route.setting(operation)),
        rules,
        alternatives: Route::ALL
            .into_iter()
            .filter(|other| *other != route)
            .map(|other| Alternative {
                route: other,
                lacking: shortfalls(other, ring, workshop),
            })
            .collect(),
        stock,
        dividing: dividing_list(ring, workshop),
        threading,
    })
}

fn before_cutting(evaluation: &Evaluation) -> Vec<String> {
    evaluation
        .findings
        .iter()
        .filter(|finding| {
            finding.severity == Severity::Clash
                || (finding.key == FindingKey::AssumedValues && finding.severity != Severity::Ok)
        })
        .map(|finding| format!("{}: {}", finding.key.name(), finding.message))
        .collect()
}

fn whole_ring(evaluation: &Evaluation) -> Result<&ResolvedRing, PlanError> {
    let derivation = &evaluation.derivation;
    if let Some(fault) = &evaluation.shape_fault {
        return Err(PlanError::NoRing(fault.clone()));
    }
    derivation.ring.as_ref().ok_or_else(|| {
        let missing: Vec<String> = derivation
            .missing
            .iter()
            .map(|field| field.long_label())
            .collect();
        let reason = derivation.refusal.as_ref().map_or_else(
            || format!("measure {}", missing.join(", ")),
            |refusal| refusal.reason.clone(),
        );
        PlanError::NoRing(reason)
    })
}

impl ShopPlan {
    /// The workpiece after each step, for pictures; none where bar or ring cannot be drawn.
    #[must_use]
    pub fn stages(&self, evaluation: &Evaluation) -> Vec<Stage> {
        let ring = evaluation.derivation.ring.as_ref();
        let Some(((ring, parts), stock)) = ring.zip(evaluation.parts.as_ref()).zip(self.stock)
        else {
            return Vec::new();
        };
        let operations: Vec<Operation> = self.steps.iter().map(|step| step.operation).collect();
        stages(self.route, &operations, ring, &parts.through_lug, stock).unwrap_or_default()
    }

    /// The rules that hold an operation back, for whoever asks why it stands where it does.
    pub fn reasons(&self, operation: Operation) -> impl Iterator<Item = &Rule> {
        self.rules
            .iter()
            .filter(move |rule| rule.after == operation)
    }
}

#[cfg(test)]
#[path = "order_tests.rs"]
mod tests;
