//! Bulk: how many plies meet, and how thick they are, wherever seams cross.
//!
//! Plies are counted from the constructions as they lie once sewn: where one seam crosses another,
//! every ply of the one is the whole stack of the other. Thickness is the sum of the cloths, each ply
//! at that of its own, not pressed: the most that can lie there. Under the lowered foot it is less, by
//! how much a sewn sample tells.

mod crossing;
mod loops;
mod machine;
mod panels;
mod plies;
mod pockets;

use style::SeamId;

pub use crossing::{Crossing, CrossingKind};
pub use machine::{Machine, machine_of};
pub use plies::{Lying, Plies, Thicknesses, lying, lying_trimmed};

use crate::context::Context;
use crate::garment::{Fixing, Garment};
use crossing::Site;

/// Every crossing of the garment, thickest first; equal ones from the waist down.
pub fn bulk(garment: &Garment) -> Vec<Crossing> {
    let context = Context {
        doc: &garment.doc,
        collection: &garment.collection,
        size: garment.size,
        pattern: &garment.pattern,
        seams: &garment.seams,
    };
    crossings(&context, &garment.fixings)
}

pub(crate) fn crossings(context: &Context<'_>, fixings: &[Fixing]) -> Vec<Crossing> {
    let site = Site {
        context,
        one: Thicknesses::of(context.doc, context.collection),
    };
    let mut out = loops::crossings(&site, fixings);
    out.extend(panels::crossings(&site));
    out.extend(pockets::crossings(&site));
    out.retain(|c| c.place.at.is_finite() && c.thickness.is_finite());
    out.sort_by(|a, b| b.thickness.total_cmp(&a.thickness));
    out
}

/// What a rivet at the end of a pocket mouth goes through; beside the outseam with its allowance.
pub(crate) fn mouth_plies(context: &Context<'_>, at_side: bool) -> Plies {
    let site = Site {
        context,
        one: Thicknesses::of(context.doc, context.collection),
    };
    let stack = pockets::mouth_stack(&site);
    if at_side {
        site.lying(SeamId::Outseam).of(stack, Plies::shell(1))
    } else {
        stack
    }
}
