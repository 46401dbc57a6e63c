//! Ink and line weights shared by all drawings, and the [`Pen`] that keeps them true on paper.
//!
//! Lines are near-black or grey on white. Colour is reserved for what has a colour in the workroom:
//! yarn, cloth and findings. The weights step by about a third, as technical lettering pens do, so
//! that two neighbours are told apart even on a poor printer.

use std::ops::RangeInclusive;

use trade::{Colour, Length};

use crate::sheet::Stroke;

/// Scales at which anything could be drawn.
const SCALES: RangeInclusive<f64> = 1e-4..=1e4;

/// Outlines and words: a warm near-black, softer than full black beside coloured yarn.
pub const INK: Colour = Colour::rgb(0x22, 0x20, 0x1e);
/// Construction: dimension lines, leaders, placements, the second thing one reads.
pub const CONSTRUCTION: Colour = Colour::rgb(0x6e, 0x6a, 0x66);
/// Part names and other quiet words; still four and a half to one against white.
pub const QUIET: Colour = Colour::rgb(0x75, 0x71, 0x6c);
/// Pieces in diagrams, set off from the page without pretending to be cloth.
pub const TINT: Colour = Colour::rgb(0xf4, 0xf2, 0xee);
/// A part that lies on another in diagrams.
pub const TINT_UPPER: Colour = Colour::rgb(0xea, 0xe7, 0xe1);
/// The page, behind numbers that stand on a line.
pub const PAPER: Colour = Colour::WHITE;

/// Thinnest line that every office printer still prints whole.
pub const HAIRLINE: Length = Length::mm(0.18);
/// The line a seam is sewn on.
pub const SEWN_LINE: Length = Length::mm(0.25);
/// Notches: between sewn and cut line, so a notch is not taken for either.
pub const NOTCH: Length = Length::mm(0.35);
/// The line the knife follows: the heaviest on the sheet.
pub const CUT_LINE: Length = Length::mm(0.5);

/// Headings of a piece.
pub const TYPE_HEADING: Length = Length::mm(3.2);
/// Words and figures one has to read at the table.
pub const TYPE_WORDS: Length = Length::mm(2.6);
/// Figures beside edges: the smallest type used.
pub const TYPE_FIGURES: Length = Length::mm(2.3);

/// Turns printed sizes into sizes on a drawing that is shrunk when printed.
///
/// A piece is drawn true to scale and printed at, say, 1:5; its lines and words must then be drawn
/// five times as large to come out as stated.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pen {
    enlarged: f64,
}

impl Pen {
    /// For drawings printed at their own size.
    pub const FULL: Pen = Pen { enlarged: 1.0 };

    /// For drawings printed at this scale: 0.2 for 1:5. A scale that is none (zero, negative, not
    /// finite) counts as full size.
    pub fn for_scale(scale: f64) -> Pen {
        let usable = scale.is_finite() && SCALES.contains(&scale);
        Pen {
            enlarged: if usable { 1.0 / scale } else { 1.0 },
        }
    }

    /// A pen whose lines and words print so many times as large. A factor that is none counts as one.
    #[must_use]
    pub fn enlarged(self, times: f64) -> Pen {
        let usable = times.is_finite() && (0.1..=100.0).contains(&times);
        Pen {
            enlarged: self.enlarged * if usable { times } else { 1.0 },
        }
    }

    /// The length on the drawing that prints as `printed`.
    pub fn length(self, printed: Length) -> Length {
        printed * self.enlarged
    }

    /// The millimetres on the drawing that print as so many millimetres.
    pub fn mm(self, printed_mm: f64) -> f64 {
        printed_mm * self.enlarged
    }

    /// A full line that prints as thick as stated.
    pub fn stroke(self, colour: Colour, printed: Length) -> Stroke {
        Stroke::plain(colour, self.length(printed))
    }

    /// The fine dashes of a placement or of something that lies below.
    pub fn fine_dashes(self, colour: Colour, printed: Length) -> Stroke {
        self.stroke(colour, printed)
            .dashed(self.length(Length::mm(1.0)), self.length(Length::mm(0.7)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_print_as_stated() {
        let pen = Pen::for_scale(0.2);
        let drawn = pen.stroke(INK, CUT_LINE).width;
        assert!((drawn.to_mm() * 0.2 - 0.5).abs() < 1e-12);
    }

    #[test]
    fn a_scale_that_is_none_counts_as_full_size() {
        for scale in [0.0, -1.0, f64::NAN, f64::INFINITY, 1e-300] {
            assert_eq!(Pen::for_scale(scale), Pen::FULL);
        }
    }
}
