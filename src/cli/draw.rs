//! `draw`: the dimensioned drawing of a design as a PNG file.

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::{Context, bail};
use clap::Args;
use flangewright::app::files;
use flangewright::drawing::raster::{Ground, Raster, png};
use flangewright::drawing::ring_sheet::{format_of, ring_sheet};
use flangewright::evaluate::evaluate;

use super::inputs::workshop;
use super::output::{print, write};

/// Draws a design to a PNG file.
#[derive(Args, Debug)]
pub struct Draw {
    /// Design file.
    file: PathBuf,
    /// PNG file to write.
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
    /// Dots an inch, 72 to 1200; without it, as the design says.
    #[arg(long, value_name = "N")]
    dpi: Option<u32>,
    /// Replaces a file that is already there.
    #[arg(long)]
    force: bool,
    /// Workshop file; without it, the shipped workshop.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
}

impl Draw {
    /// Draws the design.
    ///
    /// # Errors
    /// The design cannot be read or makes no whole ring, or the picture cannot be made or written.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let is_png = self
            .out
            .extension()
            .is_some_and(|end| end.eq_ignore_ascii_case("png"));
        if !is_png {
            bail!(
                "{}: the drawing is written as PNG; end the name in .png",
                self.out.display()
            );
        }
        let design = files::open_design(&self.file)?;
        let evaluation = evaluate(&design, &workshop(self.workshop.as_deref())?);
        let sheet = ring_sheet(&design, &evaluation)
            .with_context(|| format!("{} cannot be drawn", self.file.display()))?;
        let raster = Raster {
            dpi: self.dpi.unwrap_or(design.sheet.dpi),
            ground: Ground::White,
            group: format_of(&design).line_group(),
        };
        let picture = png(&sheet, raster)?;
        write(&self.out, &picture, self.force)?;
        print(&self.out.display().to_string())?;
        Ok(ExitCode::SUCCESS)
    }
}
