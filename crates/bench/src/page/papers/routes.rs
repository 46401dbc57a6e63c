//! What leaves the house: the production pack and the patterns, made while the bench goes on.

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, Query, State};
use axum::http::header;
use axum::response::{Html, IntoResponse, Response};
use serde::Deserialize;
use style::Loaded;
use words::Words;

use crate::page::layout::PageAssets;
use crate::page::papers::papers_page::PapersPage;
use crate::page::papers::requests::{PackRequest, PatternRequest};
use crate::page::room_frame as frame;
use crate::part::background_work::{Standing, download, not_begun, sentences};
use crate::part::page_head::Head;
use crate::request::{Route, blocking, loaded, understood};
use crate::room::Room;
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::viewing::{AddressWords, Viewing};
use crate::work::pack::PackAsked;
use crate::work::patterns::PatternsAsked;
use crate::work::{Ended, NotBegun, Works};

/// The addresses of the room.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::get("/style/{name}/papers", page),
        Route::get("/style/{name}/papers/work", work),
        Route::post("/style/{name}/papers/pack", pack),
        Route::post("/style/{name}/papers/patterns", patterns),
        Route::post("/style/{name}/papers/cancel-pack", cancel_pack),
        Route::post("/style/{name}/papers/cancel-patterns", cancel_patterns),
        Route::get("/style/{name}/papers/file/{file}", file),
        Route::get("/style/{name}/papers/cover.svg", cover),
    ]
}

/// What the room shows of a style.
fn gathered<'a>(
    bench: &Bench,
    name: &'a str,
    loaded: &'a Loaded,
    see: &'a Viewing,
) -> PapersPage<'a> {
    PapersPage {
        say: bench.say(),
        name,
        loaded,
        see,
        system: see.system(&loaded.collection),
        pack: bench.works().packs.of(name),
        patterns: bench.works().patterns.of(name),
    }
}

async fn page(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<AddressWords>,
) -> Result<Html<String>, Trouble> {
    let see = Viewing::from(asked);
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        let head = Head {
            say: bench.say(),
            name: &name,
            loaded: &loaded,
            room: Room::Papers,
            leaf: "",
            see: &see,
        };
        let main = gathered(&bench, &name, &loaded, &see).render();
        let loads = PageAssets {
            styles: &["work.css"],
            scripts: &["keys.js", "work.js"],
        };
        Ok(Html(frame::render(&head, loads, &main).into_string()))
    })
    .await
}

/// How the work stands.
async fn work(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
) -> Result<Json<Standing>, Trouble> {
    after(bench, name, see, |_, _, _| Vec::new()).await
}

/// Does something with the work on a style, gathers what is wrong with what was asked, and says how the work stands then.
async fn after(
    bench: Bench,
    name: String,
    see: AddressWords,
    act: impl FnOnce(&Works, &str, &Loaded) -> Vec<String> + Send + 'static,
) -> Result<Json<Standing>, Trouble> {
    let see = Viewing::from(see);
    blocking(move || {
        let loaded = loaded(&bench, &name)?;
        let problems = act(bench.works(), &name, &loaded);
        Ok(Json(standing(&bench, &name, &loaded, &see, &problems)))
    })
    .await
}

fn standing(
    bench: &Bench,
    name: &str,
    loaded: &Loaded,
    see: &Viewing,
    problems: &[String],
) -> Standing {
    let page = gathered(bench, name, loaded, see);
    Standing {
        running: page.runs(),
        said: page.said(),
        problems: sentences(problems),
        fragments: page.fragments(),
    }
}

/// Begins a pack.
async fn pack(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
    words: Result<Json<PackRequest>, JsonRejection>,
) -> Result<Json<Standing>, Trouble> {
    let say = bench.say();
    let words = understood(words)?;
    after(bench, name, see, move |works, name, loaded| {
        let busy = say.papers_pack_busy();
        begun(say, words.read(say, loaded), busy, |order| {
            works.begin(say, &works.packs, name, PackAsked(order), loaded.clone())
        })
    })
    .await
}

/// Begins pattern files.
async fn patterns(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
    words: Result<Json<PatternRequest>, JsonRejection>,
) -> Result<Json<Standing>, Trouble> {
    let say = bench.say();
    let words = understood(words)?;
    after(bench, name, see, move |works, name, loaded| {
        let busy = say.papers_patterns_busy();
        begun(say, words.read(say, loaded), busy, |order| {
            let task = PatternsAsked(order);
            works.begin(say, &works.patterns, name, task, loaded.clone())
        })
    })
    .await
}

/// Begins what was asked for where it makes sense; else, or where it cannot begin, why.
fn begun<T>(
    say: &'static Words,
    asked: Result<T, Vec<String>>,
    busy: &str,
    begin: impl FnOnce(T) -> Result<(), NotBegun>,
) -> Vec<String> {
    match asked {
        Ok(order) => {
            let refused = begin(order).err();
            refused
                .iter()
                .map(|why| not_begun(say, why, busy))
                .collect()
        }
        Err(problems) => problems,
    }
}

async fn cancel_pack(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
) -> Result<Json<Standing>, Trouble> {
    after(bench, name, see, |works, name, _| {
        if let Some(job) = works.packs.of(name) {
            job.cancel();
        }
        Vec::new()
    })
    .await
}

async fn cancel_patterns(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(see): Query<AddressWords>,
) -> Result<Json<Standing>, Trouble> {
    after(bench, name, see, |works, name, _| {
        if let Some(job) = works.patterns.of(name) {
            job.cancel();
        }
        Vec::new()
    })
    .await
}

/// The pair as it is on the cover of the pack that was made last, whatever the style is by now.
async fn cover(State(bench): State<Bench>, Path(name): Path<String>) -> Result<Response, Trouble> {
    blocking(move || {
        let job = bench.works().packs.of(&name);
        let job = job.ok_or_else(Trouble::no_such_page)?;
        let doc = &job.loaded.style;
        let size = job.task.0.size.unwrap_or(doc.sizes.base);
        let garment = sewing::make(doc, &job.loaded.collection, size);
        let (view, face) = (drawing::View::Front, sewing::Face::Outside);
        let sheet = drawing::garment_picture(&garment, view, face, bench.say());
        let kind = [
            (header::CONTENT_TYPE, "image/svg+xml"),
            (header::CACHE_CONTROL, "private, max-age=86400"),
        ];
        Ok((kind, drawing::svg(&sheet)).into_response())
    })
    .await
}

/// How a file is wanted.
#[derive(Debug, Default, Deserialize)]
struct How {
    /// Set to have a PDF shown in place of put away.
    open: Option<String>,
}

/// A file that was made, by its name.
async fn file(
    State(bench): State<Bench>,
    Path((name, file)): Path<(String, String)>,
    Query(how): Query<How>,
) -> Result<Response, Trouble> {
    blocking(move || {
        let (mime, bytes) = made(&bench, &name, &file).ok_or_else(Trouble::no_such_page)?;
        if how.open.is_some() && mime == "application/pdf" {
            return Ok(([(header::CONTENT_TYPE, mime)], bytes).into_response());
        }
        Ok(download(&file, mime, bytes).into_response())
    })
    .await
}

/// The bytes of a file that was made. A name from an address is only ever compared with those there are.
fn made(bench: &Bench, name: &str, file: &str) -> Option<(&'static str, Vec<u8>)> {
    let works = bench.works();
    if let Some(job) = works.packs.of(name)
        && file == format!("{}.pdf", jobs::stem(&job.loaded))
        && let Some(Ended::Made(pack)) = job.stand().ended
    {
        return Some(("application/pdf", pack.pdf.clone()));
    }
    let Some(Ended::Made(made)) = works.patterns.of(name)?.stand().ended else {
        return None;
    };
    let found = made.files.iter().find(|known| known.name == file)?;
    let mime = match file.rsplit('.').next() {
        Some("dxf") => "image/vnd.dxf",
        Some("svg") => "image/svg+xml",
        Some("pdf") => "application/pdf",
        _ => "application/vnd.hp-hpgl",
    };
    Some((mime, found.bytes.clone()))
}
