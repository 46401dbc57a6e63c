//! Cut lines: none crosses itself, each keeps its allowance, the outseam lies on the cloth's own edge.

use cutting::{CutPiece, cut};
use draft::{EdgeId, PieceId};
use geometry::{Point, area, contains, is_simple};
use sewing::On;
use style::{MeasureId, Size};
use trade::Length;

use crate::common::{
    all_cut, all_sizes, base, copy, doubles_back, ferryman, from_outline, is_shaped, plan, sewn,
};

#[test]
fn no_cut_line_crosses_itself_in_any_size() {
    assert_eq!(all_cut().len(), 27);
    for (garment, all) in all_sizes().iter().zip(all_cut()) {
        let said: Vec<_> = all
            .findings
            .iter()
            .filter(|f| f.code == "cutting::cut-line")
            .collect();
        assert!(said.is_empty(), "{}: {said:?}", garment.size);
        // The back, the yoke and the front differ left and right; the band is in two.
        let count = all.pieces.len();
        assert!(count >= 17, "{}: {count} pieces", garment.size);
        for piece in &all.pieces {
            let who = format!("{} {} {:?}", garment.size, piece.code(), piece.on);
            assert!(is_simple(&piece.cut), "{who}");
            assert!(is_shaped(piece), "{who}");
            assert!(!doubles_back(&piece.cut), "{who}");
            assert!(
                area(&piece.cut).to_mm2() > area(&piece.sewn()).to_mm2() - 1e-6,
                "{who}"
            );
            keeps_its_allowance(piece, &who);
        }
    }
}

/// Away from its ends every edge has its allowance beyond it, to 0.05 mm.
fn keeps_its_allowance(piece: &CutPiece, who: &str) {
    for (k, edge) in piece.edges.iter().enumerate() {
        let n = piece.edges.len();
        let neighbours = [&piece.edges[(k + n - 1) % n], &piece.edges[(k + 1) % n]];
        let clear = neighbours
            .iter()
            .map(|e| e.allowance.to_mm())
            .fold(edge.allowance.to_mm(), f64::max)
            * 1.6
            + 2.0;
        let line = geometry::resample(&edge.sewn, Length::mm(3.0));
        let (start, end) = (line[0], line[line.len() - 1]);
        let on_cloth = piece.cloth_edge.as_ref().filter(|c| c.edge == edge.id);
        for p in line {
            if (p - start).hypot() < clear || (p - end).hypot() < clear {
                continue;
            }
            let found = from_outline(&piece.cut, p);
            let wanted = edge.allowance.to_mm();
            let (least, most) = on_cloth.map_or((wanted, wanted), |c| {
                (c.narrowest.to_mm(), c.widest.to_mm())
            });
            assert!(
                found > least - 0.05 && found < most + 0.05,
                "{who} {}: {found} at {p:?}, wanted {wanted}",
                edge.id.code()
            );
        }
    }
}

/// The cut line of front and back is one straight line on the grain from hem to hip.
#[test]
fn the_outseam_lies_on_the_cloths_own_edge() {
    for (garment, all) in all_sizes().iter().zip(all_cut()) {
        for id in [PieceId::Front, PieceId::Back] {
            for mirrored in [false, true] {
                let piece = copy(all, id, mirrored).unwrap();
                let edge = piece.cloth_edge.as_ref().unwrap();
                assert_eq!(edge.from.x, edge.to.x);
                // The allowance is nowhere narrower than asked for; where the back runs out above the
                // hip it is wider below by as much.
                assert!(
                    edge.narrowest.to_mm() > 12.7 - 1e-6,
                    "{} {edge:?}",
                    all.size
                );
                let wider = edge.widest - edge.narrowest - edge.runs_out;
                assert!(wider.abs() < Length::mm(0.5), "{} {edge:?}", all.size);
                let upright = piece.grain.1.x - piece.grain.0.x;
                assert!(upright.abs() < 1e-9);
                // Nothing of the piece lies beyond the cloth's edge, and all of that stretch on it.
                let furthest = piece.cut.iter().map(|p| p.x).fold(f64::MIN, f64::max);
                assert!((furthest - edge.from.x).abs() < 1e-6, "{furthest} {edge:?}");
                for share in [0.0, 0.25, 0.5, 0.75, 1.0] {
                    let p = edge.from.lerp(edge.to, share);
                    assert!(from_outline(&piece.cut, p) < 1e-6, "{share}");
                }
                let long = edge.to.y - edge.from.y;
                let hem = piece.edge(EdgeId::Hem).unwrap();
                let inseam = garment.pattern.spec[MeasureId::Inseam].to_mm();
                assert!(long > inseam, "{long} {inseam}");
                let low = piece.cut.iter().map(|p| p.y).fold(f64::MAX, f64::min);
                assert!(
                    edge.from.y - low < hem.allowance.to_mm() / 2.0,
                    "the hem lies on it too"
                );
            }
        }
        // Other pieces lie where they like.
        assert!(all.pieces.iter().all(|p| {
            p.cloth_edge.is_none() || matches!(p.piece, PieceId::Front | PieceId::Back)
        }));
    }
}

#[test]
fn on_the_cloth_the_straight_side_lies_outermost() {
    let all = base();
    for id in [PieceId::Front, PieceId::Back] {
        for mirrored in [false, true] {
            let piece = copy(&all, id, mirrored).unwrap();
            let laid = piece.on_cloth(mirrored);
            assert!(area(&laid.outline).to_mm2() > 0.0);
            let own = piece.area().to_mm2();
            assert!((area(&laid.outline).to_mm2() - own).abs() < 1e-6 * own);
            let high = laid.outline.iter().map(|p| p.y).fold(f64::MIN, f64::max);
            let edge = laid.edge.unwrap();
            let y = if edge.upper { high } else { 0.0 };
            for share in [0.0, 0.5, 1.0] {
                let x = edge.from.to_mm() + (edge.to - edge.from).to_mm() * share;
                assert!(from_outline(&laid.outline, Point::new(x, y)) < 1e-6);
            }
            // A pair uses both edges of the cloth.
            assert_eq!(edge.upper, mirrored);
        }
    }
}

/// A dart with which the outseam would run out over the cloth's own edge is taken smaller by itself, and said; one
/// that fits is taken as it is stated.
#[test]
fn a_smaller_dart_keeps_the_outseam_straight() {
    let mut loaded = ferryman();
    let taken = |garment: &sewing::Garment| {
        let long = |piece, edge| {
            let piece = garment.pattern.piece(piece).unwrap();
            piece.edge(edge).unwrap().length()
        };
        long(PieceId::Back, EdgeId::Top) - long(PieceId::Yoke, EdgeId::Top)
    };
    for (stated, fits) in [(18.0, false), (4.0, true)] {
        loaded.style.shape.seat_dart = Length::mm(stated);
        let garment = sewn(&loaded, Size::new(38, 32));
        let all = cut(&garment, &plan());
        let edge = copy(&all, PieceId::Back, false).unwrap().cloth_edge.clone();
        assert!(edge.unwrap().runs_out < Length::mm(0.1));
        let off = Length::mm(stated) - taken(&garment);
        assert_eq!(off < Length::mm(0.05), fits, "{stated}: {off}");
        let said = garment
            .findings
            .iter()
            .any(|f| f.code == "sewing::selvedge-dart");
        assert_eq!(said, !fits, "{stated}");
        let about_edge = all
            .findings
            .iter()
            .filter(|f| f.code == "cutting::cloth-edge");
        assert_eq!(about_edge.count(), 0);
    }
}

/// A shaped outseam on a selvedge: the cut is still the cloth's edge, the allowance only wider.
#[test]
fn a_shaped_outseam_keeps_a_straight_cut() {
    let mut loaded = ferryman();
    loaded.style.shape.outseam = style::OutseamLine::Shaped;
    let all = cut(&sewn(&loaded, Size::new(32, 32)), &plan());
    let front = copy(&all, PieceId::Front, false).unwrap();
    let edge = front.cloth_edge.as_ref().unwrap();
    assert!((edge.narrowest.to_mm() - 12.7).abs() < 1e-9);
    assert!(edge.widest > edge.narrowest + Length::mm(2.0));
    assert!(is_simple(&front.cut));
}

#[test]
fn grain_and_words_lie_inside() {
    for piece in base().pieces {
        let sewn = piece.sewn();
        for p in [piece.grain.0, piece.grain.1, piece.label.at] {
            assert!(contains(&sewn, p), "{}", piece.code());
        }
        let lines = piece.label.lines(words::Words::english());
        assert!(lines.iter().any(|l| l == "size 32x32"));
        assert!(lines.iter().any(|l| l.contains("SY-101")));
    }
}

#[test]
fn every_piece_is_cut_as_often_as_it_is_needed() {
    let loaded = ferryman();
    let garment = sewn(&loaded, Size::new(32, 32));
    let all = cut(&garment, &plan());
    for piece in &garment.pattern.pieces {
        let parts: Vec<&CutPiece> = all.of(piece.id).collect();
        let halves = if piece.id == PieceId::Band { 2 } else { 1 };
        let drawn: u32 = parts.iter().map(|p| p.as_drawn).sum();
        let mirrored: u32 = parts.iter().map(|p| p.mirrored).sum();
        assert_eq!(drawn, piece.cut.as_drawn * halves, "{}", piece.id);
        assert_eq!(mirrored, piece.cut.mirrored, "{}", piece.id);
    }
    // Left and right of the back differ: left laps over right.
    let back: Vec<_> = all.of(PieceId::Back).map(|p| p.on).collect();
    assert_eq!(back, [On::AsDrawn, On::Mirrored]);
}

/// For a lay a tenth of a millimetre is enough, and far fewer points.
#[test]
fn a_thinned_outline_has_the_same_area() {
    for piece in base().pieces {
        let thin = cutting::thinned(&piece.cut, Length::mm(0.1));
        assert!(is_simple(&thin), "{}", piece.code());
        let off = (area(&thin).to_mm2() - piece.area().to_mm2()).abs();
        let around: f64 = geometry::polyline_length(&piece.cut).to_mm();
        assert!(off < 0.1 * around, "{}: {off}", piece.code());
        assert!(thin.len() < 200, "{}: {}", piece.code(), thin.len());
    }
}

/// Sewn edge on edge, a leg is only as wide as drafted where the seam line lies equally far from the cloth's
/// own edge on front and back; and the order says so.
#[test]
fn the_outseam_lies_at_one_distance_from_the_cloths_own_edge_in_every_size() {
    for (garment, cut) in all_sizes().iter().zip(all_cut()) {
        for id in [PieceId::Front, PieceId::Back] {
            for piece in cut.of(id) {
                let edge = piece.cloth_edge.as_ref().unwrap();
                for width in [edge.narrowest, edge.widest] {
                    let off = (width.to_mm() - 12.7).abs();
                    assert!(off < 0.1, "{} {}: {width}", garment.size, piece.code());
                }
            }
        }
        let order = sewing::work::sewing_order(garment);
        let joined = order
            .iter()
            .find(|o| o.key.code() == "outseam-join")
            .unwrap();
        let mut minds = joined
            .mind
            .iter()
            .map(|m| words::Words::english().say(m.clone()));
        assert!(
            minds.any(|m| m.contains("12.7 mm on each ply")),
            "{}: {:?}",
            garment.size,
            joined.mind
        );
    }
}
