//! The collection: every style with a small drawing.

use maud::{Markup, html};
use style::{Collection, Tag};
use words::Words;

use super::layout::{self, Loads};
use super::mend;
use crate::answer::placed;
use crate::route;
use crate::said::{SLOTS, filled};
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
    what: Result<Sound, Mistakes>,
}

/// What is wrong with a style's file, and whether an earlier version can take its place.
struct Mistakes {
    told: Vec<String>,
    mends: bool,
}

struct Sound {
    name: String,
    code: String,
    about: String,
    summary: String,
    sizes: String,
    revision: String,
}

/// Reads the collection and every style in it.
pub(crate) fn gather(bench: &Bench) -> Result<Listed, Trouble> {
    let say = bench.say();
    if style::can_begin_in(bench.folder()) {
        return Ok(Listed::Nothing);
    }
    let collection = style::load_collection(bench.folder()).map_err(|report| {
        Trouble::unreadable(Words::collection_not_opened, placed(say, &report))
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
                Ok(Sound::of(say, session.loaded()))
            }
            Err(NotOpen::Broken(report)) => Err(Mistakes {
                told: placed(say, &report),
                mends: mend::is_offered(bench, &folder),
            }),
            // Taken away since it was listed.
            Err(NotOpen::Unknown) => continue,
        };
        styles.push(Entry { folder, what });
    }
    Ok(Listed::Styles(Box::new(collection), styles))
}

impl Sound {
    fn of(say: &'static Words, loaded: &style::Loaded) -> Self {
        let doc = &loaded.style;
        let range = |tags: &[Tag]| match tags {
            [] => String::new(),
            [one] => one.to_string(),
            [first, .., last] => format!("{first}–{last}"),
        };
        let shell = loaded.collection.cloths.get(&doc.cloth.shell);
        let shell = shell.map_or("", |cloth| &cloth.name);
        Self {
            name: doc.style.name.clone(),
            code: doc.style.code.clone(),
            about: say.collection_what(doc.style.figure, doc.style.fit, shell),
            summary: doc.style.summary.clone(),
            sizes: say.collection_sizes(range(&doc.sizes.lengths), range(&doc.sizes.waists)),
            revision: loaded.revision.to_string(),
        }
    }
}

/// The page.
pub(crate) fn render(say: &'static Words, listed: &Listed, see: &See) -> Markup {
    let (title, main) = match listed {
        Listed::Nothing => (say.collection_nothing_title(), nothing_yet(say)),
        Listed::Styles(collection, styles) => {
            (collection.name.as_str(), styles_of(say, styles, see))
        }
    };
    let body = html! {
        header.masthead {
            div.title { h1 { (title) } }
            @if matches!(listed, Listed::Styles(..)) {
                nav.actions aria-label=(say.collection_begin()) {
                    a href="/new" { (say.collection_new_style()) }
                    a href="/bring" { (say.collection_bring()) }
                }
            }
        }
        main.collection { (main) }
    };
    let loads = Loads {
        styles: &["begin.css"],
        scripts: &["forms.js", "keys.js"],
    };
    layout::page(say, title, loads, &body)
}

fn styles_of(say: &'static Words, styles: &[Entry], see: &See) -> Markup {
    html! {
        h2 { (say.collection_styles()) }
        @if styles.is_empty() {
            section.empty {
                p { (say.collection_no_styles()) }
                p { (ways(say.collection_first_style(SLOTS[0], SLOTS[1]), say.collection_first_style_begin(), say.collection_first_style_bring())) }
            }
        } @else {
            ul.styles {
                @for entry in styles { (card(say, entry, see)) }
            }
        }
    }
}

/// A sentence with the two ways to begin in it: by the questions, and with a pattern.
fn ways(sentence: String, begin: &str, bring: &str) -> Markup {
    let links = [
        html! { a href="/new" { (begin) } },
        html! { a href="/bring" { (bring) } },
    ];
    filled(&sentence, &links)
}

/// A sentence with names of files in it.
fn files(sentence: String, names: &[&str]) -> Markup {
    let names: Vec<Markup> = names.iter().map(|name| html! { code { (name) } }).collect();
    filled(&sentence, &names)
}

/// What to do in a folder with nothing in it.
fn nothing_yet(say: &'static Words) -> Markup {
    html! {
        section.empty {
            p { (say.collection_nothing()) }
            ul {
                li { (files(say.collection_nothing_label(SLOTS[0]), &["collection.toml"])) }
                li { (files(say.collection_nothing_bought(SLOTS[0], SLOTS[2], SLOTS[1]), &["cloths.toml", "yarns.toml", "trims.toml"])) }
                li { (files(say.collection_nothing_styles(SLOTS[0]), &["styles"])) }
            }
            h2 { (say.collection_nothing_first()) }
            p { (say.collection_nothing_questions()) }
            p { (ways(say.collection_nothing_ways(SLOTS[0], SLOTS[1]), say.collection_nothing_begin(), say.collection_nothing_bring())) }
            h2 { (say.collection_demo()) }
            p { (say.collection_demo_about()) }
            form data-send="/demo" {
                div.sending {
                    p.problem role="alert" hidden {}
                    button type="submit" { (say.collection_demo_put()) }
                }
            }
        }
    }
}

fn card(say: &'static Words, entry: &Entry, see: &See) -> Markup {
    let url = route::style(&entry.folder, see);
    match &entry.what {
        Ok(sound) => html! {
            li {
                a href=(url) {
                    img src=(route::picture(&entry.folder, &See::default(), &sound.revision))
                        alt=(say.collection_front(&sound.name)) width="220" height="340";
                    span.name { (sound.name) " " small { (sound.code) } }
                    span.about { (sound.about) }
                    @if !sound.summary.is_empty() { span.about { (sound.summary) } }
                    span.about { (sound.sizes) }
                }
                a.copy href={ "/copy/" (route::encoded(&entry.folder)) } aria-label=(say.collection_copy_of(&sound.name)) { (say.collection_copy()) }
            }
        },
        Err(Mistakes { told, mends }) => html! {
            li.mistakes {
                h3 { (entry.folder) }
                p.bad { (say.collection_broken(told.len())) }
                ul { @for problem in told { li { (problem) } } }
                p.about { (files(say.collection_broken_how(SLOTS[0]), &[".revisions"])) }
                @if *mends { (mend::offer(say, &entry.folder)) }
            }
        },
    }
}
