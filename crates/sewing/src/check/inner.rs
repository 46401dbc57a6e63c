//! What hangs inside: the concealed pocket and the pocket bags.

use draft::{EdgeId, LineId, PieceId, PointId};
use geometry::{Point, contains};
use style::{MeasureId, PartId};
use trade::Length;
use words::{Said, key, say};

use super::case::{Broken, Case, distance, distance_to_line, place};
use crate::inset_lines::points_along;

/// Placed by hand, a pocket's edge may lie this far off (common practice: 1/8 inch).
const PLACED: Length = Length::mm(3.2);

/// Points looked at along the top edge of the concealed pocket.
const STEPS: u32 = 16;

/// From the concealed pocket to a seam or a fold of the bag it is set on (common practice: the allowance of
/// the outseam, 1/2 inch).
const FROM_SEAM: Length = Length::mm(12.0);

/// Below the mouth a bag holds a hand to the knuckles; a man's hand is 19 cm long, from memory.
const HAND: Length = Length::mm(150.0);

/// The concealed pocket as it lies on the bag: the ends of its top edge and its outline.
fn extra(case: &Case<'_>) -> Option<(Point, Point, Vec<Point>)> {
    let line = case
        .context
        .pattern
        .piece(PieceId::PocketBag)?
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
            .at(place(PieceId::PocketBag, at))
        })
    };
    found().into_iter().collect()
}

/// It lies on the under layer of the bag, clear of its seams, and clear of the row that sets the facing on that
/// layer's other side, which would sew it shut.
pub(super) fn extra_on_bag(case: &Case<'_>) -> Vec<Broken> {
    let found = || {
        let (_, _, outline) = extra(case)?;
        let pattern = case.context.pattern;
        let bag = pattern.piece(PieceId::PocketBag)?;
        let edge = |id| points_along(bag.edge(id)?);
        let (foot, side) = (edge(EdgeId::FootUnder)?, edge(EdgeId::SideUnder)?);
        let fold = points_along(&bag.line(LineId::Fold)?.clone())?;
        let mut layer = foot.clone();
        layer.extend(&side);
        layer.extend(edge(EdgeId::WaistUnder)?);
        let inside = |p: Point| contains(&layer, p) || distance(&layer, p) < PLACED.to_mm();
        let beside = |line: &[Point]| {
            let near = outline.iter().map(|p| distance_to_line(line, *p));
            near.fold(f64::INFINITY, f64::min)
        };
        let near = [&foot, &side, &fold].map(|line| beside(line));
        let near = Length::mm(near.into_iter().fold(f64::INFINITY, f64::min));
        let within = outline.iter().all(|p| inside(*p));
        (!within || near < FROM_SEAM).then(|| {
            let near = if within { near } else { Length::ZERO };
            let said = say::SewingInnerExtraOnBag {
                from_seam: FROM_SEAM.in_mm(1),
                near: near.in_mm(1),
            };
            let place = outline.first().and_then(|p| place(PieceId::PocketBag, *p));
            Broken::warning(PartId::ExtraPocket, said)
                .help(key::SEWING_INNER_EXTRA_ON_BAG_HELP)
                .at(place)
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
