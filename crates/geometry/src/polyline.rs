//! Questions about polylines and polygons, used where curves have become points.

use kurbo::{Point, Rect, Vec2};
use trade::{Area, Length};

use crate::{left_of, unit};

/// Length of the polyline.
pub fn polyline_length(points: &[Point]) -> Length {
    Length::mm(points.windows(2).map(|w| (w[1] - w[0]).hypot()).sum())
}

/// Signed area of the closed polygon, positive when it runs anticlockwise (shoelace formula).
pub fn area(polygon: &[Point]) -> Area {
    let n = polygon.len();
    let twice: f64 = (0..n)
        .map(|i| {
            let (a, b) = (polygon[i], polygon[(i + 1) % n]);
            a.x * b.y - b.x * a.y
        })
        .sum();
    Area::mm2(twice / 2.0)
}

/// The smallest upright rectangle round the points; a point at the origin when there are none.
pub fn bounds_of(points: &[Point]) -> Rect {
    let Some(first) = points.first() else {
        return Rect::ZERO;
    };
    let start = Rect::from_points(*first, *first);
    points.iter().fold(start, |r, p| r.union_pt(*p))
}

/// Whether the point lies inside the polygon (even-odd rule; the boundary itself is either).
pub fn contains(polygon: &[Point], p: Point) -> bool {
    let n = polygon.len();
    let mut inside = false;
    for i in 0..n {
        let (a, b) = (polygon[i], polygon[(i + 1) % n]);
        if (a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x {
            inside = !inside;
        }
    }
    inside
}

/// The polyline moved to its left by `by` (to its right where that is less than nothing), mitred at its
/// own vertices. No point may repeat the one before.
pub fn moved_left(points: &[Point], by: Length) -> Vec<Point> {
    let n = points.len();
    (0..n)
        .map(|k| {
            let before = (k > 0).then(|| left_of(unit(points[k] - points[k - 1])));
            let after = (k + 1 < n).then(|| left_of(unit(points[k + 1] - points[k])));
            let normal = match (before, after) {
                (Some(u), Some(v)) => {
                    let sum = u + v;
                    let square = sum.hypot2();
                    // The mitre factor 1/cos(half turn), limited so that a kink cannot fly off.
                    if square < 0.05 {
                        v
                    } else {
                        sum * (2.0 / square)
                    }
                }
                (Some(u), None) | (None, Some(u)) => u,
                (None, None) => Vec2::ZERO,
            };
            points[k] + normal * by.to_mm()
        })
        .collect()
}

/// Whether the closed polygon crosses itself nowhere.
///
/// Segments are swept in order of their left end, so a smooth outline of a thousand points costs
/// far less than a million comparisons.
pub fn is_simple(polygon: &[Point]) -> bool {
    let n = polygon.len();
    if n < 3 {
        return false;
    }
    let segment = |i: usize| (polygon[i], polygon[(i + 1) % n]);
    let mut order: Vec<usize> = (0..n).collect();
    let left = |i: usize| segment(i).0.x.min(segment(i).1.x);
    let right = |i: usize| segment(i).0.x.max(segment(i).1.x);
    order.sort_by(|a, b| left(*a).total_cmp(&left(*b)));
    for (k, &i) in order.iter().enumerate() {
        for &j in order[k + 1..].iter().take_while(|j| left(**j) <= right(i)) {
            let neighbours = (i + 1) % n == j || (j + 1) % n == i;
            if !neighbours && cross(segment(i), segment(j)) {
                return false;
            }
        }
    }
    true
}

fn cross(a: (Point, Point), b: (Point, Point)) -> bool {
    let side = |p: Point, q: Point, r: Point| (q - p).cross(r - p);
    let (d1, d2) = (side(a.0, a.1, b.0), side(a.0, a.1, b.1));
    let (d3, d4) = (side(b.0, b.1, a.0), side(b.0, b.1, a.1));
    d1 * d2 < 0.0 && d3 * d4 < 0.0
}

/// The polyline with points every `step` (the last gap may be shorter), ends kept.
pub fn resample(points: &[Point], step: Length) -> Vec<Point> {
    let step = step.to_mm().max(1e-3);
    let Some(&first) = points.first() else {
        return Vec::new();
    };
    let mut out = vec![first];
    let mut until_next = step;
    for w in points.windows(2) {
        let length = (w[1] - w[0]).hypot();
        let mut at = until_next;
        while at < length {
            out.push(w[0].lerp(w[1], at / length));
            at += step;
        }
        until_next = at - length;
    }
    if let Some(&last) = points.last()
        && out.last().is_none_or(|p| (last - *p).hypot() > 1e-9)
    {
        out.push(last);
    }
    out
}

/// The parts of the polyline that lie inside the polygon, cut where it crosses the boundary.
pub fn clip_to_polygon(points: &[Point], polygon: &[Point]) -> Vec<Vec<Point>> {
    let n = polygon.len();
    let mut parts: Vec<Vec<Point>> = Vec::new();
    let mut open: Vec<Point> = Vec::new();
    for w in points.windows(2) {
        let mut cuts = vec![0.0, 1.0];
        for i in 0..n {
            let (a, b) = (polygon[i], polygon[(i + 1) % n]);
            let (r, s) = (w[1] - w[0], b - a);
            let denominator = r.cross(s);
            if denominator.abs() < 1e-12 {
                continue;
            }
            let t = (a - w[0]).cross(s) / denominator;
            let u = (a - w[0]).cross(r) / denominator;
            if t > 0.0 && t < 1.0 && (0.0..=1.0).contains(&u) {
                cuts.push(t);
            }
        }
        cuts.sort_by(f64::total_cmp);
        for c in cuts.windows(2) {
            if c[1] - c[0] < 1e-12 {
                continue;
            }
            let (p, q) = (w[0].lerp(w[1], c[0]), w[0].lerp(w[1], c[1]));
            if contains(polygon, p.midpoint(q)) {
                if open.is_empty() {
                    open.push(p);
                }
                open.push(q);
            } else if !open.is_empty() {
                parts.push(std::mem::take(&mut open));
            }
        }
    }
    if !open.is_empty() {
        parts.push(open);
    }
    parts
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square() -> Vec<Point> {
        vec![
            Point::new(0.0, 0.0),
            Point::new(10.0, 0.0),
            Point::new(10.0, 10.0),
            Point::new(0.0, 10.0),
        ]
    }

    #[test]
    fn a_moved_line_keeps_its_distance_round_a_corner() {
        let line = [(0.0, 0.0), (100.0, 0.0), (100.0, 50.0)].map(Point::from);
        let right = [(0.0, -10.0), (110.0, -10.0), (110.0, 50.0)].map(Point::from);
        assert_eq!(moved_left(&line, Length::mm(-10.0)), right);
        let left = [(0.0, 10.0), (90.0, 10.0), (90.0, 50.0)].map(Point::from);
        assert_eq!(moved_left(&line, Length::mm(10.0)), left);
        assert_eq!(moved_left(&[], Length::mm(1.0)), []);
    }

    #[test]
    fn square_and_bow_tie() {
        let mut p = square();
        assert!((area(&p).to_mm2() - 100.0).abs() < 1e-9);
        assert!(is_simple(&p));
        assert!(contains(&p, Point::new(5.0, 5.0)));
        assert!(!contains(&p, Point::new(15.0, 5.0)));
        p.swap(2, 3);
        assert!(!is_simple(&p));
    }

    #[test]
    fn clipping_cuts_at_the_boundary() {
        let line = [Point::new(-5.0, 5.0), Point::new(15.0, 5.0)];
        let parts = clip_to_polygon(&line, &square());
        assert_eq!(parts.len(), 1);
        assert!((polyline_length(&parts[0]).to_mm() - 10.0).abs() < 1e-9);
    }

    #[test]
    fn resampling_keeps_ends_and_step() {
        let points = resample(&[Point::ORIGIN, Point::new(10.0, 0.0)], Length::mm(3.0));
        assert_eq!(points.len(), 5);
        assert!((points[3].x - 9.0).abs() < 1e-9);
        assert!((points[4].x - 10.0).abs() < 1e-9);
    }
}
