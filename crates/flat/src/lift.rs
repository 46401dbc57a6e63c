//! How the back comes up to the front in the crotch.

use crate::smooth;

/// The back crotch point lies a little lower than the front one, but both meet in the crotch cross:
/// between thigh and seat level the back is lifted to it.
pub(crate) struct Lift {
    pub(crate) drop: f64,
    pub(crate) thigh: f64,
    pub(crate) seat: f64,
}

impl Lift {
    /// How far the point of the back that belongs at level `y` lies below it.
    pub(crate) fn at(&self, y: f64) -> f64 {
        let reach = if y < 0.0 { self.thigh } else { self.seat };
        self.drop * smooth(1.0 - y.abs() / reach.max(1.0))
    }

    /// The level at which a point of the back is drawn.
    pub(crate) fn level_of(&self, back_y: f64) -> f64 {
        // The lift changes by less than its argument, so this settles at once.
        (0..8).fold(back_y, |y, _| back_y + self.at(y))
    }
}
