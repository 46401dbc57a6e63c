//! The workspace as text: its files, and what is code and what is test in them.

use std::fs;
use std::path::{Path, PathBuf};

/// The folder of the workspace.
///
/// # Panics
/// Never: this crate lies two folders below it.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .ancestors()
        .nth(2)
        .expect("this crate lies in crates/suite")
}

/// A file of a room's own code.
pub struct Source {
    /// The room, such as `draft`.
    pub room: String,
    /// Its path from the workspace's folder, with forward slashes.
    pub path: String,
    /// Everything in it.
    pub text: String,
}

impl Source {
    /// The lines that are part of the program: no comments, and nothing from the file's test module on.
    pub fn code(&self) -> impl Iterator<Item = &str> {
        let tests = self.path.ends_with("/tests.rs") || self.path.contains("/tests/");
        self.text
            .lines()
            .take_while(|line| line.trim() != "#[cfg(test)]")
            .filter(|line| !line.trim_start().starts_with("//"))
            .filter(move |_| !tests)
    }
}

/// Every Rust file of every room, in order; `part` is a folder of the crate such as `src` or `tests`.
///
/// # Panics
/// A file of the workspace cannot be read.
pub fn rust_files(part: &str) -> Vec<Source> {
    let crates = root().join("crates");
    let mut found = Vec::new();
    for folder in entries(&crates) {
        let room = name(&folder);
        for file in files_below(&folder.join(part)) {
            if file.extension().is_some_and(|ext| ext == "rs") {
                found.push(Source {
                    room: room.clone(),
                    path: shown(&file),
                    text: fs::read_to_string(&file).expect("source is UTF-8"),
                });
            }
        }
    }
    found
}

/// Every file below a folder, in order; none when it is not there.
///
/// # Panics
/// A folder cannot be read.
pub fn files_below(folder: &Path) -> Vec<PathBuf> {
    let mut found = Vec::new();
    if !folder.is_dir() {
        return found;
    }
    for entry in entries(folder) {
        if entry.is_dir() {
            found.extend(files_below(&entry));
        } else {
            found.push(entry);
        }
    }
    found
}

/// A path from the workspace's folder, with forward slashes.
pub fn shown(file: &Path) -> String {
    let file = file.strip_prefix(root()).unwrap_or(file);
    file.to_string_lossy().replace('\\', "/")
}

fn entries(folder: &Path) -> Vec<PathBuf> {
    let mut entries: Vec<PathBuf> = fs::read_dir(folder)
        .expect("a folder of the workspace can be read")
        .map(|entry| entry.expect("an entry can be read").path())
        .collect();
    entries.sort();
    entries
}

fn name(path: &Path) -> String {
    path.file_name()
        .unwrap_or_default()
        .to_string_lossy()
        .into_owned()
}
