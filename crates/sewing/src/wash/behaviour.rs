//! How the cloths of a style behave in the wash.

use draft::ClothUse;
use style::{Along, Cloth, Collection, StyleDoc, Wash};
use trade::Share;

use super::scale::{ScaleError, Shrinkage, checked_skew, skew_test};

/// How one cloth behaves in the wash.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClothWash {
    /// What it loses.
    pub shrinkage: Shrinkage,
    /// Skew of the weft that is left after the wash; positive where the weft rises to the right, face up.
    pub skew: Share,
}

impl ClothWash {
    /// A cloth that the wash leaves as it is.
    pub const NOTHING: ClothWash = ClothWash {
        shrinkage: Shrinkage::NONE,
        skew: Share::ZERO,
    };

    /// What the collection states of a cloth; what it does not state, as its wash test measured it; nothing
    /// where neither says.
    pub fn of(cloth: &Cloth) -> ClothWash {
        let askew = cloth
            .skew_test
            .and_then(|square| skew_test(square.rising, square.falling).ok());
        ClothWash {
            shrinkage: Shrinkage {
                warp: cloth.shrinkage(Along::Warp),
                weft: cloth.shrinkage(Along::Weft),
            },
            skew: cloth.skew.or(askew).unwrap_or(Share::ZERO),
        }
    }

    /// The same, if it can be believed.
    ///
    /// # Errors
    /// [`ScaleError`] for what no cloth does.
    pub fn checked(self) -> Result<ClothWash, ScaleError> {
        Ok(ClothWash {
            shrinkage: self.shrinkage.checked()?,
            skew: checked_skew(self.skew)?,
        })
    }
}

/// The name of a cloth in the collection; empty where the style names none.
pub fn cloth_key(doc: &StyleDoc, cloth: ClothUse) -> &str {
    let refs = &doc.cloth;
    match cloth {
        ClothUse::Shell => &refs.shell,
        ClothUse::Pocketing => &refs.pocketing,
        ClothUse::Lining => refs.lining.as_deref().unwrap_or(""),
    }
}

/// The behaviour of the three cloths of a style.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Washes {
    shell: ClothWash,
    pocketing: ClothWash,
    lining: ClothWash,
}

impl Washes {
    /// No wash.
    pub const NONE: Washes = Washes {
        shell: ClothWash::NOTHING,
        pocketing: ClothWash::NOTHING,
        lining: ClothWash::NOTHING,
    };

    /// What the wash between sewing and measuring does: that of [`Washes::first`], and nothing where the pair is
    /// measured and sold raw.
    pub fn of_style(
        doc: &StyleDoc,
        collection: &Collection,
        stated: impl Fn(ClothUse) -> Option<ClothWash>,
    ) -> (Washes, Vec<(ClothUse, ScaleError)>) {
        let (washes, wrong) = Self::first(doc, collection, stated);
        if doc.wash.as_ref().is_some_and(Wash::is_raw) {
            return (Self::NONE, wrong);
        }
        (washes, wrong)
    }

    /// What its first wash does to each cloth, whoever gives it, `stated` before what the collection says; one
    /// that is not believed counts as unchanged by the wash, and is given back with why.
    pub fn first(
        doc: &StyleDoc,
        collection: &Collection,
        stated: impl Fn(ClothUse) -> Option<ClothWash>,
    ) -> (Washes, Vec<(ClothUse, ScaleError)>) {
        let mut wrong = Vec::new();
        let mut wash = |cloth: ClothUse| {
            let known = collection.cloths.get(cloth_key(doc, cloth));
            let found = stated(cloth).or_else(|| known.map(ClothWash::of));
            match found.unwrap_or(ClothWash::NOTHING).checked() {
                Ok(wash) => wash,
                Err(why) => {
                    wrong.push((cloth, why));
                    ClothWash::NOTHING
                }
            }
        };
        let washes = Washes {
            shell: wash(ClothUse::Shell),
            pocketing: wash(ClothUse::Pocketing),
            lining: wash(ClothUse::Lining),
        };
        (washes, wrong)
    }

    /// The behaviour of one of them.
    #[must_use]
    pub const fn of(self, cloth: ClothUse) -> ClothWash {
        match cloth {
            ClothUse::Shell => self.shell,
            ClothUse::Pocketing => self.pocketing,
            ClothUse::Lining => self.lining,
        }
    }
}
