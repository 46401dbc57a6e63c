//! A band cut in two and joined at the centre back.

use draft::{Edge, EdgeId, InnerLine, NotchId, Piece, PointId};
use geometry::tolerance::{NO_LENGTH_MM, NO_SQUARE_MM2, ROUNDING};
use geometry::{Path, Point, Straight};
use sewing::{band_join_allowance, band_join_construction};
use style::{Seam, SeamId};
use trade::Length;

use crate::allowance_lie::{EdgeLie, Lie};
use crate::piece::Part;

/// The two halves of a band, each with the edges it has and a join at the centre back, pressed open.
/// The whole again where it cannot be divided.
pub(crate) fn halves(
    band: &Piece,
    lies: &[EdgeLie],
    seams: &[Seam],
) -> Vec<(Part, Piece, Vec<EdgeLie>)> {
    divided(band, lies, seams).unwrap_or_else(|| vec![(Part::Whole, band.clone(), lies.to_vec())])
}

fn divided(
    band: &Piece,
    lies: &[EdgeLie],
    seams: &[Seam],
) -> Option<Vec<(Part, Piece, Vec<EdgeLie>)>> {
    let centre = band.point(PointId::CentreBack)?;
    let edge = |id| {
        let k = band.edges.iter().position(|e| e.id == id)?;
        Some((&band.edges.get(k)?.path, lies.get(k)?.clone()))
    };
    let (join, join_lie) = edge(EdgeId::Join)?;
    let (inner, inner_lie) = edge(EdgeId::Inner)?;
    let (overlap, overlap_lie) = edge(EdgeId::Overlap)?;
    let (right, right_lie) = edge(EdgeId::EndRight)?;
    let (left, left_lie) = edge(EdgeId::EndLeft)?;
    // All long edges are straight, so one share of their length is the centre back on each of them.
    let (from, until) = (left.end(), right.start());
    let share = Straight::between(from, until).share_beside(centre, NO_SQUARE_MM2);
    let low = from.lerp(until, share);
    let high = inner.end().lerp(inner.start(), share);
    let joined = EdgeLie {
        seam: Some(SeamId::BandJoin),
        construction: Some(band_join_construction(seams)),
        lie: Lie::Opened,
        allowance: band_join_allowance(seams),
        over: None,
    };
    let line = Path::line;
    let left_half = vec![
        (EdgeId::Join, line(join.start(), low), join_lie.clone()),
        (EdgeId::CentreBack, line(low, high), joined.clone()),
        (EdgeId::Inner, line(high, inner.end()), inner_lie.clone()),
        (EdgeId::EndLeft, left.clone(), left_lie),
    ];
    let right_half = vec![
        (EdgeId::Join, line(low, join.end()), join_lie),
        (EdgeId::Overlap, overlap.clone(), overlap_lie),
        (EdgeId::EndRight, right.clone(), right_lie),
        (EdgeId::Inner, line(inner.start(), high), inner_lie),
        (EdgeId::CentreBack, line(high, low), joined),
    ];
    let part = |part, edges: Vec<(EdgeId, Path, EdgeLie)>| {
        let is_left = part == Part::LeftHalf;
        let here = |x: f64| {
            if is_left {
                x <= low.x + ROUNDING
            } else {
                x >= low.x - ROUNDING
            }
        };
        let shares = if is_left { (0.0, share) } else { (share, 1.0) };
        let reach = (from.lerp(until, shares.0).x, from.lerp(until, shares.1).x);
        let middle = (reach.0 + reach.1) / 2.0;
        // The same grain, in the middle of the half and not longer than half of it.
        let half_grain = (band.grain.1 - band.grain.0) / 2.0;
        let room = (reach.1 - reach.0) / 4.0;
        let half_grain = half_grain * (room / half_grain.x.abs().max(NO_LENGTH_MM)).min(1.0);
        let centre = Point::new(middle, band.grain.0.midpoint(band.grain.1).y);
        let grain = (centre - half_grain, centre + half_grain);
        let starts = if is_left {
            Length::ZERO
        } else {
            Length::mm((low - join.start()).hypot())
        };
        let until_centre = Length::mm((low - join.start()).hypot());
        let piece = Piece {
            edges: edges
                .iter()
                .map(|(id, path, _)| Edge {
                    id: *id,
                    path: path.clone(),
                })
                .collect(),
            points: band
                .points
                .iter()
                .filter(|p| here(p.at.x))
                .cloned()
                .collect(),
            lines: band
                .lines
                .iter()
                .map(|l| InnerLine {
                    path: line(
                        l.path.start().lerp(l.path.end(), shares.0),
                        l.path.start().lerp(l.path.end(), shares.1),
                    ),
                    ..l.clone()
                })
                .collect(),
            notches: band
                .notches
                .iter()
                // The centre back is now an end, not a place on an edge.
                .filter(|n| n.edge != EdgeId::Join || n.id != NotchId::CentreBack)
                .filter(|n| n.edge != EdgeId::Join || (n.along < until_centre) == is_left)
                .map(|n| draft::Notch {
                    along: if n.edge == EdgeId::Join {
                        n.along - starts
                    } else {
                        n.along
                    },
                    ..n.clone()
                })
                .collect(),
            grain,
            ..band.clone()
        };
        let lies = edges.into_iter().map(|(_, _, lie)| lie).collect();
        (part, piece, lies)
    };
    Some(vec![
        part(Part::LeftHalf, left_half),
        part(Part::RightHalf, right_half),
    ])
}
