//! Reads a design, evaluates it and prints each finding with its working.
//!
//! `cargo run --example evaluate_file -- assets/demos/archive_portrait.ron`

use std::path::PathBuf;

use anyhow::Context;
use flangewright::app::files;
use flangewright::evaluate::evaluate;
use flangewright::workshop::Workshop;

fn main() -> anyhow::Result<()> {
    let path: PathBuf = std::env::args_os()
        .nth(1)
        .context("name a design file")?
        .into();
    let design = files::open_design(&path)?;
    let evaluation = evaluate(&design, &Workshop::default_set()?);
    println!("{}", design.name);
    for state in &evaluation.derivation.dimensions {
        let value = state
            .value
            .map_or_else(|| "?".to_owned(), |value| state.key.unit().show(value));
        println!("  {} = {value} {}", state.key.label(), state.tolerance_text);
    }
    for finding in &evaluation.findings {
        println!(
            "{} {}: {}",
            finding.severity.word(),
            finding.key.title(),
            finding.message
        );
        for line in &finding.working {
            println!("    {}", line.text());
        }
    }
    Ok(())
}
