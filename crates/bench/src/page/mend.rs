//! A style that cannot be read, for its own file or one of those that all styles share is broken: the way back to the last
//! versions that can be.

use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, State};
use axum::routing::post;
use axum::{Json, Router};
use maud::{Markup, html};
use serde::Deserialize;
use style::{KeepError, KeptFile, Sound};
use words::Words;

use super::begin::Sent;
use super::layout::Loads;
use crate::answer::placed;
use crate::route;
use crate::router::{blocking, understood};
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

/// Whether there is something to go back to for the style in this folder.
pub(crate) fn is_offered(bench: &Bench, name: &str) -> bool {
    !broken_shared(bench).is_empty() || sound(bench, name).is_some()
}

/// The files that all styles share and that cannot be read, each with the number of the last version that can be.
fn broken_shared(bench: &Bench) -> Vec<(KeptFile, u32)> {
    let files = style::SHARED_FILES.map(|name| bench.folder().join(name));
    let kept = files.iter().filter_map(|file| KeptFile::at(file));
    kept.filter_map(|kept| {
        let (version, _) = kept.last_sound()?;
        Some((kept, version.number))
    })
    .collect()
}

/// What can be gone back to, by the name of the style's folder.
fn sound(bench: &Bench, name: &str) -> Option<Sound> {
    let styles = bench.styles().ok()?;
    let (_, file) = styles.into_iter().find(|(known, _)| known == name)?;
    style::last_sound(&file)
}

/// The form that goes back, beside what is wrong with the file.
pub(crate) fn offer(say: &'static Words, name: &str) -> Markup {
    html! {
        form data-send={ (route::style_path(name)) "/mend" } {
            p { (say.mend_offer()) }
            div.sending {
                button type="submit" { (say.mend_put_in()) }
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
