//! Lines of a view with no more points than their shape takes.

use geometry::Point;
use geometry::tolerance::NO_LENGTH_MM;

/// How far a simplified line may stray: a tenth of a yarn.
const TOLERANCE_MM: f64 = 0.04;

/// Leaves out points that lie within the tolerance of the line between their neighbours
/// (Douglas–Peucker), so that a straight row is two points.
pub(super) fn simplified(points: &[Point]) -> Vec<Point> {
    let n = points.len();
    if n < 3 {
        return points.to_vec();
    }
    let mut keep = vec![false; n];
    keep[0] = true;
    keep[n - 1] = true;
    let mut stack = vec![(0, n - 1)];
    while let Some((a, b)) = stack.pop() {
        let (p, q) = (points[a], points[b]);
        let along = q - p;
        let length = along.hypot();
        let mut worst = (0.0, a);
        for (k, r) in points.iter().enumerate().take(b).skip(a + 1) {
            let off = if length > NO_LENGTH_MM {
                (along.cross(*r - p) / length).abs()
            } else {
                (*r - p).hypot()
            };
            if off > worst.0 {
                worst = (off, k);
            }
        }
        if worst.0 > TOLERANCE_MM {
            keep[worst.1] = true;
            stack.push((a, worst.1));
            stack.push((worst.1, b));
        }
    }
    points
        .iter()
        .zip(keep)
        .filter_map(|(p, k)| k.then_some(*p))
        .collect()
}
