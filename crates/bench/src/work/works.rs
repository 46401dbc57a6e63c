//! Work that goes on while the bench is used: a lay being looked for, a pack or pattern files being made.
//!
//! A style has at most one job of each kind. Two jobs go on at once; a third waits for its turn, so that the bench
//! stays quick. Each is bound to the style as it was when it was started. Jobs die with the bench; what they found
//! that is worth keeping lies in the collection by then.

use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{Arc, Mutex, PoisonError};

use style::Loaded;
use words::Words;

use crate::work::gate::Gate;
use crate::work::job::{Ended, Job};
use crate::work::lay::LayAsked;
use crate::work::pack::PackAsked;
use crate::work::patterns::PatternsAsked;
use crate::work::task::Task;

/// All jobs of a bench.
#[derive(Default)]
pub(crate) struct Works {
    pub(crate) lays: Shelf<LayAsked>,
    pub(crate) packs: Shelf<PackAsked>,
    pub(crate) patterns: Shelf<PatternsAsked>,
    gate: Arc<Gate>,
}

/// The last job of one kind of each style, by the name of its folder.
pub(crate) struct Shelf<T: Task>(Mutex<BTreeMap<String, Arc<Job<T>>>>);

impl<T: Task> Default for Shelf<T> {
    fn default() -> Self {
        Self(Mutex::default())
    }
}

impl<T: Task> Shelf<T> {
    /// The last job of a style.
    pub(crate) fn of(&self, name: &str) -> Option<Arc<Job<T>>> {
        let jobs = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        jobs.get(name).cloned()
    }

    /// Ends every job.
    fn cancel_all(&self) {
        let jobs = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        jobs.values().for_each(|job| job.cancel());
    }
}

/// Why a job was not begun.
#[derive(Debug)]
pub(crate) enum NotBegun {
    /// One of its kind goes on already.
    Busy,
    /// The system gave no thread.
    NoThread(std::io::Error),
}

impl Works {
    /// Begins a job of a style as it is.
    pub(crate) fn begin<T: Task>(
        &self,
        say: &'static Words,
        shelf: &Shelf<T>,
        name: &str,
        task: T,
        loaded: Loaded,
    ) -> Result<(), NotBegun> {
        let mut jobs = shelf.0.lock().unwrap_or_else(PoisonError::into_inner);
        let last = jobs.get(name);
        if last.is_some_and(|job| job.stand().ended.is_none()) {
            return Err(NotBegun::Busy);
        }
        let number = last.map_or(1, |job| job.number + 1);
        let job = Arc::new(Job::new(number, task, loaded));
        let (mine, gate) = (Arc::clone(&job), Arc::clone(&self.gate));
        std::thread::Builder::new()
            .name("work".to_owned())
            .spawn(move || {
                step_back();
                let permit = gate.enter(&mine.cancel);
                // A fault in there ends the one job, not the bench; whoever waits is told.
                let ended = catch_unwind(AssertUnwindSafe(|| mine.run(permit.is_some())));
                let fault = || Ended::Failed(vec![say.work_fault().to_owned()]);
                mine.end(ended.unwrap_or_else(|_| fault()));
            })
            .map_err(NotBegun::NoThread)?;
        jobs.insert(name.to_owned(), job);
        Ok(())
    }

    /// Ends everything.
    pub(crate) fn cancel_all(&self) {
        self.lays.cancel_all();
        self.packs.cancel_all();
        self.patterns.cancel_all();
    }
}

/// Has the system give this thread, and those it starts, what others leave: an edit does not wait for a search. Where
/// that cannot be had the work goes on all the same.
fn step_back() {
    /// As far as there is.
    #[cfg(target_os = "linux")]
    const NICE: i32 = 19;
    #[cfg(target_os = "linux")]
    let _ = rustix::process::nice(NICE);
}
