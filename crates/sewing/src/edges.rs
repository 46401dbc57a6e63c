//! Which seam uses which edge of which piece, and so what is cut beyond it.

use draft::{EdgeId, PieceId};
use style::{Construction, Ply, Seam, known};
use trade::Length;

use crate::allowance::allowances;
use crate::garment::On;

/// What is done with an edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum EdgeUse {
    /// Sewn into a seam, as this ply.
    Sewn(&'static str, PlyOf),
    /// Sewn into a seam a style may leave out; without it this much is cut beyond it (common practice).
    SewnOrFree(&'static str, Length),
    /// In no seam of the style; this much is cut beyond it (common practice).
    Free(Length),
}

impl EdgeUse {
    /// The seam it is sewn into, whether or not a style may leave that seam out.
    pub const fn seam(self) -> Option<&'static str> {
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
    let found = uses(piece).iter().find(|(id, _)| *id == edge);
    // Left are edges only a lining of half a pocket and half a band have; both are turned in or joined by hand.
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
            (E::Fly, Sewn("fly", Only)),
            (E::Crotch, Sewn("front_rise", Side)),
            (E::Inseam, Sewn("inseam", Is(Ply::Front))),
            (E::Hem, Sewn("hem", Only)),
            (E::Side, Sewn("outseam", Is(Ply::Front))),
            (E::Mouth, Sewn("mouth", Only)),
            (E::Waist, Sewn("band", Only)),
        ],
        P::Back => &[
            (E::Seat, Sewn("seat", Side)),
            (E::Inseam, Sewn("inseam", Is(Ply::Back))),
            (E::Hem, Sewn("hem", Only)),
            (E::Side, Sewn("outseam", Is(Ply::Back))),
            (E::Top, Sewn("yoke", Is(Ply::Back))),
        ],
        P::Yoke => &[
            (E::Centre, Sewn("seat", Side)),
            (E::Lower, Sewn("yoke", Is(Ply::Yoke))),
            (E::Side, Sewn("outseam", Is(Ply::Back))),
            (E::Top, Sewn("band", Only)),
        ],
        P::Band => &[
            (E::Join, Sewn("band", Only)),
            (E::Overlap, Sewn("band", Only)),
            (E::EndRight, Sewn("band", Only)),
            (E::Inner, Sewn("band", Only)),
            (E::EndLeft, Sewn("band", Only)),
        ],
        P::FlyFacing => &[
            (E::Edge, Sewn("fly", Only)),
            // Overedged on the finished line where nothing else is said.
            (E::Foot, SewnOrFree("fly_edge", Length::ZERO)),
            (E::Back, SewnOrFree("fly_edge", Length::ZERO)),
            (E::Top, Sewn("band", Only)),
        ],
        P::FlyShield => &[
            (E::Left, Free(TURNED_IN)),
            (E::Foot, Free(TURNED_IN)),
            (E::Right, Free(TURNED_IN)),
            (E::Top, Sewn("band", Only)),
        ],
        P::PocketFacing => &[
            (E::Waist, Sewn("band", Only)),
            (E::WaistUnder, Sewn("band", Only)),
            (E::Inner, Sewn("facing_set", Only)),
            (E::SideUnder, Sewn("outseam", Is(Ply::Front))),
            (E::Side, Sewn("outseam", Is(Ply::Front))),
        ],
        P::CoinPocket => &[
            (E::Left, Sewn("coin_set", Only)),
            (E::Foot, Sewn("coin_set", Only)),
            (E::Right, Sewn("coin_set", Only)),
            (E::Top, Sewn("coin_hem", Only)),
        ],
        P::PocketBag => &[
            (E::WaistUpper, Sewn("band", Only)),
            (E::Mouth, Sewn("mouth", Only)),
            (E::SideUpper, Sewn("outseam", Is(Ply::Front))),
            (E::FootUpper, Sewn("bag_close", Only)),
            (E::FootUnder, Sewn("bag_close", Only)),
            (E::SideUnder, Sewn("outseam", Is(Ply::Front))),
            (E::WaistUnder, Sewn("band", Only)),
        ],
        P::BackPocketLeft | P::BackPocketRight => &[
            (E::Inner, Sewn("back_pocket_set", Only)),
            (E::FootInner, Sewn("back_pocket_set", Only)),
            (E::FootOuter, Sewn("back_pocket_set", Only)),
            (E::Outer, Sewn("back_pocket_set", Only)),
            (E::Top, Sewn("back_pocket_hem", Only)),
        ],
        P::BackLiningLeft | P::BackLiningRight => &[
            (E::Inner, Sewn("back_pocket_set", Only)),
            (E::FootInner, Sewn("back_pocket_set", Only)),
            (E::FootOuter, Sewn("back_pocket_set", Only)),
            (E::Outer, Sewn("back_pocket_set", Only)),
            (E::Top, Free(TURNED_IN)),
        ],
        P::LoopStrip => &[
            (E::EndFoot, Sewn("loop_edge", Only)),
            (E::Right, Sewn("loop_edge", Only)),
            (E::EndTop, Sewn("loop_edge", Only)),
            (E::Left, Sewn("loop_edge", Only)),
        ],
        P::ExtraPocket => &[
            (E::Left, Sewn("extra_set", Only)),
            (E::Foot, Sewn("extra_set", Only)),
            (E::Right, Sewn("extra_set", Only)),
            (E::Top, Sewn("extra_hem", Only)),
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
    let usual = known::seam_name(&seam.name).and_then(|s| s.usual_lap);
    seam.lap.or(usual).map(|lap| lap.over)
}

/// What is cut beyond an edge on one copy of a piece.
pub(crate) fn allowance(
    seams: &[Seam],
    hem_depth: Length,
    piece: PieceId,
    edge: EdgeId,
    on: On,
) -> Length {
    let (name, ply) = match edge_use(piece, edge) {
        EdgeUse::Free(length) => return length,
        EdgeUse::SewnOrFree(name, length) => match seams.iter().find(|s| s.name == name) {
            // A facing that is only overedged keeps its edge on the finished line.
            Some(seam) if seam.construction != Construction::Overlocked => (name, PlyOf::Only),
            _ => return length,
        },
        EdgeUse::Sewn(name, ply) => (name, ply),
    };
    let Some(seam) = seams.iter().find(|s| s.name == name) else {
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
