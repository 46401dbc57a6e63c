//! Where a pair is rubbed in wear: a model, its strengths from memory. How much each place stands out of what lies about it
//! comes on top, from the relief.

use crate::place::Place;
use crate::tables::Tables;

/// What is rubbed everywhere.
pub(crate) const EVERYWHERE: f32 = 0.38;

/// A place that is rubbed more than others, fading away from its middle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Zone {
    pub(crate) middle: Place,
    /// The direction of its length.
    pub(crate) along: Place,
    /// Along and across, to where it is a third as strong.
    pub(crate) half: [f32; 2],
    /// Less than nothing where a place is sheltered.
    pub(crate) strength: f32,
}

impl Zone {
    /// How far from its middle it is felt.
    pub(crate) fn reach(&self) -> f32 {
        2.4 * self.half[0].max(self.half[1])
    }

    /// How much more a place is rubbed for it.
    pub(crate) fn at(&self, x: f32, y: f32, tables: &Tables) -> f32 {
        let (dx, dy) = (x - self.middle[0], y - self.middle[1]);
        let u = (dx * self.along[0] + dy * self.along[1]) / self.half[0];
        let v = (dy * self.along[0] - dx * self.along[1]) / self.half[1];
        self.strength * tables.fade(u * u + v * v)
    }
}
