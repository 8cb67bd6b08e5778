//! A full disk, a limit on the size of files, a folder that may not be written to.

use std::fs;
use std::path::Path;
use std::process::Command;
use std::time::{Duration, Instant};

use flangewright::app::files::{before_of, open_design, save_design};
use flangewright::app::kept_work::KeptWork;
use flangewright::app::recovery::{LeftBehind, PACE, Recovery};
use flangewright::document::{Design, demo_designs};

use crate::child::{Task, file, recovery};
use crate::cut_short::prepared;

/// A small disk of its own, taken away when it goes.
struct Disk(tempfile::TempDir);

impl Disk {
    /// None where this user may not make one; the reason is printed.
    fn new(size: &str) -> Option<Self> {
        let folder = tempfile::tempdir().unwrap();
        let options = format!("size={size}");
        let place = folder.path().to_str().unwrap();
        if mount(&["-t", "tmpfs", "-o", &options, "tmpfs", place]) {
            Some(Self(folder))
        } else {
            println!("not tried: this user may not mount a small disk of {size}");
            None
        }
    }

    fn path(&self) -> &Path {
        self.0.path()
    }

    fn only_read(&self) -> bool {
        mount(&["-o", "remount,ro", self.path().to_str().unwrap()])
    }
}

impl Drop for Disk {
    fn drop(&mut self) {
        let _gone = Command::new("umount").arg("-l").arg(self.path()).status();
    }
}

fn mount(arguments: &[&str]) -> bool {
    let done = Command::new("mount").args(arguments).output();
    done.is_ok_and(|output| output.status.success())
}

fn design(notes: &str) -> Design {
    let mut design = demo_designs().unwrap().remove(0);
    notes.clone_into(&mut design.notes);
    design
}

fn work(notes: &str) -> KeptWork {
    KeptWork {
        design: design(notes),
        from: None,
        seen: None,
    }
}

fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

#[test]
fn a_full_disk_leaves_the_old_file_and_says_so() {
    let Some(disk) = Disk::new("256k") else {
        return;
    };
    let path = disk.path().join("ring.ron");
    save_design(&path, &design("old")).unwrap();
    let large = "x".repeat(400_000);
    for _ in 0..3 {
        let refused = save_design(&path, &design(&large)).unwrap_err().to_string();
        assert!(
            refused.contains("ring.ron") && refused.to_lowercase().contains("space"),
            "{refused}"
        );
        assert_eq!(open_design(&path).unwrap(), design("old"));
        assert_eq!(
            names(disk.path()),
            ["ring.ron"],
            "nothing half written lies about"
        );
    }
    // Full to the last byte: nothing can be saved, nothing is lost, and once there is room it goes on.
    let filler = disk.path().join("filler");
    fs::write(&filler, vec![0_u8; 300_000]).unwrap_err();
    assert!(save_design(&path, &design("new")).is_err());
    assert_eq!(open_design(&path).unwrap(), design("old"));
    fs::remove_file(&filler).unwrap();
    save_design(&path, &design("new")).unwrap();
    assert_eq!(open_design(&path).unwrap(), design("new"));
    assert_eq!(open_design(&before_of(&path)).unwrap(), design("old"));
}

#[test]
fn unsaved_work_on_a_full_disk_is_told_of_and_kept_once_there_is_room() {
    let Some(disk) = Disk::new("256k") else {
        return;
    };
    let keeping = Recovery::begin(disk.path(), PACE).unwrap();
    keeping.keep(1, work("first"), None);
    wait_for(|| names(disk.path()).len() == 2);
    let filler = disk.path().join("filler");
    fs::write(&filler, vec![0_u8; 300_000]).unwrap_err();
    keeping.keep(1, work("second"), None);
    wait_for(|| keeping.fault().is_some());
    fs::remove_file(&filler).unwrap();
    drop(keeping);
    let left = LeftBehind::in_folder(disk.path()).unwrap();
    assert_eq!(left.found.len(), 1);
    assert_eq!(left.found[0].work.as_ref().unwrap(), &work("second"));
}

#[test]
fn a_folder_that_may_not_be_written_to_leaves_everything_and_says_so() {
    let Some(disk) = Disk::new("256k") else {
        return;
    };
    let path = disk.path().join("ring.ron");
    save_design(&path, &design("old")).unwrap();
    if !disk.only_read() {
        println!("not tried: this user may not make a disk read-only");
        return;
    }
    let refused = save_design(&path, &design("new")).unwrap_err().to_string();
    assert!(refused.contains("ring.ron"), "{refused}");
    assert_eq!(open_design(&path).unwrap(), design("old"));
    assert!(Recovery::begin(&disk.path().join("recovery"), PACE).is_err());
    assert!(
        LeftBehind::in_folder(&disk.path().join("recovery"))
            .unwrap()
            .is_empty()
    );
}

/// `ulimit -f` counts blocks of 512 bytes: two of them hold no design.
#[test]
fn a_limit_on_the_size_of_files_is_a_fault_and_no_end() {
    let folder = prepared();
    let before = open_design(&file(folder.path())).unwrap();
    let limit = "trap '' XFSZ; ulimit -f 2";
    let mut process = Task::start("work at full speed", folder.path(), 1, Some(limit));
    let mut faults = 0;
    while let Some(line) = process.line() {
        faults += usize::from(line.starts_with("fault"));
        if faults >= 3 {
            break;
        }
    }
    assert!(process.process.try_wait().unwrap().is_none(), "it goes on");
    process.cut_short();
    assert_eq!(faults, 3);
    assert_eq!(open_design(&file(folder.path())).unwrap(), before);
    let left = LeftBehind::in_folder(&recovery(folder.path())).unwrap();
    assert!(left.found.iter().all(|found| found.work.is_ok()));
}

fn wait_for(is_so: impl Fn() -> bool) {
    let begun = Instant::now();
    while !is_so() {
        assert!(begun.elapsed() < Duration::from_secs(5));
        std::thread::sleep(Duration::from_millis(5));
    }
}
