//! Beginning a style: by a few questions, as a copy of another, of a pattern of the maker's own, or with the demo where
//! there is nothing yet.

mod collection;
pub(crate) mod copy;
mod copy_page;
pub(crate) mod pattern;
pub(crate) mod picture;
mod question_answers;
mod questions;
pub(crate) mod routes;
