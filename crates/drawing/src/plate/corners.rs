//! The upper corners of the pockets and the end of the mouth, enlarged: how far every row runs from
//! its edge, where rivet and tack stand.

use draft::{ClothUse, EdgeId, Piece, PieceId};
use geometry::tolerance::{NO_SQUARE_MM2, PARALLEL};
use geometry::{Affine, Path, Point, Straight, Vec2, left_of, nearest_on};
use sewing::{Face, Fixing, FixingKind, Garment, On, placed, turned_depth};
use style::{MeasureId, SeamId};
use trade::Length;
use words::{Key, Words, key};

use super::figure::{Figure, Outline};
use super::measure::Side;
use super::page::Draft;
use super::scale::PlateScale;
use super::tone::set_back;
use crate::palette::QUIET;

/// What of a corner is shown, millimetres on the cloth: beyond the edges, along the top and down.
const BEYOND_MM: f64 = 4.0;
const ALONG_MM: f64 = 17.0;
const DOWN_MM: f64 = 17.0;
/// Where along the side the rows are measured.
const MEASURED_MM: f64 = 14.5;
/// Dimension lines below the drawing: the first, and from one to the next, on paper.
const FIRST_MM: f64 = 4.5;
const STEP_MM: f64 = 5.6;

pub(super) fn draw<'a>(
    garment: &'a Garment,
    words: &'a Words,
    scale: PlateScale,
) -> Option<Draft<'a>> {
    let pattern = &garment.pattern;
    let corner = |piece, top: SeamId, at: Point, title| {
        let corner = Corner {
            piece,
            top,
            at,
            title,
        };
        corner.figure(garment, words, scale)
    };
    let coin = pattern.spec[MeasureId::CoinWidth] / 2.0;
    let extra = pattern.spec.extra_pocket.map(|e| e.width / 2.0);
    let figures: Vec<Figure<'_>> = [
        corner(
            PieceId::CoinPocket,
            SeamId::CoinHem,
            Point::new(-coin.to_mm(), 0.0),
            key::DRAWN_CORNER_COIN_POCKET_INNER_CORNER,
        ),
        corner(
            PieceId::BackPocketRight,
            SeamId::BackPocketHem,
            Point::ORIGIN,
            key::DRAWN_CORNER_BACK_POCKETS_INNER_CORNER_RIGHT_SHOWN,
        ),
        extra.and_then(|half| {
            corner(
                PieceId::ExtraPocket,
                SeamId::ExtraHem,
                Point::new(-half.to_mm(), 0.0),
                key::DRAWN_CORNER_EXTRA_POCKET_INNER_CORNER,
            )
        }),
        mouth(garment, words, scale),
    ]
    .into_iter()
    .flatten()
    .collect();
    (!figures.is_empty()).then(|| Draft {
        title: words.say(key::DRAWN_CORNERS_TITLE),
        caption: words.say(key::DRAWN_CORNERS_CAPTION),
        figures,
    })
}

/// The upper corner of a pocket that lies at the left end of its top edge.
struct Corner {
    piece: PieceId,
    /// The seam of its hem.
    top: SeamId,
    /// The corner in the pocket's frame.
    at: Point,
    title: Key,
}

impl Corner {
    fn figure<'a>(
        self,
        garment: &'a Garment,
        words: &'a Words,
        scale: PlateScale,
    ) -> Option<Figure<'a>> {
        let piece = garment.pattern.piece(self.piece)?;
        let set = placed(&garment.pattern, self.piece)?;
        let mirrored = set.on == On::Mirrored;
        let shown = (Face::Outside, self.title);
        let here = Affine::IDENTITY;
        let mut figure = Figure::new(garment, words, scale, shown, here, mirrored);
        let by = |x: f64, y: f64| self.at + Vec2::new(x, y);
        figure.window(&[by(-BEYOND_MM, BEYOND_MM), by(ALONG_MM, -DOWN_MM)]);
        let cloth = figure.tone(piece.cloth);
        figure.ground("around", set_back(figure.tone(ClothUse::Shell)));
        figure.piece(self.piece, here, cloth, Outline::Heavy);
        let hem = garment.seams.iter().find(|s| s.id == self.top);
        let outer_side = figure.side_towards(Vec2::new(-1.0, 0.0));
        let inner_side = figure.side_towards(Vec2::new(1.0, 0.0));
        if let Some(depth) = hem.map(turned_depth) {
            let low = by(0.0, -depth.to_mm());
            figure.below(
                self.top.code(),
                &Path::line(by(-BEYOND_MM, low.y), by(ALONG_MM, low.y)),
            );
            figure.dimension(
                inner_side,
                by(ALONG_MM, 0.0),
                by(ALONG_MM, low.y),
                Some(key::DRAWN_HEM),
            );
        }
        let rows = figure.rows(self.piece, here, |r| r.seam != SeamId::Decoration);
        let fixings = near(garment, self.piece, self.at);
        for fixing in &fixings {
            figure.fixing(fixing, here, !fixing.outside);
        }
        let (hems, sides): (Vec<usize>, Vec<usize>) =
            rows.into_iter().partition(|k| is_of(garment, *k, self.top));
        let on_top = by(ALONG_MM, 0.0);
        for k in hems {
            if let Some(p) = nearest(&garment.rows[k].path, on_top) {
                figure.dimension(inner_side, on_top, p, None);
            }
        }
        if let Some(on_side) = on_side(piece) {
            let down = (self.at.y - on_side.y).abs();
            let first = (DOWN_MM - down) * scale.times() + FIRST_MM;
            gauge(&mut figure, on_side, &sides, by(0.0, -100.0), first);
        }
        rivets(&mut figure, &fixings, self.at, outer_side);
        Some(figure)
    }
}

fn is_of(garment: &Garment, row: usize, seam: SeamId) -> bool {
    garment.rows.get(row).is_some_and(|r| r.seam == seam)
}

/// The fixings on a piece near a point of it.
fn near(garment: &Garment, piece: PieceId, at: Point) -> Vec<&Fixing> {
    let reach = ALONG_MM;
    garment
        .fixings
        .iter()
        .filter(|f| f.piece == piece && (f.at - at).hypot() < reach)
        .collect()
}

/// A place on the side that runs down from the corner.
fn on_side(piece: &Piece) -> Option<Point> {
    let side = piece
        .edge(EdgeId::Inner)
        .or_else(|| piece.edge(EdgeId::Left))?;
    Some(side.point_at(Length::mm(MEASURED_MM)))
}

/// The place of a path nearest to a point.
fn nearest(path: &Path, p: Point) -> Option<Point> {
    let found = nearest_on(&path.dense(Length::mm(0.2)), p, NO_SQUARE_MM2)?;
    Some(found.at)
}

/// The distances of rows from a point on an edge, one below the other on the side of `away`.
fn gauge(figure: &mut Figure<'_>, edge: Point, rows: &[usize], away: Point, first_mm: f64) {
    let garment = figure.garment;
    let mut found: Vec<Point> = rows
        .iter()
        .filter_map(|k| nearest(&garment.rows.get(*k)?.path, edge))
        .collect();
    found.sort_by(|a, b| (*a - edge).hypot().total_cmp(&(*b - edge).hypot()));
    for (k, p) in found.into_iter().enumerate() {
        figure.slanted(edge, p, away, first_mm + STEP_MM * k as f64, None);
    }
}

/// How far rivet and tack are from the corner.
fn rivets(figure: &mut Figure<'_>, fixings: &[&Fixing], corner: Point, side: Side) {
    for fixing in fixings {
        let (name, tack) = match (&fixing.kind, fixing.outside) {
            (FixingKind::Rivet(_), true) => (key::DRAWN_RIVET, false),
            (FixingKind::Rivet(_), false) => (key::DRAWN_HIDDEN_RIVET, false),
            (FixingKind::Bartack(..), true) => (key::DRAWN_TACK, true),
            (FixingKind::Bartack(..), false) => (key::DRAWN_HIDDEN_TACK, true),
            _ => continue,
        };
        if tack {
            figure.point_at(fixing.at, name);
        } else {
            figure.dimension(Side::Above, corner, fixing.at, None);
            figure.dimension(side, corner, fixing.at, Some(name));
        }
    }
}

/// The end of the hip pocket mouth at the band.
fn mouth<'a>(garment: &'a Garment, words: &'a Words, scale: PlateScale) -> Option<Figure<'a>> {
    let front = garment.pattern.piece(PieceId::Front)?;
    let (mouth, waist) = (front.edge(EdgeId::Mouth)?, front.edge(EdgeId::Waist)?);
    let end = mouth.end();
    // Upright is the end of the mouth.
    let up = mouth.end_direction();
    let frame = Affine::new([up.y, up.x, -up.x, up.y, 0.0, 0.0]);
    let back = frame.inverse();
    let title = key::DRAWN_CORNER_MOUTH;
    let mut figure = Figure::new(garment, words, scale, (Face::Outside, title), frame, false);
    let at = |x: f64, y: f64| back * (frame * end + Vec2::new(x, y));
    figure.window(&[
        at(BEYOND_MM, BEYOND_MM),
        at(-ALONG_MM, -DOWN_MM - BEYOND_MM),
    ]);
    let shell = figure.tone(ClothUse::Shell);
    figure.ground("piece:pocket_facing", set_back(shell));
    figure.piece(PieceId::Front, Affine::IDENTITY, shell, Outline::None);
    figure.edge("seam:band", waist, false);
    figure.edge("seam:mouth", mouth, true);
    let rows = figure.rows(PieceId::Front, Affine::IDENTITY, |r| {
        r.seam == SeamId::Mouth
    });
    let fixings: Vec<&Fixing> = near(garment, PieceId::Front, end)
        .into_iter()
        .filter(|f| f.on != On::Mirrored)
        .collect();
    for fixing in &fixings {
        figure.fixing(fixing, Affine::IDENTITY, false);
    }
    let edge = mouth.point_at(mouth.length() - Length::mm(MEASURED_MM));
    let down = (frame * end - frame * edge).y;
    let first = (DOWN_MM + BEYOND_MM - down) * scale.times() + FIRST_MM;
    gauge(&mut figure, edge, &rows, at(0.0, -100.0), first);
    let side = figure.side_towards(at(1.0, 0.0) - at(0.0, 0.0));
    for fixing in &fixings {
        let word = match fixing.kind {
            FixingKind::Rivet(_) => key::DRAWN_RIVET,
            FixingKind::Bartack(..) => key::DRAWN_TACK,
            _ => continue,
        };
        // From the band seam, along the rows.
        if let Some(on_seam) = level_on(waist, fixing.at, up) {
            figure.dimension(side, on_seam, fixing.at, Some(word));
        }
    }
    let over = waist.point_at(Length::mm(8.0)) - left_of(waist.direction_at(Length::mm(8.0))) * 2.0;
    figure.name(key::DRAWN_WAISTBAND, &[over], QUIET);
    Some(figure)
}

/// Where the straight line from a point along `up` meets a path.
fn level_on(path: &Path, from: Point, up: Vec2) -> Option<Point> {
    path.dense(Length::mm(0.5)).windows(2).find_map(|w| {
        let part = Straight::between(w[0], w[1]);
        let share = Straight { from, way: up }.meeting(part, PARALLEL)?.second;
        (0.0..=1.0).contains(&share).then(|| part.at(share))
    })
}
