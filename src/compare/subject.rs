//! What is compared.

use crate::document::Design;
use crate::evaluate::Evaluation;

/// The most that stand side by side: more columns are too narrow to read.
pub const MOST: usize = 6;

/// A design and what follows from it, under a name.
#[derive(Clone, Copy, Debug)]
pub struct Subject<'a> {
    /// What it is called among the others.
    pub name: &'a str,
    /// The design.
    pub design: &'a Design,
    /// What follows from it.
    pub evaluation: &'a Evaluation,
}

/// The names with a number behind each that stood before, so that no two columns are headed alike.
///
/// ```
/// use flangewright::compare::distinct_names;
/// assert_eq!(distinct_names(["ring", "thin", "ring"]), ["ring", "thin", "ring (2)"]);
/// ```
pub fn distinct_names<'a>(names: impl IntoIterator<Item = &'a str>) -> Vec<String> {
    let mut distinct: Vec<String> = Vec::new();
    for name in names {
        let numbered = (2..).map(|number: u32| format!("{name} ({number})"));
        let free = std::iter::once(name.to_owned())
            .chain(numbered)
            .find(|wanted| !distinct.contains(wanted));
        // There are more numbers than names, so one is always found.
        distinct.extend(free);
    }
    distinct
}
