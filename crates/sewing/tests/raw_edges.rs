//! No cut edge of a pair ends raw without a word: each is enclosed, the cloth's own, covered by an operation, said to be
//! raw, or asked for.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use std::collections::BTreeMap;

use common::ferryman;
use draft::{EdgeId, PieceId};
use sewing::work::{CutEdge, EdgeEnd, Operation, OperationKey, cut_edges, sewing_order};
use sewing::{Garment, make, make_run};
use style::{
    Answers, Construction, Figure, LabelWords, Loaded, NewStyle, RowSpec, SeamId, Taste, known,
};
use trade::{Length, StitchDensity, StitchType};
use words::Words;

fn named(order: &[Operation], key: OperationKey) -> &Operation {
    order.iter().find(|o| o.key == key).unwrap()
}

/// What the order says must bear out what is said of an edge.
fn is_borne_out(garment: &Garment, order: &[Operation], cut: &CutEdge) {
    let what = format!("{:?} {:?} {:?}", cut.piece, cut.edge, cut.end);
    let names_piece = |o: &Operation| assert!(o.pieces.contains(&cut.piece), "{what}: {:?}", o.key);
    match cut
        .end
        .unwrap_or_else(|| panic!("nothing is said of {what}"))
    {
        EdgeEnd::OwnEdge => {
            let shell = &garment.collection.cloths[&garment.doc.cloth.shell];
            assert!(shell.selvedge && cut.edge == EdgeId::Side, "{what}");
        }
        EdgeEnd::Enclosed => {
            // What is turned in, or caught between plies, is cut beyond the line; a lining lies raw in a fold.
            let in_fold = matches!(
                cut.piece,
                PieceId::BackLiningLeft | PieceId::BackLiningRight | PieceId::LoopStrip
            );
            let bound = Some(Construction::BoundEdge);
            let seam = |id| garment.seams.iter().find(move |seam| seam.id == id);
            let of_seam = [SeamId::FlyEdge, SeamId::BagClose]
                .into_iter()
                .any(|id| seam(id).map(|s| s.construction) == bound);
            let allowed = garment.cut.iter().filter(|c| c.piece == cut.piece);
            let least = allowed
                .flat_map(|c| &c.allowances)
                .filter(|(edge, _)| *edge == cut.edge)
                .map(|(_, allowance)| *allowance)
                .reduce(Length::min)
                .unwrap();
            assert!(
                in_fold || of_seam || least > Length::mm(3.0),
                "{what}: {least}"
            );
        }
        EdgeEnd::Neatened(key) => {
            let operation = named(order, key);
            names_piece(operation);
            let covers = |stitch: StitchType| stitch.is_overedge() || stitch == StitchType::S406;
            let mut needles = operation.needles.iter();
            assert!(needles.any(|needle| covers(needle.stitch)), "{what}");
        }
        EdgeEnd::StaysRaw(key) => {
            let operation = named(order, key);
            let said = |mind: &words::Said| Words::english().saying(mind).contains("raw");
            assert!(operation.mind.iter().any(said), "{what}");
        }
        EdgeEnd::Asked(key) => {
            let operation = named(order, key);
            names_piece(operation);
            assert!(operation.not_stated.is_some(), "{what}");
        }
    }
}

/// Every edge of every cut piece, and how often each end.
fn looked_at(garment: &Garment) -> BTreeMap<&'static str, usize> {
    let order = sewing_order(garment);
    let edges = cut_edges(garment, &order);
    for cut in &garment.cut {
        for (edge, _) in &cut.allowances {
            let there = edges
                .iter()
                .any(|e| e.piece == cut.piece && e.edge == *edge);
            assert!(there, "{:?} {edge:?}", cut.piece);
        }
    }
    let mut counted = BTreeMap::new();
    for edge in &edges {
        is_borne_out(garment, &order, edge);
        let word = match edge.end.unwrap() {
            EdgeEnd::Enclosed => "enclosed",
            EdgeEnd::OwnEdge => "own",
            EdgeEnd::Neatened(_) => "neatened",
            EdgeEnd::StaysRaw(_) => "raw",
            EdgeEnd::Asked(_) => "asked",
        };
        *counted.entry(word).or_insert(0) += 1;
    }
    counted
}

#[test]
fn every_cut_edge_of_the_demo_is_accounted_for() {
    let demo = ferryman();
    for garment in make_run(&demo.style, &demo.collection) {
        let counted = looked_at(&garment);
        assert!(counted["enclosed"] > 40, "{counted:?}");
        for word in ["own", "neatened", "asked"] {
            assert!(counted.contains_key(word), "{counted:?}");
        }
    }
}

/// The right front's centre edge and the shield's long edges are joined under the fly, raw: it is asked how they are
/// neatened.
#[test]
fn the_edges_under_the_shield_are_asked_for() {
    let demo = ferryman();
    let garment = make(&demo.style, &demo.collection, demo.style.sizes.base);
    let order = sewing_order(&garment);
    let asked: Vec<(PieceId, EdgeId)> = cut_edges(&garment, &order)
        .into_iter()
        .filter(
            |cut| matches!(cut.end, Some(EdgeEnd::Asked(key)) if key.code() == "fly-shield-neaten"),
        )
        .map(|cut| (cut.piece, cut.edge))
        .collect();
    let wanted = [
        (PieceId::Front, EdgeId::Fly),
        (PieceId::FlyShield, EdgeId::Left),
        (PieceId::FlyShield, EdgeId::Right),
    ];
    for edge in wanted {
        assert!(asked.contains(&edge), "{edge:?}: {asked:?}");
    }
}

#[test]
fn every_cut_edge_of_a_begun_style_is_accounted_for() {
    for figure in [Figure::Men, Figure::Women] {
        for taste in Taste::WORDS.iter().map(|(_, taste)| *taste) {
            let folder = tempfile::tempdir().unwrap();
            let asked = NewStyle {
                name: "Begun".to_owned(),
                code: "B-1".to_owned(),
                folder: None,
                label: Some("A label".to_owned()),
                words: LabelWords::default(),
                answers: Answers {
                    figure,
                    taste,
                    ..Answers::default()
                },
            };
            let path = style::new_style(&folder.path().join("label"), &asked).unwrap();
            let begun = style::load(&path).unwrap();
            let (style, collection) = (&begun.style, &begun.collection);
            looked_at(&make(style, collection, style.sizes.base));
        }
    }
}

/// Every construction of every seam, with rows and without an overedge among them, and with no such seam at all.
#[test]
fn every_cut_edge_is_accounted_for_in_any_construction() {
    let plain = |offset| RowSpec {
        stitch: StitchType::S301,
        density: StitchDensity::per_inch(8.0),
        yarn: "rope-105".to_owned(),
        under: "rope-60".to_owned(),
        offset: Length::mm(offset),
        begin: None,
        end: None,
    };
    let sewn = |change: &dyn Fn(&mut Loaded)| {
        let mut demo = ferryman();
        change(&mut demo);
        make(&demo.style, &demo.collection, demo.style.sizes.base)
    };
    let mut ends = BTreeMap::new();
    for seam in known::seams() {
        let without = sewn(&|l| {
            l.style.seams.shift_remove(&seam.id);
        });
        looked_at(&without);
        for construction in seam.constructions {
            let garment = sewn(&|l| {
                let spec = l.style.seams.get_mut(&seam.id).unwrap();
                spec.construction = Some(*construction);
                spec.rows = Some(vec![plain(0.0), plain(6.0)]);
            });
            for (word, count) in looked_at(&garment) {
                *ends.entry(word).or_insert(0) += count;
            }
        }
    }
    // A facing laid on and a strip without a covering stitch.
    assert!(ends["raw"] >= 2, "{ends:?}");
}
