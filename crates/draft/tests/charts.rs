//! Charts far apart that must draft, and charts that contradict themselves and must say how.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::{Chart, ferryman, table_rows};
use draft::{Drafted, PieceId, RULES, Severity, Spec, corners, draft, findings, joints, walk};
use geometry::{area, is_simple};
use style::{Figure, Fit, OutseamLine, Size};
use trade::{Angle, Length};

fn cm(cm: f64) -> Length {
    Length::cm(cm)
}

/// Everything a drafted size has to keep, whatever its chart.
fn assert_sound(who: &str, drafted: &Drafted) {
    assert!(drafted.conflict.is_none(), "{who}: {:?}", drafted.conflict);
    let pattern = &drafted.pattern;
    let worst = pattern.worst_measure();
    assert!(
        worst <= Length::mm(0.01),
        "{who}: a measure is off by {worst}"
    );
    for walked in walk(pattern) {
        let gap = walked.gap().abs();
        assert!(
            gap <= Length::mm(0.1),
            "{who} {}: gap {gap}",
            walked.join.seam
        );
    }
    let corners = corners(pattern);
    assert_eq!(corners.len(), 10);
    for corner in corners {
        let off = corner.off_square();
        assert!(
            off <= Angle::deg(0.2),
            "{who} {}: {}",
            corner.name,
            corner.angle
        );
    }
    let joints = joints(pattern);
    assert_eq!(joints.len(), 5);
    for joint in joints {
        assert!(
            joint.bend() <= Angle::deg(0.2),
            "{who} {}: {}",
            joint.name,
            joint.angle
        );
    }
    assert!(pattern.crotch_jump().unwrap() <= Angle::deg(1.0), "{who}");
    for piece in &pattern.pieces {
        let outline = piece.polygon(Length::mm(2.0));
        assert!(is_simple(&outline), "{who} {} crosses itself", piece.id);
        assert!(
            area(&outline).to_mm2() > 0.0,
            "{who} {} runs clockwise",
            piece.id
        );
        for (k, edge) in piece.edges.iter().enumerate() {
            let next = &piece.edges[(k + 1) % piece.edges.len()];
            let gap = (edge.path.end() - next.path.start()).hypot();
            assert!(gap < 1e-6, "{who} {} after {}: {gap}", piece.id, edge.name);
        }
    }
}

/// A cloth's own edge runs straight; every chart must draft with the outseam along it too.
#[test]
fn every_chart_drafts_with_a_straight_outseam() {
    for chart in table_rows() {
        let mut doc = chart.doc();
        doc.shape.outseam = OutseamLine::Straight;
        let drafted = draft(&Spec::of(&doc, chart.size));
        let who = format!("{:?} {:?} {}", chart.figure, chart.fit, chart.size);
        assert_sound(&who, &drafted);
        let found = findings(&drafted, chart.size, &doc);
        let errors: Vec<_> = found
            .iter()
            // A narrow hem stays narrow, however the outseam runs.
            .filter(|f| f.severity == Severity::Error && f.code != "fit::foot-passage")
            .collect();
        assert!(errors.is_empty(), "{who}: {errors:?}");
    }
}

#[test]
fn ferryman_keeps_every_rule_in_every_size() {
    let doc = ferryman();
    let mut sizes = 0;
    for size in doc.sizes.all() {
        let drafted = draft(&Spec::of(&doc, size));
        assert_sound(&size.to_string(), &drafted);
        assert_eq!(drafted.pattern.pieces.len(), PieceId::ALL.len());
        let found = findings(&drafted, size, &doc);
        assert_eq!(found, [], "{size}");
        sizes += 1;
    }
    assert_eq!(sizes, 27);
}

#[test]
fn women_slim_w24() {
    let chart = table_rows()
        .into_iter()
        .find(|c| c.figure == Figure::Women && c.fit == Fit::Slim && c.size.waist == 24)
        .unwrap();
    let drafted = draft(&chart.spec());
    assert_sound("women's slim W24", &drafted);
    let found = findings(&drafted, chart.size, &chart.doc());
    let codes: Vec<&str> = found.iter().map(|f| f.code).collect();
    // Hem 29.2 cm, seat 1.7 cm under the mean body: both true of that chart.
    assert_eq!(codes, ["fit::foot-passage", "fit::seat-ease"]);
}

#[test]
fn men_relaxed_w44() {
    let chart = Chart {
        figure: Figure::Men,
        fit: Fit::Relaxed,
        size: Size::new(44, 32),
        waist: cm(115.0),
        seat: cm(132.0),
        thigh: cm(82.0),
        knee: cm(57.0),
        hem: cm(52.0),
        front_rise: cm(33.5),
        back_rise: cm(43.0),
        inseam: cm(81.0),
        knee_at: cm(35.0),
    };
    let drafted = draft(&chart.spec());
    assert_sound("relaxed W44", &drafted);
    let found = findings(&drafted, chart.size, &chart.doc());
    assert!(
        found.iter().all(|f| f.severity < Severity::Error),
        "{found:?}"
    );
}

#[test]
fn strongly_tapered() {
    let chart = Chart {
        figure: Figure::Men,
        fit: Fit::Tapered,
        size: Size::new(31, 30),
        waist: cm(82.0),
        seat: cm(108.0),
        thigh: cm(70.0),
        knee: cm(46.0),
        hem: cm(34.0),
        front_rise: cm(30.5),
        back_rise: cm(39.5),
        inseam: cm(74.0),
        knee_at: cm(33.0),
    };
    let drafted = draft(&chart.spec());
    assert_sound("strongly tapered", &drafted);
    let found = findings(&drafted, chart.size, &chart.doc());
    assert!(
        found.iter().all(|f| f.severity < Severity::Error),
        "{found:?}"
    );
}

/// A chart in conflict: its exact words, and every remedy applied by itself makes it draft.
fn assert_conflict(spec: &Spec, words: &str) {
    let drafted = draft(spec);
    let conflict = drafted.conflict.unwrap();
    assert_eq!(conflict.to_string(), words);
    // There are still pieces to look at.
    assert!(drafted.pattern.piece(PieceId::Front).is_some());
    assert!(!conflict.remedies.is_empty());
    for remedy in &conflict.remedies {
        let mut mended = spec.clone();
        let at = match remedy.measure.key {
            "waist" => &mut mended.waist,
            "seat" => &mut mended.seat,
            "thigh" => &mut mended.thigh,
            "knee" => &mut mended.knee,
            "hem" => &mut mended.hem,
            "front_rise" => &mut mended.front_rise,
            "back_rise" => &mut mended.back_rise,
            "inseam" => &mut mended.inseam,
            "outseam" => mended.outseam.as_mut().unwrap(),
            "band_height" => &mut mended.band_height,
            "yoke_centre" => &mut mended.yoke_centre,
            "yoke_side" => &mut mended.yoke_side,
            key => panic!("{key} is no measure of the core"),
        };
        assert_eq!(*at, remedy.charted);
        *at = remedy.nearest;
        let drafted = draft(&mended);
        assert!(
            drafted.conflict.is_none(),
            "{} = {}",
            remedy.measure.key,
            remedy.nearest
        );
        assert!(drafted.pattern.worst_measure() <= Length::mm(0.01));
    }
}

#[test]
fn thigh_far_too_small_for_the_seat() {
    let chart = Chart {
        thigh: cm(48.0),
        ..Chart::straight()
    };
    assert_conflict(
        &chart.spec(),
        "thigh 48.0 cm does not go with the rest of the chart (the crotch would have no width): it would have to be at least 54.9 cm (+6.9 cm)",
    );
}

#[test]
fn inseam_longer_than_the_outseam() {
    let mut spec = Chart::straight().spec();
    spec.outseam = Some(cm(75.0));
    assert_conflict(
        &spec,
        "outseam 75.0 cm does not go with the rest of the chart (the waist would climb or fall too steeply towards the side): it would have to be at least 103.7 cm (+28.7 cm), or inseam at most 52.5 cm (−28.8 cm)",
    );
}

#[test]
fn back_rise_shorter_than_the_front_rise() {
    let chart = Chart {
        back_rise: cm(26.0),
        ..Chart::straight()
    };
    assert_conflict(
        &chart.spec(),
        "back rise 26.0 cm does not go with the rest of the chart (the waist would lie lower behind than in front): it would have to be at least 31.1 cm (+5.1 cm), or front rise at most 22.9 cm (−5.0 cm)",
    );
}

#[test]
fn waist_far_larger_than_the_seat() {
    let chart = Chart {
        waist: cm(120.0),
        ..Chart::straight()
    };
    assert_conflict(
        &chart.spec(),
        "waist 120.0 cm does not go with the rest of the chart (the waist would be wider than the seat): it would have to be at most 94.2 cm (−25.8 cm)",
    );
}

#[test]
fn yoke_deeper_than_the_rise() {
    let mut spec = Chart::straight().spec();
    spec.yoke_centre = cm(35.0);
    assert_conflict(
        &spec,
        "yoke height (centre back) 35.0 cm does not go with the rest of the chart (the back crotch point would lie at the wrong height): it would have to be at most 18.9 cm (−16.1 cm), or back rise at least 53.6 cm (+16.1 cm)",
    );
}

#[test]
fn hem_above_the_knee() {
    let chart = Chart {
        inseam: cm(34.0),
        ..Chart::straight()
    };
    assert_conflict(
        &chart.spec(),
        "inseam 34.0 cm does not go with the rest of the chart (the hem would lie above the knee): it would have to be at least 38.7 cm (+4.7 cm)",
    );
}

#[test]
fn knee_larger_than_the_seat_leaves_the_thigh_no_room() {
    let chart = Chart {
        knee: cm(120.0),
        ..Chart::straight()
    };
    assert_conflict(
        &chart.spec(),
        "thigh 62.2 cm does not go with the rest of the chart (the crotch would have no width): it would have to be at least 63.5 cm (+1.3 cm), or seat at most 98.8 cm (−2.8 cm), or knee at most 109.4 cm (−10.6 cm)",
    );
}

#[test]
fn a_conflict_is_a_finding_with_a_next_step() {
    let chart = Chart {
        thigh: cm(48.0),
        hem: cm(30.0),
        ..Chart::straight()
    };
    let drafted = draft(&chart.spec());
    let found = findings(&drafted, chart.size, &chart.doc());
    let codes: Vec<&str> = found.iter().map(|f| f.code).collect();
    // The pieces are a compromise, so only what the chart itself says is added.
    assert_eq!(codes, ["fit::conflict", "fit::foot-passage"]);
    assert!(found.iter().all(|f| f.severity == Severity::Error));
    assert_eq!(found[0].remedy.as_deref(), Some("set thigh to 55.2 cm"));
}

#[test]
fn rules_have_their_own_codes() {
    let mut codes: Vec<&str> = RULES.iter().map(|r| r.code).collect();
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), RULES.len());
}
