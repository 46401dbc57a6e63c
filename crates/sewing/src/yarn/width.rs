//! The width W of a stitch in the formulas: the bite of an overedge, the spacing of the needles of
//! a covering stitch.

use style::Seam;
use trade::seam::{SeamOperationId, operation};
use trade::{Confidence, Length, StitchType};

use crate::construct::operation_of;

/// The width of a stitch and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct StitchWidth {
    /// The width; nothing for stitches without one.
    pub width: Length,
    /// Where it comes from; none for stitches without a width.
    pub source: Option<Confidence>,
    /// The share of one whole pass of the stitch this row stands for: a half for each of the two
    /// rows of a two-needle coverstitch, else 1.
    pub pass: f64,
}

const NONE: StitchWidth = StitchWidth {
    width: Length::ZERO,
    source: None,
    pass: 1.0,
};

const STATED: Confidence = Confidence::Derived("the distance of the rows");
const USUAL_GAUGE: Confidence = Confidence::Derived("the middle of the gauges usual for the work");

/// The bite of an overedge when the style does not state one: the middle of the usual bites,
/// 5.6 mm (3/16 to 1/4 inch, from memory).
pub fn overedge_bite() -> Length {
    operation(SeamOperationId::EdgeOveredge)
        .gauge
        .map_or(Length::mm(5.6), |(least, most)| (least + most) / 2.0)
}

impl StitchWidth {
    pub(super) fn throw(width: Length) -> StitchWidth {
        StitchWidth { width, ..NONE }
    }

    pub(super) fn overedge() -> StitchWidth {
        StitchWidth {
            width: overedge_bite(),
            source: Some(USUAL_GAUGE),
            pass: 1.0,
        }
    }
}

/// The width of a row's stitch, by its number within its seam.
///
/// A covering stitch has several needles, and the style states a row for each: rows of the seam
/// with the same stitch are taken together in the order of the file, as many as the stitch has
/// needles. A row left over stands for a whole pass at the usual gauge.
pub(super) fn of_row(seam: &Seam, number: usize, stitch: StitchType) -> StitchWidth {
    if stitch.is_overedge() {
        return StitchWidth::overedge();
    }
    let needles = usize::from(stitch.threads().needle);
    if needles < 2 {
        return NONE;
    }
    let alike: Vec<(usize, Length)> = seam
        .rows
        .iter()
        .enumerate()
        .filter(|(_, row)| row.stitch == stitch)
        .map(|(index, row)| (index + 1, row.offset))
        .collect();
    let place = alike.iter().position(|(n, _)| *n == number).unwrap_or(0);
    let together = alike.chunks(needles).nth(place / needles).unwrap_or(&[]);
    let offsets = || together.iter().map(|(_, offset)| *offset);
    let near = offsets().reduce(Length::min).unwrap_or_default();
    let far = offsets().reduce(Length::max).unwrap_or_default();
    if together.len() == needles && (far - near).is_finite() {
        return StitchWidth {
            width: far - near,
            source: Some(STATED),
            pass: 1.0 / needles as f64,
        };
    }
    let gauge = operation_of(seam).gauge;
    StitchWidth {
        width: gauge.map_or(Length::inches(0.25), |(least, most)| (least + most) / 2.0),
        source: Some(USUAL_GAUGE),
        pass: 1.0 / together.len().max(1) as f64,
    }
}
