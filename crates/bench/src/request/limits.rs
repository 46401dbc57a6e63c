//! How much one request may carry.

use axum::http::StatusCode;
use style::Edit;
use words::Words;

use crate::sentences::Line;
use crate::trouble::Trouble;

/// The largest request taken.
pub(crate) const LARGEST_BODY: usize = 1 << 20;

/// The most edits one request may carry.
const MOST_EDITS: usize = 50;

/// Refuses more changes than one request may carry: none is left out silently.
pub(crate) fn few(edits: &[Edit]) -> Result<(), Trouble> {
    if edits.len() > MOST_EDITS {
        let why = Line::Said(Words::refusal_too_many_changes);
        return Err(Trouble::not_understood(StatusCode::BAD_REQUEST, why));
    }
    Ok(())
}
