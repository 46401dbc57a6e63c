//! Beginning: the demo collection, a new collection, a new style by a few answers or as a copy.
//!
//! A folder is made whole beside where it belongs and then renamed into place, so that it is never there in part,
//! and nothing that exists is ever overwritten.

mod answers;
mod brought;
mod chart;
mod copy;
mod folder;
mod substitute;
mod taste;
mod text;

use std::fs;
use std::io;
use std::path::{Path, PathBuf};

pub use answers::{
    Answers, Leg, NewStyle, OFFERED_LENGTHS, Taste, USUAL_LENGTHS, offered_waists, usual_waists,
};
pub use brought::{BroughtPattern, new_style_of_pattern};
pub use chart::{usual_grade, usual_measure};
pub use copy::copy_style;
use folder::Files;

use crate::load::{COLLECTION_FILE, STYLE_FILE, load, load_collection};
use crate::report::Report;
use crate::{Collection, StyleDoc, demo, parse, with_pattern};

/// Why nothing was made. Nothing is left behind.
#[derive(Debug, thiserror::Error)]
pub enum StartError {
    /// There is something already.
    #[error("{} is there already and is not overwritten; choose another name or another folder", .0.display())]
    Exists(PathBuf),
    /// No folder can be named after this.
    #[error("a folder cannot be named after \"{0}\"; use a name with letters or digits in it")]
    Nameless(String),
    /// An answer does not hold.
    #[error("{0}")]
    Answer(String),
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
    let files: Files = demo::files()
        .iter()
        .map(|(path, text)| ((*path).to_owned(), text.as_bytes().to_vec()))
        .collect();
    folder::make(folder, &files)?;
    Ok(folder.join(demo::STYLE))
}

/// Whether a folder can become a collection: there is nothing in it, or it is not there yet.
#[must_use]
pub fn can_begin_in(folder: &Path) -> bool {
    folder::is_free(folder)
}

/// Makes a new style as it was answered, and gives the path of its file.
///
/// In a folder that is a collection (or inside one) the style is added to it, starting with that collection's own cloths,
/// yarns, trims and first workroom where it does not know the demo's. Any other folder must be absent or empty
/// and becomes a new collection.
///
/// # Errors
/// Something is there already, the answers do not fit, the collection lacks what a style needs, or the disk refused.
pub fn new_style(folder: &Path, asked: &NewStyle) -> Result<PathBuf, StartError> {
    begin(folder, asked, None)
}

/// A pattern a style begins with, and its `[pattern]`.
type WithPattern<'a> = Option<(&'a BroughtPattern, &'a str)>;

fn begin(folder: &Path, asked: &NewStyle, pattern: WithPattern<'_>) -> Result<PathBuf, StartError> {
    let slug = slug(&asked.name).ok_or_else(|| StartError::Nameless(asked.name.clone()))?;
    let inside = fs::canonicalize(folder).ok().and_then(|folder| {
        let mut above = folder.ancestors();
        above
            .find(|folder| folder.join(COLLECTION_FILE).is_file())
            .map(Path::to_path_buf)
    });
    match inside {
        Some(collection) => add_style(&collection, &slug, asked, pattern),
        None => new_collection(folder, &slug, asked, pattern),
    }
}

/// What a new style would say in a collection, without making it; `None` stands for a collection that is not there yet.
/// Drawings that lie beside a style are not in it.
///
/// # Errors
/// The answers do not fit, or the collection lacks what a style needs.
pub fn foresee(
    asked: &NewStyle,
    collection: Option<&Collection>,
) -> Result<(StyleDoc, Collection), StartError> {
    let collection = match collection {
        Some(collection) => collection.clone(),
        None => text::demo_collection().ok_or_else(no_demo)?,
    };
    let text = style_text(asked, &collection, None)?;
    let doc = parse(&text, STYLE_FILE, &collection)?;
    Ok((doc, collection))
}

fn style_text(
    asked: &NewStyle,
    collection: &Collection,
    pattern: WithPattern<'_>,
) -> Result<String, StartError> {
    let sizes = match pattern {
        // What the maker owns is there in its sizes, whatever the charts were checked in.
        Some(_) => answers::Offered::Any,
        None => answers::Offered::Charted,
    };
    let settled = answers::settle(&asked.answers, collection, sizes).map_err(StartError::Answer)?;
    let text = text::style(asked, &settled, collection);
    Ok(match pattern {
        Some((_, table)) => with_pattern(&text, table, None),
        None => text,
    })
}

/// The demo is part of the program; its own tests read it.
fn no_demo() -> StartError {
    StartError::Answer("the demo that a style begins with cannot be read".to_owned())
}

/// The shell the demo's style is cut from.
fn demo_shell() -> &'static str {
    demo::SHELL
}

fn add_style(
    collection_folder: &Path,
    slug: &str,
    asked: &NewStyle,
    pattern: WithPattern<'_>,
) -> Result<PathBuf, StartError> {
    let collection = load_collection(collection_folder)?;
    let text = style_text(asked, &collection, pattern)?;
    let folder = collection_folder.join("styles").join(slug);
    let path = folder.join(STYLE_FILE);
    parse(&text, &path.display().to_string(), &collection)?;
    let mut files: Files = vec![(STYLE_FILE.to_owned(), text.into_bytes())];
    files.extend(beside("", pattern));
    folder::make_checked(&folder, &files, |made| {
        load(&made.join(STYLE_FILE)).map(drop)
    })?;
    Ok(path)
}

fn new_collection(
    folder: &Path,
    slug: &str,
    asked: &NewStyle,
    pattern: WithPattern<'_>,
) -> Result<PathBuf, StartError> {
    let style = format!("styles/{slug}/{STYLE_FILE}");
    let label = asked.label.as_ref().unwrap_or(&asked.name);
    let collection = text::demo_collection().ok_or_else(no_demo)?;
    let text = style_text(asked, &collection, pattern)?;
    let demo_folder = demo::STYLE.trim_end_matches(STYLE_FILE);
    let shared = demo::files().iter().filter(|(path, _)| {
        // The demo's order is of the demo's style.
        !path.starts_with(demo_folder) && *path != demo::ORDER
    });
    let mut files: Files = shared
        .map(|&(path, text)| {
            let text = match path {
                COLLECTION_FILE => text::collection(label),
                _ => text.to_owned(),
            };
            (path.to_owned(), text.into_bytes())
        })
        .collect();
    files.push((style.clone(), text.into_bytes()));
    files.extend(beside(&format!("styles/{slug}/"), pattern));
    folder::make_checked(folder, &files, |made| load(&made.join(&style)).map(drop))?;
    Ok(folder.join(&style))
}

/// What lies beside a style that begins, below a folder: the demo's drawings, and the pattern it is made of.
fn beside(below: &str, pattern: WithPattern<'_>) -> Files {
    let art = demo::beside_style().map(|(path, text)| (path.to_owned(), text.as_bytes().to_vec()));
    let brought = pattern.map(|(pattern, _)| pattern.files());
    art.chain(brought.into_iter().flatten())
        .map(|(path, bytes)| (format!("{below}{path}"), bytes))
        .collect()
}

/// The code of a style for which none is given, made of its name's first letters: "Harbour Wide" → "HW-1".
#[must_use]
pub fn usual_code(name: &str) -> String {
    let initials: String = name
        .split(|c: char| !c.is_alphanumeric())
        .filter_map(|word| word.chars().next())
        .flat_map(char::to_uppercase)
        .take(4)
        .collect();
    format!("{initials}-1")
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_is_made_of_first_letters() {
        assert_eq!(usual_code("Harbour Wide"), "HW-1");
        assert_eq!(usual_code("lighter"), "L-1");
    }
}
