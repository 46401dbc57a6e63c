//! What leaves the house: the production pack and the patterns, made while the bench goes on.

use axum::Router;
use axum::extract::{Path, Query, State};
use axum::response::Html;
use axum::routing::get;
use maud::html;
use std::sync::PoisonError;

use super::layout::Loads;
use super::room;
use crate::part::head::Head;
use crate::room::Room;
use crate::router::{blocking, open};
use crate::see::{Asked, See};
use crate::state::Bench;
use crate::trouble::Trouble;

/// The addresses of the room.
pub(crate) fn routes() -> Router<Bench> {
    Router::new().route("/style/{name}/papers", get(page))
}

async fn page(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Html<String>, Trouble> {
    let see = See::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let head = Head {
            name: &name,
            loaded: session.loaded(),
            room: Room::Papers,
            see: &see,
        };
        let main = html! { h2 { "Papers" } };
        let loads = Loads {
            scripts: &["keys.js"],
            ..Loads::default()
        };
        Ok(Html(room::render(&head, loads, &main).into_string()))
    })
    .await
}
