//! From the solved garment to sheets of marks in millimetres.
//!
//! A [`Sheet`] is a neutral drawing: filled areas, lines and words in layers, each mark tied to the
//! part of the garment it stands for. [`svg`] writes one down and computes nothing. The garment
//! views are not pictures: they are the solved pieces, laid flat as an inspector lays a pair to
//! measure it, with every row of stitches mapped along.

mod sheet;
mod svg;

pub use sheet::{
    Anchor, Layer, Mark, Shape, Sheet, Stroke, Text, circle, closed, on_paper, open, to_paper,
};
pub use svg::svg;
