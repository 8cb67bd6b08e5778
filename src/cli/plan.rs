//! `plan`: the shop plan and the inspection sheet of a design, as plain text or as a file to print.

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::Context;
use clap::Args;
use flangewright::app::files;
use flangewright::app::print_out::PrintOut;
use flangewright::evaluate::evaluate;
use flangewright::inspection::inspection_sheet;
use flangewright::plan::{plan_sheet, shop_plan};

use super::inputs::workshop;
use super::output::{print, write};

/// Prints the shop plan and the inspection sheet of a design, or writes the plan to a file.
#[derive(Args, Debug)]
pub struct Plan {
    /// Design file.
    file: PathBuf,
    /// File to write the shop plan to; its ending says what it becomes: .pdf or .txt.
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
    /// Replaces a file that is already there.
    #[arg(long)]
    force: bool,
    /// Workshop file; without it, the shipped workshop.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
}

impl Plan {
    /// Plans the design and prints both sheets, or writes the plan.
    ///
    /// # Errors
    /// The design cannot be read or makes no whole ring, the workshop lacks what the ring needs, or the file cannot be
    /// written; the message says which.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let design = files::open_design(&self.file)?;
        let workshop = workshop(self.workshop.as_deref())?;
        let evaluation = evaluate(&design, &workshop);
        let reason = || format!("{} cannot be planned", self.file.display());
        if let Some(out) = &self.out {
            let made = PrintOut::Plan
                .bytes(&design, &workshop, &evaluation, out)
                .with_context(reason)?;
            write(out, &made, self.force)?;
            print(&out.display().to_string())?;
            return Ok(ExitCode::SUCCESS);
        }
        let plan = shop_plan(&design, &workshop, &evaluation).with_context(reason)?;
        print(&plan_sheet(&design, &workshop, &plan))?;
        print(&format!(
            "\n\n{}",
            inspection_sheet(&design, &workshop, &evaluation)
        ))?;
        Ok(ExitCode::SUCCESS)
    }
}
