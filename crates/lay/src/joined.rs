//! A better beginning for many pieces: lays of a few of them, one after the other.
//!
//! A search takes the longer for every piece the more pieces there are. What is cut together, such as
//! the pieces of a pair, makes a good short lay of its own; so an order is halved, set by set, where the finished
//! edges decide down to single sets; these are laid first, and then the lays are joined and searched on, level by level.
//! Pieces that are in no set are halved by number. What is alike is laid once.

use std::collections::BTreeMap;

use geometry::Point;
use trade::Length;

use crate::lay::Placement;
use crate::poses::{Poses, poses_of};
use crate::problem::{Piece, Problem, Turn};
use crate::shapes::{Shapes, turned};
use crate::tables::{Placed, Tables};

/// More copies than this are laid in portions.
const MANY: usize = 110;
/// Lays are joined with this much between them beyond what their outlines ask, in millimetres: more
/// than sums of floating point numbers lose.
const HAIR: f64 = 1e-6;

/// Whether laying the problem in portions is a good beginning; `by_sets` down to single sets.
pub(crate) fn divides(problem: &Problem, copies: usize, by_sets: bool) -> bool {
    let several = match problem.sets.len() {
        0 => copies > MANY,
        1 => false,
        _ => by_sets || copies > MANY,
    };
    // Faults lie at their own places along the cloth, so a lay on them cannot be put together.
    problem.faults.is_empty() && several
}

/// The problem with so many of each piece.
fn portion(problem: &Problem, counts: &[usize], sets: Vec<Vec<usize>>) -> Problem {
    let laid = |k: usize| counts[k] > 0;
    let pieces = problem.pieces.iter().zip(counts);
    let pieces = pieces.filter(|(_, demand)| **demand > 0);
    let only = |set: Vec<usize>| {
        let set = set.into_iter().enumerate();
        set.filter(|(k, _)| laid(*k)).map(|(_, n)| n).collect()
    };
    Problem {
        pieces: pieces
            .map(|(piece, demand)| Piece {
                demand: *demand,
                ..piece.clone()
            })
            .collect(),
        sets: sets.into_iter().map(only).collect(),
        width: problem.width,
        gap: problem.gap,
        faults: Vec::new(),
    }
}

/// One of each different set by itself.
pub(crate) fn singles(problem: &Problem) -> Vec<Problem> {
    let single = |set: Vec<usize>| portion(problem, &set.clone(), vec![set]);
    different(problem).into_iter().map(single).collect()
}

/// The different sets.
fn different(problem: &Problem) -> Vec<Vec<usize>> {
    let mut sets = problem.sets.clone();
    sets.sort();
    sets.dedup();
    sets
}

/// All sets one after the other, given a lay of each of the [`singles`]. Nothing when a piece is in no set.
pub(crate) fn in_a_row(
    problem: &Problem,
    tables: &Tables<'_>,
    singles: &[Vec<Placement>],
) -> Option<Poses> {
    let different = different(problem);
    let mut row: Vec<Placement> = Vec::new();
    for set in &problem.sets {
        let next = singles.get(different.iter().position(|d| d == set)?)?;
        row = if row.is_empty() {
            next.clone()
        } else {
            one_after_the_other(problem, tables, [&row, next])?
        };
    }
    poses_of(problem, tables.shapes, &row)
}

/// The problem in two halves. Sets stay whole and are dealt out, those alike one to each side; what is
/// odd of the other pieces goes, the largest first, to the side that has less.
pub(crate) fn halves(problem: &Problem) -> [Problem; 2] {
    let mut sets = problem.sets.clone();
    sets.sort();
    let mut dealt = [Vec::new(), Vec::new()];
    let mut counts = [vec![0; problem.pieces.len()], vec![0; problem.pieces.len()]];
    let mut left: Vec<usize> = problem.pieces.iter().map(|p| p.demand).collect();
    for (k, set) in sets.into_iter().enumerate() {
        for (piece, n) in set.iter().enumerate() {
            counts[k % 2][piece] += n;
            left[piece] -= n;
        }
        dealt[k % 2].push(set);
    }
    let area = |piece: usize| {
        geometry::area(&problem.pieces[piece].outline)
            .to_mm2()
            .abs()
    };
    let mut filled = [0.0_f64; 2];
    let mut order: Vec<usize> = (0..problem.pieces.len()).collect();
    order.sort_by(|a, b| area(*b).total_cmp(&area(*a)).then(a.cmp(b)));
    for piece in order {
        for half in &mut counts {
            half[piece] += left[piece] / 2;
        }
        if left[piece] % 2 == 1 {
            let less = usize::from(filled[1] < filled[0]);
            counts[less][piece] += 1;
            filled[less] += area(piece);
        }
    }
    let [first, second] = dealt;
    [
        portion(problem, &counts[0], first),
        portion(problem, &counts[1], second),
    ]
}

/// Two lays one after the other, either of them turned head to tail if their ends then go further
/// into each other. Nothing when together they are not the problem's pieces.
pub(crate) fn joined(
    problem: &Problem,
    tables: &Tables<'_>,
    lays: [&[Placement]; 2],
) -> Option<Poses> {
    let all = one_after_the_other(problem, tables, lays)?;
    poses_of(problem, tables.shapes, &all)
}

fn one_after_the_other(
    problem: &Problem,
    tables: &Tables<'_>,
    lays: [&[Placement]; 2],
) -> Option<Vec<Placement>> {
    let units = lays.map(|lay| Unit::new(problem, tables.shapes, lay));
    let [Some(first), Some(second)] = units else {
        return None;
    };
    let ways = |unit: Unit| {
        let turned = unit.turned(problem, tables.shapes);
        std::iter::once(unit).chain(turned).collect::<Vec<_>>()
    };
    let (firsts, seconds) = (ways(first), ways(second));
    let pairs = firsts
        .iter()
        .flat_map(|a| seconds.iter().map(move |b| (a, b)));
    let (_, a, b, by) = pairs
        .map(|(a, b)| (a, b, b.after(a, tables)))
        .map(|(a, b, by)| (a.long.max(b.long + by), a, b, by))
        .min_by(|x, y| x.0.total_cmp(&y.0))?;
    let mut laid: BTreeMap<&str, usize> = BTreeMap::new();
    let moved = b.placements.iter().map(|p| Placement {
        x: p.x + Length::mm(by),
        ..p.clone()
    });
    let mut all: Vec<Placement> = a.placements.iter().cloned().chain(moved).collect();
    for (placement, piece) in all.iter_mut().zip(a.pieces.iter().chain(&b.pieces)) {
        let copy = laid.entry(problem.pieces[*piece].key.as_str()).or_insert(0);
        placement.copy = *copy;
        *copy += 1;
    }
    Some(all)
}

/// A lay to be joined to another.
struct Unit {
    placements: Vec<Placement>,
    /// The piece of each.
    pieces: Vec<usize>,
    placed: Vec<Placed>,
    /// How far each reaches to either side of its middle.
    halves: Vec<f64>,
    long: f64,
}

impl Unit {
    fn new(problem: &Problem, shapes: &Shapes, lay: &[Placement]) -> Option<Unit> {
        let mut unit = Unit {
            placements: lay.to_vec(),
            pieces: Vec::new(),
            placed: Vec::new(),
            halves: Vec::new(),
            long: 0.0,
        };
        for placement in lay {
            let piece = problem.pieces.iter().position(|p| p.key == placement.key)?;
            let copy = shapes.piece_of.iter().position(|p| *p == piece)?;
            let shape = shapes.of(copy);
            let middle = placement.turn.apply(shape.middle);
            let at = Point::new(
                placement.x.to_mm() + middle.x,
                placement.y.to_mm() + middle.y,
            );
            let half = turned(shape.half, placement.turn).0;
            unit.long = unit.long.max(at.x + half);
            unit.pieces.push(piece);
            unit.halves.push(half);
            unit.placed.push(Placed {
                shape: shapes.copies[copy],
                turn: placement.turn,
                at,
            });
        }
        Some(unit)
    }

    /// The whole lay head to tail, where every piece may lie so.
    fn turned(&self, problem: &Problem, shapes: &Shapes) -> Option<Unit> {
        let wide = problem.width;
        let mut placements = Vec::new();
        for (placement, piece) in self.placements.iter().zip(&self.pieces) {
            let piece = &problem.pieces[*piece];
            let turn = Turn::ALL[usize::from((placement.turn.quarters() + 2) % 4)];
            if piece.within.is_some() || !piece.turns.contains(&turn) {
                return None;
            }
            placements.push(Placement {
                turn,
                x: Length::mm(self.long) - placement.x,
                y: wide - placement.y,
                ..placement.clone()
            });
        }
        Unit::new(problem, shapes, &placements)
    }

    /// How far along the cloth this lay has to begin after another does.
    fn after(&self, before: &Unit, tables: &Tables<'_>) -> f64 {
        let gap = tables.shapes.gap;
        // As far as the rectangles round two pieces ask; only the farthest are looked at closely.
        let mut pairs: Vec<(f64, &Placed, &Placed)> = Vec::new();
        for (a, half) in before.placed.iter().zip(&before.halves) {
            for (b, other) in self.placed.iter().zip(&self.halves) {
                let asked = (a.at.x + half) - (b.at.x - other) + gap;
                pairs.push((asked, a, b));
            }
        }
        pairs.sort_by(|x, y| y.0.total_cmp(&x.0));
        let mut by = 0.0_f64;
        for (asked, a, b) in pairs {
            if asked <= by {
                break;
            }
            let barred = tables.blocked_along(a, b);
            let until = barred.iter().map(|(_, until)| *until);
            let apart = until.fold(f64::NEG_INFINITY, f64::max);
            by = by.max(apart - (b.at.x - a.at.x) + HAIR);
        }
        by
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    /// Wedges, narrow at their right ends, on a cloth as wide as two.
    fn wedges(demand: usize, turns: Vec<Turn>) -> Problem {
        let outline = [(0.0, 0.0), (100.0, 0.0), (100.0, 2.0), (0.0, 20.0)];
        Problem {
            width: Length::mm(20.0),
            pieces: vec![Piece {
                key: "wedge".to_owned(),
                outline: outline.map(Point::from).to_vec(),
                demand,
                turns,
                on_edge: None,
                within: None,
            }],
            gap: Length::ZERO,
            faults: Vec::new(),
            sets: vec![vec![1]; demand],
        }
    }

    fn alone() -> Vec<Placement> {
        vec![Placement {
            key: "wedge".to_owned(),
            copy: 0,
            turn: Turn::None,
            x: Length::ZERO,
            y: Length::ZERO,
        }]
    }

    #[test]
    fn ends_go_into_each_other_where_a_lay_may_be_turned() {
        let length = |turns: Vec<Turn>| {
            let problem = wedges(2, turns);
            let shapes = Shapes::new(&problem).unwrap();
            let one = alone();
            let poses = joined(&problem, &Tables::new(&shapes), [&one, &one]).unwrap();
            poses.length
        };
        // Narrow end by narrow end, the slopes meet after the 20 mm of height have been shared.
        let turned = length(vec![Turn::None, Turn::Half]);
        assert!((turned - 111.111).abs() < 0.01, "{turned}");
        let straight = length(vec![Turn::None]);
        assert!((straight - 200.0).abs() < 0.01, "{straight}");
    }

    #[test]
    fn sets_stay_whole_and_those_alike_go_to_either_side() {
        let mut problem = wedges(6, vec![Turn::None]);
        problem.sets = vec![vec![1], vec![2], vec![1], vec![2]];
        let [a, b] = halves(&problem);
        assert_eq!(a, b);
        assert_eq!((a.pieces[0].demand, a.sets), (3, vec![vec![1], vec![2]]));
        assert_eq!(singles(&problem).len(), 2);
    }
}
