//! Two hundred processes cut short while they save and keep unsaved work: the file is always whole, and at most two
//! seconds of work are lost.

use std::fs;
use std::path::Path;
use std::thread::sleep;
use std::time::{Duration, Instant};

use flangewright::app::files::{before_of, open_design};
use flangewright::app::recovery::LeftBehind;
use flangewright::document::{Design, demo_designs, write_ron};

use crate::child::{Task, file, recovery};

/// What may be lost.
const LOST: Duration = Duration::from_secs(2);

pub fn prepared() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let mut design = demo_designs().unwrap().remove(0);
    "0 ".clone_into(&mut design.notes);
    fs::write(file(folder.path()), write_ron(&design).unwrap()).unwrap();
    folder
}

/// The number of the edit that a design holds.
fn number(design: &Design) -> u64 {
    design.notes.split(' ').next().unwrap().parse().unwrap()
}

/// What a process said before it was cut short, with the moment at which it was heard.
struct Heard {
    edits: Vec<(u64, Instant)>,
    saved: u64,
}

/// Lets a process work until it has said its first edit and then for `moment`, and cuts it short.
fn cut_after(task: &str, folder: &Path, pause_ms: u64, moment: Duration) -> (Heard, Instant) {
    let mut process = Task::start(task, folder, pause_ms, None);
    let mut heard = Heard {
        edits: Vec::new(),
        saved: 0,
    };
    let first = process.line();
    assert_eq!(first.as_deref(), Some("edit 1"));
    let begun = Instant::now();
    heard.edits.push((1, begun));
    // A thread of its own cuts it short at its moment, whatever it is doing.
    let id = process.process.id();
    let cutter = std::thread::spawn(move || {
        sleep(moment);
        let killed = std::process::Command::new("kill")
            .args(["-KILL", &id.to_string()])
            .status();
        assert!(killed.unwrap().success());
        Instant::now()
    });
    while let Some(line) = process.line() {
        let (word, number) = line.split_once(' ').unwrap();
        match word {
            "edit" => heard.edits.push((number.parse().unwrap(), Instant::now())),
            "save" => heard.saved = number.parse().unwrap(),
            _ => panic!("{line}"),
        }
    }
    process.process.wait().unwrap();
    (heard, cutter.join().unwrap())
}

/// Looks at what is left, and gives the number of the last edit that can be had again.
fn found_again(folder: &Path, heard: &Heard) -> u64 {
    let saved = open_design(&file(folder)).expect("the file is whole");
    assert!(
        number(&saved) >= heard.saved,
        "a save that was told of is not there"
    );
    if before_of(&file(folder)).exists() {
        open_design(&before_of(&file(folder))).expect("the version before is whole");
    }
    let left = LeftBehind::in_folder(&recovery(folder)).unwrap();
    let kept = left.found.iter().map(|found| {
        let work = found
            .work
            .as_ref()
            .expect("the copy of unsaved work is whole");
        assert_eq!(work.from.as_deref(), Some(file(folder).as_path()));
        number(&work.design)
    });
    kept.max().unwrap_or(0).max(number(&saved))
}

fn check_loss(heard: &Heard, again: u64, cut: Instant) {
    // The first edit that is lost was told of at most two seconds before the cut.
    let lost = heard.edits.iter().find(|(number, _)| *number > again);
    if let Some((number, told)) = lost {
        let ago = cut.saturating_duration_since(*told);
        assert!(
            ago <= LOST,
            "edit {number} was made {ago:?} before the cut and is lost"
        );
    }
}

#[test]
fn two_hundred_processes_cut_short_leave_whole_files() {
    let folder = prepared();
    let mut state = 0x2545_f491_4f6c_dd1d_u64;
    let mut edits = 0;
    for _ in 0..200 {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        let moment = Duration::from_micros(state % 60_000);
        let (heard, cut) = cut_after("work at full speed", folder.path(), 0, moment);
        edits += heard.edits.len();
        let again = found_again(folder.path(), &heard);
        check_loss(&heard, again, cut);
        // The next one begins anew: what was kept is dealt with, as by one who restores and saves.
        let _removed = fs::remove_dir_all(recovery(folder.path()));
        let mut design = open_design(&file(folder.path())).unwrap();
        "0 ".clone_into(&mut design.notes);
        fs::write(file(folder.path()), write_ron(&design).unwrap()).unwrap();
    }
    let stray: Vec<_> = fs::read_dir(folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name())
        .filter(|name| name.to_string_lossy().starts_with(".flangewright-"))
        .collect();
    println!(
        "200 cut short in {edits} edits; {} unfinished files lie about",
        stray.len()
    );
}

/// At the pace of the window, an edit each 30 ms: what is lost is measured.
#[test]
fn at_the_pace_of_the_window_at_most_two_seconds_are_lost() {
    let mut worst = Duration::ZERO;
    for moment_ms in [1_700, 2_350, 3_100] {
        let folder = prepared();
        let moment = Duration::from_millis(moment_ms);
        let (heard, cut) = cut_after("work", folder.path(), 30, moment);
        let again = found_again(folder.path(), &heard);
        check_loss(&heard, again, cut);
        let lost = heard.edits.iter().find(|(number, _)| *number > again);
        worst = worst.max(lost.map_or(Duration::ZERO, |(_, told)| {
            cut.saturating_duration_since(*told)
        }));
    }
    println!("at the pace of the window at most {worst:?} were lost");
}
