//! The topstitching of the fly: down the left front parallel to the fly edge, then round into the
//! foot of the opening.

use draft::{Pattern, PieceId};
use geometry::Path;
use trade::Length;

use crate::inset::{Ground, extended, moved_left, points_along};

/// The line at `offset` from the fly edge, from the waist down into the foot: the outline of the
/// facing, moved towards the fly edge by what the facing is wider.
pub(crate) fn line(pattern: &Pattern, offset: Length) -> Option<Path> {
    let front = pattern.piece(PieceId::Front)?;
    let outline = front.line("fly_stitch")?.reversed();
    let inward = (pattern.spec.fly_width - offset).to_mm();
    if !inward.is_finite() {
        return None;
    }
    // Going down, the fly edge lies on the right.
    let points = moved_left(&points_along(&outline)?, -inward);
    // Run on at both ends, so that it reaches the waist and the fly edge.
    let reach = 2.0 * inward.abs() + 5.0;
    let points = extended(points, reach, reach);
    Ground::of(front)?.clip(&points)
}
