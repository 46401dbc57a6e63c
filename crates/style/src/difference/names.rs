//! What seams and pieces are called within a sentence about a change.

use words::{Given, Key, key};

use crate::{PieceId, SeamId};

/// A seam by its name in a file.
pub(super) fn seam(name: &str) -> Given {
    SeamId::of(name).map_or_else(|| name.into(), Given::from)
}

/// A piece that can be brought, by its name in a file.
pub(super) fn piece(name: &str) -> Given {
    let known = PieceId::of(name).and_then(piece_key);
    known.map_or_else(|| name.into(), Given::from)
}

/// `None` for the pieces that nobody can bring.
const fn piece_key(piece: PieceId) -> Option<Key> {
    Some(match piece {
        PieceId::Front => key::DIFFERENCE_PIECE_FRONT,
        PieceId::Back => key::DIFFERENCE_PIECE_BACK,
        PieceId::Yoke => key::DIFFERENCE_PIECE_YOKE,
        PieceId::Band => key::DIFFERENCE_PIECE_BAND,
        PieceId::PocketFacing => key::DIFFERENCE_PIECE_POCKET_FACING,
        PieceId::CoinPocket => key::DIFFERENCE_PIECE_COIN_POCKET,
        PieceId::BackPocketLeft => key::DIFFERENCE_PIECE_BACK_POCKET_LEFT,
        PieceId::BackPocketRight => key::DIFFERENCE_PIECE_BACK_POCKET_RIGHT,
        _ => return None,
    })
}
