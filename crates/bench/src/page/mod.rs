//! Whole pages: plain data gathered first, then written down.

pub(crate) mod begin;
pub(crate) mod collection;
pub(crate) mod cutting;
pub(crate) mod drawing_brought;
pub(crate) mod files_changed;
pub(crate) mod history;
pub(crate) mod layout;
pub(crate) mod papers;
pub(crate) mod repair;
pub(crate) mod room_frame;
pub(crate) mod style;
pub(crate) mod trouble;
