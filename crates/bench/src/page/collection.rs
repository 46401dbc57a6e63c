//! The collection: every style with a small drawing.

use maud::{Markup, html};
use style::Collection;

use super::layout::{self, Loads};
use crate::answer::placed;
use crate::field::capital;
use crate::route;
use crate::see::See;
use crate::session::Disk;
use crate::state::{Bench, NotOpen};
use crate::trouble::Trouble;

/// What the page shows.
pub(crate) struct Listed {
    collection: Collection,
    styles: Vec<Entry>,
}

struct Entry {
    folder: String,
    what: Result<Sound, Vec<String>>,
}

struct Sound {
    name: String,
    code: String,
    figure: String,
    summary: String,
    sizes: String,
    shell: String,
    revision: String,
}

/// Reads the collection and every style in it.
pub(crate) fn gather(bench: &Bench) -> Result<Listed, Trouble> {
    let collection = style::load_collection(bench.folder()).map_err(|report| Trouble {
        status: axum::http::StatusCode::UNPROCESSABLE_ENTITY,
        title: "This collection cannot be opened yet",
        words: placed(&report),
    })?;
    let mut styles = Vec::new();
    for (folder, _) in bench.styles()? {
        let what = match bench.session(&folder) {
            Ok(session) => {
                let mut session = session
                    .lock()
                    .unwrap_or_else(std::sync::PoisonError::into_inner);
                if let Disk::Changed(on_disk, _) = session.look_at_disk() {
                    session.take_over(*on_disk);
                }
                Ok(Sound::of(session.loaded()))
            }
            Err(NotOpen::Broken(report)) => Err(placed(&report)),
            // Taken away since it was listed.
            Err(NotOpen::Unknown) => continue,
        };
        styles.push(Entry { folder, what });
    }
    Ok(Listed { collection, styles })
}

impl Sound {
    fn of(loaded: &style::Loaded) -> Self {
        let doc = &loaded.style;
        let range = |tags: &[u32]| match tags {
            [] => String::new(),
            [one] => one.to_string(),
            [first, .., last] => format!("{first}–{last}"),
        };
        let shell = loaded.collection.cloths.get(&doc.cloth.shell);
        Self {
            name: doc.style.name.clone(),
            code: doc.style.code.clone(),
            figure: format!("{}’s {}", capital(doc.style.figure.word()), doc.style.fit),
            summary: doc.style.summary.clone(),
            sizes: format!(
                "waist {}, length {}",
                range(&doc.sizes.waists),
                range(&doc.sizes.lengths)
            ),
            shell: shell.map(|cloth| cloth.name.clone()).unwrap_or_default(),
            revision: loaded.revision.to_string(),
        }
    }
}

/// The page.
pub(crate) fn render(listed: &Listed, see: &See) -> Markup {
    let collection = &listed.collection;
    let body = html! {
        header.masthead {
            div.title { h1 { (collection.name) } }
        }
        main.collection {
            h2 { "Styles" }
            @if listed.styles.is_empty() {
                p { "This collection has no styles yet. A style is a folder inside " code { "styles" } " with a " code { "style.toml" } " in it." }
            }
            ul.styles {
                @for entry in &listed.styles { (card(entry, see)) }
            }
        }
    };
    let loads = Loads {
        scripts: &["keys.js"],
        ..Loads::default()
    };
    layout::page(&collection.name, loads, &body)
}

fn card(entry: &Entry, see: &See) -> Markup {
    let url = route::style(&entry.folder, see);
    html! {
        li {
            a href=(url) {
                @match &entry.what {
                    Ok(sound) => {
                        img src=(route::picture(&entry.folder, &See::default(), &sound.revision))
                            alt={ "Front of " (sound.name) } width="220" height="340";
                        span.name { (sound.name) " " small { (sound.code) } }
                        span.about { (sound.figure) ", " (sound.shell) }
                        @if !sound.summary.is_empty() { span.about { (sound.summary) } }
                        span.about { (capital(&sound.sizes)) }
                    }
                    Err(problems) => {
                        span.name { (entry.folder) }
                        span.about.bad { "Cannot be opened yet: " (problems.len()) " to put right" }
                    }
                }
            }
        }
    }
}
