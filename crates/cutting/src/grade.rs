//! All sizes of a piece in one picture, how its points move, and how the chart grows.

use draft::{EdgeId, NotchId, PieceId, PointId};
use geometry::tolerance::SAME_POINT;
use geometry::{Point, Vec2};
use sewing::On;
use style::{MeasureId, Size, Sizes, StyleDoc};
use thiserror::Error;
use trade::Length;
use words::{Given, Said, Words, say};

use crate::piece::{CutPiece, CutSize, Part};

/// Why a piece cannot be nested.
#[derive(Clone, Debug, PartialEq, Error)]
#[error("{}", Words::english().saying(&self.said()))]
pub enum GradeError {
    /// No size has the piece.
    NoPiece(PieceId),
    /// The piece has no such point.
    NoPoint {
        /// The piece.
        piece: PieceId,
        /// The point asked for.
        point: Landmark,
        /// The size.
        size: Size,
        /// The points it has.
        known: Vec<Landmark>,
    },
    /// The base size is not among those given.
    NoSize(Size),
}

impl GradeError {
    /// In words.
    pub fn said(&self) -> Said {
        match self {
            Self::NoPiece(piece) => say::GradeNoPiece { piece: *piece }.into(),
            Self::NoPoint {
                piece,
                point,
                size,
                known,
            } => say::GradeNoPoint {
                known: Given::List(known.iter().map(|at| at.code().into()).collect()),
                piece: *piece,
                point: point.code(),
                size: size.to_string(),
            }
            .into(),
            Self::NoSize(size) => say::GradeNoSize {
                size: size.to_string(),
            }
            .into(),
        }
    }
}

/// A place of a cut piece that can be told in every size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Landmark {
    /// A point of the piece.
    Point(PointId),
    /// A notch on an edge, where it lies on the sewn line.
    Notch(NotchId, EdgeId),
}

impl Landmark {
    /// Its stable code: that of the point, or "notch NOTCH on EDGE".
    pub fn code(self) -> String {
        match self {
            Landmark::Point(point) => point.code().to_owned(),
            Landmark::Notch(notch, edge) => format!("notch {} on {}", notch.code(), edge.code()),
        }
    }

    /// What it is called.
    pub fn words(self, words: &Words) -> String {
        match self {
            Landmark::Point(point) => point.words(words).to_owned(),
            Landmark::Notch(notch, edge) => words.say(say::NotchPlace { notch, edge }),
        }
    }
}

/// One size in a nest.
#[derive(Clone, Debug, PartialEq)]
pub struct Nested {
    /// The size.
    pub size: Size,
    /// From the frame of the piece to the frame of the nest.
    pub shift: Vec2,
    /// The cut line in the frame of the nest: closed, anticlockwise.
    pub cut: Vec<Point>,
    /// The sewn line of each edge.
    pub sewn: Vec<(EdgeId, Vec<Point>)>,
}

/// All sizes of a piece, laid on each other at one point: the origin of the nest's frame.
#[derive(Clone, Debug, PartialEq)]
pub struct Nest {
    /// The piece.
    pub piece: PieceId,
    /// Which part of it.
    pub part: Part,
    /// Which copies.
    pub on: On,
    /// Where the sizes lie on each other.
    pub at: Landmark,
    /// Every size, in the order given.
    pub sizes: Vec<Nested>,
}

/// How one point moves.
#[derive(Clone, Debug, PartialEq)]
pub struct Movement {
    /// Which point.
    pub point: Landmark,
    /// Where it lies in the base size, from the point at which the sizes lie on each other.
    pub base: Point,
    /// How far it moves from the base size to each size, in the order of [`Movements::sizes`];
    /// `None` where a size has no such point.
    pub by: Vec<Option<Vec2>>,
}

/// The table of point movements of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Movements {
    /// The piece.
    pub piece: PieceId,
    /// Which part of it.
    pub part: Part,
    /// Which copies.
    pub on: On,
    /// The point that stays.
    pub at: Landmark,
    /// The size from which movements count.
    pub base: Size,
    /// Every size, in the order given.
    pub sizes: Vec<Size>,
    /// Every named point and notch.
    pub points: Vec<Movement>,
}

/// The points of a piece and its notches on the sewn line.
fn points(piece: &CutPiece) -> impl Iterator<Item = (Landmark, Point)> + '_ {
    let notches = piece
        .notches
        .iter()
        .map(|n| (Landmark::Notch(n.id, n.edge), n.on_seam));
    let points = piece.points.iter();
    points
        .map(|(id, at)| (Landmark::Point(*id), *at))
        .chain(notches)
}

fn anchor(piece: &CutPiece, at: Landmark, size: Size) -> Result<Point, GradeError> {
    let found = points(piece).find(|(point, _)| *point == at);
    found.map(|(_, p)| p).ok_or_else(|| GradeError::NoPoint {
        piece: piece.piece,
        point: at,
        size,
        known: points(piece).map(|(point, _)| point).collect(),
    })
}

/// The cut piece of every size that has it, given which it is.
fn of_run(
    run: &[CutSize],
    piece: PieceId,
    part: Part,
    on: On,
) -> Result<Vec<(Size, &CutPiece)>, GradeError> {
    let is = |p: &&CutPiece| p.part == part && (p.on == on || p.on == On::Both || on == On::Both);
    let found: Vec<_> = run
        .iter()
        .filter_map(|cut| Some((cut.size, cut.of(piece).find(is)?)))
        .collect();
    if found.is_empty() {
        return Err(GradeError::NoPiece(piece));
    }
    Ok(found)
}

/// Lays all sizes of a piece on each other at a named point or notch. The grain has one direction in
/// all of them.
///
/// # Errors
/// [`GradeError`] where no size has the piece, or one lacks the point.
pub fn nest(
    run: &[CutSize],
    piece: PieceId,
    part: Part,
    on: On,
    at: Landmark,
) -> Result<Nest, GradeError> {
    let sizes = of_run(run, piece, part, on)?
        .into_iter()
        .map(|(size, cut)| {
            let shift = -anchor(cut, at, size)?.to_vec2();
            let move_all = |line: &[Point]| line.iter().map(|p| *p + shift).collect();
            Ok(Nested {
                size,
                shift,
                cut: move_all(&cut.cut),
                sewn: cut
                    .edges
                    .iter()
                    .map(|e| (e.id, move_all(&e.sewn)))
                    .collect(),
            })
        })
        .collect::<Result<_, GradeError>>()?;
    Ok(Nest {
        piece,
        part,
        on,
        at,
        sizes,
    })
}

/// How every named point and notch of a piece moves from the base size to each other one, with one
/// point held still.
///
/// # Errors
/// [`GradeError`] where no size has the piece, one lacks the point, or the base is not there.
pub fn movements(
    run: &[CutSize],
    base: Size,
    piece: PieceId,
    part: Part,
    on: On,
    at: Landmark,
) -> Result<Movements, GradeError> {
    let found = of_run(run, piece, part, on)?;
    let mut frames = Vec::with_capacity(found.len());
    for (size, cut) in &found {
        let origin = anchor(cut, at, *size)?.to_vec2();
        let here: Vec<(Landmark, Point)> = points(cut).map(|(n, p)| (n, p - origin)).collect();
        frames.push((*size, here));
    }
    let (_, of_base) = frames
        .iter()
        .find(|(size, _)| *size == base)
        .ok_or(GradeError::NoSize(base))?;
    let points = of_base
        .iter()
        .map(|(point, from)| Movement {
            point: *point,
            base: *from,
            by: frames
                .iter()
                .map(|(_, here)| {
                    let to = here.iter().find(|(p, _)| p == point)?;
                    Some(to.1 - *from)
                })
                .collect(),
        })
        .collect();
    Ok(Movements {
        piece,
        part,
        on,
        at,
        base,
        sizes: frames.iter().map(|(size, _)| *size).collect(),
        points,
    })
}

/// How a measure grows from one waist or length tag to the next.
#[derive(Clone, Debug, PartialEq)]
pub struct Increment {
    /// The measure.
    pub measure: MeasureId,
    /// From this size.
    pub from: Size,
    /// To this one.
    pub to: Size,
    /// The value at `to`.
    pub value: Length,
    /// What it grew by.
    pub by: Length,
    /// What that is for each inch of tag.
    pub per_inch: Length,
    /// Whether the grade is another one than in the step before.
    pub breaks: bool,
}

/// The steps of the chart: for every measure of it, from waist to waist at the base length, then from
/// length to length at the base waist.
pub fn increments(doc: &StyleDoc) -> Vec<Increment> {
    let sizes = &doc.sizes;
    let waists: Vec<Size> = sizes
        .waists
        .iter()
        .map(|w| Size::of(*w, sizes.base.length))
        .collect();
    let lengths: Vec<Size> = sizes
        .lengths
        .iter()
        .map(|l| Size::of(sizes.base.waist, *l))
        .collect();
    let mut out = Vec::new();
    for &measure in doc.chart.keys() {
        for run in [&waists, &lengths] {
            let mut before: Option<Length> = None;
            for step in run.windows(2) {
                let (from, to) = (step[0], step[1]);
                let (Some(a), Some(b)) = (doc.value(measure, from), doc.value(measure, to)) else {
                    continue;
                };
                let inches = to.waist.abs_diff(from.waist).to_inches()
                    + to.length.abs_diff(from.length).to_inches();
                let per_inch = (b - a) / inches.max(1.0);
                let same = |before: Length| (before - per_inch).abs() < SAME_POINT;
                out.push(Increment {
                    measure,
                    from,
                    to,
                    value: b,
                    by: b - a,
                    per_inch,
                    breaks: before.is_some_and(|p| !same(p)),
                });
                before = Some(per_inch);
            }
        }
    }
    out
}

/// What a length is called beside the base length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum LengthName {
    /// Shorter than the base.
    Short,
    /// The base length.
    Regular,
    /// Longer than the base.
    Long,
}

impl LengthName {
    /// The word.
    pub const fn word(self) -> &'static str {
        match self {
            LengthName::Short => "short",
            LengthName::Regular => "regular",
            LengthName::Long => "long",
        }
    }
}

/// What the length of a size is called in its run.
pub fn length_name(sizes: &Sizes, size: Size) -> LengthName {
    match size.length.cmp(&sizes.base.length) {
        std::cmp::Ordering::Less => LengthName::Short,
        std::cmp::Ordering::Equal => LengthName::Regular,
        std::cmp::Ordering::Greater => LengthName::Long,
    }
}
