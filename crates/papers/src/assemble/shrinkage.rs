//! What a cloth loses in its first wash, and what that figure rests on.

use cutting::{ClothWash, Shrinkage};
use style::Cloth;
use words::{Key, Said, key, say};

use super::context::Context;

/// What the shrinkage of a cloth rests on.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Basis {
    /// The collection states both directions.
    Stated,
    /// Its wash test was measured, for one direction at least.
    Measured,
    /// One direction is stated and the other is not: along that it is reckoned not to shrink.
    InPart,
    /// Nothing is known: it is reckoned not to shrink.
    Open,
}

impl Basis {
    pub fn of(cloth: &Cloth) -> Self {
        let stated = [cloth.warp_shrinkage, cloth.weft_shrinkage];
        if stated.iter().all(Option::is_some) {
            Self::Stated
        } else if !cloth.wash_test.is_empty() {
            Self::Measured
        } else if stated.iter().any(Option::is_some) {
            Self::InPart
        } else {
            Self::Open
        }
    }

    /// Whether somebody has to be asked.
    pub const fn is_open(self) -> bool {
        matches!(self, Self::InPart | Self::Open)
    }

    /// "is stated to shrink", before the figures.
    pub const fn shrinks(self) -> Key {
        match self {
            Self::Stated | Self::InPart => key::PAPERS_SHRINKS_AS_STATED,
            Self::Measured => key::PAPERS_SHRINKS_AS_MEASURED,
            Self::Open => key::PAPERS_SHRINKS_OPEN,
        }
    }

    /// "stated", behind the figures.
    pub const fn word(self) -> Key {
        match self {
            Self::Stated => key::PAPERS_SHRINKAGE_STATED,
            Self::InPart => key::PAPERS_SHRINKAGE_IN_PART,
            Self::Measured => key::PAPERS_SHRINKAGE_MEASURED,
            Self::Open => key::PAPERS_SHRINKAGE_OPEN,
        }
    }
}

/// "stated to shrink 8 % × 4 % (warp × weft)".
pub(super) fn told(context: &Context<'_>, cloth: &Cloth) -> String {
    let Shrinkage { warp, weft } = ClothWash::of(cloth).shrinkage;
    let [warp, weft] = [warp, weft].map(|share| share.show(context.words.system));
    let said: Said = match Basis::of(cloth) {
        Basis::Stated | Basis::InPart => say::PapersShrinksStated { warp, weft }.into(),
        Basis::Measured => say::PapersShrinksMeasured { warp, weft }.into(),
        Basis::Open => return String::new(),
    };
    context.say.saying(&said)
}
