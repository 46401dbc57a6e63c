//! Pockets that are set on: coin pocket, back pockets with their linings, the concealed pocket.
//!
//! Each is drawn with its top edge on the x axis and its body below.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Path, Point, Vec2};
use style::{CoinShape, HALF_LINING, MeasureId};
use trade::Length;

use super::free_outline::free_outline;
use super::named::{along, at, mm};
use crate::piece::{ClothUse, Cut, Edge, Piece, PieceId, PointId};
use crate::spec::{BackPocketSpec, ExtraPocketSpec, Lining, Spec};

/// A point that hangs down no further is none.
const SHALLOWEST_MM: f64 = 1e-3;

/// The most a coin pocket's foot is shaped, as a share of its depth: some of its sides is left.
const MOST_DROP: f64 = 0.8;

/// Corner radius of the concealed pocket's foot.
const EXTRA_CORNER_MM: f64 = 25.0;

/// The edges of a back pocket or of what lines the whole of it: each segment one, the top edge last.
fn closed(piece: PieceId, outline: &Path) -> Vec<Edge> {
    let below = outline.segments().iter().map(|s| Path::new(vec![*s]));
    let top = Path::line(outline.end(), outline.start());
    super::named::outline(piece, below.chain([top]))
}

/// Left side, foot, right side; the top edge centred on the origin. The right side is the one
/// nearer the outseam.
///
/// The foot has one segment or more, the sides one each. The stated depth is that at the middle.
pub(super) fn coin_outline(spec: &Spec) -> Path {
    let half = mm(spec[MeasureId::CoinWidth]) / 2.0;
    let foot = half - mm(spec.coin_lower_narrowing) / 2.0;
    let depth = mm(spec[MeasureId::CoinDepth]);
    let drop = mm(spec.coin_drop).min(depth * MOST_DROP).max(0.0);
    let p = |x: f64, y: f64| Point::new(x, -y);
    let sides = |left: Point, foot: &[Point], right: Point| {
        let mut points = vec![p(-half, 0.0), left];
        points.extend(foot);
        points.extend([right, p(half, 0.0)]);
        Path::polyline(&points)
    };
    // A shape without any drop is straight.
    let shape = match spec.coin_shape {
        CoinShape::Free => CoinShape::Free,
        shape if drop > SHALLOWEST_MM => shape,
        _ => CoinShape::Straight,
    };
    match shape {
        CoinShape::Free => spec
            .coin_outline
            .as_ref()
            .and_then(|line| {
                free_outline(line, spec[MeasureId::CoinWidth], spec[MeasureId::CoinDepth])
            })
            .unwrap_or_else(|| sides(p(-foot, depth), &[], p(foot, depth))),
        CoinShape::Straight => sides(p(-foot, depth), &[], p(foot, depth)),
        CoinShape::Pointed => {
            let corner = depth - drop;
            sides(p(-foot, corner), &[p(0.0, depth)], p(foot, corner))
        }
        CoinShape::CutCorner => {
            // Never more than half the foot from either side.
            let cut = drop.min(foot * 0.9).max(0.0);
            let up = depth - cut;
            let side = half + (foot - half) * up / depth.max(NO_LENGTH_MM);
            let corner = foot - cut;
            sides(
                p(-side, up),
                &[p(-corner, depth), p(corner, depth)],
                p(side, up),
            )
        }
        CoinShape::Slant => {
            let (inner, outer) = (depth - drop / 2.0, depth + drop / 2.0);
            sides(p(-foot, inner), &[], p(foot, outer))
        }
        CoinShape::Round => {
            let corner = depth - drop;
            // A cubic reaches three quarters of the way to handles at equal height.
            let handle = corner + drop * 4.0 / 3.0;
            Path::line(p(-half, 0.0), p(-foot, corner))
                .then(&Path::cubic(
                    p(-foot, corner),
                    p(-foot, handle),
                    p(foot, handle),
                    p(foot, corner),
                ))
                .then(&Path::line(p(foot, corner), p(half, 0.0)))
        }
    }
}

pub(super) fn coin(spec: &Spec) -> Piece {
    let outline = coin_outline(spec);
    let depth = mm(spec[MeasureId::CoinDepth]);
    let segments = outline.segments();
    let last = segments.len() - 1;
    let sides = [
        Path::new(segments[..1].to_vec()),
        Path::new(segments[1..last].to_vec()),
        Path::new(segments[last..].to_vec()),
        Path::line(outline.end(), outline.start()),
    ];
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
        edges: super::named::outline(PieceId::CoinPocket, sides),
        points: vec![
            at(PointId::TopMiddle, Point::ORIGIN),
            at(PointId::FootMiddle, Point::new(0.0, -depth)),
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
    let width = mm(spec[MeasureId::BackPocketWidth]);
    let inset = (width - mm(pocket.foot_width)) / 2.0;
    let drop = |side: f64| (side * side - inset * inset).max(1.0).sqrt();
    let inner = drop(mm(pocket.side_length));
    let outer = drop(mm(pocket.side_length + pocket.outer_drop));
    Path::polyline(&[
        Point::ORIGIN,
        Point::new(inset, -inner),
        Point::new(width / 2.0, -mm(spec[MeasureId::BackPocketLength])),
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
    let (width, length) = (
        mm(spec[MeasureId::BackPocketWidth]),
        mm(spec[MeasureId::BackPocketLength]),
    );
    let corner = |k: usize| outline.segments()[k].to_cubic().p3;
    Piece {
        id,
        cloth: ClothUse::Shell,
        cut,
        edges: closed(id, &outline),
        points: vec![
            at(PointId::TopInner, Point::ORIGIN),
            at(PointId::TopMiddle, Point::new(width / 2.0, 0.0)),
            at(PointId::TopOuter, Point::new(width, 0.0)),
            at(PointId::FootInner, corner(0)),
            at(PointId::Point, corner(1)),
            at(PointId::FootOuter, corner(2)),
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
    let width = mm(spec[MeasureId::BackPocketWidth]);
    let edges = if share >= 1.0 {
        closed(id, &outline)
    } else {
        let segments = outline.segments();
        let inner = Path::new(segments[..1].to_vec());
        let outer = Path::new(segments[3..].to_vec());
        let reach = inner.length() * share;
        let inner = inner.part(Length::ZERO, reach);
        let outer = outer.part(outer.length() - reach, outer.length());
        let foot = Path::line(inner.end(), outer.start());
        let top = Path::line(outline.end(), outline.start());
        along(&HALF_LINING, [foot, outer, top, inner])
    };
    Piece {
        id,
        cloth: ClothUse::Lining,
        cut,
        edges,
        points: vec![at(PointId::TopMiddle, Point::new(width / 2.0, 0.0))],
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
        edges: super::named::outline(
            PieceId::ExtraPocket,
            [
                Path::new(segments[..1].to_vec()),
                Path::new(segments[1..4].to_vec()),
                Path::new(segments[4..].to_vec()),
                Path::line(outline.end(), outline.start()),
            ],
        ),
        points: vec![
            at(PointId::TopMiddle, Point::ORIGIN),
            at(PointId::FootMiddle, Point::new(0.0, -depth)),
        ],
        lines: Vec::new(),
        notches: Vec::new(),
        grain: (Point::new(0.0, -depth * 0.8), Point::new(0.0, -depth * 0.2)),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::piece::EdgeId;
    use style::{Size, StyleDoc};

    fn ferryman() -> StyleDoc {
        let folder = concat!(
            env!("CARGO_MANIFEST_DIR"),
            "/../style/demo/saltmarsh/styles/ferryman"
        );
        style::load(folder.as_ref()).unwrap().style
    }

    /// A pocket 75 mm wide and 85 mm deep, its foot 6 mm narrower, its shape 15 mm.
    fn shaped(shape: CoinShape) -> Piece {
        let mut spec = Spec::of(&ferryman(), Size::new(32, 32));
        spec.set(MeasureId::CoinWidth, Length::mm(75.0));
        spec.set(MeasureId::CoinDepth, Length::mm(85.0));
        spec.coin_lower_narrowing = Length::mm(6.0);
        spec.coin_drop = Length::mm(15.0);
        spec.coin_shape = shape;
        coin(&spec)
    }

    /// Area by the shoelace formula, corners by hand.
    fn by_hand(corners: &[(f64, f64)]) -> f64 {
        let next = corners.iter().cycle().skip(1);
        let twice: f64 = corners
            .iter()
            .zip(next)
            .map(|(a, b)| a.0 * b.1 - b.0 * a.1)
            .sum();
        twice / 2.0
    }

    #[test]
    fn each_coin_pocket_has_its_shape() {
        // At 70 mm down, the sides stand 37.5 - 3 * 70 / 85 mm from the middle.
        let side = 37.5 - 3.0 * 70.0 / 85.0;
        let feet: [(CoinShape, &[(f64, f64)]); 4] = [
            (CoinShape::Straight, &[(-34.5, -85.0), (34.5, -85.0)]),
            (
                CoinShape::Pointed,
                &[(-34.5, -70.0), (0.0, -85.0), (34.5, -70.0)],
            ),
            (
                CoinShape::CutCorner,
                &[(-side, -70.0), (-19.5, -85.0), (19.5, -85.0), (side, -70.0)],
            ),
            (CoinShape::Slant, &[(-34.5, -77.5), (34.5, -92.5)]),
        ];
        for (shape, foot) in feet {
            let piece = shaped(shape);
            let mut corners = vec![(-37.5, 0.0)];
            corners.extend(foot);
            corners.push((37.5, 0.0));
            let off = piece.area().to_mm2() - by_hand(&corners);
            assert!(off.abs() < 1e-6, "{shape}: {off}");
        }
    }

    #[test]
    fn the_stated_depth_is_that_at_the_middle() {
        for (_, shape) in CoinShape::WORDS {
            let piece = shaped(*shape);
            let foot = piece.edge(EdgeId::Foot).unwrap();
            let (a, b) = foot
                .dense(Length::mm(0.05))
                .windows(2)
                .map(|w| (w[0], w[1]))
                .find(|(a, b)| a.x <= 0.0 && b.x > 0.0)
                .unwrap();
            let y = a.y + (b.y - a.y) * (-a.x) / (b.x - a.x);
            assert!((y + 85.0).abs() < 0.01, "{shape}: {y}");
        }
    }

    #[test]
    fn a_round_foot_hangs_below_its_sides_by_the_drop() {
        let foot = shaped(CoinShape::Round).edge(EdgeId::Foot).unwrap().clone();
        let lowest = foot.bounds().y0;
        assert!((foot.start().y - lowest - 15.0).abs() < 1e-9);
        assert!((foot.start().x + 34.5).abs() < 1e-9 && (foot.end().x - 34.5).abs() < 1e-9);
    }

    #[test]
    fn the_longer_side_of_a_back_pocket_is_longer_by_its_drop() {
        let doc = ferryman();
        let spec = Spec::of(&doc, Size::new(32, 32));
        for (pocket, id) in [
            (&spec.back_pocket_left, PieceId::BackPocketLeft),
            (&spec.back_pocket_right, PieceId::BackPocketRight),
        ] {
            let piece = back_pockets(&spec)
                .into_iter()
                .find(|p| p.id == id)
                .unwrap();
            let at = |id| piece.point(id).unwrap();
            // Measured along the cloth, corner to corner.
            let inner = (at(PointId::FootInner) - at(PointId::TopInner)).hypot();
            let outer = (at(PointId::FootOuter) - at(PointId::TopOuter)).hypot();
            assert!((inner - pocket.side_length.to_mm()).abs() < 1e-9);
            assert!((outer - inner - pocket.outer_drop.to_mm()).abs() < 1e-9);
            // The point hangs straight below the middle of the top edge, at the charted length.
            let middle = (at(PointId::TopInner).x + at(PointId::TopOuter).x) / 2.0;
            assert!((at(PointId::Point).x - middle).abs() < 1e-9);
            assert!(
                (at(PointId::Point).y + spec[MeasureId::BackPocketLength].to_mm()).abs() < 1e-9
            );
            // Both sides lean in alike: what differs is how far down they go.
            let lean = (at(PointId::FootInner).x + at(PointId::FootOuter).x) / 2.0;
            assert!((lean - middle).abs() < 1e-9);
            assert_eq!(
                at(PointId::FootOuter).y < at(PointId::FootInner).y,
                pocket.outer_drop > Length::ZERO
            );
        }
        assert!(spec.back_pocket_right.outer_drop > Length::ZERO);
    }
}
