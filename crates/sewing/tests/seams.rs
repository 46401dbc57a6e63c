//! Every seam there is, wherever something has to know of it. What a new seam lacks does not compile or
//! fails here by its name: the demo sews every one of them.

#![allow(clippy::unwrap_used)]

use std::path::Path;

use sewing::work::{Stage, sewing_order};
use sewing::yarn::consumption;
use sewing::{Garment, describe, edge_use, make};
use style::{Construction, Seam, SeamId, Size, known};
use trade::StitchType;
use words::Words;

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
        // The halves of a band cut in two are the cutter's: the piece is drafted whole.
        if id == SeamId::BandJoin {
            let use_ = edge_use(draft::PieceId::Band, draft::EdgeId::CentreBack);
            assert_eq!(use_.seam(), Some(id));
            continue;
        }
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
    let mut garment = demo();
    // Nothing is put off until after the wash.
    garment.doc.wash = None;
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
            assert!(told.class.is_some(), "{name}, {construction}: {told:?}");
            for said in [
                told.joins.into(),
                told.machine.clone(),
                told.plies.clone(),
                told.lies.clone(),
            ] {
                let words = Words::english().say(said);
                assert!(!words.is_empty(), "{name}, {construction}: {told:?}");
            }
        }
    }
}

/// The demo's shell is 0.82 mm thick and its pocketing 0.45 mm: front and bag of the mouth each with its
/// allowance are 2 × 0.82 + 2 × 0.45 = 2.54 mm, the facing turned in on the bag 2 × 0.82 + 0.45 = 2.09 mm, the band
/// with a leather of 1.6 mm 2 × 0.82 + 1.6 = 3.24 mm.
#[test]
fn every_ply_of_a_mixed_seam_has_the_thickness_of_its_own_cloth() {
    let garment = demo();
    let plies = |id: SeamId| Words::english().saying(&describe(&garment, of(&garment, id)).plies);
    for (id, said) in [
        (
            SeamId::Mouth,
            "4 plies (2 of shell, 2 of pocketing), 2.5 mm",
        ),
        (
            SeamId::FacingSet,
            "3 plies (2 of shell, 1 of pocketing), 2.1 mm",
        ),
        (SeamId::PatchSet, "2 plies and the patch, 3.2 mm"),
        (SeamId::BagClose, "2 plies, 0.9 mm"),
        (SeamId::Inseam, "4 plies, 3.3 mm"),
    ] {
        assert_eq!(plies(id), said, "{}", id.code());
    }
    // The same as the yarn of the seam's thickest row is reckoned with.
    for item in consumption(&garment)
        .items
        .iter()
        .filter(|item| item.row.is_some())
    {
        let id = item.seam.seam().unwrap();
        let thickest = consumption(&garment)
            .items
            .iter()
            .filter(|other| other.row.is_some() && other.seam == item.seam)
            .map(|other| other.plies.thickness)
            .reduce(trade::Length::max)
            .unwrap();
        let said = format!("{:.1} mm", thickest.to_mm());
        assert!(
            plies(id).ends_with(&said),
            "{}: {} {said}",
            id.code(),
            plies(id)
        );
    }
}

/// Flat on the bag, overedged and sewn or under a coverstitch: no allowance, one ply of each cloth
/// (0.82 + 0.45 = 1.27 mm), another class than with its edge turned in.
#[test]
fn a_facing_may_lie_flat_on_its_bag() {
    let sewn = |stitches: &[(StitchType, f64)]| {
        let path = Path::new(env!("CARGO_MANIFEST_DIR"))
            .join("../style/demo/saltmarsh")
            .join(style::demo::STYLE);
        let mut loaded = style::load(&path).unwrap();
        let mut rows = loaded.style.seam(SeamId::FacingSet).unwrap().rows;
        let row = rows.remove(0);
        let rows = stitches.iter().map(|(stitch, mm)| style::RowSpec {
            stitch: *stitch,
            offset: trade::Length::mm(*mm),
            ..row.clone()
        });
        let seam = &mut loaded.style.seams[&SeamId::FacingSet];
        seam.construction = Some(Construction::LaidOn);
        seam.rows = Some(rows.collect());
        make(&loaded.style, &loaded.collection, Size::new(32, 32))
    };
    for (stitches, class) in [
        (&[(StitchType::S406, 2.0)][..], "LSa-1"),
        (&[(StitchType::S504, 0.0), (StitchType::S301, 4.0)], "LSa-1"),
    ] {
        let garment = sewn(stitches);
        let seam = of(&garment, SeamId::FacingSet);
        let told = describe(&garment, seam);
        let say = Words::english();
        let told_class = say.saying(&told.class.unwrap());
        assert!(told_class.ends_with(class), "{told_class}");
        assert_eq!(
            say.saying(&told.plies),
            "2 plies (1 of shell, 1 of pocketing), 1.3 mm"
        );
        assert_eq!(
            say.saying(&told.lies),
            "laid on top, its edges cut, folded or turned as it came"
        );
        let cut = garment
            .cut
            .iter()
            .find(|cut| cut.piece == draft::PieceId::PocketFacing)
            .unwrap();
        let inner = cut
            .allowances
            .iter()
            .find(|(edge, _)| *edge == draft::EdgeId::Inner);
        assert_eq!(inner.map(|(_, width)| *width), Some(trade::Length::ZERO));
        let about = |f: &&draft::Finding| {
            f.subject == SeamId::FacingSet.into()
                || matches!(f.subject, style::Subject::Row(SeamId::FacingSet, _))
        };
        let found: Vec<_> = garment
            .findings
            .iter()
            .filter(about)
            .map(|f| f.code)
            .collect();
        assert!(found.is_empty(), "{found:?}");
        let order = sewing_order(&garment);
        let sews = order
            .iter()
            .filter(|o| o.needles.iter().any(|n| n.seam == SeamId::FacingSet));
        assert_eq!(sews.count(), stitches.len());
    }
}

/// The list of seams names the machine that the rows ask for, and no other than the sewing order has for them.
#[test]
fn a_seam_is_sewn_on_one_machine_wherever_it_is_told() {
    let garment = demo();
    let order = sewing_order(&garment);
    for seam in &garment.seams {
        let told = Words::english().saying(&describe(&garment, seam).machine);
        let mut machines: Vec<&str> = Vec::new();
        for operation in &order {
            let sews = operation
                .needles
                .iter()
                .any(|n| n.row.is_some() && n.seam == seam.id);
            let machine = operation.machine.words(Words::english());
            if sews && !machines.contains(&machine) {
                machines.push(machine);
            }
        }
        assert_eq!(told, machines.join(", "), "{}", seam.id.code());
    }
    let of_demo = |id| Words::english().saying(&describe(&garment, of(&garment, id)).machine);
    assert_eq!(of_demo(SeamId::FacingSet), "lockstitch");
    assert_eq!(of_demo(SeamId::Outseam), "flatbed chainstitch");
}
