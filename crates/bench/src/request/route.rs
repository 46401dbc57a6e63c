//! One row of the table of addresses.

use axum::extract::DefaultBodyLimit;
use axum::handler::Handler;
use axum::http::Method;
use axum::routing::{MethodRouter, get, post};

use crate::state::Bench;

/// An address, how it is asked, and what answers.
#[derive(Clone)]
pub(crate) struct Route {
    /// As the router reads it: `{name}` stands for any one step.
    pub(crate) address: &'static str,
    pub(crate) method: Method,
    pub(crate) answers: MethodRouter<Bench>,
}

impl Route {
    /// Something to be looked at.
    pub(crate) fn get<T: 'static>(address: &'static str, handler: impl Handler<T, Bench>) -> Self {
        Self {
            address,
            method: Method::GET,
            answers: get(handler),
        }
    }

    /// Something that changes what there is, or carries more than an address can.
    pub(crate) fn post<T: 'static>(address: &'static str, handler: impl Handler<T, Bench>) -> Self {
        Self {
            address,
            method: Method::POST,
            answers: post(handler),
        }
    }

    /// The same taking no more than so many bytes.
    pub(crate) fn at_most(self, bytes: usize) -> Self {
        Self {
            answers: self.answers.layer(DefaultBodyLimit::max(bytes)),
            ..self
        }
    }
}
