//! What is inspected, and how the pair is packed.
//!
//! A style states neither a plan of inspection nor a way of packing. What the pack asks for is what the style
//! states elsewhere, with the practice of the trade; everything else is said to be open.

use cutting::{ClothWash, Shrinkage};
use style::{Closing, Wash};
use words::{Key, Said, key, say};

use super::context::Context;
use super::open::{ask, ask_whole};
use super::shrinkage::Basis;
use crate::{CheckGroup, CheckRow, Checks, Who};

/// What is looked at, how, where that comes from, and what of it is open.
struct Check {
    what: Key,
    how: Option<Said>,
    basis: Key,
    open: Option<(Who, Option<Key>)>,
}

impl Check {
    fn of(what: Key, how: impl Into<Said>, basis: Key) -> Self {
        Self {
            what,
            how: Some(how.into()),
            basis,
            open: None,
        }
    }

    /// The same with something that no file states.
    fn asking(self, who: Who, what: Key) -> Self {
        Self {
            open: Some((who, Some(what))),
            ..self
        }
    }

    /// What no file of the style can state yet.
    const fn open(what: Key, who: Who) -> Self {
        Self {
            what,
            how: None,
            basis: key::PAPERS_BASIS_OPEN,
            open: Some((who, None)),
        }
    }

    fn row(&self, context: &Context<'_>) -> CheckRow {
        let words = context.say;
        let asks = self.open.map(|(who, what)| match what {
            Some(what) => ask(context, who, what),
            None => ask_whole(context, who),
        });
        CheckRow {
            what: words.named(self.what).to_owned(),
            how: context.said(self.how.as_ref()),
            asks: asks.into_iter().collect(),
            basis: words.named(self.basis).to_owned(),
        }
    }
}

pub(super) fn checks(context: &Context<'_>) -> Checks {
    let words = context.say;
    let group = |heading: Key, checks: Vec<Check>| CheckGroup {
        heading: words.named(heading).to_owned(),
        rows: checks.iter().map(|check| check.row(context)).collect(),
    };
    Checks {
        note: words.named(key::PAPERS_CHECKS_NOTE).to_owned(),
        groups: vec![
            group(key::PAPERS_CHECKS_AGREED, agreed(context)),
            group(key::PAPERS_CHECKS_BEFORE, on_the_line()),
            group(key::PAPERS_CHECKS_AFTER, finished(context)),
            group(key::PAPERS_CHECKS_SAFETY, safety()),
            group(key::PAPERS_CHECKS_LOT, of_the_lot()),
            group(key::PAPERS_PACKING, packing()),
        ],
    }
}

fn on_the_line() -> Vec<Check> {
    vec![
        Check::of(
            key::PAPERS_CHECK_CLOTH,
            key::PAPERS_CHECK_CLOTH_HOW,
            key::PAPERS_BASIS_PRACTICE,
        )
        .asking(Who::Cutter, key::PAPERS_ASK_FAULT),
        Check::of(
            key::PAPERS_CHECK_MEASURES,
            key::PAPERS_CHECK_MEASURES_BEFORE,
            key::PAPERS_BASIS_STATED,
        ),
        Check::of(
            key::PAPERS_CHECK_SEAMS,
            key::PAPERS_CHECK_SEAMS_HOW,
            key::PAPERS_BASIS_PRACTICE,
        ),
        Check::open(key::PAPERS_CHECK_REPAIR, Who::Sewer),
        Check::of(
            key::PAPERS_CHECK_DENSITY,
            key::PAPERS_CHECK_DENSITY_BEFORE,
            key::PAPERS_BASIS_STATED,
        )
        .asking(Who::Inspector, key::PAPERS_ASK_DENSITY),
        Check::of(
            key::PAPERS_CHECK_YARN,
            key::PAPERS_CHECK_YARN_HOW,
            key::PAPERS_BASIS_STATED,
        ),
    ]
}

fn finished(context: &Context<'_>) -> Vec<Check> {
    let mut out = vec![
        Check::of(
            key::PAPERS_CHECK_MEASURES,
            key::PAPERS_CHECK_MEASURES_AFTER,
            key::PAPERS_BASIS_STATED,
        )
        .asking(Who::Inspector, key::PAPERS_ASK_HOW_MANY),
        Check::of(
            key::PAPERS_CHECK_DENSITY,
            key::PAPERS_CHECK_DENSITY_AFTER,
            key::PAPERS_BASIS_STATED,
        )
        .asking(Who::Inspector, key::PAPERS_ASK_DENSITY),
    ];
    out.extend(shrinkage(context));
    out.extend([
        Check::of(
            key::PAPERS_CHECK_SHADE,
            key::PAPERS_CHECK_SHADE_HOW,
            key::PAPERS_BASIS_PRACTICE,
        )
        .asking(Who::Inspector, key::PAPERS_ASK_SHADE),
        Check::of(
            key::PAPERS_CHECK_METAL_PARTS,
            key::PAPERS_CHECK_METAL_PARTS_HOW,
            key::PAPERS_BASIS_PRACTICE,
        )
        .asking(Who::Inspector, key::PAPERS_ASK_PULL),
        Check::of(
            key::PAPERS_CHECK_LABELS,
            key::PAPERS_CHECK_LABELS_HOW,
            key::PAPERS_BASIS_STATED,
        ),
        Check::of(
            key::PAPERS_CHECK_LOOK,
            key::PAPERS_CHECK_LOOK_HOW,
            key::PAPERS_BASIS_PRACTICE,
        ),
    ]);
    out
}

/// A raw pair is measured as it was sewn, and of a cloth of which nothing is known nothing is compared.
fn shrinkage(context: &Context<'_>) -> Option<Check> {
    let style = &context.loaded.style;
    if style.wash.as_ref().is_some_and(Wash::is_raw) {
        return None;
    }
    let cloth = context.loaded.collection.cloths.get(&style.cloth.shell)?;
    let Shrinkage { warp, weft } = ClothWash::of(cloth).shrinkage;
    let [warp, weft] = [warp, weft].map(|share| share.show(context.words.system));
    let cloth_name = cloth.name.as_str();
    let how: Said = match Basis::of(cloth) {
        Basis::Stated | Basis::InPart => say::PapersCheckShrinkageHow {
            cloth: cloth_name,
            warp,
            weft,
        }
        .into(),
        Basis::Measured => say::PapersCheckShrinkageMeasured {
            cloth: cloth_name,
            warp,
            weft,
        }
        .into(),
        Basis::Open => return None,
    };
    Some(Check::of(
        key::PAPERS_CHECK_SHRINKAGE,
        how,
        key::PAPERS_BASIS_STATED,
    ))
}

fn safety() -> Vec<Check> {
    vec![
        Check::of(
            key::PAPERS_CHECK_NEEDLES,
            key::PAPERS_CHECK_NEEDLES_HOW,
            key::PAPERS_BASIS_PRACTICE,
        ),
        Check::of(
            key::PAPERS_CHECK_METAL,
            key::PAPERS_CHECK_METAL_HOW,
            key::PAPERS_BASIS_PRACTICE,
        )
        .asking(Who::Inspector, key::PAPERS_ASK_TEST_PIECE),
        Check::of(
            key::PAPERS_CHECK_REPORTS,
            key::PAPERS_CHECK_REPORTS_HOW,
            key::PAPERS_BASIS_LAW,
        ),
    ]
}

/// What is agreed by word of mouth where no file holds it, and costs a round where it was not.
fn agreed(context: &Context<'_>) -> Vec<Check> {
    let style = &context.loaded.style;
    let collection = &context.loaded.collection;
    let shell = collection.cloths.get(&style.cloth.shell);
    let decorated = style.pockets.back.left.art.is_some() || style.pockets.back.right.art.is_some();
    let drawn = decorated
        || style
            .patch
            .as_ref()
            .is_some_and(|patch| patch.art.is_some());
    [
        (
            shell.is_some_and(|cloth| cloth.selvedge),
            key::PAPERS_AGREE_SELVEDGE_LINE,
            Who::Buyer,
        ),
        (true, key::PAPERS_AGREE_BOW, Who::Buyer),
        (true, key::PAPERS_AGREE_WIDTHS, Who::Buyer),
        (true, key::PAPERS_AGREE_ROLL_TEST, Who::Buyer),
        (true, key::PAPERS_AGREE_SUPPLIES, Who::Buyer),
        (true, key::PAPERS_AGREE_SUBSTITUTES, Who::Buyer),
        (true, key::PAPERS_AGREE_SPARES, Who::Buyer),
        (true, key::PAPERS_AGREE_CONES, Who::Buyer),
        (true, key::PAPERS_AGREE_SIGNS, Who::Buyer),
        (true, key::PAPERS_AGREE_LANGUAGE, Who::Buyer),
        (true, key::PAPERS_AGREE_PRICE, Who::Buyer),
        (true, key::PAPERS_AGREE_OVER, Who::Buyer),
        (true, key::PAPERS_AGREE_COUNTRIES, Who::Buyer),
        (true, key::PAPERS_AGREE_HEADS, Who::Buyer),
        (style.patch.is_some(), key::PAPERS_AGREE_PATCH, Who::Buyer),
        (drawn, key::PAPERS_AGREE_ART, Who::Buyer),
        (true, key::PAPERS_AGREE_RIGHTS, Who::Buyer),
        (true, key::PAPERS_AGREE_AT_WORK, Who::Buyer),
        (true, key::PAPERS_AGREE_FILES, Who::Cutter),
        (true, key::PAPERS_AGREE_LAYS, Who::Cutter),
        (true, key::PAPERS_AGREE_DRILL, Who::Cutter),
        (true, key::PAPERS_AGREE_BUNDLES, Who::Cutter),
        (true, key::PAPERS_AGREE_RECUT, Who::Cutter),
        (true, key::PAPERS_AGREE_CUT_OFF, Who::Cutter),
        (true, key::PAPERS_AGREE_CROSSINGS, Who::Sewer),
        (
            style.fly.closing == Closing::Buttons,
            key::PAPERS_AGREE_STRIP_TACKS,
            Who::Sewer,
        ),
        (true, key::PAPERS_AGREE_NEEDLES, Who::Sewer),
        (true, key::PAPERS_AGREE_UPPERMOST, Who::Sewer),
        (true, key::PAPERS_AGREE_HOLES, Who::Sewer),
        (true, key::PAPERS_AGREE_METAL, Who::Sewer),
        (
            style.bartacks.crotch,
            key::PAPERS_AGREE_CROTCH_TACK,
            Who::Sewer,
        ),
        (true, key::PAPERS_AGREE_FLY_FOOT, Who::Sewer),
        (
            style.loops.count > 0,
            key::PAPERS_AGREE_LOOP_SLACK,
            Who::Sewer,
        ),
        (true, key::PAPERS_AGREE_IRON, Who::Sewer),
        (true, key::PAPERS_AGREE_PAGES, Who::Sewer),
        (
            !context.loaded.style.wash.as_ref().is_some_and(Wash::is_raw),
            key::PAPERS_AGREE_IN_THE_WASH,
            Who::Sewer,
        ),
        (true, key::PAPERS_AGREE_REST, Who::Inspector),
        (true, key::PAPERS_AGREE_SEWN_BEFORE, Who::Inspector),
        (true, key::PAPERS_AGREE_ALIKE, Who::Inspector),
        (true, key::PAPERS_AGREE_CREASES, Who::Inspector),
        (true, key::PAPERS_AGREE_SEALED, Who::Inspector),
        (true, key::PAPERS_AGREE_STRENGTH, Who::Inspector),
        (true, key::PAPERS_AGREE_TWIST, Who::Inspector),
        (true, key::PAPERS_AGREE_RUBBING, Who::Inspector),
        (true, key::PAPERS_AGREE_BATCH, Who::Packer),
    ]
    .into_iter()
    .filter(|(there, ..)| *there)
    .map(|(_, what, who)| Check::open(what, who))
    .collect()
}

fn of_the_lot() -> Vec<Check> {
    [
        key::PAPERS_LOT_SAMPLE,
        key::PAPERS_LOT_FIRST_PAIR,
        key::PAPERS_LOT_FAULTS,
        key::PAPERS_LOT_RECORD,
    ]
    .map(|what| Check::open(what, Who::Inspector))
    .into()
}

fn packing() -> Vec<Check> {
    [
        key::PAPERS_PACKING_FOLD,
        key::PAPERS_PACKING_TAGS,
        key::PAPERS_PACKING_SPARES,
        key::PAPERS_PACKING_BAG,
        key::PAPERS_PACKING_CARTON,
        key::PAPERS_PACKING_SENT,
        key::PAPERS_PACKING_LEFT_OVER,
    ]
    .map(|what| Check::open(what, Who::Packer))
    .into()
}
