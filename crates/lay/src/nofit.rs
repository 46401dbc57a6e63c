//! No-fit areas: where one shape may not lie relative to another, and how far it is from there to
//! the nearest place where it may.
//!
//! Two shapes overlap exactly when the place of the second, seen from the first, lies inside the
//! sum of the first and the second mirrored through its origin. That sum is the union of the sums
//! of their convex parts. The union is never computed: a place is inside it when it is inside any
//! of the convex sums, and its rim is what is left of their sides after cutting out whatever lies
//! inside another. A coarse grid over the area remembers, cell by cell, which sums and which
//! stretches of rim can matter there, so that a question costs a few dozen operations.

use geometry::{Point, Rect, Vec2};

use crate::convex::convex_sum;
use crate::problem::{Turn, bounds};
use crate::shapes::Shape;

/// The area of places at which one shape overlaps another.
#[derive(Clone, Debug)]
pub(crate) struct NoFit {
    bounds: Rect,
    sums: Vec<Sum>,
    planes: Vec<Plane>,
    rim: Vec<Stretch>,
    grid: Grid,
}

/// One convex sum: its sides are `planes[from..to]`.
#[derive(Clone, Debug)]
struct Sum {
    bounds: Rect,
    from: usize,
    to: usize,
}

/// The side of a convex sum: inside is where `x * normal.x + y * normal.y < offset`.
#[derive(Clone, Copy, Debug)]
struct Plane {
    normal: Vec2,
    offset: f64,
}

impl Plane {
    fn beyond(&self, p: Point) -> f64 {
        p.x * self.normal.x + p.y * self.normal.y - self.offset
    }
}

/// A straight stretch of the rim.
#[derive(Clone, Copy, Debug)]
struct Stretch {
    from: Point,
    along: Vec2,
    /// One over the squared length.
    inverse: f64,
}

impl Stretch {
    fn nearest(&self, p: Point) -> Vec2 {
        let w = p - self.from;
        let t = (w.dot(self.along) * self.inverse).clamp(0.0, 1.0);
        self.along * t - w
    }
}

/// Cells a side of the grid.
const CELLS: usize = 20;

#[derive(Clone, Debug)]
struct Grid {
    per_mm: Vec2,
    cells: Vec<Cell>,
    sums: Vec<u16>,
    rim: Vec<u16>,
}

#[derive(Clone, Copy, Debug)]
struct Cell {
    kind: Kind,
    sums: (u32, u32),
    rim: (u32, u32),
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Kind {
    Outside,
    Inside,
    Mixed,
}

impl NoFit {
    /// Where `b`, turned by `turn`, overlaps `a` as drawn or comes nearer than `gap`. Places that
    /// are inside by less than `touch` count as outside.
    pub(crate) fn new(a: &Shape, b: &Shape, turn: Turn, gap: f64, touch: f64) -> Self {
        let against: Vec<Vec<Point>> = b
            .parts
            .iter()
            .map(|part| part.iter().map(|p| turn.apply(Point::new(-p.x, -p.y))).collect())
            .collect();
        let round = disc(gap);
        let mut outlines = Vec::with_capacity(a.parts.len() * against.len());
        for p in &a.parts {
            for q in &against {
                let sum = convex_sum(p, q);
                outlines.push(match &round {
                    Some(round) => convex_sum(&sum, round),
                    None => sum,
                });
            }
        }
        Self::of(&outlines, touch)
    }

    fn of(outlines: &[Vec<Point>], touch: f64) -> Self {
        let mut sums = Vec::with_capacity(outlines.len());
        let mut planes = Vec::new();
        for outline in outlines {
            let from = planes.len();
            for i in 0..outline.len() {
                let (p, q) = (outline[i], outline[(i + 1) % outline.len()]);
                let along = q - p;
                let length = along.hypot();
                if length > touch * 1e-3 {
                    let normal = Vec2::new(along.y, -along.x) / length;
                    let offset = p.x * normal.x + p.y * normal.y - touch;
                    planes.push(Plane { normal, offset });
                }
            }
            sums.push(Sum {
                bounds: bounds(outline),
                from,
                to: planes.len(),
            });
        }
        let whole = sums
            .iter()
            .map(|s| s.bounds)
            .reduce(|a, b| a.union(b))
            .unwrap_or_default();
        let mut out = Self {
            bounds: whole,
            sums,
            planes,
            rim: Vec::new(),
            grid: Grid {
                per_mm: Vec2::ZERO,
                cells: Vec::new(),
                sums: Vec::new(),
                rim: Vec::new(),
            },
        };
        out.rim = out.find_rim(outlines, touch);
        out.fill_grid();
        out
    }

    /// The stretches of the sums' sides that lie inside no other sum.
    fn find_rim(&self, outlines: &[Vec<Point>], touch: f64) -> Vec<Stretch> {
        let mut rim = Vec::new();
        for (k, outline) in outlines.iter().enumerate() {
            for i in 0..outline.len() {
                let (p, q) = (outline[i], outline[(i + 1) % outline.len()]);
                let along = q - p;
                let length = along.hypot();
                if length <= touch {
                    continue;
                }
                let mut hidden: Vec<(f64, f64)> = Vec::new();
                for (other, sum) in self.sums.iter().enumerate() {
                    if other != k && let Some(part) = self.inside_part(sum, p, along) {
                        hidden.push(part);
                    }
                }
                hidden.sort_by(|a, b| a.0.total_cmp(&b.0));
                let mut at = 0.0;
                for (from, to) in hidden.into_iter().chain([(1.0, 1.0)]) {
                    if (from - at) * length > touch {
                        let along = along * (from - at);
                        rim.push(Stretch {
                            from: p + (q - p) * at,
                            along,
                            inverse: 1.0 / along.hypot2(),
                        });
                    }
                    at = f64::max(at, to);
                }
            }
        }
        rim
    }

    /// The part of the line from `p` along `along` inside the convex sum, as shares of its length.
    fn inside_part(&self, sum: &Sum, p: Point, along: Vec2) -> Option<(f64, f64)> {
        let (mut from, mut to) = (0.0, 1.0);
        for plane in &self.planes[sum.from..sum.to] {
            let start = plane.beyond(p);
            let slope = along.dot(plane.normal);
            if slope.abs() <= f64::EPSILON * along.hypot() {
                if start >= 0.0 {
                    return None;
                }
            } else if slope > 0.0 {
                to = f64::min(to, -start / slope);
            } else {
                from = f64::max(from, -start / slope);
            }
            if from >= to {
                return None;
            }
        }
        Some((from, to))
    }

    fn fill_grid(&mut self) {
        let size = self.bounds.size();
        if !(size.width > 0.0 && size.height > 0.0) {
            return;
        }
        let cell = Vec2::new(size.width, size.height) / CELLS as f64;
        let reach = cell.hypot() / 2.0;
        let mut grid = Grid {
            per_mm: Vec2::new(1.0 / cell.x, 1.0 / cell.y),
            cells: Vec::with_capacity(CELLS * CELLS),
            sums: Vec::new(),
            rim: Vec::new(),
        };
        let mut distances: Vec<f64> = Vec::with_capacity(self.rim.len());
        for row in 0..CELLS {
            for column in 0..CELLS {
                let middle = self.bounds.origin()
                    + Vec2::new((column as f64 + 0.5) * cell.x, (row as f64 + 0.5) * cell.y);
                let (first_sum, first_rim) = (grid.sums.len() as u32, grid.rim.len() as u32);
                let mut kind = Kind::Outside;
                for (k, sum) in self.sums.iter().enumerate() {
                    let deepest = self.planes[sum.from..sum.to]
                        .iter()
                        .map(|plane| plane.beyond(middle))
                        .fold(f64::NEG_INFINITY, f64::max);
                    if deepest < -reach {
                        kind = Kind::Inside;
                        break;
                    }
                    if deepest < reach {
                        kind = Kind::Mixed;
                        grid.sums.push(k as u16);
                    }
                }
                if kind == Kind::Inside {
                    grid.sums.truncate(first_sum as usize);
                }
                if kind != Kind::Outside {
                    distances.clear();
                    distances.extend(self.rim.iter().map(|s| s.nearest(middle).hypot()));
                    let near = distances.iter().fold(f64::INFINITY, |a, b| a.min(*b));
                    for (k, distance) in distances.iter().enumerate() {
                        if *distance <= near + 2.0 * reach {
                            grid.rim.push(k as u16);
                        }
                    }
                }
                grid.cells.push(Cell {
                    kind,
                    sums: (first_sum, grid.sums.len() as u32),
                    rim: (first_rim, grid.rim.len() as u32),
                });
            }
        }
        self.grid = grid;
    }

    /// The cell of a place, when the place is inside.
    fn cell_if_inside(&self, p: Point) -> Option<&Cell> {
        let dx = (p.x - self.bounds.x0) * self.grid.per_mm.x;
        let dy = (p.y - self.bounds.y0) * self.grid.per_mm.y;
        if !(dx > 0.0 && dy > 0.0) {
            return None;
        }
        let (column, row) = (dx as usize, dy as usize);
        if column >= CELLS || row >= CELLS {
            return None;
        }
        let cell = self.grid.cells.get(row * CELLS + column)?;
        match cell.kind {
            Kind::Outside => None,
            Kind::Inside => Some(cell),
            Kind::Mixed => {
                let sums = &self.grid.sums[cell.sums.0 as usize..cell.sums.1 as usize];
                sums.iter()
                    .any(|&k| {
                        let sum = &self.sums[k as usize];
                        self.planes[sum.from..sum.to].iter().all(|plane| plane.beyond(p) < 0.0)
                    })
                    .then_some(cell)
            }
        }
    }

    /// How far the place is from the nearest free one; 0 when it is free itself.
    pub(crate) fn depth(&self, p: Point) -> f64 {
        match self.cell_if_inside(p) {
            None => 0.0,
            Some(cell) => self.grid.rim[cell.rim.0 as usize..cell.rim.1 as usize]
                .iter()
                .map(|&k| self.rim[k as usize].nearest(p).hypot2())
                .fold(f64::INFINITY, f64::min)
                .sqrt(),
        }
    }

    /// The shortest move to a free place, when the place is not free.
    pub(crate) fn way_out(&self, p: Point) -> Option<Vec2> {
        let cell = self.cell_if_inside(p)?;
        self.grid.rim[cell.rim.0 as usize..cell.rim.1 as usize]
            .iter()
            .map(|&k| self.rim[k as usize].nearest(p))
            .min_by(|a, b| a.hypot2().total_cmp(&b.hypot2()))
    }

    /// Where, on the line at height `y`, places are inside: the merged intervals of x.
    pub(crate) fn blocked(&self, y: f64) -> Vec<(f64, f64)> {
        let from = Point::new(self.bounds.x0 - 1.0, y);
        let along = Vec2::new(self.bounds.width() + 2.0, 0.0);
        let mut parts: Vec<(f64, f64)> = self
            .sums
            .iter()
            .filter_map(|sum| self.inside_part(sum, from, along))
            .map(|(a, b)| (from.x + a * along.x, from.x + b * along.x))
            .collect();
        parts.sort_by(|a, b| a.0.total_cmp(&b.0));
        let mut merged: Vec<(f64, f64)> = Vec::new();
        for (a, b) in parts {
            match merged.last_mut() {
                Some(last) if a < last.1 => last.1 = last.1.max(b),
                _ => merged.push((a, b)),
            }
        }
        merged
    }
}

/// A regular polygon round a disc, so that no distance measured by it is too small.
fn disc(radius: f64) -> Option<Vec<Point>> {
    const SIDES: usize = 16;
    (radius > 0.0).then(|| {
        let step = std::f64::consts::TAU / SIDES as f64;
        let corner = radius / (step / 2.0).cos();
        (0..SIDES)
            .map(|i| {
                let (sin, cos) = ((i as f64 + 0.5) * step).sin_cos();
                Point::new(corner * cos, corner * sin)
            })
            .collect()
    })
}
