//! Findings: what the program noticed about a style that is not an error in its file.

use geometry::Point;
use serde::{Serialize, Serializer};
use style::{Edit, Muted, Size, StyleDoc, Subject};
use words::{Said, Words, key, say};

use crate::piece::PieceId;

/// How serious a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Severity {
    /// Good to know.
    Note,
    /// Look at this before sewing.
    Warning,
    /// This cannot be sewn, or not as the chart says.
    Error,
}

impl Severity {
    /// The word for people.
    pub const fn word(self) -> &'static str {
        match self {
            Severity::Note => "note",
            Severity::Warning => "warning",
            Severity::Error => "error",
        }
    }
}

/// Where on the garment something was noticed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// The piece in whose frame the point lies.
    pub piece: PieceId,
    /// The point, in millimetres.
    pub at: Point,
}

impl Serialize for Place {
    /// The code of the piece, and x and y in millimetres.
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        #[derive(Serialize)]
        struct Coordinates {
            piece: &'static str,
            x: f64,
            y: f64,
        }
        let (piece, Point { x, y }) = (self.piece.code(), self.at);
        Coordinates { piece, x, y }.serialize(to)
    }
}

/// At most this many sizes are named one by one.
const MOST_NAMED: usize = 6;

/// The sizes of a run that a finding was found in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FoundIn {
    /// Those sizes, at least two.
    pub sizes: Vec<Size>,
    /// How many sizes the run has.
    pub of: usize,
    /// Whether its figures differ from size to size; those that are told are of the first size.
    pub figures_differ: bool,
}

impl FoundIn {
    /// A message with the sizes it holds in.
    fn of(&self, message: String) -> Said {
        let sizes: Said = if self.sizes.len() == self.of {
            key::FINDING_IN_EVERY_SIZE.into()
        } else if self.sizes.len() <= MOST_NAMED {
            let sizes: Vec<String> = self.sizes.iter().map(Size::to_string).collect();
            say::FindingInSizes { sizes }.into()
        } else {
            let (found, of) = (self.sizes.len().to_string(), self.of.to_string());
            say::FindingInSome { found, of }.into()
        };
        match self.sizes.first() {
            Some(first) if self.figures_differ => say::FindingFoundFirst {
                first: first.to_string(),
                message,
                sizes,
            }
            .into(),
            _ => say::FindingFound { message, sizes }.into(),
        }
    }
}

/// One thing noticed, with a stable code.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Stable code, such as `fit::outseam-walk`.
    pub code: &'static str,
    /// How serious.
    pub severity: Severity,
    /// What it is about.
    pub subject: Subject,
    /// The size it was found in; `None` when it holds for all.
    pub size: Option<Size>,
    /// In which sizes of a run it was found, where it was found in several.
    pub found_in: Option<FoundIn>,
    /// What is so, with its numbers.
    pub message: Said,
    /// Where the rule comes from.
    pub source: Said,
    /// What would help, where that is known.
    pub remedy: Option<Said>,
    /// The change to the style that is the remedy, where there is only one to choose.
    pub edit: Option<Edit>,
    /// Where on the garment, when it is at one place.
    pub place: Option<Place>,
    /// Whether it only follows from a conflict of the chart, and goes with it.
    pub follows: bool,
}

impl Finding {
    /// A finding of all sizes, without remedy and without place.
    pub fn new(
        code: &'static str,
        severity: Severity,
        subject: impl Into<Subject>,
        message: impl Into<Said>,
        source: impl Into<Said>,
    ) -> Finding {
        Finding {
            code,
            severity,
            subject: subject.into(),
            size: None,
            found_in: None,
            message: message.into(),
            source: source.into(),
            remedy: None,
            edit: None,
            place: None,
            follows: false,
        }
    }

    /// The same, of one size.
    #[must_use]
    pub fn of_size(self, size: Size) -> Finding {
        Finding {
            size: Some(size),
            ..self
        }
    }

    /// The same, with what would help.
    #[must_use]
    pub fn help(self, remedy: impl Into<Said>) -> Finding {
        Finding {
            remedy: Some(remedy.into()),
            ..self
        }
    }

    /// The same, with what would help, where that is known.
    #[must_use]
    pub fn helped(self, remedy: Option<Said>) -> Finding {
        Finding { remedy, ..self }
    }

    /// The same, with the change that is its remedy: a value of the style and what it becomes.
    #[must_use]
    pub fn curing(self, path: &str, value: &str) -> Finding {
        Finding {
            edit: Edit::set(path, value).ok(),
            ..self
        }
    }

    /// What it is about, in words.
    #[must_use]
    pub fn about(&self, words: &Words) -> String {
        words.say(&self.subject)
    }

    /// What is so, in words, and in which sizes of a run.
    #[must_use]
    pub fn message(&self, words: &Words) -> String {
        let message = words.saying(&self.message);
        match &self.found_in {
            None => message,
            Some(found_in) => words.say(found_in.of(message)),
        }
    }

    /// Where the rule comes from, in words.
    #[must_use]
    pub fn source(&self, words: &Words) -> String {
        words.saying(&self.source)
    }

    /// What would help, in words.
    #[must_use]
    pub fn remedy(&self, words: &Words) -> Option<String> {
        self.remedy.as_ref().map(|remedy| words.saying(remedy))
    }

    /// Whether it keeps the garment from being sewn as it should be.
    #[must_use]
    pub fn is_error(&self) -> bool {
        self.severity == Severity::Error
    }

    /// Whether the maker has muted it in the style. Errors cannot be muted: what cannot be sewn stays so.
    pub fn muted<'a>(&self, doc: &'a StyleDoc) -> Option<(usize, &'a Muted)> {
        if self.is_error() {
            return None;
        }
        doc.muted(self.code, &self.subject)
    }

    /// Whether it is counted: it was not muted, and does not go with a conflict.
    pub fn counts(&self, doc: &StyleDoc) -> bool {
        !self.follows && self.muted(doc).is_none()
    }

    /// The same, at a place.
    #[must_use]
    pub fn at(self, place: Place) -> Finding {
        Finding {
            place: Some(place),
            ..self
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;

    #[test]
    fn a_place_is_written_by_the_code_of_its_piece() {
        let place = Place {
            piece: PieceId::Back,
            at: Point::new(1.5, -2.0),
        };
        assert_eq!(
            serde_json::to_value(place).unwrap(),
            serde_json::json!({ "piece": "back", "x": 1.5, "y": -2.0 })
        );
    }
}
