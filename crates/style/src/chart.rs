//! The measurement chart: what the finished garment measures, and how that grows with size.

use serde::Serialize;
use trade::Length;

use crate::{Size, Tag};

/// One measure of the chart, of the finished garment after its first wash, flat and closed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ChartEntry {
    /// The value at the base size.
    pub value: Length,
    /// Added for each inch of waist tag, half of it for a half; absent means the measure does not grow with the waist.
    pub grade: Option<Length>,
    /// Added for each inch of length tag, half of it for a half; absent means the measure does not grow with the length.
    pub per_length: Option<Length>,
    /// Other grades above a waist, rising; empty when one grade serves all.
    pub breaks: Vec<Break>,
    /// The level the measure is taken at (seat: above the crotch; thigh and knee: below it);
    /// `Some` exactly for the measures that have one, the usual level when the file does not say.
    pub at: Option<Length>,
    /// How far the finished garment may be off, either way. Absent in the file means the
    /// tolerance [`crate::Measure::tolerance`] states.
    pub tolerance: Length,
}

/// From one waist tag on, another grade.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Break {
    /// Steps above this waist tag use the grade given here.
    pub above: Tag,
    /// Added for each inch of waist tag above that waist.
    pub grade: Length,
}

impl ChartEntry {
    /// The value at a size, for a chart stated at `base`.
    ///
    /// Each half inch between the two waists adds (or takes off) half the grade that holds there: the grade
    /// of the last break that lies at or below its lower end, or the entry's own grade before any break.
    /// Each half inch of length adds half of `per_length`.
    #[must_use]
    pub fn value_at(&self, base: Size, size: Size) -> Length {
        let (low, high) = (base.waist.min(size.waist), base.waist.max(size.waist));
        let grown = self.growth(low, high);
        let waist = if size.waist >= base.waist {
            grown
        } else {
            -grown
        };
        let inches = size.length.steps_from(base.length);
        let length = self.per_length.map_or(Length::ZERO, |each| each * inches);
        self.value + waist + length
    }

    /// What the measure grows by from one waist tag to a larger one.
    fn growth(&self, low: Tag, high: Tag) -> Length {
        let mut total = Length::ZERO;
        let mut from = low;
        let mut grade = self.grade.unwrap_or(Length::ZERO);
        for step in &self.breaks {
            let until = step.above.clamp(from, high);
            total += grade * until.steps_from(from);
            from = until;
            grade = step.grade;
        }
        total + grade * high.steps_from(from)
    }
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::*;

    fn entry(grade: f64, breaks: &[(u32, f64)]) -> ChartEntry {
        let step = |&(above, grade): &(u32, f64)| Break {
            above: Tag::halves(above),
            grade: Length::inches(grade),
        };
        ChartEntry {
            value: Length::inches(10.0),
            grade: Some(Length::inches(grade)),
            per_length: None,
            breaks: breaks.iter().map(step).collect(),
            at: None,
            tolerance: Length::ZERO,
        }
    }

    /// What the entry says at a waist in half inches, stated at a base in half inches.
    fn inches(entry: &ChartEntry, base: u32, waist: u32) -> f64 {
        let size = |waist| Size::of(Tag::halves(waist), Tag::inches(32));
        entry.value_at(size(base), size(waist)).to_inches()
    }

    #[test]
    fn each_half_inch_takes_the_grade_of_its_own_stretch() {
        let entry = entry(1.0, &[(68, 0.5), (76, 0.25)]);
        for (base, waist, expected) in [
            (64, 64, 10.0),
            (64, 68, 12.0),
            (64, 72, 13.0),
            (64, 80, 14.5),
            (64, 60, 8.0),
            (72, 68, 9.0),
            (72, 64, 7.0),
            (80, 64, 5.5),
            (64, 63, 9.5),
            (64, 67, 11.5),
            (64, 69, 12.25),
            (63, 64, 10.5),
        ] {
            let value = inches(&entry, base, waist);
            assert!(
                (value - expected).abs() < 1e-9,
                "{base} to {waist}: {value}"
            );
        }
    }

    #[test]
    fn a_break_may_stand_at_a_half() {
        let entry = entry(1.0, &[(67, 0.5)]);
        assert!((inches(&entry, 64, 67) - 11.5).abs() < 1e-9);
        assert!((inches(&entry, 64, 68) - 11.75).abs() < 1e-9);
    }

    #[test]
    fn a_half_length_grows_by_half() {
        let mut entry = entry(1.0, &[]);
        entry.per_length = Some(Length::inches(0.75));
        let size = Size::of(Tag::inches(32), Tag::halves(65));
        let value = entry.value_at(Size::new(32, 32), size).to_inches();
        assert!((value - 10.375).abs() < 1e-9, "{value}");
    }

    proptest! {
        #[test]
        fn growth_adds_up_over_any_way_between_sizes(
            a in 20u32..160, b in 20u32..160, c in 20u32..160,
            grade in -1.0..1.0f64, above in 20u32..160, more in 1u32..40, other in -1.0..1.0f64,
        ) {
            let entry = entry(grade, &[(above, other), (above + more, grade)]);
            let step = |from, to| inches(&entry, from, to) - 10.0;
            prop_assert!((step(a, b) + step(b, c) - step(a, c)).abs() < 1e-9);
        }
    }
}
