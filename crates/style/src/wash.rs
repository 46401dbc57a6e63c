//! The first wash of a pair: who washes it, when and how.

use serde::Serialize;
use trade::{Duration, Temperature};

use crate::choices::choices;

/// The `[wash]` section; left out, who washes and how is not stated, and the chart is of the pair after its first
/// wash.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Wash {
    /// What is done to the pair before it is sold.
    pub finish: WashFinish,
    /// Who washes it.
    pub by: WashedBy,
    /// What is set only after the wash, because it would suffer.
    pub set_after: Vec<SetAfter>,
    /// What is done, in turn; empty while the recipe is open.
    pub steps: Vec<WashStep>,
}

impl Wash {
    /// Whether the pair is measured, and sold, before any wash.
    #[must_use]
    pub fn is_raw(&self) -> bool {
        self.finish == WashFinish::Raw
    }
}

/// What is done to a pair before it is sold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WashFinish {
    /// Nothing: the chart is of the unwashed pair.
    Raw,
    /// Rinsed in water, so that it has shrunk.
    Rinsed,
    /// Washed by a recipe.
    Washed,
}
choices!(WashFinish: Raw = "raw", Rinsed = "rinsed", Washed = "washed");

/// Who gives a pair its first wash.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WashedBy {
    /// The mill, before the cloth is cut.
    Mill,
    /// A laundry.
    Laundry,
    /// The workroom that sews it.
    Workroom,
    /// Whoever wears it.
    Wearer,
}
choices!(WashedBy: Mill = "mill", Laundry = "laundry", Workroom = "workroom", Wearer = "wearer");

/// What can be set after the wash.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SetAfter {
    /// The patch: leather stiffens and curls in a hot wash.
    Patch,
    /// Sewn-in labels.
    Labels,
    /// Buttons.
    Buttons,
    /// Rivets.
    Rivets,
}
choices!(SetAfter: Patch = "patch", Labels = "labels", Buttons = "buttons", Rivets = "rivets");

/// One step of a wash recipe.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct WashStep {
    /// What is done, in the maker's own words: "rinse", "tumble dry".
    pub does: String,
    /// How warm.
    pub temperature: Option<Temperature>,
    /// How long.
    pub time: Option<Duration>,
    /// Litres of water to the kilogram of goods.
    pub liquor: Option<u32>,
}

/// "rinse, 40 °C, 10 min, 1:10", as it reads in any language but for the maker's own words.
impl std::fmt::Display for WashStep {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.does)?;
        if let Some(temperature) = self.temperature {
            write!(f, ", {temperature}")?;
        }
        if let Some(time) = self.time {
            write!(f, ", {time}")?;
        }
        if let Some(liquor) = self.liquor {
            write!(f, ", 1:{liquor}")?;
        }
        Ok(())
    }
}
