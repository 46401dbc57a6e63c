//! Arcs as points.

use std::f64::consts::TAU;

use geometry::tolerance::ROUNDING;
use geometry::{Point, Vec2};

/// How far a chord may lie from its arc, in millimetres.
const WITHIN: f64 = 0.01;

/// No arc is given more points than this; a circle of a hundred metres stays within a tenth of it.
const MOST: usize = 20_000;

/// An arc with more radius than this, in millimetres, is a straight line.
const STRAIGHT: f64 = 1.0e7;

/// How many chords an arc takes; `radius` in millimetres.
pub(crate) fn chords(radius: f64, sweep: f64) -> usize {
    let half = (1.0 - (WITHIN / radius).min(1.0)).acos();
    let count = (sweep.abs() / (2.0 * half).max(ROUNDING)).ceil();
    // As many as fit: the cast saturates, and the count is bounded above.
    (count as usize).clamp(1, MOST)
}

/// Points on an arc after its first and up to its last; `scale` turns its units into millimetres.
pub(crate) fn arc(centre: Point, from: Vec2, sweep: f64, scale: f64) -> Vec<Point> {
    let n = chords(from.hypot() * scale, sweep);
    let at = |k: usize| {
        let turn = sweep * k as f64 / n as f64;
        let (sin, cos) = turn.sin_cos();
        centre + Vec2::new(from.x * cos - from.y * sin, from.x * sin + from.y * cos)
    };
    (1..=n).map(at).collect()
}

/// From degrees to degrees anticlockwise, in radians; the whole round where they are the same.
pub(crate) fn sweep(from: f64, to: f64) -> f64 {
    let turn = (to - from).to_radians().rem_euclid(TAU);
    if turn < ROUNDING { TAU } else { turn }
}

/// Points of the side of a polyline that bulges, after its first and up to its last.
pub(crate) fn bulged(a: Point, b: Point, bulge: f64, scale: f64) -> Vec<Point> {
    let chord = (b - a).hypot();
    let radius = chord * (1.0 + bulge * bulge) / (4.0 * bulge.abs());
    if chord <= 0.0 || bulge.abs() < ROUNDING || !radius.is_finite() || radius * scale > STRAIGHT {
        return vec![b];
    }
    // A bulge is the tangent of a quarter of the angle, positive to the right of the chord.
    let sweep = 4.0 * bulge.atan();
    let height = chord * (1.0 - bulge * bulge) / (4.0 * bulge);
    let left = geometry::left_of(b - a) / chord;
    let centre = a.midpoint(b) + left * height;
    let mut out = arc(centre, a - centre, sweep, scale);
    if let Some(last) = out.last_mut() {
        *last = b;
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bulge_of_one_is_a_half_circle_to_the_right() {
        let (a, b) = (Point::new(0.0, 0.0), Point::new(10.0, 0.0));
        let points = bulged(a, b, 1.0, 1.0);
        let lowest = points.iter().map(|p| p.y).fold(0.0, f64::min);
        assert!((lowest + 5.0).abs() < 0.02, "{lowest}");
        assert!(
            points
                .iter()
                .all(|p| ((*p - Point::new(5.0, 0.0)).hypot() - 5.0).abs() < 1e-9)
        );
        assert_eq!(points.last(), Some(&b));
        let quarter = bulged(a, b, -(22.5_f64.to_radians().tan()), 1.0);
        let highest = quarter.iter().map(|p| p.y).fold(0.0, f64::max);
        assert!(
            (highest - 5.0 * (22.5_f64.to_radians().tan())).abs() < 0.02,
            "{highest}"
        );
    }

    #[test]
    fn no_number_makes_an_arc_of_more_points_than_allowed() {
        for scale in [1e-300, 1.0, 1e12] {
            for v in [1e-300, 1e-9, 1.0, 1e300] {
                assert!(chords(v * scale, TAU) <= MOST);
                assert!(bulged(Point::ORIGIN, Point::new(v, v), v, scale).len() <= MOST);
            }
        }
    }
}
