//! What is seen of the allowances on the inside, seam by seam.

use draft::{ClothUse, PieceId};
use style::{Construction, MeasureId, Ply, Seam};
use trade::Length;

use crate::allowance::{Fell, allowances, turned_depth};
use crate::construct::construct;
use crate::context::Context;
use crate::edges::{over_ply, side_of};
use crate::garment::{Finish, InsideLap, On};
use crate::placement::{back_pockets, coin_on, extra_on};

pub(crate) fn laps(context: &Context<'_>) -> Vec<InsideLap> {
    context
        .seams
        .iter()
        .flat_map(|seam| laps_of(context, seam))
        .filter(|lap| context.pattern.piece(lap.piece).is_some())
        .collect()
}

/// An edge of a seam between panels, with the ply it is.
type Side = (PieceId, &'static str, Ply);

fn laps_of(context: &Context<'_>, seam: &Seam) -> Vec<InsideLap> {
    use PieceId::{Back, Band, CoinPocket, ExtraPocket, Front, PocketBag, PocketFacing, Yoke};
    let spec = &context.pattern.spec;
    let lap = |piece, edge, on, width, finish| InsideLap {
        piece,
        on,
        edge,
        width,
        finish,
    };
    let turned = |piece, on| lap(piece, "top", on, turned_depth(seam), Finish::Folded);
    match seam.name.as_str() {
        "outseam" => between(
            context,
            seam,
            &[
                (Front, "side", Ply::Front),
                (PocketFacing, "side", Ply::Front),
                (Back, "side", Ply::Back),
                (Yoke, "side", Ply::Back),
            ],
        ),
        "inseam" => between(
            context,
            seam,
            &[(Front, "inseam", Ply::Front), (Back, "inseam", Ply::Back)],
        ),
        "yoke" => between(
            context,
            seam,
            &[(Yoke, "lower", Ply::Yoke), (Back, "top", Ply::Back)],
        ),
        "seat" => left_and_right(context, seam, &[(Yoke, "centre"), (Back, "seat")]),
        "front_rise" => left_and_right(context, seam, &[(Front, "crotch")]),
        "hem" => [Front, Back]
            .map(|piece| {
                lap(
                    piece,
                    "hem",
                    On::Both,
                    spec[MeasureId::HemDepth],
                    Finish::Folded,
                )
            })
            .into(),
        "band" => vec![lap(
            Band,
            "join",
            On::AsDrawn,
            spec[MeasureId::BandHeight],
            Finish::Folded,
        )],
        "bag_close" => {
            let width = allowances(seam, spec[MeasureId::HemDepth]).over;
            let finish = construct(seam.construction).finish;
            vec![lap(PocketBag, "foot_under", On::Both, width, finish)]
        }
        "coin_hem" => vec![turned(CoinPocket, coin_on(spec))],
        "back_pocket_hem" => back_pockets().map(|(piece, on)| turned(piece, on)).into(),
        "extra_hem" => vec![turned(ExtraPocket, extra_on(spec))],
        _ => Vec::new(),
    }
}

/// A seam between different panels, on both copies of each.
fn between(context: &Context<'_>, seam: &Seam, sides: &[Side]) -> Vec<InsideLap> {
    sides
        .iter()
        .filter_map(|(piece, edge, ply)| lie(context, seam, piece, edge, *ply, On::Both))
        .collect()
}

/// A seam between the left and the right copy of the same panels.
fn left_and_right(
    context: &Context<'_>,
    seam: &Seam,
    edges: &[(PieceId, &'static str)],
) -> Vec<InsideLap> {
    edges
        .iter()
        .flat_map(|(piece, edge)| {
            [On::AsDrawn, On::Mirrored].into_iter().filter_map(|on| {
                let ply = side_of(*piece, on == On::Mirrored);
                lie(context, seam, piece, edge, ply, on)
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
    edge: &'static str,
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
    seam.name == "outseam"
        && seam.construction == Construction::PressedOpen
        && shell.is_some_and(|cloth| cloth.selvedge)
        && matches!(piece, PieceId::Front | PieceId::Back)
        && context
            .pattern
            .piece(piece)
            .is_some_and(|p| p.cloth == ClothUse::Shell)
}
