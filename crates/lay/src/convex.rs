//! Convex parts: cutting a simple polygon into few of them, and sums of them.

use geometry::Point;

/// Twice the area of the triangle, positive when it turns left.
pub(crate) fn turn(a: Point, b: Point, c: Point) -> f64 {
    (b - a).cross(c - a)
}

/// Cuts a simple polygon, anticlockwise and without repeated points, into convex parts.
///
/// Ears are clipped and the triangles joined again wherever the union stays convex (Hertel and
/// Mehlhorn 1983), which gives at most four times the fewest possible parts.
pub(crate) fn convex_parts(polygon: &[Point]) -> Vec<Vec<Point>> {
    let mut parts: Vec<Vec<usize>> = triangles(polygon);
    let mut joined = true;
    while joined {
        joined = false;
        'pairs: for i in 0..parts.len() {
            for j in i + 1..parts.len() {
                let union = join(&parts[i], &parts[j]);
                if let Some(union) = union.filter(|u| is_convex(polygon, u)) {
                    parts[i] = union;
                    parts.swap_remove(j);
                    joined = true;
                    break 'pairs;
                }
            }
        }
    }
    parts
        .iter()
        .map(|part| part.iter().map(|&i| polygon[i]).collect())
        .collect()
}

fn triangles(polygon: &[Point]) -> Vec<Vec<usize>> {
    let mut left: Vec<usize> = (0..polygon.len()).collect();
    let mut out = Vec::new();
    while left.len() > 3 {
        let n = left.len();
        let at = |i: usize| polygon[left[i % n]];
        // The fattest ear first: slivers make poor convex parts.
        let ear = (0..n)
            .filter(|&i| is_ear(polygon, &left, i))
            .max_by(|&i, &j| {
                let fat = |k: usize| {
                    let (a, b, c) = (at(k + n - 1), at(k), at(k + 1));
                    turn(a, b, c) / (c - a).hypot2().max((b - a).hypot2()).max((c - b).hypot2())
                };
                fat(i).total_cmp(&fat(j))
            });
        let Some(i) = ear else {
            // Only flat corners are left of a polygon that touches itself; nothing more to gain.
            break;
        };
        if turn(at(i + n - 1), at(i), at(i + 1)) > 0.0 {
            out.push(vec![left[(i + n - 1) % n], left[i], left[(i + 1) % n]]);
        }
        left.remove(i);
    }
    if let [a, b, c] = left[..]
        && turn(polygon[a], polygon[b], polygon[c]) > 0.0
    {
        out.push(vec![a, b, c]);
    }
    out
}

fn is_ear(polygon: &[Point], left: &[usize], i: usize) -> bool {
    let n = left.len();
    let (ia, ib, ic) = (left[(i + n - 1) % n], left[i], left[(i + 1) % n]);
    let (a, b, c) = (polygon[ia], polygon[ib], polygon[ic]);
    turn(a, b, c) >= 0.0
        && left.iter().all(|&k| {
            let p = polygon[k];
            k == ia
                || k == ib
                || k == ic
                || turn(a, b, p) < 0.0
                || turn(b, c, p) < 0.0
                || turn(c, a, p) < 0.0
        })
}

/// The two index loops joined along the edge they share, if they share one.
fn join(a: &[usize], b: &[usize]) -> Option<Vec<usize>> {
    let (n, m) = (a.len(), b.len());
    for i in 0..n {
        let (from, to) = (a[i], a[(i + 1) % n]);
        if let Some(j) = (0..m).find(|&j| b[j] == to && b[(j + 1) % m] == from) {
            let mut union: Vec<usize> = (1..=n).map(|k| a[(i + k) % n]).collect();
            union.extend((2..m).map(|k| b[(j + k) % m]));
            return Some(union);
        }
    }
    None
}

fn is_convex(polygon: &[Point], part: &[usize]) -> bool {
    let n = part.len();
    (0..n).all(|i| {
        let at = |k: usize| polygon[part[k % n]];
        turn(at(i), at(i + 1), at(i + 2)) >= 0.0
    })
}

/// The sum of two convex polygons (Minkowski): every point of one added to every point of the
/// other. Both anticlockwise, and so is the sum; corners that turn by nothing are left out.
pub(crate) fn convex_sum(a: &[Point], b: &[Point]) -> Vec<Point> {
    let lowest = |p: &[Point]| {
        (0..p.len())
            .min_by(|&i, &j| p[i].y.total_cmp(&p[j].y).then(p[i].x.total_cmp(&p[j].x)))
            .unwrap_or(0)
    };
    let (n, m) = (a.len(), b.len());
    if n == 0 || m == 0 {
        return Vec::new();
    }
    let (start_a, start_b) = (lowest(a), lowest(b));
    let edge = |p: &[Point], start: usize, k: usize| {
        let len = p.len();
        p[(start + k + 1) % len] - p[(start + k) % len]
    };
    let mut at = (a[start_a].to_vec2() + b[start_b].to_vec2()).to_point();
    let mut sum: Vec<Point> = Vec::with_capacity(n + m);
    let (mut i, mut j) = (0, 0);
    while i < n || j < m {
        sum.push(at);
        let ea = edge(a, start_a, i);
        let eb = edge(b, start_b, j);
        let cross = ea.cross(eb);
        if j >= m || (i < n && cross > 0.0) {
            at += ea;
            i += 1;
        } else if i >= n || cross < 0.0 {
            at += eb;
            j += 1;
        } else {
            at += ea + eb;
            i += 1;
            j += 1;
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::area;

    fn points(xy: &[(f64, f64)]) -> Vec<Point> {
        xy.iter().map(|&p| p.into()).collect()
    }

    #[test]
    fn a_comb_is_cut_into_convex_parts_of_the_same_area() {
        let comb = points(&[
            (0.0, 0.0),
            (50.0, 0.0),
            (50.0, 30.0),
            (40.0, 30.0),
            (40.0, 10.0),
            (30.0, 10.0),
            (30.0, 30.0),
            (20.0, 30.0),
            (20.0, 10.0),
            (10.0, 10.0),
            (10.0, 30.0),
            (0.0, 30.0),
        ]);
        let parts = convex_parts(&comb);
        let total: f64 = parts.iter().map(|p| area(p).to_mm2()).sum();
        assert!((total - area(&comb).to_mm2()).abs() < 1e-9);
        assert!(parts.len() <= 6, "{}", parts.len());
        for part in &parts {
            let loop_of: Vec<usize> = (0..part.len()).collect();
            assert!(is_convex(part, &loop_of));
        }
    }

    #[test]
    fn a_square_and_a_triangle_add_up() {
        let square = points(&[(0.0, 0.0), (2.0, 0.0), (2.0, 2.0), (0.0, 2.0)]);
        let triangle = points(&[(0.0, 0.0), (1.0, 0.0), (0.0, 1.0)]);
        let sum = convex_sum(&square, &triangle);
        // Area of a sum: 4 + 1/2 + twice the mixed area, which is 2 (1 + 1) / 2 here by hand.
        assert!((area(&sum).to_mm2() - 8.5).abs() < 1e-9, "{sum:?}");
        assert_eq!(sum.len(), 5);
    }
}
