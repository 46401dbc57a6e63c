//! One worker: its board, its chance, and its meetings with the others.

use crate::board::Board;
use crate::place::improve;
use crate::poses::Poses;
use crate::random::Random;
use crate::separation::{settle, squeeze};
use crate::shared_search::{SharedSearch, Stage};
use crate::tables::Tables;
use geometry::tolerance::ROUNDING;

/// A look at the clock after this many places tried.
const LOOK_AT_CLOCK: u64 = 4_000;

/// A gain of less than this share counts as none.
const WORTHWHILE: f64 = 0.98;

/// The share of the length taken that may be given back, and at how many places that is tried.
const GIVEN_BACK: f64 = 0.98;
const MOST_CUTS: usize = 4;

pub(crate) struct Worker<'a> {
    pub board: Board<'a>,
    pub random: Random,
    exchange: &'a SharedSearch,
    number: usize,
    pub stage: Stage,
    /// The shortest lay of all workers, as of the last meeting or own find.
    pub best: Poses,
    version: u64,
    offer: Option<Poses>,
    met_at: u64,
    looked_at: u64,
}

/// How an attempt to part all overlapping pieces ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Verdict {
    /// Nothing overlaps.
    Free,
    /// No progress any more.
    Stuck,
    /// Another worker has found a lay at least as short meanwhile, or the stage has changed.
    Overtaken,
    /// The search is over.
    Over,
}

/// How long to try without progress.
pub(crate) struct Patience {
    /// Passes without progress before going back to the best.
    pub passes: usize,
    /// Times going back without progress before giving up.
    pub strikes: usize,
}

impl<'a> Worker<'a> {
    pub(crate) fn new(
        tables: &'a Tables<'a>,
        exchange: &'a SharedSearch,
        number: usize,
        seed: u64,
        start: &Poses,
    ) -> Self {
        Self {
            board: Board::new(tables, start),
            random: Random::new(seed, number as u64 + 1),
            exchange,
            number,
            stage: Stage::Explore,
            best: start.clone(),
            version: 0,
            offer: None,
            met_at: 0,
            looked_at: 0,
        }
    }

    /// Works until the search is over.
    pub(crate) fn run(mut self) {
        while self.stage == Stage::Explore {
            crate::explore::explore(&mut self);
        }
        crate::compress::compress(&mut self);
        let tried = self.board.tried - self.met_at;
        self.exchange.leave(self.number, tried, self.offer.take());
    }

    /// The board is free of overlaps: keeps the lay if it is the shortest.
    pub(crate) fn keep(&mut self) {
        self.board.length = self.board.reach().min(self.board.length);
        if self.board.length < self.best.length {
            self.best = self.board.poses();
            self.offer = Some(self.best.clone());
        }
    }

    /// Presses the free lay on the board together, beginning with that share of its length.
    pub(crate) fn squeeze(&mut self, first: f64) {
        squeeze(&mut self.board, first, self.exchange.bound());
    }

    /// Parts all overlapping pieces, giving back some of the length that was taken where they are stuck.
    pub(crate) fn part(&mut self, patience: &Patience) -> Verdict {
        match self.separate(patience) {
            Verdict::Stuck if self.mend() => Verdict::Free,
            verdict => verdict,
        }
    }

    /// Frees the few overlaps left by giving back some of the length that was taken, at the pieces
    /// that overlap. Where that fails the board is as it was.
    fn mend(&mut self) -> bool {
        let stuck = self.board.poses();
        let room = (self.best.length - stuck.length) * GIVEN_BACK;
        if room <= 0.0 {
            return false;
        }
        let mut cuts: Vec<f64> = (0..self.board.copies())
            .filter(|&c| self.board.overlaps(c))
            .map(|c| self.board.poses[c].at.x)
            .collect();
        cuts.sort_by(f64::total_cmp);
        let every = cuts.len().div_ceil(MOST_CUTS).max(1);
        for cut in cuts.into_iter().step_by(every) {
            // A hair before the middle, so that the piece itself moves.
            self.board.lengthen(room, cut - ROUNDING);
            if self.board.total() <= 0.0 || settle(&mut self.board) {
                return true;
            }
            self.board.load(&stuck);
        }
        false
    }

    /// The length to aim at after `length`: shorter by a share, but not beyond what is possible.
    pub(crate) fn shorter(&self, length: f64, share: f64) -> f64 {
        (length * (1.0 - share)).max(self.exchange.bound())
    }

    /// Meets the others when a round is over, or when the lay cannot be bettered. Some verdict
    /// means that the attempt has to end.
    pub(crate) fn look_up(&mut self) -> Option<Verdict> {
        let tried = self.board.tried;
        if tried - self.met_at >= self.exchange.round()
            || self.exchange.as_good_as_bound(self.best.length)
        {
            let outcome = self.exchange.meet(
                self.number,
                tried - self.met_at,
                self.offer.take(),
                self.version,
            );
            self.met_at = tried;
            self.looked_at = tried;
            let explored = self.stage == Stage::Explore;
            self.stage = outcome.stage;
            self.version = outcome.version;
            if let Some(best) = outcome.best
                && best.length <= self.best.length
            {
                self.best = best;
            }
            if self.stage == Stage::Over {
                return Some(Verdict::Over);
            }
            let stage_changed = explored && self.stage != Stage::Explore;
            if stage_changed || self.best.length <= self.board.length {
                return Some(Verdict::Overtaken);
            }
        } else if tried - self.looked_at >= LOOK_AT_CLOCK {
            self.looked_at = tried;
            if self.exchange.over() {
                self.stage = Stage::Over;
                return Some(Verdict::Over);
            }
        }
        None
    }

    /// Moves overlapping pieces, one at a time, until nothing overlaps or no progress is made.
    ///
    /// This is guided local search: overlaps that last weigh more from pass to pass. When stuck,
    /// the board holds the least overlapping state met.
    fn separate(&mut self, patience: &Patience) -> Verdict {
        self.board.reset_weights();
        let mut least = self.board.total();
        let mut least_poses = self.board.poses();
        let mut strikes = 0;
        let mut order: Vec<usize> = Vec::new();
        loop {
            let before = least;
            let mut idle = 0;
            let mut mark = least;
            while idle < patience.passes {
                order.clear();
                order.extend((0..self.board.copies()).filter(|&c| self.board.overlaps(c)));
                self.random.shuffle(&mut order);
                for &copy in &order {
                    if self.board.overlaps(copy) {
                        improve(&mut self.board, copy, &mut self.random);
                        if let Some(verdict) = self.look_up() {
                            return verdict;
                        }
                    }
                }
                let total = self.board.total();
                if total <= 0.0 {
                    return Verdict::Free;
                }
                idle += 1;
                if total < least {
                    least = total;
                    least_poses = self.board.poses();
                    if settle(&mut self.board) {
                        return Verdict::Free;
                    }
                    if total < mark * WORTHWHILE {
                        mark = total;
                        idle = 0;
                    }
                }
                self.board.update_weights();
            }
            strikes = if least < before * WORTHWHILE {
                0
            } else {
                strikes + 1
            };
            self.board.load(&least_poses);
            if strikes >= patience.strikes {
                return Verdict::Stuck;
            }
        }
    }
}
