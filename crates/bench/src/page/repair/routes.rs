//! A style that cannot be read, for its own file or one of those that all styles share is broken: the way back to the last
//! versions that can be.

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, State};
use serde::Deserialize;
use style::KeepError;

use crate::addresses;
use crate::answer::placed;
use crate::repair::{broken_shared, sound};
use crate::request::{FormAnswer, Route, blocking, understood};
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::viewing::Viewing;

/// The address of the way back.
pub(crate) fn routes() -> Vec<Route> {
    vec![Route::post("/style/{name}/mend", mend)]
}

/// What the form carries.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Nothing {}

async fn mend(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    body: Result<Json<Nothing>, JsonRejection>,
) -> Result<FormAnswer, Trouble> {
    let say = bench.say();
    let Nothing {} = understood(body)?;
    blocking(move || {
        // Where the collection's own file is broken nothing says which styles there are; it is what is mended then.
        let there = bench.styles();
        if there.is_ok_and(|styles| styles.iter().all(|(known, _)| *known != name)) {
            return Err(Trouble::no_such_page());
        }
        let shared = broken_shared(&bench);
        for (kept, number) in &shared {
            match kept.put_back(*number) {
                Ok(_) => {}
                Err(KeepError::Invalid(report)) => {
                    return Ok(FormAnswer::Problems(placed(say, &report)));
                }
                Err(other) => return Ok(FormAnswer::Problems(vec![other.to_string()])),
            }
        }
        let Some(sound) = sound(&bench, &name) else {
            return Ok(if shared.is_empty() {
                FormAnswer::Problems(vec![say.mend_nothing().to_owned()])
            } else {
                FormAnswer::To(addresses::style(&name, &Viewing::default()))
            });
        };
        Ok(match sound.put_in(&sound.loaded.text) {
            Ok(_) => FormAnswer::To(addresses::style(&name, &Viewing::default())),
            Err(style::SaveError::Invalid(report)) => FormAnswer::Problems(placed(say, &report)),
            Err(other) => FormAnswer::Problems(vec![other.to_string()]),
        })
    })
    .await
}
