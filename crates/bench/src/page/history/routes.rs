//! What the style was before: every kept version with its picture, named, compared and put back.

use std::sync::{Arc, PoisonError};

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, Query, State};
use axum::http::{StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use serde::Deserialize;
use style::{History, NameError};
use words::Words;

use crate::answer::{Answer, Verdict, sentences};
use crate::change_outcome::Outcome;
use crate::page::history::{all, compare, list};
use crate::part::notice::Notice;
use crate::request::{Route, blocking, open, understood};
use crate::sentences::Line;
use crate::session::Session;
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::versions::why_unread;
use crate::viewing::{AddressWords, Viewing};
use crate::{change_outcome, garment};

/// The addresses of the room.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::get("/style/{name}/history", page),
        Route::get("/style/{name}/history/compare", beside),
        Route::get("/style/{name}/compare", beside),
        Route::get("/style/{name}/revision/{number}/drawing.svg", picture),
        Route::post("/style/{name}/put-back", put_back),
        Route::post("/style/{name}/put-file-back", put_file_back),
        Route::post("/style/{name}/name-version", name_version),
    ]
}

/// The file as it is now, and what is to be said about it where it cannot be read.
fn looked(session: &mut Session) -> Vec<String> {
    match change_outcome::caught_up(session) {
        Notice::Broken(lines) => lines,
        Notice::None | Notice::Changed(_) | Notice::TakenOver(_) => Vec::new(),
    }
}

fn history(session: &Session) -> Result<History, Trouble> {
    style::history(session.loaded()).map_err(|error| {
        Trouble::one(
            StatusCode::INTERNAL_SERVER_ERROR,
            Words::history_unreadable,
            Line::Told(session.say().history_unreadable_why(error)),
        )
    })
}

async fn page(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
    Query(part): Query<list::Part>,
) -> Result<Html<String>, Trouble> {
    let say = bench.say();
    let see = Viewing::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let told = looked(&mut session);
        let history = history(&session)?;
        if part.is_all() {
            let system = see.system(&session.loaded().collection);
            let all = all::All::of(&bench, &name, system, history.versions().len(), &part);
            return Ok(Html(
                all.render(say, &name, session.loaded(), &see).into_string(),
            ));
        }
        let changes = bench.all_changes().len();
        let list = list::List::of(&mut session, &history, (&see, changes), &part, told);
        Ok(Html(
            list.render(say, &name, session.loaded(), &see)
                .into_string(),
        ))
    })
    .await
}

async fn beside(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
    Query(pair): Query<compare::Pair>,
) -> Result<Html<String>, Trouble> {
    let see = Viewing::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        looked(&mut session);
        let history = history(&session)?;
        let page = compare::Compared::of(&mut session, &history, &see, &pair)?;
        Ok(Html(
            page.render(bench.say(), &name, session.loaded(), &see)
                .into_string(),
        ))
    })
    .await
}

/// What the picture of a version is asked by: its text, so that the address means one picture for good.
#[derive(Debug, Deserialize)]
struct Of {
    id: String,
}

/// A small picture of a version: the front, outside, in its base size, without its stitches.
async fn picture(
    State(bench): State<Bench>,
    Path((name, number)): Path<(String, u32)>,
    Query(of): Query<Of>,
) -> Result<Response, Trouble> {
    blocking(move || {
        let session = open(&bench, &name)?;
        let asked = {
            let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
            let history = history(&session)?;
            let version = history.get(number).filter(|version| version.id == of.id);
            let version = version.ok_or_else(Trouble::no_such_page)?;
            match session.shelf.picture(&version.id) {
                Some(svg) => Ok(svg),
                None => Err(session.version(version)),
            }
        };
        let svg = match asked {
            Ok(svg) => svg,
            Err(version) => {
                let version = version.map_err(|report| {
                    let (status, title) =
                        (StatusCode::UNPROCESSABLE_ENTITY, Words::history_undrawable);
                    Trouble::told(status, title, why_unread(bench.say(), &report))
                })?;
                // Drawn while the session is free: a page of the history asks for many.
                let svg: Arc<str> = garment::small_picture(bench.say(), &version).into();
                let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
                session.shelf.put(of.id, Arc::clone(&svg));
                svg
            }
        };
        let kind = [
            (header::CONTENT_TYPE, "image/svg+xml"),
            (header::CACHE_CONTROL, "private, max-age=86400"),
        ];
        Ok((kind, svg.to_string()).into_response())
    })
    .await
}

/// A version to be put back, and the revision the page shows.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct PutBack {
    revision: String,
    number: u32,
}

async fn put_back(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
    wanted: Result<Json<PutBack>, JsonRejection>,
) -> Result<Response, Trouble> {
    let PutBack { revision, number } = understood(wanted)?;
    let see = Viewing::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let system = see.system(&session.loaded().collection);
        let outcome = change_outcome::stepped(&mut session, &revision, |session| {
            session.put_back(number, system)
        });
        Ok(answer(&session, outcome))
    })
    .await
}

/// A version of any file of the collection to be put back.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct PutFileBack {
    file: String,
    number: u32,
}

async fn put_file_back(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    wanted: Result<Json<PutFileBack>, JsonRejection>,
) -> Result<Response, Trouble> {
    let PutFileBack { file, number } = understood(wanted)?;
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        looked(&mut session);
        // A name from a request is only ever compared with the names the collection has.
        let files = style::kept_files(bench.folder()).unwrap_or_default();
        let kept = files.into_iter().find(|kept| kept.name() == file);
        let kept = kept.ok_or_else(Trouble::no_such_page)?;
        let done = kept.put_back(number);
        let words = bench.say().say(words::say::HistoryFileIsBack {
            file: &file,
            number,
        });
        let outcome = change_outcome::elsewhere(&mut session, done, words);
        Ok(answer(&session, outcome))
    })
    .await
}

/// A name for a version; none takes it away.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Naming {
    number: u32,
    name: Option<String>,
}

async fn name_version(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    wanted: Result<Json<Naming>, JsonRejection>,
) -> Result<Response, Trouble> {
    let say = bench.say();
    let Naming {
        number,
        name: called,
    } = understood(wanted)?;
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        looked(&mut session);
        let named = style::name_version(session.loaded(), number, called.as_deref());
        let refused = |came, problems| Outcome {
            came,
            problems,
            ..Outcome::default()
        };
        let outcome = match named {
            Ok(()) => Outcome {
                said: match called {
                    Some(called) => say.say(words::say::HistoryIsCalled {
                        name: called.trim(),
                        number,
                    }),
                    None => say.history_has_no_name(number),
                },
                ..Outcome::default()
            },
            Err(NameError::Broken(problem)) => refused(
                Verdict::Refused,
                sentences(say, &style::names_report(&problem)),
            ),
            Err(NameError::Store(error)) => refused(Verdict::Failed, vec![error.to_string()]),
            Err(other) => refused(Verdict::Refused, vec![other.to_string()]),
        };
        Ok(answer(&session, outcome))
    })
    .await
}

/// The answer to a page that fetches itself anew.
fn answer(session: &Session, outcome: Outcome) -> Response {
    Json(Answer {
        outcome: outcome.came,
        revision: session.loaded().revision.to_string(),
        problems: outcome.problems,
        said: outcome.said,
        ..Answer::default()
    })
    .into_response()
}
