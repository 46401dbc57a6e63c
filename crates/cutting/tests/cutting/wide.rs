//! Pieces wider than their cloth.

use cutting::{Plan, cut};
use draft::{Finding, Severity};
use style::Size;
use trade::Length;

use crate::common::{all_cut, ferryman, sewn};

const CODE: &str = "cutting::wider-than-cloth";

/// What is said of a cloth this wide.
fn found(cloth: &str, width_cm: f64) -> Vec<Finding> {
    let mut loaded = ferryman();
    loaded.collection.cloths.get_mut(cloth).unwrap().width = Length::cm(width_cm);
    let cut = cut(&sewn(&loaded, Size::new(32, 32)), &Plan::of(&loaded.style));
    cut.findings
        .into_iter()
        .filter(|f| f.code == CODE)
        .collect()
}

#[test]
fn every_size_of_the_demo_lies_on_its_cloth() {
    let findings = all_cut().iter().flat_map(|cut| &cut.findings);
    assert_eq!(findings.filter(|f| f.code == CODE).count(), 0);
}

/// A back is a quarter of the seat and the crotch's extension wide: more than 35 cm and less than 50.
#[test]
fn a_panel_wider_than_the_cloth_is_an_error() {
    let about = |width| -> Vec<String> {
        found("tideline-14", width)
            .into_iter()
            .map(|f| f.about(words::Words::english()))
            .collect()
    };
    assert!(
        about(30.0).contains(&"Back".to_owned()),
        "{:?}",
        about(30.0)
    );
    assert!(
        !about(50.0).contains(&"Back".to_owned()),
        "{:?}",
        about(50.0)
    );
    for one in found("tideline-14", 30.0) {
        assert_eq!(one.severity, Severity::Error);
        assert!(
            one.message(words::Words::english())
                .contains("30.0 cm wide"),
            "{}",
            one.message(words::Words::english())
        );
        assert_eq!(one.size, Some(Size::new(32, 32)));
    }
    let names = about(30.0);
    let once: std::collections::BTreeSet<&String> = names.iter().collect();
    assert_eq!(once.len(), names.len(), "each is said once: {names:?}");
}

#[test]
fn the_cloths_inside_are_looked_at_too() {
    let bags = found("bargeman-drill", 15.0);
    assert!(
        bags.iter()
            .any(|f| f.about(words::Words::english()) == "Pocket bag"),
        "{bags:?}"
    );
    assert_eq!(found("bargeman-drill", 60.0), []);
}
