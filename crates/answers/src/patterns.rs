//! Patterns on paper: where everything lies, in millimetres.

use jobs::{MadePatterns, PatternOutput};
use papers::{PlanPage, PlanPiece, PlanSquare, PrintPlan};
use serde::Serialize;

use crate::number::{Fine, Xy, written};
use crate::shape::Shape;
use crate::text::{AnswerError, line};

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    unit: &'static str,
    files: Vec<FileRow<'a>>,
}

#[derive(Serialize)]
struct FileRow<'a> {
    file: &'a str,
    sizes: Vec<String>,
    plan: PlanRow<'a>,
}

#[derive(Serialize)]
struct PlanRow<'a> {
    plane: Xy,
    pages: Vec<PageRow<'a>>,
    square: SquareRow,
    pieces: Vec<PieceRow<'a>>,
}

#[derive(Serialize)]
struct PageRow<'a> {
    page: usize,
    code: &'a str,
    on_page: Xy,
    on_plane: Xy,
    window: Xy,
    marks: Vec<Xy>,
}

#[derive(Serialize)]
struct SquareRow {
    page: usize,
    at: Xy,
    side: f64,
}

#[derive(Serialize)]
struct PieceRow<'a> {
    code: &'a str,
    size: &'a str,
    outline: Vec<Xy>,
}

/// The answer for patterns on paper; files that are no print are not in it.
///
/// # Errors
/// It cannot be put into JSON.
pub fn patterns(made: &MadePatterns) -> Result<String, AnswerError> {
    line(&Answer {
        format: Shape::Patterns.version(),
        unit: "mm",
        files: made.files.iter().filter_map(file).collect(),
    })
}

fn file(file: &PatternOutput) -> Option<FileRow<'_>> {
    Some(FileRow {
        file: &file.name,
        sizes: file.sizes.iter().map(ToString::to_string).collect(),
        plan: plan(file.plan.as_ref()?),
    })
}

fn plan(plan: &PrintPlan) -> PlanRow<'_> {
    let PrintPlan {
        plane,
        pages,
        square,
        pieces,
    } = plan;
    PlanRow {
        plane: xy(plane),
        pages: pages.iter().map(page).collect(),
        square: self::square(square),
        pieces: pieces.iter().map(piece).collect(),
    }
}

fn page(page: &PlanPage) -> PageRow<'_> {
    PageRow {
        page: page.page,
        code: &page.code,
        on_page: xy(&page.on_page),
        on_plane: xy(&page.on_plane),
        window: xy(&page.window),
        marks: page.marks.iter().map(xy).collect(),
    }
}

fn square(square: &PlanSquare) -> SquareRow {
    SquareRow {
        page: square.page,
        at: xy(&square.at),
        side: written(square.side, Fine::Whole),
    }
}

fn piece(piece: &PlanPiece) -> PieceRow<'_> {
    PieceRow {
        code: &piece.code,
        size: &piece.size,
        outline: piece.outline.iter().map(xy).collect(),
    }
}

fn xy(place: &Xy) -> Xy {
    place.map(|along| written(along, Fine::Whole))
}
