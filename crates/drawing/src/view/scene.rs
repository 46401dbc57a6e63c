//! What every part of a view is drawn from.

use draft::PieceId;
use flat::{Hand, LaidGarment, View};
use geometry::{BezPath, Point};
use sewing::{Face, Garment};

use super::ink::Inks;
use super::polyline::simplified;
use crate::sheet::closed;

/// Everything the parts of a view need.
pub(super) struct Scene<'a> {
    pub garment: &'a Garment,
    pub view: View,
    pub face: Face,
    pub inks: Inks,
    pub laid: LaidGarment,
}

impl Scene<'_> {
    /// A whole piece on this view, as a closed outline in view coordinates (y up).
    pub fn area(&self, piece: PieceId, points: &[Point], hand: Hand) -> BezPath {
        closed(&simplified(&self.laid.area(piece, points, hand)))
    }
}
