//! A bench over a fresh demo collection, and the ways to ask it and to read its answers.

pub mod walk;

use std::fs;
use std::path::{Path, PathBuf};

use axum::Router;
use axum::body::{Body, to_bytes};
use axum::http::{HeaderMap, Request, StatusCode};
use bench::{Bench, router};
use serde_json::{Value, json};
use tempfile::TempDir;
use tower::ServiceExt;
use words::Words;

pub const KEY: &str = "0123456789abcdef0123456789abcdef";
pub const PORT: u16 = 7461;
pub const ORIGIN: &str = "http://127.0.0.1:7461";
pub const STYLE: &str = "/style/ferryman";

/// A bench over a fresh demo collection.
pub struct House {
    pub folder: TempDir,
    router: Router,
}

/// An answer, read to its end.
pub struct Got {
    pub status: StatusCode,
    pub headers: HeaderMap,
    pub text: String,
}

impl House {
    pub fn new() -> Self {
        Self::saying(Words::english())
    }

    /// The same in other words.
    pub fn saying(words: &'static Words) -> Self {
        let folder = tempfile::tempdir().unwrap();
        style::write_demo(&folder.path().join("saltmarsh")).unwrap();
        let bench = Bench::new(folder.path().join("saltmarsh"), KEY.to_owned(), PORT);
        let bench = bench.saying(words);
        Self {
            router: router(bench),
            folder,
        }
    }

    /// A bench of its own over a collection that is there already, as after a restart.
    pub fn over(collection: &Path) -> Self {
        let bench = Bench::new(collection.to_owned(), KEY.to_owned(), PORT);
        Self {
            router: router(bench),
            folder: tempfile::tempdir().unwrap(),
        }
    }

    pub fn collection(&self) -> PathBuf {
        self.folder.path().join("saltmarsh")
    }

    pub fn file(&self) -> PathBuf {
        self.collection().join("styles/ferryman/style.toml")
    }

    pub fn text(&self) -> String {
        fs::read_to_string(self.file()).unwrap()
    }

    pub async fn send(&self, request: Request<Body>) -> Got {
        let answer = self.router.clone().oneshot(request).await.unwrap();
        let (parts, body) = answer.into_parts();
        let bytes = to_bytes(body, usize::MAX).await.unwrap();
        Got {
            status: parts.status,
            headers: parts.headers,
            text: String::from_utf8_lossy(&bytes).into_owned(),
        }
    }

    pub async fn get(&self, address: &str) -> Got {
        let request = Request::get(address)
            .header("host", "127.0.0.1:7461")
            .header("cookie", format!("bench-{PORT}={KEY}"))
            .header("x-bench", "1");
        self.send(request.body(Body::empty()).unwrap()).await
    }

    pub async fn post(&self, action: &str, body: Value) -> Value {
        let got = self.send(post(&format!("{STYLE}/{action}"), &body)).await;
        assert_eq!(got.status, StatusCode::OK, "{}", got.text);
        serde_json::from_str(&got.text).unwrap()
    }

    pub async fn revision(&self) -> String {
        let got = self.get(&format!("{STYLE}/fragments")).await;
        let answer: Value = serde_json::from_str(&got.text).unwrap();
        answer["revision"].as_str().unwrap().to_owned()
    }

    /// Sets one value, as a page that is up to date would.
    pub async fn set(&self, path: &str, value: &str) -> Value {
        let revision = self.revision().await;
        let edits = json!([{ "edit": "set", "path": path, "value": value }]);
        self.post("edit", json!({ "revision": revision, "edits": edits }))
            .await
    }

    pub async fn step(&self, action: &str) -> Value {
        let revision = self.revision().await;
        self.post(action, json!({ "revision": revision })).await
    }
}

pub fn post(address: &str, body: &Value) -> Request<Body> {
    Request::post(address)
        .header("host", "127.0.0.1:7461")
        .header("origin", ORIGIN)
        .header("sec-fetch-site", "same-origin")
        .header("cookie", format!("bench-{PORT}={KEY}"))
        .header("content-type", "application/json")
        .body(Body::from(body.to_string()))
        .unwrap()
}

pub fn fragment<'a>(answer: &'a Value, id: &str) -> &'a str {
    let fragments = answer["fragments"].as_array().unwrap();
    let found = fragments.iter().find(|fragment| fragment["id"] == id);
    found.unwrap()["html"].as_str().unwrap()
}

/// The drawing alone, without the words around it.
pub fn drawing(answer: &Value) -> &str {
    let html = fragment(answer, "drawing");
    &html[html.find("<svg").unwrap()..]
}

/// What stands between two marks, the first of each.
pub fn between<'a>(text: &'a str, from: &str, to: &str) -> &'a str {
    let start = text.find(from).unwrap() + from.len();
    let rest = &text[start..];
    &rest[..rest.find(to).unwrap()]
}

/// The names of what lies in a folder, in order.
pub fn names_in(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> = entries
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}
