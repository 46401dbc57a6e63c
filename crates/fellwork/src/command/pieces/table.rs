//! The pieces as a person reads them.

use std::fmt::Write;

use draft::Piece;
use geometry::Rect;
use sewing::Garment;
use trade::Length;

/// One line a piece, then the seams that join them.
pub fn pieces(garment: &Garment) -> String {
    let style = &garment.doc.style;
    let mut out = format!(
        "{} {}, size {}: finished pieces, without allowances\n\n{:>2}  {:<26} {:<10} {:>3}  {:>10} {:>10} {:>11} {:>12}\n",
        style.code,
        style.name,
        garment.size,
        "",
        "piece",
        "cloth",
        "cut",
        "width mm",
        "height mm",
        "area cm2",
        "around mm"
    );
    for (index, piece) in garment.pattern.pieces.iter().enumerate() {
        let bounds = bounds(piece);
        let around: Length = piece.edges.iter().map(|e| e.path.length()).sum();
        // Writing into a string does not fail.
        let _ = writeln!(
            out,
            "{:>2}  {:<26} {:<10} {:>3}  {:>10.1} {:>10.1} {:>11.1} {:>12.1}",
            index + 1,
            piece.id.words(words::Words::english()),
            piece.cloth.code(),
            piece.cut.total(),
            bounds.width(),
            bounds.height(),
            piece.area().to_cm2(),
            around.to_mm()
        );
    }
    let _ = writeln!(
        out,
        "\n    {:<26} {:>12} {:>12} {:>9} {:>10}",
        "seam", "one side mm", "other mm", "ease mm", "left mm"
    );
    for walked in draft::walk(&garment.pattern) {
        let _ = writeln!(
            out,
            "    {:<26} {:>12.2} {:>12.2} {:>9.2} {:>10.4}",
            walked.join.name.words(words::Words::english()),
            walked.a.to_mm(),
            walked.b.to_mm(),
            walked.ease.to_mm(),
            left(walked.gap())
        );
    }
    out
}

/// What is left of a gap, in millimetres; nought is printed without a sign.
fn left(gap: Length) -> f64 {
    const PRINTED: f64 = 1e4;
    (gap.to_mm() * PRINTED).round() / PRINTED + 0.0
}

fn bounds(piece: &Piece) -> Rect {
    piece
        .edges
        .iter()
        .map(|edge| edge.path.bounds())
        .reduce(|a, b| a.union(b))
        .unwrap_or_default()
}
