//! The pair before its wash: how each cloth behaves, and how much larger each piece is cut.
//!
//! A style states the finished pair. A workroom cuts and sews one that has not been washed, so whatever it
//! sets a knife, a folder or a needle to has to be worked out from here, in the direction the figure
//! lies.

mod as_sewn;
mod before;
mod behaviour;
mod chart;
mod scale;

pub use before::{
    BeforeWash, EVEN, INNER_APART, MOST_EASE, band_grain_along_weft, eased_band, eased_shrinkage,
    scale_of,
};
pub use behaviour::{ClothWash, Washes, cloth_key};
pub use chart::OnceWashed;
pub use scale::{
    AgainstSkew, Follows, MOST_GROWTH, MOST_SHRINKAGE, MOST_SKEW, Scale, ScaleError, Shrinkage,
    believable, checked_skew, scaled, skew_test, threads,
};
