//! The file of cloths is changed whole or not at all, with its comments, and every style that uses it goes on being read.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;

use common::{Copy, demo_text};
use style::{
    ClothsError, Edit, EditValue, add_cloth, cloths_revision, cloths_steps, edit_cloths,
    load_collection, redo_cloths, undo_cloths,
};
use trade::Share;

const WEIGHT: &str = "cloths.tideline-14.weight";

fn version(root: &std::path::Path) -> String {
    cloths_revision(root).unwrap().to_string()
}

fn set(path: &str, text: &str) -> Edit {
    Edit::set(path, text).unwrap()
}

#[test]
fn an_edit_keeps_every_other_byte_and_the_version_before() {
    let copy = Copy::new();
    let root = copy.root();
    assert_eq!(cloths_steps(&root), (0, 0));
    let held = version(&root);
    let collection = edit_cloths(&root, &held, &[set(WEIGHT, "13.5 oz/yd2")]).unwrap();
    assert_eq!(collection, load_collection(&root).unwrap());
    let expected = demo_text("cloths.toml").replace("\"14 oz/yd2\"", "\"13.5 oz/yd2\"");
    assert_eq!(
        fs::read_to_string(root.join("cloths.toml")).unwrap(),
        expected
    );
    // Every style that uses it follows.
    let loaded = style::load(&root.join("styles/ferryman")).unwrap();
    assert_eq!(loaded.collection, collection);
    let held = version(&root);
    undo_cloths(&root, &held).unwrap();
    assert_eq!(
        fs::read_to_string(root.join("cloths.toml")).unwrap(),
        demo_text("cloths.toml")
    );
    let held = version(&root);
    redo_cloths(&root, &held).unwrap();
    assert_eq!(
        fs::read_to_string(root.join("cloths.toml")).unwrap(),
        expected
    );
}

#[test]
fn every_change_can_be_taken_back_and_made_again() {
    let copy = Copy::new();
    let root = copy.root();
    let text = || fs::read_to_string(root.join("cloths.toml")).unwrap();
    let mut texts = vec![text()];
    for weight in ["13 oz/yd2", "12 oz/yd2", "11 oz/yd2"] {
        edit_cloths(&root, &version(&root), &[set(WEIGHT, weight)]).unwrap();
        texts.push(text());
    }
    for (taken, before) in texts[..3].iter().rev().enumerate() {
        assert_eq!(cloths_steps(&root), (3 - taken, taken));
        undo_cloths(&root, &version(&root)).unwrap();
        assert_eq!(text(), *before);
    }
    let past_the_first = undo_cloths(&root, &version(&root));
    assert!(matches!(past_the_first, Err(ClothsError::Nothing)));
    for after in &texts[1..3] {
        redo_cloths(&root, &version(&root)).unwrap();
        assert_eq!(text(), *after);
    }
    // Another change ends what could be made again.
    edit_cloths(&root, &version(&root), &[set(WEIGHT, "10 oz/yd2")]).unwrap();
    assert_eq!(cloths_steps(&root), (3, 0));
    let nothing = redo_cloths(&root, &version(&root));
    assert!(matches!(nothing, Err(ClothsError::Nothing)));
}

#[test]
fn marks_of_a_wash_test_are_changed_put_in_and_taken_out() {
    let copy = Copy::new();
    let root = copy.root();
    let text = |word: &str| EditValue::Text(word.to_owned());
    let mark = [("along", "weft"), ("before", "50 cm"), ("after", "47.9 cm")];
    let mark = mark.map(|(key, value)| (key.to_owned(), text(value)));
    let edits = [
        set("cloths.tideline-14.wash_test[0].after", "45.8 cm"),
        Edit::Insert {
            path: "cloths.tideline-14.wash_test[6]".parse().unwrap(),
            value: EditValue::Section(mark.into_iter().collect()),
        },
        Edit::remove("cloths.tideline-14.wash_test[1]").unwrap(),
        Edit::remove("cloths.tideline-14.warp_shrinkage").unwrap(),
    ];
    let held = version(&root);
    let collection = edit_cloths(&root, &held, &edits).unwrap();
    let cloth = &collection.cloths["tideline-14"];
    assert_eq!(cloth.wash_test.len(), 6);
    assert_eq!(cloth.wash_test[5].after, trade::Length::cm(47.9));
    let off = cloth.shrinkage(style::Along::Warp) - Share::percent(8.15);
    assert!(off.abs() < Share::percent(0.06), "{off:?}");
}

#[test]
fn what_does_not_fit_is_refused_and_nothing_changes() {
    let copy = Copy::new();
    let root = copy.root();
    let held = version(&root);
    for (edit, words) in [
        (set(WEIGHT, "14 stones"), "weight"),
        (set("cloths.nowhere.weight", "14 oz/yd2"), "name"),
        (set("cloths.tideline-14.width", "-3 cm"), "width"),
        (Edit::remove("cloths.tideline-14.name").unwrap(), "name"),
        (set("format", "7"), "format"),
    ] {
        let refused = edit_cloths(&root, &held, &[edit]).unwrap_err();
        let ClothsError::Invalid(report) = refused else {
            panic!("{refused}")
        };
        let problem = &report.problems[0];
        assert!(
            problem.message.contains(words),
            "{words}: {}",
            problem.message
        );
        assert!(problem.file.ends_with("cloths.toml"), "{}", problem.file);
    }
    // A cloth that a style is cut from cannot be taken away under it.
    let gone = Edit::remove("cloths.oar-lining").unwrap();
    let refused = edit_cloths(&root, &held, &[gone]).unwrap_err();
    assert!(
        matches!(refused, ClothsError::StyleBreaks { .. }),
        "{refused}"
    );
    assert!(refused.to_string().contains("ferryman"), "{refused}");
    assert!(matches!(
        undo_cloths(&root, &held),
        Err(ClothsError::Nothing)
    ));
    assert_eq!(
        fs::read_to_string(root.join("cloths.toml")).unwrap(),
        demo_text("cloths.toml")
    );
}

#[test]
fn somebody_elses_change_is_never_overwritten() {
    let copy = Copy::new();
    let root = copy.root();
    let held = version(&root);
    let theirs = demo_text("cloths.toml").replace("0.82 mm", "0.9 mm");
    copy.write("cloths.toml", theirs.clone());
    let refused = edit_cloths(&root, &held, &[set(WEIGHT, "12 oz/yd2")]).unwrap_err();
    assert!(matches!(refused, ClothsError::Stale), "{refused}");
    assert_eq!(
        fs::read_to_string(root.join("cloths.toml")).unwrap(),
        theirs
    );
}

#[test]
fn a_cloth_is_added_like_another_without_what_was_measured() {
    let copy = Copy::new();
    let root = copy.root();
    let held = version(&root);
    let key = add_cloth(&root, &held, " Marsh \"10\" ", "tideline-14").unwrap();
    assert_eq!(key, "marsh-10");
    let text = fs::read_to_string(root.join("cloths.toml")).unwrap();
    assert!(
        text.starts_with(demo_text("cloths.toml").trim_end()),
        "{text}"
    );
    let added = &text[demo_text("cloths.toml").len()..];
    assert!(!added.contains('#') || added.contains("\"#"), "{added}");
    let collection = load_collection(&root).unwrap();
    let (new, old) = (
        &collection.cloths["marsh-10"],
        &collection.cloths["tideline-14"],
    );
    assert_eq!(new.name, "Marsh \"10\"");
    assert_eq!((new.weight, new.width), (old.weight, old.width));
    assert!(new.wash_test.is_empty() && new.skew_test.is_none());
    let held = version(&root);
    assert_eq!(
        add_cloth(&root, &held, "Marsh 10", "marsh-10").unwrap(),
        "marsh-10-2"
    );
    let held = version(&root);
    assert!(add_cloth(&root, &held, "Heath", "nowhere").is_err());
}
