use draft::{ClothUse, PieceId};
use geometry::{Path, Point};
use sewing::{On, RowEnd, RowYarn, StitchRow};
use style::SeamId;
use trade::{Colour, Length, StitchDensity, StitchType};

use super::{ferryman, seen, window};
use crate::laying::{cloth_look, holes};
use crate::picture::Picture;
use crate::place::place;
use crate::scene::Scene;
use crate::sewing_yarn::{SewingYarn, Strand};
use crate::wear::Wear;

const OCHRE: Colour = Colour::rgb(0xc0, 0x81, 0x3a);

fn row(from: Point, to: Point) -> StitchRow {
    let yarn = |key: &str| RowYarn {
        key: key.to_owned(),
        colour: OCHRE,
        diameter: Length::mm(0.393),
    };
    StitchRow {
        seam: SeamId::Decoration,
        number: 1,
        piece: PieceId::Back,
        on: On::Both,
        path: Path::line(from, to),
        stitch: StitchType::S301,
        density: StitchDensity::per_inch(8.0),
        needle: yarn("a"),
        under: yarn("b"),
        begins: RowEnd::Cut,
        ends: RowEnd::Cut,
        shows_outside: true,
        shows_inside: true,
    }
}

/// Cloth with one row of tex 105 on it.
fn sewn(row: &StitchRow) -> Scene {
    let mut scene = Scene::plain(cloth_look(&ferryman(), ClothUse::Shell), false, [0.0, 1.0]);
    scene
        .yarns
        .push(crate::calibrated::calibrated_yarn(SewingYarn::of(
            OCHRE,
            row.needle.diameter,
        )));
    let holes = holes(row);
    scene.strands.extend(holes.windows(2).map(|pair| Strand {
        from: place(pair[0]),
        to: place(pair[1]),
        yarn: 0,
        level: 1,
        bow: 0.0,
        sink: 1.5,
        rest: 0.2,
        pulls: true,
    }));
    scene
}

/// Whether a pixel is of the ochre yarn: redder than blue, as no part of indigo cloth is.
fn of_yarn(picture: &Picture, x: u32, y: u32) -> bool {
    let [r, _, b] = picture.pixel(x, y);
    r > b * 1.25
}

/// Floats seen along a row against what the row counts of itself (`StitchRow::stitches`, holes from end to end).
#[test]
fn as_many_stitches_are_seen_as_the_row_counts() {
    for (end, step) in [
        (Point::new(60.0, 0.0), 0.06),
        (Point::new(55.0, 20.0), 0.05),
        (Point::new(40.0, 1.0), 0.04),
    ] {
        let row = row(Point::ORIGIN, end);
        let pixels = (64.0 / step) as u32;
        let picture = seen(
            &sewn(&row),
            &window(30.0, 10.0, step, pixels, pixels / 2),
            Wear::RAW,
        );
        // Along the row, how often yarn begins.
        let long = end.to_vec2().hypot();
        let mut run = 0;
        let mut floats = 0;
        for k in -20..(long / step) as i32 + 20 {
            let p = Point::ORIGIN.lerp(end, f64::from(k) * step / long);
            let x = ((p.x - 30.0) / step + f64::from(pixels) / 2.0) as u32;
            let y = ((10.0 - p.y) / step + f64::from(pixels / 2) / 2.0) as u32;
            // Somewhere across the yarn: between its plies it is dark, and in its holes all across.
            let lit = |y: u32| of_yarn(&picture, x, y) && picture.grey(x, y) > 60.0;
            let near = (y - 2..=y + 2).any(lit);
            // What is shorter than a millimetre is no float.
            floats += u32::from(!near && f64::from(run) * step > 1.0);
            run = if near { run + 1 } else { 0 };
        }
        assert_eq!(floats as usize, row.stitches() - 1, "{end:?}");
    }
}

/// 0.0384 √105 = 0.393 mm (`trade::yarn`), in pixels.
#[test]
fn the_yarn_is_as_wide_as_its_diameter() {
    for step in [0.02, 0.03, 0.05] {
        let row = row(Point::new(0.0, 0.0), Point::new(9.6, 0.0));
        let pixels = (9.0 / step) as u32;
        let picture = seen(
            &sewn(&row),
            &window(4.8, 0.0, step, pixels, pixels / 3),
            Wear::RAW,
        );
        // In the middle of floats, where the plies lie beside one another: nine columns of ten are no wider.
        let mut widths: Vec<u32> = (0..pixels)
            .map(|x| (0..pixels / 3).filter(|y| of_yarn(&picture, x, *y)).count() as u32)
            .filter(|w| *w > 0)
            .collect();
        widths.sort_unstable();
        let wide = widths[widths.len() * 9 / 10];
        assert!(
            (f64::from(wide) - 0.393 / step).abs() <= 1.0,
            "{step}: {wide} pixels for {}",
            0.393 / step
        );
    }
}
