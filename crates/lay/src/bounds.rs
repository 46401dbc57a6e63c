//! Lengths no lay of the pieces can be shorter than.
//!
//! Each bound follows from one necessity alone; the largest of them says how much a longer search
//! could still gain, and whether wasted cloth is the search's fault or the rule's.

use std::collections::BTreeMap;

use geometry::Point;
use geometry::tolerance::ROUNDING;
use trade::Length;

use crate::crossings::heights;
use crate::lines::lines;
use crate::problem::{LayError, Problem, Turn};
use crate::shapes::{Shape, Shapes, Stance};
use crate::skeleton::skeleton;
use crate::tables::{Placed, Tables};

/// The lower bounds of a problem.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bounds {
    /// The pieces' area over the cloth's width.
    pub area: Length,
    /// The longest piece, in its shortest turn.
    pub longest: Length,
    /// Pieces wider than half the cloth cannot lie side by side: the sum of the lengths over
    /// which they are.
    pub wide: Length,
    /// The straight sides that have to lie on one finished edge, one after the other.
    pub segment: Length,
    /// The same with the pieces' own shapes: how near one can follow another on the edge, in the
    /// best order.
    pub path: Length,
    /// The pieces on both finished edges together: where the cloth is narrow, those on one edge get in
    /// the way of those on the other.
    pub skeleton: Length,
    /// What lines along the cloth run through, weighed as well as can be. It grows evenly with the number of pairs.
    pub lines: Length,
}

/// What no lay can be shorter for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decides {
    /// The area of the pieces: a perfect lay would leave nothing over.
    Area,
    /// The longest piece.
    Longest,
    /// Pieces wider than half the cloth, which cannot lie side by side.
    Wide,
    /// What lies on the finished edges, and what does not fit between that.
    Edges,
}

/// Where the edges ask for more than the area by this factor, they decide.
const BY_EDGES: f64 = 1.05;

/// The lower bounds of a problem.
///
/// # Errors
/// A [`LayError`] when the problem makes no sense.
pub fn bounds(problem: &Problem) -> Result<Bounds, LayError> {
    let shapes = Shapes::exact(problem)?;
    Ok(Bounds::new(&Tables::new(&shapes)))
}

impl Bounds {
    /// The largest of them.
    pub fn best(&self) -> Length {
        self.area
            .max(self.longest)
            .max(self.wide)
            .max(self.segment)
            .max(self.path)
            .max(self.skeleton)
            .max(self.lines)
    }

    /// Which of them is the largest.
    pub fn decides(&self) -> Decides {
        let best = self.best();
        if self.area >= best {
            Decides::Area
        } else if self.longest >= best {
            Decides::Longest
        } else if self.wide >= best {
            Decides::Wide
        } else {
            Decides::Edges
        }
    }

    /// Whether the finished edges decide how long a lay is, and not the area of what lies between them.
    pub fn edges_decide(&self) -> bool {
        self.lines.max(self.segment).max(self.path) > self.area * BY_EDGES
    }

    /// The bound of the area alone.
    pub(crate) fn of_area(area: Length) -> Self {
        Self {
            area,
            longest: Length::ZERO,
            wide: Length::ZERO,
            segment: Length::ZERO,
            path: Length::ZERO,
            skeleton: Length::ZERO,
            lines: Length::ZERO,
        }
    }

    pub(crate) fn new(tables: &Tables) -> Self {
        let shapes = tables.shapes;
        let longest = (0..shapes.copies.len())
            .map(|c| least(&shapes.of(c).stances, |s| 2.0 * s.half.0))
            .fold(0.0, f64::max);
        let wide = shapes
            .copies
            .iter()
            .map(|&s| {
                let shape = &shapes.shapes[s];
                least(&shape.stances, |stance| {
                    wider_than_half(shape, stance.turn, shapes.width)
                })
            })
            .sum();
        let edges = Edges::new(shapes);
        Self {
            area: Length::mm(shapes.area / shapes.width),
            longest: Length::mm(longest),
            wide: Length::mm(wide),
            segment: Length::mm(edges.segment(shapes)),
            path: Length::mm(edges.lower.path(tables).max(edges.upper.path(tables))),
            skeleton: Length::mm(skeleton(tables)),
            lines: Length::mm(lines(shapes)),
        }
    }
}

fn least(stances: &[Stance], f: impl Fn(&Stance) -> f64) -> f64 {
    let least = stances.iter().map(f).fold(f64::INFINITY, f64::min);
    if least.is_finite() { least } else { 0.0 }
}

/// The length along the cloth over which the piece is wider than half of it.
///
/// Measured from below: the sides are cut at every corner, and between two cuts the width changes
/// evenly, so the part above the limit follows by proportion. Where a piece is not in one stretch
/// across, the sum of its stretches counts.
fn wider_than_half(shape: &Shape, turn: Turn, width: f64) -> f64 {
    let outline: Vec<Point> = shape.outline.iter().map(|p| turn.apply(*p)).collect();
    let mut cuts: Vec<f64> = outline.iter().map(|p| p.x).collect();
    cuts.sort_by(f64::total_cmp);
    let limit = width / 2.0 * (1.0 + ROUNDING);
    let across = |x: f64| {
        heights(&outline, x)
            .chunks_exact(2)
            .map(|c| c[1] - c[0])
            .sum::<f64>()
    };
    cuts.windows(2)
        .filter(|w| w[1] - w[0] > ROUNDING * width)
        .map(|w| {
            let (a, b) = (w[0], w[1]);
            // Two places inside the slab fix the straight line of the width.
            let (p, q) = (across(a * 0.75 + b * 0.25), across(a * 0.25 + b * 0.75));
            let (at_a, at_b) = (p + (p - q) / 2.0, q + (q - p) / 2.0);
            let share = match (at_a > limit, at_b > limit) {
                (true, true) => 1.0,
                (false, false) => 0.0,
                _ => (at_a.max(at_b) - limit) / (at_a - at_b).abs(),
            };
            (b - a) * share
        })
        .sum()
}

/// A piece on an edge, seen along it.
#[derive(Clone, Copy, Debug, PartialEq)]
struct OnOneEdge {
    shape: usize,
    stance: Stance,
    /// Begin and end of the straight side, from the piece's middle.
    side: (f64, f64),
}

/// The pieces whose edge is decided, and the lengths of the straight sides that may go to either.
struct Edges {
    lower: OneEdge,
    upper: OneEdge,
    either: Vec<f64>,
}

#[derive(Default)]
struct OneEdge(Vec<OnOneEdge>);

impl Edges {
    fn new(shapes: &Shapes) -> Self {
        let mut edges = Self {
            lower: OneEdge::default(),
            upper: OneEdge::default(),
            either: Vec::new(),
        };
        for &s in &shapes.copies {
            let shape = &shapes.shapes[s];
            if !shape.on_edge {
                continue;
            }
            let sides: Vec<OnOneEdge> = shape
                .stances
                .iter()
                .map(|&stance| on_one_edge(shapes, s, stance))
                .collect();
            match sides[..] {
                [only] if only.stance.low < shapes.width / 2.0 => edges.lower.0.push(only),
                [only] => edges.upper.0.push(only),
                _ => edges.either.push(
                    sides
                        .iter()
                        .map(|s| s.side.1 - s.side.0)
                        .fold(0.0, f64::max),
                ),
            }
        }
        edges
    }

    /// Straight sides in a row on the fuller edge, those free to choose divided as well as can be.
    fn segment(&self, shapes: &Shapes) -> f64 {
        let row = |sides: &OneEdge| -> f64 {
            let gaps = shapes.gap * sides.0.len().saturating_sub(1) as f64;
            sides.0.iter().map(|s| s.side.1 - s.side.0).sum::<f64>() + gaps
        };
        let (lower, upper) = (row(&self.lower), row(&self.upper));
        let free: f64 = self.either.iter().sum();
        let even = (lower + upper + free) / 2.0;
        lower
            .max(upper)
            .max(even)
            .max(self.best_division(lower, upper, free))
    }

    /// The fuller edge after the best division of the free sides, from a table of the sums that
    /// can be reached in steps of `STEP`, each side counted a little too short.
    fn best_division(&self, lower: f64, upper: f64, free: f64) -> f64 {
        const MOST: f64 = 2e6;
        let step = (free / MOST).max(0.05);
        let steps = |x: f64| (x / step).floor() as usize;
        let total: usize = self.either.iter().map(|x| steps(*x)).sum();
        let mut reached = vec![false; total + 1];
        reached[0] = true;
        let mut top = 0;
        for side in self.either.iter().map(|x| steps(*x)) {
            for at in (0..=top).rev() {
                if reached[at] {
                    reached[at + side] = true;
                }
            }
            top += side;
        }
        let fuller = |s: usize| (lower + s as f64 * step).max(upper + (total - s) as f64 * step);
        (0..=total)
            .filter(|s| reached[*s])
            .map(fuller)
            .fold(f64::INFINITY, f64::min)
    }
}

fn on_one_edge(shapes: &Shapes, shape: usize, stance: Stance) -> OnOneEdge {
    let outline: Vec<Point> = shapes.shapes[shape]
        .outline
        .iter()
        .map(|p| stance.turn.apply(*p))
        .collect();
    let at_bottom = stance.low < shapes.width / 2.0;
    let level = if at_bottom {
        -stance.half.1
    } else {
        stance.half.1
    };
    let near = shapes.touch * 10.0;
    let straight = outline
        .iter()
        .filter(|p| (p.y - level).abs() <= near)
        .map(|p| p.x);
    let side = straight.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| {
        (a.min(x), b.max(x))
    });
    OnOneEdge {
        shape,
        stance,
        side,
    }
}

/// The most states the exact order search may visit.
const MOST_STATES: usize = 400_000;

impl OneEdge {
    /// The shortest row of all pieces of this edge, judged by how near each can follow the one
    /// before it.
    fn path(&self, tables: &Tables) -> f64 {
        let mut kinds: Vec<(OnOneEdge, usize)> = Vec::new();
        for piece in &self.0 {
            match kinds.iter_mut().find(|(k, _)| k == piece) {
                Some((_, count)) => *count += 1,
                None => kinds.push((*piece, 1)),
            }
        }
        if kinds.is_empty() {
            return 0.0;
        }
        let follow: Vec<Vec<f64>> = kinds
            .iter()
            .map(|(a, _)| kinds.iter().map(|(b, _)| follow(tables, a, b)).collect())
            .collect();
        let states = kinds
            .iter()
            .map(|(_, n)| n + 1)
            .fold(kinds.len(), usize::saturating_mul);
        if states <= MOST_STATES {
            best_order(&kinds, &follow)
        } else {
            nearest_followers(&kinds, &follow)
        }
    }
}

/// The least distance from the middle of `a` to that of `b`, when `b` comes next on the same edge.
fn follow(tables: &Tables, a: &OnOneEdge, b: &OnOneEdge) -> f64 {
    let least = a.side.1 - b.side.0 + tables.shapes.gap;
    let first = Placed {
        shape: a.shape,
        turn: a.stance.turn,
        at: Point::new(0.0, a.stance.low),
    };
    let second = Placed {
        shape: b.shape,
        turn: b.stance.turn,
        at: Point::new(0.0, b.stance.low),
    };
    let mut at = least;
    for (from, to) in tables.blocked_along(&first, &second) {
        if at > from && at < to {
            at = to;
        }
    }
    at
}

/// The shortest row over all orders (Held and Karp 1962), copies of a kind counted together.
fn best_order(kinds: &[(OnOneEdge, usize)], follow: &[Vec<f64>]) -> f64 {
    let mut rows: BTreeMap<(Vec<usize>, usize), f64> = BTreeMap::new();
    for (k, (piece, _)) in kinds.iter().enumerate() {
        let mut laid = vec![0; kinds.len()];
        laid[k] = 1;
        rows.insert((laid, k), piece.stance.half.0);
    }
    let pieces: usize = kinds.iter().map(|(_, n)| n).sum();
    for _ in 1..pieces {
        let mut next: BTreeMap<(Vec<usize>, usize), f64> = BTreeMap::new();
        for ((laid, last), length) in &rows {
            for (k, (_, most)) in kinds.iter().enumerate() {
                if laid[k] < *most {
                    let mut laid = laid.clone();
                    laid[k] += 1;
                    let longer = length + follow[*last][k];
                    let entry = next.entry((laid, k)).or_insert(f64::INFINITY);
                    *entry = entry.min(longer);
                }
            }
        }
        rows = next;
    }
    rows.iter()
        .map(|((_, last), length)| length + kinds[*last].0.stance.half.0)
        .fold(f64::INFINITY, f64::min)
}

/// Weaker, for many kinds: each piece but one is followed by its nearest possible follower.
fn nearest_followers(kinds: &[(OnOneEdge, usize)], follow: &[Vec<f64>]) -> f64 {
    let nearest = |k: usize| follow[k].iter().copied().fold(f64::INFINITY, f64::min);
    let ends = kinds
        .iter()
        .map(|(p, _)| p.stance.half.0)
        .fold(f64::INFINITY, f64::min);
    let all: f64 = kinds
        .iter()
        .enumerate()
        .map(|(k, (_, n))| nearest(k) * *n as f64)
        .sum();
    let most = (0..kinds.len()).map(nearest).fold(0.0, f64::max);
    all - most + 2.0 * ends
}
