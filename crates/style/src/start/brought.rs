//! A style that begins with a pattern the maker owns.

use std::path::{Path, PathBuf};

use super::answers::NewStyle;
use super::error::StartError;
use super::folder::Files;
use crate::own::plain;
use crate::{Size, Tag};

/// The folder of a style that brought patterns lie in.
const FOLDER: &str = "pattern";

/// A pattern that a style begins with: the files it brings and the sizes it is whole in.
#[derive(Clone, Debug)]
pub struct BroughtPattern {
    /// The file of pieces, as the style will name it.
    pub file: String,
    /// The sizes; every waist in every length.
    pub sizes: Vec<Size>,
    pieces: String,
    original: (String, Vec<u8>),
}

impl BroughtPattern {
    /// `stem` and `ending` are of the file it was read from, whose bytes are kept beside the pieces.
    #[must_use]
    pub fn new(
        stem: &str,
        ending: &str,
        pieces: String,
        original: Vec<u8>,
        sizes: Vec<Size>,
    ) -> Self {
        let stem = plain(stem);
        // The ending is of a kind of file that was read, so it is one of ours.
        Self {
            file: format!("{FOLDER}/{stem}.toml"),
            original: (format!("{FOLDER}/{stem}.{ending}"), original),
            pieces,
            sizes,
        }
    }

    /// What lies beside the style.
    pub(super) fn files(&self) -> Files {
        let (name, bytes) = &self.original;
        vec![
            (self.file.clone(), self.pieces.clone().into_bytes()),
            (name.clone(), bytes.clone()),
        ]
    }

    fn tags(&self, tag: fn(&Size) -> Tag) -> Vec<Tag> {
        let mut tags: Vec<Tag> = self.sizes.iter().map(tag).collect();
        tags.sort_unstable();
        tags.dedup();
        tags
    }
}

/// Makes a new style of a pattern, and gives the path of its file. Its sizes are the pattern's; `table` is its `[pattern]`.
///
/// # Errors
/// As [`new_style`](super::new_style), and what is wrong with the pattern. Nothing is left behind.
pub fn new_style_of_pattern(
    folder: &Path,
    asked: &NewStyle,
    pattern: &BroughtPattern,
    table: &str,
) -> Result<PathBuf, StartError> {
    let mut asked = asked.clone();
    asked.answers.waists = pattern.tags(|size| size.waist);
    asked.answers.lengths = pattern.tags(|size| size.length);
    super::begin::begin(folder, &asked, Some((pattern, table)))
}
