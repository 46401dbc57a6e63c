//! Cut pieces: every piece grown by the allowances its seams ask for.

use draft::{EdgeId, Finding, Piece, Severity};
use geometry::{Point, offset_outline};
use style::MeasureId;
use trade::Length;
use words::{Said, key, say};

use crate::context::{Context, finding, with_remedy};
use crate::edges::allowance;
use crate::garment::{CutPiece, On};

/// Distance of the points along a curved cut line.
const STEP_MM: f64 = 2.0;

/// A cut line has about this many points at most, however large the piece.
const MOST_POINTS: f64 = 4000.0;

pub(crate) fn cut_pieces(context: &Context<'_>, findings: &mut Vec<Finding>) -> Vec<CutPiece> {
    let mut out = Vec::new();
    for piece in &context.pattern.pieces {
        let drawn = widths(context, piece, On::AsDrawn);
        let mirrored = widths(context, piece, On::Mirrored);
        match (piece.cut.as_drawn > 0, piece.cut.mirrored > 0) {
            (true, true) if drawn == mirrored => {
                out.push(grown(context, piece, On::Both, drawn, findings));
            }
            (true, true) => {
                out.push(grown(context, piece, On::AsDrawn, drawn, findings));
                out.push(grown(context, piece, On::Mirrored, mirrored, findings));
            }
            (false, true) => out.push(grown(context, piece, On::Mirrored, mirrored, findings)),
            (_, false) => out.push(grown(context, piece, On::AsDrawn, drawn, findings)),
        }
    }
    out
}

fn widths(context: &Context<'_>, piece: &Piece, on: On) -> Vec<(EdgeId, Length)> {
    let hem_depth = context.pattern.spec[MeasureId::HemDepth];
    piece
        .edges
        .iter()
        .map(|e| {
            (
                e.id,
                allowance(context.seams, hem_depth, piece.id, e.id, on),
            )
        })
        .collect()
}

fn grown(
    context: &Context<'_>,
    piece: &Piece,
    on: On,
    allowances: Vec<(EdgeId, Length)>,
    findings: &mut Vec<Finding>,
) -> CutPiece {
    let outline = outline(piece, &allowances).unwrap_or_else(|reason| {
        let found = finding(
            context,
            "sewing::cut-line",
            Severity::Error,
            piece.id,
            say::SewingGrownPiecesGrown { reason },
        );
        findings.push(with_remedy(found, key::SEWING_GROWN_PIECES_GROWN_2));
        finished(piece)
    });
    CutPiece {
        piece: piece.id,
        on,
        allowances,
        outline,
    }
}

fn outline(piece: &Piece, allowances: &[(EdgeId, Length)]) -> Result<Vec<Point>, Said> {
    let step = step_for(piece).ok_or_else(|| Said::from(key::SEWING_GROWN_PIECES_OUTLINE))?;
    let n = piece.edges.len();
    let joined = |index: usize| {
        let before = (index + n - 1) % n;
        allowances[before].1 == allowances[index].1 && runs_on(piece, before, index)
    };
    // Begin at a corner, so that no smooth run is cut in two.
    let first = (0..n).find(|index| !joined(*index)).unwrap_or(0);
    let mut runs: Vec<(Vec<Point>, Length)> = Vec::new();
    for index in (0..n).map(|k| (first + k) % n) {
        let points = piece.edges[index].path.dense(step);
        match runs.last_mut() {
            Some((run, _)) if joined(index) => run.extend_from_slice(&points[1..]),
            _ => runs.push((points, allowances[index].1)),
        }
    }
    offset_outline(&runs).map_err(|error| {
        let reason = error.to_string();
        say::SewingGrownPiecesReason { reason }.into()
    })
}

/// Whether an edge runs smoothly on from the one before it, so that both are one cut line. A corner
/// between them would be mitred; a bend this slight would only fold the line over itself.
fn runs_on(piece: &Piece, before: usize, index: usize) -> bool {
    const SLIGHT_RAD: f64 = 0.2;
    let (a, b) = (
        piece.edges[before].path.end_direction(),
        piece.edges[index].path.start_direction(),
    );
    a.cross(b).atan2(a.dot(b)).abs() < SLIGHT_RAD
}

fn finished(piece: &Piece) -> Vec<Point> {
    step_for(piece).map_or_else(Vec::new, |step| piece.polygon(step))
}

fn step_for(piece: &Piece) -> Option<Length> {
    let around = piece
        .edges
        .iter()
        .map(|e| e.path.length())
        .sum::<Length>()
        .to_mm();
    let finite = around.is_finite() && piece.edges.iter().all(|e| e.path.start().is_finite());
    finite.then(|| Length::mm(STEP_MM.max(around / MOST_POINTS)))
}
