//! What the tests of a cloth say against what is stated of it.

use draft::{ClothUse, Finding, Severity};
use style::{Along, Cloth, Subject};
use trade::{Share, System};

use crate::cut::Cutter;
use crate::plan::cloth_key;
use crate::wash::{CONTRADICTION, WashTest, skew_test, wash_test};

/// Where percentages of a wash test come from.
const SOURCE: &str = "ISO 5077";

/// Where a skew from diagonals comes from.
const SKEW_SOURCE: &str = "AATCC TM179 (formula from memory)";

impl Cutter<'_> {
    /// The tests of every cloth the style is cut from, each cloth once.
    pub fn say_tests(&mut self) {
        let mut said: Vec<&str> = Vec::new();
        for cloth in [ClothUse::Shell, ClothUse::Pocketing, ClothUse::Lining] {
            let used = self.garment.pattern.pieces.iter().any(|p| p.cloth == cloth);
            let key = cloth_key(self.garment, cloth);
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
                let wrong: Vec<String> = wrong.iter().map(ToString::to_string).collect();
                let message = format!("its wash test cannot be used: {}", wrong.join("; "));
                let help = "mark and wash another specimen, or state warp_shrinkage and weft_shrinkage and take the test out";
                self.say(
                    SOURCE,
                    Severity::Error,
                    about,
                    message,
                    Some(help.to_owned()),
                );
                return;
            }
        };
        for along in [Along::Warp, Along::Weft] {
            self.say_contradiction(key, cloth, &test, along);
        }
        if !test.doubts.is_empty() {
            let message = format!("its wash test leaves doubts: {}", test.doubts.join("; "));
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
        let message = format!(
            "a shrinkage of {} along the {along} is stated, and its wash test came to {}, from {} to {}; pieces are cut for what is stated, and {}",
            percent(stated),
            percent(found.mean),
            percent(found.least),
            percent(found.most),
            on_a_metre(stated, found.mean),
        );
        let help = format!(
            "write {along}_shrinkage = \"{}\", or take it out so that the test holds, or test another specimen",
            found.mean
        );
        let about = Subject::Shrinkage(key.to_owned(), along);
        self.say(SOURCE, Severity::Warning, about, message, Some(help));
    }

    fn say_skew_test(&mut self, key: &str, cloth: &Cloth) {
        let Some(square) = cloth.skew_test else {
            return;
        };
        let about = Subject::ClothSkew(key.to_owned());
        let help = "measure both diagonals of the square again, or state skew";
        match (skew_test(square.rising, square.falling), cloth.skew) {
            (Err(why), _) => {
                let message = format!("its skew test cannot be used: {why}");
                let help = Some(help.to_owned());
                self.say(SKEW_SOURCE, Severity::Error, about, message, help);
            }
            (Ok(found), Some(stated)) if is_contradicted(stated, found) => {
                let message = format!(
                    "a skew of {} is stated, and its skew test came to {}; what is stated holds",
                    percent(stated),
                    percent(found),
                );
                let help = Some(format!("take `skew` out so that the test holds, or {help}"));
                self.say(SKEW_SOURCE, Severity::Warning, about, message, help);
            }
            (Ok(_), _) => {}
        }
    }

    fn say(
        &mut self,
        source: &'static str,
        severity: Severity,
        about: Subject,
        message: String,
        help: Option<String>,
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
    (stated - found).abs().to_ratio() > CONTRADICTION.to_ratio() + 1e-9
}

/// How far a metre of the finished garment is off when the test is right.
fn on_a_metre(stated: Share, found: Share) -> String {
    let left = (1.0 - found.to_ratio()) / (1.0 - stated.to_ratio()) - 1.0;
    let word = if left < 0.0 { "short" } else { "long" };
    format!(
        "a metre of the pair would come out {:.0} mm too {word} if the test is right",
        left.abs() * 1000.0
    )
}

fn percent(share: Share) -> String {
    share.show(System::Metric)
}
