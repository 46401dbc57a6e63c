//! The search as a whole: a first lay at once, then better ones for as long as it may go on.

use std::collections::BTreeMap;
use std::sync::atomic::AtomicBool;
use std::time::{Duration, Instant};

use geometry::Point;
use trade::{Length, Share};

use crate::board::{Pose, Poses};
use crate::bounds::Bounds;
use crate::check::check;
use crate::effort::Effort;
use crate::exchange::Limits;
use crate::lay::{Lay, Placement};
use crate::portions::{Begun, Heard, Portions, left_of};
use crate::problem::{LayError, Problem};
use crate::shapes::Shapes;
use crate::start::start;
use crate::tables::Tables;

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
    let mut portions = Portions::new(cancel);
    let began = Instant::now();
    let mut last: Option<Progress> = None;
    divided(problem, options, known, &mut portions, &mut |heard| {
        match (heard, &mut last) {
            (Heard::Lay(progress), last) => *last = Some(progress),
            (Heard::Going(places), Some(last)) => {
                last.places = last.places.max(places);
                last.elapsed = began.elapsed();
            }
            (Heard::Going(_), None) => {}
        }
        if let Some(progress) = &last {
            tell(progress);
        }
    })
}

/// A search that first divides the problem where it has many pieces.
pub(crate) fn divided(
    problem: &Problem,
    options: &Options,
    known: &[Placement],
    portions: &mut Portions<'_>,
    hear: &mut dyn FnMut(Heard),
) -> Result<Lay, LayError> {
    let before = portions.places;
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
    // Nobody waits for a first lay of a half of something larger, or asks for its bounds.
    let inner = std::mem::replace(&mut portions.inner, true);
    let half = inner && problem.sets.len() > 1;
    let first = match known {
        None if !half => Some(start(problem, &shapes, options.seed)?),
        _ => None,
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
    if let Some(first) = known.as_ref().or(first.as_ref()) {
        hear(Heard::Lay(progress(first, 0, area)));
    }
    let tables = Tables::new(&shapes);
    let bounds = if half {
        Bounds::of_area(area)
    } else {
        crate::least::bounds(problem)?
    };
    let bound = bounds.best();
    if !inner {
        portions.by_sets = bounds.edges_decide();
    }
    let Begun { first, row } = match known {
        Some(first) => Begun { first, row: None },
        None => {
            let left = Options {
                limits: left_of(&options.limits, began, 0),
                ..*options
            };
            portions.begin((problem, &tables), &left, first, hear)?
        }
    };
    let mut places = portions.places - before;
    let mut standing = |poses: &Poses, places: u64| {
        let best = row.as_ref().filter(|row| row.length < poses.length);
        hear(Heard::Lay(progress(best.unwrap_or(poses), places, bound)));
    };
    standing(&first, places);
    let effort = Effort {
        tables: &tables,
        options: Options {
            limits: left_of(&options.limits, began, places),
            ..*options
        },
        bound: bound.to_mm(),
        cancel: portions.cancel,
    };
    let found = if row.is_some() {
        effort.search_in_heats(problem, &first, &mut |best, tried| {
            standing(best, places + tried)
        })
    } else {
        effort.search(&first, &mut |best, tried| standing(best, places + tried))
    };
    let ended = found.ended;
    places += found.tried;
    portions.places += found.tried;
    let best = match row {
        Some(row) if row.length < found.best.length => row,
        _ => found.best,
    };
    hear(Heard::Lay(progress(&best, places, bound)));
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
