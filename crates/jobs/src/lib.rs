//! What takes a while: looking for lays, planning an order, making the pack, writing pattern files.
//!
//! The command line and the bench ask for the same work; here it is done once, in memory, so that both
//! give the same bytes. [`Finder`] looks for a lay and keeps it in the collection, [`LayJob`] says what is
//! laid and [`lay_file`] writes it; [`plan_order`] plans the lays of an order; [`pack`] makes the production pack, [`story`] the story sheet and [`patterns`] the pattern files;
//! [`PatternSource`] reads a pattern of the maker's own, which goes into a style or begins one.
//!
//! Whoever waits is told how far the work is, and may set a flag to end it. Nothing here reads arguments
//! or addresses, prints, looks at a clock or starts a thread: dates are given, and only `lay` searches.
//!
//! ```
//! use std::sync::atomic::AtomicBool;
//!
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref())?;
//! let order = jobs::PackOrder { size: None, date: jiff::civil::date(2026, 3, 1) };
//! // Whoever cancels gets nothing half made.
//! let cancelled = AtomicBool::new(true);
//! let pack = jobs::pack(&loaded, &order, &cancelled, &mut |_| ());
//! assert!(matches!(pack, Err(jobs::JobError::Cancelled)));
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod asked;
mod bring;
mod error;
mod lay_file;
mod lay_job;
mod lay_search;
mod pack;
mod patterns;
mod plan;
mod printed;
mod story;

pub use asked::{can_be_cut, cloth_of, size_of, stem, system};
pub use bring::{Brought, Meant, PatternSource, begin_with, bring_into, unclear};
pub use error::JobError;
pub use lay_file::{LaidOut, LayKind, lay_file};
pub use lay_job::{LayJob, LayOrder};
pub use lay_search::{Finder, Found, Kept, apart, kept_lay};
pub use pack::{MadePack, PackOrder, PackStage, pack};
pub use patterns::{MadePatterns, PatternKind, PatternOrder, PatternOutput, patterns};
pub use plan::{
    LayDrawing, PlanStage, PlannedCloth, order_cloths, plan_order, plan_order_cloth, unusual,
};
pub use story::{MadeStory, StoryOrder, story};

// What a caller says of a pattern file.
pub use ::patterns::dxf::FileUnit;
