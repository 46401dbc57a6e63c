//! Patterns at true size: tiled on A4 or A3 to be taped together, or on one length of a plotter's roll.

mod grid;
mod lay_page;
mod page;

use cut_sheets::{PatternSet, PatternSheet};
use geometry::Point;
use jiff::civil::Date;
use trade::Length;

use crate::PaperError;
use crate::sheets::{Cover, CoverPiece, Leaf, Sheets, sheets_pdf};
pub use grid::Paper;
use grid::{Grid, Tile};
pub use lay_page::lay_pdf;

/// White round the patterns on a roll.
const ROLL_MARGIN: Length = Length::mm(10.0);

/// What the pages of a pattern are headed with.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PatternHead {
    /// The label, for the PDF's author.
    pub collection: String,
    /// Code and name of the style.
    pub style: String,
    /// Which sizes, such as "size 32x32".
    pub sizes: String,
    /// The date of the print; it is given, never read from a clock.
    pub date: Option<Date>,
    /// The pieces of the set, for the first page.
    pub pieces: Vec<PatternPiece>,
}

/// One line of the list of pieces on the first page.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PatternPiece {
    /// Its name.
    pub name: String,
    /// How many are cut, in words.
    pub cut: String,
    /// The cloth it is cut from.
    pub cloth: String,
}

/// A printed pattern: the PDF and where everything lies in it.
#[derive(Debug, Clone, PartialEq)]
pub struct Printed {
    /// The PDF.
    pub pdf: Vec<u8>,
    /// Where everything lies.
    pub plan: PrintPlan,
}

/// Where everything lies in a printed pattern, in millimetres. The plane is the paper once joined, x to
/// the right and y down.
#[derive(Debug, Clone, PartialEq)]
pub struct PrintPlan {
    /// Width and height of the plane.
    pub plane: [f64; 2],
    /// What each page shows of the plane; pages count from 1.
    pub pages: Vec<PlanPage>,
    /// The check square.
    pub square: PlanSquare,
    /// The cut lines.
    pub pieces: Vec<PlanPiece>,
}

/// One page of the print and the part of the plane it shows.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanPage {
    /// The page of the PDF.
    pub page: usize,
    /// Row and column, such as "B3".
    pub code: String,
    /// The window's upper left corner on the page.
    pub on_page: [f64; 2],
    /// The same corner on the plane.
    pub on_plane: [f64; 2],
    /// Width and height of the window.
    pub window: [f64; 2],
    /// The register marks on it, on the plane.
    pub marks: Vec<[f64; 2]>,
}

/// The check square on its page.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlanSquare {
    /// The page of the PDF.
    pub page: usize,
    /// Its upper left corner on the page.
    pub at: [f64; 2],
    /// Its side.
    pub side: f64,
}

/// One cut line on the plane.
#[derive(Debug, Clone, PartialEq)]
pub struct PlanPiece {
    /// The piece.
    pub code: String,
    /// The size.
    pub size: String,
    /// The closed cut line.
    pub outline: Vec<[f64; 2]>,
}

/// Prints patterns tiled on office paper: a first page with the check square, how to join and a map,
/// then every page of the grid that carries something, row by row.
///
/// # Errors
/// [`PaperError`] when typst cannot set the pages.
pub fn tiled(set: &PatternSet, head: &PatternHead, paper: Paper) -> Result<Printed, PaperError> {
    let grid = Grid::of(paper);
    let (sheet, tiles) = grid.best(set);
    let side = cut_sheets::CHECK_SQUARE.to_mm();
    let mut leaves = Vec::new();
    let mut pages = Vec::new();
    for (k, tile) in tiles.iter().enumerate() {
        // The first page of the PDF is the cover.
        let page = k + 2;
        let leaf = page::leaf(&sheet, &grid, tile, &tiles, head, (page, tiles.len() + 1));
        leaves.push(Leaf::of(&leaf)?);
        pages.push(plan_page(&grid, tile, &tiles, page));
    }
    let cover = Cover {
        style: head.style.clone(),
        sizes: head.sizes.clone(),
        paper: paper.name().to_owned(),
        count: tiles.len(),
        side,
        map: Leaf::of(&page::map(&sheet, &grid, &tiles))?,
        pieces: head.pieces.iter().map(CoverPiece::of).collect(),
    };
    let pdf = sheets_pdf(&Sheets {
        title: format!("{}, patterns, {}, {}", head.style, head.sizes, paper.name()),
        author: head.collection.clone(),
        date: head.date,
        paper: grid.page(),
        cover: Some(cover),
        leaves,
    })?;
    Ok(Printed {
        pdf,
        plan: PrintPlan {
            plane: [sheet.sheet.width.to_mm(), sheet.sheet.height.to_mm()],
            pages,
            square: PlanSquare {
                page: 1,
                at: Cover::SQUARE_AT,
                side,
            },
            pieces: plan_pieces(&sheet),
        },
    })
}

fn plan_page(grid: &Grid, tile: &Tile, tiles: &[Tile], page: usize) -> PlanPage {
    let (window, corner) = (grid.window(tile), grid.corner());
    PlanPage {
        page,
        code: tile.code(),
        on_page: [corner.x, corner.y],
        on_plane: [window.x0, window.y0],
        window: [window.width(), window.height()],
        marks: grid.marks(tile, tiles).iter().map(pair).collect(),
    }
}

/// Prints patterns side by side on one page as wide as a plotter's roll and as long as they need.
///
/// # Errors
/// [`PaperError::TooNarrow`] when a piece is wider than the roll; [`PaperError`] when typst cannot set
/// the page.
pub fn rolled(set: &PatternSet, head: &PatternHead, width: Length) -> Result<Printed, PaperError> {
    let room = width - ROLL_MARGIN * 2.0;
    let least = set.least_width().max(cut_sheets::CHECK_SQUARE);
    if room < least || !room.is_finite() {
        return Err(PaperError::TooNarrow {
            width,
            least: least + ROLL_MARGIN * 2.0,
        });
    }
    let sheet = set.on_width(room, true);
    let leaf = page::roll(&sheet, head, width, ROLL_MARGIN);
    let (wide, tall) = (leaf.width.to_mm(), leaf.height.to_mm());
    let shift = page::roll_corner(ROLL_MARGIN);
    let at = |p: Point| [p.x + shift.x, p.y + shift.y];
    let square = sheet.square.unwrap_or_default();
    let pdf = sheets_pdf(&Sheets {
        title: format!("{}, patterns, {}", head.style, head.sizes),
        author: head.collection.clone(),
        date: head.date,
        paper: [wide, tall],
        cover: None,
        leaves: vec![Leaf::of(&leaf)?],
    })?;
    Ok(Printed {
        pdf,
        plan: PrintPlan {
            plane: [sheet.sheet.width.to_mm(), sheet.sheet.height.to_mm()],
            pages: vec![PlanPage {
                page: 1,
                code: "A1".to_owned(),
                on_page: at(Point::ORIGIN),
                on_plane: [0.0, 0.0],
                window: [sheet.sheet.width.to_mm(), sheet.sheet.height.to_mm()],
                marks: Vec::new(),
            }],
            square: PlanSquare {
                page: 1,
                at: at(square.origin()),
                side: square.width(),
            },
            pieces: plan_pieces(&sheet),
        },
    })
}

fn plan_pieces(sheet: &PatternSheet) -> Vec<PlanPiece> {
    let pieces = sheet.pieces.iter().map(|piece| PlanPiece {
        code: piece.code.clone(),
        size: piece.size.to_string(),
        outline: piece.outline.iter().map(pair).collect(),
    });
    pieces.collect()
}

fn pair(p: &Point) -> [f64; 2] {
    [p.x, p.y]
}
