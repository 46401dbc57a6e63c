//! The sides of an outline, and where an upright line crosses them.

use geometry::Point;

/// The sides, each from its first corner to its next.
pub(crate) fn sides(p: &[Point]) -> impl Iterator<Item = (Point, Point)> + '_ {
    (0..p.len()).map(|i| (p[i], p[(i + 1) % p.len()]))
}

/// Where an upright line crosses the polygon, from below.
pub(crate) fn heights(polygon: &[Point], x: f64) -> Vec<f64> {
    let mut out: Vec<f64> = sides(polygon)
        .filter(|(p, q)| (p.x > x) != (q.x > x))
        .map(|(p, q)| p.y + (x - p.x) / (q.x - p.x) * (q.y - p.y))
        .collect();
    out.sort_by(f64::total_cmp);
    out
}
