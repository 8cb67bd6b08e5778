//! `new`: a design file from a lens mount and a body of the library.

use std::path::PathBuf;
use std::process::ExitCode;

use clap::Args;
use flangewright::document::{Design, FieldRef, write_ron};
use flangewright::evaluate::evaluate;
use flangewright::ring::cut_through_a_lug;

use super::inputs::{mounts, workshop};
use super::mount_name::find;
use super::output::{print, write};

/// Writes a new design from a lens mount and a body of the library.
#[derive(Args, Debug)]
pub struct New {
    /// Lens mount: its name, or a part that fits no other.
    #[arg(long, value_name = "NAME")]
    lens: String,
    /// Body: its name, or a part that fits no other.
    #[arg(long, value_name = "NAME")]
    body: String,
    /// Design file to write.
    #[arg(long, value_name = "FILE")]
    out: PathBuf,
    /// Replaces a file that is already there.
    #[arg(long)]
    force: bool,
    /// The user's own list of mounts, over the shipped ones; may be given more than once.
    #[arg(long, value_name = "FILE")]
    own: Vec<PathBuf>,
}

impl New {
    /// Writes the design and says what must be measured before the ring is whole.
    ///
    /// # Errors
    /// A name fits no mount or several, or the file cannot be written.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let library = mounts(&self.own)?;
        let lens = find("lens mount", &self.lens, &library.lenses, |lens| &lens.name)?;
        let body = find("body", &self.body, &library.bodies, |body| &body.name)?;
        let mut design = Design::new(lens.clone(), body.clone());
        let derivation = evaluate(&design, &workshop(None)?).derivation;
        if let Some(ring) = &derivation.ring {
            design.sheet.section_angle_deg = cut_through_a_lug(ring);
        }
        write(&self.out, write_ron(&design)?.as_bytes(), self.force)?;
        print(&format!("{}: {}", self.out.display(), design.name))?;
        if let Some(refusal) = &derivation.refusal {
            print(&format!("no ring can be built: {}", refusal.reason))?;
        } else if !derivation.missing.is_empty() {
            print(&to_measure(&derivation.missing))?;
        }
        Ok(ExitCode::SUCCESS)
    }
}

fn to_measure(missing: &[FieldRef]) -> String {
    let lines: Vec<String> = missing
        .iter()
        .map(|field| format!("  {}: {}", field.long_label(), field.how()))
        .collect();
    format!("to measure before the ring is whole:\n{}", lines.join("\n"))
}
