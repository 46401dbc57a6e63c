//! The last stretch of the centre seams, where they turn into the fork.
//!
//! There front and back seam run nearly along a level, so that what lies beside the seam on the piece would be drawn far
//! from it: rows would swing out before they end. Points near the seam are therefore laid by the seam itself, as far from it as they
//! are on the piece, and both ways of laying pass into one another further in.

use geometry::tolerance::NO_SQUARE_MM2;
use geometry::{Path, Point, nearest_on};
use trade::Length;

use crate::smooth;

/// How far from the seam points are laid by it alone, and how far at all: rows lie within the first, bags beyond the
/// second.
const NEAR_MM: f64 = 14.0;
const FAR_MM: f64 = 40.0;
/// Below the seat level the one way passes into the other over this height.
const PASSES_MM: f64 = 20.0;
/// How far outside its seam a point may lie, by rounding.
const OUTSIDE_MM: f64 = 0.5;

/// A centre seam below the seat level, in the frame of its panel.
pub(crate) struct CentreSeam {
    /// From the seat down to the fork.
    line: Vec<Point>,
    length: f64,
    seat_y: f64,
    /// No point further out is near the seam.
    most_x: f64,
}

/// A point near a centre seam.
pub(crate) struct Beside {
    /// The place of the seam it lies beside.
    pub(crate) foot: Point,
    /// How far from it.
    pub(crate) away: f64,
    /// How far down the other side of the fork it has come, in millimetres along the edge.
    pub(crate) round: f64,
    /// From 0 where it is laid by its level to 1 where it is laid by the seam.
    pub(crate) weight: f64,
}

impl CentreSeam {
    pub(crate) fn new(edges: &[&Path], fork: Point, seat_y: f64) -> CentreSeam {
        let dense = edges.iter().flat_map(|edge| edge.dense(Length::mm(2.0)));
        let mut line: Vec<Point> = dense.filter(|p| p.y <= seat_y).collect();
        let away = |p: Option<&Point>| p.map_or(0.0, |p| (*p - fork).hypot());
        if away(line.first()) < away(line.last()) {
            line.reverse();
        }
        CentreSeam {
            length: line.windows(2).map(|w| (w[1] - w[0]).hypot()).sum(),
            most_x: line.iter().map(|p| p.x).fold(f64::NEG_INFINITY, f64::max) + FAR_MM,
            line,
            seat_y,
        }
    }

    /// `None` for a point that is laid by its level alone: away from the seam, or nearer to the inseam than to it.
    pub(crate) fn beside(&self, p: Point) -> Option<Beside> {
        let fork = self.line.last()?;
        if p.x > self.most_x || p.y > self.seat_y || p.y < fork.y - FAR_MM {
            return None;
        }
        let near = nearest_on(&self.line, p, NO_SQUARE_MM2)?;
        let (foot, away) = (near.at, near.away.to_mm());
        let from_fork = self.length - near.along.to_mm();
        let outside = p.x < foot.x - OUTSIDE_MM || p.y > foot.y + OUTSIDE_MM;
        if outside || away > FAR_MM || away > from_fork {
            return None;
        }
        let into = smooth((FAR_MM - away) / (FAR_MM - NEAR_MM));
        let below = smooth((self.seat_y - foot.y) / PASSES_MM);
        Some(Beside {
            foot,
            away,
            // A row that runs on round the fork comes to lie as far down the inseam as it is from the centre seam.
            round: 2.0 * away * away / from_fork.max(1.0),
            weight: into * below,
        })
    }
}
