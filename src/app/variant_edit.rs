//! What can be done with the variants of a design.

use crate::document::{Design, Variant, free_name};

/// One change to the variants.
#[derive(Clone, Debug, PartialEq)]
pub enum VariantEdit {
    /// Keep the ring at work under this name, or the first free one like it.
    Keep(String),
    /// Name a variant, by its place.
    Rename(usize, String),
    /// Say why a variant is kept, by its place.
    Note(usize, String),
    /// Work on with the ring of a variant, by its place. The ring at work is kept as a variant first, unless one holds it
    /// already: nothing is lost. The variant stays.
    SwapIn(usize),
    /// Forget a variant, by its place.
    Delete(usize),
}

/// The name under which a ring is kept that nobody has named.
pub const UNNAMED: &str = "variant";

/// Carries out a change. A place where no variant is changes nothing.
pub(super) fn put_variant(design: &mut Design, edit: VariantEdit) {
    match edit {
        VariantEdit::Keep(name) => keep(design, &name),
        VariantEdit::Rename(place, name) => {
            if let Some(variant) = design.variants.get_mut(place) {
                variant.name = name;
            }
        }
        VariantEdit::Note(place, note) => {
            if let Some(variant) = design.variants.get_mut(place) {
                variant.note = note;
            }
        }
        VariantEdit::SwapIn(place) => swap_in(design, place),
        VariantEdit::Delete(place) => {
            if place < design.variants.len() {
                design.variants.remove(place);
            }
        }
    }
}

fn keep(design: &mut Design, name: &str) {
    let variant = Variant {
        name: free_name(&design.variants, name),
        note: String::new(),
        ring: design.ring.clone(),
    };
    design.variants.push(variant);
}

fn swap_in(design: &mut Design, place: usize) {
    let Some(wanted) = design.variants.get(place) else {
        return;
    };
    let (name, ring) = (wanted.name.clone(), wanted.ring.clone());
    let is_kept = design
        .variants
        .iter()
        .any(|variant| variant.ring == design.ring);
    if !is_kept {
        keep(design, &format!("before {name}"));
    }
    design.ring = ring;
}

#[cfg(test)]
mod tests {
    use super::super::edit::{Edit, edited};
    use super::*;
    use crate::document::{Choice, RingKey};
    use crate::mount::{Body, Lens};

    fn after(design: &Design, edit: VariantEdit) -> Design {
        edited(design, &Edit::Variant(edit)).unwrap()
    }

    fn with_lip(design: &Design, thickness: f64) -> Design {
        edited(design, &Edit::Dimension(RingKey::LipThickness, thickness)).unwrap()
    }

    fn lip(design: &Design) -> Choice<f64> {
        design.ring.dimensions.get(RingKey::LipThickness).value
    }

    fn names(design: &Design) -> Vec<&str> {
        design
            .variants
            .iter()
            .map(|variant| variant.name.as_str())
            .collect()
    }

    #[test]
    fn swapping_in_loses_neither_ring() {
        let design = with_lip(&Design::new(Lens::default(), Body::default()), 1.0);
        let kept = after(&design, VariantEdit::Keep("thick".to_owned()));
        let thin = with_lip(&kept, 0.9);
        let back = after(&thin, VariantEdit::SwapIn(0));
        assert_eq!(lip(&back), Choice::Set(1.0));
        assert_eq!(names(&back), ["thick", "before thick"]);
        let again = after(&back, VariantEdit::SwapIn(1));
        assert_eq!(lip(&again), Choice::Set(0.9));
        // Both rings are kept already: nothing new is.
        assert_eq!(names(&again), ["thick", "before thick"]);
    }

    #[test]
    fn names_must_be_there_and_differ() {
        let design = Design::new(Lens::default(), Body::default());
        let one = after(&design, VariantEdit::Keep(UNNAMED.to_owned()));
        let two = after(&one, VariantEdit::Keep(UNNAMED.to_owned()));
        assert_eq!(names(&two), ["variant", "variant 2"]);
        let taken = Edit::Variant(VariantEdit::Rename(1, "variant".to_owned()));
        let fault = edited(&two, &taken).unwrap_err();
        assert!(fault.to_string().contains("another variant has this name"));
        let nothing = Edit::Variant(VariantEdit::Rename(0, " ".to_owned()));
        assert!(edited(&two, &nothing).is_err());
        assert_eq!(names(&after(&two, VariantEdit::Delete(0))), ["variant 2"]);
        assert_eq!(after(&two, VariantEdit::Delete(7)), two);
    }
}
