//! What a page has already, so that an answer need not carry it again.
//!
//! A page says of each of its parts the mark that came with it, in `x-have: fit=1f3a…,details=…`. Most changes leave most
//! parts as they are, and those are most of an answer.

use std::convert::Infallible;

use axum::extract::FromRequestParts;
use axum::http::request::Parts;

use crate::answer::Fragment;

/// The parts a page has, each with its mark; empty for a page that says nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct PartsHad(Vec<(String, String)>);

impl PartsHad {
    /// Whether the page has exactly this.
    pub(crate) fn has(&self, fragment: &Fragment) -> bool {
        self.0
            .iter()
            .any(|(id, mark)| id == fragment.id && *mark == fragment.mark)
    }
}

impl<S: Send + Sync> FromRequestParts<S> for PartsHad {
    type Rejection = Infallible;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Infallible> {
        let said = parts.headers.get("x-have").and_then(|v| v.to_str().ok());
        let pairs = said.unwrap_or_default().split(',');
        let pairs = pairs.filter_map(|pair| pair.split_once('='));
        Ok(Self(
            pairs
                .map(|(id, mark)| (id.to_owned(), mark.to_owned()))
                .collect(),
        ))
    }
}
