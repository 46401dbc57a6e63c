//! Looking for different, shorter lays.

use geometry::Point;

use crate::board::Board;
use crate::poses::{Pose, Poses};
use crate::random::Random;
use crate::shared_search::Stage;
use crate::worker::{Patience, Verdict, Worker};

/// The share by which the cloth is shortened after a success: this much at first, less where
/// attempts get stuck, and more again when they succeed.
const SHRINK: f64 = 0.003;
const LEAST_SHRINK: f64 = 0.000_3;
const LESS: f64 = 0.8;
const MORE: f64 = 1.5;

/// Little patience at first: most attempts that succeed do so soon, and another beginning is cheap. Where attempt after
/// attempt gets stuck the lay is good already, and only a long one shortens it.
fn patience(stuck: usize) -> Patience {
    Patience {
        passes: 60 + 10 * stuck.min(14),
        strikes: 2 + usize::from(stuck > 10),
    }
}

/// A lay longer than so many times the width of the cloth is shortened place by place.
const LONG: f64 = 4.0;

/// The largest pieces, which together make up this share of the hulls' area, change places.
const LARGE: f64 = 0.75;

/// Shortens the best lay and parts what then overlaps, again and again. An attempt that gets
/// stuck and cannot be mended is put by, and a good one of those put by is tried again with two large pieces changed
/// over. Returns when the stage changes or another worker has found a shorter lay.
pub(crate) fn explore(worker: &mut Worker) {
    if worker.look_up() == Some(Verdict::Over) {
        return;
    }
    let best = worker.best.clone();
    worker.board.load(&best);
    let mut share = SHRINK;
    shorten(worker, share);
    let mut put_by: Vec<(f64, Poses)> = Vec::new();
    let mut stuck = 0;
    while worker.stage == Stage::Explore {
        let free = match worker.part(&patience(stuck)) {
            Verdict::Free => true,
            Verdict::Stuck => false,
            Verdict::Overtaken | Verdict::Over => return,
        };
        if free {
            stuck = 0;
            worker.squeeze(SHRINK);
            worker.keep();
            if worker.look_up().is_some() {
                return;
            }
            share = (share * MORE).min(SHRINK);
            shorten(worker, share);
            put_by.clear();
        } else {
            stuck += 1;
            let left = worker.board.total();
            let at = put_by.partition_point(|(l, _)| *l <= left);
            put_by.insert(at, (left, worker.board.poses()));
            let pick = (worker.random.normal(0.25).abs() * put_by.len() as f64) as usize;
            let (_, again) = &put_by[pick.min(put_by.len() - 1)];
            worker.board.load(again);
            share = (share * LESS).max(LEAST_SHRINK);
            worker.board.length = worker.shorter(worker.best.length, share).max(again.length);
            change_over(&mut worker.board, &mut worker.random);
        }
    }
}

/// In the middle; of a long lay, which is many short ones, anywhere, and by no more than of a short one.
fn shorten(worker: &mut Worker, share: f64) {
    let length = worker.board.length;
    let short = LONG * worker.board.tables.shapes.width;
    let (share, cut) = if length > short {
        let cut = worker.random.between(0.0, length);
        (share * short / length, cut)
    } else {
        (share, length / 2.0)
    };
    worker.board.shorten(worker.shorter(length, share), cut);
}

/// Two large pieces change places, and what lay where one of them now is moves to the hole it
/// left. Two pieces on the same edge of the cloth change places along it.
fn change_over(board: &mut Board, random: &mut Random) {
    let shapes = board.tables.shapes;
    let hull = |copy: usize| shapes.of(copy).hull_area;
    let mut sizes: Vec<usize> = (0..board.copies()).collect();
    sizes.sort_by(|a, b| hull(*b).total_cmp(&hull(*a)));
    let all: f64 = sizes.iter().map(|c| hull(*c)).sum();
    let mut sum = 0.0;
    let large: Vec<usize> = sizes
        .iter()
        .copied()
        .take_while(|&c| {
            let before = sum;
            sum += hull(c);
            before < LARGE * all
        })
        .collect();
    let first = large[random.below(large.len())];
    let different = |&&c: &&usize| {
        let (a, b) = (shapes.of(first), shapes.of(c));
        let far = |x: f64, y: f64| (x - y).abs() > 0.01 * x.max(y);
        far(a.hull_area, b.hull_area) && far(a.diameter, b.diameter)
    };
    let mut others: Vec<usize> = large.iter().filter(different).copied().collect();
    if others.is_empty() {
        others = sizes.iter().filter(different).copied().collect();
    }
    if others.is_empty() {
        others = sizes.iter().filter(|&&c| c != first).copied().collect();
    }
    if others.is_empty() {
        return;
    }
    let second = others[random.below(others.len())];
    let (a, b) = (board.poses[first], board.poses[second]);
    let swapped = |board: &mut Board, copy: usize, at: Pose, random: &mut Random| {
        // Its own way up if the other's is not allowed; for a piece on the edge, either edge.
        let stances = board.stances(copy);
        let stance = if stances.len() > 1 && random.below(2) == 0 {
            random.below(stances.len())
        } else {
            board.poses[copy].stance
        };
        let pose = fit(board, copy, stance, at.at);
        board.put(copy, pose);
    };
    let hole = (b.at - a.at, a.at);
    swapped(board, first, b, random);
    swapped(board, second, a, random);
    let extent = shapes.of(first).half;
    let reach = extent.0.min(extent.1);
    for copy in 0..board.copies() {
        if copy == first || copy == second {
            continue;
        }
        let pose = board.poses[copy];
        let off = pose.at - b.at;
        if off.hypot() < reach && board.stances(copy).len() > pose.stance {
            let pose = fit(board, copy, pose.stance, hole.1 + off);
            board.put(copy, pose);
        }
    }
}

/// The pose nearest to a place that the cloth allows.
fn fit(board: &Board, copy: usize, stance: usize, at: Point) -> Pose {
    let s = board.stance(copy, stance);
    Pose {
        stance,
        at: Point::new(
            at.x.min(board.length - s.half.0).max(s.half.0),
            at.y.min(s.high).max(s.low),
        ),
    }
}
