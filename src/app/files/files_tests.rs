use super::*;
use crate::mount::{Body, Lens};

fn design(name: &str) -> Design {
    Design {
        name: name.to_owned(),
        ..Design::new(Lens::default(), Body::default())
    }
}

fn names_in(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

#[test]
fn a_saved_design_opens_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    save_design(&path, &design("first")).unwrap();
    save_design(&path, &design("second")).unwrap();
    assert_eq!(open_design(&path).unwrap(), design("second"));
    assert_eq!(names_in(folder.path()), ["ring.ron", "ring.ron.bak"]);
}

#[test]
fn the_version_before_is_kept_and_the_same_again_is_no_version() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    for name in ["first", "second", "second", "second"] {
        let saved = save_design(&path, &design(name)).unwrap();
        assert_eq!(saved.before_lost, None);
        assert_eq!(standing_of(&path, Some(saved.seen)), Standing::AsSeen);
    }
    assert_eq!(open_design(&before_of(&path)).unwrap(), design("first"));
    save_design(&path, &design("third")).unwrap();
    assert_eq!(open_design(&before_of(&path)).unwrap(), design("second"));
    assert_eq!(names_in(folder.path()), ["ring.ron", "ring.ron.bak"]);
}

#[test]
fn a_design_is_saved_where_the_version_before_cannot_be_kept_and_it_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    save_design(&path, &design("first")).unwrap();
    fs::create_dir(before_of(&path)).unwrap();
    let saved = save_design(&path, &design("second")).unwrap();
    assert!(saved.before_lost.is_some());
    assert_eq!(open_design(&path).unwrap(), design("second"));
    assert_eq!(names_in(folder.path()), ["ring.ron", "ring.ron.bak"]);
}

#[test]
fn a_design_too_large_to_be_read_back_is_not_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut large = design("large");
    large.notes = "x".repeat(SIZE_LIMIT);
    let refused = save_design(&path, &large).unwrap_err();
    assert!(matches!(refused, FileError::Outgrown { .. }), "{refused}");
    assert!(!path.exists());
}

#[test]
fn an_interrupted_save_leaves_the_old_file_whole() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    save_design(&path, &design("old")).unwrap();
    let broken = write_whole(&path, Place::Replace, |file| {
        file.write_all(b"(format: 1, na")?;
        Err(io::Error::other("the disk is full"))
    });
    let text = broken.unwrap_err().to_string();
    assert!(
        text.contains("the disk is full") && text.contains("ring.ron"),
        "{text}"
    );
    assert_eq!(open_design(&path).unwrap(), design("old"));
    assert_eq!(names_in(folder.path()), ["ring.ron"]);
}

#[test]
fn an_export_never_replaces_a_file_unless_told() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.png");
    export_bytes(&path, b"first", false).unwrap();
    let refused = export_bytes(&path, b"second", false).unwrap_err();
    assert!(matches!(refused, FileError::Exists(_)));
    assert_eq!(fs::read(&path).unwrap(), b"first");
    export_bytes(&path, b"second", true).unwrap();
    assert_eq!(fs::read(&path).unwrap(), b"second");
}

#[test]
fn what_cannot_be_a_design_is_refused_by_name() {
    let folder = tempfile::tempdir().unwrap();
    let path = |name: &str| folder.path().join(name);
    assert!(matches!(
        open_design(&path("none.ron")),
        Err(FileError::Missing(_))
    ));
    assert!(matches!(
        open_design(folder.path()),
        Err(FileError::Folder(_))
    ));
    assert!(matches!(
        save_design(folder.path(), &design("x")),
        Err(FileError::Folder(_))
    ));
    assert!(matches!(
        save_design(&path("no/such/ring.ron"), &design("x")),
        Err(FileError::NoFolder(_))
    ));

    fs::write(path("empty.ron"), "").unwrap();
    let empty = open_design(&path("empty.ron")).unwrap_err().to_string();
    assert!(
        empty.contains("empty.ron") && empty.contains("empty"),
        "{empty}"
    );

    fs::write(path("bytes.ron"), [0xff, 0xfe, 0x00]).unwrap();
    assert!(matches!(
        open_design(&path("bytes.ron")),
        Err(FileError::NotText(_))
    ));

    #[cfg(unix)]
    assert!(matches!(
        open_design(Path::new("/dev/zero")),
        Err(FileError::NotAFile(_))
    ));

    let large = File::create(path("large.ron")).unwrap();
    large.set_len(100_000_000).unwrap();
    assert!(matches!(
        open_design(&path("large.ron")),
        Err(FileError::TooLarge {
            bytes: 100_000_000,
            ..
        })
    ));
}

#[test]
fn a_typed_path_is_tidied_and_gets_its_extension() {
    assert_eq!(
        typed_path("  \"/tmp/a ring\" ", "ron").unwrap(),
        PathBuf::from("/tmp/a ring.ron")
    );
    assert_eq!(
        typed_path("/tmp/a.txt", "ron").unwrap(),
        PathBuf::from("/tmp/a.txt")
    );
    assert!(matches!(typed_path("  ", "ron"), Err(FileError::NoPath)));
}

#[cfg(unix)]
#[test]
fn a_link_stays_a_link_and_its_file_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let (real, link) = (
        folder.path().join("real.ron"),
        folder.path().join("link.ron"),
    );
    save_design(&real, &design("old")).unwrap();
    std::os::unix::fs::symlink(&real, &link).unwrap();
    save_design(&link, &design("new")).unwrap();
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert_eq!(open_design(&real).unwrap(), design("new"));
}
