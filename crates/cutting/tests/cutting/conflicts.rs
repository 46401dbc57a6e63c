//! What is noticed about a style whose chart is in conflict: the cause with its way out, and the rest folded under it.

use cutting::{Plan, cut_run, noticed};
use draft::Finding;
use style::{Loaded, Size};

use crate::common;

/// What is noticed in the base size and at both ends of the run.
fn noticed_with(from: &str, to: &str) -> (Loaded, Vec<Finding>) {
    let loaded = common::ferryman();
    assert_eq!(loaded.text.matches(from).count(), 1, "{from}");
    let broken = loaded.with_text(&loaded.text.replace(from, to)).unwrap();
    let sizes = [Size::new(28, 30), Size::new(32, 32), Size::new(38, 34)];
    let run: Vec<_> = sizes
        .iter()
        .map(|size| sewing::make(&broken.style, &broken.collection, *size))
        .collect();
    let all = noticed(&run, &cut_run(&run, &Plan::of(&broken.style)));
    (
        broken,
        all.into_iter().flat_map(|(_, found)| found).collect(),
    )
}

/// The conflict is the only error that stands for itself, and its edit makes a style that a sewer has no error in.
fn only_the_conflict(from: &str, to: &str) -> Finding {
    let (broken, found) = noticed_with(from, to);
    for finding in found.iter().filter(|f| f.is_error() && !f.follows) {
        assert_eq!(
            finding.code,
            "fit::conflict",
            "{}",
            finding.message(words::Words::english())
        );
    }
    let conflict = found.iter().find(|f| f.code == "fit::conflict").unwrap();
    assert!(!conflict.follows);
    let mended = broken.with_edit(conflict.edit.as_ref().unwrap()).unwrap();
    for size in [Size::new(28, 30), Size::new(38, 34)] {
        let garment = sewing::make(&mended.style, &mended.collection, size);
        let errors = garment.findings.iter().filter(|f| f.is_error());
        assert_eq!(errors.count(), 0);
    }
    conflict.clone()
}

#[test]
fn a_long_fly_says_so_and_nothing_of_the_grain() {
    let conflict = only_the_conflict("value = \"16.5 cm\"", "value = \"40 cm\"");
    assert!(
        conflict
            .message(words::Words::english())
            .starts_with("fly length 40.0 cm at 32x32 does not go"),
        "{}",
        conflict.message(words::Words::english())
    );
    assert!(
        conflict
            .remedy(words::Words::english())
            .unwrap()
            .starts_with("set fly length to")
    );
}

#[test]
fn a_high_band_says_so_and_nothing_of_the_grain() {
    let conflict = only_the_conflict(
        "[chart.band_height]\nvalue = \"3.8 cm\"",
        "[chart.band_height]\nvalue = \"15 cm\"",
    );
    assert!(
        conflict
            .remedy(words::Words::english())
            .unwrap()
            .starts_with("set band height to")
    );
}

#[test]
fn a_wide_thigh_and_a_short_rise_say_so() {
    let thigh = only_the_conflict("value = \"24 1/2 in\"", "value = \"42 in\"");
    assert!(
        thigh
            .remedy(words::Words::english())
            .unwrap()
            .starts_with("set thigh to")
    );
    let rise = only_the_conflict("value = \"11 in\"", "value = \"6 in\"");
    assert!(
        rise.remedy(words::Words::english())
            .unwrap()
            .starts_with("set front rise to")
    );
}

#[test]
fn what_has_another_cause_stands_beside_the_conflict() {
    let (_, found) = noticed_with("value = \"24 1/2 in\"", "value = \"42 in\"");
    let bulk = found.iter().find(|f| f.code == "sewing::hem-bulk").unwrap();
    assert!(!bulk.follows);
    let followers: Vec<&str> = found.iter().filter(|f| f.follows).map(|f| f.code).collect();
    assert!(
        followers.contains(&"cutting::seam-before-wash"),
        "{followers:?}"
    );
    // They come after all that stands for itself, size by size.
    let size = found[0].size;
    let of_size = || found.iter().filter(|f| f.size == size);
    assert!(of_size().skip_while(|f| !f.follows).all(|f| f.follows));
}
