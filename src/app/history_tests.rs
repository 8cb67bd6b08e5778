use super::*;
use crate::document::Design;
use crate::mount::{Body, Lens};

fn named(name: &str) -> Design {
    Design {
        name: name.to_owned(),
        ..Design::new(Lens::default(), Body::default())
    }
}

#[test]
fn each_step_is_undone_by_itself_and_redone() {
    let (a, b, c) = (named("a"), named("b"), named("c"));
    let mut history = History::starting_at(&a);
    assert!(!history.can_undo(&a));
    history.end_step(&b);
    history.end_step(&c);
    assert_eq!(history.undo(&c), Some(b.clone()));
    assert_eq!(history.undo(&b), Some(a.clone()));
    assert_eq!(history.undo(&a), None);
    assert_eq!(history.redo(&a), Some(b));
}

#[test]
fn a_new_step_drops_the_steps_forward() {
    let (a, b, c) = (named("a"), named("b"), named("c"));
    let mut history = History::starting_at(&a);
    history.end_step(&b);
    assert_eq!(history.undo(&b), Some(a.clone()));
    history.end_step(&c);
    assert!(!history.can_redo(&c));
    assert_eq!(history.redo(&c), None);
    assert_eq!(history.undo(&c), Some(a));
}

#[test]
fn a_drag_that_has_not_ended_is_undone_as_one() {
    let (a, last) = (named("a"), named("dragged far"));
    let mut history = History::starting_at(&a);
    assert!(history.can_undo(&last));
    assert_eq!(history.undo(&last), Some(a));
}

#[test]
fn a_step_is_what_changed_and_no_more() {
    let step = Step::between("(a: 1.25, b: ü)", "(a: 1.375, b: ü)");
    assert_eq!((step.at, step.before(), step.after()), (6, "2", "37"));
    // Letters of several bytes are never cut, and words that are left out or put in are well.
    for (old, new) in [
        ("ü", "ö"),
        ("", "x"),
        ("x", ""),
        ("aaa", "aaaa"),
        ("äöä", "ää"),
        ("same", "same"),
    ] {
        let step = Step::between(old, new);
        assert_eq!(
            step.exchanged(old, step.before(), step.after()).as_deref(),
            Some(new)
        );
        assert_eq!(
            step.exchanged(new, step.after(), step.before()).as_deref(),
            Some(old)
        );
    }
}

#[test]
fn steps_of_many_kinds_are_undone_to_the_start_and_made_again() {
    let mut history = History::starting_at(&named(""));
    let mut designs = vec![named("")];
    for number in 0..200_u16 {
        let mut next = designs[usize::from(number / 2)].clone();
        next.notes = "ß\"\\\n".repeat(usize::from(number % 7));
        next.name = format!("{number}");
        next.ring.trim_mm = 1.0 / (1.0 + f64::from(number));
        history.end_step(&next);
        designs.push(next);
    }
    for place in (0..200).rev() {
        assert_eq!(
            history.undo(&designs[place + 1]).as_ref(),
            Some(&designs[place])
        );
    }
    assert_eq!(history.undo(&designs[0]), None);
    for place in 1..=200 {
        assert_eq!(
            history.redo(&designs[place - 1]).as_ref(),
            Some(&designs[place])
        );
    }
    assert!(!history.can_redo(&designs[200]));
}

#[test]
fn steps_beyond_all_measure_push_the_oldest_out() {
    let mut history = History::starting_at(&named("a"));
    let mut last = named("a");
    for number in 0..5_u8 {
        last = named("a");
        last.notes = char::from(b'a' + number).to_string().repeat(MOST_BYTES / 4);
        history.end_step(&last);
    }
    assert!(history.bytes <= MOST_BYTES);
    let mut steps = 0;
    while let Some(back) = history.undo(&last) {
        last = back;
        steps += 1;
    }
    assert!((1..5).contains(&steps), "{steps}");
}
