//! Published tables, formulas and the units of the trade.
//!
//! This is the bottom room: it knows no style, no drawing and no paper. It holds the units every
//! other room measures in ([`Length`], [`Angle`], [`ArealWeight`], [`YarnSize`],
//! [`StitchDensity`] and their kin), which read and print the way a workroom writes them
//! (`"10 1/2 in"`, `"26.5 cm"`, `"tex 105"`).

mod colour;
pub mod units;

pub use colour::{Colour, ColourError};
pub use units::{
    Angle, Area, ArealWeight, Length, Mass, Quantity, Share, StitchDensity, System, UnitError,
    YarnSize,
};
