//! A style made of a pattern the maker owns.

mod bring_page;
mod found;
mod pattern_answers;
pub(crate) mod routes;
