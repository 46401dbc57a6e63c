//! What is sewn through one ply of a part that is closed by then.

use style::{PartId, PatchThrough, SeamId, Subject};
use words::{key, say};

use super::whereabouts::{operation, place};
use crate::check::case::{Broken, Case};
use crate::garment::FixingKind;

/// Sewn through a ply that is reached only while the other plies lie open.
struct OnePly {
    seam: SeamId,
    /// The seam that closes what it is sewn into.
    closed_by: SeamId,
}

const ONE_PLY: [OnePly; 5] = [
    OnePly {
        seam: SeamId::LabelSet,
        closed_by: SeamId::Band,
    },
    OnePly {
        seam: SeamId::PatchSet,
        closed_by: SeamId::Band,
    },
    OnePly {
        seam: SeamId::Decoration,
        closed_by: SeamId::BackPocketSet,
    },
    OnePly {
        seam: SeamId::FacingSet,
        closed_by: SeamId::BagClose,
    },
    OnePly {
        seam: SeamId::ExtraSet,
        closed_by: SeamId::BagClose,
    },
];

/// Operations on one ply that come when no machine reaches it any more.
pub(crate) fn closed_before(case: &Case<'_>) -> Vec<Broken> {
    let patch = case.context.doc.patch.as_ref();
    let whole_band = patch.is_none_or(|patch| patch.through == PatchThrough::WholeBand);
    let one_ply = ONE_PLY
        .iter()
        .filter(|of| of.seam != SeamId::PatchSet || !whole_band);
    one_ply.filter_map(|of| closed(case, of)).collect()
}

fn closed(case: &Case<'_>, of: &OnePly) -> Option<Broken> {
    let scene = case.scene;
    let closed = scene.first_of(of.closed_by)?;
    let is_late =
        |(at, o): &(usize, &crate::work::Operation)| o.key.seam() == Some(of.seam) && *at > closed;
    let (now, late) = scene.order.iter().enumerate().find(is_late)?;
    let fixing = late.fixings.iter().find_map(|at| case.fixings.get(*at));
    let about: Subject = match fixing.map(|fixing| (&fixing.kind, &fixing.from)) {
        Some((FixingKind::Label(..), from)) => Subject::Label(from.code().to_owned()),
        Some((FixingKind::Patch(..), _)) => PartId::Patch.into(),
        _ => of.seam.into(),
    };
    let said = say::ClashClosed {
        closed: operation(scene, closed),
        now: operation(scene, now),
    };
    Some(
        Broken::warning(about, said)
            .help(key::CLASH_CLOSED_HELP)
            .at(fixing.and_then(|fixing| place(fixing.piece, fixing.at))),
    )
}
