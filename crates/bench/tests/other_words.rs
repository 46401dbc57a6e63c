//! Two benches at once, one in English and one in another language: no page of one has a word of the other. In the other
//! language every word of the catalogue is another one, and what stays English comes from other rooms or from the maker's
//! own files.

#![allow(clippy::unwrap_used)]

// This binary uses little of what the other one shares with it.
#[allow(dead_code)]
mod house;

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::Path;
use std::sync::Barrier;
use std::thread;

use fluent_syntax::ast::{Entry, Expression, Pattern, PatternElement};
use fluent_syntax::{parser, serializer};
use house::House;
use house::walk::{is, walk};
use tokio::runtime::Builder;
use words::Words;

/// How texts of the frame begin that come from rooms whose words are no messages yet: constructions that no
/// seam of the demo has. One that is there no more has to go from this list.
const FROM_OTHER_ROOMS: &[&str] = &["bound-edge", "clean-finished", "folded-hem", "french-seam"];

/// What frames the contents of a page, and is wholly the bench's own.
const FRAME: &[&str] = &[
    "title", "h1", "h2", "h3", "h4", "button", "legend", "th", "dt",
];

/// A language whose letters are ringed.
fn ringed(text: &str) -> String {
    let ring = |letter: char| {
        let (from, to) = match letter {
            'a'..='z' => ('a', 'ⓐ'),
            'A'..='Z' => ('A', 'Ⓐ'),
            other => return other,
        };
        char::from_u32(to as u32 + letter as u32 - from as u32).unwrap()
    };
    text.chars().map(ring).collect()
}

fn ring(pattern: &mut Pattern<String>) {
    for element in &mut pattern.elements {
        match element {
            PatternElement::TextElement { value } => *value = ringed(value),
            PatternElement::Placeable { expression } => {
                if let Expression::Select { variants, .. } = expression {
                    for variant in variants {
                        ring(&mut variant.value);
                    }
                }
            }
        }
    }
}

fn ringed_file(text: &str) -> String {
    let mut resource = parser::parse(text.to_owned()).unwrap();
    for entry in &mut resource.body {
        if let Entry::Message(message) = entry {
            message.value.iter_mut().for_each(ring);
        }
    }
    serializer::serialize(&resource)
}

/// What a person reads or hears of the frame of a page.
fn said(page: &str) -> Vec<String> {
    let mut found = Vec::new();
    let mut rest = page;
    let mut within = "";
    while let Some((text, tag)) = rest.split_once('<') {
        if FRAME.contains(&within) {
            found.push(text.to_owned());
        }
        let Some((tag, after)) = tag.split_once('>') else {
            break;
        };
        let name = tag.split([' ', '>']).next().unwrap_or_default();
        within = name;
        for attribute in ["aria-label", "data-name"] {
            let value = tag.split_once(&format!(" {attribute}=\""));
            let value = value.and_then(|(_, value)| value.split_once('"'));
            found.extend(value.map(|(value, _)| value.to_owned()));
        }
        let end = match name {
            "svg" => "</svg>",
            "style" => "</style>",
            "script" => "</script>",
            _ => "",
        };
        rest = match after.split_once(end) {
            Some((_, after)) if !end.is_empty() => after,
            _ => after,
        };
    }
    found
}

/// Words of English letters; short ones are mostly units.
fn english(text: &str) -> impl Iterator<Item = String> {
    let words = text.split(|c: char| !c.is_ascii_alphabetic());
    words.filter(|word| word.len() > 3).map(str::to_lowercase)
}

fn files_below(folder: &Path) -> String {
    let mut all = String::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            all.push_str(&files_below(&path));
        } else {
            all.push_str(&fs::read_to_string(&path).unwrap_or_default());
        }
    }
    all
}

/// The catalogue in the language of ringed letters.
fn ringed_words() -> &'static Words {
    let files: Vec<String> = words::english_files()
        .iter()
        .map(|text| ringed_file(text))
        .collect();
    let files: Vec<&str> = files.iter().map(String::as_str).collect();
    Box::leak(Box::new(Words::of("art", &files).unwrap()))
}

fn is_ringed(letter: char) -> bool {
    ('Ⓐ'..='ⓩ').contains(&letter)
}

/// Every page of a bench, asked for by a thread that begins together with the others.
fn pages_of(house: &House, start: &Barrier) -> BTreeMap<String, String> {
    let runtime = Builder::new_current_thread().enable_all().build().unwrap();
    start.wait();
    let pages = runtime.block_on(walk(house)).into_iter();
    pages
        .filter(|(_, got)| is(got, "text/html"))
        .map(|(address, got)| (address, got.text))
        .collect()
}

#[test]
fn two_benches_at_once_each_say_every_word_in_their_own_language() {
    let house = House::new();
    let other = House::saying(ringed_words());
    let start = Barrier::new(2);
    let (plain, ringed) = thread::scope(|scope| {
        let plain = scope.spawn(|| pages_of(&house, &start));
        let ringed = scope.spawn(|| pages_of(&other, &start));
        (plain.join().unwrap(), ringed.join().unwrap())
    });
    let addresses = |pages: &BTreeMap<String, String>| pages.keys().cloned().collect::<Vec<_>>();
    assert_eq!(addresses(&plain), addresses(&ringed));
    for (address, page) in &plain {
        assert!(page.contains("<html lang=\"en\">"), "{address}");
        assert!(!page.contains(is_ringed), "{address} says other words");
    }

    let own: BTreeSet<String> = english(&files_below(&other.collection())).collect();
    let mut strange = BTreeSet::new();
    let mut said_in_rings = 0;
    for (address, page) in &ringed {
        assert!(page.contains("<html lang=\"art\">"), "{address}");
        for text in said(page) {
            said_in_rings += usize::from(text.contains(is_ringed));
            if english(&text).any(|word| !own.contains(&word)) {
                strange.insert(text.trim().to_owned());
            }
        }
    }
    assert!(
        said_in_rings > 500,
        "only {said_in_rings} texts of the pages are from the catalogue"
    );
    let known = |text: &&String| FROM_OTHER_ROOMS.iter().any(|start| text.starts_with(start));
    let unknown: Vec<&String> = strange.iter().filter(|text| !known(text)).collect();
    assert!(unknown.is_empty(), "not of the catalogue: {unknown:#?}");
    let there = |start: &&&str| strange.iter().any(|text| text.starts_with(**start));
    let gone: Vec<&&str> = FROM_OTHER_ROOMS
        .iter()
        .filter(|start| !there(start))
        .collect();
    assert!(gone.is_empty(), "nothing begins so any more: {gone:?}");
}

/// What goes wrong is said by whichever bench it goes wrong at, and so are answers to changes.
#[tokio::test]
async fn refusals_and_answers_are_in_the_words_of_their_bench() {
    let house = House::new();
    let other = House::saying(ringed_words());
    for address in [
        "/style/nobody",
        "/nowhere",
        "/style/ferryman/cutting/file/x",
        "/asset/1/x",
    ] {
        let (plain, ringed) = (house.get(address).await, other.get(address).await);
        assert_eq!(plain.status, ringed.status, "{address}");
        assert!(!plain.text.contains(is_ringed), "{address}");
        assert!(
            ringed.text.contains(is_ringed),
            "{address}: {}",
            ringed.text
        );
        assert!(ringed.text.contains("<html lang=\"art\">"), "{address}");
    }
    for wrong in ["{", "{\"revision\":\"x\",\"edits\":[]}", "{\"revision\":1}"] {
        let body = serde_json::from_str(wrong).unwrap_or(serde_json::Value::Null);
        let asked = || house::post("/style/ferryman/edit", &body);
        let (plain, ringed) = (house.send(asked()).await, other.send(asked()).await);
        assert_eq!(plain.status, ringed.status, "{wrong}");
        assert!(!plain.text.contains(is_ringed), "{wrong}: {}", plain.text);
        assert!(ringed.text.contains(is_ringed), "{wrong}: {}", ringed.text);
    }
    let (plain, ringed) = (
        house.set("chart.waist.value", "80 cm").await,
        other.set("chart.waist.value", "80 cm").await,
    );
    assert!(!plain.to_string().contains(is_ringed));
    assert!(house::fragment(&ringed, "history").contains(is_ringed));
}

/// What was changed is told in the words of the bench: in its answers, in the history, where two versions are compared, and where it
/// clashes.
#[tokio::test]
async fn differences_are_in_the_words_of_their_bench() {
    let other = House::saying(ringed_words());
    let thigh = |was: &str, is: &str| format!("ⓣⓗⓘⓖⓗ ⓐⓣ ⓢⓘⓩⓔ 32x32: {was} → {is}");
    let old = other.revision().await;
    let answer = other.set("chart.thigh.value", "63 cm").await;
    let change = thigh("62.23 cm", "63.0 cm (+0.77 cm)");
    assert!(answer["said"].as_str().unwrap().contains(&change));
    let page = other.get("/style/ferryman/history").await.text;
    let capital = change.replacen('ⓣ', "Ⓣ", 1);
    assert!(page.contains(&change) || page.contains(&capital), "{page}");
    let page = other
        .get("/style/ferryman/history/compare?a=1&b=now")
        .await
        .text;
    assert!(page.contains(&change) || page.contains(&capital), "{page}");
    let edits =
        serde_json::json!([{ "edit": "set", "path": "chart.thigh.value", "value": "64 cm" }]);
    let body = serde_json::json!({ "revision": old, "edits": edits });
    let answer = other.post("edit", body).await;
    assert_eq!(answer["outcome"], "behind");
    let problems = answer["problems"].to_string();
    assert!(
        problems.contains(&change) && problems.contains("64 cm"),
        "{problems}"
    );
    let answer = other.step("undo").await;
    let said = answer["said"].as_str().unwrap();
    assert!(said.contains(&change), "{said}");
}
