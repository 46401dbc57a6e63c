//! What the first wash does to what is sewn, and what whoever wears a raw pair has to know of it.

use draft::{PieceId, PointId};
use style::{Along, PartId, SetAfter, Subject, Wash};
use trade::Share;
use words::{key, say};

use super::case::{Broken, Case};
use crate::work::is_washed_when_sewn;

/// A raw shell that loses more than this in its first wash is noted (common practice, from memory: denim shrunk at the
/// mill keeps within it).
const MOST_RAW: Share = Share::percent(3.0);

/// A leather patch that goes through the wash of the sewn pair.
pub(super) fn patch_in_wash(case: &Case<'_>) -> Vec<Broken> {
    let doc = case.context.doc;
    let found = || {
        let wash = doc.wash.as_ref().filter(|wash| is_washed_when_sewn(wash))?;
        let key = &doc.patch.as_ref()?.trim;
        let trim = case.trim(key).filter(|trim| trim.is_leather())?;
        (!wash.set_after.contains(&SetAfter::Patch)).then(|| {
            let trim = trim.name.to_string();
            Broken::note(PartId::Patch, say::SewingWashPatch { trim })
                .help(key::SEWING_WASH_PATCH_HELP)
                .at(case.fixing(key))
        })
    };
    found().into_iter().collect()
}

/// A shell that shrinks on whoever wears it.
pub(super) fn raw_shrinks(case: &Case<'_>) -> Vec<Broken> {
    let doc = case.context.doc;
    let raw = doc.wash.as_ref().is_some_and(Wash::is_raw);
    let key = &doc.cloth.shell;
    let shell = case.context.collection.cloths.get(key).filter(|_| raw);
    let found = shell.and_then(|cloth| {
        let (warp, weft) = (cloth.shrinkage(Along::Warp), cloth.shrinkage(Along::Weft));
        (warp > MOST_RAW || weft > MOST_RAW).then(|| {
            let lost = say::SewingWashRaw {
                cloth: cloth.name.to_string(),
                warp: warp.in_percent(1),
                weft: weft.in_percent(1),
            };
            Broken::note(Subject::Cloth(key.clone()), lost)
                .help(key::SEWING_WASH_RAW_HELP)
                .at(case.point(PieceId::Front, PointId::KneeOut))
        })
    });
    found.into_iter().collect()
}
