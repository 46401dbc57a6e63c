//! A style that begins as another one is.

use std::sync::PoisonError;

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, State};
use axum::response::Html;
use serde::Deserialize;

use crate::page::begin::collection::taken;
use crate::page::begin::copy_page::render;
use crate::request::{FormAnswer, Route, blocking, open, understood};
use crate::session::Disk;
use crate::state::Bench;
use crate::trouble::Trouble;

/// The addresses of a copy.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::get("/copy/{name}", page),
        Route::post("/copy/{name}", make),
    ]
}

/// What a copy is called.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Called {
    name: String,
    code: String,
}

async fn page(
    State(bench): State<Bench>,
    Path(name): Path<String>,
) -> Result<Html<String>, Trouble> {
    blocking(move || {
        let taken = taken(&bench)?;
        let session = open(&bench, &name)?;
        let session = session.lock().unwrap_or_else(PoisonError::into_inner);
        Ok(Html(
            render(bench.say(), &name, session.loaded(), &taken).into_string(),
        ))
    })
    .await
}

async fn make(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    called: Result<Json<Called>, JsonRejection>,
) -> Result<FormAnswer, Trouble> {
    let Called { name: new, code } = understood(called)?;
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        // A copy is of what the file says now.
        if let Disk::Changed(on_disk, _) = session.look_at_disk() {
            session.take_over(*on_disk);
        }
        let new = new.trim();
        let copied = style::copy_style(session.loaded(), new, code.trim(), None);
        Ok(FormAnswer::begun(bench.say(), copied))
    })
    .await
}
