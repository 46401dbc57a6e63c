//! A lay being looked for.

use std::num::NonZeroUsize;
use std::sync::Arc;
use std::sync::atomic::AtomicBool;
use std::time::Duration;

use jobs::{Finder, Found, JobError, Kept, LayJob, LayOrder};
use lay::{Limits, Options, Progress};
use style::Loaded;
use trade::Length;

use super::task::Task;

/// What is looked for, and for how long.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct LayAsked {
    pub(crate) order: LayOrder,
    /// What is lost at each end of a ply.
    pub(crate) ends: Length,
    pub(crate) seconds: u64,
    /// Where chance starts.
    pub(crate) seed: u64,
}

/// A lay that was found, and what it is of.
pub(crate) struct LayMade {
    pub(crate) job: Arc<LayJob>,
    pub(crate) found: Found,
}

impl Task for LayAsked {
    type Progress = (Arc<LayJob>, Progress);
    type Made = LayMade;

    fn run(
        &self,
        loaded: &Loaded,
        cancel: &AtomicBool,
        tell: &mut dyn FnMut(Self::Progress),
    ) -> Result<LayMade, JobError> {
        let job = Arc::new(LayJob::new(loaded, &self.order)?);
        let finder = Finder {
            collection: &loaded.collection_folder,
            options: Options {
                seed: self.seed,
                workers: workers(),
                limits: Limits {
                    time: Some(Duration::from_secs(self.seconds)),
                    places: None,
                },
            },
            // Whoever asks again wants it looked for again.
            kept: Kept::ToGoOn,
        };
        let found = finder.find(&job.spread, &job.words, cancel, &mut |progress| {
            tell((Arc::clone(&job), progress.clone()));
        })?;
        Ok(LayMade { job, found })
    }
}

/// One fewer than the machine has cores, so that the bench keeps one.
fn workers() -> usize {
    let cores = std::thread::available_parallelism().map_or(1, NonZeroUsize::get);
    cores.saturating_sub(1).max(1)
}
