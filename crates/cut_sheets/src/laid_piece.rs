//! A piece as it lies on a sheet, and what is to be written on it: what its lines and its words both go by.

use cutting::CutPiece;
use drawing::lettering::touches;
use drawing::palette::Pen;
use geometry::tolerance::{BEYOND_END, PARALLEL, SAME_MM};
use geometry::{Affine, Point, Rect, Straight, Vec2, left_of};
use trade::Length;

/// What is written on a piece beside its own label, and how large.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceCaption {
    /// Number of the piece in the list of pieces, from 1; none prints no number.
    pub number: Option<usize>,
    /// Whether style and size stand on it; the sheet may say both already.
    pub style_and_size: bool,
    /// How the sheet will be printed: 1.0 at true size, 0.2 at 1:5. Words and lines are drawn larger
    /// in proportion, so that they print at the same size at any scale.
    pub scale: f64,
    /// How many times as large as on a page words are: a paper pattern is read at arm's length.
    pub type_size: f64,
}

/// A piece as lines on the drawing, before any words.
pub(crate) struct Laid<'a> {
    pub piece: &'a CutPiece,
    pub pen: Pen,
    /// The pen of words.
    pub words: Pen,
    /// Sewn edges in order.
    pub edges: Vec<Vec<Point>>,
    /// The cut line.
    pub outer: Vec<Point>,
    /// The sewn outline.
    pub sewn: Vec<Point>,
    pub map: Affine,
    /// Drawing millimetres per cloth millimetre.
    pub factor: f64,
    /// Whether the map turns left into right: pattern y runs up, paper y down.
    flipped: bool,
}

impl<'a> Laid<'a> {
    pub fn new(piece: &'a CutPiece, map: Affine, pen: Pen, words: Pen) -> Laid<'a> {
        let mapped = |line: &[Point]| line.iter().map(|p| map * *p).collect::<Vec<_>>();
        let det = map.determinant();
        Laid {
            piece,
            pen,
            words,
            edges: piece.edges.iter().map(|e| mapped(&e.sewn)).collect(),
            outer: mapped(&piece.cut),
            sewn: mapped(&piece.sewn()),
            map,
            factor: det.abs().sqrt(),
            flipped: det < 0.0,
        }
    }

    /// Away from the piece, square to an edge that runs along `along` on the drawing.
    pub fn outward(&self, along: Vec2) -> Vec2 {
        if self.flipped {
            left_of(along)
        } else {
            -left_of(along)
        }
    }

    /// How far it is from a point on the sewn line outward to the cut line, on the drawing.
    pub fn to_cut_line(&self, from: Point, outward: Vec2, allowance: Length) -> f64 {
        let asked = allowance.to_mm() * self.factor;
        let n = self.outer.len();
        let mut nearest = f64::INFINITY;
        let ray = Straight { from, way: outward };
        for k in 0..n {
            let side = Straight::between(self.outer[k], self.outer[(k + 1) % n]);
            let Some(meeting) = ray.meeting(side, PARALLEL) else {
                continue;
            };
            let on_side = (-BEYOND_END..=1.0 + BEYOND_END).contains(&meeting.second);
            if meeting.first > -SAME_MM && on_side {
                nearest = nearest.min(meeting.first.max(0.0));
            }
        }
        // At a corner the ray may miss the allowance meant; then the stated one is used.
        if nearest <= asked * 1.5 + SAME_MM {
            nearest
        } else {
            asked
        }
    }
}

/// Whether an upright box lies wholly inside a polygon.
pub(crate) fn box_inside(polygon: &[Point], r: Rect) -> bool {
    let n = polygon.len();
    geometry::contains(polygon, r.center())
        && (0..n).all(|k| !touches(r, polygon[k], polygon[(k + 1) % n]))
}
