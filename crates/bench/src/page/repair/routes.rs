//! A style that cannot be read, for its own file or one of those that all styles share is broken: the way back to the last
//! versions that can be.

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, State};
use serde::Deserialize;
use style::KeepError;

use crate::answer::placed;
use crate::repair::{broken_shared, sound};
use crate::request::{Route, Sent, blocking, understood};
use crate::route;
use crate::see::See;
use crate::state::Bench;
use crate::trouble::Trouble;

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
) -> Result<Sent, Trouble> {
    let say = bench.say();
    let Nothing {} = understood(body)?;
    blocking(move || {
        let shared = broken_shared(&bench);
        for (kept, number) in &shared {
            match kept.put_back(*number) {
                Ok(_) => {}
                Err(KeepError::Invalid(report)) => return Ok(Sent::Problems(placed(say, &report))),
                Err(other) => return Ok(Sent::Problems(vec![other.to_string()])),
            }
        }
        let Some(sound) = sound(&bench, &name) else {
            return Ok(if shared.is_empty() {
                Sent::Problems(vec![say.mend_nothing().to_owned()])
            } else {
                Sent::To(route::style(&name, &See::default()))
            });
        };
        Ok(match sound.put_in(&sound.loaded.text) {
            Ok(_) => Sent::To(route::style(&name, &See::default())),
            Err(style::SaveError::Invalid(report)) => Sent::Problems(placed(say, &report)),
            Err(other) => Sent::Problems(vec![other.to_string()]),
        })
    })
    .await
}
