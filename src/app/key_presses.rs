//! Which commands the keys pressed in this frame ask for.

use egui::Context;

use super::command::{Command, keyed};

/// The commands whose keys were pressed. While text is typed only those that end the typing are taken.
pub(super) fn keys(context: &Context) -> Vec<Command> {
    let typing = context.text_edit_focused();
    let mut pressed = Vec::new();
    for (key, command) in keyed() {
        if typing && !command.ends_typing() {
            continue;
        }
        if context.input_mut(|input| input.consume_shortcut(&key)) {
            pressed.push(command);
        }
    }
    if typing && !pressed.is_empty() {
        context.memory_mut(|memory| {
            if let Some(id) = memory.focused() {
                memory.surrender_focus(id);
            }
        });
    }
    pressed
}
