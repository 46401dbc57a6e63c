//! Seams: how two edges are joined, and the rows of stitches that join them.

use std::fmt;

use serde::{Serialize, Serializer};
use trade::{Length, StitchDensity, StitchType};
use words::{Key, key};

use crate::SeamId;
use crate::band_and_hem::RowEnding;
use crate::choices::choices;

/// How the plies of a seam, hem or edge lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Construction {
    /// Joined right sides together, allowances pressed apart.
    PressedOpen,
    /// Both edges turned into each other and sewn through flat, no raw edge on either face.
    LapFelled,
    /// Joined, neatened, turned to one side and sewn down, so that it looks felled from outside.
    MockFelled,
    /// Joined by a chain row with an overedge beside it, in one pass.
    SafetyStitched,
    /// Joined and neatened by an overedge.
    Overlocked,
    /// Sewn with the wrong sides together, turned, and sewn again so that the edges lie enclosed.
    FrenchSeam,
    /// A strip wrapped round the raw edges and sewn through.
    BoundEdge,
    /// A single edge turned in once and sewn along its fold.
    CleanFinished,
    /// A folded band set over the raw edge of the body.
    BandOverEdge,
    /// A band joined to the body inside out, turned up, its other edge turned in and sewn down from outside.
    BandTurned,
    /// An edge turned twice by the same depth in a folder and sewn down.
    RolledHem,
    /// An edge turned under a little and then up by the depth, folded and pressed by hand, and sewn down.
    FoldedHem,
    /// A pocket's top edge turned twice and sewn down.
    TurnedHem,
    /// An edge faced, turned to the inside and sewn along.
    TurnedEdge,
    /// A piece with its edges turned in, set on top of another and sewn round.
    PatchSet,
    /// A piece laid on another with its edges as they are, and sewn near its edge.
    LaidOn,
    /// A strip folded with its edges inside and sewn along.
    Strip,
    /// Stitches through one piece that join nothing.
    Surface,
}
choices!(Construction:
    PressedOpen = "pressed-open",
    LapFelled = "lap-felled",
    MockFelled = "mock-felled",
    SafetyStitched = "safety-stitched",
    Overlocked = "overlocked",
    FrenchSeam = "french-seam",
    BoundEdge = "bound-edge",
    CleanFinished = "clean-finished",
    BandOverEdge = "band-over-edge",
    BandTurned = "band-turned",
    RolledHem = "rolled-hem",
    FoldedHem = "folded-hem",
    TurnedHem = "turned-hem",
    TurnedEdge = "turned-edge",
    PatchSet = "patch-set",
    LaidOn = "laid-on",
    Strip = "strip",
    Surface = "surface",
);

impl Construction {
    /// What it is called.
    #[must_use]
    pub const fn key(self) -> Key {
        match self {
            Self::PressedOpen => key::SEWN_PRESSED_OPEN,
            Self::LapFelled => key::SEWN_LAP_FELLED,
            Self::MockFelled => key::SEWN_MOCK_FELLED,
            Self::SafetyStitched => key::SEWN_SAFETY_STITCHED,
            Self::Overlocked => key::SEWN_OVERLOCKED,
            Self::FrenchSeam => key::SEWN_FRENCH_SEAM,
            Self::BoundEdge => key::SEWN_BOUND_EDGE,
            Self::CleanFinished => key::SEWN_CLEAN_FINISHED,
            Self::BandOverEdge => key::SEWN_BAND_OVER_EDGE,
            Self::BandTurned => key::SEWN_BAND_TURNED,
            Self::RolledHem => key::SEWN_ROLLED_HEM,
            Self::FoldedHem => key::SEWN_FOLDED_HEM,
            Self::TurnedHem => key::SEWN_TURNED_HEM,
            Self::TurnedEdge => key::SEWN_TURNED_EDGE,
            Self::PatchSet => key::SEWN_PATCH_SET,
            Self::LaidOn => key::SEWN_LAID_ON,
            Self::Strip => key::SEWN_STRIP,
            Self::Surface => key::SEWN_SURFACE,
        }
    }

    /// Whether one ply visibly lies over the other, so that a lap has to be stated.
    #[must_use]
    pub const fn is_lapped(self) -> bool {
        matches!(self, Self::LapFelled | Self::MockFelled)
    }

    /// What it does with the cloth, in words that can say why it does not suit a seam.
    #[must_use]
    pub const fn does(self) -> &'static str {
        match self {
            Self::PressedOpen | Self::LapFelled | Self::MockFelled => "it joins two edges flat",
            Self::SafetyStitched | Self::Overlocked => {
                "it neatens edges beside each other, without a fold"
            }
            Self::FrenchSeam => {
                "it encloses both edges in a second sewing, four plies thick, for light cloth"
            }
            Self::BoundEdge => "it covers a raw edge with a strip, which stands up as a ridge",
            Self::CleanFinished => "it finishes a single edge and joins nothing",
            Self::BandOverEdge | Self::BandTurned => "it sets a waistband",
            Self::RolledHem | Self::FoldedHem | Self::TurnedHem => {
                "it turns up a single edge and joins nothing"
            }
            Self::TurnedEdge => "it faces an edge and turns the facing to the inside",
            Self::PatchSet => "it sets a piece with its edges turned in on top of another",
            Self::LaidOn => {
                "it leaves edges as they are cut, for leather, woven labels and what is overedged or covered by its stitches"
            }
            Self::Strip => "it makes a strip",
            Self::Surface => "it joins nothing",
        }
    }
}

/// One of the two plies of a seam, by the panel it belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Ply {
    /// The front panel.
    Front,
    /// The back panel.
    Back,
    /// The wearer's left.
    Left,
    /// The wearer's right.
    Right,
    /// The yoke.
    Yoke,
}
choices!(Ply: Front = "front", Back = "back", Left = "left", Right = "right", Yoke = "yoke");

impl Ply {
    /// What it is called.
    #[must_use]
    pub const fn key(self) -> Key {
        match self {
            Self::Front => key::PLY_FRONT,
            Self::Back => key::PLY_BACK,
            Self::Left => key::PLY_LEFT,
            Self::Right => key::PLY_RIGHT,
            Self::Yoke => key::PLY_YOKE,
        }
    }
}

/// Which ply lies on top, seen from outside; written "front over back".
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lap {
    /// The ply seen from outside.
    pub over: Ply,
    /// The ply below it.
    pub under: Ply,
}

impl fmt::Display for Lap {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} over {}", self.over, self.under)
    }
}

impl Serialize for Lap {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_str(self)
    }
}

/// One `[seams.NAME]` as the file says it, before `like` is followed.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SeamSpec {
    /// How the plies lie; `None` when taken from `like`.
    pub construction: Option<Construction>,
    /// Which ply is on top; `None` when taken from `like` or from the seam's usual lap.
    pub lap: Option<Lap>,
    /// The seam everything not said here is taken from.
    pub like: Option<SeamId>,
    /// The stitch rows, outermost first; `None` when taken from `like`.
    pub rows: Option<Vec<RowSpec>>,
}

/// One row of stitches.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct RowSpec {
    /// The stitch type of ISO 4915.
    pub stitch: StitchType,
    /// Stitches to a length.
    pub density: StitchDensity,
    /// The needle yarn, a name from `yarns.toml`.
    pub yarn: String,
    /// The bobbin or looper yarn, a name from `yarns.toml`; the needle yarn when the file leaves it out.
    pub under: String,
    /// Distance from the seam line, into the ply the row is sewn through. Default 0.
    pub offset: Length,
    /// How the row begins; `None` for what is usual on its seam.
    pub begin: Option<RowEnding>,
    /// How the row ends; `None` for what is usual on its seam.
    pub end: Option<RowEnding>,
}

/// A seam with its `like` followed: what is really sewn.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Seam {
    /// Which seam.
    #[serde(rename = "name")]
    pub id: SeamId,
    /// How the plies lie.
    pub construction: Construction,
    /// Which ply is on top; `Some` exactly when the construction is lapped and the seam joins two plies.
    pub lap: Option<Lap>,
    /// The stitch rows, outermost first.
    pub rows: Vec<RowSpec>,
}
