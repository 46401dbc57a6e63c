//! What can go wrong with a request, as data: it becomes a page in the words of the bench when it leaves.

use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use words::Words;

use crate::sentences::{Line, Saying};

/// Something that cannot be shown. It is put into the words of the bench when it leaves, by `guard`.
#[derive(Clone, Debug)]
pub(crate) struct Trouble {
    pub(crate) status: StatusCode,
    pub(crate) title: Saying,
    pub(crate) why: Vec<Line>,
    /// The style whose last sound version can be put in place of a file that cannot be read.
    pub(crate) mends: Option<String>,
}

impl Trouble {
    pub(crate) fn no_such_page() -> Self {
        Self::one(
            StatusCode::NOT_FOUND,
            Words::trouble_no_page,
            Line::Said(Words::trouble_no_page_why),
        )
    }

    pub(crate) fn refused(why: Saying) -> Self {
        let title = Words::refusal_title;
        Self::one(StatusCode::FORBIDDEN, title, Line::Said(why))
    }

    pub(crate) fn not_understood(status: StatusCode, why: Line) -> Self {
        Self::one(status, Words::refusal_not_understood, why)
    }

    pub(crate) fn one(status: StatusCode, title: Saying, why: Line) -> Self {
        Self {
            status,
            title,
            why: vec![why],
            mends: None,
        }
    }

    pub(crate) fn told(status: StatusCode, title: Saying, why: Vec<String>) -> Self {
        Self {
            status,
            title,
            why: why.into_iter().map(Line::Told).collect(),
            mends: None,
        }
    }

    /// What is wrong with a file, every mistake with its place.
    pub(crate) fn unreadable(title: Saying, mistakes: Vec<String>) -> Self {
        Self::told(StatusCode::UNPROCESSABLE_ENTITY, title, mistakes)
    }

    /// With the way back to the last sound version of this style, where there is one.
    pub(crate) fn mended_by(self, style: Option<&str>) -> Self {
        Self {
            mends: style.map(str::to_owned),
            ..self
        }
    }

    pub(crate) fn inside() -> Self {
        Self::one(
            StatusCode::INTERNAL_SERVER_ERROR,
            Words::trouble_inside,
            Line::Said(Words::trouble_inside_what_now),
        )
    }
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        let mut answer = self.status.into_response();
        answer.extensions_mut().insert(self);
        answer
    }
}
