//! The style document: one pair of jeans, described once.

mod charted;
mod muted_findings;
mod named_files;
mod resolved_seams;
mod told_about;

use std::fmt;

use indexmap::IndexMap;
use serde::Serialize;

use crate::band_and_hem::{Band, Hem};
use crate::choices::choices;
use crate::cutting::Cutting;
use crate::details::{Bartacks, Fly, Label, Loops, Patch, Pockets, Rivets, Shape};
use crate::muted::Muted;
use crate::own::OwnPattern;
use crate::seams::SeamSpec;
use crate::wash::Wash;
use crate::why::Why;
use crate::{ChartEntry, MeasureId, SeamId, Sizes};

/// A style file, read and checked.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct StyleDoc {
    /// Who the style is and who sews it.
    pub style: Identity,
    /// The run of sizes.
    pub sizes: Sizes,
    /// Which cloths it is cut from; names from `cloths.toml`.
    pub cloth: ClothRefs,
    /// The measurement chart in the file's order.
    pub chart: IndexMap<MeasureId, ChartEntry>,
    /// What the chart leaves open about the lines of the pattern.
    pub shape: Shape,
    /// How the front closes.
    pub fly: Fly,
    /// How the waistband is made.
    pub band: Band,
    /// The pockets.
    pub pockets: Pockets,
    /// How the hems are made.
    pub hem: Hem,
    /// The belt loops.
    pub loops: Loops,
    /// The rivets; `None` when the style has none.
    pub rivets: Option<Rivets>,
    /// The patch on the band; `None` when the style has none.
    pub patch: Option<Patch>,
    /// The sewn-in labels.
    pub labels: Vec<Label>,
    /// The seams in the file's order; the seams there are: [`crate::known::seam`].
    /// Use [`StyleDoc::seam`] to read one with its `like` followed.
    pub seams: IndexMap<SeamId, SeamSpec>,
    /// How bartacks are sewn.
    pub bartacks: Bartacks,
    /// The maker's own pattern; `None` when the panels are drafted from the chart.
    pub pattern: Option<OwnPattern>,
    /// How it is cut.
    pub cutting: Cutting,
    /// Who gives it its first wash, when and how; `None` while that is not stated.
    pub wash: Option<Wash>,
    /// Why things are as they are, in the maker's words, in the order in which they are told.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub why: Vec<Why>,
    /// Findings that are no longer counted.
    pub muted: Vec<Muted>,
}

/// The `[style]` section.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Identity {
    /// The style's name.
    pub name: String,
    /// The label's code for it.
    pub code: String,
    /// Whose figure it is cut for.
    pub figure: Figure,
    /// How it fits.
    pub fit: Fit,
    /// One line about it; may be empty.
    pub summary: String,
    /// The workroom that sews it; a name from `collection.toml`, empty while that is open.
    pub workroom: String,
}

/// Whose figure a style is cut for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Figure {
    /// Men's.
    Men,
    /// Women's.
    Women,
}

/// How a style fits: the class its ease is judged by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// Close all the way down.
    Slim,
    /// Even from the thigh down.
    Straight,
    /// Easy in the thigh, narrow at the hem.
    Tapered,
    /// Easy all the way down.
    Relaxed,
}

/// The `[cloth]` section: names from `cloths.toml`.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct ClothRefs {
    /// What the panels are cut from.
    pub shell: String,
    /// What the pocket bags are cut from.
    pub pocketing: String,
    /// What back pockets are lined with; `None` when nothing is lined.
    pub lining: Option<String>,
}

choices!(Figure: Men = "men", Women = "women");
choices!(Fit: Slim = "slim", Straight = "straight", Tapered = "tapered", Relaxed = "relaxed");

impl fmt::Display for Identity {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.code, self.name)
    }
}
