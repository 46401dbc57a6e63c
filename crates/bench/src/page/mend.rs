//! A style whose file cannot be read: the way back to the last version of it that can be.

use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, State};
use axum::routing::post;
use axum::{Json, Router};
use maud::{Markup, html};
use serde::Deserialize;
use style::Sound;

use super::begin::Sent;
use super::layout::Loads;
use crate::answer::placed;
use crate::route;
use crate::router::{blocking, understood};
use crate::said::say;
use crate::see::See;
use crate::state::Bench;
use crate::trouble::Trouble;

/// The address of the way back.
pub(crate) fn routes() -> Router<Bench> {
    Router::new().route("/style/{name}/mend", post(mend))
}

/// What a page with the form loads.
pub(crate) const LOADS: Loads = Loads {
    styles: &["begin.css"],
    scripts: &["forms.js"],
};

/// What the form carries.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Nothing {}

/// What can be gone back to, by the name of the style's folder.
pub(crate) fn sound(bench: &Bench, name: &str) -> Option<Sound> {
    let styles = bench.styles().ok()?;
    let (_, file) = styles.into_iter().find(|(known, _)| known == name)?;
    style::last_sound(&file)
}

/// The form that goes back, beside what is wrong with the file.
pub(crate) fn offer(name: &str) -> Markup {
    html! {
        form data-send={ (route::style_path(name)) "/mend" } {
            p { (say().mend_offer()) }
            div.sending {
                button type="submit" { (say().mend_put_in()) }
                p.problem role="alert" hidden {}
            }
        }
    }
}

async fn mend(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    body: Result<Json<Nothing>, JsonRejection>,
) -> Result<Sent, Trouble> {
    let Nothing {} = understood(body)?;
    blocking(move || {
        let Some(sound) = sound(&bench, &name) else {
            return Ok(Sent::Problems(vec![say().mend_nothing().to_owned()]));
        };
        Ok(match sound.put_in(&sound.loaded.text) {
            Ok(_) => Sent::To(route::style(&name, &See::default())),
            Err(style::SaveError::Invalid(report)) => Sent::Problems(placed(&report)),
            Err(other) => Sent::Problems(vec![other.to_string()]),
        })
    })
    .await
}
