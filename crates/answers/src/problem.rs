//! What is wrong with a file that cannot be read.

use serde::Serialize;
use style::{Diagnostic, Report};

use crate::shape::Shape;
use crate::text::{AnswerError, lines};

#[derive(Serialize)]
struct Unread<'a> {
    format: u32,
    problems: Vec<ProblemRow<'a>>,
    more: usize,
}

#[derive(Serialize)]
struct ProblemRow<'a> {
    file: &'a str,
    line: usize,
    column: usize,
    path: &'a str,
    code: &'static str,
    message: &'a str,
    hint: Option<&'a str>,
    text: &'a str,
}

/// The answer for a style or an order that cannot be read.
///
/// # Errors
/// It cannot be put into JSON.
pub fn unread(report: &Report) -> Result<String, AnswerError> {
    lines(&Unread {
        format: Shape::Unread.version(),
        problems: report.problems.iter().map(row).collect(),
        more: report.more,
    })
}

fn row(problem: &Diagnostic) -> ProblemRow<'_> {
    ProblemRow {
        file: &problem.file,
        line: problem.line,
        column: problem.column,
        path: &problem.path,
        code: problem.code,
        message: &problem.message,
        hint: problem.hint.as_deref(),
        text: &problem.text,
    }
}
