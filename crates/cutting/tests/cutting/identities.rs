//! Every edge, point, line and notch that has a name is on a piece of the demo, drafted or cut, and can be said.

use std::collections::BTreeSet;

use cutting::{BandCut, CutSize, Plan, cut};
use draft::{EdgeId, LineId, NotchId, PointId};
use sewing::Garment;
use style::{Lining, Size};
use words::Words;

use crate::common::{ferryman, sewn};

/// Nine belt loops and both back pockets lined; the band too long for the cloth it is cut across.
fn made(lining: Lining) -> (Garment, CutSize) {
    let mut loaded = ferryman();
    loaded.style.loops.count = 9;
    loaded.style.pockets.back.left.lining = lining;
    loaded.style.pockets.back.right.lining = lining;
    for cloth in loaded.collection.cloths.values_mut() {
        cloth.width = trade::Length::cm(90.0);
    }
    let garment = sewn(&loaded, Size::new(32, 32));
    let plan = Plan {
        band: BandCut::AlongWeft,
        ..Plan::default()
    };
    let all = cut(&garment, &plan);
    (garment, all)
}

#[test]
fn every_identity_is_on_a_piece_and_has_words() {
    let mut edges = BTreeSet::new();
    let mut points = BTreeSet::new();
    let mut lines = BTreeSet::new();
    let mut notches = BTreeSet::new();
    for (garment, all) in [Lining::Full, Lining::Half].map(made) {
        for piece in &garment.pattern.pieces {
            edges.extend(piece.edges.iter().map(|e| e.id));
            points.extend(piece.points.iter().map(|p| p.id));
            lines.extend(piece.lines.iter().map(|l| l.id));
        }
        for piece in &all.pieces {
            edges.extend(piece.edges.iter().map(|e| e.id));
            points.extend(piece.points.iter().map(|p| p.0));
            lines.extend(piece.inner.iter().map(|l| l.id));
            notches.extend(piece.notches.iter().map(|n| n.id));
        }
    }
    let words = Words::english();
    for id in EdgeId::ALL {
        assert!(edges.contains(&id), "{id:?}");
        assert_eq!(EdgeId::of(id.code()), Some(id));
        assert_eq!(id.words(words), id.code().replace('_', " "));
    }
    for id in PointId::ALL {
        assert!(points.contains(&id), "{id:?}");
        assert_eq!(PointId::of(id.code()), Some(id));
        assert_eq!(id.words(words), id.code().replace('_', " "));
    }
    for id in LineId::ALL {
        assert!(lines.contains(&id), "{id:?}");
        assert_eq!(LineId::of(id.code()), Some(id));
        assert!(!id.words(words).is_empty());
    }
    for id in NotchId::ALL {
        assert!(notches.contains(&id), "{id:?}");
        assert_eq!(NotchId::of(id.code()), Some(id));
        assert_eq!(id.words(words), id.code().replace('_', " "));
    }
}
