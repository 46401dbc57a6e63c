//! Laying out the pieces on a solved block: panels with their pocket mouths, yoke, band, fly,
//! pockets, loops. Every length here comes from the chart or from an edge already drawn, so that
//! edges which are sewn together are equal by construction.

mod band;
mod fly;
mod free_outline;
mod hip_pocket;
mod named;
mod panels;
mod patch_pockets;

pub use free_outline::path_of;
pub(crate) use hip_pocket::Mouth;
pub(crate) use named::set_at;
pub(crate) use panels::{LegMarks, Marks};

use crate::block::Block;
use crate::piece::Piece;
use crate::spec::Spec;

/// All pieces of one size, in the order of [`crate::piece::PieceId::ALL`].
pub(crate) fn pieces(spec: &Spec, block: &Block, marks: &Marks, mouth: &Mouth) -> Vec<Piece> {
    let mut all = vec![
        panels::front(spec, block, &marks.front, mouth),
        panels::back(spec, block, &marks.back),
        panels::yoke(block),
        band::band(spec, block),
        fly::facing(spec),
        fly::shield(spec),
        hip_pocket::facing(spec, block, mouth),
        patch_pockets::coin(spec),
        hip_pocket::bag(spec, block, mouth),
    ];
    all.extend(patch_pockets::back_pockets(spec));
    all.push(band::loop_strip(spec));
    all.extend(patch_pockets::extra(spec));
    all
}
