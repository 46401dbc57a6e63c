//! Cut pieces as pieces of a pattern file.

use std::collections::BTreeSet;

use cutting::{BandCut, CutPiece, CutSize, thinned, thinned_line};
use draft::{InnerKind, PieceId};
use geometry::{Point, Vec2};
use sewing::On;
use trade::{Angle, Length};
use words::Words;

use crate::grid::{Key, line_on_grid, number_on_grid, on_grid, on_grid_angle, ring_on_grid};
use crate::model::{
    Copies, Drill, InnerLine, LineKind, Notch, NotchKind, Piece, SewLine, TurnPoint,
};
use crate::place::place_words;
use crate::wash::BeforeWash;
use crate::words::one_line;

/// How near a line of a file lies to the line of the piece.
pub const WITHIN: Length = Length::mm(0.01);

/// Where the cut line turns by more than this it has a corner; on its curves it turns less at any point.
const CORNER: Angle = Angle::deg(20.0);

/// The cut pieces of one size as pieces of a pattern file, their names and notes in these words.
pub fn from_cut(cut: &CutSize, words: &Words) -> Vec<Piece> {
    let one = |one| piece(one, cut.band_cut, words);
    cut.pieces.iter().map(one).collect()
}

fn piece(cut: &CutPiece, band: BandCut, words: &Words) -> Piece {
    let label = &cut.label;
    let mut notes = vec![words.saying(&label.cut), label.side_in(words)];
    if let Some(edge) = &cut.cloth_edge {
        notes.push(format!("edge {} on the cloth's own edge", edge.edge.code()));
    }
    let wash = BeforeWash::of(&cut.scale);
    notes.extend(wash.notes());
    if let (PieceId::Band, Some(way)) = (cut.piece, band.stated()) {
        notes.push(format!("band: {}", way.word()));
    }
    notes.retain(|note| !note.is_empty());
    let material = if cut.cloth_name.is_empty() {
        cut.cloth.code()
    } else {
        &cut.cloth_name
    };
    let sewn: Vec<SewLine> = cut
        .edges
        .iter()
        .map(|edge| SewLine {
            name: edge.id.code().to_owned(),
            closed: false,
            line: line(&edge.sewn),
        })
        .filter(|edge| edge.line.len() > 1)
        .collect();
    let outline = ring_on_grid(thinned(&cut.cut, WITHIN));
    let mut piece = Piece {
        name: words.say(cut.said()),
        size: label.size.to_string(),
        category: cut.code(),
        material: one_line(material),
        as_drawn: cut.as_drawn,
        mirrored: cut.mirrored,
        notes: notes.iter().map(|note| one_line(note)).collect(),
        words_at: on_grid(label.at),
        words_along: on_grid_angle(Angle::rad(label.along.atan2())),
        points: points(cut, &sewn, &outline),
        cut: outline,
        sewn,
        edge_starts: Vec::new(),
        grain: Some((on_grid(cut.grain.0), on_grid(cut.grain.1))),
        mirror: None,
        inner: cut
            .inner
            .iter()
            .map(|inner| InnerLine {
                name: one_line(&inner.code()),
                kind: match inner.kind {
                    InnerKind::Fold => LineKind::Fold,
                    InnerKind::Placement => LineKind::Placement,
                },
                on: copies(inner.on),
                line: line(&inner.line),
            })
            .filter(|inner| inner.line.len() > 1)
            .collect(),
        cutouts: Vec::new(),
        notches: cut
            .notches
            .iter()
            .map(|notch| Notch {
                name: one_line(notch.id.code()),
                at: on_grid(notch.at),
                into: on_grid_angle(Angle::rad(notch.into.atan2())),
                depth: Length::mm(number_on_grid(notch.depth.to_mm())),
                kind: match notch.kind {
                    cutting::NotchKind::Slit => NotchKind::Slit,
                    cutting::NotchKind::Drawn => NotchKind::Drawn,
                },
                double: notch.double,
            })
            .collect(),
        drills: cut
            .drills
            .iter()
            .map(|drill| Drill {
                name: one_line(&drill.name),
                on: copies(drill.on),
                at: on_grid(drill.at),
            })
            .collect(),
        texts: Vec::new(),
    };
    place_words(&mut piece);
    piece
}

fn line(points: &[Point]) -> Vec<Point> {
    line_on_grid(thinned_line(points, WITHIN))
}

fn copies(on: On) -> Copies {
    match on {
        On::Both => Copies::All,
        On::AsDrawn => Copies::AsDrawn,
        On::Mirrored => Copies::Mirrored,
    }
}

/// Named points, then the corners that have no name: ends of edges, and corners of the cut line.
fn points(cut: &CutPiece, sewn: &[SewLine], outline: &[Point]) -> Vec<TurnPoint> {
    let ends = || {
        sewn.iter()
            .flat_map(|s| s.line.first().into_iter().chain(s.line.last()))
    };
    let corners: BTreeSet<Key> = ends().map(|p| Key::of(*p)).collect();
    let mut seen = BTreeSet::new();
    let mut out: Vec<TurnPoint> = Vec::new();
    for (id, at) in &cut.points {
        let at = on_grid(*at);
        let first = seen.insert(Key::of(at));
        out.push(TurnPoint {
            name: one_line(id.code()),
            at,
            corner: first && corners.contains(&Key::of(at)),
        });
    }
    for at in ends().copied().chain(sharp(outline)) {
        if seen.insert(Key::of(at)) {
            out.push(TurnPoint {
                name: String::new(),
                at,
                corner: true,
            });
        }
    }
    out
}

/// The points where a ring turns sharply.
fn sharp(ring: &[Point]) -> Vec<Point> {
    let n = ring.len();
    let turn = |a: Vec2, b: Vec2| a.cross(b).atan2(a.dot(b)).abs();
    let before = ring.iter().cycle().skip(n.saturating_sub(1));
    let after = ring.iter().cycle().skip(1);
    ring.iter()
        .zip(before.zip(after))
        .filter(|(p, (a, b))| turn(**p - **a, **b - **p) > CORNER.to_rad())
        .map(|(p, _)| *p)
        .collect()
}
