//! Sheets of sections: every word stands clear, on the demo's seams and on every construction.

#![allow(clippy::unwrap_used)]

use style::{Construction, Seam};
use trade::Length;

use super::*;
use crate::samples::{sewn, texts, words_stand_clear};
use crate::sheet::Shape;

fn every_seam(garment: &Garment) -> Vec<Seam> {
    let mut seams = garment.seams.clone();
    for (_, construction) in Construction::WORDS {
        for name in ["inseam", "seat", "outseam"] {
            let mut seam = garment
                .seams
                .iter()
                .find(|s| s.name == name)
                .cloned()
                .unwrap();
            seam.construction = *construction;
            seams.push(seam);
        }
    }
    seams
}

#[test]
fn words_keep_clear_of_one_another() {
    let garment = sewn(32, 32);
    for seam in every_seam(&garment) {
        words_stand_clear(&seam_section(&garment, &seam).unwrap());
        words_stand_clear(&seam_section_thumbnail(&garment, &seam).unwrap());
    }
}

#[test]
fn a_thumbnail_fits_its_cell_and_numbers_every_row() {
    let garment = sewn(32, 32);
    for seam in &garment.seams {
        let sheet = seam_section_thumbnail(&garment, seam).unwrap();
        assert_eq!(
            (sheet.width, sheet.height),
            (Length::mm(46.0), Length::mm(24.0))
        );
        let words: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
        assert!(words.contains(&"outside") && words.contains(&"inside"));
        for number in 1..=seam.rows.len() {
            assert!(
                words.contains(&number.to_string().as_str()),
                "{}",
                seam.name
            );
        }
    }
}

#[test]
fn three_rows_of_a_fell_are_each_measured() {
    let garment = sewn(32, 32);
    let mut seam = garment
        .seams
        .iter()
        .find(|s| s.name == "seat")
        .cloned()
        .unwrap();
    let mut middle = seam.rows[0].clone();
    middle.offset = Length::mm(5.0);
    seam.rows.insert(1, middle);
    let sheet = seam_section_thumbnail(&garment, &seam).unwrap();
    words_stand_clear(&sheet);
    let words: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
    for stated in ["1.6 mm", "5 mm", "8 mm", "lap 9.6 mm"] {
        assert!(words.contains(&stated), "{stated}");
    }
}

#[test]
fn yarns_are_drawn_in_their_colours() {
    let garment = sewn(32, 32);
    let seam = garment.seams.iter().find(|s| s.name == "inseam").unwrap();
    let sheet = seam_section(&garment, seam).unwrap();
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
