//! What is made ready before the panels are touched: loops, small pockets, fly parts, band.

use draft::{EdgeId, PieceId};
use style::{Construction, Lining, MeasureId, SeamId};
use trade::seam::SeamOperationId;
use trade::{Length, MachineId};
use words::{key, say};

use super::operation::{Operation, Stage, Work};
use super::operation_key::{Called, OperationKey, Task};
use super::order_words::{pressing_called, unstated_called};
use super::pass_kinds::{Does, Holding};
use super::plan::{After, Plan, aid, by_hand, not_stated, operation, part_of, pressed, says};
use super::seams::At;
use crate::band_parts::band_is_joined;
use crate::construct::construct;
use crate::edges::allowance;
use crate::garment::{FixingKind, On};
use crate::joining::JOIN_ALLOWANCE;
use crate::lining::has_lining;
use crate::yarn::Unstated;

const STAGE: Stage = Stage::SmallParts;

/// How far the front edge of the buttonhole strip stands back from the fly edge, so that it is not seen (common practice).
const STRIP_STANDS_BACK: Length = Length::mm(1.5);

/// What has to be done before each of the small parts is used.
pub(super) struct Ready {
    pub loops: After,
    /// The coin pocket on its hip pocket facing.
    pub facings: After,
    pub back_pockets: After,
    pub extra: After,
    pub band: After,
    pub fly_facing: After,
    pub shield: After,
}

pub(super) fn small_parts(plan: &mut Plan<'_>) -> Ready {
    Ready {
        loops: loops(plan),
        facings: coin_pocket(plan),
        back_pockets: back_pockets(plan),
        extra: extra(plan),
        fly_facing: fly_facing(plan),
        shield: shield(plan),
        band: band(plan),
    }
}

fn loops(plan: &mut Plan<'_>) -> After {
    let strip = plan.seam(SeamId::LoopEdge, &At::new(STAGE, &After::new()));
    let wanted = plan
        .fixings(|f| matches!(f.kind, FixingKind::Loop(..)))
        .len();
    if wanted == 0 {
        return strip;
    }
    let length = plan.garment.sewn(MeasureId::LoopLength).figure();
    plan.add(Operation {
        pieces: vec![PieceId::LoopStrip],
        parts: vec![format!("fixing:{}", SeamId::LoopEdge.code())],
        attachment: aid(key::ATTACHMENT_LENGTH_STOP),
        mind: vec![
            say::MindLoopsCut {
                length: length.in_mm(1),
                loops: wanted,
            }
            .into(),
        ],
        after: strip,
        ..by_hand(STAGE, Task::LoopsCut)
    })
}

fn coin_pocket(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::CoinPocket) {
        return After::new();
    }
    let hem = plan.seam(SeamId::CoinHem, &At::new(STAGE, &After::new()));
    let turned = plan.add(turned_in(
        Task::CoinPocketPress,
        &[PieceId::CoinPocket],
        hem,
    ));
    let set = plan.seam(SeamId::CoinSet, &At::new(STAGE, &turned));
    let tacks =
        plan.fixings(|f| f.from == SeamId::CoinSet && matches!(f.kind, FixingKind::Bartack(..)));
    let tacked = if tacks.is_empty() {
        set
    } else {
        plan.bartacks(
            (STAGE, Task::CoinPocketBartacks),
            tacks,
            key::MIND_COIN_TACKS,
            set,
        )
    };
    let rivets =
        plan.fixings(|f| f.piece == PieceId::CoinPocket && matches!(f.kind, FixingKind::Rivet(_)));
    if rivets.is_empty() {
        return tacked;
    }
    plan.add(Operation {
        pieces: vec![PieceId::CoinPocket, PieceId::PocketFacing],
        fixings: rivets,
        mind: says(&[key::MIND_COIN_RIVETS, key::MIND_RIVET_FACES]),
        after: tacked,
        ..operation(
            STAGE,
            (Work::Set, MachineId::RivetPress),
            Task::CoinPocketRivets,
        )
    })
}

fn turned_in(task: Task, pieces: &[PieceId], after: After) -> Operation {
    Operation {
        pieces: pieces.to_vec(),
        attachment: aid(key::ATTACHMENT_SHAPE_TEMPLATE),
        mind: says(&[key::MIND_PRESS_SHAPE, key::MIND_PRESS_CORNERS]),
        after,
        ..pressed(STAGE, task)
    }
}

/// A lining is laid in before the hem that catches it, and after the stitching that goes through the pocket alone; a pocket
/// without one is hemmed first, so that the stitching is measured from a finished edge.
fn back_pockets(plan: &mut Plan<'_>) -> After {
    use PieceId::{BackLiningLeft, BackLiningRight, BackPocketLeft, BackPocketRight};
    let pockets = [BackPocketLeft, BackPocketRight];
    let linings = [BackLiningLeft, BackLiningRight];
    let all: Vec<PieceId> = pockets.into_iter().chain(linings).collect();
    let lined = linings.into_iter().any(|lining| plan.has(lining));
    let mut after = After::new();
    if lined {
        after = decorated(plan, after);
        let laid_in = says(&[key::MIND_LINE_POCKETS]);
        // Only the foot of a half lining is pressed by itself.
        let half = has_lining(&plan.garment.doc, Lining::Half);
        let (how, pressed_in) = if half {
            let foot = says(&[key::MIND_LINE_POCKETS_HALF]);
            (pressed(STAGE, Task::BackPocketsLine), foot)
        } else {
            (by_hand(STAGE, Task::BackPocketsLine), Vec::new())
        };
        let later = says(&[key::MIND_LINE_POCKETS_LATER]);
        after = plan.add(Operation {
            pieces: all.clone(),
            mind: [laid_in, pressed_in, later].concat(),
            after,
            ..how
        });
    }
    after = plan.seam(SeamId::BackPocketHem, &At::new(STAGE, &after));
    if !lined {
        after = decorated(plan, after);
        return plan.add(turned_in(Task::BackPocketsPress, &pockets, after));
    }
    let mut press = turned_in(Task::BackPocketsPress, &all, after);
    press.mind.push(key::MIND_PRESS_LINED.into());
    plan.add(press)
}

fn decorated(plan: &mut Plan<'_>, after: After) -> After {
    if plan.is_laid(SeamId::Decoration) {
        plan.seam(SeamId::Decoration, &At::new(STAGE, &after))
    } else {
        after
    }
}

fn extra(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::ExtraPocket) {
        return After::new();
    }
    let hem = plan.seam(SeamId::ExtraHem, &At::new(STAGE, &After::new()));
    plan.add(turned_in(
        Task::ExtraPocketPress,
        &[PieceId::ExtraPocket],
        hem,
    ))
}

fn fly_facing(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::FlyFacing) {
        return After::new();
    }
    let on_facing = |f: &crate::Fixing| f.piece == PieceId::FlyFacing;
    let holes = plan.fixings(|f| on_facing(f) && matches!(f.kind, FixingKind::Buttonhole(_)));
    let zip = plan.fixings(|f| on_facing(f) && matches!(f.kind, FixingKind::Zip(..)));
    let mut after = After::new();
    if plan.garment.pattern.spec.button_fly {
        after = fly_strip(plan);
    }
    if !holes.is_empty() {
        after = plan.buttonholes(
            (STAGE, Task::FlyButtonholes),
            holes,
            &[key::MIND_FLY_HOLES, key::MIND_FLY_HOLES_EYE],
            after,
        );
    }
    after = plan.seam(SeamId::FlyEdge, &At::new(STAGE, &after));
    if !zip.is_empty() {
        after = plan.add(Operation {
            pieces: vec![PieceId::FlyFacing],
            fixings: zip,
            attachment: aid(key::ATTACHMENT_ZIP_FOOT),
            mind: says(&[key::MIND_ZIP_LEFT]),
            after,
            ..not_stated(STAGE, Task::ZipLeft, (key::NOT_STATED_ZIP_LEFT, &[]))
        });
    }
    after
}

/// The strip that carries the holes of a button fly is closed along its front edge and turned, so that it is
/// finished before it is put behind the facing. Cut as the facing is, it is closed deeper, so that its curved edge meets
/// the facing's and only its front edge stands back.
fn fly_strip(plan: &mut Plan<'_>) -> After {
    let found = plan.unstated_strip();
    let garment = plan.garment;
    let depth = garment.sewn(MeasureId::HemDepth).figure();
    let (piece, edge) = (PieceId::FlyFacing, EdgeId::Edge);
    let joined = allowance(&garment.seams, depth, piece, edge, On::Mirrored);
    let closed = (joined + STRIP_STANDS_BACK).in_mm(1);
    let back = STRIP_STANDS_BACK.in_mm(1);
    plan.add(Operation {
        pieces: vec![PieceId::FlyFacing],
        parts: vec![part_of(SeamId::FlyEdge)],
        mind: vec![
            say::MindFlyStrip { back, closed }.into(),
            say::MindFlyStripLies { back }.into(),
        ],
        ..not_stated(
            STAGE,
            Task::FlyStripClose,
            (key::NOT_STATED_FLY_STRIP, &found),
        )
    })
}

fn shield(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::FlyShield) {
        return After::new();
    }
    plan.add(Operation {
        pieces: vec![PieceId::FlyShield],
        mind: says(&[key::MIND_SHIELD_CLOSE]),
        ..not_stated(
            STAGE,
            Task::FlyShieldClose,
            (key::NOT_STATED_FLY_SHIELD_CLOSE, &[]),
        )
    })
}

/// A band cut in two is joined at the centre back before anything else is done to it.
fn band_join(plan: &mut Plan<'_>) -> After {
    const SEAM: SeamId = SeamId::BandJoin;
    if !band_is_joined(plan.garment) {
        return After::new();
    }
    if plan.is_laid(SEAM) {
        return plan.seam(SEAM, &At::new(STAGE, &After::new()));
    }
    let found: Vec<Unstated> = plan.unstated_of(SEAM, Does::Joins).into_iter().collect();
    let plain = JOIN_ALLOWANCE.in_mm(1);
    let sewn = plan.add(Operation {
        pieces: vec![PieceId::Band],
        parts: vec![part_of(SEAM)],
        mind: vec![
            say::MindJoin { plain }.into(),
            key::MIND_MEETS_BAND_JOIN.into(),
        ],
        usual: Some(SeamOperationId::OutseamBusted),
        ..not_stated(
            STAGE,
            unstated_called(SEAM, Does::Joins),
            (key::NOT_STATED_BAND_JOIN, &found),
        )
    });
    plan.add(Operation {
        pieces: vec![PieceId::Band],
        parts: vec![part_of(SEAM)],
        mind: says(&[
            construct(Construction::PressedOpen).lies,
            key::MIND_BAND_JOIN_RAW,
        ]),
        after: sewn,
        ..pressed(STAGE, pressing_called(SEAM, key::SEAM_WORK_PRESS_OPEN))
    })
}

/// Marked and, where no folder folds it, pressed; labels go on while the inner ply lies flat.
fn band(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::Band) {
        return After::new();
    }
    let joined = band_join(plan);
    let seam = plan.seam_of(SeamId::Band);
    let folder = seam.is_some_and(|s| s.construction == Construction::BandOverEdge);
    let marked = Operation {
        pieces: vec![PieceId::Band],
        mind: if folder {
            says(&[key::MIND_BAND_MARK])
        } else {
            says(&[key::MIND_BAND_MARK, key::MIND_BAND_PRESS])
        },
        after: joined,
        ..if folder {
            by_hand(STAGE, Task::BandMark)
        } else {
            let called = Called {
                key: OperationKey::from(Task::BandMark),
                name: key::TASK_BAND_MARK_AND_PRESS.into(),
            };
            pressed(STAGE, called)
        }
    };
    let marked = plan.add(marked);
    let labels =
        plan.fixings(|f| f.piece == PieceId::Band && matches!(f.kind, FixingKind::Label(..)));
    if labels.is_empty() {
        return marked;
    }
    if plan.is_laid(SeamId::LabelSet) {
        let sewn = plan.seam(SeamId::LabelSet, &At::new(STAGE, &marked));
        plan.sets(&sewn, labels);
        return sewn;
    }
    let found = plan.unstated_trims(&labels);
    plan.add(Operation {
        pieces: vec![PieceId::Band],
        fixings: labels,
        attachment: aid(key::ATTACHMENT_PLACE_TEMPLATE),
        mind: says(&[key::MIND_LABEL_BEFORE_BAND]),
        after: marked,
        ..not_stated(
            STAGE,
            unstated_called(SeamId::LabelSet, Does::Holds(Holding::Set)),
            (key::NOT_STATED_LABEL, &found),
        )
    })
}
