//! The row that runs round the band and finishes in the V that holds the button.

use draft::{PieceId, PointId, Spec};
use geometry::{Path, Point};
use style::{BandMethod, MeasureId, Seam, SeamId, StyleDoc};
use trade::Length;

use super::laid::Laid;
use crate::band_parts;
use crate::context::Context;
use crate::garment::{On, RowEnd};
use crate::joining::JOINING;

/// The seams of the style with every offset measured from the seam line: a style states that of a
/// row round the band from the band's edges.
pub(crate) fn from_seam_line(doc: &StyleDoc, spec: &Spec) -> Vec<Seam> {
    let mut seams: Vec<Seam> = doc.all_seams().collect();
    if doc.band.method == BandMethod::AllRound {
        let band = seams.iter_mut().filter(|seam| seam.id == SeamId::Band);
        for row in band.flat_map(|seam| seam.rows.iter_mut().skip(1)) {
            row.offset = spec[MeasureId::BandHeight] - row.offset;
        }
    }
    seams
}

/// Whether a row of the band seam runs round the band.
pub(super) fn is_round(context: &Context<'_>, index: usize) -> bool {
    context.doc.band.method == BandMethod::AllRound && index > 0
}

/// From below the fly end up the left end, along the top, down the right end, and into the V.
pub(super) fn round(context: &Context<'_>, offset: Length) -> Option<Laid> {
    let shape = Round::of(context, offset)?;
    Some(Laid {
        piece: PieceId::Band,
        on: On::AsDrawn,
        path: Path::polyline(&shape.corners),
        begins: RowEnd::Backtacked,
        ends: RowEnd::Backtacked,
        outside: true,
        inside: true,
    })
}

/// A row of the join at the centre back. One on the seam line joins the two halves across the whole
/// band before it is folded, and is seen nowhere; one beside it goes through one half and its
/// allowance, and shows on both faces once the band is folded.
pub(super) fn join(context: &Context<'_>, offset: Length) -> Vec<Laid> {
    let band = context.pattern.piece(PieceId::Band);
    let centre = band.and_then(|band| band.point(PointId::CentreBack));
    let Some(centre) = centre.filter(|_| offset.is_finite() && band_parts::joined(context)) else {
        return Vec::new();
    };
    let height = context.pattern.spec[MeasureId::BandHeight].to_mm();
    let at = |y: f64| Point::new(centre.x + offset.to_mm(), y);
    let laid = |from: f64, to: f64, (outside, inside)| Laid {
        piece: PieceId::Band,
        on: On::AsDrawn,
        path: Path::line(at(from), at(to)),
        begins: RowEnd::CaughtInSeam,
        ends: RowEnd::CaughtInSeam,
        outside,
        inside,
    };
    if offset.abs() < JOINING {
        return vec![laid(0.0, 2.0 * height, (false, false))];
    }
    vec![
        laid(0.0, height, (true, false)),
        laid(height, 2.0 * height, (false, true)),
    ]
}

/// Where the V of the first row round the band points, in the frame of the band.
pub(crate) fn v_point(context: &Context<'_>) -> Option<Point> {
    if context.doc.band.method != BandMethod::AllRound {
        return None;
    }
    let row = context.seam(SeamId::Band)?.rows.get(1)?;
    Some(Round::of(context, row.offset)?.point)
}

/// The row's corners in the order of sewing, and the point of its V.
struct Round {
    corners: [Point; 6],
    point: Point,
}

impl Round {
    /// `offset` is that of the row along the top, from the band seam. `None` where the band is too
    /// small for the row, or the row nearer to the middle of the band than to its edges.
    fn of(context: &Context<'_>, offset: Length) -> Option<Round> {
        let band = context.pattern.piece(PieceId::Band)?;
        let height = context.pattern.spec[MeasureId::BandHeight].to_mm();
        let end = band.point(PointId::EndRight)?.x;
        let lower = context.seam(SeamId::Band)?.rows.first()?.offset.to_mm();
        let upper = offset.to_mm();
        let edge = height - upper;
        let (left, right) = (edge, end - edge);
        // The legs leave the two rows at the end and meet halfway between them.
        let half = (upper - lower) / 2.0;
        let depth = half / (context.doc.band.v_angle.to_rad() / 2.0).tan();
        let point = Point::new(right - depth, lower + half);
        let fits = edge >= 0.0
            && edge < height / 2.0
            && half > 0.0
            && depth > 0.0
            && point.x > left
            && point.is_finite();
        let corners = [
            Point::new(left, -context.doc.band.start_below.to_mm().max(0.0)),
            Point::new(left, upper),
            Point::new(right, upper),
            Point::new(right, lower),
            point,
            Point::new(right, upper),
        ];
        fits.then_some(Round { corners, point })
    }
}
