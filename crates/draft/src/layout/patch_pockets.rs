//! Pockets that are set on: coin pocket, back pockets with their linings, the concealed pocket.
//!
//! Each is drawn with its top edge on the x axis and its body below.

use geometry::{Path, Point, Vec2};
use trade::Length;

use super::{at, edge, mm};
use crate::piece::{ClothUse, Cut, Piece, PieceId};
use crate::spec::{BackPocketSpec, ExtraPocketSpec, Lining, Spec};

/// Corner radius of the concealed pocket's foot.
const EXTRA_CORNER_MM: f64 = 25.0;

fn split_outline(outline: &Path, names: &[&'static str]) -> Vec<crate::piece::Edge> {
    outline
        .segments()
        .iter()
        .zip(names)
        .map(|(s, name)| edge(name, Path::new(vec![*s])))
        .collect()
}

/// Left side, foot, right side; the top edge centred on the origin.
pub(super) fn coin_outline(spec: &Spec) -> Path {
    let half = mm(spec.coin_width) / 2.0;
    let foot = half - mm(spec.coin_lower_narrowing) / 2.0;
    let depth = mm(spec.coin_depth);
    Path::polyline(&[
        Point::new(-half, 0.0),
        Point::new(-foot, -depth),
        Point::new(foot, -depth),
        Point::new(half, 0.0),
    ])
}

pub(super) fn coin(spec: &Spec) -> Piece {
    let outline = coin_outline(spec);
    let depth = mm(spec.coin_depth);
    let mut edges = split_outline(&outline, &["left", "foot", "right"]);
    edges.push(edge("top", Path::line(outline.end(), outline.start())));
    Piece {
        id: PieceId::CoinPocket,
        cloth: ClothUse::Shell,
        cut: if spec.coin_on_right {
            // Panels are drawn as the left of the wearer.
            Cut {
                as_drawn: 0,
                mirrored: 1,
            }
        } else {
            Cut::ONE
        },
        edges,
        points: vec![
            at("top_middle", Point::ORIGIN),
            at("foot_middle", Point::new(0.0, -depth)),
        ],
        lines: Vec::new(),
        notches: Vec::new(),
        grain: (Point::new(0.0, -depth * 0.8), Point::new(0.0, -depth * 0.2)),
    }
}

/// Inner side, inner foot, outer foot, outer side; the inner top corner at the origin.
///
/// Sides keep their stated lengths along the cloth; the point hangs below the middle of the top
/// edge.
pub(super) fn pocket_outline(spec: &Spec, pocket: &BackPocketSpec) -> Path {
    let width = mm(spec.back_pocket_width);
    let inset = (width - mm(pocket.foot_width)) / 2.0;
    let drop = |side: f64| (side * side - inset * inset).max(1.0).sqrt();
    let inner = drop(mm(pocket.side_length));
    let outer = drop(mm(pocket.side_length + pocket.outer_drop));
    Path::polyline(&[
        Point::ORIGIN,
        Point::new(inset, -inner),
        Point::new(width / 2.0, -mm(spec.back_pocket_length)),
        Point::new(width - inset, -outer),
        Point::new(width, 0.0),
    ])
}

pub(super) fn back_pockets(spec: &Spec) -> Vec<Piece> {
    let sides = [
        (
            &spec.back_pocket_left,
            PieceId::BackPocketLeft,
            PieceId::BackLiningLeft,
            Cut {
                as_drawn: 0,
                mirrored: 1,
            },
        ),
        (
            &spec.back_pocket_right,
            PieceId::BackPocketRight,
            PieceId::BackLiningRight,
            Cut::ONE,
        ),
    ];
    let mut out: Vec<Piece> = sides
        .iter()
        .map(|(pocket, id, _, cut)| back_pocket(spec, pocket, *id, *cut))
        .collect();
    for (pocket, _, id, cut) in sides {
        let depth = match pocket.lining {
            Lining::None => continue,
            Lining::Half => 0.5,
            Lining::Full => 1.0,
        };
        out.push(lining(spec, pocket, id, cut, depth));
    }
    out
}

fn back_pocket(spec: &Spec, pocket: &BackPocketSpec, id: PieceId, cut: Cut) -> Piece {
    let outline = pocket_outline(spec, pocket);
    let (width, length) = (mm(spec.back_pocket_width), mm(spec.back_pocket_length));
    let mut edges = split_outline(&outline, &["inner", "foot_inner", "foot_outer", "outer"]);
    edges.push(edge("top", Path::line(outline.end(), outline.start())));
    let corner = |k: usize| outline.segments()[k].to_cubic().p3;
    Piece {
        id,
        cloth: ClothUse::Shell,
        cut,
        edges,
        points: vec![
            at("top_inner", Point::ORIGIN),
            at("top_middle", Point::new(width / 2.0, 0.0)),
            at("top_outer", Point::new(width, 0.0)),
            at("foot_inner", corner(0)),
            at("point", corner(1)),
            at("foot_outer", corner(2)),
        ],
        lines: Vec::new(),
        notches: Vec::new(),
        grain: (
            Point::new(width / 2.0, -length * 0.75),
            Point::new(width / 2.0, -length * 0.2),
        ),
    }
}

/// The lining follows the pocket down to `share` of the length of its shorter side, or all of it.
fn lining(spec: &Spec, pocket: &BackPocketSpec, id: PieceId, cut: Cut, share: f64) -> Piece {
    let outline = pocket_outline(spec, pocket);
    let width = mm(spec.back_pocket_width);
    let edges = if share >= 1.0 {
        let mut edges = split_outline(&outline, &["inner", "foot_inner", "foot_outer", "outer"]);
        edges.push(edge("top", Path::line(outline.end(), outline.start())));
        edges
    } else {
        let segments = outline.segments();
        let inner = Path::new(segments[..1].to_vec());
        let outer = Path::new(segments[3..].to_vec());
        let reach = inner.length() * share;
        let inner = inner.part(Length::ZERO, reach);
        let outer = outer.part(outer.length() - reach, outer.length());
        vec![
            edge("foot", Path::line(inner.end(), outer.start())),
            edge("outer", outer),
            edge("top", Path::line(outline.end(), outline.start())),
            edge("inner", inner),
        ]
    };
    Piece {
        id,
        cloth: ClothUse::Lining,
        cut,
        edges,
        points: vec![at("top_middle", Point::new(width / 2.0, 0.0))],
        lines: Vec::new(),
        notches: Vec::new(),
        grain: (
            Point::new(width / 2.0, -mm(pocket.side_length) * 0.4),
            Point::new(width / 2.0, -10.0),
        ),
    }
}

/// Left side, rounded foot, right side; the top edge centred on the origin.
pub(super) fn extra_outline(extra: &ExtraPocketSpec) -> Path {
    let (half, depth) = (mm(extra.width) / 2.0, mm(extra.depth));
    let r = EXTRA_CORNER_MM.min(half).min(depth / 2.0);
    let handle = 0.5523 * r;
    let (a, b) = (Point::new(-half, -depth + r), Point::new(-half + r, -depth));
    let (c, d) = (Point::new(half - r, -depth), Point::new(half, -depth + r));
    Path::line(Point::new(-half, 0.0), a)
        .then(&Path::cubic(
            a,
            a - Vec2::new(0.0, handle),
            b - Vec2::new(handle, 0.0),
            b,
        ))
        .then(&Path::line(b, c))
        .then(&Path::cubic(
            c,
            c + Vec2::new(handle, 0.0),
            d - Vec2::new(0.0, handle),
            d,
        ))
        .then(&Path::line(d, Point::new(half, 0.0)))
}

pub(super) fn extra(spec: &Spec) -> Option<Piece> {
    let extra = spec.extra_pocket?;
    let outline = extra_outline(&extra);
    let segments = outline.segments();
    let depth = mm(extra.depth);
    Some(Piece {
        id: PieceId::ExtraPocket,
        cloth: ClothUse::Shell,
        cut: Cut::ONE,
        edges: vec![
            edge("left", Path::new(segments[..1].to_vec())),
            edge("foot", Path::new(segments[1..4].to_vec())),
            edge("right", Path::new(segments[4..].to_vec())),
            edge("top", Path::line(outline.end(), outline.start())),
        ],
        points: vec![
            at("top_middle", Point::ORIGIN),
            at("foot_middle", Point::new(0.0, -depth)),
        ],
        lines: Vec::new(),
        notches: Vec::new(),
        grain: (Point::new(0.0, -depth * 0.8), Point::new(0.0, -depth * 0.2)),
    })
}
