//! Every seam walked once more on the pieces before the wash.
//!
//! Two edges that are equal when finished differ a little before the wash where they lie at different
//! angles to the warp. What is left is small: it is stated as ease, so that the sewer knows which side
//! is the fuller; what is too much to ease is an error.

use draft::{EaseOf, JOINS, Join, Pattern};
use trade::{Length, Share};

use sewing::wash::{EVEN, MOST_EASE};

/// The most an ordinary seam is eased besides what the style declares (common practice: on rigid denim
/// no more than 1 % of its length, or 2 mm on a short one).
pub const SEAM_EASE: (Share, Length) = (Share::percent(1.0), Length::mm(2.0));

/// What is done about a difference.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Settled {
    /// Nothing: both sides are as long as each other, or as the declared ease says.
    Even,
    /// The longer side is eased on evenly; `true` where that is side `a` of the join.
    Eased {
        /// Whether side `a` is the longer.
        a_is_fuller: bool,
    },
    /// It cannot be sewn like this.
    No,
}

/// Which leg a seam was walked on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leg {
    /// The wearer's left.
    Left,
    /// The wearer's right.
    Right,
    /// Left and right meet in it, or it goes all the way round.
    Both,
}

/// One seam walked before the wash.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamBeforeWash {
    /// The seam.
    pub join: &'static Join,
    /// On which leg; both legs are alike unless pieces are cut against a skew.
    pub leg: Leg,
    /// Side `a` before the wash.
    pub a: Length,
    /// Side `b` before the wash.
    pub b: Length,
    /// Ease the style declares: by how much `a` is to be longer, as finished.
    pub ease: Length,
    /// What is done about the rest.
    pub settled: Settled,
}

impl SeamBeforeWash {
    /// What is left after the declared ease: positive where `a` is too long.
    pub fn gap(&self) -> Length {
        self.a - self.b - self.ease
    }

    /// The gap as a share of side `b`.
    pub fn share(&self) -> Share {
        if self.b > Length::ZERO {
            Share::ratio(self.gap() / self.b)
        } else {
            Share::ZERO
        }
    }
}

/// The pieces of one leg before the wash: every piece in the version cut for that side of the wearer.
pub(crate) struct Legs {
    pub left: Pattern,
    pub right: Pattern,
}

/// Walks every seam whose pieces are there, in the order of [`JOINS`].
pub(crate) fn walk(legs: &Legs) -> Vec<SeamBeforeWash> {
    JOINS
        .iter()
        .flat_map(|join| {
            let both = join.a.0 == join.b.0 || join.a.1 > 1 || join.b.1 > 1;
            if both {
                vec![walked(join, Leg::Both, legs)]
            } else {
                vec![
                    walked(join, Leg::Left, legs),
                    walked(join, Leg::Right, legs),
                ]
            }
        })
        .flatten()
        .collect()
}

fn walked(join: &'static Join, leg: Leg, legs: &Legs) -> Option<SeamBeforeWash> {
    let of = |pattern: &Pattern, edges| pattern.run(edges);
    let (a, b) = match leg {
        Leg::Left => (of(&legs.left, join.a.0)?, of(&legs.left, join.b.0)?),
        Leg::Right => (of(&legs.right, join.a.0)?, of(&legs.right, join.b.0)?),
        // The left side meets the right.
        Leg::Both if join.a.0 == join.b.0 => {
            (of(&legs.left, join.a.0)?, of(&legs.right, join.b.0)?)
        }
        Leg::Both => {
            let sum = |(edges, times): (draft::EdgeRun, u32)| {
                let left = legs.left.run(edges)?;
                if times > 1 {
                    Some(left + legs.right.run(edges)?)
                } else {
                    Some(left)
                }
            };
            (sum(join.a)?, sum(join.b)?)
        }
    };
    let spec = &legs.left.spec;
    let seam = SeamBeforeWash {
        join,
        leg,
        a,
        b,
        ease: match join.ease {
            EaseOf::None => Length::ZERO,
            EaseOf::InseamStretch => spec.inseam_stretch,
            EaseOf::Band => spec.band_ease,
        },
        settled: Settled::Even,
    };
    Some(SeamBeforeWash {
        settled: settle(&seam),
        ..seam
    })
}

fn settle(seam: &SeamBeforeWash) -> Settled {
    let gap = seam.gap().abs();
    let most = if seam.join.ease == EaseOf::Band {
        // Two points of shrinkage come to a little more than 2 % of the length before the wash.
        seam.b * (MOST_EASE * 1.1)
    } else {
        (seam.b * SEAM_EASE.0).max(SEAM_EASE.1)
    };
    if !gap.is_finite() || gap > most {
        Settled::No
    } else if gap <= EVEN {
        Settled::Even
    } else {
        Settled::Eased {
            a_is_fuller: seam.gap() > Length::ZERO,
        }
    }
}
