//! What all fixings are set by: their distances, the line between the rows of a seam, a fixing before its side is said.

use draft::{EdgeId, PieceId};
use geometry::{Path, Point, Vec2};
use style::{Seam, SeamId};
use trade::hardware::buttonhole_length;
use trade::{Colour, Length};

use crate::context::Context;
use crate::garment::{Fixing, FixingKind, On, Origin};
use crate::inset_lines::Ground;

/// From the end of the band to the eye of its buttonhole (1/2 inch: historical-tailoring.com,
/// selvedge jeans).
pub(crate) const BAND_HOLE_FROM_END: Length = Length::mm(12.7);

/// From the fly edge to the eyes of its buttonholes: a little less, so that the holes end before
/// the topstitching (common practice).
pub(crate) const FLY_HOLE_FROM_EDGE: Length = Length::mm(9.5);

/// Cloth between the end of a fly buttonhole and the row of topstitching beside it: the stitches of its end,
/// which reach 2.5 mm, and as much again for the needle to go through (derived from common practice).
pub(crate) const HOLE_TO_ROW: Length = Length::mm(5.0);

/// The left front covers a fly button by this much beyond its rim (common practice).
const BUTTON_COVER: Length = Length::mm(2.0);

/// From the fly edge to the eyes of its buttonholes: where it is usual, or nearer where the hole would come too
/// near to the topstitching; but never so near that the button would look out.
pub(crate) fn fly_eye(seam: Option<&Seam>, button: Length) -> Length {
    let usual = FLY_HOLE_FROM_EDGE;
    let rows = seam.into_iter().flat_map(|seam| &seam.rows);
    let nearest = rows
        .map(|row| row.offset)
        .filter(|offset| *offset > usual)
        .fold(Length::mm(f64::INFINITY), Length::min);
    let room = nearest - HOLE_TO_ROW - buttonhole_length(button);
    let covered = (button / 2.0 + BUTTON_COVER).min(usual);
    room.min(usual).max(covered)
}

/// A fixing that shows on the outside only, until said otherwise.
pub(super) fn fixing(
    kind: FixingKind,
    piece: PieceId,
    on: On,
    at: Point,
    along: Vec2,
    (from, colour): (Origin, Colour),
) -> Fixing {
    Fixing {
        kind,
        piece,
        on,
        at,
        along,
        outside: true,
        inside: false,
        colour,
        from,
    }
}

/// The middle between the rows of a seam, or `usual` where it has none.
pub(super) fn between_rows(context: &Context<'_>, seam: SeamId, usual: Length) -> Length {
    let offsets = || {
        context
            .seam(seam)
            .into_iter()
            .flat_map(|s| &s.rows)
            .map(|r| r.offset)
            .filter(|o| o.is_finite())
    };
    let near = offsets().fold(Length::mm(f64::INFINITY), Length::min);
    let far = offsets().fold(Length::ZERO, Length::max);
    if near.is_finite() {
        (near + far) / 2.0
    } else {
        usual
    }
}

/// The line midway between the rows of a seam, inside the named edges.
pub(super) fn midway(
    context: &Context<'_>,
    piece: PieceId,
    edges: &[EdgeId],
    seam: SeamId,
) -> Option<Path> {
    let piece = context.pattern.piece(piece)?;
    Ground::of(piece)?.inset(edges, between_rows(context, seam, Length::mm(4.8)))
}
