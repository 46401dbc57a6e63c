//! What can be done on the drawing itself: taking hold of what is drawn, turning layers on, reading measures off it.

use axum::http::StatusCode;
use serde_json::{Value, json};

use crate::house::{House, STYLE, between, fragment};

const VIEWS: [&str; 4] = [
    "view=front&face=outside",
    "view=back&face=outside",
    "view=front&face=inside",
    "view=back&face=inside",
];

/// What stands between each of these marks and the next quotation mark.
fn named<'a>(html: &'a str, mark: &str) -> Vec<&'a str> {
    let after = html.split(mark).skip(1);
    after.filter_map(|rest| rest.split('"').next()).collect()
}

async fn drawn(house: &House, query: &str) -> String {
    let got = house.get(&format!("{STYLE}/fragments?{query}")).await;
    let answer: Value = serde_json::from_str(&got.text).unwrap();
    fragment(&answer, "drawing").to_owned()
}

async fn hold(house: &House, key: &str) -> Value {
    let got = house.get(&format!("{STYLE}/grip/{key}")).await;
    assert_eq!(got.status, StatusCode::OK, "{key}: {}", got.text);
    serde_json::from_str(&got.text).unwrap()
}

fn point(value: &Value) -> (f64, f64) {
    (value[0].as_f64().unwrap(), value[1].as_f64().unwrap())
}

#[tokio::test]
async fn everything_with_a_grip_can_be_held_and_says_what_moves_it() {
    let house = House::new();
    let mut held = 0;
    for view in VIEWS {
        for key in named(&drawn(&house, view).await, "data-grip=\"") {
            let grip = hold(&house, key).await;
            let values = grip["values"].as_array().unwrap();
            assert!(!values.is_empty(), "{key} moves nothing");
            for value in values {
                let path = value["path"].as_str().unwrap();
                assert!(value["mm"].as_f64().unwrap().is_finite(), "{key} {path}");
                assert_eq!(
                    value["lines"].as_array().unwrap().len(),
                    grip["lines"].as_array().unwrap().len(),
                    "{key} {path}"
                );
            }
            held += 1;
        }
    }
    assert!(held >= 20, "{held}");
}

#[tokio::test]
async fn what_is_dropped_lies_where_its_outline_was() {
    let house = House::new();
    for (key, mm) in [
        ("back-pocket-left-outer", 8.0),
        ("back-pocket-right", 5.0),
        ("coin", 4.0),
        ("mouth-depth", 6.0),
        ("patch", 7.0),
        ("extra", 6.0),
        ("extra-width", 5.0),
        ("extra-depth", 5.0),
    ] {
        let before = hold(&house, key).await;
        let value = &before["values"][0];
        let words = format!("{} mm", value["mm"].as_f64().unwrap() + mm);
        let path = value["path"].as_str().unwrap();
        let answer = house.set(path, &words).await;
        assert_eq!(answer["outcome"], "done", "{key}: {}", answer["problems"]);
        let (from, along) = (point(&before["at"]), point(&value["at"]));
        let there = point(&hold(&house, key).await["at"]);
        let miss = (there.0 - from.0 - along.0 * mm).hypot(there.1 - from.1 - along.1 * mm);
        assert!(miss < 0.5, "{key}: {miss} mm beside its outline");
        let moved = (along.0 * mm).hypot(along.1 * mm);
        assert!(moved > 1.0, "{key} moves only {moved} mm");
    }
}

/// Turned out, the wearer's left is on the left: a thing on it is held there, and what brings it away from the centre
/// brings it further to the left.
#[tokio::test]
async fn turned_out_what_is_held_follows_to_the_side_it_lies_on() {
    let house = House::new();
    assert!(house.text().contains("[pockets.extra]"));
    for (side, way) in [("left", -1.0), ("right", 1.0)] {
        house.set("pockets.extra.side", side).await;
        let held = hold(&house, "extra").await;
        let at = point(&held["at"]);
        let along = point(&held["values"][0]["at"]);
        assert_eq!(held["values"][0]["path"], "pockets.extra.from_centre");
        assert!(at.0 * way > 0.0, "{side}: held at {at:?}");
        assert!(along.0 * way > 0.0, "{side}: it follows by {along:?}");
        let view = drawn(&house, "view=front&face=inside").await;
        let grip = between(&view, "data-grip=\"extra\"", "tabindex");
        let x: f64 = between(grip, "data-x=\"", "\"").parse().unwrap();
        assert!((x - at.0).abs() < 0.01, "{side}: the grip is shown at {x}");
    }
    // On the outside a person's right is on the left of whoever looks at them.
    assert!(point(&hold(&house, "coin").await["at"]).0 < 0.0);
}

#[tokio::test]
async fn a_leg_is_measured_on_the_same_leg_when_the_pair_is_turned_out() {
    let house = House::new();
    let [out, turned] = [
        "view=front&face=outside&layers=measures",
        "view=front&face=inside&layers=measures",
    ];
    for key in ["knee", "inseam", "mouth_width"] {
        let mut at = Vec::new();
        for query in [out, turned] {
            let html = drawn(&house, query).await;
            let dim = between(&html, &format!("data-dim=\"{key}\""), "data-at-y");
            at.push(between(dim, "data-at-x=\"", "\"").parse::<f64>().unwrap());
        }
        assert!(at[0] > 0.0 && (at[0] + at[1]).abs() < 0.02, "{key}: {at:?}");
    }
}

#[tokio::test]
async fn a_drag_in_two_ways_is_one_change() {
    let house = House::new();
    let before = house.text();
    let edits = json!([
        { "edit": "set", "path": "pockets.back.left.foot_width", "value": "13.4 cm" },
        { "edit": "set", "path": "pockets.back.left.outer_drop", "value": "4 mm" },
    ]);
    let body = json!({ "revision": house.revision().await, "edits": edits });
    let answer = house.post("edit", body).await;
    assert_eq!(answer["outcome"], "done");
    assert!(house.text().contains("foot_width = \"13.4 cm\""));
    house.step("undo").await;
    assert_eq!(house.text(), before);
}

#[tokio::test]
async fn nobody_holds_what_is_not_there() {
    let house = House::new();
    for key in ["nothing", "..%2Fedit"] {
        let got = house.get(&format!("{STYLE}/grip/{key}")).await;
        assert_eq!(got.status, StatusCode::NOT_FOUND, "{key}");
    }
    let plain = house.text();
    let from = plain.find("[pockets.extra]").unwrap();
    let rest = &plain[from..];
    let without = plain.replace(&rest[..rest.find("\n\n").unwrap()], "");
    std::fs::write(house.file(), without).unwrap();
    house.get(STYLE).await;
    let got = house.get(&format!("{STYLE}/grip/extra")).await;
    assert_eq!(got.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn measures_can_be_changed_on_the_drawing() {
    let house = House::new();
    assert!(!drawn(&house, "view=front").await.contains("data-dim"));
    let html = drawn(&house, "view=front&layers=stitches%20measures").await;
    let shown = named(&html, "data-dim=\"");
    for key in [
        "waist",
        "seat",
        "thigh",
        "inseam",
        "outseam",
        "mouth_width",
        "yoke_side",
    ] {
        assert!(shown.contains(&key), "{key} is not on the front");
        let dim = between(&html, &format!("data-dim=\"{key}\""), "</label>");
        let path = format!("data-path=\"chart.{key}.value\"");
        assert!(dim.contains(&path), "{key} has no field");
    }
    assert!(html.contains("no-fittings") && !html.contains("no-stitches"));
    let back = drawn(&house, "view=back&layers=measures").await;
    assert!(named(&back, "data-dim=\"").contains(&"back_pocket_length"));
}

#[tokio::test]
async fn what_lies_below_is_drawn_where_it_is_asked_for() {
    let house = House::new();
    let plain = drawn(&house, "view=front").await;
    let below = drawn(&house, "view=front&layers=below").await;
    assert!(!plain.contains("over below"));
    // Both facings and bags, one coin pocket, fly facing and shield, one extra pocket.
    let lines = between(&below, "over below", "</svg>")
        .matches("<path")
        .count();
    assert_eq!(lines, 8);
}

#[tokio::test]
async fn the_strip_tells_what_changed_since_the_session_began_or_the_makers_mark() {
    let house = House::new();
    let strip = |answer: &Value| fragment(answer, "strip").to_owned();
    let got = house.get(&format!("{STYLE}/fragments")).await;
    let begun = strip(&serde_json::from_str(&got.text).unwrap());
    for title in [
        "Yarn",
        "Shell, at least",
        "Cloth weight",
        "Thickest",
        "Findings",
    ] {
        assert!(begun.contains(title), "{title} is missing");
    }
    assert!(!begun.contains("<strong>") && begun.contains("since the session began"));
    let closer = house.set("seams.inseam.rows[0].density", "12 /in").await;
    assert!(strip(&closer).contains("<strong>+"), "{}", strip(&closer));
    let marked = house.step("mark").await;
    assert!(!strip(&marked).contains("<strong>"));
    assert!(strip(&marked).contains("since your mark"));
    let undone = house.step("undo").await;
    assert!(strip(&undone).contains("<strong>−"), "{}", strip(&undone));
    let back = house.step("redo").await;
    assert!(!strip(&back).contains("<strong>"));
}

#[tokio::test]
async fn a_finding_is_muted_with_its_reason_and_counted_again() {
    let house = House::new();
    let before = house.text();
    let muted = json!([{ "code": "sewing::hem-bulk", "about": "seam:hem", "reason": "meant so" }]);
    let edits = json!([{ "edit": "set", "path": "muted", "value": muted }]);
    let body = json!({ "revision": house.revision().await, "edits": edits });
    let answer = house.post("edit?panel=findings", body).await;
    assert_eq!(answer["outcome"], "done", "{}", answer["problems"]);
    assert!(house.text().contains("[[muted]]"));
    let findings = fragment(&answer, "findings");
    let (counted, left) = findings.split_once("<h3>Muted</h3>").unwrap();
    assert!(!counted.contains("sewing::hem-bulk"));
    assert!(left.contains("sewing::hem-bulk") && left.contains("Meant so"));
    assert!(fragment(&answer, "strip").contains("1 gone"));
    // The next one finds a list to be put into.
    assert!(counted.contains("muted[1]"));
    let again = json!([{ "edit": "remove", "path": "muted[0]" }]);
    let body = json!({ "revision": answer["revision"], "edits": again });
    house.post("edit?panel=findings", body).await;
    assert_eq!(house.text(), before);
}

#[tokio::test]
async fn a_remedy_that_leaves_no_choice_is_one_button() {
    let house = House::new();
    let answer = house.set("hem.ends", "overlapped").await;
    let findings = fragment(&answer, "findings");
    let button = between(
        findings,
        "<button class=\"small\" type=\"button\" data-edits=\"",
        ">Make it so<",
    );
    let edits = button.split('"').next().unwrap().replace("&quot;", "\"");
    let edits: Value = serde_json::from_str(&edits).unwrap();
    assert_eq!(edits[0]["path"], "hem.ends");
    let body = json!({ "revision": answer["revision"], "edits": edits });
    let answer = house.post("edit", body).await;
    assert_eq!(answer["outcome"], "done");
    assert!(!fragment(&answer, "findings").contains("sewing::hem-ends"));
}
