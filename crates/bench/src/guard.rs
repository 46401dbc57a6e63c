//! Who may talk to the bench: this machine's browser, with the key of the session, from the bench's own pages.
//!
//! Any page open in the same browser can send requests to a loopback port, and a hostile name server can make a
//! foreign name point at it. So every request must name our own host, every change must come from one of our own
//! pages, and everything but the looks needs the key that was in the opened address.

use axum::body::{Body, to_bytes};
use axum::extract::{Request, State};
use axum::http::{HeaderMap, HeaderName, HeaderValue, Method, StatusCode, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use words::Words;

use crate::page::trouble::page;
use crate::sentences::Line;
use crate::state::Bench;
use crate::trouble::Trouble;

/// Nothing is loaded from anywhere but here, nothing runs that is written into a page, nobody may frame it.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; \
     font-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'";

/// More than any request carries: addresses that take less say so themselves. A flood is cut off here at the latest.
const MOST_CARRIED: usize = 9 << 20;

/// Lets a request through or refuses it, and puts the headers on every answer.
pub(crate) async fn guard(State(bench): State<Bench>, request: Request, next: Next) -> Response {
    let answer = match admit(&bench, &request) {
        Ok(Admitted::Open) => answered(&bench, request, next).await,
        Ok(Admitted::WithKey) => {
            let mut answer = answered(&bench, request, next).await;
            if let Ok(cookie) = HeaderValue::from_str(&cookie(&bench)) {
                answer.headers_mut().append(header::SET_COOKIE, cookie);
            }
            answer
        }
        Err(trouble) => trouble.into_response(),
    };
    let mut answer = in_words(bench.say(), answer);
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

/// Answers a request that was let in.
async fn answered(bench: &Bench, request: Request, next: Next) -> Response {
    match carried(bench, request).await {
        Ok(request) => next.run(request).await,
        Err(trouble) => trouble.into_response(),
    }
}

/// The request with all that it carries taken in, before anything is done with it: a flood is cut off, and a trickle
/// is not waited for longer than is sensible.
async fn carried(bench: &Bench, request: Request) -> Result<Request, Trouble> {
    let (parts, body) = request.into_parts();
    if !changes(&parts.method) {
        return Ok(Request::from_parts(parts, Body::empty()));
    }
    let too_much = || {
        Trouble::one(
            StatusCode::PAYLOAD_TOO_LARGE,
            Words::refusal_too_much,
            Line::Said(Words::refusal_too_much_kept),
        )
    };
    let told = one(&parts.headers, &header::CONTENT_LENGTH);
    if told.is_some_and(|told| {
        told.parse()
            .is_ok_and(|bytes: u64| bytes > MOST_CARRIED as u64)
    }) {
        return Err(too_much());
    }
    match tokio::time::timeout(bench.patience(), to_bytes(body, MOST_CARRIED)).await {
        Ok(Ok(bytes)) => Ok(Request::from_parts(parts, Body::from(bytes))),
        Ok(Err(_)) => Err(too_much()),
        Err(_) => Err(Trouble::one(
            StatusCode::REQUEST_TIMEOUT,
            Words::refusal_no_end,
            Line::Said(Words::refusal_no_end_waited),
        )),
    }
}

/// Whatever went wrong is said as a page in the words of the bench; so is what is said of an address that cannot be read.
fn in_words(say: &'static Words, mut answer: Response) -> Response {
    let plain = answer.headers().get(header::CONTENT_TYPE);
    let plain = plain.is_some_and(|kind| kind.as_bytes().starts_with(b"text/plain"));
    let trouble = match answer.extensions_mut().remove::<Trouble>() {
        Some(trouble) => trouble,
        None if plain && answer.status().is_client_error() => {
            let why = Line::Said(Words::refusal_address);
            Trouble::not_understood(answer.status(), why)
        }
        None => return answer,
    };
    *answer.body_mut() = Body::from(page(&trouble, say).into_string());
    let headers = answer.headers_mut();
    headers.remove(header::CONTENT_LENGTH);
    headers.insert(
        header::CONTENT_TYPE,
        HeaderValue::from_static("text/html; charset=utf-8"),
    );
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
        return Err(Trouble::refused(Words::refusal_host));
    }
    if changes(request.method()) && !from_own_page(bench, headers) {
        return Err(Trouble::refused(Words::refusal_change));
    }
    if from_elsewhere(headers) {
        return Err(Trouble::refused(Words::refusal_elsewhere));
    }
    if request.uri().path().starts_with("/asset/") {
        return Ok(Admitted::Open);
    }
    if has_cookie(bench, headers) {
        return Ok(Admitted::Open);
    }
    let query = request.uri().query().unwrap_or_default();
    let mut said = form_urlencoded::parse(query.as_bytes());
    match said.find(|(name, _)| name == "key") {
        Some((_, key)) if same(&key, bench.key()) => Ok(Admitted::WithKey),
        _ => Err(Trouble::refused(Words::refusal_key)),
    }
}

/// Whether a request may change something.
fn changes(method: &Method) -> bool {
    !matches!(*method, Method::GET | Method::HEAD)
}

/// Whether a page of another origin asks for a part of its own. Cookies know no ports, so that a page of another port
/// of this machine would have ours; going to the bench from there, as by a link, is as good as typing its address.
fn from_elsewhere(headers: &HeaderMap) -> bool {
    let says = |name: &str, word: &str| headers.get(name).is_some_and(|value| value == word);
    let elsewhere = says("sec-fetch-site", "cross-site") || says("sec-fetch-site", "same-site");
    let going = says("sec-fetch-mode", "navigate") && says("sec-fetch-dest", "document");
    elsewhere && !going
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
