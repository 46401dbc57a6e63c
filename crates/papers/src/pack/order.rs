//! The sewing order as it is printed.

use serde::Serialize;

use super::{Ask, YarnText};

/// Operations of one part of the workroom's course, such as the fronts.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct StageBlock {
    /// What part it is, such as "Fronts".
    pub name: String,
    /// Its operations, in the order in which they are done.
    pub operations: Vec<OperationRow>,
}

/// One operation: what one person does at one machine or table.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct OperationRow {
    /// Its number in the order, such as "12".
    pub number: String,
    /// What is done, such as "Inseams: fell".
    pub name: String,
    /// The pieces it is done to, such as "front, back".
    pub pieces: String,
    /// The machine or tool, such as "feed-off-the-arm".
    pub machine: String,
    /// What is put on the machine, such as "lap folder for a lap of 9.6 mm". May be empty.
    pub attachment: String,
    /// What is sewn, each kind of stitch with its yarns once. Empty where nothing is sewn.
    pub stitches: Vec<OperationStitch>,
    /// Needles and their distance, such as "two needles, 6.4 mm". May be empty.
    pub needles: String,
    /// How the sewing begins and ends, such as "both ends: backtacked". May be empty.
    pub ends: String,
    /// What to mind, a short sentence each.
    pub mind: Vec<String>,
    /// What the style does not state about it and the workroom is to ask for. May be empty.
    pub ask: String,
    /// All that is open of it: what `ask` says, and what to mind that asks.
    pub asks: Vec<Ask>,
    /// Where machine and attachment come from, such as "common practice". May be empty.
    pub basis: String,
    /// The seams that are shown with this operation, as places in [`super::Pack::seams`].
    pub seams: Vec<usize>,
    /// Where the section of a seam is that an earlier operation shows. May be empty.
    pub section_at: String,
}

/// One kind of stitch of an operation.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct OperationStitch {
    /// The stitch type with its density, such as "401, 3.15 /cm (8 /in)".
    pub stitch: String,
    /// The needle yarn.
    pub needle: YarnText,
    /// The under yarn.
    pub under: YarnText,
}
