//! Nobody but the maker's own browser, at the bench's own pages, gets in, whatever address is asked for.

use axum::body::Body;
use axum::http::{Method, Request, StatusCode};

use crate::house::walk::walk;
use crate::house::{Got, House, KEY, ORIGIN, PORT};

/// A request as the maker's browser makes it from one of the bench's pages.
fn own(method: Method, address: &str) -> Request<Body> {
    Request::builder()
        .method(method)
        .uri(address)
        .header("host", "127.0.0.1:7461")
        .header("origin", ORIGIN)
        .header("sec-fetch-site", "same-origin")
        .header("sec-fetch-mode", "cors")
        .header("sec-fetch-dest", "empty")
        .header("cookie", format!("bench-{PORT}={KEY}"))
        .header("content-type", "application/json")
        .body(Body::from("{}"))
        .unwrap()
}

/// The same with other headers; an empty one is left out.
fn with(mut request: Request<Body>, headers: &[(&'static str, &str)]) -> Request<Body> {
    for (name, value) in headers {
        request.headers_mut().remove(*name);
        if !value.is_empty() {
            request.headers_mut().insert(*name, value.parse().unwrap());
        }
    }
    request
}

async fn stays_closed(house: &House, request: Request<Body>, how: &str) {
    let asked = format!("{} {} {how}", request.method(), request.uri());
    let got = house.send(request).await;
    assert_eq!(got.status, StatusCode::FORBIDDEN, "{asked}");
    assert!(!got.headers.contains_key("set-cookie"), "{asked}");
    for word in ["Ferryman", "Saltmarsh", "<svg", KEY] {
        assert!(!got.text.contains(word), "{asked} tells of {word}");
    }
    policy(&got, &asked);
}

/// What every answer says of itself.
fn policy(got: &Got, asked: &str) {
    for (name, value) in [
        ("x-content-type-options", "nosniff"),
        ("referrer-policy", "no-referrer"),
        ("x-frame-options", "DENY"),
        ("cross-origin-opener-policy", "same-origin"),
        ("cross-origin-resource-policy", "same-origin"),
    ] {
        let said = got.headers.get(name);
        assert!(
            said.is_some_and(|said| said == value),
            "{asked}: {name} is {said:?}"
        );
    }
    let policy = got.headers["content-security-policy"].to_str().unwrap();
    let parts: Vec<&str> = policy.split(';').map(str::trim).collect();
    for part in [
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "base-uri 'none'",
        "frame-ancestors 'none'",
    ] {
        assert!(parts.contains(&part), "{asked}: {policy}");
    }
    assert!(
        !policy.contains("unsafe") && !policy.contains('*'),
        "{policy}"
    );
    let kept = got.headers["cache-control"].to_str().unwrap();
    assert!(
        kept == "no-store" || kept.contains("private") || asked.contains("/asset/"),
        "{asked}: {kept}"
    );
    // Nothing is handed to pages of other origins.
    assert!(!got.headers.contains_key("access-control-allow-origin"));
}

const ELSEWHERE: &[(&str, &[(&str, &str)])] = &[
    ("from a foreign host", &[("host", "bench.example:7461")]),
    ("from another port's host", &[("host", "127.0.0.1:9999")]),
    ("from no host", &[("host", "")]),
    (
        "from a host with a name",
        &[("host", "maker@127.0.0.1:7461")],
    ),
    ("from the unspecified address", &[("host", "0.0.0.0:7461")]),
    (
        "of another site's page",
        &[
            ("sec-fetch-site", "cross-site"),
            ("origin", "http://bench.example"),
        ],
    ),
    (
        "of another port's page",
        &[
            ("sec-fetch-site", "same-site"),
            ("origin", "http://127.0.0.1:9999"),
        ],
    ),
];

const NO_KEY: &[(&str, &[(&str, &str)])] = &[
    ("without a key", &[("cookie", "")]),
    (
        "with a wrong key",
        &[("cookie", "bench-7461=0123456789abcdef0123456789abcdee")],
    ),
    ("with an empty key", &[("cookie", "bench-7461=")]),
    (
        "with the key of another port",
        &[("cookie", "bench-7462=0123456789abcdef0123456789abcdef")],
    ),
    (
        "with a key that begins alike",
        &[("cookie", "bench-7461=0123456789abcdef0123456789abcdef0")],
    ),
];

#[tokio::test]
async fn no_page_opens_to_others() {
    let house = House::new();
    let pages = walk(&house).await;
    assert!(pages.len() > 20, "{} pages", pages.len());
    for (address, got) in &pages {
        assert_eq!(got.status, StatusCode::OK, "{address}");
        policy(got, address);
        for (how, headers) in ELSEWHERE {
            let request = with(own(Method::GET, address), headers);
            stays_closed(&house, request, how).await;
        }
        for (how, headers) in NO_KEY {
            // What pages load holds nothing of the maker's.
            if !address.starts_with("/asset/") && address != "/favicon.ico" {
                let request = with(own(Method::GET, address), headers);
                stays_closed(&house, request, how).await;
            }
        }
    }
}

#[tokio::test]
async fn no_change_comes_from_others() {
    let house = House::new();
    let before = house.text();
    let mut addresses: Vec<String> = walk(&house).await.into_keys().collect();
    let done = ["edit", "undo", "redo", "reload", "mark"];
    addresses.extend(done.map(|done| format!("/style/ferryman/{done}")));
    let forged: &[(&str, &[(&str, &str)])] = &[
        (
            "that says nothing of where from",
            &[("origin", ""), ("sec-fetch-site", "")],
        ),
        ("of a page without an origin", &[("origin", "null")]),
        (
            "of a page that only looks alike",
            &[("origin", "http://127.0.0.1:7461.bench.example")],
        ),
        (
            "of our name with TLS",
            &[("origin", "https://127.0.0.1:7461")],
        ),
        (
            "typed into the bar",
            &[("origin", ""), ("sec-fetch-site", "none")],
        ),
    ];
    for address in &addresses {
        for method in [Method::POST, Method::PUT, Method::DELETE, Method::PATCH] {
            for (how, headers) in ELSEWHERE.iter().chain(forged) {
                let request = with(own(method.clone(), address), headers);
                stays_closed(&house, request, how).await;
            }
        }
        for (how, headers) in NO_KEY {
            if !address.starts_with("/asset/") {
                let request = with(own(Method::POST, address), headers);
                stays_closed(&house, request, how).await;
            }
        }
    }
    assert_eq!(house.text(), before);
}

/// A header that is there twice says nothing.
#[tokio::test]
async fn two_hosts_or_origins_are_none() {
    let house = House::new();
    for name in ["host", "origin"] {
        let mut request = own(Method::POST, "/style/ferryman/mark");
        let second = request.headers()[name].clone();
        request.headers_mut().append(name, second);
        stays_closed(&house, request, "with two").await;
    }
}

/// A link on another page leads here as an address that is typed does; a part of that page it cannot be.
#[tokio::test]
async fn a_link_from_elsewhere_opens_and_a_frame_does_not() {
    let house = House::new();
    let going = |dest: &'static str| {
        let headers = [
            ("origin", ""),
            ("sec-fetch-site", "same-site"),
            ("sec-fetch-mode", "navigate"),
            ("sec-fetch-dest", dest),
        ];
        with(own(Method::GET, "/style/ferryman"), &headers)
    };
    assert_eq!(house.send(going("document")).await.status, StatusCode::OK);
    for dest in ["iframe", "object", "embed"] {
        stays_closed(&house, going(dest), "as a part").await;
    }
}
