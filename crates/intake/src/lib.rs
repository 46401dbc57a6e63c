//! Patterns brought from elsewhere: which piece is which, and which edge.
//!
//! [`look`] takes a pattern file as it was read and gives its pieces as `style` keeps them ([`style::PieceFile`]):
//! one outline with named corners in each size. For each piece it says what it may be, by its name in seven
//! languages and by its shape, and which of its edges is which. What the file itself names is sure; everything else
//! is a guess, and [`table`] marks it as one in the style file, for the maker to confirm. A piece nobody can make
//! out is left aside and said; it is never taken for something it may not be.
//!
//! ```
//! // A file without pieces is told, with what would be right.
//! let empty = patterns::PatternFile::default();
//! let why = intake::look(&empty, "empty.dxf", &intake::Asked::default());
//! assert!(why.is_err());
//! ```

mod edges;
mod names;
mod opened_half;
mod outline;
mod seen_file;
mod sizes;
mod table;

use thiserror::Error;

pub use edges::GuessedEdge;
pub use seen_file::{Asked, Corner, Look, SeenPiece, Side, look};
pub use sizes::SizeName;
pub use table::table;

/// Why a pattern cannot be brought.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
#[error("{what}")]
pub struct IntakeError {
    /// What is in the way.
    pub what: String,
    /// What would be right.
    pub instead: String,
}

impl IntakeError {
    pub(crate) fn new(what: impl Into<String>, instead: impl Into<String>) -> Self {
        Self {
            what: what.into(),
            instead: instead.into(),
        }
    }
}
