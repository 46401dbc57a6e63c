//! Seams, stitch rows, allowances and findings.

mod garment;

pub use garment::{
    CutPiece, Face, Finish, Fixing, FixingKind, Garment, InsideLap, On, RowEnd, RowYarn, StitchRow,
};
