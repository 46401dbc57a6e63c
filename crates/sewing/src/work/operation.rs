//! What one operation of the sewing order says.

use draft::PieceId;
use trade::{Confidence, Length, StitchDensity, StitchType};
use words::{Key, Said, key};

use crate::context::mm;
use crate::garment::{Origin, RowYarn};

/// One operation: what one person does at one machine or table, on every pair alike.
#[derive(Clone, Debug, PartialEq)]
pub struct Operation {
    /// Its place in the order, from 1.
    pub number: usize,
    /// A name that stays the same while the style keeps this work: "inseam-fell".
    pub key: String,
    /// "Inseam: fell".
    pub name: String,
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
    /// "feed-off-the-arm"; "iron", "by hand" where nothing is sewn.
    pub machine: &'static str,
    /// What is put on the machine or used beside it.
    pub attachment: Option<Attachment>,
    /// Needles in the machine; 0 where nothing is sewn.
    pub needle_count: u8,
    /// From each row to the next; empty where one row is sewn.
    pub gauges: Vec<Length>,
    /// The bite of an overedge, or the spacing of the needles of a single covering stitch; none where
    /// the stitch has none.
    pub bite: Option<Length>,
    /// What the machine sews in a pair: its longest needle row, tacks and buttonholes together. For
    /// work that is not stated what the estimate of its yarn takes, nothing where there is none.
    pub sewn: Length,
    /// Work the style states no row for, though the pair cannot be made without it: the workroom has
    /// to ask which stitch and yarn.
    pub not_stated: Option<NotStated>,
    /// What to mind, one short sentence each, without a full stop; empty where there is nothing beyond
    /// what is not stated.
    pub mind: Vec<String>,
    /// Keys of the operations that have to be done before.
    pub after: Vec<String>,
    /// The key in [`trade::seam::OPERATIONS`] of the operation usual for this seam; none where nothing
    /// is sewn.
    pub usual: Option<&'static str>,
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

    /// "two needles, 6.4 mm", "single needle", "bite 5.6 mm"; empty where nothing is sewn.
    pub fn gauge_words(&self) -> String {
        gauge_words(self.needle_count, &self.gauges, self.bite)
    }
}

/// How the needles stand, in words.
pub(super) fn gauge_words(needles: u8, gauges: &[Length], bite: Option<Length>) -> String {
    let many = match needles {
        0 => return String::new(),
        1 => "single needle".to_owned(),
        2 => "two needles".to_owned(),
        3 => "three needles".to_owned(),
        4 => "four needles".to_owned(),
        more => format!("{more} needles"),
    };
    let gauges: Vec<String> = gauges
        .iter()
        .map(|gauge| format!("{:.1}", gauge.to_mm()))
        .collect();
    match (gauges.is_empty(), bite) {
        (false, _) => format!("{many}, {} mm", gauges.join(" and ")),
        (true, Some(bite)) => format!("{many}, bite {}", mm(bite)),
        (true, None) => many,
    }
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
    /// Stitches per length; none for tacks, which are counted.
    pub density: Option<StitchDensity>,
    /// Distance from the seam line; none for tacks and buttonholes.
    pub offset: Option<Length>,
    /// Yarn on the needle.
    pub yarn: RowYarn,
    /// Yarn below.
    pub under: RowYarn,
    /// Length sewn in a pair; of buttonholes the cuts.
    pub sewn: Length,
    /// How it begins and ends: "both ends: backtacked".
    pub ends: String,
}

/// A folder, guide, template or foot.
#[derive(Clone, Debug, PartialEq)]
pub struct Attachment {
    /// "lap folder for a lap of 9.6 mm".
    pub what: Said,
    /// Where it comes from.
    pub source: Confidence,
}

/// Work without a stated row.
#[derive(Clone, Debug, PartialEq)]
pub struct NotStated {
    /// What is not stated, in words: "joining row below the topstitching".
    pub what: String,
    /// The stitch the estimate of its yarn takes; none where nothing is estimated.
    pub stitch: Option<StitchType>,
    /// The density that estimate takes.
    pub density: Option<StitchDensity>,
}
