//! Sections as data: widths are the allowances, bands lie on one another without running into one
//! another, and every row goes through the layers it should.

#![allow(clippy::unwrap_used)]

use std::path::Path;

use drawing::{RowOf, Section, seam_section, seam_section_thumbnail, section_of, svg};
use geometry::{Point, contains, is_simple};
use sewing::{Fell, Garment, allowances};
use style::{Construction, Seam, Size};
use trade::{Length, StitchType};

fn ferryman() -> Garment {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../style/demo/saltmarsh")
        .join(style::demo::STYLE);
    let loaded = style::load(&path).unwrap();
    sewing::make(&loaded.style, &loaded.collection, Size::new(32, 32))
}

fn seam(garment: &Garment, name: &str) -> Seam {
    garment
        .seams
        .iter()
        .find(|s| s.name == name)
        .cloned()
        .unwrap()
}

fn sewn_as(
    garment: &Garment,
    name: &str,
    construction: Construction,
    rows: &[(StitchType, f64)],
) -> Seam {
    let mut seam = seam(garment, name);
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
    use Construction::{Overlocked, PressedOpen, SafetyStitched};
    use StitchType::{S401, S504, S516};
    let as_is = |name: &str, layers: &[usize]| (seam(garment, name), layers.to_vec());
    let other = |construction, stitch| {
        (
            sewn_as(garment, "inseam", construction, &[(stitch, 0.0)]),
            vec![2],
        )
    };
    vec![
        as_is("outseam", &[2]),
        other(PressedOpen, S401),
        as_is("inseam", &[4, 4]),
        as_is("seat", &[4, 4]),
        as_is("yoke", &[4, 4]),
        as_is("front_rise", &[3, 3]),
        other(SafetyStitched, S516),
        other(Overlocked, S504),
        as_is("bag_close", &[2]),
        as_is("band", &[5, 2]),
        as_is("hem", &[3]),
        as_is("coin_hem", &[3, 3]),
        as_is("mouth", &[4, 4]),
        // Beyond the allowances: front and facing alone.
        as_is("fly", &[2, 2]),
        as_is("coin_set", &[3, 3]),
        as_is("facing_set", &[3]),
        as_is("loop_edge", &[2, 2]),
        as_is("decoration", &[1]),
    ]
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
        assert_eq!(found, wanted, "{}", section.title);
    }
}

/// What a construction does of itself: the rise is joined and overedged before it is sewn down.
#[test]
fn rows_a_construction_has_of_itself() {
    let garment = ferryman();
    let kinds = |name: &str| {
        let section = section_of(&garment, &seam(&garment, name), 1.0).unwrap();
        let mut counts = (0, 0);
        for row in &section.rows {
            match row.row {
                RowOf::Numbered(_) => continue,
                RowOf::Joining => counts.0 += 1,
                RowOf::Overedge => counts.1 += 1,
            }
            // The edge of the fly facing is wrapped alone.
            let layers = if name == "fly" && row.row == RowOf::Overedge {
                1..=2
            } else {
                2..=2
            };
            assert!(
                layers.contains(&section.plies_at(row)),
                "{name}: {:?}",
                row.row
            );
        }
        counts
    };
    assert_eq!(kinds("front_rise"), (1, 1));
    assert_eq!(kinds("mouth"), (1, 0));
    assert_eq!(kinds("fly"), (1, 1));
    assert_eq!(kinds("inseam"), (0, 0));
    assert_eq!(kinds("outseam"), (0, 0));
    // A safety stitch joins and wraps in one row.
    assert_eq!(kinds("bag_close"), (0, 0));
}

#[test]
fn the_cloth_drawn_beyond_the_seam_line_is_the_allowance() {
    let garment = ferryman();
    let hem_depth = garment.pattern.spec.hem_depth;
    for (seam, _) in examples(&garment) {
        let section = section_of(&garment, &seam, 1.0).unwrap();
        let both = allowances(&seam, hem_depth);
        let hem = matches!(
            seam.construction,
            Construction::RolledHem | Construction::TurnedHem
        );
        for (ply, stated) in section.plies.iter().zip([both.over, both.under]) {
            let Some(drawn) = ply.drawn_allowance() else {
                continue;
            };
            let short = (stated - drawn).to_mm();
            if hem {
                // The cut end lies in the first fold; the turns take up the rest.
                assert!((0.0..5.0).contains(&short), "{}: {short}", section.title);
            } else {
                assert!(
                    short.abs() < 0.05,
                    "{}, {}: {short}",
                    section.title,
                    ply.name
                );
            }
        }
    }
}

#[test]
fn both_edges_of_a_fell_are_the_lap_and_two_turns() {
    let garment = ferryman();
    for name in ["inseam", "seat", "yoke"] {
        let seam = seam(&garment, name);
        let section = section_of(&garment, &seam, 1.0).unwrap();
        let drawn = |k: usize| section.plies[k].drawn_allowance().unwrap().to_mm();
        let fell = Fell::of(&seam);
        let wanted = (fell.width + fell.turn * 2.0).to_mm();
        assert!((drawn(0) + drawn(1) - wanted).abs() < 0.05, "{name}");
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
            section.title
        );
        for (j, other) in outlines.iter().enumerate().filter(|(j, _)| *j != k) {
            for p in dense(one) {
                let deep = depth(other, p);
                assert!(
                    deep < 0.02,
                    "{}: ply {k} in ply {j} at {p:?} by {deep}",
                    section.title
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

#[test]
fn the_cloth_is_as_thick_as_it_is() {
    let garment = ferryman();
    let thick = |name: &str, thickened: f64| {
        let section = section_of(&garment, &seam(&garment, name), thickened).unwrap();
        section
            .plies
            .iter()
            .map(|p| p.thickness.to_mm())
            .collect::<Vec<_>>()
    };
    assert_eq!(thick("inseam", 1.0), [0.82, 0.82]);
    assert_eq!(thick("mouth", 1.0), [0.82, 0.45]);
    assert_eq!(thick("bag_close", 1.0), [0.45, 0.45]);
    assert_eq!(thick("inseam", 2.0), [1.64, 1.64]);
    let plate = seam_section(&garment, &seam(&garment, "inseam")).unwrap();
    assert!(svg(&plate).contains("cloth at its true thickness"));
}

#[test]
fn another_construction_is_another_section() {
    let garment = ferryman();
    let felled = seam(&garment, "inseam");
    let mut mock = felled.clone();
    mock.construction = Construction::MockFelled;
    let drawn = |seam: &Seam| svg(&seam_section_thumbnail(&garment, seam).unwrap());
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
            for name in ["outseam", "band", "fly", "bag_close", "hem"] {
                let rows = odd.map(|mm| (StitchType::S516, mm));
                let seam = sewn_as(&garment, name, *construction, &rows);
                for sheet in [
                    seam_section(&garment, &seam).unwrap(),
                    seam_section_thumbnail(&garment, &seam).unwrap(),
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
