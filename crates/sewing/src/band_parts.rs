//! In how many parts the waistband is cut, and what its join at the centre back needs.

use draft::{EdgeId, Pattern, PieceId};
use style::{Along, BandCutting, Collection, Construction, MeasureId, Seam, SeamId, StyleDoc};
use trade::{Length, Share};

use crate::context::Context;
use crate::edges::allowance;
use crate::garment::{Garment, On};

/// How many parts a band of this length, with what is turned in at its ends, is cut in along the weft
/// of a cloth: it cannot be longer than the cloth is wide.
#[must_use]
pub fn band_parts(whole: Length, cloth_width: Length) -> u32 {
    if whole > cloth_width { 2 } else { 1 }
}

/// What is cut beyond the centre back on each half of a band that is joined there.
#[must_use]
pub fn band_join_allowance(seams: &[Seam]) -> Length {
    allowance(
        seams,
        Length::ZERO,
        PieceId::Band,
        EdgeId::CentreBack,
        On::AsDrawn,
    )
}

/// How the halves are joined: as the style states it, else pressed open.
#[must_use]
pub fn band_join_construction(seams: &[Seam]) -> Construction {
    let stated = seams.iter().find(|seam| seam.id == SeamId::BandJoin);
    stated.map_or(Construction::PressedOpen, |seam| seam.construction)
}

/// Whether the band of a sewn size is cut in two and joined at the centre back.
#[must_use]
pub fn band_is_joined(garment: &Garment) -> bool {
    is_joined(
        (&garment.doc, &garment.collection),
        &garment.pattern,
        &garment.seams,
    )
}

/// The same while the size is being sewn.
pub(crate) fn joined(context: &Context<'_>) -> bool {
    is_joined(
        (context.doc, context.collection),
        context.pattern,
        context.seams,
    )
}

fn is_joined(
    (doc, collection): (&StyleDoc, &Collection),
    pattern: &Pattern,
    seams: &[Seam],
) -> bool {
    let cloth = collection.cloths.get(&doc.cloth.shell);
    let along_weft = doc.cutting.band == Some(BandCutting::Weft);
    let (Some(cloth), Some(band), true) = (cloth, pattern.piece(PieceId::Band), along_weft) else {
        return false;
    };
    let long = |id| band.edge(id).map_or(Length::ZERO, |edge| edge.length());
    let left = 1.0 - believed(cloth.shrinkage(Along::Weft)).to_ratio();
    let finished = long(EdgeId::Join) + long(EdgeId::Overlap);
    let hem_depth = pattern.spec[MeasureId::HemDepth];
    let end = allowance(
        seams,
        hem_depth,
        PieceId::Band,
        EdgeId::EndLeft,
        On::AsDrawn,
    );
    band_parts(finished / left + end * 2.0, cloth.width) > 1
}

/// A shrinkage that cannot be counts as none, as it does for the cutter, who is told.
fn believed(shrinkage: Share) -> Share {
    let ratio = shrinkage.to_ratio();
    if ratio.is_finite() && ratio.abs() < 1.0 {
        shrinkage
    } else {
        Share::ZERO
    }
}
