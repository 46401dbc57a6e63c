//! One version of a file, and the files versions are kept in: `NNNN-ID.toml`, by number and by what the text hashes to.

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

use crate::read::{LARGEST_FILE, read_text};
use crate::{RevisionId, StoreError};

/// One kept version of a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Revision {
    /// Its number, from 1.
    pub number: u32,
    /// What its text hashes to.
    pub id: String,
    /// Where it is kept. That file has the time at which the version was written.
    pub path: PathBuf,
}

impl Revision {
    /// Its name among the versions: number and id.
    #[must_use]
    pub fn key(&self) -> String {
        key(self.number, &self.id)
    }
}

pub(crate) fn key(number: u32, id: &str) -> String {
    format!("{number:04}-{id}")
}

/// Number and id out of a name as [`key`] writes it.
pub(crate) fn from_key(key: &str) -> Option<(u32, &str)> {
    let (number, id) = key.split_once('-')?;
    Some((number.parse().ok()?, id))
}

/// What lies in a folder of versions.
#[derive(Debug, Default)]
pub(crate) struct Shelf {
    /// The versions, earliest first.
    pub(crate) versions: Vec<Revision>,
    /// A save that has begun: the version its text is to become, and whether that file is whole nobody knows yet.
    pub(crate) pending: Vec<Revision>,
    /// Whether something else lies there that a save left unfinished or an earlier program kept in another way.
    pub(crate) unsettled: bool,
}

/// How the file of a save that has begun is called, before its name as a version.
pub(crate) const PENDING: &str = "pending-";
/// Where a text is written before it is renamed into place.
pub(crate) const UNFINISHED: &str = "unfinished";
/// Where the text that was saved last was kept before the version in the file had a file of its own.
pub(crate) const LATEST: &str = "latest.toml";

impl Shelf {
    /// Lists a folder of versions; one that is not there has none.
    pub(crate) fn of(folder: &Path) -> io::Result<Self> {
        let mut shelf = Self::default();
        let entries = match fs::read_dir(folder) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(shelf),
            entries => entries?,
        };
        for entry in entries {
            let entry = entry?;
            let name = entry.file_name();
            let Some(name) = name.to_str() else { continue };
            if [UNFINISHED, LATEST].contains(&name) {
                shelf.unsettled = true;
                continue;
            }
            let Some(name) = name.strip_suffix(".toml") else {
                continue;
            };
            let (whole, name) = match name.strip_prefix(PENDING) {
                Some(name) => (false, name),
                None => (true, name),
            };
            let Some((number, id)) = from_key(name) else {
                continue;
            };
            let version = Revision {
                number,
                id: id.to_owned(),
                path: entry.path(),
            };
            if whole {
                shelf.versions.push(version);
            } else {
                shelf.pending.push(version);
            }
        }
        let order = |a: &Revision, b: &Revision| (a.number, &a.id).cmp(&(b.number, &b.id));
        shelf.versions.sort_by(order);
        shelf.pending.sort_by(order);
        Ok(shelf)
    }

    pub(crate) fn last(&self) -> Option<&Revision> {
        self.versions.last()
    }

    pub(crate) fn next_number(&self) -> u32 {
        self.last().map_or(1, |last| last.number.saturating_add(1))
    }
}

/// The text of a kept version.
///
/// # Errors
/// It cannot be read, or is no longer what it was when it was kept.
pub fn read_version(version: &Revision) -> Result<String, StoreError> {
    let text = read_text(&version.path, LARGEST_FILE)?;
    if RevisionId::of(&text).as_str() != version.id {
        return Err(StoreError::Changed(version.path.clone()));
    }
    Ok(text)
}
