//! How much sewing yarn a seam takes.
//!
//! Two ways are published. The ratio table gives one number to a stitch type, whatever the stitch
//! density; it is said to hold at about 7 stitches per centimetre, twice as dense as jeans. The
//! geometric formulas follow density, thickness and width, so they come first here.

use crate::{Confidence, Length, Share, StitchDensity, StitchType};

/// A geometric formula: yarn per length of seam, all threads together, is
/// `base + S (per_width × W + per_thickness × T)`.
///
/// S is the stitch density, W the bite of an overedge or the spacing of the outer needles, T the
/// thickness of the plies pressed together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Formula {
    /// The stitch type.
    pub stitch: StitchType,
    /// Yarn along the seam.
    pub base: f64,
    /// Crossings of the width in each stitch.
    pub per_width: f64,
    /// Crossings of the thickness in each stitch.
    pub per_thickness: f64,
    /// Where the formula comes from.
    pub confidence: Confidence,
}

const EQUATIONS: Confidence = Confidence::Published(
    "a sewing machine maker's booklet, as listed at textiletechinsight.com, thread consumption",
);

const fn formula(stitch: StitchType, base: f64, per_width: f64, per_thickness: f64) -> Formula {
    Formula {
        stitch,
        base,
        per_width,
        per_thickness,
        confidence: EQUATIONS,
    }
}

/// The published formulas. That of 516 is the sum of 401 and 504. A teaching page
/// (textilecalculations.com) starts 504 from 3 instead of 5.
pub const FORMULAS: [Formula; 10] = [
    formula(StitchType::S101, 3.0, 0.0, 2.0),
    formula(StitchType::S301, 2.0, 0.0, 2.0),
    formula(StitchType::S401, 4.0, 0.0, 2.0),
    formula(StitchType::S406, 7.0, 2.0, 2.0),
    formula(StitchType::S504, 5.0, 4.0, 4.0),
    formula(StitchType::S514, 5.0, 4.0, 6.0),
    formula(StitchType::S516, 9.0, 4.0, 6.0),
    formula(StitchType::S602, 8.0, 5.0, 4.0),
    formula(StitchType::S605, 10.0, 4.0, 6.0),
    formula(StitchType::S607, 12.0, 4.0, 8.0),
];

impl Formula {
    /// The published formula of a stitch type, if there is one.
    pub fn of(stitch: StitchType) -> Option<&'static Self> {
        FORMULAS.iter().find(|formula| formula.stitch == stitch)
    }

    /// Yarn per length of seam, all threads together.
    pub fn ratio(&self, density: StitchDensity, thickness: Length, width: Length) -> f64 {
        self.base + density * (width * self.per_width + thickness * self.per_thickness)
    }
}

/// A ratio of yarn to seam, all threads together, whatever the density.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RatioRow {
    /// The stitch type.
    pub stitch: StitchType,
    /// Yarn per length of seam.
    pub total: f64,
    /// The needles' share of it; none where no split is known.
    pub needle_share: Option<Share>,
    /// Where the total comes from.
    pub total_confidence: Confidence,
    /// Where the share comes from.
    pub share_confidence: Confidence,
}

const RATIO_TABLE: Confidence = Confidence::Published(
    "Carr and Latham, The Technology of Clothing Manufacture, as reproduced at scribd.com 194966618",
);
const BOBBIN_HALF: Confidence =
    Confidence::Published("a thread maker's classification of stitch types, scribd.com 49933681");
const CHAIN_QUARTER: Confidence =
    Confidence::Published("the split used at melgeecrafts.com, thread consumption");

const fn ratio(
    stitch: StitchType,
    total: f64,
    needle_percent: f64,
    share_confidence: Confidence,
) -> RatioRow {
    RatioRow {
        stitch,
        total,
        needle_share: Some(Share::percent(needle_percent)),
        total_confidence: RATIO_TABLE,
        share_confidence,
    }
}

/// The ratio table. 515 is the sum of 401 and 503; 505 is from memory. Other pages print 5 for
/// 101 and 5.5 for 304.
pub const RATIOS: [RatioRow; 13] = [
    ratio(
        StitchType::S101,
        4.0,
        100.0,
        Confidence::Derived("its only thread being on the needle"),
    ),
    ratio(StitchType::S301, 2.5, 50.0, BOBBIN_HALF),
    ratio(StitchType::S304, 7.0, 50.0, Confidence::FromMemory),
    ratio(StitchType::S401, 5.5, 25.0, CHAIN_QUARTER),
    ratio(StitchType::S406, 18.0, 30.0, Confidence::FromMemory),
    ratio(StitchType::S503, 12.0, 55.0, Confidence::FromMemory),
    ratio(StitchType::S504, 14.0, 20.0, Confidence::FromMemory),
    RatioRow {
        stitch: StitchType::S505,
        total: 14.0,
        needle_share: None,
        total_confidence: Confidence::FromMemory,
        share_confidence: Confidence::FromMemory,
    },
    ratio(StitchType::S512, 18.0, 25.0, Confidence::FromMemory),
    RatioRow {
        stitch: StitchType::S515,
        total: 17.5,
        needle_share: None,
        total_confidence: Confidence::Derived("the totals of 401 and 503 in the ratio table"),
        share_confidence: Confidence::FromMemory,
    },
    ratio(StitchType::S516, 20.0, 20.0, Confidence::FromMemory),
    ratio(StitchType::S602, 25.0, 20.0, Confidence::FromMemory),
    ratio(StitchType::S605, 28.0, 30.0, Confidence::FromMemory),
];

impl RatioRow {
    /// The row of a stitch type, if there is one.
    pub fn of(stitch: StitchType) -> Option<&'static Self> {
        RATIOS.iter().find(|row| row.stitch == stitch)
    }
}

/// Yarn per length of seam, shared between needles and the threads below and above.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct YarnPerSeam {
    /// On the needles, all together.
    pub needle: f64,
    /// On bobbin, loopers and cover, all together.
    pub under: f64,
    /// Where the total comes from.
    pub total_confidence: Confidence,
    /// Where the sharing comes from.
    pub share_confidence: Confidence,
}

impl YarnPerSeam {
    /// All threads together.
    pub fn total(&self) -> f64 {
        self.needle + self.under
    }
}

const FROM_THE_PATH: Confidence =
    Confidence::Derived("the path of the threads, summing to the published formula");

/// Yarn per length of seam: the formula where one is published, else the ratio table. None where
/// neither has the stitch type or no sharing is known.
///
/// The sharing of 301 and 401 follows the path of the threads (301 half and half; 401 needle
/// 1 + 2TS, looper 3), the others the ratio table. Published sharings of 401 disagree, from 3.00
/// and 2.67 to 1.3 and 4.1, so a measured one goes before this.
pub fn yarn_per_seam(
    stitch: StitchType,
    density: StitchDensity,
    thickness: Length,
    width: Length,
) -> Option<YarnPerSeam> {
    let row = RatioRow::of(stitch);
    let (total, total_confidence) = match (Formula::of(stitch), row) {
        (Some(formula), _) => (formula.ratio(density, thickness, width), formula.confidence),
        (None, Some(row)) => (row.total, row.total_confidence),
        (None, None) => return None,
    };
    let (needle, share_confidence) = match stitch {
        StitchType::S301 => (total / 2.0, FROM_THE_PATH),
        StitchType::S401 => (total - 3.0, FROM_THE_PATH),
        _ => {
            let row = row?;
            (total * row.needle_share?.to_ratio(), row.share_confidence)
        }
    };
    Some(YarnPerSeam {
        needle,
        under: total - needle,
        total_confidence,
        share_confidence,
    })
}

/// The factor measured by unravelling: yarn drawn out of a length of seam, over that length. None
/// when the seam is not above zero or the result is not finite.
pub fn measured_factor(yarn: Length, seam: Length) -> Option<f64> {
    let factor = yarn / seam;
    (seam > Length::ZERO && factor.is_finite()).then_some(factor)
}

/// The yarn of one bartack, both threads: 2n √(w² + (l/n)²) + 2nT for n stitches over a width w
/// and a length l through a thickness T. Derived from the path of the thread; a shop-floor rule
/// says 7 inches. None for no stitches.
pub fn bartack(stitches: u32, width: Length, length: Length, thickness: Length) -> Option<Length> {
    if stitches == 0 {
        return None;
    }
    let n = f64::from(stitches);
    let crossing = Length::mm(width.to_mm().hypot(length.to_mm() / n));
    Some((crossing + thickness) * (2.0 * n))
}

/// The usual allowance for waste: 15 %, within the 15 to 20 % of a thread maker's bulletin on
/// estimating consumption and the 10 to 15 % of another's.
pub const USUAL_WASTE: Share = Share::percent(15.0);

/// A length of yarn with its waste added.
pub fn with_waste(net: Length, waste: Share) -> Length {
    net + net * waste
}

/// The whole cones that hold a length. None when a cone holds nothing or the count is not finite.
pub fn cones(needed: Length, per_cone: Length) -> Option<u64> {
    const MOST: f64 = 1.0e15;
    let count = (needed / per_cone).ceil();
    // Whole, not negative and far below 2^53 by the test, so the conversion loses nothing.
    (per_cone > Length::ZERO && (0.0..MOST).contains(&count)).then_some(count as u64)
}

#[cfg(test)]
mod tests;
