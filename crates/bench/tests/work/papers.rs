use axum::http::StatusCode;
use serde_json::json;

use super::{is_over, problems, shown, standing, until};
use crate::house::{House, STYLE, fragment};

#[tokio::test]
async fn a_pack_is_made_in_stages_taken_away_and_known_to_be_of_an_earlier_state() {
    let house = House::new();
    let asked = json!({ "size": "34x32", "date": "2026-03-01" });
    let begun = house.post("papers/pack", asked).await;
    assert_eq!(begun["running"], json!(true), "{begun}");
    until(&house, "papers", |now| shown(now).contains("Sewing size")).await;
    let made = until(&house, "papers", is_over).await;
    let page = fragment(&made, "pack-work");
    assert!(
        page.contains("Measurement chart") && page.contains("of 2026-03-01"),
        "{page}"
    );
    assert!(page.contains("Findings of grade error") && page.contains("34x32"));

    let file = format!("{STYLE}/papers/file/ferryman.pdf");
    let got = house.get(&file).await;
    assert!(got.text.starts_with("%PDF"));
    let header = got.headers["content-disposition"].to_str().unwrap();
    assert_eq!(header, "attachment; filename=\"ferryman.pdf\"");
    let open = house.get(&format!("{file}?open=yes")).await;
    assert!(open.headers.get("content-disposition").is_none());
    assert_eq!(open.headers["content-type"], "application/pdf");

    assert!(!shown(&made).contains("earlier state"));
    house.set("chart.knee.value", "46 cm").await;
    let stale = shown(&standing(&house, "papers", "").await);
    assert!(
        stale.contains("Made of an earlier state") && stale.contains("knee"),
        "{stale}"
    );
    // What was made is still there, as it was.
    assert_eq!(house.get(&file).await.text, got.text);
}

#[tokio::test]
async fn a_third_job_waits_for_its_turn_and_each_is_cancelled() {
    let house = House::new();
    house
        .post("cutting/start", json!({ "seconds": "3000" }))
        .await;
    until(&house, "cutting", |now| shown(now).contains("So far")).await;
    house.post("papers/patterns", json!({ "kind": "a4" })).await;
    until(&house, "papers", |now| shown(now).contains("of 27 sizes")).await;
    house.post("papers/pack", json!({})).await;
    let waits = standing(&house, "papers", "").await;
    assert!(
        fragment(&waits, "pack-work").contains("as soon as there is room"),
        "{waits}"
    );

    // Whoever waits can be cancelled, and begins when somebody else is.
    house.post("papers/cancel-pack", json!({})).await;
    until(&house, "papers", |now| {
        fragment(now, "pack-work").contains("was cancelled")
    })
    .await;
    house.post("papers/pack", json!({})).await;
    let twice = house.post("papers/pack", json!({})).await;
    assert!(
        problems(&twice).contains("cancel that one first"),
        "{twice}"
    );
    house.post("papers/cancel-patterns", json!({})).await;
    until(&house, "papers", |now| {
        fragment(now, "pack-work").contains("Sewing size")
    })
    .await;
    house.post("papers/cancel-pack", json!({})).await;
    let ended = until(&house, "papers", is_over).await;
    assert!(fragment(&ended, "pack-work").contains("was cancelled"));
    assert!(fragment(&ended, "patterns-work").contains("were cancelled"));
    house.post("cutting/cancel", json!({})).await;
    until(&house, "cutting", is_over).await;
}

#[tokio::test]
async fn pattern_files_of_chosen_sizes_are_made_and_taken_away() {
    let house = House::new();
    let asked = json!({ "kind": "hpgl", "sizes": "34x32 32x32", "width": "100 cm" });
    house.post("papers/patterns", asked).await;
    let made = until(&house, "papers", is_over).await;
    assert!(fragment(&made, "patterns-work").contains("2 files"));
    let file = house
        .get(&format!("{STYLE}/papers/file/ferryman-34x32.hpgl"))
        .await;
    assert_eq!(file.status, StatusCode::OK);
    assert!(file.text.starts_with("IN;"), "{}", &file.text[..40]);
    for wrong in [
        "ferryman-30x30.hpgl",
        "ferryman.pdf",
        "..%2F..%2Fstyle.toml",
    ] {
        let got = house.get(&format!("{STYLE}/papers/file/{wrong}")).await;
        assert_eq!(got.status, StatusCode::NOT_FOUND, "{wrong}");
    }
    // A roll too narrow for the panels is refused by the work itself, in words.
    let narrow = json!({ "kind": "roll", "sizes": "32x32", "width": "20 cm" });
    house.post("papers/patterns", narrow).await;
    let failed = until(&house, "papers", is_over).await;
    assert!(
        shown(&failed).contains("take wider paper"),
        "{}",
        shown(&failed)
    );
}

#[tokio::test]
async fn papers_that_make_no_sense_are_refused_in_words_and_nothing_begins() {
    let house = House::new();
    for (action, words, said) in [
        ("pack", json!({ "size": "99x99" }), "not made in size 99x99"),
        ("pack", json!({ "size": "<b>" }), "is not a size"),
        ("pack", json!({ "date": "tomorrow" }), "year, month, day"),
        (
            "patterns",
            json!({ "kind": "exe" }),
            "the kinds of files are",
        ),
        (
            "patterns",
            json!({ "kind": "roll", "width": "1 km" }),
            "from 20 cm to 5 m",
        ),
        (
            "patterns",
            json!({ "kind": "dxf", "sizes": "1x1" }),
            "not made in size 1x1",
        ),
    ] {
        let answer = house.post(&format!("papers/{action}"), words.clone()).await;
        assert!(
            problems(&answer).to_lowercase().contains(said),
            "{words}: {answer}"
        );
        assert_eq!(answer["running"], json!(false), "{words}");
    }
}
