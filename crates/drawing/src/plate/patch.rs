//! The patch on the band: size, place, letters, leather and stitching.

use draft::{ClothUse, PieceId};
use geometry::{Affine, Path, Point, Vec2};
use sewing::{Face, FixingKind, Garment};
use style::{Letters, Patch, SeamId, SetAfter, Tanning};
use words::{Said, Words, key, say};

use super::figure::{Figure, Outline};
use super::flat_goods::{Standing, corners, flat_of, lay};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_rows};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::set_back;
use super::waistband::Measures;
use super::words::{amount, capitalised, system};
use crate::palette::QUIET;

/// Cloth shown round the patch.
const ROUND_MM: f64 = 4.0;

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let patch = garment.doc.patch.as_ref()?;
    let m = Measures::of(garment)?;
    let fixing = garment
        .fixings
        .iter()
        .find(|f| matches!(f.kind, FixingKind::Patch(..)))?;
    let (wide, tall, letters) = flat_of(fixing)?;
    let c = corners(fixing, Affine::IDENTITY)?;
    let p = Point::new;
    let (title, state) = if garment.is_set_after_wash(SetAfter::Patch) {
        (
            key::DRAWN_FIGURE_ON_THE_WASHED_BAND,
            key::DRAWN_MEASURED_WASHED,
        )
    } else {
        (
            key::DRAWN_FIGURE_OUTSIDE_ON_THE_BAND,
            key::DRAWN_MEASURED_AS_SEWN,
        )
    };
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (Face::Outside, title),
        Affine::IDENTITY,
        false,
    );
    let low = c[0].y.min(0.0) - ROUND_MM;
    figure.window(&[
        p(m.centre - ROUND_MM, low),
        p(c[1].x + ROUND_MM, c[2].y.max(m.height) + ROUND_MM),
    ]);
    let quiet = set_back(figure.tone(ClothUse::Shell));
    let rect =
        |y0: f64, y1: f64| [(0.0, y0), (m.end, y0), (m.end, y1), (0.0, y1)].map(|(x, y)| p(x, y));
    figure.area("piece:yoke", &rect(low - 9.0, 0.0), quiet, Outline::Light);
    figure.area("piece:band", &rect(0.0, m.height), quiet, Outline::Light);
    let centre = p(m.centre, 0.0);
    figure.edge("seam:seat", &Path::line(p(m.centre, low), centre), false);
    figure.fold("piece:band", &Path::line(centre, p(m.centre, m.height)));
    let standing = match patch.letters {
        Letters::Pressed => Standing::Pressed,
        Letters::Raised => Standing::Raised,
        Letters::Printed => Standing::Printed,
    };
    lay(&mut figure, fixing, Affine::IDENTITY, standing, true);
    let rows = figure.rows(PieceId::Band, Affine::IDENTITY, |r| {
        r.seam == SeamId::PatchSet
    });
    note_rows(
        &mut figure,
        &rows,
        Affine::IDENTITY,
        Some(MeasuredFrom::ItsEdge),
    );
    // Under the patch the band seam goes on.
    figure.below("seam:band", &Path::line(p(c[0].x, 0.0), p(c[1].x, 0.0)));
    figure.note(
        leather(garment, words, patch),
        &[
            c[3].lerp(c[1], 0.2),
            c[0].lerp(c[1], 0.12) + Vec2::new(0.0, 6.0),
        ],
    );
    figure.note(
        lettered(words, patch, letters),
        &[fixing.at, fixing.at + Vec2::new(0.0, -wide.to_mm() * 0.1)],
    );
    figure.dimension(Side::Above, p(m.centre, m.height), c[3], None);
    figure.dimension(Side::Below, c[0], c[1], None);
    figure.dimension(Side::Right, c[1], c[2], None);
    figure.dimension(Side::Left, p(c[3].x, m.height), c[3], None);
    figure.dimension(Side::Left, p(c[0].x, 0.0), c[0], None);
    if let Some(row) = rows.first().and_then(|k| garment.rows.get(*k)) {
        let low = row.path.bounds();
        figure.dimension(Side::Below, c[0], p(low.x0, c[0].y), None);
    }
    figure.point_at(p(m.centre, low + 4.0), key::DRAWN_CENTRE_BACK);
    figure.name(
        key::DRAWN_WAISTBAND,
        &[
            p(m.centre + 14.0, m.height * 0.55),
            p(m.centre + 14.0, m.height * 0.3),
        ],
        QUIET,
    );
    figure.name(
        key::DRAWN_YOKE,
        &[p(m.centre + 14.0, low * 0.6), p(m.centre + 14.0, low * 0.8)],
        QUIET,
    );
    let units = system(&garment.collection);
    let (height, away) = (amount(tall, units), amount(patch.from_centre, units));
    let width = amount(wide, units);
    let caption: Said = if c[0].y < -0.05 {
        say::DrawnPatchHangs {
            away,
            height,
            state,
            width,
        }
        .into()
    } else {
        say::DrawnPatchCaption {
            away,
            height,
            state,
            width,
        }
        .into()
    };
    Some(Draft {
        title: words.say(key::DRAWN_PATCH_TITLE),
        caption: words.say(caption),
        figures: vec![figure],
    })
}

fn leather(garment: &Garment, words: &Words, patch: &Patch) -> String {
    let Some(trim) = garment.collection.trims.get(&patch.trim) else {
        return capitalised(&patch.trim);
    };
    let mut told = trim.name.clone();
    if !trim.material.is_empty() {
        told = words.say(say::DrawnOfMaterial {
            material: &trim.material,
            name: told,
        });
    }
    if let Some(thick) = trim.thickness {
        told = words.say(say::DrawnThick {
            leather: told,
            thickness: amount(thick, system(&garment.collection)),
        });
    }
    let tanned = match trim.tanning {
        Some(Tanning::Vegetable) => key::DRAWN_TANNED_VEGETABLE,
        Some(Tanning::Chrome) => key::DRAWN_TANNED_CHROME,
        Some(Tanning::ChromeFree) => key::DRAWN_TANNED_CHROME_FREE,
        None => return told,
    };
    words.say(say::DrawnTanned {
        leather: told,
        tanned,
    })
}

fn lettered(words: &Words, patch: &Patch, letters: &str) -> String {
    let made = match patch.letters {
        Letters::Pressed => key::DRAWN_LETTERS_PRESSED,
        Letters::Raised => key::DRAWN_LETTERS_RAISED,
        Letters::Printed => key::DRAWN_LETTERS_PRINTED,
    };
    let mut told = words.named(made).to_owned();
    if !letters.is_empty() {
        told = words.say(say::DrawnLetters {
            letters,
            made: told,
        });
    }
    if patch.art.is_some() {
        told = words.drawn_lines_of_the_style(told);
    }
    capitalised(&told)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::plate::{PlateId, fitted};
    use crate::samples::{sewn, texts};

    #[test]
    fn size_place_leather_and_every_stitch() {
        let mut garment = sewn(32, 32);
        let plate = fitted(&garment, Words::english(), PlateId::Patch, draw).unwrap();
        let all: Vec<&str> = texts(&plate.sheet)
            .iter()
            .map(|t| t.words.as_str())
            .collect();
        // 75 by 30 mm, 35 mm from centre back, midway up a band of 38 mm.
        for said in ["7.5 cm", "3 cm", "3.5 cm", "4 mm"] {
            assert!(all.contains(&said), "{said} not in {all:?}");
        }
        assert!(all.iter().any(|w| w.contains("vegetable tanned")));
        let [drawn] = plate.stitches.as_slice() else {
            panic!("one row: {:?}", plate.stitches)
        };
        // Round a rectangle of 69 by 24 mm, 7 stitches an inch.
        let pitches: f64 = 2.0 * (69.0 + 24.0) / (25.4 / 7.0);
        assert!(drawn.whole);
        assert_eq!(drawn.drawn, pitches.floor() as usize + 1);
        garment.doc.patch = None;
        assert!(fitted(&garment, Words::english(), PlateId::Patch, draw).is_none());
    }
}
