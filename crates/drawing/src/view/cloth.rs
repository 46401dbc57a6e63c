//! Panels, band, bags and allowances: the areas of a view.

use draft::{EdgeId, LineId, Piece, PieceId, PointId};
use flat::{Folds, Half, Hand, View};
use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Path, Point, Vec2};
use sewing::{Face, Finish, InsideLap, On, band_is_joined};
use trade::{Colour, Length};

use super::ink::{EDGE, OUTLINE, woven};
use super::polyline::simplified;
use super::rows::behind_rows;
use super::scene::Scene;
use crate::sheet::{Layer, Stroke, closed, open};

/// How far the half drawn first runs on under the other.
const UNDER_MM: f64 = 0.3;
const AREA_STEP: Length = Length::mm(3.0);
/// How far an overedge reaches in from the cut edge, as drawn (common practice: 3/16 inch is sewn,
/// of which the fraying edge hides a little).
const OVEREDGE_BITE: Length = Length::mm(4.0);

/// Above the front waist one sees into the garment: the inside of the back band.
pub(super) fn behind(scene: &Scene) -> Layer {
    let mut layer = Layer::named("behind");
    let inks = &scene.inks;
    let mut outline = both_sides(scene.laid.waist_line(Half::Back));
    outline.extend(
        both_sides(scene.laid.band_top(Half::Back))
            .into_iter()
            .rev(),
    );
    // Folded along its length, the band shows the face of the cloth on both sides.
    let fill = inks.cloth_face.mixed(Colour::BLACK, 0.22);
    layer.area(
        Some("piece:band"),
        closed(&outline),
        fill,
        Some(Stroke::plain(inks.outline, OUTLINE)),
    );
    band_join(scene, &mut layer);
    behind_rows(scene, &mut layer);
    super::fixings::behind(scene, &mut layer);
    layer
}

/// The right-hand half line and its mirror image, from left to right.
fn both_sides(half: Vec<Point>) -> Vec<Point> {
    let mut all: Vec<Point> = half.iter().rev().map(|p| Point::new(-p.x, p.y)).collect();
    all.extend(half.into_iter().skip(1));
    all
}

/// The outline of one half, with the centre line, or a line so far beside it, from the fork up.
pub(super) fn half_outline(scene: &Scene, hand: Hand, beyond_mm: f64) -> Vec<Point> {
    simplified(&scene.laid.half_outline(hand, Length::mm(beyond_mm)))
}

/// Panels of one half with what is set on them, clipped to the outline.
pub(super) fn panels(scene: &Scene, hand: Hand) -> Layer {
    let mut layer = Layer::named("cloth");
    // Two fills that only touch let the page shine through between them: the half that is drawn first
    // runs on under the other.
    let beyond_mm = match hand {
        Hand::Right => UNDER_MM,
        Hand::Left => 0.0,
    };
    let outline = closed(&half_outline(scene, hand, beyond_mm));
    layer.clip = Some(outline.clone());
    layer.area(Some("piece:back"), outline, scene.inks.panel, None);
    match (scene.view, scene.face) {
        (View::Front, Face::Outside) => front_outside(scene, hand, &mut layer),
        (View::Front, Face::Inside) => front_inside(scene, hand, &mut layer),
        (View::Back, Face::Outside) => back_outside(scene, hand, &mut layer),
        (View::Back, Face::Inside) => back_inside(scene, hand, &mut layer),
    }
    layer
}

/// Points along an edge, straight parts too: what is straight on a piece may be bent on the view.
fn fine(path: &Path) -> Vec<Point> {
    geometry::resample(&path.dense(AREA_STEP), AREA_STEP)
}

fn draw_piece(scene: &Scene, hand: Hand, layer: &mut Layer, id: PieceId, fill: Colour) {
    let Some(piece) = scene.garment.pattern.piece(id) else {
        return;
    };
    let points: Vec<Point> = piece.edges.iter().flat_map(|e| fine(&e.path)).collect();
    draw_points(scene, hand, layer, piece, &points, fill);
}

fn draw_points(
    scene: &Scene,
    hand: Hand,
    layer: &mut Layer,
    piece: &Piece,
    points: &[Point],
    fill: Colour,
) {
    layer.area(
        Some(&format!("piece:{}", piece.id.code())),
        scene.area(piece.id, points, hand),
        fill,
        Some(Stroke::plain(scene.inks.edge, EDGE)),
    );
}

fn front_outside(scene: &Scene, hand: Hand, layer: &mut Layer) {
    let inks = &scene.inks;
    draw_piece(scene, hand, layer, PieceId::PocketFacing, inks.panel);
    let coin_hand = if scene.garment.pattern.spec.coin_on_right {
        Hand::Right
    } else {
        Hand::Left
    };
    if hand == coin_hand {
        draw_piece(scene, hand, layer, PieceId::CoinPocket, inks.panel);
        super::rows::piece_rows(
            scene,
            hand,
            layer,
            &[PieceId::CoinPocket, PieceId::PocketFacing],
        );
        super::fixings::on_pieces(scene, hand, layer, &[PieceId::CoinPocket]);
    }
    draw_piece(scene, hand, layer, PieceId::Front, inks.panel);
}

fn back_outside(scene: &Scene, hand: Hand, layer: &mut Layer) {
    let inks = &scene.inks;
    draw_piece(scene, hand, layer, PieceId::Back, inks.panel);
    draw_piece(scene, hand, layer, PieceId::Yoke, inks.panel);
    let pocket = match hand {
        Hand::Left => PieceId::BackPocketLeft,
        Hand::Right => PieceId::BackPocketRight,
    };
    draw_piece(scene, hand, layer, pocket, inks.panel);
}

fn front_inside(scene: &Scene, hand: Hand, layer: &mut Layer) {
    let inks = &scene.inks;
    draw_piece(scene, hand, layer, PieceId::Front, inks.panel);
    laps(scene, hand, layer, &[PieceId::Front]);
    fly_inside(scene, hand, layer);
}

fn back_inside(scene: &Scene, hand: Hand, layer: &mut Layer) {
    let inks = &scene.inks;
    draw_piece(scene, hand, layer, PieceId::Back, inks.panel);
    draw_piece(scene, hand, layer, PieceId::Yoke, inks.panel);
    laps(scene, hand, layer, &[PieceId::Back, PieceId::Yoke]);
}

/// Turned out, the under layer of each pocket bag hangs in front of its panel.
pub(super) fn bag(scene: &Scene, hand: Hand, panels: &Layer) -> Layer {
    let mut layer = Layer::named("cloth");
    layer.clip.clone_from(&panels.clip);
    let bag = scene.garment.pattern.piece(PieceId::PocketBag);
    let turned_out = (scene.view, scene.face) == (View::Front, Face::Inside);
    let (Some(piece), true) = (bag, turned_out) else {
        return layer;
    };
    let mut points = Vec::new();
    for id in [EdgeId::FootUnder, EdgeId::SideUnder, EdgeId::WaistUnder] {
        if let Some(path) = piece.edge(id) {
            points.extend(fine(path));
        }
    }
    draw_points(
        scene,
        hand,
        &mut layer,
        piece,
        &points,
        scene.inks.pocketing,
    );
    extra_pocket(scene, hand, &mut layer);
    layer
}

/// The concealed pocket on the under layer of one bag, on its side towards the body, up to the band seam; its
/// rows are drawn with those of the half.
fn extra_pocket(scene: &Scene, hand: Hand, layer: &mut Layer) {
    let Some(extra) = scene.garment.pattern.spec.extra_pocket else {
        return;
    };
    let mine = if extra.on_left {
        Hand::Left
    } else {
        Hand::Right
    };
    if hand == mine {
        let fill = scene.inks.panel.mixed(Colour::BLACK, 0.07);
        draw_piece(scene, hand, layer, PieceId::ExtraPocket, fill);
    }
}

/// Left: the facing behind the fly edge. Right: the shield, which reaches across behind it.
fn fly_inside(scene: &Scene, hand: Hand, layer: &mut Layer) {
    let pattern = &scene.garment.pattern;
    let (Some(front), Some(facing)) = (
        pattern.piece(PieceId::Front),
        pattern.piece(PieceId::FlyFacing),
    ) else {
        return;
    };
    let (Some(fly), Some(stitch)) = (front.edge(EdgeId::Fly), front.line(LineId::FlyStitch)) else {
        return;
    };
    if hand == Hand::Left {
        let mut points = fine(fly);
        points.extend(fine(stitch));
        layer.area(
            Some(&format!("piece:{}", facing.id.code())),
            scene.area(PieceId::Front, &points, hand),
            scene.inks.cloth_reverse.mixed(Colour::BLACK, 0.06),
            Some(Stroke::plain(scene.inks.edge, EDGE)),
        );
    }
}

/// The fly shield, drawn over both halves from the inside: sewn to the right edge, it reaches to
/// the wearer's left.
pub(super) fn shield(scene: &Scene) -> Layer {
    let mut layer = Layer::named("cloth");
    if (scene.view, scene.face) == (View::Front, Face::Inside) {
        draw_shield(scene, &mut layer);
    }
    layer
}

fn draw_shield(scene: &Scene, layer: &mut Layer) {
    let pattern = &scene.garment.pattern;
    let (Some(shield), Some(front)) = (
        pattern.piece(PieceId::FlyShield),
        pattern.piece(PieceId::Front),
    ) else {
        return;
    };
    let (Some(sewn), Some(foot), Some(top)) = (
        shield.edge(EdgeId::Left),
        shield.point(PointId::FoldFoot),
        front.point(PointId::WaistCentre),
    ) else {
        return;
    };
    let corners = [sewn.start(), sewn.end(), foot, Point::ORIGIN];
    // Sewn at the centre front, its fold away from there. It hangs straight down from the band seam,
    // whatever the crotch seam does behind it.
    let place = |p: &Point| {
        let across = p.x - sewn.start().x;
        scene
            .laid
            .mirrored(Point::new(across, top.y + p.y), Hand::Left)
    };
    let points: Vec<Point> = corners.iter().map(place).collect();
    layer.area(
        Some("piece:fly_shield"),
        closed(&points),
        woven(scene.inks.cloth_face),
        Some(Stroke::plain(scene.inks.edge, EDGE)),
    );
}

/// Allowances as they lie inside.
fn laps(scene: &Scene, hand: Hand, layer: &mut Layer, pieces: &[PieceId]) {
    for lap in &scene.garment.laps {
        if pieces.contains(&lap.piece) && scene.laid.copies(lap.piece, lap.on).contains(&hand) {
            draw_lap(scene, hand, layer, lap);
        }
    }
}

fn draw_lap(scene: &Scene, hand: Hand, layer: &mut Layer, lap: &InsideLap) {
    let Some(edge) = lap.line(&scene.garment.pattern) else {
        return;
    };
    let width = lap.width.to_mm();
    let line = fine(&edge);
    let inner = inward(&line, width);
    let strip = |from: &[Point], to: &[Point]| {
        let mut points = from.to_vec();
        points.extend(to.iter().rev());
        scene.area(lap.piece, &points, hand)
    };
    let inks = &scene.inks;
    let part = format!("edge:{}:{}", lap.piece.code(), lap.edge.code());
    let (fill, line_colour) = match lap.finish {
        Finish::Selvedge => (inks.cloth_face.mixed(Colour::WHITE, 0.1), inks.edge),
        Finish::Overedged => (inks.cloth_reverse.mixed(Colour::BLACK, 0.1), inks.edge),
        Finish::Folded => (inks.cloth_reverse.mixed(Colour::WHITE, 0.12), inks.edge),
        Finish::Raw => (inks.cloth_reverse.mixed(Colour::BLACK, 0.16), inks.edge),
    };
    layer.area(
        Some(&part),
        strip(&line, &inner),
        fill,
        Some(Stroke::plain(line_colour, EDGE)),
    );
    if lap.finish == Finish::Selvedge {
        // The last few millimetres are the finished edge itself, woven with undyed warp.
        let before = inward(&line, (width - 3.0).max(0.0));
        layer.area(Some(&part), strip(&before, &inner), inks.selvedge, None);
    }
    if lap.finish == Finish::Overedged {
        let middle = inward(&line, (width - 2.0).max(0.5));
        let over = overedge(scene, lap);
        for run in scene.laid.line(lap.piece, &middle, hand) {
            layer.line(
                over.part.as_deref().or(Some(&part)),
                open(&run),
                over.stroke,
            );
        }
    }
}

/// How the overedge along an allowance is drawn: in the yarn and at the pitch of the row that states
/// it, and that row's seam; in a neutral tone where no row does.
struct Overedge {
    part: Option<String>,
    stroke: Stroke,
}

fn overedge(scene: &Scene, lap: &InsideLap) -> Overedge {
    let seam = lap.seam();
    let rows = &scene.garment.rows;
    let stated = rows
        .iter()
        .find(|r| Some(r.seam) == seam && r.stitch.is_overedge());
    match stated {
        Some(row) => {
            let pitch = row.density.pitch();
            Overedge {
                part: Some(format!("seam:{}", row.seam.code())),
                stroke: Stroke::plain(row.under.colour, OVEREDGE_BITE).dashed(
                    row.under.diameter * 2.0,
                    (pitch - row.under.diameter * 2.0).max(pitch * 0.3),
                ),
            }
        }
        None => Overedge {
            part: None,
            stroke: Stroke::plain(
                scene.inks.selvedge.mixed(Colour::BLACK, 0.12),
                OVEREDGE_BITE,
            )
            .dashed(Length::mm(0.5), Length::mm(1.6)),
        },
    }
}

/// The polyline moved to its left (into an anticlockwise piece).
fn inward(points: &[Point], by: f64) -> Vec<Point> {
    let n = points.len();
    (0..n)
        .map(|k| {
            let (a, b) = (points[k.saturating_sub(1)], points[(k + 1).min(n - 1)]);
            let d = b - a;
            let length = d.hypot().max(NO_LENGTH_MM);
            points[k] + Vec2::new(-d.y, d.x) * (by / length)
        })
        .collect()
}

/// The heavy line round both halves, and the hem.
pub(super) fn outline(scene: &Scene) -> Layer {
    let mut layer = Layer::named("outline");
    let Folds { outer, inner } = scene.laid.folds();
    for hand in [Hand::Right, Hand::Left] {
        let on_view = |p: &Point| scene.laid.mirrored(*p, hand);
        // Up the side, and from the hem up the inner fold to the fork.
        let hem = [outer.first(), inner.first()];
        let mut line: Vec<Point> = outer.iter().rev().map(on_view).collect();
        line.extend(hem.into_iter().flatten().map(on_view));
        line.extend(inner.iter().map(on_view));
        layer.line(
            None,
            open(&simplified(&line)),
            Stroke::plain(scene.inks.outline, OUTLINE),
        );
    }
    layer
}

/// The band on the side that faces the viewer. In front the left end lies over the right; turned out,
/// the overlap of the right end lies over the left.
pub(super) fn band(scene: &Scene) -> Layer {
    let mut layer = Layer::named("band");
    let line = |up: Length| match up > Length::ZERO {
        true => scene.laid.band_top(scene.view.half()),
        false => scene.laid.waist_line(scene.view.half()),
    };
    let fill = scene.inks.cloth_face;
    let stroke = Some(Stroke::plain(scene.inks.outline, OUTLINE));
    let height = scene.laid.band_height();
    let strip = |along: &dyn Fn(Length) -> Vec<Point>| {
        let mut points = along(Length::ZERO);
        points.extend(along(height).into_iter().rev());
        closed(&points)
    };
    if scene.view == View::Back {
        layer.area(
            Some("piece:band"),
            strip(&|up| both_sides(line(up))),
            fill,
            stroke,
        );
        band_join(scene, &mut layer);
        return layer;
    }
    let order = match scene.face {
        Face::Outside => [Hand::Right, Hand::Left],
        Face::Inside => [Hand::Left, Hand::Right],
    };
    for hand in order {
        let half = strip(&|up| {
            let side = line(up).into_iter().map(|p| scene.laid.mirrored(p, hand));
            // Under the left end the overlap is not seen.
            let overlap = match (scene.face, hand) {
                (Face::Inside, Hand::Right) => scene.laid.overlap(up),
                _ => Vec::new(),
            };
            overlap.into_iter().rev().chain(side).collect()
        });
        layer.area(Some("piece:band"), half, fill, stroke);
    }
    layer
}

/// The line across the back of a band that is joined there; its row and allowances lie inside the band.
fn band_join(scene: &Scene, layer: &mut Layer) {
    if !band_is_joined(scene.garment) {
        return;
    }
    let centre = |line: Vec<Point>| {
        let nearest = line.iter().min_by(|a, b| a.x.abs().total_cmp(&b.x.abs()));
        nearest.map(|p| Point::new(0.0, p.y))
    };
    let low = centre(scene.laid.waist_line(Half::Back));
    let high = centre(scene.laid.band_top(Half::Back));
    if let (Some(low), Some(high)) = (low, high) {
        layer.line(
            Some("seam:band_halves"),
            open(&[low, high]),
            Stroke::plain(scene.inks.outline, EDGE),
        );
    }
}

/// Whether something on these copies is on this one.
pub(super) fn is_on(scene: &Scene, piece: PieceId, on: On, hand: Hand) -> bool {
    scene.laid.copies(piece, on).contains(&hand)
}
