//! `inspect`: limits, verdicts on the readings of the finished ring, and the correction; printed or as a file.

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::Context;
use clap::Args;
use flangewright::app::files;
use flangewright::app::inspection_print::inspection_text;
use flangewright::app::print_out::PrintOut;
use flangewright::evaluate::evaluate;

use super::inputs::workshop;
use super::output::{print, write};

/// Prints the inspection sheet of a design: limits, verdicts on its readings, the correction.
#[derive(Args, Debug)]
pub struct Inspect {
    /// Design file.
    file: PathBuf,
    /// File to write in place of printing: .pdf or .txt.
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
    /// Replaces a file that is already there.
    #[arg(long)]
    force: bool,
    /// Workshop file; without it, the shipped workshop.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
}

impl Inspect {
    /// Inspects the design.
    ///
    /// # Errors
    /// The design cannot be read or makes no whole ring, the ending is unknown, or the file cannot be written.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let design = files::open_design(&self.file)?;
        let workshop = workshop(self.workshop.as_deref())?;
        let evaluation = evaluate(&design, &workshop);
        let cannot = || format!("{} cannot be inspected", self.file.display());
        let Some(out) = &self.out else {
            let text = inspection_text(&design, &workshop, &evaluation).with_context(cannot)?;
            print(text.trim_end())?;
            return Ok(ExitCode::SUCCESS);
        };
        let made = PrintOut::Inspection
            .bytes(&design, &workshop, &evaluation, out)
            .with_context(cannot)?;
        write(out, &made, self.force)?;
        print(&out.display().to_string())?;
        Ok(ExitCode::SUCCESS)
    }
}
