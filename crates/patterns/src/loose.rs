//! Pieces from lines that say nothing of themselves: closed lines that lie in no other are pieces.

use geometry::{Point, Rect, bounds_of, contains};

use crate::error::ReadError;
use crate::grid::ring_on_grid;
use crate::limits::{MOST_MARKS, MOST_ON_CUT};
use crate::model::{Copies, InnerLine, LineKind, Note, Piece};
use crate::nearest::Nearest;

/// The most closed lines among which pieces are looked for.
const MOST_RINGS: usize = 500;

/// The most comparisons of a point with the side of a piece.
const MOST_WORK: usize = 200_000_000;

/// The least area of a piece, in square millimetres: smaller closed lines are marks.
const LEAST_AREA: f64 = 100.0;

/// A line, and what it is called.
pub(crate) struct LooseLine {
    pub points: Vec<Point>,
    pub closed: bool,
    pub name: String,
}

/// Makes pieces of loose lines, and gives each piece what lies on it. A piece is named by its line, else
/// by the first text on it, else by its number.
///
/// # Errors
/// Too much to look through.
pub(crate) fn pieces(lines: Vec<LooseLine>, texts: Vec<Note>) -> Result<Vec<Piece>, ReadError> {
    let (closed, open): (Vec<LooseLine>, Vec<LooseLine>) = lines
        .into_iter()
        .partition(|line| line.closed && line.points.len() > 2);
    let mut rings: Vec<LooseLine> = Vec::new();
    let mut small: Vec<LooseLine> = open;
    for mut line in closed {
        line.points = ring_on_grid(line.points);
        let large = geometry::area(&line.points).to_mm2() >= LEAST_AREA;
        if large { &mut rings } else { &mut small }.push(line);
    }
    if rings.len() > MOST_RINGS || rings.iter().any(|r| r.points.len() > MOST_ON_CUT) {
        return Err(ReadError::whole(
            format!("more than {MOST_RINGS} closed lines lie loose in it"),
            "write each piece as a block or group of its own",
        ));
    }
    let mut found = Found::default();
    let area = |line: &LooseLine| geometry::area(&line.points).to_mm2();
    let mut order: Vec<usize> = (0..rings.len()).collect();
    let at = |k: usize| rings.get(k).map_or(0.0, area);
    order.sort_by(|a, b| at(*b).total_cmp(&at(*a)));
    // The largest first: a piece is what no larger piece holds.
    let mut holder = vec![None; rings.len()];
    let mut outer: Vec<usize> = Vec::new();
    for k in order {
        let points = rings.get(k).map_or(&[][..], |r| &r.points);
        let inside = found.holder(&rings, &outer, points)?;
        if let Some(slot) = holder.get_mut(k) {
            *slot = inside;
        }
        if inside.is_none() {
            outer.push(k);
        }
    }
    outer.sort_unstable();
    let mut pieces: Vec<Piece> = outer
        .iter()
        .filter_map(|k| rings.get(*k))
        .map(named)
        .collect();
    let number = |k: usize| outer.iter().position(|o| *o == k);
    let put = |pieces: &mut Vec<Piece>, k: usize, line: LooseLine| {
        let piece = number(k).and_then(|n| pieces.get_mut(n));
        if let Some(piece) = piece.filter(|p| p.inner.len() < MOST_MARKS) {
            piece.inner.push(inner(line));
        }
    };
    for line in small {
        if let Some(k) = found.holder(&rings, &outer, &line.points)? {
            put(&mut pieces, k, line);
        }
    }
    let mut on_pieces = Vec::new();
    for note in texts {
        if let Some(k) = found.holder(&rings, &outer, &[note.at])? {
            on_pieces.push((k, note));
        }
    }
    for (ring, inside) in rings.into_iter().zip(&holder) {
        if let Some(k) = inside {
            put(&mut pieces, *k, ring);
        }
    }
    for (k, note) in on_pieces {
        let piece = number(k).and_then(|n| pieces.get_mut(n));
        if let Some(piece) = piece.filter(|p| p.texts.len() < MOST_MARKS) {
            if piece.name.is_empty() {
                piece.name = note.words;
                piece.words_at = note.at;
            } else {
                piece.texts.push(note);
            }
        }
    }
    for (k, piece) in pieces.iter_mut().enumerate() {
        if piece.name.is_empty() {
            piece.name = format!("Piece {}", k + 1);
        }
    }
    Ok(pieces)
}

fn named(ring: &LooseLine) -> Piece {
    Piece {
        name: ring.name.clone(),
        as_drawn: 1,
        words_at: ring.points.first().copied().unwrap_or_default(),
        cut: ring.points.clone(),
        ..Piece::default()
    }
}

fn inner(line: LooseLine) -> InnerLine {
    let mut points = line.points;
    if line.closed {
        points.extend(points.first().copied());
    }
    InnerLine {
        name: line.name,
        kind: LineKind::Internal,
        on: Copies::All,
        line: points,
    }
}

/// A point this near the outline of a piece does not tell on which side of it its line lies: on a lay,
/// pieces lie along the edge of the cloth.
const ON_THE_LINE: f64 = 0.01;
/// Of so many points at the most.
const ASKED: usize = 8;

/// Whether the line lies inside, by its first point that is not on the outline itself.
fn holds(outline: &[Point], line: &[Point]) -> bool {
    line.iter()
        .take(ASKED)
        .find(|p| !on_the_line(outline, **p))
        .is_some_and(|p| contains(outline, *p))
}

fn on_the_line(outline: &[Point], p: Point) -> bool {
    Nearest::on_ring(outline, p).is_some_and(|nearest| nearest.distance <= ON_THE_LINE)
}

/// Looking for the piece that holds a line, with the work it takes counted.
#[derive(Default)]
struct Found {
    work: usize,
    boxes: Vec<(usize, Rect)>,
}

impl Found {
    fn holder(
        &mut self,
        rings: &[LooseLine],
        outer: &[usize],
        line: &[Point],
    ) -> Result<Option<usize>, ReadError> {
        for k in outer {
            let Some(ring) = rings.get(*k) else {
                continue;
            };
            let bounds = match self.boxes.iter().find(|(j, _)| j == k) {
                Some((_, bounds)) => *bounds,
                None => {
                    let bounds = bounds_of(&ring.points);
                    self.boxes.push((*k, bounds));
                    bounds
                }
            };
            self.work += 1;
            let near = bounds.inflate(ON_THE_LINE, ON_THE_LINE);
            if !line.first().is_some_and(|p| near.contains(*p)) {
                continue;
            }
            self.work += (ASKED + 1) * ring.points.len();
            if self.work > MOST_WORK {
                return Err(ReadError::whole(
                    "too much lies loose in it",
                    "write each piece as a block or group of its own",
                ));
            }
            if holds(&ring.points, line) {
                return Ok(Some(*k));
            }
        }
        Ok(None)
    }
}
