//! Curves through the points that another program left of a curve.

use kurbo::{Point, Vec2};
use trade::Length;

use crate::Path;

/// A change of direction above this is a corner, not a curve: a curve drawn in chords turns by a few
/// degrees at each point.
const CORNER_RAD: f64 = 0.35;

/// A chord this many times longer than the curved ones beside it is a straight line that runs into them.
const STRAIGHT: f64 = 3.0;

/// Points nearer than this are one.
const SAME_MM: f64 = 1e-6;

/// Directions that differ by less than this are the same.
const LEVEL_RAD: f64 = 1e-7;

/// A point that lies this near to the line from its neighbour to its neighbour lies on it: files round their places.
const ON_LINE_MM: f64 = 5e-4;

/// The line through dense points of a smooth line, curved where they curve.
///
/// Every point stays on the line. Between corners the direction at a point is that of the circle
/// through it and its neighbours, and each chord becomes one cubic. A chord much longer than its
/// neighbours stays straight, and so does one alone between two corners. Fewer than two points apart
/// give the zero-length path at the first.
#[must_use]
pub fn smooth_through(points: &[Point]) -> Path {
    let mut kept: Vec<Point> = Vec::with_capacity(points.len());
    for p in points {
        if kept.last().is_none_or(|q| (*p - *q).hypot() > SAME_MM) {
            kept.push(*p);
        }
    }
    if kept.len() < 2 {
        let p = points.first().copied().unwrap_or(Point::ORIGIN);
        return Path::line(p, p);
    }
    let mut segments = Vec::new();
    for run in runs(&kept) {
        segments.extend_from_slice(smooth_run(run).segments());
    }
    Path::new(segments)
}

/// The stretches between corners; each begins where the one before ended.
fn runs(points: &[Point]) -> Vec<&[Point]> {
    let mut out = Vec::new();
    let mut from = 0;
    for k in 1..points.len().saturating_sub(1) {
        let turn = turn(points[k] - points[k - 1], points[k + 1] - points[k]);
        if turn.abs() > CORNER_RAD {
            out.push(&points[from..=k]);
            from = k;
        }
    }
    out.push(&points[from..]);
    out
}

fn smooth_run(points: &[Point]) -> Path {
    let chords: Vec<Vec2> = points.windows(2).map(|w| w[1] - w[0]).collect();
    let straight: Vec<bool> = (0..chords.len()).map(|k| is_straight(&chords, k)).collect();
    let directions = directions(&chords, &straight);
    let mut segments = Vec::with_capacity(chords.len());
    for (k, w) in points.windows(2).enumerate() {
        let leaves = turn(chords[k], directions[k]);
        let arrives = turn(chords[k], directions[k + 1]);
        let part = if straight[k] || leaves.abs().max(arrives.abs()) < LEVEL_RAD {
            Path::line(w[0], w[1])
        } else {
            // The handle of an arc that turns by as much: chord / (3 cos² of a quarter of the turn).
            let quarter = (leaves.abs() + arrives.abs()) / 4.0;
            let share = 1.0 / (3.0 * quarter.cos().powi(2));
            Path::between(w[0], directions[k], w[1], directions[k + 1], share)
        };
        segments.extend_from_slice(part.segments());
    }
    Path::new(segments)
}

fn is_straight(chords: &[Vec2], k: usize) -> bool {
    if chords.len() == 1 {
        return true;
    }
    let longer = |other: Option<&Vec2>| {
        other.is_none_or(|other| {
            chords[k].hypot() > STRAIGHT * other.hypot() || run_on(chords[k], *other)
        })
    };
    longer(k.checked_sub(1).and_then(|before| chords.get(before))) && longer(chords.get(k + 1))
}

/// Whether two chords are parts of one straight line.
fn run_on(a: Vec2, b: Vec2) -> bool {
    a.dot(b) > 0.0 && a.cross(b).abs() <= ON_LINE_MM * (a + b).hypot()
}

/// The direction of the line at each point, as unit vectors.
fn directions(chords: &[Vec2], straight: &[bool]) -> Vec<Vec2> {
    let n = chords.len();
    let unit = |v: Vec2| v / v.hypot();
    let mut out = vec![Vec2::ZERO; n + 1];
    for k in 1..n {
        out[k] = match (straight[k - 1], straight[k]) {
            (true, _) => unit(chords[k - 1]),
            (false, true) => unit(chords[k]),
            (false, false) => circle(chords[k - 1], chords[k]),
        };
    }
    // The first and last chord turn as much at their outer end as at their inner one.
    let mirrored = |inner: Vec2, chord: Vec2| rotated(chord, -turn(chord, inner));
    out[0] = if straight[0] || n == 1 {
        unit(chords[0])
    } else {
        unit(mirrored(out[1], chords[0]))
    };
    out[n] = if straight[n - 1] || n == 1 {
        unit(chords[n - 1])
    } else {
        unit(mirrored(out[n - 1], chords[n - 1]))
    };
    out
}

/// The direction of the circle through three points, at the middle one.
fn circle(before: Vec2, after: Vec2) -> Vec2 {
    // Each chord leans from the tangent in proportion to its length.
    let share = before.hypot() / (before.hypot() + after.hypot());
    let leaning = rotated(before, turn(before, after) * share);
    leaning / leaning.hypot()
}

fn turn(a: Vec2, b: Vec2) -> f64 {
    a.cross(b).atan2(a.dot(b))
}

fn rotated(v: Vec2, by_rad: f64) -> Vec2 {
    let (s, c) = by_rad.sin_cos();
    Vec2::new(c * v.x - s * v.y, s * v.x + c * v.y)
}

/// The corners of a closed outline: the places of its points where it changes direction by more than a
/// curve drawn in chords does, over the reach of `feel` to either side.
///
/// The outline is a list of points, the first not repeated; the answer is in its order.
#[must_use]
pub fn corners_of(outline: &[Point], feel: Length) -> Vec<usize> {
    let n = outline.len();
    if n < 3 {
        return Vec::new();
    }
    let feel = feel.to_mm().max(SAME_MM);
    let reach = |k: usize, forward: bool| {
        let mut at = k;
        for _ in 0..n {
            at = if forward {
                (at + 1) % n
            } else {
                (at + n - 1) % n
            };
            if (outline[at] - outline[k]).hypot() >= feel {
                break;
            }
        }
        outline[at]
    };
    let sharp = |k: usize| {
        let near = turn(
            outline[k] - outline[(k + n - 1) % n],
            outline[(k + 1) % n] - outline[k],
        );
        let far = turn(outline[k] - reach(k, false), reach(k, true) - outline[k]);
        near.abs() > CORNER_RAD && far.abs() > CORNER_RAD
    };
    (0..n).filter(|k| sharp(*k)).collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::angle_between;
    use proptest::prelude::*;

    fn arc(radius: f64, from: f64, to: f64, steps: usize) -> Vec<Point> {
        (0..=steps)
            .map(|k| {
                let a = from + (to - from) * k as f64 / steps as f64;
                Point::new(radius * a.cos(), radius * a.sin())
            })
            .collect()
    }

    #[test]
    fn points_of_a_circle_give_the_circle_again() {
        let path = smooth_through(&arc(80.0, 0.0, 1.5, 20));
        assert!(
            (path.length().to_mm() - 120.0).abs() < 1e-4,
            "{}",
            path.length().to_mm()
        );
        assert!((path.start_direction().atan2() - std::f64::consts::FRAC_PI_2).abs() < 1e-6);
        let middle = path.point_at(Length::mm(43.21));
        assert!((middle.to_vec2().hypot() - 80.0).abs() < 1e-4);
    }

    #[test]
    fn a_long_straight_line_stays_straight_beside_a_curve() {
        let mut points = vec![Point::new(80.0, -500.0)];
        points.extend(arc(80.0, 0.0, 1.0, 30));
        let path = smooth_through(&points);
        assert!((path.start_direction().x).abs() < 1e-12);
        assert!((path.point_at(Length::mm(250.0)).x - 80.0).abs() < 1e-9);
        assert!((path.length().to_mm() - 580.0).abs() < 1e-3);
    }

    /// A file rounds the places of a knee mark on a straight side: the side stays straight, and does not bend towards
    /// the curve that follows.
    #[test]
    fn a_point_on_a_straight_line_does_not_bend_it() {
        let mut points = vec![
            Point::new(0.0, -900.0),
            Point::new(0.000_1, -420.0),
            Point::new(0.0, 0.0),
        ];
        points.extend(
            arc(400.0, 0.0, 0.4, 6)
                .iter()
                .skip(1)
                .map(|p| Point::new(p.x - 400.0, p.y)),
        );
        let path = smooth_through(&points);
        for y in [-800.0, -600.0, -300.0, -100.0] {
            let off = path.nearest(Point::new(0.0, y)).1.to_mm();
            assert!(off < 0.001, "{off} mm at {y}");
        }
    }

    #[test]
    fn corners_stay_corners() {
        let square = [
            Point::new(0.0, 0.0),
            Point::new(50.0, 0.0),
            Point::new(50.0, 40.0),
        ];
        let path = smooth_through(&square);
        assert!((path.length().to_mm() - 90.0).abs() < 1e-12);
        assert_eq!(path.segments().len(), 2);
    }

    #[test]
    fn an_outline_shows_its_corners_and_not_its_curves() {
        let mut outline = arc(60.0, 0.0, std::f64::consts::FRAC_PI_2, 40);
        outline.push(Point::ORIGIN);
        assert_eq!(corners_of(&outline, Length::mm(3.0)), [0, 40, 41]);
        assert!(corners_of(&outline[..2], Length::mm(3.0)).is_empty());
    }

    proptest! {
        /// Points taken from a curve: the path is as long as the curve and leaves in its direction.
        #[test]
        fn a_curve_comes_back(x1 in 20.0..120.0_f64, y1 in -80.0..80.0_f64, x2 in 150.0..260.0_f64, y2 in -80.0..80.0_f64) {
            let curve = Path::cubic(Point::ORIGIN, Point::new(x1, y1), Point::new(x2, y2), Point::new(300.0, 0.0));
            let path = smooth_through(&curve.flattened(Length::mm(0.01)));
            prop_assert!((path.length() - curve.length()).abs().to_mm() < 0.02);
            let off = angle_between(path.start_direction(), curve.start_direction());
            // Where the curve is flat at its end the first chord says its direction no better than this.
            prop_assert!(off.to_deg() < 2.0, "{}", off.to_deg());
        }
    }
}
