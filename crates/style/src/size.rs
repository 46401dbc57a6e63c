//! A garment size: the waist and length a label prints, both in inches, whole or with a half.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::Tag;
use crate::tag::pointed;

/// A size as the trade tags it: waist by length, in inches ("32x32", "31.5x32").
///
/// These are tag numbers. What the finished garment measures at a size is in the chart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Size {
    /// The waist on the tag.
    pub waist: Tag,
    /// The inseam length on the tag.
    pub length: Tag,
}

impl Size {
    /// The size with this waist and length on its tag, both in whole inches.
    #[must_use]
    pub const fn new(waist: u32, length: u32) -> Self {
        Self::of(Tag::inches(waist), Tag::inches(length))
    }

    /// The size with these two tags.
    #[must_use]
    pub const fn of(waist: Tag, length: Tag) -> Self {
        Self { waist, length }
    }
}

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}x{}", self.waist, self.length)
    }
}

/// The text is not a size.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("`{text}` is not a size; {}", self.instead())]
pub struct SizeError {
    /// What was written.
    pub text: String,
}

impl SizeError {
    /// What would be right.
    #[must_use]
    pub fn instead(&self) -> String {
        match pointed::<Size>(&self.text) {
            Some(right) => format!("write halves with a point: {right}"),
            None => "write waist x length in inches, such as \"32x32\" or \"31.5x32\"".to_owned(),
        }
    }
}

impl FromStr for Size {
    type Err = SizeError;

    /// Reads "32x32" or "31.5x32"; "32 x 32" and "32×32" mean the same.
    fn from_str(text: &str) -> Result<Self, SizeError> {
        let error = || SizeError {
            text: text.to_owned(),
        };
        let (waist, length) = text.split_once(['x', 'X', '×']).ok_or_else(error)?;
        match (waist.parse(), length.parse()) {
            (Ok(waist), Ok(length)) => Ok(Self { waist, length }),
            _ => Err(error()),
        }
    }
}

impl Serialize for Size {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Size {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

/// The run of sizes a style is made in.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Sizes {
    /// Waist tags, rising.
    pub waists: Vec<Tag>,
    /// Length tags, rising.
    pub lengths: Vec<Tag>,
    /// The size the chart's values are stated at; one of the run.
    pub base: Size,
}

impl Sizes {
    /// Every size of the run, waist by waist, shortest length first.
    pub fn all(&self) -> impl Iterator<Item = Size> + '_ {
        self.waists.iter().flat_map(|&waist| {
            self.lengths
                .iter()
                .map(move |&length| Size { waist, length })
        })
    }

    /// Whether the run has this size.
    #[must_use]
    pub fn contains(&self, size: Size) -> bool {
        self.waists.contains(&size.waist) && self.lengths.contains(&size.length)
    }
}

impl From<&Size> for words::Given {
    fn from(size: &Size) -> Self {
        Self::Text(size.to_string())
    }
}

impl From<Size> for words::Given {
    fn from(size: Size) -> Self {
        Self::Text(size.to_string())
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn a_size_reads_back_as_it_prints() {
        for text in ["32x32", "28x30", "38x34", "31.5x32", "32x31.5", "31.5x31.5"] {
            assert_eq!(text.parse::<Size>().unwrap().to_string(), text);
        }
        assert_eq!("32 x 34".parse::<Size>().unwrap(), Size::new(32, 34));
        assert_eq!("32×34".parse::<Size>().unwrap(), Size::new(32, 34));
    }

    #[test]
    fn what_is_not_a_size_is_refused() {
        for text in [
            "",
            "32",
            "x",
            "32x",
            "x32",
            "0x32",
            "32x0",
            "-1x32",
            "+1x3",
            "32x32x32",
            "99999999999x1",
            "31.25x32",
            "31.5",
            "31,5x32",
        ] {
            assert!(text.parse::<Size>().is_err(), "{text}");
        }
        let said = "31,5x32".parse::<Size>().unwrap_err().to_string();
        assert_eq!(
            said,
            "`31,5x32` is not a size; write halves with a point: 31.5x32"
        );
    }
}
