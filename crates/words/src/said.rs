//! What is to be said, as data: a message of the catalogue and what is put into it. Words are made of it only where
//! somebody reads them, in that reader's language.

use std::fmt;

use fluent_bundle::{FluentArgs, FluentValue};
use serde::{Serialize, Serializer};

use crate::Words;

/// The name of a message into which nothing is put. The build makes one for each, in [`crate::key`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Key(pub(crate) &'static str);

impl Key {
    /// The name, as the catalogue writes it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        self.0
    }
}

/// A message of the catalogue with what is put into it.
#[derive(Clone, Debug, PartialEq)]
pub struct Said {
    key: &'static str,
    given: Vec<(&'static str, Given)>,
}

impl Said {
    /// What the build makes of a message that is given something.
    pub(crate) const fn with(key: &'static str, given: Vec<(&'static str, Given)>) -> Self {
        Self { key, given }
    }

    /// The name of its message.
    #[must_use]
    pub const fn key(&self) -> &'static str {
        self.key
    }

    /// What is put in, by name.
    pub fn given(&self) -> impl Iterator<Item = (&'static str, &Given)> {
        self.given.iter().map(|(name, given)| (*name, given))
    }
}

impl From<Key> for Said {
    fn from(key: Key) -> Self {
        Self::with(key.0, Vec::new())
    }
}

/// What is put into a message.
#[derive(Clone, Debug, PartialEq)]
pub enum Given {
    /// What has no words of ours: names that the maker gave, sizes, values as the file writes them.
    Text(String),
    /// How many.
    Count(u64),
    /// A quantity.
    Figure(Figure),
    /// Another message.
    Said(Box<Said>),
    /// Several, with commas between.
    List(Vec<Given>),
}

/// A quantity as it is to be read: with so many decimals, in a unit.
#[derive(Clone, Copy, Debug)]
pub struct Figure {
    value: f64,
    places: u8,
    unit: &'static str,
}

impl Figure {
    /// A number of units; `unit` is its sign, empty for a bare number.
    ///
    /// Rooms that know units have functions of their own that make figures (`trade`): nobody else calls this.
    #[must_use]
    pub const fn new(value: f64, places: u8, unit: &'static str) -> Self {
        Self {
            value,
            places,
            unit,
        }
    }

    /// The number, in its unit.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.value
    }

    /// The sign of its unit; empty for a bare number.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        self.unit
    }
}

impl PartialEq for Figure {
    /// Figures are the same when they read the same: what differs only behind the last place is the same figure to whoever reads it.
    fn eq(&self, other: &Self) -> bool {
        self.to_string() == other.to_string()
    }
}

impl fmt::Display for Figure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let gap = match self.unit {
            "" | "°" => "",
            _ => " ",
        };
        let places = usize::from(self.places);
        write!(f, "{:.places$}{gap}{}", self.value, self.unit)
    }
}

impl Words {
    /// What is said, in this language.
    #[must_use]
    pub fn say(&self, said: impl Into<Said>) -> String {
        self.saying(&said.into())
    }

    /// The same of something that is kept.
    #[must_use]
    pub fn saying(&self, said: &Said) -> String {
        if said.given.is_empty() {
            return self.plain(said.key).to_owned();
        }
        let mut given = FluentArgs::new();
        for (name, value) in &said.given {
            given.set(*name, self.value_of(value));
        }
        self.said(said.key, &given)
    }

    /// What is put in, in this language.
    #[must_use]
    pub fn putting(&self, given: &Given) -> String {
        match given {
            Given::Text(text) => text.clone(),
            Given::Count(count) => count.to_string(),
            Given::Figure(figure) => figure.to_string(),
            Given::Said(said) => self.saying(said),
            Given::List(all) => {
                let all: Vec<String> = all.iter().map(|one| self.putting(one)).collect();
                all.join(", ")
            }
        }
    }

    /// The words of a message into which nothing is put.
    #[must_use]
    pub fn named(&self, key: Key) -> &str {
        self.plain(key.0)
    }

    fn value_of(&self, given: &Given) -> FluentValue<'static> {
        match given {
            Given::Count(count) => FluentValue::from(*count),
            other => FluentValue::from(self.putting(other)),
        }
    }
}

impl Serialize for Said {
    /// The name of the message and what is put in, for programs.
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        use serde::ser::SerializeMap;
        let mut map = to.serialize_map(Some(self.given.len() + 1))?;
        map.serialize_entry("message", self.key)?;
        for (name, given) in &self.given {
            map.serialize_entry(name, given)?;
        }
        map.end()
    }
}

impl Serialize for Given {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Text(text) => to.serialize_str(text),
            Self::Count(count) => to.serialize_u64(*count),
            Self::Figure(figure) => to.collect_str(figure),
            Self::Said(said) => said.serialize(to),
            Self::List(all) => all.serialize(to),
        }
    }
}

impl From<String> for Given {
    fn from(text: String) -> Self {
        Self::Text(text)
    }
}

impl From<&str> for Given {
    fn from(text: &str) -> Self {
        Self::Text(text.to_owned())
    }
}

impl From<&String> for Given {
    fn from(text: &String) -> Self {
        Self::Text(text.clone())
    }
}

impl From<Figure> for Given {
    fn from(figure: Figure) -> Self {
        Self::Figure(figure)
    }
}

impl From<Said> for Given {
    fn from(said: Said) -> Self {
        Self::Said(Box::new(said))
    }
}

impl From<Key> for Given {
    fn from(key: Key) -> Self {
        Said::from(key).into()
    }
}

impl<T: Into<Given>> From<Vec<T>> for Given {
    fn from(all: Vec<T>) -> Self {
        Self::List(all.into_iter().map(Into::into).collect())
    }
}

macro_rules! counts {
    ($($number:ty),+) => {
        $(impl From<$number> for Given {
            fn from(count: $number) -> Self {
                Self::Count(u64::try_from(count).unwrap_or(u64::MAX))
            }
        })+
    };
}
counts!(u8, u16, u32, u64, usize);

impl From<char> for Given {
    fn from(letter: char) -> Self {
        Self::Text(letter.to_string())
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn what_is_said_is_data_until_somebody_reads_it() {
        let said: Said = crate::say::ClothPairTakes {
            area: Figure::new(1.25, 2, "m²"),
            length: "",
            mass: crate::key::CLOTH_PLY,
            pieces: 3_u32,
        }
        .into();
        let english = Words::english();
        assert_eq!(
            english.saying(&said),
            format!(
                "1.25 m² in 3 pieces, {}; at full width ",
                english.cloth_ply()
            )
        );
        let other = Words::of(
            "pl",
            &["cloth-ply = warstwa\ncloth-pair-takes = { $pieces }/{ $area }/{ $mass }\n"],
        );
        assert_eq!(other.unwrap().saying(&said), "3/1.25 m²/warstwa");
        let json = serde_json::to_value(&said).unwrap();
        assert_eq!(json["message"], "cloth-pair-takes");
        assert_eq!(json["area"], "1.25 m²");
    }

    #[test]
    fn figures_are_written_as_a_ruler_reads() {
        for (figure, read) in [
            (Figure::new(8.0, 1, "mm"), "8.0 mm"),
            (Figure::new(-0.04, 1, "mm"), "-0.0 mm"),
            (Figure::new(12.5, 1, "°"), "12.5°"),
            (Figure::new(0.5734, 3, ""), "0.573"),
            (Figure::new(3.0, 0, "%"), "3 %"),
        ] {
            assert_eq!(figure.to_string(), read);
        }
    }
}
