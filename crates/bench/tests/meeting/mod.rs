//! Several who change one style at once: tabs of the bench and an editor. Nobody's change is lost, and none is made
//! silently on what somebody else has changed.

use std::collections::BTreeSet;
use std::fs;
use std::sync::Arc;

use serde_json::{Value, json};

use crate::house::{House, STYLE, fragment};

fn edit(path: &str, value: &str) -> Value {
    json!([{ "edit": "set", "path": path, "value": value }])
}

async fn send(house: &House, revision: &str, path: &str, value: &str) -> Value {
    let body = json!({ "revision": revision, "edits": edit(path, value) });
    house.post("edit", body).await
}

#[tokio::test]
async fn a_page_that_is_behind_changes_what_nobody_else_did() {
    let house = House::new();
    let old = house.revision().await;
    house.set("chart.thigh.value", "63 cm").await;
    let answer = send(&house, &old, "chart.knee.value", "46 cm").await;
    assert_eq!(answer["outcome"], "done");
    let said = answer["said"].as_str().unwrap();
    assert!(said.starts_with("knee"), "{said}");
    assert!(said.contains("also changed meanwhile: thigh"), "{said}");
    assert!(house.text().contains("63 cm") && house.text().contains("46 cm"));
}

#[tokio::test]
async fn a_page_that_is_behind_is_refused_what_somebody_else_changed_with_both_values() {
    let house = House::new();
    let old = house.revision().await;
    house.set("chart.thigh.value", "63 cm").await;
    let before = house.text();
    let answer = send(&house, &old, "chart.thigh.value", "64 cm").await;
    assert_eq!(answer["outcome"], "behind");
    let problems = answer["problems"].to_string();
    for word in ["thigh", "63.0 cm", "yours, 64 cm, was not written"] {
        assert!(problems.contains(word), "{word}: {problems}");
    }
    assert_eq!(house.text(), before);
    // The page shows the file as it is by now, so the change made again is meant.
    let now = answer["revision"].as_str().unwrap();
    let again = send(&house, now, "chart.thigh.value", "64 cm").await;
    assert_eq!(again["outcome"], "done");
    assert!(house.text().contains("64 cm"));
}

#[tokio::test]
async fn an_answer_that_was_lost_can_be_asked_for_again() {
    let house = House::new();
    let old = house.revision().await;
    for _ in 0..2 {
        let answer = send(&house, &old, "chart.thigh.value", "63 cm").await;
        assert_eq!(answer["outcome"], "done");
    }
    assert!(house.text().contains("63 cm"));
}

#[tokio::test]
async fn a_page_of_a_state_that_is_not_kept_changes_nothing() {
    let house = House::new();
    let before = house.text();
    let answer = send(&house, "0123456789abcdef", "chart.thigh.value", "63 cm").await;
    assert_eq!(answer["outcome"], "behind");
    assert_eq!(house.text(), before);
}

#[tokio::test]
async fn what_an_editor_changed_elsewhere_is_taken_over_and_told() {
    let house = House::new();
    let revision = house.revision().await;
    let first = house.text();
    let by_hand = first
        .replace("value = \"18 in\"", "value = \"18 1/4 in\"")
        .replace("# Ferryman:", "# My Ferryman:");
    fs::write(house.file(), &by_hand).unwrap();
    let answer = send(&house, &revision, "chart.thigh.value", "63 cm").await;
    assert_eq!(answer["outcome"], "done");
    assert!(answer["said"].as_str().unwrap().contains("meanwhile: knee"));
    let notice = fragment(&answer, "notice");
    assert!(notice.contains("has been read again") && notice.contains("knee"));
    let text = house.text();
    for words in ["63 cm", "18 1/4 in", "# My Ferryman:"] {
        assert!(text.contains(words), "{words}");
    }
    // Undo goes back to the editor's text, and then to the one before it.
    house.step("undo").await;
    assert_eq!(house.text(), by_hand);
    house.step("undo").await;
    assert_eq!(house.text(), first);
}

#[tokio::test]
async fn whoever_comes_back_to_the_page_sees_what_an_editor_wrote() {
    let house = House::new();
    let (revision, first) = (house.revision().await, house.text());
    let by_hand = first.replace("value = \"18 in\"", "value = \"18 1/4 in\"");
    fs::write(house.file(), &by_hand).unwrap();
    let answer = house.get(&format!("{STYLE}/fragments")).await.text;
    let answer: Value = serde_json::from_str(&answer).unwrap();
    assert_ne!(answer["revision"], revision.as_str());
    let notice = fragment(&answer, "notice");
    assert!(notice.contains("has been read again") && notice.contains("knee"));
    let bar = fragment(&answer, "bar");
    assert!(bar.contains("Undo: knee") && bar.contains(", outside the bench"));
    assert_eq!(house.step("undo").await["outcome"], "done");
    assert_eq!(house.text(), first);
}

#[tokio::test]
async fn what_an_editor_changed_is_not_overwritten_by_a_change_of_the_same() {
    let house = House::new();
    let revision = house.revision().await;
    let first = house.text();
    let by_hand = first.replace("value = \"24 1/2 in\"", "value = \"25 in\"");
    assert_ne!(by_hand, first);
    fs::write(house.file(), &by_hand).unwrap();
    let answer = send(&house, &revision, "chart.thigh.value", "63 cm").await;
    assert_eq!(answer["outcome"], "behind");
    assert!(answer["problems"].to_string().contains("63 cm"));
    assert_eq!(house.text(), by_hand);
    house.step("undo").await;
    assert_eq!(house.text(), first);
}

#[tokio::test]
async fn a_change_is_not_made_on_a_file_that_an_editor_broke() {
    let house = House::new();
    let revision = house.revision().await;
    let broken = house.text().replace("[chart.thigh]", "[chart.thigh");
    fs::write(house.file(), &broken).unwrap();
    let answer = send(&house, &revision, "chart.knee.value", "46 cm").await;
    assert_eq!(answer["outcome"], "behind");
    assert!(fragment(&answer, "notice").contains("cannot be read now"));
    assert_eq!(house.text(), broken);
}

/// Values that tabs change, each with the revision its tab happened to be opened at.
const FIELDS: [&str; 10] = [
    "chart.thigh.value",
    "chart.knee.value",
    "chart.hem.value",
    "chart.fly_width.tolerance",
    "chart.coin_depth.tolerance",
    "chart.coin_width.tolerance",
    "chart.yoke_side.tolerance",
    "chart.loop_width.tolerance",
    "chart.hem_depth.tolerance",
    "chart.loop_length.tolerance",
];

/// The value a tab writes: no two alike, all near enough to be sound.
fn value(tab: usize) -> String {
    let field = FIELDS[tab % FIELDS.len()];
    let step = 0.001 * f64::from(u32::try_from(tab / FIELDS.len()).unwrap());
    match field {
        "chart.thigh.value" => format!("{:.3} cm", 62.5 + step),
        "chart.knee.value" => format!("{:.3} cm", 45.8 + step),
        "chart.hem.value" => format!("{:.3} cm", 42.1 + step),
        _ => format!("{:.3} cm", 0.25 + step),
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn of_two_hundred_changes_at_once_each_is_made_or_told() {
    const TABS: usize = 200;
    let house = Arc::new(House::new());
    let opened = house.revision().await;
    let tabs: Vec<_> = (0..TABS)
        .map(|tab| {
            let (house, opened) = (Arc::clone(&house), opened.clone());
            tokio::spawn(async move {
                let field = FIELDS[tab % FIELDS.len()];
                let answer = send(&house, &opened, field, &value(tab)).await;
                (tab, answer)
            })
        })
        .collect();
    let (mut made, mut refused) = (BTreeSet::new(), 0);
    for tab in tabs {
        let (tab, answer) = tab.await.unwrap();
        match answer["outcome"].as_str().unwrap() {
            "done" => {
                made.insert(tab);
            }
            "behind" => {
                let problems = answer["problems"].to_string();
                let mine = format!("yours, {}, was not written", value(tab));
                assert!(problems.contains(&mine), "{problems}");
                refused += 1;
            }
            other => panic!("{tab}: {other} {}", answer["problems"]),
        }
    }
    // All were opened at the same text, so of each value one change is made: the first to arrive.
    assert_eq!((made.len(), refused), (FIELDS.len(), TABS - FIELDS.len()));
    let loaded = style::load(&house.file()).unwrap();
    for tab in &made {
        assert!(loaded.text.contains(&value(*tab)), "{}", value(*tab));
    }
    // Each is a version of its own, and together they are all versions there are.
    let history = style::history(&loaded).unwrap();
    assert_eq!(history.versions().len(), FIELDS.len() + 1);
    for version in history.versions() {
        loaded
            .with_text(&style::read_revision(version).unwrap())
            .unwrap();
    }
}

#[tokio::test(flavor = "multi_thread", worker_threads = 4)]
async fn tabs_that_look_again_all_come_through() {
    const TABS: usize = 30;
    let house = Arc::new(House::new());
    let tabs: Vec<_> = (0..TABS)
        .map(|tab| {
            let house = Arc::clone(&house);
            tokio::spawn(async move {
                let field = FIELDS[tab % FIELDS.len()];
                let mut revision = house.revision().await;
                loop {
                    let answer = send(&house, &revision, field, &value(tab)).await;
                    if answer["outcome"] == "done" {
                        return value(tab);
                    }
                    assert_eq!(answer["outcome"], "behind");
                    revision = answer["revision"].as_str().unwrap().to_owned();
                }
            })
        })
        .collect();
    let loaded = |house: &House| style::load(&house.file()).unwrap();
    let mut values = Vec::new();
    for tab in tabs {
        values.push(tab.await.unwrap());
    }
    let history = style::history(&loaded(&house)).unwrap();
    let texts: Vec<String> = history
        .versions()
        .iter()
        .map(|version| style::read_revision(version).unwrap())
        .collect();
    for value in values {
        assert!(texts.iter().any(|text| text.contains(&value)), "{value}");
    }
}
