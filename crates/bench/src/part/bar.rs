//! The head of the page: which style, which size, plate and units, and the way back and forward.

use maud::{Markup, html};
use style::{Size, Units};

use crate::garment::PLATES;
use crate::route;
use crate::see::See;
use crate::session::Session;

pub(crate) fn render(name: &str, session: &Session, see: &See, size: Size) -> Markup {
    let loaded = session.loaded();
    let identity = &loaded.style.style;
    let units = see.units_of(&loaded.collection);
    let whole = see.plate.is_none();
    html! {
        header #bar .masthead {
            div.title {
                a href=(route::collection(see)) { (loaded.collection.name) }
                h1 { (identity.name) " " small { (identity.code) } }
            }
            nav.choices aria-label="What is shown" {
                label.size { span { "Plate" }
                    select #plate data-see="plate" {
                        option value="" selected[whole] { "none" }
                        @for (key, title) in PLATES {
                            option value=(key) selected[see.plate.as_deref() == Some(*key)] { (title) }
                        }
                    }
                }
                label.size { span { "Size" }
                    select #size data-see="size" {
                        @for each in loaded.style.sizes.all() {
                            option value=(each) selected[each == size] { (each.waist) " × " (each.length) }
                        }
                    }
                }
                (choice(name, "Units", &[
                    ("cm", units == Units::Centimetres, See { units: Some(Units::Centimetres), ..see.clone() }),
                    ("in", units == Units::Inches, See { units: Some(Units::Inches), ..see.clone() }),
                ]))
            }
            div.steps role="group" aria-label="History" {
                (step("undo", "Undo", session.done().last().map(|state| state.words.as_str())))
                (step("redo", "Redo", session.undone().map(|state| state.words.as_str())))
            }
        }
    }
}

/// One of several ways to look, each a link.
fn choice(name: &str, title: &str, choices: &[(&str, bool, See)]) -> Markup {
    html! {
        div.choice role="group" aria-label=(title) {
            @for (words, now, see) in choices {
                a href=(route::style(name, see)) data-swap aria-current=[now.then_some("true")] { (words) }
            }
        }
    }
}

fn step(action: &str, words: &str, what: Option<&str>) -> Markup {
    let title = what.map(|what| format!("{words}: {what}"));
    html! {
        button #(action) type="button" data-step=(action) disabled[what.is_none()] title=[title] { (words) }
    }
}
