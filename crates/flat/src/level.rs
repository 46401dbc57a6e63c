//! One level of the flat garment, and the table of all of them.

use geometry::{Point, Vec2};

/// Spacing of the tabulated levels.
pub(crate) const STEP_MM: f64 = 1.0;

/// One level of the flat garment.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Level {
    pub(crate) front_in: f64,
    pub(crate) back_in: f64,
    pub(crate) back_out: f64,
    /// Width of the front along the level.
    pub(crate) front: f64,
    /// Width of the flat garment (half of the half).
    pub(crate) flat: f64,
    /// How much of the back shows on the front face beside the inner and the outer fold.
    pub(crate) wrap_in: f64,
    pub(crate) wrap_out: f64,
    /// Outer end of the level and its direction from the inner end.
    pub(crate) outer: Point,
    pub(crate) along: Vec2,
    /// Stretch of front widths, so that the waist seam has its true length.
    pub(crate) stretch: f64,
    /// Stretch of back widths.
    pub(crate) back_stretch: f64,
}

impl Level {
    pub(crate) fn mix(a: &Level, b: &Level, t: f64) -> Level {
        let m = |x: f64, y: f64| x + (y - x) * t;
        Level {
            front_in: m(a.front_in, b.front_in),
            back_in: m(a.back_in, b.back_in),
            back_out: m(a.back_out, b.back_out),
            front: m(a.front, b.front),
            flat: m(a.flat, b.flat),
            wrap_in: m(a.wrap_in, b.wrap_in),
            wrap_out: m(a.wrap_out, b.wrap_out),
            outer: a.outer.lerp(b.outer, t),
            along: a.along.lerp(b.along, t),
            stretch: m(a.stretch, b.stretch),
            back_stretch: m(a.back_stretch, b.back_stretch),
        }
    }

    /// The place `p` from the inner fold.
    pub(crate) fn place(&self, p: f64) -> Point {
        self.outer - self.along * (self.flat - p)
    }
}
