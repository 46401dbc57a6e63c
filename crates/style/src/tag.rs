//! A tag number: what a label prints for a waist or a length, in inches, whole or with a half.

use std::fmt;
use std::str::FromStr;

use serde::de::{Error, Unexpected, Visitor};
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use trade::Length;

/// The number on a label for a waist or a length: 32, or 31.5.
///
/// Held in half inches, so that tags compare exactly and no other part of an inch can be one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Tag(u32);

impl Tag {
    /// The smallest tag a run may have.
    pub const SMALLEST: Self = Self::inches(10);
    /// The largest tag a run may have.
    pub const LARGEST: Self = Self::inches(80);

    /// A tag of whole inches.
    #[must_use]
    pub const fn inches(inches: u32) -> Self {
        Self::halves(inches.saturating_mul(2))
    }

    /// A tag of so many half inches: 63 is 31.5.
    #[must_use]
    pub const fn halves(halves: u32) -> Self {
        Self(halves)
    }

    /// The half inches.
    #[must_use]
    pub const fn in_halves(self) -> u32 {
        self.0
    }

    /// The inches the tag says, as a length.
    #[must_use]
    pub fn length(self) -> Length {
        Length::inches(self.to_inches())
    }

    /// The inches the tag says, as the number a grade is multiplied by.
    #[must_use]
    pub fn to_inches(self) -> f64 {
        f64::from(self.0) / 2.0
    }

    /// How many inches it is from another tag to this one; below zero when this one is smaller.
    #[must_use]
    pub fn steps_from(self, from: Self) -> f64 {
        self.to_inches() - from.to_inches()
    }

    /// How far two tags are apart.
    #[must_use]
    pub const fn abs_diff(self, other: Self) -> Self {
        Self(self.0.abs_diff(other.0))
    }

    /// The whole inches, where there is no half.
    #[must_use]
    pub const fn whole(self) -> Option<u32> {
        if self.0.is_multiple_of(2) {
            Some(self.0 / 2)
        } else {
            None
        }
    }

    /// The tag as a style file writes it: a number without quotes.
    pub(crate) fn value(self) -> toml_edit::Value {
        match self.whole() {
            Some(inches) => i64::from(inches).into(),
            None => self.to_inches().into(),
        }
    }

    /// The tag a number of inches is, where it is whole or has a half.
    #[must_use]
    pub fn of_number(inches: f64) -> Option<Self> {
        let halves = inches * 2.0;
        let fits = halves.fract() == 0.0 && (1.0..=f64::from(u32::MAX)).contains(&halves);
        fits.then_some(Self(halves as u32))
    }
}

impl fmt::Display for Tag {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.whole() {
            Some(inches) => fmt::Display::fmt(&inches, f),
            None => f.pad(&format!("{}.5", self.0 / 2)),
        }
    }
}

/// The text is not a tag.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("`{text}` is not a tag; {}", self.instead())]
pub struct TagError {
    /// What was written.
    pub text: String,
}

impl TagError {
    /// What would be right.
    #[must_use]
    pub fn instead(&self) -> String {
        match pointed::<Tag>(&self.text) {
            Some(right) => format!("write the half with a point: {right}"),
            None => "write inches, whole or with a half, such as 32 or 31.5".to_owned(),
        }
    }
}

/// A tag or size whose halves were written with a comma, with points instead, where that is one.
pub(crate) fn pointed<T: FromStr + ToString>(text: &str) -> Option<String> {
    let right = text.contains(',').then(|| text.replace(',', "."))?;
    Some(right.parse::<T>().ok()?.to_string())
}

impl FromStr for Tag {
    type Err = TagError;

    /// Reads "32", "31.5" or "32.0".
    fn from_str(text: &str) -> Result<Self, TagError> {
        let read = || {
            let text = text.trim();
            let (inches, part) = text.split_once('.').unwrap_or((text, "0"));
            let half = match part {
                "0" => 0,
                "5" => 1,
                _ => return None,
            };
            let digits = !inches.is_empty() && inches.bytes().all(|b| b.is_ascii_digit());
            let inches = digits.then(|| inches.parse::<u32>().ok()).flatten()?;
            let halves = inches.checked_mul(2)?.checked_add(half)?;
            (halves > 0).then_some(Self(halves))
        };
        read().ok_or_else(|| TagError {
            text: text.to_owned(),
        })
    }
}

impl Serialize for Tag {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self.whole() {
            Some(inches) => serializer.serialize_u32(inches),
            None => serializer.serialize_f64(self.to_inches()),
        }
    }
}

impl<'de> Deserialize<'de> for Tag {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(Number)
    }
}

struct Number;

impl Visitor<'_> for Number {
    type Value = Tag;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a tag in inches, whole or with a half")
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Tag, E> {
        let halves = number.checked_mul(2).and_then(|h| u32::try_from(h).ok());
        let tag = halves.filter(|halves| *halves > 0).map(Tag);
        tag.ok_or_else(|| E::invalid_value(Unexpected::Unsigned(number), &self))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<Tag, E> {
        match u64::try_from(number) {
            Ok(number) => self.visit_u64(number),
            Err(_) => Err(E::invalid_value(Unexpected::Signed(number), &self)),
        }
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<Tag, E> {
        Tag::of_number(number).ok_or_else(|| E::invalid_value(Unexpected::Float(number), &self))
    }
}

impl From<Tag> for words::Given {
    fn from(tag: Tag) -> Self {
        Self::Text(tag.to_string())
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn a_tag_reads_back_as_it_prints_and_as_its_number() {
        for (text, halves, json) in [
            ("32", 64, "32"),
            ("31.5", 63, "31.5"),
            ("10", 20, "10"),
            ("0.5", 1, "0.5"),
        ] {
            let tag: Tag = text.parse().unwrap();
            assert_eq!((tag, tag.to_string()), (Tag::halves(halves), text.into()));
            assert_eq!(serde_json::to_string(&tag).unwrap(), json);
            assert_eq!(serde_json::from_str::<Tag>(json).unwrap(), tag);
        }
        assert_eq!("32.0".parse::<Tag>().unwrap(), Tag::inches(32));
        assert_eq!(
            serde_json::from_str::<Tag>("32.0").unwrap(),
            Tag::inches(32)
        );
        assert_eq!(
            format!("{:>5}|{:>5}", Tag::inches(32), Tag::halves(63)),
            "   32| 31.5"
        );
    }

    #[test]
    fn what_is_not_a_tag_is_refused() {
        for text in [
            "",
            "0",
            "0.0",
            ".5",
            "31.",
            "31.25",
            "31.50",
            "-31.5",
            "+31",
            "31.5.5",
            "1e1",
            "inf",
            "4294967295",
            "2147483648",
            "99999999999",
        ] {
            assert!(text.parse::<Tag>().is_err(), "{text}");
        }
        for json in [
            "0",
            "-31",
            "31.25",
            "1e300",
            "-0.5",
            "9999999999",
            "\"31.5\"",
            "null",
        ] {
            assert!(serde_json::from_str::<Tag>(json).is_err(), "{json}");
        }
    }

    #[test]
    fn a_comma_is_answered_with_the_point() {
        let said = "31,5".parse::<Tag>().unwrap_err().to_string();
        assert_eq!(
            said,
            "`31,5` is not a tag; write the half with a point: 31.5"
        );
        let said = "31,25".parse::<Tag>().unwrap_err().to_string();
        assert!(said.ends_with("such as 32 or 31.5"), "{said}");
    }

    #[test]
    fn tags_are_ordered_and_measured_in_halves() {
        assert!(Tag::inches(31) < Tag::halves(63) && Tag::halves(63) < Tag::inches(32));
        assert_eq!(Tag::halves(63).steps_from(Tag::inches(32)), -0.5);
        assert_eq!(Tag::halves(63).length(), Length::inches(31.5));
    }
}
