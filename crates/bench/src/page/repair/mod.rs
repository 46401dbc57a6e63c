//! Going back to the last version that can be read.

pub(crate) mod render;
pub(crate) mod routes;
