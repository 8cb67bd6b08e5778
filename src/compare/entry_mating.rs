//! What can differ about two lenses or two bodies.

use super::entry::{Entry, Group, Part, Value};
use super::entry_ring::{entry, sector_entries, words};
use crate::document::FieldRef;
use crate::mount::{
    BarrelStep, Body, BodyField, FreeDepth, Interface, Lens, LensField, Obstacle, Presence, Unit,
};

pub(super) fn lens_entries(lens: &Lens) -> Vec<Entry> {
    let mut entries: Vec<Entry> = LensField::ALL
        .iter()
        .map(|key| {
            scalar(
                Group::Lens,
                FieldRef::Lens(*key),
                lens.field(*key),
                key.unit(),
            )
        })
        .collect();
    let whole = |field, value| entry(Group::Lens, field, Part::Whole, value, Unit::One);
    entries.extend([
        Entry {
            origin: lens.thread.standing().word(),
            ..whole(
                FieldRef::LensThread,
                said(&lens.thread, ToString::to_string),
            )
        },
        whole(
            FieldRef::BarrelAtInfinity,
            said(&lens.barrel_at_infinity, |steps| barrel(steps)),
        ),
        whole(
            FieldRef::BarrelAtCloseFocus,
            said(&lens.barrel_at_close_focus, |steps| barrel(steps)),
        ),
        whole(FieldRef::ApertureRing, presence(lens.aperture_ring)),
        whole(FieldRef::StopDownPin, presence(lens.stop_down_pin)),
    ]);
    entries
}

pub(super) fn body_entries(body: &Body) -> Vec<Entry> {
    let mut entries: Vec<Entry> = BodyField::ALL
        .iter()
        .map(|key| {
            scalar(
                Group::Body,
                FieldRef::Body(*key),
                body.field(*key),
                key.unit(),
            )
        })
        .collect();
    let ears = body.ears.value().map(Vec::as_slice);
    entries.extend(sector_entries(Group::Body, FieldRef::Ears, ears));
    let whole = |field, value| entry(Group::Body, field, Part::Whole, value, Unit::One);
    entries.extend([
        whole(
            FieldRef::TwistHand,
            said(&body.twist_hand, |hand| hand.word().to_owned()),
        ),
        whole(FieldRef::Springs, presence(body.springs)),
        whole(FieldRef::Stop, presence(body.stop)),
        whole(FieldRef::LockPin, presence(body.lock_pin)),
        whole(
            FieldRef::FreeDepth,
            said(&body.free_depth, |points| free_depth(points)),
        ),
        entry(
            Group::Body,
            FieldRef::FreeDepth,
            Part::Named("mirror"),
            presence(body.mirror),
            Unit::One,
        ),
    ]);
    let obstacles = body.obstacles.value().map_or(&[] as &[_], Vec::as_slice);
    entries.push(entry(
        Group::Body,
        FieldRef::Obstacles,
        Part::Count,
        said(&body.obstacles, |list| list.len().to_string()),
        Unit::One,
    ));
    for (place, one) in obstacles.iter().enumerate() {
        entries.push(entry(
            Group::Body,
            FieldRef::Obstacles,
            Part::Item(place),
            Value::Words(obstacle(one)),
            Unit::One,
        ));
    }
    entries
}

fn scalar(group: Group, field: FieldRef, value: &Interface<f64>, unit: Unit) -> Entry {
    let shown = value.number().map_or(Value::Unknown, Value::Number);
    Entry {
        origin: value.standing().word(),
        ..entry(group, field, Part::Whole, shown, unit)
    }
}

fn said<T>(value: &Interface<T>, words: impl Fn(&T) -> String) -> Value {
    value
        .value()
        .map_or(Value::Unknown, |value| Value::Words(words(value)))
}

fn presence(presence: Presence) -> Value {
    match presence {
        Presence::Unknown => Value::Unknown,
        Presence::Absent => words("none"),
        Presence::Present => words("there"),
    }
}

fn listed(parts: impl Iterator<Item = String>) -> String {
    let parts: Vec<String> = parts.collect();
    if parts.is_empty() {
        "none".to_owned()
    } else {
        parts.join("; ")
    }
}

fn barrel(steps: &[BarrelStep]) -> String {
    listed(steps.iter().map(|step| {
        format!(
            "to {}: Ø{}",
            Unit::Mm.show(step.depth_mm),
            Unit::Mm.show(step.diameter_mm)
        )
    }))
}

fn free_depth(points: &[FreeDepth]) -> String {
    listed(points.iter().map(|point| {
        format!(
            "r {}: {}",
            Unit::Mm.show(point.radius_mm),
            Unit::Mm.show(point.depth_mm)
        )
    }))
}

fn obstacle(obstacle: &Obstacle) -> String {
    format!(
        "{}: {} + {}, r {} to {}, z {} to {}",
        obstacle.name,
        Unit::Deg.show(obstacle.sector.start_deg),
        Unit::Deg.show(obstacle.sector.extent_deg),
        Unit::Mm.show(obstacle.inner_radius_mm),
        Unit::Mm.show(obstacle.outer_radius_mm),
        Unit::Mm.show(obstacle.from_z_mm),
        Unit::Mm.show(obstacle.to_z_mm)
    )
}
