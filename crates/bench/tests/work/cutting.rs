use std::fs;

use axum::http::StatusCode;
use serde_json::json;

use super::{is_over, problems, shown, standing, until};
use crate::house::{House, STYLE, between, fragment};

#[tokio::test]
async fn a_search_is_told_of_refused_twice_and_cancelled_with_what_it_found() {
    let house = House::new();
    let empty = house.get(&format!("{STYLE}/cutting")).await.text;
    assert!(empty.contains("No lay yet") && empty.contains("19 pieces wait"));
    let begun = house
        .post("cutting/start", json!({ "seconds": "3000" }))
        .await;
    assert_eq!(begun["running"], json!(true), "{begun}");
    let told = until(&house, "cutting", |now| shown(now).contains("places tried")).await;
    let page = shown(&told);
    assert!(page.contains("left of 50 min 0 s") && page.contains("So far"));
    let drawn = fragment(&told, "drawing");
    assert!(drawn.contains(" data-part=\"cut:0\"") && !drawn.contains("as drawn\""));
    assert!(drawn.contains("&quot;cut:0&quot;:&quot;Front, 32x32&quot;"));

    let again = house.post("cutting/start", json!({ "seconds": "1" })).await;
    assert!(
        problems(&again).contains("cancel that search first"),
        "{again}"
    );

    house.post("cutting/cancel", json!({})).await;
    let ended = until(&house, "cutting", is_over).await;
    assert!(
        shown(&ended).contains("cancelled after"),
        "{}",
        shown(&ended)
    );
    // What a page has already is not sent again.
    let version = between(&shown(&ended), "data-version=\"", "\"").replace(' ', "%20");
    let once_more = standing(&house, "cutting", &format!("seen={version}")).await;
    assert!(!shown(&once_more).contains("<svg"));

    // Another bench over the same collection shows it without asking.
    assert_eq!(
        fs::read_dir(house.collection().join("lays"))
            .unwrap()
            .count(),
        2
    );
    let restarted = House::over(&house.collection());
    let kept = restarted.get(&format!("{STYLE}/cutting")).await.text;
    assert!(kept.contains("Kept in the collection") && kept.contains("data-part=\"cut:"));
}

#[tokio::test]
async fn a_lay_is_found_taken_away_and_known_to_be_of_an_earlier_state() {
    let house = House::new();
    let asked = json!({ "seconds": "1", "cloth": "bargeman-drill", "pairs": "32x32=1 34x32=2" });
    house.post("cutting/start", asked).await;
    until(&house, "cutting", is_over).await;
    let query = "cloth=bargeman-drill&pairs=32x32%3D1%2034x32%3D2";
    let found = standing(&house, "cutting", query).await;
    let page = shown(&found);
    assert!(
        page.contains("6 pieces of 1 pair 32x32, 2 pairs 34x32"),
        "{page}"
    );
    assert!(page.contains("Cloth a pair") && page.contains("No lay is shorter than"));

    // Whoever comes back to the room finds it as it was left.
    let back = house.get(&format!("{STYLE}/cutting")).await.text;
    assert!(back.contains("6 pieces of 1 pair 32x32, 2 pairs 34x32"));
    assert!(back.contains("data-pairs=\"34x32\" aria-label=\"Pairs of 34x32\" value=\"2\""));

    let files = format!("{STYLE}/cutting/file/ferryman-bargeman-drill-3-pairs");
    for (ending, begins) in [("dxf", "  0\nSECTION"), ("svg", "<svg"), ("pdf", "%PDF")] {
        let got = house.get(&format!("{files}.{ending}?{query}")).await;
        assert_eq!(got.status, StatusCode::OK);
        assert!(
            got.text.trim_start_matches('0').contains(begins.trim()),
            "{ending}"
        );
        let header = got.headers["content-disposition"].to_str().unwrap();
        let name = format!("attachment; filename=\"ferryman-bargeman-drill-3-pairs.{ending}\"");
        assert_eq!(header, name);
    }
    for wrong in [
        "ferryman-bargeman-drill-3-pairs.exe",
        "other.dxf",
        "..%2Fstyle.toml",
    ] {
        let got = house
            .get(&format!("{STYLE}/cutting/file/{wrong}?{query}"))
            .await;
        assert_eq!(got.status, StatusCode::NOT_FOUND, "{wrong}");
    }

    house.set("pockets.bag.depth", "30 cm").await;
    let stale = shown(&standing(&house, "cutting", query).await);
    assert!(
        stale.contains("of an earlier state of the style"),
        "{stale}"
    );
    assert!(stale.contains("30.0 cm"), "{stale}");
}

#[tokio::test]
async fn what_makes_no_sense_is_refused_in_words_and_nothing_begins() {
    let house = House::new();
    for (words, said) in [
        (
            json!({ "pairs": "32x32=1000000000" }),
            "whole number up to 24",
        ),
        (
            json!({ "pairs": "32x32=20 34x32=20" }),
            "40 pairs are too many",
        ),
        (json!({ "pairs": "99x99=1" }), "is not made in size 99x99"),
        (json!({ "pairs": "<script>" }), "write 32x32=2"),
        (json!({ "seconds": "1000000000" }), "from 1 to 3600"),
        (json!({ "seconds": "-1" }), "from 1 to 3600"),
        (json!({ "cloth": "no-such" }), "no cloth named no-such"),
        (json!({ "gap": "3 km" }), "from nothing to 5.0 cm"),
        (json!({ "gap": "-2 mm" }), "from nothing to 5.0 cm"),
        (json!({ "ends": "NaN cm" }), "from nothing to 50.0 cm"),
        (json!({ "seed": "chance" }), "a whole number"),
    ] {
        let answer = house.post("cutting/start", words.clone()).await;
        assert!(
            problems(&answer).to_lowercase().contains(said),
            "{words}: {answer}"
        );
        assert_eq!(answer["running"], json!(false), "{words}");
        assert_eq!(answer["fragments"], json!([]), "{words}");
    }
    let address = format!("{STYLE}/cutting?cloth=%22%3E%3Cscript%3E&pairs=%3Cb%3E&seconds=x");
    let page = house.get(&address).await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(!page.text.contains("<script>") && !page.text.contains("<b>"));
}

#[tokio::test]
async fn the_pieces_say_their_allowances_and_show_every_kind_of_corner() {
    let house = House::new();
    let page = house
        .get(&format!("{STYLE}/cutting/pieces?size=34x30"))
        .await
        .text;
    assert!(page.contains("Pieces of size 34x30"));
    assert!(page.contains("29.1 mm hem"));
    assert!(page.contains("Corners") && page.contains("data-layer=\"folded\""));
    for by in ["waist", "length"] {
        let nests = house
            .get(&format!("{STYLE}/cutting/nests.svg?by={by}"))
            .await;
        assert_eq!(nests.status, StatusCode::OK);
        assert!(nests.text.starts_with("<svg"));
    }
    let other = house
        .get(&format!("{STYLE}/cutting/nests.svg?by=moon"))
        .await;
    assert_eq!(other.status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn an_order_is_planned_and_one_that_cannot_be_read_says_where() {
    let house = House::new();
    let address = format!("{STYLE}/cutting/orders");
    let page = house.get(&address).await.text;
    assert!(page.contains("Spring run") && page.contains("62 pairs"));
    assert!(page.contains("Tideline loomstate selvedge") && page.contains("to buy"));
    let file = house.collection().join("orders/spring.toml");
    let text = fs::read_to_string(&file).unwrap();
    fs::write(&file, text.replace("[limits]", "[limit]")).unwrap();
    let broken = house.get(&address).await.text;
    assert!(broken.contains("spring.toml:12:2"), "{broken}");
    fs::remove_file(&file).unwrap();
    let none = house.get(&address).await.text;
    assert!(none.contains("No order names this style yet"));
}

#[tokio::test]
async fn other_units_are_shown_on_the_same_page() {
    let house = House::new();
    for leaf in ["cutting", "cutting/pieces", "cutting/orders", "papers"] {
        let page = house.get(&format!("{STYLE}/{leaf}")).await.text;
        let inches = page.split("href=\"").find(|link| link.contains("units=in"));
        let inches = between(inches.unwrap(), "/", "\"").replace("&amp;", "&");
        assert!(
            inches.starts_with(&format!("style/ferryman/{leaf}?")),
            "{inches}"
        );
        let page = house.get(&format!("/{inches}")).await;
        assert_eq!(page.status, StatusCode::OK);
    }
}
