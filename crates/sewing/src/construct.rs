//! The constructions of a seam: how many plies meet, by which rule their allowances are found, how
//! the allowance ends up inside, and the published class.
//!
//! Plain allowances are common practice: 12.7 mm for seams pressed open or topstitched, 9.5 to
//! 10 mm for those that are neatened or turned in.

use style::{Construction, RowSpec, Seam, SeamId};
use trade::seam::{SeamClass, SeamOperation, SeamOperationId as Op, operation};
use trade::{Length, StitchType};
use words::{Key, key};

use crate::joining::JOINING;
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
    /// Which way it lies inside.
    pub lies: Key,
    /// The operation of the trade whose machine and class it has.
    pub operation: Op,
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
        lies: key::SEAM_LIES_PRESSED_OPEN,
        operation: Op::OutseamBusted,
        letters: "SSa",
    },
    Construct {
        construction: Construction::LapFelled,
        plies: 4,
        joins: 2,
        rule: Rule::Felled,
        finish: Finish::Folded,
        lies: key::SEAM_LIES_LAP_FELLED,
        operation: Op::InseamFelled,
        letters: "LSc",
    },
    Construct {
        construction: Construction::MockFelled,
        plies: 3,
        joins: 2,
        rule: even(12.7),
        finish: Finish::Overedged,
        lies: key::SEAM_LIES_MOCK_FELLED,
        operation: Op::FrontRise,
        letters: "LSq",
    },
    Construct {
        construction: Construction::SafetyStitched,
        plies: 2,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Overedged,
        lies: key::SEAM_LIES_ONE_SIDE,
        operation: Op::InseamOveredged,
        letters: "SSa",
    },
    Construct {
        construction: Construction::Overlocked,
        plies: 2,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Overedged,
        lies: key::SEAM_LIES_ONE_SIDE,
        operation: Op::OutseamOveredged,
        letters: "SSa",
    },
    // Four plies of the bag's own cloth: two rows, the first inside the second.
    Construct {
        construction: Construction::FrenchSeam,
        plies: 4,
        joins: 2,
        rule: even(12.0),
        finish: Finish::Folded,
        lies: key::SEAM_LIES_FRENCH_SEAM,
        operation: Op::FrenchSeam,
        letters: "SSae",
    },
    // The strip with both its edges turned in lies on either face of the edge.
    Construct {
        construction: Construction::BoundEdge,
        plies: 5,
        joins: 1,
        rule: Rule::None,
        finish: Finish::Folded,
        lies: key::SEAM_LIES_BOUND_EDGE,
        operation: Op::Binding,
        letters: "BSc",
    },
    Construct {
        construction: Construction::CleanFinished,
        plies: 2,
        joins: 1,
        rule: even(6.0),
        finish: Finish::Folded,
        lies: key::SEAM_LIES_CLEAN_FINISHED,
        operation: Op::CleanFinish,
        letters: "EFa",
    },
    Construct {
        construction: Construction::BandOverEdge,
        plies: 5,
        joins: 2,
        rule: even(9.5),
        finish: Finish::Folded,
        lies: key::SEAM_LIES_BAND_OVER_EDGE,
        operation: Op::WaistbandFolder,
        letters: "BSc",
    },
    Construct {
        construction: Construction::BandTurned,
        plies: 5,
        joins: 2,
        rule: even(9.5),
        finish: Finish::Folded,
        lies: key::SEAM_LIES_BAND_TURNED,
        operation: Op::WaistbandTopstitched,
        letters: "LSg",
    },
    Construct {
        construction: Construction::RolledHem,
        plies: 3,
        joins: 1,
        rule: Rule::RolledHem,
        finish: Finish::Folded,
        lies: key::SEAM_LIES_TURNED_TWICE,
        operation: Op::Hem,
        letters: "EFb",
    },
    Construct {
        construction: Construction::FoldedHem,
        plies: 3,
        joins: 1,
        rule: Rule::FoldedHem,
        finish: Finish::Folded,
        lies: key::SEAM_LIES_FOLDED_HEM,
        operation: Op::Hem,
        letters: "EFb",
    },
    Construct {
        construction: Construction::TurnedHem,
        plies: 3,
        joins: 1,
        rule: Rule::TurnedHem,
        finish: Finish::Folded,
        lies: key::SEAM_LIES_TURNED_TWICE,
        operation: Op::PocketHem,
        letters: "EFb",
    },
    Construct {
        construction: Construction::TurnedEdge,
        plies: 4,
        joins: 2,
        rule: even(9.5),
        finish: Finish::Raw,
        lies: key::SEAM_LIES_TURNED_EDGE,
        operation: Op::PocketMouth,
        letters: "SSe",
    },
    Construct {
        construction: Construction::PatchSet,
        plies: 3,
        joins: 2,
        rule: even(10.0),
        finish: Finish::Folded,
        lies: key::SEAM_LIES_PATCH_SET,
        operation: Op::PatchPocket,
        letters: "LSd",
    },
    Construct {
        construction: Construction::LaidOn,
        plies: 2,
        joins: 2,
        rule: Rule::None,
        finish: Finish::Raw,
        lies: key::SEAM_LIES_LAID_ON,
        operation: Op::LaidOn,
        letters: "LSa",
    },
    Construct {
        construction: Construction::Strip,
        plies: 2,
        joins: 1,
        rule: Rule::None,
        finish: Finish::Raw,
        lies: key::SEAM_LIES_STRIP,
        operation: Op::BeltLoop,
        letters: "EFh",
    },
    Construct {
        construction: Construction::Surface,
        plies: 1,
        joins: 1,
        rule: Rule::None,
        finish: Finish::Raw,
        lies: key::SEAM_LIES_SURFACE,
        operation: Op::Fly,
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
pub fn operation_of(seam: &Seam) -> &'static SeamOperation {
    let own = facts(seam.id)
        .operations
        .iter()
        .find(|own| own.of.contains(&seam.construction));
    operation(own.map_or(construct(seam.construction).operation, |own| own.id))
}

/// The class of a seam in ISO 4916 and ASTM D6193, with the rows of the seam as it is sewn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ClassOfSeam {
    /// ISO 4916 number: "2.04.06"; its first two groups where the table has no variant of so many rows.
    pub iso: &'static str,
    /// The letters in ASTM D6193: "LSc".
    pub letters: &'static str,
    /// The number behind the letters, from [`rows_of_class`].
    pub rows: usize,
    /// Whether number and letters are known to be of the same class.
    pub pairing_sure: bool,
}

impl ClassOfSeam {
    /// As ASTM D6193 writes it: "LSc-2"; the letters alone of a seam without rows.
    pub fn astm(&self) -> String {
        match self.rows {
            0 => self.letters.to_owned(),
            rows => format!("{}-{rows}", self.letters),
        }
    }
}

/// Whether an overedge can be what joins this seam: always a safety stitch, and any where the construction is an
/// overedge.
pub(crate) fn joins_by(seam: &Seam, overedge: StitchType) -> bool {
    matches!(
        seam.construction,
        Construction::Overlocked | Construction::SafetyStitched
    ) || overedge.threads().needle > 1
}

/// Whether a seam is joined before its visible rows are sewn and no row of the style says with what.
pub(crate) fn joined_by_no_row(seam: &Seam) -> bool {
    let joins = |row: &RowSpec| {
        row.offset < JOINING && (!row.stitch.is_overedge() || joins_by(seam, row.stitch))
    };
    let joined_first = matches!(
        seam.construction,
        Construction::MockFelled | Construction::TurnedEdge
    );
    joined_first && !seam.rows.iter().any(joins)
}

/// How many rows the number behind the letters of a class counts.
///
/// In ASTM D6193 and Fed. Std. 751A the last part of a designation is the number of rows of stitches (as described at
/// needleseye.net, seams and stitches, and in the US Navy's training manual 14218); which rows that are is common
/// practice: those that go through the plies, so that the row that joins them counts whether or not it is stated; a
/// safety stitch for its chain row and its overedge; a coverstitch once for all its needles. An overedge that only
/// neatens edges joined by another row is a stitching of its own, EFd, and is not counted.
pub fn rows_of_class(seam: &Seam) -> usize {
    let unstated = usize::from(joined_by_no_row(seam));
    let on_the_line = |row: &&RowSpec| row.offset < JOINING && !row.stitch.is_overedge();
    let joined_by_another = unstated > 0 || seam.rows.iter().any(|row| on_the_line(&row));
    let single_edge = seam.id == SeamId::FlyEdge;
    let mut rows = unstated;
    for stitch in StitchType::ALL {
        let of_it = || seam.rows.iter().filter(|row| row.stitch == stitch).count();
        let needles = usize::from(stitch.threads().needle).max(1);
        rows += match stitch {
            StitchType::S515 | StitchType::S516 if joined_by_another => 0,
            StitchType::S515 | StitchType::S516 => of_it() * 2,
            _ if stitch.is_overedge() => {
                let counts = single_edge || (joins_by(seam, stitch) && !joined_by_another);
                if counts { of_it() } else { 0 }
            }
            // The style has a row for each needle of a coverstitch.
            _ => of_it().div_ceil(needles),
        };
    }
    rows
}

/// The class of a seam: of the classes usual for its operation the one of its construction, with the rows it has.
pub fn class_of(seam: &Seam) -> Option<ClassOfSeam> {
    let classes = operation_of(seam).seams;
    let letters = construct(seam.construction).letters;
    let rows = rows_of_class(seam);
    let alike = |c: &&SeamClass| c.letters() == letters;
    let as_many = |c: &&SeamClass| c.rows().map(usize::from) == Some(rows);
    let variant = classes.iter().filter(alike).find(as_many);
    let found = variant
        .or_else(|| classes.iter().find(alike))
        .or(classes.first())?;
    let same_rows = found.rows().is_none_or(|of| usize::from(of) == rows);
    Some(ClassOfSeam {
        iso: if same_rows {
            found.iso
        } else {
            found.iso_of_any_rows()
        },
        letters: found.letters(),
        rows,
        pairing_sure: found.pairing_sure,
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use trade::StitchDensity;

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
            let class = class_of(&seam(SeamId::Decoration, *construction, &[1.6, 8.0])).unwrap();
            assert_eq!(class.letters, facts.letters, "{construction}");
        }
    }

    #[test]
    fn a_seam_finds_its_own_class() {
        let class = |id, construction, rows: &[f64]| {
            class_of(&seam(id, construction, rows)).unwrap().astm()
        };
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
            "LSd-1"
        );
        assert_eq!(
            operation_of(&seam(SeamId::Seat, Construction::LapFelled, &[])).id,
            Op::Seat
        );
    }

    /// By one rule: the row that joins counts whether or not it is stated, an overedge that neatens what is joined never.
    #[test]
    fn seams_of_the_same_rows_have_the_same_number() {
        let class = |id, construction, rows: &[(StitchType, f64)]| {
            let offsets: Vec<f64> = rows.iter().map(|(_, mm)| *mm).collect();
            let mut seam = seam(id, construction, &offsets);
            for (row, (stitch, _)) in seam.rows.iter_mut().zip(rows) {
                row.stitch = *stitch;
            }
            class_of(&seam).unwrap()
        };
        use StitchType::{S301, S401, S406, S504, S516};
        let two = [(S301, 1.6), (S301, 8.0)];
        let joined = [(S301, 1.6), (S301, 8.0), (S301, 0.0)];
        for rows in [&two[..], &joined] {
            let astm = |id, construction| class(id, construction, rows).astm();
            assert_eq!(astm(SeamId::Mouth, Construction::TurnedEdge), "SSe-3");
            assert_eq!(astm(SeamId::Fly, Construction::TurnedEdge), "SSe-3");
            assert_eq!(astm(SeamId::FrontRise, Construction::MockFelled), "LSq-3");
        }
        let neatened = [(S301, 1.6), (S301, 8.0), (S301, 0.0), (S504, 0.0)];
        let found = class(SeamId::FrontRise, Construction::MockFelled, &neatened);
        assert_eq!((found.astm().as_str(), found.iso), ("LSq-3", "2.02.03"));
        // One visible row is one less, of which the table has no number.
        let single = [(S401, 1.6), (S401, 0.0), (S504, 0.0)];
        let found = class(SeamId::FrontRise, Construction::MockFelled, &single);
        assert_eq!((found.astm().as_str(), found.iso), ("LSq-2", "2.02"));
        let astm = |id, construction, rows| class(id, construction, rows).astm();
        let open = [(S401, 0.0), (S504, 0.0)];
        assert_eq!(
            astm(SeamId::Inseam, Construction::PressedOpen, &open),
            "SSa-1"
        );
        let safety = [(S516, 0.0)];
        assert_eq!(
            astm(SeamId::BagClose, Construction::SafetyStitched, &safety),
            "SSa-2"
        );
        let strip = [(S406, 3.0), (S406, 9.0)];
        assert_eq!(astm(SeamId::LoopEdge, Construction::Strip, &strip), "EFh-1");
        let edge = [(S504, 0.0)];
        assert_eq!(
            astm(SeamId::FlyEdge, Construction::Overlocked, &edge),
            "EFd-1"
        );
    }
}
