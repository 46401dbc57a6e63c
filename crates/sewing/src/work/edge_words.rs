//! What is said of raw edges: how they are overedged, and that they stay raw.

use draft::PieceId;
use style::{Construction, RowSpec, Seam, SeamId};
use trade::StitchType;
use words::{Said, key};

use super::plan::says;
use crate::garment::Garment;

/// What to mind where raw edges are overedged.
pub(super) fn neatened(garment: &Garment, seam: &Seam) -> Vec<Said> {
    let single = seam.id == SeamId::FlyEdge;
    let mut out = says(&[match (single, seam.construction) {
        (true, Construction::Overlocked) if garment.pattern.spec.button_fly => {
            key::MIND_NEATEN_FLY_EDGE_BOTH
        }
        (true, Construction::Overlocked) => key::MIND_NEATEN_FLY_EDGE_ALONE,
        (true, _) => key::MIND_NEATEN_FLY_EDGE_EACH,
        (false, Construction::LaidOn) => key::MIND_NEATEN_LAID_ON,
        (false, Construction::PressedOpen) => key::MIND_NEATEN_EACH,
        (false, _) => key::MIND_NEATEN_BOTH,
    }]);
    // The bag is basted to the front there.
    if seam.id == SeamId::Outseam && garment.pattern.piece(PieceId::PocketBag).is_some() {
        out.push(key::MIND_NEATEN_BAG.into());
    }
    out
}

/// Whether the threads below the rows of a folded strip cover its edges, which meet there.
pub(super) fn covers_strip(seam: &Seam) -> bool {
    let covers = |row: &RowSpec| is_covering(row.stitch);
    seam.rows.iter().any(covers)
}

/// Whether the edge of a piece of cloth that is laid on another is neither turned in nor overedged. Edges of a patch or
/// a label are those of the trim.
pub(super) fn stays_raw(seam: &Seam) -> bool {
    let trim = matches!(seam.id, SeamId::PatchSet | SeamId::LabelSet);
    let overedged = || seam.rows.iter().any(|row| row.stitch.is_overedge());
    seam.construction == Construction::LaidOn && !trim && !overedged()
}

/// Whether the threads of a stitch lie below it from needle to needle.
const fn is_covering(stitch: StitchType) -> bool {
    use StitchType as S;
    matches!(stitch, S::S406 | S::S602 | S::S605 | S::S607)
}
