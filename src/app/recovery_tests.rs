use super::*;
use crate::document::Design;
use crate::mount::{Body, Lens};
use std::time::Instant;

fn work(name: &str, from: Option<&Path>) -> KeptWork {
    KeptWork {
        design: Design {
            name: name.to_owned(),
            ..Design::new(Lens::default(), Body::default())
        },
        from: from.map(Path::to_owned),
        seen: None,
    }
}

/// Ends a run as a crash does: the lock is let go, the work stays.
fn cut_short(recovery: Recovery) {
    drop(recovery);
}

fn names(left: &LeftBehind) -> Vec<String> {
    left.found.iter().map(Found::name).collect()
}

#[test]
fn a_change_is_in_a_file_within_two_seconds() {
    let folder = tempfile::tempdir().unwrap();
    let recovery = Recovery::begin(folder.path(), PACE).unwrap();
    for name in ["first", "second", "third"] {
        let begun = Instant::now();
        recovery.keep(7, work(name, None), None);
        let kept = |path: &PathBuf| matches!(&Found::at(path.clone()).work, Ok(work) if work.design.name == name);
        while !files::files_in(folder.path()).unwrap().iter().any(kept) {
            assert!(begun.elapsed() < Duration::from_secs(2), "{name}");
            thread::sleep(Duration::from_millis(5));
        }
    }
}

#[test]
fn what_a_run_leaves_when_it_is_cut_short_is_found_once_and_stays_until_it_is_dealt_with() {
    let folder = tempfile::tempdir().unwrap();
    let recovery = Recovery::begin(folder.path(), PACE).unwrap();
    recovery.keep(1, work("one", None), None);
    recovery.keep(2, work("two", None), None);
    recovery.keep(3, work("saved", None), None);
    recovery.forget(3);
    assert!(LeftBehind::in_folder(folder.path()).unwrap().is_empty());
    cut_short(recovery);
    let left = LeftBehind::in_folder(folder.path()).unwrap();
    let mut found = names(&left);
    found.sort();
    assert_eq!(found, ["one", "two"]);
    // Another window that starts meanwhile does not ask about the same.
    assert!(LeftBehind::in_folder(folder.path()).unwrap().is_empty());
    drop(left);
    // Put off until later, it is asked about again.
    assert_eq!(LeftBehind::in_folder(folder.path()).unwrap().found.len(), 2);
}

#[test]
fn work_brought_back_is_kept_anew_before_its_old_file_goes() {
    let folder = tempfile::tempdir().unwrap();
    let first = Recovery::begin(folder.path(), PACE).unwrap();
    first.keep(1, work("one", None), None);
    cut_short(first);
    let left = LeftBehind::in_folder(folder.path()).unwrap();
    let old = left.found[0].path.clone();
    let second = Recovery::begin(folder.path(), PACE).unwrap();
    second.keep(9, work("one", None), Some(old.clone()));
    second.keep(9, work("one, changed", None), None);
    cut_short(second);
    drop(left);
    assert!(!old.exists());
    let left = LeftBehind::in_folder(folder.path()).unwrap();
    assert_eq!(names(&left), ["one, changed"]);
}

#[test]
fn work_brought_back_and_saved_at_once_leaves_nothing() {
    let folder = tempfile::tempdir().unwrap();
    let first = Recovery::begin(folder.path(), PACE).unwrap();
    first.keep(1, work("one", None), None);
    cut_short(first);
    let old = LeftBehind::in_folder(folder.path())
        .unwrap()
        .found
        .remove(0)
        .path;
    let second = Recovery::begin(folder.path(), PACE).unwrap();
    second.keep(8, work("other", None), None);
    second.keep(9, work("one", None), Some(old.clone()));
    second.forget(9);
    second.forget(8);
    drop(second);
    assert!(!old.exists());
}

#[test]
fn a_clean_end_leaves_an_empty_folder() {
    let folder = tempfile::tempdir().unwrap();
    let recovery = Recovery::begin(folder.path(), PACE).unwrap();
    recovery.keep(1, work("one", None), None);
    recovery.forget(1);
    drop(recovery);
    assert_eq!(
        files::files_in(folder.path()).unwrap(),
        [""; 0].map(PathBuf::from)
    );
}

#[test]
fn work_that_is_saved_in_its_file_is_not_asked_about() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("ring.ron");
    let recovery = Recovery::begin(&folder.path().join("recovery"), PACE).unwrap();
    recovery.keep(1, work("one", Some(&file)), None);
    files::save_design(&file, &work("one", None).design).unwrap();
    cut_short(recovery);
    let left = LeftBehind::in_folder(&folder.path().join("recovery")).unwrap();
    assert!(left.is_empty());
}

#[test]
fn a_fault_is_told_and_the_work_is_kept_once_it_is_put_right() {
    let folder = tempfile::tempdir().unwrap();
    let inside = folder.path().join("recovery");
    let recovery = Recovery::begin(&inside, Duration::ZERO).unwrap();
    // The folder is moved away and a file stands in its place.
    let away = folder.path().join("away");
    std::fs::rename(&inside, &away).unwrap();
    std::fs::write(&inside, "in the way").unwrap();
    recovery.keep(1, work("one", None), None);
    let begun = Instant::now();
    while recovery.fault().is_none() {
        assert!(begun.elapsed() < Duration::from_secs(5));
        thread::sleep(Duration::from_millis(5));
    }
    std::fs::remove_file(&inside).unwrap();
    std::fs::rename(&away, &inside).unwrap();
    cut_short(recovery);
    assert_eq!(names(&LeftBehind::in_folder(&inside).unwrap()), ["one"]);
}
