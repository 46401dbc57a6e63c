//! Every seam there is, wherever something has to know of it. What a new seam lacks does not compile or
//! fails here by its name: the demo sews every one of them.

#![allow(clippy::unwrap_used)]

use std::path::Path;

use sewing::work::{Stage, sewing_order};
use sewing::yarn::consumption;
use sewing::{Garment, describe, edge_use, make};
use style::{Construction, Seam, SeamId, Size, known};

fn demo() -> Garment {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    let loaded = style::load(&path).unwrap();
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn of(garment: &Garment, id: SeamId) -> &Seam {
    let stated = garment.seams.iter().find(|seam| seam.id == id);
    stated.unwrap_or_else(|| panic!("the demo does not sew `{}`", id.code()))
}

#[test]
fn every_seam_is_laid_and_takes_yarn() {
    let garment = demo();
    let yarn = consumption(&garment);
    for id in SeamId::ALL {
        let name = id.code();
        for number in 1..=of(&garment, id).rows.len() {
            let mut rows = garment.rows.iter();
            let laid = rows.any(|row| row.seam == id && row.number == number);
            assert!(laid, "row {number} of `{name}` is laid nowhere");
        }
        let counted = yarn.items.iter().any(|item| item.seam == id);
        assert!(counted, "`{name}` takes no yarn");
    }
}

/// A seam that only lies on something has no edge; every other is cut along one.
#[test]
fn every_seam_has_an_edge_that_is_cut_for_it() {
    let garment = demo();
    for id in SeamId::ALL {
        let on_top = matches!(
            of(&garment, id).construction,
            Construction::Surface | Construction::LaidOn
        );
        let edges = garment.cut.iter().flat_map(|cut| {
            let edges = cut.allowances.iter();
            edges.map(|(edge, _)| edge_use(cut.piece, *edge).seam())
        });
        let cut = edges.flatten().any(|seam| seam == id);
        assert_ne!(cut, on_top, "`{}` and the edges of pieces", id.code());
    }
}

#[test]
fn every_seam_has_its_place_in_the_sewing_order() {
    let garment = demo();
    let order = sewing_order(&garment);
    for id in SeamId::ALL {
        let name = id.code();
        let sews = |o: &&sewing::work::Operation| {
            o.needles
                .iter()
                .any(|needle| needle.row.is_some() && needle.seam == id)
        };
        let first = order.iter().find(sews);
        let first = first.unwrap_or_else(|| panic!("no operation sews `{name}`"));
        // What has no place of its own is left to the end.
        assert_ne!(
            first.stage,
            Stage::Finish,
            "`{name}` has no place in the order"
        );
        let part = format!("seam:{name}");
        assert!(first.parts.contains(&part), "`{name}`: {:?}", first.parts);
        assert!(!first.pieces.is_empty(), "`{name}` is sewn on no piece");
    }
}

#[test]
fn every_seam_is_described_in_every_construction() {
    let garment = demo();
    for known in known::seams() {
        for construction in known.constructions {
            let seam = Seam {
                construction: *construction,
                ..of(&garment, known.id).clone()
            };
            let (told, name) = (describe(&garment, &seam), known.id.code());
            for words in [
                told.name.as_str(),
                told.joins,
                &told.class,
                told.machine,
                &told.plies,
                &told.lies,
            ] {
                assert!(!words.is_empty(), "{name}, {construction}: {told:?}");
            }
        }
    }
}
