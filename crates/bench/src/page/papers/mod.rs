//! What leaves the house: the production pack and the patterns, made while the bench goes on.

mod asked;
mod room;
pub(crate) mod routes;
