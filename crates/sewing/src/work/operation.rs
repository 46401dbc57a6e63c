//! What one operation of the sewing order says.
//!
//! A pair is sewn before its wash, so every figure here is what a machine, a folder or a guide is set to then.

use draft::PieceId;
use trade::seam::SeamOperationId;
use trade::{
    Confidence, Length, MachineId, NeedleSize, StitchDensity, StitchType, Unwashed, Washed,
};
use words::{Given, Key, Said, key, say};

use super::operation_key::OperationKey;
use crate::garment::{Origin, RowYarn};

/// One operation: what one person does at one machine or table, on every pair alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Operation {
    /// Its place in the order, from 1.
    pub number: usize,
    /// What stays the same while the style keeps this work.
    pub key: OperationKey,
    /// "Inseams: fell".
    pub name: Said,
    /// The part of the workroom's course it belongs to.
    pub stage: Stage,
    /// What kind of work it is.
    pub work: Work,
    /// The pieces worked on, in the order of [`PieceId::ALL`].
    pub pieces: Vec<PieceId>,
    /// Parts of the drawing it belongs to: "seam:inseam", "fixing:rivet-9", "piece:front".
    pub parts: Vec<String>,
    /// Every needle that sews, outermost row first; empty where nothing is sewn, and where the style
    /// states no row.
    pub needles: Vec<Needle>,
    /// What is set: places in [`crate::Garment::fixings`].
    pub fixings: Vec<usize>,
    /// Where it is done.
    pub machine: MachineId,
    /// What is put on the machine or used beside it.
    pub attachment: Option<Attachment>,
    /// Needles in the machine; 0 where nothing is sewn.
    pub needle_count: u8,
    /// From each row to the next; empty where one row is sewn.
    pub gauges: Vec<Unwashed<Length>>,
    /// The bite of an overedge, or the spacing of the needles of a single covering stitch; none where
    /// the stitch has none.
    pub bite: Option<Unwashed<Length>>,
    /// What the machine sews in a pair: its longest needle row, tacks and buttonholes together. For
    /// work that is not stated what the estimate of its yarn takes, nothing where there is none.
    pub sewn: Unwashed<Length>,
    /// By how much the longer side of the seam is eased or stretched on as it is first sewn; none where nothing is
    /// to be seen of it.
    pub eased: Option<Unwashed<Length>>,
    /// Work the style states no row for, though the pair cannot be made without it: the workroom has
    /// to ask which stitch and yarn.
    pub not_stated: Option<NotStated>,
    /// What to mind, one short sentence each, without a full stop; empty where there is nothing beyond
    /// what is not stated.
    pub mind: Vec<Said>,
    /// The operations that have to be done before.
    pub after: Vec<OperationKey>,
    /// The operation of the trade that is usual for this seam; none where nothing is sewn.
    pub usual: Option<SeamOperationId>,
    /// Where the usual way of doing it comes from.
    pub source: Confidence,
}

impl Operation {
    /// Places in [`crate::Garment::rows`] of everything it sews.
    pub fn rows(&self) -> impl Iterator<Item = usize> + '_ {
        self.needles
            .iter()
            .flat_map(|needle| needle.rows.iter().copied())
    }

    /// "two needles, 6.4 mm", "single needle", "bite 5.6 mm"; none where nothing is sewn.
    pub fn gauge_words(&self) -> Option<Said> {
        gauge_words(self.needle_count, &self.gauges, self.bite)
    }

    /// "needle Nm 110 to 120": what is usual for all its needle yarns, or for the heaviest of them where no needle is
    /// usual for all; none where no yarn is stated.
    pub fn needle_words(&self) -> Option<Said> {
        let sizes = || self.needles.iter().filter_map(|needle| needle.sizes);
        let heaviest = sizes().max()?;
        let finest_of_last = sizes().map(|(_, last)| last).min()?;
        let (first, last) = if heaviest.0 <= finest_of_last {
            (heaviest.0, finest_of_last)
        } else {
            heaviest
        };
        Some(
            say::NeedleSizes {
                finest: first.to_metric().to_string(),
                heaviest: last.to_metric().to_string(),
            }
            .into(),
        )
    }
}

/// How the needles stand.
pub(super) fn gauge_words(
    needles: u8,
    gauges: &[Unwashed<Length>],
    bite: Option<Unwashed<Length>>,
) -> Option<Said> {
    if needles == 0 {
        return None;
    }
    let needles = Said::from(say::GaugeNeedles { needles });
    let apart = |gauge: &Unwashed<Length>| Given::from(gauge.figure().bare_mm(1));
    let gauges = gauges.iter().map(apart).reduce(|first, next| {
        let both = say::JoinedAnd { first, next };
        both.into()
    });
    Some(match (gauges, bite) {
        (Some(gauges), _) => say::GaugeApart { gauges, needles }.into(),
        (None, Some(bite)) => {
            let bite = bite.figure().in_mm(1);
            say::GaugeBite { bite, needles }.into()
        }
        (None, None) => needles,
    })
}

/// A part of the workroom's course.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// Loops, small pockets, facings, band: what is made ready before the panels are touched.
    SmallParts,
    /// Hip pockets and fly on the fronts.
    Fronts,
    /// Back pockets, yokes and seat.
    Backs,
    /// Inseam and outseam.
    Legs,
    /// The waistband, its patch and loops.
    Band,
    /// Hems.
    Hems,
    /// Tacks, buttonholes, buttons, rivets and the last look.
    Finish,
}

impl Stage {
    /// What it is called, within a sentence: "small parts".
    #[must_use]
    pub const fn said(self) -> Key {
        match self {
            Stage::SmallParts => key::STAGE_SMALL_PARTS,
            Stage::Fronts => key::STAGE_FRONTS,
            Stage::Backs => key::STAGE_BACKS,
            Stage::Legs => key::STAGE_LEGS,
            Stage::Band => key::STAGE_BAND,
            Stage::Hems => key::STAGE_HEMS,
            Stage::Finish => key::STAGE_FINISH,
        }
    }
}

/// A kind of work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Work {
    /// Sewn.
    Sewn,
    /// Pressed.
    Pressed,
    /// Set with a press: buttons, rivets.
    Set,
    /// By hand: cut, turned, knotted.
    ByHand,
    /// Washed.
    Washed,
}

/// One needle of an operation: a stated row of stitches, tacks, or buttonholes.
#[derive(Clone, Debug, PartialEq)]
pub struct Needle {
    /// The seam; for tacks and buttonholes the seam or trim they belong to.
    pub seam: Origin,
    /// Row number within the seam, from 1; none for tacks and buttonholes.
    pub row: Option<usize>,
    /// The row's places in [`crate::Garment::rows`], one for each piece it runs over.
    pub rows: Vec<usize>,
    /// Stitch type.
    pub stitch: StitchType,
    /// Stitches per length the machine is set to; none for tacks, which are counted.
    pub set_to: Option<Unwashed<StitchDensity>>,
    /// Stitches per length as they are counted on the finished pair; none for tacks and buttonholes.
    pub counted: Option<Washed<StitchDensity>>,
    /// Distance from the seam line; none for tacks and buttonholes.
    pub offset: Option<Unwashed<Length>>,
    /// Yarn on the needle.
    pub yarn: RowYarn,
    /// The finest and the heaviest needle usual for that yarn; none for a yarn the collection does not have.
    pub sizes: Option<(NeedleSize, NeedleSize)>,
    /// Yarn below.
    pub under: RowYarn,
    /// Length sewn in a pair; of buttonholes the cuts.
    pub sewn: Unwashed<Length>,
    /// How it begins and ends: "both ends: backtacked"; none for a row that is not laid.
    pub ends: Option<Said>,
}

/// A folder, guide, template or foot.
#[derive(Clone, Debug, PartialEq)]
pub struct Attachment {
    /// "lap folder for a lap of 9.6 mm".
    pub what: Said,
    /// The length it is set to, or made for; none for a template.
    pub set_to: Option<Unwashed<Length>>,
    /// Where it comes from.
    pub source: Confidence,
}

/// Work without a stated row.
#[derive(Clone, Debug, PartialEq)]
pub struct NotStated {
    /// What is not stated: "joining row below the topstitching".
    pub what: Said,
    /// The stitch the estimate of its yarn takes; none where nothing is estimated.
    pub stitch: Option<StitchType>,
    /// The density that estimate takes.
    pub density: Option<StitchDensity>,
}
