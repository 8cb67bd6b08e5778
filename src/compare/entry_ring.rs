//! What can differ about two rings.

use super::entry::{Entry, EntryId, Group, Part, SectorPart, Value};
use super::subject::Subject;
use crate::document::{FieldRef, Pieces, PinHandling, Ring};
use crate::mount::{Sector, Unit};
use crate::ring::{DimensionState, PinUse};

pub(super) fn entry(group: Group, field: FieldRef, part: Part, value: Value, unit: Unit) -> Entry {
    Entry {
        id: EntryId { group, field, part },
        value,
        unit,
        origin: "",
    }
}

pub(super) fn number(value: Option<f64>) -> Value {
    value.map_or(Value::Unknown, Value::Number)
}

pub(super) fn words(words: &str) -> Value {
    Value::Words(words.to_owned())
}

/// Count, and start and extent of each sector in the order of the clock, whatever order the file has.
pub(super) fn sector_entries(
    group: Group,
    field: FieldRef,
    sectors: Option<&[Sector]>,
) -> Vec<Entry> {
    let Some(sectors) = sectors else {
        return vec![entry(group, field, Part::Count, Value::Unknown, Unit::One)];
    };
    let mut sorted = sectors.to_vec();
    let start = |sector: &Sector| sector.start_deg.rem_euclid(360.0);
    sorted.sort_by(|a, b| start(a).total_cmp(&start(b)));
    let mut entries = vec![entry(
        group,
        field,
        Part::Count,
        Value::Words(sorted.len().to_string()),
        Unit::One,
    )];
    for (place, sector) in sorted.iter().enumerate() {
        let parts = [
            (SectorPart::Start, start(sector)),
            (SectorPart::Extent, sector.extent_deg),
        ];
        for (part, degrees) in parts {
            entries.push(entry(
                group,
                field,
                Part::Sector(place, part),
                Value::Number(degrees),
                Unit::Deg,
            ));
        }
    }
    entries
}

pub(super) fn ring_entries(subject: &Subject<'_>) -> Vec<Entry> {
    let derivation = &subject.evaluation.derivation;
    let mut entries: Vec<Entry> = derivation
        .dimensions
        .iter()
        .flat_map(dimension_entries)
        .collect();
    let ring = &subject.design.ring;
    let lugs = match &derivation.ring {
        Some(resolved) => Some(resolved.lugs.as_slice()),
        None => ring.lugs.set().map(Vec::as_slice),
    };
    entries.extend(sector_entries(Group::Ring, FieldRef::Lugs, lugs));
    entries.extend(choices(subject, ring));
    entries
}

fn dimension_entries(state: &DimensionState) -> [Entry; 2] {
    let field = FieldRef::Ring(state.key);
    let unit = state.key.unit();
    let value = entry(Group::Ring, field, Part::Whole, number(state.value), unit);
    [
        Entry {
            origin: if state.is_set {
                "by hand"
            } else {
                "by its rule"
            },
            ..value
        },
        entry(
            Group::Ring,
            field,
            Part::Tolerance,
            words(&state.tolerance_text),
            unit,
        ),
    ]
}

/// What is chosen rather than sized.
fn choices(subject: &Subject<'_>, ring: &Ring) -> Vec<Entry> {
    let resolved = subject.evaluation.derivation.ring.as_ref();
    let seat = resolved.map(|made| made.seat).or(ring.seat.set().copied());
    let pin = match resolved.map(|made| made.pin) {
        Some(PinUse::None) => words("no pin"),
        Some(PinUse::Pressed) => words("pressed"),
        Some(PinUse::LeftFree) => words("left free"),
        None => ring.pin.set().map_or(Value::Unknown, |pin| match pin {
            PinHandling::Pressed => words("pressed"),
            PinHandling::LeftFree => words("left free"),
        }),
    };
    let chosen = |name: &str, empty: &str| words(if name.is_empty() { empty } else { name });
    let whole = |field, value| entry(Group::Ring, field, Part::Whole, value, Unit::One);
    let mut entries = vec![
        whole(
            FieldRef::SeatKind,
            seat.map_or(Value::Unknown, |seat| words(seat.word())),
        ),
        whole(FieldRef::PinHandling, pin),
        entry(
            Group::Ring,
            FieldRef::Trim,
            Part::Whole,
            Value::Number(ring.trim_mm),
            Unit::Mm,
        ),
        whole(FieldRef::ThreadHold, words(ring.thread_hold.word())),
        entry(
            Group::Ring,
            FieldRef::Cutter,
            Part::Named("method"),
            words(ring.milling.word()),
            Unit::One,
        ),
        whole(
            FieldRef::Cutter,
            chosen(&ring.cutter, "the first that fits"),
        ),
        whole(
            FieldRef::Material,
            chosen(&ring.material, "the first of the workshop"),
        ),
        whole(FieldRef::Pieces, pieces(&ring.pieces)),
    ];
    entries.extend(finish_and_clocking(ring));
    entries
}

fn pieces(pieces: &Pieces) -> Value {
    match pieces {
        Pieces::One => words("one"),
        Pieces::Two {
            clamp_wall_mm,
            screw_diameter_mm,
            screw_count,
        } => Value::Words(format!(
            "two: clamp wall {}, {screw_count} set-screws of {}",
            Unit::Mm.show(*clamp_wall_mm),
            Unit::Mm.show(*screw_diameter_mm)
        )),
    }
}

fn finish_and_clocking(ring: &Ring) -> [Entry; 6] {
    let yes = |is_so: bool| words(if is_so { "yes" } else { "no" });
    let finish = |name, value, unit| {
        entry(
            Group::Ring,
            FieldRef::Finish,
            Part::Named(name),
            value,
            unit,
        )
    };
    let clocking = |name, angle: Option<f64>| {
        entry(
            Group::Ring,
            FieldRef::Clocking,
            Part::Named(name),
            number(angle),
            Unit::Deg,
        )
    };
    [
        finish("build-up", Value::Number(ring.finish.build_up_mm), Unit::Mm),
        finish("faces masked", yes(ring.finish.faces_masked), Unit::One),
        finish(
            "inside blackened",
            yes(ring.finish.inside_blackened),
            Unit::One,
        ),
        clocking("thread start", ring.clocking.thread_start_deg),
        clocking("lens start", ring.clocking.lens_start_deg),
        clocking("trial reading", ring.clocking.trial_reading_deg),
    ]
}
