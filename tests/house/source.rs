//! The project's own source files, read from the folder of the package.

use std::fs;
use std::path::{Path, PathBuf};

/// A source file: its path from the package's folder, with `/` on every system, and its text.
pub struct Source {
    pub path: String,
    pub text: String,
}

/// Every Rust file under `folder`, in the order of their paths.
pub fn rust_files(folder: &str) -> Vec<Source> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut paths = Vec::new();
    collect(&top.join(folder), &mut paths);
    paths.sort();
    paths
        .into_iter()
        .map(|path| Source {
            path: path
                .strip_prefix(top)
                .unwrap()
                .to_str()
                .unwrap()
                .replace('\\', "/"),
            text: fs::read_to_string(&path).unwrap(),
        })
        .collect()
}

fn collect(folder: &Path, paths: &mut Vec<PathBuf>) {
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            collect(&path, paths);
        } else if path.extension().is_some_and(|end| end == "rs") {
            paths.push(path);
        }
    }
}

impl Source {
    /// Whether the file holds nothing but tests of the file beside it.
    pub fn is_tests(&self) -> bool {
        self.path.ends_with("_tests.rs")
    }
}

/// A text file of the package.
pub fn text_of(path: &str) -> String {
    fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap()
}

/// The text without what stands behind `//`, so that a comment may name anything.
pub fn without_comments(text: &str) -> String {
    let lines: Vec<&str> = text
        .lines()
        .map(|line| line.split("//").next().unwrap_or(""))
        .collect();
    lines.join("\n")
}
