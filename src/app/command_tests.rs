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
fn keys_of_the_window_library_are_left_alone() {
    // Ctrl with plus, minus and 0 changes the size of the whole window's text.
    for (key, command) in keyed() {
        let taken = [Key::Plus, Key::Equals, Key::Minus, Key::Num0].contains(&key.logical_key);
        assert!(!(taken && key.modifiers.command), "{command:?}");
    }
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
