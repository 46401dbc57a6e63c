//! The topstitching of the fly: down the left front parallel to the fly edge, then round into the
//! foot of the opening.

use draft::{EdgeId, LineId, Pattern, PieceId};
use geometry::tolerance::PARALLEL;
use geometry::{Path, Straight, moved_left};
use style::{FlyTopstitch, MeasureId, RowEnding, RowSpec, Seam, SeamId, StyleDoc};
use trade::Length;

use crate::context::Context;
use crate::inset_lines::{Ground, extended, points_along};

/// The line at `offset` from the fly edge, from the waist down into the foot: the outline of the
/// facing, moved towards the fly edge by what the facing is wider.
pub(crate) fn line(pattern: &Pattern, offset: Length) -> Option<Path> {
    let front = pattern.piece(PieceId::Front)?;
    let outline = front.line(LineId::FlyStitch)?.reversed();
    let inward = pattern.spec[MeasureId::FlyWidth] - offset;
    if !inward.is_finite() {
        return None;
    }
    // Going down, the fly edge lies on the right.
    let points = moved_left(&points_along(&outline)?, -inward);
    // Run on at both ends, so that it reaches the waist and the fly edge.
    let reach = 2.0 * inward.abs().to_mm() + 5.0;
    let points = extended(points, reach, reach);
    Ground::of(front)?.clip(&points)
}

/// Whether the fly is topstitched on the left front alone, before the front rise is joined: as the style says, and
/// wherever one of its rows is to be caught in a later seam.
pub(crate) fn is_stitched_flat(doc: &StyleDoc, seams: &[Seam]) -> bool {
    let caught = |row: &RowSpec| row.end == Some(RowEnding::CaughtInSeam);
    let fly = seams.iter().find(|seam| seam.id == SeamId::Fly);
    doc.fly.topstitch == FlyTopstitch::Flat || fly.is_some_and(|fly| fly.rows.iter().any(caught))
}

/// A row of the front rise on the left front, at `offset` from the seam: it begins at the outermost row of the fly,
/// where it comes out from under it or is sewn over it. `None` where the two do not meet.
pub(super) fn from_stitching(context: &Context<'_>, offset: Length) -> Option<Path> {
    let front = context.pattern.piece(PieceId::Front)?;
    let rows = &context.seam(SeamId::Fly)?.rows;
    let outermost = rows.iter().map(|r| r.offset).max_by(Length::total_cmp)?;
    let fly = line(context.pattern, outermost)?.dense(Length::mm(2.0));
    let whole = Ground::of(front)?.inset(&[EdgeId::Fly, EdgeId::Crotch], offset)?;
    // The last meeting counts: further up the fly stitching lies beside the row.
    let mut walked = 0.0;
    let mut met = None;
    // An inset line has straight segments only, so its joints are all there is to it.
    for part in whole.dense(Length::mm(2.0)).windows(2) {
        let length = (part[1] - part[0]).hypot();
        for w in fly.windows(2) {
            let row = Straight::between(w[0], w[1]);
            let meeting = Straight::between(part[0], part[1]).meeting(row, PARALLEL);
            if let Some(meeting) = meeting.filter(|m| m.on_both(0.0)) {
                met = Some(walked + length * meeting.first);
            }
        }
        walked += length;
    }
    let along = Length::mm(met?);
    Some(whole.part(along, whole.length()))
}
