//! DXF by the practice of ASTM D6673.
//!
//! The practice (editions 2001 to 2010, withdrawn 2019 and still what the trade exchanges) writes each
//! piece in each size as a block, uses the block once among the entities, and tells lines apart by layers
//! whose names are numbers. We write the plainest form there is, release 12 in ASCII, which every program
//! reads, in true millimetres. Read is any ASCII DXF from release 12 on, within [`crate::limits`].
//!
//! | layer | holds | source |
//! |---|---|---|
//! | 1 | cut line, texts of the piece | published lists of the practice's layers |
//! | 2, 3 | turn points, curve points | the same |
//! | 4 | notches: slit and V | the same |
//! | 5 | grade reference line | the same |
//! | 6, 7 | mirror line, grain line | the same |
//! | 8, 9, 10 | internal lines, stripe and plaid references | the same |
//! | 11 | internal cut-outs | the same |
//! | 13 | drill holes | the same |
//! | 14 | sewn lines | the same |
//! | 15 | annotation text | the same |
//! | 80, 81, 82, 83 | T, castle, check and U notches | the same |
//!
//! From memory, to be confirmed: the keys of texts (`Piece Name:`, `Quantity: as drawn,mirrored`, ...), a
//! notch as a point whose thickness is its depth and whose angle points into the piece, and dates written
//! day first. Grade rules are not written: every size is a block of its own, as it was solved.

mod drawing;
mod entity;
mod flattened;
mod groups;
mod lay;
mod layer;
mod loose;
mod mark;
mod piece;
mod read;
mod write;
mod writer;

pub use lay::write_lay;
pub use read::{FileUnit, read};
pub use write::write;
pub use writer::is_ours;
