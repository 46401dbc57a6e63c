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
pub(crate) enum Listed {
    /// The folder has nothing in it yet.
    Nothing,
    /// The collection and its styles.
    Styles(Box<Collection>, Vec<Entry>),
}

pub(crate) struct Entry {
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
    if style::can_begin_in(bench.folder()) {
        return Ok(Listed::Nothing);
    }
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
    Ok(Listed::Styles(Box::new(collection), styles))
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
    let (title, main) = match listed {
        Listed::Nothing => ("A new collection", nothing_yet()),
        Listed::Styles(collection, styles) => (collection.name.as_str(), styles_of(styles, see)),
    };
    let body = html! {
        header.masthead {
            div.title { h1 { (title) } }
            @if matches!(listed, Listed::Styles(..)) {
                nav.actions aria-label="Begin" {
                    a href="/new" { "New style" }
                    a href="/bring" { "Bring a pattern" }
                }
            }
        }
        main.collection { (main) }
    };
    let loads = Loads {
        styles: &["begin.css"],
        scripts: &["forms.js", "keys.js"],
    };
    layout::page(title, loads, &body)
}

fn styles_of(styles: &[Entry], see: &See) -> Markup {
    html! {
        h2 { "Styles" }
        @if styles.is_empty() {
            section.empty {
                p { "There are no styles yet. A style is one pair of jeans: its chart, its cloth, how it is sewn. Pattern, drawings, yarn, lays and papers follow from it." }
                p { a href="/new" { "Begin the first style" } " by a few questions; all of them are answered already. Or " a href="/bring" { "bring a pattern" } " of your own." }
            }
        } @else {
            ul.styles {
                @for entry in styles { (card(entry, see)) }
            }
        }
    }
}

/// What to do in a folder with nothing in it.
fn nothing_yet() -> Markup {
    html! {
        section.empty {
            p { "There is nothing in this folder yet. A collection is what a label’s styles share, as text files that you may edit by hand:" }
            ul {
                li { code { "collection.toml" } ", your label and the workrooms that sew for you" }
                li { code { "cloths.toml" } ", " code { "yarns.toml" } " and " code { "trims.toml" } ", what you buy" }
                li { code { "styles" } ", a folder for each style" }
            }
            h2 { "Your first style" }
            p { "A few questions, all of them answered already. The collection is made with it: an invented label’s cloths, yarns and trims, to put your own in place of." }
            p { a href="/new" { "Begin" } ", or " a href="/bring" { "bring a pattern" } " of your own." }
            h2 { "The demo" }
            p { "To look at and to try things on: an invented label, one style, one order. It can be thrown away like any folder." }
            form data-send="/demo" {
                div.sending {
                    p.problem role="alert" hidden {}
                    button type="submit" { "Put the demo here" }
                }
            }
        }
    }
}

fn card(entry: &Entry, see: &See) -> Markup {
    let url = route::style(&entry.folder, see);
    match &entry.what {
        Ok(sound) => html! {
            li {
                a href=(url) {
                    img src=(route::picture(&entry.folder, &See::default(), &sound.revision))
                        alt={ "Front of " (sound.name) } width="220" height="340";
                    span.name { (sound.name) " " small { (sound.code) } }
                    span.about { (sound.figure) ", " (sound.shell) }
                    @if !sound.summary.is_empty() { span.about { (sound.summary) } }
                    span.about { (capital(&sound.sizes)) }
                }
                a.copy href={ "/copy/" (route::encoded(&entry.folder)) } aria-label={ "Copy " (sound.name) } { "Copy" }
            }
        },
        Err(problems) => html! {
            li.mistakes {
                h3 { (entry.folder) }
                p.bad { "Cannot be opened yet: " (problems.len()) " to put right" }
                ul { @for problem in problems { li { (problem) } } }
                p.about { "Put it right in the file and load this page again. Earlier versions of it lie beside it in " code { ".revisions" } "." }
            }
        },
    }
}
