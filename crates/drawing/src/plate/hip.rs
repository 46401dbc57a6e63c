//! The hip pocket mouth from outside: its edge, its rows, what shows behind it.

use draft::{ClothUse, EdgeId, Piece, PieceId};
use geometry::tolerance::NO_SQUARE_MM2;
use geometry::{Affine, Path, Point, left_of, nearest_on};
use sewing::{Face, Fixing, FixingKind, Garment, On, placed};
use style::SeamId;
use trade::Length;
use words::{Words, key, say};

use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_fixings, note_places, note_rows};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::set_back;
use crate::palette::QUIET;

/// Cloth shown round the mouth, millimetres on the cloth.
const ROUND_MM: f64 = 10.0;
/// Beyond the mouth's end at the band, and below its end at the outseam.
const BEYOND_MM: f64 = 15.0;
const BELOW_MM: f64 = 22.0;

/// Chords of curves, on the cloth.
const STEP: Length = Length::mm(0.7);

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let pattern = &garment.pattern;
    let front = pattern.piece(PieceId::Front)?;
    let facing = pattern.piece(PieceId::PocketFacing)?;
    let (mouth, waist) = (front.edge(EdgeId::Mouth)?, front.edge(EdgeId::Waist)?);
    let (across, down) = (facing.edge(EdgeId::Waist)?, facing.edge(EdgeId::Side)?);
    // The side of the coin pocket is shown.
    let mirrored = pattern.spec.coin_on_right;
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (Face::Outside, key::DRAWN_FIGURE_OUTSIDE),
        Affine::IDENTITY,
        mirrored,
    );
    let all = mouth.bounds().union(across.bounds()).union(down.bounds());
    figure.window(&[
        Point::new(all.x0 - BEYOND_MM, all.y1 + ROUND_MM),
        Point::new(all.x1 + ROUND_MM, all.y0 - BELOW_MM),
    ]);
    let shell = figure.tone(ClothUse::Shell);
    let quiet = set_back(shell);
    figure.ground("piece:back", quiet);
    let mut seen = mouth.dense(STEP);
    seen.extend(across.reversed().dense(STEP));
    seen.extend(down.reversed().dense(STEP));
    figure.area("piece:pocket_facing", &seen, shell, Outline::None);
    if let Some(set) = placed(pattern, PieceId::CoinPocket) {
        figure.piece(PieceId::CoinPocket, set.map, shell, Outline::Light);
        let along = set.map * Point::new(0.0, -9.0);
        figure.name(
            key::DRAWN_COIN_POCKET,
            &[along, set.map * Point::new(0.0, -16.0)],
            QUIET,
        );
    }
    figure.piece(PieceId::Front, Affine::IDENTITY, quiet, Outline::None);
    let up = geometry::Vec2::new(0.0, BELOW_MM);
    for (part, path) in [
        ("seam:band", across.clone()),
        ("seam:band", waist.clone()),
        ("seam:outseam", down.clone()),
        ("seam:outseam", front.edge(EdgeId::Side)?.clone()),
        ("seam:outseam", Path::line(down.end(), down.end() + up)),
    ] {
        figure.edge(part, &path, false);
    }
    if let Some(inner) = facing.edge(EdgeId::Inner) {
        figure.below("seam:facing_set", inner);
    }
    figure.edge("seam:mouth", mouth, true);
    let rows = figure.rows(PieceId::Front, Affine::IDENTITY, |r| {
        r.seam == SeamId::Mouth
    });
    note_rows(
        &mut figure,
        &rows,
        Affine::IDENTITY,
        Some(MeasuredFrom::Edge),
    );
    fixed(
        &mut figure,
        (&[across, waist], &[down, front.edge(EdgeId::Side)?]),
    );
    names(&mut figure, front, (across, down));
    figure.dimension_along(Side::Above, across, Some(key::DRAWN_MOUTH));
    let outer = figure.side_towards(geometry::Vec2::new(1.0, 0.0));
    figure.dimension_along(outer, down, Some(key::DRAWN_MOUTH));
    curve(&mut figure, mouth, (across, down));
    Some(Draft {
        title: words.say(key::DRAWN_MOUTH_TITLE),
        caption: words.say(say::DrawnMouthCaption {
            side: if mirrored {
                key::DRAWN_RIGHT
            } else {
                key::DRAWN_LEFT
            },
        }),
        figures: vec![figure],
    })
}

fn on_this_side(garment: &Garment, fixing: &Fixing) -> bool {
    match fixing.on {
        On::Both => true,
        On::Mirrored => garment.pattern.spec.coin_on_right,
        On::AsDrawn => !garment.pattern.spec.coin_on_right,
    }
}

/// Rivets and tacks at the ends of the mouth.
fn fixed(figure: &mut Figure<'_>, (band, side): (&[&Path], &[&Path])) {
    let garment = figure.garment;
    let mouth = |f: &&Fixing| {
        f.piece == PieceId::Front
            && on_this_side(garment, f)
            && (f.from == SeamId::Mouth || matches!(f.kind, FixingKind::Rivet(_)))
    };
    let fixings: Vec<&Fixing> = garment.fixings.iter().filter(mouth).collect();
    for fixing in &fixings {
        figure.fixing(fixing, Affine::IDENTITY, false);
    }
    let (rivets, tacks): (Vec<&Fixing>, Vec<&Fixing>) = fixings
        .iter()
        .partition(|f| matches!(f.kind, FixingKind::Rivet(_)));
    for (group, riveted) in [(rivets, true), (tacks, false)] {
        let near = |paths: &[&Path]| {
            let each = paths
                .iter()
                .flat_map(|p| group.iter().map(|f| distance(p, f.at)));
            each.fold(f64::INFINITY, f64::min)
        };
        let (from_band, from_side) = (near(band), near(side));
        let far = |mm: f64| figure.amount_of(Length::mm(mm));
        let (band, side) = (far(from_band), far(from_side));
        note_fixings(figure, &group, Affine::IDENTITY, |what| {
            if riveted {
                say::DrawnMouthRivets { band, side, what }.into()
            } else {
                say::DrawnMouthTacks { band, side, what }.into()
            }
        });
    }
}

/// The shortest way from a point to a path.
fn distance(path: &Path, p: Point) -> f64 {
    let found = nearest_on(&path.dense(Length::mm(0.5)), p, NO_SQUARE_MM2);
    found.map_or(f64::INFINITY, |nearest| nearest.away.to_mm())
}

fn names(figure: &mut Figure<'_>, front: &Piece, (across, down): (&Path, &Path)) {
    let middle = across.point_at(across.length() * 0.5);
    let above = |by: f64| Point::new(middle.x, middle.y + by);
    figure.name(
        key::DRAWN_WAISTBAND,
        &[above(9.0), above(11.0), above(7.0)],
        QUIET,
    );
    figure.point_at(down.point_at(down.length() * 0.3), key::DRAWN_OUTSEAM);
    if let Some(mouth) = front.edge(EdgeId::Mouth) {
        let along = mouth.length() * 0.5;
        let square = left_of(mouth.direction_at(along));
        let inside = |by: f64| mouth.point_at(along) + square * by;
        figure.name(
            key::DRAWN_FRONT,
            &[inside(24.0), inside(30.0), inside(18.0)],
            QUIET,
        );
    }
}

/// Places of the mouth's curve: how far from the outseam and below the band seam.
fn curve(figure: &mut Figure<'_>, mouth: &Path, (across, down): (&Path, &Path)) {
    let places: Vec<(Point, Length, Length)> = [0.2, 0.4, 0.6, 0.8]
        .iter()
        .map(|share| {
            let p = mouth.point_at(mouth.length() * *share);
            (
                p,
                Length::mm(distance(down, p)),
                Length::mm(distance(across, p)),
            )
        })
        .collect();
    note_places(figure, &places, |unit, points| {
        say::DrawnMouthPoints { points, unit }.into()
    });
}
