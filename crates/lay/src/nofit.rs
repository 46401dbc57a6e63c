//! No-fit areas: where one shape may not lie relative to another, and how far it is from there to
//! the nearest place where it may.
//!
//! Two shapes overlap exactly when the place of the second, seen from the first, lies inside the
//! sum of the first and the second mirrored through its origin. That sum is the union of the sums
//! of their convex parts. The union is never computed: a place is inside it when it is inside any
//! of the convex sums, and its rim is what is left of their sides after cutting out whatever lies
//! inside another. A coarse grid over the area remembers, cell by cell, which sums and which
//! stretches of rim can matter there, so that a question costs a few dozen operations.

use geometry::{Point, Rect, Vec2, bounds_of};

use crate::convex::convex_sum;
use crate::problem::Turn;
use crate::shapes::Shape;

/// A side that is a smaller share of what counts as touching has no length.
const OF_TOUCHING: f64 = 1e-3;
/// A corner as sharp as this is mitred no further.
const LEAST_MITRE: f64 = 1e-3;

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

/// No estimate of a depth is less than this share of the depth in the middle of its cell.
const LEAST_ESTIMATE: f64 = 0.05;

/// Cells a side of the grid.
const CELLS: usize = 16;

/// Marks the last side of a sum in a cell's list of sides.
const LAST: u32 = 1 << 31;

/// What can matter in each cell. Cells are small numbers and everything else is shared, because
/// the search asks hundreds of these tables in turn and would else wait for memory.
#[derive(Clone, Debug, Default)]
struct Grid {
    per_mm: Vec2,
    /// 0 for a cell outside, otherwise one more than the number of its content.
    cells: Vec<u16>,
    contents: Vec<Content>,
    /// Numbers of planes, sum by sum: only those sides that cross the cell.
    planes: Vec<u32>,
    /// Numbers of stretches.
    rim: Vec<u32>,
}

#[derive(Clone, Copy, Debug)]
struct Content {
    /// The sides to ask; none for a cell that is inside throughout.
    planes: (u32, u32),
    /// The stretches that can be nearest.
    rim: (u32, u32),
    /// Depth in the middle of the cell and the way it falls, of a cell that is inside throughout.
    /// That deep inside, a depth need not be exact.
    middle: Point,
    depth: f64,
    fall: Vec2,
}

impl NoFit {
    /// Where `b`, turned by `turn`, overlaps `a` as drawn or comes nearer than `gap`. Places that
    /// are inside by less than `touch` count as outside.
    pub(crate) fn new(a: &Shape, b: &Shape, turn: Turn, gap: f64, touch: f64) -> Self {
        let outlines = outlines(a, b, turn, gap, touch);
        let mut out = Self::of(&outlines, touch);
        out.rim = out.find_rim(&outlines, touch);
        out.fill_grid();
        out
    }

    /// The same area when it is asked for one height only: without its rim and grid.
    pub(crate) fn blocked_at(
        (a, b, turn): (&Shape, &Shape, Turn),
        (gap, touch): (f64, f64),
        y: f64,
    ) -> Vec<(f64, f64)> {
        Self::of(&outlines(a, b, turn, gap, touch), touch).blocked(y)
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
                if length > touch * OF_TOUCHING {
                    let normal = Vec2::new(along.y, -along.x) / length;
                    let offset = p.x * normal.x + p.y * normal.y - touch;
                    planes.push(Plane { normal, offset });
                }
            }
            sums.push(Sum {
                bounds: bounds_of(outline),
                from,
                to: planes.len(),
            });
        }
        let whole = sums
            .iter()
            .map(|s| s.bounds)
            .reduce(|a, b| a.union(b))
            .unwrap_or_default();
        Self {
            bounds: whole,
            sums,
            planes,
            rim: Vec::new(),
            grid: Grid::default(),
        }
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
                let extent = Rect::from_points(p, q);
                let mut hidden: Vec<(f64, f64)> = Vec::new();
                for (other, sum) in self.sums.iter().enumerate() {
                    if other != k
                        && extent.overlaps(sum.bounds)
                        && let Some(part) = self.inside_part(sum, p, along)
                    {
                        hidden.push(part);
                        if part == (0.0, 1.0) {
                            break;
                        }
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
        let mut grid = Grid {
            per_mm: Vec2::new(1.0 / cell.x, 1.0 / cell.y),
            cells: Vec::with_capacity(CELLS * CELLS),
            ..Grid::default()
        };
        let mut distances: Vec<f64> = Vec::with_capacity(self.rim.len());
        for row in 0..CELLS {
            for column in 0..CELLS {
                let middle = self.bounds.origin()
                    + Vec2::new((column as f64 + 0.5) * cell.x, (row as f64 + 0.5) * cell.y);
                let reach = cell.hypot() / 2.0;
                let Some(planes) = self.sides_across(middle, reach, &mut grid.planes) else {
                    grid.cells.push(0);
                    continue;
                };
                let first = grid.rim.len() as u32;
                distances.clear();
                distances.extend(self.rim.iter().map(|s| s.nearest(middle).hypot()));
                let near = distances.iter().fold(f64::INFINITY, |a, b| a.min(*b));
                for (k, distance) in distances.iter().enumerate() {
                    if *distance <= near + 2.0 * reach {
                        grid.rim.push(k as u32);
                    }
                }
                let rim = (first, grid.rim.len() as u32);
                let out = self.nearest(&grid.rim[first as usize..], middle);
                grid.contents.push(Content {
                    planes,
                    rim,
                    middle,
                    depth: out.hypot(),
                    fall: out / out.hypot().max(f64::MIN_POSITIVE),
                });
                grid.cells.push(grid.contents.len() as u16);
            }
        }
        self.grid = grid;
    }

    /// Lists the sides that cross a cell, sum by sum; an empty list when the cell lies inside a sum
    /// altogether, and nothing when it lies outside all of them.
    fn sides_across(&self, middle: Point, reach: f64, list: &mut Vec<u32>) -> Option<(u32, u32)> {
        let first = list.len();
        for sum in &self.sums {
            if !sum.bounds.inflate(reach, reach).contains(middle) {
                continue;
            }
            let sides = &self.planes[sum.from..sum.to];
            let deepest = sides
                .iter()
                .map(|p| p.beyond(middle))
                .fold(f64::NEG_INFINITY, f64::max);
            if deepest < -reach {
                list.truncate(first);
                return Some((first as u32, first as u32));
            }
            if deepest < reach {
                let across =
                    (sum.from..sum.to).filter(|k| self.planes[*k].beyond(middle) >= -reach);
                list.extend(across.map(|k| k as u32));
                if let Some(last) = list.last_mut() {
                    *last |= LAST;
                }
            }
        }
        (list.len() > first).then_some((first as u32, list.len() as u32))
    }

    /// What matters at a place, when the place is inside.
    fn content_if_inside(&self, p: Point) -> Option<&Content> {
        let dx = (p.x - self.bounds.x0) * self.grid.per_mm.x;
        let dy = (p.y - self.bounds.y0) * self.grid.per_mm.y;
        if !(dx > 0.0 && dy > 0.0) {
            return None;
        }
        let (column, row) = (dx as usize, dy as usize);
        if column >= CELLS || row >= CELLS {
            return None;
        }
        let number = *self.grid.cells.get(row * CELLS + column)?;
        let content = self
            .grid
            .contents
            .get(usize::from(number).checked_sub(1)?)?;
        let sides = &self.grid.planes[content.planes.0 as usize..content.planes.1 as usize];
        let mut within = true;
        for side in sides {
            within &= self.planes[(side & !LAST) as usize].beyond(p) < 0.0;
            if side & LAST != 0 {
                if within {
                    return Some(content);
                }
                within = true;
            }
        }
        sides.is_empty().then_some(content)
    }

    /// How far the place is from the nearest free one; 0 when it is free itself. Deep inside it is
    /// estimated.
    pub(crate) fn depth(&self, p: Point) -> f64 {
        match self.content_if_inside(p) {
            None => 0.0,
            Some(at) if at.planes.0 == at.planes.1 => {
                (at.depth - at.fall.dot(p - at.middle)).max(at.depth * LEAST_ESTIMATE)
            }
            Some(at) => self.nearest(self.rim_at(at), p).hypot(),
        }
    }

    /// The shortest move to a free place, when the place is not free.
    pub(crate) fn way_out(&self, p: Point) -> Option<Vec2> {
        let at = self.content_if_inside(p)?;
        Some(self.nearest(self.rim_at(at), p))
    }

    fn rim_at(&self, content: &Content) -> &[u32] {
        &self.grid.rim[content.rim.0 as usize..content.rim.1 as usize]
    }

    /// From the place to the nearest point of these stretches.
    fn nearest(&self, stretches: &[u32], p: Point) -> Vec2 {
        let mut nearest = Vec2::ZERO;
        let mut least = f64::INFINITY;
        for &k in stretches {
            let out = self.rim[k as usize].nearest(p);
            let squared = out.hypot2();
            if squared < least {
                (nearest, least) = (out, squared);
            }
        }
        nearest
    }

    /// Where, on the line at height `y`, places are inside: the merged intervals of x.
    fn blocked(&self, y: f64) -> Vec<(f64, f64)> {
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

/// The convex sums whose union is the area.
fn outlines(a: &Shape, b: &Shape, turn: Turn, gap: f64, touch: f64) -> Vec<Vec<Point>> {
    let against: Vec<Vec<Point>> = b
        .parts
        .iter()
        .map(|part| {
            part.iter()
                .map(|p| turn.apply(Point::new(-p.x, -p.y)))
                .collect()
        })
        .collect();
    let round = disc(gap);
    let mut outlines = Vec::with_capacity(a.parts.len() * against.len());
    for p in &a.parts {
        for q in &against {
            let sum = convex_sum(p, q);
            let sum = match &round {
                Some(round) => convex_sum(&sum, round),
                None => sum,
            };
            outlines.push(grown(&sum, GROWTH * touch));
        }
    }
    outlines
}

/// Where a search ends just inside the rim by the slack, the pieces themselves must not overlap:
/// the areas are grown by nearly as much.
const GROWTH: f64 = 0.999;

/// A convex polygon with every side moved outward, corners mitred.
fn grown(polygon: &[Point], by: f64) -> Vec<Point> {
    let n = polygon.len();
    (0..n)
        .map(|i| {
            let (a, b, c) = (polygon[(i + n - 1) % n], polygon[i], polygon[(i + 1) % n]);
            let normal = |v: Vec2| Vec2::new(v.y, -v.x) / v.hypot();
            let (m, k) = (normal(b - a), normal(c - b));
            b + (m + k) * (by / (1.0 + m.dot(k)).max(LEAST_MITRE))
        })
        .collect()
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
