//! What the tests of a cloth say against what is stated of it.

use draft::{ClothUse, Finding, Severity};
use style::{Along, Cloth, Subject};
use trade::{Length, Share};
use words::{Given, Key, Said, key, say};

use crate::cut::Cutter;

use crate::wash::{CONTRADICTION, WashTest, wash_test};
use sewing::wash::{cloth_key, skew_test, threads};

/// Where percentages of a wash test come from.
const SOURCE: Key = key::CUTTING_SOURCE_TEST;

/// Where a skew from diagonals comes from.
const SKEW_SOURCE: Key = key::CUTTING_SOURCE_SKEW_TEST;

impl Cutter<'_> {
    /// The tests of every cloth the style is cut from, each cloth once.
    pub fn say_tests(&mut self) {
        let mut said: Vec<&str> = Vec::new();
        for cloth in [ClothUse::Shell, ClothUse::Pocketing, ClothUse::Lining] {
            let used = self.garment.pattern.pieces.iter().any(|p| p.cloth == cloth);
            let key = cloth_key(&self.garment.doc, cloth);
            let Some(known) = self.garment.collection.cloths.get(key) else {
                continue;
            };
            if used && !said.contains(&key) {
                said.push(key);
                self.say_wash_test(key, known);
                self.say_skew_test(key, known);
            }
        }
    }

    fn say_wash_test(&mut self, key: &str, cloth: &Cloth) {
        if cloth.wash_test.is_empty() {
            return;
        }
        let about = Subject::WashTest(key.to_owned());
        let test = match wash_test(&cloth.wash_test) {
            Ok(test) => test,
            Err(wrong) => {
                let wrong = in_a_row(wrong.iter().map(Said::from));
                let message = say::CuttingTestUseless { wrong };
                let help = Some(key::CUTTING_TEST_HELP.into());
                self.say(SOURCE, Severity::Error, about, message, help);
                return;
            }
        };
        for along in [Along::Warp, Along::Weft] {
            self.say_contradiction(key, cloth, &test, along);
        }
        if !test.doubts.is_empty() {
            let doubts = in_a_row(test.doubts.iter().cloned());
            let message = say::CuttingTestDoubts { doubts };
            self.say(SOURCE, Severity::Note, about, message, None);
        }
    }

    fn say_contradiction(&mut self, key: &str, cloth: &Cloth, test: &WashTest, along: Along) {
        let (stated, found) = match along {
            Along::Warp => (cloth.warp_shrinkage, test.warp),
            Along::Weft => (cloth.weft_shrinkage, test.weft),
        };
        let Some(stated) = stated.filter(|s| is_contradicted(*s, found.mean)) else {
            return;
        };
        let message = say::CuttingTestContradicts {
            along: threads(along),
            found: found.mean.figure(),
            least: found.least.figure(),
            metre: on_a_metre(stated, found.mean),
            most: found.most.figure(),
            stated: stated.figure(),
        };
        let help = say::CuttingTestContradictsHelp {
            found: found.mean.to_string(),
            key: format!("{along}_shrinkage"),
        };
        let about = Subject::Shrinkage(key.to_owned(), along);
        self.say(SOURCE, Severity::Warning, about, message, Some(help.into()));
    }

    fn say_skew_test(&mut self, key: &str, cloth: &Cloth) {
        let Some(square) = cloth.skew_test else {
            return;
        };
        let about = Subject::ClothSkew(key.to_owned());

        match (skew_test(square.rising, square.falling), cloth.skew) {
            (Err(why), _) => {
                let message = say::CuttingSkewTestUseless {
                    why: Said::from(&why),
                };
                let help = Some(key::CUTTING_SKEW_TEST_HELP.into());
                self.say(SKEW_SOURCE, Severity::Error, about, message, help);
            }
            (Ok(found), Some(stated)) if is_contradicted(stated, found) => {
                let message = say::CuttingSkewTestContradicts {
                    found: found.figure(),
                    stated: stated.figure(),
                };
                let help = Some(key::CUTTING_SKEW_TEST_CONTRADICTS_HELP.into());
                self.say(SKEW_SOURCE, Severity::Warning, about, message, help);
            }
            (Ok(_), _) => {}
        }
    }

    fn say(
        &mut self,
        source: Key,
        severity: Severity,
        about: Subject,
        message: impl Into<Said>,
        help: Option<Said>,
    ) {
        let found = Finding::new("cutting::wash-test", severity, about, message, source);
        let found = found.of_size(self.garment.size);
        self.findings.push(match help {
            Some(help) => found.help(help),
            None => found,
        });
    }
}

/// A hair over the limit is the limit, reached by rounding.
fn is_contradicted(stated: Share, found: Share) -> bool {
    (stated - found).abs().to_ratio() > CONTRADICTION.to_ratio() + geometry::tolerance::ROUNDING
}

/// How far a metre of the finished garment is off when the test is right.
fn on_a_metre(stated: Share, found: Share) -> Said {
    let left = (1.0 - found.to_ratio()) / (1.0 - stated.to_ratio()) - 1.0;
    let by = Length::mm(left.abs() * 1000.0).in_mm(0);
    if left < 0.0 {
        say::CuttingMetreShort { by }.into()
    } else {
        say::CuttingMetreLong { by }.into()
    }
}

fn in_a_row(all: impl Iterator<Item = Said>) -> Given {
    let row = all.reduce(|first, next| say::JoinedAlso { first, next }.into());
    row.map_or_else(|| "".into(), Given::from)
}
