//! Cut pieces of the demo and of styles near and far from it.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;
mod conflicts;
mod corners;
mod grading;
mod identities;
mod marks;
mod other_words;
mod outlines;
mod tested;
mod wash;
mod wide;
mod wild;
mod worked_example;
