//! Rules about seams: both sides of a seam are as long as each other, and notches fall together.

use style::{PartId, SeamId, Subject};
use trade::Length;
use words::{Key, key, say};

use super::case::{Broken, Case, beyond, within};
use crate::measure::{Measurable, Run};
use crate::pattern::Pattern;
use crate::piece::{EdgeId, NotchId, PieceId};

/// A whole seam may differ by this much.
const WALK: Length = Length::mm(1.0);
/// A stretch between two notches may differ by this much.
const BETWEEN_NOTCHES: Length = Length::mm(0.5);
/// The band and the body may differ by this much over the whole waist.
const BAND_WALK: Length = Length::mm(2.0);

/// Where a notch lies on its edge, and how long that edge is.
pub(super) fn notch(
    pattern: &Pattern,
    piece: PieceId,
    edge: EdgeId,
    id: NotchId,
) -> Option<(Length, Length)> {
    let piece = pattern.piece(piece)?;
    let notch = piece
        .notches
        .iter()
        .find(|n| n.id == id && n.edge == edge)?;
    Some((notch.along, piece.edge(edge)?.length()))
}

/// Says how two lengths that should be equal differ; nothing when they agree within `allowed`.
fn unequal(
    about: impl Into<Subject>,
    a: (Key, Length),
    b: (Key, Length),
    allowed: Length,
) -> Option<Broken> {
    let gap = a.1 - b.1;
    if gap.abs() <= allowed {
        return None;
    }
    let (long, short) = if gap > Length::ZERO { (a, b) } else { (b, a) };
    Some(Broken::error(
        about,
        say::FitLonger {
            by: gap.abs().in_cm(2),
            long: long.1.in_cm(2),
            longer: long.0,
            most: allowed.in_cm(2),
            short: short.1.in_cm(2),
            shorter: short.0,
        },
    ))
}

pub(super) fn outseam(case: &Case<'_>) -> Vec<Broken> {
    let p = case.pattern;
    let mut broken = Vec::new();
    let run = |run| p.run_length(run);
    let whole = (|| {
        Some((
            run(Run::FrontSide)?,
            run(Run::BackSide)? + run(Run::YokeSide)?,
        ))
    })();
    let Some((front, back)) = whole else {
        return broken;
    };
    broken.extend(unequal(
        SeamId::Outseam,
        (key::FIT_SIDE_FRONT, front),
        (key::FIT_SIDE_BACK_YOKE, back),
        WALK,
    ));
    let marks = |piece| {
        let at = |id| notch(p, piece, EdgeId::Side, id).map(|n| n.0);
        Some((at(NotchId::OutseamKnee)?, at(NotchId::Hip)?))
    };
    if let (Some(f), Some(b)) = (marks(PieceId::Front), marks(PieceId::Back)) {
        let parts = [
            (PartId::OutseamHemToKnee, f.0, b.0),
            (PartId::OutseamKneeToHip, f.1 - f.0, b.1 - b.0),
            (PartId::OutseamHipToWaist, front - f.1, back - b.1),
        ];
        for (about, front, back) in parts {
            broken.extend(unequal(
                about,
                (key::FIT_SIDE_FRONT, front),
                (key::FIT_SIDE_BACK, back),
                BETWEEN_NOTCHES,
            ));
        }
    }
    broken
}

/// Inseam of one panel from crotch to knee and from knee to hem.
fn inseam_parts(pattern: &Pattern, piece: PieceId) -> Option<(Length, Length)> {
    let (knee, whole) = notch(pattern, piece, EdgeId::Inseam, NotchId::InseamKnee)?;
    Some((knee, whole - knee))
}

fn both_inseams(case: &Case<'_>) -> Option<((Length, Length), (Length, Length))> {
    Some((
        inseam_parts(case.pattern, PieceId::Front)?,
        inseam_parts(case.pattern, PieceId::Back)?,
    ))
}

pub(super) fn inseam_below_knee(case: &Case<'_>) -> Vec<Broken> {
    let Some((front, back)) = both_inseams(case) else {
        return Vec::new();
    };
    unequal(
        PartId::InseamHemToKnee,
        (key::FIT_SIDE_FRONT, front.1),
        (key::FIT_SIDE_BACK, back.1),
        BETWEEN_NOTCHES,
    )
    .into_iter()
    .collect()
}

pub(super) fn inseam_stretch(case: &Case<'_>) -> Vec<Broken> {
    const ABOUT: PartId = PartId::InseamKneeToCrotch;
    let Some((front, back)) = both_inseams(case) else {
        return Vec::new();
    };
    let shorter = front.0 - back.0;
    let stated = case.pattern.spec.inseam_stretch;
    if (shorter - stated).abs() > BETWEEN_NOTCHES {
        return vec![Broken::error(
            ABOUT,
            say::FitStretchUnlike {
                shorter: shorter.in_cm(2),
                stated: stated.in_cm(2),
            },
        )];
    }
    let by = shorter.in_cm(2);
    if !within(shorter.to_mm(), -0.1, 10.1) {
        return vec![
            Broken::warning(ABOUT, say::FitStretchUnusual { by })
                .help(key::FIT_STRETCH_UNUSUAL_HELP),
        ];
    }
    if !within(shorter.to_mm(), 2.5, 6.5) {
        return vec![Broken::note(ABOUT, say::FitStretchBest { by })];
    }
    Vec::new()
}

pub(super) fn yoke(case: &Case<'_>) -> Vec<Broken> {
    let lengths = |run| case.pattern.run_length(run);
    let (Some(yoke), Some(back)) = (lengths(Run::YokeLower), lengths(Run::BackTop)) else {
        return Vec::new();
    };
    unequal(
        PartId::YokeSeam,
        (key::FIT_SIDE_YOKE, yoke),
        (key::FIT_SIDE_BACK, back),
        WALK,
    )
    .into_iter()
    .collect()
}

/// Band seam of the whole body, left and right.
fn body_waist(pattern: &Pattern) -> Option<Length> {
    Some((pattern.run_length(Run::FrontWaist)? + pattern.run_length(Run::YokeTop)?) * 2.0)
}

pub(super) fn band(case: &Case<'_>) -> Vec<Broken> {
    let p = case.pattern;
    let (Some(body), Some(band)) = (body_waist(p), p.run_length(Run::BandJoin)) else {
        return Vec::new();
    };
    let ease = p.spec.band_ease;
    let mut broken: Vec<Broken> = unequal(
        PartId::BandSeam,
        (key::FIT_SIDE_BODY, body),
        (key::FIT_SIDE_BAND, band + ease),
        BAND_WALK,
    )
    .into_iter()
    .collect();
    let most = (band * 0.005).min(Length::mm(10.0));
    if ease < -Length::mm(0.1) || ease > most + Length::mm(0.1) {
        broken.push(
            Broken::warning(
                PartId::BandSeam,
                say::FitBandEase {
                    ease: ease.in_cm(2),
                    most: most.in_cm(2),
                },
            )
            .help(key::FIT_BAND_EASE_HELP),
        );
    }
    broken
}

pub(super) fn overlap(case: &Case<'_>) -> Vec<Broken> {
    let p = case.pattern;
    let edge = |id| Some(p.piece(PieceId::Band)?.edge(id)?.length());
    let (Some(join), Some(overlap), Some(inner)) = (
        edge(EdgeId::Join),
        edge(EdgeId::Overlap),
        edge(EdgeId::Inner),
    ) else {
        return Vec::new();
    };
    let mut broken: Vec<Broken> = unequal(
        PartId::Waistband,
        (key::FIT_SIDE_INNER, inner),
        (key::FIT_SIDE_OVERLAP, join + overlap),
        Length::mm(0.1),
    )
    .into_iter()
    .collect();
    if !within(overlap.to_mm(), 34.9, 45.1) {
        broken.push(
            Broken::warning(
                PartId::Waistband,
                say::FitBandOverlap {
                    overlap: overlap.in_cm(1),
                },
            )
            .help(key::FIT_BAND_OVERLAP_HELP),
        );
    }
    broken
}

pub(super) fn pocket_facing(case: &Case<'_>) -> Vec<Broken> {
    let p = case.pattern;
    let edge = |piece, id| p.piece(piece)?.edge(id);
    let mut broken = Vec::new();
    // Front and facing are drawn in one frame, so their edges must meet where the mouth was cut.
    let meets = [
        (
            PartId::OutseamAtMouth,
            edge(PieceId::Front, EdgeId::Side).map(geometry::Path::end),
            edge(PieceId::PocketFacing, EdgeId::Side).map(geometry::Path::start),
        ),
        (
            PartId::WaistAtMouth,
            edge(PieceId::Front, EdgeId::Waist).map(geometry::Path::start),
            edge(PieceId::PocketFacing, EdgeId::Waist).map(geometry::Path::end),
        ),
    ];
    for (about, front, facing) in meets {
        if let (Some(a), Some(b)) = (front, facing) {
            let gap = Length::mm((a - b).hypot());
            if beyond(gap.to_mm(), BETWEEN_NOTCHES.to_mm()) {
                broken.push(Broken::error(
                    about,
                    say::FitFacingApart {
                        apart: gap.in_cm(2),
                        most: BETWEEN_NOTCHES.in_cm(2),
                    },
                ));
            }
        }
    }
    if let (Some(front), Some(bag)) = (
        edge(PieceId::Front, EdgeId::Mouth),
        edge(PieceId::PocketBag, EdgeId::Mouth),
    ) {
        broken.extend(unequal(
            PartId::PocketMouth,
            (key::FIT_SIDE_FRONT, front.length()),
            (key::FIT_SIDE_BAG, bag.length()),
            BETWEEN_NOTCHES,
        ));
    }
    broken
}
