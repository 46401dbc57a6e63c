//! The foot of the page: what was done last, and every change of this session.

use maud::{Markup, html};
use words::Words;

use crate::change_log::Steps;
use crate::typed_fields::capital;

/// What was done last, and what it led to.
#[derive(Clone, Debug, Default)]
pub(crate) struct LastChange {
    pub(crate) words: String,
    pub(crate) followed: Vec<String>,
}

pub(crate) fn render(say: &'static Words, steps: &Steps, said: &LastChange) -> Markup {
    html! {
        footer #history {
            p role="status" {
                @if said.words.is_empty() { (say.foot_none()) }
                @else { (say.foot_saved(capital(&said.words))) }
                @if !said.followed.is_empty() {
                    " " strong.followed { (capital(&said.followed.join("; "))) "." }
                }
            }
            details.changes {
                summary {
                    @match steps.all_done {
                        0 => (say.foot_no_changes()),
                        many => (say.foot_changes(many)),
                    }
                }
                ol reversed {
                    @for words in &steps.done { li { (words) } }
                }
            }
        }
    }
}
