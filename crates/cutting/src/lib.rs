//! What the cutter gets.
//!
//! [`cut`] takes one sewn size to its [`CutPiece`]s: every piece made larger along warp and weft by what
//! the first wash takes ([`Shrinkage`]), its seams walked once more, and then given the allowance each
//! seam asks for, with corners shaped so that folded and felled edges end flush ([`CORNER_RULES`]).
//! Notches, drill holes, grain and words lie on it. [`CutPiece`] is the one type that lays, pattern files
//! and drawings share. [`nest`] puts all sizes of a piece into one picture and [`movements`] says how each
//! of its points moves from size to size. [`wash_test`] works out the shrinkage from marks measured before
//! and after washing.
//!
//! ```
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref())?;
//! let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
//! let cut = cutting::cut(&garment, &cutting::Plan::of(&loaded.style));
//! assert!(cut.pieces.len() > 10);
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod allowance_lie;
mod band;
mod band_halves;
mod cloth_tests;
mod corner;
mod cut;
mod cutter_notes;
mod fewer_points;
mod grade;
mod label;
mod marks;
mod marks_covered;
mod notice;
mod outline;
mod piece;
mod plan;
mod polyline;
mod seams_before_wash;
mod selvedge;
mod shape;
pub mod skew;
mod spread;
mod too_wide;
mod wash;

pub use allowance_lie::{EdgeLie, Lie, side_of};
pub use band::{APART, BandCase, BandConflict, BandCut, BandWay};
pub use corner::{CORNER_RULES, Corner, CornerKind, CornerRule};
pub use cut::{cut, cut_run};
pub use fewer_points::{thinned, thinned_line};
pub use grade::{
    GradeError, Increment, Landmark, LengthName, Movement, Movements, Nest, Nested, increments,
    length_name, movements, nest,
};
pub use label::Label;
pub use marks::{DRILL_INSIDE, NOTCH_DEPTH};
pub use notice::{OfSize, noticed};
pub use piece::{
    CutEdge, CutNotch, CutPiece, CutSize, DOUBLE_NOTCH, Drill, DrillKind, EdgeOnCloth, Inner,
    NotchKind, OnCloth, Part,
};
pub use plan::Plan;
pub use seams_before_wash::{Leg, SEAM_EASE, SeamBeforeWash, Settled};
pub use selvedge::ClothEdge;
pub use sewing::wash::{
    AgainstSkew, ClothWash, EVEN, Follows, MOST_EASE, MOST_GROWTH, MOST_SHRINKAGE, MOST_SKEW,
    Scale, ScaleError, Shrinkage, skew_test,
};
pub use spread::{Named, SizePairs, Spread, SpreadRules, Way};
pub use wash::{
    CONTRADICTION, FEWEST_MARKS, MARKS_APART, MOST_SPREAD, Shrunk, WashError, WashTest, wash_test,
};
