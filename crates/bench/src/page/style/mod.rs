//! The page of one style.

pub(crate) mod cloths;
pub(crate) mod gather;
mod render;
pub(crate) mod routes;
