//! A save is whole or not at all, keeps what was there, and never overwrites what somebody else wrote.
//!
//! The last test starts this program again as a writer and kills it while it saves.
#![allow(clippy::unwrap_used)]

mod common;

use std::fs;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::Duration;

use common::{Copy, demo_style};
use style::{Edit, RevisionId, SaveError, last_sound, list_revisions, read_revision, save};

fn set(text: &str, path: &str, value: &str) -> String {
    style::apply(text, &Edit::set(path, value).unwrap()).unwrap()
}

#[test]
fn a_save_replaces_the_file_and_keeps_what_was_there() {
    let copy = Copy::new();
    let first = copy.loaded();
    let text = set(&first.text, "chart.thigh.value", "63 cm");
    let saved = save(&first, &text).unwrap();
    assert_eq!(fs::read_to_string(copy.style()).unwrap(), text);
    assert_eq!(saved.loaded.revision, RevisionId::of(&text));
    let again = set(&text, "chart.thigh.value", "64 cm");
    save(&saved.loaded, &again).unwrap();
    let revisions = list_revisions(&copy.style_folder()).unwrap();
    let numbers: Vec<u32> = revisions.iter().map(|revision| revision.number).collect();
    assert_eq!(numbers, [1, 2]);
    assert_eq!(read_revision(&revisions[0]).unwrap(), demo_style());
    assert_eq!(read_revision(&revisions[1]).unwrap(), text);
    let name = revisions[0].path.file_name().unwrap().to_str().unwrap();
    assert_eq!(name, format!("0001-{}.toml", RevisionId::of(demo_style())));
}

#[test]
fn saving_what_is_there_writes_nothing() {
    let copy = Copy::new();
    let loaded = copy.loaded();
    assert!(save(&loaded, &loaded.text).unwrap().earlier.is_none());
    assert!(list_revisions(&copy.style_folder()).unwrap().is_empty());
}

#[test]
fn a_text_with_problems_is_not_saved() {
    let copy = Copy::new();
    let loaded = copy.loaded();
    let text = loaded.text.replacen("33 1/2 in", "33 1/2", 1);
    assert!(matches!(save(&loaded, &text), Err(SaveError::Invalid(_))));
    assert_eq!(fs::read_to_string(copy.style()).unwrap(), demo_style());
    assert!(list_revisions(&copy.style_folder()).unwrap().is_empty());
}

#[test]
fn a_read_only_file_stays_as_it_is() {
    let copy = Copy::new();
    let loaded = copy.loaded();
    let mut permissions = fs::metadata(copy.style()).unwrap().permissions();
    permissions.set_readonly(true);
    fs::set_permissions(copy.style(), permissions).unwrap();
    let refused = save(&loaded, &set(&loaded.text, "loops.count", "7"));
    assert!(
        matches!(refused, Err(SaveError::Disk { .. })),
        "{refused:?}"
    );
    assert_eq!(fs::read_to_string(copy.style()).unwrap(), demo_style());
}

#[test]
fn a_stale_save_is_refused_and_both_versions_are_kept() {
    let copy = Copy::new();
    let mine = copy.loaded();
    let theirs = set(demo_style(), "chart.knee.value", "46 cm");
    save(&copy.loaded(), &theirs).unwrap();
    let text = set(&mine.text, "chart.thigh.value", "63 cm");
    let error = save(&mine, &text).unwrap_err();
    let SaveError::Stale { kept, on_disk, .. } = &error else {
        panic!("{error}")
    };
    assert_eq!(fs::read_to_string(copy.style()).unwrap(), theirs);
    assert_eq!(*on_disk, RevisionId::of(&theirs));
    assert_eq!(fs::read_to_string(kept).unwrap(), text);
    assert!(
        error.to_string().contains(&kept.display().to_string()),
        "{error}"
    );
    let name = kept.file_name().unwrap().to_str().unwrap();
    assert!(name.starts_with("refused-0002-"), "{name}");
    // A refused text is not one of the file's own versions.
    assert_eq!(list_revisions(&copy.style_folder()).unwrap().len(), 1);
}

#[test]
fn a_change_by_hand_makes_a_save_stale_too() {
    let copy = Copy::new();
    let loaded = copy.loaded();
    let by_hand = demo_style().replacen("# Ferryman:", "# The Ferryman:", 1);
    fs::write(copy.style(), &by_hand).unwrap();
    let text = set(&loaded.text, "chart.thigh.value", "63 cm");
    assert!(matches!(save(&loaded, &text), Err(SaveError::Stale { .. })));
    assert_eq!(fs::read_to_string(copy.style()).unwrap(), by_hand);
}

#[test]
fn a_kept_version_that_was_edited_is_not_passed_off_as_itself() {
    let copy = Copy::new();
    let loaded = copy.loaded();
    save(&loaded, &set(&loaded.text, "loops.count", "7")).unwrap();
    let [revision] = &list_revisions(&copy.style_folder()).unwrap()[..] else {
        panic!()
    };
    fs::write(&revision.path, "format = 1\n").unwrap();
    assert_eq!(
        read_revision(revision).unwrap_err().problems[0].code,
        "style::changed-revision"
    );
}

#[test]
fn the_last_version_that_can_be_read_takes_the_place_of_one_that_cannot() {
    let copy = Copy::new();
    let first = copy.loaded();
    assert!(
        last_sound(&copy.style_folder()).is_none(),
        "nothing is broken"
    );
    let text = set(&first.text, "chart.thigh.value", "63 cm");
    save(&first, &text).unwrap();
    fs::write(copy.style(), "[[[").unwrap();
    let sound = last_sound(&copy.style_folder()).unwrap();
    assert_eq!(sound.loaded.text, text);
    // Somebody goes on writing by hand: nothing of that is overwritten.
    fs::write(copy.style(), "[[[ # not done yet").unwrap();
    assert!(matches!(sound.put_in(&text), Err(SaveError::Stale { .. })));
    let sound = last_sound(&copy.style_folder()).unwrap();
    sound.put_in(&sound.loaded.text).unwrap();
    assert_eq!(fs::read_to_string(copy.style()).unwrap(), text);
    let kept = list_revisions(&copy.style_folder()).unwrap();
    let kept = kept.iter().map(|kept| read_revision(kept).unwrap());
    let kept: Vec<String> = kept.collect();
    assert_eq!(kept, [demo_style(), &text, "[[[", "[[[ # not done yet"]);
    // No version that could be read, or a file that is no text: there is nothing to offer.
    fs::write(copy.style(), [0xff, 0xfe]).unwrap();
    assert!(last_sound(&copy.style_folder()).is_none());
    fs::remove_dir_all(copy.style_folder().join(style::REVISIONS_FOLDER)).unwrap();
    fs::write(copy.style(), "[[[").unwrap();
    assert!(last_sound(&copy.style_folder()).is_none());
}

/// A value typed into the file by hand that no pair of jeans can have: told at its place, and the last version is offered.
#[test]
fn after_a_value_that_cannot_be_the_last_version_is_offered() {
    let copy = Copy::new();
    let first = copy.loaded();
    let text = set(&first.text, "chart.thigh.value", "63 cm");
    save(&first, &text).unwrap();
    let slip = text.replacen(
        "value = \"4.2 cm\"\ntolerance = \"0.3 cm\"\n\n[chart.yoke",
        "value = \"76 cm\"\ntolerance = \"0.3 cm\"\n\n[chart.yoke",
        1,
    );
    assert_ne!(slip, text);
    fs::write(copy.style(), slip).unwrap();
    let report = copy.load().unwrap_err();
    let [problem] = &report.problems[..] else {
        panic!("{report}")
    };
    assert_eq!(
        (problem.code, problem.path.as_str()),
        ("style::out-of-range", "chart.fly_width.value")
    );
    let told = report.render();
    for part in [
        "[chart.fly_width]",
        "76 cm",
        "at most 30 cm makes sense here; 2.8 cm to 6 cm is usual",
    ] {
        assert!(told.contains(part), "{part}: {told}");
    }
    assert_eq!(last_sound(&copy.style_folder()).unwrap().loaded.text, text);
}

#[test]
fn of_many_writers_at_once_each_is_saved_or_told() {
    const WRITERS: usize = 8;
    let copy = Copy::new();
    let loaded = copy.loaded();
    let results: Vec<_> = std::thread::scope(|scope| {
        let start = |n: usize| {
            let text = set(
                &loaded.text,
                "chart.thigh.value",
                &format!("{} mm", 600 + n),
            );
            let loaded = &loaded;
            scope.spawn(move || (text.clone(), save(loaded, &text)))
        };
        let writers: Vec<_> = (0..WRITERS).map(start).collect();
        writers
            .into_iter()
            .map(|writer| writer.join().unwrap())
            .collect()
    });
    let (saved, refused): (Vec<_>, Vec<_>) = results.iter().partition(|(_, result)| result.is_ok());
    assert_eq!((saved.len(), refused.len()), (1, WRITERS - 1));
    assert_eq!(fs::read_to_string(copy.style()).unwrap(), saved[0].0);
    for (text, result) in refused {
        let Err(SaveError::Stale { kept, .. }) = result else {
            panic!("{result:?}")
        };
        assert_eq!(&fs::read_to_string(kept).unwrap(), text);
    }
}

/// Set when this program is started again as the writer: the style file to save over and over.
const WRITER: &str = "STYLE_TEST_WRITER";

/// The texts a writer saves, one after another: the name tells which it is, a long comment makes each a real write.
fn version(number: u64) -> String {
    let filler = format!("# {}\n", "x".repeat(120)).repeat(80);
    let named = format!("name = \"Ferryman {number}\"");
    format!(
        "{}\n{filler}",
        demo_style().replacen("name = \"Ferryman\"", &named, 1)
    )
}

/// Not a test of its own: the writer that [`a_killed_save_leaves_a_whole_file`] starts and kills.
#[test]
fn writer() {
    let Some(path) = std::env::var_os(WRITER) else {
        return;
    };
    let mut loaded = style::load(Path::new(&path)).unwrap();
    loop {
        let next = number_in(&loaded.text).map_or(0, |number| number + 1);
        loaded = save(&loaded, &version(next)).unwrap().loaded;
    }
}

fn number_in(text: &str) -> Option<u64> {
    let name = text
        .lines()
        .find_map(|line| line.strip_prefix("name = \"Ferryman "))?;
    name.trim_end_matches('"').parse().ok()
}

/// Waits until the file holds a later version than this, so that every kill falls into a writer at work.
fn wait_for_work(path: &Path, before: Option<u64>, writer: &mut Child) {
    while number_in(&fs::read_to_string(path).unwrap()) <= before {
        assert!(
            writer.try_wait().unwrap().is_none(),
            "the writer stopped by itself"
        );
        std::thread::sleep(Duration::from_micros(200));
    }
}

#[test]
fn a_killed_save_leaves_a_whole_file() {
    const KILLS: u64 = 200;
    let copy = Copy::new();
    let unfinished = copy
        .style_folder()
        .join(style::REVISIONS_FOLDER)
        .join("unfinished");
    let mut interrupted = 0;
    for kill in 0..KILLS {
        let before = number_in(&fs::read_to_string(copy.style()).unwrap());
        let mut writer = Command::new(std::env::current_exe().unwrap())
            .args(["writer", "--exact"])
            .env(WRITER, copy.style())
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap();
        wait_for_work(&copy.style(), before, &mut writer);
        // Some way into the saves that follow, spread evenly and without a pattern.
        std::thread::sleep(Duration::from_micros((kill * 7_919) % 12_000));
        writer.kill().unwrap();
        writer.wait().unwrap();
        let text = fs::read_to_string(copy.style()).unwrap();
        let after = number_in(&text);
        assert!(after > before, "kill {kill}: an earlier version came back");
        assert!(
            text == version(after.unwrap()),
            "kill {kill}: a file that was never saved"
        );
        interrupted += u64::from(unfinished.exists());
    }
    println!("{interrupted} of {KILLS} kills fell between beginning to write and renaming");
    assert!(
        interrupted > 0,
        "no kill fell into a save: the test shows nothing"
    );
    copy.loaded();
    // Every version there ever was is kept, whole, in order.
    let last = number_in(&fs::read_to_string(copy.style()).unwrap()).unwrap();
    println!("{last} versions were saved");
    let revisions = list_revisions(&copy.style_folder()).unwrap();
    let texts = revisions
        .iter()
        .map(|revision| read_revision(revision).unwrap());
    let kept: Vec<Option<u64>> = texts.map(|text| number_in(&text)).collect();
    let all: Vec<Option<u64>> = std::iter::once(None).chain((0..last).map(Some)).collect();
    assert_eq!(kept, all);
}
