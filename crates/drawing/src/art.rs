//! The maker's own drawing on a patch or a label.

use draft::path_of;
use geometry::{Affine, BezPath, Point, Rect, Vec2, left_of};
use style::Drawing;
use trade::Length;

/// The lines of a drawing on a flat piece about a middle: `across` is the direction in which it is
/// read (unit vector, y up), width and height are the piece's. The drawing's own frame begins at the
/// upper left corner.
pub(crate) fn on_flat(
    drawing: &Drawing,
    middle: Point,
    across: Vec2,
    width: Length,
    height: Length,
) -> Vec<BezPath> {
    let up = left_of(across);
    let corner = middle - across * (width.to_mm() / 2.0) + up * (height.to_mm() / 2.0);
    // Drawn lines come with y up already.
    let map = Affine::new([across.x, across.y, up.x, up.y, corner.x, corner.y]);
    drawing
        .lines
        .iter()
        .map(|line| path_of(line).transformed(map).to_bez())
        .collect()
}

/// The part of the piece below or above a drawing that is left for words, the larger of the two:
/// its middle from the piece's own middle, upwards, and its height.
pub(crate) fn room_for_words(drawing: Option<&Drawing>, height: Length) -> (Length, Length) {
    let half = height / 2.0;
    let bounds = drawing.and_then(|drawing| {
        let each = drawing.lines.iter().map(|line| path_of(line).bounds());
        each.reduce(|a: Rect, b| a.union(b))
    });
    let Some(bounds) = bounds else {
        return (Length::ZERO, height);
    };
    // y runs up from the top edge, so it is negative on the piece.
    let above = Length::mm(-bounds.y1).max(Length::ZERO);
    let below = (height + Length::mm(bounds.y0)).max(Length::ZERO);
    if below >= above {
        (below / 2.0 - half, below)
    } else {
        (half - above / 2.0, above)
    }
}
