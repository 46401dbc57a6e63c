//! What a job is of.

use jobs::JobError;
use style::Loaded;

/// Something that takes a while.
pub(crate) trait Task: Clone + Send + Sync + 'static {
    /// How far it is.
    type Progress: Send + Sync;
    /// What comes of it.
    type Made: Send + Sync;

    /// Does it; `tell` hears how far it is, and setting `cancel` ends it.
    fn run(
        &self,
        loaded: &Loaded,
        cancel: &std::sync::atomic::AtomicBool,
        tell: &mut dyn FnMut(Self::Progress),
    ) -> Result<Self::Made, JobError>;
}
