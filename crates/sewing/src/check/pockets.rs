//! Patch pockets against the panels they are set on.

use draft::{EdgeId, LineId, PieceId, PointId};
use geometry::{Point, contains};
use style::{MeasureId, PartId};
use trade::Length;
use words::{Key, key, say};

use super::case::{Broken, Case, distance, farthest_outside, nearest_edge, place};
use crate::inset_lines::points_along;

/// Below this a pocket only touches the edge of what it is set on.
const TOUCHES_MM: f64 = 0.5;

/// A pocket nearer to a seam than this is hard to set.
const NEAR_SEAM: Length = Length::mm(10.0);

/// Left and right may differ by this much (1/8 inch, from memory).
const LEVEL: Length = Length::mm(3.2);

/// The lines on the back the back pockets are set along.
const BACK: [(LineId, PartId); 2] = [
    (LineId::PocketLeft, PartId::LeftBackPocket),
    (LineId::PocketRight, PartId::RightBackPocket),
];

/// The edges of the back, by the seam each is sewn into, for people.
const SEAMS: [(EdgeId, Key); 5] = [
    (EdgeId::Side, key::SEWING_POCKETS_SEAM_OUTSEAM),
    (EdgeId::Top, key::SEWING_POCKETS_SEAM_YOKE),
    (EdgeId::Seat, key::SEWING_POCKETS_SEAM_SEAT),
    (EdgeId::Inseam, key::SEWING_POCKETS_SEAM_INSEAM),
    (EdgeId::Hem, key::SEWING_POCKETS_SEAM_HEM),
];

/// The seam nearest to a place on the back.
fn nearest_seam(case: &Case<'_>, at: Point) -> Option<Key> {
    let edge = nearest_edge(case, PieceId::Back, at)?;
    let found = SEAMS.iter().find(|(id, _)| *id == edge);
    found.map(|(_, seam)| *seam)
}

fn outline(case: &Case<'_>, line: LineId) -> Option<Vec<Point>> {
    points_along(case.context.pattern.piece(PieceId::Back)?.line(line)?)
}

pub(super) fn outside(case: &Case<'_>) -> Vec<Broken> {
    let Some(ground) = case.ground(PieceId::Back) else {
        return Vec::new();
    };
    BACK.into_iter()
        .filter_map(|(line, name)| {
            let outline = outline(case, line)?;
            let (at, beyond) = farthest_outside(ground.polygon(), &outline)?;
            let seam = nearest_seam(case, at)?;
            Some(
                Broken::error(
                    name,
                    say::SewingPocketsOutside {
                        beyond: Length::mm(beyond).in_mm(1),
                        seam,
                    },
                )
                .help(key::SEWING_POCKETS_OUTSIDE_HELP)
                .at(place(PieceId::Back, at)),
            )
        })
        .collect()
}

pub(super) fn near_seam(case: &Case<'_>) -> Vec<Broken> {
    let Some(ground) = case.ground(PieceId::Back) else {
        return Vec::new();
    };
    let polygon = ground.polygon();
    BACK.into_iter()
        .filter_map(|(line, name)| {
            let outline = outline(case, line)?;
            if outline.iter().any(|p| !contains(polygon, *p)) {
                return None;
            }
            let (at, nearest) = outline
                .iter()
                .map(|p| (*p, distance(polygon, *p)))
                .min_by(|a, b| a.1.total_cmp(&b.1))?;
            let seam = nearest_seam(case, at)?;
            (nearest < NEAR_SEAM.to_mm()).then(|| {
                Broken::warning(
                    name,
                    say::SewingPocketsNearSeam {
                        nearest: Length::mm(nearest).in_mm(1),
                        seam,
                    },
                )
                .help(say::SewingPocketsNearSeamHelp {
                    near_seam: NEAR_SEAM.in_mm(1),
                })
                .at(place(PieceId::Back, at))
            })
        })
        .collect()
}

/// The upper corners of the two back pockets, laid on one another.
pub(super) fn levels(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let back = case.context.pattern.piece(PieceId::Back)?;
        let (left, right) = (back.line(BACK[0].0)?, back.line(BACK[1].0)?);
        let ends = [
            (
                key::SEWING_POCKETS_LEVELS_INNER,
                left.start(),
                right.start(),
            ),
            (key::SEWING_POCKETS_LEVELS_OUTER, left.end(), right.end()),
        ];
        let (end, at, off) = ends
            .into_iter()
            .map(|(end, a, b)| (end, a, (a - b).hypot()))
            .max_by(|a, b| a.2.total_cmp(&b.2))?;
        (off > LEVEL.to_mm()).then(|| {
            Broken::warning(
                PartId::BackPockets,
                say::SewingPocketsLevels {
                    end,
                    off: Length::mm(off).in_mm(1),
                },
            )
            .help(say::SewingPocketsLevelsHelp {
                level: LEVEL.in_mm(1),
            })
            .at(place(PieceId::Back, at))
        })
    };
    found().into_iter().collect()
}

pub(super) fn coin_beyond(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let ground = case.ground(PieceId::PocketFacing)?;
        let facing = case.context.pattern.piece(PieceId::PocketFacing)?;
        let outline = points_along(facing.line(LineId::CoinPocket)?)?;
        let (at, beyond) = farthest_outside(ground.polygon(), &outline)?;
        (beyond > TOUCHES_MM).then(|| {
            Broken::warning(
                PartId::CoinPocket,
                say::SewingPocketsCoinBeyond {
                    beyond: Length::mm(beyond).in_mm(1),
                },
            )
            .help(key::SEWING_POCKETS_COIN_BEYOND_HELP)
            .at(place(PieceId::PocketFacing, at))
        })
    };
    found().into_iter().collect()
}

/// The opening is bounded by the mouth edge of the front; above it the facing shows.
pub(super) fn coin_hidden(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let facing = case.context.pattern.piece(PieceId::PocketFacing)?;
        let line = facing.line(LineId::CoinPocket)?;
        let covered = case.ground(PieceId::Front)?;
        let middle = line.start().midpoint(line.end());
        contains(covered.polygon(), middle).then(|| {
            Broken::warning(PartId::CoinPocket, key::SEWING_POCKETS_COIN_HIDDEN)
                .help(key::SEWING_POCKETS_COIN_HIDDEN_HELP)
                .at(place(PieceId::PocketFacing, middle))
        })
    };
    found().into_iter().collect()
}

pub(super) fn coin_wide(case: &Case<'_>) -> Vec<Broken> {
    let spec = &case.context.pattern.spec;
    let reaches = spec.coin_from_side + spec[MeasureId::CoinWidth];
    if reaches <= spec[MeasureId::MouthWidth] {
        return Vec::new();
    }
    vec![
        Broken::warning(
            PartId::CoinPocket,
            say::SewingPocketsCoinWide {
                mouth_width: spec[MeasureId::MouthWidth].in_mm(1),
                reaches: reaches.in_mm(1),
            },
        )
        .help(say::SewingPocketsCoinWideHelp {
            zero: ((spec[MeasureId::MouthWidth] - spec.coin_from_side).max(Length::ZERO)).in_mm(1),
        })
        .at(case.point(PieceId::CoinPocket, PointId::TopMiddle)),
    ]
}

/// The foot lies behind the front, which covers and holds it; on view it looks unfinished.
pub(super) fn coin_foot(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let facing = case.context.pattern.piece(PieceId::PocketFacing)?;
        let outline = points_along(facing.line(LineId::CoinPocket)?)?;
        let front = case.ground(PieceId::Front)?;
        let covered = outline.iter().any(|p| contains(front.polygon(), *p));
        let lowest = outline.iter().min_by(|a, b| a.y.total_cmp(&b.y))?;
        (!covered).then(|| {
            Broken::note(PartId::CoinPocket, key::SEWING_POCKETS_COIN_FOOT)
                .help(key::SEWING_POCKETS_COIN_FOOT_HELP)
                .at(place(PieceId::PocketFacing, *lowest))
        })
    };
    found().into_iter().collect()
}
