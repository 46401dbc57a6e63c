//! What the workers share, so that two of them together get further than each alone.
//!
//! The workers meet after every so many places tried. At a meeting the shortest lay found so far
//! becomes everyone's, and it is decided whether to go on. Because meetings are counted in places
//! and not in time, a search limited by places gives the same lay every time.

use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::time::Instant;

use crate::limits::{Ended, Limits};
use crate::poses::Poses;

/// A limit of no time at all counts as so many seconds.
const LEAST_SECONDS: f64 = 1e-9;

/// How much of the search is over, and which part of it comes next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Stage {
    /// Looking for different, shorter lays.
    Explore,
    /// Pressing the best one together; the share of this stage that is over.
    Compress(f64),
    Over,
}

/// A lay longer than the bound by this share, a hundredth of a millimetre in a metre, is as good
/// as one that reaches it.
const AS_GOOD_AS: f64 = 1e-5;

/// The share of a search spent exploring.
const EXPLORING: f64 = 0.8;

pub(crate) struct SharedSearch {
    inner: Mutex<Inner>,
    met: Condvar,
    workers: usize,
    limits: Limits,
    began: Instant,
    bound: f64,
}

struct Inner {
    best: Poses,
    /// Grows whenever `best` changes.
    version: u64,
    /// Best of each worker since the last meeting.
    offers: Vec<Option<Poses>>,
    arrived: usize,
    meeting: u64,
    tried: u64,
    stage: Stage,
    ended: Option<Ended>,
}

/// What a worker takes away from a meeting.
pub(crate) struct Outcome {
    pub stage: Stage,
    pub version: u64,
    /// The shortest lay, when it changed since the version the worker knew.
    pub best: Option<Poses>,
}

impl SharedSearch {
    pub(crate) fn new(
        start: Poses,
        workers: usize,
        limits: Limits,
        began: Instant,
        bound: f64,
    ) -> Self {
        Self {
            inner: Mutex::new(Inner {
                best: start,
                version: 0,
                offers: vec![None; workers],
                arrived: 0,
                meeting: 0,
                tried: 0,
                stage: Stage::Explore,
                ended: None,
            }),
            met: Condvar::new(),
            workers,
            limits,
            began,
            bound,
        }
    }

    fn lock(&self) -> MutexGuard<'_, Inner> {
        // A worker that panicked has left nothing half written: every change is one assignment.
        self.inner.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Ends the search from outside or when the time is up.
    pub(crate) fn end(&self, why: Ended) {
        let mut inner = self.lock();
        if inner.ended.is_none() {
            inner.ended = Some(why);
            inner.stage = Stage::Over;
        }
        self.met.notify_all();
    }

    /// Whether the search is over; looks at the clock.
    pub(crate) fn over(&self) -> bool {
        if self
            .limits
            .time
            .is_some_and(|most| self.began.elapsed() >= most)
        {
            self.end(Ended::Time);
        }
        self.lock().ended.is_some()
    }

    /// Where a worker hands in its shortest lay since the last meeting and waits for the others.
    pub(crate) fn meet(
        &self,
        worker: usize,
        tried: u64,
        offer: Option<Poses>,
        known: u64,
    ) -> Outcome {
        let mut inner = self.lock();
        inner.tried += tried;
        inner.offers[worker] = offer;
        inner.arrived += 1;
        let meeting = inner.meeting;
        if inner.arrived == self.workers {
            self.conclude(&mut inner);
            self.met.notify_all();
        } else {
            while inner.meeting == meeting && inner.ended.is_none() {
                inner = self.met.wait(inner).unwrap_or_else(PoisonError::into_inner);
            }
        }
        Outcome {
            stage: inner.stage,
            version: inner.version,
            best: (inner.version != known).then(|| inner.best.clone()),
        }
    }

    fn conclude(&self, inner: &mut Inner) {
        inner.arrived = 0;
        inner.meeting += 1;
        take_offers(inner);
        if inner.ended.is_some() {
            return;
        }
        if self.as_good_as_bound(inner.best.length) {
            inner.ended = Some(Ended::Bound);
        } else if self.limits.places.is_some_and(|most| inner.tried >= most) {
            inner.ended = Some(Ended::Places);
        } else if self
            .limits
            .time
            .is_some_and(|most| self.began.elapsed() >= most)
        {
            inner.ended = Some(Ended::Time);
        }
        inner.stage = if inner.ended.is_some() {
            Stage::Over
        } else {
            self.stage(inner.tried)
        };
    }

    /// The length no lay can be shorter than.
    pub(crate) fn bound(&self) -> f64 {
        self.bound
    }

    pub(crate) fn as_good_as_bound(&self, length: f64) -> bool {
        length <= self.bound * (1.0 + AS_GOOD_AS)
    }

    fn stage(&self, tried: u64) -> Stage {
        let share = match (self.limits.places, self.limits.time) {
            (Some(most), _) => tried as f64 / most.max(1) as f64,
            (None, Some(most)) => {
                self.began.elapsed().as_secs_f64() / most.as_secs_f64().max(LEAST_SECONDS)
            }
            (None, None) => 0.0,
        };
        if share < EXPLORING {
            Stage::Explore
        } else {
            Stage::Compress((share - EXPLORING) / (1.0 - EXPLORING))
        }
    }

    /// The share of a round's places for each worker.
    pub(crate) fn round(&self) -> u64 {
        const ROUND: u64 = 200_000;
        let fair = self
            .limits
            .places
            .map_or(ROUND, |most| most / self.workers as u64 / 20);
        fair.clamp(100, ROUND)
    }

    /// Grows whenever there is a shorter lay.
    pub(crate) fn version(&self) -> u64 {
        self.lock().version
    }

    /// The shortest lay so far and the places tried.
    pub(crate) fn standing(&self) -> (Poses, u64) {
        let inner = self.lock();
        (inner.best.clone(), inner.tried)
    }

    /// Hands in a lay at the very end, outside a meeting.
    pub(crate) fn leave(&self, worker: usize, tried: u64, offer: Option<Poses>) {
        let mut inner = self.lock();
        inner.tried += tried;
        if offer.is_some() {
            inner.offers[worker] = offer;
        }
    }

    /// The shortest lay, the places tried and why it ended.
    pub(crate) fn finish(self) -> (Poses, u64, Ended) {
        let mut inner = self
            .inner
            .into_inner()
            .unwrap_or_else(PoisonError::into_inner);
        take_offers(&mut inner);
        (
            inner.best,
            inner.tried,
            inner.ended.unwrap_or(Ended::Places),
        )
    }
}

/// Takes the shortest lay offered; of equals the first worker's.
fn take_offers(inner: &mut Inner) {
    for k in 0..inner.offers.len() {
        if let Some(offer) = inner.offers[k].take()
            && offer.length < inner.best.length
        {
            inner.best = offer;
            inner.version += 1;
        }
    }
}
