//! All pieces of a size on a few pages: the piece list as drawings.

use draft::{Pattern, Piece};
use geometry::{Affine, Point, Rect, Vec2};
use sewing::CutPiece;
use trade::Length;

use crate::palette::Pen;
use crate::piece_sheet::{Drawn, PieceCaption, draw};
use crate::sheet::{Layer, Sheet};

/// What an upright A4 page leaves for a drawing once heading, caption and margins are taken.
const PAGE_WIDE_MM: f64 = 172.0;
const PAGE_TALL_MM: f64 = 227.0;
/// Clear space between pieces.
const BETWEEN_MM: f64 = 4.0;
/// Scales a workroom has a ruler for, or reads off the scale bar; the first at which every piece
/// fits a page is taken.
const SCALES: [u32; 8] = [5, 6, 8, 10, 15, 20, 50, 100];

/// The pieces of one size, all at one scale.
#[derive(Clone, Debug, PartialEq)]
pub struct PiecesOverview {
    /// The scale is one to this.
    pub one_to: u32,
    /// One page each, at its printed size.
    pub sheets: Vec<Sheet>,
}

/// A piece drawn, waiting for its place.
struct Cell {
    layers: Vec<Layer>,
    bounds: Rect,
}

/// All pieces on as few pages as a simple packing needs: the tallest first, each at the highest free
/// place. Each carries its number in the order of the pattern, its name, how many are cut and from
/// which cloth; a piece without a cut piece of its own is drawn at its sewn line.
pub fn pieces_overview(pattern: &Pattern, cut: &[CutPiece]) -> PiecesOverview {
    let last = SCALES[SCALES.len() - 1];
    let (one_to, cells) = SCALES
        .iter()
        .map(|one_to| (*one_to, cells(pattern, cut, *one_to)))
        .find(|(one_to, cells)| *one_to == last || cells.iter().all(fits))
        .unwrap_or((last, Vec::new()));
    let pages = pack(cells);
    let count = pages.len();
    let sheets = pages
        .into_iter()
        .enumerate()
        .map(|(k, layers)| {
            sheet(
                format!("Pieces, page {} of {count}, 1:{one_to}", k + 1),
                layers,
            )
        })
        .collect();
    PiecesOverview { one_to, sheets }
}

fn cells(pattern: &Pattern, cut: &[CutPiece], one_to: u32) -> Vec<Cell> {
    let mut cells = Vec::new();
    for (k, piece) in pattern.pieces.iter().enumerate() {
        let caption = PieceCaption {
            style: String::new(),
            size: String::new(),
            number: k + 1,
            scale: 1.0,
        };
        // Left and right are drawn apart where their allowances differ.
        let mut cuts: Vec<Option<&CutPiece>> = cut
            .iter()
            .filter(|c| c.piece == piece.id)
            .map(Some)
            .collect();
        if cuts.is_empty() {
            cuts.push(None);
        }
        for cut in cuts {
            let upright = cell(piece, cut, &caption, one_to, false);
            cells.push(if upright.bounds.width() <= PAGE_WIDE_MM {
                upright
            } else {
                cell(piece, cut, &caption, one_to, true)
            });
        }
    }
    cells
}

fn cell(
    piece: &Piece,
    cut: Option<&CutPiece>,
    caption: &PieceCaption,
    one_to: u32,
    turned: bool,
) -> Cell {
    let s = 1.0 / f64::from(one_to);
    let map = if turned {
        Affine::new([0.0, -s, -s, 0.0, 0.0, 0.0])
    } else {
        Affine::new([s, 0.0, 0.0, -s, 0.0, 0.0])
    };
    let Drawn { layers, bounds } = draw(piece, cut, map, Pen::FULL, Some(caption));
    Cell {
        layers,
        bounds: bounds.inflate(0.5, 0.5),
    }
}

fn fits(cell: &Cell) -> bool {
    cell.bounds.width() <= PAGE_WIDE_MM && cell.bounds.height() <= PAGE_TALL_MM
}

/// One page while it is filled.
#[derive(Default)]
struct Page {
    used: Vec<Rect>,
    layers: Vec<Layer>,
}

/// The tallest piece first, each at the highest free place of the first page with room.
fn pack(mut cells: Vec<Cell>) -> Vec<Page> {
    cells.sort_by(|a, b| b.bounds.height().total_cmp(&a.bounds.height()));
    let mut pages: Vec<Page> = Vec::new();
    for cell in cells {
        let size = Vec2::new(cell.bounds.width(), cell.bounds.height());
        let found = pages
            .iter()
            .enumerate()
            .find_map(|(k, page)| Some((k, free_place(&page.used, size)?)));
        let (k, to) = found.unwrap_or_else(|| {
            pages.push(Page::default());
            (pages.len() - 1, Point::ORIGIN)
        });
        pages[k].used.push(Rect::from_points(to, to + size));
        place(&mut pages[k].layers, cell, to);
    }
    pages
}

/// The highest, then leftmost, place against what is already there.
fn free_place(used: &[Rect], size: Vec2) -> Option<Point> {
    let tops = || used.iter().map(|r| r.y1 + BETWEEN_MM).chain([0.0]);
    let lefts = || used.iter().map(|r| r.x1 + BETWEEN_MM).chain([0.0]);
    let free = |p: &Point| {
        let here = Rect::from_points(*p, *p + size);
        let room = here.inflate(BETWEEN_MM * 0.99, BETWEEN_MM * 0.99);
        here.x1 <= PAGE_WIDE_MM && here.y1 <= PAGE_TALL_MM && !used.iter().any(|r| r.overlaps(room))
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

/// The sheet of a page, as tall as what it carries.
fn sheet(title: String, page: Page) -> Sheet {
    let tall = page.used.iter().map(|r| r.y1).fold(0.0, f64::max);
    Sheet {
        title,
        origin: Point::ORIGIN,
        width: Length::mm(PAGE_WIDE_MM),
        height: Length::mm(tall),
        layers: page.layers,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::samples::{ferryman, texts, words_stand_clear};

    #[test]
    fn every_size_fits_few_pages_with_every_cut_piece_on_them() {
        let loaded = ferryman();
        for garment in sewing::make_run(&loaded.style, &loaded.collection) {
            let overview = pieces_overview(&garment.pattern, &garment.cut);
            assert!(
                overview.one_to <= 8,
                "{}: 1:{}",
                garment.size,
                overview.one_to
            );
            assert!(overview.sheets.len() <= 4);
            let headings = overview
                .sheets
                .iter()
                .flat_map(texts)
                .filter(|t| t.bold)
                .count();
            assert_eq!(headings, garment.cut.len(), "{}", garment.size);
            for sheet in &overview.sheets {
                words_stand_clear(sheet);
            }
        }
    }

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
        let pages = pack(cells);
        assert_eq!(pages.len(), 2);
        for page in &pages {
            for (k, a) in page.used.iter().enumerate() {
                assert!(a.x1 <= PAGE_WIDE_MM && a.y1 <= PAGE_TALL_MM);
                assert!(page.used[k + 1..].iter().all(|b| !a.overlaps(*b)));
            }
        }
    }
}
