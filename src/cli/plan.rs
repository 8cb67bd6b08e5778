//! `plan`: the shop plan and the inspection sheet of a design as plain text.

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::Context;
use clap::Args;
use flangewright::app::files;
use flangewright::evaluate::evaluate;
use flangewright::inspection::inspection_sheet;
use flangewright::plan::{plan_sheet, shop_plan};

use super::inputs::workshop;
use super::output::print;

/// Prints the shop plan and the inspection sheet of a design.
#[derive(Args, Debug)]
pub struct Plan {
    /// Design file.
    file: PathBuf,
    /// Workshop file; without it, the shipped workshop.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
}

impl Plan {
    /// Plans the design and prints both sheets.
    ///
    /// # Errors
    /// The design cannot be read or makes no whole ring, or the workshop lacks what the ring needs; the message says
    /// which.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let design = files::open_design(&self.file)?;
        let workshop = workshop(self.workshop.as_deref())?;
        let evaluation = evaluate(&design, &workshop);
        let plan = shop_plan(&design, &workshop, &evaluation)
            .with_context(|| format!("{} cannot be planned", self.file.display()))?;
        print(&plan_sheet(&design, &workshop, &plan))?;
        print(&format!(
            "\n\n{}",
            inspection_sheet(&design, &workshop, &evaluation)
        ))?;
        Ok(ExitCode::SUCCESS)
    }
}
