//! The rows on paper: needle thread above, through every ply, under thread below.

use crate::dimension::unit;
use geometry::{BezPath, Point, Vec2, left_of};
use trade::stitch::FaceLook;
use trade::{Colour, Length};

use super::model::{RowOf, Section, SectionRow, Wrap};
use super::scale::Scale;
use super::section_size::Look;
use crate::palette::{INK, PAPER};
use crate::sheet::{Layer, Stroke, open};

pub(super) fn threads(section: &Section, scale: &Scale, look: &Look) -> Layer {
    let mut layer = Layer::named("rows");
    cover(&mut layer, section, scale, look);
    for row in &section.rows {
        let name = match row.row {
            RowOf::Numbered(number) => format!("row:{}:{number}", section.seam.code()),
            RowOf::Joining | RowOf::Overedge => format!("seam:{}", section.seam.code()),
        };
        thread(&mut layer, &name, row, scale, look);
    }
    layer
}

/// As thick on paper as it is, but never too thin to be seen.
fn drawn(width: Length, scale: &Scale, look: &Look) -> f64 {
    scale.mm(width.to_mm() * 0.8).max(look.thread)
}

fn thread(layer: &mut Layer, name: &str, row: &SectionRow, scale: &Scale, look: &Look) {
    let (from, to) = (scale.at(row.from), scale.at(row.to));
    let Some(down) = unit(to - from) else { return };
    let needle = drawn(row.needle_width, scale, look);
    let under = drawn(row.under_width, scale, look);
    let across = left_of(down);
    // Joining rows lie between plies: no room for more than the ends of their threads.
    let shows = row.wrap.is_some() || matches!(row.row, RowOf::Numbered(_)) && down.x.abs() < 0.5;
    let reach = |width: f64| {
        if shows {
            across * (width * 1.7)
        } else {
            across * (width * 0.8)
        }
    };
    if let Some(wrap) = row.wrap {
        loops(layer, name, row, wrap, scale, under);
    }
    line(layer, name, open(&[from, to]), row.needle, needle * 0.75);
    let (a, b) = (from - down * needle * 0.35, to + down * under * 0.35);
    bar(layer, name, a, reach(needle), row.needle, needle);
    let chained = row.stitch.is_some_and(|s| {
        matches!(
            s.looks().under_face,
            FaceLook::Chain | FaceLook::ChainAndOveredge
        )
    });
    if chained && shows {
        chain(
            layer,
            name,
            b + down * under * 0.5,
            across,
            down,
            row.under,
            under,
        );
    } else {
        bar(layer, name, b, reach(under), row.under, under);
    }
}

fn bar(layer: &mut Layer, name: &str, at: Point, reach: Vec2, colour: Colour, width: f64) {
    line(layer, name, open(&[at - reach, at + reach]), colour, width);
}

/// A loop of the under thread around the next.
fn chain(
    layer: &mut Layer,
    name: &str,
    at: Point,
    across: Vec2,
    down: Vec2,
    colour: Colour,
    width: f64,
) {
    let (a, b) = (across * (width * 2.1), down * (width * 0.75));
    let k = 0.5523;
    let mut path = BezPath::new();
    path.move_to(at + a);
    path.curve_to(at + a + b * k, at + a * k + b, at + b);
    path.curve_to(at - a * k + b, at - a + b * k, at - a);
    path.curve_to(at - a - b * k, at - a * k - b, at - b);
    path.curve_to(at + a * k - b, at + a - b * k, at + a);
    path.close_path();
    line(layer, name, path, colour, width * 0.8);
}

/// The threads of an overedge around the cut ends.
fn loops(layer: &mut Layer, name: &str, row: &SectionRow, wrap: Wrap, scale: &Scale, width: f64) {
    let out = (wrap.edge - wrap.needle).signum();
    let off = width / scale.times / 2.0;
    let (top, foot) = (wrap.top + off, wrap.bottom - off);
    let edge = wrap.edge + out * off;
    let round = (top - foot) / 2.0;
    let bow = out * round * 0.9;
    let at = |x: f64, y: f64| scale.at(Point::new(x, y));
    let mut path = BezPath::new();
    path.move_to(at(wrap.needle, top));
    path.line_to(at(edge, top));
    path.curve_to(at(edge + bow, top), at(edge + bow, foot), at(edge, foot));
    path.line_to(at(wrap.needle, foot));
    if (wrap.needle - row.from.x).abs() > 0.1 {
        // A safety stitch: its overedge has a needle of its own.
        let needle = open(&[at(wrap.needle, top), at(wrap.needle, foot)]);
        line(layer, name, needle, row.needle, width * 0.75);
    }
    line(layer, name, path, row.under, width * 0.85);
}

/// Where the threads of the rows lie on the cloth, as lines on the page.
pub(super) fn threads_on_faces(section: &Section, scale: &Scale, look: &Look) -> Vec<[Point; 2]> {
    let mut found = Vec::new();
    for row in &section.rows {
        let (from, to) = (scale.at(row.from), scale.at(row.to));
        let Some(down) = unit(to - from) else {
            continue;
        };
        let (needle, under) = (row.needle_width, row.under_width);
        for (at, away, width) in [(from, -down, needle), (to, down, under)] {
            let width = drawn(width, scale, look);
            let reach = left_of(down) * (width * 2.1);
            // On the cloth and one thickness off it.
            for at in [at, at + away * (width * 1.2)] {
                found.push([at - reach, at + reach]);
            }
        }
    }
    for pair in section.rows.windows(2) {
        if covers(&pair[0]) && covers(&pair[1]) {
            let below = Vec2::new(0.0, drawn(pair[0].under_width, scale, look) * 1.2);
            found.push([scale.at(pair[0].to) + below, scale.at(pair[1].to) + below]);
        }
    }
    found
}

fn covers(row: &SectionRow) -> bool {
    row.stitch
        .is_some_and(|s| s.looks().under_face == FaceLook::CoverLoops)
}

/// The looper thread that lies across between two needle rows.
fn cover(layer: &mut Layer, section: &Section, scale: &Scale, look: &Look) {
    for pair in section.rows.windows(2) {
        if covers(&pair[0]) && covers(&pair[1]) {
            let width = drawn(pair[0].under_width, scale, look);
            let down = Vec2::new(0.0, width * 0.35);
            let (a, b) = (scale.at(pair[0].to) + down, scale.at(pair[1].to) + down);
            let name = format!("row:{}:1", section.seam.code());
            line(layer, &name, open(&[a, b]), pair[0].under, width);
        }
    }
}

/// A thread: in its own colour, edged so that pale yarn shows on paper and dark yarn on cloth.
fn line(layer: &mut Layer, name: &str, path: BezPath, colour: Colour, width: f64) {
    let edge = if luminous(colour) { INK } else { PAPER };
    let round = |colour: Colour, width: f64| Stroke {
        round: true,
        ..Stroke::plain(colour, Length::mm(width))
    };
    layer.line(None, path.clone(), round(edge, width + 0.16));
    layer.line(Some(name), path, round(colour, width));
}

fn luminous(colour: Colour) -> bool {
    let [r, g, b] = [colour.red, colour.green, colour.blue].map(f64::from);
    0.299 * r + 0.587 * g + 0.114 * b > 70.0
}
