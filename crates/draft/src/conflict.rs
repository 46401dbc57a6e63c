//! When a chart cannot be drafted: which measures fight, and by how much.
//!
//! Each measure in turn is let go while all others stay as charted, and the value nearest to the
//! charted one is sought at which the draft closes. The smallest such moves name the conflict:
//! "the thigh would have to be at least …, or the seat at most …".

use std::fmt;

use trade::Length;

use crate::fit::{Fitted, closes, core_measures, nearest_value, wanted, with_measure};
use crate::measure::{Measure, measure};
use crate::spec::Spec;

/// A single change that would make the chart draftable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Remedy {
    /// The measure to change.
    pub measure: &'static Measure,
    /// The chart's value.
    pub charted: Length,
    /// The nearest value, in whole millimetres, that can be drafted with all else unchanged.
    pub nearest: Length,
}

/// Why a chart cannot be drafted.
#[derive(Clone, Debug, PartialEq)]
pub struct Conflict {
    /// What would go wrong.
    pub reason: String,
    /// Single changes that would each resolve it, the smallest first.
    pub remedies: Vec<Remedy>,
}

impl Remedy {
    /// "at least" or "at most".
    fn bound(&self) -> &'static str {
        if self.nearest > self.charted {
            "at least"
        } else {
            "at most"
        }
    }

    fn change(&self) -> String {
        let change = self.nearest - self.charted;
        let sign = if change > Length::ZERO { '+' } else { '−' };
        format!("{sign}{}", cm(change.abs()))
    }

    /// How large the change is beside the measure, the same for halving as for doubling.
    fn weight(&self) -> f64 {
        let ratio = self.nearest / self.charted.max(Length::mm(1.0));
        let detail = DETAILS.contains(&self.measure.key);
        ratio.ln().abs() * if detail { DETAIL_WEIGHT } else { 1.0 }
    }

    /// The measure's name inside a sentence: "yoke height (side)".
    fn name(&self) -> String {
        let name = self.measure.name.to_lowercase();
        match name.split_once(", ") {
            Some((what, which)) => format!("{what} ({which})"),
            None => name,
        }
    }
}

impl Conflict {
    /// The smallest change that puts it right, as a next step.
    pub fn advice(&self) -> Option<String> {
        self.remedies
            .first()
            .map(|r| format!("set {} to {}", r.name(), cm(r.nearest)))
    }
}

impl fmt::Display for Conflict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Some((first, others)) = self.remedies.split_first() else {
            return write!(
                f,
                "these measures do not go together ({}), and no single change was found that puts it right",
                self.reason
            );
        };
        write!(
            f,
            "{} {} does not go with the rest of the chart ({}): it would have to be {} {} ({})",
            first.name(),
            cm(first.charted),
            self.reason,
            first.bound(),
            cm(first.nearest),
            first.change()
        )?;
        for r in others.iter().take(2) {
            let (name, bound) = (r.name(), r.bound());
            write!(f, ", or {name} {bound} {} ({})", cm(r.nearest), r.change())?;
        }
        Ok(())
    }
}

fn cm(length: Length) -> String {
    format!("{:.1} cm", length.to_cm())
}

/// To the millimetre, away from the conflict.
fn rounded(length: Length, up: bool) -> Length {
    let mm = length.to_mm();
    Length::mm(if up {
        (mm - 1e-6).ceil()
    } else {
        (mm + 1e-6).floor()
    })
}

const DETAILS: [&str; 3] = ["band_height", "yoke_centre", "yoke_side"];
/// A maker would sooner change a detail than a girth, a rise or a length.
const DETAIL_WEIGHT: f64 = 0.3;

/// Steps beyond the estimate at which a value is tried, in millimetres.
const TRIES_MM: [f64; 6] = [0.0, 1.0, 2.0, 4.0, 8.0, 16.0];

pub(crate) fn find_conflict(spec: &Spec, fitted: &Fitted) -> Conflict {
    let mut remedies: Vec<Remedy> = core_measures(spec)
        .chain(details(spec))
        .filter_map(|(measure, charted)| {
            nearest(spec, measure.key, charted).map(|nearest| Remedy {
                measure,
                charted,
                nearest,
            })
        })
        .collect();
    remedies.sort_by(|a, b| a.weight().total_cmp(&b.weight()));
    let reason = match fitted.impossible {
        Some(reason) => reason.to_owned(),
        None => format!(
            "the closest pattern misses a measure by {}",
            cm(rounded(Length::mm(fitted.worst_mm.min(9999.0)), true))
        ),
    };
    Conflict { reason, remedies }
}

/// Measures outside the core that can make a chart impossible.
fn details(spec: &Spec) -> impl Iterator<Item = (&'static Measure, Length)> {
    DETAILS
        .into_iter()
        .filter_map(|key| Some((measure(key)?, wanted(spec, key)?)))
}

/// The value nearest to the charted one, in whole millimetres, at which the draft closes.
fn nearest(spec: &Spec, key: &str, charted: Length) -> Option<Length> {
    let estimate = nearest_value(spec, key, charted)?;
    let up = estimate > charted;
    let sign = if up { 1.0 } else { -1.0 };
    TRIES_MM
        .into_iter()
        .map(|step| rounded(estimate, up) + Length::mm(step * sign))
        .filter(|value| *value > Length::ZERO && *value != charted)
        .find(|value| closes(&with_measure(spec, key, *value)))
}
