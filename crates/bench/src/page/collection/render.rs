//! The collection: every style with a small drawing.

use maud::{Markup, html};
use words::Words;

use crate::addresses;
use crate::page::collection::gather::{Entry, Listed, Mistakes};
use crate::page::layout::{self, PageAssets};
use crate::page::repair::render::offer;
use crate::sentences::{SLOTS, filled};
use crate::viewing::Viewing;

/// The page.
pub(crate) fn render(say: &'static Words, listed: &Listed, see: &Viewing) -> Markup {
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
    let loads = PageAssets {
        styles: &["begin.css"],
        scripts: &["forms.js", "keys.js"],
    };
    layout::page(say, title, loads, &body)
}

fn styles_of(say: &'static Words, styles: &[Entry], see: &Viewing) -> Markup {
    html! {
        h2 { (say.collection_styles()) }
        @if styles.is_empty() {
            section.empty {
                p { (say.collection_no_styles()) }
                p { (ways(say.say(words::say::CollectionFirstStyle { begin: SLOTS[0], bring: SLOTS[1] }), say.collection_first_style_begin(), say.collection_first_style_bring())) }
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
                li { (files(say.say(words::say::CollectionNothingBought { cloths: SLOTS[0], trims: SLOTS[2], yarns: SLOTS[1] }), &["cloths.toml", "yarns.toml", "trims.toml"])) }
                li { (files(say.collection_nothing_styles(SLOTS[0]), &["styles"])) }
            }
            h2 { (say.collection_nothing_first()) }
            p { (say.collection_nothing_questions()) }
            p { (ways(say.say(words::say::CollectionNothingWays { begin: SLOTS[0], bring: SLOTS[1] }), say.collection_nothing_begin(), say.collection_nothing_bring())) }
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

fn card(say: &'static Words, entry: &Entry, see: &Viewing) -> Markup {
    let url = addresses::style(&entry.folder, see);
    match &entry.what {
        Ok(sound) => html! {
            li {
                a href=(url) {
                    img src=(addresses::picture(&entry.folder, &Viewing::default(), &sound.revision))
                        alt=(say.collection_front(&sound.name)) width="220" height="340";
                    span.name { (sound.name) " " small { (sound.code) } }
                    span.about { (sound.about) }
                    @if !sound.summary.is_empty() { span.about { (sound.summary) } }
                    span.about { (sound.sizes) }
                }
                a.copy href={ "/copy/" (addresses::encoded(&entry.folder)) } aria-label=(say.collection_copy_of(&sound.name)) { (say.collection_copy()) }
            }
        },
        Err(Mistakes { told, mends }) => html! {
            li.mistakes {
                h3 { (entry.folder) }
                p.bad { (say.collection_broken(told.len())) }
                ul { @for problem in told { li { (problem) } } }
                p.about { (files(say.collection_broken_how(SLOTS[0]), &[".revisions"])) }
                @if *mends { (offer(say, &entry.folder)) }
            }
        },
    }
}
