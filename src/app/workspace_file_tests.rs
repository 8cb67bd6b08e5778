use super::*;
use crate::app::edit::Edit;
use crate::app::files::before_of;

fn workshop() -> Workshop {
    Workshop::default_set().unwrap()
}

fn name(workspace: &mut Workspace, name: &str) {
    workspace.edit(&Edit::Name(name.to_owned())).unwrap();
}

#[test]
fn the_title_shows_a_change_until_it_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let mut workspace = Workspace::empty(workshop());
    name(&mut workspace, "trial");
    assert_eq!(workspace.title(), "trial * - 1 clash - Flangewright");
    workspace.save_to(&folder.path().join("kept.ron")).unwrap();
    assert_eq!(workspace.title(), "kept - 1 clash - Flangewright");
    assert!(workspace.undo() && workspace.is_changed());
}

#[test]
fn a_broken_file_leaves_the_design_and_its_file_alone() {
    let folder = tempfile::tempdir().unwrap();
    let mut workspace = Workspace::empty(workshop());
    name(&mut workspace, "mine");
    assert!(workspace.open(&folder.path().join("none.ron")).is_err());
    assert_eq!(workspace.design().name, "mine");
    assert_eq!(workspace.path(), None);
    assert!(workspace.can_undo());
}

#[test]
fn a_file_that_somebody_else_wrote_is_not_written_over_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut mine = Workspace::empty(workshop());
    name(&mut mine, "mine");
    mine.save_to(&path).unwrap();
    let mut theirs = Workspace::opened(&path, workshop()).unwrap();
    name(&mut theirs, "theirs");
    theirs.save_to(&path).unwrap();

    name(&mut mine, "mine, changed");
    assert!(matches!(mine.seen_otherwise(), Some(Standing::Changed(_))));
    assert!(matches!(
        mine.save_to(&path),
        Err(FileError::ChangedMeanwhile(_))
    ));
    assert_eq!(files::open_design(&path).unwrap().name, "theirs");

    mine.keep_mine();
    mine.save_to(&path).unwrap();
    assert_eq!(files::open_design(&path).unwrap().name, "mine, changed");
    assert_eq!(
        files::open_design(&before_of(&path)).unwrap().name,
        "theirs"
    );
}

#[test]
fn their_design_is_a_step_that_undo_takes_back() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut mine = Workspace::empty(workshop());
    name(&mut mine, "mine");
    mine.save_to(&path).unwrap();
    let mut theirs = Workspace::opened(&path, workshop()).unwrap();
    name(&mut theirs, "theirs");
    theirs.save_to(&path).unwrap();

    name(&mut mine, "mine, changed");
    mine.take_theirs().unwrap();
    assert_eq!(mine.design().name, "theirs");
    assert!(!mine.is_changed() && mine.seen_otherwise().is_none());
    assert!(mine.undo());
    assert_eq!(mine.design().name, "mine, changed");
    assert!(mine.is_changed());
}

#[test]
fn a_file_that_is_gone_is_written_anew() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut mine = Workspace::empty(workshop());
    name(&mut mine, "mine");
    mine.save_to(&path).unwrap();
    std::fs::remove_file(&path).unwrap();
    assert_eq!(mine.seen_otherwise(), Some(Standing::Gone));
    mine.save_to(&path).unwrap();
    assert_eq!(files::open_design(&path).unwrap().name, "mine");
}

#[test]
fn work_brought_back_counts_as_unsaved_and_knows_its_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut mine = Workspace::empty(workshop());
    name(&mut mine, "mine");
    mine.save_to(&path).unwrap();
    name(&mut mine, "mine, changed");
    let mut back = Workspace::brought_back(mine.kept_work(), workshop());
    assert!(back.is_changed() && !back.is_untouched());
    assert_eq!(back.path(), Some(path.as_path()));
    // The file is as it was seen before the crash: it is saved without a question.
    back.save_to(&path).unwrap();
    assert_eq!(files::open_design(&path).unwrap().name, "mine, changed");
}

/// Every byte but two may stand in a name on Linux (POSIX, definition of a filename; from memory).
#[cfg(unix)]
#[test]
fn a_file_of_any_name_is_opened_saved_and_brought_back() {
    use std::os::unix::ffi::OsStrExt as _;
    let folder = tempfile::tempdir().unwrap();
    for name in [
        " two  blanks .ron".as_bytes(),
        "Blende f\u{fc}r \u{1f52d} \u{73af}.ron".as_bytes(),
        b"line\nbreak\ttab.ron",
        b"\xff\xfe no text \xc3.ron",
        b"-- \"quoted' 100%41;rm.ron",
    ] {
        let path = folder.path().join(std::ffi::OsStr::from_bytes(name));
        let mut mine = Workspace::empty(workshop());
        self::name(&mut mine, "first");
        mine.save_to(&path).unwrap();
        self::name(&mut mine, "second");
        mine.save_to(&path).unwrap();
        let opened = Workspace::opened(&path, workshop()).unwrap();
        assert_eq!(opened.design().name, "second");
        assert_eq!(files::open_design(&before_of(&path)).unwrap().name, "first");
        assert!(!opened.title().contains(char::is_control));

        let kept = folder.path().join("kept.ron");
        opened.kept_work().write(&kept).unwrap();
        let work = crate::app::kept_work::Found::at(kept).work.unwrap();
        assert_eq!(work.from, Some(path.clone()));
        let mut back = Workspace::brought_back(work, workshop());
        back.save_to(&path).unwrap();
    }
}
