#![allow(clippy::unwrap_used)]
//! Worked examples, each beside its source.

use super::*;

fn near(found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "{found} is not {wanted} ± {within}"
    );
}

/// Stitches per inch and inches, as the examples are printed.
fn total(stitch: StitchType, per_inch: f64, thickness: f64, width: f64) -> f64 {
    Formula::of(stitch).unwrap().ratio(
        StitchDensity::per_inch(per_inch),
        Length::inches(thickness),
        Length::inches(width),
    )
}

/// A machine maker's chart in a thread maker's bulletin "Estimating thread consumption"
/// (apparel-merchandising.com, 2011).
#[test]
fn chainstitch_by_thickness() {
    let chart = [
        (0.055, 4.88),
        (0.060, 4.96),
        (0.065, 5.04),
        (0.070, 5.12),
        (0.075, 5.20),
    ];
    for (thickness, ratio) in chart {
        near(total(StitchType::S401, 8.0, thickness, 0.0), ratio, 1e-9);
    }
}

/// The same bulletin: 42 inches of 401 take 6.08 yards, 7.00 with 15 % waste. It rounds 42 inches
/// to 1.17 yards; unrounded they are 6.067 and 6.977.
#[test]
fn chainstitch_seam_with_waste() {
    let net = Length::inches(42.0) * total(StitchType::S401, 8.0, 0.075, 0.0);
    near(net.to_yards(), 6.067, 0.0005);
    near(with_waste(net, USUAL_WASTE).to_yards(), 6.977, 0.0005);
    let rounded = Length::yards(1.17) * 5.20;
    near(rounded.to_yards(), 6.08, 0.005);
    near(with_waste(rounded, USUAL_WASTE).to_yards(), 7.00, 0.005);
}

/// The same bulletin, by unravelling 3 inches of 401.
#[test]
fn unravelled_in_inches() {
    let factor = |yarn| measured_factor(Length::inches(yarn), Length::inches(3.0)).unwrap();
    near(factor(9.0), 3.00, 1e-9);
    near(factor(8.0), 2.67, 0.005);
    let net = Length::yards(1.17) * 3.00 + Length::yards(1.17) * 2.67;
    near(net.to_yards(), 6.63, 0.005);
    near(with_waste(net, USUAL_WASTE).to_yards(), 7.62, 0.01);
}

/// "Measuring actual thread consumption", apparelscience.com: 15 cm of 401.
#[test]
fn unravelled_in_centimetres() {
    let factor = |yarn| measured_factor(Length::cm(yarn), Length::cm(15.0)).unwrap();
    near(factor(19.5), 1.3, 1e-9);
    near(factor(62.0), 4.1, 0.05);
    let net = Length::cm(100.0) * 1.3 + Length::cm(100.0) * 4.1;
    near(net.to_cm(), 540.0, 1e-9);
    near(with_waste(net, USUAL_WASTE).to_cm(), 621.0, 1e-9);
}

/// textilecalculation.blogspot.com, July 2015 (301 and 401), and textilecalculations.com (101 and
/// 301).
#[test]
fn published_teaching_examples() {
    near(total(StitchType::S301, 10.0, 0.025, 0.0), 2.50, 1e-9);
    near(total(StitchType::S401, 10.0, 0.025, 0.0), 4.50, 1e-9);
    near(total(StitchType::S101, 9.0, 0.005, 0.0), 3.09, 1e-9);
    near(total(StitchType::S301, 10.0, 0.010, 0.0), 2.20, 1e-9);
}

/// The ratio method at melgeecrafts.com, 220 cm of seam. The page prints 275 cm for the needle of
/// 401, a slip: a quarter of 1210 is 302.5.
#[test]
fn ratio_method() {
    let row = |stitch| RatioRow::of(stitch).unwrap();
    let seam = Length::cm(220.0);
    near((seam * row(StitchType::S301).total).to_cm(), 550.0, 1e-9);
    let chain = row(StitchType::S401);
    let yarn = seam * chain.total;
    let needle = yarn * chain.needle_share.unwrap();
    near(yarn.to_cm(), 1210.0, 1e-9);
    near(needle.to_cm(), 302.5, 1e-9);
    near((yarn - needle).to_cm(), 907.5, 1e-9);
}

/// The listed equations worked by hand at 8 stitches per inch, 1/4 inch wide, 0.06 inch thick.
#[test]
fn wide_stitches() {
    let wide = |stitch| total(stitch, 8.0, 0.06, 0.25);
    near(wide(StitchType::S504), 14.92, 1e-9);
    near(wide(StitchType::S516), 19.88, 1e-9);
    near(
        wide(StitchType::S516),
        wide(StitchType::S504) + wide(StitchType::S401),
        1e-9,
    );
    near(wide(StitchType::S514), 15.88, 1e-9);
    near(wide(StitchType::S406), 11.96, 1e-9);
    near(wide(StitchType::S602), 19.92, 1e-9);
    near(wide(StitchType::S301), 2.96, 1e-9);
    near(wide(StitchType::S401), 4.96, 1e-9);
}

/// Worked by hand: the formula is the same in metric units.
#[test]
fn metric_agrees_with_inches() {
    let formula = Formula::of(StitchType::S301).unwrap();
    let found = formula.ratio(StitchDensity::per_cm(3.15), Length::mm(1.5), Length::ZERO);
    near(found, 2.945, 1e-9);
    near(found, total(StitchType::S301, 8.0, 0.059, 0.0), 0.002);
}

/// A shirt order at textilecalculation.blogspot.com, September 2015: 37 980 m on cones of 3000 m;
/// 2487 inches are 69 yards, and 76 m with 20 % waste.
#[test]
fn cones_are_rounded_up() {
    assert_eq!(cones(Length::m(37_980.0), Length::m(3000.0)), Some(13));
    assert_eq!(cones(Length::m(3000.0), Length::m(3000.0)), Some(1));
    assert_eq!(cones(Length::ZERO, Length::m(3000.0)), Some(0));
    assert_eq!(cones(Length::m(1.0), Length::ZERO), None);
    assert_eq!(cones(Length::m(-1.0e9), Length::m(1.0)), None);
    assert_eq!(cones(Length::mm(f64::NAN), Length::m(1.0)), None);
    let shirt = Length::inches(2487.0);
    near(shirt.to_yards(), 69.0, 0.1);
    near(with_waste(shirt, Share::percent(20.0)).to_m(), 76.0, 0.5);
}

/// Derived, worked by hand: 28 stitches, 2 × 10 mm, 3 mm thick take 281.8 mm.
#[test]
fn a_bartack_takes_about_eleven_inches() {
    let yarn = bartack(28, Length::mm(2.0), Length::mm(10.0), Length::mm(3.0)).unwrap();
    near(yarn.to_mm(), 281.8, 0.05);
    assert_eq!(
        bartack(0, Length::mm(2.0), Length::mm(10.0), Length::mm(3.0)),
        None
    );
}

#[test]
fn needle_and_under_sum_to_the_total() {
    let (density, thickness) = (StitchDensity::per_inch(8.0), Length::inches(0.06));
    let width = Length::inches(0.25);
    for stitch in StitchType::ALL {
        let Some(shared) = yarn_per_seam(stitch, density, thickness, width) else {
            continue;
        };
        assert!(shared.needle > 0.0 && shared.under >= 0.0, "{stitch}");
        let wanted = Formula::of(stitch).map_or_else(
            || RatioRow::of(stitch).unwrap().total,
            |f| f.ratio(density, thickness, width),
        );
        near(shared.total(), wanted, 1e-9);
    }
    // Derived: the needle thread of 401 takes 1 + 2TS, of 301 1 + TS.
    let needle = |s| yarn_per_seam(s, density, thickness, width).unwrap().needle;
    near(needle(StitchType::S401), 1.96, 1e-9);
    near(needle(StitchType::S301), 1.48, 1e-9);
    assert_eq!(
        yarn_per_seam(StitchType::S404, density, thickness, width),
        None
    );
}
