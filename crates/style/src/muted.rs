//! Findings the maker has looked at and lives with.

use serde::Serialize;

use crate::StyleDoc;

/// One `[[muted]]`: a finding that is no longer counted, and why.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Muted {
    /// The code of the finding, such as `sewing::patch-hangs`.
    pub code: String,
    /// What it is about, in the words of the finding.
    pub about: String,
    /// Why the maker lives with it.
    pub reason: String,
}

impl StyleDoc {
    /// Why a finding is not counted, where the maker said so; its number in the file beside it.
    pub fn muted(&self, code: &str, about: &str) -> Option<(usize, &Muted)> {
        let mut muted = self.muted.iter().enumerate();
        muted.find(|(_, each)| each.code == code && each.about == about)
    }
}
