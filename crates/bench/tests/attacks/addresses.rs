//! An address names what the bench shows, and never a file.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use axum::http::StatusCode;

use crate::house::House;
use crate::house::walk::walk;

/// Ways out of a folder, as they have been tried elsewhere.
pub(super) const WAYS_OUT: &[&str] = &[
    "..",
    ".",
    "%2e%2e",
    "..%2f..%2fsecret.txt",
    "..%2foutside",
    "%2e%2e%2foutside",
    "%252e%252e%252foutside",
    "..%5coutside",
    "..\\outside",
    "..%c0%afoutside",
    "%c0%ae%c0%ae%2foutside",
    "%ef%bc%8e%ef%bc%8e%ef%bc%8foutside",
    "%e2%80%a4%e2%80%a4%2foutside",
    "ferryman%00",
    "ferryman%00.toml",
    "ferryman%2f..%2fferryman",
    "ferryman%2fstyle.toml",
    "ferryman%2e",
    "ferryman%20",
    "FERRYMAN",
    "f%65rryman%2f",
    "%2fetc%2fpasswd",
    "file:%2f%2f%2fetc%2fpasswd",
    "c:%5cwindows",
    "con",
    "nul",
    "~",
    "$HOME",
    "%ff%fe",
    "%",
    "%zz",
    "-1",
    "99999999999999999999999999",
    "%e2%80%ae",
    "%0d%0aset-cookie:%20a=b",
    "%3cscript%3ealert(1)%3c%2fscript%3e",
    "\"onload=alert(1)",
    "'or'1'='1",
    "{{7*7}}",
];

/// What is tried for a value of a query, which only ever chooses between things known by name.
const VALUES: &[&str] = &[
    "..%2f..%2fsecret.txt",
    "%00",
    "%ff",
    "-99999999999999999999",
    "%3cscript%3ealert(1)%3c%2fscript%3e",
];

/// A collection with a secret beside it, and a style outside.
pub(super) fn beside_a_secret() -> House {
    let house = House::new();
    let top = house.folder.path();
    fs::write(top.join("secret.txt"), "THE-SECRET").unwrap();
    let outside = house.collection().join("outside");
    fs::create_dir_all(&outside).unwrap();
    let elsewhere = house.text().replace("\"Ferryman\"", "\"THE-SECRET\"");
    fs::write(outside.join("style.toml"), elsewhere).unwrap();
    house
}

/// Every file below a folder, and what it holds.
/// Every file and what it holds, but for the versions that looking alone keeps.
pub(super) fn files(folder: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let mut found = BTreeMap::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.ends_with(style::REVISIONS_FOLDER) {
            continue;
        }
        if path.is_dir() {
            found.extend(files(&path));
        } else {
            found.insert(path.clone(), fs::read(&path).unwrap());
        }
    }
    found
}

/// An address with each of its steps replaced in turn, and each value of its query.
fn turned(address: &str) -> Vec<String> {
    let (path, query) = address.split_once('?').unwrap_or((address, ""));
    let steps: Vec<&str> = path.split('/').collect();
    let pairs: Vec<&str> = query.split('&').filter(|pair| !pair.is_empty()).collect();
    let mut found = Vec::new();
    for by in WAYS_OUT {
        for at in 1..steps.len() {
            let mut other = steps.clone();
            other[at] = by;
            found.push(other.join("/"));
        }
    }
    for by in VALUES {
        for at in 0..pairs.len() {
            let key = pairs[at].split('=').next().unwrap();
            let value = format!("{key}={by}");
            let mut other = pairs.clone();
            other[at] = &value;
            found.push(format!("{path}?{}", other.join("&")));
        }
    }
    // The same thing asked for twice.
    found.extend(pairs.first().map(|pair| format!("{path}?{query}&{pair}")));
    found
}

#[tokio::test]
async fn no_address_leads_out_of_the_collection() {
    let house = beside_a_secret();
    let before = files(house.folder.path());
    let pages = walk(&house).await;
    let mut asked: Vec<String> = Vec::new();
    // One address of each shape: an asset or a plate is as good as another.
    let mut shapes: Vec<(usize, String)> = Vec::new();
    for address in pages.keys() {
        let (path, query) = address.split_once('?').unwrap_or((address, ""));
        let keys = query.split('&').map(|pair| pair.split('=').next().unwrap());
        let last = path.rsplit('/').next().unwrap();
        let last = if path.starts_with("/asset/") {
            ""
        } else {
            last
        };
        let shape = (
            path.matches('/').count(),
            format!("{last}?{}", keys.collect::<Vec<_>>().join("&")),
        );
        if shapes.contains(&shape) {
            continue;
        }
        shapes.push(shape);
        asked.extend(turned(address));
    }
    asked.sort();
    asked.dedup();
    // What is no address at all, no client can ask for.
    asked.retain(|address| address.parse::<axum::http::Uri>().is_ok());
    assert!(asked.len() > 300, "{} addresses", asked.len());
    for address in &asked {
        let got = house.get(address).await;
        assert!(
            matches!(
                got.status,
                StatusCode::OK
                    | StatusCode::BAD_REQUEST
                    | StatusCode::NOT_FOUND
                    | StatusCode::METHOD_NOT_ALLOWED
                    | StatusCode::SEE_OTHER
                    | StatusCode::PERMANENT_REDIRECT
            ),
            "{address}: {}",
            got.status
        );
        assert!(!got.text.contains("THE-SECRET"), "{address}");
        assert!(!got.text.contains("root:x:"), "{address}");
        assert!(!got.text.contains("[chart.waist]"), "{address}");
        assert!(!got.headers.contains_key("set-cookie"), "{address}");
        if got.status.is_client_error() {
            let page = got.text.starts_with("<!DOCTYPE html>");
            assert!(page, "{address} is refused without words: {}", got.text);
        }
        for raw in ["<script>alert", "\"onload=alert"] {
            assert!(!got.text.contains(raw), "{address} writes {raw}");
        }
    }
    assert!(
        files(house.folder.path()) == before,
        "asking changed a file"
    );
}

/// Names of what a change is to change lead nowhere but into the style file.
#[tokio::test]
async fn no_path_of_a_change_leads_out_of_the_file() {
    let house = beside_a_secret();
    let before = files(house.folder.path());
    for path in [
        "style.../../secret",
        "/etc/passwd",
        "back_pockets.left.art",
        "patch.art",
        "labels[0].art",
        "chart.inseam.value\u{0}",
    ] {
        for value in [
            "../../../secret.txt",
            "art/../../../../secret.svg",
            "/etc/passwd",
            "art\\..\\..\\secret.svg",
            "art/x\u{0}.svg",
            "file:///etc/passwd",
            "http://bench.example/x.svg",
        ] {
            let revision = house.revision().await;
            let edits = serde_json::json!([{ "edit": "set", "path": path, "value": value }]);
            let body = serde_json::json!({ "revision": revision, "edits": edits });
            let request = crate::house::post("/style/ferryman/edit", &body);
            let got = house.send(request).await;
            let refused = got.status == StatusCode::UNPROCESSABLE_ENTITY
                || got.text.contains("\"outcome\":\"refused\"");
            assert!(
                refused,
                "{path} = {value}: {} {}",
                got.status,
                &got.text[..200]
            );
            assert!(!got.text.contains("THE-SECRET"));
        }
    }
    assert!(
        files(house.folder.path()) == before,
        "a refused change changed a file"
    );
}
