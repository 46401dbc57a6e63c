//! The address of the collection.

use axum::extract::{Query, State};
use axum::response::Html;

use crate::page::collection::gather::gather;
use crate::page::collection::render::render;
use crate::request::{Route, blocking};
use crate::see::{Asked, See};
use crate::state::Bench;
use crate::trouble::Trouble;

/// The first page.
pub(crate) fn routes() -> Vec<Route> {
    vec![Route::get("/", page)]
}

async fn page(
    State(bench): State<Bench>,
    Query(asked): Query<Asked>,
) -> Result<Html<String>, Trouble> {
    let see = See::from(asked);
    blocking(move || {
        let listed = gather(&bench)?;
        Ok(Html(render(bench.say(), &listed, &see).into_string()))
    })
    .await
}
