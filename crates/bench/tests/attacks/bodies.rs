//! What a request carries can be anything. It is refused in words, nothing is changed, and the bench goes on.

use axum::body::Body;
use axum::http::{Request, StatusCode};
use serde_json::{Value, json};

use crate::house::{House, STYLE, post};

fn carrying(address: &str, body: Vec<u8>) -> Request<Body> {
    let mut request = post(address, &json!({}));
    *request.body_mut() = Body::from(body);
    request
}

fn change(revision: &str, edits: &str) -> Vec<u8> {
    format!("{{\"revision\":\"{revision}\",\"edits\":{edits}}}").into_bytes()
}

#[tokio::test]
async fn what_is_no_change_is_refused_and_nothing_happens() {
    let house = House::new();
    let before = house.text();
    let revision = house.revision().await;
    let with = |edits: &str| change(&revision, edits);
    let nested = |open: &str, close: &str, deep: usize| {
        let value = format!("{}{}", open.repeat(deep), close.repeat(deep));
        with(&format!(
            "[{{\"edit\":\"set\",\"path\":\"style.name\",\"value\":{value}}}]"
        ))
    };
    let set = |path: &str, value: &str| {
        with(&format!(
            "[{{\"edit\":\"set\",\"path\":\"{path}\",\"value\":{value}}}]"
        ))
    };
    let steps = |count: usize| vec!["a"; count].join(".");
    let bodies: Vec<Vec<u8>> = vec![
        Vec::new(),
        b"null".to_vec(),
        b"[]".to_vec(),
        b"{".to_vec(),
        b"\xff\xfe\x00".to_vec(),
        vec![0; 4096],
        vec![b'['; 1_000_000],
        b"{\"a\":".repeat(150_000),
        nested("[", "]", 100),
        nested("[", "]", 100_000),
        nested("{\"a\":", "}", 90),
        set("style.name", "1e400"),
        set("style.name", "123456789012345678901234567890"),
        set("style.name", "null"),
        set("style.name", "\"\\ud800\""),
        set("style.name", &format!("\"{}\"", "x".repeat(900_000))),
        set(&steps(60), "\"x\""),
        set(&steps(30_000), "\"x\""),
        set(&steps(400_000), "\"x\""),
        set(&format!("labels{}", "[0]".repeat(200_000)), "\"x\""),
        set("seams.inseam.rows[18446744073709551615]", "\"x\""),
        set("__proto__.x", "\"x\""),
        with("[{\"edit\":\"format\",\"path\":\"style.name\"}]"),
        with("[{\"edit\":\"set\",\"path\":\"style.name\",\"value\":\"x\",\"more\":1}]"),
        with(&format!(
            "[{}]",
            vec!["{\"edit\":\"remove\",\"path\":\"a\"}"; 25_000].join(",")
        )),
        change(
            "' OR 1=1",
            "[{\"edit\":\"set\",\"path\":\"style.name\",\"value\":\"x\"}]",
        ),
        change(&"0".repeat(500_000), "[]"),
    ];
    for body in bodies {
        let shown = String::from_utf8_lossy(&body[..body.len().min(120)]).into_owned();
        let got = house.send(carrying(&format!("{STYLE}/edit"), body)).await;
        match got.status {
            StatusCode::OK => {
                let answer: Value = serde_json::from_str(&got.text).unwrap();
                let outcome = answer["outcome"].as_str().unwrap();
                assert!(
                    ["refused", "behind"].contains(&outcome),
                    "{shown}: {outcome}"
                );
                let problems = answer["problems"].to_string();
                assert!(
                    problems.len() > 10 && problems.len() < 5_000,
                    "{shown}: {problems}"
                );
            }
            StatusCode::BAD_REQUEST
            | StatusCode::UNPROCESSABLE_ENTITY
            | StatusCode::PAYLOAD_TOO_LARGE => {
                assert!(
                    got.text.starts_with("<!DOCTYPE html>"),
                    "{shown}: {}",
                    got.text
                );
                assert!(
                    got.text.len() < 20_000,
                    "{shown} is told at {} bytes",
                    got.text.len()
                );
            }
            other => panic!("{shown}: {other} {}", got.text),
        }
        assert_eq!(house.text(), before, "{shown}");
    }
    assert_eq!(
        house.set("style.name", "Ferryman II").await["outcome"],
        "done"
    );
}

#[tokio::test]
async fn a_million_edits_are_refused() {
    let house = House::new();
    let before = house.text();
    let edits = vec!["{\"edit\":\"set\",\"path\":\"style.name\",\"value\":\"x\"}"; 1_000_000];
    let body = change(&house.revision().await, &format!("[{}]", edits.join(",")));
    let got = house.send(carrying(&format!("{STYLE}/edit"), body)).await;
    assert_eq!(got.status, StatusCode::PAYLOAD_TOO_LARGE);
    assert_eq!(house.text(), before);
}

/// More changes than a request may carry are refused and none of them is made, of a style as of its cloths.
#[tokio::test]
async fn too_many_edits_are_refused_and_none_is_dropped() {
    let house = House::new();
    let cloths = house.collection().join("cloths.toml");
    let files = || (house.text(), std::fs::read_to_string(&cloths).unwrap());
    let before = files();
    let edits = |path: &str| {
        let one = serde_json::json!({ "edit": "set", "path": path, "value": "33 cm" });
        serde_json::Value::from(vec![one; 51])
    };
    for (action, body) in [
        (
            "edit",
            serde_json::json!({ "revision": house.revision().await, "edits": edits("chart.knee.value") }),
        ),
        (
            "cloths",
            serde_json::json!({ "held": "", "edits": edits("cloths.tideline-14.width") }),
        ),
    ] {
        let got = house
            .send(carrying(
                &format!("{STYLE}/{action}"),
                body.to_string().into_bytes(),
            ))
            .await;
        assert_eq!(
            got.status,
            StatusCode::BAD_REQUEST,
            "{action}: {}",
            got.text
        );
        assert!(
            got.text.contains("too many changes"),
            "{action}: {}",
            got.text
        );
    }
    assert!(files() == before);
}
