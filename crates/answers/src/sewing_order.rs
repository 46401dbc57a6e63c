//! The sewing order of one size: operation after operation, with what each machine is set to.

use draft::PieceId;
use serde::Serialize;
use sewing::Garment;
use sewing::work::{Needle, Operation, order_notes, sewing_order as operations};
use style::{MeasureId, Size};
use trade::{Length, StitchDensity, Unwashed, Washed};
use words::Words;

use crate::pieces::{mm, rounded};
use crate::shape::Shape;
use crate::text::{AnswerError, lines};

#[derive(Serialize)]
struct Answer<'a> {
    format: u32,
    unit: &'static str,
    state: &'static str,
    style: &'a str,
    code: &'a str,
    size: Size,
    notes: Vec<&'a str>,
    operations: Vec<OperationRow<'a>>,
    measures: Vec<MeasureRow>,
}

#[derive(Serialize)]
struct OperationRow<'a> {
    number: usize,
    key: String,
    name: String,
    machine: &'static str,
    pieces: Vec<&'static str>,
    after: Vec<String>,
    attachment: Option<AttachmentRow>,
    needles: u8,
    gauges: Vec<f64>,
    bite: Option<f64>,
    eased: Option<f64>,
    sewn: f64,
    rows: Vec<NeedleRow<'a>>,
    mind: Vec<String>,
    not_stated: Option<String>,
}

#[derive(Serialize)]
struct AttachmentRow {
    name: String,
    set_to: Option<f64>,
}

#[derive(Serialize)]
struct NeedleRow<'a> {
    from: &'a str,
    row: Option<usize>,
    stitch: String,
    set_per_cm: Option<f64>,
    counted_per_cm: Option<f64>,
    offset: Option<f64>,
    sewn: f64,
    needle: &'a str,
    needle_from: Option<u16>,
    needle_to: Option<u16>,
    under: &'a str,
}

#[derive(Serialize)]
struct MeasureRow {
    key: &'static str,
    sewn: f64,
    finished: f64,
}

/// The sewing order of a garment. Every figure is of the pair as it is sewn, before its wash.
///
/// # Errors
/// [`AnswerError`] when it cannot be put into JSON.
pub fn sewing_order(garment: &Garment) -> Result<String, AnswerError> {
    let words = Words::english();
    let order = operations(garment);
    let measure = |measure: MeasureId| {
        Some(MeasureRow {
            key: measure.code(),
            sewn: unwashed(garment.measure_before_wash(measure)?),
            finished: mm(garment.pattern.measure(measure)?),
        })
    };
    lines(&Answer {
        format: Shape::SewingOrder.version(),
        unit: "mm",
        state: "before the wash",
        style: &garment.doc.style.name,
        code: &garment.doc.style.code,
        size: garment.size,
        notes: order_notes(garment)
            .into_iter()
            .map(|note| words.named(note))
            .collect(),
        operations: order.iter().map(|o| operation(o, words)).collect(),
        measures: MeasureId::ALL.into_iter().filter_map(measure).collect(),
    })
}

fn operation<'a>(operation: &'a Operation, words: &Words) -> OperationRow<'a> {
    let attachment = operation.attachment.as_ref();
    OperationRow {
        number: operation.number,
        key: operation.key.code(),
        name: words.saying(&operation.name),
        machine: operation.machine.code(),
        pieces: operation
            .pieces
            .iter()
            .copied()
            .map(PieceId::code)
            .collect(),
        after: operation.after.iter().map(|key| key.code()).collect(),
        attachment: attachment.map(|attachment| AttachmentRow {
            name: words.saying(&attachment.what),
            set_to: attachment.set_to.map(unwashed),
        }),
        needles: operation.needle_count,
        gauges: operation.gauges.iter().copied().map(unwashed).collect(),
        bite: operation.bite.map(unwashed),
        eased: operation.eased.map(unwashed),
        sewn: unwashed(operation.sewn),
        rows: operation.needles.iter().map(needle).collect(),
        mind: operation
            .mind
            .iter()
            .map(|mind| words.saying(mind))
            .collect(),
        not_stated: operation
            .not_stated
            .as_ref()
            .map(|missing| words.saying(&missing.what)),
    }
}

fn needle(needle: &Needle) -> NeedleRow<'_> {
    let per_cm = |density: StitchDensity| rounded(density.to_per_cm());
    NeedleRow {
        from: needle.seam.code(),
        row: needle.row,
        stitch: needle.stitch.to_string(),
        set_per_cm: needle.set_to.map(Unwashed::figure).map(per_cm),
        counted_per_cm: needle.counted.map(Washed::figure).map(per_cm),
        offset: needle.offset.map(unwashed),
        sewn: unwashed(needle.sewn),
        needle: &needle.yarn.key,
        needle_from: needle.sizes.map(|(finest, _)| finest.to_metric()),
        needle_to: needle.sizes.map(|(_, heaviest)| heaviest.to_metric()),
        under: &needle.under.key,
    }
}

fn unwashed(length: Unwashed<Length>) -> f64 {
    mm(length.figure())
}
