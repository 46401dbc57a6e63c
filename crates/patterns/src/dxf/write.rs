//! A pattern as a DXF file.

use std::collections::{BTreeMap, BTreeSet};

use geometry::{Point, Rect, Vec2, bounds_of, left_of};
use trade::{Angle, Length};

use super::layer;
use super::writer::{Layer, Writer};
use crate::grid::{Key, on_grid};
use crate::model::{Copies, LineKind, Notch, NotchKind, PatternFile, Piece};
use crate::sheet::{APART, arrange};
use crate::words::{Mark, say};

/// The layers, each with a colour that tells it from its neighbours on a screen.
const LAYERS: &[Layer] = &[
    (layer::CUT, 7),
    (layer::TURN, 1),
    (layer::CURVE, 8),
    (layer::NOTCH, 1),
    (layer::GRADE_REFERENCE, 8),
    (layer::MIRROR, 6),
    (layer::GRAIN, 3),
    (layer::INTERNAL, 4),
    (layer::STRIPE, 8),
    (layer::PLAID, 8),
    (layer::CUTOUT, 7),
    (layer::DRILL, 1),
    (layer::SEW, 5),
    (layer::NOTE, 8),
    (80, 1),
    (81, 1),
    (82, 1),
    (83, 1),
];

/// The words of a piece, and names beside lines.
const LETTERS: Length = Length::mm(6.0);
const SMALL_LETTERS: Length = Length::mm(2.0);

/// From one line of words to the next, in letter heights.
const LEADING: f64 = 1.6;

/// The width of the sheet on which the blocks are shown.
const SHEET: Length = Length::mm(2500.0);

/// The longest name of a block in release 12.
const LONGEST_NAME: usize = 31;

/// Writes a pattern: each piece in each size as a block, all sizes of a piece shown over each other.
pub fn write(pattern: &PatternFile) -> String {
    let names = block_names(&pattern.pieces);
    let (places, extent) = places(&pattern.pieces);
    let mut w = Writer::default();
    w.head(extent, LAYERS);
    w.section("BLOCKS", |w| {
        for (piece, name) in pattern.pieces.iter().zip(&names) {
            w.block(name, |w| block(w, piece));
        }
    });
    w.section("ENTITIES", |w| {
        for (name, at) in names.iter().zip(&places) {
            w.insert(name, *at);
        }
        let size = &pattern.sample_size;
        let texts = [
            ("Style Name", pattern.style.as_str()),
            ("Sample Size", size),
            ("Units", "METRIC"),
            ("Author", &pattern.author),
            ("Creation Date", &pattern.date),
        ];
        let said = texts.iter().filter(|(_, value)| !value.is_empty());
        for (k, (key, value)) in said.enumerate() {
            let down = LETTERS.to_mm() * LEADING * (k + 1) as f64;
            let at = Point::new(APART.to_mm(), -down);
            let words = format!("{key}: {value}");
            w.text(layer::CUT, at, LETTERS, Angle::ZERO, &words);
        }
    });
    w.done()
}

/// Where each block is shown: all sizes of a piece at one place.
fn places(pieces: &[Piece]) -> (Vec<Point>, Rect) {
    let id = |p: &Piece| (p.category.clone(), p.name.clone());
    let mut numbers = BTreeMap::new();
    let mut boxes: Vec<Rect> = Vec::new();
    let mut number_of = Vec::new();
    for piece in pieces {
        let n = *numbers.entry(id(piece)).or_insert(boxes.len());
        let new = bounds_of(&piece.cut);
        match boxes.get_mut(n) {
            Some(all) => *all = all.union(new),
            None => boxes.push(new),
        }
        number_of.push(n);
    }
    let (moves, sheet) = arrange(&boxes, SHEET);
    let place = |n: &usize| moves.get(*n).map_or(Point::ORIGIN, |m| m.to_point());
    let below = LETTERS.to_mm() * LEADING * 6.0;
    let extent = Rect::new(0.0, -below, sheet.x, sheet.y);
    (number_of.iter().map(place).collect(), extent)
}

/// A name for each block that release 12 allows: "FRONT_32X32".
fn block_names(pieces: &[Piece]) -> Vec<String> {
    let mut used = BTreeSet::new();
    pieces
        .iter()
        .map(|piece| {
            let plain = |text: &str| -> String {
                let letters = text.chars().map(|c| match c {
                    c if c.is_ascii_alphanumeric() => c.to_ascii_uppercase(),
                    _ => '_',
                });
                letters.collect()
            };
            let first = if piece.category.is_empty() {
                &piece.name
            } else {
                &piece.category
            };
            let (stem, size) = (plain(first), plain(&piece.size));
            let numbered = (1_usize..).map(|n| {
                if n == 1 {
                    String::new()
                } else {
                    format!("-{n}")
                }
            });
            let name = numbered
                .map(|number| {
                    let tail: String = format!("_{size}{number}");
                    let room = LONGEST_NAME.saturating_sub(tail.len());
                    let stem: String = stem.chars().take(room.max(1)).collect();
                    let name = format!("{stem}{tail}");
                    let over = name.len().saturating_sub(LONGEST_NAME);
                    // What does not fit is taken from before the number, which makes it unlike the others.
                    let (head, _) = name.split_at(name.len() - number.len() - over);
                    format!("{head}{number}")
                })
                .find(|name| !used.contains(name))
                .unwrap_or_default();
            used.insert(name.clone());
            name
        })
        .collect()
}

fn block(w: &mut Writer, piece: &Piece) {
    piece_texts(w, piece);
    w.path(layer::CUT, &piece.cut, true);
    for ring in &piece.cutouts {
        w.path(layer::CUTOUT, ring, true);
    }
    if let Some((a, b)) = piece.mirror {
        w.path(layer::MIRROR, &[a, b], false);
    }
    if let Some((a, b)) = piece.grain {
        w.path(layer::GRAIN, &[a, b], false);
    }
    for sewn in &piece.sewn {
        w.path(layer::SEW, &sewn.line, sewn.closed);
        if let Some(at) = sewn.line.first().filter(|_| !sewn.name.is_empty()) {
            name(w, *at, Mark::Edge, Copies::All, &sewn.name);
        }
    }
    for start in &piece.edge_starts {
        name(w, start.at, Mark::Edge, Copies::All, &start.name);
    }
    inner_lines(w, piece);
    points(w, piece);
    for notch in &piece.notches {
        write_notch(w, notch);
    }
    for drill in &piece.drills {
        w.point(layer::DRILL, drill.at);
        if !drill.name.is_empty() || drill.on != Copies::All {
            name(w, drill.at, Mark::Drill, drill.on, &drill.name);
        }
    }
    for note in &piece.texts {
        w.text(
            layer::NOTE,
            note.at,
            SMALL_LETTERS,
            Angle::ZERO,
            &note.words,
        );
    }
}

fn name(w: &mut Writer, at: Point, mark: Mark, on: Copies, name: &str) {
    let words = say(mark, on, name);
    w.text(layer::NOTE, at, SMALL_LETTERS, Angle::ZERO, &words);
}

fn piece_texts(w: &mut Writer, piece: &Piece) {
    let mut lines = vec![("Piece Name", piece.name.clone())];
    lines.push(("Size", piece.size.clone()));
    lines.push(("Quantity", format!("{},{}", piece.as_drawn, piece.mirrored)));
    lines.push(("Category", piece.category.clone()));
    lines.push(("Material", piece.material.clone()));
    lines.extend(piece.notes.iter().map(|note| ("Annotation", note.clone())));
    let down = -left_of(Vec2::from_angle(piece.words_along.to_rad()));
    let said = lines.iter().filter(|(_, value)| !value.is_empty());
    for (k, (key, value)) in said.enumerate() {
        let at = piece.words_at + down * (LETTERS.to_mm() * LEADING * k as f64);
        let words = format!("{key}: {value}");
        w.text(layer::CUT, at, LETTERS, piece.words_along, &words);
    }
}

fn inner_lines(w: &mut Writer, piece: &Piece) {
    for inner in &piece.inner {
        let closed = inner.line.len() > 3 && inner.line.first() == inner.line.last();
        let points = match inner.line.split_last() {
            Some((_, before)) if closed => before,
            _ => &inner.line,
        };
        w.path(layer::of_line(inner.kind), points, closed);
        let kind = match inner.kind {
            LineKind::Fold | LineKind::Placement => inner.kind,
            _ => LineKind::Internal,
        };
        let plain = kind == LineKind::Internal && inner.name.is_empty() && inner.on == Copies::All;
        if let Some(at) = inner.line.first().filter(|_| !plain) {
            name(w, *at, Mark::Line(kind), inner.on, &inner.name);
        }
    }
}

/// Turn points and named places, then a curve point at every other vertex.
fn points(w: &mut Writer, piece: &Piece) {
    let mut written = BTreeSet::new();
    for point in &piece.points {
        if point.corner {
            w.point(layer::TURN, point.at);
            written.insert(Key::of(point.at));
        }
        if !point.name.is_empty() {
            name(w, point.at, Mark::Point, Copies::All, &point.name);
        }
    }
    let lines = piece.sewn.iter().map(|s| &s.line).chain([&piece.cut]);
    for at in lines.flatten() {
        if written.insert(Key::of(*at)) {
            w.point(layer::CURVE, *at);
        }
    }
}

fn write_notch(w: &mut Writer, notch: &Notch) {
    let layer = layer::of_notch(notch.kind);
    let mark = match (notch.kind == NotchKind::Drawn, notch.double) {
        (true, true) => Mark::DrawnDoubleNotch,
        (true, false) => Mark::DrawnNotch,
        (false, true) => Mark::DoubleNotch,
        (false, false) => Mark::Notch,
    };
    if notch.kind == NotchKind::Drawn {
        w.notch(layer, notch.at, notch.depth, notch.into);
        name(w, notch.at, mark, Copies::All, &notch.name);
        for (a, b) in notch.cuts() {
            w.path(layer, &[on_grid(a), on_grid(b)], false);
        }
        return;
    }
    for (at, _) in notch.cuts() {
        w.notch(layer, at, notch.depth, notch.into);
    }
    if notch.double || !notch.name.is_empty() {
        name(w, notch.at, mark, Copies::All, &notch.name);
    }
}
