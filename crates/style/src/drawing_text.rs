//! Writing a drawing down as SVG: nothing but the lines that were understood.
//!
//! A maker's file may hold anything. What is kept beside a style is written here from what was read, so that no byte of
//! the file itself is kept, served or opened again.

use std::fmt::Write;

use crate::drawing::{self, Drawing, DrawnStep, LARGEST_DRAWING, Spot};
use crate::report::{Diagnostic, Report};

/// Round the lines, in millimetres.
const MARGIN_MM: f64 = 2.0;

/// Reads a drawing of the maker's own; `file` is the name shown in messages.
///
/// # Errors
/// The first problem with its line and column, and what would be right.
pub fn read_drawing(file: &str, text: &str) -> Result<Drawing, Report> {
    if text.len() as u64 > LARGEST_DRAWING {
        let message = format!(
            "the drawing has {} bytes; at most {LARGEST_DRAWING} are read",
            text.len()
        );
        let problem = Diagnostic::whole_file(file.to_owned(), "style::too-large", message);
        return Err(Report::one(
            problem.hint("lines are all that is read: simplify the drawing"),
        ));
    }
    drawing::read(file, text).map_err(|problem| Report::one(*problem))
}

impl Drawing {
    /// The drawing as an SVG file, one unit to the millimetre. Read again it is the same drawing to a thousandth.
    #[must_use]
    pub fn text(&self) -> String {
        let mut paths = String::new();
        let mut low = [f64::INFINITY; 2];
        let mut high = [f64::NEG_INFINITY; 2];
        let mut put = |out: &mut String, step: &str, spots: &[Spot]| {
            out.push_str(step);
            for spot in spots {
                for (axis, along) in spot.iter().enumerate() {
                    let mm = rounded(along.to_mm());
                    if let (Some(low), Some(high)) = (low.get_mut(axis), high.get_mut(axis)) {
                        *low = low.min(mm);
                        *high = high.max(mm);
                    }
                    // Writing into a text cannot fail.
                    let _ = write!(out, " {mm}");
                }
            }
        };
        for line in &self.lines {
            paths.push_str("    <path d=\"");
            put(&mut paths, "M", &[line.from]);
            for step in &line.steps {
                match step {
                    DrawnStep::Straight(to) => put(&mut paths, " L", &[*to]),
                    DrawnStep::Curve(one, other, to) => put(&mut paths, " C", &[*one, *other, *to]),
                }
            }
            if line.closed {
                paths.push_str(" Z");
            }
            paths.push_str("\"/>\n");
        }
        let [left, top] = low.map(|mm| rounded(mm - MARGIN_MM));
        let [wide, tall] = [0, 1].map(|axis: usize| {
            let of = |ends: &[f64; 2]| ends.get(axis).copied().unwrap_or_default();
            rounded(of(&high) - of(&low) + 2.0 * MARGIN_MM)
        });
        format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"{left} {top} {wide} {tall}\" width=\"{wide}mm\" height=\"{tall}mm\">\n  \
             <g fill=\"none\" stroke=\"#000\" stroke-width=\"0.6\">\n{paths}  </g>\n</svg>\n"
        )
    }
}

/// To a thousandth of a millimetre; never "-0".
fn rounded(mm: f64) -> f64 {
    let rounded = (mm * 1000.0).round() / 1000.0;
    if rounded == 0.0 { 0.0 } else { rounded }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::drawing::DrawnLine;
    use proptest::prelude::*;
    use trade::Length;

    #[test]
    fn only_lines_are_kept() {
        let text = "<?xml version=\"1.0\"?><!-- secret --><svg xmlns=\"http://www.w3.org/2000/svg\" data-x=\"secret\">\
                    <title>secret</title><g id=\"secret\" style=\"fill:secret\"><path class=\"secret\" d=\"M0 0 h10 v5 z\"/></g></svg>";
        let drawing = read_drawing("a.svg", text).unwrap();
        let written = drawing.text();
        assert!(!written.contains("secret"), "{written}");
        assert!(
            written.contains("d=\"M 0 0 L 10 0 L 10 5 L 0 0 Z\""),
            "{written}"
        );
        assert!(written.contains("viewBox=\"-2 -2 14 9\""), "{written}");
        assert_eq!(read_drawing("a.svg", &written).unwrap(), drawing);
    }

    #[test]
    fn what_is_too_large_is_not_read() {
        let text = "x".repeat(300_000);
        let report = read_drawing("a.svg", &text).unwrap_err();
        assert_eq!(report.problems[0].code, "style::too-large");
    }

    fn spot() -> impl Strategy<Value = Spot> {
        [-900.0..900.0f64, -900.0..900.0f64].prop_map(|at| at.map(Length::mm))
    }

    proptest! {
        #[test]
        fn what_is_written_reads_the_same(
            from in spot(),
            steps in prop::collection::vec((spot(), spot(), spot(), any::<bool>()), 1..8),
        ) {
            let step = |(a, b, c, straight)| match straight {
                true => DrawnStep::Straight(c),
                false => DrawnStep::Curve(a, b, c),
            };
            let steps = steps.into_iter().map(step).collect();
            let drawing = Drawing { lines: vec![DrawnLine { from, steps, closed: false }] };
            let text = drawing.text();
            let read = read_drawing("a.svg", &text).unwrap();
            prop_assert_eq!(read.lines.len(), 1);
            for (a, b) in read.lines[0].steps.iter().zip(&drawing.lines[0].steps) {
                for axis in 0..2 {
                    prop_assert!((a.end()[axis] - b.end()[axis]).abs() < Length::mm(0.001));
                }
            }
            prop_assert_eq!(read.text(), text);
        }
    }
}
