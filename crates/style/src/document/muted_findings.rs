//! Whether a finding of a style is muted.

use crate::muted::Muted;
use crate::subject::Subject;

use super::StyleDoc;

impl StyleDoc {
    /// Why a finding is not counted, where the maker said so; its number in the file beside it.
    pub fn muted(&self, code: &str, subject: &Subject) -> Option<(usize, &Muted)> {
        let mut muted = self.muted.iter().enumerate();
        muted.find(|(_, each)| each.is(code, subject))
    }
}
