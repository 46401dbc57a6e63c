//! One level of the flat garment, and the table of all of them.

use geometry::{Point, Vec2};

use crate::looks::SINKS_FROM;
use crate::smooth;

/// Spacing of the tabulated levels.
pub(crate) const STEP_MM: f64 = 1.0;

/// How much of a level is not seen from either side: it lies in the fold behind the inner edge, where the fork is.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Tucked {
    /// Of the front.
    pub(crate) front: f64,
    /// Of the back.
    pub(crate) back: f64,
}

/// One level of the flat garment.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Level {
    pub(crate) front_in: f64,
    pub(crate) back_in: f64,
    pub(crate) back_out: f64,
    /// Width of the front along the level, tucked and seen.
    pub(crate) front: f64,
    /// Width of the flat garment as it is seen (half of the half).
    pub(crate) flat: f64,
    /// How much of the back shows on the front face beside the inner and the outer fold.
    pub(crate) wrap_in: f64,
    pub(crate) wrap_out: f64,
    pub(crate) tucked: Tucked,
    /// Outer end of the level and its direction from the inner end.
    pub(crate) outer: Point,
    pub(crate) along: Vec2,
    /// Stretch of front widths, so that the waist seam has its true length.
    pub(crate) stretch: f64,
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
            tucked: Tucked {
                front: m(a.tucked.front, b.tucked.front),
                back: m(a.tucked.back, b.tucked.back),
            },
            outer: a.outer.lerp(b.outer, t),
            along: a.along.lerp(b.along, t),
            stretch: m(a.stretch, b.stretch),
        }
    }

    /// The place `p` from the inner fold.
    pub(crate) fn place(&self, p: f64) -> Point {
        self.outer - self.along * (self.flat - p)
    }

    /// Where a point of the front lies, from the inner fold; `x` in the frame of the front.
    pub(crate) fn front_along(&self, x: f64) -> f64 {
        let from_in = (x - self.front_in) * self.stretch;
        let from_out = sunk(self.front - from_in, self.front, self.tucked.front);
        self.flat - self.wrap_out - from_out
    }

    /// Where a point of the back lies, from the seam at its inner end on; `x` in the frame of the back.
    pub(crate) fn back_along(&self, x: f64) -> f64 {
        let width = self.back_out - self.back_in;
        let from_out = sunk(self.back_out - x, width, self.tucked.back);
        width - self.tucked.back - from_out
    }

    /// What is seen of the back, round both folds.
    pub(crate) fn back_seen(&self) -> f64 {
        self.back_out - self.back_in - self.tucked.back
    }
}

/// Where a point lies from the outer edge of a panel of which some is tucked away: the cloth sinks into the fork and is
/// seen aslant, most in the middle of its way; beside the seam and beside the hip it lies flat, so that rows keep their
/// distances.
fn sunk(from_out: f64, width: f64, tucked: f64) -> f64 {
    let from = width * SINKS_FROM;
    let run = (width - from).max(1.0);
    from_out - tucked * smooth((from_out - from) / run)
}
