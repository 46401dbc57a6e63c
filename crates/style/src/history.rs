//! The versions a style has had, in order, and where undo and redo lead among them.

use std::io;
use std::path::Path;

use crate::names::{self, Names};
use crate::save::{list_revisions, real};
use crate::{Loaded, REVISIONS_FOLDER, Report, Revision};

/// Every version of a style that is kept, and the one in its file.
#[derive(Clone, Debug)]
pub struct History {
    versions: Vec<Revision>,
    names: Names,
}

/// Where undo and redo lead: numbers of versions, the next one last.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Steps {
    /// What can be gone back to.
    pub back: Vec<u32>,
    /// What was gone back from.
    pub forward: Vec<u32>,
}

impl History {
    /// The history of a style; the text that was loaded is its last version.
    ///
    /// # Errors
    /// When the folder of revisions is there but cannot be listed.
    pub fn of(loaded: &Loaded) -> io::Result<Self> {
        let file = real(&loaded.path);
        let folder = file.parent().unwrap_or(Path::new("."));
        let mut versions = list_revisions(folder)?;
        let id = loaded.revision.as_str();
        // A save that died after keeping what it was to replace has kept the text that is still in the file.
        let number = match versions.pop_if(|last| last.id == id) {
            Some(same) => same.number,
            None => versions
                .last()
                .map_or(1, |last| last.number.saturating_add(1)),
        };
        versions.push(Revision {
            number,
            id: id.to_owned(),
            path: loaded.path.clone(),
        });
        let names = names::read(&folder.join(REVISIONS_FOLDER));
        Ok(Self { versions, names })
    }

    /// The versions, earliest first; the last is the one in the style file.
    #[must_use]
    pub fn versions(&self) -> &[Revision] {
        &self.versions
    }

    /// The version in the style file.
    #[must_use]
    pub fn now(&self) -> Option<&Revision> {
        self.versions.last()
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

    /// The version somebody means by its number ("12", "#12"), its name, or "now" for the style file.
    #[must_use]
    pub fn find(&self, words: &str) -> Option<&Revision> {
        let words = words.trim();
        if words == names::NOW {
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
    pub fn names_problem(&self) -> Option<&Report> {
        self.names.problem()
    }

    /// Where undo and redo lead from the version in the file, told from the texts alone.
    ///
    /// Taking a change back saves the text that was there before as a version of its own. So a version with the text
    /// that undo leads to at that point was an undo, one with the text that redo leads to a redo, and any other a change.
    #[must_use]
    pub fn steps(&self) -> Steps {
        let ids: Vec<&str> = self.versions.iter().map(|version| &*version.id).collect();
        let (back, forward) = steps(&ids);
        let numbers = |at: Vec<usize>| {
            at.into_iter()
                .filter_map(|at| Some(self.versions.get(at)?.number))
                .collect()
        };
        Steps {
            back: numbers(back),
            forward: numbers(forward),
        }
    }
}

/// The places in a run of texts that undo and redo lead to from its end.
pub(crate) fn steps(ids: &[&str]) -> (Vec<usize>, Vec<usize>) {
    let (mut back, mut forward): (Vec<usize>, Vec<usize>) = Default::default();
    let id = |at: Option<&usize>| at.and_then(|at| ids.get(*at));
    for (now, text) in ids.iter().enumerate().skip(1) {
        let before = now - 1;
        if ids.get(before) == Some(text) {
            continue;
        }
        if id(back.last()) == Some(text) {
            back.pop();
            forward.push(before);
        } else if id(forward.last()) == Some(text) {
            forward.pop();
            back.push(before);
        } else {
            back.push(before);
            forward.clear();
        }
    }
    (back, forward)
}

#[cfg(test)]
mod tests {
    use super::steps;

    /// The texts that undo and redo lead to.
    fn led(run: &str) -> (String, String) {
        let ids: Vec<&str> = run.split(' ').collect();
        let (back, forward) = steps(&ids);
        let text = |at: Vec<usize>| at.iter().map(|at| ids[*at]).collect();
        (text(back), text(forward))
    }

    #[test]
    fn undo_and_redo_are_told_from_the_texts() {
        let cases = [
            ("a", "", ""),
            ("a b c", "ab", ""),
            ("a b c b", "a", "c"),
            ("a b c b a", "", "cb"),
            ("a b c b a b", "a", "c"),
            ("a b c b a b c", "ab", ""),
            // A change after an undo ends what could be made again.
            ("a b c b d", "ab", ""),
            // A version of long ago put back is a change like any other.
            ("a b c a", "abc", ""),
        ];
        for (run, back, forward) in cases {
            assert_eq!(led(run), (back.to_owned(), forward.to_owned()), "{run}");
        }
    }
}
