//! The cutting room: the search for a short lay, and the pieces of a style as they are cut.

mod asked;
mod cloths;
mod lay;
mod lay_words;
mod orders;
mod orders_page;
mod pieces;
mod pieces_page;
pub(crate) mod routes;
mod shown;
