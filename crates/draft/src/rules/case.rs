//! What a rule looks at, and what it says of it.

use style::{Figure, Fit, Size, Subject};
use words::Said;

use crate::finding::Severity;
use crate::pattern::Pattern;

/// What a rule looks at.
pub(super) struct Case<'a> {
    pub pattern: &'a Pattern,
    pub size: Size,
    pub figure: Figure,
    pub fit: Fit,
    /// Whether this is the size the chart is stated at.
    pub base: bool,
}

/// A rule that does not hold, before code and source are added.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Broken {
    pub severity: Severity,
    pub subject: Subject,
    pub message: Said,
    pub remedy: Option<Said>,
}

impl Broken {
    pub fn new(severity: Severity, about: impl Into<Subject>, message: impl Into<Said>) -> Broken {
        Broken {
            severity,
            subject: about.into(),
            message: message.into(),
            remedy: None,
        }
    }

    pub fn error(about: impl Into<Subject>, message: impl Into<Said>) -> Broken {
        Broken::new(Severity::Error, about, message)
    }

    pub fn warning(about: impl Into<Subject>, message: impl Into<Said>) -> Broken {
        Broken::new(Severity::Warning, about, message)
    }

    pub fn note(about: impl Into<Subject>, message: impl Into<Said>) -> Broken {
        Broken::new(Severity::Note, about, message)
    }

    pub fn help(mut self, remedy: impl Into<Said>) -> Broken {
        self.remedy = Some(remedy.into());
        self
    }
}

/// Whether the value exceeds the limit; not a number exceeds every limit.
pub(super) fn beyond(value: f64, limit: f64) -> bool {
    value > limit || value.is_nan()
}

/// Whether the value lies in the range; not a number lies in none.
pub(super) fn within(value: f64, low: f64, high: f64) -> bool {
    (low..=high).contains(&value)
}
