//! A production pack being made.

use std::sync::atomic::AtomicBool;

use jobs::{JobError, MadePack, PackOrder, PackStage};
use style::Loaded;

use super::task::Task;

/// Which pack.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct PackAsked(pub(crate) PackOrder);

impl Task for PackAsked {
    type Progress = PackStage;
    type Made = MadePack;

    fn run(
        &self,
        loaded: &Loaded,
        cancel: &AtomicBool,
        tell: &mut dyn FnMut(PackStage),
    ) -> Result<MadePack, JobError> {
        jobs::pack(loaded, &self.0, cancel, tell)
    }
}
