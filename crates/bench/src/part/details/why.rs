//! Why things are as they are: what a customer may be told, in the order in which it is told.

use maud::{Markup, html};
use serde_json::{Value, json};
use style::{PartId, StyleDoc, Subject, Why};
use words::Words;

use super::group::{Details, Group, cell, tick};
use crate::chosen_fields::{self, insert, remove, set};
use crate::typed_fields::capital;

/// Parts of a pair that a maker has something to say about, in the order of the style file.
const PARTS: [PartId; 11] = [
    PartId::Fly,
    PartId::Band,
    PartId::CoinPocket,
    PartId::PocketBag,
    PartId::LeftBackPocket,
    PartId::RightBackPocket,
    PartId::ExtraPocket,
    PartId::BeltLoops,
    PartId::Bartacks,
    PartId::Patch,
    PartId::Labels,
];

pub(super) fn group(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let whys = &details.show.loaded.style.why;
    Group {
        key: "why",
        title: say.details_why_group(),
        pieces: &[],
        seams: &[],
        trims: Vec::new(),
        plates: &[],
        body: html! {
            p.aside { (say.details_why_lead()) }
            @if whys.is_empty() { p.aside { (say.details_none()) } }
            @for (number, why) in whys.iter().enumerate() { (one(details, number, why)) }
            (add(details))
        },
    }
}

fn one(details: &Details<'_>, number: usize, why: &Why) -> Markup {
    let (say, show) = (details.show.say, details.show);
    let path = |key: &str| format!("why[{number}].{key}");
    let title = capital(&say.say(&why.subject));
    let says = show.words(&path("says"), &say.details_why_says_field(&title), None);
    let in_pack = chosen_fields::flag(
        &path("pack"),
        &say.details_why_pack_field(&title),
        why.in_pack,
    );
    let earlier = number.checked_sub(1).map(|before| {
        let moved = json!({ "about": why.subject.code(), "says": why.says, "pack": why.in_pack });
        [
            remove(&format!("why[{number}]")),
            insert(&format!("why[{before}]"), moved),
        ]
    });
    html! {
        div.one-of role="group" aria-label=(title) {
            h4 { (title) }
            @if let Some(earlier) = &earlier {
                (chosen_fields::button(earlier, "↑", Some(&say.details_why_earlier(&title))))
            }
            (chosen_fields::button(&[remove(&format!("why[{number}]"))], "×", Some(&say.details_why_take_out(&title))))
            (cell(say.details_why_says(), say.details_why_says_how(), &says.render()))
            (tick(say.details_why_pack(), say.details_why_pack_how(), &in_pack))
        }
    }
}

/// A list of what nothing is said about yet, and a field for the words.
fn add(details: &Details<'_>) -> Markup {
    let say = details.show.say;
    let doc = &details.show.loaded.style;
    let open: Vec<Subject> = subjects(doc)
        .into_iter()
        .filter(|subject| !doc.why.iter().any(|why| why.subject == *subject))
        .collect();
    html! {
        @if !open.is_empty() {
            div.adding {
                select data-told-of aria-label=(say.details_why_about()) {
                    @for subject in &open { option value=(subject.code()) { (capital(&named(say, subject, details))) } }
                }
                input type="text" data-told="says" aria-label=(say.details_why_new())
                    placeholder=(say.details_why_new()) autocomplete="off" maxlength="400";
                button.small type="button" data-tell=(adding(doc.why.len())) data-then="title-why" { (say.details_why_add()) }
            }
        }
    }
}

/// A subject by the names the collection gives, where it has one of its own.
fn named(say: &Words, subject: &Subject, details: &Details<'_>) -> String {
    let collection = details.show.collection();
    let own = match subject {
        Subject::Cloth(key) => collection.cloths.get(key).map(|cloth| &cloth.name),
        Subject::Label(key) => collection.trims.get(key).map(|trim| &trim.name),
        _ => None,
    };
    own.map_or_else(|| say.say(subject), String::clone)
}

/// What of a style can be told about: its cloths, parts, labels and seams.
fn subjects(doc: &StyleDoc) -> Vec<Subject> {
    let cloths = doc.cloth_names();
    let cloths = cloths.iter().map(|key| Subject::Cloth((*key).to_owned()));
    let labels = doc.labels.iter();
    let labels = labels.map(|label| Subject::Label(label.trim.clone()));
    let seams = doc.seams.keys().copied().map(Subject::Seam);
    let parts = PARTS.map(Subject::Part);
    cloths.chain(parts).chain(labels).chain(seams).collect()
}

fn adding(count: usize) -> Value {
    let why = json!({ "about": "", "says": "" });
    match count {
        // A file that tells nothing has no list to put one into.
        0 => set("why", json!([why])),
        _ => insert(&format!("why[{count}]"), why),
    }
}
