//! The list of changes of a collection: which file came to which version, when, and how. It lies in the collection's
//! `.revisions/changes`, a line a change, and is only ever added to.
//!
//! The list says in which order versions of different files followed one another, and how each came about. The texts are
//! with the versions: a line that names a version that was never kept (its save was killed) counts for nothing, and a
//! version without a line (of earlier programs, or of a copy that left the list behind) is put where its time belongs.

use std::fs::File;
use std::io::{self, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use jiff::Timestamp;

use crate::StoreError;
use crate::error::disk;
use crate::place::{REVISIONS_FOLDER, within};
use crate::read::read_text;
use crate::version::{from_key, key};
use crate::whole_save::lock_at;

/// How a version came about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// It was changed here.
    Edit,
    /// The last change was taken back.
    Undo,
    /// A change that was taken back was made again.
    Redo,
    /// An earlier version was put back.
    PutBack,
    /// It was found in the file, written there by hand or by another program.
    Outside,
}

impl Way {
    const WORDS: [(Self, &'static str); 5] = [
        (Self::Edit, "edit"),
        (Self::Undo, "undo"),
        (Self::Redo, "redo"),
        (Self::PutBack, "put-back"),
        (Self::Outside, "outside"),
    ];

    fn word(self) -> &'static str {
        let found = Self::WORDS.iter().find(|(way, _)| *way == self);
        found.map_or("edit", |(_, word)| word)
    }

    fn of(word: &str) -> Option<Self> {
        let found = Self::WORDS.iter().find(|(_, known)| *known == word);
        found.map(|(way, _)| *way)
    }
}

/// The list of a collection, for one of its files.
#[derive(Clone, Debug)]
pub(crate) struct Journal {
    path: PathBuf,
    file: String,
}

/// One line of the list.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Entry {
    pub(crate) at: Timestamp,
    pub(crate) way: Way,
    pub(crate) number: u32,
    pub(crate) id: String,
    pub(crate) file: String,
}

/// The largest list that is read: a line has about a hundred bytes.
const LARGEST_LIST: u64 = 64 * 1024 * 1024;

pub(crate) fn list_of(root: &Path) -> PathBuf {
    root.join(REVISIONS_FOLDER).join("changes")
}

impl Journal {
    /// `None` for a file whose name cannot stand in a line.
    pub(crate) fn of(root: &Path, real: &Path) -> Option<Self> {
        let file = within(root, real)?;
        let fits = !file.contains(char::is_control);
        fits.then(|| Self {
            path: list_of(root),
            file,
        })
    }

    pub(crate) fn file(&self) -> &str {
        &self.file
    }

    /// Adds a line, onto the disk.
    pub(crate) fn append(&self, entry: &Entry) -> Result<(), StoreError> {
        let folder = self.path.parent().unwrap_or(Path::new("."));
        std::fs::create_dir_all(folder).map_err(disk(folder))?;
        let _lock = lock_at(&folder.join("changes.lock"))?;
        let add = || -> io::Result<()> {
            let mut file = File::options()
                .create(true)
                .truncate(false)
                .read(true)
                .write(true)
                .open(&self.path)?;
            let end = file.seek(SeekFrom::End(0))?;
            let mut line = entry.line();
            // A line whose writer was killed half-way is ended, so that it spoils no other.
            if end > 0 {
                file.seek(SeekFrom::End(-1))?;
                let mut last = [0_u8];
                file.read_exact(&mut last)?;
                if last != *b"\n" {
                    line.insert(0, '\n');
                }
            }
            file.write_all(line.as_bytes())?;
            file.sync_data()
        };
        add().map_err(disk(&self.path))
    }
}

impl Entry {
    pub(crate) fn now(way: Way, file: &str, number: u32, id: &str) -> Self {
        Self {
            at: Timestamp::now(),
            way,
            number,
            id: id.to_owned(),
            file: file.to_owned(),
        }
    }

    fn line(&self) -> String {
        let version = key(self.number, &self.id);
        format!("{} {} {version} {}\n", self.at, self.way.word(), self.file)
    }

    fn of(line: &str) -> Option<Self> {
        let mut parts = line.splitn(4, ' ');
        let at = parts.next()?.parse().ok()?;
        let way = Way::of(parts.next()?)?;
        let (number, id) = from_key(parts.next()?)?;
        Some(Self {
            at,
            way,
            number,
            id: id.to_owned(),
            file: parts.next()?.to_owned(),
        })
    }
}

/// Every line of a collection's list that can be read, in its order.
pub(crate) fn entries(root: &Path) -> Vec<Entry> {
    let text = read_text(&list_of(root), LARGEST_LIST).unwrap_or_default();
    text.lines().filter_map(Entry::of).collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn entry(way: Way) -> Entry {
        Entry {
            at: "2026-11-30T18:00:00.25Z".parse().unwrap(),
            way,
            number: 12,
            id: "0123456789abcdef".to_owned(),
            file: "styles/ペア 1/style.toml".to_owned(),
        }
    }

    #[test]
    fn a_line_comes_back_as_it_went() {
        for (way, _) in Way::WORDS {
            assert_eq!(Entry::of(entry(way).line().trim_end()), Some(entry(way)));
        }
        for spoilt in [
            "",
            "x",
            "2026-11-30T18:00:00Z edit",
            "2026-11-30T18:00:00Z made 1-a f",
        ] {
            assert_eq!(Entry::of(spoilt), None, "{spoilt}");
        }
    }

    #[test]
    fn a_line_that_was_cut_off_spoils_no_other() {
        let folder = tempfile::tempdir().unwrap();
        let root = folder.path();
        let journal = Journal::of(root, &root.join("cloths.toml")).unwrap();
        journal.append(&entry(Way::Edit)).unwrap();
        let list = list_of(root);
        let mut text = std::fs::read_to_string(&list).unwrap();
        text.push_str("2026-11-30T18:00:01Z und");
        std::fs::write(&list, text).unwrap();
        journal.append(&entry(Way::Redo)).unwrap();
        assert_eq!(entries(root), [entry(Way::Edit), entry(Way::Redo)]);
    }
}
