//! Waistband, patch, loops, and hems.

use draft::PieceId;
use style::{BandMethod, Construction, MeasureId, SeamId};
use words::key;

use super::fronts::Fronts;
use super::legs::Legs;
use super::operation::{NotStated, Operation, Stage, Work};
use super::plan::{After, Plan, aid, all_of, by_hand, not_stated, operation, says};
use super::seams::At;
use super::small_parts::Ready;
use crate::context::mm;
use crate::garment::{FixingKind, RowEnd};

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
        plan.held(SeamId::Band, &At::new(Stage::Band, &joined))
    } else if turned {
        let ends = close_ends(
            plan,
            &joined,
            "right sides together across both ends, turn and press, before the inner edge is sewn down",
        );
        plan.held(SeamId::Band, &At::new(Stage::Band, &ends))
    } else {
        let set = plan.held(SeamId::Band, &At::new(Stage::Band, &joined));
        close_ends(
            plan,
            &set,
            "turn in both ends and close them, level with the fly",
        )
    }
}

fn close_ends(plan: &mut Plan<'_>, after: &After, how: &str) -> After {
    plan.add(Operation {
        pieces: vec![PieceId::Band],
        parts: says(&["seam:band"]),
        mind: says(&[how]),
        after: after.clone(),
        usual: Some("waistband-ends"),
        source: trade::Confidence::FromMemory,
        ..not_stated(
            Stage::Band,
            "band-ends",
            "Waistband: close its ends",
            ("closing rows at the ends of the band", &[]),
        )
    })
}

pub(super) fn patch(plan: &mut Plan<'_>, band: &After) -> After {
    let patch = plan.fixings(|f| matches!(f.kind, FixingKind::Patch(..)));
    if patch.is_empty() {
        return band.clone();
    }
    if plan.is_laid(SeamId::PatchSet) {
        let sewn = plan.seam(SeamId::PatchSet, &At::new(Stage::Band, band));
        plan.sets(&sewn, patch);
        return sewn;
    }
    let found = plan.unstated_trims(&patch);
    plan.add(Operation {
        pieces: vec![PieceId::Band],
        fixings: patch,
        attachment: aid(key::ATTACHMENT_PLACE_TEMPLATE),
        mind: says(&["all round, through the whole band"]),
        after: band.clone(),
        ..not_stated(
            Stage::Band,
            "patch-set",
            "Patch: sew on",
            ("row that sews the patch on", &found),
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
    let how = [
        "fold the ends under; tack at the top edge of the band and at the foot below the band seam",
        "leave room for the belt between the two tacks",
    ];
    let sewn = needles.iter().map(|needle| needle.sewn).sum();
    let not_stated = needles.is_empty().then(|| NotStated {
        what: "how the loops are held".to_owned(),
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
        mind: says(&how),
        after: all_of(&[&ready.loops, band]),
        usual: Some("bartack"),
        source: trade::Confidence::FromMemory,
        ..operation(
            Stage::Band,
            (Work::Sewn, "bartacker"),
            "loops-set",
            "Belt loops: set and tack",
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
    let depth = plan.garment.pattern.spec[MeasureId::HemDepth];
    plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::Back],
        parts: says(&["seam:hem"]),
        mind: vec![
            "draw all ends to the inside, knot them, and hide the knot in the fold".to_owned(),
            format!("no end longer than the hem is deep, {}", mm(depth)),
        ],
        after: hem,
        ..by_hand(Stage::Hems, "hem-tie", "Hems: tie the thread ends")
    })
}
