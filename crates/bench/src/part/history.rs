//! The foot of the page: what was done last, and every change of this session.

use maud::{Markup, html};

use crate::field::capital;
use crate::said::say;
use crate::session::Session;

/// How many changes are listed here; the history has them all.
const MOST_LISTED: usize = 50;

/// What was done last, and what it led to.
#[derive(Clone, Debug, Default)]
pub(crate) struct Said {
    pub(crate) words: String,
    pub(crate) followed: Vec<String>,
}

pub(crate) fn render(session: &Session, said: &Said) -> Markup {
    let done = session.done();
    html! {
        footer #history {
            p role="status" {
                @if said.words.is_empty() { (say().foot_none()) }
                @else { (say().foot_saved(capital(&said.words))) }
                @if !said.followed.is_empty() {
                    " " strong.followed { (capital(&said.followed.join("; "))) "." }
                }
            }
            details.changes {
                summary {
                    @match done.len() {
                        0 => (say().foot_no_changes()),
                        many => (say().foot_changes(many)),
                    }
                }
                ol reversed {
                    @for words in done.take(MOST_LISTED) { li { (words) } }
                }
            }
        }
    }
}
