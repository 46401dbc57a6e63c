//! Typst as a library: the fonts and layout files it may see, the world it looks into, and the data.

mod data;
mod fonts;
mod world;

pub(crate) use data::{Job, job};
pub(crate) use fonts::has_letter;
pub(crate) use world::PressWorld;
