//! What the cutter needs.

use serde::Serialize;

use crate::{Ask, Fact, Figure};

/// Cloths, lays, corners and grading.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct CuttingPart {
    /// What is above it all; what is open is said there too. May be empty.
    pub note: String,
    /// What is open of spreading and cutting.
    pub asks: Vec<Ask>,
    /// What is cut from each cloth.
    pub cloths: Vec<ClothCut>,
    /// One lay a cloth, at a stated scale.
    pub lays: Vec<Figure>,
    /// How corners are cut.
    pub corners: Vec<Figure>,
    /// All sizes of the pieces on each other.
    pub nests: Vec<Figure>,
    /// How the chart grows.
    pub grades: Vec<GradeTable>,
    /// How the points of each piece move.
    pub moves: Vec<MoveTable>,
}

/// What is cut from one cloth.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct ClothCut {
    /// The cloth.
    pub name: String,
    /// Width, shrinkage, what a pair takes.
    pub facts: Vec<Fact>,
    /// The pieces.
    pub rows: Vec<CutRow>,
}

/// One piece in the cut list of a cloth.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct CutRow {
    /// Its number in the list of pieces.
    pub number: String,
    /// Its name.
    pub piece: String,
    /// How many as drawn.
    pub as_drawn: String,
    /// How many mirrored.
    pub mirrored: String,
    /// Whose side. May be empty.
    pub side: String,
    /// Area of one.
    pub area: String,
}

/// How the measures of the chart grow from one tag to the next, in millimetres.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct GradeTable {
    /// Waists or lengths.
    pub title: String,
    /// The steps, such as "28–29".
    pub steps: Vec<String>,
    /// The measures that grow.
    pub rows: Vec<GradeRow>,
}

/// How one measure grows.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct GradeRow {
    /// The measure.
    pub measure: String,
    /// By how much in each step.
    pub by: Vec<String>,
    /// Where it grows otherwise than in the step before.
    pub breaks: Vec<bool>,
}

/// How the points of a piece move from the base size, in millimetres.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct MoveTable {
    /// The piece.
    pub piece: String,
    /// The point that stays.
    pub at: String,
    /// The base size.
    pub base: String,
    /// The other sizes.
    pub sizes: Vec<String>,
    /// The points.
    pub rows: Vec<MoveRow>,
}

/// How one point moves.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct MoveRow {
    /// The point.
    pub point: String,
    /// Where it lies in the base size from the point that stays: across, and along the grain.
    pub base: [String; 2],
    /// By how much in each size: across, and along the grain.
    pub by: Vec<[String; 2]>,
}
