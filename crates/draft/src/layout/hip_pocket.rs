//! The hip pocket: its mouth, the shell facing behind it and the folded bag.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Affine, Path, Point, Vec2, left_of};
use style::MeasureId;
use trade::Length;

use super::named::{at, fold, mm, outline, placement, set_at};
use super::panels::coin_placement;
use super::patch_pockets::extra_outline;
use crate::block::Block;
use crate::piece::{
    ClothUse, Cut, EdgeId, InnerLine, LineId, Notch, NotchId, Piece, PieceId, PointId,
};
use crate::spec::Spec;

/// Share of each half axis taken by the handles of a quarter ellipse.
const QUARTER: f64 = 0.5523;

/// The mouth edge, from the outseam up to the waist.
pub(crate) struct Mouth {
    pub curve: Path,
    pub on_side: Point,
    pub on_waist: Point,
}

impl Mouth {
    /// The mouth the chart asks for.
    pub fn on(spec: &Spec, block: &Block) -> Mouth {
        Mouth::along(corner_curve(
            block,
            spec,
            spec[MeasureId::MouthWidth],
            spec[MeasureId::MouthDepth],
        ))
    }

    /// A mouth that is drawn already, from the outseam up to the waist.
    pub fn along(curve: Path) -> Mouth {
        Mouth {
            on_side: curve.start(),
            on_waist: curve.end(),
            curve,
        }
    }
}

/// A curve round the side corner of the front: square to the outseam at `depth` below the waist,
/// square to the waist at `width` from the outseam. Its handles take the stated share of each half
/// axis; a quarter of an ellipse would take 55.23 %.
fn corner_curve(block: &Block, spec: &Spec, width: Length, depth: Length) -> Path {
    let fullness = spec.mouth_fullness.to_ratio();
    let side = &block.front_side;
    let down_to = side.length() - depth;
    let from = side.point_at(down_to);
    let to = block.front_waist.point_at(width);
    let inward = left_of(side.direction_at(down_to));
    let up = -left_of(block.front_waist.direction_at(width));
    Path::cubic(
        from,
        from + inward * (fullness * mm(width)),
        to - up * (fullness * mm(depth)),
        to,
    )
}

pub(super) fn facing(spec: &Spec, block: &Block, mouth: &Mouth) -> Piece {
    let side = &block.front_side;
    let waist = &block.front_waist;
    let width = (spec[MeasureId::MouthWidth] + spec.facing).min(waist.length() - Length::mm(12.0));
    let depth = spec[MeasureId::MouthDepth] + spec.facing;
    let inner = corner_curve(block, spec, width, depth).reversed();
    let total = side.length();
    let middle = inner.point_at(inner.length() / 2.0);
    let grain_x = (middle.x + mouth.on_side.x) / 2.0;
    Piece {
        id: PieceId::PocketFacing,
        cloth: ClothUse::Shell,
        cut: Cut::PAIR,
        points: vec![
            at(PointId::MouthSide, mouth.on_side),
            at(PointId::MouthWaist, mouth.on_waist),
            at(PointId::SideWaist, side.end()),
        ],
        notches: vec![
            Notch {
                edge: EdgeId::SideUnder,
                along: spec.facing,
                id: NotchId::MouthAtOutseam,
                double: false,
            },
            Notch {
                edge: EdgeId::Waist,
                along: spec[MeasureId::MouthWidth],
                id: NotchId::MouthAtWaist,
                double: false,
            },
        ],
        lines: vec![coin_placement(spec, waist)],
        grain: (
            Point::new(grain_x, mouth.on_side.y - 20.0),
            Point::new(grain_x, side.end().y - 25.0),
        ),
        edges: outline(
            PieceId::PocketFacing,
            [
                waist.part(Length::ZERO, spec[MeasureId::MouthWidth]),
                waist.part(spec[MeasureId::MouthWidth], width),
                inner,
                side.part(total - depth, total - spec[MeasureId::MouthDepth]),
                side.part(total - spec[MeasureId::MouthDepth], total),
            ],
        ),
    }
}

/// Where the concealed pocket is set on the under layer of the bag, if the style has one: on the layer's side
/// towards the body, so that nothing of it lies in the mouth.
fn extra_placement(spec: &Spec, block: &Block) -> Option<InnerLine> {
    let extra = spec.extra_pocket?;
    let waist = block.front_waist.reversed();
    let from = waist.point_at(extra.from_centre);
    let to = waist.point_at(extra.from_centre + extra.width);
    let along = (to - from) / (to - from).hypot().max(NO_LENGTH_MM);
    let middle = from.midpoint(to);
    Some(placement(
        LineId::ExtraPocket,
        extra_outline(&extra).transformed(set_at(middle, along)),
    ))
}

/// How far below the mouth the bag stays in the outseam at least, before its foot curves away.
const IN_OUTSEAM: Length = Length::mm(70.0);
/// So far it stays in it below the facing, which else would hang out of the bag with its lower end.
const BELOW_FACING: Length = Length::mm(12.0);
/// What the foot needs of the bag's depth to curve in.
const FOOT_CURVES: Length = Length::mm(30.0);

/// How far below the mouth the bag stays in the outseam.
fn in_outseam(spec: &Spec) -> Length {
    let room = spec.bag_depth - spec[MeasureId::MouthDepth] - FOOT_CURVES;
    IN_OUTSEAM.max((spec.facing + BELOW_FACING).min(room))
}

pub(super) fn bag(spec: &Spec, block: &Block, mouth: &Mouth) -> Piece {
    let side = &block.front_side;
    let waist = &block.front_waist;
    let total = side.length();
    let bag_width = spec
        .bag_width
        .max(spec[MeasureId::MouthWidth] + Length::mm(15.0))
        .min(waist.length() - Length::mm(5.0));
    let fold_top = waist.point_at(bag_width);
    let depth = mm(spec.bag_depth);
    let fold_foot = Point::new(fold_top.x, fold_top.y - depth + 12.0);
    let stays = in_outseam(spec);
    let to_foot = total - spec[MeasureId::MouthDepth] - stays;
    let leaves = side.point_at(to_foot);
    let up = side.direction_at(to_foot);
    // The foot drops a little from the fold, runs level, then turns up into the outseam.
    let low = Point::new(
        fold_top.x + 0.45 * (leaves.x - fold_top.x),
        fold_top.y - depth,
    );
    let across = leaves.x - low.x;
    let rise = leaves.y - low.y;
    let foot = Path::cubic(
        fold_foot,
        fold_foot + Vec2::new((low.x - fold_foot.x) * 0.4, -4.0),
        low - Vec2::new((low.x - fold_foot.x) * 0.3, 0.0),
        low,
    )
    .then(&Path::cubic(
        low,
        low + Vec2::new(across * QUARTER, 0.0),
        leaves - up * (rise * QUARTER),
        leaves,
    ));
    let side_under = side.part(to_foot, total);
    // The upper layer is the under layer turned over the fold, less the corner behind the mouth.
    let turn = Affine::new([-1.0, 0.0, 0.0, 1.0, 2.0 * fold_top.x, 0.0]);
    let turned = |path: Path| path.reversed().transformed(turn);
    let side_upper = side.part(to_foot, total - spec[MeasureId::MouthDepth]);
    Piece {
        id: PieceId::PocketBag,
        cloth: ClothUse::Pocketing,
        cut: Cut::PAIR,
        points: vec![
            at(PointId::FoldTop, fold_top),
            at(PointId::FoldFoot, fold_foot),
            at(PointId::MouthSide, mouth.on_side),
            at(PointId::SideWaist, side.end()),
        ],
        notches: vec![Notch {
            edge: EdgeId::SideUnder,
            along: stays,
            id: NotchId::MouthAtOutseam,
            double: false,
        }],
        lines: [fold(LineId::Fold, fold_top, fold_foot)]
            .into_iter()
            .chain(extra_placement(spec, block))
            .collect(),
        grain: (
            Point::new(fold_top.x + 30.0, fold_top.y - depth * 0.75),
            Point::new(fold_top.x + 30.0, fold_top.y - depth * 0.25),
        ),
        edges: outline(
            PieceId::PocketBag,
            [
                turned(waist.part(spec[MeasureId::MouthWidth], bag_width)),
                turned(mouth.curve.clone()),
                turned(side_upper),
                turned(foot.clone()),
                foot,
                side_under,
                waist.part(Length::ZERO, bag_width),
            ],
        ),
    }
}
