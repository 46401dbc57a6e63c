//! The sewn garment of one size: pattern, seams, stitch rows, fixings and findings, all in the
//! frames of the pieces.

use draft::{Conflict, EdgeId, Finding, Pattern, PieceId};
use geometry::tolerance::ROUNDING;
use geometry::{Path, Point, Vec2};
use style::{Collection, RowEnding, Seam, SeamId, SetAfter, Size, StyleDoc};
use trade::{Colour, Length, StitchDensity, StitchType, Unwashed};
use words::{Given, Key, key};

use crate::construct::Finish;
use crate::edges::edge_use;
use crate::wash::BeforeWash;

/// Which copies of a piece something is on. Panels are drawn as the wearer's left front and right
/// back; the other copy is the mirror image.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum On {
    /// Only the copy cut as drawn.
    AsDrawn,
    /// Only the mirrored copy.
    Mirrored,
    /// Both copies.
    Both,
}

/// Which face of the garment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Face {
    /// The outside.
    Outside,
    /// The inside.
    Inside,
}

/// How a row of stitches begins or ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowEnd {
    /// Sewn back and forth over its own start.
    Backtacked,
    /// Runs off the edge and is caught by the next seam.
    CaughtInSeam,
    /// Threads tucked into the fold while stitching.
    TuckedIn,
    /// Overlaps its own start (a closed row).
    Overlapped,
    /// Threads drawn to the inside and knotted.
    TiedByHand,
    /// Runs on without a stop over a seam, onto the next piece.
    RunsOn,
    /// Sewn on beyond the edge as a chain of its own, whose tail is sewn in.
    ChainedOff,
    /// Threads cut off and left.
    Cut,
}

impl RowEnd {
    /// How a list of rows says it.
    pub const fn said(self) -> Key {
        match self {
            RowEnd::Backtacked => key::ROW_END_BACKTACKED,
            RowEnd::CaughtInSeam => key::ROW_END_CAUGHT,
            RowEnd::TuckedIn => key::ROW_END_TUCKED_IN,
            RowEnd::Overlapped => key::ROW_END_OVERLAPPED,
            RowEnd::TiedByHand => key::ROW_END_TIED,
            RowEnd::RunsOn => key::ROW_END_RUNS_ON,
            RowEnd::ChainedOff => key::ROW_END_CHAINED_OFF,
            RowEnd::Cut => key::ROW_END_CUT,
        }
    }
}

impl From<RowEnding> for RowEnd {
    fn from(stated: RowEnding) -> RowEnd {
        match stated {
            RowEnding::Backtacked => RowEnd::Backtacked,
            RowEnding::CaughtInSeam => RowEnd::CaughtInSeam,
            RowEnding::TuckedIn => RowEnd::TuckedIn,
            RowEnding::Overlapped => RowEnd::Overlapped,
            RowEnding::TiedByHand => RowEnd::TiedByHand,
            RowEnding::ChainedOff => RowEnd::ChainedOff,
            RowEnding::Cut => RowEnd::Cut,
        }
    }
}

/// One row of stitches on one piece.
#[derive(Clone, Debug, PartialEq)]
pub struct StitchRow {
    /// Seam it belongs to.
    pub seam: SeamId,
    /// Row number within the seam, from 1.
    pub number: usize,
    /// The piece in whose frame the path lies: the ply that shows outside, or the one sewn through.
    pub piece: PieceId,
    /// On which copies.
    pub on: On,
    /// The line of the needle, millimetres, in the direction of sewing.
    pub path: Path,
    /// Stitch type of ISO 4915.
    pub stitch: StitchType,
    /// Stitches per length.
    pub density: StitchDensity,
    /// Needle yarn: key, colour, drawn thickness.
    pub needle: RowYarn,
    /// Under yarn.
    pub under: RowYarn,
    /// How it begins.
    pub begins: RowEnd,
    /// How it ends.
    pub ends: RowEnd,
    /// Seen from outside (a joining row inside a pressed-open seam is not).
    pub shows_outside: bool,
    /// Seen from inside (a row covered by a lining or the band is not).
    pub shows_inside: bool,
}

impl StitchRow {
    /// Length of the row.
    pub fn length(&self) -> Length {
        self.path.length()
    }

    /// How often the needle goes in: the whole pitches that fit the row, and one to begin with.
    /// None at all where length or pitch is not a number above zero.
    pub fn stitches(&self) -> usize {
        stitches_along(self.length(), self.density)
    }
}

/// How often the needle goes in along a length, as [`StitchRow::stitches`] counts it.
pub fn stitches_along(length: Length, density: StitchDensity) -> usize {
    let pitches = length / density.pitch();
    if pitches.is_finite() && pitches > 0.0 {
        // A whole number of pitches may miss its count by a rounding error.
        (pitches + ROUNDING).floor() as usize + 1
    } else {
        0
    }
}

impl Garment {
    /// How long a row is as the machine sews it, before the wash. What is set after the wash does not shrink any
    /// more.
    #[must_use]
    pub fn length_at_machine(&self, row: &StitchRow) -> Unwashed<Length> {
        let finished = row.length();
        let set_after = match row.seam {
            SeamId::PatchSet => self.is_set_after_wash(SetAfter::Patch),
            SeamId::LabelSet => self.is_set_after_wash(SetAfter::Labels),
            _ => false,
        };
        if set_after {
            return Unwashed::new(finished);
        }
        let sewn = self
            .before_wash
            .scale(row.piece)
            .map_or(finished, |scale| row.path.transformed(scale.map).length());
        Unwashed::new(sewn)
    }
}

/// A yarn as a row shows it.
#[derive(Clone, Debug, PartialEq)]
pub struct RowYarn {
    /// Key in `yarns.toml`.
    pub key: String,
    /// Colour.
    pub colour: Colour,
    /// Thickness.
    pub diameter: Length,
}

/// What something sewn or set belongs to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Origin {
    /// A seam of the style.
    Seam(SeamId),
    /// A trim, by its key in `trims.toml`.
    Trim(String),
}

impl Origin {
    /// As files and programs write it: the code of the seam or the key of the trim.
    pub fn code(&self) -> &str {
        match self {
            Origin::Seam(seam) => seam.code(),
            Origin::Trim(key) => key,
        }
    }

    /// The seam, if it is one.
    pub fn seam(&self) -> Option<SeamId> {
        match self {
            Origin::Seam(seam) => Some(*seam),
            Origin::Trim(_) => None,
        }
    }

    /// The key of the trim, if it is one.
    pub fn trim(&self) -> Option<&str> {
        match self {
            Origin::Seam(_) => None,
            Origin::Trim(key) => Some(key),
        }
    }

    /// The seam's name, or the key of the trim.
    pub fn title(&self) -> Given {
        match self {
            Origin::Seam(seam) => (*seam).into(),
            Origin::Trim(key) => key.into(),
        }
    }
}

impl From<SeamId> for Origin {
    fn from(seam: SeamId) -> Origin {
        Origin::Seam(seam)
    }
}

impl From<&str> for Origin {
    fn from(trim: &str) -> Origin {
        Origin::Trim(trim.to_owned())
    }
}

impl PartialEq<SeamId> for Origin {
    fn eq(&self, seam: &SeamId) -> bool {
        self.seam() == Some(*seam)
    }
}

/// Something set at a place: hardware, tacks, loops, patch, labels.
#[derive(Clone, Debug, PartialEq)]
pub struct Fixing {
    /// What.
    pub kind: FixingKind,
    /// The piece in whose frame the place lies.
    pub piece: PieceId,
    /// On which copies.
    pub on: On,
    /// Its middle.
    pub at: Point,
    /// The direction of its length (unit vector in the frame of the piece).
    pub along: Vec2,
    /// The faces on which it shows.
    pub outside: bool,
    /// Seen from inside.
    pub inside: bool,
    /// Colour of its face.
    pub colour: Colour,
    /// The trim or seam it comes from.
    pub from: Origin,
}

/// What a fixing is.
#[derive(Clone, Debug, PartialEq)]
pub enum FixingKind {
    /// Rivet cap of this diameter.
    Rivet(Length),
    /// Shank button of this diameter.
    Button(Length),
    /// Keyhole buttonhole of this length.
    Buttonhole(Length),
    /// Zip: length, width of its tapes together.
    Zip(Length, Length),
    /// Bartack: length, width, stitches.
    Bartack(Length, Length, u32),
    /// Belt loop: length, width.
    Loop(Length, Length),
    /// Patch: width, height, its words.
    Patch(Length, Length, String),
    /// Label: width, height, its words.
    Label(Length, Length, String),
}

/// An allowance as it lies on the inside.
#[derive(Clone, Debug, PartialEq)]
pub struct InsideLap {
    /// Piece it lies on.
    pub piece: PieceId,
    /// On which copies.
    pub on: On,
    /// The edge it starts from.
    pub edge: EdgeId,
    /// Along which part of that edge it lies, as arc lengths from its start; all of it where `None`.
    pub part: Option<(Length, Length)>,
    /// How far it reaches into the piece.
    pub width: Length,
    /// How its edge is finished.
    pub finish: Finish,
}

impl InsideLap {
    /// The line it starts from, in the frame of the piece.
    pub fn line(&self, pattern: &Pattern) -> Option<Path> {
        let edge = pattern.piece(self.piece)?.edge(self.edge)?;
        Some(match self.part {
            Some((from, to)) => edge.part(from, to),
            None => edge.clone(),
        })
    }

    /// The seam the allowance belongs to.
    pub fn seam(&self) -> Option<SeamId> {
        edge_use(self.piece, self.edge).seam()
    }
}

/// A piece with its allowances.
///
/// A piece whose two copies need different allowances (left laps over right in a felled seat seam)
/// has two entries, one for each copy; every other piece has one.
#[derive(Clone, Debug, PartialEq)]
pub struct CutPiece {
    /// Which piece.
    pub piece: PieceId,
    /// Which copies are cut like this.
    pub on: On,
    /// Allowance along each edge, in the order of the piece's edges.
    pub allowances: Vec<(EdgeId, Length)>,
    /// The cut line, anticlockwise, dense polyline in millimetres, first point not repeated.
    pub outline: Vec<Point>,
}

/// One sewn size.
#[derive(Clone, Debug)]
pub struct Garment {
    /// The style.
    pub doc: StyleDoc,
    /// Cloths, yarns, trims, workrooms.
    pub collection: Collection,
    /// The size.
    pub size: Size,
    /// Its pattern: the finished pair, as it measures after its wash.
    pub pattern: Pattern,
    /// The same pieces as they are cut and sewn.
    pub before_wash: BeforeWash,
    /// Why the chart cannot be drafted, if it cannot.
    pub conflict: Option<Conflict>,
    /// The seams, `like` followed, in the order of the file.
    pub seams: Vec<Seam>,
    /// Every row of stitches.
    pub rows: Vec<StitchRow>,
    /// Hardware, tacks, loops, patch, labels.
    pub fixings: Vec<Fixing>,
    /// Allowances as they lie inside.
    pub laps: Vec<InsideLap>,
    /// Cut pieces, in the order of the pattern's pieces.
    pub cut: Vec<CutPiece>,
    /// What was noticed, from draft and sewing, worst first.
    pub findings: Vec<Finding>,
}
