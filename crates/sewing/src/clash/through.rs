//! Which pieces a needle, a rivet or a button goes through.
//!
//! From how the seams are sewn (common practice): what is folded away while a row is sewn is not in its list.

use draft::PieceId;
use style::SeamId;

use crate::garment::{Fixing, FixingKind};

/// The pieces the rows of a seam go through.
pub(super) const fn of_seam(seam: SeamId) -> &'static [PieceId] {
    use PieceId as P;
    match seam {
        SeamId::Outseam => &[P::Front, P::PocketFacing, P::PocketBag, P::Back, P::Yoke],
        SeamId::Inseam | SeamId::Hem => &[P::Front, P::Back],
        SeamId::Seat | SeamId::Yoke => &[P::Back, P::Yoke],
        SeamId::FrontRise => &[P::Front],
        SeamId::Band | SeamId::BandJoin | SeamId::PatchSet | SeamId::LabelSet => &[P::Band],
        // And through the upper layer of the bag, on which nothing else is sewn: the under layer, with all that is set on it,
        // is folded away.
        SeamId::Mouth => &[P::Front],
        // The shield is folded away.
        SeamId::Fly => &[P::Front, P::FlyFacing],
        SeamId::FlyEdge => &[P::FlyFacing],
        SeamId::CoinHem => &[P::CoinPocket],
        SeamId::CoinSet => &[P::CoinPocket, P::PocketFacing],
        SeamId::BackPocketHem | SeamId::Decoration => &[P::BackPocketLeft, P::BackPocketRight],
        SeamId::BackPocketSet => &[
            P::BackPocketLeft,
            P::BackPocketRight,
            P::BackLiningLeft,
            P::BackLiningRight,
            P::Back,
        ],
        // The concealed pocket hangs on the bag's other layer.
        SeamId::FacingSet => &[P::PocketFacing, P::PocketBag],
        SeamId::BagClose => &[P::PocketBag],
        SeamId::ExtraHem => &[P::ExtraPocket],
        SeamId::ExtraSet => &[P::ExtraPocket, P::PocketBag],
        SeamId::LoopEdge => &[P::LoopStrip],
    }
}

/// The pieces something set on a piece goes through, beside those it meets wherever it lies.
pub(super) fn of_fixing(fixing: &Fixing) -> &'static [PieceId] {
    use PieceId as P;
    match (&fixing.kind, fixing.piece) {
        (FixingKind::Rivet(_) | FixingKind::Bartack(..), P::BackPocketLeft) => {
            &[P::BackPocketLeft, P::Back]
        }
        (FixingKind::Rivet(_) | FixingKind::Bartack(..), P::BackPocketRight) => {
            &[P::BackPocketRight, P::Back]
        }
        (FixingKind::Rivet(_) | FixingKind::Bartack(..), P::CoinPocket) => {
            &[P::CoinPocket, P::PocketFacing]
        }
        // At the mouth the facing and both layers of the bag lie behind.
        (FixingKind::Rivet(_), P::Front) => &[P::Front, P::PocketFacing, P::PocketBag],
        (FixingKind::Bartack(..), P::Front) => match fixing.from.seam() {
            Some(SeamId::Mouth) => &[P::Front, P::PocketFacing, P::PocketBag],
            Some(SeamId::Fly) => &[P::Front, P::FlyFacing],
            _ => &[P::Front, P::Back],
        },
        (_, P::Band) => &[P::Band],
        (_, P::FlyShield) => &[P::FlyShield],
        (_, P::FlyFacing) => &[P::FlyFacing],
        _ => &[],
    }
}

/// Whether it is driven through every ply that lies there when it is set: tacks of mouths and loops, and rivets of mouths.
pub(super) fn all_that_lies_there(fixing: &Fixing) -> bool {
    match fixing.kind {
        FixingKind::Rivet(_) => fixing.piece == PieceId::Front,
        FixingKind::Bartack(..) => {
            matches!(fixing.from.seam(), Some(SeamId::Mouth | SeamId::LoopEdge))
        }
        FixingKind::Button(_)
        | FixingKind::Buttonhole(_)
        | FixingKind::Zip(..)
        | FixingKind::Loop(..)
        | FixingKind::Patch(..)
        | FixingKind::Label(..) => false,
    }
}
