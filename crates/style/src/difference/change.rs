//! One change between two versions of a file.

use words::Given;

use super::value::Value;

/// One change between two versions.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// Where it is in the file, as a path ("chart.thigh.value").
    pub path: String,
    /// What it is about: a measure, a seam and its row, a piece, a cloth, or one of their values.
    pub about: Given,
    /// Which of several things that `about` has; `None` where `about` says it all.
    pub part: Option<Part>,
    /// How it changed.
    pub kind: Kind,
    /// What it was; [`Value::Nothing`] where there was none.
    pub was: Value,
    /// What it is now; [`Value::Nothing`] where there is none.
    pub is: Value,
}

/// How something changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// It has another value.
    Changed,
    /// It is there now and was not.
    Added,
    /// It was there and is not any more.
    TakenOut,
    /// Something within it changed that nobody reads, or the way it is written.
    Within,
    /// A seam is sewn like another, which changed.
    Follows,
    /// The edges of a piece have other names or corners.
    EdgesNamed,
    /// A finding is no longer counted.
    Muted,
    /// A finding is counted again.
    CountedAgain,
}

/// What a seam has, or a row of its stitches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// How the plies of the seam lie.
    Construction,
    /// The stitch type of a row.
    Stitch,
    /// Stitches to a length.
    Density,
    /// The needle yarn.
    Yarn,
    /// The bobbin or looper yarn.
    Under,
    /// How far the row is from the seam line.
    Offset,
    /// How the row begins.
    Begin,
    /// How the row ends.
    End,
}
