//! What lies beside and over the drawing: seams with their sections, yarn, sewing order, findings and plates.

use axum::http::StatusCode;
use serde_json::{Value, json};

use crate::house::{House, STYLE, between, drawing as picture, fragment};

async fn answer(house: &House, query: &str) -> Value {
    let got = house.get(&format!("{STYLE}/fragments?{query}")).await;
    assert_eq!(got.status, StatusCode::OK, "{}", got.text);
    serde_json::from_str(&got.text).unwrap()
}

#[tokio::test]
async fn a_seam_that_is_open_shows_its_section_and_what_is_said_of_it() {
    let house = House::new();
    let open = answer(&house, "panel=construction&part=seam:inseam").await;
    let html = fragment(&open, "construction");
    assert_eq!(html.matches("<figure").count(), 1);
    for words in ["ISO 4916 2.04.06", "feed-off-the-arm", "front over back"] {
        assert!(html.contains(words), "{words}");
    }
    let closed = answer(&house, "panel=construction").await;
    assert!(!fragment(&closed, "construction").contains("<figure"));
    let edits =
        json!([{ "edit": "set", "path": "seams.inseam.construction", "value": "overlocked" }]);
    let body = json!({ "revision": open["revision"], "edits": edits });
    let changed = house
        .post("edit?panel=construction&part=seam:inseam", body)
        .await;
    assert_ne!(fragment(&changed, "construction"), html);
    assert!(!fragment(&changed, "construction").contains("2.04.06"));
}

#[tokio::test]
async fn a_list_of_constructions_holds_the_suitable_ones_and_the_others_have_a_reason() {
    let house = House::new();
    let html = answer(&house, "panel=construction").await;
    let html = fragment(&html, "construction");
    let seam = between(html, "id=\"seam-hem\"", "id=\"seam-mouth\"");
    let list = between(seam, "data-path=\"seams.hem.construction\"", "</select>");
    assert_eq!(list.matches("<option").count(), 2);
    assert!(!list.contains("lap-felled"));
    let why = between(seam, "<dt>lap-felled</dt>", "</dd>");
    assert!(
        why.contains("It joins two edges flat, and the leg is turned up here"),
        "{why}"
    );
}

#[tokio::test]
async fn the_yarn_panel_has_every_yarn_its_metres_and_its_contrast() {
    let house = House::new();
    let first = answer(&house, "panel=yarn&pairs=300").await;
    let html = fragment(&first, "yarn");
    for words in [
        "On the needles",
        "tex 105 ochre",
        "ΔE ",
        "Chalk 40",
        "value=\"300\"",
        "geometric formula",
    ] {
        assert!(html.contains(words), "{words}");
    }
    // Nothing is counted for a panel that is not open.
    let closed = answer(&house, "panel=fit").await;
    assert!(fragment(&closed, "yarn").len() < 60);
    let sheet = answer(&house, "panel=yarn&plate=yarn-plan").await;
    assert!(picture(&sheet).contains("Needle yarns"));
}

#[tokio::test]
async fn what_a_change_leads_to_is_told() {
    let house = House::new();
    let changed = house.set("seams.inseam.rows[0].density", "12 /in").await;
    let told = fragment(&changed, "history");
    assert!(
        told.contains("Yarn +") && told.contains(" m a pair"),
        "{told}"
    );
    let changed = house.set("seams.inseam.construction", "overlocked").await;
    let told = fragment(&changed, "history");
    assert!(told.contains("inseam allowance front"), "{told}");
    let changed = house.set("style.summary", "Other words.").await;
    assert!(!fragment(&changed, "history").contains("class=\"followed\""));
}

#[tokio::test]
async fn findings_lie_on_the_drawing_while_they_are_looked_at() {
    let house = House::new();
    house.set("fly.buttons", "12").await;
    let mut marked = Vec::new();
    for view in ["front", "back"] {
        let shown = answer(&house, &format!("panel=findings&view={view}")).await;
        let html = fragment(&shown, "drawing");
        let list = fragment(&shown, "findings");
        for mark in html.split("data-mark=\"").skip(1) {
            let number = mark.split('"').next().unwrap();
            assert!(list.contains(&format!("id=\"finding-{number}\"")));
            assert!(list.contains(&format!("data-show=\"{number}\"")));
            marked.push(number.to_owned());
        }
        // The drawing itself is the same with and without its numbers.
        let plain = answer(&house, &format!("panel=fit&view={view}")).await;
        let svg = |html: &str| between(html, "<svg", "</svg>").to_owned();
        assert!(svg(html) == svg(fragment(&plain, "drawing")), "{view}");
        assert!(!fragment(&plain, "drawing").contains("data-mark"));
    }
    assert!(marked.len() >= 4, "{marked:?}");
}

#[tokio::test]
async fn a_plate_takes_the_place_of_the_view() {
    let house = House::new();
    let pair = answer(&house, "").await;
    let list = between(fragment(&pair, "turn"), "id=\"plate\"", "</select>").to_owned();
    let mut seen = vec![picture(&pair).to_owned()];
    for key in list.split("value=\"").skip(2) {
        let key = key.split('"').next().unwrap();
        let plate = answer(&house, &format!("plate={key}")).await;
        let shown = picture(&plate).to_owned();
        assert!(!seen.contains(&shown), "{key}");
        seen.push(shown);
    }
    // The pair, the yarn plan, and every plate that the drawings have of this style.
    let loaded = style::load(&house.file()).unwrap();
    let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
    let plates = drawing::plates(&garment, words::Words::english());
    assert_eq!(seen.len(), plates.len() + 2);
    for plate in plates {
        assert!(
            list.contains(&format!("value=\"{}\"", plate.id.code())),
            "{}",
            plate.id.code()
        );
    }
    let revision = house.revision().await;
    let edits = json!([{ "edit": "remove", "path": "pockets.extra" }]);
    let body = json!({ "revision": revision, "edits": edits });
    let without = house.post("edit?plate=extra-pocket", body).await;
    assert!(fragment(&without, "drawing").contains("There is no plate of the extra pocket"));
    house.step("undo").await;
    let unknown = answer(&house, "plate=%3Cscript%3E").await;
    assert!(picture(&unknown) == seen[0]);
}

#[tokio::test]
async fn the_sewing_order_follows_the_style() {
    let house = House::new();
    let first = answer(&house, "panel=order").await;
    let html = fragment(&first, "order").to_owned();
    for words in [
        "Feed-off-the-arm",
        "Rope 105",
        "data-part=\"seam:inseam\"",
        "<h3>Hems</h3>",
    ] {
        assert!(html.contains(words), "{words}");
    }
    let edits =
        json!([{ "edit": "set", "path": "seams.inseam.construction", "value": "overlocked" }]);
    let body = json!({ "revision": first["revision"], "edits": edits });
    let changed = house.post("edit?panel=order", body).await;
    assert_ne!(fragment(&changed, "order"), html);
    let closed = answer(&house, "panel=fit").await;
    assert!(fragment(&closed, "order").len() < 60);
}

/// The part of a text from the first of two marks to the second.
fn part_of(html: &str, from: &str, to: &str) -> String {
    between(html, from, to).to_owned()
}

#[tokio::test]
async fn another_construction_of_the_inseam_is_seen_everywhere_at_once() {
    let house = House::new();
    let query = |panel: &str| format!("panel={panel}&part=seam:inseam&view=front&face=inside");
    let look = async |panel: &str| answer(&house, &query(panel)).await;
    let seen = async || {
        let seams = look("construction").await;
        let yarn = look("yarn").await;
        let order = look("order").await;
        let seams = fragment(&seams, "construction").to_owned();
        [
            part_of(&seams, "<figure", "</figure>"),
            part_of(&seams, "<dt>Allowances</dt>", "</dd>"),
            picture(&yarn).to_owned(),
            part_of(fragment(&yarn, "yarn"), "<tfoot", "</tfoot>"),
            fragment(&order, "order").to_owned(),
        ]
    };
    let felled = seen().await;
    let cut = |house: &House| {
        let loaded = style::load(&house.file()).unwrap();
        sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base).cut
    };
    let cut_felled = cut(&house);
    let changed = house.set("seams.inseam.construction", "overlocked").await;
    assert_eq!(changed["outcome"], "done");
    let overlocked = seen().await;
    let names = [
        "section",
        "allowances",
        "inside view",
        "yarn total",
        "sewing order",
    ];
    for ((before, after), name) in felled.iter().zip(&overlocked).zip(names) {
        assert!(before != after, "{name}");
    }
    assert!(cut(&house) != cut_felled);
    house.step("undo").await;
    assert!(seen().await == felled);
    assert!(cut(&house) == cut_felled);
}

const PANELS: [&str; 6] = [
    "fit",
    "details",
    "construction",
    "yarn",
    "order",
    "findings",
];

#[tokio::test]
async fn words_of_the_files_are_only_words_in_every_panel() {
    let house = House::new();
    let hostile = |text: &str| {
        text.lines()
            .map(|line| match line.split_once(" = \"") {
                Some((
                    key @ ("name" | "text" | "place" | "material" | "colour_name" | "construction"),
                    _,
                )) if !line.contains("construction = \"") || text.contains("[cloths.") => {
                    format!("{key} = \"<b>{key}\\\" onfocus=x\"")
                }
                _ => line.to_owned(),
            })
            .collect::<Vec<_>>()
            .join("\n")
    };
    for file in ["cloths.toml", "yarns.toml", "trims.toml"] {
        let path = house.collection().join(file);
        std::fs::write(&path, hostile(&std::fs::read_to_string(&path).unwrap())).unwrap();
    }
    std::fs::write(house.file(), hostile(&house.text())).unwrap();
    style::load(&house.file()).unwrap();
    let mut escaped = 0;
    for panel in PANELS {
        for plate in ["", "labels-on-band", "patch", "yarn-plan", "coin-pocket"] {
            let got = house
                .get(&format!(
                    "{STYLE}?panel={panel}&part=seam:inseam&plate={plate}"
                ))
                .await;
            assert_eq!(got.status, StatusCode::OK);
            assert!(!got.text.contains("<b>"), "{panel} {plate}");
            assert!(!got.text.contains("\" onfocus"), "{panel} {plate}");
            escaped += got.text.matches("&lt;b&gt;").count();
        }
    }
    assert!(escaped > 1000, "{escaped}");
}

#[tokio::test]
async fn everything_that_can_be_changed_or_opened_is_named_and_reached_by_key() {
    let house = House::new();
    for panel in PANELS {
        let html = house
            .get(&format!("{STYLE}?panel={panel}&part=seam:inseam"))
            .await
            .text;
        let mut inside_label = 0_usize;
        let mut found = 0;
        for piece in html.split('<').skip(1) {
            let (tag, text) = piece.split_once('>').unwrap_or((piece, ""));
            inside_label += usize::from(tag.starts_with("label"));
            inside_label -= usize::from(tag.starts_with("/label"));
            let named = tag.contains("aria-label=\"") || inside_label > 0;
            // What is hidden is nobody's to change.
            let hidden = tag.contains("type=\"hidden\"");
            if (tag.starts_with("input") && !hidden) || tag.starts_with("select") {
                assert!(named, "{panel}: {tag}");
                found += 1;
            }
            if tag.starts_with("button") || tag.starts_with("a ") || tag == "a" {
                assert!(named || !text.trim().is_empty(), "{panel}: {tag}");
                assert!(
                    tag.starts_with("button") || tag.contains("href=\""),
                    "{panel}: {tag}"
                );
            }
            // What only a script makes a button of is in the order of the keys.
            if tag.contains("role=\"button\"") {
                assert!(tag.contains("tabindex=\"0\"") && named, "{panel}: {tag}");
            }
            assert!(!tag.contains("tabindex=\"1"), "{tag}");
        }
        assert!(found > 100, "{panel}: {found}");
    }
}

/// What the other side of the wash is expected to measure stands under a measure's value, and nothing where nothing shrinks.
#[tokio::test]
async fn the_chart_shows_each_measure_on_the_other_side_of_the_wash() {
    let house = House::new();
    let shown = answer(&house, "panel=fit").await;
    let inseam = |html: &str| between(html, "id=\"measure-inseam\"", "</tbody>").to_owned();
    let html = fragment(&shown, "fit");
    let before = "<span class=\"unseen\">before the wash </span>";
    assert!(html.contains("<small>before the wash</small>"), "{html}");
    let sewn = inseam(html);
    let sewn = between(&sewn, before, "</small>");
    let raw = house.set("wash.finish", "raw").await;
    let html = fragment(&raw, "fit");
    assert!(!html.contains("before the wash</small>"));
    assert!(html.contains("<small>once washed</small>"));
    let washed = inseam(html);
    let washed = between(
        &washed,
        "<span class=\"unseen\">once washed </span>",
        "</small>",
    );
    let cm = |words: &str| words.trim_end_matches(" cm").parse::<f64>().unwrap();
    let charted = cm("81.3 cm");
    assert!(
        cm(washed) < charted && charted < cm(sewn),
        "{washed} {charted} {sewn}"
    );
}
