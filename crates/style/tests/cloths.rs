//! The file of cloths is changed whole or not at all, with its comments, and every style that uses it goes on being read.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;

use common::{Copy, demo_text};
use style::{
    Direction, Edit, EditValue, KeepError, Written, add_cloth, cloths_of, load_collection, step,
    timeline,
};
use trade::Share;

const WEIGHT: &str = "cloths.tideline-14.weight";

fn version(root: &std::path::Path) -> String {
    cloths_of(root).unwrap().file.look().unwrap().version.id
}

fn edit_cloths(root: &std::path::Path, held: &str, edits: &[Edit]) -> Result<(), KeepError> {
    cloths_of(root)?.edit(held, edits).map(drop)
}

/// How many changes can be taken back.
fn standing(root: &std::path::Path) -> usize {
    timeline(root).unwrap().standing().len()
}

fn set(path: &str, text: &str) -> Edit {
    Edit::set(path, text).unwrap()
}

#[test]
fn an_edit_keeps_every_other_byte_and_the_version_before() {
    let copy = Copy::new();
    let root = copy.root();
    assert_eq!(standing(&root), 0);
    let held = version(&root);
    edit_cloths(&root, &held, &[set(WEIGHT, "13.5 oz/yd2")]).unwrap();
    let expected = demo_text("cloths.toml").replace("\"14 oz/yd2\"", "\"13.5 oz/yd2\"");
    let text = || fs::read_to_string(root.join("cloths.toml")).unwrap();
    assert_eq!(text(), expected);
    // Every style that uses it follows.
    let loaded = style::load(&root.join("styles/ferryman")).unwrap();
    assert_eq!(loaded.collection, load_collection(&root).unwrap());
    step(&root, Direction::Back, None).unwrap();
    assert_eq!(text(), demo_text("cloths.toml"));
    step(&root, Direction::Forward, None).unwrap();
    assert_eq!(text(), expected);
}

/// The bench has no field for who sells a cloth: what a maker wrote of it by hand stays as it was written.
#[test]
fn what_the_bench_has_no_field_for_is_kept() {
    let copy = Copy::new();
    let root = copy.root();
    let theirs = demo_text("cloths.toml").replace(
        "article = \"TL-475-LS\"",
        "article   = 'TL-475-LS'   # roll ends too",
    );
    copy.write("cloths.toml", theirs.clone());
    let edits = [
        set(WEIGHT, "13.5 oz/yd2"),
        Edit::remove("cloths.tideline-14.skew").unwrap(),
    ];
    edit_cloths(&root, &version(&root), &edits).unwrap();
    let text = fs::read_to_string(root.join("cloths.toml")).unwrap();
    assert!(text.contains("article   = 'TL-475-LS'   # roll ends too"));
    let cloth = &load_collection(&root).unwrap().cloths["tideline-14"];
    assert_eq!(cloth.supply.supplier, "Fenmill Weavers");
    assert_eq!(cloth.supply.article, "TL-475-LS");
    assert_eq!(cloth.dye, "rope-dyed indigo warp, undyed weft");
    // An edit like any other states and takes out what had no line before.
    let named = set("cloths.oar-lining.supplier", "Fenmill Weavers");
    edit_cloths(&root, &version(&root), &[named]).unwrap();
    let collection = load_collection(&root).unwrap();
    assert_eq!(
        collection.cloths["oar-lining"].supply.supplier,
        "Fenmill Weavers"
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
        assert_eq!(standing(&root), 3 - taken);
        step(&root, Direction::Back, None).unwrap();
        assert_eq!(text(), *before);
    }
    let past_the_first = step(&root, Direction::Back, None);
    assert!(matches!(past_the_first, Err(KeepError::Nothing)));
    for after in &texts[1..3] {
        step(&root, Direction::Forward, None).unwrap();
        assert_eq!(text(), *after);
    }
    // Another change ends what could be made again.
    edit_cloths(&root, &version(&root), &[set(WEIGHT, "10 oz/yd2")]).unwrap();
    assert_eq!(standing(&root), 3);
    let nothing = step(&root, Direction::Forward, None);
    assert!(matches!(nothing, Err(KeepError::Nothing)));
}

#[test]
fn undo_takes_back_the_last_change_whichever_file_it_was_in() {
    let copy = Copy::new();
    let root = copy.root();
    let style = copy.loaded();
    let looped = style::apply(&style.text, &set("loops.count", "7")).unwrap();
    style::save(&style, &looped).unwrap();
    edit_cloths(
        &root,
        &version(&root),
        &[set("cloths.tideline-14.weft_shrinkage", "2 %")],
    )
    .unwrap();
    let cloths = fs::read_to_string(root.join("cloths.toml")).unwrap();
    // The shrinkage goes back, and the loops stay.
    let taken = step(&root, Direction::Back, None).unwrap();
    assert_eq!(taken.file, "cloths.toml");
    assert_eq!(
        fs::read_to_string(root.join("cloths.toml")).unwrap(),
        demo_text("cloths.toml")
    );
    assert_eq!(copy.loaded().text, looped);
    let taken = step(&root, Direction::Back, None).unwrap();
    assert_eq!(taken.file, "styles/ferryman/style.toml");
    assert_eq!(copy.loaded().text, style.text);
    for _ in 0..2 {
        step(&root, Direction::Forward, None).unwrap();
    }
    assert_eq!(
        fs::read_to_string(root.join("cloths.toml")).unwrap(),
        cloths
    );
    assert_eq!(copy.loaded().text, looped);
    // Whoever was shown another last change takes nothing back.
    let behind = step(&root, Direction::Back, Some(&taken.token()));
    assert!(matches!(behind, Err(KeepError::Behind)), "{behind:?}");
}

#[test]
fn what_is_written_by_hand_into_any_file_is_a_version_and_can_be_taken_back() {
    let copy = Copy::new();
    let root = copy.root();
    style::take_note(&root);
    let files = style::kept_files(&root).unwrap();
    let names: Vec<String> = files.iter().map(|kept| kept.name()).collect();
    for name in [
        "collection.toml",
        "cloths.toml",
        "yarns.toml",
        "trims.toml",
        "styles/ferryman/style.toml",
    ] {
        assert!(names.iter().any(|known| known == name), "{names:?}");
    }
    assert!(
        names.iter().any(|name| name.starts_with("orders/")),
        "{names:?}"
    );
    for (round, kept) in files.iter().enumerate() {
        let before = fs::read_to_string(kept.file.path()).unwrap();
        // Three times by hand, and somebody of ours looked in between.
        for time in 0..3 {
            fs::write(kept.file.path(), format!("{before}# by hand, {time}\n")).unwrap();
            style::take_note(&root);
        }
        let history = style::History::of(&kept.file).unwrap();
        assert_eq!(history.versions().len(), 4, "{}", kept.name());
        assert_eq!(standing(&root), 3 * (round + 1));
    }
    for _ in 0..standing(&root) {
        step(&root, Direction::Back, None).unwrap();
    }
    for name in [
        "collection.toml",
        "yarns.toml",
        "styles/ferryman/style.toml",
    ] {
        assert_eq!(
            fs::read_to_string(root.join(name)).unwrap(),
            demo_text(name)
        );
    }
}

#[test]
fn a_shared_file_that_cannot_be_read_goes_back_to_the_last_version_that_can() {
    let copy = Copy::new();
    let root = copy.root();
    style::take_note(&root);
    for name in style::SHARED_FILES {
        let kept = style::KeptFile::at(&root.join(name)).unwrap();
        assert!(kept.last_sound().is_none(), "{name}");
        fs::write(root.join(name), "[[[").unwrap();
        let (_, text) = kept.last_sound().unwrap();
        assert_eq!(text, demo_text(name));
        let held = kept.file.look().unwrap();
        kept.put(
            &style::RevisionId::of(&held.text),
            &text,
            style::Way::PutBack,
        )
        .unwrap();
        let kept = style::History::of(&kept.file).unwrap();
        assert_eq!(
            kept.versions().len(),
            3,
            "what could not be read is a version too"
        );
    }
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
    edit_cloths(&root, &held, &edits).unwrap();
    let collection = load_collection(&root).unwrap();
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
        let KeepError::Invalid(report) = refused else {
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
        matches!(refused, KeepError::StyleBreaks { .. }),
        "{refused}"
    );
    assert!(refused.to_string().contains("ferryman"), "{refused}");
    assert_eq!(standing(&root), 0);
    assert_eq!(
        fs::read_to_string(root.join("cloths.toml")).unwrap(),
        demo_text("cloths.toml")
    );
}

#[test]
fn an_edit_is_made_beside_somebody_elses_and_refused_where_it_is_the_same_value() {
    let copy = Copy::new();
    let root = copy.root();
    let held = version(&root);
    let theirs = demo_text("cloths.toml").replace("0.82 mm", "0.9 mm");
    copy.write("cloths.toml", theirs.clone());
    edit_cloths(&root, &held, &[set(WEIGHT, "12 oz/yd2")]).unwrap();
    let both = theirs.replace("\"14 oz/yd2\"", "\"12 oz/yd2\"");
    let text = || fs::read_to_string(root.join("cloths.toml")).unwrap();
    assert_eq!(text(), both);
    let refused = edit_cloths(&root, &held, &[set(WEIGHT, "11 oz/yd2")]).unwrap_err();
    let KeepError::Clash { clashes, .. } = refused else {
        panic!("{refused}")
    };
    assert_eq!(clashes[0].is, Some(Written::Plain("12 oz/yd2".to_owned())));
    assert_eq!(text(), both);
    let unknown = edit_cloths(&root, "0123456789abcdef", &[set(WEIGHT, "11 oz/yd2")]);
    assert!(matches!(unknown, Err(KeepError::Clash { .. })));
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
    assert_eq!(
        (&new.supply, &new.dye),
        (&style::Supply::default(), &old.dye)
    );
    let held = version(&root);
    assert_eq!(
        add_cloth(&root, &held, "Marsh 10", "marsh-10").unwrap(),
        "marsh-10-2"
    );
    let held = version(&root);
    assert!(add_cloth(&root, &held, "Heath", "nowhere").is_err());
}
