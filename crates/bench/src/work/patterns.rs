//! Pattern files being made.

use std::sync::atomic::AtomicBool;

use jobs::{JobError, MadePatterns, PatternOrder};
use style::Loaded;

use super::task::Task;

/// Which files.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct PatternsAsked(pub(crate) PatternOrder);

impl Task for PatternsAsked {
    /// So many sizes of how many.
    type Progress = (usize, usize);
    type Made = MadePatterns;

    fn run(
        &self,
        loaded: &Loaded,
        cancel: &AtomicBool,
        tell: &mut dyn FnMut((usize, usize)),
    ) -> Result<MadePatterns, JobError> {
        jobs::patterns(loaded, &self.0, cancel, &mut |done, of| tell((done, of)))
    }
}
