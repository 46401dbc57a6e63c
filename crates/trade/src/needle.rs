//! Needle sizes, and which needle sews which yarn.

use std::fmt;
use std::str::FromStr;

use crate::yarn::nearest_row;
use crate::{Confidence, Length, YarnSize};

/// A needle size in the metric system: hundredths of a millimetre of blade diameter, so that a
/// size 100 has a blade of 1 mm (statamic.bigfinish.com, needles for denim).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct NeedleSize(u16);

/// A text that is not a needle size.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error(
    "\"{text}\" is not a needle size: write the metric size, such as \"100\", or both, such as \"100/16\""
)]
pub struct NeedleError {
    /// The text as written, cut when long.
    pub text: String,
}

/// A pair of metric size and trade number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NeedleRow {
    /// The metric size.
    pub metric: NeedleSize,
    /// The trade number beside it.
    pub number: u8,
    /// Where the pair comes from.
    pub confidence: Confidence,
}

const GUIDE: Confidence = Confidence::Published("supplydivision.co.uk, sewing guide");

const fn row(number: u8, metric: u16, confidence: Confidence) -> NeedleRow {
    NeedleRow {
        metric: NeedleSize(metric),
        number,
        confidence,
    }
}

/// Metric sizes and trade numbers, finest first.
pub const NEEDLE_SIZES: [NeedleRow; 13] = [
    row(9, 65, GUIDE),
    row(10, 70, GUIDE),
    row(11, 75, GUIDE),
    row(12, 80, Confidence::FromMemory),
    row(14, 90, GUIDE),
    row(16, 100, GUIDE),
    row(18, 110, GUIDE),
    row(19, 120, GUIDE),
    row(21, 130, GUIDE),
    row(22, 140, GUIDE),
    row(23, 160, GUIDE),
    row(24, 180, Confidence::FromMemory),
    row(25, 200, GUIDE),
];

impl NeedleSize {
    /// A needle by its metric size.
    pub const fn metric(size: u16) -> Self {
        Self(size)
    }

    /// The metric size.
    pub const fn to_metric(self) -> u16 {
        self.0
    }

    /// The trade number beside the metric size, where the table has one.
    pub fn number(self) -> Option<u8> {
        NEEDLE_SIZES
            .iter()
            .find(|row| row.metric == self)
            .map(|row| row.number)
    }

    /// The diameter of the blade.
    pub fn blade(self) -> Length {
        Length::mm(f64::from(self.0) / 100.0)
    }
}

/// Prints "100/16", or "105" where the table has no trade number.
impl fmt::Display for NeedleSize {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.number() {
            Some(number) => write!(f, "{}/{number}", self.0),
            None => write!(f, "{}", self.0),
        }
    }
}

/// Reads "100" or "100/16"; the two numbers must belong together.
impl FromStr for NeedleSize {
    type Err = NeedleError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        let wrong = || NeedleError {
            text: text.chars().take(60).collect(),
        };
        let (metric, number) = match text.trim().split_once('/') {
            Some((metric, number)) => (metric, Some(number)),
            None => (text, None),
        };
        let size = metric.trim().parse().map(Self).map_err(|_| wrong())?;
        let number: Option<u8> = number
            .map(|n| n.trim().parse())
            .transpose()
            .map_err(|_| wrong())?;
        let agrees = number.is_none() || size.number() == number;
        let makes_sense = (20..=500).contains(&size.0);
        (agrees && makes_sense).then_some(size).ok_or_else(wrong)
    }
}

/// Whether a needle sews a yarn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// In the usual range.
    Good,
    /// The yarn is too thick for the eye; the finest needle usual for it is given.
    NeedleTooFine(NeedleSize),
    /// The hole is larger than the yarn fills; the heaviest needle usual for it is given.
    NeedleTooHeavy(NeedleSize),
}

/// Whether `needle` is in the usual range for `yarn`, by the nearest row of
/// [`crate::yarn::YARN_SIZES`]. The ranges are from memory, to be confirmed.
pub fn fits(yarn: YarnSize, needle: NeedleSize) -> Fit {
    let (finest, heaviest) = nearest_row(yarn).needles;
    if needle < finest {
        Fit::NeedleTooFine(finest)
    } else if needle > heaviest {
        Fit::NeedleTooHeavy(heaviest)
    } else {
        Fit::Good
    }
}

/// The least width of eye for a yarn: 40 % over the yarn's diameter (jsrz.com, thread diameter and
/// gauge).
pub fn least_eye(yarn_diameter: Length) -> Length {
    yarn_diameter * 1.4
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    /// Pairs of supplydivision.co.uk, sewing guide; 12 = 80 from memory.
    #[test]
    fn trade_numbers_pair_with_metric_sizes() {
        for (metric, number) in [(65, 9), (80, 12), (90, 14), (100, 16), (110, 18), (200, 25)] {
            assert_eq!(NeedleSize::metric(metric).number(), Some(number));
        }
        assert_eq!(NeedleSize::metric(105).number(), None);
        assert!(NEEDLE_SIZES.is_sorted_by_key(|row| (row.metric, row.number)));
    }

    /// A size 100 has a blade of 1 mm: statamic.bigfinish.com.
    #[test]
    fn the_metric_size_is_the_blade() {
        assert_eq!(NeedleSize::metric(100).blade(), Length::mm(1.0));
    }

    #[test]
    fn sizes_read_and_print() {
        assert_eq!("100".parse(), Ok(NeedleSize::metric(100)));
        assert_eq!(" 100 / 16 ".parse(), Ok(NeedleSize::metric(100)));
        for row in NEEDLE_SIZES {
            assert_eq!(row.metric.to_string().parse(), Ok(row.metric));
        }
        for bad in ["", "16", "100/14", "100/", "fine", "-100", "99999999"] {
            let found = bad.parse::<NeedleSize>();
            assert!(found.is_err(), "{bad}");
        }
    }

    /// Ranges from memory: tex 105 takes 110 to 130.
    #[test]
    fn a_topstitch_yarn_wants_a_heavy_needle() {
        let yarn = YarnSize::tex(105.0);
        assert_eq!(fits(yarn, NeedleSize::metric(120)), Fit::Good);
        assert_eq!(
            fits(yarn, NeedleSize::metric(90)),
            Fit::NeedleTooFine(NeedleSize::metric(110))
        );
        assert_eq!(
            fits(yarn, NeedleSize::metric(160)),
            Fit::NeedleTooHeavy(NeedleSize::metric(130))
        );
    }

    #[test]
    fn the_eye_is_wider_than_the_yarn() {
        let eye = least_eye(Length::mm(0.5));
        assert!((eye.to_mm() - 0.7).abs() < 1e-12);
    }
}
