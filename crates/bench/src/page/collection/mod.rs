//! The page of the collection: every style in it.

mod gather;
mod render;
pub(crate) mod routes;
