//! The concealed extra pocket from inside: one ply on the bag's side towards the body, up to the lower edge of
//! the band.

use draft::{ClothUse, EdgeId, Piece, PieceId};
use geometry::{Affine, Path, Point, Vec2, left_of};
use sewing::{Face, Fixing, Garment, On, placed, turned_depth};
use style::{MeasureId, SeamId};
use trade::Length;
use words::{Words, key, say};

use super::back::opposite;
use super::figure::{Figure, Outline};
use super::measure::Side;
use super::notes::{MeasuredFrom, note_fixings, note_rows};
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::{set_back, tone};
use crate::palette::QUIET;

/// Three points that span less are taken to lie on a straight line.
const NO_AREA_MM2: f64 = 1e-6;

/// Cloth shown round the pocket, millimetres on the cloth.
const ROUND_MM: f64 = 7.0;

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let pattern = &garment.pattern;
    let spec = pattern.spec.extra_pocket?;
    let pocket = pattern.piece(PieceId::ExtraPocket)?;
    let front = pattern.piece(PieceId::Front)?;
    let set = placed(pattern, PieceId::ExtraPocket)?;
    let waist = whole_waist(garment, front)?;
    // Turned out, the left is seen as the mirror image of its frame.
    let mirrored = set.on != On::Mirrored;
    let word = if spec.on_left {
        key::DRAWN_LEFT
    } else {
        key::DRAWN_RIGHT
    };
    let title = say::DrawnBagFromInside { side: word };
    let frame = set.map.inverse();
    let mut figure = Figure::new(
        garment,
        words,
        scale,
        (Face::Inside, title),
        frame,
        mirrored,
    );
    let band = pattern.spec[MeasureId::BandHeight].to_mm();
    let bounds = pocket_bounds(pocket);
    let at = |x: f64, y: f64| set.map * Point::new(x, y);
    let ends = [waist.start(), waist.end()].map(|p| frame * p);
    let (from, to) = (ends[0].x.min(ends[1].x), ends[0].x.max(ends[1].x));
    let rise = ends[0].y.max(ends[1].y).max(0.0);
    figure.window(&[
        at(from - 2.2 * ROUND_MM, rise + band + ROUND_MM * 0.5),
        at(to + ROUND_MM, bounds.y0 - ROUND_MM),
    ]);
    let shell = figure.tone(ClothUse::Shell);
    figure.ground("piece:front", set_back(set_back(shell)));
    ground(&mut figure, garment);
    figure.piece(
        PieceId::ExtraPocket,
        set.map,
        tone(garment, pocket.cloth, Face::Outside),
        Outline::Heavy,
    );
    let up = set.map * Point::new(0.0, 1.0) - set.map * Point::ORIGIN;
    banded(&mut figure, &waist, band, up);
    let hem = garment.seams.iter().find(|s| s.id == SeamId::ExtraHem);
    let hem = hem.map(turned_depth);
    let half = spec.width.to_mm() / 2.0;
    if let Some(depth) = hem {
        let y = -depth.to_mm();
        figure.below("seam:extra_hem", &Path::line(at(-half, y), at(half, y)));
    }
    context(&mut figure, front);
    let rows = figure.rows(PieceId::ExtraPocket, set.map, |_| true);
    note_rows(&mut figure, &rows, set.map, Some(MeasuredFrom::Edge));
    let fixings: Vec<&Fixing> = garment
        .fixings
        .iter()
        .filter(|f| f.piece == PieceId::ExtraPocket)
        .collect();
    for fixing in &fixings {
        figure.fixing(fixing, set.map, false);
    }
    note_fixings(&mut figure, &fixings, set.map, |what| {
        say::DrawnFixings { what }.into()
    });
    dimensions(&mut figure, &waist, hem, (half, bounds.y0), set.map);
    corner(&mut figure, pocket, set.map);
    Some(Draft {
        title: words.say(key::DRAWN_EXTRA_TITLE),
        caption: words.say(say::DrawnExtraCaption {
            belt: figure_amount(garment, garment.doc.loops.belt),
            side: word,
        }),
        figures: vec![figure],
    })
}

fn figure_amount(garment: &Garment, length: Length) -> String {
    super::words::amount(length, super::words::system(&garment.collection))
}

fn pocket_bounds(pocket: &Piece) -> geometry::Rect {
    let all = pocket.edges.iter().map(|e| e.path.bounds());
    all.reduce(|a, b| a.union(b)).unwrap_or_default()
}

/// The band seam of the front from the centre to the outseam, over the mouth.
fn whole_waist(garment: &Garment, front: &Piece) -> Option<Path> {
    let facing = garment.pattern.piece(PieceId::PocketFacing)?;
    let over_mouth = facing.edge(EdgeId::Waist)?;
    Some(over_mouth.then(front.edge(EdgeId::Waist)?).reversed())
}

/// The bag, on which the pocket is set, and the facing on its other side.
fn ground(figure: &mut Figure<'_>, garment: &Garment) {
    let bag = garment.pattern.piece(PieceId::PocketBag);
    if let Some(bag) = bag {
        let mut points = Vec::new();
        for id in [EdgeId::FootUnder, EdgeId::SideUnder, EdgeId::WaistUnder] {
            if let Some(path) = bag.edge(id) {
                points.extend(path.dense(Length::mm(0.7)));
            }
        }
        let tone = figure.tone(ClothUse::Pocketing);
        figure.area("piece:pocket_bag", &points, tone, Outline::Light);
    }
    let facing = garment.pattern.piece(PieceId::PocketFacing);
    if let Some(inner) = facing.and_then(|facing| facing.edge(EdgeId::Inner)) {
        figure.below("piece:pocket_facing", inner);
    }
    let name_at = |piece: PieceId, edge: EdgeId, share: f64, inward: f64| {
        let path = garment.pattern.piece(piece)?.edge(edge)?;
        let along = path.length() * share;
        Some(path.point_at(along) + left_of(path.direction_at(along)) * inward)
    };
    let facing =
        [0.5, 0.6, 0.7, 0.4].map(|s| name_at(PieceId::PocketFacing, EdgeId::SideUnder, s, 18.0));
    let facing: Vec<Point> = facing.into_iter().flatten().collect();
    figure.name(key::DRAWN_FACING, &facing, QUIET);
    let bag =
        [0.3, 0.2, 0.4, 0.1].map(|s| name_at(PieceId::PocketBag, EdgeId::FootUnder, s, 160.0));
    let bag: Vec<Point> = bag.into_iter().flatten().collect();
    figure.name(key::DRAWN_BAG, &bag, QUIET);
}

/// The band over its seam, and the belt outside it in the middle of its height, as loops hold it.
fn banded(figure: &mut Figure<'_>, waist: &Path, band: f64, up: Vec2) {
    let shell = figure.tone(ClothUse::Shell);
    let seam = waist.dense(Length::mm(1.0));
    let strip = |from: f64, to: f64| -> Vec<Point> {
        let mut points: Vec<Point> = seam.iter().map(|p| *p + up * from).collect();
        points.extend(seam.iter().rev().map(|p| *p + up * to));
        points
    };
    figure.area("piece:band", &strip(0.0, band), shell, Outline::Light);
    let belt = figure.garment.doc.loops.belt.to_mm();
    let (low, high) = ((band - belt) / 2.0, (band + belt) / 2.0);
    let line = |by: f64| Path::polyline(&seam.iter().map(|p| *p + up * by).collect::<Vec<_>>());
    for by in [low, high] {
        figure.below("belt", &line(by));
    }
    let over = waist.point_at(waist.length() * 0.75) + up * high;
    figure.point_at(over, key::DRAWN_BELT_OVER_THE_WAISTBAND);
}

/// Where the mouth and the centre of the front lie behind the bag.
fn context(figure: &mut Figure<'_>, front: &Piece) {
    if let Some(mouth) = front.edge(EdgeId::Mouth) {
        figure.below("seam:mouth", mouth);
        figure.point_at(mouth.point_at(mouth.length() * 0.35), key::DRAWN_MOUTH_EDGE);
    }
    if let Some(fly) = front.edge(EdgeId::Fly) {
        figure.edge("edge:front:fly", fly, false);
        figure.point_at(fly.point_at(fly.length() * 0.25), key::DRAWN_CENTRE_FRONT);
    }
}

fn dimensions(
    figure: &mut Figure<'_>,
    waist: &Path,
    hem: Option<Length>,
    (half, lowest): (f64, f64),
    map: Affine,
) {
    let spec = &figure.garment.pattern.spec;
    let Some(extra) = spec.extra_pocket else {
        return;
    };
    let at = |x: f64, y: f64| map * Point::new(x, y);
    let outer = figure.side_towards(at(1.0, 0.0) - at(0.0, 0.0));
    let inner = opposite(outer);
    let from_centre = waist.part(Length::ZERO, extra.from_centre);
    figure.dimension_along(Side::Above, &from_centre, None);
    figure.dimension(Side::Above, at(-half, 0.0), at(half, 0.0), None);
    figure.dimension(outer, at(half, 0.0), at(0.0, lowest), None);
    if let Some(depth) = hem {
        figure.dimension(
            inner,
            at(-half, 0.0),
            at(-half, -depth.to_mm()),
            Some(key::DRAWN_HEM),
        );
    }
    let up = at(0.0, 1.0) - at(0.0, 0.0);
    let (band, belt) = (
        spec[MeasureId::BandHeight].to_mm(),
        figure.garment.doc.loops.belt.to_mm(),
    );
    let side = waist.end();
    figure.dimension(outer, side, side + up * band, Some(key::DRAWN_BAND));
    let low = waist.start() + up * ((band - belt) / 2.0);
    figure.dimension(inner, low, low + up * belt, Some(key::DRAWN_BELT));
}

/// The radius of the foot's corners.
fn corner(figure: &mut Figure<'_>, pocket: &Piece, map: Affine) {
    let Some(foot) = pocket.edge(EdgeId::Foot) else {
        return;
    };
    let Some(segment) = foot.segments().first() else {
        return;
    };
    let arc = Path::new(vec![*segment]);
    let middle = arc.point_at(arc.length() / 2.0);
    if let Some(radius) = through(arc.start(), middle, arc.end()) {
        let radius = figure.amount_of(radius);
        figure.point_at(map * middle, say::DrawnRadius { radius });
    }
}

/// Radius of the circle through three points: the product of the sides over four times the area.
fn through(a: Point, b: Point, c: Point) -> Option<Length> {
    let twice = (b - a).cross(c - a).abs();
    let sides = (b - a).hypot() * (c - b).hypot() * (a - c).hypot();
    (twice > NO_AREA_MM2).then(|| Length::mm(sides / (2.0 * twice)))
}
