//! What hangs inside: the concealed pocket and the pocket bags.

use draft::{EdgeId, LineId, PieceId, PointId};
use geometry::{Point, contains};
use style::{MeasureId, PartId};
use trade::Length;
use words::{Said, key, say};

use super::case::{Broken, Case, distance_to_line, place};
use crate::inset_lines::points_along;

/// Placed by hand, a pocket's edge may lie this far off (common practice: 1/8 inch).
const PLACED: Length = Length::mm(3.2);

/// Less than this of an edge in view is nothing to speak of.
const IN_VIEW: Length = Length::mm(5.0);

/// Points looked at along and across the concealed pocket.
const STEPS: u32 = 16;

/// Below the mouth a bag holds a hand to the knuckles; a man's hand is 19 cm long, from memory.
const HAND: Length = Length::mm(150.0);

/// The concealed pocket as it lies behind the front: the ends of its top edge and its outline.
fn extra(case: &Case<'_>) -> Option<(Point, Point, Vec<Point>)> {
    let line = case
        .context
        .pattern
        .piece(PieceId::Front)?
        .line(LineId::ExtraPocket)?;
    Some((line.start(), line.end(), points_along(line)?))
}

/// Its top edge lies at the band seam; a belt hides what is behind the band and as much below as it
/// is wider than the band.
pub(super) fn extra_below_band(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let (from, to, _) = extra(case)?;
        let pattern = case.context.pattern;
        let waist_of = |id| points_along(pattern.piece(id)?.edge(EdgeId::Waist)?);
        // The waist of the uncut front: what is left of it, and the facing behind the mouth.
        let waist = waist_of(PieceId::Front)?;
        let behind = waist_of(PieceId::PocketFacing).unwrap_or_default();
        let below = |p: Point| distance_to_line(&waist, p).min(distance_to_line(&behind, p));
        let (at, far) = (0..=STEPS)
            .map(|k| from.lerp(to, f64::from(k) / f64::from(STEPS)))
            .map(|p| (p, below(p)))
            .max_by(|a, b| a.1.total_cmp(&b.1))?;
        let band = pattern.spec[MeasureId::BandHeight];
        let belt = case.context.doc.loops.belt;
        let hidden = ((belt - band) / 2.0).max(Length::ZERO) + PLACED;
        let far = Length::mm(far);
        (far > hidden).then(|| {
            Broken::warning(
                PartId::ExtraPocket,
                say::SewingInnerExtraBelowBand {
                    band: band.in_mm(1),
                    belt: belt.in_mm(1),
                    far: far.in_mm(1),
                },
            )
            .help(key::SEWING_INNER_EXTRA_BELOW_BAND_HELP)
            .at(place(PieceId::Front, at))
        })
    };
    found().into_iter().collect()
}

/// How much of it lies in the mouth opening, where the front does not cover it.
pub(super) fn extra_in_mouth(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let (from, to, outline) = extra(case)?;
        let front = case.ground(PieceId::Front)?;
        let pocket: &[Point] = &outline;
        let covered = |p: Point| contains(front.polygon(), p);
        let width = (to - from).hypot();
        let side = (to - from) / width.max(geometry::tolerance::NO_LENGTH_MM);
        // Square to its top edge, away from the band.
        let down = -geometry::left_of(side);
        let depth = case.context.pattern.spec.extra_pocket?.depth.to_mm();
        let down = if contains(pocket, from.midpoint(to) + down * (depth / 2.0)) {
            down
        } else {
            -down
        };
        let share = |k: u32| (f64::from(k) + 0.5) / f64::from(STEPS);
        let at = |k: u32, below: f64| from.lerp(to, share(k)) + down * below;
        // The top edge, looked at just below the band seam.
        let open = (0..STEPS).filter(|k| !covered(at(*k, 1.0))).count();
        let deepest = (0..STEPS)
            .flat_map(|k| (0..STEPS).map(move |j| (k, share(j) * depth)))
            .map(|(k, below)| (at(k, below), below))
            .filter(|(p, _)| contains(pocket, *p) && !covered(*p))
            .max_by(|a, b| a.1.total_cmp(&b.1));
        let seen = Length::mm(width * open as f64 / f64::from(STEPS));
        let (p, below) = deepest?;
        (seen > IN_VIEW).then(|| {
            Broken::note(
                PartId::ExtraPocket,
                say::SewingInnerExtraInMouth {
                    below: format!("{:.0}", below),
                    seen: format!("{:.0}", seen.to_mm()),
                    width: format!("{:.0}", width),
                },
            )
            .help(key::SEWING_INNER_EXTRA_IN_MOUTH_HELP)
            .at(place(PieceId::Front, p))
        })
    };
    found().into_iter().collect()
}

pub(super) fn bag_short(case: &Case<'_>) -> Vec<Broken> {
    let spec = &case.context.pattern.spec;
    let below = spec.bag_depth - spec[MeasureId::MouthDepth];
    if below >= HAND {
        return Vec::new();
    }
    vec![
        Broken::warning(
            PartId::PocketBag,
            say::SewingInnerBagShort {
                below: below.in_mm(1),
                hand: HAND.in_mm(1),
            },
        )
        .help(say::SewingInnerBagShortHelp {
            hand: (spec[MeasureId::MouthDepth] + HAND).in_mm(1),
        })
        .at(case.point(PieceId::PocketBag, PointId::FoldFoot)),
    ]
}

/// The facing is sewn on the lower ply of the bag and has to lie within it.
pub(super) fn bag_facing(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let pattern = case.context.pattern;
        let spec = &pattern.spec;
        let facing = pattern.piece(PieceId::PocketFacing)?;
        let bag = pattern.piece(PieceId::PocketBag)?;
        let along = |piece: &draft::Piece, edge| piece.edge(edge).map(|e| e.length());
        let width = along(facing, EdgeId::Waist)? + along(facing, EdgeId::WaistUnder)?;
        let across = along(bag, EdgeId::WaistUnder)?;
        let depth = spec[MeasureId::MouthDepth] + spec.facing;
        let said: Said = if depth > spec.bag_depth {
            say::SewingInnerBagFacing {
                bag_depth: spec.bag_depth.in_mm(1),
                depth: depth.in_mm(1),
            }
            .into()
        } else if width > across + PLACED {
            say::SewingInnerBagFacing2 {
                across: across.in_mm(1),
                width: width.in_mm(1),
            }
            .into()
        } else {
            return None;
        };
        Some(
            Broken::warning(PartId::PocketBag, said)
                .help(key::SEWING_INNER_BAG_FACING_HELP)
                .at(case.point(PieceId::PocketBag, PointId::FoldTop)),
        )
    };
    found().into_iter().collect()
}
