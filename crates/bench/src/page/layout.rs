//! What every page has: the head, and the only places where styles and scripts are named.

mod script_words;

use maud::{DOCTYPE, Markup, html};
use words::Words;

use crate::asset;

/// What a page loads besides what every page does.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct PageAssets {
    /// Style sheets, after the common one.
    pub(crate) styles: &'static [&'static str],
    /// Scripts; none for a page that does nothing by itself.
    pub(crate) scripts: &'static [&'static str],
}

/// A page that does nothing by itself.
pub(crate) fn bare(say: &'static Words, title: &str, body: &Markup) -> Markup {
    page(say, title, PageAssets::default(), body)
}

/// A page with what it loads.
pub(crate) fn page(say: &'static Words, title: &str, loads: PageAssets, body: &Markup) -> Markup {
    let does = !loads.scripts.is_empty();
    html! {
        (DOCTYPE)
        html lang=(say.language()) {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                title { (say.page_title(title)) }
                link rel="icon" type="image/svg+xml" href=(asset::url("mark.svg"));
                // Letters that come after the first picture would move what stands beside them.
                @for face in ["plex-sans-400.woff2", "plex-sans-600.woff2"] {
                    link rel="preload" as="font" type="font/woff2" crossorigin href=(asset::url(face));
                }
                link rel="stylesheet" href=(asset::url("bench.css"));
                @for sheet in loads.styles { link rel="stylesheet" href=(asset::url(sheet)); }
                @for script in loads.scripts { script type="module" src=(asset::url(script)) {} }
            }
            body data-words=[does.then(|| script_words::of(say, loads.scripts))] {
                (body)
                @if does { (keys(say)) }
            }
        }
    }
}

/// The list of keys; the page's script fills it from what the page says of its keys.
fn keys(say: &'static Words) -> Markup {
    html! {
        dialog #keys aria-labelledby="keys-title" {
            h2 #keys-title { (say.keys_title()) }
            dl { (key("?", say.keys_this_list())) }
            form method="dialog" { button { (say.keys_close()) } }
        }
    }
}

/// Keys, with spaces between them, and what they do, for things that are many on a page.
pub(crate) fn key(keys: &str, does: &str) -> Markup {
    html! { div { dt { (does) } dd { @for key in keys.split(' ') { " " kbd { (key) } } } } }
}
