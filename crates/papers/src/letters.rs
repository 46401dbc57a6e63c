//! Which letters of a style no typeface of the papers has, so that no name prints as empty boxes unsaid.

use std::collections::BTreeSet;

use draft::{Finding, Severity};
use serde::Serialize;
use serde_json::Value;
use style::{Loaded, PartId, Subject, Valued};
use words::{Said, key, say};

use crate::Pack;
use crate::typeset::has_letter;

/// What a letter that cannot be set is found under.
const CODE: &str = "papers::letters";
/// So many letters are named; the others are counted.
const NAMED: usize = 6;
/// Keys whose values name files. They are not printed.
const FILES: [&str; 2] = ["art", "file"];

/// A finding for every text of a style, and of what it uses of its collection, that cannot be printed as it is written.
///
/// Its subject is the field. Letters that no carried typeface has are a warning; right-to-left writing, which is set
/// but in pages that run from left to right, is a note.
#[must_use]
pub fn letters(loaded: &Loaded) -> Vec<Finding> {
    texts(loaded)
        .iter()
        .flat_map(|(field, text)| {
            let lacking = lacking(&Subject::Value(Valued::at(field.clone())), text);
            lacking.into_iter().chain(from_the_right(field, text))
        })
        .collect()
}

/// Every text of a style, and of what it uses of its collection, each with its field.
fn texts(loaded: &Loaded) -> Vec<(String, String)> {
    let mut texts = Vec::new();
    gather(&loaded.style, "", &mut texts);
    let used: BTreeSet<String> = texts.iter().map(|(_, text)| text.clone()).collect();
    let collection = &loaded.collection;
    texts.push(("collection.name".to_owned(), collection.name.clone()));
    texts.push(("collection.contact".to_owned(), collection.contact.clone()));
    for (name, entry) in &collection.workrooms {
        take_used(&used, "workrooms", name, entry, &mut texts);
    }
    for (name, entry) in &collection.cloths {
        take_used(&used, "cloths", name, entry, &mut texts);
    }
    for (name, entry) in &collection.yarns {
        take_used(&used, "yarns", name, entry, &mut texts);
    }
    for (name, entry) in &collection.trims {
        take_used(&used, "trims", name, entry, &mut texts);
    }
    texts
}

/// The letters of a filled pack that cannot be printed and are in no field of the style: changes since a version before,
/// and whatever else.
pub(crate) fn letters_elsewhere(pack: &Pack, loaded: &Loaded) -> Option<Finding> {
    let mut printed = Vec::new();
    gather(pack, "", &mut printed);
    let all: String = printed.into_iter().map(|(_, text)| text).collect();
    let told: String = texts(loaded).into_iter().map(|(_, text)| text).collect();
    let told = missing(&told);
    let left: String = missing(&all)
        .into_iter()
        .filter(|c| !told.contains(c))
        .collect();
    lacking(&PartId::OtherTexts.into(), &left)
}

fn take_used(
    used: &BTreeSet<String>,
    kind: &str,
    name: &str,
    entry: &impl Serialize,
    texts: &mut Vec<(String, String)>,
) {
    if used.contains(name) {
        gather(entry, &format!("{kind}.{name}"), texts);
    }
}

/// Every text in some values, each with its path.
fn gather(values: &impl Serialize, path: &str, texts: &mut Vec<(String, String)>) {
    // A value that is no JSON holds no text that could be printed.
    let value = serde_json::to_value(values).unwrap_or_default();
    walk(value, path, texts);
}

fn walk(value: Value, path: &str, texts: &mut Vec<(String, String)>) {
    match value {
        Value::String(text) => texts.push((path.to_owned(), text)),
        Value::Array(items) => {
            for (at, item) in items.into_iter().enumerate() {
                walk(item, &format!("{path}[{at}]"), texts);
            }
        }
        Value::Object(fields) => {
            for (name, field) in fields {
                if FILES.contains(&name.as_str()) {
                    continue;
                }
                let dot = if path.is_empty() { "" } else { "." };
                walk(field, &format!("{path}{dot}{name}"), texts);
            }
        }
        Value::Null | Value::Bool(_) | Value::Number(_) => {}
    }
}

/// The letters of a text that no typeface has, each once.
fn missing(text: &str) -> BTreeSet<char> {
    text.chars()
        .filter(|c| !c.is_ascii() && !is_unseen(*c) && !has_letter(*c))
        .collect()
}

/// Marks that leave no mark of their own: joiners, variation selectors, the order of writing, blanks, controls
/// (the default ignorable code points of UAX #44, as far as they are met in names).
fn is_unseen(c: char) -> bool {
    c.is_control()
        || c.is_whitespace()
        || matches!(u32::from(c), 0xAD | 0x34F | 0x61C | 0x180B..=0x180F | 0x200B..=0x200F | 0x202A..=0x202E
            | 0x2060..=0x206F | 0xFE00..=0xFE0F | 0xFEFF | 0xE0000..=0xE0FFF)
}

fn lacking(field: &Subject, text: &str) -> Option<Finding> {
    let missing = missing(text);
    let named: Vec<String> = missing
        .iter()
        .take(NAMED)
        .map(|c| format!("{c} (U+{:04X})", u32::from(*c)))
        .collect();
    let more = missing.len().saturating_sub(NAMED);
    let message: Said = match named.as_slice() {
        [] => return None,
        [letter] => say::PapersLetter { letter, text }.into(),
        _ if more == 0 => say::PapersLetters {
            letters: named,
            text,
        }
        .into(),
        _ => say::PapersLettersMore {
            letters: named,
            more: more.to_string(),
            text,
        }
        .into(),
    };
    let source = key::PAPERS_LETTERS_SOURCE;
    let found = Finding::new(CODE, Severity::Warning, field.clone(), message, source);
    Some(found.help(key::PAPERS_LETTERS_HELP))
}

/// Whether a letter belongs to a script written from right to left (the blocks of the Unicode roadmap).
fn runs_left(c: char) -> bool {
    matches!(u32::from(c), 0x590..=0x8FF | 0xFB1D..=0xFDFF | 0xFE70..=0xFEFE | 0x10800..=0x10FFF | 0x1E800..=0x1EFFF)
}

fn from_the_right(field: &str, text: &str) -> Option<Finding> {
    if !text.chars().any(runs_left) {
        return None;
    }
    let field = Subject::Value(Valued::at(field.to_owned()));
    let message = say::PapersRightToLeft { text };
    let source = key::PAPERS_LETTERS_SOURCE;
    let found = Finding::new(CODE, Severity::Note, field, message, source);
    Some(found.help(key::PAPERS_RIGHT_TO_LEFT_HELP))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn name() -> Subject {
        Subject::Value(Valued::at("style.name".to_owned()))
    }

    fn demo() -> Loaded {
        let folder = tempfile::tempdir().unwrap();
        let style = style::write_demo(&folder.path().join("demo")).unwrap();
        style::load(&style).unwrap()
    }

    #[test]
    fn what_a_typeface_has_is_no_finding() {
        for text in [
            "Saltmarsh Yard",
            "Łódź, Αθήνα, Київ",
            "潮風堂",
            "渡し守 デニム",
            "e\u{301} 14 oz/yd² → ½",
        ] {
            assert_eq!(lacking(&name(), text), None, "{text}");
            assert_eq!(from_the_right("style.name", text), None, "{text}");
        }
    }

    #[test]
    fn a_letter_no_typeface_has_is_named() {
        for (text, named) in [
            ("ท่าเรือ", "ท (U+0E17)"),
            ("नाव", "न (U+0928)"),
            ("Ferryman 👖", "the letter 👖 (U+1F456)"),
            ("渡船们", "the letter 们 (U+4EEC)"),
        ] {
            let found = lacking(&name(), text);
            let found = found
                .as_ref()
                .map(|found| (found.severity, found.message(words::Words::english())));
            assert!(
                matches!(&found, Some((Severity::Warning, message)) if message.contains(named)),
                "{text}: {found:?}"
            );
        }
    }

    #[test]
    fn writing_from_the_right_is_said() {
        for text in ["بحار", "מלח", "Yard بحار 32"] {
            let found = from_the_right("style.name", text);
            assert!(
                found.is_some_and(|found| found.message(words::Words::english()).contains(text)),
                "{text}"
            );
        }
    }

    #[test]
    fn what_is_not_a_field_is_found_in_the_pack() {
        let mut pack = Pack::default();
        pack.style.summary = "ท and 潮".to_owned();
        let loaded = demo();
        let found = letters_elsewhere(&pack, &loaded);
        assert!(found.is_some_and(|found| found.message(words::Words::english()).contains('ท')));
        let mut known = loaded;
        known.style.style.name = "ท".to_owned();
        assert_eq!(letters_elsewhere(&pack, &known), None);
    }
}
