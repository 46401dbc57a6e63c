//! What several tests share: the demo collection in a folder of its own.
#![allow(clippy::unwrap_used, dead_code)]

use std::path::PathBuf;

use style::{Collection, Loaded, Report};
use tempfile::TempDir;

/// A copy of the demo collection that a test may change.
pub struct Copy {
    pub folder: TempDir,
}

impl Copy {
    pub fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let copy = Self { folder };
        style::write_demo(&copy.root()).unwrap();
        copy
    }

    pub fn root(&self) -> PathBuf {
        self.folder.path().join("saltmarsh")
    }

    pub fn style(&self) -> PathBuf {
        self.root().join(style::demo::STYLE)
    }

    pub fn style_folder(&self) -> PathBuf {
        self.style().parent().unwrap().to_path_buf()
    }

    pub fn write(&self, path: &str, text: impl AsRef<[u8]>) {
        std::fs::write(self.root().join(path), text).unwrap();
    }

    pub fn load(&self) -> Result<Loaded, Report> {
        style::load(&self.style())
    }

    pub fn loaded(&self) -> Loaded {
        self.load().unwrap()
    }

    /// A report with this folder's own name taken out.
    pub fn render(&self, report: &Report) -> String {
        let root = std::fs::canonicalize(self.root()).unwrap();
        let text = report.render();
        let text = text.replace(&*root.to_string_lossy(), "saltmarsh");
        text.replace(&*self.root().to_string_lossy(), "saltmarsh")
    }
}

pub fn demo_text(path: &str) -> &'static str {
    let find = |(name, text): &(&str, &'static str)| (*name == path).then_some(*text);
    style::demo::files().iter().find_map(find).unwrap()
}

pub fn demo_style() -> &'static str {
    demo_text(style::demo::STYLE)
}

pub fn demo_collection() -> Collection {
    Copy::new().loaded().collection
}

/// The demo style's text with one part replaced; the part must be there.
pub fn with(from: &str, to: &str) -> String {
    assert!(demo_style().contains(from), "the demo has no {from:?}");
    demo_style().replacen(from, to, 1)
}
