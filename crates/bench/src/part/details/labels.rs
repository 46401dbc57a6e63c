//! The sewn-in labels: each with what it tells, how it is folded and where it is sewn.

use drawing::PlateId;
use maud::{Markup, html};
use serde_json::{Value, json};
use style::{Label, LabelFold, Purpose, SeamId, TrimKind};

use super::art;
use super::group::{Details, Group, cell, wide};
use crate::chosen_fields::{self, ChosenField, insert, remove, set};

const KINDS: [TrimKind; 1] = [TrimKind::Label];
/// Where a new label is sewn until the maker says otherwise, as the style file says it.
const USUAL_PLACE: &str = "band inside, centre back";

pub(super) fn group(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let labels = &details.show.loaded.style.labels;
    Group {
        key: "labels",
        title: say.details_labels_group(),
        pieces: &[],
        seams: &[SeamId::LabelSet],
        trims: labels.iter().map(|label| label.trim.clone()).collect(),
        plates: match labels.len() {
            0 => &[],
            _ => &[PlateId::LabelsOnBand, PlateId::LabelsInSeam],
        },
        body: html! {
            @if labels.is_empty() { p.aside { (say.details_none()) } }
            @for (number, label) in labels.iter().enumerate() { (one(details, number, label)) }
            (add(details, labels.len()))
        },
    }
}

fn one(details: &Details<'_>, number: usize, label: &Label) -> Markup {
    let say = details.show.say;
    let show = details.show;
    let collection = show.collection();
    let path = |key: &str| format!("labels[{number}].{key}");
    let shown = number + 1;
    let title = say.details_labels_title(shown);
    let own_text = collection.trims.get(&label.trim).map(|trim| &trim.text);
    let trim = chosen_fields::trim(
        collection,
        &path("trim"),
        &say.details_labels_which_field(shown),
        &KINDS,
        &label.trim,
    );
    let fold = ChosenField::of_words(
        &path("fold"),
        &say.details_labels_fold_field(shown),
        LabelFold::WORDS,
        label.fold.word(),
    );
    let art = art::choose(
        details,
        &path("art"),
        &say.details_labels_art_field(shown),
        label.art.as_ref(),
        label.drawing.as_ref(),
    );
    let text = own_text.filter(|text| !text.is_empty());
    let text = text.map_or(say.details_labels_no_words(), String::as_str);
    let text = show.words(
        &path("text"),
        &say.details_labels_text_field(shown),
        Some(text),
    );
    let place = show.words(&path("place"), &say.details_labels_place_field(shown), None);
    let known: Vec<&str> = Purpose::WORDS.iter().map(|(word, _)| *word).collect();
    let chosen: Vec<&str> = label.purpose.iter().map(|purpose| purpose.word()).collect();
    let purposes = chosen_fields::several(
        &path("purpose"),
        &say.details_labels_purpose_field(shown),
        &known,
        &chosen,
    );
    html! {
        div.one-of role="group" aria-label=(title) {
            h4 { (title) }
            (chosen_fields::button(&[remove(&format!("labels[{number}]"))], "×", Some(&say.details_labels_take_out(shown))))
            div.cells {
                (cell(say.details_labels_which(), say.details_labels_which_how(), &trim.render()))
                (cell(say.details_labels_fold(), say.details_labels_fold_how(), &fold.render()))
                (cell(say.details_labels_art(), say.details_labels_art_how(), &art))
            }
            div.cells.two {
                (cell(say.details_labels_place(), say.details_labels_place_how(), &place.render()))
                (cell(say.details_labels_text(), say.details_labels_text_how(), &text.render()))
            }
            (wide(say.details_labels_purpose(), say.details_labels_purpose_how(), &purposes))
        }
    }
}

/// A button for each label of the collection.
fn add(details: &Details<'_>, count: usize) -> Markup {
    let say = details.show.say;
    let labels: Vec<(&str, &str)> =
        chosen_fields::trims(details.show.collection(), &KINDS).collect();
    html! {
        @if labels.is_empty() { p.aside { (say.details_labels_nothing()) } }
        div.adding {
            @for (key, name) in &labels {
                (chosen_fields::button(&[adding(count, key)], &say.details_labels_add(name), None))
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
