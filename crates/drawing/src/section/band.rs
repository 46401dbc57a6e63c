//! A ply seen from its cut end: a centre line with rounded turns, and the band of cloth around it.

use crate::dimension::unit;
use geometry::tolerance::{PARALLEL, ROUNDING};
use geometry::{Point, Straight, Vec2, left_of};

/// The tangent of half a turn counts as no less.
const LEAST_TURN: f64 = 1e-6;

/// Arcs are drawn in steps of this many degrees.
const STEP_DEG: f64 = 6.0;

/// A corner of a centre line, rounded.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Corner {
    pub at: Point,
    pub radius: f64,
}

/// Draws a centre line: straight runs, folds by 180° and gentle steps. Millimetres, y up.
#[derive(Clone, Debug)]
pub(super) struct Trail {
    corners: Vec<Corner>,
    thickness: f64,
}

impl Trail {
    pub fn start(at: Point, thickness: f64) -> Trail {
        Trail {
            corners: vec![Corner { at, radius: 0.0 }],
            thickness,
        }
    }

    fn height(&self) -> f64 {
        self.corners.last().map_or(0.0, |c| c.at.y)
    }

    fn corner(&mut self, x: f64, y: f64, radius: f64) {
        self.corners.push(Corner {
            at: Point::new(x, y),
            radius,
        });
    }

    /// Folds by 180° to the height `y`; the outer surface of the fold stands at `outer`, and the
    /// cloth goes back to the other side. `towards` is 1 for a fold on the right, -1 on the left.
    pub fn fold(mut self, outer: f64, towards: f64, y: f64) -> Trail {
        let from = self.height();
        let apex = outer - towards * self.thickness / 2.0;
        let radius = (y - from).abs() / 2.0;
        self.corner(apex, from, radius);
        self.corner(apex, y, radius);
        self
    }

    /// Steps to the height `y` between two places.
    pub fn step(mut self, begins: f64, ends: f64, y: f64) -> Trail {
        let from = self.height();
        let way = Vec2::new((ends - begins).abs(), (y - from).abs());
        // Both roundings together take up no more than the step itself.
        let half_turn = (way.y.atan2(way.x) / 2.0).tan().max(LEAST_TURN);
        let radius = (self.thickness * 4.0).min(0.45 * way.hypot() / half_turn);
        self.corner(begins, from, radius);
        self.corner(ends, y, radius);
        self
    }

    /// Goes on level and ends at `x`.
    pub fn end(mut self, x: f64) -> Vec<Corner> {
        let y = self.height();
        self.corner(x, y, 0.0);
        self.corners
    }
}

/// The centre line with its corners rounded, and the direction at every point.
pub(super) fn rounded(corners: &[Corner]) -> Vec<(Point, Vec2)> {
    let mut line: Vec<(Point, Vec2)> = Vec::new();
    for (k, corner) in corners.iter().enumerate() {
        let before = k
            .checked_sub(1)
            .and_then(|j| corners.get(j))
            .and_then(|c| unit(corner.at - c.at));
        let after = corners.get(k + 1).and_then(|c| unit(c.at - corner.at));
        match (before, after) {
            (Some(a), Some(b)) => arc(&mut line, corner, a, b),
            (a, b) => line.extend(a.or(b).map(|along| (corner.at, along))),
        }
    }
    line.dedup_by(|b, a| (b.0 - a.0).hypot() < ROUNDING && (b.1 - a.1).hypot() < ROUNDING);
    line
}

fn arc(line: &mut Vec<(Point, Vec2)>, corner: &Corner, a: Vec2, b: Vec2) {
    let turn = a.cross(b).atan2(a.dot(b));
    if turn.abs() < ROUNDING {
        line.push((corner.at, a));
        return;
    }
    let side = turn.signum();
    let first = corner.at - a * (corner.radius * (turn.abs() / 2.0).tan());
    let centre = first + left_of(a) * (side * corner.radius);
    let steps = (turn.abs().to_degrees() / STEP_DEG).ceil().max(1.0);
    for k in 0..=steps as u32 {
        let angle = turn * f64::from(k) / steps;
        let (sin, cos) = angle.sin_cos();
        let along = Vec2::new(a.x * cos - a.y * sin, a.x * sin + a.y * cos);
        line.push((centre - left_of(along) * (side * corner.radius), along));
    }
}

/// The line at this distance to the left of a centre line.
pub(super) fn beside(line: &[(Point, Vec2)], left: f64) -> Vec<Point> {
    line.iter()
        .map(|(p, along)| *p + left_of(*along) * left)
        .collect()
}

/// The closed outline of what lies between two distances to the left of a centre line.
pub(super) fn band(line: &[(Point, Vec2)], from: f64, to: f64) -> Vec<Point> {
    let mut outline = beside(line, from);
    outline.extend(beside(line, to).into_iter().rev());
    outline
}

/// Where a straight line meets a closed outline, as shares of its way, in order.
pub(super) fn meetings(outline: &[Point], from: Point, to: Point) -> Vec<f64> {
    let line = Straight::between(from, to);
    let mut found = Vec::new();
    for (k, a) in outline.iter().enumerate() {
        let b = outline[(k + 1) % outline.len()];
        let Some(meeting) = line.meeting(Straight::between(*a, b), PARALLEL) else {
            continue;
        };
        // Half open, so that a meeting at a joint of two sides counts once.
        if (0.0..=1.0).contains(&meeting.first) && (0.0..1.0).contains(&meeting.second) {
            found.push(meeting.first);
        }
    }
    found.sort_by(f64::total_cmp);
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use geometry::polyline_length;

    #[test]
    fn a_fold_is_half_a_circle_whose_outside_stands_where_asked() {
        let corners = Trail::start(Point::new(-10.0, 2.0), 0.8)
            .fold(0.0, 1.0, 0.0)
            .end(-6.0);
        let line = rounded(&corners);
        let outer = beside(&line, 0.4);
        let far = outer.iter().map(|p| p.x).fold(f64::MIN, f64::max);
        assert!((far - 0.0).abs() < 1e-9, "{far}");
        let points: Vec<Point> = line.iter().map(|(p, _)| *p).collect();
        // Straight to -1.4, half a circle of radius 1 mm, and back to -6.
        let wanted = 8.6 + std::f64::consts::PI + 4.6;
        assert!((polyline_length(&points).to_mm() - wanted).abs() < 0.01);
    }

    #[test]
    fn a_needle_through_a_folded_ply_meets_it_twice() {
        let corners = Trail::start(Point::new(-10.0, 1.0), 0.8)
            .fold(0.0, 1.0, 0.0)
            .end(-6.0);
        let outline = band(&rounded(&corners), -0.4, 0.4);
        let meets = |x: f64| meetings(&outline, Point::new(x, 3.0), Point::new(x, -3.0)).len() / 2;
        assert_eq!((meets(-8.0), meets(-3.0), meets(1.0)), (1, 2, 0));
    }
}
