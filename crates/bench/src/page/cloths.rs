//! Changes of the collection's cloths, made on the page of a style that is cut from them.

use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, Query, State};
use axum::response::Response;
use axum::routing::{MethodRouter, post};
use axum::{Json, Router};
use serde::Deserialize;
use style::{ClothsError, Collection, Edit, EditValue};
use words::Words;

use super::begin::Sent;
use crate::answer::{Came, placed, sentences};
use crate::have::Have;
use crate::outcome::Outcome;
use crate::route;
use crate::router::{answered, blocking, few, open, understood};
use crate::said::{Saying, say};
use crate::see::{Asked, Panel, See};
use crate::session::Session;
use crate::state::Bench;
use crate::trouble::Trouble;

/// Takes a change of the cloths in a folder back, or makes it again, for those who hold a version.
type Going = fn(&std::path::Path, &str) -> Result<Collection, ClothsError>;

/// The addresses cloths are changed at.
pub(crate) fn routes() -> Router<Bench> {
    Router::new()
        .route("/style/{name}/cloths", post(edit))
        .route(
            "/style/{name}/cloths/undo",
            stepping(style::undo_cloths, Words::collection_cloths_undone),
        )
        .route(
            "/style/{name}/cloths/redo",
            stepping(style::redo_cloths, Words::collection_cloths_redone),
        )
        .route("/style/{name}/cloths/add", post(add))
}

/// Changes as a page sends them, and the version of the file it shows.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Change {
    held: String,
    edits: Vec<Edit>,
}

/// A step back, and the version of the file the page shows.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Step {
    held: String,
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
    answered(bench, name, asked.into(), have, move |session, _| {
        let folder = session.loaded().collection_folder.clone();
        let words = edits.first().map(said).unwrap_or_default();
        let done = style::edit_cloths(&folder, &held, &edits);
        outcome(session, done, words)
    })
    .await
}

/// A step through the changes of cloths, as the style library makes it, and what is said of it.
fn stepping(go: Going, said: Saying) -> MethodRouter<Bench> {
    post(
        async move |State(bench): State<Bench>,
                    Path(name): Path<String>,
                    Query(asked): Query<Asked>,
                    have: Have,
                    step: Result<Json<Step>, JsonRejection>|
                    -> Result<Response, Trouble> {
            let Step { held } = understood(step)?;
            answered(bench, name, asked.into(), have, move |session, _| {
                let folder = session.loaded().collection_folder.clone();
                let done = go(&folder, &held);
                Outcome {
                    reset: true,
                    ..outcome(session, done, said(say()).to_owned())
                }
            })
            .await
        },
    )
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
                Err(ClothsError::Invalid(report)) => Sent::Problems(placed(&report)),
                Err(other) => Sent::Problems(vec![other.to_string()]),
            },
        )
    })
    .await
}

/// The style follows the cloths, whether the change was made or somebody else's was found.
fn outcome(session: &mut Session, done: Result<Collection, ClothsError>, words: String) -> Outcome {
    session.look_at_disk();
    let refused = |came, problem: String| Outcome {
        came,
        problems: vec![problem],
        ..Outcome::default()
    };
    match done {
        Ok(_) => Outcome {
            said: words,
            ..Outcome::default()
        },
        Err(ClothsError::Invalid(report)) => Outcome {
            came: Came::Refused,
            problems: sentences(&report),
            ..Outcome::default()
        },
        Err(error @ ClothsError::Stale) => {
            refused(Came::Behind, say().collection_cloths_behind(error))
        }
        Err(error @ ClothsError::Nothing) => refused(Came::Nothing, error.to_string()),
        Err(error @ (ClothsError::StyleBreaks { .. } | ClothsError::Unknown(_))) => {
            refused(Came::Refused, error.to_string())
        }
        Err(error @ ClothsError::Save(_)) => refused(Came::Failed, error.to_string()),
    }
}

/// An edit of a cloth in words: "tideline-14, weight: 13.5 oz/yd2".
fn said(edit: &Edit) -> String {
    let path = edit.path().to_string();
    let mut parts = path.trim_start_matches("cloths.").splitn(2, '.');
    let cloth = parts.next().unwrap_or_default();
    let what = parts.next().unwrap_or_default().replace('_', " ");
    match edit {
        Edit::Set {
            value: EditValue::Text(text),
            ..
        } => say().collection_cloths_set(cloth, text, what),
        Edit::Set { .. } | Edit::Insert { .. } => say().collection_cloths_changed(cloth, what),
        Edit::Remove { .. } => say().collection_cloths_taken_out(cloth, what),
    }
}
