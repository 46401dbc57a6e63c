//! No text whatever makes reading panic, and what reads whole reads the same after an edit is taken back.
#![allow(clippy::unwrap_used)]

mod common;

use std::sync::LazyLock;

use common::{demo_collection, demo_style};
use proptest::prelude::*;
use style::{Collection, DocPath, Edit, EditValue, MeasureId, apply, difference, parse};

static COLLECTION: LazyLock<Collection> = LazyLock::new(demo_collection);

/// Reads a text and, where it is sound, does with it what the rooms above do first.
fn read(text: &str) {
    match parse(text, "style.toml", &COLLECTION) {
        Ok(style) => {
            for size in style.sizes.all() {
                for measure in MeasureId::ALL {
                    if let Some(value) = style.value(measure, size) {
                        assert!(value.is_finite());
                    }
                }
            }
            assert_eq!(style.all_seams().count(), style.seams.len());
            assert_eq!(difference(&style, &style), []);
        }
        Err(report) => {
            assert!(!report.problems.is_empty());
            assert!(!report.render().is_empty());
            serde_json::to_string(&report).unwrap();
        }
    }
}

/// Words that mean something in a style file, to hit deeper than random bytes do.
const WORDS: &[&str] = &[
    "[",
    "]",
    "[[",
    "]]",
    "{",
    "}",
    "=",
    "\"",
    "'",
    "\"\"\"",
    "#",
    ",",
    ".",
    "\n",
    "\r\n",
    "\r",
    "\u{feff}",
    "nan",
    "inf",
    "-",
    "1e999",
    "0",
    "99999999999999999999",
    "1979-05-27",
    "true",
    "in",
    "cm",
    "like",
    "rows",
    "seat",
    "yoke",
    "[chart.waist]",
    "[seams.seat]",
    "like = \"seat\"",
    "like = \"yoke\"",
    "above = 4294967295",
    "value = \"1e308 m\"",
    "a.b.c = 1",
    "§",
    "𝄞",
    "\0",
    "\u{202e}",
];

fn mutated() -> impl Strategy<Value = String> {
    let one = (
        any::<prop::sample::Index>(),
        0..40usize,
        prop::sample::select(WORDS),
        any::<bool>(),
    );
    prop::collection::vec(one, 1..6).prop_map(|changes| {
        let mut text: Vec<char> = demo_style().chars().collect();
        for (at, cut, word, insert) in changes {
            let start = at.index(text.len() + 1);
            let end = (start + cut).min(text.len());
            let word: Vec<char> = if insert {
                word.chars().collect()
            } else {
                Vec::new()
            };
            text.splice(start..end, word);
        }
        text.into_iter().collect()
    })
}

/// Replaces one of the demo's values by another value from anywhere in the file: sound TOML, odd content.
fn shuffled() -> impl Strategy<Value = String> {
    let values = |line: &str| line.split_once(" = ").map(|(_, value)| value.to_owned());
    let all: Vec<String> = demo_style().lines().filter_map(values).collect();
    let swap = (any::<prop::sample::Index>(), prop::sample::select(all));
    prop::collection::vec(swap, 1..4).prop_map(|swaps| {
        let mut lines: Vec<String> = demo_style().lines().map(str::to_owned).collect();
        for (at, value) in swaps {
            let line = at.get(&lines).clone();
            if let Some((key, _)) = line.split_once(" = ") {
                let index = at.index(lines.len());
                lines[index] = format!("{key} = {value}");
            }
        }
        lines.join("\n")
    })
}

fn any_value() -> impl Strategy<Value = EditValue> {
    let leaf = prop_oneof![
        any::<bool>().prop_map(EditValue::Flag),
        any::<i64>().prop_map(EditValue::Whole),
        prop::sample::select(
            &[
                "63 cm", "seat", "", "a\nb", "301", "8 /in", "\"", "nan cm", "28, 30"
            ][..]
        )
        .prop_map(EditValue::from),
    ];
    leaf.prop_recursive(2, 8, 3, |inner| {
        let section = prop::collection::vec(
            (
                prop::sample::select(&["value", "a b", "yarn", ""][..]),
                inner.clone(),
            ),
            0..3,
        )
        .prop_map(|entries| {
            EditValue::Section(
                entries
                    .into_iter()
                    .map(|(key, value)| (key.to_owned(), value))
                    .collect(),
            )
        });
        prop_oneof![
            prop::collection::vec(inner, 0..3).prop_map(EditValue::List),
            section
        ]
    })
}

const PATHS: &[&str] = &[
    "style",
    "style.name",
    "chart",
    "chart.thigh",
    "chart.thigh.value",
    "chart.fly_length.breaks[0]",
    "chart.fly_length.breaks[0].above",
    "seams.yoke.rows[0].yarn",
    "seams.yoke.rows[1]",
    "seams.seat.rows",
    "seams.seat",
    "seams",
    "labels",
    "labels[0]",
    "labels[3]",
    "labels[1].place",
    "sizes.waists[4]",
    "pockets.extra",
    "new",
    "new.a.b",
    "new.a[0]",
    "rivets",
    "rivets.mouth",
    "format",
    "format.x",
    "format[0]",
];

fn any_edit() -> impl Strategy<Value = Edit> {
    let path = prop::sample::select(PATHS).prop_map(|path| path.parse::<DocPath>().unwrap());
    (path, any_value(), 0..3).prop_map(|(path, value, kind)| match kind {
        0 => Edit::Set { path, value },
        1 => Edit::Remove { path },
        _ => Edit::Insert { path, value },
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn random_bytes_are_answered(bytes in prop::collection::vec(any::<u8>(), 0..400)) {
        read(&String::from_utf8_lossy(&bytes));
    }

    #[test]
    fn random_text_is_answered(text in "\\PC{0,200}") {
        read(&text);
    }

    #[test]
    fn a_damaged_demo_is_answered(text in mutated()) {
        read(&text);
    }

    #[test]
    fn odd_values_are_answered(text in shuffled()) {
        read(&text);
    }

    #[test]
    fn any_edit_is_made_or_answered(edits in prop::collection::vec(any_edit(), 1..4)) {
        let mut text = demo_style().to_owned();
        for edit in edits {
            match apply(&text, &edit) {
                Ok(changed) => {
                    read(&changed);
                    text = changed;
                }
                Err(report) => assert!(!report.problems.is_empty()),
            }
        }
    }

    #[test]
    fn an_edit_taken_back_gives_the_same_file(mm in 1u32..9000, measure in 0..MeasureId::ALL.len()) {
        let name = MeasureId::ALL[measure].code();
        let path = format!("chart.{name}.value");
        let was = parse(demo_style(), "style.toml", &COLLECTION).unwrap();
        let line = |text: &str| {
            let at = text.find(&format!("[chart.{name}]")).unwrap();
            let from = text[at..].find("value = \"").unwrap() + at + 9;
            let to = text[from..].find('"').unwrap() + from;
            text[from..to].to_owned()
        };
        let old = line(demo_style());
        // Some measures cannot be so small in every size: then the edit is refused, which is an answer too.
        if let Ok(changed) = apply(demo_style(), &Edit::set(&path, &format!("{mm} mm")).unwrap()) {
            let now = parse(&changed, "style.toml", &COLLECTION).unwrap();
            let differs = difference(&was, &now);
            prop_assert!(differs.len() <= 1);
            prop_assert!(differs.iter().all(|change| change.path == path));
            let back = apply(&changed, &Edit::set(&path, &old).unwrap()).unwrap();
            prop_assert_eq!(back.as_str(), demo_style());
        }
    }
}
