//! A row before its yarns, and how near to the seam line a row joins.

use draft::PieceId;
use geometry::Path;
use trade::Length;

use crate::garment::{On, RowEnd};

/// Rows nearer to the seam line than this are the ones that join the plies.
pub(crate) const JOINING: Length = Length::mm(0.5);

/// A laid row, before its yarns.
pub(super) struct Laid {
    pub piece: PieceId,
    pub on: On,
    pub path: Path,
    pub begins: RowEnd,
    pub ends: RowEnd,
    pub outside: bool,
    pub inside: bool,
}
