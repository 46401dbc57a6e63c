//! What is seen of the allowances on the inside, seam by seam.

use draft::{ClothUse, EdgeId, PieceId, PointId};
use geometry::{Point, polyline_length};
use style::{Along, Construction, MeasureId, Ply, Seam, SeamId};
use trade::Length;

use crate::allowance::{Fell, allowances, turned_depth};
use crate::construct::Finish;
use crate::construct::construct;
use crate::context::Context;
use crate::edges::{over_ply, side_of};
use crate::garment::{InsideLap, On};
use crate::inset_lines::points_along;
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
        Line::Halves(edges) => return left_and_right(seam, edges),
        Line::OfItsOwn => (),
    }
    let lap = |piece, edge, on, width, finish| InsideLap {
        piece,
        on,
        edge,
        part: None,
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
        | SeamId::BandJoin
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
        .filter_map(|side| lie(seam, &side.piece, side.edge, side.ply, On::Both))
        .flat_map(|lap| by_finish(context, seam, lap))
        .collect()
}

/// A seam between the left and the right copy of the same panels.
fn left_and_right(seam: &Seam, edges: &[Half]) -> Vec<InsideLap> {
    edges
        .iter()
        .flat_map(|half| {
            [On::AsDrawn, On::Mirrored].into_iter().filter_map(|on| {
                let ply = side_of(half.piece, on == On::Mirrored);
                lie(seam, &half.piece, half.edge, ply, on)
            })
        })
        .collect()
}

/// What lies along one edge inside: its own allowance when the seam is pressed open; otherwise
/// everything lies on the ply on top and nothing on the one below.
fn lie(seam: &Seam, piece: &PieceId, edge: EdgeId, ply: Ply, on: On) -> Option<InsideLap> {
    let facts = construct(seam.construction);
    let (width, finish) = match seam.construction {
        Construction::PressedOpen => (allowances(seam, Length::ZERO).over, facts.finish),
        _ if over_ply(seam) != Some(ply) => return None,
        Construction::LapFelled => (Fell::of(seam).width, facts.finish),
        _ => (allowances(seam, Length::ZERO).over, facts.finish),
    };
    Some(InsideLap {
        piece: *piece,
        on,
        edge,
        part: None,
        width,
        finish,
    })
}

/// Less of an edge than this is not neatened by itself.
const LEAST_RAW: Length = Length::mm(5.0);

/// A seam line this much further in is no longer cut on the cloth's own edge.
const ON_EDGE_MM: f64 = 0.5;

/// An allowance that ends in the cloth's own edge as far as the cut follows that edge; above, it is cut and
/// raw like any other.
fn by_finish(context: &Context<'_>, seam: &Seam, lap: InsideLap) -> Vec<InsideLap> {
    let whole = context
        .pattern
        .piece(lap.piece)
        .and_then(|piece| piece.edge(lap.edge));
    let (Some(reach), Some(edge)) = (selvedge_reach(context, seam, lap.piece), whole) else {
        return vec![lap];
    };
    let long = edge.length();
    let own = InsideLap {
        part: (reach < long).then_some((Length::ZERO, reach)),
        finish: Finish::Selvedge,
        ..lap.clone()
    };
    let raw = InsideLap {
        part: Some((reach, long)),
        ..lap
    };
    if reach < long {
        vec![own, raw]
    } else {
        vec![own]
    }
}

/// How far up the outseam of a panel the cut follows the cloth's own edge, from the hem: to the hip, and on
/// above it where the seam line does not leave its outermost place. `None` where it does nowhere.
pub(crate) fn selvedge_reach(context: &Context<'_>, seam: &Seam, piece: PieceId) -> Option<Length> {
    if !runs_to_selvedge(context, seam, piece) {
        return None;
    }
    let piece = context.pattern.piece(piece)?;
    let side = piece.edge(EdgeId::Side)?;
    let long = side.length();
    let points = points_along(side)?;
    let hip = piece.point(PointId::Hip)?;
    let outermost = points.iter().map(|p| p.x).fold(f64::MIN, f64::max);
    let on_edge = |p: &Point| p.y <= hip.y || p.x >= outermost - ON_EDGE_MM;
    let last = points.iter().rposition(on_edge)?;
    let reach = polyline_length(points.get(..=last)?);
    Some(if long - reach < LEAST_RAW {
        long
    } else {
        reach
    })
}

/// From the seam line below the hip to the cloth's own edge, as it is cut: more than the allowance where the
/// seam line runs out above the hip, for the edge is straight. `None` where the cut follows no such edge.
pub(crate) fn to_selvedge(context: &Context<'_>, seam: &Seam, piece: PieceId) -> Option<Length> {
    if !runs_to_selvedge(context, seam, piece) {
        return None;
    }
    let piece = context.pattern.piece(piece)?;
    let points = points_along(piece.edge(EdgeId::Side)?)?;
    let hip = piece.point(PointId::Hip)?;
    let most = |below: bool| {
        let there = points.iter().filter(|p| !below || p.y <= hip.y);
        there.map(|p| p.x).fold(f64::NEG_INFINITY, f64::max)
    };
    let out = Length::mm(most(false) - most(true));
    let cloth = context.collection.cloths.get(&context.doc.cloth.shell)?;
    let left = 1.0 - cloth.shrinkage(Along::Weft).to_ratio();
    let width = allowances(seam, Length::ZERO).over + out / left;
    width.is_finite().then_some(width)
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
