//! The addresses of the bench and what each of them does.

use std::sync::{Arc, Mutex, PoisonError};
use std::time::{Duration, Instant};

use axum::extract::rejection::JsonRejection;
use axum::extract::{DefaultBodyLimit, Path, Query, State};
use axum::http::{HeaderMap, StatusCode, header};
use axum::middleware::from_fn_with_state;
use axum::response::{Html, IntoResponse, Redirect, Response};
use axum::routing::{MethodRouter, get, post};
use axum::{Json, Router};
use serde::Deserialize;
use style::{Direction, Edit};
use words::Words;

use crate::answer::{Answer, placed};
use crate::field::Show;
use crate::have::Have;
use crate::outcome::{self, Outcome, notice};
use crate::page::style::Page;
use crate::part::history::Said;
use crate::said::Line;
use crate::see::{Asked, See};
use crate::session::{Disk, Session};
use crate::state::{Bench, NotOpen};
use crate::trouble::Trouble;
use crate::{asset, consequence, garment, grip, guard, page, route};

/// The largest request taken.
const LARGEST_BODY: usize = 1 << 20;
/// The most edits one request may carry.
const MOST_EDITS: usize = 50;

/// The whole bench as a function of requests.
pub fn router(bench: Bench) -> Router {
    Router::new()
        .route("/", get(collection))
        .route("/style/{name}", get(style_page))
        .route("/style/{name}/fragments", get(fragments))
        .route("/style/{name}/drawing.svg", get(drawing))
        .route("/style/{name}/grip/{key}", get(grip))
        .route("/style/{name}/edit", post(edit))
        .route("/style/{name}/undo", stepping(Direction::Back))
        .route("/style/{name}/redo", stepping(Direction::Forward))
        .route("/style/{name}/reload", post(reload))
        .route("/style/{name}/mark", post(mark))
        .merge(page::art::routes())
        .merge(page::begin::routes())
        .merge(page::cloths::routes())
        .merge(page::cutting::routes())
        .merge(page::mend::routes())
        .merge(page::papers::routes())
        .merge(page::history::routes())
        .merge(page::stand::routes())
        .route("/asset/{edition}/{name}", get(asset_file))
        .route(
            "/favicon.ico",
            get(async || Redirect::permanent(&asset::url("mark.svg"))),
        )
        .fallback(async || Trouble::no_such_page())
        .method_not_allowed_fallback(async || {
            Trouble::one(
                StatusCode::METHOD_NOT_ALLOWED,
                Words::refusal_not_for_opening,
                Line::Said(Words::refusal_takes_changes),
            )
        })
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(from_fn_with_state(bench.clone(), guard::guard))
        .with_state(bench)
}

async fn asset_file(Path((edition, name)): Path<(String, String)>) -> Response {
    asset::serve(&edition, &name)
}

async fn collection(
    State(bench): State<Bench>,
    Query(asked): Query<Asked>,
) -> Result<Html<String>, Trouble> {
    let see = See::from(asked);
    blocking(move || {
        let listed = page::collection::gather(&bench)?;
        Ok(Html(
            page::collection::render(bench.say(), &listed, &see).into_string(),
        ))
    })
    .await
}

async fn style_page(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    let see = See::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let notice = outcome::caught_up(&mut session);
        let said = Said::default();
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
    Query(asked): Query<Asked>,
    have: Have,
    headers: HeaderMap,
) -> Result<Response, Trouble> {
    let see = See::from(asked);
    if !headers.contains_key("x-bench") {
        return Ok(Redirect::to(&route::style(&name, &see)).into_response());
    }
    answered(bench, name, see, have, |session, _| Outcome {
        notice: outcome::caught_up(session),
        ..Outcome::default()
    })
    .await
}

async fn drawing(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    let see = See::from(asked);
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
async fn grip(
    State(bench): State<Bench>,
    Path((name, key)): Path<(String, String)>,
    Query(asked): Query<Asked>,
) -> Result<Response, Trouble> {
    let see = See::from(asked);
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let size = see.size_of(&session.loaded().style);
        let worked = session.garment(size);
        let show = Show {
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
    Query(asked): Query<Asked>,
    have: Have,
    change: Result<Json<Change>, JsonRejection>,
) -> Result<Response, Trouble> {
    let Change { revision, edits } = understood(change)?;
    few(&edits)?;
    answered(bench, name, asked.into(), have, move |session, see| {
        let system = see.system(&session.loaded().collection);
        outcome::edited(session, &revision, &edits, system)
    })
    .await
}

/// A step through the changes.
fn stepping(direction: Direction) -> MethodRouter<Bench> {
    post(
        async move |State(bench): State<Bench>,
                    Path(name): Path<String>,
                    Query(asked): Query<Asked>,
                    have: Have,
                    step: Result<Json<Step>, JsonRejection>|
                    -> Result<Response, Trouble> {
            let Step { revision, next } = understood(step)?;
            let (over, style) = (bench.clone(), name.clone());
            answered(bench, name, asked.into(), have, move |session, see| {
                let system = see.system(&session.loaded().collection);
                let shown = (revision.as_str(), next.as_deref());
                outcome::step(&over, (session, &style), shown, direction, system)
            })
            .await
        },
    )
}

/// Takes over what somebody else wrote into the file.
async fn reload(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<Asked>,
    have: Have,
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
async fn mark(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<Asked>,
    have: Have,
) -> Result<Response, Trouble> {
    answered(bench, name, asked.into(), have, |session, _| {
        session.mark();
        Outcome::default()
    })
    .await
}

/// Does something with a style's session and answers with every fragment that the page does not have as it now is,
/// saying how long each part took.
pub(crate) async fn answered(
    bench: Bench,
    name: String,
    see: See,
    have: Have,
    act: impl FnOnce(&mut Session, &See) -> Outcome + Send + 'static,
) -> Result<Response, Trouble> {
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        let mut clock = Clock::start();
        let size = see.size_of(&session.loaded().style);
        let before = session.garment(size);
        let outcome = act(&mut session, &see);
        clock.lap("file");
        let size = see.size_of(&session.loaded().style);
        let now = session.garment(size);
        clock.lap("garment");
        let system = see.system(&session.loaded().collection);
        let said = Said {
            words: outcome.said,
            followed: consequence::between(bench.say(), &before, &now, system),
        };
        clock.lap("consequence");
        let steps = bench.steps(&name, system);
        let page = Page::of(&name, (&mut session, steps), see, outcome.notice, &said);
        clock.lap("drawing");
        let mut fragments = page.fragments();
        // Fields go back to what the file says also where that is what they said before.
        if !outcome.reset {
            fragments.retain(|fragment| !have.has(fragment));
        }
        let answer = Answer {
            outcome: outcome.came,
            revision: page.revision(),
            stand: page.stand(),
            fragments,
            problems: outcome.problems,
            said: said.words.clone(),
            reset: outcome.reset,
        };
        clock.lap("page");
        bench.tell(&format!("{name}: {:?} ({})", outcome.came, clock.words()));
        let timing = [("server-timing", clock.header())];
        Ok((timing, Json(answer)).into_response())
    })
    .await
}

/// Measures the parts of an answer.
struct Clock {
    since: Instant,
    laps: Vec<(&'static str, Duration)>,
}

impl Clock {
    fn start() -> Self {
        Self {
            since: Instant::now(),
            laps: Vec::new(),
        }
    }

    fn lap(&mut self, name: &'static str) {
        self.laps.push((name, self.since.elapsed()));
        self.since = Instant::now();
    }

    fn parts(&self) -> impl Iterator<Item = (&'static str, f64)> + '_ {
        let total: Duration = self.laps.iter().map(|(_, took)| *took).sum();
        let all = self.laps.iter().copied().chain([("total", total)]);
        all.map(|(name, took)| (name, took.as_secs_f64() * 1000.0))
    }

    fn words(&self) -> String {
        let parts: Vec<String> = self
            .parts()
            .map(|(name, ms)| format!("{name} {ms:.1} ms"))
            .collect();
        parts.join(", ")
    }

    fn header(&self) -> String {
        let parts: Vec<String> = self
            .parts()
            .map(|(name, ms)| format!("{name};dur={ms:.2}"))
            .collect();
        parts.join(", ")
    }
}

/// The session of a style, or the page that says why there is none.
pub(crate) fn open(bench: &Bench, name: &str) -> Result<Arc<Mutex<Session>>, Trouble> {
    bench.session(name).map_err(|not_open| match not_open {
        NotOpen::Unknown => Trouble::no_such_page(),
        NotOpen::Broken(report) => {
            let mistakes = placed(bench.say(), &report);
            let mended = page::mend::is_offered(bench, name).then_some(name);
            Trouble::unreadable(Words::trouble_style, mistakes).mended_by(mended)
        }
    })
}

/// Refuses more changes than one request may carry: none is left out silently.
pub(crate) fn few(edits: &[Edit]) -> Result<(), Trouble> {
    if edits.len() > MOST_EDITS {
        let why = Line::Said(Words::refusal_too_many_changes);
        return Err(Trouble::not_understood(StatusCode::BAD_REQUEST, why));
    }
    Ok(())
}

/// What a request carries, or why it cannot be read.
pub(crate) fn understood<T>(body: Result<Json<T>, JsonRejection>) -> Result<T, Trouble> {
    let refused =
        |why: JsonRejection| Trouble::not_understood(why.status(), Line::Told(why.body_text()));
    body.map(|Json(value)| value).map_err(refused)
}

/// Working out a garment and waiting for a disk belong off the threads that listen. A panic in there ends
/// the one request, not the bench.
pub(crate) async fn blocking<T: Send + 'static>(
    work: impl FnOnce() -> Result<T, Trouble> + Send + 'static,
) -> Result<T, Trouble> {
    tokio::task::spawn_blocking(work)
        .await
        .unwrap_or_else(|_| Err(Trouble::inside()))
}
