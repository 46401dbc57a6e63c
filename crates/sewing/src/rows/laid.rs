//! A row before its yarns.

use draft::PieceId;
use geometry::Path;

use crate::garment::{On, RowEnd};

/// A laid row, before its yarns.
#[derive(Clone)]
pub(super) struct Laid {
    pub piece: PieceId,
    pub on: On,
    pub path: Path,
    pub begins: RowEnd,
    pub ends: RowEnd,
    pub outside: bool,
    pub inside: bool,
}
