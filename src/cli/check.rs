//! `check`: every finding of design files, as text or as one JSON object a line.

use std::path::{Path, PathBuf};
use std::process::ExitCode;

use clap::Args;
use flangewright::app::files;
use flangewright::checks::{Finding, Severity};
use flangewright::document::Working;
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::ring::DimensionState;
use flangewright::workshop::Workshop;
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};

use super::FAILED;
use super::inputs::workshop;
use super::json::{clean_option, unit_name};
use super::output::{complain, print};

/// Checks designs: exit code 0 without a clash, 1 with one, 2 where a file cannot be read.
#[derive(Args, Debug)]
pub struct Check {
    /// Design files; the exit code is that of the worst.
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// Prints one JSON object a line, one line a file.
    #[arg(long)]
    json: bool,
    /// Prints the working behind each finding.
    #[arg(long, conflicts_with = "json")]
    working: bool,
    /// Workshop file; without it, the shipped workshop.
    #[arg(long, value_name = "FILE")]
    workshop: Option<PathBuf>,
}

/// What became of a file. Sorted best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Verdict {
    NoClash,
    Clash,
    Unreadable,
}

impl Verdict {
    fn exit_code(self) -> ExitCode {
        match self {
            Self::NoClash => ExitCode::SUCCESS,
            Self::Clash => ExitCode::from(1),
            Self::Unreadable => ExitCode::from(FAILED),
        }
    }
}

impl Check {
    /// Checks every file and prints what was found.
    ///
    /// # Errors
    /// The workshop file cannot be read, or standard output cannot be written; a design that cannot be read is
    /// complained about and counts as the worst verdict.
    pub fn run(&self) -> anyhow::Result<ExitCode> {
        let workshop = workshop(self.workshop.as_deref())?;
        let mut worst = Verdict::NoClash;
        for file in &self.files {
            worst = worst.max(self.check(file, &workshop)?);
        }
        Ok(worst.exit_code())
    }

    fn check(&self, file: &Path, workshop: &Workshop) -> anyhow::Result<Verdict> {
        let design = match files::open_design(file) {
            Ok(design) => design,
            Err(error) => {
                complain(&error.to_string());
                return Ok(Verdict::Unreadable);
            }
        };
        let evaluation = evaluate(&design, workshop);
        if self.json {
            print(&serde_json::to_string(&FileJson::of(file, &evaluation))?)?;
        } else {
            print(&self.text(file, &evaluation))?;
        }
        Ok(match evaluation.count(Severity::Clash) {
            0 => Verdict::NoClash,
            _ => Verdict::Clash,
        })
    }

    fn text(&self, file: &Path, evaluation: &Evaluation) -> String {
        let counts = [
            Severity::Clash,
            Severity::Caution,
            Severity::Note,
            Severity::Ok,
        ]
        .map(|severity| format!("{} {}", evaluation.count(severity), severity.word()));
        let mut lines = vec![format!("{}: {}", file.display(), counts.join(", "))];
        for finding in &evaluation.findings {
            let word = finding.severity.word();
            lines.push(format!(
                "  {word:<8}{}: {}",
                finding.key.name(),
                finding.message
            ));
            if let Some(remedy) = &finding.remedy {
                lines.push(format!("          remedy: {}", remedy.text));
            }
            if self.working {
                lines.extend(
                    finding
                        .working
                        .iter()
                        .map(|line| format!("          {}", line.text())),
                );
            }
        }
        lines.join("\n")
    }
}

/// The JSON of one file.
#[derive(Serialize)]
struct FileJson<'a> {
    file: String,
    clashes: usize,
    findings: Vec<FindingJson<'a>>,
    ring: RingJson<'a>,
}

impl<'a> FileJson<'a> {
    fn of(file: &Path, evaluation: &'a Evaluation) -> Self {
        Self {
            file: file.display().to_string(),
            clashes: evaluation.count(Severity::Clash),
            findings: evaluation.findings.iter().map(FindingJson::of).collect(),
            ring: RingJson(&evaluation.derivation.dimensions),
        }
    }
}

/// The JSON of one finding; null where the check has no number.
#[derive(Serialize)]
struct FindingJson<'a> {
    key: &'static str,
    severity: &'static str,
    message: &'a str,
    value: Option<f64>,
    limit: Option<f64>,
    margin: Option<f64>,
    unit: &'static str,
    working: Vec<String>,
    remedy: Option<&'a str>,
}

impl<'a> FindingJson<'a> {
    fn of(finding: &'a Finding) -> Self {
        Self {
            key: finding.key.name(),
            severity: finding.severity.word(),
            message: &finding.message,
            value: clean_option(finding.value),
            limit: clean_option(finding.limit),
            margin: clean_option(finding.margin),
            unit: unit_name(finding.unit),
            working: finding.working.iter().map(Working::text).collect(),
            remedy: finding.remedy.as_ref().map(|remedy| remedy.text.as_str()),
        }
    }
}

/// Every dimension by its name in the file, mm or degrees; null where it could not be resolved.
struct RingJson<'a>(&'a [DimensionState]);

impl Serialize for RingJson<'_> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.0.len()))?;
        for state in self.0 {
            map.serialize_entry(state.key.name(), &clean_option(state.value))?;
        }
        map.end()
    }
}
