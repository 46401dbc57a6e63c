//! The rows of a section: those of the style, and those its construction has of itself.

use geometry::Point;
use sewing::Garment;
use style::{RowSpec, Seam};
use trade::yarn::yarn_diameter;
use trade::{Colour, Length, StitchType};

use super::lie::{AIR, FARTHEST, Lie};
use super::model::{RowOf, SectionRow, Wrap, heights};
use crate::palette::CONSTRUCTION;

/// Rows nearer to the seam line than this join the plies.
const JOINING: f64 = 0.5;
/// Thread of rows whose yarn the style does not state.
const UNSTATED: Length = Length::mm(0.3);

pub(super) fn rows(garment: &Garment, seam: &Seam, lie: &Lie) -> Vec<SectionRow> {
    let mut joined = false;
    let mut wrapped = false;
    let mut out = Vec::new();
    for (index, spec) in seam.rows.iter().enumerate() {
        let offset = spec.offset.to_mm();
        if !(-FARTHEST..=FARTHEST).contains(&offset) {
            continue;
        }
        let joins = lie
            .joining
            .filter(|_| offset < JOINING || spec.stitch.is_overedge());
        let Some((from, to)) = joins.or_else(|| through(lie, -offset)) else {
            continue;
        };
        joined |= joins.is_some();
        let wrap = lie
            .wraps
            .first()
            .filter(|_| joins.is_some() && spec.stitch.is_overedge() && lie.wraps.len() == 1)
            .map(|wrap| own_wrap(spec.stitch, *wrap, from.x));
        wrapped |= wrap.is_some();
        out.push(SectionRow {
            wrap,
            ..stated(garment, index + 1, spec, (from, to))
        });
    }
    if let Some((from, to)) = lie.joining.filter(|_| !joined) {
        out.push(unstated(RowOf::Joining, from, to, None));
    }
    for wrap in lie.wraps.iter().filter(|_| !wrapped) {
        let from = Point::new(wrap.needle, wrap.top + AIR);
        let to = Point::new(wrap.needle, wrap.bottom - AIR);
        out.push(unstated(RowOf::Overedge, from, to, Some(*wrap)));
    }
    out
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

/// The needle line through all cloth at `x`.
fn through(lie: &Lie, x: f64) -> Option<(Point, Point)> {
    let (top, foot) = heights(&lie.plies, x)?;
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
    let yarns = if needle_name == under_name {
        needle_name
    } else {
        format!("{needle_name}, under {under_name}")
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
        words: format!("{} · {} · {yarns}", spec.stitch, spec.density),
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
        words: String::new(),
    }
}
