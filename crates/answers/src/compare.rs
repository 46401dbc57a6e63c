//! What is different between two versions of a file.

use serde::Serialize;
use style::ToldChange;

use crate::change::{ChangeRow, changes};
use crate::shape::Shape;
use crate::text::{AnswerError, lines};

/// Two versions, compared.
pub struct Compared<'a> {
    /// The number of the one.
    pub a: u32,
    /// The number of the other.
    pub b: u32,
    /// Whether both are the same text.
    pub same_text: bool,
    /// What is different.
    pub changes: &'a [ToldChange],
}

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    a: u32,
    b: u32,
    same_text: bool,
    changes: Vec<ChangeRow<'a>>,
}

/// The answer for two versions.
///
/// # Errors
/// It cannot be put into JSON.
pub fn compare(compared: &Compared<'_>) -> Result<String, AnswerError> {
    lines(&Answer {
        format: Shape::Compare.version(),
        a: compared.a,
        b: compared.b,
        same_text: compared.same_text,
        changes: changes(compared.changes),
    })
}
