//! What the rules look at, and what a rule says when it does not hold.

use draft::{EdgeId, PieceId, Place, PointId, Severity};
use geometry::tolerance::NO_SQUARE_MM2;
use geometry::{Point, Straight, contains};
use style::{SeamId, Subject, Trim};
use trade::Length;
use words::Said;

use crate::bulk::Crossing;
use crate::clash::Scene;
use crate::context::Context;
use crate::garment::{Fixing, StitchRow};
use crate::inset_lines::{Ground, points_along};

/// One sewn size, before its findings.
pub(crate) struct Case<'a> {
    pub context: &'a Context<'a>,
    pub rows: &'a [StitchRow],
    pub fixings: &'a [Fixing],
    pub crossings: &'a [Crossing],
    /// Everything sewn and set in its place and its operation; nothing where the chart does not draft.
    pub scene: &'a Scene<'a>,
    /// The seam that makes a tube of the leg.
    pub closing: SeamId,
}

impl Case<'_> {
    /// The middle of a row, where it has been laid; `index` counts from 0.
    pub fn row_place(&self, seam: SeamId, index: usize) -> Option<Place> {
        let row = self
            .rows
            .iter()
            .find(|r| r.seam == seam && r.number == index + 1)?;
        place(row.piece, row.path.point_at(row.length() / 2.0))
    }

    /// The middle of a seam's first row.
    pub fn seam_place(&self, seam: SeamId) -> Option<Place> {
        self.row_place(seam, 0)
    }

    /// A point of a piece.
    pub fn point(&self, piece: PieceId, id: PointId) -> Option<Place> {
        place(piece, self.context.pattern.piece(piece)?.point(id)?)
    }

    /// The middle of a fixing that comes from this trim.
    pub fn fixing(&self, trim: &str) -> Option<Place> {
        let fixing = self.fixings.iter().find(|f| f.from.trim() == Some(trim))?;
        place(fixing.piece, fixing.at)
    }

    /// The middle of the first fixing of this seam.
    pub fn fixing_of(&self, seam: SeamId) -> Option<Place> {
        let fixing = self.fixings.iter().find(|f| f.from == seam)?;
        place(fixing.piece, fixing.at)
    }

    pub fn trim(&self, key: &str) -> Option<&Trim> {
        self.context.collection.trims.get(key)
    }

    pub fn diameter(&self, key: &str) -> Option<Length> {
        self.trim(key)?.diameter
    }

    /// The outline of a piece as a polygon.
    pub fn ground(&self, piece: PieceId) -> Option<Ground<'_>> {
        Ground::of(self.context.pattern.piece(piece)?)
    }
}

/// A place, where it is one.
pub(crate) fn place(piece: PieceId, at: Point) -> Option<Place> {
    at.is_finite().then_some(Place { piece, at })
}

/// A rule that does not hold, before its code and source are added.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Broken {
    pub severity: Severity,
    pub subject: Subject,
    pub message: Said,
    pub remedy: Option<Said>,
    /// The value of the style that is the remedy, and what it becomes.
    pub cure: Option<(String, String)>,
    pub place: Option<Place>,
    /// Where its numbers come from, where that is not what its rule says.
    pub source: Option<Said>,
}

impl Broken {
    fn new(severity: Severity, subject: impl Into<Subject>, message: impl Into<Said>) -> Broken {
        Broken {
            severity,
            subject: subject.into(),
            message: message.into(),
            remedy: None,
            cure: None,
            place: None,
            source: None,
        }
    }

    pub fn error(subject: impl Into<Subject>, message: impl Into<Said>) -> Broken {
        Broken::new(Severity::Error, subject, message)
    }

    pub fn warning(subject: impl Into<Subject>, message: impl Into<Said>) -> Broken {
        Broken::new(Severity::Warning, subject, message)
    }

    pub fn note(subject: impl Into<Subject>, message: impl Into<Said>) -> Broken {
        Broken::new(Severity::Note, subject, message)
    }

    pub fn help(mut self, remedy: impl Into<Said>) -> Broken {
        self.remedy = Some(remedy.into());
        self
    }

    /// The same, with the one value of the style that is the remedy.
    pub fn curing(mut self, path: impl Into<String>, value: impl Into<String>) -> Broken {
        self.cure = Some((path.into(), value.into()));
        self
    }

    /// The same, with a source of its own.
    pub fn sourced(mut self, source: impl Into<Said>) -> Broken {
        self.source = Some(source.into());
        self
    }

    pub fn at(mut self, place: Option<Place>) -> Broken {
        self.place = place;
        self
    }
}

/// Distance from a point to the nearest side of a polygon.
pub(crate) fn distance(polygon: &[Point], p: Point) -> f64 {
    let n = polygon.len();
    (0..n)
        .map(|i| to_segment(polygon[i], polygon[(i + 1) % n], p))
        .fold(f64::INFINITY, f64::min)
}

/// Distance from a point to the nearest place of a line.
pub(crate) fn distance_to_line(line: &[Point], p: Point) -> f64 {
    line.windows(2)
        .map(|side| to_segment(side[0], side[1], p))
        .fold(f64::INFINITY, f64::min)
}

fn to_segment(a: Point, b: Point, p: Point) -> f64 {
    Straight::between(a, b).distance(p, NO_SQUARE_MM2).to_mm()
}

/// The point of a line that lies farthest outside a polygon, and how far; `None` where all of it
/// lies inside or the line is not finite.
pub(crate) fn farthest_outside(polygon: &[Point], line: &[Point]) -> Option<(Point, f64)> {
    line.iter()
        .filter(|p| !contains(polygon, **p))
        .map(|p| (*p, distance(polygon, *p)))
        .max_by(|a, b| a.1.total_cmp(&b.1))
}

/// The edge of a piece nearest to a point.
pub(crate) fn nearest_edge(case: &Case<'_>, piece: PieceId, p: Point) -> Option<EdgeId> {
    let piece = case.context.pattern.piece(piece)?;
    piece
        .edges
        .iter()
        .filter_map(|e| Some((e.id, distance_to_line(&points_along(&e.path)?, p))))
        .min_by(|a, b| a.1.total_cmp(&b.1))
        .map(|(id, _)| id)
}
