#![allow(clippy::unwrap_used)]
//! What is seen of a whole pair: stitches in a small picture, cloth of one colour, bags that hang from the band, the fork with its tack.

use draft::{EdgeId, PieceId, PointId};
use flat::{Hand, LaidGarment, View};
use geometry::{Rect, bounds};
use sewing::{Face, FixingKind, Garment, make};
use style::Size;
use trade::Colour;
use words::Words;

use super::garment_view;
use super::ink::contrast;
use crate::samples::{ferryman, sewn};
use crate::sheet::{Mark, Shape, Sheet};

const VIEWS: [(View, Face); 4] = [
    (View::Front, Face::Outside),
    (View::Back, Face::Outside),
    (View::Front, Face::Inside),
    (View::Back, Face::Inside),
];

fn marks_of<'a>(sheet: &'a Sheet, part: &str) -> Vec<&'a Mark> {
    let marks = sheet.layers.iter().flat_map(|layer| &layer.marks);
    marks
        .filter(|mark| mark.part.as_deref() == Some(part))
        .collect()
}

fn drawn(marks: &[&Mark]) -> Option<Rect> {
    let paths = marks.iter().filter_map(|mark| match &mark.shape {
        Shape::Area { path, .. } | Shape::Line { path, .. } => Some(bounds(path)),
        Shape::Text(_) => None,
    });
    paths.reduce(|a, b| a.union(b))
}

fn fills(sheet: &Sheet, part: &str) -> Vec<Colour> {
    let marks = marks_of(sheet, part).into_iter();
    marks
        .filter_map(|mark| match &mark.shape {
            Shape::Area { fill, .. } => Some(*fill),
            _ => None,
        })
        .collect()
}

/// The demo with every yarn in one colour.
fn sewn_in(colour: Colour) -> Garment {
    let mut loaded = ferryman();
    for yarn in loaded.collection.yarns.values_mut() {
        yarn.colour = colour;
    }
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

/// Also in yarn of the cloth's own colour, which a maker may want not to show: the drawing has to.
#[test]
fn every_row_is_seen_in_a_picture_of_the_whole_pair() {
    let shell = ferryman().collection.cloths[&ferryman().style.cloth.shell].clone();
    for colour in [
        shell.colour,
        shell.reverse_colour,
        Colour::rgb(0xc8, 0x86, 0x2b),
    ] {
        let garment = sewn_in(colour);
        for (view, face) in VIEWS {
            let sheet = garment_view(&garment, view, face, Words::english());
            let ground = match face {
                Face::Outside => shell.colour,
                Face::Inside => shell.reverse_colour,
            };
            for part in [
                "seam:inseam",
                "seam:seat",
                "seam:front_rise",
                "seam:hem",
                "seam:yoke",
            ] {
                let strokes: Vec<_> = marks_of(&sheet, part)
                    .into_iter()
                    .filter_map(|mark| match &mark.shape {
                        Shape::Line { stroke, .. } => Some(*stroke),
                        _ => None,
                    })
                    .collect();
                // A hem that is roped has its ridges too; a row is what has stitches.
                let rows: Vec<_> = strokes.iter().filter(|s| s.dash.is_some()).collect();
                let seen = rows
                    .iter()
                    .filter(|s| s.width.to_mm() >= 0.9 && contrast(s.colour, ground) >= 1.5);
                let rows = rows.len();
                // A chain has a gap in each loop, which is drawn within its row.
                assert!(
                    seen.count() * 2 >= rows,
                    "{view:?} {face:?} {part} in {colour}: {rows} rows"
                );
            }
        }
    }
}

#[test]
fn pockets_of_the_same_cloth_have_its_colour() {
    let garment = sewn(32, 32);
    let back = garment_view(&garment, View::Back, Face::Outside, Words::english());
    let cloth = fills(&back, "piece:back")[0];
    for part in [
        "piece:back_pocket_left",
        "piece:back_pocket_right",
        "piece:yoke",
        "piece:band",
    ] {
        assert!(
            fills(&back, part).iter().all(|fill| *fill == cloth),
            "{part}"
        );
        assert!(!fills(&back, part).is_empty(), "{part}");
    }
    let front = garment_view(&garment, View::Front, Face::Outside, Words::english());
    for part in ["piece:front", "piece:pocket_facing", "piece:coin_pocket"] {
        assert!(fills(&front, part).contains(&cloth), "{part}");
    }
}

#[test]
fn pocket_bags_reach_the_band() {
    for (waist, length) in [(28, 30), (32, 32), (38, 34)] {
        let garment = sewn(waist, length);
        let laid = LaidGarment::of(&garment, View::Front, Face::Inside).unwrap();
        let seam = laid.waist_line(flat::Half::Front);
        let bag = garment.pattern.piece(PieceId::PocketBag).unwrap();
        let top = bag.edge(EdgeId::WaistUnder).unwrap();
        for share in [0.0, 0.3, 0.6, 1.0] {
            let p = top.point_at(top.length() * share);
            let at = laid.point(PieceId::PocketBag, p, Hand::Left).unwrap();
            let near = seam.windows(2).map(|w| {
                let side = geometry::Straight::between(w[0], w[1]);
                let mine = geometry::Point::new(at.x.abs(), at.y);
                side.distance(mine, 1e-9).to_mm()
            });
            let away = near.fold(f64::INFINITY, f64::min);
            assert!(
                away < 4.0,
                "{waist}x{length} at {share}: {away:.1} mm below the band"
            );
        }
    }
}

#[test]
fn both_rises_their_rows_and_the_tack_are_drawn_to_the_fork() {
    let garment = sewn(32, 32);
    let fork = LaidGarment::of(&garment, View::Front, Face::Outside)
        .unwrap()
        .fork();
    for (view, part) in [(View::Front, "seam:front_rise"), (View::Back, "seam:seat")] {
        let sheet = garment_view(&garment, view, Face::Outside, Words::english());
        let rows = drawn(&marks_of(&sheet, part)).unwrap();
        assert!(
            (rows.y1 + fork.y).abs() < 14.0,
            "{part} ends at {:.0}, the fork is at {:.0}",
            rows.y1,
            -fork.y
        );
        // Two rows of a felled seam: none swings out further than its gauge and the width of the yarn.
        assert!(
            rows.x1 - rows.x0 < 14.0,
            "{part} is {:.0} mm wide",
            rows.x1 - rows.x0
        );
    }
    let crotch = garment
        .pattern
        .piece(PieceId::Front)
        .unwrap()
        .point(PointId::Crotch)
        .unwrap();
    let tack = garment.fixings.iter().find(|f| {
        matches!(f.kind, FixingKind::Bartack(..))
            && f.piece == PieceId::Front
            && (f.at - crotch).hypot() < 15.0
    });
    let part = format!("fixing:{}", tack.unwrap().from.code());
    let sheet = garment_view(&garment, View::Front, Face::Outside, Words::english());
    let near = marks_of(&sheet, &part).into_iter().any(|mark| {
        let at = drawn(&[mark]).unwrap().center();
        at.x.abs() < 12.0 && (at.y + fork.y).abs() < 12.0
    });
    assert!(near, "{part} is not drawn at the fork");
}

#[test]
fn weave_and_shade_lie_under_all_that_tells_something() {
    let garment = sewn(32, 32);
    for (view, face) in VIEWS {
        let sheet = garment_view(&garment, view, face, Words::english());
        let veils: Vec<usize> = (0..sheet.layers.len())
            .filter(|k| sheet.layers[*k].cover.is_some())
            .collect();
        assert!(veils.len() > 2, "{view:?} {face:?}");
        for k in &veils {
            let layer = &sheet.layers[*k];
            assert!(
                layer.marks.iter().all(|mark| mark.part.is_none()),
                "{}",
                layer.name
            );
            assert!(layer.clip.is_some(), "{} runs off the cloth", layer.name);
        }
        let rows = sheet
            .layers
            .iter()
            .position(|layer| layer.name == "rows")
            .unwrap();
        // Only the band is drawn later, with its own weave under its own rows.
        let later = veils.iter().filter(|k| **k > rows && view == View::Back);
        assert!(later.count() <= 1, "{view:?} {face:?}");
        let fixings = sheet
            .layers
            .iter()
            .position(|layer| layer.name == "fixings")
            .unwrap();
        assert!(veils.iter().all(|k| *k < fixings), "{view:?} {face:?}");
    }
}
