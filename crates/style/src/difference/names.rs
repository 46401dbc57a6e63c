//! What seams and pieces are called within a sentence about a change.

use words::{Given, key};

use crate::PieceId;

/// A piece by its name in a file; the back pockets as the changes of their section name them.
pub(super) fn piece(name: &str) -> Given {
    match PieceId::of(name) {
        Some(PieceId::BackPocketLeft) => key::DIFFERENCE_BACK_POCKET_LEFT.into(),
        Some(PieceId::BackPocketRight) => key::DIFFERENCE_BACK_POCKET_RIGHT.into(),
        Some(other) => other.within().into(),
        None => name.into(),
    }
}
