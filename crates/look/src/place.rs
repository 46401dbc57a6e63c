//! Places on a view.

use geometry::Point;

/// A place on the view, millimetres, y up.
pub(crate) type Place = [f32; 2];

pub(crate) fn place(p: Point) -> Place {
    [p.x as f32, p.y as f32]
}

pub(crate) fn places(points: &[Point]) -> Vec<Place> {
    points.iter().map(|p| place(*p)).collect()
}
