//! What was seen in a pattern file of the maker's own.

use geometry::Point;
use intake::{Look, SeenPiece};
use serde::Serialize;
use style::Size;
use trade::Length;

use crate::number::{self, Fine, written};
use crate::shape::Shape;
use crate::text::{AnswerError, line};

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    unit: &'static str,
    file: &'a str,
    /// For which state of the cloth the outlines are, where the file says it.
    drawn: Option<&'static str>,
    pieces: Vec<PieceRow<'a>>,
    passed_over: &'a [String],
}

#[derive(Serialize)]
struct PieceRow<'a> {
    name: &'a str,
    sizes: Vec<String>,
    shown: String,
    width: f64,
    height: f64,
    area_mm2: f64,
    line: &'static str,
    grain_deg: Option<f64>,
    half: bool,
    notches: usize,
    corners: Vec<CornerRow<'a>>,
    sides: Vec<SideRow<'a>>,
    taken_for: Option<&'static str>,
    because: &'static str,
    edges: Vec<EdgeRow<'a>>,
    aside: Option<&'a str>,
}

#[derive(Serialize)]
struct CornerRow<'a> {
    name: &'a str,
    x: f64,
    y: f64,
}

#[derive(Serialize)]
struct SideRow<'a> {
    from: &'a str,
    to: &'a str,
    length: f64,
}

#[derive(Serialize)]
struct EdgeRow<'a> {
    name: &'static str,
    from: &'a str,
    to: &'a str,
    guessed: bool,
}

/// The answer for a pattern file that was looked at, with what of it was passed over.
///
/// # Errors
/// It cannot be put into JSON.
pub fn bring(look: &Look, passed_over: &[String]) -> Result<String, AnswerError> {
    line(&Answer {
        format: Shape::Bring.version(),
        unit: "mm",
        file: &look.file.from,
        drawn: look.drawn.map(style::Drawn::word),
        pieces: look.pieces.iter().map(piece).collect(),
        passed_over,
    })
}

fn piece(piece: &SeenPiece) -> PieceRow<'_> {
    let corner = |name, at: Point| {
        let [x, y] = number::xy(at, Fine::Whole);
        CornerRow { name, x, y }
    };
    let side = |from, to, length| SideRow {
        from,
        to,
        length: mm(length),
    };
    let corners = piece.corners.iter();
    let sides = piece.sides.iter();
    let edges = piece.edges.iter().map(|edge| EdgeRow {
        name: edge.id.code(),
        from: &edge.from,
        to: &edge.to,
        guessed: !edge.sure,
    });
    PieceRow {
        name: &piece.name,
        sizes: piece.sizes.iter().map(Size::to_string).collect(),
        shown: piece.shown.to_string(),
        width: mm(piece.width),
        height: mm(piece.height),
        area_mm2: written(piece.area.to_mm2(), Fine::Whole),
        line: if piece.sewn { "sewn" } else { "cut" },
        grain_deg: piece
            .grain
            .map(|grain| written(grain.to_deg(), Fine::Whole)),
        half: piece.half,
        notches: piece.notches,
        corners: corners.map(|c| corner(c.name.as_str(), c.at)).collect(),
        sides: sides
            .map(|s| side(s.from.as_str(), s.to.as_str(), s.length))
            .collect(),
        taken_for: piece.taken_for.map(|known| known.id.code()),
        because: piece.because,
        edges: edges.collect(),
        aside: piece.aside.as_deref(),
    }
}

fn mm(length: Length) -> f64 {
    number::mm(length, Fine::Whole)
}
