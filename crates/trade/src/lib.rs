//! Published tables, formulas and the units of the trade.
//!
//! This is the bottom room: it knows no style, no drawing and no paper. It holds the units every
//! other room measures in ([`Length`], [`Angle`], [`ArealWeight`], [`YarnSize`],
//! [`StitchDensity`] and their kin), which read and print the way a workroom writes them
//! (`"10 1/2 in"`, `"26.5 cm"`, `"tex 105"`), and the tables of the trade: stitch types and seam
//! classes, yarns and needles, yarn consumption, cloth, buttons and rivets. Every value says where
//! it comes from, in its doc comment or as a [`Confidence`] in its row; one from memory is a
//! starting value to be confirmed, never a rule.

mod colour;
pub mod colour_difference;
mod confidence;
pub mod consumption;
pub mod fabric;
pub mod hardware;
mod machine;
pub mod needle;
pub mod seam;
mod state;
pub mod stitch;
pub mod units;
mod words;
pub mod yarn;

pub use colour::{Colour, ColourError};
pub use colour_difference::{ColourDifference, ciede2000};
pub use confidence::Confidence;
pub use machine::MachineId;
pub use needle::NeedleSize;
pub use state::{Unwashed, Washed};
pub use stitch::StitchType;
pub use units::{
    Angle, Area, ArealWeight, Duration, Length, Mass, Quantity, Share, StitchDensity, System,
    Temperature, UnitError, YarnSize, trimmed,
};
pub use words::{counted, plain, steers};
pub use yarn::yarn_diameter;
