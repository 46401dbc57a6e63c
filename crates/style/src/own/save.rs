//! Putting a brought pattern into a style: its files beside the style, its `[pattern]` into the style file.

use std::fs;
use std::path::Path;

use store::{REVISIONS_FOLDER, read_bytes};
use toml_edit::{Array, DocumentMut, Item, value};

use crate::details::ArtPath;
use crate::{Loaded, SaveError, Saved, Size, Tag, save};

/// A file that belongs to a style.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Beside {
    /// Its name inside the style's folder, such as `pattern/harbour.toml`.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

impl Beside {
    /// A file under a name that is free in a style's folder, or taken by the same bytes: what is there is never
    /// overwritten, for an earlier version of the style may name it.
    #[must_use]
    pub fn new(loaded: &Loaded, folder: &str, stem: &str, ending: &str, bytes: Vec<u8>) -> Self {
        let stem = plain(stem);
        let name = (1_u32..)
            .map(|k| match k {
                1 => format!("{folder}/{stem}.{ending}"),
                k => format!("{folder}/{stem}-{k}.{ending}"),
            })
            .find(|name| {
                let path = loaded.folder().join(name);
                fs::symlink_metadata(&path).is_err() || holds(&path, &bytes)
            });
        Self {
            name: name.unwrap_or_else(|| format!("{folder}/{stem}.{ending}")),
            bytes,
        }
    }
}

/// Whether a file is there and holds these bytes.
fn holds(path: &Path, bytes: &[u8]) -> bool {
    read_bytes(path, bytes.len() as u64).is_ok_and(|there| there == bytes)
}

/// "Harbour Front.v2" → "harbour-front-v2".
pub(crate) fn plain(stem: &str) -> String {
    const LONGEST: usize = 60;
    let lower = stem.to_lowercase();
    let words: Vec<&str> = lower
        .split(|c: char| !c.is_ascii_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    let name: String = words.join("-").chars().take(LONGEST).collect();
    if name.is_empty() {
        "pattern".to_owned()
    } else {
        name
    }
}

/// The text of a style with this `[pattern]` in place of the one it has, and with these sizes where they are given.
///
/// Everything else, comments included, stays as it was. A text that is no TOML is given back unchanged.
#[must_use]
pub fn with_pattern(text: &str, pattern: &str, sizes: Option<&[Size]>) -> String {
    let Ok(mut document) = text.parse::<DocumentMut>() else {
        return text.to_owned();
    };
    document.remove("pattern");
    if let Some(sizes) = sizes {
        let tags = |tag: fn(&Size) -> Tag| -> Item {
            let mut tags: Vec<Tag> = sizes.iter().map(tag).collect();
            tags.sort_unstable();
            tags.dedup();
            value(Array::from_iter(tags.into_iter().map(Tag::value)))
        };
        if let Some(table) = document.get_mut("sizes").and_then(Item::as_table_like_mut) {
            for (key, tags) in [
                ("waists", tags(|s| s.waist)),
                ("lengths", tags(|s| s.length)),
            ] {
                table.insert(key, tags);
            }
        }
    }
    let text = document.to_string();
    format!("{}\n\n{pattern}", text.trim_end())
}

/// Saves a style together with files that belong to it: all of them or nothing.
///
/// The files are written first, under names that are free; the style that names them is saved last, and when it
/// cannot be, they are taken away again.
///
/// # Errors
/// As [`save`]; the style and its folder are then as they were.
pub fn save_beside(loaded: &Loaded, text: &str, files: &[Beside]) -> Result<Saved, SaveError> {
    let folder = fs::canonicalize(loaded.folder()).map_err(disk(loaded.folder()))?;
    let mut added = Added::default();
    let made = files
        .iter()
        .try_for_each(|file| added.write(&folder, file))
        .and_then(|()| save(loaded, text));
    if made.is_err() {
        added.take_away();
    }
    made
}

/// What was put into a style's folder.
#[derive(Default)]
struct Added {
    folders: Vec<std::path::PathBuf>,
    files: Vec<std::path::PathBuf>,
}

impl Added {
    fn write(&mut self, folder: &Path, file: &Beside) -> Result<(), SaveError> {
        let name = ArtPath::new(&file.name).map_err(|why| {
            disk(folder)(std::io::Error::new(std::io::ErrorKind::InvalidInput, why))
        })?;
        let path = name.in_folder(folder);
        if holds(&path, &file.bytes) {
            return Ok(());
        }
        let parent = path.parent().unwrap_or(folder).to_path_buf();
        if !parent.is_dir() {
            fs::create_dir(&parent).map_err(disk(&parent))?;
            self.folders.push(parent.clone());
        }
        // Made anew or not at all: a file that came there meanwhile is somebody else's.
        let prepared = folder.join(REVISIONS_FOLDER);
        store::add_file(&path, &file.bytes, &prepared)?;
        self.files.push(path);
        Ok(())
    }

    /// Failing to take something away again is no worse than what went before.
    fn take_away(self) {
        for file in self.files {
            let _ = fs::remove_file(file);
        }
        for folder in self.folders {
            let _ = fs::remove_dir(folder);
        }
    }
}

fn disk(path: &Path) -> impl FnOnce(std::io::Error) -> SaveError + '_ {
    move |source| SaveError::Disk {
        path: path.to_path_buf(),
        source,
    }
}
