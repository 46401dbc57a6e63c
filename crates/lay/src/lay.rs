//! A lay: where every piece lies.

use geometry::Point;
use trade::{Length, Share};

use crate::bounds::Bounds;
use crate::limits::Ended;
use crate::problem::{Piece, Turn};

/// Where one copy of a piece lies: its outline is turned about the origin of its own coordinates
/// and then moved by `x` and `y`.
#[derive(Clone, Debug, PartialEq)]
pub struct Placement {
    /// The piece.
    pub key: String,
    /// Which copy of it, from 0.
    pub copy: usize,
    /// How it is turned.
    pub turn: Turn,
    /// How far along the cloth.
    pub x: Length,
    /// How far up from the lower edge.
    pub y: Length,
}

impl Placement {
    /// A point of the piece, in its own coordinates, on the cloth.
    pub fn apply(&self, p: Point) -> Point {
        let turned = self.turn.apply(p);
        Point::new(turned.x + self.x.to_mm(), turned.y + self.y.to_mm())
    }

    /// The outline of the piece on the cloth.
    pub fn outline(&self, piece: &Piece) -> Vec<Point> {
        piece.outline.iter().map(|p| self.apply(*p)).collect()
    }
}

/// A lay that keeps every rule of its problem.
#[derive(Clone, Debug, PartialEq)]
pub struct Lay {
    /// Where each copy lies, in the order of the problem's pieces.
    pub placements: Vec<Placement>,
    /// The cloth used.
    pub length: Length,
    /// The area of the pieces over the area of the cloth used.
    pub efficiency: Share,
    /// No lay of these pieces is shorter than this.
    pub bounds: Bounds,
    /// Why the search ended.
    pub ended: Ended,
    /// Places tried by all workers together.
    pub places: u64,
}
