//! Two processes that write one file: each notices what the other has written, and nothing of either is lost.

use flangewright::app::file_locks::FileLocks;
use flangewright::app::files::open_design;
use flangewright::app::workspace::Workspace;
use flangewright::workshop::Workshop;

use crate::child::{Task, file};
use crate::cut_short::prepared;

#[test]
fn what_two_processes_add_to_one_file_is_all_there() {
    let folder = prepared();
    let mut both = ["share a", "share b"].map(|task| Task::start(task, folder.path(), 0, None));
    for one in &mut both {
        while one.line().is_some() {}
        assert!(one.process.wait().unwrap().success());
    }
    let notes = open_design(&file(folder.path())).unwrap().notes;
    for name in ["a", "b"] {
        for number in 0..40 {
            let line = format!("{name}{number}");
            let count = notes
                .lines()
                .filter(|one| one.trim_start_matches("0 ") == line)
                .count();
            assert_eq!(count, 1, "{line} in {notes}");
        }
    }
}

#[test]
fn the_second_one_is_told_that_the_file_is_open_already() {
    let folder = prepared();
    let locks = FileLocks::in_folder(folder.path());
    let open =
        || Workspace::opened(&file(folder.path()), Workshop::default_set().unwrap()).unwrap();
    let (mut first, mut second) = (open(), open());
    assert!(locks.claim(&mut first));
    assert!(!locks.claim(&mut second));
    drop(first);
    assert!(locks.claim(&mut second));
    // Claimed twice by the same design it stays its own.
    assert!(locks.claim(&mut second));
}
