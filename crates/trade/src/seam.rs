//! Seam classes of ISO 4916 and ASTM D6193, and the operations of five-pocket jeans.

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

    /// A plain name.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Superimposed => "superimposed",
            Self::Lapped => "lapped",
            Self::Bound => "bound",
            Self::Flat => "flat",
            Self::Ornamental => "ornamental",
            Self::EdgeFinish => "edge finish",
            Self::Attaching => "attaching of separate items",
            Self::SinglePly => "single-ply construction",
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

/// A sewing operation of five-pocket jeans as usually done.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SeamOperation {
    /// A short key: "inseam-felled".
    pub key: &'static str,
    /// What is sewn.
    pub name: &'static str,
    /// Stitch types in use for it; where there are several they are alternatives or are sewn one
    /// after the other, as the name says.
    pub stitches: &'static [StitchType],
    /// Seam classes in use for it.
    pub seams: &'static [SeamClass],
    /// The machine.
    pub machine: &'static str,
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

/// The operation with a key, if there is one.
pub fn operation(key: &str) -> Option<&'static SeamOperation> {
    OPERATIONS.iter().find(|operation| operation.key == key)
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
        let seam = operation("inseam-felled").unwrap().seams[0];
        assert_eq!((seam.astm, seam.iso), ("LSc-2", "2.04.06"));
        assert_eq!(seam.iso_class(), Some(IsoClass::Lapped));
        assert_eq!(seam.astm_family(), Some(AstmFamily::Lapped));
        assert_eq!(seam.rows(), Some(2));
        assert!(seam.astm_confidence.is_published());
        assert_eq!(seam.iso_confidence, Confidence::FromMemory);
    }

    #[test]
    fn every_operation_is_well_formed() {
        for operation in &OPERATIONS {
            let key = operation.key;
            let same = OPERATIONS.iter().filter(|other| other.key == key).count();
            assert_eq!(same, 1, "{key}");
            assert!(!operation.stitches.is_empty(), "{key}");
            assert!(operation.needles.0 <= operation.needles.1, "{key}");
            assert!(operation.gauge.is_none_or(|(a, b)| a <= b), "{key}");
            assert!(operation.density.is_none_or(|(a, b)| a <= b), "{key}");
            for seam in operation.seams {
                assert!(seam.iso_class().is_some(), "{key} {}", seam.iso);
                assert!(seam.astm_family().is_some(), "{key} {}", seam.astm);
            }
        }
        assert_eq!(operation("sleeve"), None);
    }
}
