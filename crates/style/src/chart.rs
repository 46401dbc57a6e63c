//! The measurement chart: what the finished garment measures, and how that grows with size.

use serde::Serialize;
use trade::Length;

use crate::{Size, StyleDoc, known};

/// One measure of the chart, of the finished garment after its first wash, flat and closed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ChartEntry {
    /// The value at the base size.
    pub value: Length,
    /// Added for each inch of waist tag; absent means the measure does not grow with the waist.
    pub grade: Option<Length>,
    /// Added for each inch of length tag; absent means the measure does not grow with the length.
    pub per_length: Option<Length>,
    /// Other grades above a waist, rising; empty when one grade serves all.
    pub breaks: Vec<Break>,
    /// The level the measure is taken at, for measures that have one
    /// (seat: above the crotch; thigh and knee: below it).
    pub at: Option<Length>,
    /// How far the finished garment may be off, either way. Absent in the file means the
    /// tolerance [`known::Measure::tolerance`] states.
    pub tolerance: Length,
}

/// From one waist tag on, another grade.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Break {
    /// Steps above this waist tag (inches) use the grade given here.
    pub above: u32,
    /// Added for each inch of waist tag above that waist.
    pub grade: Length,
}

impl ChartEntry {
    /// The value at a size, for a chart stated at `base`.
    ///
    /// Each inch between the two waists adds (or takes off) the grade of that inch: the grade of the
    /// last break that lies at or below the inch's lower end, or the entry's own grade before any break.
    /// Each inch of length adds `per_length`.
    #[must_use]
    pub fn value_at(&self, base: Size, size: Size) -> Length {
        let (low, high) = (base.waist.min(size.waist), base.waist.max(size.waist));
        let grown = self.growth(low, high);
        let waist = if size.waist >= base.waist {
            grown
        } else {
            -grown
        };
        let inches = f64::from(size.length) - f64::from(base.length);
        let length = self.per_length.map_or(Length::ZERO, |each| each * inches);
        self.value + waist + length
    }

    /// What the measure grows by from one waist tag to a larger one.
    fn growth(&self, low: u32, high: u32) -> Length {
        let mut total = Length::ZERO;
        let mut from = low;
        let mut grade = self.grade.unwrap_or(Length::ZERO);
        for step in &self.breaks {
            let until = step.above.clamp(from, high);
            total = total + grade * f64::from(until - from);
            from = until;
            grade = step.grade;
        }
        total + grade * f64::from(high - from)
    }
}

impl StyleDoc {
    /// What a measure is to be at a size, from the chart.
    ///
    /// A measure the chart leaves out takes the value [`known::measure`] states for it; `None` when there is none
    /// (an outseam the draft may choose, or a name that is no measure).
    #[must_use]
    pub fn value(&self, measure: &str, size: Size) -> Option<Length> {
        match self.chart.get(measure) {
            Some(entry) => Some(entry.value_at(self.sizes.base, size)),
            None => known::measure(measure)?.value,
        }
    }

    /// The level a measure is taken at (seat: above the crotch; thigh and knee: below it);
    /// `None` for measures without one.
    #[must_use]
    pub fn level(&self, measure: &str) -> Option<Length> {
        let stated = self.chart.get(measure).and_then(|entry| entry.at);
        stated.or_else(|| known::measure(measure)?.at)
    }
}
