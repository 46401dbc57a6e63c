//! Work in the background: begun, told of, cancelled, kept to its revision, two at once; and what is refused.

mod cutting;
mod papers;

use std::time::Duration;

use axum::http::StatusCode;
use serde_json::{Value, json};

use crate::house::{House, STYLE};

/// How a room's work stands.
async fn standing(house: &House, room: &str, query: &str) -> Value {
    let got = house.get(&format!("{STYLE}/{room}/work?{query}")).await;
    assert_eq!(got.status, StatusCode::OK, "{}", got.text);
    serde_json::from_str(&got.text).unwrap()
}

/// Asks again as a page does until something holds. A test that waits in vain is ended by whoever runs it.
async fn until(house: &House, room: &str, holds: impl Fn(&Value) -> bool) -> Value {
    loop {
        let now = standing(house, room, "").await;
        if holds(&now) {
            return now;
        }
        tokio::time::sleep(Duration::from_millis(50)).await;
    }
}

fn is_over(standing: &Value) -> bool {
    standing["running"] == json!(false)
}

/// Every part of the page together.
fn shown(standing: &Value) -> String {
    let parts = standing["fragments"].as_array().unwrap();
    let parts = parts.iter().map(|part| part["html"].as_str().unwrap());
    parts.collect()
}

fn problems(standing: &Value) -> String {
    standing["problems"].to_string()
}
