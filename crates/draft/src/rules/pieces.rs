//! Rules about each piece by itself, and about notches that have to fall together.

use geometry::{area, is_simple};
use style::PartId;
use trade::Length;
use words::{Said, key, say};

use super::case::{Broken, Case, beyond};
use super::seams::notch;
use crate::measure::{Measurable, Run};
use crate::pattern::Pattern;
use crate::piece::{EdgeId, NotchId, Piece, PieceId};

/// How far apart two notches that meet may lie.
const NOTCH_APART: Length = Length::mm(1.0);
/// An outline is closed when its edges meet within this.
const CLOSED: Length = Length::mm(0.01);
/// A notch lies on its edge when it is no further than this beyond its ends.
const ON_EDGE: Length = Length::mm(0.5);

pub(super) fn outlines(case: &Case<'_>) -> Vec<Broken> {
    let mut broken = Vec::new();
    for piece in &case.pattern.pieces {
        broken.extend(outline(piece));
        broken.extend(stray_notches(piece));
    }
    broken.extend(notch_pairs(case.pattern));
    broken
}

fn outline(piece: &Piece) -> Option<Broken> {
    let error = |message: Said| Some(Broken::error(piece.id, message));
    for (k, edge) in piece.edges.iter().enumerate() {
        let next = &piece.edges[(k + 1) % piece.edges.len()];
        let gap = Length::mm((edge.path.end() - next.path.start()).hypot());
        if beyond(gap.to_mm(), CLOSED.to_mm()) {
            let open = say::FitOutlineOpen {
                edge: edge.id,
                gap: gap.in_cm(2),
                next: next.id,
            };
            return error(open.into());
        }
    }
    let round: Length = piece.edges.iter().map(|e| e.path.length()).sum();
    // Fine enough to see a crossing, and bounded however large the piece.
    let polygon = piece.polygon((round / 1000.0).max(Length::mm(3.0)));
    if !is_simple(&polygon) {
        return error(key::FIT_OUTLINE_CROSSES.into());
    }
    if area(&polygon).to_mm2() <= 0.0 {
        return error(key::FIT_OUTLINE_REVERSED.into());
    }
    None
}

fn stray_notches(piece: &Piece) -> impl Iterator<Item = Broken> + '_ {
    piece.notches.iter().filter_map(|n| {
        let length = piece.edge(n.edge).map(geometry::Path::length);
        let on = length.is_some_and(|l| n.along >= -ON_EDGE && n.along <= l + ON_EDGE);
        (!on).then(|| Broken::error(piece.id, say::FitNotchStray { notch: n.id.code() }))
    })
}

/// Every pair of notches that meet, as the distance of each from a common place along its seam.
fn pairs(p: &Pattern) -> Vec<(PartId, Option<Length>, Option<Length>)> {
    let from_start = |piece, edge, id| notch(p, piece, edge, id).map(|n| n.0);
    let from_end = |piece, edge, id| notch(p, piece, edge, id).map(|n| n.1 - n.0);
    let edge = |piece, id| Some(p.piece(piece)?.edge(id)?.length());
    let band = |id| from_start(PieceId::Band, EdgeId::Join, id);
    let run = |r| p.run_length(r);
    // The body's landmarks lie on the band in proportion, because ease is spread evenly.
    let body = (|| Some((run(Run::FrontWaist)?, run(Run::YokeTop)?)))();
    let on_band = |count: fn(Length, Length) -> Length| {
        let (front, yoke) = body?;
        let scale = run(Run::BandJoin)? / ((front + yoke) * 2.0);
        Some(count(front, yoke) * scale)
    };
    use PieceId::{Back, Front, PocketBag, PocketFacing, Yoke};
    vec![
        (
            PartId::KneeOnOutseam,
            from_start(Front, EdgeId::Side, NotchId::OutseamKnee),
            from_start(Back, EdgeId::Side, NotchId::OutseamKnee),
        ),
        (
            PartId::Hip,
            from_start(Front, EdgeId::Side, NotchId::Hip),
            from_start(Back, EdgeId::Side, NotchId::Hip),
        ),
        (
            PartId::KneeOnInseam,
            from_end(Front, EdgeId::Inseam, NotchId::InseamKnee),
            from_end(Back, EdgeId::Inseam, NotchId::InseamKnee),
        ),
        (
            PartId::YokeSeamMiddle,
            from_end(Back, EdgeId::Top, NotchId::YokeMiddle),
            from_start(Yoke, EdgeId::Lower, NotchId::YokeMiddle),
        ),
        (
            PartId::MouthOnOutseam,
            (|| {
                Some(
                    from_end(PocketFacing, EdgeId::SideUnder, NotchId::MouthAtOutseam)?
                        + edge(PocketFacing, EdgeId::Side)?,
                )
            })(),
            from_end(PocketBag, EdgeId::SideUnder, NotchId::MouthAtOutseam),
        ),
        (
            PartId::LeftSideOnBand,
            on_band(|f, _| f),
            band(NotchId::SideLeft),
        ),
        (
            PartId::BackCentreOnBand,
            on_band(|f, y| f + y),
            band(NotchId::CentreBack),
        ),
        (
            PartId::RightSideOnBand,
            on_band(|f, y| f + y * 2.0),
            band(NotchId::SideRight),
        ),
    ]
}

fn notch_pairs(pattern: &Pattern) -> impl Iterator<Item = Broken> {
    pairs(pattern).into_iter().filter_map(|(about, a, b)| {
        let (Some(a), Some(b)) = (a, b) else {
            return Some(Broken::error(about, key::FIT_NOTCH_ALONE));
        };
        let apart = (a - b).abs();
        beyond(apart.to_mm(), NOTCH_APART.to_mm()).then(|| {
            Broken::error(
                about,
                say::FitNotchesApart {
                    apart: apart.in_cm(2),
                    most: NOTCH_APART.in_cm(2),
                },
            )
        })
    })
}
