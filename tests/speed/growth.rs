//! How an evaluation grows with the number of lugs and with the pieces of the lens's outline.

use flangewright::document::Design;
use flangewright::evaluate::evaluate;
use flangewright::workshop::Workshop;

use super::designs::{with_barrel_steps, with_lugs};
use super::figure::{Figure, shown};

/// Prints one line for each: the count, and how long an evaluation takes.
pub fn print(workshop: &Workshop) {
    println!();
    row(workshop, "lugs", &[3, 6, 12, 24, 60], with_lugs);
    row(
        workshop,
        "steps of the barrel",
        &[3, 10, 25, 50, 100],
        with_barrel_steps,
    );
}

fn row(workshop: &Workshop, of_what: &str, counts: &[u32], design: impl Fn(u32) -> Design) {
    print!("evaluation by {of_what}:");
    for count in counts {
        let design = design(*count);
        let figure = Figure::measured("", (1.0, 1.0), 300, || evaluate(&design, workshop));
        print!("  {count}: {}", shown(figure.median_s()));
    }
    println!();
}
