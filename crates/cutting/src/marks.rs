//! Notches and drill holes.

use draft::{EdgeId, LineId, Notch, NotchId, Pattern, Piece, PieceId};
use geometry::tolerance::SAME_MM;
use geometry::{Affine, Path, Point, contains, unit};
use sewing::{Fixing, FixingKind, On, placements};
use trade::Length;

use crate::allowance_lie::{EdgeLie, Lie};
use crate::corner::SLIGHT_RAD;
use crate::outline::Outline;
use crate::piece::{CutNotch, Drill, DrillKind, NotchKind};
use crate::polyline::{ends, nearest, outward, ray, starts};

/// How deep a notch is cut (common practice: 3 to 4 mm), but never beyond half the allowance.
pub const NOTCH_DEPTH: Length = Length::mm(4.0);

/// How far inside both edges of a pocket's corner its drill hole lies, so that the pocket covers it
/// (common practice: about 5 mm, between the two rows of stitches).
pub const DRILL_INSIDE: Length = Length::mm(5.0);

/// The notches of a piece, carried square to the sewn line out to the cut line.
pub(crate) fn notches(
    piece: &Piece,
    outline: &Outline,
    allowance_of: impl Fn(EdgeId) -> Length,
    on_cloth_edge: impl Fn(EdgeId, Point) -> bool,
) -> Vec<CutNotch> {
    let mut closed = outline.cut.clone();
    closed.extend(outline.cut.first());
    piece
        .notches
        .iter()
        .filter_map(|notch| {
            let edge = piece.edge(notch.edge)?;
            let (on_seam, along) = (edge.point_at(notch.along), edge.direction_at(notch.along));
            let out = outward(along);
            let allowance = allowance_of(notch.edge);
            let reach = allowance.to_mm() * 2.0 + 60.0;
            // Begin a hair inside, so that an edge without allowance is met as well.
            let at = ray(&closed, on_seam - out * 0.01, out, reach)
                .unwrap_or(on_seam + out * allowance.to_mm());
            let depth = NOTCH_DEPTH.min(allowance * 0.5);
            let kind = if on_cloth_edge(notch.edge, at) || depth < Length::mm(1.0) {
                NotchKind::Drawn
            } else {
                NotchKind::Slit
            };
            Some(CutNotch {
                id: notch.id,
                edge: notch.edge,
                along: notch.along,
                on_seam,
                at,
                into: -out,
                beside: along,
                depth: if kind == NotchKind::Drawn {
                    NOTCH_DEPTH
                } else {
                    depth
                },
                double: notch.double,
                kind,
            })
        })
        .collect()
}

/// Notches at both ends of every hem, where it is folded up first (common practice).
pub(crate) fn hem_folds(piece: &Piece, lies: &[EdgeLie]) -> Vec<Notch> {
    let n = piece.edges.len();
    let mut out = Vec::new();
    for (k, lie) in lies.iter().enumerate().take(n) {
        if !matches!(lie.lie, Lie::Hemmed { .. }) {
            continue;
        }
        let (before, after) = (&piece.edges[(k + n - 1) % n], &piece.edges[(k + 1) % n]);
        for (edge, along) in [(before.id, before.path.length()), (after.id, Length::ZERO)] {
            out.push(Notch {
                edge,
                along,
                id: NotchId::HemFold,
                double: false,
            });
        }
    }
    out
}

/// A pocket as it lies on the piece it is set on, before the wash.
pub(crate) struct SetOn {
    /// The pocket.
    pub pocket: PieceId,
    /// The line on the piece below that shows where it is set.
    pub line: LineId,
    /// The piece below.
    pub onto: PieceId,
    /// On which copies of it.
    pub on: On,
    /// The pocket's outline in the frame of the piece below, edge by edge.
    pub edges: Vec<Path>,
}

/// Every pocket that is set on another piece. A pocket and the ground below it lie at an angle to
/// each other and shrink a little differently; the difference is shared out to both sides.
pub(crate) fn set_on(pattern: &Pattern) -> Vec<SetOn> {
    placements(pattern)
        .into_iter()
        .filter_map(|placed| {
            let set = SET_ON.iter().find(|(pocket, _)| *pocket == placed.piece);
            set.map(|(_, line)| (placed, *line))
        })
        .filter_map(|(placed, line_id)| {
            let pocket = pattern.piece(placed.piece)?;
            let line = pattern.piece(placed.onto)?.line(line_id)?;
            let drawn = |id| pocket.edge(id).map(|e| e.clone().transformed(placed.map));
            let first = drawn(if pocket.edge(EdgeId::Inner).is_some() {
                EdgeId::Inner
            } else {
                EdgeId::Left
            })?;
            let last = drawn(if pocket.edge(EdgeId::Outer).is_some() {
                EdgeId::Outer
            } else {
                EdgeId::Right
            })?;
            let centre = |a: Point, b: Point| a.midpoint(b);
            let shift = centre(line.start(), line.end()) - centre(first.start(), last.end());
            let map = Affine::translate(shift) * placed.map;
            Some(SetOn {
                pocket: placed.piece,
                line: line_id,
                onto: placed.onto,
                on: placed.on,
                edges: pocket
                    .edges
                    .iter()
                    .map(|e| e.path.transformed(map))
                    .collect(),
            })
        })
        .collect()
}

/// The pockets that are set on another piece, each with its placement line there.
pub(crate) const SET_ON: [(PieceId, LineId); 4] = [
    (PieceId::CoinPocket, LineId::CoinPocket),
    (PieceId::BackPocketLeft, LineId::PocketLeft),
    (PieceId::BackPocketRight, LineId::PocketRight),
    (PieceId::ExtraPocket, LineId::ExtraPocket),
];

/// Drill holes of a piece: the corners of the pockets set on it, and its rivets.
pub(crate) fn drills(
    piece: &Piece,
    sewn: &[Point],
    pockets: &[&SetOn],
    fixings: &[Fixing],
    map: Affine,
) -> Vec<Drill> {
    let mut out = Vec::new();
    for pocket in pockets {
        for (k, at) in inside_corners(&pocket.edges).into_iter().enumerate() {
            // A pocket caught in a seam has its upper corners there: no mark is needed, and none
            // would be hidden. The concealed pocket ends at the band seam and is not caught in it.
            let clear = far_inside(sewn, at) >= DRILL_INSIDE.to_mm() - SAME_MM;
            if contains(sewn, at) && (clear || pocket.pocket == PieceId::ExtraPocket) {
                out.push(Drill {
                    name: format!("{} corner {}", pocket.line.code(), k + 1),
                    kind: DrillKind::PocketCorner,
                    on: pocket.on,
                    at,
                    inside: DRILL_INSIDE,
                });
            }
        }
    }
    // A hidden rivet does not go through the face of its pocket: a hole there would stay open to view.
    let seen = |f: &&Fixing| f.piece == piece.id && f.outside;
    for fixing in fixings.iter().filter(seen) {
        if let FixingKind::Rivet(cap) = fixing.kind {
            out.push(Drill {
                name: fixing.from.code().to_owned(),
                kind: DrillKind::Rivet,
                on: fixing.on,
                at: map * fixing.at,
                inside: cap / 2.0,
            });
        }
    }
    out
}

/// How far a point lies from an outline.
pub(crate) fn far_inside(outline: &[Point], p: Point) -> f64 {
    let mut closed = outline.to_vec();
    closed.extend(outline.first());
    nearest(&closed, p).map_or(0.0, |(_, q)| (p - q).hypot())
}

/// The place [`DRILL_INSIDE`] from both edges at every corner of a closed outline, and square inside
/// the middle of an edge that runs smoothly into both its neighbours: the foot of a rounded pocket.
fn inside_corners(edges: &[Path]) -> Vec<Point> {
    let lines: Vec<Vec<Point>> = edges.iter().map(|e| e.dense(Length::mm(1.0))).collect();
    let mut out = Vec::new();
    let n = lines.len();
    for k in 0..n {
        let line = &lines[k];
        // Corners within an edge, such as the point of a coin pocket.
        for w in line.windows(3) {
            let (a, b) = (unit(w[1] - w[0]), unit(w[2] - w[1]));
            let turn = a.cross(b).atan2(a.dot(b));
            if turn > SLIGHT_RAD {
                out.push(w[1] - inset(a, b));
            }
        }
        let next = &lines[(k + 1) % n];
        let before = &lines[(k + n - 1) % n];
        if smooth(ends(before), starts(line)) && smooth(ends(line), starts(next)) {
            let middle = edges[k].length() / 2.0;
            let (at, along) = (edges[k].point_at(middle), edges[k].direction_at(middle));
            out.push(at - inset(along, along));
        }
        let (a, b) = (ends(line), starts(next));
        if let Some(&corner) = next.first().filter(|_| !smooth(a, b)) {
            out.push(corner - inset(a, b));
        }
    }
    out
}

/// Whether a line goes on without a corner.
fn smooth(a: geometry::Vec2, b: geometry::Vec2) -> bool {
    a.cross(b).atan2(a.dot(b)).abs() < SLIGHT_RAD
}

/// From a corner between two directions to the place beyond both by the margin, outward.
fn inset(a: geometry::Vec2, b: geometry::Vec2) -> geometry::Vec2 {
    let (u, v) = (outward(a), outward(b));
    let sum = u + v;
    sum * (2.0 * DRILL_INSIDE.to_mm() / sum.hypot2().max(0.5))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hole_of_a_square_corner_is_five_millimetres_from_both_edges() {
        let p = |x: f64, y: f64| Point::new(x, y);
        let square = [
            Path::line(p(0.0, 0.0), p(100.0, 0.0)),
            Path::line(p(100.0, 0.0), p(100.0, 80.0)),
            Path::line(p(100.0, 80.0), p(0.0, 80.0)),
            Path::line(p(0.0, 80.0), p(0.0, 0.0)),
        ];
        let holes = inside_corners(&square);
        assert_eq!(
            holes,
            [p(95.0, 5.0), p(95.0, 75.0), p(5.0, 75.0), p(5.0, 5.0)]
        );
    }
}
