//! Pieces wider than their cloth.

use cutting::{Plan, cut};
use draft::{EdgeId, Finding, PieceId, Severity};
use style::{SeamId, Size};
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

/// Cutter, sewing order and yarn list have one count of the parts of a band.
#[test]
fn a_band_is_cut_in_two_where_the_order_joins_it_and_has_the_seams_allowance() {
    for width_cm in [78.0, 94.0, 150.0] {
        let mut loaded = ferryman();
        loaded.collection.cloths["tideline-14"].width = Length::cm(width_cm);
        for size in [(28, 30), (32, 32), (38, 34)].map(|(waist, length)| Size::new(waist, length)) {
            let garment = sewn(&loaded, size);
            let cut = cut(&garment, &Plan::of(&loaded.style));
            let joined = sewing::band_is_joined(&garment);
            let parts = cut.of(PieceId::Band).count();
            assert_eq!(parts, if joined { 2 } else { 1 }, "{size}, {width_cm}");
            for half in cut.of(PieceId::Band).filter(|_| joined) {
                let edge = half.edge(EdgeId::CentreBack).unwrap();
                assert_eq!(edge.seam, Some(SeamId::BandJoin));
                assert!((edge.allowance.to_mm() - 12.7).abs() < 1e-9);
            }
        }
    }
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
