//! Changes of the collection's cloths, made on the page of a style that is cut from them.

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use serde::Deserialize;
use style::{Edit, EditValue, KeepError, cloths_of};
use words::Words;

use crate::answer::placed;
use crate::request::{FormAnswer, PartsHad, Route, answered, blocking, few, open, understood};
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::viewing::{AddressWords, Panel, Viewing};
use crate::{addresses, change_outcome};

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
    Query(asked): Query<AddressWords>,
    have: PartsHad,
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
        change_outcome::elsewhere(session, done, words)
    })
    .await
}

async fn add(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    added: Result<Json<Added>, JsonRejection>,
) -> Result<FormAnswer, Trouble> {
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
                Ok(_) => FormAnswer::To(addresses::style(
                    &name,
                    &Viewing {
                        panel: Panel::Cloth,
                        ..Viewing::default()
                    },
                )),
                Err(KeepError::Invalid(report)) => {
                    FormAnswer::Problems(placed(bench.say(), &report))
                }
                Err(other) => FormAnswer::Problems(vec![other.to_string()]),
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
        } => say.say(words::say::CollectionClothsSet {
            cloth,
            value: text,
            what,
        }),
        Edit::Set { .. } | Edit::Insert { .. } => {
            say.say(words::say::CollectionClothsChanged { cloth, what })
        }
        Edit::Remove { .. } => say.say(words::say::CollectionClothsTakenOut { cloth, what }),
    }
}
