//! Changing the collection's `cloths.toml`, with the guarantees a style has when it is saved.
//!
//! The file is always a whole earlier or a whole later version, comments and spacing of what is not changed stay byte for
//! byte, the version before is kept in the collection's `.revisions/cloths`, and nobody's change is overwritten silently.
//! Beyond that a change is refused when a style that can be read now could not be read any more.

use std::fs;
use std::path::{Path, PathBuf};

use toml_edit::{DocumentMut, Item, Table, Value, value};

use crate::edit::change;
use crate::history::steps;
use crate::load::read_file;
use crate::own::plain;
use crate::parse::read;
use crate::report::{Report, Source};
use crate::save::{disk, keep, lock, refuse_read_only, revisions_in, sync_folder, write_whole};
use crate::{
    Collection, Edit, Loaded, REVISIONS_FOLDER, Revision, RevisionId, SaveError, list_styles, load,
    load_collection, read_collection,
};

/// The name of the file of cloths in a collection.
pub const CLOTHS_FILE: &str = "cloths.toml";

/// Why cloths were not changed. The file is then as it was.
#[derive(Debug, thiserror::Error)]
pub enum ClothsError {
    /// The changed file would have problems, or the edit leads nowhere.
    #[error(transparent)]
    Invalid(#[from] Report),
    /// Somebody changed the file since it was looked at.
    #[error(
        "{CLOTHS_FILE} was changed by someone else since it was shown; nothing was overwritten"
    )]
    Stale,
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
    /// No change can be taken back, or made again.
    #[error("no other version of {CLOTHS_FILE} is kept that this would lead to")]
    Nothing,
    /// The disk refused, or the file can no longer be read.
    #[error(transparent)]
    Save(SaveError),
}

impl From<SaveError> for ClothsError {
    fn from(error: SaveError) -> Self {
        Self::Save(error)
    }
}

/// What the file of cloths hashes to; what a change is meant for.
///
/// # Errors
/// When it cannot be read.
pub fn cloths_revision(collection_folder: &Path) -> Result<RevisionId, Report> {
    Ok(RevisionId::of(&read_file(
        &collection_folder.join(CLOTHS_FILE),
    )?))
}

/// Makes edits to the file of cloths, all or none; paths begin with `cloths`. `held` is the version they are meant for.
///
/// # Errors
/// The edits do not fit, somebody else changed the file, a style would break, or the disk refused.
pub fn edit_cloths(
    collection_folder: &Path,
    held: &str,
    edits: &[Edit],
) -> Result<Collection, ClothsError> {
    save_with(collection_folder, held, |text, _| {
        let mut text = text.to_owned();
        for edit in edits {
            text = change(&text, edit).map_err(named)?;
        }
        Ok(text)
    })
}

/// Adds a cloth that is as another one, but for its name and what was measured of that other; gives its key.
///
/// # Errors
/// There is no such cloth, somebody else changed the file, or the disk refused.
pub fn add_cloth(
    collection_folder: &Path,
    held: &str,
    name: &str,
    like: &str,
) -> Result<String, ClothsError> {
    let collection = load_collection(collection_folder)?;
    if !collection.cloths.contains_key(like) {
        return Err(ClothsError::Unknown(crate::reader::short(like)));
    }
    let has_letters = name.chars().any(|c| c.is_ascii_alphanumeric());
    let stem = plain(if has_letters { name } else { "cloth" });
    let mut keys = (1_u32..).map(|k| match k {
        1 => stem.clone(),
        k => format!("{stem}-{k}"),
    });
    let key = keys.find(|key| !collection.cloths.contains_key(key));
    let key = key.unwrap_or(stem.clone());
    save_with(collection_folder, held, |text, _| {
        let section = section(text, &key, name.trim(), like);
        let section = section.ok_or_else(|| ClothsError::Unknown(crate::reader::short(like)))?;
        Ok(format!("{}\n\n{section}", text.trim_end()))
    })?;
    Ok(key)
}

/// Takes the last change of cloths back that was not taken back yet: the version before it is the present one again.
///
/// # Errors
/// As [`edit_cloths`], and when there is nothing to take back.
pub fn undo_cloths(collection_folder: &Path, held: &str) -> Result<Collection, ClothsError> {
    step(collection_folder, held, |(back, _)| back.last().copied())
}

/// Makes the change again that was taken back last.
///
/// # Errors
/// As [`edit_cloths`], and when there is nothing to make again.
pub fn redo_cloths(collection_folder: &Path, held: &str) -> Result<Collection, ClothsError> {
    step(collection_folder, held, |(_, forward)| {
        forward.last().copied()
    })
}

/// How many changes of cloths can be taken back, and how many that were taken back can be made again.
#[must_use]
pub fn cloths_steps(collection_folder: &Path) -> (usize, usize) {
    let text = read_file(&collection_folder.join(CLOTHS_FILE)).unwrap_or_default();
    let (_, (back, forward)) = led(&kept_in(collection_folder), &text).unwrap_or_default();
    (back.len(), forward.len())
}

/// Where undo and redo lead: places among the versions that are kept, the next one last.
type Led = (Vec<usize>, Vec<usize>);

/// The versions that are kept, and where undo and redo lead among them from the text that is in the file.
fn led(revisions: &Path, text: &str) -> std::io::Result<(Vec<Revision>, Led)> {
    let kept = revisions_in(revisions)?;
    let now = RevisionId::of(text);
    let ids: Vec<&str> = kept
        .iter()
        .map(|kept| kept.id.as_str())
        .chain([now.as_str()])
        .collect();
    let led = steps(&ids);
    Ok((kept, led))
}

fn step(
    collection_folder: &Path,
    held: &str,
    to: impl FnOnce(Led) -> Option<usize>,
) -> Result<Collection, ClothsError> {
    save_with(collection_folder, held, |text, revisions| {
        let (kept, led) = led(revisions, text).map_err(disk(revisions))?;
        let version = to(led).and_then(|at| kept.get(at));
        Ok(crate::read_revision(version.ok_or(ClothsError::Nothing)?)?)
    })
}

fn kept_in(collection_folder: &Path) -> PathBuf {
    collection_folder.join(REVISIONS_FOLDER).join("cloths")
}

/// Changes the text under the lock, checks it with every style, keeps the version before and writes the new one.
fn save_with(
    collection_folder: &Path,
    held: &str,
    change: impl FnOnce(&str, &Path) -> Result<String, ClothsError>,
) -> Result<Collection, ClothsError> {
    let folder = fs::canonicalize(collection_folder).map_err(disk(collection_folder))?;
    let path = folder.join(CLOTHS_FILE);
    let revisions = kept_in(&folder);
    refuse_read_only(&path)?;
    if !revisions.is_dir() {
        fs::create_dir_all(&revisions).map_err(disk(&revisions))?;
        sync_folder(&folder).map_err(disk(&folder))?;
    }
    let _lock = lock(&revisions)?;
    let on_disk = read_file(&path).map_err(SaveError::Unreadable)?;
    if RevisionId::of(&on_disk).as_str() != held {
        return Err(ClothsError::Stale);
    }
    let text = change(&on_disk, &revisions)?;
    let collection = with_cloths(&folder, &path, &text)?;
    if text == on_disk {
        return Ok(collection);
    }
    every_style_holds(&folder, &collection)?;
    keep(&revisions, &on_disk, Some(&path))?;
    write_whole(&path, &text, &revisions)?;
    Ok(collection)
}

/// The collection as it would be with another file of cloths.
fn with_cloths(folder: &Path, path: &Path, text: &str) -> Result<Collection, ClothsError> {
    let source = Source::new(path.display().to_string(), text);
    let mut reading = read(&source, read_collection::cloths);
    reading.report.sort();
    let cloths = match reading.value {
        Some(cloths) if reading.report.is_empty() => cloths,
        _ => return Err(reading.report.into()),
    };
    let collection = load_collection(folder)?;
    Ok(Collection {
        cloths,
        ..collection
    })
}

/// A style that is broken already is no reason to refuse a change.
fn every_style_holds(folder: &Path, collection: &Collection) -> Result<(), ClothsError> {
    let styles = list_styles(folder).map_err(disk(folder))?;
    for file in styles {
        let Ok(loaded) = load(&file) else { continue };
        let changed = Loaded {
            collection: collection.clone(),
            ..loaded
        };
        if let Err(report) = changed.with_text(&changed.text) {
            let first = report.problems.first();
            return Err(ClothsError::StyleBreaks {
                style: changed.folder().to_path_buf(),
                why: first.map_or_else(String::new, |problem| problem.message.clone()),
            });
        }
    }
    Ok(())
}

/// An edit that leads nowhere speaks of the file it was meant for.
fn named(mut report: Report) -> Report {
    for problem in &mut report.problems {
        CLOTHS_FILE.clone_into(&mut problem.file);
    }
    report
}

/// What a new cloth says: all that another one says, without its comments and without what was measured of it.
fn section(text: &str, key: &str, name: &str, like: &str) -> Option<String> {
    const MEASURED: [&str; 2] = ["wash_test", "skew_test"];
    let document: DocumentMut = text.parse().ok()?;
    let from = document.get("cloths")?.get(like)?.as_table_like()?;
    let mut table = Table::new();
    for (its, item) in from.iter().filter(|(its, _)| !MEASURED.contains(its)) {
        let Item::Value(said) = item else { continue };
        let mut said: Value = said.clone();
        said.decor_mut().clear();
        table.insert(its, Item::Value(said));
    }
    table.insert("name", value(name));
    let mut cloths = Table::new();
    cloths.set_implicit(true);
    cloths.insert(key, Item::Table(table));
    let mut made = DocumentMut::new();
    made.insert("cloths", Item::Table(cloths));
    Some(made.to_string())
}
