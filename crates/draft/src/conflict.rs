//! When a chart cannot be drafted: which measures fight, and by how much.
//!
//! Each core measure is moved on its own, up and down, while all others stay as charted, until the
//! draft closes. The smallest such moves name the conflict: "the thigh would have to be at least …,
//! or the seat at most …". Two measures are named wherever two single changes would each resolve it.

use std::fmt;

use trade::Length;

use crate::fit::{Fitted, core_measures, fit, with_measure};
use crate::measure::Measure;
use crate::spec::Spec;

/// A single change that would make the chart draftable.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Remedy {
    /// The measure to change.
    pub measure: &'static Measure,
    /// The chart's value.
    pub charted: Length,
    /// The nearest value that can be drafted, all else unchanged.
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

impl fmt::Display for Conflict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.reason)?;
        for (i, r) in self.remedies.iter().take(3).enumerate() {
            let joint = match i {
                0 => ": with all else unchanged, ",
                _ => ", or ",
            };
            let bound = if r.nearest > r.charted { "at least" } else { "at most" };
            write!(
                f,
                "{joint}{} {} would have to be {bound} {} ({}{})",
                r.measure.name.to_lowercase(),
                r.charted,
                rounded(r.nearest, r.nearest > r.charted),
                if r.nearest > r.charted { "+" } else { "−" },
                rounded((r.nearest - r.charted).abs(), true),
            )?;
        }
        if self.remedies.is_empty() {
            f.write_str(": no single measure puts it right; at least two are far off")?;
        }
        Ok(())
    }
}

/// To the millimetre, away from the conflict.
fn rounded(length: Length, up: bool) -> Length {
    let mm = length.to_mm();
    Length::mm(if up { (mm - 1e-6).ceil() } else { (mm + 1e-6).floor() })
}

/// How far a measure may be moved in search of a solution, as a share of itself.
const REACH: f64 = 0.6;
/// Coarse steps in that search, each way.
const STEPS: i32 = 30;
/// How closely the nearest value is found.
const CLOSE_MM: f64 = 0.2;

pub(crate) fn find_conflict(spec: &Spec, fitted: &Fitted) -> Conflict {
    let mut remedies: Vec<Remedy> = core_measures(spec)
        .filter_map(|(measure, charted)| {
            nearest(spec, measure.key, charted).map(|nearest| Remedy {
                measure,
                charted,
                nearest,
            })
        })
        .collect();
    let size = |r: &Remedy| ((r.nearest - r.charted) / r.charted).abs();
    remedies.sort_by(|a, b| size(a).total_cmp(&size(b)));
    let reason = match fitted.impossible {
        Some(reason) => format!("these measures cannot be drafted together ({reason})"),
        None => format!(
            "these measures cannot be drafted together (the closest pattern misses them by up to {})",
            rounded(Length::mm(fitted.worst_mm.min(9999.0)), true)
        ),
    };
    Conflict { reason, remedies }
}

/// The value nearest to the charted one at which the draft closes.
fn nearest(spec: &Spec, key: &str, charted: Length) -> Option<Length> {
    let works = |value: f64| fit(&with_measure(spec, key, Length::mm(value)), None).holds();
    let charted = charted.to_mm();
    let step = charted * REACH / f64::from(STEPS);
    let (good, bad) = (1..=STEPS).find_map(|k| {
        [1.0, -1.0].into_iter().find_map(|sign| {
            let value = charted + sign * step * f64::from(k);
            works(value).then_some((value, value - sign * step))
        })
    })?;
    let (mut good, mut bad) = (good, bad);
    while (good - bad).abs() > CLOSE_MM {
        let middle = (good + bad) / 2.0;
        if works(middle) {
            good = middle;
        } else {
            bad = middle;
        }
    }
    Some(Length::mm(good))
}
