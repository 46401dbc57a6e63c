//! A style that begins as another one is.

use std::sync::PoisonError;

use axum::Json;
use axum::extract::rejection::JsonRejection;
use axum::extract::{Path, State};
use axum::response::Html;
use maud::{Markup, html};
use serde::Deserialize;
use style::Loaded;
use words::Words;

use super::questions::free_name;
use super::{Sent, taken};
use crate::page::layout::{self, Loads};
use crate::route;
use crate::router::{blocking, open, understood};
use crate::said::{SLOTS, filled};
use crate::see::See;
use crate::session::Disk;
use crate::state::Bench;
use crate::trouble::Trouble;

/// What a copy is called.
#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Called {
    name: String,
    code: String,
}

pub(super) async fn page(
    State(bench): State<Bench>,
    Path(name): Path<String>,
) -> Result<Html<String>, Trouble> {
    blocking(move || {
        let taken = taken(&bench)?;
        let session = open(&bench, &name)?;
        let session = session.lock().unwrap_or_else(PoisonError::into_inner);
        Ok(Html(
            render(bench.say(), &name, session.loaded(), &taken).into_string(),
        ))
    })
    .await
}

pub(super) async fn make(
    State(bench): State<Bench>,
    Path(name): Path<String>,
    called: Result<Json<Called>, JsonRejection>,
) -> Result<Sent, Trouble> {
    let Called { name: new, code } = understood(called)?;
    blocking(move || {
        let session = open(&bench, &name)?;
        let mut session = session.lock().unwrap_or_else(PoisonError::into_inner);
        // A copy is of what the file says now.
        if let Disk::Changed(on_disk, _) = session.look_at_disk() {
            session.take_over(*on_disk);
        }
        let new = new.trim();
        let copied = style::copy_style(session.loaded(), new, code.trim(), None);
        Ok(Sent::begun(bench.say(), copied))
    })
    .await
}

fn render(say: &'static Words, folder: &str, loaded: &Loaded, taken: &[String]) -> Markup {
    let identity = &loaded.style.style;
    let body = html! {
        header.masthead {
            div.title {
                a href="/" aria-keyshortcuts="1" title=(say.begin_home_key()) { (loaded.collection.name) }
                h1 { (filled(&say.copy_title(SLOTS[0], &identity.name), &[html! { small { (identity.code) } }])) }
            }
        }
        main.beginning {
            form data-send={ "/copy/" (route::encoded(folder)) } {
                p.lead { (say.copy_lead()) }
                section.group aria-labelledby="called" {
                    h2 #called { (say.begin_name_title()) }
                    div.cells {
                        label.cell { span { (say.begin_style()) } input type="text" name="name" value=(free_name(&identity.name, taken)) required maxlength="60" autocomplete="off"; }
                        label.cell { span { (say.begin_code()) } input type="text" name="code" value="" placeholder=(say.begin_code_usual()) maxlength="40" autocomplete="off"; }
                    }
                }
                div.sending {
                    p.problem role="alert" hidden {}
                    button.main type="submit" { (say.copy_copy()) }
                }
            }
            aside.foreseen {
                figure {
                    img.drawn src=(route::picture(folder, &See::default(), loaded.revision.as_str())) alt=(say.copy_front(&identity.name));
                }
            }
        }
    };
    let loads = Loads {
        styles: &["begin.css"],
        scripts: &["forms.js", "keys.js"],
    };
    layout::page(say, say.copy_page_title(), loads, &body)
}
