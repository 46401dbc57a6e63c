//! Patch pockets against the panels they are set on, and loops against the patch.

use draft::{Finding, PieceId, Severity};
use geometry::{Point, contains};
use trade::Length;

use crate::context::{Context, finding, mm, with_remedy};
use crate::garment::{Fixing, FixingKind};
use crate::inset::{Ground, points_along};

/// Below this a pocket only touches the edge of what it is set on.
const TOUCHES_MM: f64 = 0.5;

/// A pocket nearer to a seam than this is hard to set.
const NEAR_SEAM: Length = Length::mm(10.0);

pub(super) fn findings(context: &Context<'_>) -> Vec<Finding> {
    let mut out = Vec::new();
    for (line, name) in [
        ("pocket_left", "left back pocket"),
        ("pocket_right", "right back pocket"),
    ] {
        out.extend(back_pocket(context, line, name));
    }
    out.extend(coin(context));
    out
}

fn back_pocket(context: &Context<'_>, line: &str, name: &str) -> Option<Finding> {
    let back = context.pattern.piece(PieceId::Back)?;
    let ground = Ground::of(back)?;
    let outline = points_along(back.line(line)?)?;
    if outline.iter().any(|p| !contains(ground.polygon(), *p)) {
        return Some(with_remedy(
            finding(
                context,
                "sewing::pocket-outside",
                Severity::Error,
                name,
                "the pocket reaches beyond the back panel",
            ),
            "make it smaller, or move it away from the seam it crosses",
        ));
    }
    let nearest = outline
        .iter()
        .map(|p| distance(ground.polygon(), *p))
        .fold(f64::INFINITY, f64::min);
    (nearest < NEAR_SEAM.to_mm()).then(|| {
        finding(
            context,
            "sewing::pocket-near-seam",
            Severity::Warning,
            name,
            format!(
                "the pocket comes within {} of a seam",
                mm(Length::mm(nearest))
            ),
        )
    })
}

fn coin(context: &Context<'_>) -> Option<Finding> {
    let facing = context.pattern.piece(PieceId::PocketFacing)?;
    let ground = Ground::of(facing)?;
    let line = facing.line("coin_pocket")?;
    let outline = points_along(line)?;
    let beyond = outline
        .iter()
        .filter(|p| !contains(ground.polygon(), **p))
        .map(|p| distance(ground.polygon(), *p))
        .fold(0.0, f64::max);
    if beyond > TOUCHES_MM {
        return Some(with_remedy(
            finding(
                context,
                "sewing::coin-beyond-facing",
                Severity::Warning,
                "coin pocket",
                format!(
                    "a corner of the coin pocket reaches {} beyond the facing it is set on and would be sewn through the bag",
                    mm(Length::mm(beyond))
                ),
            ),
            "make it shallower, move it, or let the facing reach further behind the mouth",
        ));
    }
    // The opening is bounded by the mouth edge of the front; above it the facing shows.
    let front = context.pattern.piece(PieceId::Front)?;
    let covered = Ground::of(front)?;
    let middle = line.start().midpoint(line.end());
    contains(covered.polygon(), middle).then(|| {
        with_remedy(
            finding(
                context,
                "sewing::coin-hidden",
                Severity::Warning,
                "coin pocket",
                "the front covers the middle of the coin pocket's top edge",
            ),
            "set it nearer to the band or to the outseam",
        )
    })
}

pub(super) fn loops_under_patch(context: &Context<'_>, fixings: &[Fixing]) -> Option<Finding> {
    let (patch, half) = fixings.iter().find_map(|f| match &f.kind {
        FixingKind::Patch(width, ..) => Some((f.at.x, width.to_mm() / 2.0)),
        _ => None,
    })?;
    let covers = fixings.iter().any(|f| match f.kind {
        FixingKind::Loop(_, width) => (f.at.x - patch).abs() < half + width.to_mm() / 2.0,
        _ => false,
    });
    covers.then(|| {
        with_remedy(
            finding(
                context,
                "sewing::patch-on-loop",
                Severity::Warning,
                "patch",
                "a belt loop crosses the patch",
            ),
            "move the patch, or let its edge be caught under the loop on purpose",
        )
    })
}

/// Distance from a point to the nearest side of a polygon.
fn distance(polygon: &[Point], p: Point) -> f64 {
    let n = polygon.len();
    (0..n)
        .map(|i| {
            let (a, b) = (polygon[i], polygon[(i + 1) % n]);
            let side = b - a;
            let share = ((p - a).dot(side) / side.hypot2().max(1e-12)).clamp(0.0, 1.0);
            (p - (a + side * share)).hypot()
        })
        .fold(f64::INFINITY, f64::min)
}
