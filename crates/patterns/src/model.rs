//! What a pattern file says.

use geometry::{Point, Vec2, area};
use trade::{Angle, Area, Length};

use crate::grid::Key;

/// The pieces of one style, in one or more sizes.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct PatternFile {
    /// The style: "SY-101 Ferryman".
    pub style: String,
    /// Who made the file; empty where it does not say.
    pub author: String,
    /// The date of the file as it is written, day first: "25-11-2026"; empty where it does not say.
    pub date: String,
    /// The size from which the others are graded; empty where it does not say.
    pub sample_size: String,
    /// The pieces, each in each size.
    pub pieces: Vec<Piece>,
}

impl PatternFile {
    /// The sizes, each once, in the order of the pieces.
    pub fn sizes(&self) -> Vec<&str> {
        let mut out: Vec<&str> = Vec::new();
        for piece in &self.pieces {
            if !out.contains(&piece.size.as_str()) {
                out.push(&piece.size);
            }
        }
        out
    }

    /// The same file with the pieces of one size only.
    pub fn of_size(&self, size: &str) -> PatternFile {
        let pieces = self.pieces.iter().filter(|p| p.size == size);
        PatternFile {
            pieces: pieces.cloned().collect(),
            ..PatternFile {
                style: self.style.clone(),
                author: self.author.clone(),
                date: self.date.clone(),
                sample_size: self.sample_size.clone(),
                pieces: Vec::new(),
            }
        }
    }
}

/// A file as it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Read {
    /// What it says.
    pub pattern: PatternFile,
    /// What was in it and is not in `pattern`, in words: "12 × HATCH", "3 lines on layer 84".
    pub passed_over: Vec<String>,
}

/// One piece in one size. Places are millimetres, y up, in the frame of the piece.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Piece {
    /// Its name for people: "Front".
    pub name: String,
    /// Its size; empty where the file does not say.
    pub size: String,
    /// A stable name for programs, or what kind of piece it is: "front"; empty where the file does not say.
    pub category: String,
    /// The cloth it is cut from.
    pub material: String,
    /// How many are cut as drawn, for one garment.
    pub as_drawn: u32,
    /// How many are cut from the mirror image.
    pub mirrored: u32,
    /// What else is written on it, line by line.
    pub notes: Vec<String>,
    /// Where these words begin.
    pub words_at: Point,
    /// How the words run: anticlockwise from x.
    pub words_along: Angle,
    /// The cut line: closed, anticlockwise, first point not repeated.
    pub cut: Vec<Point>,
    /// Where it is sewn.
    pub sewn: Vec<SewLine>,
    /// Where a named stretch of a closed line begins, anticlockwise; used where an edge has no sewn line
    /// of its own. [`Piece::edges`] gives the stretches.
    pub edge_starts: Vec<Named>,
    /// Corners, and places that have a name.
    pub points: Vec<TurnPoint>,
    /// The grain line.
    pub grain: Option<(Point, Point)>,
    /// The line over which a half piece is mirrored.
    pub mirror: Option<(Point, Point)>,
    /// Lines that are drawn and not cut.
    pub inner: Vec<InnerLine>,
    /// Closed lines inside the piece that are cut out.
    pub cutouts: Vec<Vec<Point>>,
    /// Notches.
    pub notches: Vec<Notch>,
    /// Drill holes.
    pub drills: Vec<Drill>,
    /// Other words at a place.
    pub texts: Vec<Note>,
}

/// A place with a name.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// The name.
    pub name: String,
    /// Where.
    pub at: Point,
}

/// A line along which the piece is sewn.
#[derive(Clone, Debug, PartialEq)]
pub struct SewLine {
    /// The edge it is, unique in the piece; empty where the file does not say.
    pub name: String,
    /// Whether it ends where it begins; its first point is then not repeated.
    pub closed: bool,
    /// The line.
    pub line: Vec<Point>,
}

/// A corner of a line, or a place with a name.
#[derive(Clone, Debug, PartialEq)]
pub struct TurnPoint {
    /// Its name; empty for a corner without one.
    pub name: String,
    /// Where.
    pub at: Point,
    /// Whether lines turn there; else they pass smoothly, or it lies on none.
    pub corner: bool,
}

/// Which copies of a piece a mark belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum Copies {
    /// All of them.
    #[default]
    All,
    /// Those cut as drawn.
    AsDrawn,
    /// Those cut from the mirror image.
    Mirrored,
}

/// What a line inside a piece is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum LineKind {
    /// Not said.
    #[default]
    Internal,
    /// Fold here.
    Fold,
    /// Another piece is set here.
    Placement,
    /// Stripes are matched here.
    Stripe,
    /// Checks are matched here.
    Plaid,
    /// Grading is measured from here.
    GradeReference,
}

/// A line that is drawn and not cut.
#[derive(Clone, Debug, PartialEq)]
pub struct InnerLine {
    /// Its name; empty where the file does not say.
    pub name: String,
    /// What it is for.
    pub kind: LineKind,
    /// On which copies.
    pub on: Copies,
    /// The line; a closed one repeats its first point.
    pub line: Vec<Point>,
}

/// How a notch is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Default)]
pub enum NotchKind {
    /// A slit (or a V: the practice has one layer for both).
    #[default]
    Slit,
    /// A slit with a cross at its end.
    T,
    /// Square.
    Castle,
    /// A V with one side square to the edge.
    Check,
    /// Round at its end.
    U,
    /// Drawn, not cut: the edge of the cloth stays whole.
    Drawn,
}

/// A notch.
#[derive(Clone, Debug, PartialEq)]
pub struct Notch {
    /// What meets here; empty where the file does not say.
    pub name: String,
    /// On the cut line; between the two cuts of a double notch.
    pub at: Point,
    /// Into the piece: anticlockwise from x.
    pub into: Angle,
    /// How deep; zero where the file does not say.
    pub depth: Length,
    /// How it is made.
    pub kind: NotchKind,
    /// Two cuts side by side.
    pub double: bool,
}

impl Notch {
    /// Where the cuts begin and end: one, or two side by side.
    pub fn cuts(&self) -> Vec<(Point, Point)> {
        let into = Vec2::from_angle(self.into.to_rad());
        let half = geometry::left_of(into) * (cutting::DOUBLE_NOTCH.to_mm() / 2.0);
        let shifts: &[f64] = if self.double { &[-1.0, 1.0] } else { &[0.0] };
        let cut = |by: &f64| {
            let from = self.at + half * *by;
            (from, from + into * self.depth.to_mm())
        };
        shifts.iter().map(cut).collect()
    }
}

/// A drill hole.
#[derive(Clone, Debug, PartialEq)]
pub struct Drill {
    /// What it marks; empty where the file does not say.
    pub name: String,
    /// On which copies.
    pub on: Copies,
    /// Where.
    pub at: Point,
}

/// Words at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct Note {
    /// The words.
    pub words: String,
    /// Where they begin.
    pub at: Point,
}

/// An edge with a name.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// The name.
    pub name: String,
    /// The line, first and last point included.
    pub line: Vec<Point>,
}

impl Piece {
    /// Area within the cut line.
    pub fn area(&self) -> Area {
        area(&self.cut)
    }

    /// Its name with its size: "Front 32x32".
    pub fn title(&self) -> String {
        if self.size.is_empty() {
            self.name.clone()
        } else {
            format!("{} {}", self.name, self.size)
        }
    }

    /// The sewn line of this name.
    pub fn sew_line(&self, name: &str) -> Option<&SewLine> {
        self.sewn.iter().find(|s| s.name == name)
    }

    /// The edges that have a name: sewn lines, and stretches of a closed sewn line or of the cut line from
    /// one named start to the next.
    pub fn edges(&self) -> Vec<Edge> {
        let named = self.sewn.iter().filter(|s| !s.name.is_empty());
        let mut out: Vec<Edge> = named
            .map(|s| Edge {
                name: s.name.clone(),
                line: whole(&s.line, s.closed),
            })
            .collect();
        let rings = self.sewn.iter().filter(|s| s.closed).map(|s| &s.line);
        let mut left: Vec<&Named> = self.edge_starts.iter().collect();
        for ring in rings.chain([&self.cut]) {
            let keys: Vec<Key> = ring.iter().map(|p| Key::of(*p)).collect();
            let place = |n: &Named| keys.iter().position(|k| *k == Key::of(n.at));
            let (mut here, rest): (Vec<_>, Vec<_>) =
                left.into_iter().partition(|n| place(n).is_some());
            left = rest;
            here.sort_by_key(|n| place(n));
            for (k, start) in here.iter().enumerate() {
                let next = here[(k + 1) % here.len()];
                if let (Some(from), Some(to)) = (place(start), place(next)) {
                    out.push(Edge {
                        name: start.name.clone(),
                        line: stretch(ring, from, to),
                    });
                }
            }
        }
        out
    }
}

/// The line with its first point repeated where it is closed.
fn whole(line: &[Point], closed: bool) -> Vec<Point> {
    let mut out = line.to_vec();
    if closed {
        out.extend(line.first());
    }
    out
}

/// From one place of a closed line on to another, all round where they are the same.
fn stretch(ring: &[Point], from: usize, to: usize) -> Vec<Point> {
    let n = ring.len();
    let steps = match (to + n - from) % n {
        0 => n,
        steps => steps,
    };
    ring.iter()
        .cycle()
        .skip(from)
        .take(steps + 1)
        .copied()
        .collect()
}
