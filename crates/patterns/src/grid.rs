//! The grid on which every place of a pattern file lies.

use geometry::Point;
use trade::{Angle, Length};

/// Parts of a millimetre (and of a degree) that a file tells apart.
const FINENESS: f64 = 1.0e4;

/// How far from its origin a piece may reach: no cloth is longer.
pub const FARTHEST: Length = Length::m(100.0);

/// The nearest number of the grid; not-a-number counts as zero.
pub(crate) fn number_on_grid(v: f64) -> f64 {
    if v.is_finite() {
        // Adding zero turns -0 into 0.
        (v * FINENESS).round() / FINENESS + 0.0
    } else {
        0.0
    }
}

/// The nearest place of the grid, a ten-thousandth of a millimetre.
pub fn on_grid(p: Point) -> Point {
    Point::new(number_on_grid(p.x), number_on_grid(p.y))
}

/// The nearest angle of the grid, a ten-thousandth of a degree, from 0° up to but not 360°.
pub fn on_grid_angle(angle: Angle) -> Angle {
    let turn = number_on_grid(angle.to_deg().rem_euclid(360.0));
    Angle::deg(if turn >= 360.0 { 0.0 } else { turn })
}

/// Equal for places that are the same on the grid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Key(i64, i64);

impl Key {
    pub fn of(p: Point) -> Key {
        let whole = |v: f64| (v * FINENESS).round() as i64;
        Key(whole(p.x), whole(p.y))
    }
}

/// Whether a place is a number and near enough to be cloth.
pub(crate) fn is_near(p: Point) -> bool {
    p.x.abs() <= FARTHEST.to_mm() && p.y.abs() <= FARTHEST.to_mm()
}

/// The line on the grid, without points that repeat the one before.
pub(crate) fn line_on_grid(points: impl IntoIterator<Item = Point>) -> Vec<Point> {
    let mut out: Vec<Point> = points.into_iter().map(on_grid).collect();
    out.dedup();
    out
}

/// A closed line on the grid, anticlockwise, its first point not repeated; it begins where it began.
pub(crate) fn ring_on_grid(points: impl IntoIterator<Item = Point>) -> Vec<Point> {
    let mut out = line_on_grid(points);
    while out.len() > 1 && out.first() == out.last() {
        out.pop();
    }
    if geometry::area(&out).to_mm2() < 0.0 {
        out.reverse();
        out.rotate_right(1);
    }
    out
}
