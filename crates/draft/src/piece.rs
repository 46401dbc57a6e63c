//! Pieces: closed outlines made of named edges, with named points, grain and notches.

use geometry::{Path, Point, area};
pub use style::{EdgeId, PieceId};
use trade::{Area, Length};
use words::{Key, key};

pub use crate::ids::{LineId, NotchId, PointId};

/// What a piece is cut from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ClothUse {
    /// The denim.
    Shell,
    /// The cloth of the pocket bags.
    Pocketing,
    /// The cloth that lines the back pockets.
    Lining,
}

impl ClothUse {
    /// What it is called within a sentence: "shell".
    pub const fn key(self) -> Key {
        match self {
            ClothUse::Shell => key::CLOTH_USE_SHELL,
            ClothUse::Pocketing => key::CLOTH_USE_POCKETING,
            ClothUse::Lining => key::CLOTH_USE_LINING,
        }
    }

    /// Stable name, as the style file writes it.
    pub const fn code(self) -> &'static str {
        match self {
            ClothUse::Shell => "shell",
            ClothUse::Pocketing => "pocketing",
            ClothUse::Lining => "lining",
        }
    }
}

/// How many of a piece one pair of jeans needs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cut {
    /// Pieces cut as drawn, face up.
    pub as_drawn: u32,
    /// Pieces cut mirrored.
    pub mirrored: u32,
}

impl Cut {
    /// One left and one right.
    pub const PAIR: Cut = Cut {
        as_drawn: 1,
        mirrored: 1,
    };
    /// A single piece.
    pub const ONE: Cut = Cut {
        as_drawn: 1,
        mirrored: 0,
    };

    /// Pieces in all.
    pub const fn total(self) -> u32 {
        self.as_drawn + self.mirrored
    }
}

/// A named edge of a piece. Edges follow one another anticlockwise.
#[derive(Clone, Debug, PartialEq)]
pub struct Edge {
    /// Which; unique within the piece.
    pub id: EdgeId,
    /// The sewn (finished) line in millimetres.
    pub path: Path,
}

/// A named point of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct NamedPoint {
    /// Which; unique within the piece.
    pub id: PointId,
    /// Place in the frame of the piece, millimetres.
    pub at: Point,
}

/// A line on a piece that is neither cut nor an edge: a fold, a placement, a stitched outline.
#[derive(Clone, Debug, PartialEq)]
pub struct InnerLine {
    /// Which; unique within the piece.
    pub id: LineId,
    /// What the line is for.
    pub kind: InnerKind,
    /// The line in millimetres.
    pub path: Path,
}

/// What an inner line tells the workroom.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InnerKind {
    /// Fold here.
    Fold,
    /// Another piece is set here.
    Placement,
}

/// A notch on an edge: where two plies must meet.
#[derive(Clone, Debug, PartialEq)]
pub struct Notch {
    /// The edge that carries it.
    pub edge: EdgeId,
    /// Arc length from the start of the edge.
    pub along: Length,
    /// What meets here; the partner notch is of the same.
    pub id: NotchId,
    /// Two cuts instead of one (marks the back).
    pub double: bool,
}

/// One pattern piece at its finished (sewn) size, without allowances.
#[derive(Clone, Debug, PartialEq)]
pub struct Piece {
    /// Which piece.
    pub id: PieceId,
    /// Cloth it is cut from.
    pub cloth: ClothUse,
    /// How many.
    pub cut: Cut,
    /// The outline: edges in order, anticlockwise, each starting where the last ended.
    pub edges: Vec<Edge>,
    /// Points others refer to.
    pub points: Vec<NamedPoint>,
    /// Folds and placements.
    pub lines: Vec<InnerLine>,
    /// Matching marks.
    pub notches: Vec<Notch>,
    /// The grain line, drawn parallel to the warp.
    pub grain: (Point, Point),
}

impl Piece {
    /// The path of an edge.
    pub fn edge(&self, id: EdgeId) -> Option<&Path> {
        self.edges.iter().find(|e| e.id == id).map(|e| &e.path)
    }

    /// The place of a point.
    pub fn point(&self, id: PointId) -> Option<Point> {
        self.points.iter().find(|p| p.id == id).map(|p| p.at)
    }

    /// An inner line.
    pub fn line(&self, id: LineId) -> Option<&Path> {
        self.lines.iter().find(|l| l.id == id).map(|l| &l.path)
    }

    /// The whole outline as one polygon with no chord longer than `step` on curves, first point not repeated.
    pub fn polygon(&self, step: Length) -> Vec<Point> {
        let mut out: Vec<Point> = Vec::new();
        for edge in &self.edges {
            let points = edge.path.dense(step);
            out.extend_from_slice(&points[..points.len() - 1]);
        }
        out
    }

    /// Area of the finished piece, from its outline at half-millimetre steps.
    pub fn area(&self) -> Area {
        area(&self.polygon(Length::mm(0.5)))
    }

    /// The place of a notch.
    pub fn notch_point(&self, notch: &Notch) -> Option<Point> {
        self.edge(notch.edge).map(|p| p.point_at(notch.along))
    }
}
