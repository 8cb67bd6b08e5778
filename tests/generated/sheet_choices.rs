//! Whatever is chosen for a sheet, it can be read, has what was asked for, and keeps what was done by hand.

use flangewright::document::{
    Design, DimensionId, Lengths, Paper, Projection, RingKey, ViewChoice, read_design, write_ron,
};
use flangewright::drawing::{Extent, RingSheet, SheetError, laid_out};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::workshop::Workshop;

use crate::dice::Dice;
use crate::pairs::plausible;
use crate::sheet_lines::lettering;
use crate::sheets::faults;

const SEED: u64 = 83;
const COUNT: usize = 60;

/// A design whose sheet is laid out by chance.
fn chosen(index: usize) -> Design {
    let mut dice = Dice::new(SEED + index as u64);
    let mut design = plausible(SEED, index);
    let sheet = &mut design.sheet;
    sheet.paper = dice.pick(&[Paper::A4Landscape, Paper::A3Landscape]);
    sheet.projection = dice.pick(&Projection::ALL);
    sheet.lengths = dice.pick(&[Lengths::Millimetres, Lengths::WithInches]);
    sheet.decimal_comma = dice.chance(50);
    sheet.views.body_side = dice.pick(&ViewChoice::ALL);
    sheet.views.lens_side = dice.pick(&ViewChoice::ALL);
    sheet.views.relief_detail = dice.pick(&[ViewChoice::Never, ViewChoice::WhereRoom]);
    sheet.views.lug_detail = dice.pick(&[ViewChoice::Never, ViewChoice::WhereRoom]);
    let notes = dice.pick(&["", "Mark the index with a dot.\nPack the thread."]);
    sheet.notes = String::from(notes);
    design
}

/// The sheets that are drawn, with their designs.
fn drawn(count: usize) -> Vec<(usize, Design, Evaluation, RingSheet)> {
    let workshop = Workshop::default_set().unwrap();
    let all = (0..count).filter_map(|index| {
        let design = chosen(index);
        let evaluation = evaluate(&design, &workshop);
        match laid_out(&design, &evaluation) {
            Ok(sheet) => Some((index, design, evaluation, sheet)),
            // Both plans with inches may be more than the smaller paper takes; nothing else is refused.
            Err(SheetError::TooLarge(_)) => {
                assert_eq!(design.sheet.paper, Paper::A4Landscape, "{index}");
                None
            }
            Err(SheetError::NoRing(_)) => None,
            Err(error) => panic!("{index}: {error}"),
        }
    });
    all.collect()
}

#[test]
fn every_choice_gives_a_sheet_that_can_be_read() {
    let sheets = drawn(COUNT);
    assert!(sheets.len() * 10 >= COUNT * 8, "{}", sheets.len());
    for (index, design, _, sheet) in &sheets {
        let found = faults(design, &sheet.scene);
        assert!(
            found.is_empty(),
            "{index} {:?}: {}",
            design.sheet,
            found.join("\n    ")
        );
    }
}

#[test]
fn views_stand_as_the_projection_has_them_and_say_from_which_side() {
    for (index, design, _, sheet) in drawn(COUNT) {
        let place = |start: &str| {
            let texts = lettering(&sheet.scene);
            let found = texts.iter().find(|text| text.text.starts_with(start))?;
            Some(found.space.extent().centre().x)
        };
        let section = place("A-A").unwrap();
        let (body, lens) = (place("from the body side"), place("from the lens side"));
        let (left, right) = match design.sheet.projection {
            Projection::FirstAngle => (body, lens),
            Projection::ThirdAngle => (lens, body),
        };
        assert!(
            left.is_none_or(|x| x < section) && right.is_none_or(|x| x > section),
            "{index}"
        );
        let views = design.sheet.views;
        for (choice, found) in [(views.body_side, body), (views.lens_side, lens)] {
            assert!(choice != ViewChoice::Always || found.is_some(), "{index}");
            assert!(choice != ViewChoice::Never || found.is_none(), "{index}");
        }
    }
}

#[test]
fn every_dimension_is_on_the_sheet_once_unless_it_is_hidden() {
    for (index, design, evaluation, sheet) in drawn(COUNT / 2) {
        let mut names: Vec<DimensionId> = sheet.dimensions.iter().map(|one| one.id).collect();
        let count = names.len();
        names.sort();
        names.dedup();
        assert_eq!(names.len(), count, "{index}");
        let gone = names[index % count];
        let mut without = design.clone();
        without.sheet.override_mut(gone).hidden = true;
        let less = laid_out(&without, &evaluation).unwrap();
        assert!(
            less.dimensions.iter().all(|one| one.id != gone),
            "{index}: {gone}"
        );
    }
}

#[test]
fn what_is_moved_goes_so_far_the_rest_stays_and_the_file_keeps_it() {
    for (index, mut design, evaluation, before) in drawn(COUNT / 2) {
        let own = &before.dimensions[index % before.dimensions.len()];
        design.sheet.override_mut(own.id).moved_mm = (3.5, -2.25);
        let read = read_design(&write_ron(&design).unwrap()).unwrap();
        assert_eq!(read, design);
        let after = laid_out(&read, &evaluation).unwrap();
        assert_eq!(before.scale, after.scale);
        for (old, new) in before.dimensions.iter().zip(&after.dimensions) {
            assert_eq!(old.id, new.id);
            let middle = |one: &flangewright::drawing::SheetDimension| {
                one.extent().map(|extent: Extent| extent.centre())
            };
            let (Some(from), Some(to)) = (middle(old), middle(new)) else {
                continue;
            };
            let (right, up) = (to.x - from.x, to.y - from.y);
            if old.id == own.id {
                assert!(
                    (right - 3.5).abs() < 1e-6 && (up + 2.25).abs() < 1e-6,
                    "{index} {}: {right} {up}",
                    own.id
                );
            } else {
                assert!(right.abs() < 1e-9 && up.abs() < 1e-9, "{index} {}", old.id);
            }
        }
    }
}

#[test]
fn an_added_distance_is_for_information_only() {
    let workshop = Workshop::default_set().unwrap();
    for index in 0..20 {
        let mut design = plausible(SEED, index);
        let added: DimensionId = "seat..nose".parse().unwrap();
        design.sheet.override_mut(added);
        let evaluation = evaluate(&design, &workshop);
        let Ok(sheet) = laid_out(&design, &evaluation) else {
            continue;
        };
        let ring = evaluation.derivation.ring.unwrap();
        let length = ring.sizes.get(RingKey::SeatHeight) + ring.sizes.get(RingKey::SpigotLength);
        // The closing bracket is lettering of its own.
        let wanted = format!("({}", (length * 1000.0).round() / 1000.0);
        assert!(
            lettering(&sheet.scene)
                .iter()
                .any(|text| text.text.replace(',', ".") == wanted),
            "{index}: {wanted}"
        );
    }
}
