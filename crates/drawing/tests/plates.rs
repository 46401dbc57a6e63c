//! Whatever the numbers, plates are drawn without a panic, fit their page, and count what they draw.
#![allow(clippy::unwrap_used, missing_docs)]

use std::path::Path;

use drawing::{Plate, PlateId, Shape, plate, plates};
use geometry::bounds;
use sewing::{Garment, make};
use style::{Loaded, MeasureId, SeamId, SetAfter, Size};
use trade::{Length, StitchDensity};

/// What an A4 page leaves for a plate.
const PAGE_MM: (f64, f64) = (172.0, 226.0);

/// Lengths nothing should have, and some things might.
const WILD_MM: [f64; 7] = [0.0, -1.0, 1.0e-9, 1.0e7, -1.0e7, 3.0, 700.0];

fn ferryman() -> Loaded {
    let demo = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    style::load(&demo).unwrap()
}

fn sewn(loaded: &Loaded) -> Garment {
    make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

/// Lengths of the style that plates show, and a way to set the ones chosen.
fn set_lengths(loaded: &mut Loaded, chosen: impl Fn(usize) -> bool, value: Length) {
    let style = &mut loaded.style;
    let pockets = &mut style.pockets;
    let mut lengths = vec![
        &mut pockets.coin.below_band,
        &mut pockets.coin.from_side,
        &mut pockets.coin.lower_narrowing,
        &mut pockets.coin.drop,
        &mut pockets.bag.depth,
        &mut pockets.bag.width,
        &mut pockets.bag.facing,
        &mut pockets.back.left.foot_width,
        &mut pockets.back.left.side_length,
        &mut pockets.back.right.outer_drop,
        &mut pockets.back.left.crest,
        &mut style.loops.belt,
        &mut style.bartacks.length,
        &mut style.bartacks.width,
    ];
    if let Some(extra) = &mut pockets.extra {
        lengths.extend([&mut extra.width, &mut extra.depth, &mut extra.from_centre]);
    }
    if let Some(patch) = &mut style.patch {
        lengths.push(&mut patch.from_centre);
    }
    for (k, length) in lengths.into_iter().enumerate() {
        if chosen(k) {
            *length = value;
        }
    }
}

fn sound(plate: &Plate, garment: &Garment) {
    let later = plate.id == PlateId::Patch && garment.is_set_after_wash(SetAfter::Patch);
    let sewn = garment.as_sewn();
    let garment = if later { garment } else { &sewn };
    let (wide, tall) = (plate.sheet.width.to_mm(), plate.sheet.height.to_mm());
    assert!(
        wide > 0.0 && wide <= PAGE_MM.0 + 1e-9,
        "{}: {wide}",
        plate.id.code()
    );
    assert!(
        tall > 0.0 && tall <= PAGE_MM.1 + 1e-9,
        "{}: {tall}",
        plate.id.code()
    );
    for drawn in &plate.stitches {
        let all = garment.rows[drawn.row].stitches();
        assert_eq!(
            drawn.whole,
            drawn.drawn == all,
            "{}: {drawn:?}",
            plate.id.code()
        );
    }
    for layer in &plate.sheet.layers {
        for mark in &layer.marks {
            let sound = match &mark.shape {
                Shape::Area { path, .. } | Shape::Line { path, .. } => {
                    let b = bounds(path);
                    [b.x0, b.x1, b.y0, b.y1].iter().all(|v| v.is_finite())
                }
                Shape::Text(text) => text.at.is_finite(),
            };
            assert!(sound, "{}: {} {mark:?}", plate.id.code(), layer.name);
        }
    }
}

#[test]
fn any_length_gives_sound_plates() {
    for value in WILD_MM {
        for turn in 0..2 {
            let mut loaded = ferryman();
            set_lengths(&mut loaded, |k| k % 2 == turn, Length::mm(value));
            let garment = sewn(&loaded);
            for plate in plates(&garment, words::Words::english()) {
                sound(&plate, &garment);
            }
        }
    }
}

#[test]
fn any_chart_gives_sound_plates() {
    let measures = [
        MeasureId::CoinWidth,
        MeasureId::MouthDepth,
        MeasureId::BackPocketWidth,
        MeasureId::BandHeight,
        MeasureId::LoopLength,
        MeasureId::HemDepth,
    ];
    for (k, measure) in measures.iter().enumerate() {
        for value in [WILD_MM[k], WILD_MM[(k + 3) % WILD_MM.len()]] {
            let mut loaded = ferryman();
            loaded.style.chart.get_mut(measure).unwrap().value = Length::mm(value);
            let garment = sewn(&loaded);
            for plate in plates(&garment, words::Words::english()) {
                sound(&plate, &garment);
            }
        }
    }
}

#[test]
fn any_row_gives_sound_plates() {
    for density in [0.0, f64::NAN, 0.01, 400.0] {
        for offset in [-5.0, 1.0e7] {
            let mut loaded = ferryman();
            for spec in loaded.style.seams.values_mut() {
                if let Some(row) = spec.rows.as_mut().and_then(|rows| rows.first_mut()) {
                    row.density = StitchDensity::per_cm(density);
                    row.offset = Length::mm(offset);
                }
            }
            let garment = sewn(&loaded);
            for plate in plates(&garment, words::Words::english()) {
                sound(&plate, &garment);
            }
        }
    }
}

#[test]
fn a_plate_alone_is_the_one_among_all() {
    let garment = sewn(&ferryman());
    let all = plates(&garment, words::Words::english());
    assert!(all.len() >= 8, "{}", all.len());
    let second = &all[1];
    assert_eq!(
        plate(&garment, words::Words::english(), second.id).as_ref(),
        Some(second)
    );
    assert_eq!(PlateId::of("no such plate"), None);
}

#[test]
fn edges_seams_and_stitches_are_told_apart_by_their_weight() {
    let garment = sewn(&ferryman());
    let coin = plate(&garment, words::Words::english(), PlateId::CoinPocket).unwrap();
    let width = |part: &str| {
        let marks = coin.sheet.layers.iter().flat_map(|l| &l.marks);
        let mut widths = marks
            .filter(|m| m.part.as_deref() == Some(part))
            .filter_map(|m| match &m.shape {
                Shape::Line { stroke, .. } => Some(stroke.width.to_mm()),
                Shape::Area { stroke, .. } => stroke.map(|s| s.width.to_mm()),
                Shape::Text(_) => None,
            });
        widths.next().unwrap()
    };
    let (edge, seam) = (width("piece:coin_pocket"), width("seam:band"));
    let below = width("seam:coin_hem");
    // Printed at true size, a pen step apart: edge, seam, what lies below.
    assert!(edge >= seam * 1.3, "{edge} {seam}");
    assert!(seam >= below * 1.3, "{seam} {below}");
    // A stitch is as thick as its yarn at this scale, and in the yarn's colour.
    let row = garment
        .rows
        .iter()
        .find(|r| r.seam == SeamId::CoinHem)
        .unwrap();
    let yarn = row.needle.diameter.to_mm() * coin.scale.times();
    assert!((width("row:coin_hem:1") - yarn).abs() < 1e-9);
}
