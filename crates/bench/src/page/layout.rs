//! What every page has: the head, and the only places where styles and scripts are named.

use maud::{DOCTYPE, Markup, html};

use crate::asset;

/// A page that does nothing by itself.
pub(crate) fn bare(title: &str, body: &Markup) -> Markup {
    page(title, false, body)
}

/// A page with the bench's scripts.
pub(crate) fn live(title: &str, body: &Markup) -> Markup {
    page(title, true, body)
}

fn page(title: &str, live: bool, body: &Markup) -> Markup {
    html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (title) " · Fellwork" }
                link rel="icon" type="image/svg+xml" href=(asset::url("mark.svg"));
                link rel="stylesheet" href=(asset::url("bench.css"));
                @if live { script type="module" src=(asset::url("bench.js")) {} }
            }
            body { (body) }
        }
    }
}
