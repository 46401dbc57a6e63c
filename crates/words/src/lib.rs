//! What is said to the maker, in one catalogue.
//!
//! The words lie in `languages/en`, one file for each part of the program, in the open Fluent syntax: a key, its
//! sentence, and what is put into it. The build makes a method of [`Words`] for every key, so a sentence that is not
//! there, or one that is given too little, is found by the compiler. English is the catalogue; any other language is the
//! same keys in other words ([`Words::of`]), and what it leaves out is said in English.

use std::collections::HashMap;
use std::fmt::Display;
use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use unic_langid::LanguageIdentifier;

mod id;
mod reading;
mod said;

pub use said::{Figure, Given, Key, Said};

use reading::Message;

include!(concat!(env!("OUT_DIR"), "/catalogue.rs"));

/// Everything that can be said, in one language.
pub struct Words {
    bundle: FluentBundle<FluentResource>,
    /// The messages into which nothing is put, ready to be shown.
    plain: HashMap<String, String>,
    language: LanguageIdentifier,
}

/// What is wrong with a language's own catalogue.
#[derive(Debug, PartialEq, Eq, thiserror::Error)]
pub enum Wrong {
    /// Its name is not that of a language.
    #[error("`{0}` is not a language; one is named as in BCP 47, such as `pt` or `pt-BR`")]
    Language(String),
    /// It cannot be read.
    #[error("the catalogue cannot be read: {0}")]
    Unreadable(String),
    /// It has a message that English has not.
    #[error("`{0}` is not a message of the English catalogue")]
    Unknown(String),
    /// A message asks for something that the English one is not given.
    #[error("`{key}` asks for `${name}`, which the English message is not given")]
    NotGiven {
        /// The message.
        key: String,
        /// What it asks for.
        name: String,
    },
}

impl Words {
    /// English, which always has every message.
    #[must_use]
    pub fn english() -> &'static Self {
        static ENGLISH: LazyLock<Words> = LazyLock::new(|| {
            let language = LanguageIdentifier::default();
            // That the catalogue can be read was found when it was built, and is tested.
            let resources = ENGLISH_FILES.iter().map(|text| resource(text));
            Words::filled(language, resources)
        });
        &ENGLISH
    }

    /// Another language: every file of its catalogue. What it does not say is said in English.
    ///
    /// # Errors
    /// Its name is no language's, a file cannot be read, or a message is not one of the English catalogue or asks for more.
    pub fn of(language: &str, files: &[&str]) -> Result<Self, Wrong> {
        let parsed: LanguageIdentifier = language
            .parse()
            .map_err(|_| Wrong::Language(language.to_owned()))?;
        let english = english_messages();
        for text in files {
            for message in reading::messages(text).map_err(Wrong::Unreadable)? {
                let known = english.iter().find(|known| known.key == message.key);
                let known = known.ok_or_else(|| Wrong::Unknown(message.key.clone()))?;
                let more = message.given.iter().find(|(name, _)| {
                    let given = known.given.iter().any(|(given, _)| given == name);
                    !given
                });
                if let Some((name, _)) = more {
                    return Err(Wrong::NotGiven {
                        key: message.key.clone(),
                        name: name.clone(),
                    });
                }
            }
        }
        let all = ENGLISH_FILES.iter().chain(files);
        Ok(Self::filled(parsed, all.map(|text| resource(text))))
    }

    /// Its language, as BCP 47 names it.
    #[must_use]
    pub fn language(&self) -> String {
        if self.language == LanguageIdentifier::default() {
            return "en".to_owned();
        }
        self.language.to_string()
    }

    /// Later resources say what earlier ones do in other words.
    fn filled(
        language: LanguageIdentifier,
        resources: impl Iterator<Item = FluentResource>,
    ) -> Self {
        let mut bundle = FluentBundle::new_concurrent(vec![language.clone()]);
        // What is put in is read in the same direction; marks around it would be seen in addresses and files.
        bundle.set_use_isolating(false);
        for resource in resources {
            bundle.add_resource_overriding(resource);
        }
        let mut words = Self {
            bundle,
            plain: HashMap::new(),
            language,
        };
        let plain = english_messages().into_iter();
        words.plain = plain
            .filter(|message| message.given.is_empty())
            .map(|message| (words.said(&message.key, &FluentArgs::new()), message.key))
            .map(|(said, key)| (key, said))
            .collect();
        words
    }

    fn plain(&self, key: &'static str) -> &str {
        self.plain.get(key).map_or(key, String::as_str)
    }

    fn told(&self, key: &str, given: &[(&'static str, FluentValue<'_>)]) -> String {
        let given = given
            .iter()
            .map(|(name, value)| (*name, value.clone()))
            .collect();
        self.said(key, &given)
    }

    fn said(&self, key: &str, given: &FluentArgs<'_>) -> String {
        let pattern = self
            .bundle
            .get_message(key)
            .and_then(|message| message.value());
        // Every key is in the English catalogue.
        let Some(pattern) = pattern else {
            return key.to_owned();
        };
        let mut errors = Vec::new();
        self.bundle
            .format_pattern(pattern, Some(given), &mut errors)
            .into_owned()
    }
}

/// The English catalogue, message by message.
fn english_messages() -> Vec<Message> {
    let files = ENGLISH_FILES.iter();
    files
        .flat_map(|text| reading::messages(text).unwrap_or_default())
        .collect()
}

/// A file without the entries that cannot be read, of which a catalogue that was checked has none.
fn resource(text: &str) -> FluentResource {
    FluentResource::try_new(text.to_owned()).unwrap_or_else(|(readable, _)| readable)
}

fn text(value: impl Display) -> FluentValue<'static> {
    FluentValue::from(value.to_string())
}

/// Numbers too large to be counted are many.
fn count(value: impl TryInto<u64>) -> FluentValue<'static> {
    FluentValue::from(value.try_into().unwrap_or(u64::MAX))
}

fn counted(value: impl TryInto<u64>) -> Given {
    Given::Count(value.try_into().unwrap_or(u64::MAX))
}

/// Every message of the English catalogue: its key, and what it is given.
#[must_use]
pub fn catalogue() -> Vec<(String, Vec<String>)> {
    let messages = english_messages().into_iter();
    messages
        .map(|message| {
            let names = message.given.into_iter().map(|(name, _)| name);
            (message.key, names.collect())
        })
        .collect()
}

/// The English catalogue's files, as they are.
#[must_use]
pub const fn english_files() -> &'static [&'static str] {
    ENGLISH_FILES
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::reading::Kind;

    #[test]
    fn every_english_message_says_something_and_takes_what_it_is_given() {
        let english = Words::english();
        let messages = english_messages();
        assert!(messages.len() > 20, "only {} messages", messages.len());
        for text in ENGLISH_FILES {
            reading::messages(text).unwrap();
        }
        for message in messages {
            let numbered = |(name, kind): &(String, Kind)| {
                let value = match kind {
                    Kind::Text => super::text(format!("<{name}>")),
                    Kind::Count => count(7_u32),
                };
                (name.clone(), value)
            };
            let given: FluentArgs<'_> = message.given.iter().map(numbered).collect();
            let pattern = english.bundle.get_message(&message.key).unwrap();
            let mut errors = Vec::new();
            let said =
                english
                    .bundle
                    .format_pattern(pattern.value().unwrap(), Some(&given), &mut errors);
            assert!(errors.is_empty(), "{}: {errors:?}", message.key);
            assert!(!said.trim().is_empty(), "{} says nothing", message.key);
        }
    }

    #[test]
    fn another_language_orders_and_counts_in_its_own_way() {
        let words = Words::of(
            "pl",
            &["cloth-title = Tkanina\n\
               cloth-pair-takes = { $pieces ->\n    [one] { $pieces } element\n    [few] { $pieces } elementy\n   \
               *[many] { $pieces } elementów\n    }: { $area }\n"],
        )
        .unwrap();
        assert_eq!(words.language(), "pl");
        assert_eq!(words.cloth_title(), "Tkanina");
        let takes = |pieces: u32| {
            let (area, length, mass) = ("1 m²", "", "");
            words.say(say::ClothPairTakes {
                area,
                length,
                mass,
                pieces,
            })
        };
        // Polish has one, few (2 to 4) and many (CLDR plural rules).
        assert_eq!(takes(1), "1 element: 1 m²");
        assert_eq!(takes(3), "3 elementy: 1 m²");
        assert_eq!(takes(12), "12 elementów: 1 m²");
        // What it leaves out is said in English.
        assert_eq!(words.cloth_ply(), Words::english().cloth_ply());
        assert_eq!(Words::english().language(), "en");
    }

    #[test]
    fn a_language_says_what_english_says_and_asks_for_no_more() {
        let wrong = |language, text| Words::of(language, &[text]).err().unwrap();
        assert_eq!(wrong("not a one", ""), Wrong::Language("not a one".into()));
        let unknown = wrong("pt", "cloth-tilte = Tecido\n");
        assert_eq!(unknown, Wrong::Unknown("cloth-tilte".into()));
        let more = Wrong::NotGiven {
            key: "cloth-lead".into(),
            name: "name".into(),
        };
        assert_eq!(wrong("pt", "cloth-lead = { $name }\n"), more);
        let unreadable = wrong("pt", "cloth-title = { $\n");
        assert!(matches!(unreadable, Wrong::Unreadable(_)), "{unreadable}");
    }
}
