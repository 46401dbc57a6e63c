//! How the band and the hem are made, and how rows of stitches begin and end.

use serde::Serialize;
use trade::{Angle, Length};

use crate::choices::choices;

/// The `[band]` section. Its height and overlap are in the chart.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Band {
    /// How its rows run. Default two-row.
    pub method: BandMethod,
    /// All round only: the row begins this far below the band seam, at the end of the fly. Default 10 mm.
    pub start_below: Length,
    /// All round only: the angle between the legs of the V the row finishes in. Default 64 degrees.
    pub v_angle: Angle,
}

impl Default for Band {
    fn default() -> Self {
        Self {
            method: BandMethod::TwoRow,
            start_below: Length::mm(10.0),
            v_angle: Angle::deg(64.0),
        }
    }
}

/// How the rows of the waistband run.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BandMethod {
    /// Every row runs from end to end, at its offset from the band seam.
    TwoRow,
    /// The first row runs from end to end along the band seam. Each further row starts below the band at the end of
    /// the fly, runs up the band's end, along its top and down the other end, and finishes in a V lying on its side
    /// whose point is the place of the button. Its offset is measured from the band's own edges: both ends and the top.
    AllRound,
}
choices!(BandMethod: TwoRow = "two-row", AllRound = "all-round");

/// The `[hem]` section. Its depth is in the chart.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Hem {
    /// Where round the leg the row begins and ends. Default inseam.
    pub join: HemJoin,
    /// How the thread ends are secured there. Default overlapped.
    pub ends: HemEnds,
    /// Whether the roll and the feed of the machine give the hem its diagonal ridges. Default no.
    pub roping: bool,
}

impl Default for Hem {
    fn default() -> Self {
        Self {
            join: HemJoin::Inseam,
            ends: HemEnds::Overlapped,
            roping: false,
        }
    }
}

/// Where round the leg the hem row begins and ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HemJoin {
    /// At the inseam.
    Inseam,
    /// At the outseam.
    Outseam,
    /// In the middle of the back of the leg.
    BackOfLeg,
}
choices!(HemJoin: Inseam = "inseam", Outseam = "outseam", BackOfLeg = "centre back of leg");

/// How the thread ends of a hem row are secured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum HemEnds {
    /// The row runs on over its own start.
    Overlapped,
    /// Sewn back and forth.
    Backtacked,
    /// Drawn to the inside and knotted.
    TiedByHand,
}
choices!(HemEnds: Overlapped = "overlapped", Backtacked = "backtacked", TiedByHand = "tied by hand");

/// What happens to the threads at the beginning or the end of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowEnding {
    /// Sewn back and forth over itself.
    Backtacked,
    /// Runs off the edge and is caught by the next seam.
    CaughtInSeam,
    /// Tucked into the fold while stitching.
    TuckedIn,
    /// Runs on over its own start.
    Overlapped,
    /// Drawn to the inside and knotted.
    TiedByHand,
    /// Sewn on beyond the edge as a chain of its own, whose tail is sewn in.
    ChainedOff,
    /// Cut off and left.
    Cut,
}
choices!(RowEnding:
    Backtacked = "backtacked",
    CaughtInSeam = "caught in seam",
    TuckedIn = "tucked in",
    Overlapped = "overlapped",
    TiedByHand = "tied by hand",
    ChainedOff = "chained off",
    Cut = "cut",
);
