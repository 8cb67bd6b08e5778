//! What stands on the page Compare: the open design, its variants, and designs brought in from files. Each is evaluated
//! once a change of its own, never once a frame.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

use super::files::{self, FileError};
use super::view::View;
use crate::compare::{MOST, Subject};
use crate::document::Design;
use crate::evaluate::{Evaluation, evaluate};
use crate::workshop::Workshop;

/// Which of those that can be compared. Sorted as they stand.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Who {
    /// The open design.
    Open,
    /// A variant of it, by its name.
    Variant(String),
    /// A design brought in, by its number.
    File(u64),
}

/// One that can be compared.
#[derive(Clone, Debug)]
pub struct Candidate {
    /// Which.
    pub who: Who,
    /// Its name.
    pub name: String,
    /// Whether it stands on the page.
    pub is_shown: bool,
}

/// One that stands on the page.
#[derive(Debug)]
pub struct Column {
    /// Which.
    pub who: Who,
    /// Its name.
    pub name: String,
    /// The place among the variants, where it is one.
    pub variant: Option<usize>,
    /// Where it was read, where it came from a file.
    pub path: Option<PathBuf>,
    /// Goes up whenever what is shown of it changes; never the same for two.
    pub version: u64,
    /// The design and what follows from it; the open one is the window's own.
    made: Option<(Design, Evaluation)>,
    /// What it should be evaluated for next.
    wanted: Option<Design>,
}

/// A design brought in from a file, to be read only.
#[derive(Debug)]
struct Brought {
    number: u64,
    path: PathBuf,
    design: Design,
}

/// Everything that is compared.
#[derive(Debug, Default)]
pub struct Compared {
    columns: Vec<Column>,
    brought: Vec<Brought>,
    left_out: BTreeSet<Who>,
    workshop: Option<Workshop>,
    followed: Option<u64>,
    /// Goes up whenever anything on the page changes.
    state: u64,
}

/// The open design with what follows from it, and the workshop.
#[derive(Clone, Copy, Debug)]
pub struct Open<'a> {
    /// The design.
    pub design: &'a Design,
    /// What follows from it.
    pub evaluation: &'a Evaluation,
    /// The workshop.
    pub workshop: &'a Workshop,
}

impl<'a> Open<'a> {
    /// Of what a panel is given.
    #[must_use]
    pub const fn of(view: &View<'a>) -> Self {
        Self {
            design: view.design,
            evaluation: view.evaluation,
            workshop: view.workshop,
        }
    }
}

/// Longest time for evaluations in one frame; one is always done. The frame as a whole has 8 ms.
const TIME_IN_A_FRAME: Duration = Duration::from_millis(2);

impl Column {
    fn subject<'a>(&'a self, open: Open<'a>) -> Option<Subject<'a>> {
        let (design, evaluation) = match (&self.who, &self.made) {
            (Who::Open, _) => (open.design, open.evaluation),
            (Who::Variant(_) | Who::File(_), Some((design, evaluation))) => (design, evaluation),
            (Who::Variant(_) | Who::File(_), None) => return None,
        };
        Some(Subject {
            name: &self.name,
            design,
            evaluation,
        })
    }
}

impl Compared {
    /// Follows the open design, its variants and the files; true while something is still to be evaluated.
    pub fn follow(&mut self, open: Open<'_>, revision: u64) -> bool {
        if self.followed != Some(revision) {
            self.followed = Some(revision);
            self.line_up(open, revision);
        }
        self.evaluate_waiting(open.workshop)
    }

    /// Goes up whenever anything on the page changes.
    #[must_use]
    pub const fn state(&self) -> u64 {
        self.state
    }

    /// Those that stand on the page and are evaluated, each with what is compared of it.
    pub fn shown<'a>(&'a self, open: Open<'a>) -> (Vec<&'a Column>, Vec<Subject<'a>>) {
        self.columns
            .iter()
            .filter_map(|column| Some((column, column.subject(open)?)))
            .unzip()
    }

    /// All that can be compared, in the order in which they stand.
    #[must_use]
    pub fn candidates(&self, design: &Design) -> Vec<Candidate> {
        let open = std::iter::once((Who::Open, name_of(design)));
        let variants = design
            .variants
            .iter()
            .map(|variant| (Who::Variant(variant.name.clone()), variant.name.clone()));
        let files = self
            .brought
            .iter()
            .map(|brought| (Who::File(brought.number), file_name(&brought.path)));
        let mut room = MOST;
        let mut candidates = Vec::new();
        for (who, name) in open.chain(variants).chain(files) {
            let is_shown = room > 0 && !self.left_out.contains(&who);
            room -= usize::from(is_shown);
            candidates.push(Candidate {
                who,
                name,
                is_shown,
            });
        }
        candidates
    }

    /// Puts one on the page or leaves it out.
    pub fn show(&mut self, who: Who, shall_show: bool) {
        if shall_show {
            self.left_out.remove(&who);
        } else {
            self.left_out.insert(who);
        }
        self.followed = None;
    }

    /// Brings the design of a file in; false where there is no room on the page, so that it waits among those left out.
    ///
    /// # Errors
    /// What [`files::open_design`] refuses; nothing is changed then.
    pub fn bring_in(&mut self, path: &Path, open: &Design) -> Result<bool, FileError> {
        let design = files::open_design(path)?;
        let number = self
            .brought
            .iter()
            .map(|brought| brought.number + 1)
            .max()
            .unwrap_or(0);
        self.brought.push(Brought {
            number,
            path: path.to_owned(),
            design,
        });
        self.left_out.remove(&Who::File(number));
        self.followed = None;
        let last = self.candidates(open).pop();
        let has_room = last.is_some_and(|candidate| candidate.is_shown);
        if !has_room {
            self.left_out.insert(Who::File(number));
        }
        Ok(has_room)
    }

    /// Takes a design that was brought in out again.
    pub fn take_out(&mut self, number: u64) {
        self.brought.retain(|brought| brought.number != number);
        self.left_out.remove(&Who::File(number));
        self.followed = None;
    }

    /// Makes the columns anew; an evaluation is kept where nothing that it rests on has changed.
    fn line_up(&mut self, open: Open<'_>, revision: u64) {
        if self.workshop.as_ref() != Some(open.workshop) {
            self.workshop = Some(open.workshop.clone());
            self.columns.clear();
        }
        let mut before = std::mem::take(&mut self.columns);
        let shown = self.candidates(open.design);
        self.state += 1;
        for candidate in shown.into_iter().filter(|candidate| candidate.is_shown) {
            let old = before
                .iter()
                .position(|column| column.who == candidate.who)
                .map(|place| before.swap_remove(place));
            let column = self.column(open.design, candidate, old, revision);
            self.columns.push(column);
        }
    }

    fn column(
        &mut self,
        open: &Design,
        candidate: Candidate,
        old: Option<Column>,
        revision: u64,
    ) -> Column {
        let Candidate { who, name, .. } = candidate;
        let variant = match &who {
            Who::Variant(name) => open
                .variants
                .iter()
                .position(|variant| variant.name == *name),
            Who::Open | Who::File(_) => None,
        };
        let brought = match &who {
            Who::File(number) => self
                .brought
                .iter()
                .find(|brought| brought.number == *number),
            Who::Open | Who::Variant(_) => None,
        };
        let wanted = variant
            .and_then(|place| open.variants.get(place))
            .map(|variant| open.with_variant(variant))
            .or_else(|| brought.map(|brought| brought.design.clone()));
        let path = brought.map(|brought| brought.path.clone());
        let (version, made) = old.map_or((0, None), |old| (old.version, old.made));
        let holds = match (&made, &wanted) {
            (Some((made, _)), Some(wanted)) => rests_on_the_same(made, wanted),
            (_, None) => true,
            (None, Some(_)) => false,
        };
        Column {
            version: if who == Who::Open {
                // Versions of the others are states of the page: even numbers, these are odd.
                2 * revision + 1
            } else {
                version
            },
            wanted: wanted.filter(|_| !holds),
            who,
            name,
            variant,
            path,
            made,
        }
    }

    fn evaluate_waiting(&mut self, workshop: &Workshop) -> bool {
        let begun = Instant::now();
        for column in &mut self.columns {
            let Some(wanted) = column.wanted.take() else {
                continue;
            };
            let evaluation = evaluate(&wanted, workshop);
            column.made = Some((wanted, evaluation));
            self.state += 1;
            column.version = 2 * self.state;
            if begun.elapsed() > TIME_IN_A_FRAME {
                break;
            }
        }
        self.columns.iter().any(|column| column.wanted.is_some())
    }
}

/// Whether two designs have the same evaluation: names, notes and the sheet do not bear on it.
fn rests_on_the_same(a: &Design, b: &Design) -> bool {
    (&a.lens, &a.body, &a.ring, &a.limits) == (&b.lens, &b.body, &b.ring, &b.limits)
        && (&a.readings, &a.corrections) == (&b.readings, &b.corrections)
}

fn name_of(design: &Design) -> String {
    if design.name.trim().is_empty() {
        "new design".to_owned()
    } else {
        design.name.clone()
    }
}

fn file_name(path: &Path) -> String {
    path.file_stem().map_or_else(
        || path.display().to_string(),
        |stem| stem.to_string_lossy().into_owned(),
    )
}

#[cfg(test)]
#[path = "compared_tests.rs"]
mod tests;
