//! What the hem is to look like against how it is made.

use style::{Construction, SeamId};
use trade::StitchType;
use words::{key, say};

use super::case::{Broken, Case};

/// Roping comes from the roll: the folder turns both layers of the hem in one go, the feed drives the lower
/// one and the foot drags the upper, so that the roll is sewn twisted; the wash raises the ridges. Folded and pressed by hand there is no such pull, and a
/// lockstitch with an even feed leaves little of it (common practice).
pub(super) fn roping(case: &Case<'_>) -> Vec<Broken> {
    let Some(hem) = case
        .context
        .seam(SeamId::Hem)
        .filter(|_| case.context.doc.hem.roping)
    else {
        return Vec::new();
    };
    let lockstitched = || hem.rows.iter().any(|row| row.stitch == StitchType::S301);
    let why = if hem.construction == Construction::FoldedHem {
        key::SEWING_HEMS_ROPING_2
    } else if lockstitched() {
        key::SEWING_HEMS_ROPING_3
    } else {
        return Vec::new();
    };
    vec![
        Broken::note(SeamId::Hem, say::SewingHemsRoping { why })
            .help(key::SEWING_HEMS_ROPING_HELP)
            .at(case.seam_place(SeamId::Hem)),
    ]
}
