//! Hip pockets, fly and front rise.
//!
//! The front rise is sewn before the fly is topstitched, so that the fly's rows cover where those of
//! the rise begin; only where the style lets a row of the fly be caught in a later seam it comes
//! first.

use draft::PieceId;
use style::{Closing, SeamId};

use super::operation::{Operation, Stage};
use super::passes::Does;
use super::plan::{After, Plan, all_of, not_stated, says};
use super::seams::At;
use super::small_parts::Ready;
use crate::garment::RowEnd;
use crate::yarn::Unstated;

const STAGE: Stage = Stage::Fronts;

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
    let extra = if plan.has(PieceId::ExtraPocket) {
        plan.seam(SeamId::ExtraSet, &At::new(STAGE, &ready.extra))
    } else {
        After::new()
    };
    let faced = plan.seam(
        SeamId::FacingSet,
        &At::new(STAGE, &all_of(&[&ready.facings, &extra])),
    );
    let mouth = plan.seam(SeamId::Mouth, &At::new(STAGE, &faced));
    let closed = plan.seam(SeamId::BagClose, &At::new(STAGE, &mouth));
    plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::PocketFacing, PieceId::PocketBag],
        mind: says(&[
            "mouth flat on the marks of the facing; bag and facing level with waist and outseam",
        ]),
        after: closed,
        ..not_stated(
            STAGE,
            "bags-baste",
            "Pocket bags: baste to waist and outseam",
            ("basting of the bags along waist and outseam", &[]),
        )
    })
}

fn fly(plan: &mut Plan<'_>, ready: &Ready) -> After {
    // The yarn list takes the joining of facing and shield together.
    let half: Vec<Unstated> = plan
        .unstated_of(SeamId::Fly, Does::Joins)
        .into_iter()
        .map(|both| Unstated {
            sewn: both.sewn / 2.0,
            ..both
        })
        .collect();
    let joined = plan.first(SeamId::Fly, &At::new(STAGE, &ready.fly_facing));
    for operation in &mut plan.operations {
        if operation.key == "fly-join" && operation.not_stated.is_some() {
            operation.sewn = half.iter().map(|u| u.sewn).sum();
        }
    }
    let zip = plan.garment.doc.fly.closing == Closing::Zip;
    let shield = plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::FlyShield],
        parts: says(&["seam:fly"]),
        mind: says(&[if zip {
            "on the right front, the right tape of the zip between front and shield"
        } else {
            "on the right front, right sides together, from the band edge to the foot of the fly"
        }]),
        after: all_of(&[&ready.shield, &ready.fly_facing]),
        ..not_stated(
            STAGE,
            "fly-shield-join",
            "Fly shield: join to the right front",
            ("row that joins the shield to the right front", &half),
        )
    });
    let both = all_of(&[&joined, &shield]);
    let caught_later = plan
        .garment
        .rows
        .iter()
        .any(|row| row.seam == SeamId::Fly && row.ends == RowEnd::CaughtInSeam);
    if caught_later {
        let stitched = plan.held(SeamId::Fly, &At::new(STAGE, &both));
        plan.seam(SeamId::FrontRise, &At::new(STAGE, &stitched))
    } else {
        let rise = plan.seam(SeamId::FrontRise, &At::new(STAGE, &both));
        plan.held(SeamId::Fly, &At::new(STAGE, &rise))
    }
}
