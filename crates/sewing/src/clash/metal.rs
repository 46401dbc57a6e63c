//! Needles and presser feet against metal that is set already.

use style::{PartId, Subject};
use trade::Length;
use words::{Key, key, say};

use draft::PieceId;

use super::scene::{Metal, Sewn, What, meets, nearest};
use super::whereabouts::{operation, place, whereabouts};
use crate::check::case::{Broken, Case};
use crate::garment::FixingKind;

/// Between a needle and the rim of metal: half a needle of size 110, and what a row strays by (common practice).
const CLEAR: Length = Length::mm(1.0);

/// Half a plain presser foot, which is 12 mm wide (from memory).
const HALF_FOOT: Length = Length::mm(6.0);

/// What a bartacker's clamp, or that of a buttonhole machine, takes up beside the stitches (from memory).
const CLAMP: Length = Length::mm(3.0);

/// A needle and the metal that is nearest to it, with the gap between them; below nought where it lies over the metal.
struct Near<'c, 'a> {
    sewn: &'c Sewn<'a>,
    metal: &'c Metal<'a>,
    gap: Length,
}

/// What is sewn beside metal that was set before, the nearest first; each piece of metal and operation once.
fn beside<'c, 'a>(case: &'c Case<'a>) -> Vec<Near<'c, 'a>> {
    let scene = case.scene;
    let mut all: Vec<Near<'c, 'a>> = Vec::new();
    for metal in &scene.metal {
        for sewn in &scene.sewn {
            let there = (metal.ground, metal.on, &metal.through[..]);
            let later = sewn.operation > metal.operation;
            if !later || !meets((sewn.ground, sewn.on, &sewn.through), there) {
                continue;
            }
            if let Some((_, far)) = nearest(&sewn.line, metal.ends) {
                let gap = Length::mm(far - metal.half_mm - sewn.half_mm);
                all.push(Near { sewn, metal, gap });
            }
        }
    }
    all.sort_by(|a, b| a.gap.to_mm().total_cmp(&b.gap.to_mm()));
    let mut out: Vec<Near<'c, 'a>> = Vec::new();
    for near in all {
        let known = |n: &Near<'_, '_>| {
            about(n.metal) == about(near.metal) && n.sewn.operation == near.sewn.operation
        };
        if !out.iter().any(known) {
            out.push(near);
        }
    }
    out
}

fn about(metal: &Metal<'_>) -> Subject {
    match metal.fixing.kind {
        FixingKind::Rivet(_) => Subject::RivetOn(metal.fixing.piece),
        FixingKind::Zip(..) => PartId::Zip.into(),
        FixingKind::Button(_) if metal.fixing.piece == PieceId::Band => PartId::BandButton.into(),
        FixingKind::Button(_)
        | FixingKind::Buttonhole(_)
        | FixingKind::Bartack(..)
        | FixingKind::Loop(..)
        | FixingKind::Patch(..)
        | FixingKind::Label(..) => Subject::Trim(metal.fixing.from.code().to_owned()),
    }
}

/// Whether it is a rivet below a back pocket, which cannot be set once the pocket is sewn on.
fn hidden(metal: &Metal<'_>) -> bool {
    matches!(metal.fixing.kind, FixingKind::Rivet(_)) && !metal.fixing.outside
}

fn helped(broken: Broken, near: &Near<'_, '_>, otherwise: Key) -> Broken {
    if hidden(near.metal) {
        broken
            .help(key::CLASH_HIDDEN_RIVET_HELP)
            .curing("rivets.back_hidden", "false")
    } else {
        broken.help(otherwise)
    }
}

/// A needle that comes down on metal, or within its own width of it.
pub(crate) fn needle_on_metal(case: &Case<'_>) -> Vec<Broken> {
    let pattern = case.context.pattern;
    let near = beside(case).into_iter().filter(|near| near.gap < CLEAR);
    near.map(|near| {
        let sewn = near.sewn.what.called();
        let where_ = whereabouts(pattern, near.metal.fixing.piece, near.metal.fixing.at);
        let now = operation(case.scene, near.sewn.operation);
        let set = operation(case.scene, near.metal.operation);
        let broken = if near.gap < Length::ZERO {
            let inside = (Length::ZERO - near.gap).in_mm(1);
            let said = say::ClashNeedleOnMetal {
                inside,
                now,
                set,
                sewn,
                where_of: where_,
            };
            Broken::warning(about(near.metal), said)
        } else {
            let said = say::ClashNeedleBesideMetal {
                gap: near.gap.in_mm(1),
                now,
                set,
                sewn,
                where_of: where_,
            };
            Broken::warning(about(near.metal), said)
        };
        helped(broken, &near, key::CLASH_NEEDLE_ON_METAL_HELP)
            .at(place(near.metal.fixing.piece, near.metal.fixing.at))
    })
    .collect()
}

/// How far beside its stitches a foot or a clamp lies on the cloth.
fn foot(sewn: &Sewn<'_>) -> Length {
    match sewn.what {
        What::Row(_) => HALF_FOOT,
        What::Set(_) => CLAMP,
    }
}

/// A presser foot that rides up on metal.
pub(crate) fn foot_on_metal(case: &Case<'_>) -> Vec<Broken> {
    let pattern = case.context.pattern;
    let near = beside(case)
        .into_iter()
        .filter(|near| near.gap >= CLEAR && near.gap < foot(near.sewn));
    near.map(|near| {
        let said = say::ClashFootOnMetal {
            foot: foot(near.sewn).in_mm(1),
            gap: near.gap.in_mm(1),
            now: operation(case.scene, near.sewn.operation),
            set: operation(case.scene, near.metal.operation),
            sewn: near.sewn.what.called(),
            where_of: whereabouts(pattern, near.metal.fixing.piece, near.metal.fixing.at),
        };
        let broken = Broken::warning(about(near.metal), said);
        helped(broken, &near, key::CLASH_FOOT_ON_METAL_HELP)
            .at(place(near.metal.fixing.piece, near.metal.fixing.at))
    })
    .collect()
}
