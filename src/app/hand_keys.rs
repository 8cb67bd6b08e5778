//! The keys that a drawing hears while it has the keyboard.

/// The keys and what they do, for the list of keys.
pub const ROWS: &[(&str, &str)] = &[("Arrow keys", "move the picture")];
