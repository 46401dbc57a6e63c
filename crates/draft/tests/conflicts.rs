//! Charts that cannot be drafted: what is named, and that every way out that is proposed is one.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::{Chart, ferryman};
use draft::{PieceId, Remedy, Severity, draft_style, findings, remedies};
use style::{ChartEntry, MeasureId, StyleDoc};
use trade::Length;
use words::{Said, Words};

const fn cm(value: f64) -> Length {
    Length::cm(value)
}

/// The demo's style with one value of its file written otherwise.
fn ferryman_with(from: &str, to: &str) -> StyleDoc {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    let loaded = style::load(folder.as_ref()).unwrap();
    assert_eq!(loaded.text.matches(from).count(), 1, "{from}");
    loaded
        .with_text(&loaded.text.replace(from, to))
        .unwrap()
        .style
}

/// What is said of a style in conflict in its base size; every way out, applied, drafts in every size.
fn said(doc: &StyleDoc) -> (String, Vec<Remedy>) {
    let ways = remedies(doc);
    for way in &ways {
        let mended = way.applied(doc);
        for size in mended.sizes.all() {
            let drafted = draft_style(&mended, size);
            assert!(
                drafted.conflict.is_none(),
                "{size}: {}",
                english(way.advice().unwrap())
            );
            assert!(drafted.pattern.worst_measure() <= Length::mm(0.01));
        }
    }
    let failing = doc
        .sizes
        .all()
        .find_map(|size| draft_style(doc, size).conflict);
    (english(failing.unwrap().with(&ways, None)), ways)
}

fn english(said: Said) -> String {
    Words::english().saying(&said)
}

/// The first way out changes this value of the style.
fn first(doc: &StyleDoc) -> String {
    let (_, ways) = said(doc);
    assert!(!ways.is_empty());
    ways[0].moved[0].path().to_owned()
}

#[test]
fn a_fly_longer_than_the_front_is_what_is_named() {
    let doc = ferryman_with("value = \"16.5 cm\"", "value = \"40 cm\"");
    let (words, ways) = said(&doc);
    assert!(
        words.starts_with("fly length 40.0 cm does not go with the rest of the chart (the fly would reach down to the inseam): it would have to be at most"),
        "{words}"
    );
    assert_eq!(ways[0].moved[0].path(), "chart.fly_length.value");
}

#[test]
fn a_band_higher_than_the_rise_leaves_room_for_is_what_is_named() {
    let doc = ferryman_with(
        "[chart.band_height]\nvalue = \"3.8 cm\"",
        "[chart.band_height]\nvalue = \"15 cm\"",
    );
    assert_eq!(first(&doc), "chart.band_height.value");
}

#[test]
fn a_thigh_no_pattern_has_asks_nothing_of_the_seat() {
    let doc = ferryman_with("value = \"24 1/2 in\"", "value = \"42 in\"");
    let (words, ways) = said(&doc);
    assert_eq!(ways[0].moved[0].path(), "chart.thigh.value");
    assert!(!words.contains("seat"), "{words}");
}

#[test]
fn a_short_front_rise_is_named_before_all_else() {
    let doc = ferryman_with("value = \"11 in\"", "value = \"6 in\"");
    assert_eq!(first(&doc), "chart.front_rise.value");
}

#[test]
fn where_the_waist_comes_down_to_the_seat_level_the_level_is_proposed() {
    let mut doc = Chart {
        front_rise: cm(14.0),
        back_rise: cm(25.0),
        ..Chart::straight()
    }
    .doc();
    state(&mut doc, MeasureId::YokeSide, cm(2.0));
    state(&mut doc, MeasureId::MouthDepth, cm(4.0));
    state(&mut doc, MeasureId::FlyLength, cm(6.0));
    let (words, ways) = said(&doc);
    assert!(
        ways.iter()
            .any(|way| way.moved[0].path() == "chart.seat.at"),
        "{words}"
    );
}

#[test]
fn a_pocket_mouth_that_finds_no_room_is_what_is_named() {
    let deep = ferryman_with("value = \"7 cm\"", "value = \"30 cm\"");
    assert_eq!(first(&deep), "chart.mouth_depth.value");
    let wide = ferryman_with("value = \"10.5 cm\"", "value = \"30 cm\"");
    assert_eq!(first(&wide), "chart.mouth_width.value");
}

#[test]
fn a_shape_out_of_the_way_is_named_and_not_the_chart() {
    let doc = ferryman_with("seat_angle = \"13 deg\"", "seat_angle = \"44 deg\"");
    assert_eq!(first(&doc), "shape.seat_angle");
}

#[test]
fn a_grade_that_runs_away_is_named() {
    let doc = ferryman_with(
        "value = \"24 1/2 in\"\nat = \"1 in\"                       # below the crotch\ngrade = \"1/2 in\"",
        "value = \"24 1/2 in\"\nat = \"1 in\"\ngrade = \"4 in\"",
    );
    assert_eq!(first(&doc), "chart.thigh.grade");
}

#[test]
fn two_wrong_values_are_put_right_together() {
    let mut doc = ferryman();
    doc.chart[&MeasureId::Thigh].value = Length::inches(48.0);
    doc.chart[&MeasureId::FlyLength].value = cm(60.0);
    let (words, ways) = said(&doc);
    assert_eq!(ways[0].moved.len(), 2, "{words}");
    assert!(ways[0].edit().is_none());
}

#[test]
fn the_edit_of_a_way_out_is_the_way_out() {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    let loaded = style::load(folder.as_ref()).unwrap();
    let text = loaded
        .text
        .replace("value = \"16.5 cm\"", "value = \"40 cm\"");
    let broken = loaded.with_text(&text).unwrap();
    let ways = remedies(&broken.style);
    let edited = broken.with_edit(&ways[0].edit().unwrap()).unwrap();
    assert_eq!(edited.style.chart, ways[0].applied(&broken.style).chart);
    assert!(remedies(&edited.style).is_empty());
}

#[test]
fn thigh_far_too_small_for_the_seat() {
    let doc = Chart {
        thigh: cm(48.0),
        ..Chart::straight()
    }
    .doc();
    let (words, _) = said(&doc);
    assert!(
        words.starts_with("thigh 48.0 cm does not go with the rest of the chart (the crotch would have no width): it would have to be at least"),
        "{words}"
    );
}

fn stated(value: Length) -> ChartEntry {
    ChartEntry {
        value,
        grade: None,
        per_length: None,
        breaks: Vec::new(),
        at: None,
        tolerance: Length::mm(5.0),
    }
}

fn state(doc: &mut StyleDoc, measure: MeasureId, value: Length) {
    doc.chart.insert(measure, stated(value));
}

#[test]
fn inseam_longer_than_the_outseam() {
    let mut doc = Chart::straight().doc();
    state(&mut doc, MeasureId::Outseam, cm(75.0));
    assert_eq!(first(&doc), "chart.outseam.value");
}

#[test]
fn back_rise_shorter_than_the_front_rise() {
    let doc = Chart {
        back_rise: cm(26.0),
        ..Chart::straight()
    }
    .doc();
    assert_eq!(first(&doc), "chart.back_rise.value");
}

#[test]
fn waist_far_larger_than_the_seat() {
    let doc = Chart {
        waist: cm(120.0),
        ..Chart::straight()
    }
    .doc();
    assert_eq!(first(&doc), "chart.waist.value");
}

#[test]
fn yoke_deeper_than_the_rise() {
    let mut doc = Chart::straight().doc();
    state(&mut doc, MeasureId::YokeCentre, cm(35.0));
    assert_eq!(first(&doc), "chart.yoke_centre.value");
}

#[test]
fn hem_above_the_knee() {
    let doc = Chart {
        inseam: cm(34.0),
        ..Chart::straight()
    }
    .doc();
    assert_eq!(first(&doc), "chart.inseam.value");
}

#[test]
fn knee_larger_than_the_seat_leaves_the_thigh_no_room() {
    let doc = Chart {
        knee: cm(120.0),
        ..Chart::straight()
    }
    .doc();
    assert_eq!(first(&doc), "chart.knee.value");
}

#[test]
fn a_conflict_is_a_finding_and_there_are_pieces_to_look_at() {
    let chart = Chart {
        thigh: cm(48.0),
        hem: cm(30.0),
        ..Chart::straight()
    };
    let doc = chart.doc();
    let drafted = draft_style(&doc, chart.size);
    assert!(drafted.pattern.piece(PieceId::Front).is_some());
    let found = findings(&drafted, chart.size, &doc);
    let codes: Vec<&str> = found.iter().map(|f| f.code).collect();
    // The pieces are a compromise, so only what the chart itself says is added.
    assert_eq!(codes, ["fit::conflict", "fit::foot-passage"]);
    assert!(found.iter().all(|f| f.severity == Severity::Error));
}

#[test]
fn a_style_that_drafts_has_no_way_out_to_offer() {
    assert!(remedies(&ferryman()).is_empty());
}
