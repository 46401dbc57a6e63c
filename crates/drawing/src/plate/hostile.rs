//! Garments no sewer ever made: nothing panics, and nothing that is not a number reaches a sheet.

use draft::PieceId;
use geometry::Point;
use sewing::{FixingKind, Garment};
use style::MeasureId;
use trade::Length;
use words::Words;

use super::plates;
use crate::samples::{sewn, texts};

fn broken(value: f64) -> Vec<Garment> {
    let sound = sewn(32, 32);
    let length = Length::mm(value);
    let other = |change: &dyn Fn(&mut Garment)| {
        let mut garment = sound.clone();
        change(&mut garment);
        garment
    };
    vec![
        other(&|g| {
            g.pattern.spec.set(MeasureId::BandHeight, length);
            g.pattern.spec.set(MeasureId::HemDepth, length);
        }),
        other(&|g| {
            g.pattern.spec.set(MeasureId::FlyWidth, length);
            g.pattern.spec.set(MeasureId::FlyLength, length);
            g.doc.loops.belt = length;
            g.doc.band.start_below = length;
        }),
        other(&|g| {
            for fixing in &mut g.fixings {
                fixing.at = Point::new(value, fixing.at.y);
            }
        }),
        other(&|g| {
            for fixing in &mut g.fixings {
                match &mut fixing.kind {
                    FixingKind::Loop(a, b)
                    | FixingKind::Label(a, b, _)
                    | FixingKind::Patch(a, b, _)
                    | FixingKind::Bartack(a, b, _) => (*a, *b) = (length, length),
                    FixingKind::Buttonhole(a) | FixingKind::Button(a) => *a = length,
                    FixingKind::Rivet(_) | FixingKind::Zip(..) => {}
                }
            }
        }),
        other(&|g| {
            let pieces = g.pattern.pieces.iter_mut();
            for piece in pieces.filter(|p| matches!(p.id, PieceId::Band | PieceId::Front)) {
                for point in &mut piece.points {
                    point.at.x = value;
                }
            }
        }),
    ]
}

#[test]
fn nothing_panics_and_no_words_are_broken() {
    for value in [f64::NAN, 0.0, 3000.0] {
        for garment in broken(value) {
            for plate in plates(&garment, Words::english()) {
                let broken = |words: &str| words.contains("NaN") || words.contains("inf ");
                assert!(
                    texts(&plate.sheet).iter().all(|t| !broken(&t.words)),
                    "{value} {}",
                    plate.id.code()
                );
            }
        }
    }
}

#[test]
fn a_garment_without_pieces_or_rows_has_few_plates_or_none() {
    let mut garment = sewn(32, 32);
    garment.rows.clear();
    garment.fixings.clear();
    garment.seams.clear();
    garment.doc.seams.clear();
    garment.doc.labels.clear();
    let bare = plates(&garment, Words::english());
    assert!(bare.iter().all(|p| p.stitches.is_empty()));
    garment.pattern.pieces.clear();
    garment.before_wash.pattern.pieces.clear();
    assert!(plates(&garment, Words::english()).is_empty());
}
