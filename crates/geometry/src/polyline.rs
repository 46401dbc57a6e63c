//! Questions about polylines and polygons, used where curves have become points.

use kurbo::{Point, Rect, Vec2};
use trade::{Area, Length};

use crate::path::LEAST_STEP_MM;
use crate::straight::{Straight, crosses};
use crate::tolerance::{NO_LENGTH_MM, PARALLEL, ROUNDING_OF_SHARES};
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
pub fn bounds_of<'a>(points: impl IntoIterator<Item = &'a Point>) -> Rect {
    let mut points = points.into_iter();
    let Some(first) = points.next() else {
        return Rect::ZERO;
    };
    let start = Rect::from_points(*first, *first);
    points.fold(start, |r, p| r.union_pt(*p))
}

/// The points without those that lie no further than this from the one before that is kept.
pub fn without_repeats(points: &[Point], same: Length) -> Vec<Point> {
    let mut out: Vec<Point> = Vec::with_capacity(points.len());
    for &p in points {
        if out.last().is_none_or(|q| (p - *q).hypot() > same.to_mm()) {
            out.push(p);
        }
    }
    out
}

/// The place of a line that is nearest to a point.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Nearest {
    /// The place.
    pub at: Point,
    /// How far along the line it lies.
    pub along: Length,
    /// How far it is from the point.
    pub away: Length,
}

/// The place of a polyline nearest to a point, the first of several; `None` where the line has no two points. The
/// square of a side's length counts as no less than `least_mm2`.
pub fn nearest_on(line: &[Point], p: Point, least_mm2: f64) -> Option<Nearest> {
    let mut run = 0.0;
    let mut best: Option<Nearest> = None;
    for w in line.windows(2) {
        let side = Straight::between(w[0], w[1]);
        let share = side.share_nearest(p, least_mm2);
        let at = side.at(share);
        let away = Length::mm((p - at).hypot());
        if best.is_none_or(|b| away < b.away) {
            let along = Length::mm(run + side.way.hypot() * share);
            best = Some(Nearest { at, along, away });
        }
        run += side.way.hypot();
    }
    best
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
            if !neighbours && crosses(segment(i), segment(j)) {
                return false;
            }
        }
    }
    true
}

/// The polyline with points every `step` (the last gap may be shorter), ends kept.
pub fn resample(points: &[Point], step: Length) -> Vec<Point> {
    let step = step.to_mm().max(LEAST_STEP_MM);
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
        && out
            .last()
            .is_none_or(|p| (last - *p).hypot() > NO_LENGTH_MM)
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
            let side = Straight::between(polygon[i], polygon[(i + 1) % n]);
            if let Some(meeting) = Straight::between(w[0], w[1]).meeting(side, PARALLEL)
                && meeting.first > 0.0
                && meeting.first < 1.0
                && (0.0..=1.0).contains(&meeting.second)
            {
                cuts.push(meeting.first);
            }
        }
        cuts.sort_by(f64::total_cmp);
        for c in cuts.windows(2) {
            if c[1] - c[0] < ROUNDING_OF_SHARES {
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
    use crate::tolerance::{NO_SQUARE_MM2, SAME_POINT};
    use proptest::prelude::*;

    fn line() -> impl Strategy<Value = Vec<Point>> {
        prop::collection::vec((-500.0..500.0, -500.0..500.0).prop_map(Point::from), 2..20)
    }

    proptest! {
        #[test]
        fn the_box_round_points_holds_them_and_is_touched_on_every_side(points in line()) {
            let b = bounds_of(&points);
            prop_assert!(points.iter().all(|p| b.x0 <= p.x && p.x <= b.x1 && b.y0 <= p.y && p.y <= b.y1));
            for (side, of) in [(b.x0, 0), (b.x1, 0), (b.y0, 1), (b.y1, 1)] {
                prop_assert!(points.iter().any(|p| [p.x, p.y][of] == side));
            }
        }

        #[test]
        fn without_repeats_keeps_the_first_and_nothing_that_is_near_the_one_before(
            points in line(), same in 0.0..200.0,
        ) {
            let same = Length::mm(same);
            let kept = without_repeats(&points, same);
            prop_assert_eq!(kept[0], points[0]);
            prop_assert!(kept.windows(2).all(|w| (w[1] - w[0]).hypot() > same.to_mm()));
            prop_assert_eq!(without_repeats(&kept, same), kept.clone());
            // Written twice over, the line is the same.
            let doubled: Vec<Point> = points.iter().flat_map(|p| [*p, *p]).collect();
            prop_assert_eq!(without_repeats(&doubled, SAME_POINT), without_repeats(&points, SAME_POINT));
        }

        #[test]
        fn the_nearest_place_is_where_it_is_said_to_be(points in line(), x in -600.0..600.0, y in -600.0..600.0) {
            let p = Point::new(x, y);
            let found = nearest_on(&points, p, NO_SQUARE_MM2);
            let found = found.ok_or_else(|| TestCaseError::fail("no place"))?;
            prop_assert!(((found.at - p).hypot() - found.away.to_mm()).abs() < 1e-9);
            let corners = points.iter().map(|c| (*c - p).hypot()).fold(f64::INFINITY, f64::min);
            prop_assert!(found.away.to_mm() <= corners + 1e-9);
            // Walked so far, one is there.
            let mut walked = found.along.to_mm();
            let side = points.windows(2).find(|w| {
                let long = (w[1] - w[0]).hypot();
                let here = walked <= long + 1e-7;
                if !here {
                    walked -= long;
                }
                here
            });
            let side = side.ok_or_else(|| TestCaseError::fail("beyond the end"))?;
            let there = side[0] + unit(side[1] - side[0]) * walked;
            prop_assert!((there - found.at).hypot() < 1e-6, "{there:?} {found:?}");
        }
    }

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
