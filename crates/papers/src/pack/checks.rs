//! Inspection and packing, as they are printed.

use serde::Serialize;

use super::Ask;

/// What is looked at before the pair leaves, and how it leaves.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct Checks {
    /// A sentence above it. May be empty.
    pub note: String,
    /// What is checked when, and packing last.
    pub groups: Vec<CheckGroup>,
}

/// Checks made at one time.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct CheckGroup {
    /// When, such as "On the line, before the wash".
    pub heading: String,
    /// The checks.
    pub rows: Vec<CheckRow>,
}

/// One check, or one thing to be settled.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct CheckRow {
    /// What is looked at, such as "Stitch density".
    pub what: String,
    /// How, and what passes. Empty where nothing is stated.
    pub how: String,
    /// What is open of it, printed after that.
    pub asks: Vec<Ask>,
    /// Where that comes from, such as "common practice".
    pub basis: String,
}
