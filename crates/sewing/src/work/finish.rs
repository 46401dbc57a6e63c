//! What is done to the closed pair: tacks, buttonholes, buttons, rivets, the last look.

use draft::PieceId;
use style::{BandMethod, SeamId};

use super::fronts::Fronts;
use super::legs::Legs;
use super::operation::{Operation, Stage, Work};
use super::plan::{After, Plan, all_of, by_hand, operation, says};
use super::seams::At;
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
    plan.add(Operation {
        mind: says(&["cut every thread end, turn right side out, look over seams and hardware"]),
        after: rest,
        ..by_hand(STAGE, "look-over", "Trim threads and look over")
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
    let places: [(SeamId, &str, &str, &str, After); 4] = [
        (
            SeamId::BackPocketSet,
            "bartacks-back-pockets",
            "Back pockets: bartacks",
            "at both top corners, down along the sides, between the setting rows",
            before.seat.clone(),
        ),
        (
            SeamId::Mouth,
            "bartacks-mouths",
            "Pocket mouths: bartacks",
            "across both ends of each mouth, through the facing behind it",
            mouths,
        ),
        (
            SeamId::Fly,
            "bartacks-fly",
            "Fly: bartacks",
            "at the foot of the fly through both fronts, and across the topstitching above its end",
            before.fronts.fly.clone(),
        ),
        (
            SeamId::Inseam,
            "bartacks-crotch",
            "Crotch: bartack",
            "where rise, seat and inseams meet, on the front",
            legs.clone(),
        ),
    ];
    let mut out = After::new();
    for (from, key, name, how, after) in places {
        let of = |f: &Fixing| f.from == from && matches!(f.kind, FixingKind::Bartack(..));
        let there = plan.fixings(of);
        if !there.is_empty() {
            out.extend(plan.bartacks((STAGE, key, name), there, &[how], after));
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
        (STAGE, "band-buttonhole", "Waistband: buttonhole"),
        holes,
        &["in the left end, the eye towards its edge, level with the button"],
        band.clone(),
    )
}

fn buttons(plan: &mut Plan<'_>, before: &Before<'_>, hole: &After) -> After {
    let all_round = plan.garment.doc.band.method == BandMethod::AllRound;
    let places: [(PieceId, &str, &str, &str, After); 2] = [
        (
            PieceId::Band,
            "band-button",
            "Waistband: button",
            if all_round {
                "at the point of the V, under the eye of the buttonhole when the fly is closed"
            } else {
                "at half the height of the band, under the eye of the buttonhole when the fly is closed"
            },
            all_of(&[before.band, hole]),
        ),
        (
            PieceId::FlyShield,
            "fly-buttons",
            "Fly: buttons",
            "on the shield, each under the eye of its buttonhole when the fly is closed",
            before.fronts.fly.clone(),
        ),
    ];
    let mut out = After::new();
    for (piece, key, name, how, after) in places {
        let there = plan.fixings(|f| f.piece == piece && matches!(f.kind, FixingKind::Button(_)));
        if !there.is_empty() {
            out.extend(plan.add(Operation {
                pieces: vec![piece],
                fixings: there,
                mind: says(&[how]),
                after,
                ..operation(STAGE, (Work::Set, "button press"), key, name)
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
    tacks.retain(|key| key == "bartacks-mouths");
    plan.add(Operation {
        pieces: vec![PieceId::Front, PieceId::PocketFacing, PieceId::PocketBag],
        fixings: there,
        mind: says(&[
            "at both ends of each mouth, beside the tacks, through the facing behind it",
            "cap outside, stud inside",
        ]),
        after: all_of(&[before.band, &before.fronts.bags, &legs, &tacks]),
        ..operation(
            STAGE,
            (Work::Set, "rivet press"),
            "mouth-rivets",
            "Pocket mouths: rivets",
        )
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
        ..operation(
            STAGE,
            (Work::Set, "by hand"),
            "set-rest",
            "Whatever else is set",
        )
    })
}
