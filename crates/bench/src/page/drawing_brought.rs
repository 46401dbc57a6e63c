//! A drawing of the maker's own comes into the style's folder: read, and written anew from what was understood.

use std::sync::PoisonError;

use axum::body::Bytes;
use axum::extract::rejection::BytesRejection;
use axum::extract::{Path, Query, State};
use serde::Deserialize;
use style::{Beside, SaveError};
use words::Words;

use crate::answer::placed;
use crate::request::{FormAnswer, Route, blocking, open};
use crate::session::{ART_FOLDER, Disk};
use crate::state::Bench;
use crate::trouble::Trouble;

/// No drawing is larger; one that is is not read to its end.
const LARGEST: usize = 512 * 1024;

/// The address drawings are sent to.
pub(crate) fn routes() -> Vec<Route> {
    vec![Route::post("/style/{name}/art", take).at_most(LARGEST)]
}

/// What the file was called where it came from.
#[derive(Debug, Deserialize)]
struct Named {
    #[serde(default)]
    file: String,
}

async fn take(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    Query(Named { file }): Query<Named>,
    body: Result<Bytes, BytesRejection>,
) -> Result<FormAnswer, Trouble> {
    let say = bench.say();
    let Ok(bytes) = body else {
        return Ok(refused(say.art_too_large(LARGEST / 1024)));
    };
    let Ok(text) = String::from_utf8(bytes.to_vec()) else {
        return Ok(refused(say.art_no_text().to_owned()));
    };
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        if let Disk::Changed(on_disk, _) = session.look_at_disk() {
            session.take_over(*on_disk);
        }
        let shown = last_part(say, &file);
        let drawing = match style::read_drawing(&shown, &text) {
            Ok(drawing) => drawing,
            Err(report) => return Ok(FormAnswer::Problems(placed(say, &report))),
        };
        let loaded = session.loaded();
        let art = Beside::new(
            loaded,
            ART_FOLDER,
            stem(&shown),
            "svg",
            drawing.text().into_bytes(),
        );
        let path = art.name.clone();
        Ok(match style::save_beside(loaded, &loaded.text, &[art]) {
            Ok(_) => FormAnswer::To(path),
            Err(SaveError::Invalid(report) | SaveError::Unreadable(report)) => {
                FormAnswer::Problems(placed(say, &report))
            }
            Err(other) => refused(other.to_string()),
        })
    })
    .await
}

fn refused(words: String) -> FormAnswer {
    FormAnswer::Problems(vec![words])
}

/// The name of a file without its folders, whatever system it comes from; short enough to be said.
fn last_part(say: &'static Words, file: &str) -> String {
    const LONGEST: usize = 80;
    let last = file.rsplit(['/', '\\']).next().unwrap_or_default();
    let plain = last.chars().filter(|c| !c.is_control()).take(LONGEST);
    let name: String = plain.collect();
    if name.is_empty() {
        say.art_unnamed().to_owned()
    } else {
        name
    }
}

/// What the file is called in the style's folder; "drawing" where nothing of its name can be used.
fn stem(name: &str) -> &str {
    let stem = name.rsplit_once('.').map_or(name, |(stem, _)| stem);
    if stem.chars().any(|c| c.is_ascii_alphanumeric()) {
        stem
    } else {
        "drawing"
    }
}
