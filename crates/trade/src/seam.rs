//! Seam classes of ISO 4916 and ASTM D6193, and the operations of five-pocket jeans.

use words::{Key, key};

use crate::{Confidence, Length, StitchDensity, StitchType};

/// A class of ISO 4916:1991, by its first number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum IsoClass {
    /// Class 1.
    Superimposed,
    /// Class 2.
    Lapped,
    /// Class 3.
    Bound,
    /// Class 4.
    Flat,
    /// Class 5.
    Ornamental,
    /// Class 6.
    EdgeFinish,
    /// Class 7.
    Attaching,
    /// Class 8.
    SinglePly,
}

impl IsoClass {
    /// Every class, by number.
    pub const ALL: [Self; 8] = [
        Self::Superimposed,
        Self::Lapped,
        Self::Bound,
        Self::Flat,
        Self::Ornamental,
        Self::EdgeFinish,
        Self::Attaching,
        Self::SinglePly,
    ];

    /// The number of the class, 1 to 8.
    pub const fn number(self) -> u8 {
        match self {
            Self::Superimposed => 1,
            Self::Lapped => 2,
            Self::Bound => 3,
            Self::Flat => 4,
            Self::Ornamental => 5,
            Self::EdgeFinish => 6,
            Self::Attaching => 7,
            Self::SinglePly => 8,
        }
    }
}

/// The families of ASTM D6193, by their capital letters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AstmFamily {
    /// SS, superimposed.
    Superimposed,
    /// LS, lapped.
    Lapped,
    /// BS, bound.
    Bound,
    /// FS, flat.
    Flat,
    /// OS, ornamental.
    Ornamental,
    /// EF, edge finish.
    EdgeFinish,
}

/// A seam class in both standards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct SeamClass {
    /// ISO 4916 number: "2.04.06"; fewer groups where the others are open.
    pub iso: &'static str,
    /// ASTM D6193 letters and rows: "LSc-2".
    pub astm: &'static str,
    /// Whether the first two groups of the ISO number and its pairing with the letters are sure;
    /// otherwise the pairing is plausible and the variant uncertain.
    pub pairing_sure: bool,
    /// Where the ISO number comes from.
    pub iso_confidence: Confidence,
    /// Where the ASTM letters come from.
    pub astm_confidence: Confidence,
}

impl SeamClass {
    /// The ISO class, from the first group of the number.
    pub fn iso_class(&self) -> Option<IsoClass> {
        let number: u8 = self.iso.split('.').next()?.parse().ok()?;
        IsoClass::ALL
            .into_iter()
            .find(|class| class.number() == number)
    }

    /// The ASTM family, from the capital letters.
    pub fn astm_family(&self) -> Option<AstmFamily> {
        match self.astm.get(..2)? {
            "SS" => Some(AstmFamily::Superimposed),
            "LS" => Some(AstmFamily::Lapped),
            "BS" => Some(AstmFamily::Bound),
            "FS" => Some(AstmFamily::Flat),
            "OS" => Some(AstmFamily::Ornamental),
            "EF" => Some(AstmFamily::EdgeFinish),
            _ => None,
        }
    }

    /// The letters without the number of rows: "LSc".
    pub fn letters(&self) -> &'static str {
        self.astm
            .split_once('-')
            .map_or(self.astm, |(letters, _)| letters)
    }

    /// The first two groups of the ISO number, which do not hang on the number of rows: "2.04".
    pub fn iso_of_any_rows(&self) -> &'static str {
        let second = self.iso.match_indices('.').nth(1);
        second
            .and_then(|(at, _)| self.iso.get(..at))
            .unwrap_or(self.iso)
    }

    /// The rows of stitching, from the number after the letters.
    pub fn rows(&self) -> Option<u8> {
        self.astm.split_once('-')?.1.parse().ok()
    }
}

/// The letters described in the older federal table (garmenco.org, 751A stitches and seams, LS):
/// LSc flat felled, LSd a folded ply set onto another, LSe yoke type, LSq mock felled.
const FEDERAL: Confidence = Confidence::Published("Fed. Std. 751A, seam class LS");

const fn class(iso: &'static str, astm: &'static str, pairing_sure: bool) -> SeamClass {
    SeamClass {
        iso,
        astm,
        pairing_sure,
        iso_confidence: Confidence::FromMemory,
        astm_confidence: Confidence::FromMemory,
    }
}

const fn lapped(iso: &'static str, astm: &'static str, pairing_sure: bool) -> SeamClass {
    SeamClass {
        astm_confidence: FEDERAL,
        ..class(iso, astm, pairing_sure)
    }
}

words::identities! {
    /// A sewing operation of five-pocket jeans, as the trade knows it; in sewing order, but for those that several seams share.
    pub enum SeamOperationId {
        /// Overedge of single edges.
        EdgeOveredge = "edge-overedge" => key::TRADE_EDGE_OVEREDGE,
        /// Hem of coin and back pocket.
        PocketHem = "pocket-hem" => key::TRADE_POCKET_HEM,
        /// Setting of a patch pocket.
        PatchPocket = "patch-pocket" => key::TRADE_PATCH_POCKET,
        /// Attaching of a facing to a pocket bag.
        PocketFacing = "pocket-facing" => key::TRADE_POCKET_FACING,
        /// Closing of a pocket bag, then turned and topstitched.
        PocketBag = "pocket-bag" => key::TRADE_POCKET_BAG,
        /// Topstitching of the front pocket mouth.
        PocketMouth = "pocket-mouth" => key::TRADE_POCKET_MOUTH,
        /// Left fly and its topstitching.
        Fly = "fly" => key::TRADE_FLY,
        /// Joining of the front rise.
        FrontRise = "front-rise" => key::TRADE_FRONT_RISE,
        /// Felled yoke seam.
        Yoke = "yoke" => key::TRADE_YOKE,
        /// Felled seat seam.
        Seat = "seat" => key::TRADE_SEAT,
        /// Felled inseam.
        InseamFelled = "inseam-felled" => key::TRADE_INSEAM_FELLED,
        /// Overedged inseam, then topstitched.
        InseamOveredged = "inseam-overedged" => key::TRADE_INSEAM_OVEREDGED,
        /// Overedged outseam, then topstitched at the hip.
        OutseamOveredged = "outseam-overedged" => key::TRADE_OUTSEAM_OVEREDGED,
        /// Outseam pressed open.
        OutseamBusted = "outseam-busted" => key::TRADE_OUTSEAM_BUSTED,
        /// Waistband attached through a folder.
        WaistbandFolder = "waistband-folder" => key::TRADE_WAISTBAND_FOLDER,
        /// Waistband attached, then topstitched.
        WaistbandTopstitched = "waistband-topstitched" => key::TRADE_WAISTBAND_TOPSTITCHED,
        /// Closing of the waistband ends.
        WaistbandEnds = "waistband-ends" => key::TRADE_WAISTBAND_ENDS,
        /// Bottom hem.
        Hem = "hem" => key::TRADE_HEM,
        /// Belt-loop strip.
        BeltLoop = "belt-loop" => key::TRADE_BELT_LOOP,
        /// Closing of a bag with its edges enclosed.
        FrenchSeam = "french-seam" => key::TRADE_FRENCH_SEAM,
        /// Binding of a raw edge.
        Binding = "binding" => key::TRADE_BINDING,
        /// Turning in of a single edge.
        CleanFinish = "clean-finish" => key::TRADE_CLEAN_FINISH,
        /// Sewing on of a patch or label.
        LaidOn = "laid-on" => key::TRADE_LAID_ON,
        /// Bartacks, and attaching of belt loops.
        Bartack = "bartack" => key::TRADE_BARTACK,
    }
}

/// A sewing operation of five-pocket jeans as usually done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamOperation {
    /// Which.
    pub id: SeamOperationId,
    /// Stitch types in use for it; where there are several they are alternatives or are sewn one
    /// after the other, as the name says.
    pub stitches: &'static [StitchType],
    /// Seam classes in use for it.
    pub seams: &'static [SeamClass],
    /// The machine, or those that are alternatives or follow one another, with what is put on them.
    pub machine: Key,
    /// Needles, least and most.
    pub needles: (u8, u8),
    /// Needle gauge or overedge bite, least and most, where one is usual.
    pub gauge: Option<(Length, Length)>,
    /// Stitch density, least and most, where one is usual.
    pub density: Option<(StitchDensity, StitchDensity)>,
    /// Where stitch, needles, gauge and density come from.
    pub confidence: Confidence,
}

mod operations;

pub use operations::OPERATIONS;

/// What is known of an operation.
#[must_use]
pub fn operation(id: SeamOperationId) -> &'static SeamOperation {
    // The table has a row for each in the order of the identities, which a test holds.
    &OPERATIONS[id as usize]
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    /// The eight classes of ISO 4916:1991, as listed at textilefashionstudy.com.
    #[test]
    fn classes_are_numbered_one_to_eight() {
        let numbers: Vec<u8> = IsoClass::ALL.iter().map(|c| c.number()).collect();
        assert_eq!(numbers, [1, 2, 3, 4, 5, 6, 7, 8]);
    }

    /// The felled seam is LSc: Fed. Std. 751A. Its ISO number is from memory.
    #[test]
    fn the_felled_inseam_is_lapped_with_two_rows() {
        let seam = operation(SeamOperationId::InseamFelled).seams[0];
        assert_eq!((seam.astm, seam.iso), ("LSc-2", "2.04.06"));
        assert_eq!(seam.iso_class(), Some(IsoClass::Lapped));
        assert_eq!(seam.astm_family(), Some(AstmFamily::Lapped));
        assert_eq!(seam.rows(), Some(2));
        assert_eq!((seam.letters(), seam.iso_of_any_rows()), ("LSc", "2.04"));
        assert!(seam.astm_confidence.is_published());
        assert_eq!(seam.iso_confidence, Confidence::FromMemory);
    }

    #[test]
    fn every_operation_is_well_formed() {
        for (operation, id) in OPERATIONS.iter().zip(SeamOperationId::ALL) {
            let key = id.code();
            assert_eq!(operation.id, id, "the table is in another order");
            assert_eq!(SeamOperationId::of(key), Some(id));
            assert!(!operation.stitches.is_empty(), "{key}");
            assert!(operation.needles.0 <= operation.needles.1, "{key}");
            assert!(operation.gauge.is_none_or(|(a, b)| a <= b), "{key}");
            assert!(operation.density.is_none_or(|(a, b)| a <= b), "{key}");
            for seam in operation.seams {
                assert!(seam.iso_class().is_some(), "{key} {}", seam.iso);
                assert!(seam.astm_family().is_some(), "{key} {}", seam.astm);
            }
        }
        assert_eq!(SeamOperationId::of("sleeve"), None);
    }
}
