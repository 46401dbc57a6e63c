//! The bound by the skeleton of a lay: the pieces on both finished edges, and nothing else.
//!
//! A piece on an edge can only move along the cloth. Of two such pieces, one seen from the other has
//! some stretches of distance it may not have, so a lay of all of them is a choice, for every two, of
//! the side on which they pass; the choices are differences of places, and the shortest lay that keeps
//! them is a longest path. The search takes the choices one at a time, always from the state whose
//! length is least. Whenever it ends, no lay at all is shorter than the least length left.

use std::cmp::Ordering;
use std::collections::{BTreeMap, BinaryHeap};

use geometry::Point;

use crate::shapes::Shapes;
use crate::tables::{Placed, Tables};

/// More pieces on the edges than this are not tried: the other bounds are as good there.
const MOST_PIECES: usize = 16;
/// The most states looked at.
const MOST_STATES: usize = 20_000;
/// Distances are kept to this, in millimetres; a conflict smaller than it counts as none.
const EXACT: f64 = 1e-6;

/// A shape on an edge in one of its stances.
type Laid = (usize, usize);

/// The stretches of distance barred between every two, worked out when first asked for.
struct Barred<'a> {
    tables: &'a Tables<'a>,
    known: BTreeMap<(Laid, Laid), Vec<(f64, f64)>>,
}

impl Barred<'_> {
    fn between(&mut self, a: Laid, b: Laid) -> &[(f64, f64)] {
        let tables = self.tables;
        self.known.entry((a, b)).or_insert_with(|| {
            let placed = |(shape, stance): Laid| {
                let stance = tables.shapes.shapes[shape].stances[stance];
                Placed {
                    shape,
                    turn: stance.turn,
                    at: Point::new(0.0, stance.low),
                }
            };
            tables.blocked_along(&placed(a), &placed(b))
        })
    }
}

/// That `later` lies at least `by` after `earlier`; it may be negative.
#[derive(Clone, Copy, Debug)]
struct After {
    earlier: usize,
    later: usize,
    by: f64,
}

/// Choices made so far, and the least length they leave.
#[derive(Clone, Debug)]
struct State {
    length: f64,
    stances: Vec<usize>,
    order: Vec<After>,
    at: Vec<f64>,
}

impl PartialEq for State {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for State {}

impl PartialOrd for State {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for State {
    /// The least length comes out of the heap first; of two alike, the one with more choices made.
    fn cmp(&self, other: &Self) -> Ordering {
        other
            .length
            .total_cmp(&self.length)
            .then(self.stances.len().cmp(&other.stances.len()))
            .then(self.order.len().cmp(&other.order.len()))
    }
}

/// A length in millimetres that no lay can be shorter than, by the pieces on the edges alone; 0 where
/// there are none or too many.
pub(crate) fn skeleton(tables: &Tables) -> f64 {
    let shapes = tables.shapes;
    let copies: Vec<usize> = (0..shapes.copies.len())
        .filter(|&c| shapes.of(c).on_edge)
        .collect();
    if copies.is_empty() || copies.len() > MOST_PIECES {
        return 0.0;
    }
    let mut heap = BinaryHeap::new();
    heap.push(State {
        length: 0.0,
        stances: Vec::new(),
        order: Vec::new(),
        at: Vec::new(),
    });
    let mut barred = Barred {
        tables,
        known: BTreeMap::new(),
    };
    let mut looked_at = 0;
    while let Some(state) = heap.pop() {
        looked_at += 1;
        if looked_at > MOST_STATES {
            return state.length;
        }
        if state.stances.len() < copies.len() {
            let next = copies[state.stances.len()];
            let first = match state.stances.last() {
                Some(&before) if alike(shapes, &copies, state.stances.len()) => before,
                _ => 0,
            };
            for stance in first..shapes.of(next).stances.len() {
                let mut stances = state.stances.clone();
                stances.push(stance);
                let mut order = state.order.clone();
                if state.stances.last() == Some(&stance)
                    && alike(shapes, &copies, stances.len() - 1)
                {
                    order.push(After {
                        earlier: stances.len() - 2,
                        later: stances.len() - 1,
                        by: 0.0,
                    });
                }
                push(&mut heap, shapes, &copies, stances, order);
            }
            continue;
        }
        match conflict(&mut barred, &copies, &state) {
            None => return state.length,
            Some((earlier, later, (from, to))) => {
                // `later` lies at less than `from` or at more than `to` from `earlier`.
                for after in [
                    After {
                        earlier,
                        later,
                        by: to,
                    },
                    After {
                        earlier: later,
                        later: earlier,
                        by: -from,
                    },
                ] {
                    let mut order = state.order.clone();
                    order.push(after);
                    push(&mut heap, shapes, &copies, state.stances.clone(), order);
                }
            }
        }
    }
    0.0
}

/// Whether the copy is of the same shape as the one before it: the two may then keep one order, on one
/// edge as in choosing the edge, without any lay being lost.
fn alike(shapes: &Shapes, copies: &[usize], k: usize) -> bool {
    k > 0 && shapes.copies[copies[k - 1]] == shapes.copies[copies[k]]
}

/// Puts the state on the heap, unless its choices contradict each other.
fn push(
    heap: &mut BinaryHeap<State>,
    shapes: &Shapes,
    copies: &[usize],
    stances: Vec<usize>,
    order: Vec<After>,
) {
    let half = |k: usize| shapes.of(copies[k]).stances[stances[k]].half.0;
    let mut at: Vec<f64> = (0..stances.len()).map(half).collect();
    // Longest path (Bellman 1958, Ford 1956); a chain longer than all pieces is a contradiction.
    for round in 0..=stances.len() {
        let mut moved = false;
        for after in &order {
            let least = at[after.earlier] + after.by;
            if at[after.later] < least - EXACT {
                at[after.later] = least;
                moved = true;
            }
        }
        if !moved {
            break;
        }
        if round == stances.len() {
            return;
        }
    }
    let length = (0..stances.len())
        .map(|k| at[k] + half(k))
        .fold(0.0, f64::max);
    heap.push(State {
        length,
        stances,
        order,
        at,
    });
}

/// The two pieces that overlap by most where the state has them, with the stretch of distances that is
/// barred.
fn conflict(
    barred: &mut Barred,
    copies: &[usize],
    state: &State,
) -> Option<(usize, usize, (f64, f64))> {
    let laid = |k: usize, barred: &Barred| {
        let shape = barred.tables.shapes.copies[copies[k]];
        (shape, state.stances[k])
    };
    let mut worst = None;
    let mut most = EXACT;
    for later in 0..copies.len() {
        for earlier in 0..later {
            let (a, b) = (laid(earlier, barred), laid(later, barred));
            let distance = state.at[later] - state.at[earlier];
            for &(from, to) in barred.between(a, b) {
                let depth = (distance - from).min(to - distance);
                if depth > most {
                    most = depth;
                    worst = Some((earlier, later, (from, to)));
                }
            }
        }
    }
    worst
}
