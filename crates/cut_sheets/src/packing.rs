//! Drawings beside one another: the tallest first, each at the highest free place.

use drawing::{Layer, Shape, Sheet, Stroke};
use geometry::{Affine, Point, Rect, Vec2};

/// A drawing that waits for its place.
pub(crate) struct Cell {
    pub layers: Vec<Layer>,
    pub bounds: Rect,
}

impl Cell {
    /// A sheet made smaller, lines and words with it.
    pub fn shrunk(sheet: Sheet, by: f64) -> Cell {
        let map = Affine::scale(by);
        let thinner = |stroke: &mut Stroke| {
            stroke.width = stroke.width * by;
            stroke.dash = stroke.dash.map(|(dash, gap)| (dash * by, gap * by));
        };
        let mut layers = sheet.layers;
        for layer in &mut layers {
            for path in layer.paths_mut() {
                path.apply_affine(map);
            }
            for mark in &mut layer.marks {
                match &mut mark.shape {
                    Shape::Area { stroke, .. } => stroke.iter_mut().for_each(thinner),
                    Shape::Line { stroke, .. } => thinner(stroke),
                    Shape::Text(text) => {
                        text.at = map * text.at;
                        text.size = text.size * by;
                    }
                }
            }
        }
        let size = Vec2::new(sheet.width.to_mm(), sheet.height.to_mm()) * by;
        let origin = map * sheet.origin;
        Cell {
            layers,
            bounds: Rect::from_points(origin, origin + size),
        }
    }
}

/// What a page has to offer, in millimetres.
#[derive(Clone, Copy)]
pub(crate) struct Room {
    pub wide: f64,
    pub tall: f64,
    /// Clear space between drawings.
    pub between: f64,
}

/// One page while it is filled, and after.
#[derive(Default)]
pub(crate) struct Filled {
    /// Where drawings lie.
    pub used: Vec<Rect>,
    /// Which drawing lies there, by its place in what was given, and how far it was moved.
    pub moved: Vec<(usize, Vec2)>,
    pub layers: Vec<Layer>,
}

/// The tallest first, each at the highest free place of the first page with room. What no page holds
/// gets a page of its own.
pub(crate) fn pack(cells: Vec<Cell>, room: Room) -> Vec<Filled> {
    let mut cells: Vec<(usize, Cell)> = cells.into_iter().enumerate().collect();
    cells.sort_by(|(_, a), (_, b)| b.bounds.height().total_cmp(&a.bounds.height()));
    let mut pages: Vec<Filled> = Vec::new();
    for (number, cell) in cells {
        let size = Vec2::new(cell.bounds.width(), cell.bounds.height());
        let found = pages
            .iter()
            .enumerate()
            .find_map(|(k, page)| Some((k, free_place(&page.used, size, room)?)));
        let (k, to) = found.unwrap_or_else(|| {
            pages.push(Filled::default());
            (pages.len() - 1, Point::ORIGIN)
        });
        let page = &mut pages[k];
        page.used.push(Rect::from_points(to, to + size));
        page.moved.push((number, to - cell.bounds.origin()));
        place(&mut page.layers, cell, to);
    }
    pages
}

/// The highest, then leftmost, place against what is already there.
fn free_place(used: &[Rect], size: Vec2, page: Room) -> Option<Point> {
    let tops = || used.iter().map(|r| r.y1 + page.between).chain([0.0]);
    let lefts = || used.iter().map(|r| r.x1 + page.between).chain([0.0]);
    let free = |p: &Point| {
        let here = Rect::from_points(*p, *p + size);
        let clear = page.between * 0.99;
        let room = here.inflate(clear, clear);
        here.x1 <= page.wide && here.y1 <= page.tall && !used.iter().any(|r| r.overlaps(room))
    };
    tops()
        .flat_map(|y| lefts().map(move |x| Point::new(x, y)))
        .filter(free)
        .min_by(|a, b| a.y.total_cmp(&b.y).then(a.x.total_cmp(&b.x)))
}

/// Moves a cell to its place and merges its layers with those of the page by name.
fn place(page: &mut Vec<Layer>, cell: Cell, to: Point) {
    let by: Vec2 = to - cell.bounds.origin();
    for mut layer in cell.layers {
        for path in layer.paths_mut() {
            path.apply_affine(Affine::translate(by));
        }
        for text in layer.texts_mut() {
            text.at += by;
        }
        match page.iter_mut().find(|l| l.name == layer.name) {
            Some(same) => same.marks.append(&mut layer.marks),
            None => page.push(layer),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nothing_is_packed_over_anything() {
        let boxes = [
            (60.0, 200.0),
            (70.0, 210.0),
            (90.0, 40.0),
            (30.0, 40.0),
            (172.0, 30.0),
        ];
        let cells = boxes
            .iter()
            .map(|(w, h)| Cell {
                layers: Vec::new(),
                bounds: Rect::new(3.0, 5.0, 3.0 + w, 5.0 + h),
            })
            .collect();
        let page = Room {
            wide: 172.0,
            tall: 227.0,
            between: 4.0,
        };
        let pages = pack(cells, page);
        assert_eq!(pages.len(), 2);
        for page in &pages {
            for (k, a) in page.used.iter().enumerate() {
                assert!(a.x1 <= 172.0 && a.y1 <= 227.0);
                assert!(page.used[k + 1..].iter().all(|b| !a.overlaps(*b)));
            }
        }
    }
}
