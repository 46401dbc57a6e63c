//! Which edges are sewn to which, and the seam walk that checks them.

use style::{PartId, SeamId};
use trade::Length;

use crate::pattern::Pattern;
use crate::piece::PieceId;

/// A run of edges, in order.
pub type EdgeRun = &'static [(PieceId, &'static str)];

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
            a: (&[(Back, "top")], 1),
            b: (&[(Yoke, "lower")], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::Seat,
            name: PartId::JoinSeat,
            a: (&[(Yoke, "centre"), (Back, "seat")], 1),
            b: (&[(Yoke, "centre"), (Back, "seat")], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::FrontRise,
            name: PartId::JoinFrontRise,
            a: (&[(Front, "crotch")], 1),
            b: (&[(Front, "crotch")], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::Inseam,
            name: PartId::JoinInseam,
            a: (&[(Front, "inseam")], 1),
            b: (&[(Back, "inseam")], 1),
            ease: EaseOf::InseamStretch,
        },
        Join {
            seam: SeamId::Outseam,
            name: PartId::JoinOutseam,
            a: (&[(Front, "side"), (PocketFacing, "side")], 1),
            b: (&[(Back, "side"), (Yoke, "side")], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::Band,
            name: PartId::JoinBand,
            a: (
                &[(PocketFacing, "waist"), (Front, "waist"), (Yoke, "top")],
                2,
            ),
            b: (&[(Band, "join")], 1),
            ease: EaseOf::Band,
        },
        Join {
            seam: SeamId::Mouth,
            name: PartId::JoinMouth,
            a: (&[(Front, "mouth")], 1),
            b: (&[(PocketBag, "mouth")], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::Fly,
            name: PartId::JoinFlyEdge,
            a: (&[(Front, "fly")], 1),
            b: (&[(FlyFacing, "edge")], 1),
            ease: EaseOf::None,
        },
        Join {
            seam: SeamId::BagClose,
            name: PartId::JoinBagFoot,
            a: (&[(PocketBag, "foot_upper")], 1),
            b: (&[(PocketBag, "foot_under")], 1),
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
            let side = |(run, times): (EdgeRun, u32)| {
                run.iter()
                    .map(|(piece, edge)| Some(pattern.piece(*piece)?.edge(edge)?.length()))
                    .sum::<Option<Length>>()
                    .map(|l| l * f64::from(times))
            };
            Some(Walked {
                join,
                a: side(join.a)?,
                b: side(join.b)?,
                ease: match join.ease {
                    EaseOf::None => Length::ZERO,
                    EaseOf::InseamStretch => pattern.spec.inseam_stretch,
                    EaseOf::Band => pattern.spec.band_ease,
                },
            })
        })
        .collect()
}
