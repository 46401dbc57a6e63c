//! Points, paths and lengths on flat cloth.
//!
//! Everything here is plane geometry in **millimetres**, x to the right and y **up**, as a pattern
//! cutter draws. Curves stay curves (Bézier segments from `kurbo`); polylines appear only where
//! something outside needs them. A [`Path`] is an open run of segments: an edge of a piece, a seam
//! line, a row of stitches. This is the only room that names `kurbo`.
//!
//! ```
//! use geometry::{Path, Point};
//! use trade::Length;
//!
//! let line = Path::line(Point::new(0.0, 0.0), Point::new(30.0, 40.0));
//! assert_eq!(line.length(), Length::cm(5.0));
//! ```

mod inscribed;
mod offset;
mod path;
mod polyline;
mod smooth;
mod straight;
pub mod tolerance;

pub use inscribed::{Clear, Inscribed, largest_box};
pub use kurbo::{Affine, BezPath, CubicBez, Line, PathEl, PathSeg, Point, Rect, Vec2};
pub use offset::{OffsetError, offset_outline};
pub use path::Path;
pub use polyline::{
    Nearest, area, bounds_of, clip_to_polygon, contains, is_simple, moved_left, nearest_on,
    polyline_length, resample, without_repeats,
};
pub use smooth::{corners_of, smooth_through};
pub use straight::{Meeting, Straight, crosses};

use trade::{Angle, Length};

/// The angle between two directions, from 0° to 180°.
pub fn angle_between(a: Vec2, b: Vec2) -> Angle {
    Angle::rad(a.cross(b).atan2(a.dot(b)).abs())
}

/// The smallest upright rectangle around a path.
pub fn bounds(path: &BezPath) -> Rect {
    use kurbo::Shape;
    path.bounding_box()
}

/// The direction of a vector; zero where it has none.
pub fn unit(v: Vec2) -> Vec2 {
    let n = v.hypot();
    if n < tolerance::NO_DIRECTION {
        Vec2::ZERO
    } else {
        v / n
    }
}

/// The vector turned a quarter circle anticlockwise.
pub fn left_of(v: Vec2) -> Vec2 {
    Vec2::new(-v.y, v.x)
}

/// The corners of a rectangle about a middle, `length` along a direction of length one and `width` across it, in order.
pub fn block(middle: Point, along: Vec2, length: Length, width: Length) -> [Point; 4] {
    let (a, b) = (
        along * (length.to_mm() / 2.0),
        left_of(along) * (width.to_mm() / 2.0),
    );
    [
        middle - a - b,
        middle + a - b,
        middle + a + b,
        middle - a + b,
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_block_is_as_long_and_as_wide_as_asked_about_its_middle(
            x in -500.0..500.0, y in -500.0..500.0, turn in -3.0..3.0_f64, long in 0.1..100.0, wide in 0.1..100.0,
        ) {
            let (middle, along) = (Point::new(x, y), Vec2::from_angle(turn));
            let corners = block(middle, along, Length::mm(long), Length::mm(wide));
            prop_assert!((area(&corners).to_mm2() - long * wide).abs() < 1e-6);
            prop_assert!(((corners[1] - corners[0]).hypot() - long).abs() < 1e-9);
            prop_assert!(((corners[2] - corners[1]).hypot() - wide).abs() < 1e-9);
            prop_assert!((corners[0].midpoint(corners[2]) - middle).hypot() < 1e-9);
        }
    }
}
