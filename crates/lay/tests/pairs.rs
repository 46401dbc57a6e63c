//! Many pairs in one lay.
#![allow(clippy::unwrap_used)]

mod common;

use std::sync::atomic::{AtomicBool, Ordering};

use common::{limited, mixed, points};
use lay::{Ended, LayError, Piece, Problem, check, search};

/// So many pairs of two sizes: the pieces of `mixed`, and the same a tenth larger.
fn pairs(small: usize, large: usize) -> Problem {
    let one = mixed(1);
    let larger = |piece: &Piece| Piece {
        key: format!("large {}", piece.key),
        outline: piece
            .outline
            .iter()
            .map(|p| (p.to_vec2() * 1.1).to_point())
            .collect(),
        demand: large,
        ..piece.clone()
    };
    let kinds = one.pieces.len();
    let mut pieces = mixed(small).pieces;
    pieces.extend(one.pieces.iter().map(larger));
    let set = |first: usize| {
        (0..2 * kinds)
            .map(|k| usize::from(k / kinds == first))
            .collect()
    };
    let sets = (0..small + large).map(|k| set(usize::from(k >= small)));
    let mut problem = Problem {
        sets: sets.collect(),
        pieces,
        ..one
    };
    // A piece of which there is none is none of the problem's.
    let kept: Vec<bool> = problem.pieces.iter().map(|p| p.demand > 0).collect();
    let only = |set: &mut Vec<usize>| {
        let mut kept = kept.iter();
        set.retain(|_| *kept.next().unwrap());
    };
    problem.sets.iter_mut().for_each(only);
    problem.pieces.retain(|p| p.demand > 0);
    problem
}

fn length(problem: &Problem, places: u64, seed: u64) -> f64 {
    let lay = search(
        problem,
        &limited(places, seed),
        &AtomicBool::new(false),
        &mut |_| {},
    );
    let lay = lay.unwrap();
    assert_eq!(check(problem, &lay.placements, lay.length), []);
    lay.length.to_mm()
}

/// Pairs can always be laid one after the other, so together they never take more.
#[test]
fn pairs_together_take_no_more_than_one_after_the_other() {
    const EACH: u64 = 20_000;
    for seed in 1..=3 {
        let small = length(&pairs(1, 0), EACH, seed);
        let large = length(&pairs(0, 1), EACH, seed);
        for (m, n) in [(2, 0), (1, 1), (4, 0), (3, 2), (6, 6)] {
            let apart = m as f64 * small + n as f64 * large;
            let together = length(&pairs(m, n), EACH * (m + n) as u64, seed);
            assert!(
                together <= apart + 1e-6,
                "{m} and {n}, seed {seed}: {together}, not {apart}"
            );
        }
    }
}

#[test]
fn the_same_seed_lays_many_pairs_the_same_way() {
    let lay = || {
        let problem = pairs(3, 2);
        search(
            &problem,
            &limited(60_000, 5),
            &AtomicBool::new(false),
            &mut |_| {},
        )
        .unwrap()
    };
    assert_eq!(lay().placements, lay().placements);
}

#[test]
fn sets_that_count_more_than_there_is_are_refused() {
    let mut problem = pairs(2, 0);
    problem.sets.push(vec![1]);
    assert_eq!(problem.validate(), Err(LayError::Set(3)));
    problem.sets = vec![vec![0; 9], vec![]];
    problem.sets[0][8] = 1;
    assert_eq!(problem.validate(), Err(LayError::Set(1)));
    // What is in no set is laid all the same.
    problem.sets = vec![vec![1, 1], vec![1, 0, 1]];
    length(&problem, 5_000, 1);
    problem.pieces[0].outline = points(&[(0.0, 0.0), (1.0, 0.0), (0.0, 1.0)]);
    problem.sets = vec![vec![0, 0], vec![0]];
    length(&problem, 5_000, 1);
}

#[test]
fn work_on_single_pairs_is_told_and_can_be_cancelled() {
    let problem = pairs(3, 2);
    let never = AtomicBool::new(false);
    let mut told = Vec::new();
    search(&problem, &limited(60_000, 5), &never, &mut |progress| {
        told.push((progress.length, progress.places));
    })
    .unwrap();
    assert_eq!(told[0].1, 0);
    assert!(told.is_sorted_by_key(|(_, places)| *places), "{told:?}");
    // Two different pairs are laid first; until they are joined the first lay stays the shortest.
    let going = told
        .iter()
        .filter(|(length, places)| *length == told[0].0 && *places > 0);
    assert!(going.count() >= 2, "{told:?}");

    // Cancelled while a single pair is laid, it ends with the lay there is, without laying the others.
    let cancel = AtomicBool::new(false);
    let lay = search(&problem, &limited(u64::MAX, 5), &cancel, &mut |progress| {
        if progress.places > 0 {
            cancel.store(true, Ordering::Relaxed);
        }
    })
    .unwrap();
    assert_eq!(lay.ended, Ended::Cancelled);
    assert_eq!(check(&problem, &lay.placements, lay.length), []);
    assert!(lay.length <= told[0].0);
}
