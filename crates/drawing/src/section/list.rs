//! What the list below a section says.

use geometry::Point;
use geometry::tolerance::ROUNDING;
use trade::{Colour, Length, trimmed};
use words::{Figure, Given, Said, Words, key, say};

use super::model::{RowOf, Section, SectionPly, SectionRow};
use super::scale;
use super::section_size::{LIST_LINE, LIST_TYPE};
use crate::lettering::centred;
use crate::palette::{INK, QUIET};
use crate::sheet::{Anchor, Layer, Text};

/// What the list says, in words.
pub(super) fn list(lines: &[(Given, Colour)], (left, top): (f64, f64), words: &Words) -> Layer {
    let mut layer = Layer::named("list");
    for (k, (said, colour)) in lines.iter().enumerate() {
        layer.text(
            None,
            Text {
                at: Point::new(left, top + LIST_LINE * k as f64),
                anchor: Anchor::Start,
                colour: *colour,
                ..centred(&words.putting(said), LIST_TYPE, Point::ORIGIN)
            },
        );
    }
    layer
}

/// What the list says, a line each: rows, plies, and how large everything is drawn.
pub(super) fn lines(section: &Section, times: f64) -> Vec<(Given, Colour)> {
    let rows = section.rows.iter().filter_map(|row| row_line(section, row));
    let plies = section.plies.iter().map(ply_line);
    let cloth: Said = if (section.thickened - 1.0).abs() < ROUNDING {
        key::SECTION_CLOTH_TRUE.into()
    } else {
        let times = Figure::new(section.thickened, 1, "");
        say::SectionClothThickened { times }.into()
    };
    let times = trimmed(times, 0, 1);
    let drawn = if scale::cut(section).is_some() {
        say::SectionDrawnBroken { cloth, times }.into()
    } else {
        say::SectionDrawn { cloth, times }.into()
    };
    let inked = rows.chain(plies).map(|line| (line, INK));
    let mut lines: Vec<(Given, Colour)> = inked.chain([(drawn, QUIET)]).collect();
    // An overedge around each of two edges is one row, and two plies alike are one line.
    lines.dedup();
    lines
}

fn ply_line(ply: &SectionPly) -> Given {
    let mut line = Given::from(ply.name);
    if ply.allowance > Length::ZERO {
        let allowance = ply.allowance.show_mm();
        line = say::SectionPlyWithAllowance {
            allowance,
            ply: line,
        }
        .into();
    }
    match ply.edge {
        Some(edge) => say::SectionPlyWithEdge { edge, ply: line }.into(),
        None => line,
    }
}

fn row_line(section: &Section, row: &SectionRow) -> Option<Given> {
    let plies = section.plies_at(row);
    match (row.row, section.trim_at(row)) {
        (RowOf::Numbered(number), None) => Some(
            say::SectionRow {
                number,
                plies,
                row: row.told.clone()?,
            }
            .into(),
        ),
        (RowOf::Numbered(number), Some(trim)) => Some(
            say::SectionRowTrim {
                number,
                plies,
                row: row.told.clone()?,
                trim,
            }
            .into(),
        ),
        (RowOf::Joining, _) => Some(say::SectionJoiningRow { plies }.into()),
        (RowOf::Overedge, _) => None,
    }
}
