//! A style made of a pattern the maker owns.

mod found;
mod page;
pub(crate) mod routes;
mod told;
