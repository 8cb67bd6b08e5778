//! Readings of the numbers of a list: put, and kept true to the rows they belong to.

use crate::document::Design;
use crate::mount::{Interface, Known, Origin, RowList, RowNumber, RowReadings};

/// Puts readings of one number of a row: their mean goes into the row, and where every number of the list has readings
/// the list counts as measured. Readings without a value are taken out.
pub fn put_row_readings(design: &mut Design, readings: RowReadings) {
    let at = readings.number();
    if let Some(mean) = readings.mean() {
        let place = if at.list.is_of_the_lens() {
            design.lens.row_number_mut(at)
        } else {
            design.body.row_number_mut(at)
        };
        let Some(place) = place else { return };
        *place = mean;
    }
    let all = kept_mut(design, at.list);
    all.retain(|one| one.number() != at);
    if !readings.values.is_empty() {
        all.push(readings);
        all.sort_by_key(RowReadings::number);
    }
    count_as_measured(design, at.list);
}

fn kept_mut(design: &mut Design, list: RowList) -> &mut Vec<RowReadings> {
    if list.is_of_the_lens() {
        &mut design.lens.row_readings
    } else {
        &mut design.body.row_readings
    }
}

/// The readings of one number of a row.
#[must_use]
pub fn row_readings(design: &Design, at: RowNumber) -> Option<&RowReadings> {
    let all = if at.list.is_of_the_lens() {
        &design.lens.row_readings
    } else {
        &design.body.row_readings
    };
    all.iter().find(|one| one.number() == at)
}

/// The numbers of a list, row by row.
#[must_use]
pub fn row_numbers(design: &Design, list: RowList) -> Vec<(RowNumber, f64)> {
    if list.is_of_the_lens() {
        design.lens.row_numbers(list)
    } else {
        design.body.row_numbers(list)
    }
}

/// A list is measured when every number of it has been read.
fn count_as_measured(design: &mut Design, list: RowList) {
    let numbers = row_numbers(design, list);
    let read: Vec<&RowReadings> = numbers
        .iter()
        .filter_map(|(at, _)| row_readings(design, *at))
        .collect();
    if read.len() < numbers.len() {
        return;
    }
    let Some(instrument) = read.first().map(|one| one.instrument.clone()) else {
        return;
    };
    match list {
        RowList::BarrelAtInfinity => measured(&mut design.lens.barrel_at_infinity, instrument),
        RowList::BarrelAtCloseFocus => measured(&mut design.lens.barrel_at_close_focus, instrument),
        RowList::Ears => measured(&mut design.body.ears, instrument),
        RowList::FreeDepth => measured(&mut design.body.free_depth, instrument),
        RowList::Obstacles => measured(&mut design.body.obstacles, instrument),
    }
}

fn measured<T>(held: &mut Interface<T>, instrument: String) {
    if let Interface::Known(Known { origin, .. }) = held {
        *origin = Origin::Measured {
            readings: Vec::new(),
            instrument,
        };
    }
}

/// Keeps readings true after a list was changed by hand: they follow their row when one before it is taken out, and go
/// when their mean is no longer what stands in the row.
pub fn keep_true<T: PartialEq>(
    design: &mut Design,
    list: RowList,
    before: &Interface<Vec<T>>,
    after: &Interface<Vec<T>>,
) {
    let rows = |held: &Interface<Vec<T>>| held.value().map_or(0, Vec::len);
    if rows(after) + 1 == rows(before)
        && let (Some(old), Some(new)) = (before.value(), after.value())
    {
        // The first row that differs is the one that was taken out.
        let gone = 1 + old
            .iter()
            .zip(new)
            .take_while(|(old, new)| old == new)
            .count();
        let all = kept_mut(design, list);
        all.retain(|one| one.list != list || one.row != gone);
        for one in all.iter_mut() {
            if one.list == list && one.row > gone {
                one.row -= 1;
            }
        }
    }
    let numbers = row_numbers(design, list);
    let is_true = |one: &RowReadings| {
        one.list != list
            || numbers.iter().any(|(at, value)| {
                *at == one.number() && one.mean().is_some_and(|mean| (mean - value).abs() < 1e-9)
            })
    };
    kept_mut(design, list).retain(is_true);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::app::edit::{Edit, edited};
    use crate::mount::{Body, Lens, RowColumn, Sector, Standing};

    fn design() -> Design {
        let ear = |start_deg| Sector {
            start_deg,
            extent_deg: 50.0,
        };
        let body = Body {
            ears: Interface::assumed(vec![ear(0.0), ear(120.0), ear(240.0)], "a print"),
            ..Body::default()
        };
        Design::new(Lens::default(), body)
    }

    fn start(row: usize, values: &[f64]) -> RowReadings {
        RowReadings {
            list: RowList::Ears,
            row,
            column: RowColumn::Start,
            values: values.to_vec(),
            instrument: "protractor photograph".to_owned(),
        }
    }

    fn ears(design: &Design) -> Vec<Sector> {
        design.body.ears.value().unwrap().clone()
    }

    #[test]
    fn the_mean_goes_into_the_row_and_a_wholly_read_list_is_measured() {
        let mut design = design();
        put_row_readings(&mut design, start(2, &[120.0, 120.4]));
        assert!((ears(&design)[1].start_deg - 120.2).abs() < 1e-9);
        assert_eq!(design.body.ears.standing(), Standing::Assumed);
        for (row, at_deg) in [(1, 1.0), (3, 241.0)] {
            put_row_readings(&mut design, start(row, &[at_deg]));
        }
        for row in 1..=3 {
            let extent = RowReadings {
                column: RowColumn::Extent,
                ..start(row, &[49.0, 50.0])
            };
            put_row_readings(&mut design, extent);
        }
        assert_eq!(design.body.ears.standing(), Standing::Measured);
        put_row_readings(&mut design, start(2, &[]));
        assert_eq!(design.body.row_readings.len(), 5);
        put_row_readings(&mut design, start(9, &[1.0]));
        assert_eq!(design.body.row_readings.len(), 5);
    }

    #[test]
    fn readings_follow_their_row_and_go_when_it_is_typed_over() {
        let mut design = design();
        put_row_readings(&mut design, start(1, &[1.0, 1.2]));
        put_row_readings(&mut design, start(3, &[240.0, 240.4]));
        let mut fewer = ears(&design);
        fewer.remove(1);
        let without = edited(&design, &Edit::Ears(Interface::assumed(fewer.clone(), "x"))).unwrap();
        let rows: Vec<usize> = without
            .body
            .row_readings
            .iter()
            .map(|one| one.row)
            .collect();
        assert_eq!(rows, [1, 2]);
        fewer[0].start_deg = 5.0;
        let typed = edited(&without, &Edit::Ears(Interface::assumed(fewer, "x"))).unwrap();
        let rows: Vec<usize> = typed.body.row_readings.iter().map(|one| one.row).collect();
        assert_eq!(rows, [2]);
    }
}
