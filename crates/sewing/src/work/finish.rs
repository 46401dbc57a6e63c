//! What is done to the closed pair: tacks, buttonholes, buttons, rivets, the last look.

use draft::PieceId;
use style::{BandMethod, SeamId};
use trade::MachineId;
use words::{Key, key};

use super::fronts::Fronts;
use super::legs::Legs;
use super::operation::{Operation, Stage, Work};
use super::operation_key::Task;
use super::plan::{After, Plan, all_of, by_hand, operation, says};
use super::seams::At;
use super::wash;
use crate::garment::{Fixing, FixingKind};

const STAGE: Stage = Stage::Finish;

/// What the finish comes after.
pub(super) struct Before<'a> {
    pub fronts: &'a Fronts,
    pub seat: &'a After,
    pub legs: &'a Legs,
    pub band: &'a After,
    pub hems: &'a After,
    pub loops: &'a After,
}

pub(super) fn finish(plan: &mut Plan<'_>, before: &Before<'_>) {
    let sewn = seams_left(plan, before);
    let tacks = tacks(plan, before);
    let hole = band_buttonhole(plan, before.band);
    let buttons = buttons(plan, before, &hole);
    let rivets = rivets(plan, before, &tacks);
    let done = all_of(&[
        &sewn,
        &tacks,
        &hole,
        &buttons,
        &rivets,
        before.hems,
        before.loops,
    ]);
    let rest = set_left(plan, &done);
    let rest = wash::wash(plan, rest);
    plan.add(Operation {
        mind: says(&[key::MIND_LOOK_OVER]),
        after: rest,
        ..by_hand(STAGE, Task::LookOver)
    });
}

/// Rows of a seam that has no place of its own in the order.
fn seams_left(plan: &mut Plan<'_>, before: &Before<'_>) -> After {
    let left: Vec<SeamId> = plan
        .garment
        .rows
        .iter()
        .map(|row| row.seam)
        .filter(|seam| !plan.sews(*seam))
        .collect();
    let mut out = before.band.clone();
    for seam in left {
        if !plan.sews(seam) {
            out = plan.seam(seam, &At::new(STAGE, &out));
        }
    }
    out
}

fn tacks(plan: &mut Plan<'_>, before: &Before<'_>) -> After {
    let legs = all_of(&[&before.legs.inseam, &before.legs.outseam]);
    let mouths = all_of(&[before.band, &before.fronts.bags, &legs]);
    let places: [(SeamId, Task, Key, After); 4] = [
        (
            SeamId::BackPocketSet,
            Task::BartacksBackPockets,
            key::MIND_TACK_BACK_POCKETS,
            before.seat.clone(),
        ),
        (
            SeamId::Mouth,
            Task::BartacksMouths,
            key::MIND_TACK_MOUTHS,
            mouths,
        ),
        (
            SeamId::Fly,
            Task::BartacksFly,
            key::MIND_TACK_FLY,
            before.fronts.fly.clone(),
        ),
        (
            SeamId::Inseam,
            Task::BartacksCrotch,
            key::MIND_TACK_CROTCH,
            legs.clone(),
        ),
    ];
    let mut out = After::new();
    for (from, task, how, after) in places {
        let of = |f: &Fixing| f.from == from && matches!(f.kind, FixingKind::Bartack(..));
        let there = plan.fixings(of);
        if !there.is_empty() {
            out.extend(plan.bartacks((STAGE, task), there, how, after));
        }
    }
    out
}

fn band_buttonhole(plan: &mut Plan<'_>, band: &After) -> After {
    let holes =
        plan.fixings(|f| f.piece == PieceId::Band && matches!(f.kind, FixingKind::Buttonhole(_)));
    if holes.is_empty() {
        return After::new();
    }
    plan.buttonholes(
        (STAGE, Task::BandButtonhole),
        holes,
        &[key::MIND_BAND_HOLE],
        band.clone(),
    )
}

fn buttons(plan: &mut Plan<'_>, before: &Before<'_>, hole: &After) -> After {
    let all_round = plan.garment.doc.band.method == BandMethod::AllRound;
    let places: [(PieceId, Task, Key, After); 2] = [
        (
            PieceId::Band,
            Task::BandButton,
            if all_round {
                key::MIND_BAND_BUTTON_ROUND
            } else {
                key::MIND_BAND_BUTTON
            },
            all_of(&[before.band, hole]),
        ),
        (
            PieceId::FlyShield,
            Task::FlyButtons,
            key::MIND_FLY_BUTTONS,
            before.fronts.fly.clone(),
        ),
    ];
    let mut out = After::new();
    for (piece, task, how, after) in places {
        let there = plan.fixings(|f| f.piece == piece && matches!(f.kind, FixingKind::Button(_)));
        if !there.is_empty() {
            out.extend(plan.add(Operation {
                pieces: vec![piece],
                fixings: there,
                mind: says(&[how]),
                after,
                ..operation(STAGE, (Work::Set, MachineId::ButtonPress), task)
            }));
        }
    }
    out
}

fn rivets(plan: &mut Plan<'_>, before: &Before<'_>, tacks: &After) -> After {
    let there =
        plan.fixings(|f| f.piece == PieceId::Front && matches!(f.kind, FixingKind::Rivet(_)));
    if there.is_empty() {
        return After::new();
    }
    let legs = all_of(&[&before.legs.inseam, &before.legs.outseam]);
    let mut tacks = tacks.clone();
    tacks.retain(|key| key.task() == Some(Task::BartacksMouths));
    let place = if tacks.is_empty() {
        key::MIND_MOUTH_RIVETS_ALONE
    } else {
        key::MIND_MOUTH_RIVETS
    };
    plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::PocketFacing, PieceId::PocketBag],
        fixings: there,
        mind: says(&[place, key::MIND_RIVET_FACES]),
        after: all_of(&[before.band, &before.fronts.bags, &legs, &tacks]),
        ..operation(STAGE, (Work::Set, MachineId::RivetPress), Task::MouthRivets)
    })
}

/// Anything set that has no place of its own in the order.
fn set_left(plan: &mut Plan<'_>, after: &After) -> After {
    let set: Vec<usize> = plan
        .operations
        .iter()
        .flat_map(|o| o.fixings.clone())
        .collect();
    let left: Vec<usize> = (0..plan.garment.fixings.len())
        .filter(|index| !set.contains(index))
        .collect();
    if left.is_empty() {
        return after.clone();
    }
    let pieces = left
        .iter()
        .filter_map(|index| plan.garment.fixings.get(*index))
        .map(|fixing| fixing.piece)
        .collect();
    let needles = plan.tacks(&left);
    plan.add(Operation {
        pieces,
        fixings: left,
        sewn: needles.iter().map(|needle| needle.sewn).sum(),
        needle_count: u8::from(!needles.is_empty()),
        needles,
        after: after.clone(),
        ..operation(STAGE, (Work::Set, MachineId::ByHand), Task::SetRest)
    })
}
