//! What is turned in at the ends of a band.

use draft::{EdgeId, PieceId};
use style::MeasureId;
use trade::Length;

use crate::edges::allowance;
use crate::garment::{Garment, On};

/// What is turned in at the ends of a band.
pub(super) fn turned_at_ends(garment: &Garment) -> Length {
    let depth = garment.sewn(MeasureId::HemDepth).figure();
    let (piece, edge) = (PieceId::Band, EdgeId::EndLeft);
    allowance(&garment.seams, depth, piece, edge, On::AsDrawn)
}
