//! Everything the style says besides chart and seams.

mod art;
mod back;
mod closing;
mod front;
mod group;
mod hardware;
mod identity;
mod labels;
mod panel;
mod shape;
mod wash;
mod why;

pub(crate) use group::Details;
pub(crate) use panel::render;
