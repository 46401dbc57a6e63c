//! Edits that were meant for an earlier text are made on the present one, or every clash is named; none is dropped.
#![allow(clippy::unwrap_used)]

mod common;

use std::slice;
use std::sync::LazyLock;

use common::{demo_collection, demo_style};
use proptest::prelude::*;
use style::{
    Clash, Collection, DocPath, Edit, EditValue, Merged, SeamId, StyleDoc, Written, merge, parse,
};
use toml_edit::DocumentMut;
use trade::StitchDensity;

static COLLECTION: LazyLock<Collection> = LazyLock::new(demo_collection);

fn set(path: &str, value: &str) -> Edit {
    Edit::set(path, value).unwrap()
}

fn remove(path: &str) -> Edit {
    Edit::remove(path).unwrap()
}

fn insert(path: &str, density: &str) -> Edit {
    let row = [
        ("stitch", "401"),
        ("density", density),
        ("yarn", "rope-105"),
        ("under", "rope-60"),
        ("offset", "12 mm"),
    ];
    let row = row.map(|(key, value)| (key.to_owned(), EditValue::from(value)));
    Edit::Insert {
        path: path.parse().unwrap(),
        value: EditValue::Section(row.into_iter().collect()),
    }
}

fn made(edits: &[Edit]) -> String {
    merged(merge(demo_style(), demo_style(), edits).unwrap())
}

fn merged(merged: Merged) -> String {
    match merged {
        Merged::Text(text) => text,
        Merged::Clash(clashes) => panic!("{clashes:?}"),
    }
}

fn clashes(theirs: &[Edit], mine: &[Edit]) -> Vec<Clash> {
    match merge(demo_style(), &made(theirs), mine).unwrap() {
        Merged::Clash(clashes) => clashes,
        Merged::Text(_) => Vec::new(),
    }
}

/// What a text says at a path that leads through no list.
fn said(text: &str, path: &DocPath) -> String {
    let document: DocumentMut = text.parse().unwrap();
    let mut item = document.as_item();
    for key in path.to_string().split('.') {
        item = &item[key];
    }
    let whole = item.as_integer().map(|number| number.to_string());
    whole.unwrap_or_else(|| item.as_str().unwrap().to_owned())
}

fn read(text: &str) -> StyleDoc {
    parse(text, "style.toml", &COLLECTION).unwrap_or_else(|report| panic!("{report}"))
}

#[test]
fn edits_of_other_values_are_both_made() {
    let theirs = [set("chart.knee.value", "46 cm")];
    let mine = [set("chart.thigh.value", "63 cm")];
    let both = merged(merge(demo_style(), &made(&theirs), &mine).unwrap());
    assert!(both.contains("63 cm") && both.contains("46 cm"));
    assert_eq!(both, made(&[theirs[0].clone(), mine[0].clone()]));
}

#[test]
fn comments_and_spaces_are_nobodys_values() {
    let by_hand = demo_style()
        .replacen("# Ferryman:", "# The Ferryman:", 1)
        .replacen("[chart.thigh]", "# mine\n[chart.thigh]", 1);
    assert_ne!(by_hand, demo_style());
    let mine = [set("chart.thigh.value", "63 cm")];
    let both = merged(merge(demo_style(), &by_hand, &mine).unwrap());
    assert!(both.contains("# mine") && both.contains("63 cm"));
}

#[test]
fn a_clash_names_the_value_and_all_three_texts() {
    let found = clashes(
        &[set("chart.thigh.value", "62 cm")],
        &[
            set("chart.knee.value", "46 cm"),
            set("chart.thigh.value", "63 cm"),
        ],
    );
    assert_eq!(found.len(), 1);
    assert_eq!(found[0].path.to_string(), "chart.thigh.value");
    let plain = |text: &str| Some(Written::Plain(text.to_owned()));
    assert_eq!(found[0].was, plain("24 1/2 in"));
    assert_eq!(found[0].is, plain("62 cm"));
    assert_eq!(found[0].wanted, plain("63 cm"));
}

#[test]
fn the_same_change_made_twice_is_no_clash() {
    let both = [
        set("chart.thigh.value", "63 cm"),
        remove("chart.thigh.grade"),
    ];
    assert_eq!(
        merged(merge(demo_style(), &made(&both), &both).unwrap()),
        made(&both)
    );
}

#[test]
fn a_section_above_or_below_that_changed_is_a_clash() {
    for (theirs, mine) in [
        (remove("chart.thigh"), set("chart.thigh.value", "63 cm")),
        (set("chart.thigh.value", "63 cm"), remove("chart.thigh")),
        // A list that is longer: its numbers mean other members now.
        (
            insert("seams.inseam.rows[0]", "7 /in"),
            set("seams.inseam.rows[1].density", "9 /in"),
        ),
        (
            set("seams.inseam.rows[0].density", "9 /in"),
            remove("seams.inseam.rows[1]"),
        ),
        (
            set("seams.inseam.rows[0].density", "9 /in"),
            insert("seams.inseam.rows[2]", "7 /in"),
        ),
    ] {
        assert_eq!(
            clashes(slice::from_ref(&theirs), slice::from_ref(&mine)).len(),
            1,
            "{theirs:?} {mine:?}"
        );
    }
}

#[test]
fn rows_that_a_seam_takes_from_another_belong_to_both() {
    let text = demo_style();
    let at = text
        .find("like = \"")
        .expect("the demo has a seam like another");
    let head = &text[..at];
    let seam = head.rsplit("[seams.").next().unwrap();
    let seam = seam.split(']').next().unwrap();
    let other = text[at + 8..].split('"').next().unwrap();
    let theirs = set(&format!("seams.{other}.rows[0].density"), "9 /in");
    let mine = set(&format!("seams.{seam}.rows[0].yarn"), "rope-80");
    assert_eq!(clashes(&[theirs], &[mine]).len(), 1, "{seam} like {other}");
}

#[test]
fn the_base_size_and_what_is_charted_at_it_belong_together() {
    let base = set("sizes.base", "34x32");
    let thigh = set("chart.thigh.value", "63 cm");
    for (theirs, mine) in [(&base, &thigh), (&thigh, &base)] {
        let found = clashes(slice::from_ref(theirs), slice::from_ref(mine));
        assert_eq!(found.len(), 1, "{theirs:?} {mine:?}");
    }
}

#[test]
fn a_text_that_is_no_toml_is_told() {
    let edits = [set("chart.thigh.value", "63 cm")];
    assert!(merge("[chart", demo_style(), &edits).is_err());
    assert!(merge(demo_style(), "[chart", &edits).is_err());
    let astray = [set("seams.inseam.rows[9].density", "9 /in")];
    assert!(merge(demo_style(), demo_style(), &astray).is_err());
}

/// Edits that leave a sound style whichever of them are made: value, section and list, in and out.
fn any_edit() -> impl Strategy<Value = Edit> {
    let value = (0..9_usize, 0..3_usize).prop_map(|(path, value)| {
        let (path, values) = [
            ("chart.thigh.value", ["62 cm", "63 cm", "24 1/4 in"]),
            ("chart.knee.value", ["45 cm", "46 cm", "18 1/8 in"]),
            ("chart.fly_width.tolerance", ["4 mm", "5 mm", "6 mm"]),
            ("style.summary", ["a", "b", "c"]),
            ("sizes.base", ["34x32", "30x30", "36x34"]),
            ("loops.count", ["6", "7", "8"]),
            ("seams.yoke.rows[0].density", ["7 /in", "9 /in", "10 /in"]),
            ("seams.inseam.rows[0].density", ["7 /in", "9 /in", "10 /in"]),
            ("seams.inseam.rows[1].density", ["7 /in", "9 /in", "10 /in"]),
        ][path];
        set(path, values[value])
    });
    let list = (0..4_usize).prop_map(|which| match which {
        0 => remove("chart.thigh.grade"),
        1 => remove("chart.knee.grade"),
        2 => insert("seams.inseam.rows[0]", "6 /in"),
        _ => insert("seams.inseam.rows[2]", "5 /in"),
    });
    prop_oneof![4 => value, 1 => list]
}

/// Edits as one request carries them: no two of the same place.
fn edits() -> impl Strategy<Value = Vec<Edit>> {
    prop::collection::vec(any_edit(), 1..5).prop_map(|mut edits| {
        let mut seen = Vec::new();
        edits.retain(|edit| {
            let path = edit.path().to_string();
            let new = !seen.contains(&path);
            seen.push(path);
            new
        });
        // One change of a list at most, so that the others mean the same members.
        let mut lists = 0;
        edits.retain(|edit| {
            lists += usize::from(matches!(edit, Edit::Insert { .. }));
            !matches!(edit, Edit::Insert { .. }) || lists == 1
        });
        edits
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn in_either_order_the_texts_say_the_same_or_a_clash_is_told(a in edits(), b in edits()) {
        let then_b = merge(demo_style(), &made(&a), &b).unwrap();
        let then_a = merge(demo_style(), &made(&b), &a).unwrap();
        match (then_b, then_a) {
            (Merged::Text(one), Merged::Text(other)) => prop_assert_eq!(read(&one), read(&other)),
            (Merged::Clash(one), Merged::Clash(other)) => prop_assert!(!one.is_empty() && !other.is_empty()),
            (one, other) => prop_assert!(false, "{one:?}\n{other:?}"),
        }
    }

    #[test]
    fn nothing_is_dropped(a in edits(), b in edits()) {
        let theirs = made(&a);
        let Merged::Text(both) = merge(demo_style(), &theirs, &b).unwrap() else {
            return Ok(());
        };
        let rows = |text: &str| read(text).seam(SeamId::Inseam).unwrap().rows.len();
        let put_in = |edits: &[Edit]| edits.iter().filter(|edit| matches!(edit, Edit::Insert { .. })).count();
        prop_assert_eq!(rows(&both), rows(demo_style()) + put_in(&a) + put_in(&b));
        for edit in a.iter().chain(&b) {
            let Edit::Set { path, value: EditValue::Text(text) } = edit else { continue };
            let words = path.to_string();
            let Some((seam, row)) = words.split_once(".rows[") else {
                prop_assert_eq!(said(&both, path), text.as_str());
                continue;
            };
            if put_in(&a) + put_in(&b) == 0 {
                let seam = read(&both)
                    .seam(SeamId::of(seam.trim_start_matches("seams.")).unwrap())
                    .unwrap();
                let row: usize = row.split(']').next().unwrap().parse().unwrap();
                let density: StitchDensity = text.parse().unwrap();
                prop_assert_eq!(seam.rows[row].density, density);
            }
        }
    }
}
