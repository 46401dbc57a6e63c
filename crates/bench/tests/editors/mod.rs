//! Every field of the details and of a seam: a changed value is in the file, on the page, and gone again when undone.

mod field;

use std::fs;
use style::SeamId;

use serde_json::{Value, json};
use toml_edit::DocumentMut;

use crate::house::{House, STYLE, between, fragment};
use field::{Field, fields};

/// What a style file says at a path, as a text.
fn said(text: &str, path: &str) -> Option<String> {
    let document: DocumentMut = text.parse().unwrap();
    let mut item = document.as_item();
    for step in path.split('.') {
        let (key, index) = match step.split_once('[') {
            Some((key, rest)) => (
                key,
                Some(rest.trim_end_matches(']').parse::<usize>().unwrap()),
            ),
            None => (step, None),
        };
        item = item.get(key)?;
        if let Some(index) = index {
            item = item.get(index)?;
        }
    }
    let value = item.as_value()?;
    Some(match value.as_str() {
        Some(text) => text.to_owned(),
        None => value.clone().decorated("", "").to_string(),
    })
}

async fn panel(house: &House, query: &str, id: &str) -> (String, String) {
    let got = house.get(&format!("{STYLE}/fragments?{query}")).await;
    let answer: Value = serde_json::from_str(&got.text).unwrap();
    let revision = answer["revision"].as_str().unwrap().to_owned();
    (fragment(&answer, id).to_owned(), revision)
}

/// Changes a field as the page's script would, and takes the change back. Gives whether the field could be changed.
async fn round_trip(
    house: &House,
    query: &str,
    id: &str,
    field: &Field,
    revision: &mut String,
) -> bool {
    let before = house.text();
    for (edits, expected) in field.changes() {
        let body = json!({ "revision": revision, "edits": edits });
        let answer = house.post(&format!("edit?{query}"), body).await;
        if answer["outcome"] != "done" {
            assert_eq!(
                house.text(),
                before,
                "{} refused and yet changed",
                field.path
            );
            continue;
        }
        let text = house.text();
        assert_ne!(text, before, "{}", field.path);
        assert_eq!(said(&text, &field.path), expected, "{}", field.path);
        style::load(&house.file()).unwrap();
        let html = fragment(&answer, id);
        let now = fields(html).into_iter().find(|now| now.path == field.path);
        if let Some(now) = now {
            assert_ne!(now.shown(), field.shown(), "{} is not shown", field.path);
        }
        assert!(
            !answer["said"].as_str().unwrap().is_empty(),
            "{} is not said",
            field.path
        );
        let body = json!({ "revision": answer["revision"], "edits": [] });
        let body = json!({ "revision": body["revision"] });
        let answer = house.post(&format!("undo?{query}"), body).await;
        assert_eq!(answer["outcome"], "done");
        assert_eq!(house.text(), before, "{} does not come back", field.path);
        *revision = answer["revision"].as_str().unwrap().to_owned();
        return true;
    }
    false
}

/// Round trips of all fields whose path a test is about.
async fn all(query: &str, id: &str, about: impl Fn(&str) -> bool) -> usize {
    let house = House::new();
    let (html, mut revision) = panel(&house, query, id).await;
    let mut tried = 0;
    for field in fields(&html).iter().filter(|field| about(&field.path)) {
        assert!(field.is_named(), "{} has no label", field.path);
        let single = field.has_one_choice();
        let changed = round_trip(&house, query, id, field, &mut revision).await;
        assert!(changed || single, "{} cannot be changed", field.path);
        tried += 1;
    }
    tried
}

#[tokio::test]
async fn panels_and_closings_round_trip() {
    let about = |path: &str| {
        [
            "style.", "cloth.", "shape.", "fly.", "band.", "hem.", "loops.", "cutting.",
        ]
        .iter()
        .any(|section| path.starts_with(section))
    };
    assert!(all("panel=details", "details", about).await >= 30);
}

#[tokio::test]
async fn pockets_round_trip() {
    let about = |path: &str| path.starts_with("pockets.");
    assert!(all("panel=details", "details", about).await >= 35);
}

#[tokio::test]
async fn hardware_and_labels_round_trip() {
    let about = |path: &str| {
        ["rivets.", "patch.", "labels[", "bartacks."]
            .iter()
            .any(|section| path.starts_with(section))
            // Whatever a step leaves out has nothing to be changed from.
            || path.starts_with("wash.steps[0].")
            || path.starts_with("wash.") && !path.contains("steps")
    };
    assert!(all("panel=details", "details", about).await >= 37);
}

/// The buttons of a part of a page that make changes: the edits of each.
fn buttons(html: &str) -> Vec<Value> {
    let carried = html.split("data-edits=\"").skip(1);
    let carried = carried.filter_map(|rest| rest.split('"').next());
    carried
        .filter_map(|edits| serde_json::from_str(&edits.replace("&quot;", "\"")).ok())
        .collect()
}

/// A first wash as the page's own choices and buttons state it.
#[tokio::test]
async fn a_first_wash_is_stated_step_by_step_and_taken_back() {
    let house = House::new();
    let before = house.text();
    let wash = |answer: &Value| {
        let html = fragment(answer, "details").to_owned();
        let group = &html[html.find("id=\"group-wash\"").unwrap()..];
        group[..group.find("id=\"group-why\"").unwrap()].to_owned()
    };
    let press = async |answer: &Value, edits: &Value| {
        let body = json!({ "revision": answer["revision"], "edits": edits });
        let answer = house.post("edit?panel=details", body).await;
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        answer
    };
    let got = house.get(&format!("{STYLE}/fragments?panel=details")).await;
    let shown: Value = serde_json::from_str(&got.text).unwrap();
    // Not stated any more; a cross at each of the three steps; and one more step.
    let carried = buttons(&wash(&shown));
    assert_eq!(carried.len(), 1 + 3 + 1);
    let none = press(&shown, &carried[0]).await;
    assert!(style::load(&house.file()).unwrap().style.wash.is_none());
    let carried = buttons(&wash(&none));
    assert_eq!(carried.len(), 3);
    let begun = press(&none, &carried[2]).await;
    let first = press(&begun, &buttons(&wash(&begun))[1]).await;
    let second = press(&first, buttons(&wash(&first)).last().unwrap()).await;
    let stated = || style::load(&house.file()).unwrap().style.wash.unwrap();
    assert_eq!(stated().finish, style::WashFinish::Washed);
    assert_eq!(stated().by, style::WashedBy::Laundry);
    assert_eq!(stated().steps.len(), 2);
    let crosses = buttons(&wash(&second));
    press(&second, &crosses[1]).await;
    assert_eq!(stated().steps.len(), 1);
    for _ in 0..5 {
        house.step("undo").await;
    }
    assert_eq!(house.text(), before);
}

/// What a customer may be told is put in order by its arrows, and taken out by its cross.
#[tokio::test]
async fn whys_are_moved_and_taken_out() {
    let house = House::new();
    let before = house.text();
    let whys = || style::load(&house.file()).unwrap().style.why;
    let first = whys();
    let group = |html: &str| html[html.find("id=\"group-why\"").unwrap()..].to_owned();
    let shown: Value = serde_json::from_str(
        &house
            .get(&format!("{STYLE}/fragments?panel=details"))
            .await
            .text,
    )
    .unwrap();
    // The first has a cross alone, every other an arrow too.
    let carried = buttons(&group(fragment(&shown, "details")));
    assert_eq!(carried.len(), 2 * first.len() - 1);
    let press = async |answer: &Value, edits: &Value| {
        let body = json!({ "revision": answer["revision"], "edits": edits });
        let answer = house.post("edit?panel=details", body).await;
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        answer
    };
    let moved = press(&shown, &carried[1]).await;
    let now = whys();
    assert_eq!((&now[0], &now[1]), (&first[1], &first[0]));
    assert_eq!(now[2..], first[2..]);
    press(&moved, &buttons(&group(fragment(&moved, "details")))[0]).await;
    assert_eq!(whys()[0], first[0]);
    assert_eq!(whys().len(), first.len() - 1);
    house.step("undo").await;
    house.step("undo").await;
    assert_eq!(house.text(), before);
}

/// A sentence that another tab has changed since is not put back by moving it.
#[tokio::test]
async fn a_why_that_is_moved_keeps_what_another_tab_wrote() {
    let house = House::new();
    let got = house.get(&format!("{STYLE}/fragments?panel=details")).await;
    let shown: Value = serde_json::from_str(&got.text).unwrap();
    let html = fragment(&shown, "details");
    let group = &html[html.find("id=\"group-why\"").unwrap()..];
    let earlier = buttons(group)[1].clone();
    let written = "Written in another tab.";
    let edit = json!({ "edit": "set", "path": "why[1].says", "value": written });
    let body = json!({ "revision": shown["revision"], "edits": [edit] });
    let other = house.post("edit?panel=details", body).await;
    assert_eq!(other["outcome"], "done", "{}", other["problems"]);
    let body = json!({ "revision": shown["revision"], "edits": earlier });
    let moved = house.post("edit?panel=details", body).await;
    assert_ne!(moved["outcome"], "done", "it would be the old sentence");
    assert!(house.text().contains(written));
}

#[tokio::test]
async fn a_seam_round_trips() {
    let query = "panel=construction&part=seam:inseam";
    let about = |path: &str| {
        path.starts_with("seams.inseam.") || path.starts_with("seams.back_pocket_hem.")
    };
    assert!(all(query, "construction", about).await >= 30);
}

#[tokio::test]
async fn the_run_of_sizes_is_changed_as_it_is_written() {
    let house = House::new();
    let before = house.text();
    let answer = house.set("sizes.waists", "30 31, 32").await;
    assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
    assert!(house.text().contains("waists = [30, 31, 32]"));
    assert!(!fragment(&answer, "bar").contains("34 × 32"));
    let answer = house.set("sizes.base", "31x30").await;
    assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
    assert!(fragment(&answer, "details").contains("value=\"30 31 32\""));
    let answer = house.set("sizes.waists", "30, 31, 31.5").await;
    assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
    assert!(house.text().contains("waists = [30, 31, 31.5]"));
    assert!(fragment(&answer, "bar").contains("31.5 × 30"));
    assert!(fragment(&answer, "details").contains("value=\"30 31 31.5\""));
    house.step("undo").await;
    let answer = house.set("sizes.waists", "33 34").await;
    assert_eq!(answer["outcome"], "refused");
    house.step("undo").await;
    house.step("undo").await;
    assert_eq!(house.text(), before);
}

#[tokio::test]
async fn every_detail_a_style_can_state_has_a_field() {
    let house = House::new();
    let zip = "\n[trims.zip]\nname = \"Brass zip\"\nkind = \"zip\"\nmaterial = \"brass\"\nlength = \"15 cm\"\ncolour = \"#8a7444\"\n";
    let trims = house.collection().join("trims.toml");
    fs::write(&trims, fs::read_to_string(&trims).unwrap() + zip).unwrap();
    let outline =
        "<svg xmlns=\"http://www.w3.org/2000/svg\"><path d=\"M0 0 L4 80 L70 80 L75 0\"/></svg>";
    fs::write(
        house.file().with_file_name("art").join("outline.svg"),
        outline,
    )
    .unwrap();
    let (html, _) = panel(&house, "panel=details", "details").await;
    let mut shown: Vec<String> = fields(&html).into_iter().map(|field| field.path).collect();
    let (cloth, _) = panel(&house, "panel=cloth", "cloth").await;
    shown.extend(fields(&cloth).into_iter().map(|field| field.path));
    // What is only shown with a certain choice.
    for (path, value) in [("pockets.coin.shape", "free"), ("fly.closing", "zip")] {
        let (html, revision) = panel(&house, "panel=details", "details").await;
        let field = fields(&html)
            .into_iter()
            .find(|field| field.path == path && field.offers(value))
            .unwrap();
        let body = json!({ "revision": revision, "edits": field.edits_for(value) });
        let answer = house.post("edit", body).await;
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        let html = fragment(&answer, "details");
        shown.extend(fields(html).into_iter().map(|field| field.path));
    }
    for page in [
        "style", "cloth", "shape", "fly", "band", "pockets", "hem", "loops", "rivets", "patch",
        "labels", "bartacks",
    ] {
        for path in stated(page) {
            assert!(shown.contains(&path), "{path} has no field");
        }
    }
}

/// Every path that the types of a section can write, taken from the style itself as JSON.
fn stated(section: &str) -> Vec<String> {
    let house = House::new();
    let loaded = style::load(&house.file()).unwrap();
    let all = serde_json::to_value(&loaded.style).unwrap();
    let mut paths = Vec::new();
    walk(section, &all[section], &mut paths);
    paths
}

fn walk(path: &str, value: &Value, paths: &mut Vec<String>) {
    match value {
        Value::Object(members) => {
            for (key, member) in members {
                walk(&format!("{path}.{key}"), member, paths);
            }
        }
        Value::Array(members) if members.iter().any(Value::is_object) => {
            for (index, member) in members.iter().enumerate() {
                walk(&format!("{path}[{index}]"), member, paths);
            }
        }
        _ => paths.push(path.to_owned()),
    }
}

#[tokio::test]
async fn optional_parts_are_taken_out_and_put_in() {
    for (section, words) in [
        ("pockets.extra", "Put one behind the left front"),
        ("patch", "Put in Saltmarsh patch"),
        ("rivets", "Put in Rowlock rivet"),
        ("seams.decoration", "Add back pocket stitching"),
        ("seams.fly_edge", "Add fly facing edge"),
        ("seams.patch_set", "Add patch sewn on"),
        ("seams.label_set", "Add labels sewn on"),
    ] {
        let house = House::new();
        let id = if section.starts_with("seams") {
            "construction"
        } else {
            "details"
        };
        let (html, revision) = panel(&house, "panel=details", id).await;
        let edits = edits_of_button(&html, &format!("\"path\":\"{section}\""));
        let out = house
            .post("edit", json!({ "revision": revision, "edits": edits }))
            .await;
        assert_eq!(out["outcome"], "done", "{section} out: {}", out["problems"]);
        assert!(!house.text().contains(&format!("[{section}]")), "{section}");
        let html = fragment(&out, id);
        assert!(html.contains(words), "{words}");
        let edits = edits_of_button(html, &format!("\"path\":\"{section}\""));
        let back = house
            .post(
                "edit",
                json!({ "revision": out["revision"], "edits": edits }),
            )
            .await;
        assert_eq!(
            back["outcome"], "done",
            "{section} in: {}",
            back["problems"]
        );
        style::load(&house.file()).unwrap();
        assert!(!fragment(&back, id).contains(words), "{words}");
    }
}

#[tokio::test]
async fn labels_come_and_go_one_by_one() {
    let house = House::new();
    let count = |text: &str| text.matches("f-labels[").count();
    let (html, mut revision) = panel(&house, "panel=details", "details").await;
    let mut html = html;
    while html.contains("Take out label 1\"") {
        let edits = json!([{ "edit": "remove", "path": "labels[0]" }]);
        let answer = house
            .post("edit", json!({ "revision": revision, "edits": edits }))
            .await;
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        assert!(count(fragment(&answer, "details")) < count(&html));
        html = fragment(&answer, "details").to_owned();
        revision = answer["revision"].as_str().unwrap().to_owned();
    }
    assert_eq!(style::load(&house.file()).unwrap().style.labels.len(), 0);
    for number in 1..=2 {
        let edits = edits_of_button(&html, "care-label");
        let answer = house
            .post("edit", json!({ "revision": revision, "edits": edits }))
            .await;
        assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
        html = fragment(&answer, "details").to_owned();
        revision = answer["revision"].as_str().unwrap().to_owned();
        let labels = style::load(&house.file()).unwrap().style.labels;
        assert_eq!(labels.len(), number);
        assert_eq!(labels.last().unwrap().trim, "care-label");
    }
}

#[tokio::test]
async fn an_extra_pocket_brings_its_seams_where_the_style_has_none() {
    let house = House::new();
    let mut document: DocumentMut = house.text().parse().unwrap();
    document["pockets"].as_table_mut().unwrap().remove("extra");
    for seam in ["extra_hem", "extra_set"] {
        document["seams"].as_table_mut().unwrap().remove(seam);
    }
    fs::write(house.file(), document.to_string()).unwrap();
    let (html, revision) = panel(&house, "panel=details", "details").await;
    let edits = edits_of_button(&html, "\"path\":\"pockets.extra\"");
    let answer = house
        .post("edit", json!({ "revision": revision, "edits": edits }))
        .await;
    assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
    let loaded = style::load(&house.file()).unwrap();
    assert!(loaded.style.pockets.extra.is_some());
    assert!(loaded.style.seam(SeamId::ExtraSet).is_some());
}

#[tokio::test]
async fn a_refused_detail_says_why_and_changes_nothing() {
    let house = House::new();
    let before = house.text();
    for (path, value, words) in [
        ("shape.seat_angle", json!("80 deg"), "at most 45 deg"),
        ("pockets.bag.mouth_fullness", json!("5 %"), "mouth_fullness"),
        ("fly.buttons", json!("many"), "buttons"),
        ("labels[0].place", json!(3), "place"),
        ("patch.art", json!("../secret.svg"), "leads out"),
        ("hem.roping", json!("perhaps"), "roping"),
        ("pockets.coin.shape", json!("free"), "art"),
    ] {
        let revision = house.revision().await;
        let edits = json!([{ "edit": "set", "path": path, "value": value }]);
        let answer = house
            .post("edit", json!({ "revision": revision, "edits": edits }))
            .await;
        assert_eq!(answer["outcome"], "refused", "{path}");
        assert!(
            answer["problems"].to_string().contains(words),
            "{path}: {}",
            answer["problems"]
        );
        assert_eq!(house.text(), before);
    }
}

/// The edits of the first button that has these words among them.
fn edits_of_button(html: &str, words: &str) -> Value {
    let buttons = html.split("<button").skip(1);
    let edits = buttons
        .filter(|button| button.contains("data-edits=\""))
        .map(|button| between(button, "data-edits=\"", "\"").replace("&quot;", "\""))
        .find(|edits| edits.contains(words));
    serde_json::from_str(&edits.unwrap()).unwrap()
}
