//! Whether a style has what is told about.

use super::StyleDoc;
use crate::{PartId, Subject};

impl StyleDoc {
    /// Whether the style takes this cloth, label or trim, sews this seam, or has this part. What every pair has, it has.
    #[must_use]
    pub fn has(&self, subject: &Subject) -> bool {
        match subject {
            Subject::Cloth(key) => self.cloth_names().contains(&key.as_str()),
            Subject::Label(key) => self.labels.iter().any(|label| label.trim == *key),
            Subject::Trim(key) | Subject::Rivet(key) => self.trim_names().contains(&key.as_str()),
            Subject::Seam(seam) | Subject::Row(seam, _) | Subject::Rows(seam, _, _) => {
                self.seams.contains_key(seam)
            }
            Subject::Part(PartId::Patch) => self.patch.is_some(),
            Subject::Part(PartId::ExtraPocket) => self.pockets.extra.is_some(),
            Subject::Part(PartId::Labels) => !self.labels.is_empty(),
            Subject::Part(PartId::BeltLoops | PartId::BeltLoop) => self.loops.count > 0,
            Subject::Other(_) => false,
            _ => true,
        }
    }
}
