//! The constructions of a seam: how many plies meet, by which rule their allowances are found, how
//! the allowance ends up inside, and the published class.
//!
//! Plain allowances are common practice: 12.7 mm for seams pressed open or topstitched, 9.5 to
//! 10 mm for those that are neatened or turned in.

use style::{Construction, Seam};
use trade::Length;
use trade::seam::{SeamClass, SeamOperation, operation};

use crate::seam::facts;

/// Both plies of an even seam.
const fn even(mm: f64) -> Rule {
    Rule::Even(Length::mm(mm))
}

/// What an allowance looks like from inside, lying flat on the piece it is pressed towards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Finish {
    /// The cloth's own edge.
    Selvedge,
    /// Raw edge covered by an overedge row.
    Overedged,
    /// Folded under: no raw edge.
    Folded,
    /// Raw.
    Raw,
}

/// How the allowances of a construction are found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rule {
    /// The same on both plies.
    Even(Length),
    /// Unequal, from the width of the lap; see [`crate::Fell`].
    Felled,
    /// Twice the depth of the hem and what two turns of the cloth take up.
    RolledHem,
    /// The depth of the hem, what is turned under first, and what two turns of the cloth take up.
    FoldedHem,
    /// Twice the depth the rows need and what two turns of the cloth take up.
    TurnedHem,
    /// No cloth beyond the line.
    None,
}

/// What is known about a construction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Construct {
    /// Which.
    pub construction: Construction,
    /// Plies the needle goes through at the thickest place along the seam.
    pub plies: u8,
    /// Plies it joins.
    pub joins: u8,
    /// How its allowances are found.
    pub rule: Rule,
    /// How the edge inside is finished.
    pub finish: Finish,
    /// Which way it lies inside, in words.
    pub lies: &'static str,
    /// The key of the operation in [`trade::seam::OPERATIONS`] whose machine and class it has.
    pub operation: &'static str,
    /// The letters of its class in ASTM D6193, without the number of rows.
    pub letters: &'static str,
}

/// All constructions, in the order of [`Construction::WORDS`].
pub const CONSTRUCTS: [Construct; 18] = [
    Construct {
        construction: Construction::PressedOpen,
        plies: 2,
        joins: 2,
        rule: even(12.7),
        finish: Finish::Overedged,
        lies: "allowances pressed apart",
        operation: "outseam-busted",
        letters: "SSa",
    },
    Construct {
        construction: Construction::LapFelled,
        plies: 4,
        joins: 2,
        rule: Rule::Felled,
        finish: Finish::Folded,
        lies: "both edges turned into each other",
        operation: "inseam-felled",
        letters: "LSc",
    },
    Construct {
        construction: Construction::MockFelled,
        plies: 3,
        joins: 2,
        rule: even(12.7),
        finish: Finish::Overedged,
        lies: "both allowances towards the ply on top",
        operation: "front-rise",
        letters: "LSq",
    },
    Construct {
        construction: Construction::SafetyStitched,
        plies: 2,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Overedged,
        lies: "both allowances to one side",
        operation: "inseam-overedged",
        letters: "SSa",
    },
    Construct {
        construction: Construction::Overlocked,
        plies: 2,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Overedged,
        lies: "both allowances to one side",
        operation: "outseam-overedged",
        letters: "SSa",
    },
    // Four plies of the bag's own cloth: two rows, the first inside the second.
    Construct {
        construction: Construction::FrenchSeam,
        plies: 4,
        joins: 2,
        rule: even(12.0),
        finish: Finish::Folded,
        lies: "both edges enclosed, to one side",
        operation: "french-seam",
        letters: "SSae",
    },
    // The strip with both its edges turned in lies on either face of the edge.
    Construct {
        construction: Construction::BoundEdge,
        plies: 5,
        joins: 1,
        rule: Rule::None,
        finish: Finish::Folded,
        lies: "raw edge inside the strip",
        operation: "binding",
        letters: "BSc",
    },
    Construct {
        construction: Construction::CleanFinished,
        plies: 2,
        joins: 1,
        rule: even(6.0),
        finish: Finish::Folded,
        lies: "turned once to the inside",
        operation: "clean-finish",
        letters: "EFa",
    },
    Construct {
        construction: Construction::BandOverEdge,
        plies: 5,
        joins: 2,
        rule: even(9.5),
        finish: Finish::Folded,
        lies: "body edge inside the band",
        operation: "waistband-folder",
        letters: "BSc",
    },
    Construct {
        construction: Construction::BandTurned,
        plies: 5,
        joins: 2,
        rule: even(9.5),
        finish: Finish::Folded,
        lies: "all allowances up into the band, its inner edge turned in",
        operation: "waistband-topstitched",
        letters: "LSg",
    },
    Construct {
        construction: Construction::RolledHem,
        plies: 3,
        joins: 1,
        rule: Rule::RolledHem,
        finish: Finish::Folded,
        lies: "turned twice to the inside",
        operation: "hem",
        letters: "EFb",
    },
    Construct {
        construction: Construction::FoldedHem,
        plies: 3,
        joins: 1,
        rule: Rule::FoldedHem,
        finish: Finish::Folded,
        lies: "turned under, then up to the inside",
        operation: "hem",
        letters: "EFb",
    },
    Construct {
        construction: Construction::TurnedHem,
        plies: 3,
        joins: 1,
        rule: Rule::TurnedHem,
        finish: Finish::Folded,
        lies: "turned twice to the inside",
        operation: "pocket-hem",
        letters: "EFb",
    },
    Construct {
        construction: Construction::TurnedEdge,
        plies: 4,
        joins: 2,
        rule: even(9.5),
        finish: Finish::Raw,
        lies: "turned to the inside between the plies",
        operation: "pocket-mouth",
        letters: "SSe",
    },
    Construct {
        construction: Construction::PatchSet,
        plies: 3,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Folded,
        lies: "edges turned in under the patch",
        operation: "patch-pocket",
        letters: "LSd",
    },
    Construct {
        construction: Construction::LaidOn,
        plies: 2,
        joins: 2,
        rule: Rule::None,
        finish: Finish::Raw,
        lies: "laid on top, its edges as they are",
        operation: "laid-on",
        letters: "LSa",
    },
    Construct {
        construction: Construction::Strip,
        plies: 2,
        joins: 1,
        rule: Rule::None,
        finish: Finish::Raw,
        lies: "edges meet in the middle of the underside",
        operation: "belt-loop",
        letters: "EFh",
    },
    Construct {
        construction: Construction::Surface,
        plies: 1,
        joins: 1,
        rule: Rule::None,
        finish: Finish::Raw,
        lies: "joins nothing",
        operation: "fly",
        letters: "OSa",
    },
];

/// What is known about a construction.
pub fn construct(construction: Construction) -> &'static Construct {
    CONSTRUCTS
        .iter()
        .find(|c| c.construction == construction)
        .unwrap_or(&CONSTRUCTS[0])
}

/// The usual operation for a seam, with its machine: the seam's own where the trade has one, else
/// that of its construction.
pub fn operation_of(seam: &Seam) -> Option<&'static SeamOperation> {
    let own = facts(seam.id)
        .operations
        .iter()
        .find(|own| own.of.contains(&seam.construction));
    let key = own.map_or(construct(seam.construction).operation, |own| own.key);
    operation(key)
}

/// The class of a seam in ISO 4916 and ASTM D6193: of the classes usual for its operation the one
/// of its construction, with as many rows as it has where the table knows that variant.
pub fn class_of(seam: &Seam) -> Option<&'static SeamClass> {
    let classes = operation_of(seam)?.seams;
    let letters = construct(seam.construction).letters;
    let alike = |c: &&SeamClass| c.astm.split('-').next() == Some(letters);
    let rows = |c: &&SeamClass| c.rows().map(usize::from) == Some(seam.rows.len());
    classes
        .iter()
        .filter(alike)
        .find(rows)
        .or_else(|| classes.iter().find(alike))
        .or(classes.first())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use style::{RowSpec, SeamId};
    use trade::{StitchDensity, StitchType};

    fn seam(id: SeamId, construction: Construction, offsets: &[f64]) -> Seam {
        Seam {
            id,
            construction,
            lap: None,
            rows: offsets
                .iter()
                .map(|mm| RowSpec {
                    stitch: StitchType::S401,
                    density: StitchDensity::per_inch(8.0),
                    yarn: String::new(),
                    under: String::new(),
                    offset: Length::mm(*mm),
                    begin: None,
                    end: None,
                })
                .collect(),
        }
    }

    #[test]
    fn every_construction_is_known() {
        for ((_, construction), facts) in Construction::WORDS.iter().zip(&CONSTRUCTS) {
            assert_eq!(facts.construction, *construction);
            assert!(operation(facts.operation).is_some(), "{construction}");
            let class = class_of(&seam(SeamId::Decoration, *construction, &[1.6, 8.0])).unwrap();
            assert!(class.astm.starts_with(facts.letters), "{construction}");
        }
    }

    #[test]
    fn a_seam_finds_its_own_class() {
        let class =
            |id, construction, rows: &[f64]| class_of(&seam(id, construction, rows)).unwrap().astm;
        assert_eq!(
            class(SeamId::Seat, Construction::LapFelled, &[1.6, 8.0]),
            "LSc-2"
        );
        assert_eq!(
            class(SeamId::Yoke, Construction::LapFelled, &[1.6, 5.0, 8.0]),
            "LSc-3"
        );
        assert_eq!(
            class(SeamId::FrontRise, Construction::MockFelled, &[1.6, 8.0]),
            "LSq-3"
        );
        assert_eq!(
            class(SeamId::CoinSet, Construction::PatchSet, &[1.6]),
            "LSd-1"
        );
        assert_eq!(
            class(SeamId::CoinSet, Construction::PatchSet, &[1.6, 8.0]),
            "LSd-2"
        );
        assert_eq!(
            class(SeamId::FacingSet, Construction::PatchSet, &[2.0]),
            "LSa"
        );
        assert_eq!(
            class(SeamId::Fly, Construction::TurnedEdge, &[34.0, 28.0]),
            "SSe-2"
        );
        assert_eq!(
            operation_of(&seam(SeamId::Seat, Construction::LapFelled, &[]))
                .unwrap()
                .key,
            "seat"
        );
    }
}
