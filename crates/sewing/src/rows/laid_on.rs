//! The rows that sew on the patch and the labels, along their own edges.

use geometry::{Path, Point};
use style::{LabelFold, PatchThrough};
use trade::Length;

use super::laid::Laid;
use crate::context::Context;
use crate::fixings::{self, OnBand};
use crate::garment::{Fixing, FixingKind, RowEnd};

/// One closed row all round the patch, through the band or its outer ply alone.
pub(super) fn patch(context: &Context<'_>, offset: Length) -> Vec<Laid> {
    let through = context.doc.patch.as_ref().map(|patch| patch.through);
    let inside = through == Some(PatchThrough::WholeBand);
    let patch = fixings::patch_on_band(context);
    patch
        .and_then(|patch| Some((closed(&corners(&patch, offset)?), patch)))
        .map(|(path, patch)| laid(&patch, path, RowEnd::Overlapped, (true, inside)))
        .into_iter()
        .collect()
}

/// Whether there is a label that lies on the band.
pub(super) fn labels_wanted(context: &Context<'_>) -> bool {
    !fixings::labels_on_band(context).is_empty()
}

/// The rows of the labels on the band, through its inner ply alone: all round a flat one, along both
/// ends of one with its ends turned under, along the upper edge of one that hangs folded.
pub(super) fn labels(context: &Context<'_>, offset: Length) -> Vec<Laid> {
    fixings::labels_on_band(context)
        .iter()
        .flat_map(|OnBand { fixing, fold }| {
            let Some(c) = corners(fixing, offset) else {
                return Vec::new();
            };
            let inside = |path, ends| laid(fixing, path, ends, (false, true));
            match fold {
                LabelFold::Flat => vec![inside(closed(&c), RowEnd::Overlapped)],
                LabelFold::EndFold => vec![
                    inside(Path::line(c[3], c[0]), RowEnd::Backtacked),
                    inside(Path::line(c[1], c[2]), RowEnd::Backtacked),
                ],
                LabelFold::CentreFold | LabelFold::MitreFold => {
                    vec![inside(Path::line(c[3], c[2]), RowEnd::Backtacked)]
                }
            }
        })
        .collect()
}

fn laid(fixing: &Fixing, path: Path, ends: RowEnd, (outside, inside): (bool, bool)) -> Laid {
    Laid {
        piece: fixing.piece,
        on: fixing.on,
        path,
        begins: ends,
        ends,
        outside,
        inside,
    }
}

fn closed(corners: &[Point; 4]) -> Path {
    let [a, b, c, d] = *corners;
    Path::polyline(&[a, b, c, d, a])
}

/// The rectangle this far inside a flat fixing: lower left, lower right, upper right, upper left as
/// it is read. `None` where nothing is left of it.
fn corners(fixing: &Fixing, offset: Length) -> Option<[Point; 4]> {
    let (FixingKind::Patch(width, height, _) | FixingKind::Label(width, height, _)) = &fixing.kind
    else {
        return None;
    };
    let half = |side: Length| (side / 2.0 - offset).to_mm();
    let (x, y) = (half(*width), half(*height));
    if !(x > 0.0 && y > 0.0 && x.is_finite() && y.is_finite()) {
        return None;
    }
    let along = fixing.along * x;
    let up = geometry::left_of(fixing.along) * y;
    let at = fixing.at;
    Some([
        at - along - up,
        at + along - up,
        at + along + up,
        at - along + up,
    ])
}
