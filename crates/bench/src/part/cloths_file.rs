//! The collection's file of cloths as a page shows it.

use std::path::Path;

use style::{CLOTHS_FILE, RevisionId, VersionedFile};

use crate::file_words::FileWords;

/// The collection's file of cloths as it is now: its words, and the version that a change is meant for.
pub(crate) struct ClothsFile {
    pub(crate) written: FileWords,
    pub(crate) held: String,
}

impl ClothsFile {
    pub(crate) fn read(collection: &Path) -> Self {
        let path = collection.join(CLOTHS_FILE);
        let file = VersionedFile::new(&path);
        // What is shown has to be known when a change meant for it comes; where it cannot be kept, the change is refused.
        let text = match file.look() {
            Ok(now) => now.text,
            Err(_) => style::read_text(&path, style::LARGEST_FILE).unwrap_or_default(),
        };
        Self {
            held: RevisionId::of(&text).to_string(),
            written: FileWords::of(&text),
        }
    }
}
