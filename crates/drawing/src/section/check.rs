//! Sheets of sections: every word stands clear, on the demo's seams and on every construction.

#![allow(clippy::unwrap_used)]

use style::{Seam, SeamId};
use trade::Length;
use words::Words;

use super::*;
use crate::palette::TYPE_FIGURES;
use crate::samples::{sewn, texts, words_stand_clear};
use crate::sheet::Shape;

/// The seams of the demo, and every construction every seam may have with one to four rows, on the
/// seam line and beside it.
fn every_seam(garment: &Garment) -> Vec<Seam> {
    use trade::StitchType::{S301, S401, S504};
    let mut seams = garment.seams.clone();
    let sets = [
        [(S401, 1.6), (S401, 8.0), (S401, 5.0), (S301, 11.0)],
        [(S301, 0.0), (S504, 0.0), (S301, 1.6), (S301, 6.0)],
        [(S301, 0.0), (S301, -6.0), (S301, 6.0), (S301, 7.0)],
    ];
    for known in style::known::seams() {
        let Some(own) = garment.seams.iter().find(|s| s.id == known.id) else {
            continue;
        };
        for construction in known.constructions {
            for set in &sets {
                for count in 1..=set.len() {
                    let rows = set[..count].iter().map(|(stitch, mm)| style::RowSpec {
                        stitch: *stitch,
                        offset: Length::mm(*mm),
                        ..own.rows[0].clone()
                    });
                    seams.push(Seam {
                        construction: *construction,
                        rows: rows.collect(),
                        ..own.clone()
                    });
                }
            }
        }
    }
    seams
}

#[test]
fn words_and_numbers_keep_clear_of_one_another() {
    let garment = sewn(32, 32);
    for seam in every_seam(&garment) {
        let thumbnail = seam_section_thumbnail(&garment, &seam, Words::english()).unwrap();
        let plate = seam_section(&garment, &seam, Words::english()).unwrap();
        for (sheet, look) in [(thumbnail, THUMBNAIL), (plate, PLATE)] {
            words_stand_clear(&sheet);
            // The rings around the numbers.
            let numbers: Vec<Point> = texts(&sheet)
                .iter()
                .filter(|t| t.words.parse::<u32>().is_ok())
                .map(|t| t.at)
                .collect();
            for (k, a) in numbers.iter().enumerate() {
                for b in &numbers[k + 1..] {
                    let gap = (*a - *b).hypot();
                    assert!(gap > 2.0 * look.circle + 0.1, "{}: {gap}", sheet.title);
                }
            }
        }
    }
}

#[test]
fn a_thumbnail_fits_its_cell_and_numbers_every_row() {
    let garment = sewn(32, 32);
    for seam in &garment.seams {
        let sheet = seam_section_thumbnail(&garment, seam, Words::english()).unwrap();
        assert_eq!(sheet.width, Length::mm(62.0));
        assert!(sheet.height < Length::mm(36.0), "{}", seam.id.code());
        for text in texts(&sheet) {
            assert!(text.size >= TYPE_FIGURES, "{}", text.words);
        }
        let words: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
        assert!(words.contains(&"outside") && words.contains(&"inside"));
        for number in 1..=seam.rows.len() {
            assert!(
                words.contains(&number.to_string().as_str()),
                "{}",
                seam.id.code()
            );
        }
    }
}

/// Where words stand on a thumbnail of a seam, each time they do.
fn places(id: SeamId, words: &str) -> Vec<Point> {
    let garment = sewn(32, 32);
    let seam = garment.seams.iter().find(|s| s.id == id).unwrap();
    let sheet = seam_section_thumbnail(&garment, seam, Words::english()).unwrap();
    words_stand_clear(&sheet);
    let all = texts(&sheet).into_iter();
    all.filter(|t| t.words == words).map(|t| t.at).collect()
}

#[test]
fn a_name_stands_by_its_own_ply() {
    // The body leaves the drawing on the right; the band around its edge does not.
    let band = places(SeamId::Band, "waistband")[0];
    let body = places(SeamId::Band, "body")[0];
    assert!(band.x < 31.0 && body.x > 31.0, "{band:?} {body:?}");
}

#[test]
fn plies_of_one_name_are_named_once_and_names_keep_the_order_of_the_plies() {
    let strip = places(SeamId::Fly, "buttonhole strip");
    let facing = places(SeamId::Fly, "fly facing");
    assert_eq!((strip.len(), facing.len()), (1, 1));
    let below = strip[0].y - facing[0].y;
    assert!((2.5..6.0).contains(&below), "{below}");
}

#[test]
fn three_rows_of_a_fell_are_each_measured() {
    let garment = sewn(32, 32);
    let mut seam = garment
        .seams
        .iter()
        .find(|s| s.id == SeamId::Seat)
        .cloned()
        .unwrap();
    let mut middle = seam.rows[0].clone();
    middle.offset = Length::mm(5.0);
    seam.rows.insert(1, middle);
    let sheet = seam_section_thumbnail(&garment, &seam, Words::english()).unwrap();
    words_stand_clear(&sheet);
    let words: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
    for stated in ["1.6 mm", "5 mm", "8 mm", "lap 9.6 mm"] {
        assert!(words.contains(&stated), "{stated}");
    }
}

#[test]
fn yarns_are_drawn_in_their_colours() {
    let garment = sewn(32, 32);
    let seam = garment
        .seams
        .iter()
        .find(|s| s.id == SeamId::Inseam)
        .unwrap();
    let sheet = seam_section(&garment, seam, Words::english()).unwrap();
    for (number, yarn) in [(1, "rope-105"), (2, "night-80")] {
        let name = format!("row:inseam:{number}");
        let colour = garment.collection.yarns.get(yarn).unwrap().colour;
        let drawn = sheet.layers.iter().flat_map(|l| &l.marks).any(|mark| {
            mark.part.as_deref() == Some(name.as_str())
                && matches!(mark.shape, Shape::Line { stroke, .. } if stroke.colour == colour)
        });
        assert!(drawn, "row {number}");
    }
}
