//! Rings kept beside the present one, in the same file.

use serde::{Deserialize, Serialize};

use super::fault::Fault;
use super::ring_fault::ring_faults;
use super::{Design, Ring};

/// A ring kept beside the present one.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Variant {
    /// Its name.
    pub name: String,
    /// Why it is kept.
    #[serde(default)]
    pub note: String,
    /// The ring.
    pub ring: Ring,
}

/// Longest name, letters: more fits on no column.
const LONGEST_NAME: usize = 80;
/// Longest note, letters.
const LONGEST_NOTE: usize = 1200;

impl Design {
    /// The design with the ring of a variant in place of its own: same lens, body, limits and sheet. It has no
    /// variants, readings or corrections: those belong to the ring at work.
    #[must_use]
    pub fn with_variant(&self, variant: &Variant) -> Self {
        Self {
            format: self.format,
            name: variant.name.clone(),
            notes: variant.note.clone(),
            lens: self.lens.clone(),
            body: self.body.clone(),
            ring: variant.ring.clone(),
            limits: self.limits.clone(),
            sheet: self.sheet.clone(),
            variants: Vec::new(),
            readings: Vec::new(),
            trials: Vec::new(),
            corrections: Vec::new(),
        }
    }
}

/// A name like `wanted` that no variant has yet: the first of `wanted`, `wanted 2`, `wanted 3` that is free.
#[must_use]
pub fn free_name(variants: &[Variant], wanted: &str) -> String {
    let taken = |name: &str| variants.iter().any(|variant| variant.name == name);
    let numbered = (2..).map(|number: u32| format!("{wanted} {number}"));
    // There are more numbers than variants, so one is always found.
    std::iter::once(wanted.to_owned())
        .chain(numbered)
        .find(|name| !taken(name))
        .unwrap_or_default()
}

pub(super) fn variant_faults(variants: &[Variant], faults: &mut Vec<Fault>) {
    for (place, variant) in variants.iter().enumerate() {
        let name = &variant.name;
        let field = format!("variant {}", place + 1);
        if name.trim().is_empty() {
            faults.push(Fault::new(
                format!("name of {field}"),
                "nothing",
                "a variant needs a name",
            ));
        }
        if variants.iter().take(place).any(|other| other.name == *name) {
            faults.push(Fault::new(
                format!("name of {field}"),
                name.clone(),
                "another variant has this name; each needs its own",
            ));
        }
        too_long(faults, &format!("name of {field}"), name, LONGEST_NAME);
        too_long(
            faults,
            &format!("note of {field}"),
            &variant.note,
            LONGEST_NOTE,
        );
        let mut of_ring = Vec::new();
        ring_faults(&variant.ring, &mut of_ring);
        faults.extend(of_ring.into_iter().map(|fault| Fault {
            field: format!("variant \"{name}\", {}", fault.field),
            ..fault
        }));
    }
}

fn too_long(faults: &mut Vec<Fault>, field: &str, text: &str, most: usize) {
    let letters = text.chars().count();
    if letters > most {
        faults.push(Fault::new(
            field,
            format!("a text of {letters} letters"),
            format!("at most {most} fit"),
        ));
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::document::{Choice, RingKey, faults_of, read_design, write_ron};
    use crate::mount::{Body, Lens};

    fn kept(names: &[&str]) -> Design {
        let mut design = Design::new(Lens::default(), Body::default());
        design.variants = names
            .iter()
            .map(|name| Variant {
                name: (*name).to_owned(),
                note: String::new(),
                ring: Ring::default(),
            })
            .collect();
        design
    }

    #[test]
    fn a_free_name_is_numbered_from_two() {
        let design = kept(&["thin", "thin 2"]);
        assert_eq!(free_name(&design.variants, "thin"), "thin 3");
        assert_eq!(free_name(&design.variants, "thick"), "thick");
    }

    #[test]
    fn a_variant_is_looked_through_like_the_ring_at_work() {
        let mut design = kept(&["thin", "thin", " "]);
        design.variants[0]
            .ring
            .dimensions
            .get_mut(RingKey::LipBore)
            .value = Choice::Set(9e9);
        let faults: Vec<String> = faults_of(&design).iter().map(ToString::to_string).collect();
        assert_eq!(faults.len(), 3, "{faults:?}");
        assert!(faults[0].starts_with("variant \"thin\", ring lip bore: "));
        assert!(faults[1].contains("another variant has this name"));
        assert!(faults[2].contains("needs a name"));
        let text = write_ron(&design).unwrap();
        assert!(read_design(&text).is_err());
        let sound = kept(&["thin", "thick"]);
        assert_eq!(read_design(&write_ron(&sound).unwrap()).unwrap(), sound);
    }

    #[test]
    fn with_a_variant_only_the_ring_changes() {
        let mut design = kept(&["thin"]);
        design.limits.lip_clash = 0.7;
        design.variants[0].ring.trim_mm = -0.03;
        let with = design.with_variant(&design.variants[0]);
        assert!((with.ring.trim_mm + 0.03).abs() < 1e-12);
        assert_eq!(
            (&with.lens, &with.body, &with.limits),
            (&design.lens, &design.body, &design.limits)
        );
        assert!(with.variants.is_empty());
    }
}
