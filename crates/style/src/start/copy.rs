//! A style that begins as another one is: its text with every comment, its art and its pattern, not its history.

use std::fs;
use std::path::{Path, PathBuf};

use super::error::StartError;
use super::folder::{Files, disk, make};
use super::named;
use crate::details::ArtPath;
use crate::{Edit, LARGEST_FILE, Loaded, ReadError, STYLE_FILE, read_bytes};

/// What may lie beside a style and goes with it.
const FOLDERS: [&str; 2] = ["art", "pattern"];

/// The most files taken along; a style has a handful.
const MOST_FILES: usize = 200;

/// Copies a style under another name and code, and gives the path of the new one's file. An empty code becomes one of the
/// name that is free; `folder` holds in place of one named after the style.
///
/// Its drawings and its pattern go with it; its earlier versions, packs and whatever else lies beside it do not.
///
/// # Errors
/// Something is there already, name or code do not fit, or the disk refused. Nothing is left behind.
pub fn copy_style(
    from: &Loaded,
    name: &str,
    code: &str,
    folder: Option<&str>,
) -> Result<PathBuf, StartError> {
    let slug = named::folder(name, folder)?;
    let code = named::code(Some(&from.collection_folder), code, name)?;
    let mut copy = from.clone();
    for (path, text) in [("style.name", name), ("style.code", &code)] {
        let edit = Edit::set(path, text).map_err(|why| StartError::Answer(why.to_string()))?;
        copy = copy.with_edit(&edit)?;
    }
    let folder = from.collection_folder.join("styles").join(slug);
    let mut files: Files = vec![(STYLE_FILE.to_owned(), copy.text.into_bytes())];
    for name in beside(from) {
        let path = from.folder().join(&name);
        let bytes = read_bytes(&path, LARGEST_FILE).map_err(|unread| match unread {
            ReadError::Refused { source, .. } => disk(&path)(source),
            other => StartError::Answer(format!("it cannot be copied: {other}")),
        })?;
        files.push((name, bytes));
    }
    make(&folder, &files)?;
    Ok(folder.join(STYLE_FILE))
}

/// The files that belong to a style: those it names, and those of its folders. Links are followed only where it names
/// them, for then it was checked that they stay inside.
fn beside(from: &Loaded) -> Vec<String> {
    let mut names: Vec<String> = from
        .style
        .art()
        .into_iter()
        .map(|(_, art)| art.as_str().to_owned())
        .collect();
    names.extend(
        from.style
            .pattern
            .iter()
            .map(|own| own.file.as_str().to_owned()),
    );
    for folder in FOLDERS {
        let Ok(entries) = fs::read_dir(from.folder().join(folder)) else {
            continue;
        };
        let mut inside: Vec<String> = entries
            .flatten()
            .filter(|entry| is_small_file(&entry.path()))
            .filter_map(|entry| entry.file_name().into_string().ok())
            .map(|name| format!("{folder}/{name}"))
            .filter(|name| ArtPath::new(name).is_ok())
            .collect();
        inside.sort();
        names.extend(inside);
    }
    let mut once: Vec<String> = Vec::new();
    for name in names {
        if !once.contains(&name) && once.len() < MOST_FILES {
            once.push(name);
        }
    }
    once
}

fn is_small_file(path: &Path) -> bool {
    fs::symlink_metadata(path).is_ok_and(|data| data.is_file() && data.len() <= LARGEST_FILE)
}
