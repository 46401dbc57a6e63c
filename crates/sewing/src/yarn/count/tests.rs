#![allow(clippy::unwrap_used)]
//! Published worked examples, through the figures every row is counted by.

use super::*;
use trade::consumption::{USUAL_WASTE, with_waste};

fn per(stitch: StitchType, per_inch: f64, thickness: f64, width: f64) -> PerLength {
    let plies = SewnThrough {
        layers: Vec::new(),
        thickness: Length::inches(thickness),
    };
    let density = StitchDensity::per_inch(per_inch);
    per_length(stitch, density, &plies, Length::inches(width))
}

fn total(stitch: StitchType, per_inch: f64, thickness: f64, width: f64) -> f64 {
    let found = per(stitch, per_inch, thickness, width);
    found.needle + found.under
}

fn near(found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "{found} is not {wanted} ± {within}"
    );
}

/// 1 to 5: a machine maker's chart in a thread maker's bulletin on estimating thread consumption
/// (apparel-merchandising.com, 2011), 401 at 8 stitches per inch.
#[test]
fn chainstitch_by_thickness() {
    for (thickness, wanted) in [
        (0.055, 4.88),
        (0.060, 4.96),
        (0.065, 5.04),
        (0.070, 5.12),
        (0.075, 5.20),
    ] {
        near(total(StitchType::S401, 8.0, thickness, 0.0), wanted, 1e-9);
    }
}

/// 6: the same bulletin: 42 inches of it, with waste 7.00 yards (6.977 without its rounding of 42
/// inches to 1.17 yards).
#[test]
fn a_seam_with_waste() {
    let net = Length::inches(42.0) * total(StitchType::S401, 8.0, 0.075, 0.0);
    near(with_waste(net, USUAL_WASTE).to_yards(), 6.977, 0.0005);
}

/// 7 to 10: teaching pages: textilecalculation.blogspot.com, July 2015 (301 and 401), and
/// textilecalculations.com (101 and 301).
#[test]
fn teaching_examples() {
    near(total(StitchType::S301, 10.0, 0.025, 0.0), 2.50, 1e-9);
    near(total(StitchType::S401, 10.0, 0.025, 0.0), 4.50, 1e-9);
    near(total(StitchType::S101, 9.0, 0.005, 0.0), 3.09, 1e-9);
    near(total(StitchType::S301, 10.0, 0.010, 0.0), 2.20, 1e-9);
}

/// 11 to 14: the equations listed at textiletechinsight.com, worked by hand at 8 stitches per inch,
/// 1/4 inch wide, 0.06 inch thick.
#[test]
fn wide_stitches() {
    for (stitch, wanted) in [
        (StitchType::S504, 14.92),
        (StitchType::S514, 15.88),
        (StitchType::S516, 19.88),
        (StitchType::S406, 11.96),
    ] {
        near(total(stitch, 8.0, 0.06, 0.25), wanted, 1e-9);
    }
}

/// Carr and Latham's ratios, for the stitches without a published formula.
#[test]
fn ratios_stand_in_where_no_formula_is_published() {
    for (stitch, wanted) in [
        (StitchType::S304, 7.0),
        (StitchType::S503, 12.0),
        (StitchType::S512, 18.0),
    ] {
        let found = per(stitch, 8.0, 0.06, 0.25);
        near(found.needle + found.under, wanted, 1e-9);
        assert!(matches!(found.basis, Basis::RatioTable(_)), "{stitch}");
        assert!(found.basis.to_string().starts_with("ratio table"));
    }
    let none = per(StitchType::S404, 8.0, 0.06, 0.25);
    assert_eq!((none.needle, none.basis), (0.0, Basis::Unknown));
}

/// Without a published sharing, every thread counts alike: 514 has two of four on the needles.
#[test]
fn threads_share_alike_where_no_sharing_is_published() {
    let found = per(StitchType::S514, 8.0, 0.06, 0.25);
    near(found.needle, found.under, 1e-9);
    assert_eq!(found.sharing, BY_THREADS);
    for stitch in StitchType::ALL {
        let found = per(stitch, 8.0, 0.06, 0.25);
        assert!(found.needle >= 0.0 && found.under >= 0.0, "{stitch}");
        assert_eq!(
            found.basis == Basis::Unknown,
            found.needle == 0.0,
            "{stitch}"
        );
    }
}
