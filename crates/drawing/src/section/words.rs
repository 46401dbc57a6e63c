//! What the list below a section says.

use geometry::Point;
use geometry::tolerance::ROUNDING;
use trade::{Colour, Length};

use super::model::{RowOf, Section, SectionPly, SectionRow};
use super::scale;
use super::section_size::{LIST_LINE, LIST_TYPE};
use crate::lettering::centred;
use crate::palette::{INK, QUIET};
use crate::sheet::{Anchor, Layer, Text};

/// The rows and the plies in words.
pub(super) fn list(section: &Section, (left, top): (f64, f64), times: f64) -> Layer {
    let mut layer = Layer::named("list");
    for (k, (words, colour)) in lines(section, times).into_iter().enumerate() {
        layer.text(
            None,
            Text {
                at: Point::new(left, top + LIST_LINE * k as f64),
                anchor: Anchor::Start,
                colour,
                ..centred(&words, LIST_TYPE, Point::ORIGIN)
            },
        );
    }
    layer
}

/// What the list says, a line each: rows, plies, and how large everything is drawn.
pub(super) fn lines(section: &Section, times: f64) -> Vec<(String, Colour)> {
    let rows = section.rows.iter().filter_map(|row| row_line(section, row));
    let plies = section.plies.iter().map(ply_line);
    let cloth = if (section.thickened - 1.0).abs() < ROUNDING {
        "cloth at its true thickness".to_owned()
    } else {
        format!("cloth {:.1} times as thick as it is", section.thickened)
    };
    let broken = if scale::cut(section).is_some() {
        "; a plain stretch left out"
    } else {
        ""
    };
    let drawn = format!("drawn {times:.1} : 1, {cloth}{broken}");
    let inked = rows.chain(plies).map(|line| (line, INK));
    let mut lines: Vec<(String, Colour)> = inked.chain([(drawn, QUIET)]).collect();
    // An overedge around each of two edges is one row, and two plies alike are one line.
    lines.dedup();
    lines
}

fn ply_line(ply: &SectionPly) -> String {
    let beyond = if ply.allowance > Length::ZERO {
        format!(", allowance {}", ply.allowance.show_mm())
    } else {
        String::new()
    };
    let edge = if ply.edge.is_empty() { "" } else { ", " };
    format!("{}{beyond}{edge}{}", ply.name, ply.edge)
}

fn row_line(section: &Section, row: &SectionRow) -> Option<String> {
    let plies = section.plies_at(row);
    let word = if plies == 1 { "ply" } else { "plies" };
    let trim = section.trim_at(row).map(|name| format!("{name} and "));
    let trim = trim.unwrap_or_default();
    match row.row {
        RowOf::Numbered(number) => Some(format!(
            "row {number}: {} · {trim}{plies} {word}",
            row.words
        )),
        RowOf::Joining => Some(format!("grey: joining row, {plies} {word}")),
        RowOf::Overedge => None,
    }
}
