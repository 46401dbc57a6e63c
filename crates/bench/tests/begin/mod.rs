//! Beginning at the bench: by questions, as a copy, with the demo, and where nothing can be opened.

use std::fs;

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{Request, StatusCode};
use bench::{Bench, router};
use serde_json::{Value, json};
use tower::ServiceExt;

use crate::house::{Got, House, KEY, PORT, between, names_in, post};

/// The answers a page has when it is opened.
fn answers(name: &str) -> Value {
    json!({
        "name": name, "code": "", "figure": "men", "fit": "straight", "leg": "usual",
        "waists_men": ["30", "32", "34"], "waists_women": ["26", "28"], "lengths": ["32"],
        "shell": "tideline-14", "outseam": "straight", "taste": "felled",
    })
}

fn with(name: &str, more: Value) -> Value {
    let mut all = answers(name);
    for (key, value) in more.as_object().unwrap() {
        all[key] = value.clone();
    }
    all
}

async fn sent(house: &House, address: &str, body: &Value) -> (StatusCode, Value) {
    let got = house.send(post(address, body)).await;
    let answer = serde_json::from_str(&got.text).unwrap_or(Value::Null);
    (got.status, answer)
}

fn folders(house: &House) -> Vec<String> {
    names_in(&house.collection().join("styles"))
}

#[tokio::test]
async fn the_questions_are_answered_already_and_a_style_begins() {
    let house = House::new();
    let page = house.get("/new").await;
    assert_eq!(page.status, StatusCode::OK);
    assert!(page.text.contains("value=\"New style\""));
    for inline in [" style=\"", "<script>", "<style", " onclick"] {
        assert!(!page.text.contains(inline), "{inline}");
    }
    let answer = with(
        "Teal",
        json!({ "figure": "women", "fit": "tapered", "taste": "quiet" }),
    );
    let (status, told) = sent(&house, "/new", &answer).await;
    assert_eq!(status, StatusCode::OK, "{told}");
    let to = told["to"].as_str().unwrap();
    assert!(to.starts_with("/style/teal?"), "{to}");
    let opened = house.get(to).await;
    assert_eq!(opened.status, StatusCode::OK);
    assert!(opened.text.contains("Teal"));
    let loaded = style::load(&house.collection().join("styles/teal")).unwrap();
    assert_eq!(loaded.style.style.code, "T-1");
    assert_eq!(loaded.style.sizes.waists, [26, 28].map(style::Tag::inches));
    assert_eq!(loaded.style.style.figure, style::Figure::Women);
    assert!(loaded.style.rivets.is_none());
    assert!(loaded.text.contains("# The chart"));
    let list = house.get("/").await.text;
    assert!(list.contains("href=\"/style/teal?"));
}

#[tokio::test]
async fn every_picture_of_the_questions_is_drawn() {
    let house = House::new();
    let page = house.get("/new").await.text;
    let mut rest = page.as_str();
    let mut seen = Vec::new();
    while let Some(at) = rest.find("src=\"/new/picture.svg") {
        rest = &rest[at..];
        let address = between(rest, "src=\"", "\"").replace("&amp;", "&");
        let got = house.get(&address).await;
        assert_eq!(got.status, StatusCode::OK, "{address}: {}", got.text);
        assert!(got.text.starts_with("<svg"), "{address}");
        seen.push(got.text);
        rest = &rest[5..];
    }
    // Four fits, two legs, two outseams, three tastes, front and back.
    assert_eq!(seen.len(), 13);
    seen.sort();
    seen.dedup();
    // The fit, the leg and the front that are chosen are one picture.
    assert_eq!(seen.len(), 11);
}

#[tokio::test]
async fn an_answer_that_does_not_hold_is_said_and_nothing_is_made() {
    let house = House::new();
    for (more, words) in [
        (json!({ "figure": "geese" }), "the figure can be men, women"),
        (json!({ "waists_men": [] }), "choose at least one waist"),
        (
            json!({ "waists_men": ["44"] }),
            "waist 44 cannot be begun with",
        ),
        (
            json!({ "waists_men": ["many"] }),
            "inches, whole or with a half",
        ),
        (
            json!({ "lengths": ["99999999999"] }),
            "inches, whole or with a half",
        ),
        (
            json!({ "waists_men_more": "31.25" }),
            "inches, whole or with a half",
        ),
        (
            json!({ "lengths_more": "99.5" }),
            "length 99.5 cannot be begun with",
        ),
        (json!({ "shell": "../secret" }), "no cloth ../secret"),
        (json!({ "name": "***" }), "a folder cannot be named after"),
        (json!({ "name": "" }), "a folder cannot be named after"),
        (json!({ "name": "Ferryman" }), "is there already"),
        (json!({ "code": "x".repeat(100_000) }), "code"),
    ] {
        let (status, told) = sent(&house, "/new", &with("Heron", more)).await;
        assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY, "{words}: {told}");
        let problems = told["problems"].to_string();
        assert!(problems.contains(words), "{words}: {problems:.500}");
    }
    assert_eq!(folders(&house), ["ferryman"]);
    let (status, _) = sent(&house, "/new", &json!({ "surprise": 1 })).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY);
}

#[tokio::test]
async fn a_name_is_a_name_and_never_a_way() {
    let house = House::new();
    for (name, folder) in [
        ("../../../etc/heron", "etc-heron"),
        ("<img src=x onerror=alert(1)>", "img-src-x-onerror-alert-1"),
        ("..\\..\\gull", "gull"),
        (".hidden", "hidden"),
        ("C:/teal", "c-teal"),
    ] {
        let (status, told) = sent(&house, "/new", &answers(name)).await;
        assert_eq!(status, StatusCode::OK, "{name}: {told}");
        assert!(house.collection().join("styles").join(folder).is_dir());
    }
    let list = house.get("/").await.text;
    assert!(!list.contains("<img src=x"));
    assert!(list.contains("&lt;img src=x"));
    let mut beside: Vec<String> = fs::read_dir(house.folder.path())
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    beside.sort();
    assert_eq!(beside, ["saltmarsh"]);
}

#[tokio::test]
async fn a_copy_says_what_its_original_says_and_has_no_history() {
    let house = House::new();
    house.set("chart.thigh.value", "25 in").await;
    assert!(
        house
            .collection()
            .join("styles/ferryman/.revisions")
            .is_dir()
    );
    let page = house.get("/copy/ferryman").await;
    assert!(page.text.contains("value=\"Ferryman 2\""));
    let body = json!({ "name": "Ferryman Two", "code": "" });
    let (status, told) = sent(&house, "/copy/ferryman", &body).await;
    assert_eq!(status, StatusCode::OK, "{told}");
    let folder = house.collection().join("styles/ferryman-two");
    let text = fs::read_to_string(folder.join("style.toml")).unwrap();
    let expected = house
        .text()
        .replacen("name = \"Ferryman\"", "name = \"Ferryman Two\"", 1)
        .replacen("code = \"SY-101\"", "code = \"FT-1\"", 1);
    assert_eq!(text, expected);
    assert!(folder.join("art/bight.svg").is_file());
    assert!(!folder.join(".revisions").exists());
    let (status, _) = sent(&house, "/copy/ferryman", &body).await;
    assert_eq!(status, StatusCode::UNPROCESSABLE_ENTITY);
    let (status, _) = sent(&house, "/copy/..%2f..", &body).await;
    assert_eq!(status, StatusCode::NOT_FOUND);
}

#[tokio::test]
async fn two_at_once_never_make_half_a_style() {
    let house = House::new();
    let (one, two) = (answers("Heron"), answers("Heron"));
    let ((first, _), (second, _)) =
        tokio::join!(sent(&house, "/new", &one), sent(&house, "/new", &two));
    let mut both = [first.as_u16(), second.as_u16()];
    both.sort_unstable();
    assert_eq!(both, [200, 422]);
    assert!(style::load(&house.collection().join("styles/heron")).is_ok());
    assert_eq!(folders(&house), ["ferryman", "heron"]);
}

#[tokio::test]
async fn a_broken_style_says_where_and_how_to_go_on() {
    let house = House::new();
    let text = house.text();
    fs::write(house.file(), text.replace("24 1/2 in", "24 1/2 miles")).unwrap();
    let list = house.get("/").await.text;
    let line = text.lines().position(|line| line.contains("24 1/2 in"));
    let place = format!("style.toml:{}:9", line.unwrap() + 1);
    assert!(list.contains(&place), "{place}");
    assert!(list.contains("Put it right in the file"));
}

/// Asks a bench over a folder with nothing in it.
async fn ask(router: &Router, request: Request<Body>) -> Got {
    let (parts, body) = router.clone().oneshot(request).await.unwrap().into_parts();
    let bytes = to_bytes(body, usize::MAX).await.unwrap();
    Got {
        status: parts.status,
        headers: parts.headers,
        text: String::from_utf8_lossy(&bytes).into_owned(),
    }
}

fn get(address: &str) -> Request<Body> {
    Request::get(address)
        .header("host", "127.0.0.1:7461")
        .header("cookie", format!("bench-{PORT}={KEY}"))
        .body(Body::empty())
        .unwrap()
}

#[tokio::test]
async fn a_name_in_any_script_has_a_folder_and_an_address() {
    let house = House::new();
    for (name, folder, address) in [
        ("渡し舟", "渡し舟", "/style/%E6%B8%A1%E3%81%97%E8%88%9F?"),
        ("Été 2", "été-2", "/style/%C3%A9t%C3%A9-2?"),
        ("Чайка", "чайка", "/style/%D1%87%D0%B0%D0%B9%D0%BA%D0%B0?"),
        ("عبّارة", "عبّارة", "/style/%D8%B9"),
    ] {
        let answer = with(name, json!({ "origin": "Japan" }));
        let (status, told) = sent(&house, "/new", &answer).await;
        assert_eq!(status, StatusCode::OK, "{told}");
        let to = told["to"].as_str().unwrap();
        assert!(to.starts_with(address), "{to}");
        let opened = house.get(to).await;
        assert_eq!(opened.status, StatusCode::OK, "{to}");
        assert!(opened.text.contains(name));
        let file = house
            .collection()
            .join("styles")
            .join(folder)
            .join("style.toml");
        let text = fs::read_to_string(file).unwrap();
        assert!(text.contains("Made in Japan."), "{text}");
    }
    // In a collection that is there its workroom is not asked again.
    let page = house.get("/new").await.text;
    assert!(page.contains("name=\"origin\"") && !page.contains("name=\"workroom\""));
}

#[tokio::test]
async fn an_empty_folder_teaches_and_can_begin() {
    for demo in [true, false] {
        let folder = tempfile::tempdir().unwrap();
        let place = folder.path().join("mine");
        fs::create_dir(&place).unwrap();
        let router = router(Bench::new(place.clone(), KEY.to_owned(), PORT));
        let list = ask(&router, get("/")).await;
        assert_eq!(list.status, StatusCode::OK);
        assert!(list.text.contains("There is nothing in this folder yet"));
        let questions = ask(&router, get("/new")).await;
        for question in ["label", "workroom", "place", "origin"] {
            let field = format!("name=\"{question}\"");
            assert!(questions.text.contains(&field), "{question}");
        }
        let picture = ask(&router, get("/new/picture.svg")).await;
        assert!(picture.text.starts_with("<svg"));
        let got = if demo {
            ask(&router, post("/demo", &json!({}))).await
        } else {
            let body = with(
                "Heron",
                json!({ "label": "Reed & Rush", "workroom": "The Weir", "shell": null }),
            );
            ask(&router, post("/new", &body)).await
        };
        assert_eq!(got.status, StatusCode::OK, "{}", got.text);
        let list = ask(&router, get("/")).await;
        let name = if demo {
            "Saltmarsh Yard"
        } else {
            "Reed &amp; Rush"
        };
        assert!(list.text.contains(name));
        // What is there is never overwritten.
        let again = ask(&router, post("/demo", &json!({}))).await;
        assert_eq!(again.status, StatusCode::UNPROCESSABLE_ENTITY);
    }
}
