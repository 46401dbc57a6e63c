//! A style whose file was broken outside: the last version of it that can be read, and the way back.

use std::path::Path;

use store::{VersionedFile, Way, list_versions};

use crate::load::{load_as, read_file, style_file};
use crate::save::save_over;
use crate::{Loaded, RevisionId, SaveError, Saved, read_revision};

/// The last version of a style that can be read, beside a file that cannot.
#[derive(Clone, Debug)]
pub struct Sound {
    /// The style as it was then, read against the collection as it is now.
    pub loaded: Loaded,
    broken: String,
}

/// What can be gone back to where a style's file cannot be read. `None` where the file can be, where it is no text, and
/// where no version is kept that can be read with the collection as it is.
#[must_use]
pub fn last_sound(style: &Path) -> Option<Sound> {
    let path = style_file(style).ok()?;
    let broken = read_file(&path).ok()?;
    if load_as(path.clone(), broken.clone()).is_ok() {
        return None;
    }
    let file = VersionedFile::new(&path);
    // What cannot be read is a version too, where the disk takes it.
    let _ = file.look();
    let kept = list_versions(&file).unwrap_or_default();
    let mut sound = kept
        .iter()
        .rev()
        .filter_map(|kept| read_revision(kept).ok())
        .filter_map(|text| load_as(path.clone(), text).ok());
    Some(Sound {
        loaded: sound.next()?,
        broken,
    })
}

impl Sound {
    /// Puts a text into the file in place of what cannot be read, which is kept as a version like any other.
    ///
    /// # Errors
    /// As [`save`](crate::save()): the text has problems, the file was changed meanwhile, or the disk refused.
    pub fn put_in(&self, text: &str) -> Result<Saved, SaveError> {
        let next = self.loaded.with_text(text)?;
        let held = RevisionId::of(&self.broken);
        save_over(&self.loaded.path, &held, next, Way::PutBack)
    }
}
