//! All changes of the collection in the order of time, told in words: what undo and redo lead to, and what was changed
//! since the bench was started.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::SystemTime;

use style::{
    Direction, FileChange as Change, FileKind, KeptFile, Stamp, Teller, Timeline, VersionedFile,
    Way, kept_files, list_versions, read_revision,
};
use trade::System;
use words::Words;

use crate::versions::summary;

/// How many changes of this session are told at the foot; the history has them all.
pub(crate) const MOST_LISTED: usize = 50;

/// The changes of a collection, and what was told of them.
pub(crate) struct Changes {
    say: &'static Words,
    root: PathBuf,
    timeline: Timeline,
    stamp: Stamp,
    /// How many changes there were when the bench was started.
    before: usize,
    words: BTreeMap<(String, &'static str), Arc<str>>,
    /// Every file as it was when it was looked at: how large, and when it was written.
    seen: BTreeMap<PathBuf, Option<(u64, SystemTime)>>,
}

/// One change in words.
#[derive(Clone, Debug)]
pub(crate) struct ToldChange {
    /// What the page calls it by when it asks for it to be taken back.
    pub(crate) token: String,
    pub(crate) words: Arc<str>,
}

/// What a page shows of changes.
#[derive(Clone, Debug, Default)]
pub(crate) struct Steps {
    pub(crate) back: Option<ToldChange>,
    pub(crate) forward: Option<ToldChange>,
    /// The changes since the bench was started that were not taken back, the latest first, in words: as many as are told.
    pub(crate) done: Vec<Arc<str>>,
    /// How many there are.
    pub(crate) all_done: usize,
}

impl Changes {
    /// The changes of a collection that a bench is opened over: what was written by hand before is taken note of first.
    pub(crate) fn of(folder: &Path, say: &'static Words) -> Self {
        style::take_note(folder);
        let mut changes = Self {
            say,
            root: style::real(folder),
            timeline: Timeline::default(),
            stamp: Stamp::default(),
            before: 0,
            words: BTreeMap::new(),
            seen: BTreeMap::new(),
        };
        changes.look();
        changes.read();
        changes.before = changes.timeline.changes().len();
        changes
    }

    fn read(&mut self) {
        let stamp = Stamp::of(&self.root);
        // A folder that cannot be listed has nothing to go back to; saving will say so.
        if let Ok(timeline) = style::timeline(&self.root) {
            self.timeline = timeline;
            self.stamp = stamp;
        }
    }

    /// Keeps what was written by hand into any file since it was looked at last.
    pub(crate) fn look(&mut self) {
        for kept in kept_files(&self.root).unwrap_or_default() {
            let path = kept.file.path();
            let data = std::fs::metadata(path).ok();
            let now = data.and_then(|data| Some((data.len(), data.modified().ok()?)));
            if self.seen.get(path) != Some(&now) {
                // What cannot be kept now is told where it is used.
                let _ = kept.file.look();
                self.seen.insert(path.to_path_buf(), now);
            }
        }
    }

    fn fresh(&mut self) -> &Timeline {
        self.look();
        if self.stamp != Stamp::of(&self.root) {
            self.read();
        }
        &self.timeline
    }

    /// Every change, earliest first.
    pub(crate) fn all(&mut self) -> Vec<Change> {
        self.fresh().changes().to_vec()
    }

    /// What the page of a style shows. `style` is the style's folder; changes elsewhere say where.
    pub(crate) fn steps(&mut self, style: &str, system: System) -> Steps {
        self.fresh();
        let next = |direction| self.timeline.next(direction).cloned();
        let (back, forward) = (next(Direction::Back), next(Direction::Forward));
        let standing = self.timeline.standing_since(self.before);
        let all_done = standing.len();
        let done: Vec<Change> = standing
            .into_iter()
            .rev()
            .take(MOST_LISTED)
            .cloned()
            .collect();
        let told = |changes: &mut Self, change: &Change| ToldChange {
            token: change.token(),
            words: changes.words(change, style, system),
        };
        Steps {
            back: back.map(|change| told(self, &change)),
            forward: forward.map(|change| told(self, &change)),
            done: done
                .iter()
                .map(|change| self.words(change, style, system))
                .collect(),
            all_done,
        }
    }

    /// A change in words, told once.
    pub(crate) fn words(&mut self, change: &Change, style: &str, system: System) -> Arc<str> {
        let unit = match system {
            System::Metric => "cm",
            System::Inch => "in",
        };
        let key = (
            format!("{} {} {}", change.from.key(), change.token(), style),
            unit,
        );
        if let Some(words) = self.words.get(&key) {
            return Arc::clone(words);
        }
        let words: Arc<str> = self.tell(change, style, system).into();
        self.words.insert(key, Arc::clone(&words));
        words
    }

    fn tell(&self, change: &Change, style: &str, system: System) -> String {
        let say = self.say;
        let Some(kept) = KeptFile::at(&self.root.join(&change.file)) else {
            return change.file.clone();
        };
        let words = match change.way {
            Way::Outside => outside(say, &kept, change, system),
            Way::PutBack => {
                let number = put_back_from(&kept.file, change);
                let what = different(say, &kept, change, system);
                number.map_or_else(
                    || what.clone(),
                    |number| {
                        say.say(words::say::AnswerPutBack {
                            change: &what,
                            number,
                        })
                    },
                )
            }
            Way::Edit | Way::Undo | Way::Redo => different(say, &kept, change, system),
        };
        match (kept.kind, place(&change.file)) {
            _ if is_of(&change.file, style) => words,
            (FileKind::Style, Some(folder)) => say.say(words::say::AnswerElsewhere {
                change: words,
                file: folder,
            }),
            _ => say.say(words::say::AnswerElsewhere {
                change: words,
                file: &change.file,
            }),
        }
    }
}

/// Whether a file of the collection is that of the style in this folder.
pub(crate) fn is_of(file: &str, style: &str) -> bool {
    place(file) == Some(style)
}

/// A style's folder, out of where its file lies.
fn place(file: &str) -> Option<&str> {
    let folder = file.strip_suffix(style::STYLE_FILE)?.strip_suffix('/')?;
    Some(folder.rsplit('/').next().unwrap_or(folder))
}

/// What a change made different, in words.
fn different(say: &'static Words, kept: &KeptFile, change: &Change, system: System) -> String {
    differences(kept, change).map_or_else(
        || say.answer_version_unreadable().to_owned(),
        |changes| summary(say, &changes, system),
    )
}

/// What a change made different; `None` where one of its versions cannot be read.
fn differences(kept: &KeptFile, change: &Change) -> Option<Vec<style::Change>> {
    let teller = Teller::of(kept);
    let read = |version| read_revision(version).and_then(|text| teller.read(&text));
    let (old, new) = (read(&change.from).ok()?, read(&change.to).ok()?);
    Some(teller.changes(&old, &new))
}

/// What somebody else changed; where only comments are different, or nobody can tell, that it was somebody else.
fn outside(say: &'static Words, kept: &KeptFile, change: &Change, system: System) -> String {
    match differences(kept, change) {
        Some(changes) if !changes.is_empty() => {
            say.answer_outside_what(summary(say, &changes, system))
        }
        _ => say.answer_outside().to_owned(),
    }
}

/// The version that was put back.
fn put_back_from(file: &VersionedFile, change: &Change) -> Option<u32> {
    let versions = list_versions(file).ok()?;
    let from = versions
        .iter()
        .rfind(|version| version.id == change.to.id && version.number < change.to.number);
    from.map(|version| version.number)
}
