//! Open paths with arc-length questions.

use crate::tolerance::{BEYOND_END, NO_DIRECTION, NO_LENGTH_MM, ROUNDING, SAME_MM};
use kurbo::common::GAUSS_LEGENDRE_COEFFS_24;
use kurbo::{
    Affine, BezPath, CubicBez, Line, ParamCurve, ParamCurveDeriv, ParamCurveNearest, PathEl,
    PathSeg, Point, Rect, Shape, Vec2,
};
use trade::Length;

/// No line is cut into shorter steps.
pub(crate) const LEAST_STEP_MM: f64 = 1e-3;
/// A curve whose radius is longer than a kilometre is straight: its curvature, to the millimetre.
const NEARLY_STRAIGHT: f64 = 1e-6;

/// How close a root on a curve is found, in millimetres of arc.
const ARC_TOLERANCE_MM: f64 = 1e-9;

/// An open, connected run of line and cubic segments, in millimetres.
///
/// A path always has at least one segment; a point-like path has one line of length zero.
#[derive(Clone, Debug, PartialEq)]
pub struct Path {
    segments: Vec<PathSeg>,
}

impl Path {
    /// A path over the given segments, which must join end to start.
    ///
    /// An empty list gives the zero-length path at the origin.
    pub fn new(segments: Vec<PathSeg>) -> Path {
        if segments.is_empty() {
            return Path::line(Point::ORIGIN, Point::ORIGIN);
        }
        Path { segments }
    }

    /// A straight path.
    pub fn line(from: Point, to: Point) -> Path {
        Path {
            segments: vec![PathSeg::Line(Line::new(from, to))],
        }
    }

    /// A path of straight pieces through the points.
    pub fn polyline(points: &[Point]) -> Path {
        Path::new(
            points
                .windows(2)
                .map(|w| PathSeg::Line(Line::new(w[0], w[1])))
                .collect(),
        )
    }

    /// One cubic Bézier.
    pub fn cubic(p0: Point, p1: Point, p2: Point, p3: Point) -> Path {
        Path {
            segments: vec![PathSeg::Cubic(CubicBez::new(p0, p1, p2, p3))],
        }
    }

    /// A cubic from `from` to `to` that leaves along `out` and arrives along `into` (unit vectors),
    /// with both handles `handle` times the chord.
    pub fn between(from: Point, out: Vec2, to: Point, into: Vec2, handle: f64) -> Path {
        let reach = (to - from).hypot() * handle;
        Path::cubic(from, from + out * reach, to - into * reach, to)
    }

    /// A circular arc as one cubic: leaves `from` along `out` (unit), turns by `turn_rad`
    /// (anticlockwise positive, less than a quarter circle) over the arc length `length`.
    ///
    /// The usual cubic with handles 4/3·tan(turn/4)·radius; its length is that of the arc to 1 part in 10⁶.
    pub fn arc(from: Point, out: Vec2, turn_rad: f64, length: Length) -> Path {
        let length = length.to_mm();
        if turn_rad.abs() < ROUNDING {
            return Path::line(from, from + out * length);
        }
        let half = turn_rad / 2.0;
        let chord = length * half.sin() / half;
        let to = from + rotate(out, half) * chord;
        let reach = 4.0 / 3.0 * (turn_rad / 4.0).tan() * length / turn_rad;
        let into = rotate(out, turn_rad);
        Path::cubic(from, from + out * reach, to - into * reach, to)
    }

    /// The segments in order.
    pub fn segments(&self) -> &[PathSeg] {
        &self.segments
    }

    /// This path, then `next`, which must start where this ends.
    #[must_use]
    pub fn then(&self, next: &Path) -> Path {
        let mut segments = self.segments.clone();
        segments.extend_from_slice(&next.segments);
        Path { segments }
    }

    /// First point.
    pub fn start(&self) -> Point {
        self.segments[0].start()
    }

    /// Last point.
    pub fn end(&self) -> Point {
        self.segments[self.segments.len() - 1].end()
    }

    /// Unit direction of travel at the first point.
    pub fn start_direction(&self) -> Vec2 {
        self.segments
            .iter()
            .find_map(|s| direction_at(s, 0.0))
            .unwrap_or(Vec2::new(1.0, 0.0))
    }

    /// Unit direction of travel at the last point.
    pub fn end_direction(&self) -> Vec2 {
        self.segments
            .iter()
            .rev()
            .find_map(|s| direction_at(s, 1.0))
            .unwrap_or(Vec2::new(1.0, 0.0))
    }

    /// Arc length, by 24-point Gauss–Legendre quadrature on each curved segment.
    ///
    /// A fixed rule (not an adaptive one) keeps the length a smooth function of the control points,
    /// which the solver's derivatives rely on.
    pub fn length(&self) -> Length {
        Length::mm(self.segments.iter().map(segment_length).sum())
    }

    /// The same path walked from its end.
    #[must_use]
    pub fn reversed(&self) -> Path {
        Path {
            segments: self.segments.iter().rev().map(PathSeg::reverse).collect(),
        }
    }

    /// The path under an affine map.
    #[must_use]
    pub fn transformed(&self, map: Affine) -> Path {
        Path {
            segments: self.segments.iter().map(|s| map * *s).collect(),
        }
    }

    /// The point at arc length `at` from the start; clamped to the ends.
    pub fn point_at(&self, at: Length) -> Point {
        let (i, t) = self.locate(at.to_mm());
        self.segments[i].eval(t)
    }

    /// The unit direction of travel at arc length `at`; clamped to the ends.
    pub fn direction_at(&self, at: Length) -> Vec2 {
        let (i, t) = self.locate(at.to_mm());
        direction_at(&self.segments[i], t).unwrap_or_else(|| self.start_direction())
    }

    /// The part between two arc lengths, clamped to the path; `from` must not exceed `to`.
    #[must_use]
    pub fn part(&self, from: Length, to: Length) -> Path {
        let total = self.length().to_mm();
        // `max` and `min` rather than `clamp`, which panics when a broken path has no length at all.
        let from = from.to_mm().max(0.0).min(total);
        let to = to.to_mm().max(from).min(total.max(from));
        let (i, t0) = self.locate(from);
        let (j, t1) = self.locate(to);
        let mut out = Vec::new();
        for k in i..=j {
            let a = if k == i { t0 } else { 0.0 };
            let b = if k == j { t1 } else { 1.0 };
            if b - a > NO_DIRECTION {
                out.push(self.segments[k].subsegment(a..b));
            }
        }
        if out.is_empty() {
            let p = self.segments[i].eval(t0);
            return Path::line(p, p);
        }
        Path { segments: out }
    }

    /// The place of the path nearest to a point: its arc length from the start, and how far away it is.
    pub fn nearest(&self, to: Point) -> (Length, Length) {
        let mut before = 0.0;
        let mut best = (0.0, f64::INFINITY);
        for segment in &self.segments {
            let length = segment_length(segment);
            let near = segment.nearest(to, SAME_MM);
            let away = near.distance_sq.sqrt();
            if away < best.1 {
                let along = match segment {
                    PathSeg::Line(_) => near.t * length,
                    _ => cubic_length(&to_cubic(segment), near.t),
                };
                best = (before + along, away);
            }
            before += length;
        }
        (Length::mm(best.0), Length::mm(best.1))
    }

    /// Splits the path in two at arc length `at`.
    pub fn split(&self, at: Length) -> (Path, Path) {
        (self.part(Length::ZERO, at), self.part(at, self.length()))
    }

    /// The points where the path crosses the horizontal line at height `y_mm`.
    pub fn crossings_at_y(&self, y_mm: f64) -> Vec<Point> {
        // A segment that only touches its shared end would be counted twice; the caller takes
        // extremes, so that does no harm, but a level exactly at an end must not be missed.
        let mut found = Vec::new();
        for segment in &self.segments {
            match segment {
                PathSeg::Line(l) => {
                    let (a, b) = (l.p0.y - y_mm, l.p1.y - y_mm);
                    if a == 0.0 {
                        found.push(l.p0);
                    }
                    if b == 0.0 {
                        found.push(l.p1);
                    }
                    if a * b < 0.0 {
                        found.push(l.eval(a / (a - b)));
                    }
                }
                _ => {
                    let bez = to_cubic(segment);
                    for t in cubic_roots(&bez, y_mm) {
                        found.push(bez.eval(t));
                    }
                }
            }
        }
        found
    }

    /// Dense points along the path: both ends, every segment joint, and in between no chord
    /// longer than `step`.
    pub fn dense(&self, step: Length) -> Vec<Point> {
        let step = step.to_mm().max(LEAST_STEP_MM);
        let mut points = vec![self.start()];
        for segment in &self.segments {
            let n = match segment {
                PathSeg::Line(_) => 1,
                _ => (segment_length(segment) / step).ceil().max(1.0) as usize,
            };
            for k in 1..=n {
                points.push(segment.eval(k as f64 / n as f64));
            }
        }
        points
    }

    /// Points close enough that no chord strays from the curve by more than `tolerance`.
    pub fn flattened(&self, tolerance: Length) -> Vec<Point> {
        let mut points = Vec::new();
        kurbo::flatten(
            self.to_bez().elements().iter().copied(),
            tolerance.to_mm(),
            |el| match el {
                PathEl::MoveTo(p) | PathEl::LineTo(p) => points.push(p),
                _ => {}
            },
        );
        points
    }

    /// The smallest upright rectangle around the path.
    pub fn bounds(&self) -> Rect {
        self.to_bez().bounding_box()
    }

    /// The path as a `BezPath` that starts with a move.
    pub fn to_bez(&self) -> BezPath {
        BezPath::from_path_segments(self.segments.iter().copied())
    }

    /// Smallest radius of curvature along the path and whether the curvature ever changes sign.
    ///
    /// Straight parts have no radius and no sign. Returns `None` where nothing is curved.
    pub fn tightest_curve(&self) -> Option<(Length, bool)> {
        let mut smallest = f64::INFINITY;
        let (mut left, mut right) = (false, false);
        for segment in &self.segments {
            if matches!(segment, PathSeg::Line(_)) {
                continue;
            }
            let bez = to_cubic(segment);
            let first = bez.deriv();
            let second = first.deriv();
            for k in 0..=64 {
                let t = f64::from(k) / 64.0;
                let d1 = first.eval(t).to_vec2();
                let d2 = second.eval(t).to_vec2();
                let speed = d1.hypot();
                if speed < NO_LENGTH_MM {
                    continue;
                }
                let curvature = d1.cross(d2) / speed.powi(3);
                if curvature.abs() > NEARLY_STRAIGHT {
                    smallest = smallest.min(1.0 / curvature.abs());
                    left |= curvature > 0.0;
                    right |= curvature < 0.0;
                }
            }
        }
        smallest
            .is_finite()
            .then(|| (Length::mm(smallest), left && right))
    }

    /// Segment index and parameter at arc length `at` (clamped).
    fn locate(&self, at: f64) -> (usize, f64) {
        let mut rest = at.max(0.0);
        let last = self.segments.len() - 1;
        for (i, segment) in self.segments.iter().enumerate() {
            let length = segment_length(segment);
            if rest <= length || i == last {
                return (i, parameter_at(segment, rest, length));
            }
            rest -= length;
        }
        (last, 1.0)
    }
}

fn rotate(v: Vec2, by_rad: f64) -> Vec2 {
    let (s, c) = by_rad.sin_cos();
    Vec2::new(c * v.x - s * v.y, s * v.x + c * v.y)
}

fn to_cubic(segment: &PathSeg) -> CubicBez {
    segment.to_cubic()
}

fn segment_length(segment: &PathSeg) -> f64 {
    match segment {
        PathSeg::Line(l) => (l.p1 - l.p0).hypot(),
        _ => cubic_length(&to_cubic(segment), 1.0),
    }
}

/// Arc length of the cubic over parameters 0 to `upto`.
fn cubic_length(bez: &CubicBez, upto: f64) -> f64 {
    let d = bez.deriv();
    let half = upto / 2.0;
    GAUSS_LEGENDRE_COEFFS_24
        .iter()
        .map(|(w, x)| w * d.eval(half * (x + 1.0)).to_vec2().hypot())
        .sum::<f64>()
        * half
}

/// The parameter at which `segment` has run `wanted` of its `length`.
fn parameter_at(segment: &PathSeg, wanted: f64, length: f64) -> f64 {
    if length <= 0.0 {
        return 0.0;
    }
    let wanted = wanted.max(0.0).min(length);
    match segment {
        PathSeg::Line(_) => wanted / length,
        _ => {
            // Newton from the proportional guess, kept inside a shrinking bracket.
            let bez = to_cubic(segment);
            let d = bez.deriv();
            let (mut low, mut high) = (0.0, 1.0);
            let mut t = wanted / length;
            for _ in 0..60 {
                let miss = cubic_length(&bez, t) - wanted;
                if miss.abs() < ARC_TOLERANCE_MM {
                    break;
                }
                if miss > 0.0 {
                    high = t;
                } else {
                    low = t;
                }
                let speed = d.eval(t).to_vec2().hypot();
                let next = t - miss / speed;
                t = if speed > NO_DIRECTION && next > low && next < high {
                    next
                } else {
                    (low + high) / 2.0
                };
            }
            t
        }
    }
}

fn direction_at(segment: &PathSeg, t: f64) -> Option<Vec2> {
    match segment {
        PathSeg::Line(l) => unit(l.p1 - l.p0),
        _ => {
            let bez = to_cubic(segment);
            // Coincident control points make the derivative vanish at an end; the direction is then
            // that towards the next distinct control point.
            unit(bez.deriv().eval(t).to_vec2())
                .or_else(|| {
                    if t < 0.5 {
                        unit(bez.p2 - bez.p0)
                    } else {
                        unit(bez.p3 - bez.p1)
                    }
                })
                .or_else(|| unit(bez.p3 - bez.p0))
        }
    }
}

fn unit(v: Vec2) -> Option<Vec2> {
    let n = v.hypot();
    (n > NO_LENGTH_MM).then(|| v / n)
}

/// Parameters in [0, 1] where the cubic's y equals `y`.
fn cubic_roots(bez: &CubicBez, y: f64) -> Vec<f64> {
    let (a, b, c, d) = (bez.p0.y - y, bez.p1.y - y, bez.p2.y - y, bez.p3.y - y);
    kurbo::common::solve_cubic(
        a,
        3.0 * (b - a),
        3.0 * (a - 2.0 * b + c),
        d - a + 3.0 * (b - c),
    )
    .into_iter()
    .filter(|t| (-BEYOND_END..=1.0 + BEYOND_END).contains(t))
    .map(|t| {
        // One Newton step takes the closed-form root to full precision.
        let slope = bez.deriv().eval(t).y;
        let miss = bez.eval(t).y - y;
        let t = if slope.abs() > ROUNDING {
            t - miss / slope
        } else {
            t
        };
        t.clamp(0.0, 1.0)
    })
    .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use proptest::prelude::*;

    fn near(a: f64, b: f64, tolerance: f64) {
        assert!(
            (a - b).abs() <= tolerance,
            "{a} is not {b} within {tolerance}"
        );
    }

    #[test]
    fn arc_has_the_stated_length_and_turn() {
        let arc = Path::arc(Point::ORIGIN, Vec2::new(1.0, 0.0), 0.5, Length::mm(240.0));
        near(arc.length().to_mm(), 240.0, 1e-3);
        near(arc.end_direction().atan2(), 0.5, 1e-9);
        // The end of a true arc of radius 480.
        near(arc.end().x, 480.0 * 0.5_f64.sin(), 1e-9);
        near(arc.end().y, 480.0 * (1.0 - 0.5_f64.cos()), 1e-9);
    }

    #[test]
    fn the_nearest_place_is_told_by_arc_length() {
        let path = Path::line(Point::ORIGIN, Point::new(100.0, 0.0))
            .then(&Path::line(Point::new(100.0, 0.0), Point::new(100.0, 50.0)));
        let (along, away) = path.nearest(Point::new(97.0, 30.0));
        near(along.to_mm(), 130.0, 1e-9);
        near(away.to_mm(), 3.0, 1e-9);
    }

    #[test]
    fn quarter_circle_radius() {
        let k = 4.0 / 3.0 * (std::f64::consts::FRAC_PI_8).tan() * 50.0;
        let quarter = Path::cubic(
            Point::new(50.0, 0.0),
            Point::new(50.0, k),
            Point::new(k, 50.0),
            Point::new(0.0, 50.0),
        );
        let (radius, bends_back) = quarter.tightest_curve().unwrap();
        near(radius.to_mm(), 50.0, 1.0);
        assert!(!bends_back);
        near(
            quarter.length().to_mm(),
            50.0 * std::f64::consts::FRAC_PI_2,
            0.03,
        );
    }

    proptest! {
        #[test]
        fn parts_add_up(
            xs in proptest::collection::vec(-500.0..500.0f64, 8), share in 0.0..1.0f64
        ) {
            let path = Path::cubic(
                Point::new(xs[0], xs[1]), Point::new(xs[2], xs[3]),
                Point::new(xs[4], xs[5]), Point::new(xs[6], xs[7]),
            );
            let total = path.length();
            let (a, b) = path.split(total * share);
            // A cusp is the hardest case for a fixed quadrature rule, so the bound is loose there.
            prop_assert!(((a.length() + b.length()) - total).to_mm().abs() < 1e-2 * total.to_mm().max(1.0));
            prop_assert!((a.end() - b.start()).hypot() < 1e-6);
            prop_assert!((path.reversed().length() - total).to_mm().abs() < 1e-6);
        }

        #[test]
        fn crossings_lie_on_the_level(
            xs in proptest::collection::vec(-500.0..500.0f64, 8), y in -500.0..500.0f64
        ) {
            let path = Path::cubic(
                Point::new(xs[0], xs[1]), Point::new(xs[2], xs[3]),
                Point::new(xs[4], xs[5]), Point::new(xs[6], xs[7]),
            );
            for p in path.crossings_at_y(y) {
                prop_assert!((p.y - y).abs() < 1e-3);
            }
        }
    }
}
