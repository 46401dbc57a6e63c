//! A file with all its versions.
//!
//! Beside the file lies a folder with every text it had, the present one too, each under its number. A save
//!
//! 1. keeps what the file holds, where that was written by hand and is not kept yet,
//! 2. writes the new text as `pending-NNNN-ID.toml`,
//! 3. writes it beside the file and renames it over the file,
//! 4. renames the pending text to `NNNN-ID.toml`.
//!
//! A program that is killed in between leaves the file whole, as it was or as it was to become, and whoever looks next can
//! tell which: where the file holds the pending text the save was done, where it holds the one before it was not. So
//! nothing that was ever in the file can be lost, and nothing is taken for a change by hand that was none.

use std::fs;
use std::path::{Path, PathBuf};

use crate::error::disk;
use crate::journal::{Entry, Journal, Way};
use crate::place::{collection_of, real, versions_of};
use crate::read::{LARGEST_FILE, read_text};
use crate::version::{LATEST, PENDING, Shelf, UNFINISHED, key};
use crate::whole_save::{lock, sync_folder, take_time, write_whole};
use crate::{Revision, RevisionId, StoreError};

/// A file that is kept with all its versions.
#[derive(Clone, Debug)]
pub struct VersionedFile {
    path: PathBuf,
    versions: PathBuf,
    journal: Option<Journal>,
}

/// What a save did.
#[derive(Clone, Debug)]
pub struct Saved {
    /// The version before it; `None` when the text was the same and nothing was written.
    pub earlier: Option<Revision>,
    /// The version that is in the file now.
    pub now: Revision,
}

/// What is in a file.
#[derive(Clone, Debug)]
pub struct Look {
    /// Its text.
    pub text: String,
    /// The version that is.
    pub version: Revision,
    /// Whether it was found only now, written by somebody else over a version that was known.
    pub outside: bool,
}

impl VersionedFile {
    /// The file at a path; a link is followed, so that all ways to a file lead to the same versions.
    #[must_use]
    pub fn new(path: &Path) -> Self {
        let path = real(path);
        let folder = path.parent().unwrap_or(Path::new("."));
        Self {
            versions: versions_of(&path),
            journal: collection_of(folder).and_then(|root| Journal::of(&root, &path)),
            path,
        }
    }

    /// Where it really lies.
    #[must_use]
    pub fn path(&self) -> &Path {
        &self.path
    }

    /// The folder its versions lie in; it need not be there yet.
    #[must_use]
    pub fn versions(&self) -> &Path {
        &self.versions
    }

    /// What is in the file. A text that is not known yet is kept as a version first; one that was written over a known
    /// version came from outside.
    ///
    /// # Errors
    /// It is no text that can be read, or it is new and the disk does not take it.
    pub fn look(&self) -> Result<Look, StoreError> {
        let text = read_text(&self.path, LARGEST_FILE)?;
        let shelf = Shelf::of(&self.versions).map_err(disk(&self.versions))?;
        if let Some(version) = shelf.last()
            && version.id == RevisionId::of(&text).as_str()
            && !shelf.unsettled
            && shelf.pending.is_empty()
        {
            return Ok(Look {
                text,
                version: version.clone(),
                outside: false,
            });
        }
        self.make_folder()?;
        let _lock = lock(&self.versions)?;
        self.settle()
    }

    /// Saves a text over the one that is known by `held`.
    ///
    /// # Errors
    /// The file was changed by someone else meanwhile, it cannot be read, or the disk refused; it is then as it was.
    pub fn save(&self, held: &RevisionId, text: &str, way: Way) -> Result<Saved, StoreError> {
        self.refuse_read_only()?;
        self.make_folder()?;
        let _lock = lock(&self.versions)?;
        let there = self.settle()?;
        let id = RevisionId::of(text);
        if there.version.id != held.as_str() {
            return Err(self.refused(&there, text, &id)?);
        }
        if there.text == text {
            return Ok(Saved {
                earlier: None,
                now: there.version,
            });
        }
        let number = there.version.number.saturating_add(1);
        let name = key(number, id.as_str());
        let pending = self.versions.join(format!("{PENDING}{name}.toml"));
        write_whole(&pending, text, &self.versions)?;
        self.record(way, Some(&there.version), number, id.as_str())?;
        write_whole(&self.path, text, &self.versions)?;
        let path = self.versions.join(format!("{name}.toml"));
        // The save is done. A pending text that could not be renamed is renamed by whoever looks next.
        let kept = fs::rename(&pending, &path)
            .map(|()| path)
            .unwrap_or(pending);
        Ok(Saved {
            earlier: Some(there.version),
            now: Revision {
                number,
                id: id.as_str().to_owned(),
                path: kept,
            },
        })
    }

    /// Takes note of a change in the collection's list, where the file is in a collection.
    fn record(
        &self,
        way: Way,
        before: Option<&Revision>,
        number: u32,
        id: &str,
    ) -> Result<(), StoreError> {
        let (Some(journal), Some(_)) = (&self.journal, before) else {
            return Ok(());
        };
        journal.append(&Entry::now(way, journal.file(), number, id))
    }

    /// Keeps a refused text; gives the reason it was refused for.
    fn refused(&self, there: &Look, text: &str, id: &RevisionId) -> Result<StoreError, StoreError> {
        let number = there.version.number;
        let kept = self.versions.join(format!("refused-{number:04}-{id}.toml"));
        write_whole(&kept, text, &self.versions)?;
        Ok(StoreError::Stale {
            path: self.path.clone(),
            on_disk: RevisionId::of(&there.text),
            kept,
        })
    }

    /// Brings the versions up to what the file holds. Called with the lock held.
    fn settle(&self) -> Result<Look, StoreError> {
        let text = read_text(&self.path, LARGEST_FILE)?;
        let id = RevisionId::of(&text);
        // The lock is ours: whoever was writing this is gone.
        remove(&self.versions.join(UNFINISHED))?;
        let mut shelf = Shelf::of(&self.versions).map_err(disk(&self.versions))?;
        self.take_in_latest(&mut shelf)?;
        for pending in std::mem::take(&mut shelf.pending) {
            let whole = read_text(&pending.path, LARGEST_FILE)
                .is_ok_and(|text| RevisionId::of(&text).as_str() == pending.id);
            let never_there = pending.id != id.as_str()
                && shelf.last().is_some_and(|last| last.id == id.as_str());
            // Where somebody wrote over it by hand since, nobody knows whether it was in the file: it is kept.
            if whole && !never_there && pending.number == shelf.next_number() {
                let path = self.versions.join(format!("{}.toml", pending.key()));
                fs::rename(&pending.path, &path).map_err(disk(&path))?;
                shelf.versions.push(Revision { path, ..pending });
            } else {
                remove(&pending.path)?;
            }
        }
        if let Some(last) = shelf.last()
            && last.id == id.as_str()
        {
            return Ok(Look {
                text,
                version: last.clone(),
                outside: false,
            });
        }
        let number = shelf.next_number();
        let before = shelf.last();
        self.record(Way::Outside, before, number, id.as_str())?;
        let version = self.keep(&text, number, &self.path)?;
        Ok(Look {
            text,
            outside: before.is_some(),
            version,
        })
    }

    /// Earlier programs kept the version in the file apart from the others.
    fn take_in_latest(&self, shelf: &mut Shelf) -> Result<(), StoreError> {
        let latest = self.versions.join(LATEST);
        let Ok(text) = read_text(&latest, LARGEST_FILE) else {
            return Ok(());
        };
        let known = RevisionId::of(&text);
        if shelf.last().is_none_or(|last| last.id != known.as_str()) {
            let version = self.keep(&text, shelf.next_number(), &latest)?;
            shelf.versions.push(version);
        }
        remove(&latest)
    }

    /// Keeps a text under a number, with the time of the file it was found in.
    fn keep(&self, text: &str, number: u32, from: &Path) -> Result<Revision, StoreError> {
        let id = RevisionId::of(text);
        let path = self
            .versions
            .join(format!("{}.toml", key(number, id.as_str())));
        write_whole(&path, text, &self.versions)?;
        take_time(&path, from);
        Ok(Revision {
            number,
            id: id.as_str().to_owned(),
            path,
        })
    }

    pub(crate) fn make_folder(&self) -> Result<(), StoreError> {
        let folder = &self.versions;
        if !folder.is_dir() {
            fs::create_dir_all(folder).map_err(disk(folder))?;
            let above = folder.parent().unwrap_or(Path::new("."));
            sync_folder(above).map_err(disk(above))?;
        }
        Ok(())
    }

    /// A file its owner has locked against writing stays as it is, though a rename could replace it.
    fn refuse_read_only(&self) -> Result<(), StoreError> {
        let metadata = fs::metadata(&self.path).map_err(disk(&self.path))?;
        if metadata.permissions().readonly() {
            return Err(disk(&self.path)(std::io::Error::new(
                std::io::ErrorKind::PermissionDenied,
                "the file is marked read-only",
            )));
        }
        Ok(())
    }
}

fn remove(path: &Path) -> Result<(), StoreError> {
    match fs::remove_file(path) {
        Err(error) if error.kind() != std::io::ErrorKind::NotFound => Err(disk(path)(error)),
        _ => Ok(()),
    }
}
