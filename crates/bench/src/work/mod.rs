//! Work that goes on while the bench is used.

mod gate;
mod job;
pub(crate) mod lay;
pub(crate) mod pack;
pub(crate) mod patterns;
mod task;
mod works;

pub(crate) use job::{Ended, Job, words};
pub(crate) use task::Task;
pub(crate) use works::{NotBegun, Works};
