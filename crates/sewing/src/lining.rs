//! Where the linings of the back pockets are caught.
//!
//! A lining is laid in before the pocket is hemmed: its raw upper edge lies in the fold of the hem, whose rows catch it.
//! Its sides, and the foot of a full one, are turned in with the pocket's and caught by the rows that set the pocket; the
//! foot of a half lining is turned in by itself and hangs free (common practice).

use draft::PieceId;
use style::{Lining, SeamId, StyleDoc};

use crate::garment::Garment;

/// How many plies of lining lie under the rows of a seam where they are most.
const fn caught_in(seam: SeamId) -> u8 {
    match seam {
        SeamId::BackPocketHem => 1,
        // Turned in with the pocket's edge.
        SeamId::BackPocketSet => 2,
        SeamId::Outseam
        | SeamId::Inseam
        | SeamId::Seat
        | SeamId::Yoke
        | SeamId::FrontRise
        | SeamId::Band
        | SeamId::BandJoin
        | SeamId::Hem
        | SeamId::Mouth
        | SeamId::Fly
        | SeamId::FlyEdge
        | SeamId::CoinHem
        | SeamId::CoinSet
        | SeamId::FacingSet
        | SeamId::BagClose
        | SeamId::ExtraHem
        | SeamId::ExtraSet
        | SeamId::LoopEdge
        | SeamId::Decoration
        | SeamId::PatchSet
        | SeamId::LabelSet => 0,
    }
}

/// How many plies of lining the rows of a seam on this piece go through, and the cloth; none where nothing is lined. A half
/// lining is counted as if it went on: it lies under the rows of the sides, and little is lost at the foot.
pub(crate) fn lining_under(doc: &StyleDoc, seam: SeamId, pocket: PieceId) -> Option<(u8, &str)> {
    let back = &doc.pockets.back;
    let pocket = match pocket {
        PieceId::BackPocketLeft => &back.left,
        PieceId::BackPocketRight => &back.right,
        _ => return None,
    };
    let plies = caught_in(seam);
    let lined = plies > 0 && pocket.lining != Lining::None;
    lined
        .then(|| doc.lining_of(pocket))
        .flatten()
        .map(|cloth| (plies, cloth))
}

impl Garment {
    /// Whether a seam catches the lining of a back pocket.
    #[must_use]
    pub fn catches_lining(&self, seam: SeamId) -> bool {
        let lined = [Lining::Half, Lining::Full];
        caught_in(seam) > 0
            && lined
                .into_iter()
                .any(|how_far| has_lining(&self.doc, how_far))
    }
}

/// Whether a back pocket of the style is lined so far.
pub(crate) fn has_lining(doc: &StyleDoc, how_far: Lining) -> bool {
    let back = &doc.pockets.back;
    [&back.left, &back.right]
        .iter()
        .any(|pocket| pocket.lining == how_far)
}
