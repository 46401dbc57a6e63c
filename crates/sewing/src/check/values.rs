//! Values that are unusual by themselves, and tolerances too wide for what they allow.

use style::{Subject, stated_by_style, stated_by_supplies};
use trade::Length;
use words::{key, say};

use super::case::{Broken, Case};

/// A measure that may be off by more of itself than this is not held at all (from memory; the narrowest details are
/// allowed a sixth).
const WIDEST: f64 = 0.25;

/// Every quantity of the style, of its cloths, yarns and trims, against what is usual and possible for it.
///
/// A file that states what cannot be is not read; a measure can still come to it by its grade.
pub(super) fn unusual(case: &Case<'_>) -> Vec<Broken> {
    let context = case.context;
    let style = stated_by_style(context.doc, context.size);
    let supplies = stated_by_supplies(context.doc, context.collection);
    style
        .into_iter()
        .chain(supplies)
        .filter_map(|stated| {
            let range = stated.range()?;
            if range.is_usual(stated.amount) {
                return None;
            }
            let [from, to] = range.usual;
            let said = say::SewingValuesUnusual {
                amount: stated.amount.to_string(),
                from: from.to_string(),
                to: to.to_string(),
            };
            let broken = if range.is_possible(stated.amount) {
                Broken::warning(Subject::Value(stated.value), said)
                    .help(key::SEWING_VALUES_UNUSUAL_HELP)
            } else {
                Broken::error(Subject::Value(stated.value), said)
                    .help(key::SEWING_VALUES_UNUSUAL_HELP_2)
            };
            Some(broken.sourced(say::SewingValuesReason {
                reason: range.reason,
            }))
        })
        .collect()
}

pub(super) fn tolerance_wide(case: &Case<'_>) -> Vec<Broken> {
    let doc = case.context.doc;
    let charted = doc.chart.iter().filter_map(|(&measure, entry)| {
        let value = entry.value_at(doc.sizes.base, case.context.size);
        let wide = value > Length::ZERO && entry.tolerance / value > WIDEST;
        wide.then(|| {
            Broken::warning(
                Subject::Tolerance(measure),
                say::SewingValuesToleranceWide {
                    tolerance: entry.tolerance.in_mm(1),
                    value: value.in_mm(1),
                },
            )
            .help(key::SEWING_VALUES_TOLERANCE_WIDE_HELP)
        })
    });
    charted.collect()
}
