//! Whole pages: plain data gathered first, then written down.

pub(crate) mod collection;
pub(crate) mod layout;
pub(crate) mod style;
