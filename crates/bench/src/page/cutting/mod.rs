//! The cutting room: the search for a short lay, and the pieces of a style as they are cut.

mod cloths;
mod lay_figures;
mod lay_page;
mod lay_request;
mod lay_shown;
mod orders;
mod orders_page;
mod pieces;
mod pieces_page;
pub(crate) mod routes;
