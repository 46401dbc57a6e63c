//! Which edges are sewn to which, and the seam walk that checks them.

use style::{PartId, SeamId};
use trade::Length;

use crate::pattern::Pattern;
use crate::piece::{EdgeId, PieceId};

/// A run of edges, in order.
pub type EdgeRun = &'static [(PieceId, EdgeId)];

/// Two runs of edges that are sewn together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Join {
    /// Which seam.
    pub seam: SeamId,
    /// Name on paper.
    pub name: PartId,
    /// One side, as often as stated (2: left and right together).
    pub a: (EdgeRun, u32),
    /// The other side; the same run again where left meets right.
    pub b: (EdgeRun, u32),
    /// How the declared ease is found.
    pub ease: EaseOf,
}

impl Join {
    /// How long its two sides are, each as often as it is sewn; none where a piece is not there.
    pub fn sides(&self, pattern: &Pattern) -> Option<(Length, Length)> {
        let side = |(run, times): (EdgeRun, u32)| Some(pattern.run(run)? * f64::from(times));
        Some((side(self.a)?, side(self.b)?))
    }
}

/// Which declared ease a seam has: how much longer side `a` is than side `b`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum EaseOf {
    /// None.
    None,
    /// The back inseam is stretched on.
    InseamStretch,
    /// The body is eased onto the band.
    Band,
}

/// All joins of a five-pocket jean.
pub const JOINS: &[Join] = {
    use PieceId::{Back, Band, FlyFacing, Front, PocketBag, PocketFacing, Yoke};
    &[
        Join {
            seam: SeamId::Yoke,
            name: PartId::JoinYoke,
            a: (&[(Back, EdgeId::Top)], 1),
            b: (&[(Yoke, EdgeId::Lower)], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::Seat,
            name: PartId::JoinSeat,
            a: (&[(Yoke, EdgeId::Centre), (Back, EdgeId::Seat)], 1),
            b: (&[(Yoke, EdgeId::Centre), (Back, EdgeId::Seat)], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::FrontRise,
            name: PartId::JoinFrontRise,
            a: (&[(Front, EdgeId::Crotch)], 1),
            b: (&[(Front, EdgeId::Crotch)], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::Inseam,
            name: PartId::JoinInseam,
            a: (&[(Front, EdgeId::Inseam)], 1),
            b: (&[(Back, EdgeId::Inseam)], 1),
            ease: EaseOf::InseamStretch,
        },
        Join {
            seam: SeamId::Outseam,
            name: PartId::JoinOutseam,
            a: (&[(Front, EdgeId::Side), (PocketFacing, EdgeId::Side)], 1),
            b: (&[(Back, EdgeId::Side), (Yoke, EdgeId::Side)], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::Band,
            name: PartId::JoinBand,
            a: (
                &[
                    (PocketFacing, EdgeId::Waist),
                    (Front, EdgeId::Waist),
                    (Yoke, EdgeId::Top),
                ],
                2,
            ),
            b: (&[(Band, EdgeId::Join)], 1),
            ease: EaseOf::Band,
        },
        Join {
            seam: SeamId::Mouth,
            name: PartId::JoinMouth,
            a: (&[(Front, EdgeId::Mouth)], 1),
            b: (&[(PocketBag, EdgeId::Mouth)], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::Fly,
            name: PartId::JoinFlyEdge,
            a: (&[(Front, EdgeId::Fly)], 1),
            b: (&[(FlyFacing, EdgeId::Edge)], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::BagClose,
            name: PartId::JoinBagFoot,
            a: (&[(PocketBag, EdgeId::FootUpper)], 1),
            b: (&[(PocketBag, EdgeId::FootUnder)], 1),
            ease: EaseOf::None,
        },
    ]
};

/// One walked seam.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Walked {
    /// The seam.
    pub join: &'static Join,
    /// Length of side `a`.
    pub a: Length,
    /// Length of side `b`.
    pub b: Length,
    /// Declared ease: by how much `a` should be longer.
    pub ease: Length,
}

impl Walked {
    /// What is left after the declared ease; zero for a perfect seam.
    pub fn gap(&self) -> Length {
        self.a - self.b - self.ease
    }
}

/// Walks every seam whose pieces are there.
pub fn walk(pattern: &Pattern) -> Vec<Walked> {
    JOINS
        .iter()
        .filter_map(|join| {
            let (a, b) = join.sides(pattern)?;
            Some(Walked {
                join,
                a,
                b,
                ease: match join.ease {
                    EaseOf::None => Length::ZERO,
                    EaseOf::InseamStretch => pattern.spec.inseam_stretch,
                    EaseOf::Band => pattern.spec.band_ease,
                },
            })
        })
        .collect()
}
