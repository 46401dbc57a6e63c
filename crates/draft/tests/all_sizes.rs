//! The demo style in every size, and charts far from it.
#![allow(clippy::unwrap_used)]

use draft::{PieceId, Spec, draft, walk};
use geometry::{area, is_simple};
use trade::Length;

fn ferryman() -> style::StyleDoc {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap().style
}

#[test]
fn every_size_meets_its_chart_and_closes() {
    let doc = ferryman();
    for size in doc.sizes.all() {
        let drafted = draft(&Spec::of(&doc, size));
        assert!(
            drafted.conflict.is_none(),
            "{size}: {}",
            drafted.conflict.unwrap()
        );
        let pattern = drafted.pattern;
        for m in pattern.measures() {
            if let Some(chart) = m.chart {
                let miss = (m.pattern - chart).abs().to_mm();
                assert!(miss <= 0.01, "{size} {}: off by {miss} mm", m.measure.key);
            }
        }
        for walked in walk(&pattern) {
            let gap = walked.gap().abs().to_mm();
            assert!(gap <= 0.1, "{size} {}: gap {gap} mm", walked.join.seam);
        }
        assert!(pattern.crotch_jump().unwrap().to_deg() <= 1.0);
    }
}

#[test]
fn every_piece_is_a_closed_simple_outline() {
    let doc = ferryman();
    for size in doc.sizes.all() {
        let pattern = draft(&Spec::of(&doc, size)).pattern;
        assert_eq!(pattern.pieces.len(), PieceId::ALL.len());
        for piece in &pattern.pieces {
            let n = piece.edges.len();
            for (k, edge) in piece.edges.iter().enumerate() {
                let next = &piece.edges[(k + 1) % n];
                let gap = (edge.path.end() - next.path.start()).hypot();
                assert!(gap < 1e-6, "{size} {} after {}: {gap}", piece.id, edge.name);
            }
            let outline = piece.polygon(Length::mm(2.0));
            assert!(area(&outline).to_mm2() > 0.0, "{} runs clockwise", piece.id);
            assert!(is_simple(&outline), "{size} {} crosses itself", piece.id);
            for notch in &piece.notches {
                assert!(piece.notch_point(notch).is_some(), "{} {}", piece.id, notch.name);
            }
        }
    }
}
