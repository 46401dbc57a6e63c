//! Portions of a problem that are laid before it.

use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use trade::Length;

use crate::check::check;
use crate::first_lay::start;
use crate::joined::{divides, halves, in_a_row, joined, singles};
use crate::lay::Placement;
use crate::limits::{Options, Progress, left_of, part_of};
use crate::poses::{Poses, placements};
use crate::problem::{LayError, Problem};
use crate::search::divided;
use crate::tables::Tables;

/// What is heard from inside a search.
pub(crate) enum Heard {
    /// A lay of all that is looked for.
    Lay(Progress),
    /// Places tried so far, by work on portions of it.
    Going(u64),
}

/// The lays of portions of a problem, each looked for once.
pub(crate) struct Portions<'a> {
    /// Whether the finished edges decide how long a lay is, and not what lies beside what: sets one after the other are
    /// then about as short as a lay can be, and any other beginning is longer.
    pub by_sets: bool,
    pub cancel: &'a AtomicBool,
    /// By the copies of each piece.
    laid: BTreeMap<Copies, Vec<Placement>>,
    /// Places tried for them.
    pub places: u64,
    /// Whether what is looked for is one of them and not the whole.
    pub inner: bool,
}

/// After so many places, or so long, a single set is laid about as short as it will be.
const A_SINGLE: (u64, Duration) = (3_000_000, Duration::from_secs(2));

/// So much of a short time they may take together where they are what is searched on, and where they are only what
/// another lay has to be shorter than.
const ON_SINGLES: f64 = 0.6;
const BESIDE: f64 = 0.2;

/// The share of what is left then that is spent on the two halves.
const ON_HALVES: f64 = 0.75;

/// A search without limits has to be done with its halves some time.
const A_HALF: (u64, Duration) = (1_000_000_000, Duration::MAX);

/// Where a search begins.
pub(crate) struct Begun {
    pub first: Poses,
    /// Single sets in a row, which what is found has to be shorter than; none where the search begins with them.
    pub row: Option<Poses>,
}

type Copies = Vec<(String, usize)>;

impl<'a> Portions<'a> {
    pub(crate) fn new(cancel: &'a AtomicBool) -> Self {
        Self {
            by_sets: false,
            cancel,
            laid: BTreeMap::new(),
            places: 0,
            inner: false,
        }
    }

    /// What a search of the problem begins with. `first` is a lay of it, where there is one already.
    ///
    /// # Errors
    /// When a piece has no place.
    pub(crate) fn begin(
        &mut self,
        (problem, tables): (&Problem, &Tables<'_>),
        options: &Options,
        first: Option<Poses>,
        hear: &mut dyn FnMut(Heard),
    ) -> Result<Begun, LayError> {
        let (began, before) = (Instant::now(), self.places);
        let shapes = tables.shapes;
        let keeps_rules = |poses: &Poses| {
            let laid = placements(problem, shapes, poses);
            check(problem, &laid, Length::mm(poses.length)).is_empty()
        };
        let row = if problem.faults.is_empty() && problem.sets.len() > 1 {
            let row = self.lay_singles((problem, tables), options, hear);
            row.filter(keeps_rules)
        } else {
            None
        };
        let divide = divides(problem, shapes.copies.len(), self.by_sets);
        let together = if divide {
            let left = Options {
                limits: left_of(&options.limits, began, self.places - before),
                ..*options
            };
            let together = self.together((problem, tables), &left, hear);
            together.filter(keeps_rules)
        } else {
            None
        };
        // What was laid half by half is searched on. A row of single sets is good where it begins and poor all
        // over; a search that begins with it finds less than one that begins afresh.
        let (best, row) = if divide {
            let known = [first, together, row].into_iter().flatten();
            (known.min_by(|a, b| a.length.total_cmp(&b.length)), None)
        } else {
            (first, row)
        };
        let first = match best {
            Some(best) => best,
            None => start(problem, shapes, options.seed)?,
        };
        Ok(Begun { first, row })
    }

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

    /// Lays single sets, each as long as its part of the whole search, as if it were laid alone: one
    /// after the other, they are what sets laid together must not be longer than.
    fn lay_singles(
        &mut self,
        (problem, tables): (&Problem, &Tables<'_>),
        options: &Options,
        hear: &mut dyn FnMut(Heard),
    ) -> Option<Poses> {
        let singles = singles(problem);
        let share = 1.0 / problem.sets.len().max(1) as f64;
        let different = singles.len().max(1) as f64;
        let of_time = if self.by_sets {
            share.max(ON_SINGLES / different)
        } else {
            share.min(BESIDE / different)
        };
        let limits = part_of((share, of_time), options.limits, A_SINGLE);
        let lays = self.lay(&singles, &Options { limits, ..*options }, hear)?;
        in_a_row(problem, tables, &lays)
    }

    /// A lay of the problem from lays of its halves.
    fn together(
        &mut self,
        (problem, tables): (&Problem, &Tables<'_>),
        options: &Options,
        hear: &mut dyn FnMut(Heard),
    ) -> Option<Poses> {
        let halves = halves(problem);
        let share = ON_HALVES / self.unknown(&halves).len().max(1) as f64;
        let limits = part_of((share, share), options.limits, A_HALF);
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
