//! How the measures are taken on the pieces: one definition each, used by the solver, the chart, the inspection of
//! samples and the diagrams that show how to take them. What else is known of a measure says [`MeasureId::known`].

use geometry::{Path, Point};
pub use style::{Level, MeasureId};
use trade::Length;

use crate::piece::{EdgeId, PieceId, PointId};
use crate::spec::Spec;

/// A line of the garment that a tape follows; on the pieces it is one or more named edges.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[allow(missing_docs)] // each names its own line
pub enum Run {
    FrontCentre,
    FrontInseam,
    FrontHem,
    FrontSide,
    FrontWaist,
    BackSeat,
    BackInseam,
    BackHem,
    BackSide,
    BackTop,
    YokeCentre,
    YokeLower,
    YokeSide,
    YokeTop,
    BandJoin,
    BandOverlap,
    BandEnd,
    FlyEdge,
    FlyTop,
    MouthOnWaist,
    MouthOnSide,
    CoinTop,
    BackPocketTop,
}

impl Run {
    /// The edges that make up the line, in the direction of travel.
    pub const fn edges(self) -> &'static [(PieceId, EdgeId)] {
        use PieceId::{
            Back, BackPocketLeft, Band, CoinPocket, FlyFacing, Front, PocketFacing, Yoke,
        };
        match self {
            Run::FrontCentre => &[(Front, EdgeId::Fly), (Front, EdgeId::Crotch)],
            Run::FrontInseam => &[(Front, EdgeId::Inseam)],
            Run::FrontHem => &[(Front, EdgeId::Hem)],
            Run::FrontSide => &[(Front, EdgeId::Side), (PocketFacing, EdgeId::Side)],
            Run::FrontWaist => &[(PocketFacing, EdgeId::Waist), (Front, EdgeId::Waist)],
            Run::BackSeat => &[(Back, EdgeId::Seat)],
            Run::BackInseam => &[(Back, EdgeId::Inseam)],
            Run::BackHem => &[(Back, EdgeId::Hem)],
            Run::BackSide => &[(Back, EdgeId::Side)],
            Run::BackTop => &[(Back, EdgeId::Top)],
            Run::YokeCentre => &[(Yoke, EdgeId::Centre)],
            Run::YokeLower => &[(Yoke, EdgeId::Lower)],
            Run::YokeSide => &[(Yoke, EdgeId::Side)],
            Run::YokeTop => &[(Yoke, EdgeId::Top)],
            Run::BandJoin => &[(Band, EdgeId::Join)],
            Run::BandOverlap => &[(Band, EdgeId::Overlap)],
            Run::BandEnd => &[(Band, EdgeId::EndLeft)],
            Run::FlyEdge => &[(FlyFacing, EdgeId::Edge)],
            Run::FlyTop => &[(FlyFacing, EdgeId::Top)],
            Run::MouthOnWaist => &[(PocketFacing, EdgeId::Waist)],
            Run::MouthOnSide => &[(PocketFacing, EdgeId::Side)],
            Run::CoinTop => &[(CoinPocket, EdgeId::Top)],
            Run::BackPocketTop => &[(BackPocketLeft, EdgeId::Top)],
        }
    }
}

/// How a measure is taken on the pieces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Take {
    /// The tape follows the runs; each counts as often as stated.
    Along(&'static [(Run, f64)]),
    /// Straight across front and back at a level, front and back together, `times`.
    Across {
        /// Where.
        level: Level,
        /// Twice for the body, once for one leg.
        times: f64,
    },
    /// Straight between two named points of one piece.
    Between {
        /// The piece.
        piece: PieceId,
        /// First point.
        from: PointId,
        /// Second point.
        to: PointId,
    },
}

/// Which drawing shows how the measure is taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shown {
    /// On the front of the garment.
    Front,
    /// On the back of the garment.
    Back,
}

/// What of the pattern a measure decides.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decides {
    /// The shape of the panels: the fit moves the block until the measure is met.
    Fitted,
    /// A place of the panels: the block puts its points there outright.
    Placed,
    /// What the panels allow for: the band above them, the yoke cut out of them.
    Panels,
    /// What is laid out on the panels and has to find room there.
    Room,
    /// A part by itself.
    Details,
}

impl Decides {
    /// Whether the panels are drawn by it.
    pub const fn shapes_panels(self) -> bool {
        match self {
            Decides::Fitted | Decides::Placed | Decides::Panels => true,
            Decides::Room | Decides::Details => false,
        }
    }
}

/// How one measure is taken, and what it is for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taking {
    /// How it is taken on the pieces.
    pub take: Take,
    /// Where it is shown.
    pub shown: Shown,
    /// What of the pattern it decides.
    pub decides: Decides,
}

/// How a measure is taken. A measure that does not say does not compile.
pub const fn taking(measure: MeasureId) -> Taking {
    match measure {
        MeasureId::Waist => Taking {
            take: Take::Along(&[(Run::BandJoin, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Fitted,
        },
        MeasureId::Seat => Taking {
            take: Take::Across {
                level: Level::Seat,
                times: 2.0,
            },
            shown: Shown::Front,
            decides: Decides::Placed,
        },
        MeasureId::FrontRise => Taking {
            take: Take::Along(&[(Run::FrontCentre, 1.0), (Run::BandEnd, 0.5)]),
            shown: Shown::Front,
            decides: Decides::Fitted,
        },
        MeasureId::BackRise => Taking {
            take: Take::Along(&[
                (Run::BackSeat, 1.0),
                (Run::YokeCentre, 1.0),
                (Run::BandEnd, 0.5),
            ]),
            shown: Shown::Back,
            decides: Decides::Fitted,
        },
        MeasureId::Thigh => Taking {
            take: Take::Across {
                level: Level::Thigh,
                times: 1.0,
            },
            shown: Shown::Front,
            decides: Decides::Fitted,
        },
        MeasureId::Knee => Taking {
            take: Take::Across {
                level: Level::Knee,
                times: 1.0,
            },
            shown: Shown::Front,
            decides: Decides::Placed,
        },
        MeasureId::Hem => Taking {
            take: Take::Along(&[(Run::FrontHem, 1.0), (Run::BackHem, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Fitted,
        },
        MeasureId::Inseam => Taking {
            take: Take::Along(&[(Run::FrontInseam, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Fitted,
        },
        MeasureId::Outseam => Taking {
            take: Take::Along(&[(Run::FrontSide, 1.0), (Run::BandEnd, 0.5)]),
            shown: Shown::Front,
            decides: Decides::Fitted,
        },
        MeasureId::BandHeight => Taking {
            take: Take::Along(&[(Run::BandEnd, 0.5)]),
            shown: Shown::Front,
            decides: Decides::Panels,
        },
        MeasureId::BandOverlap => Taking {
            take: Take::Along(&[(Run::BandOverlap, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Details,
        },
        MeasureId::FlyLength => Taking {
            take: Take::Along(&[(Run::FlyEdge, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Room,
        },
        MeasureId::FlyWidth => Taking {
            take: Take::Along(&[(Run::FlyTop, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Room,
        },
        MeasureId::YokeCentre => Taking {
            take: Take::Along(&[(Run::YokeCentre, 1.0)]),
            shown: Shown::Back,
            decides: Decides::Panels,
        },
        MeasureId::YokeSide => Taking {
            take: Take::Along(&[(Run::YokeSide, 1.0)]),
            shown: Shown::Back,
            decides: Decides::Panels,
        },
        MeasureId::MouthWidth => Taking {
            take: Take::Along(&[(Run::MouthOnWaist, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Room,
        },
        MeasureId::MouthDepth => Taking {
            take: Take::Along(&[(Run::MouthOnSide, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Room,
        },
        MeasureId::CoinWidth => Taking {
            take: Take::Along(&[(Run::CoinTop, 1.0)]),
            shown: Shown::Front,
            decides: Decides::Details,
        },
        MeasureId::CoinDepth => Taking {
            take: Take::Between {
                piece: PieceId::CoinPocket,
                from: PointId::TopMiddle,
                to: PointId::FootMiddle,
            },
            shown: Shown::Front,
            decides: Decides::Details,
        },
        MeasureId::BackPocketWidth => Taking {
            take: Take::Along(&[(Run::BackPocketTop, 1.0)]),
            shown: Shown::Back,
            decides: Decides::Details,
        },
        MeasureId::BackPocketLength => Taking {
            take: Take::Between {
                piece: PieceId::BackPocketLeft,
                from: PointId::TopMiddle,
                to: PointId::Point,
            },
            shown: Shown::Back,
            decides: Decides::Details,
        },
        MeasureId::BackPocketFromYoke => Taking {
            take: Take::Between {
                piece: PieceId::Back,
                from: PointId::PocketInner,
                to: PointId::PocketInnerOnYoke,
            },
            shown: Shown::Back,
            decides: Decides::Details,
        },
        MeasureId::BackPocketFromCentre => Taking {
            take: Take::Between {
                piece: PieceId::Back,
                from: PointId::PocketInner,
                to: PointId::PocketInnerOnSeat,
            },
            shown: Shown::Back,
            decides: Decides::Details,
        },
        MeasureId::LoopLength => Taking {
            take: Take::Between {
                piece: PieceId::LoopStrip,
                from: PointId::LoopTop,
                to: PointId::LoopFoot,
            },
            shown: Shown::Back,
            decides: Decides::Details,
        },
        MeasureId::LoopWidth => Taking {
            take: Take::Between {
                piece: PieceId::LoopStrip,
                from: PointId::FoldLeft,
                to: PointId::FoldRight,
            },
            shown: Shown::Back,
            decides: Decides::Details,
        },
        MeasureId::HemDepth => Taking {
            take: Take::Between {
                piece: PieceId::Front,
                from: PointId::HemMiddle,
                to: PointId::HemTop,
            },
            shown: Shown::Front,
            decides: Decides::Details,
        },
    }
}

/// What a measure can be taken on: the block while it is being solved, or the finished pieces.
pub trait Measurable {
    /// Length of a run; `None` when the piece is not there.
    fn run_length(&self, run: Run) -> Option<Length>;
    /// Width of the front or the back, straight across at height `y_mm`.
    fn width(&self, panel: Panel, y_mm: f64) -> Option<Length>;
    /// A named point.
    fn named_point(&self, piece: PieceId, id: PointId) -> Option<Point>;
}

/// The two panels of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Panel {
    /// Front with its pocket facing.
    Front,
    /// Back below the yoke.
    Back,
}

impl Take {
    /// Takes the measure. `None` when a piece it needs is not part of the style.
    pub fn of(self, on: &impl Measurable, spec: &Spec) -> Option<Length> {
        match self {
            Take::Along(runs) => runs
                .iter()
                .map(|(run, times)| on.run_length(*run).map(|l| l * *times))
                .sum(),
            Take::Across { level, times } => {
                let y = spec.height(level).to_mm();
                Some((on.width(Panel::Front, y)? + on.width(Panel::Back, y)?) * times)
            }
            Take::Between { piece, from, to } => {
                let (a, b) = (on.named_point(piece, from)?, on.named_point(piece, to)?);
                Some(Length::mm((b - a).hypot()))
            }
        }
    }
}

/// Distance between the outermost crossings of some paths with a level.
pub(crate) fn extent_at<'a>(paths: impl Iterator<Item = &'a Path>, y_mm: f64) -> Option<Length> {
    let (mut low, mut high) = (f64::INFINITY, f64::NEG_INFINITY);
    for path in paths {
        for p in path.crossings_at_y(y_mm) {
            low = low.min(p.x);
            high = high.max(p.x);
        }
    }
    (high >= low).then(|| Length::mm(high - low))
}
