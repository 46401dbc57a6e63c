//! Every version is kept, also those that an editor wrote over; versions have names; undo finds its way by them.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;

use common::{Copy, demo_style};
use style::{
    Edit, Loaded, NameError, VersionedFile, list_revisions, name_version, names_problem,
    read_revision, save,
};

fn set(loaded: &Loaded, path: &str, value: &str) -> Loaded {
    let text = style::apply(&loaded.text, &Edit::set(path, value).unwrap()).unwrap();
    save(loaded, &text).unwrap().loaded
}

/// The texts of all versions, the one in the file last.
fn texts(loaded: &Loaded) -> Vec<String> {
    let history = style::history(loaded).unwrap();
    let versions = history.versions().iter();
    versions
        .map(|version| read_revision(version).unwrap())
        .collect()
}

#[test]
fn what_an_editor_wrote_over_is_kept() {
    let copy = Copy::new();
    let first = copy.loaded();
    let second = set(&first, "chart.thigh.value", "63 cm");
    // Nobody of ours runs meanwhile.
    let by_hand = second.text.replacen("\"18 in\"", "\"18 1/4 in\"", 1);
    fs::write(copy.style(), &by_hand).unwrap();
    let third = copy.loaded();
    let fourth = set(&third, "loops.count", "7");
    let all = [first.text, second.text, by_hand, fourth.text.clone()];
    assert_eq!(texts(&fourth), all);
}

#[test]
fn looking_at_what_an_editor_wrote_keeps_what_was_there() {
    let copy = Copy::new();
    let before = copy.loaded();
    let file = VersionedFile::new(&copy.style());
    assert!(!file.look().unwrap().outside);
    let by_hand = demo_style().replacen("\"18 in\"", "\"18 1/4 in\"", 1);
    fs::write(copy.style(), &by_hand).unwrap();
    assert!(file.look().unwrap().outside);
    // Once is enough.
    assert!(!file.look().unwrap().outside);
    assert_eq!(texts(&copy.loaded()), [before.text, by_hand]);
}

#[test]
fn a_version_has_the_time_at_which_it_was_written() {
    let copy = Copy::new();
    let long_ago = std::time::UNIX_EPOCH + std::time::Duration::from_secs(1_700_000_000);
    let file = fs::File::options().write(true).open(copy.style()).unwrap();
    file.set_modified(long_ago).unwrap();
    set(&copy.loaded(), "chart.thigh.value", "63 cm");
    let revisions = list_revisions(&copy.style_folder()).unwrap();
    let time = fs::metadata(&revisions[0].path)
        .unwrap()
        .modified()
        .unwrap();
    assert_eq!(time, long_ago);
}

#[test]
fn a_version_with_the_text_of_an_earlier_one_is_known_as_such() {
    let copy = Copy::new();
    let first = copy.loaded();
    let second = set(&first, "chart.thigh.value", "63 cm");
    let third = set(&second, "loops.count", "7");
    let back = save(&third, &second.text).unwrap().loaded;
    let history = style::history(&back).unwrap();
    let now = history.now().unwrap();
    assert_eq!(now.number, 4);
    assert_eq!(history.same_as(now).unwrap().number, 2);
    assert_eq!(history.same_as(history.get(2).unwrap()), None);
}

#[test]
fn versions_are_found_by_number_and_name() {
    let copy = Copy::new();
    let second = set(&copy.loaded(), "chart.thigh.value", "63 cm");
    name_version(&second, 1, Some("first sample")).unwrap();
    name_version(&second, 2, Some(" sent to the workroom ")).unwrap();
    let third = set(&second, "loops.count", "7");
    let history = style::history(&third).unwrap();
    let number = |words: &str| history.find(words).map(|version| version.number);
    assert_eq!(number("1"), Some(1));
    assert_eq!(number("#2"), Some(2));
    assert_eq!(number("now"), Some(3));
    assert_eq!(number("first sample"), Some(1));
    // It was named while it was in the file, and has its name since it is kept.
    assert_eq!(number("sent to the workroom"), Some(2));
    assert_eq!(number("4"), None);
    assert_eq!(number("second sample"), None);
}

#[test]
fn a_name_is_changed_and_taken_away_and_comments_stay() {
    let copy = Copy::new();
    let second = set(&copy.loaded(), "chart.thigh.value", "63 cm");
    name_version(&second, 1, Some("first")).unwrap();
    let file = copy.style_folder().join(".revisions/names.toml");
    let text = fs::read_to_string(&file).unwrap() + "# mine\n";
    fs::write(&file, text).unwrap();
    name_version(&second, 1, Some("first sample")).unwrap();
    name_version(&second, 2, Some("second sample")).unwrap();
    name_version(&second, 1, None).unwrap();
    let history = style::history(&second).unwrap();
    let names: Vec<_> = history.versions().iter().map(|v| history.name(v)).collect();
    assert_eq!(names, [None, Some("second sample")]);
    assert!(fs::read_to_string(&file).unwrap().contains("# mine"));
}

#[test]
fn a_named_version_outlives_an_editor() {
    let copy = Copy::new();
    let first = copy.loaded();
    name_version(&first, 1, Some("first sample")).unwrap();
    let by_hand = demo_style().replacen("\"18 in\"", "\"18 1/4 in\"", 1);
    fs::write(copy.style(), &by_hand).unwrap();
    let last = set(&copy.loaded(), "loops.count", "7");
    let history = style::history(&last).unwrap();
    let named = history.find("first sample").unwrap();
    assert_eq!(read_revision(named).unwrap(), first.text);
}

#[test]
fn what_cannot_be_a_name_is_refused() {
    let copy = Copy::new();
    let second = set(&copy.loaded(), "chart.thigh.value", "63 cm");
    name_version(&second, 1, Some("first sample")).unwrap();
    let long = "x".repeat(style::LONGEST_NAME + 1);
    for name in ["", "  ", "now", "12", "#12", "two\nlines", &long] {
        let refused = name_version(&second, 2, Some(name));
        assert!(matches!(refused, Err(NameError::Unfit(_))), "{name:?}");
    }
    let taken = name_version(&second, 2, Some("first sample")).unwrap_err();
    assert!(taken.to_string().contains("version 1"), "{taken}");
    let none = name_version(&second, 9, Some("ninth")).unwrap_err();
    assert!(matches!(none, NameError::NoSuchVersion(9)), "{none}");
}

#[test]
fn names_spoilt_by_hand_are_told_and_not_lost() {
    let copy = Copy::new();
    let second = set(&copy.loaded(), "chart.thigh.value", "63 cm");
    name_version(&second, 1, Some("first sample")).unwrap();
    let file = copy.style_folder().join(".revisions/names.toml");
    for spoilt in [
        "format = 1\n[names\n",
        "format = 1\n[names]\n\"0001-x\" = 7\n",
        "format = 1\n[names]\n\"0001-x\" = \"now\"\n",
        "format = 1\n[nmaes]\n",
    ] {
        fs::write(&file, spoilt).unwrap();
        let history = style::history(&second).unwrap();
        let problem = names_problem(&history).unwrap().render();
        assert!(problem.contains("names.toml"), "{problem}");
        let refused = name_version(&second, 2, Some("second sample"));
        assert!(matches!(refused, Err(NameError::Broken(_))), "{spoilt}");
        assert_eq!(fs::read_to_string(&file).unwrap(), spoilt);
    }
}
