//! Which side is seen, and where on it something lies.

use geometry::Point;

/// Which side of the garment faces the viewer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// The front.
    Front,
    /// The back.
    Back,
}

impl View {
    /// The word for people and for programs.
    pub const fn word(self) -> &'static str {
        match self {
            View::Front => "front",
            View::Back => "back",
        }
    }

    /// The half of the flat garment that is seen.
    pub const fn half(self) -> Half {
        match self {
            View::Front => Half::Front,
            View::Back => Half::Back,
        }
    }
}

/// The two halves of the flat garment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Half {
    /// Seen from the front.
    Front,
    /// Seen from the back.
    Back,
}

/// The wearer's left or right: which of two copies of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Hand {
    /// The wearer's left.
    Left,
    /// The wearer's right.
    Right,
}

/// A place on the flat garment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// The half it lies on.
    pub half: Half,
    /// Where on it: y up, x from the centre line.
    pub at: Point,
}
