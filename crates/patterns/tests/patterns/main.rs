//! Pattern files written, read again, spoilt, and read from elsewhere.
#![allow(clippy::unwrap_used, missing_docs)]

mod any;
mod common;
mod ferryman;
mod foreign;
mod mutated;
mod plotted;
