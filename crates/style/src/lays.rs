//! Lays that were found are kept in the collection and found again while what they are made of stays
//! the same.
//!
//! A kept lay is a note, not a document: it can always be found anew. One that cannot be read, or belongs
//! to other pieces, is as good as none, and nobody edits it by hand; so it is JSON and has no report.

use std::path::{Path, PathBuf};

use serde::{Deserialize, Serialize};
use trade::Length;

use store::{RevisionId, StoreError};

use crate::load::read_file;
use crate::save::SaveError;

/// The folder of a collection that lays are kept in.
pub const LAYS_FOLDER: &str = "lays";

/// Where a save is prepared, inside it.
pub(crate) const PREPARED: &str = ".saving";

/// The version of the shape.
const FORMAT: u32 = 3;

/// Where one copy of a piece lies.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct KeptPlace {
    /// The piece.
    pub key: String,
    /// Which copy of it, from 0.
    pub copy: usize,
    /// Its turn in degrees.
    pub turn: u16,
    /// How far along the cloth.
    #[serde(rename = "x_mm", with = "exact")]
    pub x: Length,
    /// How far up from the lower edge.
    #[serde(rename = "y_mm", with = "exact")]
    pub y: Length,
}

/// What no lay of the pieces can be shorter than.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct KeptBounds {
    /// By area.
    #[serde(rename = "area_mm", with = "exact")]
    pub area: Length,
    /// By the longest piece.
    #[serde(rename = "longest_mm", with = "exact")]
    pub longest: Length,
    /// By pieces wider than half the cloth.
    #[serde(rename = "wide_mm", with = "exact")]
    pub wide: Length,
    /// By the straight sides on one edge.
    #[serde(rename = "segment_mm", with = "exact")]
    pub segment: Length,
    /// By the shapes on one edge.
    #[serde(rename = "path_mm", with = "exact")]
    pub path: Length,
    /// By all pieces on both edges together.
    #[serde(rename = "skeleton_mm", with = "exact")]
    pub skeleton: Length,
    /// By what lines along the cloth run through.
    #[serde(rename = "lines_mm", with = "exact")]
    pub lines: Length,
}

/// A lay as it is kept.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct KeptLay {
    format: u32,
    /// What all the rest hashes to: a note that anybody wrote into says what nobody found.
    sum: String,
    /// What everything it depends on hashes to: pieces, cloth and rules.
    made_of: String,
    /// What lies there, for people.
    pub words: String,
    /// How many seconds were spent looking in all.
    pub seconds: u64,
    /// The cloth used.
    #[serde(rename = "length_mm", with = "exact")]
    pub length: Length,
    /// What it cannot be shorter than.
    pub bounds: KeptBounds,
    /// Where each copy lies.
    pub places: Vec<KeptPlace>,
}

impl KeptLay {
    /// A lay to be kept.
    #[must_use]
    pub fn new(
        made_of: &RevisionId,
        words: String,
        (length, bounds): (Length, KeptBounds),
        places: Vec<KeptPlace>,
        seconds: u64,
    ) -> Self {
        Self {
            format: FORMAT,
            sum: String::new(),
            made_of: made_of.as_str().to_owned(),
            words,
            seconds,
            length,
            bounds,
            places,
        }
        .summed()
    }

    /// What it hashes to, its own sum left out.
    fn sum(&self) -> String {
        let rest = Self {
            sum: String::new(),
            ..self.clone()
        };
        let text = serde_json::to_string(&rest).unwrap_or_default();
        RevisionId::of(&text).as_str().to_owned()
    }

    fn summed(mut self) -> Self {
        self.sum = self.sum();
        self
    }

    /// A note that was read, where it is one as it was kept of these pieces.
    fn of(text: &str, made_of: &str) -> Option<Self> {
        let kept: Self = serde_json::from_str(text).ok()?;
        let true_note = kept.format == FORMAT && kept.made_of == made_of && kept.sum == kept.sum();
        true_note.then_some(kept)
    }
}

/// Lengths to the last digit: rounded ones could make pieces touch that lay apart. As texts, because
/// numbers of JSON are not read back to the last digit by every reader.
mod exact {
    use serde::de::Error;
    use serde::{Deserialize, Deserializer, Serializer};
    use trade::Length;

    pub fn serialize<S: Serializer>(length: &Length, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(&length.to_mm())
    }

    pub fn deserialize<'de, D: Deserializer<'de>>(from: D) -> Result<Length, D::Error> {
        let text = String::deserialize(from)?;
        text.parse().map(Length::mm).map_err(D::Error::custom)
    }
}

/// The file of a kept lay: the words it is known by, with every sign a file name cannot hold replaced.
fn file(collection_folder: &Path, words: &str) -> PathBuf {
    const LONGEST: usize = 80;
    let mut name: String = words
        .chars()
        .map(|c| {
            if c.is_ascii_alphanumeric() || "=.".contains(c) {
                c
            } else {
                '-'
            }
        })
        .take(LONGEST)
        .collect();
    // Words that were cut or changed could be those of another lay.
    if name != words {
        let id = RevisionId::of(words);
        name = format!("{name}-{}", id.as_str().get(..8).unwrap_or_default());
    }
    collection_folder
        .join(LAYS_FOLDER)
        .join(format!("{name}.json"))
}

/// The lay kept under these words, when it was made of the same.
#[must_use]
pub fn kept_lay(collection_folder: &Path, words: &str, made_of: &RevisionId) -> Option<KeptLay> {
    let text = read_file(&file(collection_folder, words)).ok()?;
    KeptLay::of(&text, made_of.as_str())
}

/// Keeps a lay unless a shorter one of the same is kept already; that one then counts as looked for as
/// long as both together. At every moment the file is whole.
///
/// # Errors
/// The disk refused; what was kept is as it was.
pub fn keep_lay(collection_folder: &Path, lay: &KeptLay) -> Result<PathBuf, SaveError> {
    let file = file(collection_folder, &lay.words);
    let prepared = collection_folder.join(LAYS_FOLDER).join(PREPARED);
    store::write_note(&file, &prepared, || {
        let made_of = lay.made_of.as_str();
        let kept = read_file(&file)
            .ok()
            .and_then(|text| KeptLay::of(&text, made_of));
        let mut best = match &kept {
            Some(kept) if kept.length <= lay.length => kept.clone(),
            _ => lay.clone(),
        };
        best.seconds = kept
            .map_or(0, |kept| kept.seconds)
            .saturating_add(lay.seconds);
        let text = serde_json::to_string(&best.summed()).map_err(|error| StoreError::Disk {
            path: file.clone(),
            source: error.into(),
        })?;
        Ok(text + "\n")
    })?;
    Ok(file)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use std::fs;

    use super::*;

    fn lay(made_of: &str, mm: f64, seconds: u64) -> KeptLay {
        let bounds = KeptBounds {
            area: Length::mm(1.0 / 3.0),
            longest: Length::ZERO,
            wide: Length::ZERO,
            segment: Length::ZERO,
            path: Length::ZERO,
            skeleton: Length::ZERO,
            lines: Length::ZERO,
        };
        let place = KeptPlace {
            key: "32x32 Front as drawn".to_owned(),
            copy: 0,
            turn: 180,
            x: Length::mm(0.1 + 0.2),
            y: Length::mm(1e-7 / 3.0),
        };
        let id = RevisionId::of(made_of);
        let words = "tideline-14 32x32=1".to_owned();
        KeptLay::new(&id, words, (Length::mm(mm), bounds), vec![place], seconds)
    }

    #[test]
    fn a_lay_is_found_again_to_the_last_digit() {
        let folder = tempfile::tempdir().unwrap();
        let first = lay("these", 2500.0 / 3.0, 10);
        keep_lay(folder.path(), &first).unwrap();
        let kept = |made_of: &str| kept_lay(folder.path(), &first.words, &RevisionId::of(made_of));
        assert_eq!(kept("these"), Some(first.clone()));
        // Other pieces: as if there were none.
        assert_eq!(kept("those"), None);
        // A damaged file: the same.
        fs::write(file(folder.path(), &first.words), "{").unwrap();
        assert_eq!(kept("these"), None);
        keep_lay(folder.path(), &first).unwrap();
        assert_eq!(kept("these"), Some(first.clone()));
    }

    #[test]
    fn a_number_that_was_written_in_is_not_shown() {
        let folder = tempfile::tempdir().unwrap();
        let lay = lay("these", 900.0, 10);
        let path = keep_lay(folder.path(), &lay).unwrap();
        let text = fs::read_to_string(&path).unwrap();
        for (from, to) in [
            ("900", "90"),
            ("\"seconds\":10", "\"seconds\":9999"),
            ("180", "0"),
        ] {
            assert!(text.contains(from), "{from}: {text}");
            fs::write(&path, text.replacen(from, to, 1)).unwrap();
            assert_eq!(
                kept_lay(folder.path(), &lay.words, &RevisionId::of("these")),
                None,
                "{from}"
            );
        }
        fs::write(&path, &text).unwrap();
        assert_eq!(
            kept_lay(folder.path(), &lay.words, &RevisionId::of("these")),
            Some(lay)
        );
    }

    #[test]
    fn only_a_shorter_one_takes_its_place() {
        let folder = tempfile::tempdir().unwrap();
        let keep = |lay: &KeptLay| {
            keep_lay(folder.path(), lay).unwrap();
            kept_lay(folder.path(), &lay.words, &RevisionId::of("these"))
        };
        keep(&lay("these", 900.0, 10));
        let longer = keep(&lay("these", 950.0, 20)).unwrap();
        assert_eq!((longer.length, longer.seconds), (Length::mm(900.0), 30));
        let shorter = keep(&lay("these", 850.0, 5)).unwrap();
        assert_eq!((shorter.length, shorter.seconds), (Length::mm(850.0), 35));
        // Of other pieces a longer one does too.
        assert_eq!(keep(&lay("those", 990.0, 1)), None);
    }

    #[test]
    fn names_stay_inside_the_folder_and_apart() {
        let place = |words: &str| file(Path::new("c"), words);
        assert_eq!(place("a 1=2").parent(), Some(Path::new("c/lays")));
        assert_eq!(place("../../x").parent(), Some(Path::new("c/lays")));
        assert_ne!(place("a b"), place("a-b"));
        let long = "x".repeat(200);
        assert_ne!(place(&long), place(&format!("{long}y")));
    }
}
