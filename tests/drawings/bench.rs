//! The demo designs evaluated, and the programs that look at the files.

use std::path::{Path, PathBuf};
use std::process::Command;

use flangewright::document::{Design, read_design};
use flangewright::drawing::export::{ExportOptions, Format, bytes};
use flangewright::evaluate::{Evaluation, evaluate};
use flangewright::workshop::Workshop;

pub const DEMOS: [&str; 4] = [
    "archive_portrait",
    "cine_interface",
    "four_clashes",
    "tall_ring",
];

pub fn package(path: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join(path)
}

pub fn demo(name: &str) -> Design {
    let path = package(&format!("assets/demos/{name}.ron"));
    read_design(&std::fs::read_to_string(path).unwrap()).unwrap()
}

pub fn evaluated(design: &Design) -> Evaluation {
    evaluate(design, &Workshop::default_set().unwrap())
}

pub fn file(name: &str, format: Format, options: &ExportOptions) -> Vec<u8> {
    let design = demo(name);
    bytes(&design, &evaluated(&design), format, options).unwrap()
}

pub fn template() -> ExportOptions {
    ExportOptions {
        template: true,
        ..ExportOptions::default()
    }
}

/// A folder with a file of these bytes in it; it goes when it is dropped.
pub fn on_disk(name: &str, bytes: &[u8]) -> (tempfile::TempDir, PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(name);
    std::fs::write(&path, bytes).unwrap();
    (folder, path)
}

/// What a program prints; it must end well.
pub fn printed(command: &mut Command) -> String {
    let output = command
        .output()
        .unwrap_or_else(|error| panic!("{command:?}: {error}"));
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{command:?}: {complaint}");
    String::from_utf8(output.stdout).unwrap()
}

/// What one of our scripts prints about a file.
pub fn python(script: &str, file: &Path) -> String {
    let interpreter = std::env::var("FLANGEWRIGHT_PYTHON").unwrap_or_else(|_| "python3".to_owned());
    printed(
        Command::new(interpreter)
            .arg(package(&format!("tests/drawings/{script}")))
            .arg(file),
    )
}
