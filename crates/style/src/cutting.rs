//! What the maker decides about cutting, and what was measured of a cloth before and after its wash.

use serde::Serialize;
use trade::fabric::dimensional_change;
use trade::{Length, Share};

use crate::choices::choices;

/// The `[cutting]` section.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Cutting {
    /// How the waistband is cut; `None` when the style does not say, which is enough where warp and weft shrink
    /// nearly alike.
    pub band: Option<BandCutting>,
    /// Preshrunk only: what its cloth still shrinks by along the warp. Default none.
    pub residual_warp: Share,
    /// Preshrunk only: what its cloth still shrinks by along the weft. Default none.
    pub residual_weft: Share,
    /// How pieces are cut on a cloth whose weft lies askew after the wash. Default straight.
    pub skew: SkewCutting,
}

impl Default for Cutting {
    fn default() -> Self {
        Self {
            band: None,
            residual_warp: Share::ZERO,
            residual_weft: Share::ZERO,
            skew: SkewCutting::Straight,
        }
    }
}

/// How the waistband is cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BandCutting {
    /// Its length along the weft, so that it shrinks with the body.
    Weft,
    /// Its length along the warp, of cloth washed before cutting.
    Preshrunk,
    /// Its length along the warp, eased by no more than the machine takes.
    Eased,
}
choices!(BandCutting: Weft = "weft", Preshrunk = "preshrunk", Eased = "eased");

/// How pieces are cut on a cloth whose weft lies askew after the wash.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SkewCutting {
    /// Without regard to it.
    Straight,
    /// Sheared along the warp, so that the wash turns them straight.
    Sheared,
    /// With their grain turned by the angle of the skew.
    GrainTurned,
}
choices!(SkewCutting: Straight = "straight", Sheared = "sheared", GrainTurned = "grain turned");

/// One distance between two marks on a specimen of cloth (`wash_test`).
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct WashMark {
    /// The threads it runs along.
    pub along: Along,
    /// Before the wash.
    pub before: Length,
    /// After it.
    pub after: Length,
}

/// The threads a distance runs along.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Along {
    /// The warp.
    Warp,
    /// The weft.
    Weft,
}
choices!(Along: Warp = "warp", Weft = "weft");

/// The mean shrinkage of the distances along some threads, stated to 0.1 % (AATCC 135); `None` where none was
/// measured.
#[must_use]
pub fn mean_shrinkage(marks: &[WashMark], along: Along) -> Option<Share> {
    let changes: Vec<Share> = marks
        .iter()
        .filter(|mark| mark.along == along)
        .filter_map(|mark| dimensional_change(mark.before, mark.after))
        .collect();
    let mean = -(changes.iter().sum::<Share>() / changes.len() as f64);
    (!changes.is_empty()).then(|| Share::percent((mean.to_percent() * 10.0).round() / 10.0))
}

/// The diagonals of a square marked on a specimen, after the wash, face up and warp upright (`skew_test`).
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Diagonals {
    /// From lower left to upper right.
    pub rising: Length,
    /// From upper left to lower right.
    pub falling: Length,
}
