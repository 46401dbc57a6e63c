//! The address of the collection.

use axum::extract::{Query, State};
use axum::response::Html;

use crate::page::collection::gather::gather;
use crate::page::collection::render::render;
use crate::request::{Route, blocking};
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::viewing::{AddressWords, Viewing};

/// The first page.
pub(crate) fn routes() -> Vec<Route> {
    vec![Route::get("/", page)]
}

async fn page(
    State(bench): State<Bench>,
    Query(asked): Query<AddressWords>,
) -> Result<Html<String>, Trouble> {
    let see = Viewing::from(asked);
    blocking(move || {
        let listed = gather(&bench)?;
        Ok(Html(render(bench.say(), &listed, &see).into_string()))
    })
    .await
}
