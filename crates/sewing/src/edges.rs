//! Which seam uses which edge of which piece, and so what is cut beyond it.

use draft::PieceId;
use style::{Construction, Ply, Seam, SeamId, known};
use trade::Length;

use crate::allowance::allowances;
use crate::garment::On;

/// What is done with an edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EdgeUse {
    /// Sewn into a seam, as this ply.
    Sewn(SeamId, PlyOf),
    /// Sewn into a seam a style may leave out; without it this much is cut beyond it (common practice).
    SewnOrFree(SeamId, Length),
    /// In no seam of the style; this much is cut beyond it (common practice).
    Free(Length),
}

impl EdgeUse {
    /// The seam it is sewn into, whether or not a style may leave that seam out.
    pub const fn seam(self) -> Option<SeamId> {
        match self {
            EdgeUse::Sewn(seam, _) | EdgeUse::SewnOrFree(seam, _) => Some(seam),
            EdgeUse::Free(_) => None,
        }
    }
}

/// Which ply of a seam an edge is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlyOf {
    /// Always this one.
    Is(Ply),
    /// The left or the right, by the copy of the piece.
    Side,
    /// The seam does not ask.
    Only,
}

/// Ends of the band, and every edge that is turned in by hand.
const TURNED_IN: Length = Length::mm(10.0);

/// What is done with an edge of a piece.
pub fn edge_use(piece: PieceId, edge: &str) -> EdgeUse {
    use EdgeUse::{Free, Sewn};
    use PieceId as P;
    let front = PlyOf::Is(Ply::Front);
    let back = PlyOf::Is(Ply::Back);
    let yoke = PlyOf::Is(Ply::Yoke);
    match (piece, edge) {
        (P::Front, "fly") => Sewn(SeamId::Fly, PlyOf::Only),
        (P::Front, "crotch") => Sewn(SeamId::FrontRise, PlyOf::Side),
        (P::Front, "inseam") => Sewn(SeamId::Inseam, front),
        (P::Front | P::Back, "hem") => Sewn(SeamId::Hem, PlyOf::Only),
        (P::Front | P::PocketFacing, "side")
        | (P::PocketFacing | P::PocketBag, "side_under")
        | (P::PocketBag, "side_upper") => Sewn(SeamId::Outseam, front),
        (P::Front | P::PocketBag, "mouth") => Sewn(SeamId::Mouth, PlyOf::Only),
        (P::Front | P::PocketFacing, "waist")
        | (P::PocketFacing | P::PocketBag, "waist_under")
        | (P::PocketBag, "waist_upper")
        | (P::Yoke | P::FlyFacing | P::FlyShield, "top")
        | (P::Band, _) => Sewn(SeamId::Band, PlyOf::Only),
        (P::Back, "seat") | (P::Yoke, "centre") => Sewn(SeamId::Seat, PlyOf::Side),
        (P::Back, "inseam") => Sewn(SeamId::Inseam, back),
        (P::Back | P::Yoke, "side") => Sewn(SeamId::Outseam, back),
        (P::Back, "top") => Sewn(SeamId::Yoke, back),
        (P::Yoke, "lower") => Sewn(SeamId::Yoke, yoke),
        (P::FlyFacing, "edge") => Sewn(SeamId::Fly, PlyOf::Only),
        // Overedged on the finished line where nothing else is said.
        (P::FlyFacing, _) => EdgeUse::SewnOrFree(SeamId::FlyEdge, Length::ZERO),
        (P::PocketFacing, "inner") => Sewn(SeamId::FacingSet, PlyOf::Only),
        (P::CoinPocket, "top") => Sewn(SeamId::CoinHem, PlyOf::Only),
        (P::CoinPocket, _) => Sewn(SeamId::CoinSet, PlyOf::Only),
        (P::PocketBag, "foot_upper" | "foot_under") => Sewn(SeamId::BagClose, PlyOf::Only),
        (P::BackPocketLeft | P::BackPocketRight, "top") => Sewn(SeamId::BackPocketHem, PlyOf::Only),
        (P::BackPocketLeft | P::BackPocketRight, _)
        | (
            P::BackLiningLeft | P::BackLiningRight,
            "inner" | "outer" | "foot_inner" | "foot_outer",
        ) => Sewn(SeamId::BackPocketSet, PlyOf::Only),
        (P::ExtraPocket, "top") => Sewn(SeamId::ExtraHem, PlyOf::Only),
        (P::ExtraPocket, _) => Sewn(SeamId::ExtraSet, PlyOf::Only),
        (P::LoopStrip, _) => Sewn(SeamId::LoopEdge, PlyOf::Only),
        // Shield sides and foot, top and foot of a lining: turned in.
        _ => Free(TURNED_IN),
    }
}

/// The side of the wearer a copy of a panel is on. Fronts are drawn as the left, backs as the right.
pub(crate) fn side_of(piece: PieceId, mirrored: bool) -> Ply {
    let drawn_left = piece == PieceId::Front;
    if drawn_left == mirrored {
        Ply::Right
    } else {
        Ply::Left
    }
}

/// The ply of a seam that lies on top: as stated, else as usual for the seam.
pub(crate) fn over_ply(seam: &Seam) -> Option<Ply> {
    seam.lap
        .or(known::seam(seam.id).usual_lap)
        .map(|lap| lap.over)
}

/// What is cut beyond an edge on one copy of a piece.
pub(crate) fn allowance(
    seams: &[Seam],
    hem_depth: Length,
    piece: PieceId,
    edge: &str,
    on: On,
) -> Length {
    let (id, ply) = match edge_use(piece, edge) {
        EdgeUse::Free(length) => return length,
        EdgeUse::SewnOrFree(id, length) => match seams.iter().find(|s| s.id == id) {
            // A facing that is only overedged keeps its edge on the finished line.
            Some(seam) if seam.construction != Construction::Overlocked => (id, PlyOf::Only),
            _ => return length,
        },
        EdgeUse::Sewn(id, ply) => (id, ply),
    };
    let Some(seam) = seams.iter().find(|s| s.id == id) else {
        return TURNED_IN;
    };
    let both = allowances(seam, hem_depth);
    let ply = match ply {
        PlyOf::Is(ply) => Some(ply),
        PlyOf::Side => Some(side_of(piece, on == On::Mirrored)),
        PlyOf::Only => None,
    };
    if ply.is_none() || ply == over_ply(seam) {
        both.over
    } else {
        both.under
    }
}
