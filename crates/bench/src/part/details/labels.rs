//! The sewn-in labels: each with what it tells, how it is folded and where it is sewn.

use maud::{Markup, html};
use serde_json::{Value, json};
use style::{Label, LabelFold, Purpose, TrimKind};

use super::{Details, Group, art, cell, wide};
use crate::choice::{self, Chosen, insert, remove, set};

const KINDS: [TrimKind; 1] = [TrimKind::Label];
/// Where a new label is sewn until the maker says otherwise.
const USUAL_PLACE: &str = "band inside, centre back";

pub(super) fn group(details: &Details<'_>) -> Group {
    let labels = &details.show.loaded.style.labels;
    Group {
        key: "labels",
        title: "Labels",
        pieces: &[],
        seams: &["label_set"],
        trims: labels.iter().map(|label| label.trim.clone()).collect(),
        plates: match labels.len() {
            0 => &[],
            _ => &["labels-on-band", "labels-in-seam"],
        },
        body: html! {
            @if labels.is_empty() { p.aside { "None." } }
            @for (number, label) in labels.iter().enumerate() { (one(details, number, label)) }
            (add(details, labels.len()))
        },
    }
}

fn one(details: &Details<'_>, number: usize, label: &Label) -> Markup {
    let show = details.show;
    let collection = show.collection();
    let path = |key: &str| format!("labels[{number}].{key}");
    let title = format!("Label {}", number + 1);
    let said = |what: &str| format!("{title}: {what}");
    let own_text = collection.trims.get(&label.trim).map(|trim| &trim.text);
    let trim = choice::trim(
        collection,
        &path("trim"),
        &said("which"),
        &KINDS,
        &label.trim,
    );
    let fold = Chosen::of_words(
        &path("fold"),
        &said("fold"),
        LabelFold::WORDS,
        label.fold.word(),
    );
    let art = art::choose(
        details,
        &path("art"),
        &said("drawing"),
        label.art.as_ref(),
        label.drawing.as_ref(),
    );
    let text = own_text.filter(|text| !text.is_empty());
    let text = text.map_or("no words", String::as_str);
    let text = show.words(&path("text"), &said("words"), Some(text));
    let place = show.words(&path("place"), &said("where it is sewn"), None);
    let known: Vec<&str> = Purpose::WORDS.iter().map(|(word, _)| *word).collect();
    let chosen: Vec<&str> = label.purpose.iter().map(|purpose| purpose.word()).collect();
    let purposes = choice::several(&path("purpose"), &said("what it tells"), &known, &chosen);
    html! {
        div.one-of role="group" aria-label=(title) {
            h4 { (title) }
            (choice::button(&[remove(&format!("labels[{number}]"))], "×", Some(&format!("Take out label {}", number + 1))))
            div.cells {
                (cell("Label", "Which label; labels and their sizes are in trims.toml.", &trim.render()))
                (cell("Fold", "How it is cut and folded.", &fold.render()))
                (cell("Drawing", "Your own drawing for it, inside the style's folder.", &art))
            }
            div.cells.two {
                (cell("Where it is sewn", "In words, for the workroom.", &place.render()))
                (cell("Words on it", "What is written on it in this style; in grey, what the label itself says.", &text.render()))
            }
            (wide("Tells", "What a wearer or an inspector finds on it.", &purposes))
        }
    }
}

/// A button for each label of the collection.
fn add(details: &Details<'_>, count: usize) -> Markup {
    let labels: Vec<(&str, &str)> = choice::trims(details.show.collection(), &KINDS).collect();
    html! {
        @if labels.is_empty() { p.aside { "trims.toml has no label to choose." } }
        div.adding {
            @for (key, name) in &labels {
                (choice::button(&[adding(count, key)], &format!("Add {name}"), None))
            }
        }
    }
}

fn adding(count: usize, trim: &str) -> Value {
    let label = json!({ "trim": trim, "place": USUAL_PLACE });
    match count {
        // A file without labels has no list to put one into.
        0 => set("labels", json!([label])),
        _ => insert(&format!("labels[{count}]"), label),
    }
}
