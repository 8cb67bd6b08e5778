//! The other process: it works on a design with the program's own code for saving and for keeping unsaved work, and
//! says on its output what it has done.

use std::env;
use std::io::{BufRead as _, BufReader, Write as _, stdout};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdout, Command, Stdio};
use std::time::Duration;

use flangewright::app::edit::Edit;
use flangewright::app::recovery::Recovery;
use flangewright::app::workspace::Workspace;
use flangewright::workshop::Workshop;

/// What the other process is to do: the name of the task, and the folder it works in.
const TASK: &str = "FLANGEWRIGHT_TASK";
const FOLDER: &str = "FLANGEWRIGHT_TASK_FOLDER";
/// The pause between two edits, ms; none without it.
const PAUSE: &str = "FLANGEWRIGHT_TASK_PAUSE_MS";

/// The file that is saved.
pub fn file(folder: &Path) -> PathBuf {
    folder.join("ring.ron")
}

/// Where unsaved work is kept.
pub fn recovery(folder: &Path) -> PathBuf {
    folder.join("recovery")
}

/// A task in a process of its own.
pub struct Task {
    pub process: Child,
    pub said: BufReader<ChildStdout>,
}

impl Task {
    /// Starts one. `before` is put in front of the program, such as a shell that sets limits.
    pub fn start(name: &str, folder: &Path, pause_ms: u64, before: Option<&str>) -> Self {
        let own = env::current_exe().unwrap();
        let arguments = [
            "--exact",
            "child::does_its_task",
            "--ignored",
            "--nocapture",
        ];
        let mut command = match before {
            Some(script) => {
                let mut shell = Command::new("sh");
                shell
                    .args(["-c", &format!("{script}; exec \"$0\" \"$@\"")])
                    .arg(own);
                shell
            }
            None => Command::new(own),
        };
        let mut process = command
            .args(arguments)
            .env(TASK, name)
            .env(FOLDER, folder)
            .env(PAUSE, pause_ms.to_string())
            .stdout(Stdio::piped())
            .stderr(Stdio::inherit())
            .spawn()
            .unwrap();
        let said = BufReader::new(process.stdout.take().unwrap());
        Self { process, said }
    }

    /// The next line that the task itself said; none when it has ended.
    pub fn line(&mut self) -> Option<String> {
        loop {
            let mut line = String::new();
            if self.said.read_line(&mut line).unwrap_or(0) == 0 {
                return None;
            }
            // What the test program says around it begins otherwise.
            if let Some(said) = line.trim_end().strip_prefix("> ") {
                return Some(said.to_owned());
            }
        }
    }

    /// Cuts it short: no warning, no last words.
    pub fn cut_short(&mut self) {
        self.process.kill().unwrap();
        self.process.wait().unwrap();
    }
}

fn say(words: &str) {
    let mut out = stdout().lock();
    writeln!(out, "> {words}").unwrap();
    out.flush().unwrap();
}

fn workspace(folder: &Path) -> Workspace {
    let workshop = Workshop::default_set().unwrap();
    Workspace::opened(&file(folder), workshop).unwrap()
}

fn count(workspace: &mut Workspace, number: u64) {
    let notes = format!("{number} {}", "shavings ".repeat((number % 300) as usize));
    workspace.edit(&Edit::Notes(notes)).unwrap();
}

/// Edits without end; each is kept, each seventh is saved.
fn work(folder: &Path, pace: Duration) {
    let pause = env::var(PAUSE)
        .unwrap()
        .parse()
        .map(Duration::from_millis)
        .unwrap();
    let keeping = Recovery::begin(&recovery(folder), pace).unwrap();
    let mut workspace = workspace(folder);
    for number in 1.. {
        count(&mut workspace, number);
        keeping.keep(workspace.number(), workspace.kept_work(), None);
        say(&format!("edit {number}"));
        if number % 7 == 0 {
            match workspace.save_to(&file(folder)) {
                Ok(_) => {
                    keeping.forget(workspace.number());
                    say(&format!("save {number}"));
                }
                Err(error) => say(&format!("fault {error}")),
            }
        }
        if let Some(error) = keeping.fault() {
            say(&format!("fault {error}"));
        }
        std::thread::sleep(pause);
    }
}

/// Adds its own lines to a file that another process adds to as well.
fn share(folder: &Path, name: &str) {
    let mut workspace = workspace(folder);
    for number in 0..40 {
        loop {
            let notes = format!("{}{name}{number}\n", workspace.design().notes);
            workspace.edit(&Edit::Notes(notes)).unwrap();
            let locks = flangewright::app::file_locks::FileLocks::in_folder(folder);
            match locks.save(&mut workspace, &file(folder)) {
                Ok(_) => break,
                Err(error) => {
                    assert!(
                        error.to_string().contains("changed")
                            || error.to_string().contains("at this moment"),
                        "{error}"
                    );
                    workspace.take_theirs().unwrap();
                }
            }
        }
    }
}

/// Does the task of a process that was started by the tests; alone it has nothing to do.
#[test]
#[ignore = "started by the other tests as a process of its own"]
fn does_its_task() {
    let Ok(task) = env::var(TASK) else { return };
    let folder = PathBuf::from(env::var_os(FOLDER).unwrap());
    match task.as_str() {
        "work at full speed" => work(&folder, Duration::ZERO),
        "work" => work(&folder, flangewright::app::recovery::PACE),
        "share a" => share(&folder, "a"),
        "share b" => share(&folder, "b"),
        other => panic!("no task is called {other}"),
    }
}
