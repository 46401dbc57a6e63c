#![allow(clippy::unwrap_used)]
//! Tests of reading, printing and converting, over all the units together.

use proptest::prelude::*;

use super::*;

fn near(found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "{found} is not {wanted} ± {within}"
    );
}

fn length(text: &str) -> f64 {
    text.parse::<Length>().unwrap().to_mm()
}

fn complaint<T: std::str::FromStr<Err = UnitError>>(text: &str) -> String {
    text.parse::<T>()
        .err()
        .map(|e| e.to_string())
        .unwrap_or_default()
}

#[test]
fn lengths_are_read_in_every_unit() {
    near(length("10 1/2 in"), 266.7, 1e-9);
    near(length("10.5 in"), 266.7, 1e-9);
    near(length("1/8 in"), 3.175, 1e-9);
    near(length("26.5 cm"), 265.0, 1e-9);
    near(length("3 mm"), 3.0, 1e-9);
    near(length("1.2 m"), 1200.0, 1e-9);
    near(length("2 yd"), 1828.8, 1e-9);
    near(length("27 L"), 17.145, 1e-9);
    near(length("  10   1/2\tin "), 266.7, 1e-9);
    near(length("3mm"), 3.0, 1e-9);
    near(length("-10 1/2 in"), -266.7, 1e-9);
    near(length("−1/8 in"), -3.175, 1e-9);
    near(length("1e1 cm"), 100.0, 1e-9);
    near(length(".5 in"), 12.7, 1e-9);
}

#[test]
fn the_other_quantities_are_read_in_every_unit() {
    near(
        "14 oz / yd2"
            .parse::<ArealWeight>()
            .unwrap()
            .to_oz_per_yd2(),
        14.0,
        1e-9,
    );
    near(
        "475 g/m2".parse::<ArealWeight>().unwrap().to_gsm(),
        475.0,
        1e-9,
    );
    near("tex 105".parse::<YarnSize>().unwrap().to_tex(), 105.0, 1e-9);
    near("105 tex".parse::<YarnSize>().unwrap().to_tex(), 105.0, 1e-9);
    near(
        "dtex 1050".parse::<YarnSize>().unwrap().to_tex(),
        105.0,
        1e-9,
    );
    near(
        "denier 945".parse::<YarnSize>().unwrap().to_tex(),
        105.0,
        1e-9,
    );
    near("Nm 20".parse::<YarnSize>().unwrap().to_tex(), 50.0, 1e-9);
    near(
        "ticket 30".parse::<YarnSize>().unwrap().to_tex(),
        100.0,
        1e-9,
    );
    near("Ne 10".parse::<YarnSize>().unwrap().to_ne(), 10.0, 1e-9);
    near(
        "8 /in".parse::<StitchDensity>().unwrap().to_per_inch(),
        8.0,
        1e-9,
    );
    near(
        "8/in".parse::<StitchDensity>().unwrap().to_per_inch(),
        8.0,
        1e-9,
    );
    near(
        "3.1 /cm".parse::<StitchDensity>().unwrap().to_per_cm(),
        3.1,
        1e-9,
    );
    near("13 deg".parse::<Angle>().unwrap().to_deg(), 13.0, 1e-9);
    near("8 %".parse::<Share>().unwrap().to_ratio(), 0.08, 1e-12);
    near("1.2 kg".parse::<Mass>().unwrap().to_g(), 1200.0, 1e-9);
    near("1.5 m2".parse::<Area>().unwrap().to_cm2(), 15_000.0, 1e-9);
}

#[test]
fn each_mistake_has_its_own_answer() {
    let wanted = Quantity::Length;
    let text = |t: &str| t.to_owned();
    let fails = |t: &str| t.parse::<Length>().unwrap_err();
    assert_eq!(
        fails("26.5"),
        UnitError::MissingUnit {
            text: text("26.5"),
            wanted
        }
    );
    let found = Quantity::ArealWeight;
    assert_eq!(
        fails("14 oz/yd2"),
        UnitError::WrongQuantity {
            text: text("14 oz/yd2"),
            found,
            wanted
        }
    );
    let found = Quantity::YarnSize;
    assert_eq!(
        fails("tex 105"),
        UnitError::WrongQuantity {
            text: text("tex 105"),
            found,
            wanted
        }
    );
    for bad in ["", "wide", "cm", "- cm", ". cm", "tex"] {
        assert_eq!(
            fails(bad),
            UnitError::NotANumber {
                text: text(bad),
                wanted
            },
            "{bad}"
        );
    }
    for bad in [
        "NaN cm", "inf mm", "-inf in", "1e999 cm", "1e307 m", "1e999",
    ] {
        assert_eq!(
            fails(bad),
            UnitError::NotFinite {
                text: text(bad),
                wanted
            },
            "{bad}"
        );
    }
    for bad in ["1/0 in", "10 1/0 in"] {
        assert_eq!(
            fails(bad),
            UnitError::DivisionByZero {
                text: text(bad),
                wanted
            },
            "{bad}"
        );
    }
    assert_eq!(
        fails("26,5 cm"),
        UnitError::Comma {
            text: text("26,5 cm"),
            wanted
        }
    );
    assert_eq!(
        fails("10 in wide"),
        UnitError::TrailingText {
            text: text("10 in wide"),
            extra: text("wide"),
            wanted
        }
    );
    assert_eq!(
        fails("10 ells"),
        UnitError::UnknownUnit {
            text: text("10 ells"),
            unit: text("ells"),
            wanted
        }
    );
    assert_eq!(
        fails("10\""),
        UnitError::UnknownUnit {
            text: text("10\""),
            unit: text("\""),
            wanted
        }
    );
    let wanted = Quantity::YarnSize;
    assert_eq!(
        "Nm 20/2".parse::<YarnSize>(),
        Err(UnitError::TrailingText {
            text: text("Nm 20/2"),
            extra: text("/2"),
            wanted
        })
    );
    assert_eq!(
        "Ne 0".parse::<YarnSize>(),
        Err(UnitError::NotFinite {
            text: text("Ne 0"),
            wanted
        })
    );
}

#[test]
fn messages_say_what_to_write() {
    assert_eq!(
        complaint::<Length>("26.5"),
        "\"26.5\" has no unit: write \"26.5 cm\", \"26.5 mm\" or \"26.5 in\""
    );
    assert_eq!(
        complaint::<Length>("14 oz/yd2"),
        "\"14 oz/yd2\" is a cloth weight; a length is wanted, such as \"26.5 cm\", \"3 mm\" or \
         \"10 1/2 in\""
    );
    assert_eq!(complaint::<Share>("8"), "\"8\" has no unit: write \"8 %\"");
    assert_eq!(
        complaint::<YarnSize>("80"),
        "\"80\" has no unit: write \"tex 80\", \"Nm 80\" or \"Ne 80\""
    );
    assert!(complaint::<Length>(&"é".repeat(500)).chars().count() < 200);
}

#[test]
fn lengths_show_as_a_person_reads_them() {
    let inch = |l: Length| l.show(System::Inch);
    assert_eq!(inch(Length::inches(10.5)), "10 1/2 in");
    assert_eq!(inch(Length::inches(0.125)), "1/8 in");
    assert_eq!(inch(Length::inches(-0.0625)), "-1/16 in");
    assert_eq!(inch(Length::inches(11.0)), "11 in");
    assert_eq!(inch(Length::ZERO), "0 in");
    assert_eq!(inch(Length::inches(10.53)), "10.53 in");
    assert_eq!(inch(Length::mm(266.7 + 0.019)), "10 1/2 in");
    assert_eq!(inch(Length::mm(266.7 + 0.1)), "10.5 in");
    let metric = |l: Length| l.show(System::Metric);
    assert_eq!(metric(Length::cm(26.5)), "26.5 cm");
    assert_eq!(metric(Length::cm(26.6667)), "26.67 cm");
    assert_eq!(metric(Length::cm(30.0)), "30.0 cm");
    assert_eq!(Length::cm(26.5).to_string(), "26.5 cm");
    assert_eq!(Length::inches(0.125).to_string(), "3.175 mm");
    assert_eq!(Length::ZERO.to_string(), "0 mm");
}

#[test]
fn short_lengths_show_in_millimetres() {
    assert_eq!(Length::mm(8.0).show_mm(), "8 mm");
    assert_eq!(Length::mm(12.70).show_mm(), "12.7 mm");
    assert_eq!(Length::mm(1.64).show_mm(), "1.6 mm");
    assert_eq!(Length::mm(-0.04).show_mm(), "0 mm");
    assert_eq!(Length::mm(1200.0).show_mm(), "1200 mm");
}

#[test]
fn the_other_quantities_show_as_a_person_reads_them() {
    assert_eq!(
        ArealWeight::oz_per_yd2(14.0).show(System::Inch),
        "14 oz/yd2"
    );
    assert_eq!(
        ArealWeight::oz_per_yd2(14.0).show(System::Metric),
        "475 g/m2"
    );
    assert_eq!(ArealWeight::oz_per_yd2(14.0).to_string(), "14 oz/yd2");
    assert_eq!(StitchDensity::per_inch(8.0).show(System::Inch), "8 /in");
    assert_eq!(
        StitchDensity::per_inch(8.0).show(System::Metric),
        "3.15 /cm"
    );
    assert_eq!(StitchDensity::per_inch(8.0).to_string(), "8 /in");
    assert_eq!(YarnSize::tex(105.0).to_string(), "tex 105");
    assert_eq!(YarnSize::ne(12.0).to_string(), "Ne 12");
    assert_eq!(Angle::deg(13.0).to_string(), "13 deg");
    assert_eq!(Share::percent(8.0).to_string(), "8 %");
    assert_eq!(Mass::g(650.0).to_string(), "650 g");
    assert_eq!(Area::m2(1.25).show(System::Metric), "1.25 m2");
    assert_eq!(Area::cm2(45.0).show(System::Metric), "45 cm2");
}

#[test]
fn quantities_combine_into_others() {
    near((Length::m(2.0) * Length::m(1.5)).to_m2(), 3.0, 1e-12);
    near((Area::m2(3.0) / Length::m(1.5)).to_m(), 2.0, 1e-12);
    near(
        (Area::m2(2.0) * ArealWeight::gsm(475.0)).to_g(),
        950.0,
        1e-9,
    );
    near(
        (YarnSize::tex(105.0) * Length::m(1000.0)).to_g(),
        105.0,
        1e-9,
    );
    near(
        StitchDensity::per_inch(8.0) * Length::inches(42.0),
        336.0,
        1e-9,
    );
    near((Length::cm(50.0) * Share::percent(3.0)).to_cm(), 1.5, 1e-12);
    near(
        [Length::mm(1.0), Length::cm(1.0)]
            .iter()
            .sum::<Length>()
            .to_mm(),
        11.0,
        1e-12,
    );
}

/// A stitch of 2.5 mm is 10.16 stitches to the inch: veneaistudio.com, stitch length.
#[test]
fn pitch_is_the_length_of_a_stitch() {
    near(StitchDensity::per_inch(10.16).pitch().to_mm(), 2.5, 1e-9);
}

#[test]
fn serde_uses_the_text_form_and_its_errors() {
    assert_eq!(
        serde_json::to_string(&Length::cm(26.5)).unwrap(),
        "\"26.5 cm\""
    );
    assert_eq!(
        serde_json::from_str::<Length>("\"10 1/2 in\"").unwrap(),
        Length::inches(10.5)
    );
    for bare in ["26.5", "\"26.5\"", "26", "-26"] {
        let error = serde_json::from_str::<Length>(bare)
            .unwrap_err()
            .to_string();
        assert!(error.contains("has no unit: write"), "{bare}: {error}");
    }
    let error = serde_json::from_str::<Length>("true")
        .unwrap_err()
        .to_string();
    assert!(error.contains("a length as text, such as"), "{error}");
}

/// The text parses back to the same value within the resolution it was printed at.
fn parses_back<T>(text: &str, value: f64, read: fn(T) -> f64, resolution: f64)
where
    T: std::str::FromStr<Err = UnitError>,
{
    let found = text
        .parse::<T>()
        .map(read)
        .map_err(|e| e.to_string())
        .unwrap();
    let slack = value.abs() * 1e-12;
    assert!(
        (found - value).abs() <= resolution + slack,
        "{value} printed as {text}"
    );
}

proptest! {
    #[test]
    fn any_length_parses_back(mm in -1.0e6..1.0e6_f64) {
        let length = Length::mm(mm);
        parses_back(&length.to_string(), mm, Length::to_mm, 0.00005);
        parses_back(&length.show(System::Metric), mm, Length::to_mm, 0.05);
        parses_back(&length.show(System::Inch), mm, Length::to_mm, 0.127);
    }

    #[test]
    fn any_sixteenth_parses_back_to_itself(sixteenths in -20_000_i32..20_000) {
        let length = Length::inches(f64::from(sixteenths) / 16.0);
        let text = length.show(System::Inch);
        prop_assert!(!text.contains('.'), "{}", text);
        parses_back(&text, length.to_mm(), Length::to_mm, 1e-9);
    }

    #[test]
    fn any_other_quantity_parses_back(v in 0.01..1.0e4_f64) {
        parses_back(&Angle::deg(v).to_string(), v, Angle::to_deg, 5e-7);
        parses_back(&Angle::deg(v).show(System::Metric), v, Angle::to_deg, 0.05);
        parses_back(&Area::cm2(v).to_string(), v, Area::to_cm2, 5e-7);
        parses_back(&ArealWeight::gsm(v).to_string(), v, ArealWeight::to_gsm, 5e-5);
        parses_back(&ArealWeight::gsm(v).show(System::Metric), v, ArealWeight::to_gsm, 0.5);
        parses_back(&ArealWeight::oz_per_yd2(v).show(System::Inch), v, ArealWeight::to_oz_per_yd2, 0.005);
        parses_back(&Mass::g(v).to_string(), v, Mass::to_g, 5e-5);
        parses_back(&Mass::g(v).show(System::Metric), v, Mass::to_g, 0.05);
        parses_back(&YarnSize::tex(v).to_string(), v, YarnSize::to_tex, 5e-5);
        parses_back(&YarnSize::tex(v).show(System::Metric), v, YarnSize::to_tex, 0.05);
        parses_back(&StitchDensity::per_cm(v).to_string(), v, StitchDensity::to_per_cm, 5e-5);
        parses_back(&StitchDensity::per_cm(v).show(System::Metric), v, StitchDensity::to_per_cm, 0.005);
        parses_back(&StitchDensity::per_inch(v).show(System::Inch), v, StitchDensity::to_per_inch, 0.05);
        parses_back(&Share::percent(v).to_string(), v, Share::to_percent, 5e-7);
        parses_back(&Share::percent(v).show(System::Metric), v, Share::to_percent, 0.05);
    }

    #[test]
    fn any_text_is_answered_and_never_infinite(text in "\\PC*") {
        if let Ok(length) = text.parse::<Length>() {
            prop_assert!(length.is_finite());
        }
    }

    #[test]
    fn any_almost_good_text_is_answered(text in "[-+−]?[0-9]{0,4}[ ./,e]?[0-9]{0,3}[ /]?[0-9]{0,3} ?(cm|in|tex|%|/in|oz/yd2|é)? ?x?") {
        for finite in [
            text.parse::<Length>().map(Length::is_finite),
            text.parse::<YarnSize>().map(YarnSize::is_finite),
            text.parse::<StitchDensity>().map(StitchDensity::is_finite),
            text.parse::<Share>().map(Share::is_finite),
            text.parse::<ArealWeight>().map(ArealWeight::is_finite),
        ].into_iter().flatten() {
            prop_assert!(finite);
        }
    }

    #[test]
    fn any_value_prints(bits in any::<u64>()) {
        let length = Length::mm(f64::from_bits(bits));
        prop_assert!(length.show(System::Inch).ends_with(" in"));
        prop_assert!(length.show(System::Metric).ends_with(" cm"));
        prop_assert!(length.to_string().ends_with('m'));
    }
}
