//! What lies on a piece, and the texts that name it.

use std::collections::{BTreeMap, BTreeSet};

use geometry::{Point, Vec2};
use trade::{Angle, Length};

use super::flattened::FlatShape;
use super::layer;
use crate::error::ReadError;
use crate::grid::{Key, on_grid, on_grid_angle, ring_on_grid};
use crate::limits::MOST_MARKS;
use crate::model::{
    Copies, Drill, InnerLine, LineKind, Named, Notch, NotchKind, Note, Piece, SewLine, TurnPoint,
};
use crate::nearest::Nearest;
use crate::words::{Mark, heard};

/// A notch before the cut line is known.
struct RawNotch {
    name: String,
    at: Point,
    /// The other end of a notch that is drawn as a line.
    other: Option<Point>,
    into: Option<Angle>,
    depth: Length,
    kind: NotchKind,
    double: bool,
}

/// What was read last: a text right after it names it.
enum Last {
    Nothing,
    Sewn(usize),
    Inner(usize),
    Drill(usize),
    /// A mark on an internal layer that a text may call a notch.
    Drawn(Point, Length, Angle),
}

/// A text whose line or hole may come later.
struct Waiting {
    mark: Mark,
    on: Copies,
    name: String,
    note: Note,
}

/// Everything on a piece but its cut line, grain and own texts.
pub(super) struct Marks {
    line: usize,
    sewn: Vec<SewLine>,
    inner: Vec<InnerLine>,
    notches: Vec<RawNotch>,
    drills: Vec<Drill>,
    points: Vec<TurnPoint>,
    corner_at: BTreeMap<Key, usize>,
    texts: Vec<Note>,
    edge_starts: Vec<(Named, Note)>,
    waiting: Vec<Waiting>,
    last: Last,
}

impl Marks {
    pub fn new(line: usize) -> Marks {
        Marks {
            line,
            sewn: Vec::new(),
            inner: Vec::new(),
            notches: Vec::new(),
            drills: Vec::new(),
            points: Vec::new(),
            corner_at: BTreeMap::new(),
            texts: Vec::new(),
            edge_starts: Vec::new(),
            waiting: Vec::new(),
            last: Last::Nothing,
        }
    }

    /// Takes what lies on a layer; false where it is nothing that is known.
    pub fn add(&mut self, line: usize, layer: u32, shape: FlatShape) -> Result<bool, ReadError> {
        self.last = Last::Nothing;
        match (layer, shape) {
            (layer::SEW, FlatShape::Path { points, closed }) => {
                self.last = Last::Sewn(self.sewn.len());
                self.sewn.push(SewLine {
                    name: String::new(),
                    closed,
                    line: if closed { ring_on_grid(points) } else { points },
                });
            }
            (layer::TURN, FlatShape::Point { at, .. }) => self.corner(at),
            (layer::DRILL, FlatShape::Point { at, .. }) => self.drill(at),
            (
                layer::DRILL,
                FlatShape::Path {
                    points,
                    closed: true,
                },
            ) => {
                let sum = points.iter().fold(Vec2::ZERO, |sum, p| sum + p.to_vec2());
                self.drill(on_grid((sum / points.len().max(1) as f64).to_point()));
            }
            (layer::INTERNAL, FlatShape::Point { at, depth, into }) => {
                self.last = Last::Drawn(at, depth, into.unwrap_or_default());
            }
            (layer, shape) => {
                if let Some(kind) = layer::notch(layer) {
                    return self.notch(line, kind, shape);
                }
                let (Some(kind), FlatShape::Path { points, closed }) = (layer::line(layer), shape)
                else {
                    return Ok(false);
                };
                let mut points = points;
                if closed {
                    points.extend(points.first().copied());
                }
                self.last = Last::Inner(self.inner.len());
                self.inner.push(InnerLine {
                    name: String::new(),
                    kind,
                    on: Copies::All,
                    line: points,
                });
            }
        }
        self.not_too_many(line)?;
        Ok(true)
    }

    fn notch(&mut self, line: usize, kind: NotchKind, shape: FlatShape) -> Result<bool, ReadError> {
        let (at, other, into, depth) = match shape {
            FlatShape::Point { at, depth, into } => (at, None, into, depth),
            FlatShape::Path {
                points,
                closed: false,
            } => match points.as_slice() {
                [a, b] => (*a, Some(*b), None, Length::mm((*b - *a).hypot())),
                _ => return Ok(false),
            },
            _ => return Ok(false),
        };
        self.notches.push(RawNotch {
            name: String::new(),
            at,
            other,
            into,
            depth: Length::mm(crate::grid::number_on_grid(depth.to_mm())),
            kind,
            double: false,
        });
        self.not_too_many(line)?;
        Ok(true)
    }

    fn drill(&mut self, at: Point) {
        self.last = Last::Drill(self.drills.len());
        self.drills.push(Drill {
            name: String::new(),
            on: Copies::All,
            at,
        });
    }

    fn corner(&mut self, at: Point) {
        if let Some(there) = self.point_at(at) {
            there.corner = true;
            return;
        }
        self.corner_at.insert(Key::of(at), self.points.len());
        self.points.push(TurnPoint {
            name: String::new(),
            at,
            corner: true,
        });
    }

    fn point_at(&mut self, at: Point) -> Option<&mut TurnPoint> {
        let k = *self.corner_at.get(&Key::of(at))?;
        self.points.get_mut(k)
    }

    fn not_too_many(&self, line: usize) -> Result<(), ReadError> {
        let counts = [
            (self.sewn.len(), "sewn lines"),
            (self.inner.len(), "inner lines"),
            (self.notches.len(), "notches"),
            (self.drills.len(), "drill holes"),
            (
                self.texts.len() + self.waiting.len() + self.edge_starts.len(),
                "texts",
            ),
        ];
        match counts.iter().find(|(n, _)| *n > MOST_MARKS) {
            None => Ok(()),
            Some((_, what)) => Err(ReadError::line(
                line,
                format!(
                    "more than {MOST_MARKS} {what} on the piece that begins on line {}",
                    self.line
                ),
                "give each piece a block of its own",
            )),
        }
    }

    /// Takes a text that is not the piece's own.
    pub fn text(&mut self, line: usize, at: Point, words: String) -> Result<(), ReadError> {
        let note = Note { words, at };
        let Some((mark, on, name)) = heard(&note.words) else {
            self.texts.push(note);
            return self.not_too_many(line);
        };
        let name = name.to_owned();
        if !self.names_last(mark, on, &name, at) {
            match mark {
                Mark::Point => self.named_point(name, at),
                Mark::DrawnNotch | Mark::DrawnDoubleNotch => self.texts.push(note),
                _ => self.waiting.push(Waiting {
                    mark,
                    on,
                    name,
                    note,
                }),
            }
        }
        self.not_too_many(line)
    }

    fn named_point(&mut self, name: String, at: Point) {
        match self.point_at(at) {
            Some(there) if there.name.is_empty() => there.name = name,
            Some(_) => self.points.push(TurnPoint {
                name,
                at,
                corner: false,
            }),
            None => {
                self.corner_at.insert(Key::of(at), self.points.len());
                self.points.push(TurnPoint {
                    name,
                    at,
                    corner: false,
                });
            }
        }
    }

    /// Whether a text names what was read just before it.
    fn names_last(&mut self, mark: Mark, on: Copies, name: &str, at: Point) -> bool {
        let here = |p: Option<&Point>| p.is_some_and(|p| Key::of(*p) == Key::of(at));
        match (mark, &self.last) {
            (Mark::Edge, Last::Sewn(k)) => {
                let line = self.sewn.get_mut(*k).filter(|s| here(s.line.first()));
                line.is_some_and(|s| fill(&mut s.name, name))
            }
            (Mark::Line(kind), Last::Inner(k)) => {
                let line = self.inner.get_mut(*k).filter(|l| here(l.line.first()));
                line.is_some_and(|l| {
                    (l.kind, l.on) = (of_kind(l.kind, kind), on);
                    fill(&mut l.name, name)
                })
            }
            (Mark::Drill, Last::Drill(k)) => {
                let drill = self.drills.get_mut(*k).filter(|d| here(Some(&d.at)));
                drill.is_some_and(|d| {
                    d.on = on;
                    fill(&mut d.name, name)
                })
            }
            (Mark::DrawnNotch | Mark::DrawnDoubleNotch, Last::Drawn(p, depth, into))
                if here(Some(p)) =>
            {
                self.notches.push(RawNotch {
                    name: name.to_owned(),
                    at,
                    other: None,
                    into: Some(*into),
                    depth: *depth,
                    kind: NotchKind::Drawn,
                    double: mark == Mark::DrawnDoubleNotch,
                });
                self.last = Last::Nothing;
                true
            }
            (Mark::Notch, _) => {
                let last = self.notches.last_mut();
                let last = last.filter(|n| here(Some(&n.at)) && n.kind != NotchKind::Drawn);
                last.is_some_and(|n| !n.double && fill(&mut n.name, name))
            }
            (Mark::DoubleNotch, _) => {
                let n = self.notches.len();
                n >= 2 && self.joined(n - 2, n - 1, name, at)
            }
            _ => false,
        }
    }

    /// Makes one double notch of two single ones on both sides of a place.
    fn joined(&mut self, first: usize, second: usize, name: &str, at: Point) -> bool {
        let half = cutting::DOUBLE_NOTCH.to_mm() / 2.0;
        let fits = |n: &RawNotch| {
            let far = (n.at - at).hypot();
            !n.double
                && n.name.is_empty()
                && n.kind != NotchKind::Drawn
                && (far - half).abs() < 0.01
        };
        let (Some(a), Some(b)) = (self.notches.get(first), self.notches.get(second)) else {
            return false;
        };
        if !(fits(a) && fits(b) && a.kind == b.kind && (a.at.midpoint(b.at) - at).hypot() < 0.01) {
            return false;
        }
        if let Some(a) = self.notches.get_mut(first) {
            name.clone_into(&mut a.name);
            (a.at, a.double) = (at, true);
        }
        self.notches.remove(second);
        true
    }

    /// Gives every text that waited its line or hole, and everything to the piece.
    pub fn settle(mut self, piece: &mut Piece) {
        for text in std::mem::take(&mut self.waiting) {
            if !self.named_later(&text) {
                match text.mark {
                    Mark::Edge => {
                        let start = Named {
                            name: text.name,
                            at: text.note.at,
                        };
                        self.edge_starts.push((start, text.note));
                    }
                    _ => self.texts.push(text.note),
                }
            }
        }
        let rings = self.sewn.iter().filter(|s| s.closed).map(|s| &s.line);
        let corners: BTreeSet<Key> = rings
            .chain([&piece.cut])
            .flatten()
            .map(|p| Key::of(*p))
            .collect();
        for (start, note) in self.edge_starts {
            if corners.contains(&Key::of(start.at)) && !start.name.is_empty() {
                piece.edge_starts.push(start);
            } else {
                self.texts.push(note);
            }
        }
        piece.notches = notches(self.notches, &piece.cut);
        let drawn = drawn_cuts(&piece.notches);
        let is_notch = |l: &InnerLine| match l.line.as_slice() {
            [a, b] => l.name.is_empty() && drawn.contains(&(Key::of(*a), Key::of(*b))),
            _ => false,
        };
        self.inner.retain(|l| !is_notch(l));
        piece.sewn = self.sewn;
        piece.inner = self.inner;
        piece.drills = self.drills;
        piece.points = self.points;
        piece.texts = self.texts;
    }

    fn named_later(&mut self, text: &Waiting) -> bool {
        let (name, at) = (&text.name, text.note.at);
        let here = |p: Option<&Point>| p.is_some_and(|p| Key::of(*p) == Key::of(at));
        match text.mark {
            Mark::Edge => {
                let mut lines = self.sewn.iter_mut();
                let line = lines.find(|s| !s.closed && s.name.is_empty() && here(s.line.first()));
                line.is_some_and(|s| fill(&mut s.name, name))
            }
            Mark::Line(kind) => {
                let mut lines = self.inner.iter_mut();
                let line = lines.find(|l| l.name.is_empty() && here(l.line.first()));
                line.is_some_and(|l| {
                    (l.kind, l.on) = (of_kind(l.kind, kind), text.on);
                    fill(&mut l.name, name)
                })
            }
            Mark::Drill => {
                let mut drills = self.drills.iter_mut();
                let drill = drills.find(|d| d.name.is_empty() && here(Some(&d.at)));
                drill.is_some_and(|d| {
                    d.on = text.on;
                    fill(&mut d.name, name)
                })
            }
            Mark::Notch => {
                let mut all = self.notches.iter_mut();
                let notch = all.find(|n| n.name.is_empty() && !n.double && here(Some(&n.at)));
                notch.is_some_and(|n| fill(&mut n.name, name))
            }
            Mark::DoubleNotch => {
                let half = cutting::DOUBLE_NOTCH.to_mm() / 2.0;
                let beside = |n: &RawNotch| ((n.at - at).hypot() - half).abs() < 0.01;
                let all = self.notches.iter().enumerate();
                let mut pair = all.filter(|(_, n)| beside(n)).map(|(k, _)| k);
                match (pair.next(), pair.next()) {
                    (Some(a), Some(b)) => self.joined(a, b, name, at),
                    _ => false,
                }
            }
            _ => false,
        }
    }
}

/// Names what has no name yet.
fn fill(name: &mut String, with: &str) -> bool {
    let free = name.is_empty();
    if free {
        with.clone_into(name);
    }
    free
}

/// What a line is for: its layer says it, or else the text.
fn of_kind(layer: LineKind, text: LineKind) -> LineKind {
    if layer == LineKind::Internal {
        text
    } else {
        layer
    }
}

/// The notches, with what the file does not say taken from the cut line.
fn notches(raw: Vec<RawNotch>, cut: &[Point]) -> Vec<Notch> {
    raw.into_iter()
        .map(|n| {
            let (mut at, mut into) = (n.at, n.into);
            if let Some(other) = n.other {
                let far = |p: Point| Nearest::on_ring(cut, p).map_or(0.0, |near| near.distance);
                let from = if far(other) < far(at) { other } else { at };
                let to = if from == at { other } else { at };
                (at, into) = (from, Some(Angle::rad((to - from).atan2())));
            }
            let into = into
                .or_else(|| Nearest::on_ring(cut, at).map(|near| near.inward()))
                .unwrap_or_default();
            Notch {
                name: n.name,
                at,
                into: on_grid_angle(into),
                depth: n.depth,
                kind: n.kind,
                double: n.double,
            }
        })
        .collect()
}

/// The lines by which notches that are not cut are drawn.
fn drawn_cuts(notches: &[Notch]) -> BTreeSet<(Key, Key)> {
    let drawn = notches.iter().filter(|n| n.kind == NotchKind::Drawn);
    drawn
        .flat_map(Notch::cuts)
        .map(|(a, b)| (Key::of(on_grid(a)), Key::of(on_grid(b))))
        .collect()
}
