//! The path of a value in a style file: "chart.thigh.value", "seams.inseam.rows[0].density".

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// One step of a path.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Step {
    /// Into a section, by key.
    Key(String),
    /// Into a list, by number from 0.
    Index(usize),
}

/// The path of a value in a style file; never empty, and it begins with a key.
///
/// It reads and prints as text with dots between keys and list numbers in brackets, counted from 0.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DocPath(Vec<Step>);

/// The text is not a path.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "`{text}` is not a path; write keys with dots between them and list numbers in brackets, such as \"seams.inseam.rows[0].density\""
)]
pub struct DocPathError {
    /// What was written, cut when long.
    pub text: String,
}

/// Steps of the longest path. No file has a place so deep; walking and writing go a level deeper with each step.
const MOST_STEPS: usize = 16;

impl DocPath {
    /// The steps, from the file's top.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.0
    }
}

impl fmt::Display for DocPath {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (number, step) in self.0.iter().enumerate() {
            match step {
                Step::Key(key) if number == 0 => f.write_str(key)?,
                Step::Key(key) => write!(f, ".{key}")?,
                Step::Index(index) => write!(f, "[{index}]")?,
            }
        }
        Ok(())
    }
}

/// Steps as a path is written.
pub(crate) fn written(steps: &[Step]) -> String {
    DocPath(steps.to_vec()).to_string()
}

impl FromStr for DocPath {
    type Err = DocPathError;

    fn from_str(text: &str) -> Result<Self, DocPathError> {
        let error = || DocPathError {
            text: crate::reader::short(text),
        };
        let mut steps = Vec::new();
        for part in text.split('.') {
            let (key, mut indices) = part.split_at(part.find('[').unwrap_or(part.len()));
            let plain = key
                .bytes()
                .all(|b| b.is_ascii_alphanumeric() || b == b'_' || b == b'-');
            if key.is_empty() || !plain {
                return Err(error());
            }
            steps.push(Step::Key(key.to_owned()));
            while !indices.is_empty() {
                let (number, rest) = indices
                    .strip_prefix('[')
                    .and_then(|rest| rest.split_once(']'))
                    .ok_or_else(error)?;
                let digits = !number.is_empty() && number.bytes().all(|b| b.is_ascii_digit());
                let number = digits
                    .then(|| number.parse().ok())
                    .flatten()
                    .ok_or_else(error)?;
                steps.push(Step::Index(number));
                indices = rest;
            }
            if steps.len() > MOST_STEPS {
                return Err(error());
            }
        }
        Ok(Self(steps))
    }
}

impl Serialize for DocPath {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for DocPath {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        String::deserialize(from)?
            .parse()
            .map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn a_path_reads_back_as_it_prints() {
        for text in [
            "style.name",
            "seams.inseam.rows[0].density",
            "labels[2].place",
            "sizes.waists[10]",
        ] {
            assert_eq!(text.parse::<DocPath>().unwrap().to_string(), text);
        }
    }

    #[test]
    fn what_is_no_path_is_refused() {
        for text in [
            "",
            ".",
            "a..b",
            "[0]",
            "a[",
            "a[]",
            "a[x]",
            "a[0]b",
            "a b",
            "a[-1]",
            "a[99999999999999999999]",
        ] {
            assert!(text.parse::<DocPath>().is_err(), "{text}");
        }
        for deep in [".a".repeat(40), "[0]".repeat(40), ".a".repeat(400_000)] {
            assert!(format!("a{deep}").parse::<DocPath>().is_err());
        }
    }
}
