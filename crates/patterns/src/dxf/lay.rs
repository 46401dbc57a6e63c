//! A lay as a DXF file.

use cutting::Spread;
use geometry::{Point, Rect, bounds_of};
use lay::Lay;
use trade::{Angle, Length};
use words::Words;

use super::layer;
use super::writer::{Layer, Writer};
use crate::grid::{line_on_grid, on_grid};

/// The cloth lies on the layer of internal lines, which are drawn and not cut.
const LAYERS: &[Layer] = &[(layer::CUT, 7), (layer::INTERNAL, 8), (layer::NOTE, 5)];

/// Words on pieces.
const LETTERS: Length = Length::mm(12.0);

/// Writes a lay: x along the cloth from where it begins, y up from its lower edge, in millimetres. Each
/// piece is a closed POLYLINE on layer 1 with its name beside it on layer 15; the cloth used is a
/// rectangle on layer 8.
pub fn write_lay(spread: &Spread, lay: &Lay, say: &Words) -> String {
    let (length, width) = (lay.length.to_mm(), spread.problem.width.to_mm());
    let cloth = Rect::new(0.0, 0.0, length, width);
    let mut w = Writer::default();
    w.head(cloth, LAYERS);
    w.section("ENTITIES", |w| {
        let corners = [
            Point::ORIGIN,
            Point::new(length, 0.0),
            Point::new(length, width),
            Point::new(0.0, width),
        ];
        w.path(layer::INTERNAL, &corners.map(on_grid), true);
        for placed in &lay.placements {
            let mut pieces = spread.problem.pieces.iter();
            let Some(piece) = pieces.find(|p| p.key == placed.key) else {
                continue;
            };
            let outline = line_on_grid(placed.outline(piece));
            w.path(layer::CUT, &outline, true);
            if let Some(named) = spread.named(&placed.key) {
                let piece = say.saying(&named.piece);
                let piece = if named.mirrored {
                    say.lay_sheet_mirrored(piece)
                } else {
                    piece
                };
                let words = format!("{} {piece}", named.size);
                let at = middle(&outline);
                w.text(layer::NOTE, at, LETTERS, Angle::ZERO, &words);
            }
        }
        let below = Point::new(0.0, -2.0 * LETTERS.to_mm());
        w.text(layer::NOTE, below, LETTERS, Angle::ZERO, "Units: METRIC");
    });
    w.done()
}

/// Where the words begin: the middle of the box around the piece.
fn middle(outline: &[Point]) -> Point {
    on_grid(bounds_of(outline).center())
}
