//! Differences in other words: whatever language they are told in, they are found, compared and merged alike.
#![allow(clippy::unwrap_used)]

mod common;

use common::{Copy, demo_collection, demo_style};
use style::{
    Change, ChangeKind, ChangePart, Edit, EditValue, KeptFile, Merged, StyleDoc, Teller, Value,
    Written, apply, difference, merge, parse,
};
use trade::{Length, System};
use words::Words;

/// Every message says its own name and what is put into it, in the order of the alphabet turned round.
fn marked() -> Words {
    let messages = words::catalogue().into_iter().map(|(key, mut given)| {
        given.sort();
        let put: String = given
            .iter()
            .rev()
            .map(|name| format!("; {{ ${name} }}"))
            .collect();
        format!("{key} = <{key}{put}>\n")
    });
    Words::of("art", &[&messages.collect::<String>()]).unwrap()
}

/// What stands outside the marks, and so comes from no catalogue.
fn put_in(sentence: &str) -> String {
    let mut values = String::new();
    let mut key = false;
    for letter in sentence.chars() {
        match letter {
            '<' => key = true,
            ';' | '>' => key = false,
            _ if key => {}
            other => values.push(other),
        }
    }
    values
}

fn set(path: &str, value: &str) -> Edit {
    Edit::set(path, value).unwrap()
}

fn remove(path: &str) -> Edit {
    Edit::remove(path).unwrap()
}

fn insert(path: &str, value: &str) -> Edit {
    let value = serde_json::from_str(value).unwrap();
    let path = path.parse().unwrap();
    Edit::Insert { path, value }
}

fn made(edits: &[Edit]) -> String {
    edits.iter().fold(demo_style().to_owned(), |text, edit| {
        apply(&text, edit).unwrap()
    })
}

fn read(text: &str) -> StyleDoc {
    parse(text, "style.toml", &demo_collection()).unwrap()
}

/// One change of every kind, and of every kind of value.
fn changed() -> Vec<Change> {
    let text = made(&[
        set("style.fit", "tapered"),
        remove("style.workroom"),
        set("sizes.lengths", "30 32"),
        set("cloth.pocketing", "oar-lining"),
        remove("cloth.lining"),
        set("chart.thigh.value", "63 cm"),
        remove("chart.fly_length.breaks"),
        remove("chart.loop_width"),
        set("shape.seat_angle", "14 deg"),
        set("pockets.back.left.lining", "full"),
        remove("pockets.extra"),
        set("loops.count", "7"),
        set("rivets.back_hidden", "true"),
        remove("patch"),
        set("labels[0].place", "inside"),
        set("seams.inseam.construction", "safety-stitched"),
        set("seams.seat.rows[0].density", "9 /in"),
        insert(
            "seams.hem.rows[1]",
            r#"{"stitch": "301", "density": "8 /in", "yarn": "rope-80", "offset": "3 mm", "end": "cut"}"#,
        ),
        remove("seams.decoration"),
        set("cutting.residual_warp", "1 %"),
    ]);
    let (old, new) = (read(demo_style()), read(&text));
    let mut all = difference(&old, &new);
    all.extend(difference(&new, &old));
    all
}

#[test]
fn every_change_is_told_in_the_words_of_its_reader() {
    let (english, other) = (Words::english(), marked());
    let changes = changed();
    assert!(changes.len() > 40, "only {} changes", changes.len());
    for change in &changes {
        for system in [System::Metric, System::Inch] {
            let (plain, marked) = (change.words(english, system), change.words(&other, system));
            assert!(marked.starts_with("<difference-"), "{plain}: {marked}");
            // Whatever is put in is put into the English sentence as well.
            for value in put_in(&marked).split_whitespace() {
                let value = value.trim_end_matches(',');
                assert!(plain.contains(value), "{value} in {plain}: {marked}");
            }
            assert!(!marked.contains('→'), "{marked}");
        }
    }
    let said = |path: &str| {
        let change = changes.iter().find(|change| change.path == path).unwrap();
        change.words(&other, System::Metric)
    };
    assert_eq!(
        said("chart.thigh.value"),
        "<difference-changed; 62.23 cm; <difference-grew; 63.0 cm; +0.77 cm>; \
         <difference-measure-value; 32x32; <measure-title-thigh>>>"
    );
    assert_eq!(
        said("cloth.lining"),
        "<difference-changed; oar-lining; <difference-none>; <difference-lining>>"
    );
    assert_eq!(
        said("style.workroom"),
        "<difference-changed; azenha; <difference-open>; <difference-style-workroom>>"
    );
    assert_eq!(
        said("seams.inseam.construction"),
        "<difference-changed; <difference-had-construction; lap-felled>; safety-stitched; <seam-inseam>>"
    );
    assert_eq!(
        said("seams.inseam.lap"),
        "<difference-changed; <difference-lap-order; back; front>; <difference-none>; \
         <difference-seam-lap; <seam-inseam>>>"
    );
    assert_eq!(
        said("seams.yoke"),
        "<difference-follows; <seam-seat>; <seam-yoke>>"
    );
    assert_eq!(
        said("seams.hem.rows[1]"),
        "<difference-added-as; <difference-row-ends; <difference-row-sewn; rope-80; rope-80; 301; 3 mm; 8 /in>; \
         cut>; <difference-row; <seam-hem>; 2>>"
    );
    assert_eq!(
        said("pockets.extra"),
        "<difference-removed; <difference-extra>>"
    );
}

#[test]
fn a_change_holds_what_was_and_is_and_not_how_it_reads() {
    let changes = changed();
    let at = |path: &str| changes.iter().find(|change| change.path == path).unwrap();
    let thigh = at("chart.thigh.value");
    assert_eq!(thigh.kind, ChangeKind::Changed);
    assert_eq!(thigh.was, Value::Length(Length::inches(24.5)));
    assert_eq!(thigh.is, Value::Length(Length::cm(63.0)));
    let loop_width = at("chart.loop_width");
    assert_eq!(loop_width.kind, ChangeKind::TakenOut);
    assert!(matches!(loop_width.was, Value::Charted(width, _) if width == Length::cm(1.2)));
    assert_eq!(loop_width.is, Value::Nothing);
    let density = at("seams.seat.rows[0].density");
    assert_eq!(density.part, Some(ChangePart::Density));
    assert_eq!(density.is, Value::Density("9 /in".parse().unwrap()));
    let row = at("seams.hem.rows[1]");
    assert_eq!(row.kind, ChangeKind::Added);
    assert!(matches!(&row.is, Value::Row(row) if row.yarn == "rope-80"));
}

#[test]
fn what_is_no_style_is_told_place_by_place_in_other_words() {
    let copy = Copy::new();
    let kept = KeptFile::at(&copy.root().join("cloths.toml")).unwrap();
    let teller = Teller::of(&kept);
    let old =
        "[cloths.a]\nname = \"A\"\ncare = [1, 2]\ntest = [{ x = 1 }]\n[cloths.b]\nname = \"B\"\n";
    let new = "[cloths.a]\nname = \"B\"\nmill = \"C\"\ncare = [1]\ntest = [{ x = 2 }]\n[cloths.c]\nname = \"B\"\n";
    let [old, new] = [old, new].map(|text| teller.read(text).unwrap());
    let other = marked();
    let told: Vec<String> = teller
        .changes(&old, &new)
        .iter()
        .map(|change| change.words(&other, System::Metric))
        .collect();
    assert_eq!(
        told,
        [
            "<difference-changed; <difference-list; 2>; <difference-list; 1>; a, care>",
            "<difference-changed; A; B; a, name>",
            "<difference-changed; 1; 2; a, test, <difference-number; 1>, x>",
            "<difference-new; C; a, mill>",
            "<difference-taken-out; b>",
            "<difference-added; c>",
        ]
    );
}

#[test]
fn clashes_are_found_and_named_by_what_the_texts_hold() {
    let theirs = made(&[
        set("chart.thigh.value", "62 cm"),
        remove("seams.inseam.rows[1]"),
    ]);
    let mine = [
        set("chart.thigh.value", "63 cm"),
        set("chart.knee.value", "46 cm"),
        Edit::Set {
            path: "seams.inseam.rows".parse().unwrap(),
            value: EditValue::List(Vec::new()),
        },
    ];
    let Merged::Clash(clashes) = merge(demo_style(), &theirs, &mine).unwrap() else {
        panic!("two of the edits clash");
    };
    let plain = |text: &str| Some(Written::Plain(text.to_owned()));
    assert_eq!(clashes.len(), 2);
    assert_eq!(clashes[0].was, plain("24 1/2 in"));
    assert_eq!(clashes[0].is, plain("62 cm"));
    assert_eq!(clashes[0].wanted, plain("63 cm"));
    let lists = [2, 1, 0].map(|count| Some(Written::List(count)));
    let [was, is, wanted] = lists;
    assert_eq!((&clashes[1].was, &clashes[1].is), (&was, &is));
    assert_eq!(clashes[1].wanted, wanted);
    // Which change a clash is about is known by its place, and told in any words.
    let changes = difference(&read(demo_style()), &read(&theirs));
    let other = marked();
    let happened = |number: usize| {
        let mut about = changes
            .iter()
            .filter(|change| clashes[number].is_about(change));
        about.next().unwrap().words(&other, System::Metric)
    };
    assert!(happened(0).ends_with("<difference-measure-value; 32x32; <measure-title-thigh>>>"));
    assert_eq!(
        happened(1),
        "<difference-removed; <difference-row; <seam-inseam>; 2>>"
    );
}

#[test]
fn a_text_that_reads_like_our_words_is_still_a_text() {
    let copy = Copy::new();
    let kept = KeptFile::at(&copy.root().join("yarns.toml")).unwrap();
    let teller = Teller::of(&kept);
    let versions = [
        "a = \"a section\"\n",
        "[a]\nb = 1\n",
        "a = \"a list of 2\"\n",
        "a = [1, 2]\n",
    ];
    let read = versions.map(|text| teller.read(text).unwrap());
    for pair in read.windows(2) {
        let [change] = &teller.changes(&pair[0], &pair[1])[..] else {
            panic!("one value is another");
        };
        assert_eq!(change.kind, ChangeKind::Changed, "{change:?}");
    }
}
