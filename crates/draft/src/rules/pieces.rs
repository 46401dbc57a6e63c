//! Rules about each piece by itself, and about notches that have to fall together.

use geometry::{area, is_simple};
use style::PartId;
use trade::Length;

use super::seams::notch;
use super::{Broken, Case, beyond, fine};
use crate::measure::{Measurable, Run};
use crate::pattern::Pattern;
use crate::piece::{Piece, PieceId};

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
    let error = |message: String| Some(Broken::error(piece.id, message));
    for (k, edge) in piece.edges.iter().enumerate() {
        let next = &piece.edges[(k + 1) % piece.edges.len()];
        let gap = Length::mm((edge.path.end() - next.path.start()).hypot());
        if beyond(gap.to_mm(), CLOSED.to_mm()) {
            return error(format!(
                "the outline is open by {} between {} and {}",
                fine(gap),
                edge.name.replace('_', " "),
                next.name.replace('_', " ")
            ));
        }
    }
    let round: Length = piece.edges.iter().map(|e| e.path.length()).sum();
    // Fine enough to see a crossing, and bounded however large the piece.
    let polygon = piece.polygon((round / 1000.0).max(Length::mm(3.0)));
    if !is_simple(&polygon) {
        return error("the outline crosses itself".to_owned());
    }
    if area(&polygon).to_mm2() <= 0.0 {
        return error("the outline runs the wrong way round".to_owned());
    }
    None
}

fn stray_notches(piece: &Piece) -> impl Iterator<Item = Broken> + '_ {
    piece.notches.iter().filter_map(|n| {
        let length = piece.edge(n.edge).map(geometry::Path::length);
        let on = length.is_some_and(|l| n.along >= -ON_EDGE && n.along <= l + ON_EDGE);
        (!on).then(|| {
            Broken::error(
                piece.id,
                format!("the notch “{}” does not lie on its edge", n.name),
            )
        })
    })
}

/// Every pair of notches that meet, as the distance of each from a common place along its seam.
fn pairs(p: &Pattern) -> Vec<(PartId, Option<Length>, Option<Length>)> {
    let from_start = |piece, edge, name| notch(p, piece, edge, name).map(|n| n.0);
    let from_end = |piece, edge, name| notch(p, piece, edge, name).map(|n| n.1 - n.0);
    let edge = |piece, name| Some(p.piece(piece)?.edge(name)?.length());
    let band = |name| from_start(PieceId::Band, "join", name);
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
            from_start(Front, "side", "outseam knee"),
            from_start(Back, "side", "outseam knee"),
        ),
        (
            PartId::Hip,
            from_start(Front, "side", "hip"),
            from_start(Back, "side", "hip"),
        ),
        (
            PartId::KneeOnInseam,
            from_end(Front, "inseam", "inseam knee"),
            from_end(Back, "inseam", "inseam knee"),
        ),
        (
            PartId::YokeSeamMiddle,
            from_end(Back, "top", "yoke middle"),
            from_start(Yoke, "lower", "yoke middle"),
        ),
        (
            PartId::MouthOnOutseam,
            (|| {
                Some(
                    from_end(PocketFacing, "side_under", "mouth at outseam")?
                        + edge(PocketFacing, "side")?,
                )
            })(),
            from_end(PocketBag, "side_under", "mouth at outseam"),
        ),
        (PartId::LeftSideOnBand, on_band(|f, _| f), band("side_left")),
        (
            PartId::BackCentreOnBand,
            on_band(|f, y| f + y),
            band("centre_back"),
        ),
        (
            PartId::RightSideOnBand,
            on_band(|f, y| f + y * 2.0),
            band("side_right"),
        ),
    ]
}

fn notch_pairs(pattern: &Pattern) -> impl Iterator<Item = Broken> {
    pairs(pattern).into_iter().filter_map(|(about, a, b)| {
        let (Some(a), Some(b)) = (a, b) else {
            return Some(Broken::error(
                about,
                "a notch has no partner to meet".to_owned(),
            ));
        };
        let apart = (a - b).abs();
        beyond(apart.to_mm(), NOTCH_APART.to_mm()).then(|| {
            Broken::error(
                about,
                format!(
                    "the two notches lie {} apart; up to {} is usual",
                    fine(apart),
                    fine(NOTCH_APART)
                ),
            )
        })
    })
}
