//! Front, back and yoke.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Path, Point, left_of};
use trade::Length;

use super::hip_pocket::Mouth;
use super::patch_pockets::{coin_outline, extra_outline, pocket_outline};
use super::{at, edge, mm, placement, set_at};
use crate::block::Block;
use crate::piece::{ClothUse, Cut, InnerLine, Notch, Piece, PieceId};
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
    let (fly, crotch) = centre.split(spec.fly_length);
    let side = block
        .front_side
        .part(Length::ZERO, block.front_side.length() - spec.mouth_depth);
    let waist = block
        .front_waist
        .part(spec.mouth_width, block.front_waist.length());
    let hem_middle = block.front_hem.point_at(block.front_hem.length() / 2.0);
    let down = centre.start_direction();
    let mut lines = vec![placement(
        "fly_stitch",
        super::fly::stitch_outline(spec).transformed(set_at(centre.start(), left_of(down))),
    )];
    lines.extend(extra_placement(spec, block));
    Piece {
        id: PieceId::Front,
        cloth: ClothUse::Shell,
        cut: Cut::PAIR,
        points: vec![
            at("waist_centre", centre.start()),
            at("fly_foot", fly.end()),
            at("crotch", centre.end()),
            at("knee_in", block.front_inseam.point_at(marks.knee_in)),
            at("hem_in", block.front_hem.start()),
            at("hem_middle", hem_middle),
            at(
                "hem_top",
                Point::new(hem_middle.x, hem_middle.y + mm(spec.hem_depth)),
            ),
            at("hem_out", block.front_hem.end()),
            at("knee_out", block.front_side.point_at(marks.knee_out)),
            at("hip", block.front_side.point_at(marks.hip)),
            at("mouth_side", mouth.on_side),
            at("mouth_waist", mouth.on_waist),
            at("side_waist", block.front_side.end()),
        ],
        notches: vec![
            Notch {
                edge: "inseam",
                along: marks.knee_in,
                name: "inseam knee",
                double: false,
            },
            Notch {
                edge: "side",
                along: marks.knee_out,
                name: "outseam knee",
                double: false,
            },
            Notch {
                edge: "side",
                along: marks.hip,
                name: "hip",
                double: false,
            },
            Notch {
                edge: "crotch",
                along: Length::ZERO,
                name: "fly foot",
                double: false,
            },
        ],
        edges: vec![
            edge("fly", fly),
            edge("crotch", crotch),
            edge("inseam", block.front_inseam.clone()),
            edge("hem", block.front_hem.clone()),
            edge("side", side),
            edge("mouth", mouth.curve.clone()),
            edge("waist", waist),
        ],
        lines,
        grain: grain(block.front_crease, block),
    }
}

/// Where the concealed pocket hangs behind the front, if the style has one.
fn extra_placement(spec: &Spec, block: &Block) -> Option<InnerLine> {
    let extra = spec.extra_pocket?;
    let waist = block.front_waist.reversed();
    let from = waist.point_at(extra.from_centre);
    let to = waist.point_at(extra.from_centre + extra.width);
    let along = (to - from) / (to - from).hypot().max(NO_LENGTH_MM);
    let middle = from.midpoint(to);
    Some(placement(
        "extra_pocket",
        extra_outline(&extra).transformed(set_at(middle, along)),
    ))
}

pub(super) fn back(spec: &Spec, block: &Block, marks: &LegMarks) -> Piece {
    let seat_top = block.back_seat.start();
    let down = block.back_seat.start_direction();
    let along = -block.back_top.start_direction();
    let below = -left_of(along);
    // The pocket's top edge runs parallel to the yoke seam.
    let on_seat = seat_top + down * (mm(spec.back_pocket_from_yoke) / down.dot(below).max(0.2));
    let inner = on_seat + along * mm(spec.back_pocket_from_centre);
    let place =
        |pocket: &BackPocketSpec| pocket_outline(spec, pocket).transformed(set_at(inner, along));
    let hem_middle = block.back_hem.point_at(block.back_hem.length() / 2.0);
    Piece {
        id: PieceId::Back,
        cloth: ClothUse::Shell,
        cut: Cut::PAIR,
        points: vec![
            at("yoke_centre", seat_top),
            at("crotch", block.back_seat.end()),
            at("hem_in", block.back_hem.start()),
            at("hem_middle", hem_middle),
            at("hem_out", block.back_hem.end()),
            at("knee_in", block.back_inseam.point_at(marks.knee_in)),
            at("knee_out", block.back_side.point_at(marks.knee_out)),
            at("hip", block.back_side.point_at(marks.hip)),
            at("yoke_side", block.back_side.end()),
            at("pocket_inner", inner),
            at("pocket_outer", inner + along * mm(spec.back_pocket_width)),
            at(
                "pocket_inner_on_yoke",
                inner - below * mm(spec.back_pocket_from_yoke),
            ),
            at("pocket_inner_on_seat", on_seat),
        ],
        notches: vec![
            Notch {
                edge: "inseam",
                along: marks.knee_in,
                name: "inseam knee",
                double: true,
            },
            Notch {
                edge: "side",
                along: marks.knee_out,
                name: "outseam knee",
                double: true,
            },
            Notch {
                edge: "side",
                along: marks.hip,
                name: "hip",
                double: true,
            },
            Notch {
                edge: "top",
                along: block.back_top.length() / 2.0,
                name: "yoke middle",
                double: true,
            },
        ],
        edges: vec![
            edge("seat", block.back_seat.clone()),
            edge("inseam", block.back_inseam.clone()),
            edge("hem", block.back_hem.clone()),
            edge("side", block.back_side.clone()),
            edge("top", block.back_top.clone()),
        ],
        lines: vec![
            placement("pocket_left", place(&spec.back_pocket_left)),
            placement("pocket_right", place(&spec.back_pocket_right)),
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
            at("waist_centre", top),
            at("seam_centre", foot),
            at("seam_side", block.yoke_lower.end()),
            at("side_waist", block.yoke_side.end()),
        ],
        notches: vec![Notch {
            edge: "lower",
            along: half_seam,
            name: "yoke middle",
            double: true,
        }],
        edges: vec![
            edge("centre", block.yoke_centre.clone()),
            edge("lower", block.yoke_lower.clone()),
            edge("side", block.yoke_side.clone()),
            edge("top", block.yoke_top.clone()),
        ],
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
    let inner = waist.point_at(spec.coin_from_side + spec.coin_width);
    let along = (outer - inner) / (outer - inner).hypot().max(NO_LENGTH_MM);
    let below = -left_of(along);
    let middle = outer - along * (mm(spec.coin_width) / 2.0) + below * mm(spec.coin_below_band);
    placement(
        "coin_pocket",
        coin_outline(spec).transformed(set_at(middle, along)),
    )
}
