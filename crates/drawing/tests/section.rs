//! Sections as data: widths are the allowances, bands lie on one another without running into one
//! another, and every row goes through the layers it should.

#![allow(clippy::unwrap_used)]

use std::path::Path;

use drawing::{RowOf, Section, seam_section, seam_section_thumbnail, section_of, svg};
use geometry::{Point, contains, is_simple};
use sewing::yarn::{Sewn, consumption};
use sewing::{Fell, Garment, allowances};
use style::known;
use style::{Construction, MeasureId, Seam, SeamId, Size};
use trade::{Length, StitchType};
use words::Words;

fn ferryman() -> Garment {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    let loaded = style::load(&path).unwrap();
    sewing::make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn seam(garment: &Garment, id: SeamId) -> Seam {
    garment.seams.iter().find(|s| s.id == id).cloned().unwrap()
}

fn sewn_as(
    garment: &Garment,
    id: SeamId,
    construction: Construction,
    rows: &[(StitchType, f64)],
) -> Seam {
    let mut seam = seam(garment, id);
    let like = seam.rows[0].clone();
    seam.construction = construction;
    seam.rows = rows
        .iter()
        .map(|(stitch, mm)| {
            let mut row = like.clone();
            row.stitch = *stitch;
            row.offset = Length::mm(*mm);
            row
        })
        .collect();
    seam
}

/// One seam of each construction, with how many layers its rows go through.
fn examples(garment: &Garment) -> Vec<(Seam, Vec<usize>)> {
    use Construction as C;
    use StitchType::{S301, S401, S504, S516};
    let as_is = |id: SeamId, layers: &[usize]| (seam(garment, id), layers.to_vec());
    let other = |name, construction, rows: &[(StitchType, f64)], layers: &[usize]| {
        (sewn_as(garment, name, construction, rows), layers.to_vec())
    };
    vec![
        as_is(SeamId::Outseam, &[2]),
        other(SeamId::Inseam, C::PressedOpen, &[(S401, 0.0)], &[2]),
        // Topstitched on both sides: what is beyond the seam line lies on the other ply. An overedge
        // wraps each edge alone.
        other(
            SeamId::Inseam,
            C::PressedOpen,
            &[(S401, 0.0), (S301, 6.0), (S301, -6.0), (S504, 0.0)],
            &[2, 2, 2, 1, 1],
        ),
        as_is(SeamId::Inseam, &[4, 4]),
        as_is(SeamId::Seat, &[4, 4]),
        other(
            SeamId::Seat,
            C::LapFelled,
            &[(S401, 1.6), (S401, 5.0), (S401, 8.0)],
            &[4, 4, 4],
        ),
        as_is(SeamId::Yoke, &[4, 4]),
        // Two rows seen outside, the one that joins, and the overedge around both edges.
        as_is(SeamId::FrontRise, &[3, 3, 2, 2]),
        other(SeamId::Inseam, C::SafetyStitched, &[(S516, 0.0)], &[2]),
        other(SeamId::Inseam, C::Overlocked, &[(S504, 0.0)], &[2]),
        // Both plies of the facing together.
        as_is(SeamId::FlyEdge, &[3]),
        as_is(SeamId::BagClose, &[2]),
        // The closing row goes beside the enclosed edges, the first row through them.
        other(SeamId::BagClose, C::FrenchSeam, &[(S301, 0.0)], &[2]),
        other(
            SeamId::BagClose,
            C::FrenchSeam,
            &[(S301, 0.0), (S301, -6.0)],
            &[2, 2],
        ),
        other(SeamId::BagClose, C::BoundEdge, &[(S301, 5.0)], &[6]),
        other(
            SeamId::BagClose,
            C::BoundEdge,
            &[(S301, 0.0), (S301, 5.0)],
            &[2, 6],
        ),
        other(SeamId::FlyEdge, C::BoundEdge, &[(S301, 5.0)], &[5]),
        other(SeamId::FlyEdge, C::CleanFinished, &[(S301, 2.0)], &[2]),
        as_is(SeamId::Band, &[5, 2]),
        other(
            SeamId::Band,
            C::BandTurned,
            &[(S301, 0.0), (S301, 2.0)],
            &[2, 5],
        ),
        as_is(SeamId::Hem, &[3]),
        other(SeamId::Hem, C::FoldedHem, &[(S401, 10.5)], &[3]),
        as_is(SeamId::CoinHem, &[3, 3]),
        as_is(SeamId::Mouth, &[4, 4]),
        // Beyond the allowances: the front, the facing and the two plies of the strip behind it.
        as_is(SeamId::Fly, &[4, 4]),
        as_is(SeamId::CoinSet, &[3, 3]),
        as_is(SeamId::FacingSet, &[3]),
        // The two plies of the band; leather does not count. A label is on the inner ply alone.
        as_is(SeamId::PatchSet, &[2]),
        as_is(SeamId::LabelSet, &[1]),
        as_is(SeamId::LoopEdge, &[2, 2]),
        as_is(SeamId::Decoration, &[1]),
    ]
}

/// Every construction every seam may have, with rows such as it would have.
fn allowed(garment: &Garment) -> Vec<Seam> {
    use Construction as C;
    use StitchType::{S301, S401, S504, S516};
    let mut found = Vec::new();
    for known in known::seams() {
        for construction in known.constructions {
            let own = seam(garment, known.id);
            let rows: Vec<(StitchType, f64)> = match (known.id, construction) {
                _ if own.construction == *construction => {
                    let rows = own.rows.iter();
                    rows.map(|r| (r.stitch, r.offset.to_mm())).collect()
                }
                (_, C::PressedOpen) => vec![(S401, 0.0)],
                (_, C::SafetyStitched) => vec![(S516, 0.0)],
                (_, C::Overlocked) => vec![(S504, 0.0)],
                (_, C::FrenchSeam) => vec![(S301, 0.0)],
                (_, C::BoundEdge) => vec![(S301, 5.0)],
                (_, C::CleanFinished) => vec![(S301, 2.0)],
                (_, C::BandTurned) => vec![(S301, 0.0), (S301, 2.0)],
                (_, C::RolledHem | C::FoldedHem) => vec![(S401, 10.5)],
                _ => vec![(S301, 1.6), (S301, 8.0)],
            };
            found.push(sewn_as(garment, known.id, *construction, &rows));
        }
    }
    found
}

/// What the section shows against what thread consumption counts, row by row.
#[test]
fn a_section_shows_the_plies_that_are_counted() {
    let garment = ferryman();
    let mut compared = 0;
    for seam in allowed(&garment) {
        let mut other = garment.clone();
        for own in other.seams.iter_mut().filter(|s| s.id == seam.id) {
            *own = seam.clone();
        }
        let section = section_of(&other, &seam, 1.0).unwrap();
        for item in consumption(&other).items {
            let Sewn::Row(number) = item.sewn else {
                continue;
            };
            if item.seam != seam.id {
                continue;
            }
            let row = section
                .rows
                .iter()
                .find(|r| r.row == RowOf::Numbered(number))
                .unwrap();
            let shown = section.plies_at(row);
            let counted = usize::from(item.plies.count());
            compared += 1;
            assert_eq!(
                shown,
                counted,
                "{} row {number}: {shown} shown, {counted} counted",
                section.seam.code()
            );
        }
    }
    assert!(compared > 50, "{compared}");
}

/// Of what is cut beyond the seam line, everything is drawn, in every construction of every seam.
/// A hem turned twice is the exception: see the next test.
#[test]
fn the_cloth_beyond_the_seam_line_is_the_allowance_everywhere() {
    let garment = ferryman();
    for seam in allowed(&garment) {
        if is_hem(&seam) {
            continue;
        }
        let section = section_of(&garment, &seam, 1.0).unwrap();
        let both = allowances(&seam, garment.pattern.spec[MeasureId::HemDepth]);
        let stated = [both.over, both.under];
        for ply in &section.plies {
            if let Some(drawn) = ply.drawn_allowance() {
                let nearest = stated
                    .iter()
                    .map(|s| (*s - drawn).to_mm().abs())
                    .fold(f64::MAX, f64::min);
                assert!(
                    nearest < 0.1,
                    "{}, {}: {}",
                    section.seam.code(),
                    ply.name.name(),
                    drawn.to_mm()
                );
            }
        }
    }
}

fn is_hem(seam: &Seam) -> bool {
    matches!(
        seam.construction,
        Construction::RolledHem | Construction::FoldedHem | Construction::TurnedHem
    )
}

/// By geometry: a ply of thickness t in a hem d deep, measured along the middle of the cloth from the
/// bottom of the first fold. The first fold is half a circle of radius t, the second one of radius t / 2,
/// and straight between them lies d - 5 t / 2, twice. So the hem holds at most 2 d - 5 t + π t.
#[test]
fn a_hem_turned_twice_holds_what_fits_between_its_folds() {
    let mut garment = ferryman();
    let t = 0.82;
    for depth in [10.0, 12.0, 20.0, 35.0] {
        garment
            .pattern
            .spec
            .set(MeasureId::HemDepth, Length::mm(depth));
        for construction in [Construction::RolledHem, Construction::FoldedHem] {
            let seam = sewn_as(
                &garment,
                SeamId::Hem,
                construction,
                &[(StitchType::S401, depth - 1.5)],
            );
            let section = section_of(&garment, &seam, 1.0).unwrap();
            let drawn = section.plies[0].drawn_allowance().unwrap().to_mm();
            let cut = allowances(&seam, Length::mm(depth)).over.to_mm();
            let most = 2.0 * depth - 5.0 * t + std::f64::consts::PI * t;
            // Air between the plies lets the cut end reach a little into the fold.
            assert!(
                (drawn - most.min(cut)).abs() < 0.25,
                "{construction}, {depth}: {drawn}"
            );
        }
    }
}

#[test]
fn every_construction_has_an_example() {
    let garment = ferryman();
    let examples = examples(&garment);
    for (word, construction) in Construction::WORDS {
        assert!(
            examples
                .iter()
                .any(|(s, _)| s.construction == *construction),
            "{word}"
        );
    }
}

#[test]
fn every_row_goes_through_the_layers_it_should() {
    let garment = ferryman();
    for (seam, wanted) in examples(&garment) {
        let section = section_of(&garment, &seam, 1.0).unwrap();
        let found: Vec<usize> = section
            .rows
            .iter()
            .filter(|r| matches!(r.row, RowOf::Numbered(_)))
            .map(|r| section.plies_at(r))
            .collect();
        assert_eq!(found, wanted, "{}", section.seam.code());
    }
}

#[test]
fn rows_a_construction_has_of_itself() {
    let garment = ferryman();
    let kinds = |id: SeamId| {
        let section = section_of(&garment, &seam(&garment, id), 1.0).unwrap();
        let mut counts = (0, 0);
        for row in &section.rows {
            match row.row {
                RowOf::Numbered(_) => continue,
                RowOf::Joining => counts.0 += 1,
                RowOf::Overedge => counts.1 += 1,
            }
            // The needle of the overedge may catch the front as well; both plies of the facing it does.
            let layers = section.plies_at(row);
            let most = if id == SeamId::Fly { 3 } else { 2 };
            assert!((2..=most).contains(&layers), "{}: {:?}", id.code(), row.row);
        }
        counts
    };
    // The style states both.
    assert_eq!(kinds(SeamId::FrontRise), (0, 0));
    assert_eq!(kinds(SeamId::Mouth), (1, 0));
    assert_eq!(kinds(SeamId::Fly), (1, 1));
    assert_eq!(kinds(SeamId::Inseam), (0, 0));
    assert_eq!(kinds(SeamId::Outseam), (0, 0));
    // A safety stitch joins and wraps in one row.
    assert_eq!(kinds(SeamId::BagClose), (0, 0));
}

#[test]
fn both_edges_of_a_fell_are_the_lap_and_two_turns() {
    let garment = ferryman();
    for id in [SeamId::Inseam, SeamId::Seat, SeamId::Yoke] {
        let seam = seam(&garment, id);
        let section = section_of(&garment, &seam, 1.0).unwrap();
        let drawn = |k: usize| section.plies[k].drawn_allowance().unwrap().to_mm();
        let fell = Fell::of(&seam);
        let wanted = (fell.width + fell.turn * 2.0).to_mm();
        assert!((drawn(0) + drawn(1) - wanted).abs() < 0.05, "{}", id.code());
        assert!((section.widths[0].to - fell.width).to_mm().abs() < 1e-9);
        // From outside of fold to outside of fold, the lap is as wide as stated.
        let edge = |k: usize, pick: fn(f64, f64) -> f64| {
            section.plies[k]
                .outline()
                .iter()
                .map(|p| p.x)
                .reduce(pick)
                .unwrap()
        };
        assert!(edge(0, f64::max).abs() < 0.01);
        assert!((edge(1, f64::min) + fell.width.to_mm()).abs() < 0.01);
    }
}

/// How far a point lies inside an outline; nought outside.
fn depth(outline: &[Point], p: Point) -> f64 {
    if !contains(outline, p) {
        return 0.0;
    }
    let mut least = f64::INFINITY;
    for (k, a) in outline.iter().enumerate() {
        let d = outline[(k + 1) % outline.len()] - *a;
        let share = ((p - *a).dot(d) / d.hypot2().max(1e-12)).clamp(0.0, 1.0);
        least = least.min((p - (*a + d * share)).hypot());
    }
    least
}

/// The outline with points every tenth of a millimetre.
fn dense(outline: &[Point]) -> Vec<Point> {
    let mut points = Vec::new();
    for (k, a) in outline.iter().enumerate() {
        let b = outline[(k + 1) % outline.len()];
        let steps = ((b - *a).hypot() / 0.1).ceil().max(1.0) as u32;
        points.extend((0..steps).map(|i| a.lerp(b, f64::from(i) / f64::from(steps))));
    }
    points
}

fn bands_lie_apart(section: &Section) {
    let outlines: Vec<Vec<Point>> = section.plies.iter().map(|p| p.outline()).collect();
    for (k, one) in outlines.iter().enumerate() {
        assert!(
            is_simple(one),
            "{}: ply {k} runs into itself",
            section.seam.code()
        );
        for (j, other) in outlines.iter().enumerate().filter(|(j, _)| *j != k) {
            for p in dense(one) {
                let deep = depth(other, p);
                assert!(
                    deep < 0.02,
                    "{}: ply {k} in ply {j} at {p:?} by {deep}",
                    section.seam.code()
                );
            }
        }
    }
}

#[test]
fn plies_never_run_into_one_another() {
    let garment = ferryman();
    for (seam, _) in examples(&garment) {
        for thickened in [0.5, 1.0, 1.5, 2.0] {
            bands_lie_apart(&section_of(&garment, &seam, thickened).unwrap());
        }
    }
}

/// A facing whose edge is bound or turned in is not overedged as well.
#[test]
fn the_fly_shows_how_its_facing_is_finished() {
    let mut garment = ferryman();
    let wrapped = |garment: &Garment| {
        let section = section_of(garment, &seam(garment, SeamId::Fly), 1.0).unwrap();
        bands_lie_apart(&section);
        let mut rows = section.rows.iter();
        rows.any(|row| row.row == RowOf::Overedge)
    };
    assert!(wrapped(&garment));
    for own in garment.seams.iter_mut().filter(|s| s.id == SeamId::FlyEdge) {
        own.construction = Construction::BoundEdge;
    }
    assert!(!wrapped(&garment));
}

#[test]
fn the_cloth_is_as_thick_as_it_is() {
    let garment = ferryman();
    let thick = |id: SeamId, thickened: f64| {
        let section = section_of(&garment, &seam(&garment, id), thickened).unwrap();
        section
            .plies
            .iter()
            .map(|p| p.thickness.to_mm())
            .collect::<Vec<_>>()
    };
    assert_eq!(thick(SeamId::Inseam, 1.0), [0.82, 0.82]);
    assert_eq!(thick(SeamId::Mouth, 1.0), [0.82, 0.45]);
    assert_eq!(thick(SeamId::BagClose, 1.0), [0.45, 0.45]);
    assert_eq!(thick(SeamId::Inseam, 2.0), [1.64, 1.64]);
    let plate = seam_section(&garment, &seam(&garment, SeamId::Inseam), Words::english()).unwrap();
    assert!(svg(&plate).contains("cloth at its true thickness"));
}

#[test]
fn another_construction_is_another_section() {
    let garment = ferryman();
    let felled = seam(&garment, SeamId::Inseam);
    let mut mock = felled.clone();
    mock.construction = Construction::MockFelled;
    let drawn =
        |seam: &Seam| svg(&seam_section_thumbnail(&garment, seam, Words::english()).unwrap());
    assert_ne!(drawn(&felled), drawn(&mock));
    assert_eq!(drawn(&felled), drawn(&felled.clone()));
}

#[test]
fn no_offset_and_no_cloth_breaks_a_section() {
    let mut garment = ferryman();
    let odd = [
        f64::NAN,
        f64::INFINITY,
        -1e9,
        -3.0,
        0.0,
        0.3,
        70.0,
        149.0,
        1e9,
    ];
    for thickness in [f64::NAN, -1.0, 0.0, 0.82, 50.0] {
        for cloth in garment.collection.cloths.values_mut() {
            cloth.thickness = Length::mm(thickness);
        }
        for (_, construction) in Construction::WORDS {
            for name in [
                SeamId::Outseam,
                SeamId::Band,
                SeamId::Fly,
                SeamId::BagClose,
                SeamId::Hem,
                SeamId::FlyEdge,
                SeamId::LabelSet,
            ] {
                let rows = odd.map(|mm| (StitchType::S516, mm));
                let seam = sewn_as(&garment, name, *construction, &rows);
                for sheet in [
                    seam_section(&garment, &seam, Words::english()).unwrap(),
                    seam_section_thumbnail(&garment, &seam, Words::english()).unwrap(),
                ] {
                    let text = svg(&sheet);
                    assert!(
                        !text.contains("NaN") && !text.contains("inf "),
                        "{}",
                        sheet.title
                    );
                    assert!(sheet.width > Length::ZERO && sheet.height > Length::ZERO);
                }
            }
        }
    }
}
