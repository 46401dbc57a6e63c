//! What is made ready before the panels are touched: loops, small pockets, fly parts, band.

use draft::PieceId;
use style::{Construction, MeasureId, SeamId};
use trade::counted;
use words::key;

use super::operation::{Operation, Stage, Work};
use super::plan::{After, Plan, aid, by_hand, not_stated, operation, pressed, says};
use super::seams::At;
use crate::context::mm;
use crate::garment::FixingKind;

const STAGE: Stage = Stage::SmallParts;

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
    let length = plan.garment.pattern.spec[MeasureId::LoopLength];
    plan.add(Operation {
        pieces: vec![PieceId::LoopStrip],
        parts: says(&["fixing:loop_edge"]),
        attachment: aid(key::ATTACHMENT_LENGTH_STOP),
        mind: vec![format!(
            "{}, {} long when set, and what is folded under at both ends",
            counted(wanted, "loop", "loops"),
            mm(length)
        )],
        after: strip,
        ..by_hand(STAGE, "loops-cut", "Belt loops: cut to length")
    })
}

fn coin_pocket(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::CoinPocket) {
        return After::new();
    }
    let hem = plan.seam(SeamId::CoinHem, &At::new(STAGE, &After::new()));
    let turned = plan.add(turned_in(
        "coin-pocket-press",
        "Coin pocket: turn in and press",
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
            (STAGE, "coin-pocket-bartacks", "Coin pocket: bartacks"),
            tacks,
            &["now, while the bag does not lie behind it"],
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
        mind: says(&[
            "through pocket and facing, before the bag lies behind them",
            "cap outside, stud inside",
        ]),
        after: tacked,
        ..operation(
            STAGE,
            (Work::Set, "rivet press"),
            "coin-pocket-rivets",
            "Coin pocket: rivets",
        )
    })
}

fn turned_in(key: &str, name: &str, pieces: &[PieceId], after: After) -> Operation {
    Operation {
        pieces: pieces.to_vec(),
        attachment: aid(key::ATTACHMENT_SHAPE_TEMPLATE),
        mind: says(&["allowances turned in under the pocket, along the template"]),
        after,
        ..pressed(STAGE, key, name)
    }
}

fn back_pockets(plan: &mut Plan<'_>) -> After {
    use PieceId::{BackLiningLeft, BackLiningRight, BackPocketLeft, BackPocketRight};
    let pockets = [BackPocketLeft, BackPocketRight];
    let mut after = plan.seam(SeamId::BackPocketHem, &At::new(STAGE, &After::new()));
    if plan.is_laid(SeamId::Decoration) {
        after = plan.seam(SeamId::Decoration, &At::new(STAGE, &after));
    }
    if plan.has(BackLiningLeft) || plan.has(BackLiningRight) {
        after = plan.add(Operation {
            pieces: vec![
                BackLiningLeft,
                BackLiningRight,
                BackPocketLeft,
                BackPocketRight,
            ],
            mind: says(&[
                "turned-in edges of the lining towards the pocket, its sides level with the pocket's",
                "the setting rows catch it later",
            ]),
            after,
            ..pressed(
                STAGE,
                "back-pockets-line",
                "Back pockets: lay in the linings",
            )
        });
    }
    plan.add(turned_in(
        "back-pockets-press",
        "Back pockets: turn in and press",
        &pockets,
        after,
    ))
}

fn extra(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::ExtraPocket) {
        return After::new();
    }
    let hem = plan.seam(SeamId::ExtraHem, &At::new(STAGE, &After::new()));
    plan.add(turned_in(
        "extra-pocket-press",
        "Extra pocket: turn in and press",
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
    if !holes.is_empty() {
        after = plan.buttonholes(
            (STAGE, "fly-buttonholes", "Fly facing: buttonholes"),
            holes,
            &[
                "through the ply that lies behind, before both are put together",
                "the eye towards the fly edge",
            ],
            after,
        );
    }
    after = plan.seam(SeamId::FlyEdge, &At::new(STAGE, &after));
    if !zip.is_empty() {
        after = plan.add(Operation {
            pieces: vec![PieceId::FlyFacing],
            fixings: zip,
            attachment: aid(key::ATTACHMENT_ZIP_FOOT),
            mind: says(&[
                "left tape on the facing, teeth away from the fly edge; the right tape stays free",
            ]),
            after,
            ..not_stated(
                STAGE,
                "zip-left",
                "Zip: sew its left tape on the facing",
                ("rows along the left tape of the zip", &[]),
            )
        });
    }
    after
}

fn shield(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::FlyShield) {
        return After::new();
    }
    plan.add(Operation {
        pieces: vec![PieceId::FlyShield],
        mind: says(&["fold right sides together, close the foot, turn and press"]),
        ..not_stated(
            STAGE,
            "fly-shield-close",
            "Fly shield: fold and close its foot",
            ("closing row at the foot of the shield", &[]),
        )
    })
}

/// Marked and, where no folder folds it, pressed; labels go on while the inner ply lies flat.
fn band(plan: &mut Plan<'_>) -> After {
    if !plan.has(PieceId::Band) {
        return After::new();
    }
    let seam = plan.seam_of(SeamId::Band);
    let folder = seam.is_some_and(|s| s.construction == Construction::BandOverEdge);
    let marks = "mark centre back, sides and centre fronts on both edges";
    let marked = Operation {
        pieces: vec![PieceId::Band],
        mind: if folder {
            says(&[marks])
        } else {
            says(&[marks, "press the fold and the turned-in edge"])
        },
        ..if folder {
            by_hand(STAGE, "band-mark", "Waistband: mark")
        } else {
            pressed(STAGE, "band-mark", "Waistband: mark and press")
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
        mind: says(&["through the inner ply of the band alone, before the band is set on"]),
        after: marked,
        ..not_stated(
            STAGE,
            "label-set",
            "Labels: sew on",
            ("rows that sew the labels on", &found),
        )
    })
}
