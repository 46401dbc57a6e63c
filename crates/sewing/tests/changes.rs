//! A change to the style changes what is sewn, and what is wrong with it is said.
#![allow(clippy::unwrap_used, missing_docs)]

mod common;

use common::ferryman;
use draft::{EdgeId, PieceId, PointId, Severity};
use sewing::{Finish, Garment, On, findings_of_run, make};
use style::{Closing, Construction, Lap, Loaded, MeasureId, Ply, SeamId, Size};
use trade::{Length, StitchDensity};

fn base() -> Garment {
    let loaded = ferryman();
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn sewn(change: impl FnOnce(&mut Loaded)) -> Garment {
    let mut loaded = ferryman();
    change(&mut loaded);
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn allowance(garment: &Garment, piece: PieceId, edge: EdgeId) -> f64 {
    let cut = garment.cut.iter().find(|c| c.piece == piece).unwrap();
    let (_, width) = cut
        .allowances
        .iter()
        .find(|(name, _)| *name == edge)
        .unwrap();
    width.to_mm()
}

fn rows_of(garment: &Garment, seam: SeamId) -> impl Iterator<Item = &sewing::StitchRow> {
    garment.rows.iter().filter(move |r| r.seam == seam)
}

#[test]
fn an_open_inseam_needs_even_allowances_and_shows_no_rows() {
    let garment = sewn(|l| {
        let seam = &mut l.style.seams[&SeamId::Inseam];
        seam.construction = Some(Construction::PressedOpen);
        seam.rows.as_mut().unwrap().truncate(1);
        seam.rows.as_mut().unwrap()[0].offset = Length::ZERO;
    });
    assert_eq!(allowance(&garment, PieceId::Front, EdgeId::Inseam), 12.7);
    assert_eq!(allowance(&garment, PieceId::Back, EdgeId::Inseam), 12.7);
    assert!(rows_of(&garment, SeamId::Inseam).all(|r| !r.shows_outside));
    assert_eq!(rows_of(&garment, SeamId::Inseam).count(), 1);
    let laps: Vec<_> = garment
        .laps
        .iter()
        .filter(|l| l.edge == EdgeId::Inseam)
        .collect();
    // Only the outseam runs along the cloth's own edge.
    assert_eq!(laps.len(), 2);
    assert!(laps.iter().all(|l| l.finish == Finish::Overedged));
}

/// The first row of a French seam is sewn in its allowance, topstitching on the other side of an open
/// seam on the ply below: both have their place, and neither is called too near to an edge.
#[test]
fn rows_beyond_the_seam_line_have_their_place() {
    let garment = sewn(|l| {
        let bag = &mut l.style.seams[&SeamId::BagClose];
        bag.construction = Some(Construction::FrenchSeam);
        let rows = bag.rows.as_mut().unwrap();
        rows[0].stitch = trade::StitchType::S301;
        rows.push(rows[0].clone());
        rows[1].offset = Length::mm(-6.0);
        let open = l.style.seams[&SeamId::Outseam].rows.as_mut().unwrap();
        for offset in [6.0, -6.0] {
            open.push(open[0].clone());
            open.last_mut().unwrap().offset = Length::mm(offset);
        }
    });
    assert_eq!(rows_of(&garment, SeamId::BagClose).count(), 2);
    let beside: Vec<PieceId> = rows_of(&garment, SeamId::Outseam)
        .filter(|row| row.shows_outside)
        .map(|row| row.piece)
        .collect();
    use PieceId::{Back, Front, PocketFacing, Yoke};
    assert_eq!(beside, [Front, PocketFacing, Back, Yoke]);
    for code in ["sewing::row-without-place", "sewing::row-near-edge"] {
        assert!(garment.findings.iter().all(|f| f.code != code), "{code}");
    }
}

#[test]
fn the_other_lap_puts_rows_and_allowances_on_the_other_ply() {
    let garment = sewn(|l| {
        l.style.seams[&SeamId::Inseam].lap = Some(Lap {
            over: Ply::Back,
            under: Ply::Front,
        });
        l.style.seams[&SeamId::Seat].lap = Some(Lap {
            over: Ply::Right,
            under: Ply::Left,
        });
    });
    assert!(rows_of(&garment, SeamId::Inseam).all(|r| r.piece == PieceId::Back));
    assert!((allowance(&garment, PieceId::Back, EdgeId::Inseam) - 8.1).abs() < 1e-9);
    assert!((allowance(&garment, PieceId::Front, EdgeId::Inseam) - 17.7).abs() < 1e-9);
    assert!(rows_of(&garment, SeamId::Seat).all(|r| r.on == On::AsDrawn));
    let usual = base();
    assert!(rows_of(&usual, SeamId::Seat).all(|r| r.on == On::Mirrored));
}

#[test]
fn what_is_wrong_is_said() {
    let garment = sewn(|l| {
        let rows = |l: &mut Loaded, seam: SeamId| l.style.seams[&seam].rows.clone().unwrap();
        let mut hem = rows(l, SeamId::Hem);
        hem[0].offset = Length::mm(20.0);
        l.style.seams[&SeamId::Hem].rows = Some(hem);
        let mut mouth = rows(l, SeamId::Mouth);
        mouth[0].offset = Length::mm(0.4);
        mouth[1].density = StitchDensity::per_cm(20.0);
        l.style.seams[&SeamId::Mouth].rows = Some(mouth);
        let mut band = rows(l, SeamId::Band);
        band[1].offset = Length::mm(500.0);
        band[0].yarn = "cable-900".to_owned();
        l.style.seams[&SeamId::Band].rows = Some(band);
        l.style.labels[0].place = "on the moon".to_owned();
        l.style.labels[1].trim = "no-label".to_owned();
        l.style.patch.as_mut().unwrap().from_centre = Length::mm(130.0);
        l.style.fly.buttons = 30;
    });
    let wanted = [
        (
            "sewing::row-catches-nothing",
            "hem, row 1",
            Severity::Warning,
        ),
        ("sewing::row-near-edge", "mouth, row 1", Severity::Warning),
        (
            "sewing::stitches-crowded",
            "mouth, row 2",
            Severity::Warning,
        ),
        ("sewing::row-without-place", "band", Severity::Error),
        ("sewing::unknown-name", "yarn cable-900", Severity::Error),
        ("sewing::unknown-name", "trim no-label", Severity::Error),
        ("sewing::label-place", "label main-label", Severity::Warning),
        ("sewing::patch-on-loop", "patch", Severity::Warning),
        ("sewing::fly-buttons", "fly", Severity::Warning),
    ];
    for (code, about, severity) in wanted {
        let found = garment
            .findings
            .iter()
            .find(|f| f.code == code && f.about(words::Words::english()) == about);
        assert_eq!(found.map(|f| f.severity), Some(severity), "{code} {about}");
        assert!(
            base()
                .findings
                .iter()
                .all(|f| f.code != code || f.about(words::Words::english()) != about),
            "{code} {about}"
        );
    }
    assert!(
        garment
            .findings
            .is_sorted_by(|a, b| a.severity >= b.severity)
    );
}

fn found(garment: &Garment, code: &str) -> bool {
    garment.findings.iter().any(|f| f.code == code)
}

#[test]
fn a_closing_that_does_not_fit_is_said() {
    let with = |code: &'static str, change: fn(&mut Loaded)| {
        assert!(found(&sewn(change), code), "{code}");
        assert!(!found(&base(), code), "{code}");
    };
    with("sewing::band-button", |l| {
        l.style.chart[&MeasureId::BandOverlap].value = Length::mm(20.0);
    });
    // Holes of a 14 mm button end 9.5 + 14 + 3.2 = 26.7 mm from the fly edge.
    with("sewing::fly-holes", |l| {
        l.style.seams[&SeamId::Fly].rows.as_mut().unwrap()[1].offset = Length::mm(26.0);
    });
    with("sewing::zip-length", |l| {
        let mut zip = l.collection.trims["rivet-9"].clone();
        zip.length = Some(Length::mm(200.0));
        l.collection.trims.insert("zip".to_owned(), zip);
        l.style.fly.closing = Closing::Zip;
        l.style.fly.zip = Some("zip".to_owned());
    });
}

#[test]
fn a_coin_pocket_must_lie_on_its_facing() {
    let garment = sewn(|l| l.style.chart[&MeasureId::CoinDepth].value = Length::mm(160.0));
    assert!(found(&garment, "sewing::coin-beyond-facing"));
    assert!(!found(&base(), "sewing::coin-beyond-facing"));
    let hidden = sewn(|l| {
        l.style.pockets.coin.below_band = Length::mm(85.0);
        l.style.chart[&MeasureId::CoinDepth].value = Length::mm(20.0);
    });
    assert!(found(&hidden, "sewing::coin-hidden"));
    assert!(!found(&base(), "sewing::coin-hidden"));
}

#[test]
fn labels_go_where_their_words_say() {
    let place = |words: &str| {
        let words = words.to_owned();
        let garment = sewn(|l| l.style.labels[1].place = words);
        let label = garment
            .fixings
            .iter()
            .find(|f| f.from.trim() == Some("size-label"));
        let band = garment.pattern.piece(PieceId::Band).unwrap();
        let centre = band.point(PointId::CentreBack).unwrap().x;
        label.map(|f| (f.piece, f.on, f.at.x - centre))
    };
    let (piece, _, right) = place("Band inside, right of main label").unwrap();
    assert_eq!(piece, PieceId::Band);
    // Half of 60 mm, a gap of 5 mm, half of 20 mm.
    assert!((right - 45.0).abs() < 1e-9);
    let (_, _, left) = place("band inside, left of main label").unwrap();
    assert!((left + 45.0).abs() < 1e-9);
    let (piece, on, _) = place("right side seam inside").unwrap();
    assert_eq!((piece, on), (PieceId::Front, On::Mirrored));
    for words in ["", "band outside, centre back", "side seam", "band inside"] {
        assert_eq!(place(words), None, "{words}");
    }
}

#[test]
fn a_pocket_beyond_the_back_is_an_error() {
    let garment = sewn(|l| {
        let chart = &mut l.style.chart;
        chart[&MeasureId::BackPocketFromCentre].value = Length::mm(190.0);
    });
    let codes: Vec<_> = garment.findings.iter().map(|f| f.code).collect();
    assert!(codes.contains(&"sewing::pocket-outside"), "{codes:?}");
}

#[test]
fn a_conflict_is_an_error_and_still_a_garment() {
    let garment = sewn(|l| l.style.chart[&MeasureId::Thigh].value = Length::mm(300.0));
    assert!(garment.conflict.is_some());
    assert_eq!(garment.findings[0].code, "fit::conflict");
    assert_eq!(garment.findings[0].severity, Severity::Error);
    assert_eq!(garment.cut.len(), base().cut.len());
}

#[test]
fn equal_findings_of_a_run_are_said_once() {
    let one = base();
    assert_eq!(
        findings_of_run(std::slice::from_ref(&one)).len(),
        one.findings.len()
    );
    let mut other = one.clone();
    other.size = Size::new(34, 32);
    for f in &mut other.findings {
        f.size = Some(other.size);
        f.message = f.source.clone();
    }
    let merged = findings_of_run(&[one.clone(), other, one.clone()]);
    assert_eq!(merged.len(), one.findings.len());
    assert!(
        merged[0]
            .message(words::Words::english())
            .ends_with("(in every size; the numbers are those of 32x32)"),
        "{}",
        merged[0].message(words::Words::english())
    );
    assert!(findings_of_run(&[]).is_empty());
}
