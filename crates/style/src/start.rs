//! Beginning: the demo collection, a new collection, a new style.
//!
//! A folder is made whole beside where it belongs and then renamed into place, so that it is never there in part,
//! and nothing that exists is ever overwritten.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use toml_edit::{DocumentMut, value};

use crate::load::{COLLECTION_FILE, STYLE_FILE, load, load_collection};
use crate::report::Report;
use crate::save::sync_folder;
use crate::{Collection, demo, parse};

/// What a new style needs to be told.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewStyle {
    /// The style's name; its folder is named after it.
    pub name: String,
    /// The label's code for it.
    pub code: String,
    /// The label's name, for a new collection; the style's name when left out. Not used in a collection that exists.
    pub label: Option<String>,
}

/// Why nothing was made. Nothing is left behind.
#[derive(Debug, thiserror::Error)]
pub enum StartError {
    /// There is something already.
    #[error("{} is there already and is not overwritten; choose another name or another folder", .0.display())]
    Exists(PathBuf),
    /// No folder can be named after this.
    #[error("a folder cannot be named after \"{0}\"; use a name with letters or digits in it")]
    Nameless(String),
    /// The new style would have problems: the answers do not fit, or the collection lacks what the style starts with.
    #[error(transparent)]
    Invalid(#[from] Report),
    /// The disk refused.
    #[error("{} cannot be written: {source}; check that there is room and that you may write there", path.display())]
    Disk {
        /// The file or folder concerned.
        path: PathBuf,
        /// What the system said.
        source: io::Error,
    },
}

/// Writes the demo collection into a folder that is not there yet or is empty, and gives the path of its style.
///
/// # Errors
/// The folder holds something, or the disk refused.
pub fn write_demo(folder: &Path) -> Result<PathBuf, StartError> {
    let files: Vec<(&str, String)> = demo::files()
        .iter()
        .map(|(path, text)| (*path, (*text).to_owned()))
        .collect();
    make_folder(folder, &files)?;
    Ok(folder.join(demo::STYLE))
}

/// Makes a new style that starts as the demo's, and gives the path of its file.
///
/// In a folder that is a collection (or inside one) the style is added to it, starting with that collection's own cloths,
/// yarns, trims and first workroom where it does not know the demo's. Any other folder must be absent or empty
/// and becomes a new collection.
///
/// # Errors
/// Something is there already, the answers do not fit, the collection lacks what a style needs, or the disk refused.
pub fn new_style(folder: &Path, answers: &NewStyle) -> Result<PathBuf, StartError> {
    let slug = slug(&answers.name).ok_or_else(|| StartError::Nameless(answers.name.clone()))?;
    let inside = fs::canonicalize(folder).ok().and_then(|folder| {
        let mut above = folder.ancestors();
        above
            .find(|folder| folder.join(COLLECTION_FILE).is_file())
            .map(Path::to_path_buf)
    });
    match inside {
        Some(collection) => add_style(&collection, &slug, answers),
        None => new_collection(folder, &slug, answers),
    }
}

fn add_style(
    collection_folder: &Path,
    slug: &str,
    answers: &NewStyle,
) -> Result<PathBuf, StartError> {
    let collection = load_collection(collection_folder)?;
    let text = style_text(answers, Some(&collection));
    let folder = collection_folder.join("styles").join(slug);
    let path = folder.join(STYLE_FILE);
    parse(&text, &path.display().to_string(), &collection)?;
    let mut files = vec![(STYLE_FILE, text)];
    files.extend(demo::beside_style().map(|(path, text)| (path, text.to_owned())));
    make_folder(&folder, &files)?;
    Ok(path)
}

fn new_collection(folder: &Path, slug: &str, answers: &NewStyle) -> Result<PathBuf, StartError> {
    let style = format!("styles/{slug}/{STYLE_FILE}");
    let label = answers.label.as_ref().unwrap_or(&answers.name);
    let beside: Vec<(String, &str)> = demo::beside_style()
        .map(|(path, text)| (format!("styles/{slug}/{path}"), text))
        .collect();
    let demo_folder = demo::STYLE.trim_end_matches(STYLE_FILE);
    let shared = demo::files()
        .iter()
        .filter(|(path, _)| !path.starts_with(demo_folder));
    let mut files: Vec<(&str, String)> = shared
        .map(|&(path, text)| match path {
            COLLECTION_FILE => (path, collection_text(text, label)),
            _ => (path, text.to_owned()),
        })
        .collect();
    files.push((style.as_str(), style_text(answers, None)));
    let beside = beside.iter();
    files.extend(beside.map(|(path, text)| (path.as_str(), (*text).to_owned())));
    make_folder_checked(folder, &files, |made| load(&made.join(&style)).map(drop))?;
    Ok(folder.join(&style))
}

/// "Harbour Wide 2" → "harbour-wide-2".
fn slug(name: &str) -> Option<String> {
    const LONGEST: usize = 60;
    let lower = name.to_lowercase();
    let words = lower
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty());
    let slug = words.collect::<Vec<_>>().join("-");
    (!slug.is_empty() && slug.len() <= LONGEST).then_some(slug)
}

fn collection_text(demo: &str, label: &str) -> String {
    let demo = without_first_comment(demo);
    let Ok(mut document) = demo.parse::<DocumentMut>() else {
        return demo.to_owned();
    };
    if let Some(name) = document
        .get_mut("collection")
        .and_then(|table| table.get_mut("name"))
    {
        *name = value(label);
    }
    document.to_string()
}

/// The demo's style under another name, with the names it uses led into another collection where one is given.
fn style_text(answers: &NewStyle, collection: Option<&Collection>) -> String {
    let demo = without_first_comment(demo::text(demo::STYLE));
    let Ok(mut document) = demo.parse::<DocumentMut>() else {
        return demo.to_owned();
    };
    if let Some(style) = document.get_mut("style") {
        for (key, text) in [
            ("name", answers.name.as_str()),
            ("code", answers.code.as_str()),
        ] {
            if let Some(item) = style.get_mut(key) {
                *item = value(text);
            }
        }
        if let Some(table) = style.as_table_like_mut() {
            table.remove("summary");
        }
    }
    let mut text = document.to_string();
    if let Some(collection) = collection {
        text = crate::substitute::into_collection(&text, collection);
    }
    text
}

/// The demo's first comment speaks about the demo.
fn without_first_comment(text: &str) -> &str {
    text.find("format =")
        .and_then(|at| text.get(at..))
        .unwrap_or(text)
}

fn make_folder(folder: &Path, files: &[(&str, String)]) -> Result<(), StartError> {
    make_folder_checked(folder, files, |_| Ok(()))
}

/// Makes a folder with files in it, whole or not at all; `check` sees it before it is put in place.
fn make_folder_checked(
    folder: &Path,
    files: &[(&str, String)],
    check: impl FnOnce(&Path) -> Result<(), Report>,
) -> Result<(), StartError> {
    if !is_free(folder) {
        return Err(StartError::Exists(folder.to_path_buf()));
    }
    let absolute = std::path::absolute(folder).map_err(disk(folder))?;
    let Some((parent, name)) = absolute.parent().zip(absolute.file_name()) else {
        return Err(StartError::Exists(folder.to_path_buf()));
    };
    fs::create_dir_all(parent).map_err(disk(parent))?;
    let beside = parent.join(format!(
        ".{}.new-{}",
        name.to_string_lossy(),
        std::process::id()
    ));
    let made = fill(&beside, files)
        .map_err(disk(&beside))
        .and_then(|()| check(&beside).map_err(StartError::Invalid))
        .and_then(|()| put_in_place(&beside, &absolute));
    if made.is_err() {
        // What could not be finished is ours to take away; failing to is no worse than the error itself.
        let _ = fs::remove_dir_all(&beside);
    }
    made?;
    sync_folder(parent).map_err(disk(parent))
}

fn disk(path: &Path) -> impl FnOnce(io::Error) -> StartError + '_ {
    move |source| StartError::Disk {
        path: path.to_path_buf(),
        source,
    }
}

/// Whether nothing is at a path, or only an empty folder.
fn is_free(folder: &Path) -> bool {
    match fs::read_dir(folder) {
        Ok(mut entries) => entries.next().is_none(),
        Err(_) => fs::symlink_metadata(folder).is_err(),
    }
}

fn fill(folder: &Path, files: &[(&str, String)]) -> io::Result<()> {
    fs::create_dir(folder)?;
    for (path, text) in files {
        let path = path
            .split('/')
            .fold(folder.to_path_buf(), |folder, part| folder.join(part));
        let above = path.parent().unwrap_or(folder);
        fs::create_dir_all(above)?;
        let mut file = File::create_new(&path)?;
        file.write_all(text.as_bytes())?;
        file.sync_all()?;
        sync_folder(above)?;
    }
    sync_folder(folder)
}

/// Renames the made folder to where it belongs. The system refuses when something has appeared there meanwhile.
fn put_in_place(made: &Path, folder: &Path) -> Result<(), StartError> {
    if folder.is_dir() {
        // Removes an empty folder only.
        fs::remove_dir(folder).map_err(|_| StartError::Exists(folder.to_path_buf()))?;
    }
    if fs::symlink_metadata(folder).is_ok() {
        return Err(StartError::Exists(folder.to_path_buf()));
    }
    fs::rename(made, folder).map_err(disk(folder))
}
