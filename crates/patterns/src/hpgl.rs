//! A pattern for a plotter that cuts or draws, in HPGL.
//!
//! The plainest commands that every such plotter knows: `IN` (begin), `SP` (choose a pen), `PU` and `PD`
//! (move with the pen up or down) to absolute places in steps of 1/40 mm, as the language has them. Pen 1
//! draws what is not cut, pen 2 cuts. x runs along the roll, which is the way of the grain, y across it.

use geometry::{Point, Rect, Vec2, bounds_of};
use thiserror::Error;
use trade::Length;

use crate::model::{NotchKind, PatternFile, Piece};
use crate::number::put_steps;
use crate::sheet::{APART, arrange};

/// Steps to the millimetre.
pub const STEPS: f64 = 40.0;

/// How every plot begins and ends.
const BEGINS: &str = "IN;";
const ENDS: &str = "PU0,0;SP0;\n";

/// The pens.
const DRAWS: &str = "SP1;";
const CUTS: &str = "SP2;";

/// Half the arm of the cross that marks a drill hole.
const CROSS: Length = Length::mm(3.0);

/// Why a pattern cannot be plotted.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum HpglError {
    /// A piece is wider than the roll.
    #[error(
        "{piece} is {across} wide and does not fit on a roll {width} wide; plot on a wider roll, at least {least}"
    )]
    TooWide {
        /// The piece.
        piece: String,
        /// How wide it is across the grain.
        across: Length,
        /// The roll.
        width: Length,
        /// The least roll on which it fits.
        least: Length,
    },
}

/// Whether these are the bytes of a plot that [`write`] wrote.
pub fn is_ours(bytes: &[u8]) -> bool {
    let begun = bytes.strip_prefix(BEGINS.as_bytes());
    begun.is_some_and(|rest| rest.starts_with(DRAWS.as_bytes()) && rest.ends_with(ENDS.as_bytes()))
}

/// Writes a pattern for a roll of a width: first everything that is drawn, then notches, holes and cut
/// lines. Lines within a piece come before its cut line, so that no piece moves before it is done.
///
/// # Errors
/// A piece is too wide for the roll.
pub fn write(pattern: &PatternFile, width: Length) -> Result<String, HpglError> {
    let boxes: Vec<Rect> = pattern.pieces.iter().map(|p| bounds_of(&p.cut)).collect();
    for (piece, bounds) in pattern.pieces.iter().zip(&boxes) {
        let least = Length::mm(bounds.width()) + APART * 2.0;
        if least > width {
            return Err(HpglError::TooWide {
                piece: piece.title(),
                across: Length::mm((bounds.width() * 10.0).round() / 10.0),
                width,
                least: Length::mm(least.to_mm().ceil()),
            });
        }
    }
    let (moves, _) = arrange(&boxes, width);
    let mut out = Plot {
        text: BEGINS.to_owned(),
        width,
    };
    let each = || pattern.pieces.iter().zip(&moves);
    for (piece, by) in each() {
        out.text.push_str(DRAWS);
        drawn(&mut out, piece, *by);
    }
    for (piece, by) in each() {
        out.text.push_str(CUTS);
        cut(&mut out, piece, *by);
    }
    out.text.push_str(ENDS);
    Ok(out.text)
}

fn drawn(out: &mut Plot, piece: &Piece, by: Vec2) {
    for sewn in &piece.sewn {
        out.line(&sewn.line, sewn.closed, by);
    }
    for inner in &piece.inner {
        out.line(&inner.line, false, by);
    }
    for (a, b) in piece.grain.into_iter().chain(piece.mirror) {
        out.line(&[a, b], false, by);
    }
    let not_cut = piece.notches.iter().filter(|n| n.kind == NotchKind::Drawn);
    for (a, b) in not_cut.flat_map(|n| n.cuts()) {
        out.line(&[a, b], false, by);
    }
    for drill in &piece.drills {
        for arm in [Vec2::new(CROSS.to_mm(), 0.0), Vec2::new(0.0, CROSS.to_mm())] {
            out.line(&[drill.at - arm, drill.at + arm], false, by);
        }
    }
}

fn cut(out: &mut Plot, piece: &Piece, by: Vec2) {
    let notches = piece.notches.iter().filter(|n| n.kind != NotchKind::Drawn);
    for (a, b) in notches.flat_map(|n| n.cuts()) {
        out.line(&[a, b], false, by);
    }
    for ring in piece.cutouts.iter().chain([&piece.cut]) {
        out.line(ring, true, by);
    }
}

/// What is plotted so far, and how wide the roll is.
struct Plot {
    text: String,
    width: Length,
}

impl Plot {
    /// A line with the pen down. The piece is turned by a quarter, so that its grain runs along the roll,
    /// and not mirrored.
    fn line(&mut self, points: &[Point], closed: bool, by: Vec2) {
        let again = points.first().filter(|_| closed);
        for (k, p) in points.iter().chain(again).enumerate() {
            self.text.push_str(match k {
                0 => "PU",
                1 => ";PD",
                _ => ",",
            });
            let at = *p + by;
            put_steps(&mut self.text, at.y, STEPS);
            self.text.push(',');
            put_steps(&mut self.text, self.width.to_mm() - at.x, STEPS);
        }
        self.text.push_str(";\n");
    }
}
