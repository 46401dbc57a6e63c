//! Which points, lines and notches a kind of piece has. Its edges are [`PieceId::edges`].

use crate::ids::{LineId, NotchId, PointId};
use crate::piece::PieceId;
use style::EdgeId;

/// What is drawn on a kind of piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Parts {
    /// Its points. Of [`PointId::LOOPS`] a band has as many as the style has loops.
    pub points: &'static [PointId],
    /// Its inner lines. A bag has [`LineId::ExtraPocket`] where the style has that pocket.
    pub lines: &'static [LineId],
    /// Its notches, each with the edge that carries it.
    pub notches: &'static [(EdgeId, NotchId)],
}

/// What is drawn on a piece, in order.
pub const fn parts(piece: PieceId) -> Parts {
    use PieceId as I;
    use PointId as P;
    match piece {
        I::Front => Parts {
            points: &[
                P::WaistCentre,
                P::FlyFoot,
                P::Crotch,
                P::KneeIn,
                P::HemIn,
                P::HemMiddle,
                P::HemTop,
                P::HemOut,
                P::KneeOut,
                P::Hip,
                P::MouthSide,
                P::MouthWaist,
                P::SideWaist,
            ],
            lines: &[LineId::FlyStitch],
            notches: &[
                (EdgeId::Inseam, NotchId::InseamKnee),
                (EdgeId::Side, NotchId::OutseamKnee),
                (EdgeId::Side, NotchId::Hip),
                (EdgeId::Crotch, NotchId::FlyFoot),
            ],
        },
        I::Back => Parts {
            points: &[
                P::YokeCentre,
                P::Crotch,
                P::HemIn,
                P::HemMiddle,
                P::HemOut,
                P::KneeIn,
                P::KneeOut,
                P::Hip,
                P::YokeSide,
                P::PocketInner,
                P::PocketOuter,
                P::PocketInnerOnYoke,
                P::PocketInnerOnSeat,
            ],
            lines: &[LineId::PocketLeft, LineId::PocketRight],
            notches: &[
                (EdgeId::Inseam, NotchId::InseamKnee),
                (EdgeId::Side, NotchId::OutseamKnee),
                (EdgeId::Side, NotchId::Hip),
                (EdgeId::Top, NotchId::YokeMiddle),
            ],
        },
        I::Yoke => Parts {
            points: &[P::WaistCentre, P::SeamCentre, P::SeamSide, P::SideWaist],
            lines: &[],
            notches: &[(EdgeId::Lower, NotchId::YokeMiddle)],
        },
        I::Band => Parts {
            points: &[
                P::CentreFrontLeft,
                P::EndRight,
                P::SideLeft,
                P::CentreBack,
                P::SideRight,
                P::CentreFrontRight,
                P::Loop1,
                P::Loop2,
                P::Loop3,
                P::Loop4,
                P::Loop5,
                P::Loop6,
                P::Loop7,
                P::Loop8,
                P::Loop9,
            ],
            lines: &[LineId::Fold],
            notches: &[
                (EdgeId::Join, NotchId::SideLeft),
                (EdgeId::Join, NotchId::CentreBack),
                (EdgeId::Join, NotchId::SideRight),
                (EdgeId::Join, NotchId::CentreFrontRight),
            ],
        },
        I::FlyFacing => points_only(&[P::Top, P::Foot, P::Shoulder]),
        I::FlyShield => Parts {
            points: &[P::FoldTop, P::FoldFoot],
            lines: &[LineId::Fold],
            notches: &[],
        },
        I::PocketFacing => Parts {
            points: &[P::MouthSide, P::MouthWaist, P::SideWaist],
            lines: &[LineId::CoinPocket],
            notches: &[
                (EdgeId::SideUnder, NotchId::MouthAtOutseam),
                (EdgeId::Waist, NotchId::MouthAtWaist),
            ],
        },
        I::CoinPocket | I::ExtraPocket => points_only(&[P::TopMiddle, P::FootMiddle]),
        I::PocketBag => Parts {
            points: &[P::FoldTop, P::FoldFoot, P::MouthSide, P::SideWaist],
            lines: &[LineId::Fold, LineId::ExtraPocket],
            notches: &[(EdgeId::SideUnder, NotchId::MouthAtOutseam)],
        },
        I::BackPocketLeft | I::BackPocketRight => points_only(&[
            P::TopInner,
            P::TopMiddle,
            P::TopOuter,
            P::FootInner,
            P::Point,
            P::FootOuter,
        ]),
        I::BackLiningLeft | I::BackLiningRight => points_only(&[P::TopMiddle]),
        I::LoopStrip => Parts {
            points: &[P::FoldLeft, P::FoldRight, P::LoopFoot, P::LoopTop],
            lines: &[LineId::FoldLeft, LineId::FoldRight],
            notches: &[],
        },
    }
}

const fn points_only(points: &'static [PointId]) -> Parts {
    Parts {
        points,
        lines: &[],
        notches: &[],
    }
}
