//! Which of our sizes a file means.

use std::str::FromStr;

use patterns::PatternFile;
use style::{Size, Tag};

use crate::IntakeError;

/// What the maker says of a size: the one size of a file without grading, or what a file calls it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SizeName {
    /// The name in the file; `None` for the one size of a file without grading.
    pub label: Option<String>,
    /// The size.
    pub size: Size,
}

impl FromStr for SizeName {
    type Err = String;

    /// Reads "32x32", or "M=32x32".
    fn from_str(text: &str) -> Result<Self, String> {
        let (label, size) = match text.split_once('=') {
            Some((label, size)) => (Some(label.trim().to_owned()), size),
            None => (None, text),
        };
        let size = size.trim().parse().map_err(|why| format!("{why}"))?;
        Ok(SizeName { label, size })
    }
}

/// The size each size name of a file stands for, in the order of the file.
pub(crate) fn sizes<'a>(
    file: &'a PatternFile,
    stated: &[SizeName],
    lengths: &[Tag],
) -> Result<Vec<(&'a str, Size)>, IntakeError> {
    let labels = file.sizes();
    if let ([label], [SizeName { label: None, size }]) = (labels.as_slice(), stated) {
        return Ok(vec![(label, *size)]);
    }
    let mut out: Vec<(&str, Size)> = Vec::new();
    for label in &labels {
        let said = stated
            .iter()
            .find(|s| s.label.as_deref().is_some_and(|l| l == *label));
        let Some(size) = said.map(|s| s.size).or_else(|| read(label, lengths)) else {
            let (what, instead) = if label.is_empty() {
                (
                    "the file does not say which size it is".to_owned(),
                    "say it: --size 32x32".to_owned(),
                )
            } else {
                (
                    format!("\"{label}\" is not a size of waist and length"),
                    format!("say which it is: --size \"{label}=32x32\""),
                )
            };
            return Err(IntakeError::new(what, instead));
        };
        if let Some((other, _)) = out.iter().find(|(_, s)| *s == size) {
            return Err(IntakeError::new(
                format!("\"{other}\" and \"{label}\" are both {size}"),
                "say which sizes they are: --size \"NAME=32x32\" for each".to_owned(),
            ));
        }
        out.push((label, size));
    }
    Ok(out)
}

/// "32x32", "32/32", "32-32", "W32 L32", "31.5/32", or "32" where there is one length only.
fn read(label: &str, lengths: &[Tag]) -> Option<Size> {
    if let Ok(size) = label.parse() {
        return Some(size);
    }
    let words = label.split(|c: char| !c.is_ascii_digit() && c != '.');
    let numbers: Vec<Tag> = words.flat_map(tags).collect();
    let inches = |tag: Tag| (Tag::SMALLEST..=Tag::LARGEST).contains(&tag);
    match (numbers.as_slice(), lengths) {
        ([waist, length], _) if inches(*waist) && inches(*length) => {
            Some(Size::of(*waist, *length))
        }
        ([waist], [length]) if inches(*waist) => Some(Size::of(*waist, *length)),
        _ => None,
    }
}

/// The tag a word is: "31.5"; or those its dots part, as in "31.32".
fn tags(word: &str) -> Vec<Tag> {
    match word.parse() {
        Ok(tag) => vec![tag],
        Err(_) => word.split('.').filter_map(|w| w.parse().ok()).collect(),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use patterns::Piece;

    fn file(labels: &[&str]) -> PatternFile {
        let piece = |label: &&str| Piece {
            size: (*label).to_owned(),
            ..Piece::default()
        };
        PatternFile {
            pieces: labels.iter().map(piece).collect(),
            ..PatternFile::default()
        }
    }

    #[test]
    fn sizes_are_read_as_they_are_usually_written() {
        for (label, size) in [
            ("32x34", Size::new(32, 34)),
            ("30/32", Size::new(30, 32)),
            ("W31 L30", Size::new(31, 30)),
            ("33", Size::new(33, 32)),
            ("31.32", Size::new(31, 32)),
            ("31.5x32", Size::of(Tag::halves(63), Tag::inches(32))),
            ("31.5/32", Size::of(Tag::halves(63), Tag::inches(32))),
            ("W31.5 L30.5", Size::of(Tag::halves(63), Tag::halves(61))),
            ("31.5", Size::of(Tag::halves(63), Tag::inches(32))),
        ] {
            assert_eq!(read(label, &[Tag::inches(32)]), Some(size), "{label}");
        }
        assert_eq!(read("31.25/32", &[Tag::inches(32)]), None);
        assert_eq!(read("M", &[Tag::inches(32)]), None);
        assert_eq!(read("33", &[Tag::inches(30), Tag::inches(32)]), None);
    }

    #[test]
    fn what_is_not_said_is_asked() {
        let one = file(&[""]);
        assert!(
            sizes(&one, &[], &[Tag::inches(32)])
                .unwrap_err()
                .instead
                .contains("--size")
        );
        let said: SizeName = "32x32".parse().unwrap();
        assert_eq!(
            sizes(&one, &[said], &[Tag::inches(32)]).unwrap(),
            [("", Size::new(32, 32))]
        );
        let two = file(&["S", "M"]);
        let said: Vec<SizeName> = ["S=30x32", "M=32x32"].map(|s| s.parse().unwrap()).to_vec();
        assert_eq!(sizes(&two, &said, &[Tag::inches(32)]).unwrap().len(), 2);
        let why = sizes(&two, &said[..1], &[Tag::inches(32)]).unwrap_err();
        assert!(why.what.contains("\"M\""), "{}", why.what);
        let twice: Vec<SizeName> = ["S=32x32", "M=32x32"].map(|s| s.parse().unwrap()).to_vec();
        assert!(sizes(&two, &twice, &[Tag::inches(32)]).is_err());
    }
}
