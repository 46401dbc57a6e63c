//! The bench as a browser meets it: requests to the router, the demo collection in a folder of its own.

#![allow(clippy::unwrap_used)]

mod attacks;
mod begin;
mod brought;
mod drawn;
mod editors;
mod history;
mod house;
mod meeting;
mod panels;
mod work;

use std::fs;
use std::path::Path;

use axum::body::Body;
use axum::http::{Request, StatusCode};
use serde_json::{Value, json};

use house::{House, KEY, ORIGIN, STYLE, between, drawing, fragment, post};

#[tokio::test]
async fn the_collection_lists_its_styles() {
    let house = House::new();
    let got = house.get("/").await;
    assert_eq!(got.status, StatusCode::OK);
    assert!(got.text.contains("Saltmarsh Yard"));
    assert!(got.text.contains("href=\"/style/ferryman?"));
    let address = between(&got.text, "<img src=\"", "\"").replace("&amp;", "&");
    let picture = house.get(&address).await;
    assert_eq!(picture.headers["content-type"], "image/svg+xml");
    assert!(picture.text.starts_with("<svg"));
}

#[tokio::test]
async fn a_style_shows_its_drawing_chart_seams_and_findings() {
    let house = House::new();
    for query in [
        "",
        "?view=back&face=inside&size=38x34&units=in&panel=construction",
        "?view=?&size=1x1",
    ] {
        let got = house.get(&format!("{STYLE}{query}")).await;
        assert_eq!(got.status, StatusCode::OK);
        for part in [
            "id=\"drawing\"",
            "data-part=\"seam:",
            "id=\"fit\"",
            "id=\"seam-inseam\"",
            "id=\"findings\"",
        ] {
            assert!(got.text.contains(part), "{part} with {query}");
        }
        // Nothing that the policy would not let run or look as meant.
        for inline in [" style=\"", "<script>", "<style", " onclick"] {
            assert!(!got.text.contains(inline), "{inline} with {query}");
        }
    }
}

#[tokio::test]
async fn the_four_views_differ() {
    let house = House::new();
    let mut seen = Vec::new();
    for view in ["front", "back"] {
        for face in ["outside", "inside"] {
            let got = house
                .get(&format!("{STYLE}/fragments?view={view}&face={face}"))
                .await;
            let answer: Value = serde_json::from_str(&got.text).unwrap();
            let drawing = drawing(&answer).to_owned();
            assert!(!seen.contains(&drawing), "{view} {face}");
            seen.push(drawing);
        }
    }
}

#[tokio::test]
async fn values_are_shown_in_the_units_asked_for_and_kept_as_written() {
    let house = House::new();
    let cm = house.get(&format!("{STYLE}?units=cm")).await.text;
    let inches = house.get(&format!("{STYLE}?units=in")).await.text;
    let field = |page: &str| between(page, "id=\"f-chart.waist.value\"", ">").to_owned();
    assert!(field(&cm).contains("value=\"85.09 cm\""), "{}", field(&cm));
    assert!(field(&cm).contains("in the file: 33 1/2 in"));
    assert!(field(&inches).contains("value=\"33 1/2 in\""));
}

#[tokio::test]
async fn every_address_in_a_page_leads_somewhere() {
    let house = House::new();
    let page = house.get(STYLE).await.text;
    let mut rest = page.as_str();
    let mut followed = 0;
    while let Some(at) = rest.find("href=\"/").or_else(|| rest.find("src=\"/")) {
        rest = &rest[at..];
        let address = between(rest, "=\"", "\"").replace("&amp;", "&");
        let got = house.get(&address).await;
        assert_eq!(got.status, StatusCode::OK, "{address}");
        followed += 1;
        rest = &rest[6..];
    }
    assert!(followed >= 10, "{followed}");
}

#[tokio::test]
async fn a_page_needs_the_key() {
    let house = House::new();
    let bare = |address: &str| {
        Request::get(address)
            .header("host", "127.0.0.1:7461")
            .body(Body::empty())
            .unwrap()
    };
    for address in [
        "/",
        STYLE,
        "/?key=",
        "/?key=0123456789abcdef0123456789abcdee",
        "/nowhere",
    ] {
        let got = house.send(bare(address)).await;
        assert_eq!(got.status, StatusCode::FORBIDDEN, "{address}");
        assert!(!got.text.contains("Ferryman"));
    }
    let got = house.send(bare(&format!("{STYLE}?key={KEY}"))).await;
    assert_eq!(got.status, StatusCode::OK);
    let cookie = got.headers["set-cookie"].to_str().unwrap();
    for word in ["HttpOnly", "SameSite=Strict", "Path=/"] {
        assert!(cookie.contains(word), "{cookie}");
    }
}

#[tokio::test]
async fn another_host_is_refused() {
    let house = House::new();
    for host in [
        "bench.example",
        "127.0.0.1",
        "127.0.0.1:80",
        "bench.example:7461",
        "127.0.0.1:7461.bench.example",
    ] {
        let request = Request::get(format!("/?key={KEY}")).header("host", host);
        let got = house.send(request.body(Body::empty()).unwrap()).await;
        assert_eq!(got.status, StatusCode::FORBIDDEN, "{host}");
        assert!(!got.headers.contains_key("set-cookie"));
    }
    let none = Request::get(format!("/?key={KEY}"))
        .body(Body::empty())
        .unwrap();
    assert_eq!(house.send(none).await.status, StatusCode::FORBIDDEN);
    let local = Request::get(format!("/?key={KEY}")).header("host", "localhost:7461");
    assert_eq!(
        house.send(local.body(Body::empty()).unwrap()).await.status,
        StatusCode::OK
    );
}

#[tokio::test]
async fn a_change_from_another_page_is_refused() {
    let house = House::new();
    let before = house.text();
    let revision = house.revision().await;
    let edits = json!([{ "edit": "set", "path": "chart.thigh.value", "value": "63 cm" }]);
    let body = json!({ "revision": revision, "edits": edits });
    let cases: [(Option<&str>, Option<&str>); 5] = [
        (Some("http://bench.example"), None),
        (Some("null"), None),
        (Some("http://127.0.0.1:9999"), Some("same-site")),
        (Some(ORIGIN), Some("cross-site")),
        (None, None),
    ];
    for (origin, site) in cases {
        let mut request = post(&format!("{STYLE}/edit"), &body);
        let headers = request.headers_mut();
        headers.remove("origin");
        headers.remove("sec-fetch-site");
        if let Some(origin) = origin {
            headers.insert("origin", origin.parse().unwrap());
        }
        if let Some(site) = site {
            headers.insert("sec-fetch-site", site.parse().unwrap());
        }
        let got = house.send(request).await;
        assert_eq!(got.status, StatusCode::FORBIDDEN, "{origin:?} {site:?}");
    }
    // A form of another page cannot say that it sends JSON.
    let mut form = post(&format!("{STYLE}/edit"), &body);
    form.headers_mut()
        .insert("content-type", "text/plain".parse().unwrap());
    assert_eq!(
        house.send(form).await.status,
        StatusCode::UNSUPPORTED_MEDIA_TYPE
    );
    assert_eq!(house.text(), before);
}

#[tokio::test]
async fn every_answer_carries_the_policy() {
    let house = House::new();
    let page = house.get(STYLE).await;
    let asset = between(&page.text, "src=\"/asset/", "\"").to_owned();
    let asset = house.get(&format!("/asset/{asset}")).await;
    assert!(
        asset.headers["cache-control"]
            .to_str()
            .unwrap()
            .contains("immutable")
    );
    assert_eq!(page.headers["cache-control"], "no-store");
    let refused = house
        .send(Request::get("/").body(Body::empty()).unwrap())
        .await;
    let lost = house.get("/nowhere").await;
    for got in [page, asset, refused, lost] {
        let policy = got.headers["content-security-policy"].to_str().unwrap();
        assert!(policy.starts_with("default-src 'none'; script-src 'self'; style-src 'self'"));
        assert!(!policy.contains("unsafe"));
        assert_eq!(got.headers["x-content-type-options"], "nosniff");
        assert_eq!(got.headers["referrer-policy"], "no-referrer");
    }
}

#[tokio::test]
async fn a_changed_measure_changes_drawing_and_file_and_keeps_comments() {
    let house = House::new();
    let before = house.text();
    let first = house.get(&format!("{STYLE}/fragments")).await.text;
    let first: Value = serde_json::from_str(&first).unwrap();
    // Inseam and outseam together, so that the chart still holds.
    let edits = json!([
        { "edit": "set", "path": "chart.inseam.value", "value": "33 in" },
        { "edit": "set", "path": "chart.outseam.value", "value": "111.74 cm" },
    ]);
    let answer = house
        .post(
            "edit",
            json!({ "revision": first["revision"], "edits": edits }),
        )
        .await;
    assert_eq!(answer["outcome"], "done");
    assert_ne!(drawing(&answer), drawing(&first));
    assert_ne!(answer["revision"], first["revision"]);
    let expected = before
        .replace(
            "[chart.inseam]\nvalue = \"32 in\"",
            "[chart.inseam]\nvalue = \"33 in\"",
        )
        .replace("value = \"109.2 cm\"   ", "value = \"111.74 cm\"   ");
    // Beyond the two values only the space before the comment after one of them may differ.
    let squeezed = |text: &str| text.split_whitespace().collect::<Vec<_>>().join(" ");
    assert_eq!(squeezed(&house.text()), squeezed(&expected));
    assert!(house.text().contains("# to the top of the band"));
}

#[tokio::test]
async fn a_changed_seam_changes_the_drawing_and_is_said_in_words() {
    let house = House::new();
    let address = format!("{STYLE}/fragments?face=inside");
    let first: Value = serde_json::from_str(&house.get(&address).await.text).unwrap();
    let edits =
        json!([{ "edit": "set", "path": "seams.inseam.construction", "value": "overlocked" }]);
    let body = json!({ "revision": first["revision"], "edits": edits });
    let answer = house.post("edit?face=inside", body).await;
    assert!(
        answer["said"]
            .as_str()
            .unwrap()
            .contains("lap-felled → overlocked")
    );
    assert_ne!(drawing(&answer), drawing(&first));
    assert!(fragment(&answer, "history").contains("lap-felled → overlocked"));
}

#[tokio::test]
async fn a_row_of_a_seam_can_be_put_in_and_taken_out() {
    let house = House::new();
    let before = house.text();
    let page = house.get(STYLE).await.text;
    let button = page
        .split("data-edits=\"")
        .find(|text| text.contains("seams.inseam.rows[2]"))
        .unwrap();
    let edits = button.split('"').next().unwrap().replace("&quot;", "\"");
    let edits: Value = serde_json::from_str(&edits).unwrap();
    let revision = house.revision().await;
    let put_in = house
        .post("edit", json!({ "revision": revision, "edits": edits }))
        .await;
    assert_eq!(put_in["outcome"], "done");
    let edits = json!([{ "edit": "remove", "path": "seams.inseam.rows[2]" }]);
    let out = house
        .post(
            "edit",
            json!({ "revision": put_in["revision"], "edits": edits }),
        )
        .await;
    assert_eq!(out["outcome"], "done");
    assert_eq!(house.text(), before);
}

#[tokio::test]
async fn a_wrong_value_is_refused_in_words_and_nothing_is_saved() {
    let house = House::new();
    let before = house.text();
    for (path, value, words) in [
        ("chart.thigh.value", "24", "has no unit"),
        ("chart.thigh.value", "-3 cm", "more than zero"),
        // A slip in the unit: no fly is so wide.
        ("chart.fly_width.value", "76 cm", "2.8 cm to 6 cm is usual"),
        ("pockets.bag.depth", "5.4 m", "18 cm to 42 cm is usual"),
        ("seams.inseam.rows[0].yarn", "spider-silk", "spider-silk"),
        ("seams.inseam.construction", "glued", "glued"),
        ("chart.thigh.colour", "red", "colour"),
        ("seams.inseam.rows[9].yarn", "rope-80", "past the end"),
    ] {
        let answer = house.set(path, value).await;
        assert_eq!(answer["outcome"], "refused", "{path} {value}");
        let problems = answer["problems"].to_string();
        assert!(problems.contains(words), "{problems}");
        assert_eq!(house.text(), before);
    }
    // All or none: a sound edit beside a wrong one is not made either.
    let revision = house.revision().await;
    let edits = json!([
        { "edit": "set", "path": "chart.thigh.value", "value": "63 cm" },
        { "edit": "set", "path": "chart.knee.value", "value": "" },
    ]);
    let answer = house
        .post("edit", json!({ "revision": revision, "edits": edits }))
        .await;
    assert_eq!(answer["outcome"], "refused");
    assert_eq!(house.text(), before);
}

/// What is unusual is kept as it was typed and said; what cannot be never comes into the file.
#[tokio::test]
async fn an_unusual_value_is_saved_and_shown_as_a_finding() {
    let house = House::new();
    let answer = house.set("chart.hem_depth.value", "24 cm").await;
    assert_eq!(answer["outcome"], "done");
    assert!(house.text().contains("value = \"24 cm\""));
    let findings = fragment(&answer, "findings");
    assert!(findings.contains("sewing::unusual-value"));
    assert!(findings.contains("It is 24 cm; 6 mm to 7 cm is usual"));
    assert!(findings.contains("data-part=\"measure:hem_depth\""));
}

#[tokio::test]
async fn a_chart_that_cannot_be_drafted_is_shown_as_a_finding() {
    let house = House::new();
    let answer = house.set("chart.thigh.value", "12 in").await;
    assert_eq!(answer["outcome"], "done");
    assert!(fragment(&answer, "findings").contains("li class=\"error\""));
    assert!(fragment(&answer, "tabs").contains("1 error"));
    assert!(fragment(&answer, "drawing").contains("cannot be drafted"));
}

#[tokio::test]
async fn undo_and_redo_go_through_every_state_byte_for_byte() {
    let house = House::new();
    let mut texts = vec![house.text()];
    for (path, value) in [
        ("chart.thigh.value", "63 cm"),
        ("seams.yoke.rows[0].density", "9 /in"),
        ("chart.fly_width.tolerance", "4 mm"),
    ] {
        assert_eq!(house.set(path, value).await["outcome"], "done");
        texts.push(house.text());
    }
    assert_eq!(
        texts
            .iter()
            .collect::<std::collections::BTreeSet<_>>()
            .len(),
        4
    );
    for text in texts.iter().rev().skip(1) {
        assert_eq!(house.step("undo").await["outcome"], "done");
        assert_eq!(&house.text(), text);
    }
    assert_eq!(house.step("undo").await["outcome"], "nothing");
    for text in texts.iter().skip(1) {
        assert_eq!(house.step("redo").await["outcome"], "done");
        assert_eq!(&house.text(), text);
    }
    assert_eq!(house.step("redo").await["outcome"], "nothing");
    // A new change after an undo ends what could be made again.
    house.step("undo").await;
    house.set("chart.knee.value", "46 cm").await;
    assert_eq!(house.step("redo").await["outcome"], "nothing");
}

#[tokio::test]
async fn a_step_never_overwrites_what_was_changed_outside() {
    let house = House::new();
    house.set("chart.thigh.value", "63 cm").await;
    let revision = house.revision().await;
    let by_hand = house
        .text()
        .replace("value = \"18 in\"", "value = \"18 1/4 in\"");
    fs::write(house.file(), &by_hand).unwrap();
    for action in ["undo", "redo", "put-back"] {
        let mut body = json!({ "revision": revision });
        if action == "put-back" {
            body["number"] = json!(1);
        }
        let answer = house.post(action, body).await;
        assert_eq!(answer["outcome"], "behind", "{action}");
        assert!(answer["problems"].to_string().contains("outside the bench"));
        assert_eq!(house.text(), by_hand);
    }
    let answer = house.post("undo", json!({ "revision": revision })).await;
    assert!(fragment(&answer, "notice").contains("knee"));
    let answer = house.post("reload", json!({})).await;
    assert_ne!(answer["revision"], revision.as_str());
    assert!(!fragment(&answer, "notice").contains("changed outside"));
    assert_eq!(house.text(), by_hand);
    // What the bench held before is kept, so both can be gone back to.
    assert_eq!(house.step("undo").await["outcome"], "done");
    assert!(house.text().contains("63 cm") && !house.text().contains("18 1/4 in"));
}

#[tokio::test]
async fn a_file_broken_by_hand_is_told_and_the_last_sound_version_stays_in_view() {
    let house = House::new();
    house.revision().await;
    fs::write(house.file(), "format = 1\n[chart").unwrap();
    let got = house.get(STYLE).await;
    assert_eq!(got.status, StatusCode::OK);
    assert!(got.text.contains("cannot be read now"));
    assert!(got.text.contains("data-part=\"seam:inseam\""));
    // A yarn taken out of the collection is told as well.
    let house = House::new();
    house.revision().await;
    fs::write(house.collection().join("yarns.toml"), "format = 1\n").unwrap();
    for _ in 0..2 {
        let got = house.get(&format!("{STYLE}/fragments")).await;
        assert!(got.text.contains("cannot be read now"));
    }
}

#[tokio::test]
async fn a_style_that_was_never_sound_says_what_to_put_right() {
    let house = House::new();
    fs::write(house.file(), house.text().replace("\"24 1/2 in\"", "24.5")).unwrap();
    let got = house.get(STYLE).await;
    assert_eq!(got.status, StatusCode::UNPROCESSABLE_ENTITY);
    assert!(got.text.contains("cannot be opened yet"));
    assert!(got.text.contains("style.toml:"));
    assert!(house.get("/").await.text.contains("Cannot be opened yet"));
}

#[tokio::test]
async fn names_that_are_no_style_lead_nowhere() {
    let house = House::new();
    fs::write(house.collection().join("style.toml"), house.text()).unwrap();
    for name in [
        "..",
        "%2e%2e",
        "..%2fferryman",
        "ferryman%2f..%2fferryman",
        "%2fetc",
        ".",
        "nobody",
        "ferryman%00",
        "Ferryman",
    ] {
        for address in [
            format!("/style/{name}"),
            format!("/style/{name}/fragments"),
            format!("/style/{name}/drawing.svg"),
        ] {
            let got = house.get(&address).await;
            assert_eq!(got.status, StatusCode::NOT_FOUND, "{address}");
        }
    }
    assert_eq!(
        house.get("/asset/x/../../style.toml").await.status,
        StatusCode::NOT_FOUND
    );
}

#[tokio::test]
async fn a_folder_with_a_hostile_name_opens_by_its_link() {
    let house = House::new();
    let name = "a \"b\" <i>&%20é";
    let to = house.collection().join("styles").join(name);
    fs::create_dir(&to).unwrap();
    fs::write(to.join("style.toml"), house.text()).unwrap();
    copy(&house.file().with_file_name("art"), &to.join("art"));
    let list = house.get("/").await.text;
    let links = list.split("<a href=\"").skip(1);
    let links: Vec<&str> = links.filter(|link| link.starts_with("/style")).collect();
    assert_eq!(links.len(), 2);
    for link in links {
        let address = link.split('"').next().unwrap().replace("&amp;", "&");
        assert_eq!(
            house.get(&address).await.status,
            StatusCode::OK,
            "{address}"
        );
    }
}

#[tokio::test]
async fn hostile_words_are_only_words() {
    let house = House::new();
    let text = house.text().replace(
        "name = \"Ferryman\"",
        "name = \"<script>alert(1)</script>\"",
    );
    fs::write(
        house.file(),
        text.replace("Straight five-pocket", "\\\"><img src=x onerror=alert(1)>"),
    )
    .unwrap();
    let yarns = house.collection().join("yarns.toml");
    let text = fs::read_to_string(&yarns).unwrap();
    fs::write(&yarns, text.replace("Rope 105", "</option><b>Rope")).unwrap();
    for address in ["/", STYLE] {
        let got = house.get(address).await;
        assert_eq!(got.status, StatusCode::OK);
        for raw in ["<script>alert", "<img src=x", "</option><b>"] {
            assert!(!got.text.contains(raw), "{raw} in {address}");
        }
        assert!(got.text.contains("&lt;script&gt;alert"));
    }
    let answer = house.set("chart.thigh.value", "<b>1 cm").await;
    assert!(answer["problems"].to_string().contains("<b>"));
    assert!(!fragment(&answer, "fit").contains("<b>1"));
}

#[tokio::test]
async fn what_is_no_change_is_not_understood() {
    let house = House::new();
    let before = house.text();
    for body in [
        json!({}),
        json!([]),
        json!({ "revision": "x", "edits": [{ "edit": "burn" }] }),
        json!({ "revision": 1, "edits": [] }),
    ] {
        let got = house.send(post(&format!("{STYLE}/edit"), &body)).await;
        assert_eq!(got.status, StatusCode::UNPROCESSABLE_ENTITY, "{body}");
        assert!(got.text.contains("not understood"));
    }
    let large = json!({ "revision": "x".repeat(1 << 20), "edits": [] });
    let got = house.send(post(&format!("{STYLE}/edit"), &large)).await;
    assert_eq!(got.status, StatusCode::PAYLOAD_TOO_LARGE);
    let got = house.get(&format!("{STYLE}/edit")).await;
    assert_eq!(got.status, StatusCode::METHOD_NOT_ALLOWED);
    assert_eq!(house.text(), before);
}

#[tokio::test]
async fn an_answer_says_how_long_its_parts_took() {
    let house = House::new();
    let got = house.get(&format!("{STYLE}/fragments")).await;
    let timing = got.headers["server-timing"].to_str().unwrap();
    for part in [
        "file;dur=",
        "garment;dur=",
        "drawing;dur=",
        "page;dur=",
        "total;dur=",
    ] {
        assert!(timing.contains(part), "{timing}");
    }
}

#[tokio::test]
async fn what_a_page_has_is_not_sent_again() {
    let house = House::new();
    let sent = |answer: &Value| -> Vec<String> {
        let fragments = answer["fragments"].as_array().unwrap().iter();
        let have = |f: &Value| {
            format!(
                "{}={}",
                f["id"].as_str().unwrap(),
                f["mark"].as_str().unwrap()
            )
        };
        fragments.map(have).collect()
    };
    let first: Value =
        serde_json::from_str(&house.get(&format!("{STYLE}/fragments")).await.text).unwrap();
    let have = sent(&first).join(",");
    let edit = json!([{ "edit": "set", "path": "chart.knee.value", "value": "47 cm" }]);
    let body = json!({ "revision": first["revision"], "edits": edit });
    let mut request = house::post(&format!("{STYLE}/edit"), &body);
    request
        .headers_mut()
        .insert("x-have", have.parse().unwrap());
    let answer: Value = serde_json::from_str(&house.send(request).await.text).unwrap();
    assert_eq!(answer["outcome"], "done");
    let now = sent(&answer);
    // What follows a knee is sent, what does not is not, and nothing that the page has.
    assert!(
        now.iter().any(|part| part.starts_with("drawing=")),
        "{now:?}"
    );
    assert!(
        !now.iter().any(|part| part.starts_with("construction=")),
        "{now:?}"
    );
    assert!(
        now.iter().all(|part| !have.contains(part.as_str())),
        "{now:?}"
    );
    // Fields that go back to what the file says are sent whatever the page has.
    let step = json!({ "revision": answer["revision"] });
    let mut request = house::post(&format!("{STYLE}/undo"), &step);
    request
        .headers_mut()
        .insert("x-have", have.parse().unwrap());
    let back: Value = serde_json::from_str(&house.send(request).await.text).unwrap();
    assert!(sent(&back).len() >= sent(&first).len());
}

fn copy(from: &Path, to: &Path) {
    let Ok(entries) = fs::read_dir(from) else {
        return;
    };
    fs::create_dir(to).unwrap();
    for entry in entries {
        let entry = entry.unwrap();
        fs::copy(entry.path(), to.join(entry.file_name())).unwrap();
    }
}
