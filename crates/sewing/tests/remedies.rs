//! Where a finding carries its remedy as a change to the style, making the change ends the finding.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::ferryman;
use draft::Finding;
use sewing::make;
use style::{Edit, Loaded, Size};

const SIZE: Size = Size::new(32, 32);

fn found(loaded: &Loaded, code: &str) -> Option<Finding> {
    let garment = make(&loaded.style, &loaded.collection, SIZE);
    let mut findings = garment.findings.into_iter();
    findings.find(|finding| finding.code == code)
}

#[test]
fn a_remedy_made_ends_its_finding() {
    for (path, spoilt, code) in [
        ("hem.ends", "overlapped", "sewing::hem-ends"),
        ("chart.hem_depth.value", "4 mm", "sewing::hem-narrow"),
        ("seams.inseam.rows[1].offset", "3 mm", "sewing::lap-narrow"),
    ] {
        let sound = ferryman();
        assert_eq!(found(&sound, code), None, "{code}");
        let broken = sound.with_edit(&Edit::set(path, spoilt).unwrap()).unwrap();
        let finding = found(&broken, code).unwrap_or_else(|| panic!("{code} is not found"));
        let edit = finding
            .edit
            .unwrap_or_else(|| panic!("{code} has no remedy"));
        let mended = broken.with_edit(&edit).unwrap();
        assert_eq!(found(&mended, code), None, "{code} stays");
    }
}

#[test]
fn only_what_is_no_error_can_be_muted() {
    let mut loaded = ferryman();
    let finding = found(&loaded, "sewing::hem-bulk").unwrap();
    assert!(finding.muted(&loaded.style).is_none());
    loaded.style.muted.push(style::Muted {
        code: finding.code.to_owned(),
        subject: finding.subject.clone(),
        reason: "meant so".to_owned(),
    });
    assert!(finding.muted(&loaded.style).is_some());
    let error = Finding {
        severity: draft::Severity::Error,
        ..finding
    };
    assert!(error.muted(&loaded.style).is_none());
}
