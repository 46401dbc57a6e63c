//! A patch against the band it is sewn on.

use draft::PieceId;
use geometry::Point;
use style::{MeasureId, PartId, SeamId};
use trade::Length;
use words::say;

use super::scene::What;
use super::whereabouts::{operation, place};
use crate::check::case::{Broken, Case};

/// A row of the patch that runs over the band seam: through the finished band above it, through the body below.
pub(crate) fn through_band(case: &Case<'_>) -> Vec<Broken> {
    let scene = case.scene;
    let found = || {
        let finished = scene.last_of(SeamId::Band)?;
        let patch = scene
            .sewn
            .iter()
            .find(|sewn| sewn.what.seam() == Some(SeamId::PatchSet))?;
        let What::Row(row) = patch.what else {
            return None;
        };
        let lowest: Point = *patch.line.iter().min_by(|a, b| a.y.total_cmp(&b.y))?;
        let below = Length::mm(-lowest.y);
        if below <= Length::ZERO {
            return None;
        }
        let band = case.context.pattern.spec[MeasureId::BandHeight].in_mm(1);
        let now = operation(scene, patch.operation);
        let said: words::Said = if patch.operation > finished {
            say::ClashPatchThroughBand {
                below: below.in_mm(1),
                finished: operation(scene, finished),
                now,
                row: row.number.to_string(),
            }
            .into()
        } else {
            say::ClashPatchBeforeBand {
                below: below.in_mm(1),
                finished: operation(scene, scene.first_of(SeamId::Band)?),
                now,
                row: row.number.to_string(),
            }
            .into()
        };
        Some(
            Broken::warning(PartId::Patch, said)
                .help(say::ClashPatchThroughBandHelp { band })
                .at(place(PieceId::Band, lowest)),
        )
    };
    found().into_iter().collect()
}
