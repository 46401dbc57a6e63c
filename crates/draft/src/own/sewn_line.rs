//! From the cut line to the sewn line: the allowance taken off, edge by edge.

use geometry::tolerance::{NO_DIRECTION, PARALLEL, SAME_POINT};
use geometry::{Point, Straight, Vec2, is_simple, without_repeats};
use style::EdgeId;
use trade::Length;

/// Below this change of direction two edges run on into each other.
const SMOOTH_TURN_RAD: f64 = 0.06;

type Edges = Vec<(EdgeId, Vec<Point>)>;

/// The sewn line of a piece whose edges run anticlockwise along its cut line.
///
/// Each edge is moved inward by its allowance and mitred at its own points; neighbours meet where their
/// moved lines, drawn on where they have to be, cross.
///
/// # Errors
/// In words: an edge has no allowance, or what is left is no piece.
pub(super) fn inset(
    edges: &[(EdgeId, Vec<Point>)],
    allowance: impl Fn(EdgeId) -> Option<Length>,
) -> Result<Edges, String> {
    let mut moved: Edges = Vec::with_capacity(edges.len());
    for (name, points) in edges {
        let by = allowance(*name).ok_or_else(|| format!("`{}` has no allowance", name.code()))?;
        moved.push((
            *name,
            shifted(&without_repeats(points, SAME_POINT), by.to_mm()),
        ));
    }
    let n = moved.len();
    for i in 0..n {
        let j = (i + 1) % n;
        if moved[i].1.len() < 2 || moved[j].1.len() < 2 {
            return Err(format!("`{}` has no length", moved[i].0.code()));
        }
        let (first, second) = meet(&moved[i].1, &moved[j].1);
        moved[i].1 = first;
        moved[j].1 = second;
    }
    let round: Vec<Point> = moved
        .iter()
        .flat_map(|(_, points)| points.iter().skip(1).copied())
        .collect();
    if is_simple(&round) && geometry::area(&round).to_mm2() > 0.0 {
        Ok(moved)
    } else {
        Err("the stated allowance is too wide for it: the sewn line crosses itself".to_owned())
    }
}

/// The line moved to its left by `by` millimetres.
fn shifted(points: &[Point], by: f64) -> Vec<Point> {
    let unit = |v: Vec2| v / v.hypot().max(NO_DIRECTION);
    let n = points.len();
    (0..n)
        .map(|k| {
            let before = (k > 0).then(|| geometry::left_of(unit(points[k] - points[k - 1])));
            let after = (k + 1 < n).then(|| geometry::left_of(unit(points[k + 1] - points[k])));
            let normal = match (before, after) {
                (Some(a), Some(b)) => {
                    let sum = a + b;
                    // The mitre, limited so that a kink cannot fly off.
                    if sum.hypot() < 0.2 {
                        b
                    } else {
                        sum * (2.0 / sum.hypot2())
                    }
                }
                (Some(a), None) | (None, Some(a)) => a,
                (None, None) => Vec2::ZERO,
            };
            points[k] + normal * by
        })
        .collect()
}

/// Two lines made to meet: cut back to where they cross, or drawn on to it.
fn meet(first: &[Point], second: &[Point]) -> (Vec<Point>, Vec<Point>) {
    let (mut first, mut second) = (first.to_vec(), second.to_vec());
    for k in (1..first.len()).rev() {
        for m in 1..second.len() {
            let other = Straight::between(second[m - 1], second[m]);
            if let Some(x) = Straight::between(first[k - 1], first[k]).crossing(other, PARALLEL) {
                first.truncate(k);
                first.push(x);
                second.splice(..m, [x]);
                return (first, second);
            }
        }
    }
    let (a, b) = (first[first.len() - 2], first[first.len() - 1]);
    let (u, next) = (b - a, Straight::between(second[0], second[1]));
    let turn = u.cross(next.way).atan2(u.dot(next.way));
    let on = Straight { from: b, way: u };
    let met = on.meeting(next, 0.0).map(|m| on.at(m.first));
    match met.filter(|_| turn.abs() >= SMOOTH_TURN_RAD) {
        Some(x) => {
            first.push(x);
            second.insert(0, x);
        }
        // Allowances that differ along one smooth line leave a step; it lies at the start of the second.
        None => second.insert(0, b),
    }
    (
        without_repeats(&first, SAME_POINT),
        without_repeats(&second, SAME_POINT),
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn square(by: f64) -> Result<Edges, String> {
        let p = |x: f64, y: f64| Point::new(x, y);
        let edges = [
            (EdgeId::Hem, vec![p(0.0, 0.0), p(100.0, 0.0)]),
            (
                EdgeId::Side,
                vec![p(100.0, 0.0), p(100.0, 50.0), p(60.0, 50.0)],
            ),
            (EdgeId::Mouth, vec![p(60.0, 50.0), p(60.0, 80.0)]),
            (EdgeId::Top, vec![p(60.0, 80.0), p(0.0, 80.0), p(0.0, 0.0)]),
        ];
        inset(&edges, |name| {
            Some(Length::mm(if name == EdgeId::Hem { 20.0 } else { by }))
        })
    }

    #[test]
    fn each_edge_loses_its_own_allowance() {
        let edges = square(10.0).unwrap();
        let round: Vec<Point> = edges
            .iter()
            .flat_map(|(_, p)| p.iter().skip(1).copied())
            .collect();
        // 100 × 50 less 20 and 10 by 10 and 10, and above it 60 × 30 less 10 and 10 by 10, with the strip between.
        let area = geometry::area(&round).to_mm2();
        assert!((area - (80.0 * 20.0 + 40.0 * 30.0)).abs() < 1e-9, "{area}");
        assert_eq!(edges[0].1, [Point::new(10.0, 20.0), Point::new(90.0, 20.0)]);
    }

    #[test]
    fn an_allowance_wider_than_the_piece_is_refused() {
        assert!(square(45.0).unwrap_err().contains("too wide"));
    }
}
