//! What becomes of every cut edge on the sewn pair: none of them ends raw without a word.

use draft::{EdgeId, PieceId};
use style::{Construction, Seam, SeamId};

use super::edge_words::{covers_strip, stays_raw};
use super::operation::Operation;
use super::operation_key::{OperationKey, SeamWork, Task};
use super::pass_kinds::Does;
use crate::construct::{Finish, construct};
use crate::edges::edge_use;
use crate::garment::{CutPiece, Garment, InsideLap, On};

/// What becomes of a cut edge.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EdgeEnd {
    /// Turned in, or between plies that are sewn together round it.
    Enclosed,
    /// The cloth's own finished edge, all along.
    OwnEdge,
    /// Covered by the threads of this operation.
    Neatened(OperationKey),
    /// Raw, as this operation says.
    StaysRaw(OperationKey),
    /// Not stated: this operation asks.
    Asked(OperationKey),
}

/// A cut edge of a piece and what becomes of it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CutEdge {
    /// The piece.
    pub piece: PieceId,
    /// Its edge.
    pub edge: EdgeId,
    /// On which copies.
    pub on: On,
    /// What becomes of it; none where nothing is known, which no style should have.
    pub end: Option<EdgeEnd>,
}

/// Every edge of every cut piece of a garment that is sewn in this order.
pub fn cut_edges(garment: &Garment, order: &[Operation]) -> Vec<CutEdge> {
    let of_piece = |cut: &CutPiece| {
        let edges: Vec<CutEdge> = cut
            .allowances
            .iter()
            .flat_map(|(edge, _)| copies(cut.piece, *edge, cut.on))
            .map(|(edge, on)| CutEdge {
                piece: cut.piece,
                edge,
                on,
                end: end_of(garment, order, (cut.piece, edge, on)),
            })
            .collect();
        edges
    };
    garment.cut.iter().flat_map(of_piece).collect()
}

/// The left front is joined to the facing, the right one to the shield.
fn copies(piece: PieceId, edge: EdgeId, on: On) -> Vec<(EdgeId, On)> {
    if (piece, edge, on) == (PieceId::Front, EdgeId::Fly, On::Both) {
        vec![(edge, On::AsDrawn), (edge, On::Mirrored)]
    } else {
        vec![(edge, on)]
    }
}

fn end_of(
    garment: &Garment,
    order: &[Operation],
    (piece, edge, on): (PieceId, EdgeId, On),
) -> Option<EdgeEnd> {
    use EdgeId as E;
    use PieceId as P;
    let shield = || asked(order, Task::FlyShieldNeaten.into());
    match (piece, edge, on) {
        (P::Front, E::Fly, On::Mirrored) | (P::FlyShield, E::Left | E::Right, _) => shield(),
        // Closed, or folded under, where the piece is made ready.
        (P::FlyShield, E::Foot, _) | (P::LoopStrip, E::EndFoot | E::EndTop, _) => {
            Some(EdgeEnd::Enclosed)
        }
        // In the fold of the band.
        (P::Band, E::CentreBack, _) => Some(EdgeEnd::Enclosed),
        _ => match edge_use(piece, edge).seam() {
            Some(id) => in_seam(garment, order, id, (piece, edge)),
            // The lining's upper edge in the hem of its pocket, the others turned in.
            None => {
                matches!(piece, P::BackLiningLeft | P::BackLiningRight).then_some(EdgeEnd::Enclosed)
            }
        },
    }
}

fn in_seam(
    garment: &Garment,
    order: &[Operation],
    id: SeamId,
    at: (PieceId, EdgeId),
) -> Option<EdgeEnd> {
    let Some(seam) = garment.seams.iter().find(|seam| seam.id == id) else {
        return asked(order, OperationKey::of_seam(id, SeamWork::Sew));
    };
    match construct(seam.construction).finish {
        Finish::Folded => Some(EdgeEnd::Enclosed),
        Finish::Selvedge => Some(EdgeEnd::OwnEdge),
        Finish::Overedged => overedged(garment, order, seam, at),
        Finish::Raw => left_raw(order, seam),
    }
}

/// An edge that an overedge covers, by a row of the style or by one that is asked for.
fn overedged(
    garment: &Garment,
    order: &[Operation],
    seam: &Seam,
    at: (PieceId, EdgeId),
) -> Option<EdgeEnd> {
    let laps = garment
        .laps
        .iter()
        .filter(|lap| (lap.piece, lap.edge) == at);
    let mut finishes = laps.map(|lap: &InsideLap| lap.finish).peekable();
    if finishes.peek().is_some() && finishes.all(|finish| finish == Finish::Selvedge) {
        return Some(EdgeEnd::OwnEdge);
    }
    let covers = |o: &&Operation| {
        let mut needles = o.needles.iter();
        o.key.seam() == Some(seam.id) && needles.any(|needle| needle.stitch.is_overedge())
    };
    match order.iter().find(covers) {
        Some(operation) => Some(EdgeEnd::Neatened(operation.key)),
        None => [SeamWork::Pass(Does::Neatens), SeamWork::Sew]
            .into_iter()
            .find_map(|work| asked(order, OperationKey::of_seam(seam.id, work))),
    }
}

/// An edge of a construction that leaves it raw: between its plies, or in sight.
fn left_raw(order: &[Operation], seam: &Seam) -> Option<EdgeEnd> {
    let sewn = || order.iter().find(|o| o.key.seam() == Some(seam.id));
    let key = sewn().map(|operation| operation.key);
    match seam.construction {
        Construction::Strip if covers_strip(seam) => key.map(EdgeEnd::Neatened),
        Construction::LaidOn if !stays_raw(seam) => {
            let covers = |o: &&Operation| {
                let mut needles = o.needles.iter();
                o.key.seam() == Some(seam.id) && needles.any(|n| n.stitch.is_overedge())
            };
            let found = order.iter().find(covers);
            found.map(|operation| EdgeEnd::Neatened(operation.key))
        }
        Construction::Strip | Construction::LaidOn => key.map(EdgeEnd::StaysRaw),
        // Facing or bag lies behind it.
        Construction::TurnedEdge => Some(EdgeEnd::Enclosed),
        _ => None,
    }
}

fn asked(order: &[Operation], key: OperationKey) -> Option<EdgeEnd> {
    let there = order.iter().any(|operation| operation.key == key);
    there.then_some(EdgeEnd::Asked(key))
}
