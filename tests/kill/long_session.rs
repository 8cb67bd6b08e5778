//! Twelve hours at the bench in a few minutes: edit upon edit, undone to the very first, with memory that stays flat.

use std::fs;

use flangewright::app::edit::Edit;
use flangewright::app::recovery::{PACE, Recovery};
use flangewright::app::workspace::Workspace;
use flangewright::document::{RingKey, demo_designs};
use flangewright::workshop::Workshop;

/// Edits of a whole session where the program is built for speed; a share of it else, for it takes ten times as long.
const EDITS: u32 = if cfg!(debug_assertions) {
    2_000
} else {
    100_000
};
/// What the history of a whole session may take, bytes: each step a line or two of text.
const MOST_BYTES: u64 = 40_000_000;

/// Memory of this process that lies in the machine, bytes: `/proc/self/statm`, second number, in pages of 4096.
fn memory() -> Option<u64> {
    let facts = fs::read_to_string("/proc/self/statm").ok()?;
    let pages: u64 = facts.split(' ').nth(1)?.parse().ok()?;
    Some(pages * 4096)
}

fn edit(number: u32) -> Edit {
    let share = f64::from(number % 97) / 97.0;
    match number % 5 {
        0 => Edit::Dimension(RingKey::LipThickness, 1.0 + share),
        1 => Edit::Notes(format!("step {number}")),
        2 => Edit::Dimension(RingKey::SeatHeight, 1.4 + 0.2 * share),
        3 => Edit::SectionAngle(360.0 * share),
        _ => Edit::LetGo(RingKey::LipThickness),
    }
}

#[test]
fn a_long_session_is_undone_to_its_start_and_its_memory_stays_flat() {
    let first = demo_designs().unwrap().remove(0);
    let mut workspace = Workspace::new(first.clone(), Workshop::default_set().unwrap());
    let folder = tempfile::tempdir().unwrap();
    let keeping = Recovery::begin(folder.path(), PACE).unwrap();
    let mut early = None;
    for number in 0..EDITS {
        workspace.edit(&edit(number)).unwrap();
        keeping.keep(workspace.number(), workspace.kept_work(), None);
        if number == EDITS / 20 {
            early = memory();
        }
    }
    let (late, last) = (memory(), workspace.design().clone());
    let mut steps = 0;
    while workspace.undo() {
        steps += 1;
    }
    assert_eq!(workspace.design(), &first, "undone to the start");
    assert!(steps > EDITS * 9 / 10, "{steps} steps of {EDITS} edits");
    while workspace.redo() {}
    assert_eq!(workspace.design(), &last, "and made again to the end");
    if let (Some(early), Some(late)) = (early, late) {
        let grown = late.saturating_sub(early);
        println!(
            "{EDITS} edits, {steps} steps: memory grew by {} kB",
            grown / 1000
        );
        assert!(
            grown < MOST_BYTES * u64::from(EDITS) / 100_000 + 4_000_000,
            "{grown} bytes"
        );
    }
}
