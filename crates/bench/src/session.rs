//! A style being worked on: its text, the states before and after it, and what was last worked out.

use std::path::Path;
use std::sync::Arc;

use style::{ArtPath, Edit, Loaded, Report, SaveError, Size};
use trade::System;

use crate::garment::Worked;
use crate::written::Written;

/// How many worked-out garments are kept. One is a few hundred kilobytes; a maker flips between a few sizes.
const KEPT_GARMENTS: usize = 12;

/// One style, its file, and the session's history.
pub(crate) struct Session {
    loaded: Loaded,
    /// What changes are compared with: the style as the session found it, or as the maker marked it.
    since: Loaded,
    marked: bool,
    /// The files of the collection and of the style as they were when `loaded` was read from them.
    files: Vec<Option<Vec<u8>>>,
    written: Written,
    undo: Vec<State>,
    redo: Vec<State>,
    garments: Vec<(String, Size, Arc<Worked>)>,
}

/// Where drawings lie beside a style.
const ART_FOLDER: &str = "art";

/// Which way through the history.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Way {
    /// The last change is taken back.
    Back,
    /// The change last taken back is made again.
    Forward,
}

impl Way {
    const fn turned(self) -> Self {
        match self {
            Self::Back => Self::Forward,
            Self::Forward => Self::Back,
        }
    }
}

/// A text the file had, and the change between it and the state next to it, in words.
pub(crate) struct State {
    text: String,
    pub(crate) words: String,
}

/// How the file on disk stands against the session.
pub(crate) enum Disk {
    /// It is what the session holds.
    Same,
    /// Somebody changed it: the sound new version, and what changed in words.
    Changed(Box<Loaded>, Vec<String>),
    /// Somebody changed it and it now has problems.
    Broken(Report),
}

/// Why a change was not made. The file is as it was.
#[derive(Debug)]
pub(crate) enum Refused {
    /// The changed text would have these problems.
    Problems(Report),
    /// The file on disk is not the one the session holds.
    Stale,
    /// There is nothing to undo or redo.
    Nothing,
    /// Anything else, in words.
    Failed(String),
}

impl Session {
    pub(crate) fn new(loaded: Loaded) -> Self {
        Self {
            // Unlike any folder, so that the first look at the disk reads everything.
            files: Vec::new(),
            written: Written::of(&loaded.text),
            since: loaded.clone(),
            marked: false,
            loaded,
            undo: Vec::new(),
            redo: Vec::new(),
            garments: Vec::new(),
        }
    }

    pub(crate) fn loaded(&self) -> &Loaded {
        &self.loaded
    }

    pub(crate) fn written(&self) -> &Written {
        &self.written
    }

    /// Changes that can be taken back, the latest last.
    pub(crate) fn done(&self) -> &[State] {
        &self.undo
    }

    /// The change that would be made again.
    pub(crate) fn undone(&self) -> Option<&State> {
        self.redo.last()
    }

    /// The garment in a size, worked out once for each text.
    pub(crate) fn garment(&mut self, size: Size) -> Arc<Worked> {
        kept(&mut self.garments, &self.loaded, size)
    }

    /// The garment that changes are compared with.
    pub(crate) fn since(&mut self, size: Size) -> Arc<Worked> {
        kept(&mut self.garments, &self.since, size)
    }

    /// Whether that is the maker's own mark.
    pub(crate) fn is_marked(&self) -> bool {
        self.marked
    }

    /// From now on changes are compared with the style as it is.
    pub(crate) fn mark(&mut self) {
        self.since = self.loaded.clone();
        self.marked = true;
    }

    /// Reads the file again and compares. Cloths, yarns and trims that changed are taken over at once: they are not
    /// written here.
    pub(crate) fn look_at_disk(&mut self) -> Disk {
        let files = collection_files(&self.loaded.collection_folder);
        let text = std::fs::read(&self.loaded.path).ok();
        if files == self.files && text.as_deref() == Some(self.loaded.text.as_bytes()) {
            return Disk::Same;
        }
        // Until it is read and sound, the next look has to read it again.
        self.files.clear();
        match style::load(&self.loaded.path) {
            Ok(on_disk) if on_disk.text == self.loaded.text => {
                self.files = files;
                if on_disk.collection != self.loaded.collection {
                    // Cloths and yarns are not what a change of the style is measured by.
                    self.since.collection = on_disk.collection.clone();
                    self.loaded = on_disk;
                    self.garments.clear();
                }
                Disk::Same
            }
            Ok(on_disk) => {
                let changes = style::difference(&self.loaded.style, &on_disk.style);
                let words = changes.into_iter().map(|change| change.sentence).collect();
                Disk::Changed(Box::new(on_disk), words)
            }
            Err(report) => Disk::Broken(report),
        }
    }

    /// Takes over a version read from disk. The one before it stays in the history.
    pub(crate) fn take_over(&mut self, on_disk: Loaded) {
        let before = std::mem::replace(&mut self.loaded, on_disk);
        self.undo.push(State {
            text: before.text,
            words: "changes made outside the bench".to_owned(),
        });
        self.redo.clear();
        self.garments.clear();
        self.written = Written::of(&self.loaded.text);
    }

    /// Makes changes, all or none, and saves. Gives what changed in words; nothing when the text stayed the same.
    pub(crate) fn edit(&mut self, edits: &[Edit], system: System) -> Result<String, Refused> {
        let mut next = self.loaded.clone();
        for edit in edits {
            next = next.with_edit(edit).map_err(Refused::Problems)?;
        }
        if next.text == self.loaded.text {
            return Ok(String::new());
        }
        let changes = style::difference_in(&self.loaded.style, &next.style, system);
        let words = match changes.as_slice() {
            [] => "the same in other words".to_owned(),
            [one] => one.sentence.clone(),
            [first, rest @ ..] => format!("{} (and {} more)", first.sentence, rest.len()),
        };
        let before = self.save(&next.text)?;
        self.undo.push(State {
            text: before,
            words: words.clone(),
        });
        self.redo.clear();
        Ok(words)
    }

    /// Goes one text back, or forward again.
    pub(crate) fn step(&mut self, way: Way) -> Result<String, Refused> {
        let state = self.states(way).pop().ok_or(Refused::Nothing)?;
        match self.save(&state.text) {
            Ok(text) => {
                let words = state.words.clone();
                self.states(way.turned()).push(State { text, ..state });
                Ok(words)
            }
            Err(refused) => {
                self.states(way).push(state);
                Err(refused)
            }
        }
    }

    fn states(&mut self, way: Way) -> &mut Vec<State> {
        match way {
            Way::Back => &mut self.undo,
            Way::Forward => &mut self.redo,
        }
    }

    /// The drawings in the style's art folder, as the style would name them, in the order of their names.
    pub(crate) fn art(&self) -> Vec<String> {
        let folder = self.loaded.path.with_file_name(ART_FOLDER);
        let Ok(entries) = std::fs::read_dir(folder) else {
            return Vec::new();
        };
        let mut files: Vec<String> = entries
            .flatten()
            .filter_map(|entry| entry.file_name().into_string().ok())
            .filter(|name| name.ends_with(".svg"))
            .map(|name| format!("{ART_FOLDER}/{name}"))
            .filter(|path| ArtPath::new(path).is_ok())
            .collect();
        files.sort();
        files
    }

    /// Saves a text and gives the one before it.
    fn save(&mut self, text: &str) -> Result<String, Refused> {
        let saved = style::save(&self.loaded, text).map_err(|error| match error {
            SaveError::Invalid(report) => Refused::Problems(report),
            SaveError::Stale { .. } => Refused::Stale,
            other => Refused::Failed(other.to_string()),
        })?;
        let before = std::mem::replace(&mut self.loaded, saved.loaded);
        self.written = Written::of(&self.loaded.text);
        Ok(before.text)
    }
}

/// A garment that is kept, worked out where it is not yet.
fn kept(
    garments: &mut Vec<(String, Size, Arc<Worked>)>,
    loaded: &Loaded,
    size: Size,
) -> Arc<Worked> {
    let revision = loaded.revision.as_str();
    let at = garments
        .iter()
        .position(|(r, s, _)| r == revision && *s == size);
    let entry = match at {
        Some(at) => garments.remove(at),
        None => {
            let garment = Worked::out(loaded, size);
            (revision.to_owned(), size, Arc::new(garment))
        }
    };
    let garment = Arc::clone(&entry.2);
    garments.insert(0, entry);
    garments.truncate(KEPT_GARMENTS);
    garment
}

/// The files that a collection's styles share, as they are on disk. Comparing them is far cheaper than reading them anew.
fn collection_files(folder: &Path) -> Vec<Option<Vec<u8>>> {
    [
        style::COLLECTION_FILE,
        "cloths.toml",
        "yarns.toml",
        "trims.toml",
    ]
    .iter()
    .map(|name| std::fs::read(folder.join(name)).ok())
    .collect()
}
