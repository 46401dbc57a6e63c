#![allow(clippy::unwrap_used)]
//! Left and right on the four views: what a maker finds who holds the pair, right side out and turned out.

use draft::{EdgeId, PieceId, PointId};
use flat::{Places, View};
use geometry::Rect;
use sewing::{Face, Garment, make};
use style::Size;

use words::Words;

use super::{garment_picture, garment_view};
use crate::lettering::text_box;
use crate::samples::{ferryman, sewn, texts, words_stand_clear};
use crate::sheet::{Shape, Sheet};
use crate::{PlateId, plate};

const VIEWS: [(View, Face); 4] = [
    (View::Front, Face::Outside),
    (View::Back, Face::Outside),
    (View::Front, Face::Inside),
    (View::Back, Face::Inside),
];

/// Which way from the centre line the wearer's left lies: as one looks at a person, at a person's back, and at
/// either with the pair turned out.
fn left(view: View, face: Face) -> f64 {
    match (view, face) {
        (View::Front, Face::Outside) | (View::Back, Face::Inside) => 1.0,
        (View::Back, Face::Outside) | (View::Front, Face::Inside) => -1.0,
    }
}

/// What is drawn of a part; `None` where it is not on this view.
fn bounds(sheet: &Sheet, part: &str) -> Option<Rect> {
    let marks = sheet.layers.iter().flat_map(|layer| &layer.marks);
    let of = marks.filter(|mark| mark.part.as_deref() == Some(part));
    let drawn = of.filter_map(|mark| match &mark.shape {
        Shape::Area { path, .. } | Shape::Line { path, .. } => Some(geometry::bounds(path)),
        Shape::Text(_) => None,
    });
    drawn.reduce(|a, b| a.union(b))
}

/// Where on a view a part lies, or fails: -1 left of the centre line, 1 right of it, 0 on both sides.
fn hand(sheet: &Sheet, part: &str) -> f64 {
    let b = bounds(sheet, part).unwrap_or_else(|| panic!("{part} is not on {}", sheet.title));
    match (b.x0 >= -0.5, b.x1 <= 0.5) {
        (true, _) => 1.0,
        (_, true) => -1.0,
        _ => 0.0,
    }
}

fn word_at(sheet: &Sheet, words: &str) -> f64 {
    let all = texts(sheet);
    let found = all.iter().find(|text| text.words == words);
    found
        .unwrap_or_else(|| panic!("no {words} on {}", sheet.title))
        .at
        .x
}

#[test]
fn the_coin_pocket_is_on_the_wearers_side_on_either_face() {
    for side in [style::Side::Right, style::Side::Left] {
        let mut loaded = ferryman();
        loaded.style.pockets.coin.side = side;
        let garment = make(&loaded.style, &loaded.collection, Size::new(32, 32));
        let on_left = if side == style::Side::Left { 1.0 } else { -1.0 };
        for face in [Face::Outside, Face::Inside] {
            let places = Places::of(&garment, View::Front, face).unwrap();
            let edges = places.edges(PieceId::CoinPocket).unwrap();
            let wanted = left(View::Front, face) * on_left;
            assert!(
                edges
                    .iter()
                    .flat_map(|(_, line)| line)
                    .all(|p| p.x * wanted > 0.0),
                "{side:?} {face:?}"
            );
        }
        let front = garment_view(&garment, View::Front, Face::Outside, Words::english());
        assert_eq!(hand(&front, "piece:coin_pocket"), on_left);
    }
}

#[test]
fn the_fly_opens_on_the_wearers_right() {
    let garment = sewn(32, 32);
    // The left front laps over the right, so its rows are on the left, outside and inside.
    let outside = garment_view(&garment, View::Front, Face::Outside, Words::english());
    assert_eq!(hand(&outside, "seam:fly"), left(View::Front, Face::Outside));
    let inside = garment_view(&garment, View::Front, Face::Inside, Words::english());
    let wearers_left = left(View::Front, Face::Inside);
    assert_eq!(hand(&inside, "piece:fly_facing"), wearers_left);
    // The shield is sewn to the right front and reaches behind the left one, with its fold.
    assert_eq!(hand(&inside, "piece:fly_shield"), wearers_left);
}

/// The plate and the view show the same shield: sewn on its shorter side.
#[test]
fn the_shield_hangs_by_its_sewn_edge() {
    let garment = sewn(32, 32);
    let inside = garment_view(&garment, View::Front, Face::Inside, Words::english());
    let marks = inside.layers.iter().flat_map(|layer| &layer.marks);
    let mut shield = marks.filter(|mark| mark.part.as_deref() == Some("piece:fly_shield"));
    let Shape::Area { path, .. } = &shield.next().unwrap().shape else {
        panic!("an area")
    };
    let ends: Vec<_> = path
        .elements()
        .iter()
        .filter_map(|e| e.end_point())
        .collect();
    // On paper y grows downwards.
    let foot = |beside_centre: bool| {
        let here = ends.iter().filter(|p| (p.x.abs() < 0.1) == beside_centre);
        here.map(|p| p.y).fold(f64::NEG_INFINITY, f64::max)
    };
    let piece = garment.pattern.piece(PieceId::FlyShield).unwrap();
    let sewn = piece.edge(EdgeId::Left).unwrap().length().to_mm();
    let fold = -piece.point(PointId::FoldFoot).unwrap().y;
    assert!(fold > sewn);
    assert!((foot(false) - foot(true) - (fold - sewn)).abs() < 0.1);
}

#[test]
fn back_pockets_keep_their_sides() {
    let garment = sewn(32, 32);
    for face in [Face::Outside, Face::Inside] {
        let places = Places::of(&garment, View::Back, face).unwrap();
        for (piece, wanted) in [
            (PieceId::BackPocketLeft, left(View::Back, face)),
            (PieceId::BackPocketRight, -left(View::Back, face)),
        ] {
            let edges = places.edges(piece).unwrap();
            let all = edges.iter().flat_map(|(_, line)| line);
            assert!(
                all.clone().all(|p| p.x * wanted > 0.0),
                "{piece:?} {face:?}"
            );
        }
    }
    // The patch is on the wearer's right.
    let back = garment_view(&garment, View::Back, Face::Outside, Words::english());
    assert_eq!(
        hand(&back, "fixing:patch"),
        -left(View::Back, Face::Outside)
    );
}

/// Looking into the band from the front, turning the pair out, and on the plate: the size label stands on the same
/// side of the main label, and everything is read from left to right.
#[test]
fn labels_stand_as_on_their_plate() {
    let garment = sewn(32, 32);
    let plate = plate(&garment, words::Words::english(), PlateId::LabelsOnBand)
        .unwrap()
        .sheet;
    let apart = |sheet: &Sheet| {
        let middle = |part| bounds(sheet, part).unwrap().center().x;
        middle("fixing:size-label") - middle("fixing:main-label")
    };
    let wanted = apart(&plate);
    for (view, face) in [(View::Front, Face::Outside), (View::Back, Face::Inside)] {
        let sheet = garment_view(&garment, view, face, Words::english());
        let there = apart(&sheet);
        assert!(there * wanted > 0.0, "{view:?} {face:?}: {there} {wanted}");
    }
    for (view, face) in VIEWS {
        for text in texts(&garment_view(&garment, view, face, Words::english())) {
            assert!(
                text.turn_deg.abs() < 45.0,
                "{view:?} {face:?}: {}",
                text.words
            );
        }
    }
    // The label in the left outseam lies on the left leg.
    let inside = garment_view(&garment, View::Front, Face::Inside, Words::english());
    let cared = garment
        .fixings
        .iter()
        .find(|f| f.piece == PieceId::Front && f.inside && !f.outside);
    let part = format!("fixing:{}", cared.unwrap().from.code());
    assert_eq!(hand(&inside, &part), left(View::Front, Face::Inside));
}

/// Views are printed at a fifth of the size: what could not be read there is drawn as strokes, and its plate has the words.
#[test]
fn no_word_on_a_view_is_too_small_to_read() {
    let garment = sewn(32, 32);
    for (view, face) in VIEWS {
        let sheet = garment_view(&garment, view, face, Words::english());
        for text in texts(&sheet) {
            assert!(
                text.size >= crate::palette::TYPE_FIGURES * 5.0,
                "{}",
                text.words
            );
        }
    }
    let back = garment_view(&garment, View::Back, Face::Outside, Words::english());
    assert!(bounds(&back, "fixing:patch").is_some());
}

fn garments() -> Vec<Garment> {
    let loaded = ferryman();
    let mut out: Vec<Garment> = [Size::new(28, 30), Size::new(32, 32), Size::new(38, 34)]
        .map(|size| make(&loaded.style, &loaded.collection, size))
        .into();
    let mut bare = ferryman();
    bare.style.labels.clear();
    bare.style.patch = None;
    bare.style.pockets.extra = None;
    bare.style.loops.count = 2;
    out.push(make(&bare.style, &bare.collection, Size::new(34, 32)));
    out
}

#[test]
fn every_view_says_which_half_is_the_wearers_left() {
    for garment in garments() {
        for (view, face) in VIEWS {
            let sheet = garment_view(&garment, view, face, Words::english());
            let wearers_left = left(view, face);
            assert!(
                word_at(&sheet, "wearer's left") * wearers_left > 0.0,
                "{view:?} {face:?}"
            );
            assert!(
                word_at(&sheet, "wearer's right") * wearers_left < 0.0,
                "{view:?} {face:?}"
            );
            words_stand_clear(&sheet);
            let middle = sheet.origin.x + sheet.width.to_mm() / 2.0;
            assert!(middle.abs() < 1e-9, "the centre line is {middle} mm off");
            // Nothing is drawn behind the words.
            let sides = sheet
                .layers
                .iter()
                .find(|layer| layer.name == "sides")
                .unwrap();
            for mark in &sides.marks {
                let Shape::Text(text) = &mark.shape else {
                    panic!("words")
                };
                let words = text_box(text);
                let others = sheet.layers.iter().flat_map(|layer| &layer.marks);
                let points = others.filter_map(|mark| match &mark.shape {
                    Shape::Area { path, .. } | Shape::Line { path, .. } => Some(path),
                    Shape::Text(_) => None,
                });
                let ends = points
                    .flat_map(|path| path.elements())
                    .filter_map(|e| e.end_point());
                let level = ends.filter(|p| p.y > words.y0 - 5.0 && p.y < words.y1 + 5.0);
                for p in level {
                    assert!(
                        p.x < words.x0 - 2.0 || p.x > words.x1 + 2.0,
                        "{}: something lies on \"{}\"",
                        sheet.title,
                        text.words
                    );
                }
            }
        }
    }
}

#[test]
fn a_small_picture_has_no_words_beside_it() {
    let garment = sewn(32, 32);
    let (told, bare) = (
        garment_view(&garment, View::Front, Face::Outside, Words::english()),
        garment_picture(&garment, View::Front, Face::Outside, Words::english()),
    );
    assert!(
        texts(&bare)
            .iter()
            .all(|text| !text.words.contains("wearer"))
    );
    assert!(bare.width < told.width);
    assert_eq!(bare.height, told.height);
}
