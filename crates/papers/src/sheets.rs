//! Drawings printed as pages of their own size, nothing scaled.

use drawing::{Sheet, svg};
use jiff::civil::Date;
use serde::Serialize;

use crate::patterns::PatternPiece;
use crate::pdf::{Edition, long_date, print};
use crate::typeset::job;
use crate::{Drawing, PaperError};

/// The layout that sets them.
const LAYOUT: &str = "/sheets.typ";

/// Pages to be printed.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Sheets {
    pub title: String,
    pub author: String,
    pub date: Option<Date>,
    /// Width and height of the cover, mm.
    pub paper: [f64; 2],
    pub cover: Option<Cover>,
    pub leaves: Vec<Leaf>,
}

/// One drawing that fills a page.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct Leaf {
    drawing: Drawing,
    title: String,
}

impl Leaf {
    /// # Errors
    /// [`PaperError::Drawing`] for a drawing larger than a PDF page can be.
    pub fn of(sheet: &Sheet) -> Result<Leaf, PaperError> {
        Ok(Leaf {
            drawing: Drawing::from_svg(svg(sheet), &format!("the page “{}”", sheet.title))?,
            title: sheet.title.clone(),
        })
    }
}

impl Leaf {
    /// A drawing of the cloth's own size, at 1:n.
    ///
    /// # Errors
    /// [`PaperError::Drawing`] for a drawing larger than a PDF page can be.
    pub fn of_cloth(sheet: &Sheet, one_to: u32) -> Result<Leaf, PaperError> {
        let title = format!("{}, 1:{one_to}", sheet.title);
        let drawing = Drawing::of_cloth(svg(sheet), one_to, &format!("the page “{title}”"))?;
        Ok(Leaf { drawing, title })
    }
}

/// The first page of a tiled pattern.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct Cover {
    pub style: String,
    pub sizes: String,
    pub paper: String,
    /// How many pages follow.
    pub count: usize,
    /// Side of the check square, mm.
    pub side: f64,
    pub map: Leaf,
    pub pieces: Vec<CoverPiece>,
}

impl Cover {
    /// Where the layout puts the check square on the page.
    pub const SQUARE_AT: [f64; 2] = [20.0, 40.0];
}

/// One line of the cover's list.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct CoverPiece {
    name: String,
    cut: String,
    cloth: String,
}

impl CoverPiece {
    pub fn of(piece: &PatternPiece) -> CoverPiece {
        CoverPiece {
            name: piece.name.clone(),
            cut: piece.cut.clone(),
            cloth: piece.cloth.clone(),
        }
    }
}

#[derive(Serialize)]
struct Root<'a> {
    title: &'a str,
    author: &'a str,
    date: String,
    paper: [f64; 2],
    square_at: [f64; 2],
    cover: Option<&'a Cover>,
    leaves: &'a [Leaf],
}

/// Sets the pages.
///
/// # Errors
/// [`PaperError`] when typst cannot set or write them.
pub(crate) fn sheets_pdf(sheets: &Sheets) -> Result<Vec<u8>, PaperError> {
    let root = Root {
        title: &sheets.title,
        author: &sheets.author,
        date: sheets.date.map(long_date).unwrap_or_default(),
        paper: sheets.paper,
        square_at: Cover::SQUARE_AT,
        cover: sheets.cover.as_ref(),
        leaves: &sheets.leaves,
    };
    let job = job(LAYOUT, &root).map_err(|error| PaperError::Layout(error.to_string()))?;
    let edition = Edition {
        ident: sheets.title.clone(),
        date: sheets.date,
    };
    print(job, &edition)
}
