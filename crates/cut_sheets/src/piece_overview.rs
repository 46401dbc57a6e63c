//! All pieces of a size, or all nests of a run, on a few pages.

use cutting::{CutPiece, CutSize, Nest, Nested};
use draft::Pattern;
use drawing::Sheet;
use drawing::palette::Pen;
use geometry::{Affine, Point};
use sewing::On;
use style::Size;
use trade::Length;
use words::{Words, say};

use crate::laid_piece::PieceCaption;
use crate::nest_sheet::{NestLook, nest_sheet};
use crate::packing::{Cell, Filled, Room, pack};
use crate::pattern_set::nest_point;
use crate::piece_sheet::{Drawn, draw};
use crate::piece_words::Place;

/// What an upright A4 page leaves for a drawing once heading, caption and margins are taken.
const PAGE_WIDE_MM: f64 = 172.0;
const PAGE_TALL_MM: f64 = 227.0;
/// Clear space between pieces.
const BETWEEN_MM: f64 = 4.0;
const PAGE: Room = Room {
    wide: PAGE_WIDE_MM,
    tall: PAGE_TALL_MM,
    between: BETWEEN_MM,
};
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

/// All cut pieces on as few pages as a simple packing needs: the tallest first, each at the highest
/// free place. Each carries its number in the order of the pattern, its name, how many are cut and from
/// which cloth.
pub fn pieces_overview(pattern: &Pattern, cut: &CutSize, words: &Words) -> PiecesOverview {
    let title = |page, pages, one_to| {
        words.say(say::OverviewPieces {
            one_to,
            page,
            pages,
        })
    };
    overview(title, |one_to| cells(pattern, cut, one_to, words))
}

/// The nests of all pieces that change from size to size, on as few pages as a simple packing needs.
pub fn nests_overview(run: &[CutSize], base: Size, words: &Words) -> PiecesOverview {
    let like = run.iter().find(|cut| cut.size == base);
    let nests: Vec<Nest> = like
        .into_iter()
        .flat_map(|cut| &cut.pieces)
        .filter(|piece| !is_second_copy(piece))
        .filter_map(|piece| {
            let at = nest_point(piece)?;
            cutting::nest(run, piece.piece, piece.part, piece.on, at).ok()
        })
        .filter(grows)
        .collect();
    let title = |page, pages, one_to| {
        words.say(say::OverviewNests {
            one_to,
            page,
            pages,
        })
    };
    overview(title, |one_to| {
        let scale = 1.0 / f64::from(one_to);
        let look = NestLook {
            base,
            scale,
            type_size: 1.0,
            named: true,
        };
        let drawn = nests.iter().map(|nest| nest_sheet(run, nest, &look, words));
        drawn.map(|sheet| Cell::shrunk(sheet, scale)).collect()
    })
}

/// Whether a piece is the mirrored one of two that are cut with other allowances: its seam lines, and so
/// how it grows, are those of the first.
pub fn is_second_copy(piece: &CutPiece) -> bool {
    piece.pair && piece.on == On::Mirrored
}

/// Whether the cut line of a piece is not the same in every size.
pub fn grows(nest: &Nest) -> bool {
    const SAME_MM: f64 = 0.05;
    let same = |a: &Nested, b: &Nested| {
        let (a, b) = (&a.cut, &b.cut);
        a.len() == b.len() && a.iter().zip(b).all(|(p, q)| (*p - *q).hypot() < SAME_MM)
    };
    nest.sizes.windows(2).any(|w| !same(&w[0], &w[1]))
}

/// Drawings on pages at the first scale at which each fits; `title` is told the page, how many there are and the
/// scale.
fn overview(
    title: impl Fn(usize, usize, u32) -> String,
    cells: impl Fn(u32) -> Vec<Cell>,
) -> PiecesOverview {
    let last = SCALES[SCALES.len() - 1];
    let (one_to, cells) = SCALES
        .iter()
        .map(|one_to| (*one_to, cells(*one_to)))
        .find(|(one_to, cells)| *one_to == last || cells.iter().all(fits))
        .unwrap_or((last, Vec::new()));
    let pages = pack(cells, PAGE);
    let count = pages.len();
    let sheets = pages
        .into_iter()
        .enumerate()
        .map(|(k, layers)| sheet(title(k + 1, count, one_to), layers))
        .collect();
    PiecesOverview { one_to, sheets }
}

fn cells(pattern: &Pattern, cut: &CutSize, one_to: u32, words: &Words) -> Vec<Cell> {
    cut.pieces
        .iter()
        .map(|piece| {
            let caption = PieceCaption {
                number: piece_number(pattern, piece),
                style_and_size: false,
                scale: 1.0,
                type_size: 1.0,
            };
            let upright = cell(piece, (&caption, words), one_to, false);
            if upright.bounds.width() <= PAGE_WIDE_MM {
                upright
            } else {
                cell(piece, (&caption, words), one_to, true)
            }
        })
        .collect()
}

/// The number of a cut piece in the list of pieces, from 1.
pub fn piece_number(pattern: &Pattern, piece: &CutPiece) -> Option<usize> {
    let place = pattern.pieces.iter().position(|p| p.id == piece.piece);
    place.map(|k| k + 1)
}

fn cell(piece: &CutPiece, caption: (&PieceCaption, &Words), one_to: u32, turned: bool) -> Cell {
    let s = 1.0 / f64::from(one_to);
    let map = if turned {
        Affine::new([0.0, -s, -s, 0.0, 0.0, 0.0])
    } else {
        Affine::new([s, 0.0, 0.0, -s, 0.0, 0.0])
    };
    let said = (caption.0, caption.1, Place::InsideOrBeside);
    let Drawn { layers, bounds } = draw(piece, map, Pen::FULL, Some(said));
    Cell {
        layers,
        bounds: bounds.inflate(0.5, 0.5),
    }
}

fn fits(cell: &Cell) -> bool {
    cell.bounds.width() <= PAGE_WIDE_MM && cell.bounds.height() <= PAGE_TALL_MM
}

/// The sheet of a page, as tall as what it carries.
fn sheet(title: String, page: Filled) -> Sheet {
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
    use crate::samples::{ferryman, plan, texts, words_stand_clear};
    use cutting::cut;

    #[test]
    fn every_size_fits_few_pages_with_every_cut_piece_on_them() {
        let loaded = ferryman();
        for garment in sewing::make_run(&loaded.style, &loaded.collection) {
            let cut = cut(&garment, &plan());
            let overview = pieces_overview(&garment.pattern, &cut, Words::english());
            assert!(
                overview.one_to <= 8,
                "{}: 1:{}",
                garment.size,
                overview.one_to
            );
            assert!(overview.sheets.len() <= 4);
            let said: Vec<&str> = overview
                .sheets
                .iter()
                .flat_map(texts)
                .map(|t| t.words.as_str())
                .collect();
            for piece in &cut.pieces {
                let number = piece_number(&garment.pattern, piece).unwrap();
                let name = format!("{number} {}", Words::english().say(piece.said()));
                let found = said.iter().any(|words| words.starts_with(&name));
                assert!(found, "{}: {name}", garment.size);
            }
            for sheet in &overview.sheets {
                words_stand_clear(sheet);
            }
        }
    }
}
