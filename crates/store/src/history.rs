//! The versions of one file, in order.

use std::io;

use crate::error::disk;
use crate::names::{self, NOW, Names};
use crate::read::{LARGEST_FILE, read_text};
use crate::version::Shelf;
use crate::{NamesProblem, Revision, RevisionId, StoreError, VersionedFile};

/// The versions of a file that are kept, earliest first. The last is the text that was in the file when it was last
/// saved or looked at.
///
/// # Errors
/// The folder of versions is there and cannot be listed.
pub fn list_versions(file: &VersionedFile) -> io::Result<Vec<Revision>> {
    Ok(Shelf::of(file.versions())?.versions)
}

/// Every version of a file that is kept.
#[derive(Clone, Debug)]
pub struct History {
    versions: Vec<Revision>,
    /// Whether the last version is the one in the file: it is not where the file cannot be read, or is gone.
    present: bool,
    names: Names,
}

impl History {
    /// The history of a file, with what it holds now.
    ///
    /// # Errors
    /// The folder of versions cannot be listed.
    pub fn of(file: &VersionedFile) -> Result<Self, StoreError> {
        // Where a text that is new in the file cannot be kept, on a disk that takes nothing, what is kept is still told.
        let looked = file.look().map(|now| now.version.id);
        let now = looked.ok().or_else(|| {
            let text = read_text(file.path(), LARGEST_FILE).ok()?;
            Some(RevisionId::of(&text).as_str().to_owned())
        });
        let shelf = Shelf::of(file.versions()).map_err(disk(file.versions()))?;
        Ok(Self {
            present: shelf
                .last()
                .is_some_and(|last| Some(&last.id) == now.as_ref()),
            versions: shelf.versions,
            names: names::read(file.versions()),
        })
    }

    /// The versions, earliest first; the last is the one in the file, where the file can be read.
    #[must_use]
    pub fn versions(&self) -> &[Revision] {
        &self.versions
    }

    /// The version in the file.
    #[must_use]
    pub fn now(&self) -> Option<&Revision> {
        self.versions.last().filter(|_| self.present)
    }

    /// The version of a number.
    #[must_use]
    pub fn get(&self, number: u32) -> Option<&Revision> {
        let at = self
            .versions
            .binary_search_by_key(&number, |version| version.number);
        self.versions.get(at.ok()?)
    }

    /// The version before this one.
    #[must_use]
    pub fn before(&self, number: u32) -> Option<&Revision> {
        self.versions
            .iter()
            .rev()
            .find(|version| version.number < number)
    }

    /// The last version with the text that hashes to this.
    #[must_use]
    pub fn with_id(&self, id: &str) -> Option<&Revision> {
        self.versions.iter().rfind(|version| version.id == id)
    }

    /// The first version with the same text as this one, where that is an earlier one.
    #[must_use]
    pub fn same_as(&self, version: &Revision) -> Option<&Revision> {
        self.versions
            .iter()
            .find(|earlier| earlier.id == version.id)
            .filter(|earlier| earlier.number < version.number)
    }

    /// The version somebody means by its number ("12", "#12"), its name, or "now" for the one in the file.
    #[must_use]
    pub fn find(&self, words: &str) -> Option<&Revision> {
        let words = words.trim();
        if words == NOW {
            return self.now();
        }
        let named = || {
            self.versions
                .iter()
                .find(|version| self.name(version) == Some(words))
        };
        match words.strip_prefix('#').unwrap_or(words).parse() {
            Ok(number) => self.get(number),
            Err(_) => named(),
        }
    }

    /// The name the maker gave a version.
    #[must_use]
    pub fn name(&self, version: &Revision) -> Option<&str> {
        self.names.get(version)
    }

    /// Why names cannot be read, where the file they are in was spoilt; versions then have none.
    #[must_use]
    pub fn names_problem(&self) -> Option<&NamesProblem> {
        self.names.problem()
    }
}
