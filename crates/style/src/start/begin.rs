//! Beginning: a style in a collection, and a collection where there is none.

use std::fs;
use std::path::{Path, PathBuf};

use super::answers::NewStyle;
use super::brought::BroughtPattern;
use super::error::StartError;
use super::folder::{self, Files};
use super::{materials, named, settled_answers, text};
use crate::load::{COLLECTION_FILE, STYLE_FILE, load, load_collection};
use crate::{Collection, StyleDoc, demo, parse, with_pattern};

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
/// and becomes a new collection. Nothing that names somebody is taken from the demo: what is not asked stays open.
///
/// # Errors
/// Something is there already, the answers do not fit, the collection lacks what a style needs, or the disk refused.
pub fn new_style(folder: &Path, asked: &NewStyle) -> Result<PathBuf, StartError> {
    begin(folder, asked, None)
}

/// A pattern a style begins with, and its `[pattern]`.
pub(super) type WithPattern<'a> = Option<(&'a BroughtPattern, &'a str)>;

pub(super) fn begin(
    folder: &Path,
    asked: &NewStyle,
    pattern: WithPattern<'_>,
) -> Result<PathBuf, StartError> {
    let slug = named::folder(&asked.name, asked.folder.as_deref())?;
    let inside = fs::canonicalize(folder).ok().and_then(|folder| {
        let mut above = folder.ancestors();
        above
            .find(|folder| folder.join(COLLECTION_FILE).is_file())
            .map(Path::to_path_buf)
    });
    let asked = &NewStyle {
        code: named::code(inside.as_deref(), &asked.code, &asked.name)?,
        ..asked.clone()
    };
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
        None => begun(asked)?,
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
        Some(_) => settled_answers::Offered::Any,
        None => settled_answers::Offered::Charted,
    };
    let settled =
        settled_answers::settle(&asked.answers, collection, sizes).map_err(StartError::Answer)?;
    let text = text::style(asked, &settled, collection);
    Ok(match pattern {
        Some((_, table)) => with_pattern(&text, table, None),
        None => text,
    })
}

/// What a style begins with is part of the program, whose own tests read it: only a name can be in the way.
fn no_demo() -> StartError {
    StartError::Answer(
        "a label or a workroom cannot be called that; give it a name of letters".to_owned(),
    )
}

/// The name of a new label.
fn label_name(asked: &NewStyle) -> &str {
    asked.label.as_ref().unwrap_or(&asked.name)
}

/// A new collection as it is asked for.
fn begun(asked: &NewStyle) -> Result<Collection, StartError> {
    materials::collection(label_name(asked), &asked.words).ok_or_else(no_demo)
}

fn add_style(
    collection_folder: &Path,
    slug: &str,
    asked: &NewStyle,
    pattern: WithPattern<'_>,
) -> Result<PathBuf, StartError> {
    let collection = load_collection(collection_folder)?;
    // What is there already is not asked again.
    let told = [&asked.label, &asked.words.workroom, &asked.words.place];
    if told.into_iter().any(Option::is_some) {
        return Err(StartError::Answer(format!(
            "{} is a collection already: its label and its workrooms are in its {COLLECTION_FILE}",
            collection_folder.display()
        )));
    }
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
    let collection = begun(asked)?;
    let text = style_text(asked, &collection, pattern)?;
    let mut files: Files = vec![(
        COLLECTION_FILE.to_owned(),
        text::label(label_name(asked), &asked.words).into_bytes(),
    )];
    let shared = materials::FILES.iter().map(|(name, text)| {
        let text = match *name {
            "trims.toml" => text::trims(text, asked.label.as_deref()),
            _ => (*text).to_owned(),
        };
        ((*name).to_owned(), text.into_bytes())
    });
    files.extend(shared);
    files.push((style.clone(), text.into_bytes()));
    files.extend(beside(&format!("styles/{slug}/"), pattern));
    folder::make_checked(folder, &files, |made| load(&made.join(&style)).map(drop))?;
    Ok(folder.join(&style))
}

/// What lies beside a style that begins, below a folder: the pattern it is made of.
fn beside(below: &str, pattern: WithPattern<'_>) -> Files {
    let brought = pattern.map(|(pattern, _)| pattern.files());
    brought
        .into_iter()
        .flatten()
        .map(|(path, bytes)| (format!("{below}{path}"), bytes))
        .collect()
}
