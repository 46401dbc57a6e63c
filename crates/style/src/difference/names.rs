//! What measures, seams and pieces are called within a sentence about a change.

use words::{Given, Key, key};

use crate::{MeasureId, PieceId, SeamId};

/// A measure by its name in a file.
pub(super) fn measure(name: &str) -> Given {
    MeasureId::of(name).map_or_else(|| name.into(), |measure| measure_key(measure).into())
}

/// A seam by its name in a file.
pub(super) fn seam(name: &str) -> Given {
    SeamId::of(name).map_or_else(|| name.into(), Given::from)
}

/// A piece that can be brought, by its name in a file.
pub(super) fn piece(name: &str) -> Given {
    let known = PieceId::of(name).and_then(piece_key);
    known.map_or_else(|| name.into(), Given::from)
}

const fn measure_key(measure: MeasureId) -> Key {
    match measure {
        MeasureId::Waist => key::DIFFERENCE_MEASURE_WAIST,
        MeasureId::Seat => key::DIFFERENCE_MEASURE_SEAT,
        MeasureId::FrontRise => key::DIFFERENCE_MEASURE_FRONT_RISE,
        MeasureId::BackRise => key::DIFFERENCE_MEASURE_BACK_RISE,
        MeasureId::Thigh => key::DIFFERENCE_MEASURE_THIGH,
        MeasureId::Knee => key::DIFFERENCE_MEASURE_KNEE,
        MeasureId::Hem => key::DIFFERENCE_MEASURE_HEM,
        MeasureId::Inseam => key::DIFFERENCE_MEASURE_INSEAM,
        MeasureId::Outseam => key::DIFFERENCE_MEASURE_OUTSEAM,
        MeasureId::BandHeight => key::DIFFERENCE_MEASURE_BAND_HEIGHT,
        MeasureId::BandOverlap => key::DIFFERENCE_MEASURE_BAND_OVERLAP,
        MeasureId::FlyLength => key::DIFFERENCE_MEASURE_FLY_LENGTH,
        MeasureId::FlyWidth => key::DIFFERENCE_MEASURE_FLY_WIDTH,
        MeasureId::YokeCentre => key::DIFFERENCE_MEASURE_YOKE_CENTRE,
        MeasureId::YokeSide => key::DIFFERENCE_MEASURE_YOKE_SIDE,
        MeasureId::MouthWidth => key::DIFFERENCE_MEASURE_MOUTH_WIDTH,
        MeasureId::MouthDepth => key::DIFFERENCE_MEASURE_MOUTH_DEPTH,
        MeasureId::CoinWidth => key::DIFFERENCE_MEASURE_COIN_WIDTH,
        MeasureId::CoinDepth => key::DIFFERENCE_MEASURE_COIN_DEPTH,
        MeasureId::BackPocketWidth => key::DIFFERENCE_MEASURE_BACK_POCKET_WIDTH,
        MeasureId::BackPocketLength => key::DIFFERENCE_MEASURE_BACK_POCKET_LENGTH,
        MeasureId::BackPocketFromYoke => key::DIFFERENCE_MEASURE_BACK_POCKET_FROM_YOKE,
        MeasureId::BackPocketFromCentre => key::DIFFERENCE_MEASURE_BACK_POCKET_FROM_CENTRE,
        MeasureId::LoopLength => key::DIFFERENCE_MEASURE_LOOP_LENGTH,
        MeasureId::LoopWidth => key::DIFFERENCE_MEASURE_LOOP_WIDTH,
        MeasureId::HemDepth => key::DIFFERENCE_MEASURE_HEM_DEPTH,
    }
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
