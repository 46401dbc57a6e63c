//! Shrinkage from a wash test: marks on a specimen, measured before and after.
//!
//! Per cent of dimensional change after ISO 5077: 100 (after − before) / before, so shrinkage is minus
//! that. The specimen is at least 500 mm square, its marks at least 350 mm apart and 50 mm from the
//! edges (ISO 5077, as reproduced by testing houses); the mean of each direction is stated to 0.1 %
//! (AATCC 135).

use style::{Along, WashMark, mean_shrinkage};

use trade::fabric::dimensional_change;
use trade::{Length, Share};
use words::{Said, say};

use sewing::wash::{ScaleError, Shrinkage, believable, threads};

/// Marks are at least this far apart (ISO 5077).
pub const MARKS_APART: Length = Length::mm(350.0);

/// Fewer distances than this in one direction say little (ISO 3759, from memory: three in each).
pub const FEWEST_MARKS: usize = 3;

/// A stated figure that is further from the test than this is contradicted by it (common practice: half a
/// per cent of an inseam is 4 mm, a third of its usual tolerance).
pub const CONTRADICTION: Share = Share::percent(0.5);

/// Distances of one direction that differ by more than this were measured or marked badly, or the
/// cloth is uneven (common practice).
pub const MOST_SPREAD: Share = Share::percent(1.5);

/// What one direction came to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shrunk {
    /// Mean shrinkage, to 0.1 %; negative where the cloth grew.
    pub mean: Share,
    /// The least of all distances.
    pub least: Share,
    /// The greatest.
    pub most: Share,
    /// Standard deviation of the distances; zero for a single one.
    pub deviation: Share,
    /// How many distances.
    pub count: usize,
}

/// A wash test, worked out.
#[derive(Clone, Debug, PartialEq)]
pub struct WashTest {
    /// Along the warp.
    pub warp: Shrunk,
    /// Along the weft.
    pub weft: Shrunk,
    /// What makes the result less sure, in words.
    pub doubts: Vec<Said>,
}

impl WashTest {
    /// The means.
    pub fn shrinkage(&self) -> Shrinkage {
        Shrinkage {
            warp: self.warp.mean,
            weft: self.weft.mean,
        }
    }
}

/// Why a wash test cannot be used.
#[derive(Clone, Debug, PartialEq)]
pub enum WashError {
    /// No distance in a direction.
    Missing(Along),
    /// A distance that is none.
    NoDistance {
        /// Which, from 1, in the order given.
        number: usize,
        /// Along which threads.
        along: Along,
        /// Whether it is the distance after the wash.
        after: bool,
        /// What was given.
        found: Length,
    },
    /// A change no cloth makes.
    NotBelieved {
        /// Which, from 1, in the order given.
        number: usize,
        /// Why.
        why: ScaleError,
    },
}

impl From<&WashError> for Said {
    fn from(wrong: &WashError) -> Self {
        match wrong {
            WashError::Missing(along) => say::CuttingTestNone {
                along: threads(*along),
            }
            .into(),
            WashError::NoDistance {
                number,
                along,
                after,
                found,
            } => {
                let along = threads(*along);
                let (found, number) = (found.to_string(), number.to_string());
                if *after {
                    say::CuttingTestAfter {
                        along,
                        found,
                        number,
                    }
                    .into()
                } else {
                    say::CuttingTestBefore {
                        along,
                        found,
                        number,
                    }
                    .into()
                }
            }
            WashError::NotBelieved { number, why } => say::CuttingTestDistance {
                number: number.to_string(),
                why: Said::from(why),
            }
            .into(),
        }
    }
}

/// Works out a wash test.
///
/// # Errors
/// Every distance that cannot be, and a direction without any.
pub fn wash_test(marks: &[WashMark]) -> Result<WashTest, Vec<WashError>> {
    let mut wrong = Vec::new();
    let mut warp = Vec::new();
    let mut weft = Vec::new();
    for (k, mark) in marks.iter().enumerate() {
        match shrunk(k + 1, mark) {
            Ok(share) => match mark.along {
                Along::Warp => warp.push(share),
                Along::Weft => weft.push(share),
            },
            Err(why) => wrong.push(why),
        }
    }
    let measured = |direction| marks.iter().any(|m| m.along == direction);
    for direction in [Along::Warp, Along::Weft] {
        if !measured(direction) {
            wrong.push(WashError::Missing(direction));
        }
    }
    let mean = |along| mean_shrinkage(marks, along);
    let along = summed(&warp, mean(Along::Warp));
    let across = summed(&weft, mean(Along::Weft));
    let (Some(along), Some(across), true) = (along, across, wrong.is_empty()) else {
        return Err(wrong);
    };
    Ok(WashTest {
        doubts: doubts(marks, &[(Along::Warp, along), (Along::Weft, across)]),
        warp: along,
        weft: across,
    })
}

fn shrunk(number: usize, mark: &WashMark) -> Result<Share, WashError> {
    let along = mark.along;
    for (after, found) in [(false, mark.before), (true, mark.after)] {
        if !(found.is_finite() && found > Length::ZERO) {
            return Err(WashError::NoDistance {
                number,
                along,
                after,
                found,
            });
        }
    }
    let change = dimensional_change(mark.before, mark.after).unwrap_or(Share::ZERO);
    believable(along, -change).map_err(|why| WashError::NotBelieved { number, why })?;
    Ok(-change)
}

fn summed(shares: &[Share], stated: Option<Share>) -> Option<Shrunk> {
    let (mean, &first) = stated.zip(shares.first())?;
    let n = shares.len() as f64;
    let middle = shares.iter().sum::<Share>() / n;
    let spread: f64 = shares
        .iter()
        .map(|s| (*s - middle).to_ratio().powi(2))
        .sum();
    let deviation = if shares.len() > 1 {
        Share::ratio((spread / (n - 1.0)).sqrt())
    } else {
        Share::ZERO
    };
    Some(Shrunk {
        mean,
        least: shares.iter().copied().fold(first, Share::min),
        most: shares.iter().copied().fold(first, Share::max),
        deviation,
        count: shares.len(),
    })
}

fn doubts(marks: &[WashMark], directions: &[(Along, Shrunk); 2]) -> Vec<Said> {
    let mut out: Vec<Said> = Vec::new();
    for (direction, found) in directions {
        let along = threads(*direction);
        if found.count < FEWEST_MARKS {
            let few = say::CuttingTestFew {
                along,
                count: found.count,
                least: FEWEST_MARKS.to_string(),
            };
            out.push(few.into());
        }
        if found.most - found.least > MOST_SPREAD {
            let spread = say::CuttingTestSpread {
                along,
                least: found.least.figure(),
                most: found.most.figure(),
            };
            out.push(spread.into());
        }
    }
    if marks.iter().any(|m| m.before < MARKS_APART) {
        let apart = MARKS_APART.to_string();
        out.push(say::CuttingTestClose { apart }.into());
    }
    out
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use Along::{Warp, Weft};

    fn mark(along: Along, before: f64, after: f64) -> WashMark {
        WashMark {
            along,
            before: Length::mm(before),
            after: Length::mm(after),
        }
    }

    /// Worked by hand from the formula of ISO 5077: 500 to 455 mm is 9 %, 50.0 to 48.5 cm 3 %.
    #[test]
    fn a_test_of_six_distances() {
        let test = wash_test(&[
            mark(Warp, 500.0, 455.0),
            mark(Warp, 500.0, 457.5),
            mark(Warp, 500.0, 452.5),
            mark(Weft, 500.0, 485.0),
            mark(Weft, 500.0, 485.0),
            mark(Weft, 500.0, 486.0),
        ])
        .unwrap();
        let near = |s: Share, percent: f64| assert!((s.to_percent() - percent).abs() < 1e-9, "{s}");
        near(test.warp.mean, 9.0);
        near(test.warp.least, 8.5);
        near(test.warp.most, 9.5);
        // Standard deviation of 8.5, 9.0, 9.5 is 0.5.
        near(test.warp.deviation, 0.5);
        // 3.0, 3.0 and 2.8 %: 2.933 is stated as 2.9.
        near(test.weft.mean, 2.9);
        assert!(test.doubts.is_empty(), "{:?}", test.doubts);
    }

    #[test]
    fn what_cannot_be_is_refused_distance_by_distance() {
        let wrong = wash_test(&[
            mark(Warp, 500.0, -1.0),
            mark(Warp, 0.0, 455.0),
            mark(Warp, 500.0, 300.0),
            mark(Weft, 500.0, 560.0),
            mark(Weft, 500.0, f64::NAN),
        ])
        .unwrap_err();
        assert_eq!(wrong.len(), 5);
        assert!(matches!(wrong[0], WashError::NoDistance { number: 1, .. }));
        assert!(matches!(wrong[2], WashError::NotBelieved { number: 3, .. }));
        assert!(matches!(wrong[3], WashError::NotBelieved { number: 4, .. }));
        assert_eq!(
            wash_test(&[mark(Warp, 500.0, 480.0)]).unwrap_err(),
            [WashError::Missing(Weft)]
        );
    }

    #[test]
    fn doubts_are_said() {
        let test = wash_test(&[
            mark(Warp, 200.0, 184.0),
            mark(Warp, 500.0, 470.0),
            mark(Weft, 500.0, 480.0),
        ])
        .unwrap();
        assert_eq!(test.doubts.len(), 4, "{:?}", test.doubts);
    }
}
