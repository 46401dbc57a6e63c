//! Beginning: the demo collection, a new collection, a new style by a few answers or as a copy.
//!
//! A folder is made whole beside where it belongs and then renamed into place, so that it is never there in part,
//! and nothing that exists is ever overwritten.

mod answers;
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
pub use copy::copy_style;
use folder::Files;

use crate::load::{COLLECTION_FILE, STYLE_FILE, load, load_collection};
use crate::report::Report;
use crate::{Collection, StyleDoc, demo, parse};

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
    let slug = slug(&asked.name).ok_or_else(|| StartError::Nameless(asked.name.clone()))?;
    let inside = fs::canonicalize(folder).ok().and_then(|folder| {
        let mut above = folder.ancestors();
        above
            .find(|folder| folder.join(COLLECTION_FILE).is_file())
            .map(Path::to_path_buf)
    });
    match inside {
        Some(collection) => add_style(&collection, &slug, asked),
        None => new_collection(folder, &slug, asked),
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
    let text = style_text(asked, &collection)?;
    let doc = parse(&text, STYLE_FILE, &collection)?;
    Ok((doc, collection))
}

fn style_text(asked: &NewStyle, collection: &Collection) -> Result<String, StartError> {
    let settled = answers::settle(&asked.answers, collection).map_err(StartError::Answer)?;
    Ok(text::style(asked, &settled, collection))
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
) -> Result<PathBuf, StartError> {
    let collection = load_collection(collection_folder)?;
    let text = style_text(asked, &collection)?;
    let folder = collection_folder.join("styles").join(slug);
    let path = folder.join(STYLE_FILE);
    parse(&text, &path.display().to_string(), &collection)?;
    let mut files: Files = vec![(STYLE_FILE.to_owned(), text.into_bytes())];
    files.extend(beside_demo(""));
    folder::make(&folder, &files)?;
    Ok(path)
}

fn new_collection(folder: &Path, slug: &str, asked: &NewStyle) -> Result<PathBuf, StartError> {
    let style = format!("styles/{slug}/{STYLE_FILE}");
    let label = asked.label.as_ref().unwrap_or(&asked.name);
    let collection = text::demo_collection().ok_or_else(no_demo)?;
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
    files.push((style.clone(), style_text(asked, &collection)?.into_bytes()));
    files.extend(beside_demo(&format!("styles/{slug}/")));
    folder::make_checked(folder, &files, |made| load(&made.join(&style)).map(drop))?;
    Ok(folder.join(&style))
}

/// What lies beside the demo's style, below a folder.
fn beside_demo(below: &str) -> impl Iterator<Item = (String, Vec<u8>)> {
    demo::beside_style()
        .map(move |(path, text)| (format!("{below}{path}"), text.as_bytes().to_vec()))
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
