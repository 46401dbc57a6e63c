//! Band, hem, decoration and zip: geometry checked by calculations of its own.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::ferryman;
use draft::{EdgeId, PieceId, PointId};
use geometry::Point;
use proptest::prelude::*;
use sewing::{FixingKind, Garment, On, RowEnd, describe, make};
use style::{
    BandMethod, Closing, Decoration, HemEnds, HemJoin, Loaded, MeasureId, RowEnding, SeamId, Size,
};
use trade::{Angle, Length, StitchType};
use words::Words;

fn sewn(change: impl FnOnce(&mut Loaded)) -> Garment {
    let mut loaded = ferryman();
    change(&mut loaded);
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn codes(garment: &Garment) -> Vec<&'static str> {
    garment.findings.iter().map(|f| f.code).collect()
}

fn band_rows(garment: &Garment) -> Vec<&sewing::StitchRow> {
    garment
        .rows
        .iter()
        .filter(|r| r.seam == SeamId::Band)
        .collect()
}

fn set_height(loaded: &mut Loaded, mm: f64) {
    loaded
        .style
        .chart
        .get_mut(&MeasureId::BandHeight)
        .unwrap()
        .value = Length::mm(mm);
}

/// Where button and hole are, from the drawing of the band alone: height, the rows' distance from
/// its edges, and the angle of the V.
fn by_hand(height: f64, edge: f64, lower: f64, v_deg: f64, overlap: f64) -> (f64, f64) {
    let mouth = height - edge - lower;
    let depth = mouth / 2.0 / (v_deg.to_radians() / 2.0).tan();
    (overlap - edge - depth, lower + mouth / 2.0)
}

#[test]
fn the_row_round_the_band_finishes_in_a_v_at_the_button() {
    for (height, v) in [(38.0, 64.0), (42.0, 64.0), (38.0, 80.0)] {
        let garment = sewn(|loaded| {
            set_height(loaded, height);
            loaded.style.band.v_angle = Angle::deg(v);
        });
        let waist = {
            let band = garment.pattern.piece(PieceId::Band).unwrap();
            band.point(PointId::CentreFrontRight).unwrap().x
        };
        let (beyond, up) = by_hand(height, 2.0, 2.0, v, 42.0);
        let end = waist + 42.0;
        let corners: Vec<Point> = [
            (2.0, -10.0),
            (2.0, height - 2.0),
            (end - 2.0, height - 2.0),
            (end - 2.0, 2.0),
            (waist + beyond, up),
            (end - 2.0, height - 2.0),
        ]
        .map(Point::from)
        .into();
        let rows = band_rows(&garment);
        let (lower, upper) = (rows[0], rows[1]);
        assert_eq!(rows.len(), 2);
        // The lower row first, end to end; then round, in this direction.
        assert!((lower.path.start() - Point::new(0.0, 2.0)).hypot() < 1e-6);
        assert!((lower.path.end() - Point::new(end, 2.0)).hypot() < 1e-6);
        assert_eq!(
            (lower.begins, lower.ends),
            (RowEnd::TuckedIn, RowEnd::TuckedIn)
        );
        let mut sewn = vec![upper.path.start()];
        sewn.extend(upper.path.segments().iter().map(|s| s.to_cubic().p3));
        assert_eq!(sewn.len(), corners.len());
        for (a, b) in sewn.iter().zip(&corners) {
            assert!((*a - *b).hypot() < 1e-6, "{a:?} {b:?}");
        }
        let on_band = |wanted: fn(&FixingKind) -> bool| {
            let mut all = garment.fixings.iter().filter(|f| f.piece == PieceId::Band);
            all.find(|f| wanted(&f.kind)).unwrap()
        };
        let button = on_band(|k| matches!(k, FixingKind::Button(_)));
        assert!((button.at - Point::new(waist + beyond, up)).hypot() < 1e-6);
        // Closed, the eye of the hole lies over the button.
        let hole = on_band(|k| matches!(k, FixingKind::Buttonhole(_)));
        let FixingKind::Buttonhole(length) = hole.kind else {
            panic!("not a buttonhole");
        };
        let eye = hole.at + hole.along * (length.to_mm() / 2.0);
        assert!((eye - Point::new(beyond, up)).hypot() < 1e-6);
    }
    // From memory of the figures above: 38 mm and 64 degrees put the eye about 12.8 mm from the end.
    assert!((by_hand(38.0, 2.0, 2.0, 64.0, 42.0).0 - 12.79).abs() < 0.01);
}

#[test]
fn two_rows_run_from_end_to_end() {
    let garment = sewn(|loaded| {
        loaded.style.band.method = BandMethod::TwoRow;
        loaded
            .style
            .seams
            .get_mut(&SeamId::Band)
            .unwrap()
            .rows
            .as_mut()
            .unwrap()[1]
            .offset = Length::mm(36.0);
    });
    for (row, y) in band_rows(&garment).into_iter().zip([2.0, 36.0]) {
        assert_eq!((row.path.start().y, row.path.end().y), (y, y));
    }
    let button = garment
        .fixings
        .iter()
        .find(|f| f.piece == PieceId::Band && matches!(f.kind, FixingKind::Button(_)));
    assert!((button.unwrap().at.y - 19.0).abs() < 1e-9);
}

#[test]
fn rows_measured_for_the_other_band_are_noticed() {
    assert!(
        !codes(&sewn(|_| ()))
            .iter()
            .any(|c| c.starts_with("sewing::band-"))
    );
    let two = sewn(|loaded| loaded.style.band.method = BandMethod::TwoRow);
    assert!(codes(&two).contains(&"sewing::band-rows-together"));
    let round = sewn(|loaded| {
        loaded
            .style
            .seams
            .get_mut(&SeamId::Band)
            .unwrap()
            .rows
            .as_mut()
            .unwrap()[1]
            .offset = Length::mm(36.0);
    });
    assert!(codes(&round).contains(&"sewing::band-row-round"));
    let sharp = sewn(|loaded| loaded.style.band.v_angle = Angle::deg(40.0));
    assert!(codes(&sharp).contains(&"sewing::band-button"));
}

#[test]
fn the_hem_begins_and_ends_at_its_join() {
    for join in [HemJoin::Inseam, HemJoin::Outseam, HemJoin::BackOfLeg] {
        let garment = sewn(|loaded| loaded.style.hem.join = join);
        let rows: Vec<_> = garment
            .rows
            .iter()
            .filter(|r| r.seam == SeamId::Hem)
            .collect();
        let (first, last) = (rows[0], rows[rows.len() - 1]);
        assert_eq!(
            (first.begins, last.ends),
            (RowEnd::TiedByHand, RowEnd::TiedByHand)
        );
        let ends = rows.iter().flat_map(|r| [r.begins, r.ends]);
        assert_eq!(ends.filter(|e| *e == RowEnd::TiedByHand).count(), 2);
        // On which panel, and how far from the corner where the hem meets the join.
        let corner = |piece: PieceId, edge: EdgeId| {
            let piece = garment.pattern.piece(piece).unwrap();
            let (hem, edge) = (piece.edge(EdgeId::Hem).unwrap(), piece.edge(edge).unwrap());
            let ends = [hem.start(), hem.end()];
            *ends
                .iter()
                .find(|p| (**p - edge.start()).hypot() < 1e-6 || (**p - edge.end()).hypot() < 1e-6)
                .unwrap()
        };
        let near = |p: Point, q: Point| assert!((p - q).hypot() < 15.0, "{join}: {p:?} {q:?}");
        match join {
            HemJoin::Inseam => {
                near(first.path.start(), corner(PieceId::Front, EdgeId::Inseam));
                near(last.path.end(), corner(PieceId::Back, EdgeId::Inseam));
            }
            HemJoin::Outseam => {
                near(first.path.start(), corner(PieceId::Front, EdgeId::Side));
                near(last.path.end(), corner(PieceId::Back, EdgeId::Side));
            }
            HemJoin::BackOfLeg => {
                assert_eq!(rows.len(), 3);
                assert!((first.path.start() - last.path.end()).hypot() < 1e-6);
                assert!((first.length() - last.length()).abs() < Length::mm(1e-3));
                near(first.path.end(), corner(PieceId::Back, EdgeId::Side));
            }
        }
    }
}

#[test]
fn loose_hem_threads_are_noticed() {
    assert!(!codes(&sewn(|_| ())).contains(&"sewing::hem-ends"));
    let cut = sewn(|loaded| {
        let rows = loaded
            .style
            .seams
            .get_mut(&SeamId::Hem)
            .unwrap()
            .rows
            .as_mut()
            .unwrap();
        rows[0].end = Some(RowEnding::Cut);
    });
    let found = cut
        .findings
        .iter()
        .find(|f| f.code == "sewing::hem-ends")
        .unwrap();
    assert_eq!(found.severity, draft::Severity::Warning);
    let lapped = sewn(|loaded| loaded.style.hem.ends = HemEnds::Overlapped);
    let found = lapped
        .findings
        .iter()
        .find(|f| f.code == "sewing::hem-ends")
        .unwrap();
    assert_eq!(found.severity, draft::Severity::Note);
}

#[test]
fn stated_ends_are_sewn_and_described() {
    let garment = sewn(|loaded| {
        let rows = loaded
            .style
            .seams
            .get_mut(&SeamId::Mouth)
            .unwrap()
            .rows
            .as_mut()
            .unwrap();
        rows[0].begin = Some(RowEnding::Backtacked);
    });
    let words = |id: SeamId| {
        let seam = garment.seams.iter().find(|s| s.id == id).unwrap();
        describe(&garment, seam)
    };
    let ends = |id: SeamId| -> Vec<String> {
        let ends = words(id).ends.into_iter().flatten();
        ends.map(|said| Words::english().say(said)).collect()
    };
    assert_eq!(
        ends(SeamId::Mouth),
        [
            "begins: backtacked; ends: caught in the next seam",
            "both ends: caught in the next seam"
        ]
    );
    assert_eq!(
        ends(SeamId::Hem),
        ["begins: threads tied by hand; ends: threads tied by hand"]
    );
    assert_eq!(words(SeamId::Hem).lies.key(), "seam-lies-roped");
    assert_eq!(
        ends(SeamId::Band)[0],
        "both ends: threads tucked into the fold"
    );
}

#[test]
fn a_drawing_is_sewn_inside_the_set_rows_and_may_be_turned_over() {
    let drawn = |garment: &Garment| -> Vec<Vec<Point>> {
        let rows = garment.rows.iter();
        rows.filter(|r| r.seam == SeamId::Decoration && r.piece == PieceId::BackPocketRight)
            .map(|r| r.path.dense(Length::mm(0.5)))
            .collect()
    };
    let garment = sewn(|_| ());
    let lines = drawn(&garment);
    assert_eq!(lines.len(), 2);
    // The set rows lie 8 mm inside the sides, which lean in from 0 to 13.55 mm... so at least 8.
    let width = garment.pattern.spec[MeasureId::BackPocketWidth].to_mm();
    assert!(
        lines
            .iter()
            .flatten()
            .all(|p| p.x > 7.9 && p.x < width - 7.9)
    );
    for row in garment
        .rows
        .iter()
        .filter(|r| r.piece == PieceId::BackPocketRight)
    {
        if row.seam == SeamId::Decoration {
            assert_eq!(
                (row.begins, row.ends),
                (RowEnd::CaughtInSeam, RowEnd::CaughtInSeam)
            );
            assert_eq!(row.on, On::AsDrawn);
        }
    }
    let turned = drawn(&sewn(|loaded| {
        loaded.style.pockets.back.right.mirror = true
    }));
    // Its lowest point is the same, on the other side of the middle.
    let lowest = |lines: &[Vec<Point>]| {
        *lines
            .iter()
            .flatten()
            .min_by(|a, b| a.y.total_cmp(&b.y))
            .unwrap()
    };
    let (a, b) = (lowest(&lines), lowest(&turned));
    assert!(
        (a.y - b.y).abs() < 0.01 && (a.x + b.x - width).abs() < 0.6,
        "{a:?} {b:?}"
    );
}

#[test]
fn a_pocket_may_be_left_plain() {
    let garment = sewn(|loaded| {
        let back = &mut loaded.style.pockets.back;
        back.left.decoration = Decoration::None;
        back.right.decoration = Decoration::None;
        (back.right.art, back.right.drawing) = (None, None);
    });
    assert!(garment.rows.iter().all(|r| r.seam != SeamId::Decoration));
    assert!(!codes(&garment).contains(&"sewing::row-without-place"));
}

#[test]
fn a_drawing_beside_its_pocket_is_noticed() {
    let code = "sewing::drawing-off-pocket";
    assert!(!codes(&sewn(|_| ())).contains(&code));
    let garment = sewn(|loaded| {
        let drawing = loaded.style.pockets.back.right.drawing.as_mut().unwrap();
        for line in &mut drawing.lines {
            line.from = [Length::mm(400.0); 2];
            line.steps = vec![style::DrawnStep::Straight([Length::mm(450.0); 2])];
        }
    });
    assert!(codes(&garment).contains(&code));
}

#[test]
fn a_foot_deeper_than_its_pocket_is_noticed() {
    let code = "sewing::coin-foot";
    assert!(!codes(&sewn(|_| ())).contains(&code));
    let garment = sewn(|loaded| loaded.style.pockets.coin.drop = Length::mm(80.0));
    assert!(codes(&garment).contains(&code));
}

#[test]
fn a_zip_lies_beside_the_fly_edge() {
    let zip = |garment: &Garment| {
        let mut all = garment.fixings.iter();
        all.find(|f| matches!(f.kind, FixingKind::Zip(..))).cloned()
    };
    assert_eq!(zip(&sewn(|_| ())), None);
    let garment = sewn(|loaded| {
        loaded.style.fly.closing = Closing::Zip;
        loaded.style.fly.zip = Some("zip".to_owned());
    });
    let zip = zip(&garment).unwrap();
    let FixingKind::Zip(length, _) = zip.kind else {
        panic!("not a zip");
    };
    // Nothing says how long the zip is: as long as the fly.
    assert_eq!(length, garment.pattern.spec[MeasureId::FlyLength]);
    assert!((zip.at.y + length.to_mm() / 2.0).abs() < 1e-9);
    assert!(zip.inside && !zip.outside);
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 24, failure_persistence: None, ..ProptestConfig::default() })]

    /// Anything at all in what this file is about: a garment, and no panic.
    #[test]
    fn any_band_hem_and_pocket_gives_a_garment(
        lengths in prop::collection::vec(prop_oneof![Just(0.0), Just(1.0e7), -500.0..500.0_f64], 6),
        angle in -400.0..400.0_f64,
        waves in 0_u32..1000,
        shape in prop::sample::select(style::CoinShape::WORDS),
        join in prop::sample::select(HemJoin::WORDS),
    ) {
        let length = |k: usize| Length::mm(lengths[k]);
        let garment = sewn(|loaded| {
            let doc = &mut loaded.style;
            doc.band.start_below = length(0);
            doc.band.v_angle = Angle::deg(angle);
            doc.hem.join = join.1;
            doc.pockets.coin.shape = shape.1;
            doc.pockets.coin.drop = length(1);
            doc.pockets.coin.lower_narrowing = length(2);
            doc.pockets.back.left.crest = length(3);
            doc.pockets.back.left.rise = length(4);
            doc.pockets.back.left.waves = waves;
            doc.chart.get_mut(&MeasureId::CoinDepth).unwrap().value = length(5);
        });
        for row in &garment.rows {
            prop_assert!(row.length().is_finite());
        }
    }
}

/// 13 to 25 mm are usual where a chain runs on over its start (reasoned); 10 mm hold a lockstitch.
#[test]
fn a_hem_runs_on_over_its_start_as_far_as_its_stitch_needs() {
    let hem = |stitch: StitchType, ends: HemEnds, join: HemJoin| {
        let garment = sewn(|loaded| {
            (loaded.style.hem.ends, loaded.style.hem.join) = (ends, join);
            let rows = loaded
                .style
                .seams
                .get_mut(&SeamId::Hem)
                .unwrap()
                .rows
                .as_mut();
            rows.unwrap()[0].stitch = stitch;
        });
        let of_hem = garment.rows.iter().filter(|row| row.seam == SeamId::Hem);
        let sewn = of_hem.map(|row| row.length()).sum::<Length>();
        let last = garment
            .rows
            .iter()
            .rfind(|row| row.seam == SeamId::Hem)
            .unwrap();
        let taken = sewing::yarn::consumption(&garment);
        let yarn = taken.items.iter().filter(|item| item.seam == SeamId::Hem);
        (
            sewn,
            last.ends,
            yarn.map(|item| item.sewn_length().figure()).sum::<Length>(),
        )
    };
    for join in [HemJoin::Inseam, HemJoin::Outseam, HemJoin::BackOfLeg] {
        let (once, _, counted_once) = hem(StitchType::S401, HemEnds::TiedByHand, join);
        for (stitch, over) in [(StitchType::S401, 19.05), (StitchType::S301, 10.0)] {
            let (sewn, ends, counted) = hem(stitch, HemEnds::Overlapped, join);
            assert!(
                ((sewn - once).to_mm() - over).abs() < 0.01,
                "{join:?} {stitch}"
            );
            assert_eq!(ends, RowEnd::Overlapped);
            // On both legs, and before the wash, which takes 4 % of the weft.
            let taken = (counted - counted_once).to_mm() * 0.96;
            assert!(
                (taken - 2.0 * over).abs() < 0.2,
                "{join:?} {stitch}: {taken}"
            );
        }
    }
}
