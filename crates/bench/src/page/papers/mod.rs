//! What leaves the house: the production pack and the patterns, made while the bench goes on.

mod papers_page;
mod requests;
pub(crate) mod routes;
