//! A line of a drawing, how many and how far lines may go, and what is wrong where one does.

use trade::Length;

/// The most steps all lines of a drawing may have together.
pub(super) const MOST_STEPS: usize = 4000;

/// No pocket is larger than this; a drawing that is must be in another unit.
pub(super) const FARTHEST_MM: f64 = 1000.0;

/// A place on a pocket: from its inner top corner towards its outer side, and down.
pub type Spot = [Length; 2];

/// One line, sewn without a break.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawnLine {
    /// Where it begins.
    pub from: Spot,
    /// Its steps, each from where the one before ended.
    pub steps: Vec<DrawnStep>,
    /// Whether it ends where it began.
    pub closed: bool,
}

/// One step of a line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum DrawnStep {
    /// Straight to a place.
    Straight(Spot),
    /// A cubic Bézier curve: its two handles and where it ends.
    Curve(Spot, Spot, Spot),
}

impl DrawnLine {
    /// Where it ends.
    #[must_use]
    pub fn end(&self) -> Spot {
        self.steps.last().map_or(self.from, DrawnStep::end)
    }
}

impl DrawnStep {
    /// Where it ends.
    #[must_use]
    pub const fn end(&self) -> Spot {
        match self {
            Self::Straight(end) | Self::Curve(_, _, end) => *end,
        }
    }
}

/// What is wrong with a drawing: where, a code, what, and what would be right.
pub(super) type Problem = (std::ops::Range<usize>, &'static str, String, &'static str);
