//! Tests of the list of commands.

use super::*;

#[test]
fn no_key_stands_for_two_commands() {
    let keyed = keyed();
    for (place, (key, command)) in keyed.iter().enumerate() {
        for (other_key, other) in &keyed[place + 1..] {
            assert!(
                key != other_key,
                "{key:?} stands for {command:?} and {other:?}"
            );
        }
    }
}

#[test]
fn a_key_with_more_modifiers_is_looked_at_first() {
    let place = |wanted: &Command| {
        keyed()
            .iter()
            .position(|(_, command)| command == wanted)
            .unwrap()
    };
    assert!(place(&Command::Redo) < place(&Command::Undo));
    assert!(place(&Command::SaveAs) < place(&Command::Save));
}

#[test]
fn every_menu_entry_says_what_it_does() {
    for command in menus()
        .into_iter()
        .flat_map(|menu| menu.commands.into_iter().flatten())
    {
        assert!(
            !command.label().is_empty() && command.explains().len() > 10,
            "{command:?}"
        );
    }
}
