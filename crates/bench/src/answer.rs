//! What a change answers with: the fragments that replace those on the page, and what went wrong if anything did.

use serde::Serialize;
use style::Report;
use words::Words;

use crate::fingerprint::mark;

/// One part of the page, by its id.
#[derive(Clone, Debug, Serialize)]
pub(crate) struct Fragment {
    pub(crate) id: &'static str,
    /// What a page says of it when it has it; see [`crate::request::parts_had`].
    pub(crate) mark: String,
    pub(crate) html: String,
}

impl Fragment {
    pub(crate) fn new(id: &'static str, markup: maud::Markup) -> Self {
        let html = markup.into_string();
        Self {
            id,
            mark: mark(&html),
            html,
        }
    }
}

/// Whether what was asked for was done. All of them travel as HTTP success: the bench did answer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(crate) enum Verdict {
    /// It was done.
    #[default]
    Done,
    /// It cannot be so; the problems say why.
    Refused,
    /// The page or the bench is behind the file.
    Behind,
    /// There was nothing to take back or make again.
    Nothing,
    /// The disk or the system refused.
    Failed,
}

/// The answer to a change or to another view being asked for.
#[derive(Clone, Debug, Default, Serialize)]
pub(crate) struct Answer {
    /// What came of it.
    pub(crate) outcome: Verdict,
    /// The revision that the page shows from now on.
    pub(crate) revision: String,
    /// What tells this state of the files from another; see [`crate::state_mark`].
    pub(crate) stand: String,
    /// The fragments to put in.
    pub(crate) fragments: Vec<Fragment>,
    /// What to say beside the field that was changed; empty when all is well.
    pub(crate) problems: Vec<String>,
    /// What happened, in words, to be read out.
    pub(crate) said: String,
    /// Whether fields go back to what the file says, also those with text that was refused.
    pub(crate) reset: bool,
}

/// How many problems are shown beside one field.
const MOST_SHOWN: usize = 3;

/// A report as sentences for the page.
pub(crate) fn sentences(say: &'static Words, report: &Report) -> Vec<String> {
    let shown = report.problems.iter().take(MOST_SHOWN);
    let mut lines: Vec<String> = shown
        .map(|problem| {
            // The field it is said beside already says which value is meant.
            let place = format!("`{}`: ", problem.path);
            let message = problem
                .message
                .strip_prefix(&place)
                .unwrap_or(&problem.message);
            match &problem.hint {
                Some(hint) => format!("{message}: {hint}"),
                None => message.to_owned(),
            }
        })
        .collect();
    let left = report.problems.len().saturating_sub(MOST_SHOWN) + report.more;
    if left > 0 {
        lines.push(say.answer_more(left));
    }
    lines
}

/// A report as sentences that say where in which file: line and column, as editors take them.
pub(crate) fn placed(say: &'static Words, report: &Report) -> Vec<String> {
    let lines = report.problems.iter().map(|problem| {
        let hint = problem.hint.as_deref().unwrap_or_default();
        let place = match problem.line {
            0 => problem.file.clone(),
            line => format!("{}:{line}:{}", problem.file, problem.column),
        };
        format!(
            "{place}: {}{}{hint}",
            problem.message,
            if hint.is_empty() { "" } else { "; " }
        )
    });
    let mut lines: Vec<String> = lines.collect();
    if report.more > 0 {
        lines.push(say.answer_more(report.more));
    }
    lines
}
