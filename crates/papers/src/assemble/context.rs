//! What a pack is told, and what all its parts look at.

use ::words::Said;
use cutting::{CutSize, Plan, cut};
use sewing::Garment;
use style::{Change, Loaded, Size, StyleDoc};

use super::words::Words;

/// What a pack needs to be told beyond the style.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Assembly {
    /// The size that is drawn and counted. `None`, or one the style is not made in, is the base size.
    pub size: Option<Size>,
    /// The number of this version of the style, from 1.
    pub revision: u32,
    /// What differs from the version before.
    pub changes: Vec<Change>,
}

/// What the parts of a pack look at.
pub(super) struct Context<'a> {
    pub loaded: &'a Loaded,
    pub run: &'a [Garment],
    /// The garment that is drawn and counted.
    pub shown: &'a Garment,
    /// The same as it is sewn, before its wash.
    pub sewn: Garment,
    /// Its pieces as they are cut.
    pub cut: CutSize,
    /// The sizes that show how the pieces grow, as they are cut: every waist in the base length, and every
    /// length in the base waist.
    pub growth: Growth,
    pub words: Words,
    /// What is said, in the language of the pack.
    pub say: &'static ::words::Words,
}

impl Context<'_> {
    /// What is said, in the language of the pack; nothing where there is nothing to say.
    pub fn said(&self, said: Option<&Said>) -> String {
        said.map_or_else(String::new, |said| self.say.saying(said))
    }
}

/// The sizes that show how the pieces grow.
pub(super) struct Growth {
    /// Every waist in the base length.
    pub waists: Vec<CutSize>,
    /// Every length in the base waist.
    pub lengths: Vec<CutSize>,
}

impl Growth {
    /// Of the run's garments, those in the base length and those in the base waist.
    pub fn of(style: &StyleDoc, run: &[Garment], plan: &Plan) -> Growth {
        let base = style.sizes.base;
        let of = |keep: &dyn Fn(Size) -> bool| -> Vec<CutSize> {
            let kept = run.iter().filter(|garment| keep(garment.size));
            kept.map(|garment| cut(garment, plan)).collect()
        };
        Growth {
            waists: of(&|size| size.length == base.length),
            lengths: of(&|size| size.waist == base.waist),
        }
    }
}
