//! A style made of a pattern the maker owns: the file is looked at as often as the maker likes, and made into a style once.
//!
//! The file stays in the maker's browser and comes with every question, so that nothing half brought is ever kept here.

use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{Query, State};
use axum::response::Html;
use maud::Markup;
use words::Words;

use crate::page::begin::collection::{collection_of, taken};
use crate::page::begin::pattern::found::refused;
use crate::page::begin::pattern::pattern_answers::{Fields, PatternAnswers, in_words};
use crate::page::begin::pattern::{bring_page, found};
use crate::request::{FormAnswer, Route, blocking};
use crate::state::Bench;
use crate::trouble::Trouble;

/// No pattern file that is brought through a browser is larger; one that is is not read to its end.
const LARGEST: usize = 8 << 20;

/// The addresses of bringing a pattern.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::get("/bring", start).at_most(LARGEST),
        Route::post("/bring/look", look).at_most(LARGEST),
        Route::post("/bring/make", make).at_most(LARGEST),
    ]
}

/// What came with a question, or why it was not taken.
fn file(say: &'static Words, body: Result<Bytes, BytesRejection>) -> Result<Vec<u8>, String> {
    let bytes = body.map_err(|_| say.bring_too_large(LARGEST >> 20))?;
    if bytes.is_empty() {
        return Err(say.bring_no_file().to_owned());
    }
    Ok(bytes.to_vec())
}

async fn start(State(bench): State<Bench>) -> Result<Html<String>, Trouble> {
    blocking(move || {
        let collection = collection_of(&bench)?;
        let page = bring_page::render(bench.say(), collection.as_ref(), &taken(&bench)?);
        Ok(Html(page.into_string()))
    })
    .await
}

async fn look(
    State(bench): State<Bench>,
    Query(fields): Query<Fields>,
    body: Result<Bytes, BytesRejection>,
) -> Result<Html<String>, Trouble> {
    let say = bench.say();
    let seen = move || {
        let bytes = file(say, body).map_err(|words| vec![words])?;
        let told = PatternAnswers::read(say, &fields).map_err(|words| vec![words])?;
        let (look, source) = told.look(say, bytes)?;
        Ok(found::render(
            say,
            &look,
            &source.read.passed_over,
            &told.asked,
        ))
    };
    blocking(move || {
        let markup: Result<Markup, Vec<String>> = seen();
        Ok(Html(
            markup.unwrap_or_else(|lines| refused(&lines)).into_string(),
        ))
    })
    .await
}

async fn make(
    State(bench): State<Bench>,
    Query(fields): Query<Fields>,
    body: Result<Bytes, BytesRejection>,
) -> Result<FormAnswer, Trouble> {
    let say = bench.say();
    let made = move || {
        let bytes = file(say, body).map_err(|words| vec![words])?;
        let told = PatternAnswers::read(say, &fields).map_err(|words| vec![words])?;
        let (look, source) = told.look(say, bytes)?;
        jobs::begin_with(bench.folder(), &told.new, &look, source, told.meant)
            .map_err(|error| in_words(say, error))
    };
    blocking(move || {
        Ok(match made() {
            Ok(path) => FormAnswer::begun(say, Ok(path)),
            Err(lines) => FormAnswer::Problems(lines),
        })
    })
    .await
}
