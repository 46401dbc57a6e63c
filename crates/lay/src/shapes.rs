//! Pieces as the search sees them: one shape for each different outline, one copy for each piece
//! to be cut.

use geometry::{Point, Rect, bounds_of};

use crate::convex::convex_parts;
use crate::problem::{LayError, Problem, StraightSide, Turn, tidy, touch};
use crate::simplified::simpler;

/// One outline, its corners relative to the middle of the rectangle round it.
#[derive(Clone, Debug)]
pub(crate) struct Shape {
    /// Anticlockwise, tidy, never smaller than the piece.
    pub outline: Vec<Point>,
    /// The outline cut into convex parts.
    pub parts: Vec<Vec<Point>>,
    /// The middle of the rectangle, in the piece's own coordinates.
    pub middle: Point,
    /// Half the rectangle's width and height.
    pub half: (f64, f64),
    pub hull_area: f64,
    /// The largest distance between two corners.
    pub diameter: f64,
    /// The ways it may lie.
    pub stances: Vec<Stance>,
    /// Whether its straight side has to lie on a finished edge.
    pub on_edge: bool,
}

/// One way a shape may lie on the cloth: its turn, and for a piece on the edge how high.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Stance {
    pub turn: Turn,
    /// Half the extent along the cloth and across it.
    pub half: (f64, f64),
    /// The lowest and highest place of the middle; both the same for a piece on the edge.
    pub low: f64,
    pub high: f64,
}

impl Stance {
    /// Whether the piece can only move along the cloth.
    pub(crate) fn fixed(&self) -> bool {
        self.high <= self.low
    }
}

/// All shapes and copies of a problem. The shapes of faults come last.
#[derive(Clone, Debug)]
pub(crate) struct Shapes {
    pub width: f64,
    pub gap: f64,
    /// Distances up to this count as touching.
    pub touch: f64,
    pub shapes: Vec<Shape>,
    /// The shape of each copy, in the order of the pieces.
    pub copies: Vec<usize>,
    /// Which piece each copy belongs to.
    pub piece_of: Vec<usize>,
    /// Shape and middle of each fault.
    pub faults: Vec<(usize, Point)>,
    /// The area of all copies.
    pub area: f64,
}

impl Shapes {
    /// For the search: outlines of many corners are simplified, never made smaller.
    pub(crate) fn new(problem: &Problem) -> Result<Self, LayError> {
        Self::with(problem, simpler)
    }

    /// For what has to be true of the pieces themselves: the outlines as they are.
    pub(crate) fn exact(problem: &Problem) -> Result<Self, LayError> {
        Self::with(problem, |outline| outline)
    }

    fn with(problem: &Problem, simpler: fn(Vec<Point>) -> Vec<Point>) -> Result<Self, LayError> {
        problem.validate()?;
        let width = problem.width.to_mm();
        let mut shapes: Vec<Shape> = Vec::new();
        let (mut copies, mut piece_of) = (Vec::new(), Vec::new());
        let mut area = 0.0;
        for (index, piece) in problem.pieces.iter().enumerate() {
            let mut turns = piece.turns.clone();
            turns.sort_unstable();
            turns.dedup();
            let outline = tidy(&piece.outline);
            let mut shape = Shape::new(simpler(outline));
            shape.on_edge = piece.on_edge.is_some();
            for turn in turns {
                let half = turned(shape.half, turn);
                let zone = piece.within.map_or((0.0, width), |zone| {
                    (zone.from.to_mm().max(0.0), zone.to.to_mm().min(width))
                });
                let (mut low, mut high) = (zone.0 + half.1, zone.1 - half.1);
                if high < low {
                    if high < low - 2.0 * touch(problem.width) {
                        continue;
                    }
                    // It fills the cloth, or its zone, from edge to edge.
                    low = (zone.0 + zone.1) / 2.0;
                    high = low;
                }
                if let Some(rule) = piece.on_edge {
                    let at_bottom = (rule.side == StraightSide::Lower) == (turn == Turn::None);
                    let inset = rule.inset.to_mm().max(0.0);
                    let y = if at_bottom { low + inset } else { high - inset };
                    low = y;
                    high = y;
                }
                shape.stances.push(Stance {
                    turn,
                    half,
                    low,
                    high,
                });
            }
            let known = shapes.iter().position(|s| s.same_as(&shape));
            let number = known.unwrap_or(shapes.len());
            if known.is_none() {
                shapes.push(shape);
            }
            area += geometry::area(&piece.outline).to_mm2().abs() * piece.demand as f64;
            copies.extend(std::iter::repeat_n(number, piece.demand));
            piece_of.extend(std::iter::repeat_n(index, piece.demand));
        }
        let mut faults = Vec::new();
        for fault in &problem.faults {
            let corners = [
                (fault.x0, fault.y0),
                (fault.x1, fault.y0),
                (fault.x1, fault.y1),
                (fault.x0, fault.y1),
            ];
            faults.push((shapes.len(), fault.center()));
            shapes.push(Shape::new(corners.map(Point::from).to_vec()));
        }
        Ok(Self {
            width,
            gap: problem.gap.to_mm(),
            touch: touch(problem.width),
            shapes,
            copies,
            piece_of,
            faults,
            area,
        })
    }

    /// The shape of a copy.
    pub(crate) fn of(&self, copy: usize) -> &Shape {
        &self.shapes[self.copies[copy]]
    }
}

impl Shape {
    fn new(outline: Vec<Point>) -> Self {
        let rect: Rect = bounds_of(&outline);
        let middle = rect.center();
        let outline: Vec<Point> = outline.iter().map(|p| (*p - middle).to_point()).collect();
        let hull = hull(&outline);
        let diameter = hull
            .iter()
            .flat_map(|a| hull.iter().map(move |b| (*a - *b).hypot()))
            .fold(0.0, f64::max);
        Self {
            parts: convex_parts(&outline),
            middle,
            half: (rect.width() / 2.0, rect.height() / 2.0),
            hull_area: geometry::area(&hull).to_mm2(),
            diameter,
            outline,
            stances: Vec::new(),
            on_edge: false,
        }
    }
}

impl Shape {
    /// Whether copies of the two are interchangeable.
    fn same_as(&self, other: &Self) -> bool {
        self.outline == other.outline
            && self.stances == other.stances
            && self.middle == other.middle
            && self.on_edge == other.on_edge
    }
}

/// Half extents after a turn.
pub(crate) fn turned(half: (f64, f64), turn: Turn) -> (f64, f64) {
    if turn.quarters() % 2 == 1 {
        (half.1, half.0)
    } else {
        half
    }
}

/// The convex hull, anticlockwise (Andrew's monotone chain, 1979).
pub(crate) fn hull(points: &[Point]) -> Vec<Point> {
    let mut sorted = points.to_vec();
    sorted.sort_by(|a, b| a.x.total_cmp(&b.x).then(a.y.total_cmp(&b.y)));
    let chain = |points: &mut dyn Iterator<Item = &Point>| {
        let mut out: Vec<Point> = Vec::new();
        for &p in points {
            while let [.., a, b] = out[..]
                && crate::convex::turn(a, b, p) <= 0.0
            {
                out.pop();
            }
            out.push(p);
        }
        out.pop();
        out
    };
    let mut lower = chain(&mut sorted.iter());
    lower.extend(chain(&mut sorted.iter().rev()));
    lower
}
