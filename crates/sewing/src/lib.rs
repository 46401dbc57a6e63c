//! Seams, stitch rows, allowances and findings.
//!
//! [`make`] takes one size of a style from its chart to a sewn [`Garment`]: it drafts the pattern,
//! gives every edge the allowance its seam asks for, lays every row of stitches at its true place,
//! and sets buttons, rivets, bartacks, loops, patch and labels. Everything lies in the frame of the
//! piece it is on; [`placements`] says how one piece lies on another. A style that cannot be sewn as
//! it says still gives a garment, with [`Garment::findings`] that say what is wrong.
//! [`work::sewing_order`] lists the operations that sew it, in the order in which a workroom does them.
//!
//! ```
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref())?;
//! let garment = sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
//! assert!(garment.rows.iter().any(|row| row.stitches() > 100));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod allowance;
mod band_parts;
mod bulk;
mod check;
mod clash;
mod construct;
mod context;
mod described;
mod edges;
mod fixings;
mod garment;
mod grown_pieces;
mod inset_lines;
mod joining;
mod laps;
mod lining;
mod make;
mod placement;
mod rows;
mod run_findings;
mod seam;
mod seam_words;
pub mod wash;
pub mod work;
pub mod yarn;

pub use allowance::{
    Allowances, CLOTH_TURN, EDGE_MARGIN, FELL_WIDTH, Fell, TURNED_UNDER, allowances, turned_depth,
};
pub use band_parts::{band_is_joined, band_join_allowance, band_join_construction, band_parts};
pub use bulk::{
    Crossing, CrossingKind, Lying, Machine, Plies, Thicknesses, bulk, lying, lying_trimmed,
    machine_of,
};
pub use check::{SEWING_RULES, SewingRule, sewing_findings};
pub use construct::Finish;
pub use construct::{
    CONSTRUCTS, ClassOfSeam, Construct, Rule, class_of, construct, operation_of, rows_of_class,
};
pub use described::{Described, describe};
pub use edges::{EdgeUse, PlyOf, edge_use};
pub use fixings::label_below_band;
pub use garment::{
    CutPiece, Face, Fixing, FixingKind, Garment, InsideLap, On, Origin, RowEnd, RowYarn, StitchRow,
    stitches_along,
};
pub use make::{make, make_run};
pub use placement::{Placed, placed, placements};
pub use rows::hem_overlap;
pub use run_findings::findings_of_run;
pub use seam_words::all_said;
