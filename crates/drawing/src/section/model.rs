//! What a section shows, as data: plies, rows and widths in millimetres.
//!
//! The seam line is x = 0: the visible edge or fold. What lies at the distance of a row from it
//! lies at negative x. y points to the outside of the garment.

use geometry::tolerance::{NO_SQUARE_MM2, ROUNDING};
use geometry::{Point, Straight, Vec2, polyline_length};
use style::SeamId;
use trade::{Colour, Length, StitchType};
use words::{Key, Said};

use super::band::{Corner, band, meetings, rounded};

/// How the cut end of a ply is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The cloth goes on.
    GoesOn,
    /// Cut and left.
    Raw,
    /// Cut and wrapped by an overedge row.
    Overedged,
    /// The cloth's own edge.
    Selvedge,
}

/// One ply of a section.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionPly {
    /// What it is: "front", "pocket bag".
    pub name: Key,
    /// Thickness of its cloth, as drawn.
    pub thickness: Length,
    /// Colour of the face of its cloth.
    pub face: Colour,
    /// Colour of the reverse of its cloth.
    pub reverse: Colour,
    /// How it begins and ends.
    pub ends: (End, End),
    /// What is cut beyond the seam line.
    pub allowance: Length,
    /// Not cloth but a trim: a patch or a label, which no count of plies counts.
    pub trim: bool,
    /// What becomes of its edge; `None` where none is shown.
    pub edge: Option<Key>,
    pub(super) corners: Vec<Corner>,
    /// The face lies to the left of the centre line as it runs.
    pub(super) face_left: bool,
    /// Where on the centre line the allowance begins; it ends where the ply ends.
    pub(super) allowance_from: Option<Point>,
}

impl SectionPly {
    pub(super) fn line(&self) -> Vec<(Point, Vec2)> {
        rounded(&self.corners)
    }

    /// The closed outline of the band of cloth.
    pub fn outline(&self) -> Vec<Point> {
        let half = self.thickness.to_mm() / 2.0;
        band(&self.line(), -half, half)
    }

    /// The cloth that is drawn beyond the seam line, measured along the middle of the band; `None`
    /// for a ply without an allowance.
    pub fn drawn_allowance(&self) -> Option<Length> {
        let from = self.allowance_from?;
        let line = self.line();
        let near = |p: Point| (p - from).hypot();
        let (mut best, mut found) = (f64::INFINITY, None);
        for (k, w) in line.windows(2).enumerate() {
            let at = Straight::between(w[0].0, w[1].0).nearest(from, NO_SQUARE_MM2);
            if near(at) < best - ROUNDING {
                (best, found) = (near(at), Some((k, at)));
            }
        }
        let (k, at) = found?;
        let mut rest = vec![at];
        rest.extend(line[k + 1..].iter().map(|(p, _)| *p));
        Some(polyline_length(&rest))
    }
}

/// Which row a needle line stands for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowOf {
    /// A row of the style, from 1.
    Numbered(usize),
    /// The row that joins the plies, which the construction has of itself.
    Joining,
    /// The row that wraps a raw edge, which the construction has of itself.
    Overedge,
}

/// An overedge around cut ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Wrap {
    /// Where its needle stands.
    pub needle: f64,
    /// Beyond the cut ends.
    pub edge: f64,
    pub top: f64,
    pub bottom: f64,
}

/// One row, seen along its length.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionRow {
    /// Which.
    pub row: RowOf,
    /// Stitch type; `None` for a row the style does not state.
    pub stitch: Option<StitchType>,
    /// Where the needle comes from: the needle thread lies here.
    pub from: Point,
    /// Where it comes out: the under thread lies here.
    pub to: Point,
    /// Distance from the seam line.
    pub offset: Length,
    /// Colour of the needle thread.
    pub needle: Colour,
    /// Colour of the under thread.
    pub under: Colour,
    /// Thickness of the needle thread.
    pub needle_width: Length,
    /// Thickness of the under thread.
    pub under_width: Length,
    pub(super) wrap: Option<Wrap>,
    /// What a list says of it; `None` for a row the style does not state.
    pub(super) told: Option<Said>,
}

/// A width, between two distances from the seam line; what lies beyond it is negative.
#[derive(Clone, Debug, PartialEq)]
pub struct SectionWidth {
    /// What it is: "lap".
    pub name: Key,
    /// From here.
    pub from: Length,
    /// To here.
    pub to: Length,
}

/// A section through a seam.
#[derive(Clone, Debug, PartialEq)]
pub struct Section {
    /// The seam.
    pub seam: SeamId,
    /// What the drawing is called.
    pub title: Said,
    /// Thickness of the cloth is drawn so many times.
    pub thickened: f64,
    /// The plies, from the outside inwards.
    pub plies: Vec<SectionPly>,
    /// The rows of the style in their order, then those the construction has of itself.
    pub rows: Vec<SectionRow>,
    /// Widths of the construction itself.
    pub widths: Vec<SectionWidth>,
}

impl Section {
    /// How many layers of cloth a row goes through: the layers its needle line crosses. Patches and
    /// labels do not count.
    pub fn plies_at(&self, row: &SectionRow) -> usize {
        let cloth = self.plies.iter().filter(|ply| !ply.trim);
        cloth
            .map(|ply| meetings(&ply.outline(), row.from, row.to).len() / 2)
            .sum()
    }

    /// The patch or label a row goes through, by name.
    pub(super) fn trim_at(&self, row: &SectionRow) -> Option<Key> {
        let mut trims = self.plies.iter().filter(|ply| ply.trim);
        trims
            .find(|ply| !meetings(&ply.outline(), row.from, row.to).is_empty())
            .map(|ply| ply.name)
    }
}

/// The outermost and the innermost height of the cloth at `x`.
pub(super) fn heights(plies: &[SectionPly], x: f64) -> Option<(f64, f64)> {
    const FAR: f64 = 1000.0;
    let (top, foot) = (Point::new(x, FAR), Point::new(x, -FAR));
    let found: Vec<f64> = plies
        .iter()
        .flat_map(|ply| meetings(&ply.outline(), top, foot))
        .map(|share| FAR - 2.0 * FAR * share)
        .collect();
    let most = found.iter().copied().reduce(f64::max)?;
    let least = found.iter().copied().reduce(f64::min)?;
    Some((most, least))
}
