//! `mounts`: the library of lens threads and bayonet bodies.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;
use flangewright::document::columns;
use flangewright::mount::{Body, Interface, Lens, Standing, show_number};

use super::inputs::mounts;
use super::output::print;

/// Lists the mounts a design can begin from, with how far each value can be trusted.
#[derive(Args, Debug)]
pub struct Mounts {
    /// Adds where each register comes from.
    #[arg(long)]
    sources: bool,
    /// The user's own list of mounts, over the shipped ones; may be given more than once.
    #[arg(long, value_name = "FILE")]
    own: Vec<PathBuf>,
}

impl Mounts {
    /// Prints the library.
    ///
    /// # Errors
    /// A list of the user's own cannot be read, or standard output cannot be written.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let library = mounts(&self.own)?;
        let head = self.head(["lens mount", "thread", "register", "male thread"]);
        let rows: Vec<_> = library
            .lenses
            .iter()
            .map(|lens| self.lens_row(lens))
            .collect();
        print(&columns(&head, &rows))?;
        let head = self.head(["body", "throat", "register", "ears"]);
        let rows: Vec<_> = library
            .bodies
            .iter()
            .map(|body| self.body_row(body))
            .collect();
        print(&format!("\n{}", columns(&head, &rows)))?;
        print(&format!("\n{}", legend()))?;
        Ok(ExitCode::SUCCESS)
    }

    fn head<'a>(&self, columns: [&'a str; 4]) -> Vec<&'a str> {
        let mut head = columns.to_vec();
        if self.sources {
            head.push("register from");
        }
        head
    }

    fn lens_row(&self, lens: &Lens) -> Vec<String> {
        let thread = lens.thread.value().map(ToString::to_string);
        let row = vec![
            lens.name.clone(),
            marked(&lens.thread, thread),
            number(&lens.register),
            number(&lens.male_thread_length),
        ];
        self.with_source(row, &lens.register)
    }

    fn body_row(&self, body: &Body) -> Vec<String> {
        let ears = body.ears.value().map(|ears| ears.len().to_string());
        let row = vec![
            body.name.clone(),
            number(&body.throat),
            number(&body.register),
            marked(&body.ears, ears),
        ];
        self.with_source(row, &body.register)
    }

    fn with_source(&self, mut row: Vec<String>, register: &Interface<f64>) -> Vec<String> {
        if self.sources {
            row.push(register.origin_text());
        }
        row
    }
}

fn number(value: &Interface<f64>) -> String {
    let text = value.number().map(|number| show_number(number, 3));
    marked(value, text)
}

/// A value with the letter of its standing; the letter alone where it is unknown.
fn marked<T>(value: &Interface<T>, text: Option<String>) -> String {
    let mark = value.standing().mark();
    text.map_or_else(|| mark.to_owned(), |text| format!("{text} {mark}"))
}

fn legend() -> String {
    let standings = [
        Standing::Standard,
        Standing::Published,
        Standing::Disputed,
        Standing::Measured,
        Standing::Assumed,
        Standing::Unknown,
    ];
    let words: Vec<String> = standings
        .iter()
        .map(|standing| format!("{} {}", standing.mark(), standing.word()))
        .collect();
    format!(
        "{}; lengths in mm. Measure every D, A and ? before cutting.",
        words.join(", ")
    )
}
