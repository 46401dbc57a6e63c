//! The units: one newtype per quantity, each with one base unit inside.
//!
//! A quantity is made by a constructor named after a unit (`Length::cm(26.5)`), read by a reader
//! named after a unit (`to_inches()`), and read from text only with its unit beside the number:
//! a bare `"26.5"` is refused, because nobody can tell whether centimetres or inches were meant.
//! Every quantity prints in a form that parses back ([`std::fmt::Display`], also used by serde),
//! and in a form for people in either system of measures (`show`).

mod angle;
mod area;
mod duration;
mod error;
mod figure;
mod kind;
mod length;
mod number;
mod quantity;
mod share;
mod stitch_density;
mod temperature;
mod text;
mod weight;
mod yarn_size;

pub use angle::Angle;
pub use area::Area;
pub use duration::Duration;
pub use error::UnitError;
pub use kind::{Quantity, System};
pub use length::Length;
pub use number::trimmed;
pub use share::Share;
pub use stitch_density::StitchDensity;
pub use temperature::Temperature;
pub use weight::{ArealWeight, Mass};
pub use yarn_size::YarnSize;

#[cfg(test)]
mod tests;
