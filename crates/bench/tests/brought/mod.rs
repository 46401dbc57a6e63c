//! What is brought in through a browser: drawings and patterns, whole or not at all, and nothing of a hostile file.

use std::fs;
use std::path::Path;

use axum::body::Body;
use axum::http::{Request, StatusCode};
use serde_json::{Value, json};

use crate::house::{House, KEY, ORIGIN, PORT, STYLE, between, fragment, names_in, post};

const SQUARE: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\"><!-- secret --><title>secret</title>\
                      <path class=\"secret\" d=\"M 20 60 L 130 60 L 130 90\"/></svg>";

fn sent(address: &str, body: impl Into<Body>) -> Request<Body> {
    Request::post(address)
        .header("host", "127.0.0.1:7461")
        .header("origin", ORIGIN)
        .header("sec-fetch-site", "same-origin")
        .header("cookie", format!("bench-{PORT}={KEY}"))
        .body(body.into())
        .unwrap()
}

async fn drawing(house: &House, name: &str, body: &str) -> (StatusCode, Value) {
    let address = format!("{STYLE}/art?file={name}");
    let got = house.send(sent(&address, body.to_owned())).await;
    (got.status, serde_json::from_str(&got.text).unwrap())
}

fn art(house: &House) -> Vec<String> {
    names_in(&house.file().with_file_name("art"))
}

#[tokio::test]
async fn a_drawing_is_kept_as_it_was_understood_and_can_be_chosen() {
    let house = House::new();
    let (status, told) = drawing(&house, "My%20Stitching.SVG", SQUARE).await;
    assert_eq!(status, StatusCode::OK, "{told}");
    assert_eq!(told["to"], "art/my-stitching.svg");
    let kept = house.file().with_file_name("art/my-stitching.svg");
    let text = fs::read_to_string(&kept).unwrap();
    assert!(!text.contains("secret"), "{text}");
    assert!(text.contains("M 20 60 L 130 60 L 130 90"), "{text}");
    // The same again is the same file; another of the same name takes a name of its own.
    let (_, again) = drawing(&house, "My%20Stitching.SVG", SQUARE).await;
    assert_eq!(again["to"], "art/my-stitching.svg");
    let other = SQUARE.replace("130 90", "130 95");
    let (_, other) = drawing(&house, "my-stitching.svg", &other).await;
    assert_eq!(other["to"], "art/my-stitching-2.svg");
    assert_eq!(fs::read_to_string(&kept).unwrap(), text);
    let answer = house
        .set("pockets.back.left.art", "art/my-stitching.svg")
        .await;
    assert_eq!(answer["outcome"], "done", "{answer:.300}");
    assert!(house.text().contains("art = \"art/my-stitching.svg\""));
}

#[tokio::test]
async fn a_name_never_leads_out_or_over_another_file() {
    let house = House::new();
    let before = fs::read(house.file()).unwrap();
    for (name, kept) in [
        ("..%2f..%2fstyle.toml", "art/style.svg"),
        ("%2fetc%2fpasswd", "art/passwd.svg"),
        ("C%3a%5cx%5cheron.svg", "art/heron.svg"),
        (".svg", "art/drawing.svg"),
        ("%00%0a.svg", "art/drawing.svg"),
        ("", "art/the-drawing.svg"),
        ("bight.svg", "art/bight-2.svg"),
    ] {
        let (status, told) = drawing(&house, name, SQUARE).await;
        assert_eq!(status, StatusCode::OK, "{name}: {told}");
        assert_eq!(told["to"], kept, "{name}");
    }
    assert_eq!(fs::read(house.file()).unwrap(), before);
    assert!(art(&house).iter().all(|name| name.ends_with(".svg")));
}

#[tokio::test]
async fn what_could_do_something_is_refused_with_its_place() {
    let house = House::new();
    let before = art(&house);
    let svg =
        |inside: &str| format!("<svg xmlns=\"http://www.w3.org/2000/svg\">\n{inside}\n</svg>");
    let line = "<path d=\"M0 0 L9 9\"/>";
    let bomb = "<!DOCTYPE svg [<!ENTITY a \"aaaaaaaaaa\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;\"><!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;\">]>";
    for (body, words) in [
        (
            svg("<script>alert(1)</script>"),
            "x.svg:2:1: <script> cannot be sewn",
        ),
        (
            svg(&format!("<g onload=\"alert(1)\">{line}</g>")),
            "x.svg:2:4: `onload` would run a script",
        ),
        (
            svg("<image href=\"http://elsewhere/x.png\"/>"),
            "x.svg:2:1: <image> cannot be sewn",
        ),
        (
            svg("<use href=\"file:///etc/passwd#a\"/>"),
            "x.svg:2:1: <use> cannot be sewn",
        ),
        (
            svg("<foreignObject/>"),
            "x.svg:2:1: <foreignObject> cannot be sewn",
        ),
        (
            svg("<style>@import url(http://elsewhere)</style>"),
            "x.svg:2:1: the style sheet leads to something outside the drawing",
        ),
        (
            svg("<path fill=\"url(http://elsewhere)\" d=\"M0 0 L9 9\"/>"),
            "leads to something outside the paths",
        ),
        (
            format!("{bomb}{}", svg("&c;")),
            "x.svg:1:1: the document type declares something of its own",
        ),
        (svg(&"<g>".repeat(9000)), "deep in each other"),
        (svg(""), "the drawing has no lines"),
        ("not a drawing".to_owned(), "this is not an SVG drawing"),
        ("x".repeat(300_000), "at most 262144 are read"),
    ] {
        let (status, told) = drawing(&house, "x.svg", &body).await;
        assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{words}");
        let problems = told["problems"].to_string();
        assert!(problems.contains(words), "{words}: {problems:.300}");
    }
    let got = house
        .send(sent(
            &format!("{STYLE}/art?file=x.svg"),
            vec![0xff, 0xfe, 0],
        ))
        .await;
    assert_eq!(got.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert_eq!(art(&house), before);
}

fn fixture(name: &str) -> Vec<u8> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../suite/tests/data");
    fs::read(folder.join(name)).unwrap()
}

const PATTERN: &str = "file=harbour.dxf&size=32x32&name=Harbour&code=&figure=men&fit=straight";

#[tokio::test]
async fn a_pattern_is_looked_at_and_made_into_a_style() {
    let house = House::new();
    assert_eq!(house.get("/bring").await.status, StatusCode::OK);
    let before = styles(&house);
    let file = fixture("harbour.dxf");
    let look = sent(&format!("/bring/look?{PATTERN}"), file.clone());
    let seen = house.send(look).await.text;
    for words in [
        "3 pieces in 32x32",
        "FRENTE",
        "front, by its name",
        "back, by its name",
        "yoke, by its name",
        "<svg",
    ] {
        assert!(seen.contains(words), "{words} in {seen:.2000}");
    }
    for inline in [" style=\"", "<script", " onclick"] {
        assert!(!seen.contains(inline), "{inline}");
    }
    // Looking makes nothing.
    assert_eq!(styles(&house), before);
    let make = sent(&format!("/bring/make?{PATTERN}"), file.clone());
    let told: Value = serde_json::from_str(&house.send(make).await.text).unwrap();
    assert!(
        told["to"].as_str().unwrap().starts_with("/style/harbour?"),
        "{told}"
    );
    let folder = house.collection().join("styles/harbour");
    let loaded = style::load(&folder).unwrap();
    assert_eq!(
        (
            &loaded.style.sizes.waists[..],
            &loaded.style.sizes.lengths[..]
        ),
        (&[style::Tag::inches(32)][..], &[style::Tag::inches(32)][..])
    );
    assert!(loaded.style.pattern.is_some());
    assert_eq!(fs::read(folder.join("pattern/harbour.dxf")).unwrap(), file);
    // The chart says what the pattern measures; how it began can be gone back to.
    let size = loaded.style.sizes.base;
    let garment = sewing::make(&loaded.style, &loaded.collection, size);
    let mut apart = garment.findings.iter();
    assert_eq!(apart.find(|f| f.code == "pattern::measure"), None);
    assert!(
        loaded.text.contains("105.69 cm"),
        "the seat is not the pattern's"
    );
    assert_eq!(style::list_revisions(&folder).unwrap().len(), 1);
    let opened = house.get(told["to"].as_str().unwrap()).await;
    assert_eq!(opened.status, StatusCode::OK);
    // The same name again makes nothing.
    let make = sent(&format!("/bring/make?{PATTERN}"), file);
    let again = house.send(make).await;
    assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(again.text.contains("is there already"), "{}", again.text);
}

#[tokio::test]
async fn a_piece_can_be_said_to_be_another() {
    let house = House::new();
    let look = |more: &str| {
        sent(
            &format!("/bring/look?{PATTERN}&{more}"),
            fixture("harbour.dxf"),
        )
    };
    let seen = house.send(look("piece=front%3DCOSTAS")).await.text;
    assert!(
        seen.contains("<option value=\"front\" selected"),
        "{seen:.2000}"
    );
    let seen = house.send(look("piece=front%3D%3Cb%3E")).await.text;
    assert!(
        seen.contains("no piece named &quot;&lt;b&gt;&quot;"),
        "{seen:.600}"
    );
    let seen = house.send(look("piece=elbow%3DPALA")).await.text;
    assert!(
        seen.contains("is no piece that can be brought"),
        "{seen:.600}"
    );
    let seen = house.send(look("corners=yoke%3D1,2,nine,4")).await.text;
    assert!(seen.contains("problem"), "{seen:.600}");
}

#[tokio::test]
async fn a_pattern_that_cannot_be_brought_says_why_and_leaves_nothing() {
    let house = House::new();
    let before = styles(&house);
    let sized = |name: &str| format!("file={name}&size=32x32&name=Heron&code=&figure=men&fit=slim");
    for (fields, bytes, words) in [
        (sized("x.pdf"), b"%PDF".to_vec(), "no kind of pattern file"),
        (sized("x.dxf"), b"not a drawing".to_vec(), "problem"),
        (sized("x.svg"), b"<svg><script/></svg>".to_vec(), "problem"),
        (sized("x.dxf"), Vec::new(), "Choose a file first"),
        (
            PATTERN.replace("32x32", "large"),
            fixture("harbour.dxf"),
            "is not a size",
        ),
        (
            PATTERN.replace("size=32x32", "size="),
            fixture("harbour.dxf"),
            "under Size:",
        ),
        (
            format!("{PATTERN}&allowance=wide"),
            fixture("harbour.dxf"),
            "llowance",
        ),
        (
            PATTERN.replace("figure=men", "figure=geese"),
            fixture("harbour.dxf"),
            "he figure can be",
        ),
    ] {
        let look = house
            .send(sent(&format!("/bring/look?{fields}"), bytes.clone()))
            .await;
        assert_eq!(look.status, StatusCode::OK);
        assert!(look.text.contains(words), "{words}: {:.600}", look.text);
        let make = house
            .send(sent(&format!("/bring/make?{fields}"), bytes))
            .await;
        assert_eq!(
            make.status,
            StatusCode::UNPROCESSABLE_ENTITY,
            "{words}: {:.300}",
            make.text
        );
    }
    let named = PATTERN.replace("name=Harbour", "name=..%2f..%2fup");
    let make = house
        .send(sent(
            &format!("/bring/make?{named}"),
            fixture("harbour.dxf"),
        ))
        .await;
    assert_eq!(make.status, StatusCode::OK, "{}", make.text);
    let mut now = styles(&house);
    now.retain(|name| name != "up");
    assert_eq!(now, before);
}

fn styles(house: &House) -> Vec<String> {
    let entries = fs::read_dir(house.collection().join("styles")).unwrap();
    let mut names: Vec<String> = entries
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

/// What the page shows of the file of cloths.
async fn held(house: &House) -> String {
    let page = house.get(&format!("{STYLE}?panel=cloth")).await.text;
    between(&page, "data-held=\"", "\"").to_owned()
}

async fn cloths(house: &House, held: &str, edits: Value) -> Value {
    let body = json!({ "held": held, "edits": edits });
    house.post("cloths?panel=cloth", body).await
}

#[tokio::test]
async fn a_cloth_is_changed_and_the_pair_follows() {
    let house = House::new();
    let first = held(&house).await;
    let path = "cloths.tideline-14.weight";
    let edits = json!([{ "edit": "set", "path": path, "value": "10 oz/yd2" }]);
    let answer = cloths(&house, &first, edits.clone()).await;
    assert_eq!(answer["outcome"], "done", "{answer:.400}");
    assert_eq!(answer["said"], "tideline-14, weight: 10 oz/yd2");
    assert!(fragment(&answer, "strip").contains("Cloth weight"));
    assert!(fragment(&answer, "cloth").contains("value=\"10 oz/yd2\""));
    let text = fs::read_to_string(house.collection().join("cloths.toml")).unwrap();
    assert!(text.contains("weight = \"10 oz/yd2\"") && text.contains("# loomstate: not preshrunk"));
    // A page that shows what was there before overwrites nothing.
    assert_eq!(
        cloths(&house, &first, edits).await["outcome"],
        "done",
        "it is so already"
    );
    let other = json!([{ "edit": "set", "path": path, "value": "11 oz/yd2" }]);
    let behind = cloths(&house, &first, other).await;
    assert_eq!(behind["outcome"], "behind", "{behind:.400}");
    assert!(
        behind["problems"].to_string().contains("10 oz/yd2"),
        "{behind:.400}"
    );
    // Beside what was changed meanwhile another value of the same file is changed.
    let width = json!([{ "edit": "set", "path": "cloths.tideline-14.width", "value": "79 cm" }]);
    assert_eq!(cloths(&house, &first, width).await["outcome"], "done");
    assert_eq!(house.step("undo").await["outcome"], "done");
    let now = held(&house).await;
    let refused = json!([{ "edit": "set", "path": path, "value": "ten stones" }]);
    let answer = cloths(&house, &now, refused).await;
    assert_eq!(answer["outcome"], "refused", "{answer:.400}");
    let gone = json!([{ "edit": "remove", "path": "cloths.oar-lining" }]);
    let answer = cloths(&house, &now, gone).await;
    assert_eq!(answer["outcome"], "refused");
    assert!(
        answer["problems"].to_string().contains("ferryman"),
        "{answer:.400}"
    );
    // Never another file, whatever the path says.
    let style = json!([{ "edit": "set", "path": "style.name", "value": "Heron" }]);
    assert_eq!(cloths(&house, &now, style).await["outcome"], "refused");
    let undone = house.step("undo?panel=cloth").await;
    assert_eq!(undone["outcome"], "done");
    assert_eq!(
        undone["said"],
        "Undone: cloths.toml: tideline-14, weight: 14 oz/yd2 → 10 oz/yd2"
    );
    assert!(fragment(&undone, "cloth").contains("value=\"14 oz/yd2\""));
    let again = house.step("redo?panel=cloth").await;
    assert_eq!(again["outcome"], "done");
    assert!(fragment(&again, "cloth").contains("value=\"10 oz/yd2\""));
}

#[tokio::test]
async fn a_cloth_is_added_and_compared() {
    let house = House::new();
    let page = house.get(&format!("{STYLE}?panel=cloth")).await.text;
    assert!(page.contains("Add a second shell"));
    let body = json!({ "held": held(&house).await, "name": "Reed <10>", "like": "tideline-14" });
    let got = house
        .send(post(&format!("{STYLE}/cloths/add"), &body))
        .await;
    assert_eq!(got.status, StatusCode::OK, "{}", got.text);
    let edits = json!([
        { "edit": "set", "path": "cloths.reed-10.width", "value": "156 cm" },
        { "edit": "set", "path": "cloths.reed-10.weight", "value": "7 oz/yd2" },
    ]);
    let answer = cloths(&house, &held(&house).await, edits).await;
    let panel = fragment(&answer, "cloth");
    assert!(panel.contains("Reed &lt;10&gt;"), "{panel:.400}");
    let table = panel.find("<table class=\"sums compared\"").unwrap();
    let panel = &panel[table..];
    let row = |name: &str| {
        let row = between(panel, name, "</tr>").to_owned();
        let metres = row
            .split("<td class=\"figure\">")
            .nth(4)
            .unwrap()
            .to_owned();
        metres.split(' ').next().unwrap().parse::<f64>().unwrap()
    };
    let (now, other) = (
        row("</svg>Tideline loomstate selvedge"),
        row("</svg>Reed &lt;10&gt;"),
    );
    assert!(
        (now / other - 2.0).abs() < 0.02,
        "{now} {other} in {panel:.300}"
    );
    // A wash test is worked out at once.
    let test = json!([
        { "along": "warp", "before": "50 cm", "after": "45 cm" },
        { "along": "weft", "before": "50 cm", "after": "49 cm" },
    ]);
    let edits = json!([
        { "edit": "set", "path": "cloth.shell", "value": "reed-10" },
    ]);
    let revision = house.revision().await;
    house
        .post("edit", json!({ "revision": revision, "edits": edits }))
        .await;
    let edits = json!([{ "edit": "set", "path": "cloths.reed-10.wash_test", "value": test }]);
    let answer = cloths(&house, &held(&house).await, edits).await;
    let panel = fragment(&answer, "cloth");
    for words in [
        "<strong>10.0 %</strong>, from 10.0 % to 10.0 %",
        "stated, and cut for: 8.0 %",
    ] {
        assert!(panel.contains(words), "{words}");
    }
    let missing = json!({ "held": held(&house).await, "name": "Heath", "like": "nowhere" });
    let got = house
        .send(post(&format!("{STYLE}/cloths/add"), &missing))
        .await;
    assert_eq!(got.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(got.text.contains("no cloth nowhere"), "{}", got.text);
}
