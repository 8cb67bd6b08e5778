//! Floor `evaluate`: the one pure function. No clock, no files, no chance; same design, same result.
//!
//! May use every floor under it; must not draw, plan, or look at the screen. The window, the command line, the
//! drawing and the tests all call it.

mod focus_numbers;
mod light;
mod sharpness;

use crate::checks::{self, Context, Finding, FindingKey, Severity};
use crate::document::Design;
use crate::ring::{Derivation, Parts, Plan, Solid, derive, parts_of, solid_of};
use crate::workshop::Workshop;

pub use focus_numbers::{FocusNumber, focus_error, focus_numbers};
pub use light::{LightReport, light_of};
pub use sharpness::{SharpPoint, Sharpness, sharpness_of};

/// Everything that follows from a design.
#[derive(Clone, Debug)]
pub struct Evaluation {
    /// Every dimension with its working, the ring where it is whole, what is missing where not.
    pub derivation: Derivation,
    /// The shapes in the half-section, where the ring is whole and can be turned.
    pub parts: Option<Parts>,
    /// Why a whole set of sizes makes no shape, where it does not.
    pub shape_fault: Option<String>,
    /// The plan, where the ring is whole.
    pub plan: Option<Plan>,
    /// Volume and mass.
    pub solid: Option<Solid>,
    /// One finding for each check, worst first.
    pub findings: Vec<Finding>,
}

impl Evaluation {
    /// The finding of one check.
    #[must_use]
    pub fn finding(&self, key: FindingKey) -> Option<&Finding> {
        self.findings.iter().find(|finding| finding.key == key)
    }

    /// How many findings have this severity.
    #[must_use]
    pub fn count(&self, severity: Severity) -> usize {
        self.findings
            .iter()
            .filter(|finding| finding.severity == severity)
            .count()
    }
}

/// The findings of a design and what they rest on: an evaluation without plan and mass.
#[derive(Clone, Debug)]
pub struct Judgement {
    /// Every dimension with its working, the ring where it is whole, what is missing where not.
    pub derivation: Derivation,
    /// The shapes in the half-section, where the ring is whole and can be turned.
    pub parts: Option<Parts>,
    /// Why a whole set of sizes makes no shape, where it does not.
    pub shape_fault: Option<String>,
    /// One finding for each check, in the order of the keys.
    pub findings: Vec<Finding>,
}

/// Resolves and judges a design.
#[must_use]
pub fn judge(design: &Design, workshop: &Workshop) -> Judgement {
    let derivation = derive(design, workshop);
    let shapes = derivation.ring.as_ref().map(|ring| parts_of(design, ring));
    let (parts, shape_fault) = match shapes {
        Some(Ok(parts)) => (Some(parts), None),
        Some(Err(fault)) => (None, Some(fault.to_string())),
        None => (None, None),
    };
    let findings = match derivation.ring.as_ref().zip(parts.as_ref()) {
        Some((ring, parts)) => {
            let context = Context {
                design,
                workshop,
                derivation: &derivation,
                ring,
                parts,
            };
            checks::all(&context)
        }
        None => checks::without_a_ring(design, &derivation, shape_fault.as_deref()),
    };
    Judgement {
        derivation,
        parts,
        shape_fault,
        findings,
    }
}

/// Resolves, draws and judges a design.
#[must_use]
pub fn evaluate(design: &Design, workshop: &Workshop) -> Evaluation {
    let Judgement {
        derivation,
        parts,
        shape_fault,
        mut findings,
    } = judge(design, workshop);
    let plan = derivation.ring.as_ref().map(|ring| Plan::of(design, ring));
    let solid = derivation
        .ring
        .as_ref()
        .zip(parts.as_ref())
        .and_then(|(ring, parts)| {
            workshop
                .material(&design.ring.material)
                .and_then(|stuff| solid_of(ring, parts, stuff))
        });
    findings.sort_by(|a, b| {
        let share = |finding: &Finding| finding.share.unwrap_or(f64::INFINITY);
        a.severity
            .cmp(&b.severity)
            .then(share(a).total_cmp(&share(b)))
            .then(a.key.cmp(&b.key))
    });
    Evaluation {
        derivation,
        parts,
        shape_fault,
        plan,
        solid,
        findings,
    }
}
