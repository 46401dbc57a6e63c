//! Findings: what the program noticed about a style that is not an error in its file.

use serde::Serialize;
use style::Size;

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

/// One thing noticed, with a stable code.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Finding {
    /// Stable code, such as `fit::outseam-walk`.
    pub code: &'static str,
    /// How serious.
    pub severity: Severity,
    /// The measure, seam or piece it is about, in words.
    pub about: String,
    /// The size it was found in; `None` when it holds for all.
    pub size: Option<Size>,
    /// What is so, with its numbers.
    pub message: String,
    /// Where the rule comes from.
    pub source: &'static str,
    /// What would help, where that is known.
    pub remedy: Option<String>,
}
