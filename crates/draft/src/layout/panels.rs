//! Front, back and yoke.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Path, Point, left_of};
use style::MeasureId;
use trade::Length;

use super::hip_pocket::Mouth;
use super::named::{at, mm, outline, placement, set_at};
use super::patch_pockets::{coin_outline, pocket_outline};
use crate::block::Block;
use crate::piece::{
    ClothUse, Cut, EdgeId, InnerLine, LineId, Notch, NotchId, Piece, PieceId, PointId,
};
use crate::spec::{BackPocketSpec, Spec};

/// Where the notches of a leg lie on one panel.
#[derive(Clone, Copy, Debug)]
pub(crate) struct LegMarks {
    /// The knee on the inseam, from the crotch.
    pub knee_in: Length,
    /// The knee on the outseam, from the hem.
    pub knee_out: Length,
    /// The hip on the outseam, from the hem.
    pub hip: Length,
}

/// Where the notches of a leg lie.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Marks {
    pub front: LegMarks,
    pub back: LegMarks,
}

impl Marks {
    /// Front and back carry theirs equally far above the hem, so any stretch of the inseam falls
    /// between knee and crotch.
    pub fn on(block: &Block) -> Marks {
        let first = |path: &Path, count| Path::new(path.segments()[..count].to_vec()).length();
        let front = LegMarks {
            knee_in: first(&block.front_inseam, 1),
            knee_out: first(&block.front_side, 1),
            hip: first(&block.front_side, 2),
        };
        let below = block.front_inseam.length() - front.knee_in;
        Marks {
            front,
            back: LegMarks {
                knee_in: block.back_inseam.length() - below,
                ..front
            },
        }
    }
}

pub(super) fn front(spec: &Spec, block: &Block, marks: &LegMarks, mouth: &Mouth) -> Piece {
    let centre = &block.front_centre;
    let (fly, crotch) = centre.split(spec[MeasureId::FlyLength]);
    let side = block.front_side.part(
        Length::ZERO,
        block.front_side.length() - spec[MeasureId::MouthDepth],
    );
    let waist = block
        .front_waist
        .part(spec[MeasureId::MouthWidth], block.front_waist.length());
    let hem_middle = block.front_hem.point_at(block.front_hem.length() / 2.0);
    let down = centre.start_direction();
    let lines = vec![placement(
        LineId::FlyStitch,
        super::fly::stitch_outline(spec).transformed(set_at(centre.start(), left_of(down))),
    )];
    Piece {
        id: PieceId::Front,
        cloth: ClothUse::Shell,
        cut: Cut::PAIR,
        points: vec![
            at(PointId::WaistCentre, centre.start()),
            at(PointId::FlyFoot, fly.end()),
            at(PointId::Crotch, centre.end()),
            at(PointId::KneeIn, block.front_inseam.point_at(marks.knee_in)),
            at(PointId::HemIn, block.front_hem.start()),
            at(PointId::HemMiddle, hem_middle),
            at(
                PointId::HemTop,
                Point::new(hem_middle.x, hem_middle.y + mm(spec[MeasureId::HemDepth])),
            ),
            at(PointId::HemOut, block.front_hem.end()),
            at(PointId::KneeOut, block.front_side.point_at(marks.knee_out)),
            at(PointId::Hip, block.front_side.point_at(marks.hip)),
            at(PointId::MouthSide, mouth.on_side),
            at(PointId::MouthWaist, mouth.on_waist),
            at(PointId::SideWaist, block.front_side.end()),
        ],
        notches: vec![
            Notch {
                edge: EdgeId::Inseam,
                along: marks.knee_in,
                id: NotchId::InseamKnee,
                double: false,
            },
            Notch {
                edge: EdgeId::Side,
                along: marks.knee_out,
                id: NotchId::OutseamKnee,
                double: false,
            },
            Notch {
                edge: EdgeId::Side,
                along: marks.hip,
                id: NotchId::Hip,
                double: false,
            },
            Notch {
                edge: EdgeId::Crotch,
                along: Length::ZERO,
                id: NotchId::FlyFoot,
                double: false,
            },
        ],
        edges: outline(
            PieceId::Front,
            [
                fly,
                crotch,
                block.front_inseam.clone(),
                block.front_hem.clone(),
                side,
                mouth.curve.clone(),
                waist,
            ],
        ),
        lines,
        grain: grain(block.front_crease, block),
    }
}

pub(super) fn back(spec: &Spec, block: &Block, marks: &LegMarks) -> Piece {
    let seat_top = block.back_seat.start();
    let down = block.back_seat.start_direction();
    let along = -block.back_top.start_direction();
    let below = -left_of(along);
    // The pocket's top edge runs parallel to the yoke seam.
    let on_seat =
        seat_top + down * (mm(spec[MeasureId::BackPocketFromYoke]) / down.dot(below).max(0.2));
    let inner = on_seat + along * mm(spec[MeasureId::BackPocketFromCentre]);
    let place =
        |pocket: &BackPocketSpec| pocket_outline(spec, pocket).transformed(set_at(inner, along));
    let hem_middle = block.back_hem.point_at(block.back_hem.length() / 2.0);
    Piece {
        id: PieceId::Back,
        cloth: ClothUse::Shell,
        cut: Cut::PAIR,
        points: vec![
            at(PointId::YokeCentre, seat_top),
            at(PointId::Crotch, block.back_seat.end()),
            at(PointId::HemIn, block.back_hem.start()),
            at(PointId::HemMiddle, hem_middle),
            at(PointId::HemOut, block.back_hem.end()),
            at(PointId::KneeIn, block.back_inseam.point_at(marks.knee_in)),
            at(PointId::KneeOut, block.back_side.point_at(marks.knee_out)),
            at(PointId::Hip, block.back_side.point_at(marks.hip)),
            at(PointId::YokeSide, block.back_side.end()),
            at(PointId::PocketInner, inner),
            at(
                PointId::PocketOuter,
                inner + along * mm(spec[MeasureId::BackPocketWidth]),
            ),
            at(
                PointId::PocketInnerOnYoke,
                inner - below * mm(spec[MeasureId::BackPocketFromYoke]),
            ),
            at(PointId::PocketInnerOnSeat, on_seat),
        ],
        notches: vec![
            Notch {
                edge: EdgeId::Inseam,
                along: marks.knee_in,
                id: NotchId::InseamKnee,
                double: true,
            },
            Notch {
                edge: EdgeId::Side,
                along: marks.knee_out,
                id: NotchId::OutseamKnee,
                double: true,
            },
            Notch {
                edge: EdgeId::Side,
                along: marks.hip,
                id: NotchId::Hip,
                double: true,
            },
            Notch {
                edge: EdgeId::Top,
                along: block.back_top.length() / 2.0,
                id: NotchId::YokeMiddle,
                double: true,
            },
        ],
        edges: outline(
            PieceId::Back,
            [
                block.back_seat.clone(),
                block.back_inseam.clone(),
                block.back_hem.clone(),
                block.back_side.clone(),
                block.back_top.clone(),
            ],
        ),
        lines: vec![
            placement(LineId::PocketLeft, place(&spec.back_pocket_left)),
            placement(LineId::PocketRight, place(&spec.back_pocket_right)),
        ],
        grain: grain(block.back_crease, block),
    }
}

pub(super) fn yoke(block: &Block) -> Piece {
    // The yoke is cut with its centre back on the straight grain.
    let (top, foot) = (block.yoke_centre.start(), block.yoke_centre.end());
    let middle = block
        .yoke_lower
        .point_at(block.yoke_lower.length() / 2.0)
        .midpoint(block.yoke_top.point_at(block.yoke_top.length() / 2.0));
    let half = (top - foot) * 0.35;
    let half_seam = block.yoke_lower.length() / 2.0;
    Piece {
        id: PieceId::Yoke,
        cloth: ClothUse::Shell,
        cut: Cut::PAIR,
        points: vec![
            at(PointId::WaistCentre, top),
            at(PointId::SeamCentre, foot),
            at(PointId::SeamSide, block.yoke_lower.end()),
            at(PointId::SideWaist, block.yoke_side.end()),
        ],
        notches: vec![Notch {
            edge: EdgeId::Lower,
            along: half_seam,
            id: NotchId::YokeMiddle,
            double: true,
        }],
        edges: outline(
            PieceId::Yoke,
            [
                block.yoke_centre.clone(),
                block.yoke_lower.clone(),
                block.yoke_side.clone(),
                block.yoke_top.clone(),
            ],
        ),
        lines: Vec::new(),
        grain: (middle - half, middle + half),
    }
}

/// A grain line on the crease, from below the hip to above the hem.
fn grain(crease: f64, block: &Block) -> (Point, Point) {
    (
        Point::new(crease, block.hem_y * 0.75),
        Point::new(crease, block.hem_y * 0.15),
    )
}

/// Where the coin pocket is set on the pocket facing.
pub(super) fn coin_placement(spec: &Spec, waist: &Path) -> InnerLine {
    let outer = waist.point_at(spec.coin_from_side);
    let inner = waist.point_at(spec.coin_from_side + spec[MeasureId::CoinWidth]);
    let along = (outer - inner) / (outer - inner).hypot().max(NO_LENGTH_MM);
    let below = -left_of(along);
    let middle =
        outer - along * (mm(spec[MeasureId::CoinWidth]) / 2.0) + below * mm(spec.coin_below_band);
    placement(
        LineId::CoinPocket,
        coin_outline(spec).transformed(set_at(middle, along)),
    )
}
