//! What was seen in a pattern file, for programs.

use intake::{Look, SeenPiece};
use serde::Serialize;
use style::Size;

/// The version of the shape.
const FORMAT: u32 = 1;

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

pub fn list(look: &Look, passed_over: &[String]) -> Result<String, serde_json::Error> {
    let answer = Answer {
        format: FORMAT,
        unit: "mm",
        file: &look.file.from,
        drawn: look.drawn.map(style::Drawn::word),
        pieces: look.pieces.iter().map(row).collect(),
        passed_over,
    };
    serde_json::to_string(&answer).map(|text| text + "\n")
}

fn row(piece: &SeenPiece) -> PieceRow<'_> {
    PieceRow {
        name: &piece.name,
        sizes: piece.sizes.iter().map(Size::to_string).collect(),
        shown: piece.shown.to_string(),
        width: piece.width.to_mm(),
        height: piece.height.to_mm(),
        area_mm2: piece.area.to_mm2(),
        line: if piece.sewn { "sewn" } else { "cut" },
        grain_deg: piece.grain.map(trade::Angle::to_deg),
        half: piece.half,
        notches: piece.notches,
        corners: piece
            .corners
            .iter()
            .map(|c| CornerRow {
                name: &c.name,
                x: c.at.x,
                y: c.at.y,
            })
            .collect(),
        sides: piece
            .sides
            .iter()
            .map(|s| SideRow {
                from: &s.from,
                to: &s.to,
                length: s.length.to_mm(),
            })
            .collect(),
        taken_for: piece.taken_for.map(|known| known.id.code()),
        because: piece.because,
        edges: piece
            .edges
            .iter()
            .map(|e| EdgeRow {
                name: e.id.code(),
                from: &e.from,
                to: &e.to,
                guessed: !e.sure,
            })
            .collect(),
        aside: piece.aside.as_deref(),
    }
}
