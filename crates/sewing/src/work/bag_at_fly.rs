//! Whether a pocket bag lies where the fly is topstitched.

use draft::{PieceId, PointId};
use geometry::{Point, contains};
use style::SeamId;

use crate::garment::Garment;
use crate::inset_lines::points_along;

/// Whether a row of the fly crosses the bag behind the left front, so that the bag has to be folded away. The bag is
/// drawn in the frame of the front.
pub(super) fn bag_lies_under_fly(garment: &Garment) -> bool {
    let rows = garment.rows.iter().filter(|row| row.seam == SeamId::Fly);
    let mut rows = rows.filter_map(|row| points_along(&row.path));
    under_layer(garment).is_some_and(|bag| rows.any(|row| row.iter().any(|p| contains(&bag, *p))))
}

/// The folded bag: its layer behind the front, closed along the fold.
fn under_layer(garment: &Garment) -> Option<Vec<Point>> {
    use draft::EdgeId::{FootUnder, SideUnder, WaistUnder};
    let bag = garment.pattern.piece(PieceId::PocketBag)?;
    bag.point(PointId::FoldTop)?;
    let edges = [FootUnder, SideUnder, WaistUnder].map(|edge| bag.edge(edge));
    let mut outline = Vec::new();
    for edge in edges {
        outline.extend(points_along(edge?)?);
    }
    Some(outline)
}
