//! An order: how many pairs of which size are to be cut, and what the cutting room can do.

use std::path::PathBuf;

use indexmap::IndexMap;
use serde::Serialize;
use trade::{Length, Share};

use crate::choices::choices;
use crate::{Collection, Loaded, Size};

/// What division leaves of a whole number of plies.
const ROUNDING: f64 = 1e-9;

/// `orders/NAME.toml`.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Order {
    /// Its name.
    pub name: String,
    /// What is ordered.
    pub lines: Vec<OrderLine>,
    /// What holds for every cloth that has no section of its own.
    pub limits: SpreadLimits,
    /// The cloths that have a section of their own.
    pub cloths: IndexMap<String, ClothOrder>,
}

impl Order {
    /// What holds for one cloth.
    #[must_use]
    pub fn limits_of(&self, cloth: &str) -> &SpreadLimits {
        self.cloths
            .get(cloth)
            .map_or(&self.limits, |own| &own.limits)
    }

    /// The rolls stated for one cloth.
    #[must_use]
    pub fn rolls_of(&self, cloth: &str) -> &[Roll] {
        self.cloths.get(cloth).map_or(&[], |own| &own.rolls)
    }

    /// All pairs together.
    #[must_use]
    pub fn pairs(&self) -> u32 {
        let pairs = self.lines.iter().flat_map(|line| &line.pairs);
        pairs.map(|(_, pairs)| pairs).sum()
    }
}

/// `[[lines]]`: one style in some sizes.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OrderLine {
    /// The name of the style's folder.
    pub style: String,
    /// The cloth instead of the style's own shell.
    pub cloth: Option<String>,
    /// Pairs of each size, in the order of the file; each size once, each number above zero.
    pub pairs: Vec<(Size, u32)>,
}

/// `[limits]`, and what a cloth's own section changes of it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SpreadLimits {
    /// The most plies in one lay, where stated.
    pub most_plies: Option<u32>,
    /// How high plies may lie, where stated. One of the two is always stated.
    pub height: Option<Length>,
    /// The longest ply, its ends included.
    pub table: Length,
    /// The most pairs in one lay.
    pub most_pairs: u32,
    /// The fewest lays of one cloth. Default 1.
    pub fewest_lays: u32,
    /// The most lays of one cloth. Default 4.
    pub most_lays: u32,
    /// What is lost at each end of each ply. Default [`END_LOSS`].
    pub end_loss: Length,
    /// What is left between pieces for the knife. Default none.
    pub gap: Length,
    /// Which way pieces may lie. Default two-way.
    pub way: OrderWay,
    /// How many shade zones the width is parted into; left and right of a pair lie in one. Default 1.
    pub zones: u32,
    /// Where left and right lie in different zones: how far apart along the cloth they may be.
    pub match_within: Option<Length>,
    /// The longest lap at which a roll may end inside a lay. Default none: every ply is one piece.
    pub most_lap: Length,
    /// Bought on top for faults. Default nothing.
    pub faults: Share,
    /// Bought on top for laps and remnants of rolls. Default nothing.
    pub splices: Share,
}

/// What is usually lost at an end of a ply: 2 cm for a straight knife (published time study of cutting
/// rooms, see `end_loss` in FORMAT.md; to be confirmed by the workroom).
pub const END_LOSS: Length = Length::cm(2.0);

/// The most lays of one cloth that an order may allow; more cannot be weighed against each other.
pub const MOST_LAYS: u32 = 8;

impl SpreadLimits {
    /// The most plies of a cloth of that thickness; always one at least.
    #[must_use]
    pub fn plies(&self, thickness: Length) -> u32 {
        // A little grace, so that 4 cm of 0.8 mm are 50 plies and not 49.
        let by_height = self
            .height
            .map(|height| (height / thickness + ROUNDING).floor())
            .map(|plies| plies.clamp(1.0, f64::from(MOST_PLIES)) as u32);
        let stated = self.most_plies.unwrap_or(MOST_PLIES);
        by_height.map_or(stated, |plies| plies.min(stated))
    }
}

/// The most plies of one lay.
pub const MOST_PLIES: u32 = 300;

/// Which way pieces may lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OrderWay {
    /// All the same way up.
    OneWay,
    /// Head to tail too.
    TwoWay,
}
choices!(OrderWay: OneWay = "one-way", TwoWay = "two-way");

/// `[cloths.NAME]` of an order.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ClothOrder {
    /// The limits of this cloth, all of them.
    pub limits: SpreadLimits,
    /// The rolls that are there, in the order of the file; may be none.
    pub rolls: Vec<Roll>,
}

/// One roll of cloth.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Roll {
    /// What is written on it.
    pub name: String,
    /// What is on it.
    pub length: Length,
    /// Its shade band; empty where not judged.
    pub shade: String,
}

/// An order read from disk with the styles it orders.
#[derive(Clone, Debug)]
pub struct LoadedOrder {
    /// The order.
    pub order: Order,
    /// Each style it names, once.
    pub styles: IndexMap<String, Loaded>,
    /// The collection.
    pub collection: Collection,
    /// The order's file.
    pub path: PathBuf,
    /// The collection's folder.
    pub collection_folder: PathBuf,
}
