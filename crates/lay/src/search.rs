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
use crate::joined::{FEW, MANY, divides, halves, joined, singles};
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
    let mut portions = Portions {
        many: MANY,
        cancel,
        laid: BTreeMap::new(),
        places: 0,
        inner: false,
    };
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

/// What is heard from inside a search.
enum Heard {
    /// A lay of all that is looked for.
    Lay(Progress),
    /// Places tried so far, by work on portions of it.
    Going(u64),
}

/// The lays of portions of a problem, each looked for once.
struct Portions<'a> {
    /// What is in no set is divided when it is more copies than this.
    many: usize,
    cancel: &'a AtomicBool,
    /// By the copies of each piece.
    laid: BTreeMap<Copies, Vec<Placement>>,
    /// Places tried for them.
    places: u64,
    /// Whether what is looked for is one of them and not the whole.
    inner: bool,
}

/// After so many places, or so long, a single set is laid about as short as it will be.
const A_SINGLE: (u64, Duration) = (3_000_000, Duration::from_secs(2));

/// So much of a short time they may take together.
const ON_SINGLES: f64 = 0.6;

/// The share of what is left then that is spent on the two halves.
const ON_HALVES: f64 = 0.75;

/// A search without limits has to be done with its halves some time.
const A_HALF: (u64, Duration) = (1_000_000_000, Duration::MAX);

type Copies = Vec<(String, usize)>;

impl Portions<'_> {
    /// The portions that have not been laid, each once.
    fn unknown<'p>(&self, portions: &'p [Problem]) -> BTreeMap<Copies, &'p Problem> {
        let all = portions.iter().map(|p| (copies_of(p), p));
        all.filter(|(copies, _)| !self.laid.contains_key(copies))
            .collect()
    }

    /// Lays every portion that has not been laid, and gives the lays of all; none once the search is cancelled.
    fn lay(
        &mut self,
        portions: &[Problem],
        options: &Options,
        hear: &mut dyn FnMut(Heard),
    ) -> Option<Vec<Vec<Placement>>> {
        for (copies, portion) in self.unknown(portions) {
            let before = self.places;
            let lay = divided(portion, options, &[], self, &mut |heard| {
                hear(Heard::Going(match heard {
                    Heard::Lay(progress) => before + progress.places,
                    Heard::Going(places) => places,
                }));
            });
            if self.cancel.load(Ordering::Relaxed) {
                return None;
            }
            self.laid.insert(copies, lay.ok()?.placements);
        }
        let laid = portions
            .iter()
            .map(|p| self.laid.get(&copies_of(p)).cloned());
        laid.collect()
    }

    /// A lay of the problem from lays of its halves. Single sets are laid first, each as long as its
    /// part of the whole search, as if it were laid alone: together they never take more.
    fn together(
        &mut self,
        (problem, tables): (&Problem, &Tables<'_>),
        options: &Options,
        began: Instant,
        hear: &mut dyn FnMut(Heard),
    ) -> Option<Poses> {
        let spent = self.places;
        self.many = FEW;
        let sets = problem.sets.len().max(1) as u32;
        let each = |(share, of_time): (f64, f64), left: Limits, (most, longest)| match left {
            // Where places are counted, time only ends what would go on too long: a search that keeps
            // within it is the same again, on any machine.
            Limits {
                places: Some(places),
                time,
            } => Limits {
                places: Some(((places as f64 * share).round() as u64).min(most)),
                time,
            },
            Limits { places: None, time } => Limits {
                places: time.is_none().then_some(most),
                time: time.map(|t: Duration| t.mul_f64(of_time).min(longest)),
            },
        };
        let singles = singles(problem);
        let share = 1.0 / f64::from(sets);
        let of_time = share.max(ON_SINGLES / singles.len().max(1) as f64);
        let limits = each((share, of_time), options.limits, A_SINGLE);
        self.lay(&singles, &Options { limits, ..*options }, hear)?;
        let halves = halves(problem);
        let share = ON_HALVES / self.unknown(&halves).len().max(1) as f64;
        let left = left_of(&options.limits, began, self.places - spent);
        let limits = each((share, share), left, A_HALF);
        let lays = self.lay(&halves, &Options { limits, ..*options }, hear)?;
        let [first, second] = &lays[..] else {
            return None;
        };
        joined(problem, tables, [first, second])
    }
}

/// What tells portions of one problem from each other.
fn copies_of(portion: &Problem) -> Copies {
    let pieces = portion.pieces.iter();
    pieces.map(|p| (p.key.clone(), p.demand)).collect()
}

/// What is left of limits.
fn left_of(limits: &Limits, began: Instant, places: u64) -> Limits {
    Limits {
        time: limits.time.map(|t| t.saturating_sub(began.elapsed())),
        places: limits.places.map(|p| p.saturating_sub(places)),
    }
}

/// A search that first divides the problem where it has many pieces.
fn divided(
    problem: &Problem,
    options: &Options,
    known: &[Placement],
    portions: &mut Portions<'_>,
    hear: &mut dyn FnMut(Heard),
) -> Result<Lay, LayError> {
    let cancel = portions.cancel;
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
    // A half of something larger is begun from what is smaller, and nobody asks for its bounds.
    let half = std::mem::replace(&mut portions.inner, true) && problem.sets.len() > 1;
    let afresh = known.is_none();
    let first = match known {
        None if half => None,
        None => Some(start(problem, &shapes, options.seed)?),
        known => known,
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
    if let Some(first) = &first {
        hear(Heard::Lay(progress(first, 0, area)));
    }
    let tables = Tables::new(&shapes);
    let bounds = if half {
        Bounds::of_area(area)
    } else {
        Bounds::new(&Tables::new(&Shapes::exact(problem)?))
    };
    let bound = bounds.best();
    let together = if afresh && divides(problem, shapes.copies.len(), portions.many) {
        let together = portions.together((problem, &tables), options, began, hear);
        together.filter(|t| {
            let laid = placements(problem, &shapes, t);
            check(problem, &laid, Length::mm(t.length)).is_empty()
        })
    } else {
        None
    };
    let first = match (first, together) {
        (Some(first), Some(together)) if first.length <= together.length => first,
        (_, Some(together)) => {
            let places = portions.places - before;
            hear(Heard::Lay(progress(&together, places, bound)));
            together
        }
        (Some(first), None) => first,
        (None, None) => start(problem, &shapes, options.seed)?,
    };
    let mut places = portions.places - before;
    let limits = left_of(&options.limits, began, places);
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
                hear(Heard::Lay(progress(&best, places + tried, bound)));
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
    portions.places += tried;
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
