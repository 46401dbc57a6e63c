//! An answer as text.

use serde::Serialize;
use thiserror::Error;

/// An answer could not be put into JSON.
#[derive(Debug, Error)]
#[error("the answer cannot be written as JSON: {0}")]
pub struct AnswerError(#[from] serde_json::Error);

/// On one line, for answers that are mostly numbers.
pub(crate) fn line(answer: &impl Serialize) -> Result<String, AnswerError> {
    Ok(serde_json::to_string(answer)? + "\n")
}

/// A key a line, for answers that a person may look at.
pub(crate) fn lines(answer: &impl Serialize) -> Result<String, AnswerError> {
    Ok(serde_json::to_string_pretty(answer)? + "\n")
}
