//! How long a search may go on, how it stands, and why it ended.

use std::time::{Duration, Instant};

use trade::{Length, Share};

use crate::lay::Placement;

/// Why a search ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Ended {
    /// The time was up. Another run may end elsewhere.
    Time,
    /// As many places as allowed were tried. The same seed and number of workers give the same
    /// lay again.
    Places,
    /// It was cancelled.
    Cancelled,
    /// The lay is as short as the lower bound: no better one exists.
    Bound,
}

/// The limits of a search, in time and in places tried.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// No longer than this.
    pub time: Option<Duration>,
    /// No more places tried than this, by all workers together (give or take a round).
    pub places: Option<u64>,
}

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

/// A share of limits, of places and of time, and no more than some.
pub(crate) fn part_of(
    (share, of_time): (f64, f64),
    limits: Limits,
    (most, longest): (u64, Duration),
) -> Limits {
    match limits {
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
    }
}

/// What is left of limits.
pub(crate) fn left_of(limits: &Limits, began: Instant, places: u64) -> Limits {
    Limits {
        time: limits.time.map(|t| t.saturating_sub(began.elapsed())),
        places: limits.places.map(|p| p.saturating_sub(places)),
    }
}
