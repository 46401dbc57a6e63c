//! What is decided before cutting: how each cloth behaves in the wash, and how the band is cut.

use draft::ClothUse;
use sewing::Garment;
use style::{Along, BandCutting, Cloth, SkewCutting, StyleDoc};
use trade::Share;

use crate::band::BandCut;
use crate::scale::{AgainstSkew, ScaleError, Shrinkage};
use crate::wash::skew_test;

/// How one cloth behaves in the wash.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ClothWash {
    /// What it loses.
    pub shrinkage: Shrinkage,
    /// Skew of the weft that is left after the wash; positive where the weft rises to the right, face up.
    pub skew: Share,
}

impl ClothWash {
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

    fn checked(self) -> Result<ClothWash, ScaleError> {
        Ok(ClothWash {
            shrinkage: self.shrinkage.checked()?,
            skew: crate::skew::checked(self.skew)?,
        })
    }
}

/// What is decided before cutting. What is `None` is taken from the collection.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
pub struct Plan {
    /// The shell.
    pub shell: Option<ClothWash>,
    /// The cloth of the pocket bags.
    pub pocketing: Option<ClothWash>,
    /// The cloth of the linings.
    pub lining: Option<ClothWash>,
    /// How the band is cut.
    pub band: BandCut,
    /// How pieces are cut against a skew, where a cloth has one.
    pub against_skew: AgainstSkew,
}

/// The behaviour of the three cloths of a style.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Washes {
    shell: ClothWash,
    pocketing: ClothWash,
    lining: ClothWash,
    pub against: AgainstSkew,
}

impl Washes {
    pub fn of(self, cloth: ClothUse) -> ClothWash {
        match cloth {
            ClothUse::Shell => self.shell,
            ClothUse::Pocketing => self.pocketing,
            ClothUse::Lining => self.lining,
        }
    }
}

/// The name of a cloth in the collection; empty where the style names none.
pub(crate) fn cloth_key(garment: &Garment, cloth: ClothUse) -> &str {
    let refs = &garment.doc.cloth;
    match cloth {
        ClothUse::Shell => &refs.shell,
        ClothUse::Pocketing => &refs.pocketing,
        ClothUse::Lining => refs.lining.as_deref().unwrap_or(""),
    }
}

const NOTHING: ClothWash = ClothWash {
    shrinkage: Shrinkage::NONE,
    skew: Share::ZERO,
};

impl Plan {
    /// What a style decides; its cloths behave as the collection says.
    pub fn of(doc: &StyleDoc) -> Plan {
        let cutting = &doc.cutting;
        let residual = Shrinkage {
            warp: cutting.residual_warp,
            weft: cutting.residual_weft,
        };
        Plan {
            band: match cutting.band {
                None => BandCut::Unstated,
                Some(BandCutting::Weft) => BandCut::AlongWeft,
                Some(BandCutting::Preshrunk) => BandCut::Preshrunk(residual),
                Some(BandCutting::Eased) => BandCut::StatedEase,
            },
            against_skew: match cutting.skew {
                SkewCutting::Straight => AgainstSkew::Straight,
                SkewCutting::Sheared => AgainstSkew::Sheared,
                SkewCutting::GrainTurned => AgainstSkew::GrainTurned,
            },
            ..Plan::default()
        }
    }

    /// The behaviour of each cloth; one that is not believed counts as unchanged by the wash, and is
    /// given back with why.
    pub(crate) fn washes(&self, garment: &Garment) -> (Washes, Vec<(ClothUse, ScaleError)>) {
        let mut wrong = Vec::new();
        let mut wash = |cloth: ClothUse, stated: Option<ClothWash>| {
            let known = garment.collection.cloths.get(cloth_key(garment, cloth));
            let found = stated.or_else(|| known.map(ClothWash::of));
            match found.unwrap_or(NOTHING).checked() {
                Ok(wash) => wash,
                Err(why) => {
                    wrong.push((cloth, why));
                    NOTHING
                }
            }
        };
        let washes = Washes {
            shell: wash(ClothUse::Shell, self.shell),
            pocketing: wash(ClothUse::Pocketing, self.pocketing),
            lining: wash(ClothUse::Lining, self.lining),
            against: self.against_skew,
        };
        (washes, wrong)
    }
}
