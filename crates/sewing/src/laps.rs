//! What is seen of the allowances on the inside, seam by seam.

use draft::{ClothUse, EdgeId, PieceId};
use style::{Construction, MeasureId, Ply, Seam, SeamId};
use trade::Length;

use crate::allowance::{Fell, allowances, turned_depth};
use crate::construct::Finish;
use crate::construct::construct;
use crate::context::Context;
use crate::edges::{over_ply, side_of};
use crate::garment::{InsideLap, On};
use crate::placement::{back_pockets, coin_on, extra_on};
use crate::seam::{Half, Line, Side, facts};

pub(crate) fn laps(context: &Context<'_>) -> Vec<InsideLap> {
    context
        .seams
        .iter()
        .flat_map(|seam| laps_of(context, seam))
        .filter(|lap| context.pattern.piece(lap.piece).is_some())
        .collect()
}

fn laps_of(context: &Context<'_>, seam: &Seam) -> Vec<InsideLap> {
    use PieceId::{Back, Band, CoinPocket, ExtraPocket, Front, PocketBag};
    let spec = &context.pattern.spec;
    match facts(seam.id).line {
        Line::Panels(sides) => return between(context, seam, sides),
        Line::Halves(edges) => return left_and_right(context, seam, edges),
        Line::OfItsOwn => (),
    }
    let lap = |piece, edge, on, width, finish| InsideLap {
        piece,
        on,
        edge,
        width,
        finish,
    };
    let turned = |piece, on| lap(piece, EdgeId::Top, on, turned_depth(seam), Finish::Folded);
    match seam.id {
        SeamId::Hem => [Front, Back]
            .map(|piece| {
                lap(
                    piece,
                    EdgeId::Hem,
                    On::Both,
                    spec[MeasureId::HemDepth],
                    Finish::Folded,
                )
            })
            .into(),
        SeamId::Band => vec![lap(
            Band,
            EdgeId::Join,
            On::AsDrawn,
            spec[MeasureId::BandHeight],
            Finish::Folded,
        )],
        SeamId::BagClose => {
            let width = allowances(seam, spec[MeasureId::HemDepth]).over;
            let finish = construct(seam.construction).finish;
            vec![lap(PocketBag, EdgeId::FootUnder, On::Both, width, finish)]
        }
        SeamId::CoinHem => vec![turned(CoinPocket, coin_on(spec))],
        SeamId::BackPocketHem => back_pockets().map(|(piece, on)| turned(piece, on)).into(),
        SeamId::ExtraHem => vec![turned(ExtraPocket, extra_on(spec))],
        // Covered, or not on the inside. Seams between panels are done above.
        SeamId::Mouth
        | SeamId::Fly
        | SeamId::FlyEdge
        | SeamId::CoinSet
        | SeamId::BackPocketSet
        | SeamId::FacingSet
        | SeamId::ExtraSet
        | SeamId::LoopEdge
        | SeamId::Decoration
        | SeamId::PatchSet
        | SeamId::LabelSet
        | SeamId::Outseam
        | SeamId::Inseam
        | SeamId::Seat
        | SeamId::Yoke
        | SeamId::FrontRise => Vec::new(),
    }
}

/// A seam between different panels, on both copies of each.
fn between(context: &Context<'_>, seam: &Seam, sides: &[Side]) -> Vec<InsideLap> {
    sides
        .iter()
        .filter_map(|side| lie(context, seam, &side.piece, side.edge, side.ply, On::Both))
        .collect()
}

/// A seam between the left and the right copy of the same panels.
fn left_and_right(context: &Context<'_>, seam: &Seam, edges: &[Half]) -> Vec<InsideLap> {
    edges
        .iter()
        .flat_map(|half| {
            [On::AsDrawn, On::Mirrored].into_iter().filter_map(|on| {
                let ply = side_of(half.piece, on == On::Mirrored);
                lie(context, seam, &half.piece, half.edge, ply, on)
            })
        })
        .collect()
}

/// What lies along one edge inside: its own allowance when the seam is pressed open; otherwise
/// everything lies on the ply on top and nothing on the one below.
fn lie(
    context: &Context<'_>,
    seam: &Seam,
    piece: &PieceId,
    edge: EdgeId,
    ply: Ply,
    on: On,
) -> Option<InsideLap> {
    let facts = construct(seam.construction);
    let (width, finish) = match seam.construction {
        Construction::PressedOpen => {
            let width = allowances(seam, Length::ZERO).over;
            let finish = if runs_to_selvedge(context, seam, *piece) {
                Finish::Selvedge
            } else {
                facts.finish
            };
            (width, finish)
        }
        _ if over_ply(seam) != Some(ply) => return None,
        Construction::LapFelled => (Fell::of(seam).width, facts.finish),
        _ => (allowances(seam, Length::ZERO).over, facts.finish),
    };
    Some(InsideLap {
        piece: *piece,
        on,
        edge,
        width,
        finish,
    })
}

/// Whether the allowance ends in the cloth's own edge: the outseam of pieces cut from a shell
/// woven with a selvedge, when it is pressed open.
pub(crate) fn runs_to_selvedge(context: &Context<'_>, seam: &Seam, piece: PieceId) -> bool {
    let shell = context.collection.cloths.get(&context.doc.cloth.shell);
    seam.id == SeamId::Outseam
        && seam.construction == Construction::PressedOpen
        && shell.is_some_and(|cloth| cloth.selvedge)
        && matches!(piece, PieceId::Front | PieceId::Back)
        && context
            .pattern
            .piece(piece)
            .is_some_and(|p| p.cloth == ClothUse::Shell)
}
