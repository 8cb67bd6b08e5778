//! The entries in which compared designs differ.

use std::collections::BTreeMap;

use super::entry::{Entry, EntryId, entries};
use super::subject::Subject;

/// One entry in which at least two differ.
#[derive(Clone, Debug, PartialEq)]
pub struct DifferingRow {
    /// Which entry.
    pub id: EntryId,
    /// What each has there, in the order of the subjects; none where one has no such entry, as no fourth lug.
    pub cells: Vec<Option<Entry>>,
}

impl DifferingRow {
    /// The text of each cell.
    #[must_use]
    pub fn words(&self) -> Vec<String> {
        self.cells
            .iter()
            .map(|cell| {
                cell.as_ref()
                    .map_or_else(|| "-".to_owned(), |entry| entry.value.words(entry.unit))
            })
            .collect()
    }

    fn differs(&self) -> bool {
        let mut rest = self.cells.iter();
        let Some(first) = rest.next() else {
            return false;
        };
        rest.any(|cell| match (first, cell) {
            (Some(a), Some(b)) => !a.value.is_same(&b.value),
            (None, None) => false,
            (Some(_), None) | (None, Some(_)) => true,
        })
    }
}

/// Every entry in which the subjects are not all the same: the ring's first, then those of lens, body and limits.
#[must_use]
pub fn differing(subjects: &[Subject<'_>]) -> Vec<DifferingRow> {
    let mut rows: BTreeMap<EntryId, Vec<Option<Entry>>> = BTreeMap::new();
    for (place, subject) in subjects.iter().enumerate() {
        for entry in entries(subject) {
            let cells = rows
                .entry(entry.id)
                .or_insert_with(|| vec![None; subjects.len()]);
            if let Some(cell) = cells.get_mut(place) {
                *cell = Some(entry);
            }
        }
    }
    rows.into_iter()
        .map(|(id, cells)| DifferingRow { id, cells })
        .filter(DifferingRow::differs)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::entry::{Group, Part, SectorPart, Value};
    use super::*;
    use crate::document::{Choice, Design, FieldRef, RingKey, Tolerance, demo_designs};
    use crate::evaluate::{Evaluation, evaluate};
    use crate::mount::{LensField, Sector};
    use crate::workshop::Workshop;

    fn evaluated(design: &Design) -> Evaluation {
        evaluate(design, &Workshop::default_set().unwrap())
    }

    fn rows(designs: &[&Design]) -> Vec<DifferingRow> {
        let evaluations: Vec<Evaluation> = designs.iter().map(|design| evaluated(design)).collect();
        let subjects: Vec<Subject<'_>> = designs
            .iter()
            .zip(&evaluations)
            .map(|(design, evaluation)| Subject {
                name: &design.name,
                design,
                evaluation,
            })
            .collect();
        differing(&subjects)
    }

    #[test]
    fn a_design_does_not_differ_from_itself() {
        for design in demo_designs().unwrap() {
            assert_eq!(
                rows(&[&design, &design, &design]),
                Vec::new(),
                "{}",
                design.name
            );
        }
    }

    #[test]
    fn a_dimension_set_by_hand_is_the_row_that_differs() {
        let one = demo_designs().unwrap().remove(0);
        let mut two = one.clone();
        two.ring.dimensions.get_mut(RingKey::EdgeBreak).value = Choice::Set(0.4);
        let found = rows(&[&one, &two]);
        let ids: Vec<String> = found.iter().map(|row| row.id.key()).collect();
        assert_eq!(ids, ["edge_break"], "{found:?}");
        let origins: Vec<&str> = found[0]
            .cells
            .iter()
            .map(|cell| cell.as_ref().unwrap().origin)
            .collect();
        assert_eq!(origins, ["by its rule", "by hand"]);
        assert_eq!(found[0].words()[1], "0.40 mm");
    }

    #[test]
    fn setting_by_hand_what_the_rule_gives_is_no_difference() {
        let one = demo_designs().unwrap().remove(0);
        let value = evaluated(&one)
            .derivation
            .dimension(RingKey::LipThickness)
            .unwrap()
            .value
            .unwrap();
        let mut two = one.clone();
        two.ring.dimensions.get_mut(RingKey::LipThickness).value = Choice::Set(value);
        assert_eq!(rows(&[&one, &two]), Vec::new());
    }

    #[test]
    fn tolerances_limits_and_mating_values_are_rows_of_their_own() {
        let one = demo_designs().unwrap().remove(0);
        let mut two = one.clone();
        two.ring.dimensions.get_mut(RingKey::EdgeBreak).tolerance = Tolerance::PlusMinus(0.07);
        two.limits.lip_caution += 0.5;
        let mass = one.lens.mass.number().unwrap();
        *two.lens.field_mut(LensField::Mass) =
            crate::mount::Interface::measured(mass + 25.0, "scale");
        let found: Vec<(Group, String)> = rows(&[&one, &two])
            .iter()
            .map(|row| (row.id.group, row.id.key()))
            .collect();
        let expected = [
            (Group::Ring, "edge_break_tolerance".to_owned()),
            (Group::Lens, "mass".to_owned()),
            (Group::Limits, "lip_caution".to_owned()),
        ];
        assert_eq!(found, expected);
    }

    #[test]
    fn lugs_in_another_order_are_the_same_and_one_less_is_told() {
        let mut one = demo_designs().unwrap().remove(0);
        let lugs =
            [(10.0, 40.0), (130.0, 40.0), (250.0, 40.0)].map(|(start_deg, extent_deg)| Sector {
                start_deg,
                extent_deg,
            });
        one.ring.lugs = Choice::Set(lugs.to_vec());
        let mut two = one.clone();
        two.ring.lugs = Choice::Set(vec![lugs[2], lugs[0], lugs[1]]);
        assert_eq!(rows(&[&one, &two]), Vec::new());
        two.ring.lugs = Choice::Set(vec![lugs[0], lugs[1]]);
        let found = rows(&[&one, &two]);
        let parts: Vec<Part> = found
            .iter()
            .filter(|row| row.id.field == FieldRef::Lugs)
            .map(|row| row.id.part)
            .collect();
        assert_eq!(
            parts,
            [
                Part::Count,
                Part::Sector(2, SectorPart::Start),
                Part::Sector(2, SectorPart::Extent)
            ]
        );
        let last = found
            .iter()
            .find(|row| row.id.part == Part::Sector(2, SectorPart::Start))
            .unwrap();
        assert_eq!(last.words(), ["250.00°", "-"]);
        assert_eq!(last.cells[0].as_ref().unwrap().value, Value::Number(250.0));
    }
}
