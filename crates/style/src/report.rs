//! What is wrong with a file: where, what was written, and what would be right.
//!
//! A [`Report`] holds every problem found in one reading. It prints for a person (with the lines
//! concerned) and serialises for a program.

use std::borrow::Cow;
use std::fmt;
use std::ops::Range;
use std::sync::Arc;

use miette::{GraphicalReportHandler, GraphicalTheme, LabeledSpan, NamedSource, SourceCode};
use serde::Serialize;
use trade::plain;

/// The most problems a report keeps; further ones are counted only.
pub const MOST_PROBLEMS: usize = 100;

/// A longer line is not shown, only named: it is no line of a style file.
const LONGEST_LINE: usize = 400;

/// One file as it was read: the name to show and its text.
#[derive(Clone, Debug)]
pub(crate) struct Source {
    pub(crate) file: Arc<str>,
    pub(crate) text: Arc<str>,
    /// The text as it may be shown, as long as the text itself.
    shown: Arc<str>,
    lines: Arc<[usize]>,
}

impl Source {
    pub(crate) fn new(file: impl Into<Arc<str>>, text: impl Into<Arc<str>>) -> Self {
        let text: Arc<str> = text.into();
        let breaks = text
            .bytes()
            .enumerate()
            .filter(|(_, b)| *b == b'\n')
            .map(|(i, _)| i + 1);
        let lines = std::iter::once(0).chain(breaks).collect();
        let shown = match plain(&text) {
            Cow::Borrowed(_) => Arc::clone(&text),
            Cow::Owned(shown) => shown.into(),
        };
        Self {
            file: file.into(),
            text,
            shown,
            lines,
        }
    }

    /// The bytes of a line (from 1) and its neighbours, which are shown with it.
    fn line_length(&self, line: usize) -> usize {
        let start = self.lines.get(line.saturating_sub(2)).copied().unwrap_or(0);
        let end = self.lines.get(line + 1).copied().unwrap_or(self.text.len());
        end.saturating_sub(start)
    }

    /// The line and column of a byte, both from 1; the column counts characters.
    pub(crate) fn place(&self, byte: usize) -> (usize, usize) {
        let byte = byte.min(self.text.len());
        let line = self.lines.partition_point(|&start| start <= byte).max(1);
        let start = self.lines.get(line - 1).copied().unwrap_or(0);
        let column = self
            .text
            .get(start..byte)
            .map_or(0, |before| before.chars().count());
        (line, column + 1)
    }
}

/// One problem in one file.
#[derive(Clone, Serialize)]
pub struct Diagnostic {
    /// The file, as it should be shown.
    pub file: String,
    /// The line, from 1; 0 when the problem is the file itself.
    pub line: usize,
    /// The column in characters, from 1; 0 when the problem is the file itself.
    pub column: usize,
    /// The value concerned, as a path in the file ("chart.thigh.value"); empty when it is about no one value.
    pub path: String,
    /// A stable code, such as `style::unknown-key`.
    pub code: &'static str,
    /// What is wrong: lower case, no full stop.
    pub message: String,
    /// What would be right.
    pub hint: Option<String>,
    /// The offending text as it stands in the file; empty when the problem is the file itself.
    pub text: String,
    #[serde(skip)]
    span: Option<Range<usize>>,
    #[serde(skip)]
    source: Option<NamedSource<Arc<str>>>,
}

impl Diagnostic {
    /// A problem at a place in a file that was read.
    pub(crate) fn at(
        source: &Source,
        span: Range<usize>,
        code: &'static str,
        message: String,
    ) -> Self {
        let start = floor(&source.text, span.start);
        let end = floor(&source.text, span.end.max(span.start)).max(start);
        let (line, column) = source.place(start);
        let shown = source.line_length(line) <= LONGEST_LINE;
        let text = source.text.get(start..end).unwrap_or_default();
        Self {
            file: source.file.to_string(),
            line,
            column,
            path: String::new(),
            code,
            message,
            hint: None,
            text: text.chars().take(LONGEST_LINE).collect(),
            span: Some(start..end),
            source: shown.then(|| NamedSource::new(plain(&source.file), Arc::clone(&source.shown))),
        }
    }

    /// A problem with a file that has no text to show.
    pub(crate) fn whole_file(file: String, code: &'static str, message: String) -> Self {
        Self {
            file,
            line: 0,
            column: 0,
            path: String::new(),
            code,
            message,
            hint: None,
            text: String::new(),
            span: None,
            source: None,
        }
    }

    /// Names the value the problem is about.
    pub(crate) fn about(mut self, path: &str) -> Self {
        self.path = path.to_owned();
        self
    }

    pub(crate) fn hint(mut self, hint: impl Into<String>) -> Self {
        self.hint = Some(hint.into());
        self
    }

    pub(crate) fn place(mut self, line: usize, column: usize) -> Self {
        (self.line, self.column) = (line, column);
        self
    }
}

/// The nearest character boundary at or before a byte.
fn floor(text: &str, byte: usize) -> usize {
    let byte = byte.min(text.len());
    (0..=byte)
        .rev()
        .find(|&i| text.is_char_boundary(i))
        .unwrap_or(0)
}

impl fmt::Debug for Diagnostic {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}:{}:{}: {}: {}",
            self.file, self.line, self.column, self.code, self.message
        )
    }
}

impl fmt::Display for Diagnostic {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (&self.source, self.line) {
            (Some(_), _) => {}
            (None, 0) => write!(f, "{}: ", self.file)?,
            (None, line) => write!(f, "{}:{line}:{}: ", self.file, self.column)?,
        }
        f.write_str(&self.message)
    }
}

impl std::error::Error for Diagnostic {}

impl miette::Diagnostic for Diagnostic {
    fn code<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        Some(Box::new(self.code))
    }

    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        self.hint
            .as_ref()
            .map(|hint| Box::new(hint) as Box<dyn fmt::Display>)
    }

    fn source_code(&self) -> Option<&dyn SourceCode> {
        self.source.as_ref().map(|source| source as &dyn SourceCode)
    }

    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        let span = self.span.clone().filter(|_| self.source.is_some())?;
        let label = LabeledSpan::new_primary_with_span(Some("here".to_owned()), span);
        Some(Box::new(std::iter::once(label)))
    }
}

/// Everything wrong that one reading found; never empty.
///
/// `Display` gives the same text as [`Report::render`].
#[derive(Clone, Debug, Default, Serialize)]
pub struct Report {
    /// The problems, file by file, in the order of the file.
    pub problems: Vec<Diagnostic>,
    /// How many more problems were found than are listed.
    pub more: usize,
}

impl Report {
    pub(crate) fn one(problem: Diagnostic) -> Self {
        Self {
            problems: vec![problem],
            more: 0,
        }
    }

    pub(crate) fn push(&mut self, problem: Diagnostic) {
        if self.problems.len() < MOST_PROBLEMS {
            self.problems.push(problem);
        } else {
            self.more += 1;
        }
    }

    /// Takes another file's problems in.
    pub(crate) fn absorb(&mut self, other: Self) {
        for problem in other.problems {
            self.push(problem);
        }
        self.more += other.more;
    }

    /// How many problems were found, listed or not.
    pub(crate) fn count(&self) -> usize {
        self.problems.len() + self.more
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.problems.is_empty()
    }

    /// Puts problems of one file in the order of that file; files keep the order they were read in.
    pub(crate) fn sort(&mut self) {
        let mut files: Vec<String> = Vec::new();
        for problem in &self.problems {
            if !files.contains(&problem.file) {
                files.push(problem.file.clone());
            }
        }
        let rank = |p: &Diagnostic| files.iter().position(|f| *f == p.file);
        self.problems.sort_by_key(|p| (rank(p), p.line, p.column));
    }

    /// The report for a person: each problem with its lines of the file and what would be right.
    /// No colour codes, 100 columns, the same text on every machine, and nothing in it that steers a terminal.
    #[must_use]
    pub fn render(&self) -> String {
        let handler = GraphicalReportHandler::new_themed(GraphicalTheme::unicode_nocolor())
            .with_width(100)
            .with_links(false)
            .with_context_lines(1);
        let mut out = String::new();
        for problem in &self.problems {
            if !out.is_empty() {
                out.push('\n');
            }
            if handler.render_report(&mut out, problem).is_err() {
                out.push_str(&problem.to_string());
                out.push('\n');
            }
        }
        if self.more > 0 {
            out.push_str(&format!("\nand {} more\n", self.more));
        }
        plain(&out).into_owned()
    }
}

impl fmt::Display for Report {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.render())
    }
}

impl std::error::Error for Report {}
