//! Hip pockets, fly and front rise.
//!
//! The fly is topstitched on the left front alone while that lies flat, before the shield and the front rise are
//! joined (common practice); the rows of the rise then begin on its outermost one. Where a style asks for it after the
//! rise, its rows cover where those of the rise begin.

use draft::{EdgeId, PieceId};
use style::{Closing, Construction, MeasureId, SeamId};
use trade::{Length, MachineId, Unwashed};
use words::{Said, key, say};

use super::bag_at_fly::bag_lies_under_fly;
use super::operation::{Operation, Stage};
use super::operation_key::{OperationKey, SeamWork, Task};
use super::pass_kinds::Does;
use super::plan::{After, Plan, all_of, not_stated, part_of, pressed, says};
use super::seams::At;
use super::small_parts::Ready;
use crate::allowance::allowances;
use crate::edges::allowance;
use crate::garment::{Garment, On};
use crate::rows::is_stitched_flat;
use crate::yarn::Unstated;

const STAGE: Stage = Stage::Fronts;

/// Edges no farther apart than this are laid level.
const LEVEL: Length = Length::mm(0.05);

/// What has to be done before the fronts are used.
pub(super) struct Fronts {
    /// Bags closed and held in place.
    pub bags: After,
    /// Front rise and fly.
    pub fly: After,
}

pub(super) fn fronts(plan: &mut Plan<'_>, ready: &Ready) -> Fronts {
    Fronts {
        bags: hip_pockets(plan, ready),
        fly: fly(plan, ready),
    }
}

fn hip_pockets(plan: &mut Plan<'_>, ready: &Ready) -> After {
    let pressed_in = facings_pressed(plan, &ready.facings);
    let faced = plan.seam(SeamId::FacingSet, &At::new(STAGE, &pressed_in));
    // Set once the layer is faced: the row that sets the facing would sew it shut.
    let ready_for_mouth = if plan.has(PieceId::ExtraPocket) {
        let after = all_of(&[&ready.extra, &faced]);
        plan.seam(SeamId::ExtraSet, &At::new(STAGE, &after))
    } else {
        faced
    };
    let mouth = plan.seam(SeamId::Mouth, &At::new(STAGE, &ready_for_mouth));
    let closed = plan.seam(SeamId::BagClose, &At::new(STAGE, &mouth));
    plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::PocketFacing, PieceId::PocketBag],
        mind: says(if bag_lies_under_fly(plan.garment) {
            &[key::MIND_BAGS_BASTE, key::MIND_BAGS_BASTE_CLEAR]
        } else {
            &[key::MIND_BAGS_BASTE]
        }),
        after: closed,
        ..not_stated(STAGE, Task::BagsBaste, (key::NOT_STATED_BAGS_BASTE, &[]))
    })
}

/// A facing whose inner edge is turned in is pressed before it is set on the bag.
fn facings_pressed(plan: &mut Plan<'_>, after: &After) -> After {
    let seam = plan.seam_of(SeamId::FacingSet);
    let Some(seam) = seam.filter(|seam| seam.construction == Construction::PatchSet) else {
        return after.clone();
    };
    let turned = allowances(seam, Length::ZERO).over.in_mm(1);
    plan.add(Operation {
        pieces: vec![PieceId::PocketFacing],
        mind: vec![say::MindPressFacing { turned }.into()],
        after: after.clone(),
        ..pressed(STAGE, Task::FacingPress)
    })
}

fn fly(plan: &mut Plan<'_>, ready: &Ready) -> After {
    // The yarn list takes the joining of facing and shield together.
    let half: Vec<Unstated> = plan
        .unstated_of(SeamId::Fly, Does::Joins)
        .into_iter()
        .map(|both| Unstated {
            sewn: Unwashed::new(both.sewn.figure() / 2.0),
            ..both
        })
        .collect();
    let joined = plan.first(SeamId::Fly, &At::new(STAGE, &ready.fly_facing));
    let join = OperationKey::of_seam(SeamId::Fly, SeamWork::Pass(Does::Joins));
    for operation in &mut plan.operations {
        if operation.key == join && operation.not_stated.is_some() {
            operation.sewn = half.iter().map(|u| u.sewn).sum();
        }
    }
    let flat = is_stitched_flat(&plan.garment.doc, &plan.garment.seams);
    let stitched = if flat {
        plan.held(SeamId::Fly, &At::new(STAGE, &joined))
    } else {
        joined
    };
    let shield = plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::FlyShield],
        parts: vec![part_of(SeamId::Fly)],
        mind: shield_joined(plan.garment),
        after: all_of(&[&ready.shield, &ready.fly_facing]),
        ..not_stated(
            STAGE,
            Task::FlyShieldJoin,
            (key::NOT_STATED_FLY_SHIELD_JOIN, &half),
        )
    });
    let shield = plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::FlyShield],
        parts: vec![part_of(SeamId::Fly)],
        machine: MachineId::Overedge,
        mind: says(&[key::MIND_NEATEN_SHIELD]),
        after: shield,
        ..not_stated(
            STAGE,
            Task::FlyShieldNeaten,
            (key::NOT_STATED_FLY_SHIELD_OVEREDGE, &[]),
        )
    });
    let both = all_of(&[&stitched, &shield]);
    let rise = plan.seam(SeamId::FrontRise, &At::new(STAGE, &both));
    if flat {
        rise
    } else {
        plan.held(SeamId::Fly, &At::new(STAGE, &rise))
    }
}

/// How shield and right front meet: each edge at its own distance from the seam line.
fn shield_joined(garment: &Garment) -> Vec<Said> {
    let depth = garment.sewn(MeasureId::HemDepth).figure();
    let cut = |piece, edge, on| allowance(&garment.seams, depth, piece, edge, on);
    let front = cut(PieceId::Front, EdgeId::Fly, On::Mirrored);
    let shield = cut(PieceId::FlyShield, EdgeId::Left, On::AsDrawn);
    let apart = shield - front;
    let joined = if apart.abs() < LEVEL {
        let plain = front.in_mm(1);
        say::MindShieldJoin { plain }.into()
    } else {
        say::MindShieldJoinUneven {
            apart: apart.in_mm(1),
            front: front.in_mm(1),
            shield: shield.in_mm(1),
        }
        .into()
    };
    let mut out = vec![joined];
    if garment.doc.fly.closing == Closing::Zip {
        out.push(key::MIND_SHIELD_JOIN_ZIP.into());
    }
    out.push(key::MIND_SHIELD_FOOT.into());
    out
}
