//! Changes of the collection's cloths, made on the page of a style that is cut from them.

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use serde::Deserialize;
use style::{Edit, EditValue, KeepError, cloths_of};
use words::Words;

use crate::answer::placed;
use crate::request::{Have, Route, Sent, answered, blocking, few, open, understood};
use crate::see::{Asked, Panel, See};
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::{outcome, route};

/// The addresses cloths are changed at.
pub(crate) fn routes() -> Vec<Route> {
    vec![
        Route::post("/style/{name}/cloths", edit),
        Route::post("/style/{name}/cloths/add", add),
    ]
}

/// Changes as a page sends them, and the version of the file it shows.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Change {
    held: String,
    edits: Vec<Edit>,
}

/// A cloth to be added.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Added {
    held: String,
    name: String,
    like: String,
}

async fn edit(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(asked): Query<Asked>,
    have: Have,
    change: Result<Json<Change>, JsonRejection>,
) -> Result<Response, Trouble> {
    let Change { held, edits } = understood(change)?;
    few(&edits)?;
    let say = bench.say();
    answered(bench, name, asked.into(), have, move |session, _| {
        let folder = session.loaded().collection_folder.clone();
        let words = edits
            .first()
            .map(|edit| said(say, edit))
            .unwrap_or_default();
        let done = cloths_of(&folder).map_err(KeepError::from);
        let done = done.and_then(|cloths| cloths.edit(&held, &edits));
        outcome::elsewhere(session, done, words)
    })
    .await
}

async fn add(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    added: Result<Json<Added>, JsonRejection>,
) -> Result<Sent, Trouble> {
    let added = understood(added)?;
    blocking(move || {
        // The page of a style that is not there adds nothing.
        drop(open(&bench, &name)?);
        let Added {
            held,
            name: called,
            like,
        } = added;
        Ok(
            match style::add_cloth(bench.folder(), &held, &called, &like) {
                Ok(_) => Sent::To(route::style(
                    &name,
                    &See {
                        panel: Panel::Cloth,
                        ..See::default()
                    },
                )),
                Err(KeepError::Invalid(report)) => Sent::Problems(placed(bench.say(), &report)),
                Err(other) => Sent::Problems(vec![other.to_string()]),
            },
        )
    })
    .await
}

/// An edit of a cloth in words: "tideline-14, weight: 13.5 oz/yd2".
fn said(say: &'static Words, edit: &Edit) -> String {
    let path = edit.path().to_string();
    let mut parts = path.trim_start_matches("cloths.").splitn(2, '.');
    let cloth = parts.next().unwrap_or_default();
    let what = parts.next().unwrap_or_default().replace('_', " ");
    match edit {
        Edit::Set {
            value: EditValue::Text(text),
            ..
        } => say.collection_cloths_set(cloth, text, what),
        Edit::Set { .. } | Edit::Insert { .. } => say.collection_cloths_changed(cloth, what),
        Edit::Remove { .. } => say.collection_cloths_taken_out(cloth, what),
    }
}
