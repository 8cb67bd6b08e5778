//! `compare`: designs side by side, or one with its variants: what differs, every margin, the metal added and removed.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use anyhow::{Context, bail};
use clap::Args;
use flangewright::app::files;
use flangewright::compare::sheet::{ComparisonFormat, SheetChoices, comparison_bytes};
use flangewright::compare::{MOST, Subject, text::text};
use flangewright::document::Design;
use flangewright::evaluate::{Evaluation, evaluate};

use super::inputs::workshop;
use super::output::{print, write};

/// Compares designs: prints what differs, every finding with its margin in each, and the metal added and removed.
#[derive(Args, Debug)]
pub struct Compare {
    /// Design files, two to six; one alone is compared with the variants kept in it.
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// Writes the tables as comma-separated values too.
    #[arg(long, value_name = "FILE")]
    csv: Option<PathBuf>,
    /// Writes the designs side by side as a picture too.
    #[arg(long, value_name = "FILE")]
    png: Option<PathBuf>,
    /// Replaces files that are already there.
    #[arg(long)]
    force: bool,
    /// Workshop file; without it, the shipped workshop.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
}

impl Compare {
    /// Compares the designs.
    ///
    /// # Errors
    /// A design cannot be read, there are fewer than two or more than six, or a file cannot be made or written.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let workshop = workshop(self.workshop.as_deref())?;
        let designs = self.designs()?;
        if designs.len() < 2 {
            bail!(
                "there is nothing to compare with: give a second file, or keep a variant in the first"
            );
        }
        if designs.len() > MOST {
            bail!(
                "{} designs are too many to stand side by side; give at most {MOST}",
                designs.len()
            );
        }
        let evaluations: Vec<Evaluation> = designs
            .iter()
            .map(|(_, design)| evaluate(design, &workshop))
            .collect();
        let subjects: Vec<Subject<'_>> = designs
            .iter()
            .zip(&evaluations)
            .map(|((name, design), evaluation)| Subject {
                name,
                design,
                evaluation,
            })
            .collect();
        print(&text(&subjects))?;
        let choices = SheetChoices {
            dpi: designs
                .first()
                .map_or(SheetChoices::default().dpi, |(_, design)| design.sheet.dpi),
            ..SheetChoices::default()
        };
        for (path, format) in [
            (&self.csv, ComparisonFormat::Csv),
            (&self.png, ComparisonFormat::Png),
        ] {
            if let Some(path) = path {
                let bytes = comparison_bytes(&subjects, format, &choices)
                    .with_context(|| format!("{} cannot be made", path.display()))?;
                write(path, &bytes, self.force)?;
                print(&path.display().to_string())?;
            }
        }
        Ok(ExitCode::SUCCESS)
    }

    /// The designs under their names; one file alone with its variants.
    fn designs(&self) -> anyhow::Result<Vec<(String, Design)>> {
        let mut designs = Vec::new();
        for file in &self.files {
            designs.push((stem(file), files::open_design(file)?));
        }
        if let [(_, only)] = designs.as_slice() {
            let variants: Vec<(String, Design)> = only
                .variants
                .iter()
                .map(|variant| (variant.name.clone(), only.with_variant(variant)))
                .collect();
            designs.extend(variants);
        }
        Ok(designs)
    }
}

fn stem(file: &Path) -> String {
    file.file_stem().map_or_else(
        || file.display().to_string(),
        |stem| stem.to_string_lossy().into_owned(),
    )
}
