//! What is decided before cutting: how each cloth behaves in the wash, and how the band is cut.

use draft::ClothUse;
use sewing::Garment;
use sewing::wash::{AgainstSkew, ClothWash, ScaleError, Shrinkage, Washes};
use style::{BandCutting, SkewCutting, StyleDoc};

use crate::band::BandCut;

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
        Washes::of_style(&garment.doc, &garment.collection, |cloth| match cloth {
            ClothUse::Shell => self.shell,
            ClothUse::Pocketing => self.pocketing,
            ClothUse::Lining => self.lining,
        })
    }
}
