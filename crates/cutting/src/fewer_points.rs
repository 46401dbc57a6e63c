//! Outlines with fewer points, for lays and pattern files.

use geometry::{Point, Straight};
use trade::Length;

/// A closed outline with only as many of its points as keep every other one within `tolerance` of it
/// (the method of Douglas and Peucker, 1973). Its first point stays the first. A tolerance that is not
/// above zero gives the outline as it is.
pub fn thinned(outline: &[Point], tolerance: Length) -> Vec<Point> {
    let within = tolerance.to_mm();
    let n = outline.len();
    let (true, Some(&first)) = (within > 0.0 && n > 3, outline.first()) else {
        return outline.to_vec();
    };
    // A closed line is halved at its furthest point, so that neither half is closed.
    let far = furthest(outline, |p| (p - first).hypot());
    let mut keep = vec![false; n + 1];
    (keep[0], keep[far], keep[n]) = (true, true, true);
    let at = |k: usize| outline[k % n];
    mark_kept(&mut keep, vec![(0, far), (far, n)], at, within);
    (0..n).filter(|k| keep[*k]).map(at).collect()
}

/// The same of an open line; both its ends stay.
pub fn thinned_line(line: &[Point], tolerance: Length) -> Vec<Point> {
    let (n, within) = (line.len(), tolerance.to_mm());
    if n < 3 || within <= 0.0 {
        return line.to_vec();
    }
    let mut keep = vec![false; n];
    (keep[0], keep[n - 1]) = (true, true);
    let at = |k: usize| line[k];
    mark_kept(&mut keep, vec![(0, n - 1)], at, within);
    (0..n).filter(|k| keep[*k]).map(at).collect()
}

/// Marks the points between two kept ones that lie further than `within` from the line between them.
fn mark_kept(
    keep: &mut [bool],
    mut open: Vec<(usize, usize)>,
    at: impl Fn(usize) -> Point,
    within: f64,
) {
    while let Some((a, b)) = open.pop() {
        let off = (a + 1..b)
            .map(|k| (k, from_segment(at(k), at(a), at(b))))
            .max_by(|p, q| p.1.total_cmp(&q.1));
        if let Some((k, off)) = off
            && off > within
        {
            keep[k] = true;
            open.push((a, k));
            open.push((k, b));
        }
    }
}

fn furthest(outline: &[Point], far: impl Fn(Point) -> f64) -> usize {
    (0..outline.len())
        .max_by(|a, b| far(outline[*a]).total_cmp(&far(outline[*b])))
        .unwrap_or(0)
}

fn from_segment(p: Point, a: Point, b: Point) -> f64 {
    let side = Straight::between(a, b);
    side.distance(p, f64::MIN_POSITIVE).to_mm()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn points_on_a_straight_go_and_corners_stay() {
        let p = |x: f64, y: f64| Point::new(x, y);
        let outline = [
            p(0.0, 0.0),
            p(5.0, 0.0),
            p(10.0, 0.0),
            p(10.0, 10.0),
            p(5.0, 10.0),
            p(0.0, 10.0),
        ];
        let found = thinned(&outline, Length::mm(0.01));
        assert_eq!(
            found,
            [p(0.0, 0.0), p(10.0, 0.0), p(10.0, 10.0), p(0.0, 10.0)]
        );
        assert_eq!(thinned(&outline, Length::ZERO), outline);
        assert!(thinned(&[], Length::mm(1.0)).is_empty());
    }

    proptest! {
        #[test]
        fn every_point_stays_near(
            points in prop::collection::vec((-90.0..90.0f64, -90.0..90.0f64), 0..60),
            within in 0.0..20.0f64,
        ) {
            let outline: Vec<Point> = points.into_iter().map(Point::from).collect();
            let found = thinned(&outline, Length::mm(within));
            prop_assert!(found.len() <= outline.len());
            for p in &outline {
                let next = found.iter().cycle().skip(1);
                let off = found
                    .iter()
                    .zip(next)
                    .map(|(a, b)| from_segment(*p, *a, *b))
                    .fold(f64::INFINITY, f64::min);
                prop_assert!(off <= within + 1e-9);
            }
        }
    }
}
