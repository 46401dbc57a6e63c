//! Polylines of a cut line: moved, run on, turned over and cut where they cross. Millimetres.

use geometry::tolerance::{BEYOND_END, PARALLEL};
use geometry::{Point, Straight, Vec2, left_of, unit};
use trade::Length;

/// Below this two points are one.
const SAME_MM: f64 = 1e-7;

/// To the right of a direction: outward from an outline that runs anticlockwise.
pub(crate) fn outward(direction: Vec2) -> Vec2 {
    -left_of(direction)
}

/// The polyline without points that repeat the one before.
pub(crate) fn without_repeats(points: &[Point]) -> Vec<Point> {
    geometry::without_repeats(points, Length::mm(SAME_MM))
}

/// Direction of travel at the first point.
pub(crate) fn starts(line: &[Point]) -> Vec2 {
    line.windows(2)
        .map(|w| unit(w[1] - w[0]))
        .find(|d| d.hypot2() > 0.0)
        .unwrap_or(Vec2::ZERO)
}

/// Direction of travel at the last point.
pub(crate) fn ends(line: &[Point]) -> Vec2 {
    line.windows(2)
        .rev()
        .map(|w| unit(w[1] - w[0]))
        .find(|d| d.hypot2() > 0.0)
        .unwrap_or(Vec2::ZERO)
}

/// The line walked the other way.
pub(crate) fn reversed(line: &[Point]) -> Vec<Point> {
    line.iter().rev().copied().collect()
}

/// Where a line crosses another.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Crossing {
    /// The place.
    pub at: Point,
    /// How far along the first line, from its start.
    pub along_first: f64,
    /// How far along the second line, from its start.
    pub along_second: f64,
}

/// Every crossing of two lines, in the order of the first.
pub(crate) fn crossings(one: &[Point], other: &[Point]) -> Vec<Crossing> {
    let mut out = Vec::new();
    let mut run = 0.0;
    for a in one.windows(2) {
        let mut across = 0.0;
        let from = out.len();
        for b in other.windows(2) {
            let first = Straight::between(a[0], a[1]);
            let meeting = first.meeting(Straight::between(b[0], b[1]), PARALLEL);
            if let Some(meeting) = meeting.filter(|m| m.on_both(BEYOND_END)) {
                out.push(Crossing {
                    at: first.at(meeting.first),
                    along_first: run + meeting.first * (a[1] - a[0]).hypot(),
                    along_second: across + meeting.second * (b[1] - b[0]).hypot(),
                });
            }
            across += (b[1] - b[0]).hypot();
        }
        out[from..].sort_by(|a, b| a.along_first.total_cmp(&b.along_first));
        run += (a[1] - a[0]).hypot();
    }
    out
}

/// Length of a polyline.
pub(crate) fn long(line: &[Point]) -> f64 {
    line.windows(2).map(|w| (w[1] - w[0]).hypot()).sum()
}

/// The part of a line between two distances from its start. Below nothing and above its length the
/// line is run on straight; empty where `until` does not lie beyond `since`.
pub(crate) fn between(line: &[Point], since: f64, until: f64) -> Vec<Point> {
    let total = long(line);
    let (Some(&first), Some(&last)) = (line.first(), line.last()) else {
        return Vec::new();
    };
    if until - since < -SAME_MM || !since.is_finite() || !until.is_finite() {
        return Vec::new();
    }
    let place = |at: f64| {
        if at <= 0.0 {
            return first + starts(line) * at;
        }
        if at >= total {
            return last + ends(line) * (at - total);
        }
        let mut run = 0.0;
        for w in line.windows(2) {
            let step = (w[1] - w[0]).hypot();
            if run + step >= at && step > 0.0 {
                return w[0].lerp(w[1], (at - run) / step);
            }
            run += step;
        }
        last
    };
    let mut out = vec![place(since)];
    let mut run = 0.0;
    for (k, p) in line.iter().enumerate() {
        if k > 0 {
            run += (*p - line[k - 1]).hypot();
        }
        if run > since && run < until {
            out.push(*p);
        }
    }
    out.push(place(until));
    without_repeats(&out)
}

/// The part of a line up to where its distance `depth_of` first reaches `depth`.
pub(crate) fn to_depth(
    line: &[Point],
    depth: f64,
    depth_of: impl Fn(Point) -> f64,
) -> Option<Vec<Point>> {
    let mut out = vec![*line.first()?];
    for w in line.windows(2) {
        let (a, b) = (depth_of(w[0]), depth_of(w[1]));
        if b >= depth && b > a {
            out.push(w[0].lerp(w[1], ((depth - a) / (b - a)).clamp(0.0, 1.0)));
            return Some(without_repeats(&out));
        }
        out.push(w[1]);
    }
    None
}

/// The nearest point of a polyline, with the arc length from its start.
pub(crate) fn nearest(line: &[Point], to: Point) -> Option<(f64, Point)> {
    let found = geometry::nearest_on(line, to, f64::MIN_POSITIVE)?;
    Some((found.along.to_mm(), found.at))
}

/// Where a ray from `from` along `direction` first crosses the polyline.
pub(crate) fn ray(line: &[Point], from: Point, direction: Vec2, reach: f64) -> Option<Point> {
    let ray = [from, from + direction * reach];
    crossings(&ray, line).first().map(|c| c.at)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    fn line(points: &[(f64, f64)]) -> Vec<Point> {
        points.iter().copied().map(Point::from).collect()
    }

    #[test]
    fn crossings_come_in_order_with_their_places() {
        let zigzag = line(&[(0.0, -1.0), (1.0, 1.0), (2.0, -1.0)]);
        let level = line(&[(-5.0, 0.0), (5.0, 0.0)]);
        let found = crossings(&zigzag, &level);
        assert_eq!(found.len(), 2);
        assert!((found[0].at.x - 0.5).abs() < 1e-12 && (found[1].at.x - 1.5).abs() < 1e-12);
        assert!((found[1].along_second - 6.5).abs() < 1e-12);
        assert!((found[0].along_first - 5.0_f64.sqrt() / 2.0).abs() < 1e-12);
    }

    #[test]
    fn a_part_may_run_on_beyond_the_ends() {
        let straight = line(&[(0.0, 0.0), (4.0, 0.0), (10.0, 0.0)]);
        assert_eq!(
            between(&straight, -2.0, 12.0),
            line(&[
                (-2.0, 0.0),
                (0.0, 0.0),
                (4.0, 0.0),
                (10.0, 0.0),
                (12.0, 0.0)
            ])
        );
        assert_eq!(
            between(&straight, 3.0, 5.0),
            line(&[(3.0, 0.0), (4.0, 0.0), (5.0, 0.0)])
        );
        assert!(between(&straight, 5.0, 3.0).is_empty());
    }

    #[test]
    fn a_line_is_cut_at_a_depth() {
        let cut = to_depth(&line(&[(0.0, 0.0), (1.0, 4.0)]), 2.0, |p| p.y).unwrap();
        assert_eq!(cut, line(&[(0.0, 0.0), (0.5, 2.0)]));
        assert!(to_depth(&line(&[(0.0, 0.0), (1.0, 4.0)]), 5.0, |p| p.y).is_none());
    }

    #[test]
    fn the_nearest_point_is_on_the_line() {
        let (at, p) = nearest(&line(&[(0.0, 0.0), (10.0, 0.0)]), Point::new(4.0, 3.0)).unwrap();
        assert!((at - 4.0).abs() < 1e-12 && p == Point::new(4.0, 0.0));
    }
}
