//! `settle`: the nearest ring without a clash, moving only what was let go.

use std::path::PathBuf;
use std::process::ExitCode;
use std::sync::atomic::AtomicBool;

use anyhow::{Context, bail};
use clap::Args;
use flangewright::app::files;
use flangewright::checks::Severity;
use flangewright::document::{RingKey, parse_quantity, write_ron};
use flangewright::evaluate::Evaluation;
use flangewright::mount::Unit;
use flangewright::settle::{Contradiction, LetGo, Member, Outcome, Settled, settle};

use super::dimension_name::dimension;
use super::inputs::workshop;
use super::output::{print, write};

/// Writes the nearest ring without a clash: exit code 1 where there is none, and what contradicts what.
#[derive(Args, Debug)]
pub struct Settle {
    /// Design file.
    file: PathBuf,
    /// A dimension that may move, with bounds and a weight if it has any: lip_thickness=0.8..1.5*4. The measure of a
    /// move is the sum of weight x move squared; a weight is 1 where none is given. May be given more than once.
    #[arg(
        long = "move",
        required = true,
        value_name = "DIM[=LOW..HIGH][*WEIGHT]",
        allow_hyphen_values = true
    )]
    let_go: Vec<String>,
    /// Design file to write.
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
    /// Replaces a file that is already there.
    #[arg(long)]
    force: bool,
    /// Workshop file; without it, the shipped workshop.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
}

impl Settle {
    /// Settles the design, writes it and prints what moved.
    ///
    /// # Errors
    /// The design or a bound cannot be read, nothing can be settled in it, or the file cannot be written.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let let_go = self
            .let_go
            .iter()
            .map(|text| let_go(text))
            .collect::<anyhow::Result<Vec<LetGo>>>()?;
        let design = files::open_design(&self.file)?;
        let workshop = workshop(self.workshop.as_deref())?;
        let never = AtomicBool::new(false);
        match settle(&design, &workshop, &let_go, &never, |_| {})? {
            Outcome::Settled(settled) => {
                write(
                    &self.out,
                    write_ron(&settled.design)?.as_bytes(),
                    self.force,
                )?;
                print(&format!("{}: {}", self.out.display(), text(&settled)))?;
                Ok(ExitCode::SUCCESS)
            }
            Outcome::None(why) => {
                print(&why_none(&why))?;
                Ok(ExitCode::from(1))
            }
        }
    }
}

/// `lip_thickness`, `lip_thickness=0.8..1.5` with any unit that a dimension is typed in, and either with `*4` behind it
/// for a weight of four; a colon does for the equals sign.
fn let_go(text: &str) -> anyhow::Result<LetGo> {
    let (what, weight) = match text.rsplit_once('*') {
        Some((what, weight)) => {
            let given = parse_quantity(weight, Unit::One).with_context(|| text.to_owned())?;
            (what, given)
        }
        None => (text, 1.0),
    };
    let Some((name, bounds)) = what.split_once(['=', ':']) else {
        let whole = LetGo::over_its_range(dimension(what)?);
        return Ok(LetGo { weight, ..whole });
    };
    let key = dimension(name)?;
    let Some((low, high)) = bounds.split_once("..") else {
        bail!("\"{text}\": give the bounds as {name}=LOW..HIGH");
    };
    let bound = |bound: &str| parse_quantity(bound, key.unit()).with_context(|| text.to_owned());
    Ok(LetGo {
        weight,
        ..LetGo::between(key, bound(low)?, bound(high)?)
    })
}

fn counts(evaluation: &Evaluation) -> String {
    [Severity::Clash, Severity::Caution]
        .map(|severity| format!("{} {}", evaluation.count(severity), severity.word()))
        .join(", ")
}

fn text(settled: &Settled) -> String {
    let (before, after) = (counts(&settled.before), counts(&settled.after));
    if settled.moves.is_empty() && settled.before.count(Severity::Clash) == 0 {
        return format!("no clash to begin with, nothing moved ({after})");
    }
    let mut lines = vec![format!("{before} before; {after} after")];
    for moved in &settled.moves {
        let unit = moved.key.unit();
        lines.push(format!(
            "  {}: {} to {}, by {}",
            moved.key.name(),
            unit.show(moved.from),
            unit.show(moved.to),
            unit.show(moved.to - moved.from)
        ));
    }
    lines.push(format!(
        "  sum of weight x move squared {:.6}, the least that was found",
        settled.measure
    ));
    lines.join("\n")
}

fn why_none(why: &Contradiction) -> String {
    let mut lines = vec!["no ring without a clash was found by moving these dimensions".to_owned()];
    if let Some(reason) = &why.no_ring {
        lines.push(format!("not even with every dimension let go: {reason}"));
        return lines.join("\n");
    }
    lines.push(
        "these contradict each other; without any one of them a ring keeps the others:".to_owned(),
    );
    for release in &why.releases {
        lines.push(format!("  {}", member(release.member)));
    }
    lines.push(why.standing.words().to_owned());
    lines.join("\n")
}

fn member(member: Member) -> String {
    let name = |key: RingKey| key.name();
    match member {
        Member::Finding(key) => format!("finding {}", key.name()),
        Member::Held(key) => format!("{} held as it stands", name(key)),
        Member::Bounds(key) => format!("the bounds of {}", name(key)),
    }
}
