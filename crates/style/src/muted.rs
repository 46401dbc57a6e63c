//! Findings the maker has looked at and lives with.

use serde::Serialize;
use toml_edit::{DocumentMut, Item, TableLike, Value};
use words::Words;

use crate::Subject;
use crate::old_subjects::of_old_words;

/// One `[[muted]]`: a finding that is no longer counted, and why.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Muted {
    /// The code of the finding, such as `sewing::patch-hangs`.
    pub code: String,
    /// What it is about.
    #[serde(rename = "about")]
    pub subject: Subject,
    /// Why the maker lives with it.
    pub reason: String,
}

impl Muted {
    /// What an `about` of a file says: the code of a subject, or the words of a finding from before there were codes.
    pub(crate) fn subject(code: &str, about: &str) -> Subject {
        Subject::of(about)
            .or_else(|| of_old_words(code, about))
            .unwrap_or_else(|| Subject::Other(about.to_owned()))
    }

    /// Whether a finding is the muted one. Values were muted in words that only the value itself still knows.
    pub(crate) fn is(&self, code: &str, subject: &Subject) -> bool {
        let same = match (&self.subject, subject) {
            (Subject::Other(words), Subject::Value(_)) => Words::english().say(subject) == *words,
            (muted, subject) => muted == subject,
        };
        self.code == code && same
    }
}

/// Writes the code of a subject wherever a text still has the words of an old finding, each in its place.
pub(crate) fn muted_by_code(document: &mut DocumentMut) {
    match document.get_mut("muted") {
        Some(Item::ArrayOfTables(all)) => all.iter_mut().for_each(|one| by_code(one)),
        Some(Item::Value(Value::Array(all))) => {
            let tables = all.iter_mut().filter_map(Value::as_inline_table_mut);
            tables.for_each(|one| by_code(one));
        }
        _ => {}
    }
}

fn by_code(muted: &mut dyn TableLike) {
    let text = |key| muted.get(key).and_then(Item::as_str);
    let (Some(code), Some(about)) = (text("code"), text("about")) else {
        return;
    };
    if Subject::of(about).is_some() {
        return;
    }
    let Some(subject) = of_old_words(code, about) else {
        return;
    };
    if let Some(Item::Value(old)) = muted.get_mut("about") {
        let mut value = Value::from(subject.code());
        *value.decor_mut() = old.decor().clone();
        *old = value;
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn old_words_become_codes_where_they_stand() {
        let text = "[[muted]]\ncode = \"sewing::row-near-edge\"\nabout = \"inseam, row 1\"   # as it was\nreason = \"mine\"\n\n\
                    [[muted]]\ncode = \"sewing::x\"\nabout = \"nobody's words\"\nreason = \"old\"\n";
        let mut document: DocumentMut = text.parse().unwrap();
        muted_by_code(&mut document);
        let written = document.to_string();
        assert_eq!(written, text.replace("inseam, row 1", "row:inseam/1"));
        muted_by_code(&mut document);
        assert_eq!(document.to_string(), written);
    }

    #[test]
    fn a_finding_is_muted_by_code_old_words_or_not_at_all() {
        let muted = |about: &str| Muted {
            code: "sewing::unusual-value".to_owned(),
            subject: Muted::subject("sewing::unusual-value", about),
            reason: String::new(),
        };
        let value = Subject::Value(crate::Valued::new("shape.seat_dart", "seat dart"));
        for about in ["value:shape.seat_dart", "seat dart"] {
            assert!(muted(about).is("sewing::unusual-value", &value), "{about}");
        }
        assert!(!muted("seat dart").is("sewing::other", &value));
        assert!(!muted("shape.seat_dart").is("sewing::unusual-value", &value));
    }
}
