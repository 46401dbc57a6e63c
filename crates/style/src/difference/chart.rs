//! The chart, measure by measure.

use trade::Length;
use words::{Given, say};

use super::found::Found;
use super::value::Value;
use crate::{ChartEntry, MeasureId, StyleDoc};

/// Lengths that differ by less say the same.
const SAME: Length = Length::mm(1e-6);

pub(super) fn chart(found: &mut Found, old: &StyleDoc, new: &StyleDoc) {
    for (&measure, entry) in &new.chart {
        match old.chart.get(&measure) {
            Some(before) => compare(measure, found, (old, before), (new, entry)),
            None => {
                let is = Value::Charted(entry.value, new.sizes.base);
                found.added(place(measure), measure.title(), is);
            }
        }
    }
    let gone = old.chart.iter();
    for (&measure, entry) in gone.filter(|(measure, _)| !new.chart.contains_key(*measure)) {
        let was = Value::Charted(entry.value, old.sizes.base);
        found.taken_out(place(measure), measure.title(), was);
    }
}

/// Where a measure stands in the file.
fn place(measure: MeasureId) -> String {
    format!("chart.{}", measure.code())
}

/// A measure that both charts have.
fn compare(
    id: MeasureId,
    found: &mut Found,
    (old, a): (&StyleDoc, &ChartEntry),
    (new, b): (&StyleDoc, &ChartEntry),
) {
    let path = |key: &str| id.path(key);
    let measure = || Given::from(id.title());
    let base = new.sizes.base;
    // With another base size the old chart is read at the new one: only a real difference is told.
    let before = if old.sizes.base == base {
        a.value
    } else {
        a.value_at(old.sizes.base, base)
    };
    let moved = old.sizes.base != base && (before - b.value).abs() < SAME;
    if !moved {
        let about = say::DifferenceMeasureValue {
            measure: measure(),
            size: base.to_string(),
        };
        found.value(path("value"), about, before, b.value);
    }
    let about = say::DifferenceMeasureGrade { measure: measure() };
    found.value(path("grade"), about, a.grade, b.grade);
    let about = say::DifferenceMeasurePerLength { measure: measure() };
    found.value(path("per_length"), about, a.per_length, b.per_length);
    let about = say::DifferenceMeasureBreaks { measure: measure() };
    let (was, is) = (a.breaks.as_slice(), b.breaks.as_slice());
    found.value(path("breaks"), about, was, is);
    let about = say::DifferenceMeasureLevel { measure: measure() };
    found.value(path("at"), about, a.at, b.at);
    let about = say::DifferenceMeasureTolerance { measure: measure() };
    found.value(path("tolerance"), about, a.tolerance, b.tolerance);
}
