//! The inseam taken from felled to overlocked, by the edits the bench sends: everything that follows
//! from a construction follows, and nothing else moves.

use draft::{EdgeId, PieceId};
use drawing::{View, garment_view, section_of, svg};
use geometry::area;
use sewing::work::{OperationKey, sewing_order};
use sewing::yarn::{Consumption, consumption};
use sewing::{Face, Finish, Garment, make};
use style::{Edit, SeamId, Size};
use trade::{Length, MachineId, StitchType};

const SIZE: Size = Size::new(32, 32);

struct Swap {
    before: Garment,
    after: Garment,
}

fn swap() -> Swap {
    let folder = tempfile::tempdir().unwrap();
    let file = style::write_demo(&folder.path().join("demo")).unwrap();
    let felled = style::load(&file).unwrap();
    let edits = [
        Edit::set("seams.inseam.construction", "safety-stitched"),
        Edit::set("seams.inseam.rows[0].stitch", "516"),
        Edit::set("seams.inseam.rows[0].offset", "0 mm"),
        Edit::remove("seams.inseam.rows[1]"),
    ];
    let text = std::fs::read_to_string(&file).unwrap();
    let text = edits.into_iter().fold(text, |text, edit| {
        style::apply(&text, &edit.unwrap()).unwrap()
    });
    std::fs::write(&file, text).unwrap();
    let overlocked = style::load(&file).unwrap();
    let sew = |l: &style::Loaded| make(&l.style, &l.collection, SIZE);
    Swap {
        before: sew(&felled),
        after: sew(&overlocked),
    }
}

fn near(found: f64, wanted: f64, within: f64) {
    assert!(
        (found - wanted).abs() <= within,
        "{found} is not {wanted} ± {within}"
    );
}

/// Allowance of the inseam on a panel, and the length of that edge.
fn inseam_of(garment: &Garment, piece: PieceId) -> (f64, f64) {
    let cut = garment.cut.iter().find(|cut| cut.piece == piece).unwrap();
    let edge = garment
        .pattern
        .piece(piece)
        .unwrap()
        .edge(EdgeId::Inseam)
        .unwrap();
    let allowance = cut
        .allowances
        .iter()
        .find(|(edge, _)| *edge == EdgeId::Inseam);
    (allowance.unwrap().1.to_mm(), edge.length().to_mm())
}

/// Felled, the lap of 9.6 mm and its turns of 8.1 mm lie unequally on the two plies; overlocked, both
/// have 10 mm.
#[test]
fn allowances_change_on_the_inseam_alone() {
    let Swap { before, after } = swap();
    near(inseam_of(&before, PieceId::Front).0, 8.1, 0.05);
    near(inseam_of(&before, PieceId::Back).0, 17.7, 0.05);
    near(inseam_of(&after, PieceId::Front).0, 10.0, 1e-9);
    near(inseam_of(&after, PieceId::Back).0, 10.0, 1e-9);
    for (a, b) in before.cut.iter().zip(&after.cut) {
        for ((edge, old), (same, new)) in a.allowances.iter().zip(&b.allowances) {
            assert_eq!(edge, same);
            let is_inseam = *edge == EdgeId::Inseam;
            assert_eq!(old == new, !is_inseam, "{} {edge:?}", a.piece.code());
        }
    }
}

/// The cut panels change by the length of the inseam times what its allowance changes, but for the
/// mitres at its two ends; every other piece is cut as before.
#[test]
fn cut_pieces_change_by_the_allowance_alone() {
    let Swap { before, after } = swap();
    for (a, b) in before.cut.iter().zip(&after.cut) {
        let grown = area(&b.outline).to_mm2() - area(&a.outline).to_mm2();
        match a.piece {
            PieceId::Front | PieceId::Back => {
                let (old, length) = inseam_of(&before, a.piece);
                let (new, _) = inseam_of(&after, a.piece);
                // At each end the strip runs on past the edge by the neighbour's allowance.
                let (low, high) = (length, length + 60.0);
                let share = grown / (new - old);
                assert!(
                    (low..=high).contains(&share),
                    "{} {share} {length}",
                    a.piece.code()
                );
            }
            _ => assert_eq!(a.outline, b.outline, "{}", a.piece.code()),
        }
    }
}

/// Four plies with both edges turned in become two edges together, and the second row is gone.
#[test]
fn the_section_changes() {
    let Swap { before, after } = swap();
    let section = |garment: &Garment| {
        let seam = garment
            .seams
            .iter()
            .find(|seam| seam.id == SeamId::Inseam)
            .unwrap();
        section_of(garment, seam, 1.0).unwrap()
    };
    let (felled, overlocked) = (section(&before), section(&after));
    assert_eq!(felled.rows.len(), 2);
    assert_eq!(overlocked.rows.len(), 1);
    assert_ne!(felled.plies, overlocked.plies);
}

/// Inside, a clean lap of 9.6 mm gives way to an overlocked edge of 10 mm; outside, both rows are gone.
#[test]
fn both_views_change() {
    let Swap { before, after } = swap();
    let lap = |garment: &Garment| {
        let laps = garment.laps.iter();
        let mut of = laps.filter(|lap| lap.edge == EdgeId::Inseam);
        let lap = of.next().unwrap().clone();
        (lap.piece, lap.finish, lap.width.to_mm())
    };
    let (piece, finish, width) = lap(&before);
    assert_eq!((piece, finish), (PieceId::Front, Finish::Folded));
    near(width, 9.6, 0.01);
    let (piece, finish, width) = lap(&after);
    assert_eq!((piece, finish), (PieceId::Front, Finish::Overedged));
    near(width, 10.0, 1e-9);
    let drawn = |garment: &Garment, face| {
        svg(&garment_view(
            garment,
            View::Front,
            face,
            words::Words::english(),
        ))
    };
    assert_ne!(drawn(&before, Face::Inside), drawn(&after, Face::Inside));
    let rows_outside = |garment: &Garment| {
        let rows = garment.rows.iter();
        rows.filter(|r| r.seam == SeamId::Inseam && r.shows_outside)
            .count()
    };
    assert_eq!((rows_outside(&before), rows_outside(&after)), (2, 0));
    let outside = drawn(&after, Face::Outside);
    assert!(!outside.contains("seam:inseam"));
    assert!(drawn(&before, Face::Outside).contains("seam:inseam"));
}

/// The total changes by what the inseam itself takes more, worked from the formula of the stitch.
#[test]
fn the_yarn_total_changes_by_the_inseam() {
    let Swap { before, after } = swap();
    let (old, new) = (consumption(&before), consumption(&after));
    let inseam = |all: &Consumption| -> f64 {
        let items = all.items.iter().filter(|item| item.seam == SeamId::Inseam);
        items.map(|item| item.used.total().to_m()).sum()
    };
    let total = |all: &Consumption| all.used().total().to_m();
    near(total(&new) - total(&old), inseam(&new) - inseam(&old), 1e-9);
    // 516 at 8 stitches to the inch: about 19 times the length of both seams, in place of two rows of
    // 401 at about 6 times each. They are sewn before the wash takes 8 % along the warp.
    let sewn = 2.0 * inseam_of(&after, PieceId::Front).1 / 1000.0 / 0.92;
    near(inseam(&new) / sewn, 18.5, 1.5);
    near(inseam(&old) / sewn, 12.0, 0.8);
}

/// The arm machine with its lap folder gives way to the safety overedge, at its own place in the order.
#[test]
fn the_sewing_order_changes() {
    let Swap { before, after } = swap();
    let inseams = |garment: &Garment| -> Vec<(OperationKey, MachineId, u8)> {
        sewing_order(garment)
            .into_iter()
            .filter(|operation| {
                operation
                    .needles
                    .iter()
                    .any(|needle| needle.seam == SeamId::Inseam && needle.row.is_some())
            })
            .map(|operation| (operation.key, operation.machine, operation.needle_count))
            .collect()
    };
    let (felled, overlocked) = (inseams(&before), inseams(&after));
    assert_eq!(felled.len(), 1, "{felled:?}");
    assert_eq!(felled[0].1, MachineId::FeedOffTheArm, "{felled:?}");
    assert!(
        !overlocked.iter().any(|o| o.1 == MachineId::FeedOffTheArm),
        "{overlocked:?}"
    );
    let stitches = |garment: &Garment| -> Vec<StitchType> {
        let rows = garment.rows.iter().filter(|row| row.seam == SeamId::Inseam);
        rows.map(|row| row.stitch).collect()
    };
    assert_eq!(stitches(&before), [StitchType::S401; 2]);
    assert_eq!(stitches(&after), [StitchType::S516]);
}

/// Bulk at the crossings of the inseam falls with it.
#[test]
fn bulk_falls_where_the_hem_crosses_the_inseam() {
    let Swap { before, after } = swap();
    let thickest = |garment: &Garment| -> Length {
        let all = sewing::bulk(garment);
        let hem = all.iter().filter(|c| {
            let name = words::Words::english().saying(&c.name);
            c.kind == sewing::CrossingKind::Hem && name.contains("inseam")
        });
        hem.map(|c| c.thickness).fold(Length::ZERO, Length::max)
    };
    let (felled, overlocked) = (thickest(&before), thickest(&after));
    assert!(overlocked < felled, "{overlocked} {felled}");
}
