//! Who may talk to the bench: this machine's browser, with the key of the session, from the bench's own pages.
//!
//! Any page open in the same browser can send requests to a loopback port, and a hostile name server can make a
//! foreign name point at it. So every request must name our own host, every change must come from one of our own
//! pages, and everything but the looks needs the key that was in the opened address.

use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};

use crate::Bench;
use crate::trouble::Trouble;

/// Nothing is loaded from anywhere but here, nothing runs that is written into a page, nobody may frame it.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; \
     font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

/// Lets a request through or refuses it, and puts the headers on every answer.
pub(crate) async fn guard(State(bench): State<Bench>, request: Request, next: Next) -> Response {
    let mut answer = match admit(&bench, &request) {
        Ok(Admitted::Open) => next.run(request).await,
        Ok(Admitted::WithKey) => {
            let mut answer = next.run(request).await;
            if let Ok(cookie) = HeaderValue::from_str(&cookie(&bench)) {
                answer.headers_mut().append(header::SET_COOKIE, cookie);
            }
            answer
        }
        Err(trouble) => trouble.into_response(),
    };
    let headers = answer.headers_mut();
    for (name, value) in [
        (header::CONTENT_SECURITY_POLICY, POLICY),
        (header::X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (header::REFERRER_POLICY, "no-referrer"),
        (header::X_FRAME_OPTIONS, "DENY"),
        (
            HeaderName::from_static("cross-origin-opener-policy"),
            "same-origin",
        ),
        (
            HeaderName::from_static("cross-origin-resource-policy"),
            "same-origin",
        ),
    ] {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers
        .entry(header::CACHE_CONTROL)
        .or_insert(HeaderValue::from_static("no-store"));
    answer
}

enum Admitted {
    /// With the cookie, or for the looks, which hold nothing of the maker's.
    Open,
    /// With the key in the address; the cookie goes back with the answer.
    WithKey,
}

fn admit(bench: &Bench, request: &Request) -> Result<Admitted, Trouble> {
    let headers = request.headers();
    let host = one(headers, &header::HOST);
    if !host.is_some_and(|host| own_hosts(bench.port()).iter().any(|own| own == host)) {
        return Err(Trouble::refused(
            "The request names another host. The bench answers only to 127.0.0.1 and localhost, at its own port.",
        ));
    }
    if !matches!(*request.method(), Method::GET | Method::HEAD) && !from_own_page(bench, headers) {
        return Err(Trouble::refused(
            "A change can only be made from one of the bench's own pages.",
        ));
    }
    if request.uri().path().starts_with("/asset/") {
        return Ok(Admitted::Open);
    }
    if has_cookie(bench, headers) {
        return Ok(Admitted::Open);
    }
    let query = request.uri().query().unwrap_or_default();
    let key = query.split('&').find_map(|pair| pair.strip_prefix("key="));
    match key {
        Some(key) if same(key, bench.key()) => Ok(Admitted::WithKey),
        _ => Err(Trouble::refused(
            "This needs the key of the session. Open the full address that was printed when the bench was started.",
        )),
    }
}

fn own_hosts(port: u16) -> [String; 2] {
    [format!("127.0.0.1:{port}"), format!("localhost:{port}")]
}

/// A browser says where a request comes from in `Origin` or `Sec-Fetch-Site`; one that says neither is not believed.
fn from_own_page(bench: &Bench, headers: &HeaderMap) -> bool {
    let origin = headers.get(header::ORIGIN);
    let site = headers.get("sec-fetch-site");
    let own_origin = one(headers, &header::ORIGIN)
        .and_then(|origin| origin.strip_prefix("http://"))
        .is_some_and(|origin| own_hosts(bench.port()).iter().any(|own| own == origin));
    let own_site = site.is_some_and(|site| site == "same-origin");
    (origin.is_some() || site.is_some())
        && (origin.is_none() || own_origin)
        && (site.is_none() || own_site)
}

/// A header that is there exactly once.
fn one<'a>(headers: &'a HeaderMap, name: &HeaderName) -> Option<&'a str> {
    let mut values = headers.get_all(name).iter();
    match (values.next(), values.next()) {
        (Some(value), None) => value.to_str().ok(),
        _ => None,
    }
}

/// Browsers keep cookies by host, whatever the port, so the port is part of the name.
fn cookie_name(bench: &Bench) -> String {
    format!("bench-{}", bench.port())
}

fn cookie(bench: &Bench) -> String {
    format!(
        "{}={}; Path=/; HttpOnly; SameSite=Strict",
        cookie_name(bench),
        bench.key()
    )
}

fn has_cookie(bench: &Bench, headers: &HeaderMap) -> bool {
    let name = cookie_name(bench);
    headers
        .get_all(header::COOKIE)
        .iter()
        .filter_map(|value| value.to_str().ok())
        .flat_map(|value| value.split(';'))
        .filter_map(|pair| pair.trim().split_once('='))
        .any(|(known, key)| known == name && same(key, bench.key()))
}

/// Compares without telling by its time how much of a guess was right.
fn same(guess: &str, key: &str) -> bool {
    let differing = guess
        .bytes()
        .zip(key.bytes())
        .fold(0, |differing, (a, b)| differing | (a ^ b));
    guess.len() == key.len() && differing == 0
}
