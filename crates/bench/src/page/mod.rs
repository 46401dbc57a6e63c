//! Whole pages: plain data gathered first, then written down.

pub(crate) mod art;
pub(crate) mod begin;
pub(crate) mod cloths;
pub(crate) mod collection;
pub(crate) mod cutting;
pub(crate) mod history;
pub(crate) mod layout;
pub(crate) mod mend;
pub(crate) mod papers;
pub(crate) mod room;
pub(crate) mod stand;
pub(crate) mod style;
