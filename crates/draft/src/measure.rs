//! The measures: one definition each, used by the solver, the chart, the inspection of samples and
//! the diagrams that show how to take them.

use geometry::{Path, Point};
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

/// The height at which a girth is taken, in the frame of front and back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Level {
    /// The chart's seat level, above the crotch.
    Seat,
    /// The chart's thigh level, below the crotch.
    Thigh,
    /// The chart's knee level, below the crotch.
    Knee,
}

impl Level {
    /// Height above the front crotch point.
    pub fn height(self, spec: &Spec) -> Length {
        match self {
            Level::Seat => spec.seat_at,
            Level::Thigh => -spec.thigh_at,
            Level::Knee => -spec.knee_at,
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

/// One measure.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Measure {
    /// Key in the style file.
    pub key: &'static str,
    /// Name on paper.
    pub name: &'static str,
    /// How to take it, for the workroom.
    pub how: &'static str,
    /// How it is taken on the pieces.
    pub take: Take,
    /// Where it is shown.
    pub shown: Shown,
}

/// All measures, in the order of the chart.
pub const MEASURES: &[Measure] = &[
    Measure {
        key: "waist",
        name: "Waist",
        how: "Band buttoned, front and back top edges level: straight across the top edge, times two.",
        take: Take::Along(&[(Run::BandJoin, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "seat",
        name: "Seat",
        how: "At the stated height above the crotch: straight across from fold to fold, times two.",
        take: Take::Across {
            level: Level::Seat,
            times: 2.0,
        },
        shown: Shown::Front,
    },
    Measure {
        key: "front_rise",
        name: "Front rise",
        how: "From the crotch cross along the front seam to the top of the band.",
        take: Take::Along(&[(Run::FrontCentre, 1.0), (Run::BandEnd, 0.5)]),
        shown: Shown::Front,
    },
    Measure {
        key: "back_rise",
        name: "Back rise",
        how: "From the crotch cross along the seat seam to the top of the band.",
        take: Take::Along(&[
            (Run::BackSeat, 1.0),
            (Run::YokeCentre, 1.0),
            (Run::BandEnd, 0.5),
        ]),
        shown: Shown::Back,
    },
    Measure {
        key: "thigh",
        name: "Thigh",
        how: "At the stated distance below the crotch: straight across the leg from fold to fold, times two.",
        take: Take::Across {
            level: Level::Thigh,
            times: 1.0,
        },
        shown: Shown::Front,
    },
    Measure {
        key: "knee",
        name: "Knee",
        how: "At the stated distance below the crotch: straight across the leg from fold to fold, times two.",
        take: Take::Across {
            level: Level::Knee,
            times: 1.0,
        },
        shown: Shown::Front,
    },
    Measure {
        key: "hem",
        name: "Hem",
        how: "Along the finished lower edge from fold to fold, times two.",
        take: Take::Along(&[(Run::FrontHem, 1.0), (Run::BackHem, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "inseam",
        name: "Inseam",
        how: "From the crotch cross along the inseam to the finished lower edge.",
        take: Take::Along(&[(Run::FrontInseam, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "outseam",
        name: "Outseam",
        how: "From the top of the band along the outseam to the finished lower edge.",
        take: Take::Along(&[(Run::FrontSide, 1.0), (Run::BandEnd, 0.5)]),
        shown: Shown::Front,
    },
    Measure {
        key: "band_height",
        name: "Band height",
        how: "Top edge to band seam.",
        take: Take::Along(&[(Run::BandEnd, 0.5)]),
        shown: Shown::Front,
    },
    Measure {
        key: "band_overlap",
        name: "Band overlap",
        how: "From the left band end to the right one underneath, band buttoned.",
        take: Take::Along(&[(Run::BandOverlap, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "fly_length",
        name: "Fly length",
        how: "From the band seam along the centre front to the foot of the opening.",
        take: Take::Along(&[(Run::FlyEdge, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "fly_width",
        name: "Fly width",
        how: "From the fly edge to the far edge of the facing, at the band seam.",
        take: Take::Along(&[(Run::FlyTop, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "yoke_centre",
        name: "Yoke height, centre back",
        how: "Band seam to yoke seam along the seat seam.",
        take: Take::Along(&[(Run::YokeCentre, 1.0)]),
        shown: Shown::Back,
    },
    Measure {
        key: "yoke_side",
        name: "Yoke height, side",
        how: "Band seam to yoke seam along the outseam.",
        take: Take::Along(&[(Run::YokeSide, 1.0)]),
        shown: Shown::Back,
    },
    Measure {
        key: "mouth_width",
        name: "Pocket mouth, width",
        how: "Along the band seam from the outseam to the mouth edge.",
        take: Take::Along(&[(Run::MouthOnWaist, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "mouth_depth",
        name: "Pocket mouth, depth",
        how: "Along the outseam from the band seam to the mouth edge.",
        take: Take::Along(&[(Run::MouthOnSide, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "coin_width",
        name: "Coin pocket, width",
        how: "Across its top edge.",
        take: Take::Along(&[(Run::CoinTop, 1.0)]),
        shown: Shown::Front,
    },
    Measure {
        key: "coin_depth",
        name: "Coin pocket, depth",
        how: "Top edge to foot at its centre.",
        take: Take::Between {
            piece: PieceId::CoinPocket,
            from: PointId::TopMiddle,
            to: PointId::FootMiddle,
        },
        shown: Shown::Front,
    },
    Measure {
        key: "back_pocket_width",
        name: "Back pocket, width",
        how: "Across the top edge.",
        take: Take::Along(&[(Run::BackPocketTop, 1.0)]),
        shown: Shown::Back,
    },
    Measure {
        key: "back_pocket_length",
        name: "Back pocket, length",
        how: "Middle of the top edge to the point.",
        take: Take::Between {
            piece: PieceId::BackPocketLeft,
            from: PointId::TopMiddle,
            to: PointId::Point,
        },
        shown: Shown::Back,
    },
    Measure {
        key: "back_pocket_from_yoke",
        name: "Back pocket below yoke",
        how: "Square from the yoke seam to the inner top corner.",
        take: Take::Between {
            piece: PieceId::Back,
            from: PointId::PocketInner,
            to: PointId::PocketInnerOnYoke,
        },
        shown: Shown::Back,
    },
    Measure {
        key: "back_pocket_from_centre",
        name: "Back pocket from centre back",
        how: "Along the top edge line from the seat seam to the inner top corner.",
        take: Take::Between {
            piece: PieceId::Back,
            from: PointId::PocketInner,
            to: PointId::PocketInnerOnSeat,
        },
        shown: Shown::Back,
    },
    Measure {
        key: "loop_length",
        name: "Belt loop, length",
        how: "Bartack to bartack, sewn on.",
        take: Take::Between {
            piece: PieceId::LoopStrip,
            from: PointId::LoopTop,
            to: PointId::LoopFoot,
        },
        shown: Shown::Back,
    },
    Measure {
        key: "loop_width",
        name: "Belt loop, width",
        how: "Across the finished loop.",
        take: Take::Between {
            piece: PieceId::LoopStrip,
            from: PointId::FoldLeft,
            to: PointId::FoldRight,
        },
        shown: Shown::Back,
    },
    Measure {
        key: "hem_depth",
        name: "Hem depth",
        how: "Finished lower edge to the top of the hem fold.",
        take: Take::Between {
            piece: PieceId::Front,
            from: PointId::HemMiddle,
            to: PointId::HemTop,
        },
        shown: Shown::Front,
    },
];

/// The measure with this key.
pub fn measure(key: &str) -> Option<&'static Measure> {
    MEASURES.iter().find(|m| m.key == key)
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

impl Measure {
    /// Takes the measure. `None` when a piece it needs is not part of the style.
    pub fn of(&self, on: &impl Measurable, spec: &Spec) -> Option<Length> {
        match self.take {
            Take::Along(runs) => runs
                .iter()
                .map(|(run, times)| on.run_length(*run).map(|l| l * *times))
                .sum(),
            Take::Across { level, times } => {
                let y = level.height(spec).to_mm();
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
