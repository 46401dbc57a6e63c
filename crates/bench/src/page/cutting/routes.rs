//! The cutting room: the search for a short lay, and the pieces of a style as they are cut.

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, Query, State};
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse, Response};
use jobs::{LaidOut, LayKind};
use maud::Markup;
use serde::Deserialize;
use style::Loaded;
use words::Words;

use crate::page::cutting::cloths::cloths;
use crate::page::cutting::lay_page::LayPage;
use crate::page::cutting::lay_request::LayRequest;
use crate::page::cutting::lay_shown::Shown;
use crate::page::cutting::pieces::Pieces;
use crate::page::cutting::{lay_figures, orders, orders_page, pieces, pieces_page};
use crate::page::layout::PageAssets;
use crate::page::room_frame;
use crate::part::background_work::{Standing, download, not_begun, sentences};
use crate::part::page_head::Head;
use crate::request::{Route, blocking, loaded, understood};
use crate::room::Room;
use crate::sentences::Line;
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::viewing::{AddressWords, Viewing};

/// The addresses of the room.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::get("/style/{name}/cutting", page),
        Route::get("/style/{name}/cutting/work", work),
        Route::post("/style/{name}/cutting/start", start),
        Route::post("/style/{name}/cutting/cancel", cancel),
        Route::get("/style/{name}/cutting/file/{file}", file),
        Route::get("/style/{name}/cutting/pieces", pieces_leaf),
        Route::get("/style/{name}/cutting/nests.svg", nests),
        Route::get("/style/{name}/cutting/orders", orders_leaf),
    ]
}

async fn page(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
    Query(words): Query<LayRequest>,
) -> Result<Html<String>, Trouble> {
    let say = bench.say();
    let see = Viewing::from(see);
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        // Whoever comes back finds what was asked for last.
        let last = words.is_empty().then(|| bench.works().lays.of(&name));
        let asked = match last.flatten() {
            Some(job) => job.task.clone(),
            None => words.read(say, &loaded).0,
        };
        let page = LayPage {
            say,
            name: &name,
            see: &see,
            system: see.system(&loaded.collection),
            shown: Shown::of(&bench, &name, &loaded, &asked),
            loaded: &loaded,
            asked: &asked,
        };
        Ok(in_the_room(
            say,
            (&name, ""),
            &loaded,
            &see,
            &page.render(&cloths(&loaded)),
        ))
    })
    .await
}

/// A page of this room.
fn in_the_room(
    say: &'static Words,
    (name, leaf): (&str, &str),
    loaded: &Loaded,
    see: &Viewing,
    main: &Markup,
) -> Html<String> {
    let head = Head {
        say,
        name,
        loaded,
        room: Room::Cutting,
        leaf,
        see,
    };
    let loads = PageAssets {
        styles: &["work.css"],
        scripts: &["keys.js", "drawing.js", "work.js"],
    };
    Html(room_frame::render(&head, loads, main).into_string())
}

/// What of the drawing the page has already.
#[derive(Debug, Default, Deserialize)]
struct Seen {
    seen: Option<String>,
}

/// How the search stands, or what there is of the lay asked for.
async fn work(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
    Query(words): Query<LayRequest>,
    Query(seen): Query<Seen>,
) -> Result<Json<Standing>, Trouble> {
    let see = Viewing::from(see);
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        let (asked, problems) = words.read(bench.say(), &loaded);
        Ok(Json(standing(
            &bench,
            (&name, &loaded, &see),
            &asked,
            problems,
            seen.seen.as_deref(),
        )))
    })
    .await
}

fn standing(
    bench: &Bench,
    (name, loaded, see): (&str, &Loaded, &Viewing),
    asked: &crate::work::lay::LayAsked,
    problems: Vec<String>,
    seen: Option<&str>,
) -> Standing {
    let page = LayPage {
        say: bench.say(),
        name,
        see,
        system: see.system(&loaded.collection),
        shown: Shown::of(bench, name, loaded, asked),
        loaded,
        asked,
    };
    // What makes no sense leaves the page as it is.
    let fragments = if problems.is_empty() {
        page.fragments(seen)
    } else {
        Vec::new()
    };
    Standing {
        running: page.shown.runs(),
        said: page.said(),
        problems: sentences(&problems),
        fragments,
    }
}

/// Begins a search.
async fn start(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
    words: Result<Json<LayRequest>, JsonRejection>,
) -> Result<Json<Standing>, Trouble> {
    let say = bench.say();
    let see = Viewing::from(see);
    let words = understood(words)?;
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        let (asked, mut problems) = words.read(say, &loaded);
        if problems.is_empty() {
            let works = bench.works();
            let begun = works.begin(say, &works.lays, &name, asked.clone(), loaded.clone());
            problems.extend(begun.err().map(|why| not_begun(say, &why, say.lay_busy())));
        }
        Ok(Json(standing(
            &bench,
            (&name, &loaded, &see),
            &asked,
            problems,
            None,
        )))
    })
    .await
}

/// Ends the search. What it has found so far is kept.
async fn cancel(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
    words: Result<Json<LayRequest>, JsonRejection>,
) -> Result<Json<Standing>, Trouble> {
    let see = Viewing::from(see);
    let words = understood(words)?;
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        if let Some(job) = bench.works().lays.of(&name) {
            job.cancel();
        }
        let (asked, _) = words.read(bench.say(), &loaded);
        Ok(Json(standing(
            &bench,
            (&name, &loaded, &see),
            &asked,
            Vec::new(),
            None,
        )))
    })
    .await
}

/// The lay that is shown, as a file.
async fn file(
    State(bench): State<Bench>,
    Path((name, file)): Path<(String, String)>,
    Query(see): Query<AddressWords>,
    Query(words): Query<LayRequest>,
) -> Result<Response, Trouble> {
    let see = Viewing::from(see);
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        let (asked, _) = words.read(bench.say(), &loaded);
        let shown = Shown::of(&bench, &name, &loaded, &asked);
        let laid = shown.laid().ok_or_else(Trouble::no_such_page)?;
        let stem = lay_figures::file_stem(&loaded, &laid.job);
        let ending = file
            .strip_prefix(&stem)
            .and_then(|rest| rest.strip_prefix('.'));
        let (kind, mime) = match ending {
            Some("dxf") => (LayKind::Dxf, "image/vnd.dxf"),
            Some("pdf") => (LayKind::Pdf, "application/pdf"),
            Some("svg") => (LayKind::Svg, "image/svg+xml"),
            _ => return Err(Trouble::no_such_page()),
        };
        let of = shown.made_of(&loaded);
        let out = LaidOut {
            label: &of.collection.name,
            of: &of.style.style.to_string(),
            spread: &laid.job.spread,
            lay: &laid.lay,
            cloth: &laid.job.cloth,
            marks: &cut_sheets::LayMarks::default(),
            system: see.system(&of.collection),
        };
        let bytes = jobs::lay_file(kind, &out, bench.say()).map_err(|why| {
            Trouble::one(
                StatusCode::INTERNAL_SERVER_ERROR,
                Words::lay_file_failed,
                Line::Told(why.to_string()),
            )
        })?;
        Ok(download(&file, mime, bytes).into_response())
    })
    .await
}

/// The pieces as they are cut.
async fn pieces_leaf(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
) -> Result<Html<String>, Trouble> {
    let see = Viewing::from(see);
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        let pieces = Pieces::of(&loaded, see.size_of(&loaded.style));
        let main = pieces_page::render(bench.say(), &name, &loaded, &see, pieces);
        Ok(in_the_room(
            bench.say(),
            (&name, "/pieces"),
            &loaded,
            &see,
            &main,
        ))
    })
    .await
}

/// The orders that name the style.
async fn orders_leaf(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
) -> Result<Html<String>, Trouble> {
    let see = Viewing::from(see);
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        let orders = orders::naming(bench.say(), &name, &loaded);
        let main = orders_page::render(
            bench.say(),
            &name,
            &orders,
            &see,
            see.system(&loaded.collection),
        );
        Ok(in_the_room(
            bench.say(),
            (&name, "/orders"),
            &loaded,
            &see,
            &main,
        ))
    })
    .await
}

/// All sizes of the pieces on each other: every size is sewn and cut for it, so the page asks for it last.
async fn nests(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(part): Query<pieces::Part>,
) -> Result<Response, Trouble> {
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        let svg = pieces::nests(bench.say(), &loaded, &part).ok_or_else(Trouble::no_such_page)?;
        let kind = [(axum::http::header::CONTENT_TYPE, "image/svg+xml")];
        Ok((kind, svg).into_response())
    })
    .await
}
