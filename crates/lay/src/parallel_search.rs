//! The workers' search from one beginning, and from several.

use std::sync::atomic::{AtomicBool, Ordering};
use std::time::{Duration, Instant};

use crate::first_lay::start;
use crate::limits::{Ended, Options, left_of, part_of};
use crate::poses::Poses;
use crate::problem::Problem;
use crate::shared_search::SharedSearch;
use crate::tables::Tables;
use crate::worker::Worker;

/// How often progress is told and a wish to cancel is seen.
const TELL_EVERY: Duration = Duration::from_millis(20);

/// After so many looks without news progress is told all the same, so that whoever waits sees it go on.
const TELL_ANYWAY: u32 = 25;

/// Beginnings that are tried, and the share of the search spent on each.
const HEATS: u64 = 4;
const A_HEAT: f64 = 0.125;

/// A search without limits has to be done with each some time.
const MOST: (u64, Duration) = (100_000_000, Duration::MAX);

/// What all workers do together.
pub(crate) struct ParallelSearch<'a> {
    pub tables: &'a Tables<'a>,
    pub options: Options,
    /// No lay is shorter, in millimetres.
    pub bound: f64,
    pub cancel: &'a AtomicBool,
}

/// What came of it.
pub(crate) struct Found {
    pub best: Poses,
    pub tried: u64,
    pub ended: Ended,
}

impl ParallelSearch<'_> {
    /// Searches from a lay on, and tells how it stands.
    pub(crate) fn search(&self, first: &Poses, tell: &mut dyn FnMut(&Poses, u64)) -> Found {
        let workers = self.options.workers.clamp(1, 64);
        let exchange = SharedSearch::new(
            first.clone(),
            workers,
            self.options.limits,
            Instant::now(),
            self.bound,
        );
        std::thread::scope(|scope| {
            for number in 0..workers {
                let (tables, exchange, seed) = (self.tables, &exchange, self.options.seed);
                scope.spawn(move || Worker::new(tables, exchange, number, seed, first).run());
            }
            let (mut told, mut silent) = (0, 0);
            loop {
                silent += 1;
                let version = exchange.version();
                if version != told || silent >= TELL_ANYWAY {
                    (told, silent) = (version, 0);
                    let (best, tried) = exchange.standing();
                    tell(&best, tried);
                }
                if exchange.over() {
                    break;
                }
                if self.cancel.load(Ordering::Relaxed) {
                    exchange.end(Ended::Cancelled);
                }
                std::thread::sleep(TELL_EVERY);
            }
        });
        let (best, tried, ended) = exchange.finish();
        Found { best, tried, ended }
    }

    /// Tries several beginnings for a while each, and goes on from the best. Which pieces come to lie beside each
    /// other is soon decided, and of some beginnings no good lay is found however long one looks.
    pub(crate) fn search_in_heats(
        &self,
        problem: &Problem,
        first: &Poses,
        tell: &mut dyn FnMut(&Poses, u64),
    ) -> Found {
        let (began, seed) = (Instant::now(), self.options.seed);
        let of_heat = |heat: u64, limits| ParallelSearch {
            options: Options {
                seed: seed.wrapping_add(heat << 32),
                limits,
                ..self.options
            },
            ..*self
        };
        let each = part_of((A_HEAT, A_HEAT), self.options.limits, MOST);
        let (mut best, mut tried) = (first.clone(), 0);
        for heat in 0..HEATS {
            let effort = of_heat(heat, each);
            let begun = match heat {
                0 => Ok(first.clone()),
                _ => start(problem, self.tables.shapes, effort.options.seed),
            };
            // A beginning that fails is another one's time.
            let Ok(begun) = begun else { continue };
            let found = effort.search(&begun, &mut |now, more| {
                tell(
                    if now.length < best.length { now } else { &best },
                    tried + more,
                );
            });
            tried += found.tried;
            if found.best.length < best.length {
                best = found.best;
            }
            if matches!(found.ended, Ended::Cancelled | Ended::Bound) {
                return Found {
                    best,
                    tried,
                    ended: found.ended,
                };
            }
        }
        let left = left_of(&self.options.limits, began, tried);
        let found = of_heat(0, left).search(&best, &mut |now, more| tell(now, tried + more));
        Found {
            tried: tried + found.tried,
            ..found
        }
    }
}
