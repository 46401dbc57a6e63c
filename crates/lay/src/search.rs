//! The search as a whole: a first lay at once, then better ones for as long as it may go on.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use geometry::Point;
use trade::{Length, Share};

use crate::board::{Pose, Poses};
use crate::bounds::Bounds;
use crate::check::check;
use crate::exchange::{Ended, Exchange, Limits};
use crate::joined::{FEW, MANY, joined};
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
#[derive(Clone, Debug, PartialEq)]
pub struct Progress {
    /// Where each copy lies in the shortest lay so far.
    pub placements: Vec<Placement>,
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

/// After so many looks without news progress is told all the same, so that whoever waits sees it go on.
const TELL_ANYWAY: u32 = 25;

/// Looks for a short lay.
///
/// `tell` is called for the first lay, for every shorter one (a few in a row may be told as one),
/// twice a second while workers try places, and at the end. Setting `cancel` ends the search; the best lay found so far is returned.
///
/// # Errors
/// A [`LayError`] when the problem makes no sense or a piece has no place.
pub fn search(
    problem: &Problem,
    options: &Options,
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(&Progress),
) -> Result<Lay, LayError> {
    search_on(problem, options, &[], cancel, tell)
}

/// Looks for a shorter lay than one that is known, as [`search`] does. Where the known lay does not
/// keep the rules of the problem, the search begins afresh.
///
/// # Errors
/// As [`search`].
pub fn search_on(
    problem: &Problem,
    options: &Options,
    known: &[Placement],
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(&Progress),
) -> Result<Lay, LayError> {
    divided((problem, MANY), options, known, cancel, tell)
}

/// A search that first divides the problem when it has more copies than that.
fn divided(
    (problem, many): (&Problem, usize),
    options: &Options,
    known: &[Placement],
    cancel: &AtomicBool,
    tell: &mut dyn FnMut(&Progress),
) -> Result<Lay, LayError> {
    let began = Instant::now();
    let shapes = Shapes::new(problem)?;
    let known = poses_of(problem, &shapes, known).filter(|p| {
        check(
            problem,
            &placements(problem, &shapes, p),
            Length::mm(p.length),
        )
        .is_empty()
    });
    let afresh = known.is_none();
    let mut first = match known {
        Some(known) => known,
        None => start(problem, &shapes, options.seed)?,
    };
    let area = Length::mm(shapes.area / shapes.width);
    let progress = |poses: &Poses, places: u64, bound: Length| Progress {
        placements: placements(problem, &shapes, poses),
        places,
        length: Length::mm(poses.length),
        efficiency: efficiency(&shapes, poses.length),
        bound,
        elapsed: began.elapsed(),
    };
    tell(&progress(&first, 0, area));
    let tables = Tables::new(&shapes);
    let exact = Shapes::exact(problem)?;
    let bounds = Bounds::new(&Tables::new(&exact));
    let bound = bounds.best();
    let mut places = 0;
    if afresh && shapes.copies.len() > many {
        let together = joined(problem, &shapes, options, |half, options| {
            let lay = divided((half, FEW), options, &[], cancel, &mut |_| ()).ok()?;
            places += lay.places;
            Some(lay.placements)
        });
        if let Some(together) = together.filter(|t| t.length < first.length) {
            first = together;
            tell(&progress(&first, places, bound));
        }
    }
    let limits = Limits {
        time: options
            .limits
            .time
            .map(|t| t.saturating_sub(began.elapsed())),
        places: options.limits.places.map(|p| p.saturating_sub(places)),
    };
    let workers = options.workers.clamp(1, 64);
    let exchange = Exchange::new(
        first.clone(),
        workers,
        limits,
        Instant::now(),
        bound.to_mm(),
    );
    std::thread::scope(|scope| {
        for number in 0..workers {
            let (tables, exchange, first) = (&tables, &exchange, &first);
            scope.spawn(move || Worker::new(tables, exchange, number, options.seed, first).run());
        }
        let (mut told, mut silent) = (0, 0);
        loop {
            silent += 1;
            let version = exchange.version();
            if version != told || silent >= TELL_ANYWAY {
                (told, silent) = (version, 0);
                let (best, tried) = exchange.standing();
                tell(&progress(&best, places + tried, bound));
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
    let (best, tried, ended) = exchange.finish();
    places += tried;
    tell(&progress(&best, places, bound));
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

/// The placements as poses of the copies, in the order of the pieces. Nothing when they are not the
/// problem's pieces.
pub(crate) fn poses_of(
    problem: &Problem,
    shapes: &Shapes,
    placements: &[Placement],
) -> Option<Poses> {
    let first_copy: BTreeMap<&str, usize> = problem
        .pieces
        .iter()
        .scan(0, |at, piece| {
            let first = *at;
            *at += piece.demand;
            Some((piece.key.as_str(), first))
        })
        .collect();
    let mut poses = vec![None; shapes.copies.len()];
    let mut length: f64 = 0.0;
    for placement in placements {
        let copy = first_copy.get(placement.key.as_str())? + placement.copy;
        if problem.pieces.get(*shapes.piece_of.get(copy)?)?.key != placement.key {
            return None;
        }
        let shape = shapes.of(copy);
        let stance = shape
            .stances
            .iter()
            .position(|s| s.turn == placement.turn)?;
        let middle = placement.turn.apply(shape.middle);
        let at = Point::new(
            placement.x.to_mm() + middle.x,
            placement.y.to_mm() + middle.y,
        );
        length = length.max(at.x + shape.stances[stance].half.0);
        *poses.get_mut(copy)? = Some(Pose { stance, at });
    }
    let poses: Option<Vec<Pose>> = poses.into_iter().collect();
    Some(Poses {
        length,
        poses: poses?,
    })
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
