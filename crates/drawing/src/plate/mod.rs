//! Detail plates: each detail of the sewn garment drawn to scale with every dimension a workroom
//! needs to cut, set and sew it, computed from the solved pieces, rows and fixings.
//!
//! A plate is one module with one function that draws it at a given scale. [`plates`] tries the
//! scales from the largest and keeps the first that fits the page; dimensions, numbers and the key
//! find their own places.

mod back;
mod back_inside;
mod bag;
mod band_ends;
mod belt_loop;
mod coin;
mod corners;
mod decoration;
mod extra;
mod figure;
mod flat_goods;
mod fly;
mod hem;
mod hip;
#[cfg(test)]
mod hostile;
mod id;
mod labels;
mod levels;
mod measure;
mod notes;
mod page;
mod patch;
mod scale;
mod stitch;
#[cfg(test)]
mod tests;
mod tone;
mod waistband;
mod words;

use ::words::Words;
use draft::PieceId;
use sewing::Garment;
use style::SetAfter;

use crate::sheet::Sheet;
pub use id::PlateId;
use page::{Draft, page};
pub use scale::PlateScale;
pub use stitch::DrawnStitches;

/// A detail drawn to scale.
#[derive(Clone, Debug, PartialEq)]
pub struct Plate {
    /// Which plate.
    pub id: PlateId,
    /// Its title.
    pub title: String,
    /// A sentence or two for the workroom.
    pub caption: String,
    /// The drawing, in millimetres of paper: it is to be printed at its own size.
    pub sheet: Sheet,
    /// The scale it is drawn at; also written on the sheet, with a bar.
    pub scale: PlateScale,
    /// Whether it is drawn as the pair is after its wash: what is set only then is marked by that.
    pub of_washed: bool,
    /// Every row drawn, with its needle points counted.
    pub stitches: Vec<DrawnStitches>,
}

/// Draws a plate at a scale; `None` where the style has no such detail.
type Drawer = for<'a> fn(&'a Garment, &'a Words, PlateScale) -> Option<Draft<'a>>;

/// What draws a plate.
const fn drawer(plate: PlateId) -> Drawer {
    match plate {
        PlateId::CoinPocket => coin::draw,
        PlateId::HipPocketMouth => hip::draw,
        PlateId::PocketBag => bag::draw,
        PlateId::ExtraPocket => extra::draw,
        PlateId::BackPocketLeft => back::left,
        PlateId::BackPocketRight => back::right,
        PlateId::BackPocketsInside => back_inside::draw,
        PlateId::PocketCorners => corners::draw,
        PlateId::WaistbandEnds => band_ends::draw,
        PlateId::WaistbandOutside => waistband::outside,
        PlateId::WaistbandInside => waistband::inside,
        PlateId::Fly => fly::draw,
        PlateId::BeltLoop => belt_loop::draw,
        PlateId::Hem => hem::draw,
        PlateId::Patch => patch::draw,
        PlateId::LabelsOnBand => labels::on_band,
        PlateId::LabelsInSeam => labels::in_seam,
    }
}

/// The plates of a garment. A detail the style does not have, or whose shape could not be drafted
/// into anything that fits a page, is left out. They are drawn as the pair is sewn, before its wash, for whoever
/// marks, folds and sews by them; a patch that is set when the pair is washed, as it is then.
pub fn plates(garment: &Garment, words: &Words) -> Vec<Plate> {
    if !of_cloth(garment) {
        return Vec::new();
    }
    let sewn = garment.as_sewn();
    PlateId::ALL
        .into_iter()
        .filter_map(|id| {
            if is_of_the_washed_pair(garment, id) {
                return of_washed(garment, words, id);
            }
            fitted(&sewn, words, id, drawer(id))
        })
        .collect()
}

/// One plate alone; `None` where the style has no such detail.
pub fn plate(garment: &Garment, words: &Words, id: PlateId) -> Option<Plate> {
    if !of_cloth(garment) {
        return None;
    }
    if is_of_the_washed_pair(garment, id) {
        return of_washed(garment, words, id);
    }
    fitted(&garment.as_sewn(), words, id, drawer(id))
}

fn of_washed(garment: &Garment, words: &Words, id: PlateId) -> Option<Plate> {
    let plate = fitted(garment, words, id, drawer(id))?;
    Some(Plate {
        of_washed: true,
        ..plate
    })
}

/// Whether a detail is made only when the pair is washed, and so is measured on it.
fn is_of_the_washed_pair(garment: &Garment, id: PlateId) -> bool {
    id == PlateId::Patch && garment.is_set_after_wash(SetAfter::Patch)
}

/// No piece of a pair of trousers is longer; the strip of the loops alone may be, and is straight.
const LONGEST_MM: f64 = 4000.0;

/// Whether every piece is of a size cloth is cut in: curves of any other would be followed for ever.
fn of_cloth(garment: &Garment) -> bool {
    let pieces = garment.pattern.pieces.iter();
    pieces
        .filter(|p| p.id != PieceId::LoopStrip)
        .flat_map(|p| &p.edges)
        .all(|e| {
            let b = e.path.bounds();
            [b.x0, b.x1, b.y0, b.y1]
                .iter()
                .all(|v| v.abs() <= LONGEST_MM)
        })
}

/// The largest scale a detail is drawn at, where that is not the page's: what is bought to size and has words on it is
/// drawn at its own.
const fn largest(id: PlateId) -> f64 {
    match id {
        PlateId::Patch | PlateId::LabelsOnBand | PlateId::LabelsInSeam => 1.0,
        // Their corners and ends are enlarged on plates of their own, which they share pages with.
        PlateId::ExtraPocket | PlateId::HipPocketMouth => 1.0 / 3.0,
        PlateId::WaistbandOutside | PlateId::WaistbandInside => 1.0 / 4.0,
        PlateId::CoinPocket
        | PlateId::PocketBag
        | PlateId::BackPocketLeft
        | PlateId::BackPocketRight
        | PlateId::BackPocketsInside
        | PlateId::PocketCorners
        | PlateId::WaistbandEnds
        | PlateId::Fly
        | PlateId::BeltLoop
        | PlateId::Hem => f64::INFINITY,
    }
}

/// The plate at the largest scale that fits.
fn fitted(garment: &Garment, words: &Words, id: PlateId, drawer: Drawer) -> Option<Plate> {
    let mut no_larger_than = largest(id);
    for scale in PlateScale::ALL {
        if scale.times() > no_larger_than {
            continue;
        }
        let draft = drawer(garment, words, scale)?;
        // A drawing alone larger than the page need not be tried before it is small enough.
        let over = draft.times_the_page();
        no_larger_than = scale.times() / over.max(1.0);
        if over > 1.0 {
            continue;
        }
        if let Some(paged) = page(draft, scale) {
            return Some(Plate {
                id,
                title: paged.title,
                caption: paged.caption,
                sheet: paged.sheet,
                scale,
                of_washed: false,
                stitches: paged.stitches,
            });
        }
    }
    None
}
