//! Sweeps one dimension of a design over a span and prints what each step does to the worst finding.
//!
//! `cargo run --example sweep_dimension -- assets/demos/archive_portrait.ron lip_thickness 0.5 1.5`

use std::path::PathBuf;

use anyhow::{Context, bail};
use flangewright::app::files;
use flangewright::document::{Choice, RingKey};
use flangewright::evaluate::evaluate;
use flangewright::workshop::Workshop;

/// Steps from end to end.
const STEPS: u32 = 10;

fn main() -> anyhow::Result<()> {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let [file, name, from, to] = arguments.as_slice() else {
        bail!("give a design file, the name of a dimension, and the two ends of the span");
    };
    let key = RingKey::ALL
        .iter()
        .copied()
        .find(|key| key.name() == name)
        .with_context(|| format!("no ring dimension is called {name}"))?;
    let (from, to): (f64, f64) = (from.parse()?, to.parse()?);
    let workshop = Workshop::default_set()?;
    let mut design = files::open_design(&PathBuf::from(file))?;
    println!("{} of {}", key.label(), design.name);
    for step in 0..=STEPS {
        let value = from + (to - from) * f64::from(step) / f64::from(STEPS);
        design.ring.dimensions.get_mut(key).value = Choice::Set(value);
        let evaluation = evaluate(&design, &workshop);
        let worst = evaluation
            .findings
            .first()
            .map_or_else(String::new, |finding| {
                format!(
                    "{} {}: {}",
                    finding.severity.word(),
                    finding.key.title(),
                    finding.message
                )
            });
        println!("{:>12}  {worst}", key.unit().show(value));
    }
    Ok(())
}
