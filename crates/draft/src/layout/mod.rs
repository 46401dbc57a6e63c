//! Laying out the pieces on a solved block: panels with their pocket mouths, yoke, band, fly,
//! pockets, loops. Every length here comes from the chart or from an edge already drawn, so that
//! edges which are sewn together are equal by construction.

mod band;
mod fly;
mod free_outline;
mod hip_pocket;
mod panels;
mod patch_pockets;

pub use free_outline::path_of;
pub(crate) use hip_pocket::Mouth;
pub(crate) use panels::{LegMarks, Marks};

use geometry::{Affine, Path, Point, Vec2};
use trade::Length;

use crate::block::Block;
use crate::piece::{
    Edge, EdgeId, InnerKind, InnerLine, LineId, NamedPoint, Piece, PieceId, PointId,
};
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

/// The outline of a piece: its edges, as [`PieceId::edges`] has them in order, along these paths.
fn outline(piece: PieceId, paths: impl IntoIterator<Item = Path>) -> Vec<Edge> {
    along(piece.edges(), paths)
}

fn along(ids: &[EdgeId], paths: impl IntoIterator<Item = Path>) -> Vec<Edge> {
    let edge = |(id, path): (&EdgeId, Path)| Edge { id: *id, path };
    ids.iter().zip(paths).map(edge).collect()
}

fn at(id: PointId, at: Point) -> NamedPoint {
    NamedPoint { id, at }
}

fn fold(id: LineId, from: Point, to: Point) -> InnerLine {
    InnerLine {
        id,
        kind: InnerKind::Fold,
        path: Path::line(from, to),
    }
}

fn placement(id: LineId, path: Path) -> InnerLine {
    InnerLine {
        id,
        kind: InnerKind::Placement,
        path,
    }
}

/// The map that sets a patch drawn with its top edge on the x axis so that its origin lands on
/// `origin` and its x axis points along `along` (unit).
pub(crate) fn set_at(origin: Point, along: Vec2) -> Affine {
    Affine::new([along.x, along.y, -along.y, along.x, origin.x, origin.y])
}

fn mm(length: Length) -> f64 {
    length.to_mm()
}
