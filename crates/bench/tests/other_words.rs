//! The bench in another language: every word of the catalogue is another one, and what stays English on its pages comes
//! from other rooms or from the maker's own files.

#![allow(clippy::unwrap_used)]

// This binary uses little of what the other one shares with it.
#[allow(dead_code)]
mod house;

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use fluent_syntax::ast::{Entry, Expression, Pattern, PatternElement};
use fluent_syntax::{parser, serializer};
use house::House;
use house::walk::{is, walk};
use words::Words;

/// How texts of the frame begin that come from rooms whose words are no messages yet: plates and views, stages of the
/// sewing order, constructions that no seam of the demo has. One that is there no more has to go from this list.
const FROM_OTHER_ROOMS: &[&str] = &[
    "Backs",
    "Ferryman front, outside",
    "Finish",
    "Fly shield",
    "Fronts",
    "Hems",
    "Legs",
    "Pieces, page",
    "Pocket corners, enlarged",
    "Small parts",
    "Waistband, outside",
    "bound-edge",
    "clean-finished",
    "folded-hem",
    "french-seam",
];

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

#[tokio::test]
async fn every_word_of_the_bench_is_of_the_chosen_language() {
    let files: Vec<String> = words::english_files()
        .iter()
        .map(|text| ringed_file(text))
        .collect();
    let files: Vec<&str> = files.iter().map(String::as_str).collect();
    let other = Words::of("art", &files).unwrap();
    assert!(Words::show(Box::leak(Box::new(other))), "it is chosen once");

    let house = House::new();
    let own: BTreeSet<String> = english(&files_below(&house.collection())).collect();
    let mut strange = BTreeSet::new();
    let mut ringed = 0;
    for (address, got) in walk(&house).await {
        if !is(&got, "text/html") {
            continue;
        }
        assert!(got.text.contains("<html lang=\"art\">"), "{address}");
        for text in said(&got.text) {
            ringed += usize::from(text.contains(|c| ('Ⓐ'..='ⓩ').contains(&c)));
            if english(&text).any(|word| !own.contains(&word)) {
                strange.insert(text.trim().to_owned());
            }
        }
    }
    assert!(
        ringed > 500,
        "only {ringed} texts of the pages are from the catalogue"
    );
    let known = |text: &&String| FROM_OTHER_ROOMS.iter().any(|start| text.starts_with(start));
    let unknown: Vec<&String> = strange.iter().filter(|text| !known(text)).collect();
    assert!(unknown.is_empty(), "not of the catalogue: {unknown:#?}");
    for start in FROM_OTHER_ROOMS {
        let there = strange.iter().any(|text| text.starts_with(start));
        assert!(there, "nothing begins with {start} any more");
    }
}
