use super::*;
use crate::mount::{Body, Lens};

fn work(from: Option<&str>) -> KeptWork {
    KeptWork {
        design: Design {
            name: "mine".to_owned(),
            ..Design::new(Lens::default(), Body::default())
        },
        from: from.map(PathBuf::from),
        seen: from.map(Seen::of),
    }
}

#[test]
fn unsaved_work_comes_back_with_its_file_and_what_was_seen_there() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kept.ron");
    for from in [None, Some("/home/a b/ring 100%\n🔭.ron")] {
        work(from).write(&path).unwrap();
        let found = Found::at(path.clone());
        assert_eq!(found.work.unwrap(), work(from));
        // It is a design file as well.
        assert_eq!(files::open_design(&path).unwrap(), work(from).design);
    }
}

#[test]
fn a_plain_design_file_serves_and_a_broken_one_says_why() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kept.ron");
    files::save_design(&path, &work(None).design).unwrap();
    assert_eq!(Found::at(path.clone()).work.unwrap(), work(None));
    files::replace_text(&path, "(format: 1, na").unwrap();
    let found = Found::at(path);
    assert!(found.work.as_ref().unwrap_err().contains("line 1"));
    assert!(found.name().contains("kept.ron"));
}

#[test]
fn work_that_is_in_its_file_is_no_unsaved_work() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("ring.ron");
    let mut work = work(path.to_str());
    assert!(!work.is_in_its_file());
    files::save_design(&path, &work.design).unwrap();
    assert!(work.is_in_its_file());
    work.design.notes.push('x');
    assert!(!work.is_in_its_file());
}

#[test]
fn moments_read_as_a_clock_and_calendar_show_them() {
    // The Unix time that the rationale of POSIX works out, 1986-12-31 23:59:59 (from memory).
    let at = |seconds| UNIX_EPOCH + Duration::from_secs(seconds);
    assert_eq!(moment_words(at(0)), "1970-01-01 00:00 UTC");
    assert_eq!(moment_words(at(536_457_599)), "1986-12-31 23:59 UTC");
    // 2000 was a leap year, 951782400 its 29 February (general library: Python's datetime).
    assert_eq!(moment_words(at(951_782_400)), "2000-02-29 00:00 UTC");
    assert_eq!(moment_words(at(1_000_000_000)), "2001-09-09 01:46 UTC");
    assert_eq!(span_words(Duration::from_secs(59)), "59 seconds");
    assert_eq!(span_words(Duration::from_mins(1)), "1 minute");
    assert_eq!(span_words(Duration::from_hours(25)), "1 day");
}
