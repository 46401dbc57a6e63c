//! Pieces beside each other on one sheet.

use geometry::{Point, Rect, Vec2};
use trade::Length;

/// Between two pieces on a sheet.
pub(crate) const APART: Length = Length::mm(20.0);

/// How far each box moves so that all lie in rows on a sheet of a width, the tallest first, and how large
/// the sheet is. A box wider than the sheet makes the sheet wider. The sheet begins at the origin.
pub(crate) fn arrange(boxes: &[Rect], width: Length) -> (Vec<Vec2>, Vec2) {
    let mut order: Vec<usize> = (0..boxes.len()).collect();
    let height = |k: &usize| boxes.get(*k).map_or(0.0, Rect::height);
    order.sort_by(|a, b| height(b).total_cmp(&height(a)));
    let gap = APART.to_mm();
    let mut moves = vec![Vec2::ZERO; boxes.len()];
    let mut sheet = Vec2::new(gap, gap);
    let (mut at, mut row) = (Point::new(gap, gap), 0.0_f64);
    for k in order {
        let (Some(piece), Some(by)) = (boxes.get(k), moves.get_mut(k)) else {
            continue;
        };
        if at.x > gap && at.x + piece.width() + gap > width.to_mm() {
            at = Point::new(gap, at.y + row + gap);
            row = 0.0;
        }
        *by = crate::on_grid((at - piece.origin()).to_point()).to_vec2();
        row = row.max(piece.height());
        at.x += piece.width() + gap;
        sheet = Vec2::new(sheet.x.max(at.x), sheet.y.max(at.y + row + gap));
    }
    (moves, sheet)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn no_box_overlaps_another_and_all_lie_on_the_sheet(
            sizes in prop::collection::vec((1.0..900.0_f64, 1.0..900.0_f64, -500.0..500.0_f64), 1..30),
        ) {
            let boxes: Vec<Rect> =
                sizes.iter().map(|(w, h, x)| Rect::new(*x, -x, x + w, -x + h)).collect();
            let (moves, sheet) = arrange(&boxes, Length::mm(1000.0));
            let lie: Vec<Rect> = boxes.iter().zip(&moves).map(|(b, m)| *b + *m).collect();
            for (k, a) in lie.iter().enumerate() {
                prop_assert!(a.x0 > 0.0 && a.y0 > 0.0 && a.x1 < sheet.x && a.y1 < sheet.y);
                for b in &lie[k + 1..] {
                    prop_assert!(a.intersect(*b).area() == 0.0);
                }
            }
        }
    }
}
