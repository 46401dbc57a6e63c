//! The demo style, sewn in every size.
#![allow(clippy::unwrap_used)]

use draft::{PieceId, Severity};
use geometry::{Point, contains};
use sewing::{Garment, On, findings_of_run, make, make_run, placements};
use style::{Loaded, Size};
use trade::Length;

fn ferryman() -> Loaded {
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    style::load(folder.as_ref()).unwrap()
}

fn base() -> Garment {
    let loaded = ferryman();
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn distance(polygon: &[Point], p: Point) -> f64 {
    let n = polygon.len();
    (0..n)
        .map(|i| {
            let (a, b) = (polygon[i], polygon[(i + 1) % n]);
            let side = b - a;
            let share = ((p - a).dot(side) / side.hypot2().max(1e-12)).clamp(0.0, 1.0);
            (p - (a + side * share)).hypot()
        })
        .fold(f64::INFINITY, f64::min)
}

#[test]
fn every_size_is_sewn_without_an_error() {
    let loaded = ferryman();
    let run = make_run(&loaded.style, &loaded.collection);
    assert_eq!(run.len(), 27);
    for garment in &run {
        for found in &garment.findings {
            assert!(
                found.severity < Severity::Error,
                "{}: {} {}: {}",
                garment.size,
                found.code,
                found.about,
                found.message
            );
        }
        // Rows may touch the outline they end at: 1 mm of slack covers how closely curves are followed.
        for row in &garment.rows {
            let outline = garment.pattern.piece(row.piece).unwrap().polygon(Length::mm(0.5));
            for p in row.path.dense(Length::mm(2.0)) {
                assert!(
                    contains(&outline, p) || distance(&outline, p) < 1.0,
                    "{} {} row {} leaves {} at {p:?}",
                    garment.size,
                    row.seam,
                    row.number,
                    row.piece
                );
            }
        }
    }
    let merged = findings_of_run(&run);
    for f in &merged {
        println!("{} {}: {} | {}", f.severity.word(), f.code, f.about, f.message);
    }
}

#[test]
fn dump() {
    let g = base();
    for r in &g.rows {
        println!(
            "{} {} {:?} {:?} {:.1} mm {} st {:?}->{:?}",
            r.seam, r.number, r.piece, r.on, r.length().to_mm(), r.stitches(),
            r.path.start(), r.path.end()
        );
    }
    for f in &g.fixings { println!("{f:?}"); }
    for c in &g.cut { println!("{:?} {:?} {:?} {}", c.piece, c.on, c.allowances, c.outline.len()); }
    for l in &g.laps { println!("{l:?}"); }
    for p in placements(&g.pattern) { println!("{p:?}"); }
    let _ = (PieceId::Front, On::Both);
}
