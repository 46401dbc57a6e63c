//! What the style was before: every kept version with its picture, named, compared and put back.

mod address;
mod all;
mod all_page;
mod compare;
mod compare_page;
mod list;
mod list_page;
pub(crate) mod routes;
