//! The yarn plan and what it comes to, as they are printed.

use serde::Serialize;

use super::{Figure, YarnText};

/// Which yarn goes where, and how much of it is needed.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct YarnPart {
    /// Every colour, size and density drawn on its cloth, one drawing a page.
    pub sheets: Vec<Figure>,
    /// A sentence above the tables. May be empty.
    pub note: String,
    /// What heads the columns of the larger quantity, such as "100 pairs".
    pub order_label: String,
    /// The waste that is added, such as "15 %".
    pub waste: String,
    /// Yarn by yarn.
    pub yarns: Vec<YarnNeedRow>,
    /// All yarns together.
    pub total: Option<YarnNeedRow>,
    /// Seam by seam, with the basis of every figure.
    pub seams: Vec<SeamYarnRow>,
    /// Work without a stated row, which is in no total: what it is and what it takes, about.
    pub unstated: Vec<(String, String)>,
    /// What all of that takes, about: the sum of the figures as they are printed.
    pub unstated_total: String,
    /// A sentence on the operations whose yarn is not even estimated. Empty where there are none.
    pub unreckoned: String,
    /// How far every yarn is from the cloth it lies on.
    pub on_cloth: Vec<YarnOnClothRow>,
    /// Where the figures come from; a seam names them by their marks.
    pub notes: Vec<YarnNote>,
}

/// How much of one yarn is needed.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct YarnNeedRow {
    /// The yarn.
    pub yarn: YarnText,
    /// The needles it is sewn with, such as "110/18 to 130/21". May be empty.
    pub needles: String,
    /// On the needles of one pair, such as "41.2 m".
    pub needle: String,
    /// Below, in one pair.
    pub under: String,
    /// Both, net.
    pub net: String,
    /// Both, with waste.
    pub with_waste: String,
    /// The larger quantity, with waste.
    pub order: String,
    /// What one cone holds, such as "2500 m". May be empty.
    pub cone: String,
    /// Whole cones of the larger quantity, such as "3". May be empty.
    pub cones: String,
}

/// How much yarn one seam takes in one pair.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct SeamYarnRow {
    /// The seam, or what else is sewn, such as "Bartacks".
    pub seam: String,
    /// Its stitch types, such as "401, 301".
    pub stitches: String,
    /// Length sewn, all rows together.
    pub sewn: String,
    /// On the needles.
    pub needle: String,
    /// Below.
    pub under: String,
    /// Both, net.
    pub net: String,
    /// Both, with waste.
    pub with_waste: String,
    /// Marks of the notes that say from what it was computed.
    pub basis: Vec<String>,
}

/// From what figures were computed.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct YarnNote {
    /// The mark, such as "a".
    pub mark: String,
    /// The formula and its source.
    pub text: String,
}

/// How far a yarn is in colour from a face of cloth it lies on.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct YarnOnClothRow {
    /// The yarns that look like this.
    pub yarns: String,
    /// The cloth, and whether its face or its reverse.
    pub cloth: String,
    /// The colour difference CIEDE2000, such as "48.9".
    pub difference: String,
    /// What that looks like, such as "strong contrast".
    pub contrast: String,
}
