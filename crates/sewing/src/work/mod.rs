//! The order in which a workroom sews a style: operation after operation, each with its machine,
//! what it sews, and what has to be done before.
//!
//! [`sewing_order`] draws it up from a sewn size. Small parts come first, then fronts and backs flat,
//! the legs, waistband, hems, and what is set at the end. One operation is one pass at one machine:
//! rows of the same stitch and density go through together where a machine has needles for them.
//! Every row and everything set is in exactly one operation; work that a pair needs and the style
//! states no row for is an operation of its own, marked [`Operation::not_stated`]. Where a step has
//! no other source it is common practice.

mod apart;
mod backs;
mod bag_at_fly;
mod edge_ends;
mod edge_words;
mod finish;
mod fronts;
mod legend;
mod legs;
mod machine;
mod machines_of;
mod operation;
mod operation_key;
mod order_words;
mod pass_kinds;
mod passes;
mod plan;
mod seams;
mod settings;
mod small_parts;
mod tacks;
mod thick;
mod told;
mod turned_ends;
mod waist;
mod wash;

pub use edge_ends::{CutEdge, EdgeEnd, cut_edges};
pub use legend::order_notes;
pub use legs::closing_seam;
pub(crate) use machines_of::machines_of;
pub use operation::{Attachment, Needle, NotStated, Operation, Stage, Work};
pub use operation_key::{OperationKey, Task};
pub(crate) use passes::gauge_of;
pub use settings::set_densities;
pub(crate) use settings::set_density;
pub(crate) use wash::is_washed_when_sewn;

use crate::garment::Garment;
use plan::Plan;

/// The operations that sew a pair, in the order in which a workroom does them.
///
/// Prerequisites always come earlier in the list. Always gives an order, whatever the style leaves
/// out.
pub fn sewing_order(garment: &Garment) -> Vec<Operation> {
    let mut plan = Plan::new(garment);
    let mut ready = small_parts::small_parts(&mut plan);
    // Through the outer ply alone it is sewn on while the band lies open.
    let first = waist::patched_first(garment);
    if first {
        ready.band = waist::patch(&mut plan, Stage::SmallParts, &ready.band);
    }
    let fronts = fronts::fronts(&mut plan, &ready);
    let seat = backs::backs(&mut plan, &ready);
    let legs = legs::legs(&mut plan, &fronts, &seat);
    let band = waist::band(&mut plan, &ready, &fronts, &legs);
    let patched = if first {
        band.clone()
    } else {
        waist::patch(&mut plan, Stage::Band, &band)
    };
    let loops = waist::loops(&mut plan, &ready, &patched);
    let hems = waist::hems(&mut plan, &legs);
    finish::finish(
        &mut plan,
        &finish::Before {
            fronts: &fronts,
            seat: &seat,
            legs: &legs,
            band: &band,
            hems: &hems,
            loops: &loops,
        },
    );
    wash::set_after(&mut plan);
    plan.operations
}
