//! Every quantity a style, a cloth, a yarn and a trim state is told where it is unusual, and no beginning is.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use std::collections::BTreeSet;

use common::ferryman;
use draft::{Finding, Severity};
use sewing::{Garment, make, sewing_findings};
use style::{
    Amount, Answers, Closing, Collection, Edit, Figure, Fit, Leg, Loaded, MeasureId, NewStyle,
    SeamId, Size, Subject, Taste, foresee, offered_waists, stated_by_style, stated_by_supplies,
};
use trade::{ArealWeight, Length, Share};

const CODE: &str = "sewing::unusual-value";
const SIZE: Size = Size::new(32, 32);
const FACTORS: [f64; 5] = [0.0, 0.05, 3.0, 20.0, 300.0];

fn told(garment: &Garment, code: &str) -> Vec<Finding> {
    let mut found = sewing_findings(garment);
    found.retain(|f| f.code == code);
    found
}

fn times(amount: Amount, factor: f64) -> Amount {
    match amount {
        Amount::Length(value) => (value * factor).into(),
        Amount::Share(value) => (value * factor).into(),
        Amount::Angle(value) => (value * factor).into(),
        Amount::Weight(value) => (value * factor).into(),
        Amount::Yarn(value) => (value * factor).into(),
        Amount::Density(value) => (value * factor).into(),
        Amount::Temperature(value) => (value * factor).into(),
        Amount::Duration(value) => (value * factor).into(),
        Amount::Count(value) => Amount::Count((f64::from(value) * factor).round() as u32),
    }
}

#[test]
fn what_a_style_states_is_told_where_it_is_unusual_and_only_there() {
    let loaded = ferryman();
    let mut garment = make(&loaded.style, &loaded.collection, SIZE);
    assert_eq!(told(&garment, CODE), []);
    let (mut unusual, mut refused) = (0, 0);
    for one in stated_by_style(&loaded.style, SIZE) {
        let range = one.range().unwrap();
        for factor in FACTORS {
            let amount = times(one.amount, factor);
            let edit = Edit::set(one.value.path(), &amount.to_string()).unwrap();
            let Ok(next) = loaded.with_edit(&edit) else {
                refused += 1;
                continue;
            };
            garment.doc = next.style;
            let found = told(&garment, CODE);
            let own: Vec<&Finding> = found
                .iter()
                .filter(|f| f.subject == Subject::Value(one.value.clone()))
                .collect();
            let expected = usize::from(!range.is_usual(amount));
            assert_eq!(
                own.len(),
                expected,
                "{} is {amount}: {found:?}",
                one.value.path()
            );
            for finding in own {
                unusual += 1;
                assert_eq!(finding.severity, Severity::Warning, "{finding:?}");
                assert_eq!(finding.source(words::Words::english()), range.reason);
                assert!(
                    finding
                        .message(words::Words::english())
                        .contains("is usual"),
                    "{finding:?}"
                );
            }
        }
    }
    assert!(unusual > 150 && refused > 300, "{unusual} {refused}");
}

/// Puts an amount where a path of the collection says.
fn put(collection: &mut Collection, path: &str, amount: Amount) -> bool {
    let steps: Vec<&str> = path.split('.').collect();
    let length = match amount {
        Amount::Length(length) => length,
        _ => Length::ZERO,
    };
    match (steps.as_slice(), amount) {
        (["cloths", key, rest @ ..], _) => {
            let cloth = &mut collection.cloths[*key];
            match (rest, amount) {
                (["weight"], Amount::Weight(weight)) => cloth.weight = weight,
                (["thickness"], _) => cloth.thickness = length,
                (["width"], _) => cloth.width = length,
                (["warp_shrinkage"], Amount::Share(share)) => cloth.warp_shrinkage = Some(share),
                (["weft_shrinkage"], Amount::Share(share)) => cloth.weft_shrinkage = Some(share),
                (["skew"], Amount::Share(share)) => cloth.skew = Some(share),
                (["skew_test", "rising"], _) => cloth.skew_test.as_mut().unwrap().rising = length,
                (["skew_test", "falling"], _) => cloth.skew_test.as_mut().unwrap().falling = length,
                ([mark, when], _) => {
                    let at: usize = mark
                        .trim_start_matches("wash_test[")
                        .trim_end_matches(']')
                        .parse()
                        .unwrap();
                    match *when {
                        "before" => cloth.wash_test[at].before = length,
                        _ => cloth.wash_test[at].after = length,
                    }
                }
                _ => return false,
            }
        }
        (["yarns", key, "size"], Amount::Yarn(size)) => collection.yarns[*key].size = size,
        (["yarns", key, "put_up"], _) => collection.yarns[*key].put_up = Some(length),
        (["trims", key, what], _) => {
            let trim = &mut collection.trims[*key];
            let place = match *what {
                "diameter" => &mut trim.diameter,
                "width" => &mut trim.width,
                "height" => &mut trim.height,
                "length" => &mut trim.length,
                "thickness" => &mut trim.thickness,
                _ => return false,
            };
            *place = Some(length);
        }
        _ => return false,
    }
    true
}

/// The reader refuses what cannot be; what comes to it here some other way is an error.
#[test]
fn what_a_collection_states_is_told_where_it_is_unusual_and_only_there() {
    let loaded = ferryman();
    let mut garment = make(&loaded.style, &loaded.collection, SIZE);
    let (mut warned, mut wrong) = (0, 0);
    for one in stated_by_supplies(&loaded.style, &loaded.collection) {
        let range = one.range().unwrap();
        for factor in FACTORS {
            let amount = times(one.amount, factor);
            garment.collection = loaded.collection.clone();
            assert!(
                put(&mut garment.collection, one.value.path(), amount),
                "{}",
                one.value.path()
            );
            let found = told(&garment, CODE);
            let own: Vec<Severity> = found
                .iter()
                .filter(|f| f.subject == Subject::Value(one.value.clone()))
                .map(|f| f.severity)
                .collect();
            let expected = match (range.is_usual(amount), range.is_possible(amount)) {
                (true, _) => vec![],
                (false, true) => vec![Severity::Warning],
                (false, false) => vec![Severity::Error],
            };
            assert_eq!(own, expected, "{} is {amount}", one.value.path());
            warned += usize::from(expected == [Severity::Warning]);
            wrong += usize::from(expected == [Severity::Error]);
        }
    }
    assert!(warned > 40 && wrong > 60, "{warned} {wrong}");
}

/// A grade can take a measure where its own value never was.
#[test]
fn a_measure_is_judged_in_every_size() {
    let mut loaded = ferryman();
    loaded.style.chart[&MeasureId::LoopLength].grade = Some(Length::mm(8.0));
    let small = make(&loaded.style, &loaded.collection, Size::new(32, 32));
    assert_eq!(told(&small, CODE), []);
    let large = make(&loaded.style, &loaded.collection, Size::new(40, 32));
    let found = told(&large, CODE);
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].about(words::Words::english()), "belt loop length");
    loaded.style.chart[&MeasureId::Hem].grade = Some(Length::cm(-8.0));
    let none = make(&loaded.style, &loaded.collection, Size::new(38, 32));
    let found = told(&none, CODE);
    let hem = found
        .iter()
        .find(|f| f.about(words::Words::english()) == "hem")
        .unwrap();
    assert_eq!(hem.severity, Severity::Error);
}

fn said(code: &str, change: impl FnOnce(&mut Loaded)) -> Vec<Finding> {
    let mut loaded = ferryman();
    change(&mut loaded);
    told(&make(&loaded.style, &loaded.collection, SIZE), code)
}

#[test]
fn a_zip_far_shorter_than_its_fly_is_told() {
    let zip = |mm: f64| {
        said("sewing::zip-length", |l| {
            let mut zip = l.collection.trims["rivet-9"].clone();
            zip.length = Some(Length::mm(mm));
            l.collection.trims.insert("zip".to_owned(), zip);
            l.style.fly.closing = Closing::Zip;
            l.style.fly.zip = Some("zip".to_owned());
        })
    };
    // The fly is 165 mm.
    assert_eq!(zip(150.0), []);
    let short = zip(20.0);
    assert_eq!(short.len(), 1, "{short:?}");
    assert!(
        short[0]
            .message(words::Words::english())
            .contains("145.0 mm of the fly closed")
    );
}

#[test]
fn rows_that_miss_what_they_sew_on_are_told() {
    let row = |seam: SeamId, mm: f64| {
        said("sewing::row-catches-nothing", |l| {
            let rows = l.style.seams[&seam].rows.as_mut().unwrap();
            rows[0].offset = Length::mm(mm);
        })
    };
    for (seam, within, beyond) in [
        (SeamId::PatchSet, 12.0, 20.0),
        (SeamId::LabelSet, 8.0, 12.0),
        (SeamId::Mouth, 60.0, 90.0),
    ] {
        let own = |mm| -> usize {
            row(seam, mm)
                .iter()
                .filter(|f| f.about(words::Words::english()).starts_with(seam.code()))
                .count()
        };
        assert_eq!((own(within), own(beyond)), (0, 1), "{}", seam.code());
    }
}

#[test]
fn cloths_bought_for_something_else_are_told() {
    let shell = said("sewing::cloth-use", |l| {
        l.style.cloth.shell = "bargeman-drill".into()
    });
    assert_eq!(shell.len(), 1, "{shell:?}");
    assert_eq!(shell[0].severity, Severity::Warning);
    assert!(
        shell[0]
            .message(words::Words::english())
            .ends_with("is bought as pocketing and used as shell")
    );
    // Pocket bags of shell are heavy, and some makers want them.
    let bags = said("sewing::cloth-use", |l| {
        l.style.cloth.pocketing = "tideline-14".into()
    });
    assert_eq!(bags[0].severity, Severity::Note);
    // A lining that is not used is none.
    let unused = said("sewing::cloth-use", |l| {
        l.style.cloth.lining = Some("tideline-14".into());
        for pocket in [
            &mut l.style.pockets.back.left,
            &mut l.style.pockets.back.right,
        ] {
            pocket.lining = style::Lining::None;
        }
    });
    assert_eq!(unused, []);
}

#[test]
fn only_cloth_of_which_nothing_says_that_it_stretches_is_too_small_for_a_body() {
    let small = |fibre: &'static str, seat_cm: f64| {
        said("sewing::needs-stretch", |l| {
            l.style.chart[&MeasureId::Seat].value = Length::cm(seat_cm);
            l.collection.cloths["tideline-14"].fibre = fibre.to_owned();
        })
    };
    // 0.601 x 81.28 + 45.41 = 94.26 cm.
    assert_eq!(small("100 % cotton", 92.5), []);
    let tight = small("100 % cotton", 90.0);
    assert_eq!(tight.len(), 1, "{tight:?}");
    assert!(
        tight[0]
            .message(words::Words::english())
            .contains("4.3 cm smaller"),
        "{}",
        tight[0].message(words::Words::english())
    );
    assert!(
        tight[0]
            .message(words::Words::english())
            .contains("stretch by 5 %"),
        "{}",
        tight[0].message(words::Words::english())
    );
    assert_eq!(small("98 % cotton, 2 % elastane", 90.0), []);
    assert!(
        small("", 90.0)[0]
            .message(words::Words::english())
            .contains("does not say")
    );
}

#[test]
fn a_fibre_label_is_compared_with_the_shell() {
    let label = |text: &'static str, fibre: &'static str| {
        let found = said("sewing::fibre-differs", |l| {
            l.style.labels[2].text = Some(text.to_owned());
            l.collection.cloths["tideline-14"].fibre = fibre.to_owned();
        });
        found.first().map(|f| f.severity)
    };
    let cotton = "100 % cotton";
    assert_eq!(label("100 % cotton. Made in Portugal.", cotton), None);
    assert_eq!(label("100 % algodão", cotton), None);
    assert_eq!(
        label("98 % cotton, 2 % elastane", cotton),
        Some(Severity::Warning)
    );
    assert_eq!(label("100 % sea grass", cotton), Some(Severity::Note));
    assert_eq!(label("Wash cold", cotton), Some(Severity::Note));
    assert_eq!(label(cotton, ""), Some(Severity::Note));
    assert_eq!(label("Wash cold", ""), None);
}

/// The demo, and whatever is answered before a style begins, states nothing unusual.
#[test]
fn no_beginning_is_unusual() {
    const NEW: [&str; 10] = [
        CODE,
        "sewing::tolerance-wide",
        "sewing::cloth-use",
        "sewing::needs-stretch",
        "sewing::zip-length",
        "sewing::loop-loose",
        "sewing::patch-off-band",
        "sewing::fibre-differs",
        "fit::waist-for-size",
        "fit::inseam-for-size",
    ];
    let demo = ferryman();
    let usual = Answers::default();
    let mut begun: Vec<style::StyleDoc> = vec![demo.style.clone()];
    for (_, figure) in Figure::WORDS {
        for (_, fit) in Fit::WORDS {
            for (_, leg) in Leg::WORDS {
                for (_, taste) in Taste::WORDS {
                    // How the seams are sewn says nothing of the chart: each taste is looked at once.
                    if *taste != usual.taste && (*fit, *leg) != (Fit::Straight, usual.leg) {
                        continue;
                    }
                    let answers = Answers {
                        figure: *figure,
                        fit: *fit,
                        leg: *leg,
                        taste: *taste,
                        waists: offered_waists(*figure).map(style::Tag::inches).collect(),
                        ..Answers::default()
                    };
                    let asked = NewStyle {
                        name: "Bittern".into(),
                        code: "B-1".into(),
                        label: None,
                        folder: None,
                        words: style::LabelWords::default(),
                        answers,
                    };
                    begun.push(foresee(&asked, Some(&demo.collection)).unwrap().0);
                }
            }
        }
    }
    for doc in &begun {
        let what = format!("{} {}", doc.style.figure, doc.style.fit);
        for size in doc.sizes.all() {
            for one in stated_by_style(doc, size) {
                assert!(
                    one.range().unwrap().is_usual(one.amount),
                    "{what} {size}: {one:?}"
                );
            }
        }
        let sizes: Vec<Size> = doc.sizes.all().collect();
        for size in [sizes[0], doc.sizes.base, sizes[sizes.len() - 1]] {
            let garment = make(doc, &demo.collection, size);
            let codes: BTreeSet<&str> = garment.findings.iter().map(|f| f.code).collect();
            for code in NEW {
                assert!(
                    !codes.contains(code),
                    "{what} {size}: {:?}",
                    garment.findings
                );
            }
        }
    }
}

/// What the weight and shrinkage of a cloth say in other units is judged as the same.
#[test]
fn units_make_no_difference() {
    let range = style::range_of("cloths.a.weight").unwrap();
    assert!(range.is_usual(ArealWeight::oz_per_yd2(14.0).into()));
    assert!(!range.is_usual(ArealWeight::oz_per_yd2(40.0).into()));
    assert!(!range.is_usual(Share::percent(14.0).into()));
}
