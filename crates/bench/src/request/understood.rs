//! What a request carries, read.

use axum::Json;
use axum::extract::rejection::JsonRejection;

use crate::sentences::Line;
use crate::trouble::Trouble;

/// What a request carries, or why it cannot be read.
pub(crate) fn understood<T>(body: Result<Json<T>, JsonRejection>) -> Result<T, Trouble> {
    let refused =
        |why: JsonRejection| Trouble::not_understood(why.status(), Line::Told(why.body_text()));
    body.map(|Json(value)| value).map_err(refused)
}
