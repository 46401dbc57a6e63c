//! One corner as it is cut and as it lies when it is folded.

use cutting::{Corner, CutPiece, Lie};
use drawing::dimension::{arrow_head, dash_dot, unit};
use drawing::lettering::{CAPITALS, centred, text_width};
use drawing::palette::{
    CONSTRUCTION, CUT_LINE, HAIRLINE, INK, PAPER, Pen, SEWN_LINE, TINT, TINT_UPPER, TYPE_FIGURES,
};
use drawing::{Layer, closed, open};
use geometry::{Affine, Point, Rect, Vec2, left_of};
use trade::Length;
use words::{Key, key};

use super::fold::Fold;
use super::{PICTURE_MM, corners, frame};
use crate::piece_words::figure;

/// Scales a corner is enlarged to, the largest first.
const SCALES: [f64; 8] = [3.0, 2.0, 1.5, 1.25, 1.0, 0.75, 0.5, 0.4];
/// A picture shows so many allowances' width round the corner.
const SHOWN: f64 = 2.8;
/// The least a picture shows, on the cloth.
const LEAST_SHOWN_MM: f64 = 22.0;

/// A corner to be drawn, in coordinates of its picture: millimetres as printed, y down.
pub(super) struct Shown<'a> {
    pub(super) piece: &'a CutPiece,
    pub(super) corner: &'a Corner,
    pub(super) scale: f64,
    /// The cut line.
    pub(super) cut: Vec<Point>,
    /// The sewn lines of the two edges.
    pub(super) sewn: [Vec<Point>; 2],
    /// From the corner along each edge, away from it.
    pub(super) along: [Vec2; 2],
    /// From the frame of the piece to the picture, the corner at its origin.
    to: Affine,
}

impl<'a> Shown<'a> {
    pub(super) fn of(piece: &'a CutPiece, corner: &'a Corner) -> Option<Shown<'a>> {
        let (before, after) = (piece.edge(corner.before)?, piece.edge(corner.after)?);
        let reach = before.allowance.max(after.allowance).to_mm();
        let reach = (reach * SHOWN).max(LEAST_SHOWN_MM);
        let last = SCALES[SCALES.len() - 1];
        let scale = SCALES
            .into_iter()
            .find(|s| reach * s <= PICTURE_MM)
            .unwrap_or(last);
        let as_cut = piece.as_cut();
        let at = (as_cut * corner.at).to_vec2();
        let to =
            Affine::scale(scale) * drawing::to_paper(0.0, 0.0) * Affine::translate(-at) * as_cut;
        let drawn = |line: &[Point]| -> Vec<Point> { line.iter().map(|p| to * *p).collect() };
        let sewn = [drawn(&before.sewn), drawn(&after.sewn)];
        let [.., b0, b1] = sewn[0][..] else {
            return None;
        };
        let [a0, a1, ..] = sewn[1][..] else {
            return None;
        };
        Some(Shown {
            piece,
            corner,
            scale,
            cut: drawn(&piece.cut),
            along: [unit(b0 - b1)?, unit(a1 - a0)?],
            sewn,
            to,
        })
    }

    /// How an edge's allowance lies, and how far it reaches, as printed.
    fn lie(&self, k: usize) -> (Lie, f64) {
        let name = if k == 0 {
            self.corner.before
        } else {
            self.corner.after
        };
        let edge = self.piece.edge(name);
        edge.map_or((Lie::None, 0.0), |e| {
            (e.lie, e.allowance.to_mm() * self.scale)
        })
    }

    /// Outward of an edge. With y down the outline runs clockwise, unless it is the mirror image.
    pub(super) fn outward(&self, k: usize) -> Vec2 {
        let on = if k == 0 {
            -self.along[0]
        } else {
            self.along[1]
        };
        if self.piece.is_cut_mirrored() {
            -left_of(on)
        } else {
            left_of(on)
        }
    }

    /// The edges in the order in which they are folded.
    pub(super) fn order(&self) -> Vec<usize> {
        match self.corner.shaped {
            Some(name) if name == self.corner.before => vec![0],
            Some(_) => vec![1],
            None => vec![0, 1],
        }
    }

    pub(super) fn folds(&self, k: usize) -> Vec<Fold> {
        let (lie, reach) = self.lie(k);
        let out = self.outward(k);
        let at = |by: f64| Fold {
            on: Point::ORIGIN + out * by,
            out,
        };
        match lie {
            Lie::Opened | Lie::Turned if reach > 0.0 => vec![at(0.0)],
            Lie::Felled { lap } => vec![at(lap.to_mm() * self.scale)],
            Lie::Hemmed { first } => vec![at(first.to_mm() * self.scale), at(0.0)],
            _ => Vec::new(),
        }
    }

    pub(super) fn folded_key(&self) -> Key {
        let folds: Vec<usize> = self
            .order()
            .into_iter()
            .map(|k| self.folds(k).len())
            .collect();
        match folds.iter().sum::<usize>() {
            0 => key::CORNERS_FOLDED_NONE,
            1 => key::CORNERS_FOLDED_ONCE,
            _ if folds.len() == 1 => key::CORNERS_FOLDED_TWICE,
            _ => key::CORNERS_FOLDED_BOTH,
        }
    }

    /// The middle of a picture lies a little inside the corner, so that both pictures show what is
    /// folded and what it is folded onto.
    fn middle(&self, picture: Rect) -> Vec2 {
        let inward = unit(-(self.outward(0) + self.outward(1))).unwrap_or(Vec2::ZERO);
        picture.center().to_vec2() - inward * (PICTURE_MM * 0.1)
    }

    pub(super) fn flat(&self, picture: Rect) -> Layer {
        let by = self.middle(picture);
        let mut layer = Layer::named("flat");
        layer.clip = Some(frame(picture));
        let place = |line: &[Point]| -> Vec<Point> { line.iter().map(|p| *p + by).collect() };
        let pen = Pen::FULL;
        layer.area(None, closed(&place(&self.cut)), TINT_UPPER, None);
        let body = place(&self.piece_body());
        layer.area(None, closed(&body), TINT, None);
        for line in &self.sewn {
            layer.line(None, open(&place(line)), pen.stroke(INK, SEWN_LINE));
        }
        for k in self.order() {
            for fold in self.folds(k).iter().filter(|f| f.on != Point::ORIGIN) {
                let along = left_of(fold.out) * (2.0 * PICTURE_MM);
                let line = [fold.on - along, fold.on + along].map(|p| p + by);
                for part in geometry::clip_to_polygon(&line, &place(&self.cut)) {
                    layer.line(None, dash_dot(&part, pen), pen.stroke(INK, HAIRLINE));
                }
            }
        }
        layer.line(None, closed(&place(&self.cut)), pen.stroke(INK, CUT_LINE));
        layer
    }

    /// The sewn outline of the whole piece.
    fn piece_body(&self) -> Vec<Point> {
        self.piece.sewn().iter().map(|p| self.to * *p).collect()
    }

    /// The cloth as it lies once the edges are folded in their order.
    pub(super) fn folded(&self, picture: Rect) -> Layer {
        let by = self.middle(picture);
        let mut layer = Layer::named("folded");
        layer.clip = Some(frame(picture));
        let pen = Pen::FULL;
        let place = |line: &[Point]| -> Vec<Point> { line.iter().map(|p| *p + by).collect() };
        // Only what the picture can show is folded: elsewhere the outline may cross the fold again.
        let half = PICTURE_MM * 1.4;
        let near = corners(Rect::new(-half, -half, half, half));
        let mut plies = vec![near.iter().zip(near.iter().cycle().skip(1)).fold(
            self.cut.clone(),
            |cloth, (a, b)| {
                let out = unit(*b - *a).map_or(Vec2::ZERO, |on| Vec2::new(on.y, -on.x));
                Fold { on: *a, out }.inside(&cloth)
            },
        )];
        for k in self.order() {
            for fold in self.folds(k) {
                let mut flaps = Vec::new();
                for ply in &mut plies {
                    let flap = fold.over(ply);
                    *ply = fold.inside(ply);
                    if flap.len() > 2 {
                        flaps.push(flap);
                    }
                }
                // What was folded first lies lowest in the flap and so highest once it is turned.
                flaps.reverse();
                plies.extend(flaps);
            }
        }
        for (k, ply) in plies.iter().filter(|p| p.len() > 2).enumerate() {
            let tone = if k == 0 { TINT } else { TINT_UPPER };
            layer.area(
                None,
                closed(&place(ply)),
                tone,
                Some(pen.stroke(INK, SEWN_LINE)),
            );
        }
        // The cut line on which the folded end has to lie, and the seam that crosses it.
        for line in &self.sewn {
            layer.line(
                None,
                open(&place(line)),
                pen.fine_dashes(CONSTRUCTION, HAIRLINE),
            );
        }
        layer
    }

    /// The widths of both allowances, measured a little way from the corner.
    pub(super) fn figures(&self, layer: &mut Layer, picture: Rect) {
        let by = self.middle(picture);
        for k in [0, 1] {
            let (_, wide) = self.lie(k);
            if wide < 1.0 {
                continue;
            }
            let name = if k == 0 {
                self.corner.before
            } else {
                self.corner.after
            };
            let Some(edge) = self.piece.edge(name) else {
                continue;
            };
            let out = self.outward(k);
            let from = Point::ORIGIN + self.along[k] * (PICTURE_MM * 0.42) + by;
            let to = from + out * wide;
            if !picture.inflate(-1.0, -1.0).contains(from) || !picture.contains(to) {
                continue;
            }
            layer.line(None, open(&[from, to]), Pen::FULL.stroke(INK, HAIRLINE));
            arrow_head(layer, Pen::FULL, to, out, Length::mm(wide));
            arrow_head(layer, Pen::FULL, from, -out, Length::mm(wide));
            let words = figure(edge.allowance);
            let size = TYPE_FIGURES;
            let (w, h) = (
                text_width(&words, size).to_mm() + 1.0,
                CAPITALS * size.to_mm() + 1.0,
            );
            // Towards the corner, clear of the arrow.
            let aside = -self.along[k];
            let away = (aside.x.abs() * w + aside.y.abs() * h) / 2.0 + 0.6;
            let centre = from.midpoint(to) + aside * away;
            layer.area(
                None,
                frame(Rect::from_center_size(centre, (w, h))),
                PAPER,
                None,
            );
            layer.text(None, centred(&words, size, centre));
        }
    }
}
