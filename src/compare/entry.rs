//! Everything about a design that can differ from another: one entry a number or word.

use super::entry_mating::{body_entries, lens_entries};
use super::entry_ring::ring_entries;
use super::subject::Subject;
use crate::document::{FieldRef, LimitKey};
use crate::mount::Unit;

/// Where an entry belongs. Sorted as the tables show them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Group {
    /// A dimension or choice of the ring.
    Ring,
    /// A value of the lens.
    Lens,
    /// A value of the body.
    Body,
    /// A limit or clearance.
    Limits,
}

impl Group {
    /// The word on screen and in files.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Ring => "ring",
            Self::Lens => "lens",
            Self::Body => "body",
            Self::Limits => "limit",
        }
    }
}

/// Which part of a field an entry is. Places in lists begin with 0.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Part {
    /// The field itself.
    Whole,
    /// Its tolerance.
    Tolerance,
    /// How many a list has.
    Count,
    /// A number of a sector, by its place.
    Sector(usize, SectorPart),
    /// One of a list, by its place.
    Item(usize),
    /// A further part under a name of its own.
    Named(&'static str),
}

/// A number of a sector.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SectorPart {
    /// Where it begins, clock degrees seen from the lens side.
    Start,
    /// How far it reaches, degrees.
    Extent,
}

impl SectorPart {
    const fn word(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Extent => "extent",
        }
    }
}

/// Which entry it is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct EntryId {
    /// Where it belongs.
    pub group: Group,
    /// The field.
    pub field: FieldRef,
    /// The part of the field.
    pub part: Part,
}

/// What stands in an entry.
#[derive(Clone, Debug, PartialEq)]
pub enum Value {
    /// A number.
    Number(f64),
    /// Words.
    Words(String),
    /// Nobody has said, or the rule lacks something.
    Unknown,
}

/// One entry of one design.
#[derive(Clone, Debug, PartialEq)]
pub struct Entry {
    /// Which.
    pub id: EntryId,
    /// What stands there.
    pub value: Value,
    /// The unit of a number.
    pub unit: Unit,
    /// Where it came from, in a word or two: `by hand`, `by its rule`, `measured`.
    pub origin: &'static str,
}

/// Numbers nearer than this are the same, in their unit: far under what any workshop holds, far over rounding.
pub const SAME: f64 = 1e-6;

impl Value {
    /// Whether it says the same as another.
    #[must_use]
    pub fn is_same(&self, other: &Self) -> bool {
        match (self, other) {
            (Self::Number(a), Self::Number(b)) => {
                (a - b).abs() <= SAME || a.to_bits() == b.to_bits()
            }
            (Self::Words(a), Self::Words(b)) => a == b,
            (Self::Unknown, Self::Unknown) => true,
            (Self::Number(_) | Self::Words(_) | Self::Unknown, _) => false,
        }
    }

    /// The text in a table, with the unit behind a number.
    #[must_use]
    pub fn words(&self, unit: Unit) -> String {
        match self {
            Self::Number(number) => unit.show(*number),
            Self::Words(words) => words.clone(),
            Self::Unknown => "unknown".to_owned(),
        }
    }
}

impl EntryId {
    /// The name in a table.
    #[must_use]
    pub fn label(&self) -> String {
        let label = self.field.label();
        let one = || label.strip_suffix('s').unwrap_or(label);
        match self.part {
            Part::Whole => label.to_owned(),
            Part::Tolerance => format!("{label}, tolerance"),
            Part::Count => format!("{label}, how many"),
            Part::Sector(place, part) => format!("{} {}, {}", one(), place + 1, part.word()),
            Part::Item(place) => format!("{} {}", one(), place + 1),
            Part::Named(name) => format!("{label}, {name}"),
        }
    }

    /// The name in a file: small letters and underscores.
    #[must_use]
    pub fn key(&self) -> String {
        let name = match self.field {
            FieldRef::Lens(key) => key.name().to_owned(),
            FieldRef::Body(key) => key.name().to_owned(),
            FieldRef::Ring(key) => key.name().to_owned(),
            FieldRef::Limit(key) => key.name().to_owned(),
            other => underscored(other.label()),
        };
        match self.part {
            Part::Whole => name,
            Part::Tolerance => format!("{name}_tolerance"),
            Part::Count => format!("{name}_count"),
            Part::Sector(place, part) => format!("{name}_{}_{}", place + 1, part.word()),
            Part::Item(place) => format!("{name}_{}", place + 1),
            Part::Named(part) => format!("{name}_{}", underscored(part)),
        }
    }
}

fn underscored(words: &str) -> String {
    words.to_lowercase().replace([' ', '-'], "_")
}

/// Every entry of a design, ring first, then lens, body and limits.
#[must_use]
pub fn entries(subject: &Subject<'_>) -> Vec<Entry> {
    let mut entries = ring_entries(subject);
    entries.extend(lens_entries(&subject.design.lens));
    entries.extend(body_entries(&subject.design.body));
    entries.extend(LimitKey::ALL.iter().map(|key| Entry {
        id: EntryId {
            group: Group::Limits,
            field: FieldRef::Limit(*key),
            part: Part::Whole,
        },
        value: Value::Number(subject.design.limits.get(*key)),
        unit: key.unit(),
        origin: "",
    }));
    entries
}
