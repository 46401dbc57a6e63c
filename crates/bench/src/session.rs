//! A style being worked on: its text and what was last worked out. What it was before is in its history.

use std::num::NonZeroUsize;
use std::path::Path;
use std::sync::Arc;

use lru::LruCache;
use style::{
    ArtPath, Clash, Edit, Loaded, Merged, Report, SaveError, Saved, Size, VersionedFile, Way,
};
use trade::System;
use words::Words;

use crate::file_words::FileWords;
use crate::garment::Worked;
use crate::versions::{Shelf, sentences, summary};

/// How many worked-out garments are kept. One is a few hundred kilobytes; a maker flips between a few sizes.
const KEPT_GARMENTS: NonZeroUsize = match NonZeroUsize::new(12) {
    Some(kept) => kept,
    None => NonZeroUsize::MIN,
};

/// One style and its file.
pub(crate) struct Session {
    loaded: Loaded,
    /// What changes are compared with: the style as the session found it, or as the maker marked it.
    since: Loaded,
    marked: bool,
    /// The files of the collection and of the style as they were when `loaded` was read from them.
    files: Vec<Option<Vec<u8>>>,
    written: FileWords,
    say: &'static Words,
    /// By revision and size.
    garments: LruCache<(String, Size), Arc<Worked>>,
    /// What is shown of versions; see [`crate::versions`].
    pub(crate) shelf: Shelf,
}

/// Where drawings lie beside a style.
pub(crate) const ART_FOLDER: &str = "art";

/// A change that was made.
#[derive(Debug, Default)]
pub(crate) struct Edited {
    /// What changed; empty when the text stayed the same.
    pub(crate) words: String,
    /// What others had changed since the page was drawn.
    pub(crate) meanwhile: Vec<String>,
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
    /// What the change touches was changed by others since the page was drawn: each value in words.
    Clash(Vec<String>),
    /// The page shows a text that is not kept.
    Unknown,
    /// The page shows another change as the next to be taken back or made again.
    Earlier,
    /// There is nothing to undo or redo.
    Nothing,
    /// Anything else, in words.
    Failed(String),
}

impl Session {
    pub(crate) fn new(loaded: Loaded, say: &'static Words) -> Self {
        Self {
            // Unlike any folder, so that the first look at the disk reads everything.
            files: Vec::new(),
            written: FileWords::of(&loaded.text),
            since: loaded.clone(),
            marked: false,
            loaded,
            say,
            garments: LruCache::new(KEPT_GARMENTS),
            shelf: Shelf::default(),
        }
    }

    pub(crate) fn loaded(&self) -> &Loaded {
        &self.loaded
    }

    /// The words of the bench it belongs to.
    pub(crate) fn say(&self) -> &'static Words {
        self.say
    }

    pub(crate) fn written(&self) -> &FileWords {
        &self.written
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
        let text = style::read_bytes(&self.loaded.path, style::LARGEST_FILE).ok();
        if files == self.files && text.as_deref() == Some(self.loaded.text.as_bytes()) {
            return Disk::Same;
        }
        // Until it is read and sound, the next look has to read it again. What somebody wrote by hand, in this file or in
        // one of the collection's, is a version from now on; where the disk does not take it, saving will say so.
        self.files.clear();
        let shared = style::SHARED_FILES.map(|name| self.loaded.collection_folder.join(name));
        for file in shared.iter().chain([&self.loaded.path]) {
            let _ = VersionedFile::new(file).look();
        }
        match style::load(&self.loaded.path) {
            Ok(on_disk) if on_disk.text == self.loaded.text => {
                self.files = files;
                if on_disk.collection != self.loaded.collection {
                    // Cloths and yarns are not what a change of the style is measured by.
                    self.since.collection = on_disk.collection.clone();
                    self.loaded = on_disk;
                    self.garments.clear();
                    self.shelf = Shelf::default();
                }
                Disk::Same
            }
            Ok(on_disk) => {
                let words = sentences(
                    self.say(),
                    &self.loaded.style,
                    &on_disk.style,
                    System::Metric,
                );
                Disk::Changed(Box::new(on_disk), words)
            }
            Err(report) => Disk::Broken(report),
        }
    }

    /// Takes over a version read from disk. The one before it stays in the history.
    pub(crate) fn take_over(&mut self, on_disk: Loaded) {
        self.loaded = on_disk;
        self.garments.clear();
        self.written = FileWords::of(&self.loaded.text);
    }

    /// Reads the style again after its file, or one of the collection's, was changed here.
    pub(crate) fn follow(&mut self) {
        if let Disk::Changed(on_disk, _) = self.look_at_disk() {
            self.take_over(*on_disk);
        }
    }

    /// Makes changes that were meant for the text of a revision, all or none, and saves.
    pub(crate) fn edit(
        &mut self,
        revision: &str,
        edits: &[Edit],
        system: System,
    ) -> Result<Edited, Refused> {
        let say = self.say();
        let base = self.text_of(revision)?;
        let text = match style::merge(&base, &self.loaded.text, edits) {
            Ok(Merged::Text(text)) => text,
            Ok(Merged::Clash(clashes)) => {
                let changes = self.since_text(&base);
                let words = clashes_in_words(say, &clashes, &changes, system);
                return Err(Refused::Clash(words));
            }
            Err(report) => return Err(Refused::Problems(report)),
        };
        let meanwhile = self.since_text(&base);
        let meanwhile = meanwhile.iter().map(|change| change.words(say, system));
        let mut edited = Edited {
            words: String::new(),
            meanwhile: meanwhile.collect(),
        };
        if text != self.loaded.text {
            let next = self.loaded.with_text(&text).map_err(Refused::Problems)?;
            let changes = style::difference(&self.loaded.style, &next.style);
            edited.words = summary(say, &changes, system);
            self.change_to(next, Way::Edit)?;
        }
        Ok(edited)
    }

    /// Makes an earlier version the present one.
    pub(crate) fn put_back(&mut self, number: u32, system: System) -> Result<String, Refused> {
        let say = self.say();
        let history = style::history(&self.loaded);
        let history = history.map_err(|error| Refused::Failed(error.to_string()))?;
        let version = history
            .get(number)
            .ok_or_else(|| Refused::Failed(say.answer_no_version(number)))?;
        let text = style::read_revision(version).map_err(Refused::Problems)?;
        if text == self.loaded.text {
            return Err(Refused::Nothing);
        }
        let next = self.loaded.with_text(&text).map_err(Refused::Problems)?;
        let changes = style::difference(&self.loaded.style, &next.style);
        let words = say.say(words::say::AnswerPutBack {
            change: summary(say, &changes, system),
            number,
        });
        self.change_to(next, Way::PutBack)?;
        Ok(words)
    }

    /// Saves a style as a change that can be taken back.
    fn change_to(&mut self, next: Loaded, way: Way) -> Result<(), Refused> {
        // Whoever made the change waits for its garment: it is worked out while the disk takes the text.
        let size = self.garments.peek_mru().map(|((_, size), _)| *size);
        let (saved, worked) = std::thread::scope(|scope| {
            let working = size.map(|size| {
                let next = &next;
                scope.spawn(move || (size, Worked::out(next, size)))
            });
            let saved = style::save_next(&self.loaded, next.clone(), way);
            (saved, working.and_then(|working| working.join().ok()))
        });
        self.saved(saved)?;
        if let Some((size, worked)) = worked {
            let revision = self.loaded.revision.to_string();
            self.garments.put((revision, size), Arc::new(worked));
        }
        Ok(())
    }

    /// The text that a page of this revision shows.
    fn text_of(&self, revision: &str) -> Result<String, Refused> {
        if self.loaded.revision.as_str() == revision {
            return Ok(self.loaded.text.clone());
        }
        let history = style::history(&self.loaded).map_err(|_| Refused::Unknown)?;
        let version = history.with_id(revision).ok_or(Refused::Unknown)?;
        style::read_revision(version).map_err(|_| Refused::Unknown)
    }

    /// What is different since an earlier text.
    fn since_text(&self, base: &str) -> Vec<style::Change> {
        if base == self.loaded.text {
            return Vec::new();
        }
        let before = self.loaded.with_text(base);
        before.map_or_else(
            |_| Vec::new(),
            |before| style::difference(&before.style, &self.loaded.style),
        )
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

    /// Goes on from what was saved.
    fn saved(&mut self, saved: Result<Saved, SaveError>) -> Result<(), Refused> {
        let saved = saved.map_err(|error| match error {
            SaveError::Invalid(report) => Refused::Problems(report),
            SaveError::Stale { .. } => Refused::Stale,
            other => Refused::Failed(other.to_string()),
        })?;
        self.loaded = saved.loaded;
        self.written = FileWords::of(&self.loaded.text);
        Ok(())
    }

    /// The garment of a version of the style in a size.
    pub(crate) fn garment_of(&mut self, version: &Loaded, size: Size) -> Arc<Worked> {
        kept(&mut self.garments, version, size)
    }
}

/// Each value that clashes: how it changed meanwhile, and what was to become of it.
pub(crate) fn clashes_in_words(
    say: &'static Words,
    clashes: &[Clash],
    changes: &[style::Change],
    system: System,
) -> Vec<String> {
    let put = |value: &style::Written| say.putting(&value.clone().into());
    let words = |clash: &Clash| {
        let told = changes.iter().find(|change| clash.is_about(change));
        let happened = told.map_or_else(
            || {
                let none = || say.answer_clash_no_value().to_owned();
                let [was, is] =
                    [&clash.was, &clash.is].map(|value| value.as_ref().map_or_else(none, put));
                say.say(words::say::AnswerClashValue {
                    is,
                    path: clash.path.to_string(),
                    was,
                })
            },
            |change| change.words(say, system),
        );
        match &clash.wanted {
            Some(wanted) => say.say(words::say::AnswerClash {
                change: happened,
                wanted: put(wanted),
            }),
            None => say.answer_clash_kept(happened),
        }
    };
    clashes.iter().map(words).collect()
}

/// A garment that is kept, worked out where it is not yet.
fn kept(
    garments: &mut LruCache<(String, Size), Arc<Worked>>,
    loaded: &Loaded,
    size: Size,
) -> Arc<Worked> {
    let key = (loaded.revision.to_string(), size);
    let worked = || Arc::new(Worked::out(loaded, size));
    Arc::clone(garments.get_or_insert(key, worked))
}

/// The files that a collection's styles share, as they are on disk. Comparing them is far cheaper than reading them anew.
fn collection_files(folder: &Path) -> Vec<Option<Vec<u8>>> {
    let files = style::SHARED_FILES.iter();
    files
        .map(|name| style::read_bytes(&folder.join(name), style::LARGEST_FILE).ok())
        .collect()
}
