//! The addresses of a style's own page, and what each of them does.

use std::sync::PoisonError;

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, Query, State};
use axum::http::{HeaderMap, header};
use axum::response::{Html, IntoResponse, Redirect, Response};
use serde::Deserialize;
use style::{Direction, Edit};

use crate::change_outcome::{Outcome, notice};
use crate::page::style::gather::Page;
use crate::part::style_foot::LastChange;
use crate::request::{PartsHad, Route, answered, blocking, few, open, understood};
use crate::session::Disk;
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::typed_fields::Fields;
use crate::viewing::{AddressWords, Viewing};
use crate::{addresses, change_outcome, garment, grip};

/// The page of a style, its parts, and what is done to it.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::get("/style/{name}", page),
        Route::get("/style/{name}/fragments", fragments),
        Route::get("/style/{name}/drawing.svg", picture),
        Route::get("/style/{name}/grip/{key}", held),
        Route::post("/style/{name}/edit", edit),
        Route::post("/style/{name}/undo", undo),
        Route::post("/style/{name}/redo", redo),
        Route::post("/style/{name}/reload", reload),
        Route::post("/style/{name}/mark", compare_from_here),
    ]
}

async fn page(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
) -> Result<Response, Trouble> {
    let see = Viewing::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let notice = change_outcome::caught_up(&mut session);
        let said = LastChange::default();
        let system = see.system(&session.loaded().collection);
        let steps = bench.steps(&name, system);
        let page = Page::of(&name, (&mut session, steps), see, notice, &said);
        Ok(Html(page.render().into_string()).into_response())
    })
    .await
}

/// Another view of the same style, for a page that is open already.
async fn fragments(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
    have: PartsHad,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let see = Viewing::from(asked);
    if !headers.contains_key("x-bench") {
        return Ok(Redirect::to(&addresses::style(&name, &see)).into_response());
    }
    answered(bench, name, see, have, |session, _| Outcome {
        notice: change_outcome::caught_up(session),
        ..Outcome::default()
    })
    .await
}

async fn picture(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
) -> Result<Response, Trouble> {
    let see = Viewing::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let size = see.size_of(&session.loaded().style);
        let picture = garment::picture(bench.say(), &session.garment(size), &see);
        let kind = [
            (header::CONTENT_TYPE, "image/svg+xml"),
            (header::CACHE_CONTROL, "private, max-age=86400"),
        ];
        Ok((kind, picture.svg).into_response())
    })
    .await
}

/// What is needed to drag something on the drawing.
async fn held(
    State(bench): State<Bench>,
    Path((name, key)): Path<(String, String)>,
    Query(asked): Query<AddressWords>,
) -> Result<Response, Trouble> {
    let see = Viewing::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let size = see.size_of(&session.loaded().style);
        let worked = session.garment(size);
        let show = Fields {
            say: bench.say(),
            loaded: session.loaded(),
            written: session.written(),
            system: see.system(&session.loaded().collection),
        };
        let held = grip::hold(&key, &worked, &show).ok_or_else(Trouble::no_such_page)?;
        Ok(Json(held).into_response())
    })
    .await
}

/// A change as a page sends it: what to change, and the revision the page shows.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Change {
    revision: String,
    edits: Vec<Edit>,
}

/// A step through the changes, the revision the page shows, and the change it shows as the next.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Step {
    revision: String,
    next: Option<String>,
}

async fn edit(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
    have: PartsHad,
    change: Result<Json<Change>, JsonRejection>,
) -> Result<Response, Trouble> {
    let Change { revision, edits } = understood(change)?;
    few(&edits)?;
    answered(bench, name, asked.into(), have, move |session, see| {
        let system = see.system(&session.loaded().collection);
        change_outcome::edited(session, &revision, &edits, system)
    })
    .await
}

async fn undo(
    bench: State<Bench>,
    name: Path<String>,
    asked: Query<AddressWords>,
    have: PartsHad,
    step: Result<Json<Step>, JsonRejection>,
) -> Result<Response, Trouble> {
    stepped(Direction::Back, (bench, name, asked, have), step).await
}

async fn redo(
    bench: State<Bench>,
    name: Path<String>,
    asked: Query<AddressWords>,
    have: PartsHad,
    step: Result<Json<Step>, JsonRejection>,
) -> Result<Response, Trouble> {
    stepped(Direction::Forward, (bench, name, asked, have), step).await
}

/// A step through the changes.
async fn stepped(
    direction: Direction,
    (State(bench), Path(name), Query(asked), have): (
        State<Bench>,
        Path<String>,
        Query<AddressWords>,
        PartsHad,
    ),
    step: Result<Json<Step>, JsonRejection>,
) -> Result<Response, Trouble> {
    let Step { revision, next } = understood(step)?;
    let (over, style) = (bench.clone(), name.clone());
    answered(bench, name, asked.into(), have, move |session, see| {
        let system = see.system(&session.loaded().collection);
        let shown = (revision.as_str(), next.as_deref());
        change_outcome::step(&over, (session, &style), shown, direction, system)
    })
    .await
}

/// Takes over what somebody else wrote into the file.
async fn reload(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
    have: PartsHad,
) -> Result<Response, Trouble> {
    let say = bench.say();
    answered(
        bench,
        name,
        asked.into(),
        have,
        |session, _| match session.look_at_disk() {
            Disk::Changed(on_disk, _) => {
                session.take_over(*on_disk);
                Outcome {
                    said: say.answer_read_again().to_owned(),
                    reset: true,
                    ..Outcome::default()
                }
            }
            other => Outcome {
                notice: notice(say, other),
                reset: true,
                ..Outcome::default()
            },
        },
    )
    .await
}

/// What follows is compared with the style as it is now.
async fn compare_from_here(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
    have: PartsHad,
) -> Result<Response, Trouble> {
    answered(bench, name, asked.into(), have, |session, _| {
        session.mark();
        Outcome::default()
    })
    .await
}
