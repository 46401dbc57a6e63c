//! What is inspected, and how the pair is packed.
//!
//! A style states neither a plan of inspection nor a way of packing. What the pack asks for is what the style
//! states elsewhere, with the practice of the trade; everything else is said to be open.

use cutting::{ClothWash, Shrinkage};
use style::Wash;
use words::{Key, Said, key, say};

use super::context::Context;
use crate::{CheckGroup, CheckRow, Checks};

/// What is looked at, how, and where that comes from.
type Check = (Key, Said, Key);

pub(super) fn checks(context: &Context<'_>) -> Checks {
    let words = context.say;
    let group = |heading: Key, rows: Vec<Check>| CheckGroup {
        heading: words.named(heading).to_owned(),
        rows: rows
            .into_iter()
            .map(|(what, how, basis)| CheckRow {
                what: words.named(what).to_owned(),
                how: words.saying(&how),
                basis: words.named(basis).to_owned(),
            })
            .collect(),
    };
    Checks {
        note: words.named(key::PAPERS_CHECKS_NOTE).to_owned(),
        groups: vec![
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
        (
            key::PAPERS_CHECK_CLOTH,
            key::PAPERS_CHECK_CLOTH_HOW.into(),
            key::PAPERS_BASIS_PRACTICE,
        ),
        (
            key::PAPERS_CHECK_MEASURES,
            key::PAPERS_CHECK_MEASURES_BEFORE.into(),
            key::PAPERS_BASIS_STATED,
        ),
        (
            key::PAPERS_CHECK_SEAMS,
            key::PAPERS_CHECK_SEAMS_HOW.into(),
            key::PAPERS_BASIS_PRACTICE,
        ),
        (
            key::PAPERS_CHECK_DENSITY,
            key::PAPERS_CHECK_DENSITY_BEFORE.into(),
            key::PAPERS_BASIS_STATED,
        ),
        (
            key::PAPERS_CHECK_YARN,
            key::PAPERS_CHECK_YARN_HOW.into(),
            key::PAPERS_BASIS_STATED,
        ),
    ]
}

fn finished(context: &Context<'_>) -> Vec<Check> {
    let style = &context.loaded.style;
    let mut out = vec![
        (
            key::PAPERS_CHECK_MEASURES,
            key::PAPERS_CHECK_MEASURES_AFTER.into(),
            key::PAPERS_BASIS_STATED,
        ),
        (
            key::PAPERS_CHECK_DENSITY,
            key::PAPERS_CHECK_DENSITY_AFTER.into(),
            key::PAPERS_BASIS_STATED,
        ),
    ];
    let cloth = context.loaded.collection.cloths.get(&style.cloth.shell);
    let raw = style.wash.as_ref().is_some_and(Wash::is_raw);
    if let Some(cloth) = cloth.filter(|_| !raw) {
        let Shrinkage { warp, weft } = ClothWash::of(cloth).shrinkage;
        let system = context.words.system;
        let how = say::PapersCheckShrinkageHow {
            cloth: cloth.name.as_str(),
            warp: warp.show(system),
            weft: weft.show(system),
        };
        out.push((
            key::PAPERS_CHECK_SHRINKAGE,
            how.into(),
            key::PAPERS_BASIS_STATED,
        ));
    }
    out.extend([
        (
            key::PAPERS_CHECK_SHADE,
            key::PAPERS_CHECK_SHADE_HOW.into(),
            key::PAPERS_BASIS_PRACTICE,
        ),
        (
            key::PAPERS_CHECK_METAL_PARTS,
            key::PAPERS_CHECK_METAL_PARTS_HOW.into(),
            key::PAPERS_BASIS_PRACTICE,
        ),
        (
            key::PAPERS_CHECK_LABELS,
            key::PAPERS_CHECK_LABELS_HOW.into(),
            key::PAPERS_BASIS_STATED,
        ),
        (
            key::PAPERS_CHECK_LOOK,
            key::PAPERS_CHECK_LOOK_HOW.into(),
            key::PAPERS_BASIS_PRACTICE,
        ),
    ]);
    out
}

fn safety() -> Vec<Check> {
    vec![
        (
            key::PAPERS_CHECK_NEEDLES,
            key::PAPERS_CHECK_NEEDLES_HOW.into(),
            key::PAPERS_BASIS_PRACTICE,
        ),
        (
            key::PAPERS_CHECK_METAL,
            key::PAPERS_CHECK_METAL_HOW.into(),
            key::PAPERS_BASIS_PRACTICE,
        ),
        (
            key::PAPERS_CHECK_REPORTS,
            key::PAPERS_CHECK_REPORTS_HOW.into(),
            key::PAPERS_BASIS_LAW,
        ),
    ]
}

fn of_the_lot() -> Vec<Check> {
    [
        key::PAPERS_LOT_SAMPLE,
        key::PAPERS_LOT_FIRST_PAIR,
        key::PAPERS_LOT_FAULTS,
        key::PAPERS_LOT_RECORD,
    ]
    .into_iter()
    .map(open)
    .collect()
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
    .into_iter()
    .map(open)
    .collect()
}

/// What no file of the style can state yet.
fn open(what: Key) -> Check {
    (what, key::PAPERS_ASK.into(), key::PAPERS_BASIS_OPEN)
}
