//! A better beginning for many pieces: two lays of half of them each, one after the other.
//!
//! A search takes the longer for every piece the more pieces there are, so an order of a dozen pairs
//! is halved, and halved again, until a portion is about a pair; then the lays are joined and searched
//! on, level by level. Halves alike are searched once.

use std::collections::BTreeMap;

use trade::Length;

use crate::board::Poses;
use crate::exchange::Limits;
use crate::lay::Placement;
use crate::problem::{Piece, Problem};
use crate::search::{Options, poses_of};
use crate::shapes::Shapes;

/// More copies than this are worth dividing, and once divided, portions are divided further down to
/// this many.
pub(crate) const MANY: usize = 110;
pub(crate) const FEW: usize = 30;
/// The share of a search spent on its halves.
const SHARE: f64 = 0.7;

/// The copies of each piece in either half. Faults lie at their own places along the cloth, so a lay on
/// them cannot be put together.
fn halves(problem: &Problem) -> Option<[Vec<usize>; 2]> {
    if !problem.faults.is_empty() {
        return None;
    }
    let mut halves = [vec![0; problem.pieces.len()], vec![0; problem.pieces.len()]];
    // What is odd goes, the largest first, to the half that has less.
    let mut filled = [0.0_f64; 2];
    let area = |piece: usize| {
        geometry::area(&problem.pieces[piece].outline)
            .to_mm2()
            .abs()
    };
    let mut order: Vec<usize> = (0..problem.pieces.len()).collect();
    order.sort_by(|a, b| area(*b).total_cmp(&area(*a)).then(a.cmp(b)));
    for piece in order {
        let demand = problem.pieces[piece].demand;
        for half in &mut halves {
            half[piece] = demand / 2;
        }
        if demand % 2 == 1 {
            let less = usize::from(filled[1] < filled[0]);
            halves[less][piece] += 1;
            filled[less] += area(piece);
        }
    }
    Some(halves)
}

/// Lays the halves one after the other. Nothing when a half cannot be laid by itself.
pub(crate) fn joined(
    problem: &Problem,
    shapes: &Shapes,
    options: &Options,
    mut lay: impl FnMut(&Problem, &Options) -> Option<Vec<Placement>>,
) -> Option<Poses> {
    let halves = halves(problem)?;
    let different = if halves[0] == halves[1] {
        &halves[..1]
    } else {
        &halves[..]
    };
    let share = SHARE / different.len() as f64;
    let options = Options {
        limits: Limits {
            time: options.limits.time.map(|t| t.mul_f64(share)),
            places: options.limits.places.map(|p| (p as f64 * share) as u64),
        },
        ..*options
    };
    let mut lays: Vec<(&Vec<usize>, Vec<Placement>)> = Vec::new();
    for half in different {
        let part = Problem {
            pieces: problem
                .pieces
                .iter()
                .zip(half)
                .filter(|(_, demand)| **demand > 0)
                .map(|(piece, demand)| Piece {
                    demand: *demand,
                    ..piece.clone()
                })
                .collect(),
            ..problem.clone()
        };
        lays.push((half, lay(&part, &options)?));
    }
    let mut all = Vec::new();
    let mut laid = BTreeMap::new();
    let mut from = 0.0;
    for half in &halves {
        let (_, placements) = lays.iter().find(|(h, _)| *h == half)?;
        let mut reach: f64 = from;
        for placement in placements {
            let piece = problem.pieces.iter().find(|p| p.key == placement.key)?;
            let copy = laid.entry(placement.key.clone()).or_insert(0);
            let placed = Placement {
                copy: *copy,
                x: placement.x + Length::mm(from),
                ..placement.clone()
            };
            *copy += 1;
            reach = placed.outline(piece).iter().fold(reach, |r, p| r.max(p.x));
            all.push(placed);
        }
        from = reach + shapes.gap;
    }
    poses_of(problem, shapes, &all)
}
