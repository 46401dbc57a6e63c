//! The bound by lines along the cloth.
//!
//! A line drawn along the cloth runs through some pieces, and through each for some length; as pieces do not
//! overlap, no lay is shorter than the sum of these. Nor is it shorter than the mean of such sums over several lines,
//! however the lines are weighed. A piece may lie at any height it is allowed to; at the one where it counts least it
//! still counts for that. Even weights on all lines give the pieces' area over the width of the cloth. Other
//! weights see more: with panels on both finished edges, lines through the panels alone, so near each other that
//! a piece too wide for the band between the panels meets one of them wherever it lies.
//!
//! The bound holds for any weights. The best ones are those of a linear program; it is given the heights that
//! count least, round by round, until no other counts for less.

use microlp::{ComparisonOp, LinearExpr, OptimizationDirection, Problem, SolveOutcome, Variable};

use crate::crossings::heights;
use crate::shapes::{Shape, Shapes, Stance};
use geometry::Point;
use geometry::tolerance::ROUNDING;

/// Lines looked at, evenly spread over the width.
const LINES: usize = 100;
/// Steps of height between two of them. A piece that is free to lie at any height counts, within a step, for
/// the least it has there.
const STEPS: usize = 10;
/// Half of them: the first line lies this far in.
const HALF: usize = STEPS / 2;
/// Heights of a piece the program is given to begin with.
const FIRST: usize = 8;
/// Rounds, and the share of the bound the next one would have to gain.
const ROUNDS: usize = 40;
const WORTHWHILE: f64 = 1e-5;
/// More different shapes than this take too long.
const MOST_KINDS: usize = 400;
/// What a line meets of a piece counts as nothing below this share of the mean length of the lay.
const NOTHING: f64 = 1e-6;

/// What the lines meet of a shape in one stance.
enum Met {
    /// At its one height: so much by each line.
    There(Vec<f64>),
    /// From its lowest to its highest step: the least in each step of its own height.
    Between {
        least: Vec<f64>,
        lowest: usize,
        highest: usize,
    },
}

/// All copies of a shape.
struct Kind {
    count: f64,
    stances: Vec<Met>,
}

/// A height in a stance.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Height {
    stance: usize,
    step: usize,
}

/// A length in millimetres that no lay can be shorter than; 0 where no piece lies on a finished edge, for then area
/// says as much.
pub(crate) fn lines(shapes: &Shapes) -> f64 {
    if !shapes.copies.iter().any(|s| shapes.shapes[*s].on_edge) {
        return 0.0;
    }
    let kinds = kinds(shapes);
    let mean = shapes.area / shapes.width;
    if kinds.is_empty() || kinds.len() > MOST_KINDS || mean <= 0.0 {
        return 0.0;
    }
    let mut weights = vec![1.0 / LINES as f64; LINES];
    let mut given: Vec<Vec<Height>> = kinds.iter().map(Kind::some_heights).collect();
    let mut best = 0.0_f64;
    for _ in 0..ROUNDS {
        let mut sum = 0.0;
        let mut new = false;
        for (kind, given) in kinds.iter().zip(&mut given) {
            let least = (0..kind.stances.len()).filter_map(|s| kind.least(s, &weights));
            let least: Vec<(f64, Height)> = least.collect();
            sum += kind.count * least.iter().map(|l| l.0).fold(f64::INFINITY, f64::min);
            for (_, height) in least {
                if !given.contains(&height) {
                    given.push(height);
                    new = true;
                }
            }
        }
        best = best.max(sum);
        let Some((hoped, better)) = new.then(|| best_weights(&kinds, &given, mean)).flatten()
        else {
            break;
        };
        if hoped <= best * (1.0 + WORTHWHILE) {
            break;
        }
        weights = better;
    }
    (best - shapes.gap).max(0.0)
}

/// The weights of which the least sums over the given heights are largest, and how large.
fn best_weights(kinds: &[Kind], given: &[Vec<Height>], mean: f64) -> Option<(f64, Vec<f64>)> {
    let mut program = Problem::new(OptimizationDirection::Maximize);
    let lines: Vec<Variable> = (0..LINES)
        .map(|_| program.add_var(0.0, (0.0, 1.0)))
        .collect();
    let mut all = LinearExpr::empty();
    lines.iter().for_each(|line| all.add(*line, 1.0));
    program.add_constraint(all, ComparisonOp::Eq, 1.0);
    for (kind, heights) in kinds.iter().zip(given) {
        // In shares of the mean length, so that no number is far from one.
        let sum = program.add_var(1.0, (0.0, f64::INFINITY));
        for height in heights {
            let mut met = LinearExpr::empty();
            met.add(sum, 1.0);
            for (line, variable) in lines.iter().enumerate() {
                let share = kind.count * kind.met(*height, line) / mean;
                if share > NOTHING {
                    met.add(*variable, -share);
                }
            }
            program.add_constraint(met, ComparisonOp::Le, 0.0);
        }
    }
    let SolveOutcome::Solution(solution) = program.solve().ok()? else {
        return None;
    };
    let weights: Vec<f64> = lines
        .iter()
        .map(|l| solution.var_value(*l).max(0.0))
        .collect();
    let whole: f64 = weights.iter().sum();
    (whole > 0.0).then(|| {
        let shares = weights.iter().map(|w| w / whole).collect();
        (solution.objective() * mean, shares)
    })
}

/// The shapes of the pieces, with what lines meet of each.
fn kinds(shapes: &Shapes) -> Vec<Kind> {
    let step = shapes.width / (LINES * STEPS) as f64;
    let kinds = shapes.shapes.iter().enumerate();
    let kinds = kinds.map(|(number, shape)| Kind {
        count: shapes.copies.iter().filter(|s| **s == number).count() as f64,
        stances: shape
            .stances
            .iter()
            .map(|s| Met::new(shape, *s, step, shapes.gap))
            .collect(),
    });
    kinds
        .filter(|k| k.count > 0.0 && !k.stances.is_empty())
        .collect()
}

impl Met {
    fn new(shape: &Shape, stance: Stance, step: f64, gap: f64) -> Self {
        let slabs = slabs(shape, stance, gap);
        // The height of the piece's lowest point.
        let (low, high) = (stance.low - stance.half.1, stance.high - stance.half.1);
        if stance.fixed() {
            let met = |line: usize| at(&slabs, (line * STEPS + HALF) as f64 * step - low);
            return Self::There((0..LINES).map(met).collect());
        }
        let steps = (2.0 * stance.half.1 / step).ceil() as usize;
        // Outside the piece, and where it ends within a step, a line meets nothing.
        let mut least = vec![f64::INFINITY; steps];
        for slab in &slabs {
            let first = (slab.from / step).floor().max(0.0) as usize;
            for (k, least) in least.iter_mut().enumerate().skip(first) {
                let (from, to) = (k as f64 * step, (k + 1) as f64 * step);
                if from >= slab.to {
                    break;
                }
                *least = least
                    .min(slab.met(from.max(slab.from)))
                    .min(slab.met(to.min(slab.to)));
            }
        }
        if let Some(last) = least.last_mut() {
            *last = 0.0;
        }
        least
            .iter_mut()
            .filter(|l| !l.is_finite())
            .for_each(|l| *l = 0.0);
        let whole =
            |height: f64| (height / step).floor().clamp(0.0, (LINES * STEPS) as f64) as usize;
        Self::Between {
            least,
            lowest: whole(low),
            highest: whole(high),
        }
    }

    fn met(&self, step: usize, line: usize) -> f64 {
        match self {
            Self::There(met) => met[line],
            // A line at the lower end of a step of the cloth: the piece begins somewhere in its own step, so the
            // line lies in the step before, seen from the piece.
            Self::Between { least, .. } => (line * STEPS + HALF)
                .checked_sub(step + 1)
                .and_then(|k| least.get(k))
                .map_or(0.0, |least| *least),
        }
    }
}

impl Kind {
    fn met(&self, height: Height, line: usize) -> f64 {
        self.stances[height.stance].met(height.step, line)
    }

    fn steps(&self, stance: usize) -> std::ops::RangeInclusive<usize> {
        match &self.stances[stance] {
            Met::There(_) => 0..=0,
            Met::Between {
                lowest, highest, ..
            } => *lowest..=*highest,
        }
    }

    /// A few heights of every stance, evenly spread.
    fn some_heights(&self) -> Vec<Height> {
        let stances = 0..self.stances.len();
        let heights = stances.flat_map(|stance| {
            let steps = self.steps(stance);
            let every = (steps.end() - steps.start()) / FIRST + 1;
            steps
                .step_by(every)
                .map(move |step| Height { stance, step })
        });
        heights.collect()
    }

    /// The height in a stance at which the weighed lines meet least of it.
    fn least(&self, stance: usize, weights: &[f64]) -> Option<(f64, Height)> {
        let weighed: Vec<(usize, f64)> = weights
            .iter()
            .copied()
            .enumerate()
            .filter(|(_, w)| *w > 0.0)
            .collect();
        let met = &self.stances[stance];
        let sums = self.steps(stance).map(|step| {
            let sum = weighed
                .iter()
                .map(|(line, weight)| weight * met.met(step, *line))
                .sum();
            (sum, Height { stance, step })
        });
        sums.min_by(|a: &(f64, Height), b| a.0.total_cmp(&b.0))
    }
}

/// A stretch of a piece's height over which what a line meets changes evenly.
struct Slab {
    from: f64,
    to: f64,
    /// At its two ends, as seen from inside.
    ends: (f64, f64),
}

impl Slab {
    fn met(&self, height: f64) -> f64 {
        let share = (height - self.from) / (self.to - self.from);
        self.ends.0 + share * (self.ends.1 - self.ends.0)
    }
}

/// What a line meets of a shape from its lowest point up, the gap to the next piece with it.
fn slabs(shape: &Shape, stance: Stance, gap: f64) -> Vec<Slab> {
    // Standing on its side, so that lines across it are lines along the cloth.
    let turned = shape.outline.iter().map(|p| stance.turn.apply(*p));
    let side: Vec<Point> = turned
        .map(|p| Point::new(p.y + stance.half.1, p.x))
        .collect();
    let mut cuts: Vec<f64> = side.iter().map(|p| p.x).collect();
    cuts.sort_by(f64::total_cmp);
    let across = |height: f64| -> f64 {
        let stretches = heights(&side, height);
        stretches.chunks_exact(2).map(|c| c[1] - c[0]).sum()
    };
    let between = cuts
        .windows(2)
        .filter(|w| w[1] - w[0] > ROUNDING * stance.half.1);
    let slabs = between.map(|w| {
        let (a, b) = (w[0], w[1]);
        // Two places inside fix the straight line.
        let (p, q) = (across(a * 0.75 + b * 0.25), across(a * 0.25 + b * 0.75));
        Slab {
            from: a,
            to: b,
            ends: (
                (p + (p - q) / 2.0).max(0.0) + gap,
                (q + (q - p) / 2.0).max(0.0) + gap,
            ),
        }
    });
    slabs.collect()
}

/// What a line at that height meets, or one a hair below it.
fn at(slabs: &[Slab], height: f64) -> f64 {
    let slab = slabs.iter().find(|s| s.from < height && height <= s.to);
    slab.map_or(0.0, |slab| slab.met(height))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::problem::{OnEdge, Piece, StraightSide, Turn};
    use trade::Length;

    fn rectangle(key: &str, long: f64, high: f64, demand: usize) -> Piece {
        Piece {
            key: key.to_owned(),
            outline: [(0.0, 0.0), (long, 0.0), (long, high), (0.0, high)]
                .map(Point::from)
                .to_vec(),
            demand,
            turns: vec![Turn::None, Turn::Half],
            on_edge: None,
            within: None,
        }
    }

    fn on_edge(piece: Piece) -> Piece {
        Piece {
            on_edge: Some(OnEdge {
                side: StraightSide::Lower,
                inset: Length::ZERO,
            }),
            ..piece
        }
    }

    fn bound(width: f64, gap: f64, pieces: Vec<Piece>) -> f64 {
        let problem = crate::Problem {
            width: Length::mm(width),
            pieces,
            gap: Length::mm(gap),
            faults: Vec::new(),
            sets: Vec::new(),
        };
        lines(&Shapes::exact(&problem).unwrap())
    }

    /// Two panels lie on the edges, 100 long; beside them is a band 40 high. Two bands 10 long and 50 high
    /// cannot lie in it, nor in one column: each pushes one panel, and the lay is 110 long. Area says 70.
    #[test]
    fn what_is_too_wide_for_the_band_between_the_panels_takes_length_of_an_edge() {
        let panels = || on_edge(rectangle("panel", 100.0, 30.0, 2));
        let found = bound(100.0, 0.0, vec![panels(), rectangle("band", 10.0, 50.0, 2)]);
        assert!((found - 110.0).abs() < 1e-6, "{found}");
        // What is narrow enough to lie between them takes none.
        let found = bound(100.0, 0.0, vec![panels(), rectangle("band", 10.0, 38.0, 2)]);
        assert!((found - 100.0).abs() < 1e-6, "{found}");
    }

    /// The same panels with gaps: one between panel and band on each edge.
    #[test]
    fn gaps_count() {
        let panels = on_edge(rectangle("panel", 100.0, 30.0, 2));
        let found = bound(100.0, 1.0, vec![panels, rectangle("band", 10.0, 50.0, 2)]);
        assert!((found - 111.0).abs() < 1e-6, "{found}");
    }

    #[test]
    fn ten_times_the_pieces_are_ten_times_the_length() {
        let pieces = |n: usize| {
            vec![
                on_edge(rectangle("panel", 100.0, 30.0, 2 * n)),
                rectangle("band", 10.0, 50.0, 2 * n),
                rectangle("pocket", 14.0, 17.0, 2 * n),
            ]
        };
        let (one, ten) = (bound(100.0, 0.0, pieces(1)), bound(100.0, 0.0, pieces(10)));
        assert!((ten - 10.0 * one).abs() < 1e-3 * one, "{one} and {ten}");
    }

    #[test]
    fn without_pieces_on_the_edges_it_says_nothing() {
        assert_eq!(
            bound(100.0, 0.0, vec![rectangle("band", 10.0, 50.0, 2)]),
            0.0
        );
    }
}
