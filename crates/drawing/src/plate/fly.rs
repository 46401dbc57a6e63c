//! The fly: the left front from outside, its facing with holes or zip from inside, and the shield behind it.

use draft::{ClothUse, EdgeId, PieceId, PointId};
use geometry::{Affine, Path, Point, Vec2};
use sewing::{Face, Fixing, FixingKind, Garment, On, placed};
use style::{Closing, MeasureId, SeamId};
use trade::{Colour, Length};
use words::{Words, key, say};

use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_fixings, note_rows};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::{set_back, tone};
use super::words::{amount, system};
use crate::palette::{HAIRLINE, INK, QUIET};
use crate::sheet::{Stroke, open};

/// Cloth shown round the fly: beyond its edge, above the band seam, below its foot, beyond the facing.
const BEFORE_MM: f64 = 5.0;
const ABOVE_MM: f64 = 13.0;
const BELOW_MM: f64 = 26.0;
const BEYOND_MM: f64 = 7.0;

/// The fly in the frame of its facing: the fly edge on the y axis, the band seam at y = 0.
struct Fly {
    /// From that frame to the left front.
    map: Affine,
    width: f64,
    length: f64,
    /// Where the topstitching leaves the straight, measured down from the band seam.
    shoulder: f64,
}

impl Fly {
    fn of(garment: &Garment) -> Option<Fly> {
        let pattern = &garment.pattern;
        let facing = pattern.piece(PieceId::FlyFacing)?;
        let (width, length) = (
            pattern.spec[MeasureId::FlyWidth].to_mm(),
            pattern.spec[MeasureId::FlyLength].to_mm(),
        );
        let sound = width.is_finite() && length.is_finite() && width > 1.0 && length > 1.0;
        sound.then_some(Fly {
            map: placed(pattern, PieceId::FlyFacing)?.map,
            width,
            length,
            shoulder: -facing.point(PointId::Shoulder)?.y,
        })
    }

    fn at(&self, x: f64, y: f64) -> Point {
        self.map * Point::new(x, y)
    }

    /// Where a line on the front is at a height below the band seam, in the fly's frame.
    fn across(&self, path: &Path, below: f64) -> Option<f64> {
        let here = path.transformed(self.map.inverse());
        here.crossings_at_y(-below).first().map(|p| p.x)
    }
}

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let fly = Fly::of(garment)?;
    let mut figures = vec![
        outside(garment, words, scale, &fly)?,
        inside(garment, words, scale, &fly)?,
    ];
    figures.extend(shield(garment, words, scale));
    let how = match garment.doc.fly.closing {
        Closing::Buttons => key::DRAWN_FLY_BUTTONS_UNDER,
        Closing::Zip => key::DRAWN_FLY_ZIP_UNDER,
    };
    Some(Draft {
        title: words.say(key::DRAWN_FLY_TITLE),
        caption: words.say(say::DrawnFlyCaption { closing: how }),
        figures,
    })
}

/// The left front, its topstitching and tacks.
fn outside<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    fly: &Fly,
) -> Option<Figure<'a>> {
    let title = (Face::Outside, key::DRAWN_FIGURE_WEARERS_LEFT_FRONT_OUTSIDE);
    let mut figure = Figure::new(garment, words, scale, title, fly.map.inverse(), false);
    figure.window(&[
        fly.at(-BEFORE_MM, ABOVE_MM),
        fly.at(fly.width + BEYOND_MM, -fly.length - BELOW_MM),
    ]);
    let shell = figure.tone(ClothUse::Shell);
    figure.piece(PieceId::Front, Affine::IDENTITY, shell, Outline::Heavy);
    band_above(&mut figure, fly);
    let rows = figure.rows(PieceId::Front, Affine::IDENTITY, |r| {
        r.shows_outside && r.on != On::Mirrored && matches!(r.seam, SeamId::Fly | SeamId::FrontRise)
    });
    let tacks = tacks(garment);
    for tack in &tacks {
        figure.fixing(tack, Affine::IDENTITY, false);
    }
    note_rows(
        &mut figure,
        &rows,
        Affine::IDENTITY,
        Some(MeasuredFrom::Edge),
    );
    note_fixings(&mut figure, &tacks, Affine::IDENTITY, |what| {
        say::DrawnFlyTacks { what }.into()
    });
    // Distances of the straight part of each row, from the fly edge.
    let level = fly.shoulder * 0.25;
    for row in garment
        .rows
        .iter()
        .filter(|r| r.seam == SeamId::Fly && r.piece == PieceId::Front)
    {
        if let Some(x) = fly.across(&row.path, level) {
            figure.dimension(Side::Above, fly.at(0.0, 0.0), fly.at(x, 0.0), None);
        }
    }
    figure.dimension(
        Side::Left,
        fly.at(0.0, 0.0),
        fly.at(0.0, -fly.length),
        Some(key::DRAWN_FLY),
    );
    let straight = fly.at(fly.width, 0.0);
    figure.dimension(
        Side::Right,
        straight,
        fly.at(fly.width, -fly.shoulder),
        Some(key::DRAWN_STRAIGHT),
    );
    figure.dimension(
        Side::Right,
        fly.at(fly.width, -fly.shoulder),
        fly.at(0.0, -fly.length),
        Some(key::DRAWN_CURVE),
    );
    let foot = fly.at(0.0, -fly.length);
    for tack in tacks
        .iter()
        .filter(|t| t.from == SeamId::Fly && (t.at - foot).hypot() > 1.0)
    {
        // Said by its number: with a name it would push the fly off the page.
        figure.dimension(Side::Left, tack.at, foot, None);
    }
    figure.point_at(foot, key::DRAWN_FOOT_OF_THE_FLY);
    Some(figure)
}

fn tacks(garment: &Garment) -> Vec<&Fixing> {
    let on_fly = |f: &&Fixing| {
        f.piece == PieceId::Front
            && f.on == On::AsDrawn
            && matches!(f.kind, FixingKind::Bartack(..))
            && matches!(f.from.seam(), Some(SeamId::Fly | SeamId::Inseam))
    };
    garment.fixings.iter().filter(on_fly).collect()
}

/// The band, set back: it goes on when the fly is done.
fn band_above(figure: &mut Figure<'_>, fly: &Fly) {
    let Some(waist) = figure
        .garment
        .pattern
        .piece(PieceId::Front)
        .and_then(|f| f.edge(EdgeId::Waist))
    else {
        return;
    };
    let up = fly.at(0.0, 1.0) - fly.at(0.0, 0.0);
    let quiet = set_back(tone(figure.garment, ClothUse::Shell, Face::Outside));
    let mut strip = waist.dense(Length::mm(1.0));
    let above: Vec<Point> = strip.iter().rev().map(|p| *p + up * 80.0).collect();
    strip.extend(above);
    figure.area("piece:band", &strip, quiet, Outline::Light);
    let places = [0.5, 0.35, 0.7].map(|s| fly.at(fly.width * s, ABOVE_MM * 0.55));
    figure.name(key::DRAWN_WAISTBAND, &places, QUIET);
}

/// The inside of the left front: facing, overlocked edge, and holes or zip.
fn inside<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
    fly: &Fly,
) -> Option<Figure<'a>> {
    let title = (Face::Inside, key::DRAWN_FIGURE_WEARERS_LEFT_FRONT_INSIDE);
    let mut figure = Figure::new(garment, words, scale, title, fly.map.inverse(), true);
    figure.window(&[
        fly.at(-BEFORE_MM, ABOVE_MM),
        fly.at(fly.width + BEYOND_MM, -fly.length - BELOW_MM),
    ]);
    let back = figure.tone(ClothUse::Shell);
    figure.piece(
        PieceId::Front,
        Affine::IDENTITY,
        set_back(back),
        Outline::Light,
    );
    let face = tone(garment, ClothUse::Shell, Face::Outside);
    figure.piece(PieceId::FlyFacing, fly.map, face, Outline::Heavy);
    band_above(&mut figure, fly);
    let mut rows = figure.rows(PieceId::Front, Affine::IDENTITY, |r| {
        r.shows_inside && r.on != On::Mirrored && r.seam == SeamId::Fly
    });
    note_rows(
        &mut figure,
        &rows,
        Affine::IDENTITY,
        Some(MeasuredFrom::Edge),
    );
    rows = figure.rows(PieceId::FlyFacing, fly.map, |r| r.shows_inside);
    note_rows(&mut figure, &rows, fly.map, None);
    let set: Vec<&Fixing> = garment
        .fixings
        .iter()
        .filter(|f| f.piece == PieceId::FlyFacing)
        .collect();
    for fixing in &set {
        match fixing.kind {
            FixingKind::Zip(length, width) => zip(&mut figure, fixing, fly, (length, width)),
            _ => figure.fixing(fixing, fly.map, false),
        }
    }
    let holes: Vec<&Fixing> = set
        .iter()
        .copied()
        .filter(|f| matches!(f.kind, FixingKind::Buttonhole(_)))
        .collect();
    note_fixings(&mut figure, &holes, fly.map, |what| {
        say::DrawnFlyHoles { what }.into()
    });
    chain(
        &mut figure,
        Side::Right,
        fly.map,
        &holes,
        Point::ORIGIN,
        -fly.length,
    );
    if let Some(FixingKind::Buttonhole(long)) = holes.first().map(|h| &h.kind)
        && let Some(hole) = holes.last()
    {
        let eye = hole.at + hole.along * (long.to_mm() / 2.0);
        let foot = hole.at - hole.along * (long.to_mm() / 2.0);
        figure.dimension(
            Side::Below,
            fly.map * Point::new(0.0, eye.y),
            fly.map * eye,
            None,
        );
        figure.dimension(Side::Below, fly.map * eye, fly.map * foot, None);
    }
    figure.dimension(
        Side::Above,
        fly.at(0.0, 0.0),
        fly.at(fly.width, 0.0),
        Some(key::DRAWN_FACING),
    );
    Some(figure)
}

/// Tapes, teeth and foot of a zip.
fn zip(figure: &mut Figure<'_>, fixing: &Fixing, fly: &Fly, (length, width): (Length, Length)) {
    figure.fixing(fixing, fly.map, false);
    let half = fixing.along * (length.to_mm() / 2.0);
    let (top, foot) = (fly.map * (fixing.at + half), fly.map * (fixing.at - half));
    let metal = Colour::rgb(0x8d, 0x86, 0x78);
    let teeth = Stroke::plain(metal, figure.on_paper(Length::mm(5.0)))
        .dashed(Length::mm(0.7), Length::mm(0.35));
    figure.stroke("fixing:zip", &open(&[top, foot]), teeth);
    figure.stroke(
        "fixing:zip",
        &open(&[top, foot]),
        Stroke::plain(INK, HAIRLINE),
    );
    let units = system(&figure.garment.collection);
    let trim = fixing
        .from
        .trim()
        .and_then(|key| figure.garment.collection.trims.get(key));
    let name = trim.map_or(fixing.from.code(), |t| t.name.as_str());
    let told = say::DrawnZipTapes {
        length: amount(length, units),
        name,
        width: amount(width, units),
    };
    figure.note(told, &[0.5, 0.35, 0.65].map(|s| top.lerp(foot, s)));
    figure.dimension(Side::Right, top, foot, Some(key::DRAWN_ZIP));
    figure.dimension(
        Side::Below,
        fly.at(0.0, fixing.at.y),
        fly.map * fixing.at,
        Some(key::DRAWN_TEETH),
    );
}

/// Distances from the band seam to the first thing, from one to the next, and to the foot.
fn chain(
    figure: &mut Figure<'_>,
    side: Side,
    map: Affine,
    things: &[&Fixing],
    from: Point,
    foot: f64,
) {
    let mut last = from;
    for thing in things {
        let here = Point::new(from.x, thing.at.y);
        figure.dimension(side, map * last, map * here, None);
        last = here;
    }
    if !things.is_empty() && last.y > foot {
        figure.dimension(side, map * last, map * Point::new(from.x, foot), None);
    }
}

/// The outer half of the folded shield, with the buttons.
fn shield<'a>(garment: &'a Garment, words: &'a Words, scale: PlateScale) -> Option<Figure<'a>> {
    let piece = garment.pattern.piece(PieceId::FlyShield)?;
    let left = piece.edge(EdgeId::Left)?;
    let (top, low) = (left.start(), left.end());
    let foot = piece.point(PointId::FoldFoot)?;
    let p = Point::new;
    let title = (Face::Outside, key::DRAWN_FIGURE_SHIELD_OUTER_HALF);
    let mut figure = Figure::new(garment, words, scale, title, Affine::IDENTITY, false);
    figure.window(&[p(top.x - 12.0, ABOVE_MM), p(5.0, foot.y - 6.0)]);
    let quiet = set_back(figure.tone(ClothUse::Shell));
    let shell = figure.tone(ClothUse::Shell);
    figure.area(
        "piece:front",
        &[
            p(top.x - 60.0, 0.0),
            p(top.x - 60.0, foot.y - 60.0),
            p(top.x, foot.y - 60.0),
            p(top.x, 0.0),
        ],
        quiet,
        Outline::Light,
    );
    figure.area(
        "piece:fly_shield",
        &[top, low, foot, p(0.0, 0.0)],
        shell,
        Outline::Heavy,
    );
    figure.area(
        "piece:band",
        &[
            p(top.x - 60.0, 0.0),
            p(0.0, 0.0),
            p(0.0, 80.0),
            p(top.x - 60.0, 80.0),
        ],
        quiet,
        Outline::Light,
    );
    let buttons: Vec<&Fixing> = garment
        .fixings
        .iter()
        .filter(|f| f.piece == PieceId::FlyShield)
        .collect();
    for button in &buttons {
        figure.fixing(button, Affine::IDENTITY, false);
    }
    note_fixings(&mut figure, &buttons, Affine::IDENTITY, |what| {
        say::DrawnFlyButtons { what }.into()
    });
    chain(
        &mut figure,
        Side::Right,
        Affine::IDENTITY,
        &buttons,
        p(0.0, 0.0),
        f64::INFINITY,
    );
    if let Some(button) = buttons.last() {
        figure.dimension(Side::Below, p(top.x, button.at.y), button.at, None);
    }
    figure.dimension(Side::Above, top, p(0.0, 0.0), None);
    figure.dimension(Side::Left, top, low, None);
    figure.dimension(Side::Left, top, foot, None);
    figure.point_at(p(0.0, foot.y * 0.8), key::DRAWN_FOLD);
    let under = Vec2::new(-7.0, foot.y * 0.9);
    figure.point_at(p(top.x, 0.0) + under, key::DRAWN_RIGHT_FRONT);
    Some(figure)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::plate::{PlateId, fitted};
    use crate::samples::{raw, texts};

    #[test]
    fn rows_and_buttons_stand_where_the_style_says() {
        let garment = raw(32, 32);
        let plate = fitted(&garment, Words::english(), PlateId::Fly, draw).unwrap();
        let all: Vec<&str> = texts(&plate.sheet)
            .iter()
            .map(|t| t.words.as_str())
            .collect();
        // Rows 38.4 and 32 mm from the edge; four buttons on 16.5 cm would stand at every fifth of it, 3.3 cm, but
        // the last hole keeps its bite above the curve.
        for said in ["3.84 cm", "3.2 cm", "fly 16.5 cm", "2.9 cm"] {
            assert!(all.contains(&said), "{said} not in {all:?}");
        }
        let gaps = all.iter().filter(|w| **w == "2.9 cm").count();
        assert_eq!(gaps, 4 + 4, "above and between holes, and between buttons");
        for drawn in plate.stitches.iter().filter(|d| d.seam == SeamId::Fly) {
            assert!(drawn.whole, "{drawn:?}");
            assert_eq!(drawn.drawn, garment.rows[drawn.row].stitches());
        }
    }
}
