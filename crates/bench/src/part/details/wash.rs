//! The first wash: what is done to the pair before it is sold, by whom and how, and what is set after it.

use maud::{Markup, html};
use serde_json::json;
use style::{SetAfter, Wash, WashFinish, WashStep, WashedBy};

use super::group::{Details, Group, cell, wide};
use crate::chosen_fields::{self, Choice, ChosenField, insert, remove, set};
use crate::typed_fields::TypedField;

/// What holds of a step that does not say: nothing.
const NOT_SAID: &str = "–";

pub(super) fn group(details: &Details<'_>) -> Group {
    let say = details.show.say;
    let wash = details.show.loaded.style.wash.as_ref();
    Group {
        key: "wash",
        title: say.details_wash_title(),
        pieces: &[],
        seams: &[],
        trims: Vec::new(),
        plates: &[],
        body: html! {
            div.cells {
                (cell(say.details_wash_finish(), say.details_wash_finish_how(), &finish(details, wash).render()))
                @if let Some(wash) = wash {
                    (cell(say.details_wash_by(), say.details_wash_by_how(), &by(details, wash).render()))
                }
            }
            @if let Some(wash) = wash {
                (wide(say.details_wash_set_after(), say.details_wash_set_after_how(), &set_after(details, wash)))
                (steps(details, &wash.steps))
            }
        },
    }
}

/// Who usually gives the wash that a pair of a finish gets first (common practice): named with the finish, for a style that
/// says the one says the other.
const fn usual(finish: WashFinish) -> WashedBy {
    match finish {
        WashFinish::Raw => WashedBy::Wearer,
        WashFinish::Rinsed | WashFinish::Washed => WashedBy::Laundry,
    }
}

fn finish(details: &Details<'_>, wash: Option<&Wash>) -> ChosenField {
    let say = details.show.say;
    let chosen = wash.map_or("", |wash| wash.finish.word());
    let mut field = ChosenField::of_words(
        "wash.finish",
        say.details_wash_finish_field(),
        WashFinish::WORDS,
        chosen,
    );
    for (choice, (_, finish)) in field.choices.iter_mut().zip(WashFinish::WORDS) {
        choice.words = match finish {
            WashFinish::Raw => say.details_wash_raw(),
            WashFinish::Rinsed => say.details_wash_rinsed(),
            WashFinish::Washed => say.details_wash_washed(),
        }
        .to_owned();
        if wash.is_none() {
            let begun = json!({ "finish": finish.word(), "by": usual(*finish).word() });
            choice.edits = vec![set("wash", begun)];
        }
    }
    let mut none = Choice::named("", say.details_wash_not_stated());
    if wash.is_some() {
        none.edits = vec![remove("wash")];
    }
    field.choices.insert(0, none);
    field
}

fn by(details: &Details<'_>, wash: &Wash) -> ChosenField {
    let say = details.show.say;
    let mut field = ChosenField::of_words(
        "wash.by",
        say.details_wash_by_field(),
        WashedBy::WORDS,
        wash.by.word(),
    );
    for (choice, (_, by)) in field.choices.iter_mut().zip(WashedBy::WORDS) {
        choice.words = match by {
            WashedBy::Mill => say.details_wash_mill(),
            WashedBy::Laundry => say.details_wash_laundry(),
            WashedBy::Workroom => say.details_wash_workroom(),
            WashedBy::Wearer => say.details_wash_wearer(),
        }
        .to_owned();
    }
    field
}

fn set_after(details: &Details<'_>, wash: &Wash) -> Markup {
    let known: Vec<&str> = SetAfter::WORDS.iter().map(|(word, _)| *word).collect();
    let chosen: Vec<&str> = wash.set_after.iter().map(|what| what.word()).collect();
    let label = details.show.say.details_wash_set_after_field();
    chosen_fields::several("wash.set_after", label, &known, &chosen)
}

/// The recipe, a step to a line.
fn steps(details: &Details<'_>, steps: &[WashStep]) -> Markup {
    let say = details.show.say;
    html! {
        h4 { (say.details_wash_steps()) }
        @if steps.is_empty() {
            p.aside { (say.details_wash_no_steps()) }
        } @else {
            table.recipe {
                thead { tr {
                    th scope="col" { (say.details_wash_does()) }
                    th scope="col" { (say.details_wash_temperature()) }
                    th scope="col" { (say.details_wash_time()) }
                    th scope="col" { (say.details_wash_liquor()) }
                    th scope="col" { span.unseen { (say.details_wash_out()) } }
                } }
                tbody {
                    @for (number, step) in steps.iter().enumerate() { (row(details, number, step)) }
                }
            }
        }
        div.adding { (chosen_fields::button(&[adding(details, steps.len())], say.details_wash_add(), None)) }
    }
}

fn row(details: &Details<'_>, number: usize, step: &WashStep) -> Markup {
    let (say, show) = (details.show.say, details.show);
    let at = |key: &str| format!("wash.steps[{number}].{key}");
    let shown = number + 1;
    let may_be_left_out = Some(NOT_SAID);
    let does = show.words(&at("does"), &say.details_wash_does_field(shown), None);
    let label = say.details_wash_temperature_field(shown);
    let temperature = show.words(&at("temperature"), &label, may_be_left_out);
    let label = say.details_wash_time_field(shown);
    let time = show.words(&at("time"), &label, may_be_left_out);
    let liquor = TypedField {
        value: step
            .liquor
            .map(|liquor| liquor.to_string())
            .unwrap_or_default(),
        whole: true,
        ..show.words(
            &at("liquor"),
            &say.details_wash_liquor_field(shown),
            may_be_left_out,
        )
    };
    html! {
        tr {
            td { (does.render()) }
            td { (temperature.render()) }
            td { (time.render()) }
            td { (liquor.render()) }
            td { (chosen_fields::button(&[remove(&format!("wash.steps[{number}]"))], "×", Some(&say.details_wash_take_out(shown)))) }
        }
    }
}

fn adding(details: &Details<'_>, count: usize) -> serde_json::Value {
    let step = json!({ "does": details.show.say.details_wash_new_step() });
    match count {
        // A recipe that is open has no list to put a step into.
        0 => set("wash.steps", json!([step])),
        _ => insert(&format!("wash.steps[{count}]"), step),
    }
}
