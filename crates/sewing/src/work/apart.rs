//! How far rows that are sewn at once lie apart when the pair is finished.

use trade::{Length, Washed};
use words::{Said, say};

use super::operation::Operation;
use crate::garment::Garment;

/// A distance that changes by less is not said: no tape finds it.
const SEEN: Length = Length::mm(0.1);

/// What the distance of two rows sewn by needles a gauge apart is after the wash, across the longest of them; nothing
/// where that is the gauge.
pub(super) fn apart_after_wash(garment: &Garment, operation: &Operation) -> Option<Said> {
    let widest = operation.gauges.iter().map(|gauge| gauge.figure());
    let gauge = widest.reduce(Length::max)?;
    let rows = operation.rows().filter_map(|index| garment.rows.get(index));
    let row = rows.max_by(|a, b| a.length().total_cmp(&b.length()))?;
    let way = row.path.direction_at(row.length() / 2.0);
    let across = geometry::left_of(way);
    let lost = garment.before_wash.lost(row.piece, across);
    let finished = Washed::new(gauge - gauge * lost).figure();
    ((gauge - finished).abs() >= SEEN).then(|| {
        say::MindRowsWashed {
            finished: finished.in_mm(1),
        }
        .into()
    })
}
