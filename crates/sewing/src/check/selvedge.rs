//! An outseam along the cloth's own edge has to be straight, for that edge is.

use draft::{Finding, PieceId, Severity};
use geometry::Point;
use trade::Length;

use crate::allowance::allowances;
use crate::context::{Context, finding, mm, with_remedy};
use crate::inset::{points_along, unit};
use crate::laps::runs_to_selvedge;

/// Least cloth that must be left between seam line and the cloth's edge for the allowance to lie
/// open (common practice).
const LEAST: Length = Length::mm(6.0);

/// For front and back: how far the outseam strays from straight below the hip, where the cut runs
/// along the cloth's own edge.
pub(super) fn findings(context: &Context<'_>) -> Vec<Finding> {
    let Some(seam) = context.seam("outseam") else {
        return Vec::new();
    };
    let room = allowances(seam, Length::ZERO).over - LEAST;
    [PieceId::Front, PieceId::Back]
        .into_iter()
        .filter(|id| runs_to_selvedge(context, seam, *id))
        .filter_map(|id| {
            let piece = context.pattern.piece(id)?;
            let (foot, hip) = (piece.point("hem_out")?, piece.point("hip")?);
            let side = points_along(piece.edge("side")?)?;
            let strays = Length::mm(strays(&side, foot, hip));
            (strays > room).then(|| {
                with_remedy(
                    finding(
                        context,
                        "sewing::selvedge-curve",
                        Severity::Note,
                        id.name().to_lowercase(),
                        format!(
                            "between hem and hip the outseam strays {} from straight; the cloth's own edge is straight, so the allowance cannot keep its width along it",
                            mm(strays)
                        ),
                    ),
                    "place the piece so that the cloth's edge touches the narrowest allowance",
                )
            })
        })
        .collect()
}

/// The greatest spread of a line to both sides of the straight from `a` to `b`, between their heights.
fn strays(line: &[Point], a: Point, b: Point) -> f64 {
    let along = unit(b - a);
    let (low, high) = (a.y.min(b.y), a.y.max(b.y));
    let off = line
        .iter()
        .filter(|p| p.y >= low && p.y <= high)
        .map(|p| along.cross(*p - a));
    let (least, most) = off.fold((0.0_f64, 0.0_f64), |(l, m), d| (l.min(d), m.max(d)));
    most - least
}
