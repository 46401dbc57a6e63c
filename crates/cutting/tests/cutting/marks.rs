//! Notches on the cut line, drill holes under what covers them.

use cutting::{CutPiece, DRILL_INSIDE, DrillKind, NotchKind, Plan, cut};
use draft::{EdgeId, LineId, NotchId, PieceId};
use geometry::{Point, contains};
use sewing::On;
use style::Size;
use trade::Length;

use crate::common::{all_cut, all_sizes, base, copy, ferryman, from_outline, piece, plan, sewn};

#[test]
fn notches_are_cut_from_the_cut_line_towards_their_place() {
    for (garment, all) in all_sizes().iter().zip(all_cut()) {
        for piece in &all.pieces {
            for notch in &piece.notches {
                let who = format!("{} {} {}", garment.size, piece.code(), notch.id.code());
                let off = from_outline(&piece.cut, notch.at);
                assert!(off < 0.01, "{who}: {off} off the cut line");
                let stated = piece.edge(notch.edge).unwrap().allowance.to_mm();
                // At the foot of the fly the allowance steps, and the notch lies in the step.
                let allowance = if notch.id == NotchId::FlyFoot {
                    stated.min(piece.edge(EdgeId::Fly).unwrap().allowance.to_mm())
                } else {
                    stated
                };
                let far = (notch.at - notch.on_seam).hypot();
                assert!(far >= allowance - 0.05 || far < 0.05, "{who}: {far}");
                if notch.kind == NotchKind::Slit {
                    assert!(notch.depth.to_mm() <= allowance / 2.0 + 1e-9, "{who}");
                }
                assert_eq!(notch.cuts().len(), if notch.double { 2 } else { 1 });
            }
        }
    }
}

#[test]
fn the_cloths_own_edge_stays_whole() {
    let all = base();
    let front = copy(&all, PieceId::Front, false).unwrap();
    let of = |id| front.notches.iter().find(|n| n.id == id).unwrap();
    assert_eq!(of(NotchId::OutseamKnee).kind, NotchKind::Drawn);
    assert_eq!(of(NotchId::InseamKnee).kind, NotchKind::Slit);
    let back = copy(&all, PieceId::Back, false).unwrap();
    let mut meeting = back.notches.iter().filter(|n| n.id != NotchId::HemFold);
    assert!(meeting.all(|n| n.double));
}

#[test]
fn hems_are_notched_where_they_fold() {
    let all = base();
    for id in [PieceId::Front, PieceId::Back, PieceId::CoinPocket] {
        let piece = piece(&all, id);
        let hem = piece
            .edges
            .iter()
            .find(|e| matches!(e.lie, cutting::Lie::Hemmed { .. }))
            .unwrap();
        let folds: Vec<_> = piece
            .notches
            .iter()
            .filter(|n| n.id == NotchId::HemFold)
            .map(|n| n.on_seam)
            .collect();
        assert_eq!(folds.len(), 2, "{id}");
        for end in [hem.sewn[0], hem.sewn[hem.sewn.len() - 1]] {
            assert!(folds.iter().any(|p| (*p - end).hypot() < 1e-6), "{id}");
        }
    }
}

/// Partners lie at the same distance along their edges before the wash as well.
#[test]
fn notches_still_meet_before_the_wash() {
    for (garment, all) in all_sizes().iter().zip(all_cut()) {
        let (front, back) = (
            copy(all, PieceId::Front, false).unwrap(),
            copy(all, PieceId::Back, true).unwrap(),
        );
        for id in [NotchId::OutseamKnee, NotchId::Hip] {
            let along = |p: &CutPiece| p.notches.iter().find(|n| n.id == id).unwrap().along;
            let off = (along(front) - along(back)).to_mm().abs();
            assert!(off < 1.0, "{} {id:?}: {off}", garment.size);
        }
    }
}

/// A hidden rivet is set below the face of its pocket: a hole drilled there would be covered by nothing.
#[test]
fn no_hole_is_drilled_where_a_rivet_does_not_come_through() {
    let mut loaded = ferryman();
    loaded.style.rivets.as_mut().unwrap().back_hidden = true;
    let all = cut(&sewn(&loaded, loaded.style.sizes.base), &plan());
    let rivets = |id| {
        let piece = all.pieces.iter().find(|piece| piece.piece == id).unwrap();
        let drills = piece.drills.iter();
        drills.filter(|d| d.kind == DrillKind::Rivet).count()
    };
    assert_eq!(rivets(PieceId::BackPocketLeft), 0);
    assert_eq!(rivets(PieceId::CoinPocket), 2);
}

#[test]
fn drill_holes_are_hidden() {
    for (garment, all) in all_sizes().iter().zip(all_cut()) {
        let (mut pockets, mut concealed) = (0, 0);
        for piece in &all.pieces {
            let sewn = piece.sewn();
            for drill in &piece.drills {
                let who = format!("{} {} {}", garment.size, piece.code(), drill.name);
                assert!(contains(&sewn, drill.at), "{who}");
                let inside = from_outline(&sewn, drill.at);
                match drill.kind {
                    DrillKind::Rivet => {
                        assert!(inside >= drill.inside.to_mm() - 1e-6, "{who}: {inside}");
                    }
                    DrillKind::PocketCorner => {
                        // No stitch of a pocket goes through the front, so no hole may be seen in it.
                        assert_ne!(piece.piece, PieceId::Front, "{who}");
                        pockets += usize::from(piece.piece != PieceId::PocketBag);
                        concealed += usize::from(piece.piece == PieceId::PocketBag);
                        assert_eq!(drill.inside, DRILL_INSIDE);
                        let line = piece
                            .inner
                            .iter()
                            .find(|l| drill.name.starts_with(l.id.code()))
                            .unwrap();
                        assert!(contains(&line.line, drill.at), "{who}: outside its pocket");
                        let from_line = from_outline(&line.line, drill.at);
                        assert!(
                            from_line >= 4.99,
                            "{who}: {from_line} from the pocket's edge"
                        );
                    }
                }
            }
        }
        // Five corners of each back pocket and of the coin pocket; both upper corners of the concealed one and its
        // foot, on the bag alone.
        assert_eq!((pockets, concealed), (15, 3), "{}", garment.size);
    }
}

#[test]
fn each_pocket_is_marked_on_what_it_is_set_on() {
    let all = base();
    for (mirrored, line) in [(false, LineId::PocketRight), (true, LineId::PocketLeft)] {
        let back = copy(&all, PieceId::Back, mirrored).unwrap();
        let lines: Vec<LineId> = back.inner.iter().map(|l| l.id).collect();
        assert_eq!(lines, [line]);
    }
    let facing = piece(&all, PieceId::PocketFacing);
    for drill in &facing.drills {
        let coin = drill.name.starts_with("coin_pocket");
        assert_eq!(drill.on == On::Mirrored, coin, "{}", drill.name);
    }
    let front = piece(&all, PieceId::Front);
    assert!(
        front
            .inner
            .iter()
            .all(|line| ![LineId::CoinPocket, LineId::ExtraPocket].contains(&line.id))
    );
    let bag = piece(&all, PieceId::PocketBag);
    let line = bag
        .inner
        .iter()
        .find(|line| line.id == LineId::ExtraPocket)
        .unwrap();
    assert_eq!(line.on, On::AsDrawn);
    let sewn = bag.sewn();
    let beyond = line
        .line
        .iter()
        .filter(|at| !contains(&sewn, **at) && from_outline(&sewn, **at) > 1e-6);
    assert_eq!(beyond.count(), 0, "it leaves the bag");
}

/// The marks tell how deep the concealed pocket is, and its line on the bag is its own outline in every size.
#[test]
fn the_concealed_pocket_lies_on_the_bag_as_it_is_cut() {
    for (garment, all) in all_sizes().iter().zip(all_cut()) {
        let bag = piece(all, PieceId::PocketBag);
        let pocket = piece(all, PieceId::ExtraPocket);
        assert!(
            all.of(PieceId::PocketFacing)
                .all(|facing| { facing.inner.iter().all(|l| l.id != LineId::ExtraPocket) })
        );
        let lines: Vec<_> = bag
            .inner
            .iter()
            .filter(|l| l.id == LineId::ExtraPocket)
            .collect();
        let [line] = lines[..] else {
            panic!("{}: in {} parts", garment.size, lines.len())
        };
        let across = |line: &[Point]| (line[0] - line[line.len() - 1]).hypot();
        let sewn: Vec<Point> = pocket
            .edges
            .iter()
            .filter(|e| e.id != EdgeId::Top)
            .flat_map(|e| e.sewn.clone())
            .collect();
        assert!(
            (across(&line.line) - across(&sewn)).abs() < 0.05,
            "{}",
            garment.size
        );
        let deep = |line: &[Point]| {
            let (a, b) = (line[0], line[line.len() - 1]);
            let along = (b - a) / (b - a).hypot();
            line.iter()
                .map(|p| along.cross(*p - a).abs())
                .fold(0.0, f64::max)
        };
        assert!(
            (deep(&line.line) - deep(&sewn)).abs() < 0.05,
            "{}",
            garment.size
        );
        let marks: Vec<Point> = bag
            .drills
            .iter()
            .filter(|d| d.name.starts_with("extra_pocket"))
            .map(|d| d.at)
            .collect();
        let apart = marks
            .iter()
            .flat_map(|a| marks.iter().map(move |b| (*a - *b).hypot()))
            .fold(0.0, f64::max);
        let least = deep(&sewn) - 2.0 * DRILL_INSIDE.to_mm() - 0.1;
        assert!(apart >= least, "{}: marks {apart} mm apart", garment.size);
    }
    for garment in all_sizes() {
        assert!(
            garment
                .findings
                .iter()
                .all(|f| f.code != "sewing::extra-on-bag"),
            "{}",
            garment.size
        );
    }
}

const IN_SIGHT: &str = "cutting::mark-in-sight";

#[test]
fn every_drill_mark_of_the_demo_is_covered_by_its_pocket() {
    let findings = all_cut().iter().flat_map(|cut| &cut.findings);
    assert_eq!(findings.filter(|f| f.code == IN_SIGHT).count(), 0);
}

/// A foot of 20 mm whose point hangs 70 mm below: half its angle is 8°, and the hole comes to lie 0.8 mm from both edges.
#[test]
fn a_mark_in_a_corner_too_sharp_to_cover_it_is_found() {
    let mut loaded = ferryman();
    let pocket = &mut loaded.style.pockets.back.left;
    pocket.foot_width = Length::mm(20.0);
    pocket.side_length = Length::mm(100.0);
    let cut = cut(&sewn(&loaded, Size::new(32, 32)), &Plan::of(&loaded.style));
    let found: Vec<_> = cut.findings.iter().filter(|f| f.code == IN_SIGHT).collect();
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0].subject, PieceId::BackPocketLeft.into());
}
