//! The search as a whole: a first lay at once, then better ones for as long as it may go on.

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use trade::{Length, Share};

use crate::board::Poses;
use crate::bounds::Bounds;
use crate::check::check;
use crate::exchange::{Ended, Exchange, Limits};
use crate::lay::{Lay, Placement};
use crate::problem::{LayError, Problem};
use crate::shapes::Shapes;
use crate::start::start;
use crate::tables::Tables;
use crate::worker::Worker;

/// How to search.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Options {
    /// The start of chance.
    pub seed: u64,
    /// How many threads work; at least one does.
    pub workers: usize,
    /// When to end. Without limits the search goes on until it is cancelled.
    pub limits: Limits,
}

impl Default for Options {
    /// Ten seconds on two threads.
    fn default() -> Self {
        Self {
            seed: 1,
            workers: 2,
            limits: Limits {
                time: Some(Duration::from_secs(10)),
                places: None,
            },
        }
    }
}

/// How a search stands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Progress {
    /// Places tried by all workers together.
    pub places: u64,
    /// The shortest lay so far.
    pub length: Length,
    /// Its efficiency.
    pub efficiency: Share,
    /// No lay is shorter than this.
    pub bound: Length,
    /// Time since the search began.
    pub elapsed: Duration,
}

/// How often progress is told and a wish to cancel is seen.
const TELL_EVERY: Duration = Duration::from_millis(20);

/// Looks for a short lay.
///
/// `tell` is called for the first lay, for every shorter one (a few in a row may be told as one)
/// and at the end. Setting `cancel` ends the search; the best lay found so far is returned.
///
/// # Errors
/// A [`LayError`] when the problem makes no sense or a piece has no place.
pub fn search(
    problem: &Problem,
    options: &Options,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(&Progress),
) -> Result<Lay, LayError> {
    let began = Instant::now();
    let shapes = Shapes::new(problem)?;
    let first = start(problem, &shapes, options.seed)?;
    let area = Length::mm(shapes.area / shapes.width);
    let progress = |length: f64, places: u64, bound: Length| Progress {
        places,
        length: Length::mm(length),
        efficiency: efficiency(&shapes, length),
        bound,
        elapsed: began.elapsed(),
    };
    tell(&progress(first.length, 0, area));
    let tables = Tables::new(&shapes);
    let bounds = Bounds::new(&tables);
    let bound = bounds.best();
    let workers = options.workers.clamp(1, 64);
    let exchange = Exchange::new(first.clone(), workers, options.limits, began, bound.to_mm());
    std::thread::scope(|scope| {
        for number in 0..workers {
            let (tables, exchange, first) = (&tables, &exchange, &first);
            scope.spawn(move || Worker::new(tables, exchange, number, options.seed, first).run());
        }
        let mut told = 0;
        loop {
            let standing = exchange.standing();
            if standing.version != told {
                told = standing.version;
                tell(&progress(standing.length, standing.tried, bound));
            }
            if exchange.over() {
                break;
            }
            if cancel.load(Ordering::Relaxed) {
                exchange.end(Ended::Cancelled);
            }
            std::thread::sleep(TELL_EVERY);
        }
    });
    let (best, places, ended) = exchange.finish();
    tell(&progress(best.length, places, bound));
    let lay = |poses: &Poses| Lay {
        placements: placements(problem, &shapes, poses),
        length: Length::mm(poses.length),
        efficiency: efficiency(&shapes, poses.length),
        bounds,
        ended,
        places,
    };
    let found = lay(&best);
    // Should the search and the check ever disagree, the first lay stands.
    if check(problem, &found.placements, found.length).is_empty() {
        Ok(found)
    } else {
        Ok(lay(&first))
    }
}

fn efficiency(shapes: &Shapes, length: f64) -> Share {
    Share::ratio(shapes.area / (shapes.width * length))
}

/// The poses in the pieces' own coordinates, copies of a piece numbered from 0.
pub(crate) fn placements(problem: &Problem, shapes: &Shapes, poses: &Poses) -> Vec<Placement> {
    let mut laid = vec![0; problem.pieces.len()];
    poses
        .poses
        .iter()
        .enumerate()
        .map(|(c, pose)| {
            let piece = shapes.piece_of[c];
            let copy = laid[piece];
            laid[piece] += 1;
            let turn = shapes.of(c).stances[pose.stance].turn;
            let middle = turn.apply(shapes.of(c).middle);
            Placement {
                key: problem.pieces[piece].key.clone(),
                copy,
                turn,
                x: Length::mm(pose.at.x - middle.x),
                y: Length::mm(pose.at.y - middle.y),
            }
        })
        .collect()
}
