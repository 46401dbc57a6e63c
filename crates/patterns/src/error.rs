//! Why a file cannot be read.

use std::fmt;

use thiserror::Error;

/// Where in a file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The file as a whole.
    Whole,
    /// A line, counted from 1.
    Line(usize),
    /// A line and a column, both counted from 1.
    LineColumn(usize, usize),
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Place::Whole => f.write_str("the file"),
            Place::Line(line) => write!(f, "line {line}"),
            Place::LineColumn(line, column) => write!(f, "line {line}, column {column}"),
        }
    }
}

/// Why a file cannot be read: where, what is there, and what would be right.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{place}: {what}; {instead}")]
pub struct ReadError {
    /// Where in the file.
    pub place: Place,
    /// What is wrong.
    pub what: String,
    /// What would be right.
    pub instead: String,
}

impl ReadError {
    pub(crate) fn new(place: Place, what: impl Into<String>, instead: impl Into<String>) -> Self {
        ReadError {
            place,
            what: what.into(),
            instead: instead.into(),
        }
    }

    pub(crate) fn line(line: usize, what: impl Into<String>, instead: impl Into<String>) -> Self {
        Self::new(Place::Line(line), what, instead)
    }

    pub(crate) fn whole(what: impl Into<String>, instead: impl Into<String>) -> Self {
        Self::new(Place::Whole, what, instead)
    }
}

/// The beginning of what was found in a file, fit to be shown in one line.
pub(crate) fn shown(text: &str) -> String {
    const MOST: usize = 40;
    let clean = |c: char| if c.is_control() { ' ' } else { c };
    let mut out: String = text.chars().map(clean).take(MOST).collect();
    if text.chars().nth(MOST).is_some() {
        out.push('…');
    }
    out
}
