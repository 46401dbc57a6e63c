//! Files are whole, every text that was ever in them is a version, and a change by hand is one too.
#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::PathBuf;

use proptest::prelude::*;
use store::{
    Direction, History, NameError, RevisionId, StoreError, Timeline, VersionedFile, Way,
    read_version,
};

struct Place {
    folder: tempfile::TempDir,
}

impl Place {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("collection.toml"), "label").unwrap();
        fs::create_dir_all(folder.path().join("styles/a")).unwrap();
        fs::write(folder.path().join("styles/a/style.toml"), "s1").unwrap();
        fs::write(folder.path().join("cloths.toml"), "c1").unwrap();
        Self { folder }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    fn file(&self, name: &str) -> VersionedFile {
        VersionedFile::new(&self.path(name))
    }

    fn style(&self) -> VersionedFile {
        self.file("styles/a/style.toml")
    }

    fn timeline(&self) -> Timeline {
        let root = fs::canonicalize(self.folder.path()).unwrap();
        Timeline::of(&root, &[self.style(), self.file("cloths.toml")]).unwrap()
    }
}

fn save(file: &VersionedFile, text: &str, way: Way) {
    let held = RevisionId::of(&file.look().unwrap().text);
    file.save(&held, text, way).unwrap();
}

fn texts(file: &VersionedFile) -> Vec<String> {
    let history = History::of(file).unwrap();
    let versions = history.versions().iter();
    versions
        .map(|version| read_version(version).unwrap())
        .collect()
}

#[test]
fn each_text_written_by_hand_is_a_version() {
    let place = Place::new();
    for file in [place.style(), place.file("cloths.toml")] {
        file.look().unwrap();
        let first = fs::read_to_string(file.path()).unwrap();
        for text in ["x", "y", "[[[ broken"] {
            fs::write(file.path(), text).unwrap();
            assert!(file.look().unwrap().outside, "{text}");
            assert!(!file.look().unwrap().outside, "{text}");
        }
        assert_eq!(texts(&file), [&first, "x", "y", "[[[ broken"]);
    }
    let ways: Vec<Way> = place
        .timeline()
        .changes()
        .iter()
        .map(|change| change.way)
        .collect();
    assert_eq!(ways, [Way::Outside; 6]);
}

#[test]
fn a_name_belongs_to_the_text_it_was_given_to() {
    let place = Place::new();
    let file = place.style();
    file.look().unwrap();
    file.name_version(1, Some("first sample")).unwrap();
    fs::write(file.path(), "by hand").unwrap();
    let history = History::of(&file).unwrap();
    let now = history.now().unwrap().number;
    assert_eq!(now, 2);
    file.name_version(now, Some("second sample")).unwrap();
    let history = History::of(&file).unwrap();
    let text = |name: &str| read_version(history.find(name).unwrap()).unwrap();
    assert_eq!(
        (text("first sample"), text("second sample")),
        ("s1".into(), "by hand".into())
    );
    assert!(matches!(
        file.name_version(3, Some("x")),
        Err(NameError::NoSuchVersion(3))
    ));
}

#[test]
fn a_save_meant_for_another_text_is_refused_and_kept() {
    let place = Place::new();
    let file = place.style();
    fs::write(file.path(), "by hand").unwrap();
    let refused = file
        .save(&RevisionId::of("s1"), "mine", Way::Edit)
        .unwrap_err();
    let StoreError::Stale { kept, .. } = refused else {
        panic!("{refused}")
    };
    assert_eq!(fs::read_to_string(kept).unwrap(), "mine");
    assert_eq!(fs::read_to_string(file.path()).unwrap(), "by hand");
    assert_eq!(texts(&file), ["by hand"]);
}

#[test]
fn a_save_that_was_killed_is_finished_or_never_was() {
    let pending = |file: &VersionedFile, text: &str| {
        let id = RevisionId::of(text);
        fs::write(
            file.versions().join(format!("pending-0002-{id}.toml")),
            text,
        )
        .unwrap();
        fs::write(file.versions().join("unfinished"), "te").unwrap();
    };
    // Before the rename: it never was.
    let place = Place::new();
    place.style().look().unwrap();
    pending(&place.style(), "text");
    assert_eq!(texts(&place.style()), ["s1"]);
    // After it: it was done, and nobody wrote anything by hand.
    pending(&place.style(), "text");
    fs::write(place.style().path(), "text").unwrap();
    assert!(!place.style().look().unwrap().outside);
    assert_eq!(texts(&place.style()), ["s1", "text"]);
    // After it, and somebody wrote over it by hand before anybody looked: both are kept.
    let place = Place::new();
    place.style().look().unwrap();
    pending(&place.style(), "text");
    fs::write(place.style().path(), "by hand").unwrap();
    assert!(place.style().look().unwrap().outside);
    assert_eq!(texts(&place.style()), ["s1", "text", "by hand"]);
    let left: Vec<_> = fs::read_dir(place.style().versions()).unwrap().collect();
    assert_eq!(left.len(), 4, "three versions and the lock: {left:?}");
}

#[test]
fn versions_of_earlier_programs_are_taken_over() {
    let place = Place::new();
    let file = place.style();
    fs::create_dir_all(file.versions()).unwrap();
    let first = file
        .versions()
        .join(format!("0001-{}.toml", RevisionId::of("s0")));
    fs::write(first, "s0").unwrap();
    fs::write(file.versions().join("latest.toml"), "s1").unwrap();
    assert!(!file.look().unwrap().outside);
    assert_eq!(texts(&file), ["s0", "s1"]);
    // What was written by hand since the earlier program saved is a version too.
    let place = Place::new();
    let file = place.style();
    fs::create_dir_all(file.versions()).unwrap();
    fs::write(file.versions().join("latest.toml"), "s0").unwrap();
    assert!(file.look().unwrap().outside);
    assert_eq!(texts(&file), ["s0", "s1"]);
}

#[test]
fn undo_goes_back_in_the_order_of_time_over_all_files() {
    let place = Place::new();
    let (style, cloths) = (place.style(), place.file("cloths.toml"));
    save(&style, "s2", Way::Edit);
    save(&cloths, "c2", Way::Edit);
    let next = place.timeline();
    let next = next.next(Direction::Back).unwrap();
    assert_eq!(
        (next.file.as_str(), read_version(&next.from).unwrap()),
        ("cloths.toml", "c1".into())
    );
    save(&cloths, "c1", Way::Undo);
    let timeline = place.timeline();
    assert_eq!(
        timeline.next(Direction::Back).unwrap().file,
        "styles/a/style.toml"
    );
    assert_eq!(
        timeline.next(Direction::Forward).unwrap().file,
        "cloths.toml"
    );
    assert_eq!(timeline.standing().len(), 1);
}

#[test]
fn pipes_devices_and_what_is_too_large_are_not_read() {
    let folder = tempfile::tempdir().unwrap();
    let link = folder.path().join("link");
    #[cfg(unix)]
    std::os::unix::fs::symlink("/dev/zero", &link).unwrap();
    assert!(matches!(
        store::read_text(&link, 100),
        Err(store::ReadError::NotAFile {
            what: "a device",
            ..
        })
    ));
    let large = folder.path().join("large");
    fs::write(&large, "x".repeat(101)).unwrap();
    let refused = store::read_text(&large, 100);
    assert!(matches!(
        refused,
        Err(store::ReadError::TooLarge { bytes: 101, .. })
    ));
}

#[derive(Clone, Debug)]
enum Act {
    Save(usize, u8),
    Hand(usize, u8),
    Step(bool),
    Look(usize),
}

fn act() -> impl Strategy<Value = Act> {
    prop_oneof![
        (0..2_usize, any::<u8>()).prop_map(|(file, text)| Act::Save(file, text)),
        (0..2_usize, any::<u8>()).prop_map(|(file, text)| Act::Hand(file, text)),
        any::<bool>().prop_map(Act::Step),
        (0..2_usize).prop_map(Act::Look),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(40))]

    /// Whatever is done, undoing everything leads to the beginning and making it again to where it was, and every text
    /// that was looked at is kept.
    #[test]
    fn undo_leads_to_the_beginning_and_redo_to_the_end(acts in prop::collection::vec(act(), 1..14)) {
        let place = Place::new();
        let files = [place.style(), place.file("cloths.toml")];
        let root = fs::canonicalize(place.folder.path()).unwrap();
        let state = || files.each_ref().map(|file| fs::read_to_string(file.path()).unwrap());
        for file in &files { file.look().unwrap(); }
        let beginning = state();
        let mut seen: Vec<(usize, String)> = Vec::new();
        let step = |direction: Direction| -> bool {
            let timeline = Timeline::of(&root, &files).unwrap();
            let Some(next) = timeline.next(direction) else { return false };
            let (text, way) = match direction {
                Direction::Back => (&next.from, Way::Undo),
                Direction::Forward => (&next.to, Way::Redo),
            };
            let file = VersionedFile::new(&root.join(&next.file));
            let held = RevisionId::of(&fs::read_to_string(file.path()).unwrap());
            file.save(&held, &read_version(text).unwrap(), way).unwrap();
            true
        };
        for act in acts {
            match act {
                Act::Save(file, text) => save(&files[file], &format!("saved {}", text % 3), Way::Edit),
                Act::Hand(file, text) => {
                    fs::write(files[file].path(), format!("hand {}", text % 3)).unwrap();
                    files[file].look().unwrap();
                }
                Act::Step(back) => { step(if back { Direction::Back } else { Direction::Forward }); }
                Act::Look(file) => { files[file].look().unwrap(); }
            }
            for (at, text) in state().into_iter().enumerate() { seen.push((at, text)); }
        }
        let end = state();
        let mut steps = 0;
        while step(Direction::Back) { steps += 1; }
        prop_assert_eq!(state(), beginning);
        for _ in 0..steps { prop_assert!(step(Direction::Forward)); }
        prop_assert_eq!(state(), end);
        for (at, text) in seen {
            prop_assert!(texts(&files[at]).contains(&text));
        }
    }
}
