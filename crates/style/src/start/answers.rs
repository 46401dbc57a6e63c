//! What a maker answers before a style begins, and what holds where nothing is answered.

use std::ops::RangeInclusive;

use trade::Length;

use crate::choices::choices;
use crate::details::OutseamLine;
use crate::{Figure, Fit, Size, Tag};

/// What a new style needs to be told.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct NewStyle {
    /// The style's name; its folder is named after it.
    pub name: String,
    /// The label's code for it; empty for one that is made of the name and free.
    pub code: String,
    /// Its folder, where it is not to be named after the style.
    pub folder: Option<String>,
    /// The label's name, for a new collection; the style's name when left out, and what patch and main label say is then
    /// open.
    pub label: Option<String>,
    /// What else only the label knows.
    pub words: LabelWords,
    /// What it is to be like.
    pub answers: Answers,
}

/// What only the label knows. What is not told is left open, and is a finding until it is.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct LabelWords {
    /// The workroom that sews it, for a new collection.
    pub workroom: Option<String>,
    /// Where that is.
    pub place: Option<String>,
    /// The country it is made in, as its label says it.
    pub origin: Option<String>,
}

/// What a style is to be like to begin with. Everything can be changed afterwards.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Answers {
    /// Whose figure it is cut for.
    pub figure: Figure,
    /// How it fits.
    pub fit: Fit,
    /// How wide the leg is below the knee.
    pub leg: Leg,
    /// How the outseam runs; `None` takes the cloth's own edge where the cloth has one.
    pub outseam: Option<OutseamLine>,
    /// Waist tags; empty takes the usual ones of the figure.
    pub waists: Vec<Tag>,
    /// Length tags; empty takes the usual ones.
    pub lengths: Vec<Tag>,
    /// The shell, a name from `cloths.toml`; `None` takes the demo's, else the first shell there is.
    pub shell: Option<String>,
    /// How it is sewn.
    pub taste: Taste,
}

impl Default for Answers {
    fn default() -> Self {
        Self {
            figure: Figure::Men,
            fit: Fit::Straight,
            leg: Leg::Usual,
            outseam: None,
            waists: Vec::new(),
            lengths: Vec::new(),
            shell: None,
            taste: Taste::Felled,
        }
    }
}

/// How wide the leg is below the knee.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Leg {
    /// As is usual for the fit.
    Usual,
    /// Wider at the hem than is usual for the fit.
    Wide,
}
choices!(Leg: Usual = "usual", Wide = "wide");

impl Leg {
    /// What the hem is wider by than is usual (common practice).
    pub(super) fn at_hem(self) -> Length {
        match self {
            Self::Usual => Length::ZERO,
            Self::Wide => Length::inches(2.0),
        }
    }

    /// What the knee is wider by, so that the line from thigh to hem stays even (common practice).
    pub(super) fn at_knee(self) -> Length {
        match self {
            Self::Usual => Length::ZERO,
            Self::Wide => Length::inches(0.5),
        }
    }
}

/// How a style is sewn: a whole set of constructions and rows that go together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Taste {
    /// Inseam, seat and yoke lap-felled, chain-stitched in two colours, a rolled hem.
    Felled,
    /// Overlocked inside, topstitched in two rows, a folded hem.
    Topstitched,
    /// One row in the cloth's own tone, no rivets, plain pockets.
    Quiet,
}
choices!(Taste: Felled = "felled", Topstitched = "topstitched", Quiet = "quiet");

impl Taste {
    /// What it is, in a line for the maker.
    #[must_use]
    pub const fn about(self) -> &'static str {
        match self {
            Self::Felled => {
                "Inseam, seat and yoke lap-felled and chain-stitched, a rolled hem, copper rivets. Strong, and slow to sew."
            }
            Self::Topstitched => {
                "Overlocked inside and topstitched in two rows, a folded hem. Any workroom has the machines."
            }
            Self::Quiet => {
                "One row in the tone of the cloth where others have two, no rivets, plain pockets. Little to see, less to sew."
            }
        }
    }
}

/// The waists that can be begun with, in inches: where the charts hold, halves between included (men's and women's runs as published).
#[must_use]
pub const fn offered_waists(figure: Figure) -> RangeInclusive<u32> {
    match figure {
        Figure::Men => 28..=42,
        Figure::Women => 24..=36,
    }
}

/// The lengths that can be begun with, in inches, halves between included.
pub const OFFERED_LENGTHS: RangeInclusive<u32> = 28..=36;

/// The waists a figure's run usually has (common practice: every inch where most pairs are sold, then every other).
#[must_use]
pub const fn usual_waists(figure: Figure) -> &'static [u32] {
    match figure {
        Figure::Men => &[28, 29, 30, 31, 32, 33, 34, 36, 38],
        Figure::Women => &[24, 25, 26, 27, 28, 29, 30, 31, 32, 34],
    }
}

/// The lengths a run usually has (common practice).
pub const USUAL_LENGTHS: &[u32] = &[30, 32, 34];

/// The answers with nothing left open.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Settled {
    pub(super) figure: Figure,
    pub(super) fit: Fit,
    pub(super) leg: Leg,
    pub(super) outseam: OutseamLine,
    pub(super) waists: Vec<Tag>,
    pub(super) lengths: Vec<Tag>,
    pub(super) base: Size,
    pub(super) shell: String,
    pub(super) taste: Taste,
}
