//! What the layout of a pack says of itself.

use serde::Serialize;

/// Titles, leads and short lines of the layout.
#[derive(Debug, Clone, PartialEq, Default, Serialize)]
pub struct PackWords {
    /// In the head of pages whose figures are those of the pair as it is sewn, with the size that is drawn.
    pub before: String,
    /// The same of the finished pair.
    pub after: String,
    /// The same as `before` over tables of all sizes.
    pub before_all: String,
    /// The same as `after` over tables of all sizes.
    pub after_all: String,
    /// Title of what the checks found.
    pub findings: String,
    /// Above what the checks found.
    pub findings_lead: String,
    /// The same where they found nothing.
    pub findings_none: String,
    /// Title of what to mind.
    pub mind: String,
    /// Above what to mind.
    pub mind_lead: String,
    /// Title of why things are as they are.
    pub why: String,
    /// Above why things are as they are.
    pub why_lead: String,
    /// Heads what each is about.
    pub why_about: String,
    /// Title of the materials.
    pub materials: String,
    /// In the head of pages of the annex.
    pub annex: String,
    /// Stands before the titles of the annex.
    pub annex_title: String,
    /// Title of the tables over sizes.
    pub by_size: String,
    /// Title of inspection and packing.
    pub checks: String,
    /// Title of findings with their codes.
    pub codes: String,
    /// Above the findings with their codes.
    pub codes_lead: String,
    /// Said of a finding that the maker has left so.
    pub left_so: String,
    /// Title of the table of yarns on their cloth.
    pub yarn_on_cloth: String,
    /// Above it.
    pub yarn_on_cloth_note: String,
    /// What the ways of measuring rest on.
    pub measures_basis: String,
    /// What the tables of how points move rest on.
    pub moves_basis: String,
    /// Title of what changed since the revision before.
    pub changes: String,
    /// Above what changed.
    pub changes_lead: String,
    /// Title of the seams that no operation shows.
    pub other_seams: String,
    /// Before the class of a seam.
    pub class: String,
    /// Before the row of a seam and its place.
    pub rows: String,
}
