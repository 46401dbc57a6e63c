//! Whole-job tests, architecture rules and outside checkers (development only).
//!
//! The tests in `tests/suite` drive the finished program as a maker does and judge what it gives with
//! tools that are not ours: Python with numpy and shapely, qpdf, poppler, a browser. This library is
//! what those tests share: the program itself ([`fellwork`]), the tools ([`outside`]), a [`browser`], the crates of
//! this workspace as text ([`source`]) and the comparison of two pictures ([`picture`]).

pub mod browser;
pub mod fellwork;
pub mod outside;
pub mod picture;
pub mod source;
