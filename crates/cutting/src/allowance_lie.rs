//! How the allowance beyond an edge comes to lie when the seam is sewn, and which seam is sewn first.
//!
//! Everything a corner needs to know follows from these two. The order is that of jeans whose legs
//! are closed last (common practice); the way an allowance lies follows from the construction of its
//! seam.

use draft::{EdgeId, PieceId};
use sewing::{CLOTH_TURN, EdgeUse, Fell, On, PlyOf, allowances, edge_use, turned_depth};
use style::{Construction, Ply, Seam, SeamId, known};
use trade::Length;

/// How the allowance beyond an edge lies in the sewn garment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Lie {
    /// No cloth is cut beyond the edge.
    None,
    /// Opened over the edge: each ply's allowance is pressed back onto its own piece, so both plies
    /// have to end alike when they are sewn.
    Opened,
    /// Turned back over the edge onto its own piece, alone or on top of the other ply.
    Turned,
    /// Lies flat under or inside the piece it is sewn to.
    Across,
    /// Reaches `lap` across under the other piece; the rest is turned back on itself.
    Felled {
        /// From the edge to the fold inside the seam.
        lap: Length,
    },
    /// Turned up over the edge by `first`; the rest is turned in on itself.
    Hemmed {
        /// From the edge to the second fold.
        first: Length,
    },
}

/// What is known about one edge of one copy of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct EdgeLie {
    /// The seam the edge is sewn into; `None` for an edge in no seam of the style.
    pub seam: Option<SeamId>,
    /// How that seam is made.
    pub construction: Option<Construction>,
    /// How the allowance lies.
    pub lie: Lie,
    /// What is cut beyond the edge.
    pub allowance: Length,
    /// Whether this ply lies on top, seen from outside, where one of two does.
    pub over: Option<bool>,
}

/// The place of a seam in the order of sewing, for seams that cross; edges in no seam are turned in
/// before anything is sewn across them. Common practice: pockets, fly, yoke, seat, front rise, legs,
/// band, hem.
pub(crate) const fn rank(seam: Option<SeamId>) -> u8 {
    let Some(seam) = seam else {
        return 0;
    };
    match seam {
        SeamId::CoinHem => 1,
        SeamId::BackPocketHem => 2,
        SeamId::ExtraHem => 3,
        SeamId::LoopEdge => 4,
        // What is set on is set on with the pockets.
        SeamId::FacingSet
        | SeamId::CoinSet
        | SeamId::BackPocketSet
        | SeamId::ExtraSet
        | SeamId::Decoration
        | SeamId::PatchSet
        | SeamId::LabelSet
        | SeamId::BandJoin => 5,
        SeamId::Mouth => 6,
        SeamId::BagClose => 7,
        SeamId::Fly => 8,
        SeamId::FlyEdge => 9,
        SeamId::Yoke => 10,
        SeamId::Seat => 11,
        SeamId::FrontRise => 12,
        SeamId::Outseam => 13,
        SeamId::Inseam => 14,
        SeamId::Band => 15,
        SeamId::Hem => 16,
    }
}

/// The wearer's side of a copy: fronts, hip pockets and coin pocket are drawn as the left,
/// backs, yokes and back pockets as the right. `None` for pieces that belong to neither.
pub fn side_of(piece: PieceId, mirrored: bool) -> Option<Ply> {
    use PieceId as P;
    let drawn_left = match piece {
        P::Front | P::PocketFacing | P::PocketBag | P::CoinPocket => true,
        P::Back
        | P::Yoke
        | P::BackPocketLeft
        | P::BackPocketRight
        | P::BackLiningLeft
        | P::BackLiningRight => false,
        P::Band | P::FlyFacing | P::FlyShield | P::LoopStrip | P::ExtraPocket => return None,
    };
    Some(if drawn_left == mirrored {
        Ply::Right
    } else {
        Ply::Left
    })
}

/// The ply of a seam that lies on top: as stated, else as usual for the seam.
fn over_ply(seam: &Seam) -> Option<Ply> {
    seam.lap
        .or(known::seam(seam.id).usual_lap)
        .map(|lap| lap.over)
}

/// How every edge of one copy of a piece lies, in the order of its edges.
///
/// `stated` are the allowances the sewn garment asks for. Only a hem is different here: its depth is
/// a finished measure, so `hem_depth` is the depth before the wash; all other allowances are what the
/// machine takes up and stay as they are (common practice).
pub(crate) fn lies(
    seams: &[Seam],
    hem_depth: Length,
    piece: PieceId,
    on: On,
    stated: &[(EdgeId, Length)],
) -> Vec<EdgeLie> {
    stated
        .iter()
        .map(|(edge, allowance)| lie_of(seams, hem_depth, piece, on, *edge, *allowance))
        .collect()
}

fn lie_of(
    seams: &[Seam],
    hem_depth: Length,
    piece: PieceId,
    on: On,
    edge: EdgeId,
    stated: Length,
) -> EdgeLie {
    let (id, ply) = match edge_use(piece, edge) {
        EdgeUse::Sewn(id, ply) => (Some(id), ply),
        EdgeUse::SewnOrFree(id, _) => (Some(id), PlyOf::Only),
        EdgeUse::Free(_) => (None, PlyOf::Only),
    };
    let seam = id.and_then(|id| seams.iter().find(|s| s.id == id));
    let ply = match ply {
        PlyOf::Is(ply) => Some(ply),
        PlyOf::Side => side_of(piece, on == On::Mirrored),
        PlyOf::Only => None,
    };
    let over = seam.and_then(|seam| Some(ply? == over_ply(seam)?));
    let hemmed = seam.filter(|s| {
        matches!(
            s.construction,
            Construction::RolledHem | Construction::FoldedHem
        )
    });
    let allowance = hemmed.map_or(stated, |seam| allowances(seam, hem_depth).over);
    let lie = if allowance <= Length::ZERO || !allowance.is_finite() {
        Lie::None
    } else {
        seam.map_or(Lie::Turned, |seam| lie(seam, over, piece, hem_depth))
    };
    EdgeLie {
        seam: id,
        construction: seam.map(|s| s.construction),
        lie,
        allowance: if lie == Lie::None {
            Length::ZERO
        } else {
            allowance
        },
        over,
    }
}

fn lie(seam: &Seam, over: Option<bool>, piece: PieceId, hem_depth: Length) -> Lie {
    use Construction as C;
    let under = over == Some(false);
    match seam.construction {
        C::PressedOpen => Lie::Opened,
        C::LapFelled if under => Lie::Felled {
            lap: Fell::of(seam).width,
        },
        C::MockFelled | C::SafetyStitched | C::Overlocked if under => Lie::Across,
        // The raw edge of the body stands up inside the band; the band's own edges are turned in.
        C::BandOverEdge | C::BandTurned if piece != PieceId::Band => Lie::Across,
        C::RolledHem | C::FoldedHem => Lie::Hemmed {
            first: hem_depth.max(Length::ZERO) + CLOTH_TURN,
        },
        C::TurnedHem => Lie::Hemmed {
            first: turned_depth(seam) + CLOTH_TURN,
        },
        _ => Lie::Turned,
    }
}

/// A corner of another piece, or of the other copy of the same one, that meets a corner when the seam
/// between them is sewn: the piece, the edge sewn on, whether at that edge's end, and whether the
/// copies lie on different sides of the wearer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Beside {
    pub piece: PieceId,
    pub edge: EdgeId,
    pub at_end: bool,
    pub other_side: bool,
}

/// Which ends of two edges meet when they are sewn to each other.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Meet {
    /// The start of one and the end of the other.
    Crosswise,
    /// Start and start, end and end.
    Alike,
    /// Only start and start; at its end an edge goes on in another piece.
    Starts,
    /// Only end and end.
    Ends,
}

/// Two edges that are sewn to each other on one side of the wearer.
struct SewnTogether {
    one: (PieceId, EdgeId),
    other: (PieceId, EdgeId),
    meet: Meet,
}

const SAME_SIDE: [SewnTogether; 4] = {
    use PieceId::{Back, Front, PocketFacing, Yoke};
    [
        SewnTogether {
            one: (Back, EdgeId::Top),
            other: (Yoke, EdgeId::Lower),
            meet: Meet::Crosswise,
        },
        SewnTogether {
            one: (Front, EdgeId::Inseam),
            other: (Back, EdgeId::Inseam),
            meet: Meet::Alike,
        },
        SewnTogether {
            one: (Front, EdgeId::Side),
            other: (Back, EdgeId::Side),
            meet: Meet::Starts,
        },
        SewnTogether {
            one: (PocketFacing, EdgeId::Side),
            other: (Yoke, EdgeId::Side),
            meet: Meet::Ends,
        },
    ]
};

/// Edges that are sewn to those of the other copy.
const OTHER_SIDE: [(PieceId, EdgeId); 3] = [
    (PieceId::Back, EdgeId::Seat),
    (PieceId::Yoke, EdgeId::Centre),
    (PieceId::Front, EdgeId::Crotch),
];

/// Which corner lies beside the end of an edge once it is sewn.
pub(crate) fn beside(piece: PieceId, edge: EdgeId, at_end: bool) -> Option<Beside> {
    let here = (piece, edge);
    if OTHER_SIDE.contains(&here) {
        return Some(Beside {
            piece,
            edge,
            at_end,
            other_side: true,
        });
    }
    SAME_SIDE.iter().find_map(|sewn| {
        let (piece, edge) = match here {
            here if here == sewn.one => sewn.other,
            here if here == sewn.other => sewn.one,
            _ => return None,
        };
        let at_end = match sewn.meet {
            Meet::Crosswise => !at_end,
            Meet::Starts if at_end => return None,
            Meet::Ends if !at_end => return None,
            Meet::Alike | Meet::Starts | Meet::Ends => at_end,
        };
        Some(Beside {
            piece,
            edge,
            at_end,
            other_side: false,
        })
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn every_seam_that_crosses_has_its_place() {
        assert!(rank(Some(SeamId::Yoke)) < rank(Some(SeamId::Seat)));
        assert!(rank(Some(SeamId::Seat)) < rank(Some(SeamId::Inseam)));
        assert!(rank(Some(SeamId::Mouth)) < rank(Some(SeamId::Outseam)));
        assert!(rank(Some(SeamId::Outseam)) < rank(Some(SeamId::Band)));
        assert!(rank(None) < rank(Some(SeamId::CoinHem)));
        assert!(rank(Some(SeamId::BackPocketHem)) < rank(Some(SeamId::BackPocketSet)));
    }

    #[test]
    fn what_lies_beside_lies_beside_it_too() {
        for piece in PieceId::ALL {
            for edge in EdgeId::ALL {
                for at_end in [false, true] {
                    if let Some(b) = beside(piece, edge, at_end) {
                        let back = beside(b.piece, b.edge, b.at_end).unwrap();
                        assert_eq!((back.piece, back.edge, back.at_end), (piece, edge, at_end));
                    }
                }
            }
        }
    }
}
