//! The keys that a drawing hears while it has the keyboard.

use egui::Key;

use super::grip::Arrow;

/// Picks the next edge.
pub const NEXT: Key = Key::PageDown;
/// Picks the edge before.
pub const BACK: Key = Key::PageUp;
/// Opens a small field for the value that is picked.
pub const TYPE: Key = Key::Enter;
/// The arrow keys and their ways.
pub const ARROWS: [(Key, Arrow); 4] = [
    (Key::ArrowRight, Arrow::Right),
    (Key::ArrowLeft, Arrow::Left),
    (Key::ArrowUp, Arrow::Up),
    (Key::ArrowDown, Arrow::Down),
];

/// The keys and what they do, for the list of keys.
pub const ROWS: &[(&str, &str)] = &[
    (
        "Page Down, Page Up",
        "pick the next edge, lug or dimension, or the one before",
    ),
    ("Enter", "type the value of what is picked"),
    (
        "Arrow keys",
        "nudge what is picked by 0.05 mm or a degree; move the picture where nothing is picked",
    ),
    (
        "Shift+Arrow keys",
        "nudge by 0.01 mm or a tenth of a degree",
    ),
    ("Escape", "give up a drag, or let go of what is picked"),
];
