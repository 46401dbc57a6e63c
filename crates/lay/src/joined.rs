//! A better beginning for many pieces: short lays of a share of them each, one after the other.
//!
//! A search takes the longer for every piece the more pieces there are, so an order of a dozen pairs
//! is first laid in portions of a few pairs. Portions alike are searched once.

use std::collections::BTreeMap;

use trade::Length;

use crate::board::Poses;
use crate::exchange::Limits;
use crate::lay::Placement;
use crate::problem::{Piece, Problem};
use crate::search::{Options, poses_of};
use crate::shapes::Shapes;

/// More copies than this are laid in portions first.
const MANY: usize = 110;
/// About so many copies make a portion.
const PORTION: usize = 60;
/// The share of the whole search spent on the portions.
const SHARE: f64 = 0.35;

/// The copies of each piece in each portion; nothing where the whole is to be laid at once. Faults lie
/// at their own places along the cloth, so a lay on them cannot be put together.
pub(crate) fn portions(problem: &Problem, shapes: &Shapes) -> Option<Vec<Vec<usize>>> {
    let copies = shapes.copies.len();
    if copies <= MANY || !problem.faults.is_empty() {
        return None;
    }
    let count = copies.div_ceil(PORTION);
    let mut portions = vec![vec![0; problem.pieces.len()]; count];
    // What is left after an even division goes, the largest first, to the portion that has least.
    let mut filled = vec![0.0_f64; count];
    let area = |piece: usize| {
        geometry::area(&problem.pieces[piece].outline)
            .to_mm2()
            .abs()
    };
    let mut order: Vec<usize> = (0..problem.pieces.len()).collect();
    order.sort_by(|a, b| area(*b).total_cmp(&area(*a)).then(a.cmp(b)));
    for piece in order {
        let demand = problem.pieces[piece].demand;
        for portion in &mut portions {
            portion[piece] = demand / count;
        }
        for _ in 0..demand % count {
            let least = (0..count).min_by(|a, b| filled[*a].total_cmp(&filled[*b]))?;
            portions[least][piece] += 1;
            filled[least] += area(piece);
        }
    }
    Some(portions)
}

/// Lays the portions one after the other. Nothing when a portion cannot be laid by itself.
pub(crate) fn joined(
    problem: &Problem,
    shapes: &Shapes,
    options: &Options,
    mut lay: impl FnMut(&Problem, &Options) -> Option<Vec<Placement>>,
) -> Option<Poses> {
    let portions = portions(problem, shapes)?;
    let mut different: Vec<&Vec<usize>> = Vec::new();
    for portion in &portions {
        if !different.contains(&portion) {
            different.push(portion);
        }
    }
    let share = SHARE / different.len() as f64;
    let options = Options {
        limits: Limits {
            time: options.limits.time.map(|t| t.mul_f64(share)),
            places: options.limits.places.map(|p| (p as f64 * share) as u64),
        },
        ..*options
    };
    let mut lays: Vec<(&Vec<usize>, Vec<Placement>)> = Vec::new();
    for portion in different {
        let part = Problem {
            pieces: problem
                .pieces
                .iter()
                .zip(portion)
                .filter(|(_, demand)| **demand > 0)
                .map(|(piece, demand)| Piece {
                    demand: *demand,
                    ..piece.clone()
                })
                .collect(),
            ..problem.clone()
        };
        lays.push((portion, lay(&part, &options)?));
    }
    let mut all = Vec::new();
    let mut laid = BTreeMap::new();
    let mut from = 0.0;
    for portion in &portions {
        let (_, placements) = lays.iter().find(|(p, _)| *p == portion)?;
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
