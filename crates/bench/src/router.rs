//! The table of addresses: each once, with how it is asked and what answers.

use axum::Router;
use axum::extract::DefaultBodyLimit;
use axum::http::{Method, StatusCode};
use axum::middleware::from_fn_with_state;
use words::Words;

use crate::request::Route;
use crate::request::limits::LARGEST_BODY;
use crate::sentences::Line;
use crate::state::Bench;
use crate::trouble::Trouble;
use crate::{asset, guard, page};

/// An address of the bench, and how it is asked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Address {
    /// As the router reads it: `{name}` stands for any one step.
    pub path: &'static str,
    /// GET for what is looked at, POST for what changes something.
    pub method: Method,
}

/// Every address there is, for tests and tools.
#[must_use]
pub fn addresses() -> Vec<Address> {
    let table = table().into_iter();
    table
        .map(|route| Address {
            path: route.address,
            method: route.method,
        })
        .collect()
}

fn table() -> Vec<Route> {
    [
        page::collection::routes::routes(),
        page::style::routes::routes(),
        page::style::cloths::routes(),
        page::drawing_brought::routes(),
        page::begin::routes::routes(),
        page::begin::picture::routes(),
        page::begin::copy::routes(),
        page::begin::pattern::routes::routes(),
        page::cutting::routes::routes(),
        page::repair::routes::routes(),
        page::papers::routes::routes(),
        page::history::routes::routes(),
        page::files_changed::routes(),
        asset::routes(),
    ]
    .concat()
}

/// The whole bench as a function of requests.
pub fn router(bench: Bench) -> Router {
    let empty = Router::new();
    let rows = table().into_iter();
    rows.fold(empty, |router, row| router.route(row.address, row.answers))
        .fallback(async || Trouble::no_such_page())
        .method_not_allowed_fallback(async || {
            Trouble::one(
                StatusCode::METHOD_NOT_ALLOWED,
                Words::refusal_not_for_opening,
                Line::Said(Words::refusal_takes_changes),
            )
        })
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(from_fn_with_state(bench.clone(), guard::guard))
        .with_state(bench)
}
