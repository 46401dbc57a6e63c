//! What a maker chooses from: lists, yes or no, several words at once. Each is tied to a value of the style file.

use maud::{Markup, html};
use serde_json::{Value, json};
use style::{ClothUse, Collection, TrimKind};
use trade::StitchType;
use words::Words;

/// One of several.
#[derive(Clone, Debug, Default)]
pub(crate) struct Choice {
    /// What the file says for it; empty takes the value out of the file.
    pub(crate) value: String,
    /// What a person reads.
    pub(crate) words: String,
    /// What choosing it changes, all or none, where that is more than this one value.
    pub(crate) edits: Vec<Value>,
    /// Why it cannot be chosen now.
    barred: Option<Barred>,
}

/// A choice that cannot be made now.
#[derive(Clone, Debug)]
struct Barred {
    why: String,
    /// The choice and why, in one line.
    said: String,
}

impl Choice {
    /// A choice whose word in the file reads well.
    pub(crate) fn word(word: &str) -> Self {
        Self::named(word, word)
    }

    /// A choice with other words for people.
    pub(crate) fn named(value: &str, words: &str) -> Self {
        Self {
            value: value.to_owned(),
            words: words.to_owned(),
            ..Self::default()
        }
    }

    /// Bars it for now.
    pub(crate) fn bar(&mut self, say: &'static Words, why: &str) {
        self.barred = Some(Barred {
            why: why.to_owned(),
            said: say.say(words::say::ChoiceBarred {
                choice: &self.words,
                why,
            }),
        });
    }

    /// Why it cannot be chosen now, if it cannot.
    fn why_barred(&self) -> Option<&str> {
        self.barred.as_ref().map(|barred| barred.why.as_str())
    }

    fn carried(&self) -> Option<String> {
        (!self.edits.is_empty()).then(|| Value::from(self.edits.clone()).to_string())
    }
}

/// One value to choose.
pub(crate) struct ChosenField {
    pub(crate) path: String,
    /// What it is, for somebody who cannot see what is around it.
    pub(crate) label: String,
    pub(crate) choices: Vec<Choice>,
    pub(crate) chosen: String,
}

impl ChosenField {
    /// A list of the words a value can have.
    pub(crate) fn of_words<T: Copy>(
        path: &str,
        label: &str,
        words: &[(&str, T)],
        chosen: &str,
    ) -> Self {
        Self {
            path: path.to_owned(),
            label: label.to_owned(),
            choices: words.iter().map(|(word, _)| Choice::word(word)).collect(),
            chosen: chosen.to_owned(),
        }
    }

    pub(crate) fn render(&self) -> Markup {
        html! {
            select id={ "f-" (self.path) } data-path=(self.path) aria-label=(self.label) {
                @for choice in &self.choices {
                    option value=(choice.value) selected[choice.value == self.chosen] data-edits=[choice.carried()]
                        disabled[choice.barred.is_some()] title=[choice.why_barred()] {
                        @match &choice.barred {
                            Some(barred) => (barred.said),
                            None => (choice.words),
                        }
                    }
                }
            }
        }
    }

    /// The same as a row of pictures, each a radio button.
    pub(crate) fn pictured(&self, picture: impl Fn(&str) -> Markup) -> Markup {
        html! {
            div.pictured role="radiogroup" aria-label=(self.label) {
                @for choice in &self.choices {
                    label title=[choice.why_barred()] {
                        input type="radio" name={ "r-" (self.path) } value=(choice.value) data-path=(self.path)
                            id={ "f-" (self.path) "-" (choice.value) } checked[choice.value == self.chosen]
                            disabled[choice.barred.is_some()] data-edits=[choice.carried()];
                        (picture(&choice.value))
                        span { (choice.words) }
                    }
                }
            }
        }
    }
}

/// Yes or no.
pub(crate) fn flag(path: &str, label: &str, now: bool) -> Markup {
    html! {
        input type="checkbox" id={ "f-" (path) } data-path=(path) data-kind="flag" aria-label=(label) checked[now];
    }
}

/// Several words at once, as a list in the file.
pub(crate) fn several(path: &str, label: &str, words: &[&str], chosen: &[&str]) -> Markup {
    html! {
        div.several role="group" aria-label=(label) {
            @for word in words {
                label {
                    input type="checkbox" id={ "f-" (path) "-" (word) } data-path=(path) data-kind="list" value=(word)
                        checked[chosen.contains(word)];
                    (word)
                }
            }
        }
    }
}

/// A stitch type.
pub(crate) fn stitch(
    say: &'static Words,
    path: String,
    label: String,
    chosen: StitchType,
) -> ChosenField {
    let choices = StitchType::ALL.iter().map(|stitch| {
        let words = say.say(words::say::ChoiceStitch {
            code: stitch.code(),
            name: stitch.key(),
        });
        Choice::named(stitch.code(), &words)
    });
    ChosenField {
        path,
        label,
        choices: choices.collect(),
        chosen: chosen.code().to_owned(),
    }
}

/// A yarn of the collection.
pub(crate) fn yarn(
    say: &'static Words,
    collection: &Collection,
    path: String,
    label: String,
    chosen: &str,
) -> ChosenField {
    let choices = collection.yarns.iter().map(|(key, yarn)| {
        let colour = match yarn.colour_name.as_str() {
            "" => yarn.colour.to_string(),
            name => name.to_owned(),
        };
        Choice::named(
            key,
            &say.say(words::say::ChoiceYarn {
                colour,
                yarn: &yarn.name,
            }),
        )
    });
    ChosenField {
        path,
        label,
        choices: choices.collect(),
        chosen: chosen.to_owned(),
    }
}

/// A cloth of the collection, those bought for this use first. `none` says what holds without one, where that can be.
pub(crate) fn cloth(
    collection: &Collection,
    path: &str,
    label: &str,
    (bought_for, none): (ClothUse, Option<&str>),
    chosen: &str,
) -> ChosenField {
    let of = |fits: bool| {
        let cloths = collection.cloths.iter();
        cloths
            .filter(move |(_, cloth)| (cloth.r#use == bought_for) == fits)
            .map(|(key, cloth)| Choice::named(key, &cloth.name))
    };
    let none = none.map(|words| Choice::named("", words));
    ChosenField {
        path: path.to_owned(),
        label: label.to_owned(),
        choices: none.into_iter().chain(of(true)).chain(of(false)).collect(),
        chosen: chosen.to_owned(),
    }
}

/// A trim of these kinds.
pub(crate) fn trim(
    collection: &Collection,
    path: &str,
    label: &str,
    kinds: &[TrimKind],
    chosen: &str,
) -> ChosenField {
    let choices = trims(collection, kinds).map(|(key, name)| Choice::named(key, name));
    ChosenField {
        path: path.to_owned(),
        label: label.to_owned(),
        choices: choices.collect(),
        chosen: chosen.to_owned(),
    }
}

/// The trims of these kinds: the key and the name of each.
pub(crate) fn trims<'a>(
    collection: &'a Collection,
    kinds: &[TrimKind],
) -> impl Iterator<Item = (&'a str, &'a str)> {
    let trims = collection.trims.iter();
    trims
        .filter(|(_, trim)| kinds.contains(&trim.kind))
        .map(|(key, trim)| (key.as_str(), trim.name.as_str()))
}

/// A drawing of the maker's own; empty takes it out again.
pub(crate) fn art(
    say: &'static Words,
    path: &str,
    label: &str,
    files: &[String],
    chosen: Option<&str>,
) -> ChosenField {
    let chosen = chosen.unwrap_or_default();
    let mut choices = vec![Choice::named("", say.choice_no_art())];
    choices.extend(files.iter().map(|file| Choice::word(file)));
    if !choices.iter().any(|choice| choice.value == chosen) {
        choices.push(Choice::word(chosen));
    }
    ChosenField {
        path: path.to_owned(),
        label: label.to_owned(),
        choices,
        chosen: chosen.to_owned(),
    }
}

/// An edit that sets a value, as a page carries it.
pub(crate) fn set(path: &str, value: impl Into<Value>) -> Value {
    json!({ "edit": "set", "path": path, "value": value.into() })
}

/// An edit that puts a member into a list.
pub(crate) fn insert(path: &str, value: impl Into<Value>) -> Value {
    json!({ "edit": "insert", "path": path, "value": value.into() })
}

/// An edit that takes a value out.
pub(crate) fn remove(path: &str) -> Value {
    json!({ "edit": "remove", "path": path })
}

/// A button that makes changes, all or none.
pub(crate) fn button(edits: &[Value], words: &str, label: Option<&str>) -> Markup {
    html! {
        button.small type="button" data-edits=(Value::from(edits)) aria-label=[label] { (words) }
    }
}
