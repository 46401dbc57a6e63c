//! Every piece has the edges, points, lines and notches that are stated of it, in that order.
#![allow(clippy::unwrap_used)]

use draft::{EdgeId, LineId, Pattern, PieceId, PointId, draft_style, parts};
use style::{HALF_LINING, Lining, StyleDoc};

/// The demo with as many belt loops as are laid out, and both back pockets lined.
fn full(lining: Lining) -> StyleDoc {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    let mut doc = style::load(folder.as_ref()).unwrap().style;
    doc.loops.count = 9;
    doc.pockets.back.left.lining = lining;
    doc.pockets.back.right.lining = lining;
    doc
}

fn drafted(doc: &StyleDoc) -> Pattern {
    draft_style(doc, doc.sizes.base).pattern
}

#[test]
fn every_piece_has_its_parts_in_order() {
    let pattern = drafted(&full(Lining::Full));
    for id in PieceId::ALL {
        let piece = pattern.piece(id).unwrap();
        let stated = parts(id);
        let edges: Vec<EdgeId> = piece.edges.iter().map(|e| e.id).collect();
        assert_eq!(edges, id.edges(), "{id:?}");
        let points: Vec<PointId> = piece.points.iter().map(|p| p.id).collect();
        assert_eq!(points, stated.points, "{id:?}");
        let lines: Vec<LineId> = piece.lines.iter().map(|l| l.id).collect();
        assert_eq!(lines, stated.lines, "{id:?}");
        let notches: Vec<_> = piece.notches.iter().map(|n| (n.edge, n.id)).collect();
        assert_eq!(notches, stated.notches, "{id:?}");
    }
}

#[test]
fn a_lining_of_half_a_pocket_has_its_own_edges() {
    let pattern = drafted(&full(Lining::Half));
    for id in [PieceId::BackLiningLeft, PieceId::BackLiningRight] {
        let edges = pattern.piece(id).unwrap().edges.iter();
        assert_eq!(edges.map(|e| e.id).collect::<Vec<_>>(), HALF_LINING);
    }
}

#[test]
fn a_style_without_loops_or_extra_pocket_has_no_places_for_them() {
    let mut doc = full(Lining::None);
    doc.loops.count = 5;
    doc.pockets.extra = None;
    let pattern = drafted(&doc);
    let band = pattern.piece(PieceId::Band).unwrap();
    let loops = |p: &&draft::NamedPoint| PointId::LOOPS.contains(&p.id);
    assert_eq!(band.points.iter().filter(loops).count(), 5);
    let front = pattern.piece(PieceId::Front).unwrap();
    assert!(front.line(LineId::FlyStitch).is_some());
    let bag = pattern.piece(PieceId::PocketBag).unwrap();
    assert!(bag.line(LineId::ExtraPocket).is_none());
}
