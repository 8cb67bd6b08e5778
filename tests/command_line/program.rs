//! Running the program and reading what it answers.

use std::ffi::OsStr;
use std::path::PathBuf;
use std::process::{Command, Stdio};

use flangewright::document::{Design, read_design, write_ron};
use tempfile::TempDir;

/// What the program answered.
pub struct Answer {
    pub code: i32,
    pub out: String,
    pub err: String,
}

/// The program, its own folders turned away from those of whoever runs the tests.
pub fn command(home: &TempDir) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_flangewright"));
    for name in [
        "HOME",
        "XDG_CONFIG_HOME",
        "XDG_DATA_HOME",
        "XDG_STATE_HOME",
        "XDG_CACHE_HOME",
    ] {
        command.env(name, home.path());
    }
    command.stdin(Stdio::null());
    command
}

/// Runs the program to its end. It must never panic or be killed.
pub fn run<A: AsRef<OsStr>>(arguments: impl IntoIterator<Item = A>) -> Answer {
    let home = TempDir::new().unwrap();
    let output = command(&home).args(arguments).output().unwrap();
    let err = String::from_utf8(output.stderr).unwrap();
    assert!(!err.contains("panicked"), "{err}");
    Answer {
        code: output.status.code().expect("ended by a signal"),
        out: String::from_utf8(output.stdout).unwrap(),
        err,
    }
}

/// A folder with files of a test in it.
pub struct Bench {
    folder: TempDir,
}

impl Bench {
    pub fn new() -> Self {
        Self {
            folder: TempDir::new().unwrap(),
        }
    }

    pub fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    pub fn write(&self, name: &str, text: &str) -> PathBuf {
        let path = self.path(name);
        std::fs::write(&path, text).unwrap();
        path
    }

    /// The first demo design, changed, as a file.
    pub fn changed(&self, name: &str, change: impl FnOnce(&mut Design)) -> PathBuf {
        let mut design = demo_design("archive_portrait");
        change(&mut design);
        self.write(name, &write_ron(&design).unwrap())
    }
}

/// The path of a shipped demo.
pub fn demo(name: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join(format!("assets/demos/{name}.ron"))
}

/// A shipped demo as a design.
pub fn demo_design(name: &str) -> Design {
    read_design(&std::fs::read_to_string(demo(name)).unwrap()).unwrap()
}
