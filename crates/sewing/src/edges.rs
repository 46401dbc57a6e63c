//! Which seam uses which edge of which piece, and so what is cut beyond it.

use draft::{EdgeId, PieceId};
use style::{Ply, Seam, SeamId, known};
use trade::Length;

use crate::allowance::allowances;
use crate::garment::On;
use crate::joining::JOIN_ALLOWANCE;

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
pub fn edge_use(piece: PieceId, edge: EdgeId) -> EdgeUse {
    // Only a half of a band has it; the band as it is drafted is whole.
    if (piece, edge) == (PieceId::Band, EdgeId::CentreBack) {
        return EdgeUse::SewnOrFree(SeamId::BandJoin, JOIN_ALLOWANCE);
    }
    let found = uses(piece).iter().find(|(id, _)| *id == edge);
    // Left are edges only a lining of half a pocket has; they are turned in.
    found.map_or(EdgeUse::Free(TURNED_IN), |(_, use_)| *use_)
}

/// What is done with each edge of a piece.
const fn uses(piece: PieceId) -> &'static [(EdgeId, EdgeUse)] {
    use EdgeId as E;
    use EdgeUse::{Free, Sewn, SewnOrFree};
    use PieceId as P;
    use PlyOf::{Is, Only, Side};
    match piece {
        P::Front => &[
            (E::Fly, Sewn(SeamId::Fly, Only)),
            (E::Crotch, Sewn(SeamId::FrontRise, Side)),
            (E::Inseam, Sewn(SeamId::Inseam, Is(Ply::Front))),
            (E::Hem, Sewn(SeamId::Hem, Only)),
            (E::Side, Sewn(SeamId::Outseam, Is(Ply::Front))),
            (E::Mouth, Sewn(SeamId::Mouth, Only)),
            (E::Waist, Sewn(SeamId::Band, Only)),
        ],
        P::Back => &[
            (E::Seat, Sewn(SeamId::Seat, Side)),
            (E::Inseam, Sewn(SeamId::Inseam, Is(Ply::Back))),
            (E::Hem, Sewn(SeamId::Hem, Only)),
            (E::Side, Sewn(SeamId::Outseam, Is(Ply::Back))),
            (E::Top, Sewn(SeamId::Yoke, Is(Ply::Back))),
        ],
        P::Yoke => &[
            (E::Centre, Sewn(SeamId::Seat, Side)),
            (E::Lower, Sewn(SeamId::Yoke, Is(Ply::Yoke))),
            (E::Side, Sewn(SeamId::Outseam, Is(Ply::Back))),
            (E::Top, Sewn(SeamId::Band, Only)),
        ],
        P::Band => &[
            (E::Join, Sewn(SeamId::Band, Only)),
            (E::Overlap, Sewn(SeamId::Band, Only)),
            (E::EndRight, Sewn(SeamId::Band, Only)),
            (E::Inner, Sewn(SeamId::Band, Only)),
            (E::EndLeft, Sewn(SeamId::Band, Only)),
        ],
        P::FlyFacing => &[
            (E::Edge, Sewn(SeamId::Fly, Only)),
            // Overedged on the finished line where nothing else is said.
            (E::Foot, SewnOrFree(SeamId::FlyEdge, Length::ZERO)),
            (E::Back, SewnOrFree(SeamId::FlyEdge, Length::ZERO)),
            (E::Top, Sewn(SeamId::Band, Only)),
        ],
        P::FlyShield => &[
            (E::Left, Free(TURNED_IN)),
            (E::Foot, Free(TURNED_IN)),
            (E::Right, Free(TURNED_IN)),
            (E::Top, Sewn(SeamId::Band, Only)),
        ],
        P::PocketFacing => &[
            (E::Waist, Sewn(SeamId::Band, Only)),
            (E::WaistUnder, Sewn(SeamId::Band, Only)),
            (E::Inner, Sewn(SeamId::FacingSet, Only)),
            (E::SideUnder, Sewn(SeamId::Outseam, Is(Ply::Front))),
            (E::Side, Sewn(SeamId::Outseam, Is(Ply::Front))),
        ],
        P::CoinPocket => &[
            (E::Left, Sewn(SeamId::CoinSet, Only)),
            (E::Foot, Sewn(SeamId::CoinSet, Only)),
            (E::Right, Sewn(SeamId::CoinSet, Only)),
            (E::Top, Sewn(SeamId::CoinHem, Only)),
        ],
        P::PocketBag => &[
            (E::WaistUpper, Sewn(SeamId::Band, Only)),
            (E::Mouth, Sewn(SeamId::Mouth, Only)),
            (E::SideUpper, Sewn(SeamId::Outseam, Is(Ply::Front))),
            (E::FootUpper, Sewn(SeamId::BagClose, Only)),
            (E::FootUnder, Sewn(SeamId::BagClose, Only)),
            (E::SideUnder, Sewn(SeamId::Outseam, Is(Ply::Front))),
            (E::WaistUnder, Sewn(SeamId::Band, Only)),
        ],
        P::BackPocketLeft | P::BackPocketRight => &[
            (E::Inner, Sewn(SeamId::BackPocketSet, Only)),
            (E::FootInner, Sewn(SeamId::BackPocketSet, Only)),
            (E::FootOuter, Sewn(SeamId::BackPocketSet, Only)),
            (E::Outer, Sewn(SeamId::BackPocketSet, Only)),
            (E::Top, Sewn(SeamId::BackPocketHem, Only)),
        ],
        P::BackLiningLeft | P::BackLiningRight => &[
            (E::Inner, Sewn(SeamId::BackPocketSet, Only)),
            (E::FootInner, Sewn(SeamId::BackPocketSet, Only)),
            (E::FootOuter, Sewn(SeamId::BackPocketSet, Only)),
            (E::Outer, Sewn(SeamId::BackPocketSet, Only)),
            // Raw in the fold of the hem, whose rows catch it.
            (E::Top, Free(Length::ZERO)),
        ],
        P::LoopStrip => &[
            (E::EndFoot, Sewn(SeamId::LoopEdge, Only)),
            (E::Right, Sewn(SeamId::LoopEdge, Only)),
            (E::EndTop, Sewn(SeamId::LoopEdge, Only)),
            (E::Left, Sewn(SeamId::LoopEdge, Only)),
        ],
        P::ExtraPocket => &[
            (E::Left, Sewn(SeamId::ExtraSet, Only)),
            (E::Foot, Sewn(SeamId::ExtraSet, Only)),
            (E::Right, Sewn(SeamId::ExtraSet, Only)),
            (E::Top, Sewn(SeamId::ExtraHem, Only)),
        ],
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
    edge: EdgeId,
    on: On,
) -> Length {
    let (id, ply) = match edge_use(piece, edge) {
        EdgeUse::Free(length) => return length,
        EdgeUse::SewnOrFree(id, length) => match seams.iter().find(|s| s.id == id) {
            Some(_) => (id, PlyOf::Only),
            None => return length,
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn of_every_edge_of_every_piece_it_is_said_what_is_done_with_it() {
        for piece in PieceId::ALL {
            let said: Vec<EdgeId> = uses(piece).iter().map(|(edge, _)| *edge).collect();
            assert_eq!(said, piece.edges(), "{piece:?}");
        }
    }
}
