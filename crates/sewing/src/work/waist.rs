//! Waistband, patch, loops, and hems.

use draft::PieceId;
use style::{BandMethod, Construction, MeasureId, PatchThrough, SeamId};
use trade::MachineId;
use trade::seam::SeamOperationId;
use words::{Key, key, say};

use super::fronts::Fronts;
use super::legs::Legs;
use super::operation::{NotStated, Operation, Stage, Work};
use super::operation_key::Task;
use super::order_words::unstated_called;
use super::pass_kinds::{Does, Holding};
use super::passes::passes;
use super::plan::{
    After, Plan, aid, all_of, by_hand, not_stated, operation, part_of, pressed, says,
};
use super::seams::At;
use super::small_parts::Ready;
use super::thick::thick_crossings;
use super::told::set_on;
use super::turned_ends::turned_at_ends;
use crate::garment::{Fixing, FixingKind, Garment, RowEnd};

/// What has to be done before whatever needs the band.
pub(super) fn band(plan: &mut Plan<'_>, ready: &Ready, fronts: &Fronts, legs: &Legs) -> After {
    let before = all_of(&[
        &ready.band,
        &fronts.bags,
        &fronts.fly,
        &legs.inseam,
        &legs.outseam,
    ]);
    let round = plan.garment.doc.band.method == BandMethod::AllRound
        && plan
            .garment
            .rows
            .iter()
            .any(|row| row.seam == SeamId::Band && row.number > 1);
    let turned = plan
        .seam_of(SeamId::Band)
        .is_some_and(|seam| seam.construction == Construction::BandTurned);
    let joined = plan.first(SeamId::Band, &At::new(Stage::Band, &before));
    if round {
        held_round(plan, &joined)
    } else if turned {
        let ends = close_ends(plan, &joined, key::MIND_BAND_ENDS_TURNED);
        plan.held(SeamId::Band, &At::new(Stage::Band, &ends))
    } else {
        let set = plan.held(SeamId::Band, &At::new(Stage::Band, &joined));
        close_ends(plan, &set, key::MIND_BAND_ENDS)
    }
}

/// The band set on, its ends turned in, and the row that closes them sewn round. A folder cannot take turned-in ends, so
/// its row leaves them open until they are turned in (common practice).
fn held_round(plan: &mut Plan<'_>, joined: &After) -> After {
    let mut after = joined.clone();
    let Some(seam) = plan.seam_of(SeamId::Band) else {
        return after;
    };
    let at = At::new(Stage::Band, joined);
    let passes = passes(plan.garment, seam);
    let mut turned = false;
    for pass in passes.iter().filter(|pass| pass.does.holds()) {
        if pass.does == Does::Holds(Holding::Round) && !turned {
            after = turn_ends(plan, &after);
            turned = true;
        }
        after = plan.pass(seam, pass, &at, &after);
    }
    after
}

/// The ends of a band are turned in before a row is sewn round them.
fn turn_ends(plan: &mut Plan<'_>, after: &After) -> After {
    let turned = turned_at_ends(plan.garment).in_mm(1);
    plan.add(Operation {
        pieces: vec![PieceId::Band],
        parts: vec![part_of(SeamId::Band)],
        mind: vec![
            say::MindBandEndsTurn { turned }.into(),
            key::MIND_PRESS_CORNERS.into(),
        ],
        after: after.clone(),
        ..pressed(Stage::Band, Task::BandEndsTurn)
    })
}

fn close_ends(plan: &mut Plan<'_>, after: &After, how: Key) -> After {
    plan.add(Operation {
        pieces: vec![PieceId::Band],
        parts: vec![part_of(SeamId::Band)],
        mind: says(&[how, key::MIND_PRESS_CORNERS]),
        after: after.clone(),
        usual: Some(SeamOperationId::WaistbandEnds),
        source: trade::Confidence::FromMemory,
        ..not_stated(
            Stage::Band,
            Task::BandEnds,
            (key::NOT_STATED_BAND_ENDS, &[]),
        )
    })
}

/// Whether the patch is sewn on before the band is set on: through its outer ply alone.
pub(super) fn patched_first(garment: &Garment) -> bool {
    let patch = garment.doc.patch.as_ref();
    patch.is_some_and(|patch| patch.through == PatchThrough::OuterPly)
}

pub(super) fn patch(plan: &mut Plan<'_>, stage: Stage, band: &After) -> After {
    let patch = plan.fixings(|f| matches!(f.kind, FixingKind::Patch(..)));
    if patch.is_empty() {
        return band.clone();
    }
    if plan.is_laid(SeamId::PatchSet) {
        let sewn = plan.seam(SeamId::PatchSet, &At::new(stage, band));
        plan.sets(&sewn, patch);
        return sewn;
    }
    let found = plan.unstated_trims(&patch);
    plan.add(Operation {
        pieces: vec![PieceId::Band],
        fixings: patch,
        attachment: aid(key::ATTACHMENT_PLACE_TEMPLATE),
        mind: says(set_on(plan.garment, SeamId::PatchSet)),
        after: band.clone(),
        ..not_stated(
            stage,
            unstated_called(SeamId::PatchSet, Does::Holds(Holding::Set)),
            (key::NOT_STATED_PATCH, &found),
        )
    })
}

/// Loops are set with their tacks, over the finished band and beside the patch.
pub(super) fn loops(plan: &mut Plan<'_>, ready: &Ready, band: &After) -> After {
    let loops = plan.fixings(|f| {
        matches!(f.kind, FixingKind::Loop(..))
            || (f.from == SeamId::LoopEdge && matches!(f.kind, FixingKind::Bartack(..)))
    });
    if loops.is_empty() {
        return band.clone();
    }
    let needles = plan.tacks(&loops);
    let mut how = vec![key::MIND_LOOPS_FOLD, key::MIND_LOOPS_ROOM];
    let coin_rivet =
        |f: &Fixing| f.piece == PieceId::CoinPocket && matches!(f.kind, FixingKind::Rivet(_));
    // They are set by then, and a foot tack placed within its tolerance can meet one.
    if plan.garment.fixings.iter().any(coin_rivet) {
        how.push(key::MIND_LOOPS_RIVET);
    }
    let sewn = needles.iter().map(|needle| needle.sewn).sum();
    let not_stated = needles.is_empty().then(|| NotStated {
        what: key::NOT_STATED_LOOPS.into(),
        stitch: None,
        density: None,
    });
    plan.add(Operation {
        pieces: vec![PieceId::Band, PieceId::LoopStrip],
        fixings: loops,
        needles,
        needle_count: 1,
        sewn,
        not_stated,
        attachment: aid(key::ATTACHMENT_LOOP_MARKS),
        mind: says(&how)
            .into_iter()
            .chain(thick_crossings(plan.garment, SeamId::LoopEdge))
            .collect(),
        after: all_of(&[&ready.loops, band]),
        usual: Some(SeamOperationId::Bartack),
        source: trade::Confidence::FromMemory,
        ..operation(
            Stage::Band,
            (Work::Sewn, MachineId::Bartacker),
            Task::LoopsSet,
        )
    })
}

pub(super) fn hems(plan: &mut Plan<'_>, legs: &Legs) -> After {
    let hem = plan.seam(
        SeamId::Hem,
        &At::new(Stage::Hems, &all_of(&[&legs.inseam, &legs.outseam])),
    );
    let tied = plan.garment.rows.iter().any(|row| {
        row.seam == SeamId::Hem
            && (row.begins == RowEnd::TiedByHand || row.ends == RowEnd::TiedByHand)
    });
    if !tied {
        return hem;
    }
    let depth = plan.garment.sewn(MeasureId::HemDepth).figure().in_mm(1);
    plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::Back],
        parts: vec![part_of(SeamId::Hem)],
        mind: vec![
            key::MIND_HEM_TIE.into(),
            say::MindHemTieLength { depth }.into(),
        ],
        after: hem,
        ..by_hand(Stage::Hems, Task::HemTie)
    })
}
