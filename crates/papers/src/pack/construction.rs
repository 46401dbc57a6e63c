//! The construction list as it is printed: seams and their stitch rows.

use serde::Serialize;

use super::Swatch;
use crate::Drawing;

/// One seam: what it joins, how the plies lie, and the rows that hold it.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct SeamBlock {
    /// The seam's name, such as "Inseam".
    pub name: String,
    /// What it joins, in words, such as "front and back, crotch to hem".
    pub joins: String,
    /// How it is made, in words, such as "lap-felled".
    pub construction: String,
    /// Its published class, such as "ISO 4916 2.04.06 · ASTM D6193 LSc-2". May be empty.
    pub class: String,
    /// The machine it is usually sewn on, such as "feed-off-the-arm". May be empty.
    pub machine: String,
    /// How many plies are sewn through, such as "4 plies, 3.3 mm". May be empty.
    pub plies: String,
    /// The allowance on each side, such as "front 20 mm, back 10 mm". May be empty.
    pub allowances: String,
    /// Which way it lies, such as "front laps over back". May be empty.
    pub lies: String,
    /// The rows, in the order they are sewn.
    pub rows: Vec<StitchRowText>,
    /// A drawn section through the seam, placed beside the text, 62 mm wide.
    pub section: Option<Drawing>,
}

/// One row of stitches.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct StitchRowText {
    /// The row's number in its seam, such as "1".
    pub row: String,
    /// The stitch type, such as "401 two-thread chainstitch".
    pub stitch: String,
    /// Its density, such as "3.15 /cm (8 /in)".
    pub density: String,
    /// The needle yarn.
    pub needle: YarnText,
    /// The under yarn: bobbin or looper.
    pub under: YarnText,
    /// Where the row runs, such as "1.6 mm from the fold".
    pub offset: String,
    /// How far it lies from the rows beside it, such as "6.4 mm to row 2".
    pub gauge: String,
    /// How it begins and ends, such as "run off, caught by the hem".
    pub ends: String,
}

/// A sewing yarn in one row.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct YarnText {
    /// Its name, such as "Rope 105".
    pub name: String,
    /// Its size and the name of its colour, such as "tex 105, ochre". May be empty.
    pub what: String,
    /// Its colour, drawn as a small swatch before the name.
    pub colour: Option<Swatch>,
}
