//! What a plotter is given, and a lay, read back.

use geometry::{Point, area, polyline_length};
use patterns::{dxf, hpgl};
use trade::Length;

use crate::common::{ferryman, keep};

/// The lines a plotter draws with each pen, in millimetres.
fn plotted(text: &str) -> Vec<(u32, Vec<Point>)> {
    let (mut pen, mut out): (u32, Vec<(u32, Vec<Point>)>) = (0, Vec::new());
    for command in text.split(';').map(str::trim).filter(|c| !c.is_empty()) {
        let (word, numbers) = command.split_at(2);
        let numbers: Vec<f64> = numbers
            .split(',')
            .filter(|n| !n.is_empty())
            .map(|n| n.parse().unwrap())
            .collect();
        let places = numbers.chunks_exact(2).map(|c| Point::new(c[0], c[1]));
        let places = places.map(|p| (p.to_vec2() / hpgl::STEPS).to_point());
        match word {
            "IN" => {}
            "SP" => pen = numbers[0] as u32,
            "PU" => out.extend(places.map(|p| (pen, vec![p]))),
            "PD" => out.last_mut().unwrap().1.extend(places),
            other => panic!("{other}"),
        }
    }
    out.retain(|(_, line)| line.len() > 1);
    out
}

#[test]
fn the_plotter_cuts_the_cut_lines_and_draws_the_rest() {
    let pattern = ferryman().of_size("32x32");
    let width = Length::cm(90.0);
    let text = hpgl::write(&pattern, width).unwrap();
    keep("ferryman.hpgl", &text);
    let lines = plotted(&text);
    for (_, line) in &lines {
        assert!(
            line.iter()
                .all(|p| p.y >= 0.0 && p.y <= width.to_mm() && p.x >= 0.0)
        );
    }
    let closed: Vec<&Vec<Point>> = lines
        .iter()
        .filter(|(pen, line)| *pen == 2 && line.first() == line.last())
        .map(|(_, line)| line)
        .collect();
    assert_eq!(closed.len(), pattern.pieces.len());
    for (line, piece) in closed.iter().zip(&pattern.pieces) {
        let mut round = piece.cut.clone();
        round.push(round[0]);
        let off = (polyline_length(line) - polyline_length(&round)).to_mm();
        assert!(off.abs() < 0.1, "{}: {off}", piece.title());
        // A piece that were mirrored would run the other way round.
        assert!(
            (area(line).to_mm2() - piece.area().to_mm2()).abs() < 60.0,
            "{}",
            piece.title()
        );
    }
    let sewn = |pen| lines.iter().filter(move |(p, _)| *p == pen).count();
    assert!(sewn(1) > pattern.pieces.iter().map(|p| p.sewn.len()).sum::<usize>());
}

#[test]
fn a_roll_that_is_too_narrow_is_refused_with_the_width_that_fits() {
    let why = hpgl::write(&ferryman(), Length::cm(30.0))
        .unwrap_err()
        .to_string();
    assert!(why.starts_with("Front 32x32 is "), "{why}");
    assert!(
        why.contains("30 cm wide; plot on a wider roll, at least "),
        "{why}"
    );
}

#[test]
fn a_lay_as_dxf_holds_every_piece_in_its_place() {
    let size = &crate::common::cut_sizes()[0];
    let cloth_name = size.pieces[0].cloth_name.as_str();
    let folder = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../style/demo/saltmarsh/styles/ferryman"
    );
    let loaded = style::load(folder.as_ref()).unwrap();
    let cloth = &loaded.collection.cloths[cloth_name];
    let spread = cutting::Spread::new(
        &[cutting::SizePairs {
            label: &size.size.to_string(),
            cut: size,
            pairs: 1,
        }],
        cloth_name,
        cloth,
        &cutting::SpreadRules::plain(cutting::Way::TwoWay, Length::ZERO),
    );
    let options = lay::Options {
        seed: 1,
        limits: lay::Limits {
            time: None,
            places: Some(2_000),
        },
        ..lay::Options::default()
    };
    let stop = std::sync::atomic::AtomicBool::new(false);
    let lay = lay::search(&spread.problem, &options, &stop, &mut |_| ()).unwrap();
    let text = dxf::write_lay(&spread, &lay, words::Words::english());
    keep("lay.dxf", &text);
    assert_eq!(text, dxf::write_lay(&spread, &lay, words::Words::english()));
    // Without blocks it is read as loose lines: the cloth, and all that lies on it.
    let read = dxf::read(text.as_bytes(), None).unwrap().pattern;
    let [cloth] = read.pieces.as_slice() else {
        panic!("{}", read.pieces.len());
    };
    assert_eq!(cloth.inner.len(), lay.placements.len());
    assert_eq!(cloth.texts.len() + 1, lay.placements.len());
    let used = lay.length.to_mm() * spread.problem.width.to_mm();
    assert!((cloth.area().to_mm2() - used).abs() < 1.0);
    let pieces: f64 = cloth
        .inner
        .iter()
        .map(|l| area(&l.line).to_mm2().abs())
        .sum();
    assert!((pieces / used - lay.efficiency.to_ratio()).abs() < 0.001);
}
