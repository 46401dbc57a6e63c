//! Outlines grown outward by a different amount along each edge: the cut line round a sewn piece.

use kurbo::{Point, Vec2};
use thiserror::Error;
use trade::Length;

use crate::polyline::{is_simple, moved_left, without_repeats};
use crate::straight::Straight;
use crate::tolerance::{PARALLEL, SAME_POINT};
use crate::unit;

/// A corner whose mitre would reach further than this many allowances is cut off square.
/// Common practice puts the limit between 2.5 and 3.
const MITRE_LIMIT: f64 = 3.0;

/// Below this change of direction two edges count as one smooth run, and a change of allowance
/// becomes a perpendicular step instead of a mitre.
const SMOOTH_TURN_RAD: f64 = 0.06;

/// Why an outline could not be grown.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum OffsetError {
    /// Fewer than three points in all.
    #[error("the outline has no area")]
    NoArea,
    /// The grown outline crosses itself near the start of the edge with this index.
    #[error("the allowances are too wide for the shape: the cut line crosses itself")]
    Crosses,
}

/// Grows a closed outline outward, edge by edge.
///
/// `edges` run **anticlockwise** and join end to start; each is a dense polyline in millimetres with
/// its own allowance (zero keeps the edge where it is). Corners are mitred: the two offset lines
/// meet. Where that point would lie too far out the corner is cut off; where the allowance changes
/// along a smooth run the cut line steps squarely. Returns the closed cut line, anticlockwise,
/// without repeating its first point.
///
/// # Errors
/// [`OffsetError`] when there is no outline, or when the grown one crosses itself.
pub fn offset_outline(edges: &[(Vec<Point>, Length)]) -> Result<Vec<Point>, OffsetError> {
    let runs: Vec<(Vec<Point>, f64)> = edges
        .iter()
        .map(|(points, allowance)| (without_repeats(points, SAME_POINT), allowance.to_mm()))
        .filter(|(points, _)| points.len() >= 2)
        .collect();
    if runs.iter().map(|(p, _)| p.len() - 1).sum::<usize>() < 3 {
        return Err(OffsetError::NoArea);
    }
    let mut shifted: Vec<Vec<Point>> = runs
        .iter()
        .map(|(p, a)| moved_left(p, Length::mm(-a)))
        .collect();
    let n = runs.len();
    let corners: Vec<Vec<Point>> = (0..n)
        .map(|i| join(&runs, &mut shifted, i, (i + 1) % n))
        .collect();
    let mut outline = Vec::new();
    for (edge, corner) in shifted.iter().zip(&corners) {
        outline.extend_from_slice(edge);
        outline.extend_from_slice(corner);
    }
    let mut outline = without_repeats(&outline, SAME_POINT);
    if let (Some(&first), Some(&last)) = (outline.first(), outline.last())
        && (first - last).hypot() < SAME_POINT.to_mm()
    {
        outline.pop();
    }
    if is_simple(&outline) {
        Ok(outline)
    } else {
        Err(OffsetError::Crosses)
    }
}

/// Shapes the corner after edge `i`; returns the points between the two shifted edges.
fn join(runs: &[(Vec<Point>, f64)], shifted: &mut [Vec<Point>], i: usize, j: usize) -> Vec<Point> {
    let (a, b) = (runs[i].1, runs[j].1);
    let (from, to) = (&runs[i].0, &runs[j].0);
    let d1 = unit(from[from.len() - 1] - from[from.len() - 2]);
    let d2 = unit(to[1] - to[0]);
    let corner = to[0];
    let turn = d1.cross(d2).atan2(d1.dot(d2));
    if turn.abs() < SMOOTH_TURN_RAD {
        return Vec::new();
    }
    if turn < 0.0 {
        trim_crossing(shifted, i, j);
        return Vec::new();
    }
    let (p, q) = (corner + outward(d1) * a, corner + outward(d2) * b);
    let (one, other) = (Straight { from: p, way: d1 }, Straight { from: q, way: d2 });
    let limit = MITRE_LIMIT * a.max(b);
    let meet = one.meeting(other, 0.0).map(|m| one.at(m.first));
    if let Some(meet) = meet.filter(|meet| (*meet - corner).hypot() <= limit) {
        return vec![meet];
    }
    // Too sharp for a mitre: run each offset line on by the wider allowance and close squarely.
    let reach = a.max(b);
    vec![p + d1 * reach, q - d2 * reach]
}

/// At an inward corner the two shifted edges cross; both are cut back to the crossing.
fn trim_crossing(shifted: &mut [Vec<Point>], i: usize, j: usize) {
    let (first, second) = (shifted[i].clone(), shifted[j].clone());
    for k in (1..first.len()).rev() {
        for m in 1..second.len() {
            let other = Straight::between(second[m - 1], second[m]);
            if let Some(x) = Straight::between(first[k - 1], first[k]).crossing(other, PARALLEL) {
                shifted[i].truncate(k);
                shifted[i].push(x);
                let mut rest = vec![x];
                rest.extend_from_slice(&second[m..]);
                shifted[j] = rest;
                return;
            }
        }
    }
}

fn outward(direction: Vec2) -> Vec2 {
    Vec2::new(direction.y, -direction.x)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::polyline::area;

    fn edges(corners: &[(f64, f64)], allowances: &[f64]) -> Vec<(Vec<Point>, Length)> {
        let n = corners.len();
        (0..n)
            .map(|i| {
                let (a, b) = (corners[i], corners[(i + 1) % n]);
                (
                    vec![Point::new(a.0, a.1), Point::new(b.0, b.1)],
                    Length::mm(allowances[i]),
                )
            })
            .collect()
    }

    #[test]
    fn rectangle_with_four_allowances() {
        let cut = offset_outline(&edges(
            &[(0.0, 0.0), (100.0, 0.0), (100.0, 50.0), (0.0, 50.0)],
            &[10.0, 5.0, 20.0, 0.0],
        ))
        .unwrap();
        assert!((area(&cut).to_mm2() - 105.0 * 80.0).abs() < 1e-6);
    }

    #[test]
    fn inward_corner_is_trimmed() {
        let cut = offset_outline(&edges(
            &[
                (0.0, 0.0),
                (100.0, 0.0),
                (100.0, 50.0),
                (50.0, 50.0),
                (50.0, 100.0),
                (0.0, 100.0),
            ],
            &[10.0; 6],
        ))
        .unwrap();
        assert!((area(&cut).to_mm2() - (120.0 * 120.0 - 50.0 * 50.0)).abs() < 1e-6);
    }

    #[test]
    fn sharp_point_is_cut_off() {
        let cut =
            offset_outline(&edges(&[(0.0, 0.0), (200.0, 0.0), (0.0, 10.0)], &[10.0; 3])).unwrap();
        let furthest = cut.iter().map(|p| p.x).fold(f64::MIN, f64::max);
        assert!(furthest < 231.0, "{furthest}");
    }

    #[test]
    fn nothing_is_not_an_outline() {
        assert_eq!(offset_outline(&[]), Err(OffsetError::NoArea));
    }
}
