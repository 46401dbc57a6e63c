//! The demo style, sewn in every size.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::ferryman;
use draft::{EdgeId, LineId, PieceId, PointId, Severity};
use geometry::{Point, area, contains, is_simple};
use sewing::{
    FixingKind, Garment, On, describe, findings_of_run, make, make_run, placed, placements,
};
use style::{Construction, SeamId, Size};
use trade::Length;
use words::{Said, Words};

fn base() -> Garment {
    let loaded = ferryman();
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

/// Distance from a point to the nearest part of a polyline.
fn distance(line: &[Point], p: Point) -> f64 {
    line.windows(2)
        .map(|w| {
            let side = w[1] - w[0];
            let share = ((p - w[0]).dot(side) / side.hypot2().max(1e-12)).clamp(0.0, 1.0);
            (p - (w[0] + side * share)).hypot()
        })
        .fold(f64::INFINITY, f64::min)
}

#[test]
fn every_size_is_sewn_without_an_error() {
    let loaded = ferryman();
    let run = make_run(&loaded.style, &loaded.collection);
    assert_eq!(run.len(), 27);
    for garment in &run {
        let size = garment.size;
        for f in &garment.findings {
            assert!(
                f.severity < Severity::Error,
                "{size} {}: {}",
                f.code,
                f.message(words::Words::english())
            );
        }
        assert_eq!(garment.rows.len(), base_rows(), "{size}");
        rows_stay_on_their_pieces(garment);
        cut_lines_surround_their_pieces(garment);
        pockets_lie_on_their_placement_lines(garment);
    }
    let merged = findings_of_run(&run);
    let everywhere = merged
        .iter()
        .find(|f| f.code == "sewing::hem-bulk")
        .unwrap();
    assert!(
        everywhere
            .message(words::Words::english())
            .ends_with("(in every size)"),
        "{}",
        everywhere.message(words::Words::english())
    );
    assert_eq!(everywhere.size, None);
    assert!(merged.is_sorted_by(|a, b| a.severity >= b.severity));
}

fn base_rows() -> usize {
    rows_by_seam().iter().map(|(_, n)| n).sum()
}

/// Rows of each seam, counted on every piece they run over.
fn rows_by_seam() -> [(SeamId, usize); SeamId::ALL.len()] {
    [
        (SeamId::Outseam, 2),
        (SeamId::Inseam, 2),
        (SeamId::Seat, 4),
        (SeamId::Yoke, 2),
        (SeamId::FrontRise, 4),
        (SeamId::Band, 2),
        (SeamId::BandJoin, 1),
        (SeamId::Hem, 2),
        (SeamId::Mouth, 2),
        (SeamId::Fly, 2),
        (SeamId::CoinHem, 2),
        (SeamId::CoinSet, 2),
        (SeamId::BackPocketHem, 4),
        (SeamId::BackPocketSet, 4),
        (SeamId::FacingSet, 1),
        (SeamId::BagClose, 1),
        (SeamId::ExtraHem, 2),
        (SeamId::ExtraSet, 1),
        (SeamId::LoopEdge, 2),
        // A pair of tide lines on the left pocket, the two lines of the drawing on the right.
        (SeamId::Decoration, 4),
        (SeamId::FlyEdge, 1),
        (SeamId::PatchSet, 1),
        // Both ends of the main label, and all round the size label.
        (SeamId::LabelSet, 3),
    ]
}

/// 1 mm of slack: rows end on the outline, and both are followed by points.
fn rows_stay_on_their_pieces(garment: &Garment) {
    for row in &garment.rows {
        let piece = garment.pattern.piece(row.piece).unwrap();
        let mut outline = piece.polygon(Length::mm(0.5));
        let polygon = outline.clone();
        outline.push(outline[0]);
        for p in row.path.dense(Length::mm(2.0)) {
            // The row round the band begins below it, on the left front.
            if row.piece == PieceId::Band && p.y < 0.0 && p.x < 5.0 {
                continue;
            }
            assert!(
                contains(&polygon, p) || distance(&outline, p) < 1.0,
                "{} {} row {} leaves the {} at {p:?}",
                garment.size,
                row.seam.code(),
                row.number,
                row.piece
            );
        }
    }
}

fn cut_lines_surround_their_pieces(garment: &Garment) {
    for cut in &garment.cut {
        let piece = garment.pattern.piece(cut.piece).unwrap();
        assert!(is_simple(&cut.outline), "{} {}", garment.size, cut.piece);
        let more = area(&cut.outline).to_mm2() - piece.area().to_mm2();
        let even: f64 = piece
            .edges
            .iter()
            .zip(&cut.allowances)
            .map(|(e, (_, width))| e.path.length().to_mm() * width.to_mm())
            .sum();
        // Strips along the edges and a little for the corners.
        assert!(
            more >= even * 0.9 - 1.0 && more <= even * 1.2 + 1.0,
            "{} {}: {more} mm² against {even} mm²",
            garment.size,
            cut.piece
        );
    }
}

fn pockets_lie_on_their_placement_lines(garment: &Garment) {
    let pattern = &garment.pattern;
    let sides: &[EdgeId] = &[
        EdgeId::Inner,
        EdgeId::FootInner,
        EdgeId::FootOuter,
        EdgeId::Outer,
    ];
    let patch: &[EdgeId] = &[EdgeId::Left, EdgeId::Foot, EdgeId::Right];
    let set = [
        (
            PieceId::CoinPocket,
            patch,
            PieceId::PocketFacing,
            LineId::CoinPocket,
        ),
        (
            PieceId::BackPocketLeft,
            sides,
            PieceId::Back,
            LineId::PocketLeft,
        ),
        (
            PieceId::BackPocketRight,
            sides,
            PieceId::Back,
            LineId::PocketRight,
        ),
        (
            PieceId::ExtraPocket,
            patch,
            PieceId::PocketBag,
            LineId::ExtraPocket,
        ),
        (
            PieceId::FlyFacing,
            &[EdgeId::Foot, EdgeId::Back],
            PieceId::Front,
            LineId::FlyStitch,
        ),
    ];
    let placed = placements(pattern);
    for (piece, edges, onto, line) in set {
        let place = placed.iter().find(|p| p.piece == piece).unwrap();
        assert_eq!(place.onto, onto);
        let line = pattern.piece(onto).unwrap().line(line).unwrap();
        let mut along = Length::ZERO;
        for edge in edges {
            let edge = pattern.piece(piece).unwrap().edge(*edge).unwrap();
            for share in [0.0, 0.3, 0.7, 1.0] {
                let at = edge.length() * share;
                let off = place.map * edge.point_at(at) - line.point_at(along + at);
                assert!(off.hypot() < 1e-6, "{} {piece}: {off:?}", garment.size);
            }
            along += edge.length();
        }
    }
}

#[test]
fn the_shield_hangs_on_the_fly_edge() {
    let garment = base();
    let piece = |id| garment.pattern.piece(id).unwrap();
    let place = placed(&garment.pattern, PieceId::FlyShield).unwrap();
    assert_eq!((place.onto, place.on), (PieceId::Front, On::Mirrored));
    let sewn = piece(PieceId::FlyShield).edge(EdgeId::Left).unwrap();
    let fly = piece(PieceId::Front).edge(EdgeId::Fly).unwrap();
    assert!((place.map * sewn.start() - fly.start()).hypot() < 1e-9);
    // It runs down along the fly edge and reaches away from the front.
    let down = place.map * sewn.end() - fly.start();
    assert!(down.cross(fly.start_direction()).abs() < 1e-6);
    let fold = place.map * Point::ORIGIN - fly.start();
    // Its fold is level with the end of the band, which overlaps by 4.2 cm.
    let reach = -fold.dot(geometry::left_of(fly.start_direction())) / fly.start_direction().hypot();
    assert!((reach - 42.0).abs() < 0.1, "{reach}");
}

#[test]
fn every_seam_has_its_rows() {
    let garment = base();
    for (seam, count) in rows_by_seam() {
        let found = garment.rows.iter().filter(|r| r.seam == seam).count();
        assert_eq!(found, count, "{}", seam.code());
    }
    assert_eq!(garment.rows.len(), base_rows());
}

/// A row along an edge keeps its distance from it all the way, corners aside: there it may be
/// nearer to the next edge, never to its own.
#[test]
fn rows_keep_their_distance() {
    let garment = base();
    let along: [(SeamId, PieceId, &[EdgeId]); 9] = [
        (SeamId::Inseam, PieceId::Front, &[EdgeId::Inseam]),
        (SeamId::Seat, PieceId::Back, &[EdgeId::Seat]),
        (SeamId::Seat, PieceId::Yoke, &[EdgeId::Centre]),
        (SeamId::Yoke, PieceId::Yoke, &[EdgeId::Lower]),
        (SeamId::FrontRise, PieceId::Front, &[EdgeId::Crotch]),
        (SeamId::Mouth, PieceId::Front, &[EdgeId::Mouth]),
        (SeamId::FacingSet, PieceId::PocketFacing, &[EdgeId::Inner]),
        (
            SeamId::CoinSet,
            PieceId::CoinPocket,
            &[EdgeId::Left, EdgeId::Foot, EdgeId::Right],
        ),
        (
            SeamId::BackPocketSet,
            PieceId::BackPocketRight,
            &[
                EdgeId::Inner,
                EdgeId::FootInner,
                EdgeId::FootOuter,
                EdgeId::Outer,
            ],
        ),
    ];
    for (seam, piece, edges) in along {
        let rows: Vec<_> = garment
            .rows
            .iter()
            .filter(|r| r.seam == seam && r.piece == piece)
            .collect();
        assert!(!rows.is_empty());
        let piece = garment.pattern.piece(piece).unwrap();
        let edge: Vec<_> = edges
            .iter()
            .flat_map(|e| piece.edge(*e).unwrap().dense(Length::mm(0.2)))
            .collect();
        for row in rows {
            let stated = garment.doc.seam(seam).unwrap().rows[row.number - 1]
                .offset
                .to_mm();
            let inner = row
                .path
                .part(Length::mm(15.0), row.length() - Length::mm(15.0));
            for p in inner.dense(Length::mm(1.0)) {
                let off = distance(&edge, p) - stated;
                assert!(
                    off.abs() < 0.03 || off > 0.0 && edges.len() > 1,
                    "{seam:?}: {off}"
                );
            }
            let middle = distance(&edge, row.path.point_at(row.length() / 4.0)) - stated;
            assert!(middle.abs() < 0.03, "{seam:?}: {middle}");
        }
    }
}

#[test]
fn the_fly_runs_parallel_to_its_edge_and_into_its_foot() {
    let garment = base();
    let front = garment.pattern.piece(PieceId::Front).unwrap();
    let fly = front.edge(EdgeId::Fly).unwrap();
    let edge = fly.dense(Length::mm(0.5));
    for (row, offset) in garment
        .rows
        .iter()
        .filter(|r| r.seam == SeamId::Fly)
        .zip([38.4, 32.0])
    {
        assert_eq!((row.piece, row.on), (PieceId::Front, On::AsDrawn));
        let upper = row.path.part(Length::mm(5.0), Length::mm(80.0));
        for p in upper.dense(Length::mm(2.0)) {
            assert!(
                (distance(&edge, p) - offset).abs() < 0.3,
                "{}",
                distance(&edge, p)
            );
        }
        // It ends on the fly edge, above its foot.
        let above_foot = (row.path.end() - fly.end()).hypot();
        assert!(distance(&edge, row.path.end()) < 0.1);
        assert!(above_foot > 1.0 && above_foot < 20.0, "{above_foot}");
    }
}

#[test]
fn the_front_rise_comes_out_from_under_the_fly() {
    let garment = base();
    let outermost = garment.rows.iter().find(|r| r.seam == SeamId::Fly).unwrap();
    let stitching = outermost.path.dense(Length::mm(0.5));
    for row in garment.rows.iter().filter(|r| r.seam == SeamId::FrontRise) {
        assert!(distance(&stitching, row.path.start()) < 0.05);
    }
}

#[test]
fn stitches_fill_the_row() {
    for row in &base().rows {
        let pitch = row.density.pitch().to_mm();
        let covered = (row.stitches() - 1) as f64 * pitch;
        let length = row.length().to_mm();
        assert!(covered <= length + 1e-6 && covered > length - pitch - 1e-6);
    }
}

#[test]
fn allowances_follow_the_seams() {
    let garment = base();
    let found = |piece: PieceId, on: On, edge: EdgeId| {
        let cut = garment.cut.iter().find(|c| c.piece == piece && c.on == on);
        let of = |&&(name, _): &&(EdgeId, Length)| name == edge;
        cut.unwrap().allowances.iter().find(of).unwrap().1.to_mm()
    };
    let near = |found: f64, wanted: f64| assert!((found - wanted).abs() < 1e-9, "{found} {wanted}");
    use PieceId as P;
    // Pressed open along the selvedge, on both sides.
    near(found(P::Front, On::Both, EdgeId::Side), 12.7);
    near(found(P::Back, On::AsDrawn, EdgeId::Side), 12.7);
    // Rows at 1.6 and 8 mm make a lap of 9.6 mm turned in by 8.1 mm.
    let over = found(P::Front, On::Both, EdgeId::Inseam);
    let under = found(P::Back, On::AsDrawn, EdgeId::Inseam);
    near(over, 8.1);
    near(under, 17.7);
    near(over + under, 9.6 + 2.0 * 8.1);
    // Left over right: backs are drawn as the right.
    near(found(P::Back, On::Mirrored, EdgeId::Seat), 8.1);
    near(found(P::Back, On::AsDrawn, EdgeId::Seat), 17.7);
    near(found(P::Yoke, On::Mirrored, EdgeId::Centre), 8.1);
    near(found(P::Yoke, On::AsDrawn, EdgeId::Centre), 17.7);
    near(found(P::Yoke, On::AsDrawn, EdgeId::Lower), 8.1);
    near(found(P::Back, On::AsDrawn, EdgeId::Top), 17.7);
    near(found(P::Front, On::Both, EdgeId::Crotch), 12.7);
    // Twice 12 mm and two turns of the cloth.
    near(found(P::Front, On::Both, EdgeId::Hem), 27.0);
    near(found(P::Front, On::Both, EdgeId::Waist), 9.5);
    near(found(P::Band, On::AsDrawn, EdgeId::Join), 9.5);
    near(found(P::BackPocketLeft, On::Mirrored, EdgeId::Inner), 10.0);
    near(found(P::BackPocketLeft, On::Mirrored, EdgeId::Top), 23.0);
    near(found(P::CoinPocket, On::Mirrored, EdgeId::Top), 23.0);
    near(found(P::LoopStrip, On::AsDrawn, EdgeId::Left), 0.0);
    near(found(P::FlyShield, On::AsDrawn, EdgeId::Foot), 10.0);
    near(found(P::FlyFacing, On::Both, EdgeId::Back), 0.0);
    // Every piece, and those with unlike copies twice.
    assert_eq!(garment.cut.len(), garment.pattern.pieces.len() + 2);
}

#[test]
fn a_seam_is_described_in_words() {
    let garment = base();
    let described = |id: SeamId| {
        let seam = garment.seams.iter().find(|s| s.id == id).unwrap();
        describe(&garment, seam)
    };
    let english = Words::english();
    let words = |said: Option<Said>| said.map(|said| english.say(said)).unwrap_or_default();
    let inseam = described(SeamId::Inseam);
    assert_eq!(inseam.seam, SeamId::Inseam);
    assert_eq!(english.named(inseam.joins), "front and back, crotch to hem");
    assert_eq!(inseam.construction, Construction::LapFelled);
    assert_eq!(words(inseam.class), "ISO 4916 2.04.06 · ASTM D6193 LSc-2");
    // Four plies of 0.82 mm.
    assert_eq!(english.say(inseam.plies), "4 plies, 3.3 mm");
    assert_eq!(words(inseam.allowances), "front 8.1 mm, back 17.7 mm");
    assert_eq!(
        english.say(inseam.lies),
        "front over back; both edges turned into each other"
    );
    let wide = |id: SeamId| words(described(id).allowances);
    assert_eq!(wide(SeamId::Outseam), "12.7 mm on each ply");
    // 12 mm deep once washed, 12 ÷ 0.92 when sewn: twice that and two turns of the cloth.
    assert_eq!(wide(SeamId::Hem), "29.1 mm");
    let plies = english.say(described(SeamId::BagClose).plies);
    assert_eq!(plies, "2 plies, 0.9 mm");
    assert_eq!(described(SeamId::Decoration).allowances, None);
    for seam in &garment.seams {
        let told = describe(&garment, seam);
        assert!(told.class.is_some(), "{}", seam.id.code());
    }
}

#[test]
fn fixings_are_where_the_style_says() {
    let garment = base();
    let count = |wanted: fn(&FixingKind) -> bool| {
        garment.fixings.iter().filter(|f| wanted(&f.kind)).count()
    };
    assert_eq!(count(|k| matches!(k, FixingKind::Loop(..))), 5);
    // Two a loop; fly 2; crotch; both corners of both back pockets; none at the mouths, which rivets hold.
    assert_eq!(
        count(|k| matches!(k, FixingKind::Bartack(..))),
        10 + 2 + 1 + 4
    );
    // Mouth ends 2 on both fronts; coin 2.
    assert_eq!(count(|k| matches!(k, FixingKind::Rivet(_))), 2 + 2);
    assert_eq!(count(|k| matches!(k, FixingKind::Button(_))), 5);
    assert_eq!(count(|k| matches!(k, FixingKind::Buttonhole(_))), 5);
    assert_eq!(count(|k| matches!(k, FixingKind::Patch(..))), 1);
    assert_eq!(count(|k| matches!(k, FixingKind::Label(..))), 3);

    let band = garment.pattern.piece(PieceId::Band).unwrap();
    let centre = band.point(PointId::CentreBack).unwrap().x;
    let patch = garment
        .fixings
        .iter()
        .find(|f| f.from.trim() == Some("patch"))
        .unwrap();
    // 35 mm from the centre back to its inner edge, on the right; 75 mm wide.
    assert!((patch.at.x - (centre + 35.0 + 37.5)).abs() < 1e-9);
    // Buttoned, the button lies under the eye of its hole.
    let right = band.point(PointId::CentreFrontRight).unwrap().x;
    let on_band = |wanted: fn(&FixingKind) -> bool| {
        let f = garment
            .fixings
            .iter()
            .find(|f| f.piece == PieceId::Band && wanted(&f.kind));
        f.unwrap().clone()
    };
    let button = on_band(|k| matches!(k, FixingKind::Button(_)));
    let hole = on_band(|k| matches!(k, FixingKind::Buttonhole(_)));
    let FixingKind::Buttonhole(length) = hole.kind else {
        panic!("not a buttonhole");
    };
    let eye = hole.at + hole.along * (length.to_mm() / 2.0);
    assert!((button.at.x - right - eye.x).abs() < 1e-9);
    assert!((button.at.y - eye.y).abs() < 1e-9);
    // The loop hangs from the top edge over the band seam.
    let hang = on_band(|k| matches!(k, FixingKind::Loop(..)));
    assert!((hang.at.y + 57.0 / 2.0 - 38.0).abs() < 1e-9);
}
