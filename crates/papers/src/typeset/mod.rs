//! Typst as a library: the fonts and layout files it may see, the world it looks into, and the data.

mod data;
mod fonts;
mod world;

pub(crate) use data::files;
pub(crate) use world::PackWorld;
