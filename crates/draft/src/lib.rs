//! From measurement chart to pieces.
//!
//! A [`Spec`] is one size of one style: finished measures plus the few shape choices the chart
//! leaves open. The block construction gives a first shape; a least-squares solve moves its free
//! parameters until **measuring the pattern the way the inspector measures the garment** gives the
//! chart. Everything else (pockets, fly, band, loops) is then laid out on the solved panels.
//! [`draft`] always gives pieces; where the chart contradicts itself it also says why, and [`remedies`] which changes
//! would end it. Where a style names a pattern of the maker's own, [`draft_style`] takes the panels from
//! there and lays out the rest on them. [`findings`] then checks the pieces by the rules of the trade ([`RULES`]).
//!
//! ```
//! let demo = concat!(env!("CARGO_MANIFEST_DIR"), "/../style/demo/saltmarsh/styles/ferryman");
//! let loaded = style::load(demo.as_ref())?;
//! let drafted = draft::draft_style(&loaded.style, loaded.style.sizes.base);
//! assert!(drafted.conflict.is_none());
//! assert!(drafted.pattern.piece(draft::PieceId::Yoke).is_some());
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```

mod block;
mod body;
mod conflict;
mod drafted;
mod finding;
mod fit;
mod from_style;
mod ids;
mod join;
mod knob;
mod layout;
pub mod measure;
mod own;
mod parts;
mod pattern;
mod piece;
mod remedies;
mod rules;
pub mod solve;
mod spec;

pub use body::{mean_seat, mean_thigh};
pub use conflict::{Conflict, Moved, Remedy};
pub use drafted::{Drafted, draft, draft_style, starting_proportions};
pub use finding::{Finding, FoundIn, Place, Severity};
pub use join::{EaseOf, EdgeRun, JOINS, Join, Walked, walk};
pub use layout::path_of;
pub use parts::{Parts, parts};
pub use pattern::{FromFile, Measured, Pattern, Proportions};
pub use piece::{
    ClothUse, Cut, Edge, EdgeId, InnerKind, InnerLine, LineId, NamedPoint, Notch, NotchId, Piece,
    PieceId, PointId,
};
pub use remedies::remedies;
pub use rules::{Corner, Joint, RULES, Rule, corners, findings, joints};
pub use spec::{BackPocketSpec, ExtraPocketSpec, Lining, Spec};
