//! The files of a collection: which there are, what makes a text of each sound, and how each is changed, all with the
//! guarantees of [`store`].
//!
//! A change of a file that styles share (cloths, yarns, trims, the collection itself) is refused when a style that can be
//! read now could not be read any more. One undo leads along the changes of all files, in the order of time.

use std::io;
use std::path::{Path, PathBuf};

use store::{
    Change, Direction, Look, RevisionId, Saved, StoreError, Timeline, VersionedFile, Way,
    collection_of, real,
};

use crate::edit::Edit;
use crate::lays::{self, LAYS_FOLDER};
use crate::load::{
    CLOTHS_FILE, STYLE_FILE, TRIMS_FILE, YARNS_FILE, load_as, load_collection_as, style_file,
};
use crate::load_order::{ORDERS_FOLDER, load_order_as};
use crate::merge::{Clash, Merged, merge};
use crate::report::Report;
use crate::save::SaveError;
use crate::{COLLECTION_FILE, Loaded, list_orders, list_styles, load, read_revision};

/// What a file of a collection says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileKind {
    /// One of the four that all styles share.
    Shared,
    /// A style.
    Style,
    /// An order.
    Order,
}

/// The files that all styles of a collection share.
pub const SHARED_FILES: [&str; 4] = [COLLECTION_FILE, CLOTHS_FILE, YARNS_FILE, TRIMS_FILE];

/// A file of a collection, kept with its versions.
#[derive(Clone, Debug)]
pub struct KeptFile {
    /// What it says.
    pub kind: FileKind,
    /// The file and its versions.
    pub file: VersionedFile,
    /// The collection's folder.
    pub root: PathBuf,
}

/// Why a file was not changed. It is then as it was.
#[derive(Debug, thiserror::Error)]
pub enum KeepError {
    /// The changed file would have problems, or the edit leads nowhere.
    #[error(transparent)]
    Invalid(#[from] Report),
    /// What the edits touch was changed by somebody else meanwhile.
    #[error("{} was changed by someone else since it was shown; nothing was overwritten", file.display())]
    Clash {
        /// The file.
        file: PathBuf,
        /// Every value that clashes; empty where it is not known what the edits were meant for.
        clashes: Vec<Clash>,
    },
    /// A style that can be read now could not be read with the change.
    #[error("the style in {} could not be read any more: {why}", style.display())]
    StyleBreaks {
        /// The style's folder.
        style: PathBuf,
        /// Its first problem, in words.
        why: String,
    },
    /// There is no cloth of this name to begin another with.
    #[error("the collection has no cloth {0}")]
    Unknown(String),
    /// There is no such version.
    #[error("there is no version {0} of this file")]
    NoSuchVersion(u32),
    /// No change can be taken back, or made again.
    #[error("no change is left that could be taken back or made again")]
    Nothing,
    /// Another change came since the page was drawn.
    #[error("something else was changed since this page was drawn; nothing was taken back")]
    Behind,
    /// The disk refused, or the file can no longer be read.
    #[error(transparent)]
    Save(SaveError),
}

impl From<SaveError> for KeepError {
    fn from(error: SaveError) -> Self {
        match error {
            SaveError::Invalid(report) => Self::Invalid(report),
            other => Self::Save(other),
        }
    }
}

impl From<StoreError> for KeepError {
    fn from(error: StoreError) -> Self {
        Self::Save(error.into())
    }
}

impl KeptFile {
    /// The file a path means: a style's folder or file, an order, or one of the shared files. `None` where it is none of
    /// a collection's files.
    #[must_use]
    pub fn at(path: &Path) -> Option<Self> {
        let path = if path.is_dir() {
            style_file(path).ok()?
        } else {
            path.to_path_buf()
        };
        let file = VersionedFile::new(&path);
        let root = collection_of(file.path())?;
        let kind = kind_of(&root, file.path())?;
        Some(Self { kind, file, root })
    }

    /// What a style names it by: its way from the collection's folder.
    #[must_use]
    pub fn name(&self) -> String {
        let within = self.file.path().strip_prefix(&self.root);
        within.map_or_else(
            |_| self.file.path().display().to_string(),
            |within| within.display().to_string(),
        )
    }

    /// Whether a text would be sound in it.
    ///
    /// # Errors
    /// Its problems, or that a style could not be read with it.
    pub fn check(&self, text: &str) -> Result<(), KeepError> {
        let path = self.file.path();
        match self.kind {
            FileKind::Style => {
                load_as(path.to_path_buf(), text.to_owned())?;
            }
            FileKind::Order => {
                load_order_as(path, text)?;
            }
            FileKind::Shared => {
                let name = path.file_name().unwrap_or_default().to_string_lossy();
                match load_collection_as(&self.root, Some((&name, text))) {
                    Ok(collection) => every_style_holds(&self.root, &collection)?,
                    // What is wrong with another of the four is not this text's fault, and no style can be read now.
                    Err(mut report) => {
                        let own = path.display().to_string();
                        report.problems.retain(|problem| problem.file == own);
                        if !report.is_empty() {
                            return Err(report.into());
                        }
                    }
                }
            }
        }
        Ok(())
    }

    /// Puts a sound text into it over the one known by `held`.
    ///
    /// # Errors
    /// The text is not sound, the file holds another, or the disk refused.
    pub fn put(&self, held: &RevisionId, text: &str, way: Way) -> Result<Saved, KeepError> {
        self.check(text)?;
        Ok(self.file.save(held, text, way)?)
    }

    /// Puts an earlier version into it.
    ///
    /// # Errors
    /// There is no such version, it is not sound with the other files as they are, or the disk refused.
    pub fn put_back(&self, number: u32) -> Result<Saved, KeepError> {
        let now = self.file.look()?;
        let versions = store::list_versions(&self.file).map_err(|source| SaveError::Disk {
            path: self.file.versions().to_path_buf(),
            source,
        })?;
        let version = versions.iter().find(|version| version.number == number);
        let text = read_revision(version.ok_or(KeepError::NoSuchVersion(number))?)?;
        self.put(&RevisionId::of(&now.text), &text, Way::PutBack)
    }

    /// Makes edits that were meant for the version `held`, all or none: what was changed meanwhile stays, and where the
    /// edits touch it they are refused.
    ///
    /// # Errors
    /// The edits do not fit or clash, a style would break, or the disk refused.
    pub fn edit(&self, held: &str, edits: &[Edit]) -> Result<Saved, KeepError> {
        self.edit_with(held, |base, now| merge(base, now, edits))
    }

    fn edit_with(
        &self,
        held: &str,
        merged: impl Fn(&str, &str) -> Result<Merged, Report>,
    ) -> Result<Saved, KeepError> {
        // Somebody may write between the look and the save.
        const TRIES: usize = 3;
        let clash = |clashes| KeepError::Clash {
            file: self.file.path().to_path_buf(),
            clashes,
        };
        for _ in 0..TRIES {
            let now = self.file.look()?;
            let base = self.text_of(held, &now).ok_or_else(|| clash(Vec::new()))?;
            let text = match merged(&base, &now.text).map_err(|report| self.named(report))? {
                Merged::Text(text) => text,
                Merged::Clash(clashes) => return Err(clash(clashes)),
            };
            match self.put(&RevisionId::of(&now.text), &text, Way::Edit) {
                Err(KeepError::Save(SaveError::Stale { .. })) => {}
                done => return done,
            }
        }
        Err(clash(Vec::new()))
    }

    /// The text of the version with this id.
    fn text_of(&self, id: &str, now: &Look) -> Option<String> {
        if now.version.id == id {
            return Some(now.text.clone());
        }
        let versions = store::list_versions(&self.file).ok()?;
        let version = versions.iter().rfind(|version| version.id == id)?;
        read_revision(version).ok()
    }

    /// An edit that leads nowhere speaks of the file it was meant for.
    fn named(&self, mut report: Report) -> Report {
        let name = self.file.path().file_name().unwrap_or_default();
        for problem in &mut report.problems {
            if problem.file == STYLE_FILE {
                problem.file = name.to_string_lossy().into_owned();
            }
        }
        report
    }

    /// The last version that can be read, with the text it has, where the file cannot be.
    #[must_use]
    pub fn last_sound(&self) -> Option<(store::Revision, String)> {
        if self
            .file
            .look()
            .is_ok_and(|now| self.check(&now.text).is_ok())
        {
            return None;
        }
        let versions = store::list_versions(&self.file).ok()?;
        let mut texts = versions
            .into_iter()
            .rev()
            .filter_map(|version| Some((read_revision(&version).ok()?, version)));
        texts
            .find(|(text, _)| self.check(text).is_ok())
            .map(|(text, version)| (version, text))
    }
}

fn kind_of(root: &Path, real: &Path) -> Option<FileKind> {
    let parent = real.parent()?;
    let name = real.file_name()?.to_str()?;
    match name {
        STYLE_FILE => Some(FileKind::Style),
        shared if SHARED_FILES.contains(&shared) && parent == root => Some(FileKind::Shared),
        other if parent == root.join(ORDERS_FOLDER) && other.ends_with(".toml") => {
            Some(FileKind::Order)
        }
        _ => None,
    }
}

/// A style that is broken already is no reason to refuse a change.
fn every_style_holds(root: &Path, collection: &crate::Collection) -> Result<(), KeepError> {
    let styles = list_styles(root).map_err(|source| SaveError::Disk {
        path: root.to_path_buf(),
        source,
    })?;
    for file in styles {
        let Ok(loaded) = load(&file) else { continue };
        let changed = Loaded {
            collection: collection.clone(),
            ..loaded
        };
        if let Err(report) = changed.with_text(&changed.text) {
            let first = report.problems.first();
            return Err(KeepError::StyleBreaks {
                style: changed.folder().to_path_buf(),
                why: first.map_or_else(String::new, |problem| problem.message.clone()),
            });
        }
    }
    Ok(())
}

/// Every file of a collection that is kept with its versions.
///
/// # Errors
/// A folder of styles or orders is there and cannot be listed.
pub fn kept_files(collection_folder: &Path) -> io::Result<Vec<KeptFile>> {
    let root = real(collection_folder);
    let shared = SHARED_FILES.iter().map(|name| root.join(name));
    let shared = shared.filter(|file| file.is_file());
    let styles = list_styles(&root)?;
    let orders = list_orders(&root)?;
    let all = shared
        .map(|file| (FileKind::Shared, file))
        .chain(styles.into_iter().map(|file| (FileKind::Style, file)))
        .chain(orders.into_iter().map(|file| (FileKind::Order, file)));
    let kept = all.map(|(kind, file)| KeptFile {
        kind,
        file: VersionedFile::new(&file),
        root: root.clone(),
    });
    Ok(kept.collect())
}

/// Looks at every file of a collection, so that what was written by hand is kept, and clears away what programs that were
/// killed left behind. Whoever begins to work on a collection does this first.
///
/// What cannot be looked at or kept is no reason not to begin: it is told where it is used.
pub fn take_note(collection_folder: &Path) {
    for kept in kept_files(collection_folder).unwrap_or_default() {
        let _ = kept.file.look();
    }
    let root = real(collection_folder);
    let styles = list_styles(&root).unwrap_or_default();
    let folders = styles.iter().filter_map(|style| style.parent());
    for folder in [root.as_path(), &root.join("styles")]
        .into_iter()
        .chain(root.parent())
        .chain(folders)
    {
        store::clear_unfinished(folder);
    }
    store::clear_unfinished_note(&root.join(LAYS_FOLDER).join(lays::PREPARED));
}

/// All changes of a collection's files in the order of time.
///
/// # Errors
/// A folder cannot be listed.
pub fn timeline(collection_folder: &Path) -> io::Result<Timeline> {
    let root = real(collection_folder);
    let files = kept_files(&root)?;
    Timeline::of(&root, files.iter().map(|kept| &kept.file))
}

/// Takes the last change of a collection back, whichever file it was in, or makes the one again that was taken back last.
/// `token` names the change that is meant, as whoever asks was shown it.
///
/// # Errors
/// There is none, another is the last by now, its file holds something else, the text is not sound with the others as
/// they are, or the disk refused.
pub fn step(
    collection_folder: &Path,
    direction: Direction,
    token: Option<&str>,
) -> Result<Change, KeepError> {
    let root = real(collection_folder);
    let timeline = timeline(&root).map_err(|source| SaveError::Disk {
        path: root.clone(),
        source,
    })?;
    let next = timeline.next(direction).ok_or(KeepError::Nothing)?;
    if token.is_some_and(|token| token != next.token()) {
        return Err(KeepError::Behind);
    }
    let (from, to, way) = match direction {
        Direction::Back => (&next.to, &next.from, Way::Undo),
        Direction::Forward => (&next.from, &next.to, Way::Redo),
    };
    let kept = KeptFile::at(&root.join(&next.file)).ok_or(KeepError::Nothing)?;
    let now = kept.file.look()?;
    if now.version.id != from.id {
        return Err(KeepError::Behind);
    }
    kept.put(&RevisionId::of(&now.text), &read_revision(to)?, way)?;
    Ok(next.clone())
}

/// A change of one text, whatever it then says; for those who add to a file rather than edit it.
pub(crate) fn added(
    kept: &KeptFile,
    held: &str,
    add: impl Fn(&str) -> Result<String, Report>,
) -> Result<Saved, KeepError> {
    // What is added clashes with nothing: it goes onto the text as it is.
    kept.edit_with(held, |_, now| Ok(Merged::Text(add(now)?)))
}
