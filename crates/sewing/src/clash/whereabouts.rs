//! Where and when a clash happens, for people.

use draft::{Pattern, PieceId, Place};
use geometry::Point;
use trade::Length;
use words::{Given, say};

use super::scene::Scene;
use crate::check::case::distance_to_line;
use crate::inset_lines::points_along;

/// The nearest two edges of the piece, and how far they are: "on the front, 4.8 mm from its edge mouth and …".
pub(super) fn whereabouts(pattern: &Pattern, piece: PieceId, at: Point) -> Given {
    let mut edges: Vec<_> = pattern
        .piece(piece)
        .into_iter()
        .flat_map(|piece| &piece.edges)
        .filter_map(|edge| Some((edge.id, distance_to_line(&points_along(&edge.path)?, at))))
        .collect();
    edges.sort_by(|a, b| a.1.total_cmp(&b.1));
    let gap = |far: f64| Length::mm(far).in_mm(1);
    match edges[..] {
        [(first, near), (second, next), ..] => say::ClashWhere {
            first: gap(near),
            first_edge: first,
            piece: piece.within(),
            second: gap(next),
            second_edge: second,
        }
        .into(),
        _ => piece.within().into(),
    }
}

/// A place on a panel.
pub(super) fn place(piece: PieceId, at: Point) -> Option<Place> {
    at.is_finite().then_some(Place { piece, at })
}

/// Which operation it is: its number and its name.
pub(super) fn operation(scene: &Scene<'_>, index: usize) -> Given {
    scene.order.get(index).map_or_else(
        || Given::from(""),
        |operation| {
            say::ClashOperation {
                name: operation.name.clone(),
                number: operation.number.to_string(),
            }
            .into()
        },
    )
}
