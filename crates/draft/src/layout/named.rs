//! Edges, points and lines of a piece, put under their names.

use geometry::{Affine, Path, Point, Vec2};
use trade::Length;

use crate::piece::{Edge, EdgeId, InnerKind, InnerLine, LineId, NamedPoint, PieceId, PointId};

/// The outline of a piece: its edges, as [`PieceId::edges`] has them in order, along these paths.
pub(super) fn outline(piece: PieceId, paths: impl IntoIterator<Item = Path>) -> Vec<Edge> {
    along(piece.edges(), paths)
}

pub(super) fn along(ids: &[EdgeId], paths: impl IntoIterator<Item = Path>) -> Vec<Edge> {
    let edge = |(id, path): (&EdgeId, Path)| Edge { id: *id, path };
    ids.iter().zip(paths).map(edge).collect()
}

pub(super) fn at(id: PointId, at: Point) -> NamedPoint {
    NamedPoint { id, at }
}

pub(super) fn fold(id: LineId, from: Point, to: Point) -> InnerLine {
    InnerLine {
        id,
        kind: InnerKind::Fold,
        path: Path::line(from, to),
    }
}

pub(super) fn placement(id: LineId, path: Path) -> InnerLine {
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

pub(super) fn mm(length: Length) -> f64 {
    length.to_mm()
}
