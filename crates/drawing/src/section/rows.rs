//! The rows of a section: those of the style, and those its construction has of itself.

use geometry::Point;
use sewing::Garment;
use style::{RowSpec, Seam};
use trade::yarn::yarn_diameter;
use trade::{Colour, Length, StitchType};
use words::say;

use super::lie::{AIR, FARTHEST, JoinedBy, Lie};
use super::model::{RowOf, SectionRow, Wrap, heights};
use crate::palette::CONSTRUCTION;
use crate::shown_units::system;

/// Rows nearer to the seam line than this lie on it.
const JOINING: f64 = 0.5;
/// Thread of rows whose yarn the style does not state.
const UNSTATED: Length = Length::mm(0.3);

pub(super) fn rows(garment: &Garment, seam: &Seam, lie: &Lie) -> Vec<SectionRow> {
    let (mut joined, mut wrapped) = (false, false);
    let mut out = Vec::new();
    // An overedge joins the plies only where no other row does.
    let plain = seam
        .rows
        .iter()
        .any(|row| on_line(row) && !row.stitch.is_overedge());
    for (index, spec) in seam.rows.iter().enumerate() {
        if !(-FARTHEST..=FARTHEST).contains(&spec.offset.to_mm()) {
            continue;
        }
        let mut push = |line: (Point, Point), wrap: Option<Wrap>| {
            out.push(SectionRow {
                wrap,
                ..stated(garment, index + 1, spec, line)
            });
        };
        let overedge = spec.stitch.is_overedge();
        let joins = lie.joining.filter(|_| match lie.joined_by {
            JoinedBy::RowsOnLine => on_line(spec) || overedge,
            JoinedBy::RowsBeyond => spec.offset.to_mm() <= -JOINING,
        });
        match (lie.wraps.as_slice(), joins) {
            ([wrap], Some(line)) if overedge && !plain => {
                (joined, wrapped) = (true, true);
                push(line, Some(own_wrap(spec.stitch, *wrap, line.0.x)));
            }
            (wraps @ [_, ..], _) if overedge => {
                wrapped = true;
                for wrap in wraps {
                    push(around(wrap), Some(*wrap));
                }
            }
            (_, Some(line)) => {
                joined = true;
                push(line, None);
            }
            (_, None) => {
                if let Some(line) = through(lie, -spec.offset.to_mm()) {
                    push(line, None);
                }
            }
        }
    }
    if let Some((from, to)) = lie.joining.filter(|_| !joined) {
        out.push(unstated(RowOf::Joining, from, to, None));
    }
    for wrap in lie.wraps.iter().filter(|_| !wrapped) {
        let (from, to) = around(wrap);
        out.push(unstated(RowOf::Overedge, from, to, Some(*wrap)));
    }
    out
}

/// Whether a row lies on the seam line.
fn on_line(row: &RowSpec) -> bool {
    row.offset.to_mm().abs() < JOINING
}

/// The needle line of an overedge.
fn around(wrap: &Wrap) -> (Point, Point) {
    let at = |y: f64| Point::new(wrap.needle, y);
    (at(wrap.top + AIR), at(wrap.bottom - AIR))
}

/// An overedge of one needle row joins and wraps at once; others have a needle of their own.
fn own_wrap(stitch: StitchType, wrap: Wrap, joint: f64) -> Wrap {
    match stitch {
        StitchType::S503 | StitchType::S504 | StitchType::S505 => Wrap {
            needle: joint,
            ..wrap
        },
        _ => wrap,
    }
}

/// The needle line at `x`, through all cloth or through what is sewn.
fn through(lie: &Lie, x: f64) -> Option<(Point, Point)> {
    let (top, foot) = heights(&lie.plies, x)?;
    if let Some((from, to)) = lie.sewn {
        return Some((Point::new(x, from), Point::new(x, to)));
    }
    Some((Point::new(x, top + AIR), Point::new(x, foot - AIR)))
}

fn stated(
    garment: &Garment,
    number: usize,
    spec: &RowSpec,
    (from, to): (Point, Point),
) -> SectionRow {
    let yarn = |key: &str| {
        garment
            .collection
            .yarns
            .get(key)
            .map(|y| (y.name.clone(), y.colour, yarn_diameter(y.size)))
    };
    let blank = |key: &str| (key.to_owned(), CONSTRUCTION, UNSTATED);
    let (needle_name, needle, needle_width) = yarn(&spec.yarn).unwrap_or_else(|| blank(&spec.yarn));
    let (under_name, under, under_width) = yarn(&spec.under).unwrap_or_else(|| blank(&spec.under));
    let stitch = spec.stitch.code();
    let density = spec.density.show(system(&garment.collection));
    let told = if needle_name == under_name {
        say::SectionRowOfOneYarn {
            density,
            stitch,
            yarn: needle_name,
        }
        .into()
    } else {
        say::SectionRowOfTwoYarns {
            density,
            needle: needle_name,
            stitch,
            under: under_name,
        }
        .into()
    };
    SectionRow {
        row: RowOf::Numbered(number),
        stitch: Some(spec.stitch),
        from,
        to,
        offset: spec.offset,
        needle,
        under,
        needle_width,
        under_width,
        wrap: None,
        told: Some(told),
    }
}

fn unstated(row: RowOf, from: Point, to: Point, wrap: Option<Wrap>) -> SectionRow {
    let grey = CONSTRUCTION.mixed(Colour::WHITE, 0.35);
    SectionRow {
        row,
        stitch: None,
        from,
        to,
        offset: Length::mm(-from.x),
        needle: grey,
        under: grey,
        needle_width: UNSTATED,
        under_width: UNSTATED,
        wrap,
        told: None,
    }
}
