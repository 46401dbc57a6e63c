//! Charts far apart that must draft, and charts that contradict themselves and must say how.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::{Chart, ferryman, table_rows};
use draft::{Drafted, PieceId, RULES, Severity, Spec, corners, draft, findings, joints, walk};
use geometry::{area, is_simple};
use style::{Figure, Fit, MeasureId, OutseamLine, Size, Tag};
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
            walked.join.seam.code()
        );
    }
    let corners = corners(pattern);
    assert_eq!(corners.len(), 10);
    for corner in corners {
        let off = corner.off_square();
        assert!(
            off <= Angle::deg(0.2),
            "{who} {}: {}",
            corner.name.code(),
            corner.angle
        );
    }
    let joints = joints(pattern);
    assert_eq!(joints.len(), 5);
    for joint in joints {
        assert!(
            joint.bend() <= Angle::deg(0.2),
            "{who} {}: {}",
            joint.name.code(),
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
            assert!(gap < 1e-6, "{who} {} after {:?}: {gap}", piece.id, edge.id);
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
fn every_measure_is_taken_on_the_demo() {
    let doc = ferryman();
    let pattern = draft(&Spec::of(&doc, doc.sizes.base)).pattern;
    for measure in MeasureId::ALL {
        assert!(
            pattern.measure(measure).is_some(),
            "{measure:?} is not taken"
        );
    }
}

/// Where the chart has no break, half a size is half way.
#[test]
fn a_half_size_drafts_half_way_between_its_neighbours() {
    let doc = ferryman();
    let size = |halves| Size::of(Tag::halves(halves), Tag::inches(32));
    let drafts = [62, 63, 64].map(|halves| draft(&Spec::of(&doc, size(halves))));
    for drafted in &drafts {
        assert_sound("about 31.5x32", drafted);
    }
    let found = findings(&drafts[1], size(63), &doc);
    assert_eq!(found, []);
    for measure in MeasureId::ALL {
        let of = |d: &Drafted| d.pattern.measure(measure);
        let [Some(below), Some(half), Some(above)] = drafts.each_ref().map(of) else {
            continue;
        };
        if doc.chart.contains_key(&measure) {
            let off = half - (below + above) / 2.0;
            assert!(off.abs() < Length::mm(0.05), "{measure:?}: {off}");
        }
    }
}

#[test]
fn women_slim_w24() {
    let chart = table_rows()
        .into_iter()
        .find(|c| {
            c.figure == Figure::Women && c.fit == Fit::Slim && c.size.waist == Tag::inches(24)
        })
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

#[test]
fn rules_have_their_own_codes() {
    let mut codes: Vec<&str> = RULES.iter().map(|r| r.code).collect();
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), RULES.len());
}
