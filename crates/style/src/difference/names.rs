//! What seams and pieces are called within a sentence about a change.

use words::{Given, key};

use crate::PieceId;

/// A piece; the back pockets as the changes of their section name them.
pub(super) fn piece(piece: PieceId) -> Given {
    match piece {
        PieceId::BackPocketLeft => key::DIFFERENCE_BACK_POCKET_LEFT.into(),
        PieceId::BackPocketRight => key::DIFFERENCE_BACK_POCKET_RIGHT.into(),
        other => other.within().into(),
    }
}
