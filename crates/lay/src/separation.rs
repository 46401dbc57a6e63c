//! Moving all pieces at once, a little each, until small overlaps are gone.
//!
//! The sum of the squared depths of all overlaps is minimised over the places of all pieces by a
//! limited-memory quasi-Newton method (L-BFGS, Nocedal 1980), as Imamichi, Yagiura and Nagamochi
//! (2009) part polygons; a place beyond the cloth is moved back onto it. Turns stay.

use std::collections::VecDeque;

use geometry::tolerance::ROUNDING_OF_SHARES;
use geometry::{Point, Vec2};

use crate::board::{Board, Extent};
use crate::tables::Placed;

/// A step has to lower the sum by this share of what its slope promises.
const WORTH_A_STEP: f64 = 1e-4;

/// Steps whose curvature is remembered.
const REMEMBERED: usize = 10;
const MOST_STEPS: usize = 120;
/// Progress over so many steps is judged together.
const JUDGED: usize = 12;

/// The least and the largest share of its length by which a lay is pressed together at a time.
const SMALLEST: f64 = 2e-6;
const LARGEST: f64 = 0.01;

/// Parts overlapping pieces by small moves. Gives whether nothing overlaps any more; when some
/// overlap is left, the board is as it was.
pub(crate) fn settle(board: &mut Board) -> bool {
    let start = board.poses();
    let mut system = System::new(board);
    let free = system.minimise();
    let (placed, measured) = (system.placed, system.measured);
    board.tried += measured;
    if free {
        for (copy, placed) in placed.iter().take(start.poses.len()).enumerate() {
            let mut pose = board.poses[copy];
            pose.at = placed.at;
            board.set(copy, pose);
        }
        board.measure_all();
        if board.total() <= 0.0 {
            return true;
        }
        board.load(&start);
    }
    false
}

/// All places as one vector, with its sum of squared depths and the slope of that sum.
struct System<'a, 'b> {
    board: &'b Board<'a>,
    placed: Vec<Placed>,
    /// Half extents, and the lowest and highest place across.
    halves: Vec<(f64, f64)>,
    across: Vec<(f64, f64)>,
    measured: u64,
}

#[derive(Clone)]
struct State {
    at: Vec<Vec2>,
    sum: f64,
    slope: Vec<Vec2>,
}

impl<'a, 'b> System<'a, 'b> {
    fn new(board: &'b Board<'a>) -> Self {
        let copies = board.copies();
        let stance = |c: usize| board.stance(c, board.poses[c].stance);
        let faults = board
            .tables
            .shapes
            .faults
            .iter()
            .map(|f| board.tables.shapes.shapes[f.0].half);
        Self {
            board,
            placed: board.placed().to_vec(),
            halves: (0..copies).map(|c| stance(c).half).chain(faults).collect(),
            across: (0..copies)
                .map(|c| (stance(c).low, stance(c).high))
                .collect(),
            measured: 0,
        }
    }

    fn onto_cloth(&self, copy: usize, at: Vec2) -> Vec2 {
        let half = self.halves[copy].0;
        let (low, high) = self.across[copy];
        Vec2::new(
            at.x.min(self.board.length - half).max(half),
            at.y.min(high).max(low),
        )
    }

    /// Measures the sum and its slope at the places; what would push a piece off the cloth is
    /// left out of the slope.
    fn measure(&mut self, at: Vec<Vec2>) -> State {
        let copies = at.len();
        for (placed, at) in self.placed.iter_mut().zip(&at) {
            placed.at = at.to_point();
        }
        let gap = self.board.tables.shapes.gap;
        let boxes: Vec<Extent> = self
            .placed
            .iter()
            .zip(&self.halves)
            .map(|(p, h)| Extent::new(p.at, *h))
            .collect();
        let mut slope = vec![Vec2::ZERO; copies];
        let mut sum = 0.0;
        for i in 0..copies {
            let wide = boxes[i].wider(gap);
            for j in i + 1..boxes.len() {
                if wide.meets(&boxes[j]) {
                    self.measured += 1;
                    if let Some(out) = self.board.tables.way_out(&self.placed[i], &self.placed[j]) {
                        sum += out.hypot2();
                        slope[i] += 2.0 * out;
                        if j < copies {
                            slope[j] -= 2.0 * out;
                        }
                    }
                }
            }
        }
        for copy in 0..copies {
            let half = self.halves[copy].0;
            let (low, high) = self.across[copy];
            let s = &mut slope[copy];
            if (at[copy].x <= half && s.x > 0.0)
                || (at[copy].x >= self.board.length - half && s.x < 0.0)
            {
                s.x = 0.0;
            }
            if (at[copy].y <= low && s.y > 0.0) || (at[copy].y >= high && s.y < 0.0) {
                s.y = 0.0;
            }
        }
        State { at, sum, slope }
    }

    /// Whether the sum came down to nothing; the places are then in `placed`.
    fn minimise(&mut self) -> bool {
        let start = self
            .placed
            .iter()
            .take(self.across.len())
            .map(|p| p.at.to_vec2())
            .collect();
        let mut state = self.measure(start);
        let mut memory: VecDeque<(Vec<Vec2>, Vec<Vec2>, f64)> = VecDeque::new();
        let mut marks: VecDeque<f64> = VecDeque::new();
        for _ in 0..MOST_STEPS {
            if state.sum <= 0.0 {
                return true;
            }
            marks.push_back(state.sum);
            if marks.len() > JUDGED && marks.pop_front().is_some_and(|then| state.sum > 0.5 * then)
            {
                return false;
            }
            let mut direction = downhill(&state.slope, &memory);
            if dot(&direction, &state.slope) >= 0.0 {
                memory.clear();
                direction = downhill(&state.slope, &memory);
            }
            let Some(next) = self.step(&state, &direction) else {
                if memory.is_empty() {
                    return false;
                }
                memory.clear();
                continue;
            };
            let moved: Vec<Vec2> = next
                .at
                .iter()
                .zip(&state.at)
                .map(|(a, b)| *a - *b)
                .collect();
            let bent: Vec<Vec2> = next
                .slope
                .iter()
                .zip(&state.slope)
                .map(|(a, b)| *a - *b)
                .collect();
            let curvature = dot(&moved, &bent);
            if curvature > ROUNDING_OF_SHARES * dot(&bent, &bent) {
                memory.push_back((moved, bent, 1.0 / curvature));
                if memory.len() > REMEMBERED {
                    memory.pop_front();
                }
            }
            state = next;
        }
        state.sum <= 0.0
    }

    /// A step along the direction, halved until the sum falls.
    fn step(&mut self, state: &State, direction: &[Vec2]) -> Option<State> {
        let slope = dot(direction, &state.slope);
        let mut length = 1.0;
        for _ in 0..8 {
            let at = state
                .at
                .iter()
                .zip(direction)
                .enumerate()
                .map(|(c, (p, d))| self.onto_cloth(c, *p + *d * length))
                .collect();
            let next = self.measure(at);
            if next.sum <= state.sum + WORTH_A_STEP * length * slope {
                return Some(next);
            }
            length *= 0.5;
        }
        None
    }
}

/// Minus the inverse curvature times the slope, by the two-loop recursion.
fn downhill(slope: &[Vec2], memory: &VecDeque<(Vec<Vec2>, Vec<Vec2>, f64)>) -> Vec<Vec2> {
    let mut q: Vec<Vec2> = slope.to_vec();
    let mut factors = Vec::with_capacity(memory.len());
    for (moved, bent, inverse) in memory.iter().rev() {
        let factor = inverse * dot(moved, &q);
        add(&mut q, bent, -factor);
        factors.push(factor);
    }
    // Half a depth each is the step that parts two pieces when nothing else is in the way.
    let scale = memory
        .back()
        .map_or(0.25, |(_, bent, inverse)| 1.0 / (inverse * dot(bent, bent)));
    q.iter_mut().for_each(|v| *v *= scale);
    for ((moved, bent, inverse), factor) in memory.iter().zip(factors.iter().rev()) {
        let back = inverse * dot(bent, &q);
        add(&mut q, moved, factor - back);
    }
    q.iter_mut().for_each(|v| *v = -*v);
    q
}

fn dot(a: &[Vec2], b: &[Vec2]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a.dot(*b)).sum()
}

fn add(a: &mut [Vec2], b: &[Vec2], factor: f64) {
    a.iter_mut().zip(b).for_each(|(a, b)| *a += *b * factor);
}

/// Presses a lay without overlaps together for as long as small moves suffice, but not below
/// `least`. The board is left with the shortest lay without overlaps.
pub(crate) fn squeeze(board: &mut Board, first: f64, least: f64) {
    board.length = board.reach().min(board.length);
    let mut best = board.poses();
    let mut share = first;
    while share > SMALLEST && best.length > least {
        let length = (best.length * (1.0 - share)).max(least);
        board.length = length;
        for copy in 0..board.copies() {
            let mut pose = best.poses[copy];
            let half = board.stance(copy, pose.stance).half.0;
            pose.at = Point::new(
                (pose.at.x * (1.0 - share)).min(length - half).max(half),
                pose.at.y,
            );
            board.set(copy, pose);
        }
        board.measure_all();
        if board.total() <= 0.0 || settle(board) {
            board.length = board.reach().min(length);
            best = board.poses();
            share = (share * 1.5).min(LARGEST);
        } else {
            share *= 0.4;
        }
    }
    board.load(&best);
}
