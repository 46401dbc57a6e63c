//! Running the program in tests.
#![allow(dead_code)] // each test file uses its own part

use std::ffi::OsStr;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;

use tempfile::TempDir;

/// The program, not yet run.
pub fn fellwork() -> Command {
    Command::new(env!("CARGO_BIN_EXE_fellwork"))
}

/// Runs the program to its end.
pub fn run<S: AsRef<OsStr>>(args: impl IntoIterator<Item = S>) -> Output {
    fellwork().args(args).output().unwrap()
}

/// What it printed.
pub fn stdout(output: &Output) -> String {
    String::from_utf8(output.stdout.clone()).unwrap()
}

/// What it complained.
pub fn stderr(output: &Output) -> String {
    String::from_utf8(output.stderr.clone()).unwrap()
}

/// Its exit code.
pub fn code(output: &Output) -> i32 {
    output.status.code().unwrap()
}

/// A demo of the test's own, to change.
pub struct Demo {
    folder: TempDir,
}

impl Demo {
    pub fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        style::write_demo(&folder.path().join("saltmarsh")).unwrap();
        Self { folder }
    }

    /// A demo whose style text is changed; the change must change something.
    pub fn with(from: &str, to: &str) -> Self {
        let demo = Self::new();
        let text = std::fs::read_to_string(demo.style_file()).unwrap();
        assert!(text.contains(from), "{from}");
        std::fs::write(demo.style_file(), text.replacen(from, to, 1)).unwrap();
        demo
    }

    pub fn root(&self) -> &Path {
        self.folder.path()
    }

    pub fn collection(&self) -> PathBuf {
        self.root().join("saltmarsh")
    }

    pub fn style(&self) -> PathBuf {
        self.collection().join("styles/ferryman")
    }

    pub fn style_file(&self) -> PathBuf {
        self.style().join("style.toml")
    }
}

/// One demo for the tests that only read it.
pub fn demo() -> &'static Demo {
    static DEMO: OnceLock<Demo> = OnceLock::new();
    DEMO.get_or_init(Demo::new)
}

/// The names in a folder, hidden ones too.
pub fn names(folder: &Path) -> Vec<String> {
    let mut names: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .collect();
    names.sort();
    names
}
