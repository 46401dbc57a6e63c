//! Inseam and outseam: which of them is sewn flat, and which closes the leg.
//!
//! With fronts joined at the rise and backs at the seat, the first of the two seams is sewn with the
//! leg open on its other side: the work lies flat. The second makes a tube of the leg. Right sides
//! together a seam is joined as easily in a tube, inside out; but rows seen outside run along the
//! inside of the tube then, and a lap has to be folded there, which only a machine with an arm does.
//! So a felled seam goes first, before a topstitched one, before one that is only joined. Where both
//! ask for the same, the outseam is sewn flat, if it has to be pressed open or topstitched, and the
//! inseam closes the leg, from hem to hem over the crossing at the crotch; where neither asks for
//! anything, the inseam is first (common practice).

use draft::PieceId;
use style::{Construction, Seam, SeamId};
use words::key;

use super::fronts::Fronts;
use super::operation::{Operation, Stage};
use super::operation_key::Task;
use super::pass_kinds::{Does, Holding};
use super::passes::passes;
use super::plan::{After, Plan, aid, all_of, not_stated, part_of, says};
use super::seams::At;
use crate::bulk::CrossingKind;
use crate::garment::{Fixing, FixingKind, Garment};

const STAGE: Stage = Stage::Legs;

/// What has to be done before whatever needs a seam of the leg.
pub(super) struct Legs {
    pub inseam: After,
    pub outseam: After,
}

/// How much a seam wants the leg open on its other side: 2 when felled, 1 when sewn along from
/// outside, 0 when only joined.
fn wants_open(garment: &Garment, seam: Option<&Seam>) -> u8 {
    let holds = |does| match does {
        Does::Holds(Holding::Fell) => 2,
        Does::Holds(_) => 1,
        Does::Joins | Does::Neatens => 0,
    };
    seam.map_or(0, |seam| {
        let passes = passes(garment, seam);
        passes
            .iter()
            .map(|pass| holds(pass.does))
            .max()
            .unwrap_or(0)
    })
}

/// The seam that makes a tube of the leg: outseam or inseam.
pub fn closing_seam(garment: &Garment) -> SeamId {
    let seam = |id: SeamId| garment.seams.iter().find(|seam| seam.id == id);
    let outseam = wants_open(garment, seam(SeamId::Outseam));
    let inseam = wants_open(garment, seam(SeamId::Inseam));
    let pressed_open =
        seam(SeamId::Outseam).is_some_and(|s| s.construction == Construction::PressedOpen);
    let outseam_first = outseam > inseam || (outseam == inseam && (outseam > 0 || pressed_open));
    if outseam_first {
        SeamId::Inseam
    } else {
        SeamId::Outseam
    }
}

pub(super) fn legs(plan: &mut Plan<'_>, fronts: &Fronts, seat: &After) -> Legs {
    let halves = all_of(&[&fronts.bags, &fronts.fly, seat]);
    let crotch = CrossingKind::Crotch;
    if closing_seam(plan.garment) == SeamId::Outseam {
        let thin = plan.thinned(crotch, SeamId::Inseam, STAGE, &halves);
        let inseam = plan.seam(SeamId::Inseam, &At::new(STAGE, &thin));
        let outseam = outseam(plan, &inseam, true);
        Legs { inseam, outseam }
    } else {
        let outseam = outseam(plan, &halves, false);
        let thin = plan.thinned(crotch, SeamId::Inseam, STAGE, &outseam);
        let inseam = plan.seam(
            SeamId::Inseam,
            &At {
                in_tube: true,
                ..At::new(STAGE, &thin)
            },
        );
        Legs { inseam, outseam }
    }
}

fn outseam(plan: &mut Plan<'_>, after: &After, in_tube: bool) -> After {
    let labels = labels_in_seam(plan);
    plan.seam(
        SeamId::Outseam,
        &At {
            in_tube,
            ..At::new(STAGE, &all_of(&[after, &labels]))
        },
    )
}

/// Labels that hang from a seam are held in its allowance before it is closed.
fn labels_in_seam(plan: &mut Plan<'_>) -> After {
    let hangs = |f: &Fixing| matches!(f.kind, FixingKind::Label(..)) && f.piece != PieceId::Band;
    let labels = plan.fixings(hangs);
    if labels.is_empty() {
        return After::new();
    }
    let found = plan.unstated_trims(&labels);
    let pieces = labels
        .iter()
        .filter_map(|index| plan.garment.fixings.get(*index))
        .map(|fixing| fixing.piece)
        .collect();
    plan.add(Operation {
        pieces,
        parts: vec![part_of(SeamId::Outseam)],
        fixings: labels,
        attachment: aid(key::ATTACHMENT_HEIGHT_MARK),
        mind: says(&[key::MIND_LABELS_SEAM]),
        ..not_stated(
            STAGE,
            Task::LabelsSeam,
            (key::NOT_STATED_LABELS_SEAM, &found),
        )
    })
}
