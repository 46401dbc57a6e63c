//! One place turns what went wrong into a page, with a way back.

use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use maud::html;

use crate::answer::placed;
use crate::page::{layout, mend};
use crate::said::say;

/// Something that cannot be shown, in words for the maker.
#[derive(Clone, Debug)]
pub(crate) struct Trouble {
    pub(crate) status: StatusCode,
    pub(crate) title: &'static str,
    pub(crate) words: Vec<String>,
    /// The style whose last sound version can be put in place of a file that cannot be read.
    pub(crate) mends: Option<String>,
}

impl Trouble {
    pub(crate) fn no_such_page() -> Self {
        Self::one(
            StatusCode::NOT_FOUND,
            say().trouble_no_page(),
            say().trouble_no_page_why(),
        )
    }

    pub(crate) fn refused(words: &str) -> Self {
        Self::one(StatusCode::FORBIDDEN, say().refusal_title(), words)
    }

    pub(crate) fn not_understood(status: StatusCode, words: &str) -> Self {
        Self::one(status, say().refusal_not_understood(), words)
    }

    pub(crate) fn one(status: StatusCode, title: &'static str, words: &str) -> Self {
        Self::told(status, title, vec![words.to_owned()])
    }

    pub(crate) const fn told(status: StatusCode, title: &'static str, words: Vec<String>) -> Self {
        Self {
            status,
            title,
            words,
            mends: None,
        }
    }

    /// What is wrong with a file, every mistake with its place.
    pub(crate) fn unreadable(title: &'static str, report: &style::Report) -> Self {
        Self::told(StatusCode::UNPROCESSABLE_ENTITY, title, placed(report))
    }

    pub(crate) fn inside() -> Self {
        Self::one(
            StatusCode::INTERNAL_SERVER_ERROR,
            say().trouble_inside(),
            say().trouble_inside_what_now(),
        )
    }
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        let main = html! {
            main.plain {
                h1 { (self.title) }
                @for words in &self.words { p.words { (words) } }
                @if let Some(name) = &self.mends { (mend::offer(name)) }
                @if self.status != StatusCode::FORBIDDEN {
                    p { a href="/" { (say().trouble_back()) } }
                }
            }
        };
        let page = match &self.mends {
            Some(_) => layout::page(self.title, mend::LOADS, &main),
            None => layout::bare(self.title, &main),
        };
        (self.status, Html(page.into_string())).into_response()
    }
}
