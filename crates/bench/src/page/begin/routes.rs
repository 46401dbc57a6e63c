//! The addresses of a style that begins by questions, or with the demo.

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Query, State};
use axum::response::Html;

use crate::page::begin::collection::{collection_of, taken};
use crate::page::begin::question_answers::QuestionAnswers;
use crate::page::begin::{picture, questions};
use crate::request::{FormAnswer, Route, blocking, understood};
use crate::state::Bench;
use crate::trouble::Trouble;

/// The addresses of beginning.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::get("/new", page),
        Route::post("/new", make),
        Route::post("/demo", demo),
    ]
}

async fn page(
    State(bench): State<Bench>,
    Query(asked): Query<picture::Asked>,
) -> Result<Html<String>, Trouble> {
    blocking(move || {
        let collection = collection_of(&bench)?;
        let taken = taken(&bench)?;
        let answers = asked.answers();
        let page = questions::render(bench.say(), collection.as_ref(), &taken, &answers);
        Ok(Html(page.into_string()))
    })
    .await
}

async fn make(
    State(bench): State<Bench>,
    told: Result<Json<QuestionAnswers>, JsonRejection>,
) -> Result<FormAnswer, Trouble> {
    let say = bench.say();
    let told = understood(told)?;
    let asked = match told.read(say) {
        Ok(asked) => asked,
        Err(words) => return Ok(FormAnswer::Problems(vec![words])),
    };
    blocking(move || {
        Ok(FormAnswer::begun(
            say,
            style::new_style(bench.folder(), &asked),
        ))
    })
    .await
}

/// Writes the demo into a folder that has nothing in it.
async fn demo(State(bench): State<Bench>) -> Result<FormAnswer, Trouble> {
    blocking(move || {
        Ok(FormAnswer::begun(
            bench.say(),
            style::write_demo(bench.folder()),
        ))
    })
    .await
}
