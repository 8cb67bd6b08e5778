//! `draw`: a design as a drawing or as a solid, by the ending of the file's name.

use std::path::PathBuf;
use std::process::ExitCode;

use anyhow::Context;
use clap::Args;
use flangewright::app::files;
use flangewright::document::Design;
use flangewright::drawing::export::{ExportOptions, Format, bytes};
use flangewright::drawing::mesh::MeshOptions;
use flangewright::drawing::raster::Ground;
use flangewright::evaluate::evaluate;

use super::inputs::workshop;
use super::output::{print, write};

/// Draws a design: PNG, SVG, PDF or DXF; or makes a solid of it for a trial print: 3MF or STL.
#[derive(Args, Debug)]
pub struct Draw {
    /// Design file.
    file: PathBuf,
    /// File to write; its ending says what it becomes: .png, .svg, .pdf, .dxf, .3mf or .stl.
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
    /// Dots an inch of a PNG, 72 to 1200; without it, as the design says.
    #[arg(long, value_name = "N")]
    dpi: Option<u32>,
    /// Leaves out the white ground of a PNG or SVG.
    #[arg(long)]
    transparent: bool,
    /// Draws the lug template at 1:1 on A4 in place of the drawing.
    #[arg(long)]
    template: bool,
    /// Added to the minor diameter of the thread, which a solid has as a plain bore, mm.
    #[arg(long, value_name = "MM", allow_negative_numbers = true, default_value_t = MeshOptions::default().thread_allowance_mm)]
    thread_allowance: f64,
    /// How far the flat faces of a solid may lie off the round ones, mm, 0.001 to 0.2.
    #[arg(long, value_name = "MM", default_value_t = MeshOptions::default().chord_mm)]
    chord: f64,
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
    /// The design cannot be read or makes no whole ring, the ending is unknown, or the file cannot be made or written.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let format = Format::of_ending(&self.out)?;
        let design = files::open_design(&self.file)?;
        let evaluation = evaluate(&design, &workshop(self.workshop.as_deref())?);
        let made = bytes(&design, &evaluation, format, &self.options(&design))
            .with_context(|| format!("{} cannot be drawn", self.file.display()))?;
        write(&self.out, &made, self.force)?;
        print(&self.out.display().to_string())?;
        Ok(ExitCode::SUCCESS)
    }

    fn options(&self, design: &Design) -> ExportOptions {
        ExportOptions {
            dpi: self.dpi,
            ground: if self.transparent || design.sheet.transparent {
                Ground::Transparent
            } else {
                Ground::White
            },
            template: self.template,
            mesh: MeshOptions {
                chord_mm: self.chord,
                thread_allowance_mm: self.thread_allowance,
            },
        }
    }
}
