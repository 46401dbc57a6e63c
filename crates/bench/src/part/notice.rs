//! What has to be said about the file itself: that somebody else changed it.

use maud::{Markup, html};
use words::Words;

/// What is to be said.
#[derive(Clone, Debug, Default)]
pub(crate) enum Notice {
    /// Nothing.
    #[default]
    None,
    /// The file was changed outside; what is shown is as before. The changes in words.
    Changed(Vec<String>),
    /// The file was changed outside and was read again. The changes in words.
    TakenOver(Vec<String>),
    /// The file was changed outside and has problems; what is shown is as before.
    Broken(Vec<String>),
}

/// How many changes are told one by one.
const MOST_TOLD: usize = 5;

pub(crate) fn render(say: &'static Words, notice: &Notice) -> Markup {
    let (class, words, lines): (_, _, &[String]) = match notice {
        Notice::None => return html! { div #notice role="status" {} },
        Notice::Changed(lines) => ("notice asks", say.notice_changed(), lines),
        Notice::TakenOver(lines) => ("notice", say.notice_taken_over(), lines),
        Notice::Broken(lines) => ("notice asks", say.notice_broken(), lines),
    };
    html! {
        div #notice .(class) role="status" {
            div {
                p { (words) }
                @if !lines.is_empty() {
                    ul {
                        @for line in lines.iter().take(MOST_TOLD) { li { (line) } }
                        @if lines.len() > MOST_TOLD { li { (say.notice_more(lines.len() - MOST_TOLD)) } }
                    }
                }
            }
            @if !matches!(notice, Notice::TakenOver(_)) {
                button #reload type="button" data-step="reload" { (say.notice_reload()) }
            }
        }
    }
}
