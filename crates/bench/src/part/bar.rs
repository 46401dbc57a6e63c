//! The head of the page: which style, which size, view or plate, face and units, and the way back and forward.

use drawing::View;
use maud::{Markup, html};
use sewing::Face;
use style::{Size, Units};

use crate::garment::PLATES;
use crate::route;
use crate::see::See;
use crate::session::Session;

pub(crate) fn render(name: &str, session: &Session, see: &See, size: Size) -> Markup {
    let loaded = session.loaded();
    let identity = &loaded.style.style;
    let units = see.units_of(&loaded.collection);
    // A side or a face that is chosen takes the place of a plate.
    let pair = See {
        plate: None,
        ..see.clone()
    };
    let whole = see.plate.is_none();
    html! {
        header #bar .masthead {
            div.title {
                a href=(route::collection(see)) { (loaded.collection.name) }
                h1 { (identity.name) " " small { (identity.code) } }
            }
            nav.choices aria-label="What is shown" {
                (choice(name, "View", &[
                    ("Front", whole && see.view == View::Front, See { view: View::Front, ..pair.clone() }),
                    ("Back", whole && see.view == View::Back, See { view: View::Back, ..pair.clone() }),
                ]))
                (choice(name, "Face", &[
                    ("Outside", whole && see.face == Face::Outside, See { face: Face::Outside, ..pair.clone() }),
                    ("Inside", whole && see.face == Face::Inside, See { face: Face::Inside, ..pair.clone() }),
                ]))
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
