//! Stitch types of ISO 4915 as used on jeans.
//!
//! The numbers and classes are those of ISO 4915:1991; the descriptions are in our own words.

use std::fmt;
use std::str::FromStr;

use words::{Key, key};

use crate::Confidence;

/// A stitch type, by its number in ISO 4915.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StitchType {
    /// 101, single-thread chainstitch.
    S101,
    /// 301, lockstitch.
    S301,
    /// 304, zigzag lockstitch.
    S304,
    /// 401, two-thread chainstitch.
    S401,
    /// 404, zigzag two-thread chainstitch.
    S404,
    /// 406, two-needle bottom coverstitch.
    S406,
    /// 503, two-thread overedge.
    S503,
    /// 504, three-thread overedge.
    S504,
    /// 505, three-thread overedge with a box edge.
    S505,
    /// 512, four-thread mock safety.
    S512,
    /// 514, four-thread overedge.
    S514,
    /// 515, four-thread safety: 401 beside 503.
    S515,
    /// 516, five-thread safety: 401 beside 504.
    S516,
    /// 602, two-needle top and bottom coverstitch.
    S602,
    /// 605, three-needle top and bottom coverstitch.
    S605,
    /// 607, four-needle flatseam.
    S607,
}

/// How many threads make one pass of a stitch.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Threads {
    /// Threads through needles, one to a needle.
    pub needle: u8,
    /// Bobbin and looper threads.
    pub under: u8,
    /// Threads laid across the top.
    pub cover: u8,
}

impl Threads {
    /// All threads together.
    pub const fn total(self) -> u8 {
        self.needle + self.under + self.cover
    }
}

/// How one face of a stitch reads in a drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum FaceLook {
    /// Separate straight stitches, one row to a needle.
    Dashes,
    /// Interlaced loops in a line, one row to a needle.
    Chain,
    /// Stitches stepping from side to side.
    Zigzag,
    /// Loops stepping from side to side.
    ZigzagChain,
    /// Threads wrapped over the cut edge.
    Overedge,
    /// Threads wrapped over the cut edge, with a second needle row inside them.
    OveredgeTwoRows,
    /// A row of separate stitches beside a wrapped edge.
    DashesAndOveredge,
    /// A row of loops beside a wrapped edge.
    ChainAndOveredge,
    /// Loops lying across between the needle rows.
    CoverLoops,
}

/// How both faces of a stitch read in a drawing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Looks {
    /// The side the needle enters.
    pub needle_face: FaceLook,
    /// The side of the bobbin or looper.
    pub under_face: FaceLook,
}

/// A text that is not a stitch type known here.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[error("\"{text}\" is not a stitch type known here: write one of {}", known())]
pub struct StitchError {
    /// The text as written, cut when long.
    pub text: String,
}

fn known() -> String {
    let codes: Vec<&str> = StitchType::ALL.iter().map(|s| s.code()).collect();
    codes.join(", ")
}

impl StitchType {
    /// Every stitch type known here, by number.
    pub const ALL: [Self; 16] = [
        Self::S101,
        Self::S301,
        Self::S304,
        Self::S401,
        Self::S404,
        Self::S406,
        Self::S503,
        Self::S504,
        Self::S505,
        Self::S512,
        Self::S514,
        Self::S515,
        Self::S516,
        Self::S602,
        Self::S605,
        Self::S607,
    ];

    /// The ISO 4915 number: "401".
    pub const fn code(self) -> &'static str {
        match self {
            Self::S101 => "101",
            Self::S301 => "301",
            Self::S304 => "304",
            Self::S401 => "401",
            Self::S404 => "404",
            Self::S406 => "406",
            Self::S503 => "503",
            Self::S504 => "504",
            Self::S505 => "505",
            Self::S512 => "512",
            Self::S514 => "514",
            Self::S515 => "515",
            Self::S516 => "516",
            Self::S602 => "602",
            Self::S605 => "605",
            Self::S607 => "607",
        }
    }

    /// What it is called: "two-thread chainstitch".
    pub const fn key(self) -> Key {
        match self {
            Self::S101 => key::STITCH_101,
            Self::S301 => key::STITCH_301,
            Self::S304 => key::STITCH_304,
            Self::S401 => key::STITCH_401,
            Self::S404 => key::STITCH_404,
            Self::S406 => key::STITCH_406,
            Self::S503 => key::STITCH_503,
            Self::S504 => key::STITCH_504,
            Self::S505 => key::STITCH_505,
            Self::S512 => key::STITCH_512,
            Self::S514 => key::STITCH_514,
            Self::S515 => key::STITCH_515,
            Self::S516 => key::STITCH_516,
            Self::S602 => key::STITCH_602,
            Self::S605 => key::STITCH_605,
            Self::S607 => key::STITCH_607,
        }
    }

    /// The threads of one pass; see [`Self::threads_confidence`].
    pub const fn threads(self) -> Threads {
        let (needle, under, cover) = match self {
            Self::S101 => (1, 0, 0),
            Self::S301 | Self::S304 | Self::S401 | Self::S404 | Self::S503 => (1, 1, 0),
            Self::S504 | Self::S505 => (1, 2, 0),
            Self::S406 => (2, 1, 0),
            Self::S512 | Self::S514 | Self::S515 => (2, 2, 0),
            Self::S516 => (2, 3, 0),
            Self::S602 => (2, 1, 1),
            Self::S605 => (3, 1, 1),
            Self::S607 => (4, 1, 1),
        };
        Threads {
            needle,
            under,
            cover,
        }
    }

    /// Where the thread counts of [`Self::threads`] come from.
    pub const fn threads_confidence(self) -> Confidence {
        match self {
            Self::S404 | Self::S505 | Self::S514 | Self::S515 | Self::S607 => {
                Confidence::FromMemory
            }
            _ => Confidence::Published("ISO 4915:1991"),
        }
    }

    /// How the two faces read in a drawing. Common practice.
    pub const fn looks(self) -> Looks {
        use FaceLook::{
            Chain, ChainAndOveredge, CoverLoops, Dashes, DashesAndOveredge, Overedge,
            OveredgeTwoRows, Zigzag, ZigzagChain,
        };
        let (needle_face, under_face) = match self {
            Self::S101 | Self::S401 => (Dashes, Chain),
            Self::S301 => (Dashes, Dashes),
            Self::S304 => (Zigzag, Zigzag),
            Self::S404 => (Zigzag, ZigzagChain),
            Self::S406 => (Dashes, CoverLoops),
            Self::S503 | Self::S504 | Self::S505 => (Overedge, Overedge),
            Self::S512 | Self::S514 => (OveredgeTwoRows, OveredgeTwoRows),
            Self::S515 | Self::S516 => (DashesAndOveredge, ChainAndOveredge),
            Self::S602 | Self::S605 | Self::S607 => (CoverLoops, CoverLoops),
        };
        Looks {
            needle_face,
            under_face,
        }
    }

    /// Whether a row of it can be sewn back and forth over its own end: lockstitches alone. Chains, overedges and
    /// covering stitches are formed in one direction (common practice).
    pub const fn sews_back(self) -> bool {
        matches!(self, Self::S301 | Self::S304)
    }

    /// Whether threads lie across between its needles, so that it covers a raw edge below them.
    pub const fn covers(self) -> bool {
        matches!(self, Self::S406 | Self::S602 | Self::S605 | Self::S607)
    }

    /// Whether the stitch wraps a cut edge, and so has a bite instead of a needle gauge.
    pub const fn is_overedge(self) -> bool {
        matches!(
            self,
            Self::S503
                | Self::S504
                | Self::S505
                | Self::S512
                | Self::S514
                | Self::S515
                | Self::S516
        )
    }
}

impl fmt::Display for StitchType {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl FromStr for StitchType {
    type Err = StitchError;

    fn from_str(text: &str) -> Result<Self, Self::Err> {
        Self::ALL
            .into_iter()
            .find(|stitch| stitch.code() == text.trim())
            .ok_or_else(|| StitchError {
                text: text.chars().take(60).collect(),
            })
    }
}

impl serde::Serialize for StitchType {
    fn serialize<S: serde::Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.serialize_str(self.code())
    }
}

impl<'de> serde::Deserialize<'de> for StitchType {
    fn deserialize<D: serde::Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let text = <std::borrow::Cow<'de, str>>::deserialize(from)?;
        text.parse().map_err(serde::de::Error::custom)
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn every_type_reads_back_its_number() {
        for stitch in StitchType::ALL {
            assert_eq!(stitch.code().parse(), Ok(stitch));
            let json = serde_json::to_string(&stitch).unwrap();
            assert_eq!(json, format!("\"{stitch}\""));
            assert_eq!(serde_json::from_str::<StitchType>(&json).unwrap(), stitch);
        }
        assert!(StitchType::ALL.is_sorted());
    }

    /// Class 500 of ISO 4915 is that of the overedges.
    #[test]
    fn overedges_are_of_class_500() {
        for stitch in StitchType::ALL {
            assert_eq!(
                stitch.is_overedge(),
                stitch.code().starts_with('5'),
                "{stitch}"
            );
        }
    }

    #[test]
    fn every_type_is_called_by_its_own_number() {
        for stitch in StitchType::ALL {
            assert_eq!(stitch.key().name(), format!("stitch-{stitch}"));
        }
    }

    #[test]
    fn an_unknown_number_is_answered_with_the_known_ones() {
        let error = "402".parse::<StitchType>().unwrap_err().to_string();
        assert!(
            error.starts_with("\"402\" is not a stitch type known here: write one of 101, 301")
        );
        assert!("".parse::<StitchType>().is_err());
    }

    /// A safety stitch is a 401 beside an overedge: ISO 4915:1991 (515 from memory).
    #[test]
    fn safety_stitches_hold_the_threads_of_their_parts() {
        let total = |s: StitchType| s.threads().total();
        assert_eq!(
            total(StitchType::S515),
            total(StitchType::S401) + total(StitchType::S503)
        );
        assert_eq!(
            total(StitchType::S516),
            total(StitchType::S401) + total(StitchType::S504)
        );
    }
}
