//! What is not the same in every size, as it is printed.

use serde::Serialize;

/// One table over sizes.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct SizeTable {
    /// What it is headed, such as "Sewing yarn of one pair".
    pub title: String,
    /// In which state and from what its figures are. May be empty.
    pub note: String,
    /// The sizes, one a column, such as "32x30".
    pub sizes: Vec<String>,
    /// The lines.
    pub rows: Vec<SizeRow>,
}

/// One line of it.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct SizeRow {
    /// What it is, such as "Rope 105, m".
    pub what: String,
    /// A figure a size, in the order of [`SizeTable::sizes`]; missing ones print as nothing.
    pub values: Vec<String>,
}
