//! Every address there is, whether a page links to it or not: nobody without the key gets an answer there, nothing is
//! changed from elsewhere, and no name in it leads out of the collection.

use std::collections::BTreeSet;

use axum::body::Body;
use axum::http::{Method, Request, StatusCode};
use bench::{Address, addresses};

use super::addresses::{WAYS_OUT, beside_a_secret, files};
use crate::house::{House, KEY, ORIGIN, PORT};

/// An address with something in place of each of its names.
fn filled(path: &str, value: impl Fn(&str) -> String) -> String {
    let steps = path.split('/').map(|step| {
        let name = step
            .strip_prefix('{')
            .and_then(|step| step.strip_suffix('}'));
        name.map_or_else(|| step.to_owned(), &value)
    });
    steps.collect::<Vec<_>>().join("/")
}

/// As a page that knows its way would ask.
fn usual(name: &str) -> String {
    match name {
        "name" => "ferryman",
        "key" => "fly-length",
        "number" => "1",
        _ => "x",
    }
    .to_owned()
}

fn names(path: &str) -> Vec<&str> {
    let steps = path.split('/');
    let names = steps.filter_map(|step| step.strip_prefix('{')?.strip_suffix('}'));
    names.collect()
}

fn request(address: &Address, path: &str) -> Request<Body> {
    let body = match address.method {
        Method::GET => Body::empty(),
        _ => Body::from("{}"),
    };
    Request::builder()
        .method(address.method.clone())
        .uri(path)
        .header("host", "127.0.0.1:7461")
        .header("origin", ORIGIN)
        .header("cookie", format!("bench-{PORT}={KEY}"))
        .header("content-type", "application/json")
        .header("x-bench", "1")
        .body(body)
        .unwrap()
}

#[test]
fn every_address_is_stated_once() {
    let all = addresses();
    assert!(all.len() > 40, "{} addresses", all.len());
    let once: BTreeSet<(&str, &str)> = all
        .iter()
        .map(|address| (address.method.as_str(), address.path))
        .collect();
    assert_eq!(once.len(), all.len());
}

#[tokio::test]
async fn every_address_needs_the_key_and_takes_no_change_from_elsewhere() {
    let house = House::new();
    let before = files(house.folder.path());
    for address in addresses() {
        let path = filled(address.path, usual);
        let mut without_key = request(&address, &path);
        without_key.headers_mut().remove("cookie");
        let got = house.send(without_key).await;
        // What pages load holds nothing of the maker's.
        let open = path.starts_with("/asset/");
        assert_eq!(
            got.status == StatusCode::FORBIDDEN,
            !open,
            "{path}: {}",
            got.status
        );
        if address.method == Method::GET {
            continue;
        }
        let mut from_elsewhere = request(&address, &path);
        from_elsewhere.headers_mut().remove("origin");
        let got = house.send(from_elsewhere).await;
        assert_eq!(got.status, StatusCode::FORBIDDEN, "{path}");
        let mut looked_at = request(&address, &path);
        *looked_at.method_mut() = Method::PUT;
        let got = house.send(looked_at).await;
        assert_eq!(got.status, StatusCode::METHOD_NOT_ALLOWED, "{path}");
    }
    assert!(
        files(house.folder.path()) == before,
        "something was changed"
    );
}

#[tokio::test]
async fn no_name_in_any_address_leads_out_of_the_collection() {
    let house = beside_a_secret();
    let before = files(house.folder.path());
    let mut asked = 0;
    for address in addresses() {
        for name in names(address.path) {
            for way in WAYS_OUT {
                let path = filled(address.path, |other| match other == name {
                    true => (*way).to_owned(),
                    false => usual(other),
                });
                // What is no address at all, no client can ask for.
                if path.parse::<axum::http::Uri>().is_err() {
                    continue;
                }
                asked += 1;
                let got = house.send(request(&address, &path)).await;
                let method = &address.method;
                assert!(
                    got.status.is_client_error(),
                    "{method} {path}: {}",
                    got.status
                );
                assert!(
                    got.text.starts_with("<!DOCTYPE html>"),
                    "{method} {path}: {}",
                    got.text
                );
                for leak in [
                    "THE-SECRET",
                    "root:x:",
                    "[chart.waist]",
                    "<script>alert",
                    "\"onload=alert",
                ] {
                    assert!(!got.text.contains(leak), "{method} {path} says {leak}");
                }
            }
        }
    }
    assert!(asked > 1000, "{asked} addresses");
    assert!(
        files(house.folder.path()) == before,
        "asking changed a file"
    );
}
