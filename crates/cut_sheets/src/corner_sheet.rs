//! One picture for each kind of corner: flat as it is cut, and beside it folded as it is sewn.

use cutting::{Corner, CornerKind, CutPiece, CutSize, Lie};
use draft::EdgeId;
use geometry::tolerance::{ROUNDING, SAME_MM};
use geometry::{Point, Rect, Vec2, left_of};
use trade::Length;
use words::Words;

use crate::piece_words::figure;
use drawing::dimension::{arrow_head, dash_dot, unit};
use drawing::lettering::{CAPITALS, centred, text_width};
use drawing::palette::{
    CONSTRUCTION, CUT_LINE, HAIRLINE, INK, PAPER, Pen, QUIET, SEWN_LINE, TINT, TINT_UPPER,
    TYPE_FIGURES, TYPE_HEADING, TYPE_WORDS,
};
use drawing::{Anchor, Layer, Sheet, Text, closed, open};

/// Side of a picture, printed.
const PICTURE_MM: f64 = 52.0;
/// Between pictures, and between pictures and words.
const BETWEEN_MM: f64 = 6.0;
/// Width of the words beside two pictures.
const WORDS_MM: f64 = 56.0;
/// Height of the line of words above a picture.
const HEAD_MM: f64 = 5.0;
/// Scales a corner is enlarged to, the largest first.
const SCALES: [f64; 7] = [3.0, 2.0, 1.5, 1.25, 1.0, 0.75, 0.5];
/// A picture shows so many allowances' width round the corner.
const SHOWN: f64 = 2.8;
/// The least a picture shows, on the cloth.
const LEAST_SHOWN_MM: f64 = 22.0;

/// Which rules show a kind best, the best first.
fn best_rules(kind: CornerKind) -> &'static [&'static str] {
    match kind {
        CornerKind::Mitred => &["together", "across", "bare", "hem-on-cloth-edge"],
        CornerKind::Squared => &["opened", "sharp"],
        CornerKind::Stepped => &["felled", "changes"],
        CornerKind::Mirrored => &["hem", "turned", "opened-sharp", "across-mirrored"],
    }
}

/// A corner to be drawn, in coordinates of its picture: millimetres as printed, y down.
struct Shown<'a> {
    piece: &'a CutPiece,
    corner: &'a Corner,
    scale: f64,
    /// The cut line.
    cut: Vec<Point>,
    /// The sewn lines of the two edges.
    sewn: [Vec<Point>; 2],
    /// From the corner along each edge, away from it.
    along: [Vec2; 2],
}

/// The corner of a size that shows a kind best.
fn corner_of(cut: &CutSize, kind: CornerKind) -> Option<(&CutPiece, &Corner)> {
    let all = || {
        let of = |piece: &'_ CutPiece| piece.corners.len();
        cut.pieces.iter().flat_map(move |piece| {
            (0..of(piece)).filter_map(move |k| Some((piece, piece.corners.get(k)?)))
        })
    };
    best_rules(kind).iter().find_map(|rule| {
        all().find(|(piece, corner)| {
            let wide = |id| piece.edge(id).is_some_and(|e| e.allowance.to_mm() > 1.0);
            corner.rule.key == *rule && (wide(corner.before) || wide(corner.after))
        })
    })
}

/// All kinds of corners a size has, on one sheet at its printed size: each flat and folded, with its
/// dimensions and why it is so.
pub fn corner_sheet(cut: &CutSize) -> Sheet {
    let mut layers = Vec::new();
    let mut words = Layer::named("words");
    let mut down = 0.0;
    for kind in CornerKind::ALL {
        let Some(shown) = corner_of(cut, kind).and_then(|(piece, corner)| Shown::of(piece, corner))
        else {
            continue;
        };
        let top = down + HEAD_MM;
        let left = Rect::new(0.0, top, PICTURE_MM, top + PICTURE_MM);
        let right = left + Vec2::new(PICTURE_MM + BETWEEN_MM, 0.0);
        head(&mut words, left, "flat, as it is cut");
        head(&mut words, right, shown.folded_words());
        layers.push(shown.flat(left));
        layers.push(shown.folded(right));
        for picture in [left, right] {
            words.line(None, frame(picture), Pen::FULL.stroke(QUIET, HAIRLINE));
        }
        shown.figures(&mut words, left);
        told(&mut words, &shown, Point::new(right.x1 + BETWEEN_MM, top));
        down = top + PICTURE_MM + BETWEEN_MM;
    }
    layers.push(words);
    Sheet {
        title: format!("Corners, {}", cut.size),
        origin: Point::new(-0.5, -0.5),
        width: Length::mm(2.0 * (PICTURE_MM + BETWEEN_MM) + WORDS_MM + 1.0),
        height: Length::mm((down - BETWEEN_MM).max(0.0) + 1.0),
        layers,
    }
}

fn frame(r: Rect) -> geometry::BezPath {
    closed(&corners(r))
}

fn corners(r: Rect) -> [Point; 4] {
    [
        Point::new(r.x0, r.y0),
        Point::new(r.x1, r.y0),
        Point::new(r.x1, r.y1),
        Point::new(r.x0, r.y1),
    ]
}

fn head(layer: &mut Layer, picture: Rect, words: &str) {
    layer.text(
        None,
        Text {
            at: Point::new(picture.x0, picture.y0 - 1.4),
            words: words.to_owned(),
            size: TYPE_FIGURES,
            anchor: Anchor::Start,
            turn_deg: 0.0,
            colour: QUIET,
            bold: false,
        },
    );
}

/// What kind it is, where, and why.
fn told(layer: &mut Layer, shown: &Shown, at: Point) {
    let mut name = shown.corner.kind().word().to_owned();
    if let Some(first) = name.get_mut(0..1) {
        first.make_ascii_uppercase();
    }
    let words = |edge: EdgeId| edge.words(Words::english());
    let (before, after) = (words(shown.corner.before), words(shown.corner.after));
    let place = format!("{}, {before} and {after}", shown.piece.name());
    let scale = if (shown.scale - 1.0).abs() < ROUNDING {
        "true size".to_owned()
    } else {
        format!("{} times true size", shown.scale)
    };
    let rule = shown.corner.rule;
    let mut y = at.y + CAPITALS * TYPE_HEADING.to_mm();
    let mut say = |words: &str, size: Length, bold: bool, before: f64| {
        y += before;
        for line in wrapped(words, size, WORDS_MM) {
            layer.text(
                None,
                Text {
                    at: Point::new(at.x, y),
                    words: line,
                    size,
                    anchor: Anchor::Start,
                    turn_deg: 0.0,
                    colour: INK,
                    bold,
                },
            );
            y += 1.35 * size.to_mm();
        }
    };
    say(&name, TYPE_HEADING, true, 0.0);
    say(&place, TYPE_WORDS, false, 0.6);
    say(&scale, TYPE_WORDS, false, 0.0);
    say(&format!("Where {}.", rule.when), TYPE_WORDS, false, 1.6);
    say(&format!("Why: {}.", rule.why), TYPE_WORDS, false, 1.6);
}

/// Words broken into lines of at most a width.
fn wrapped(words: &str, size: Length, wide: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line) if text_width(&format!("{line} {word}"), size).to_mm() <= wide => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

impl<'a> Shown<'a> {
    fn of(piece: &'a CutPiece, corner: &'a Corner) -> Option<Shown<'a>> {
        let (before, after) = (piece.edge(corner.before)?, piece.edge(corner.after)?);
        let reach = before.allowance.max(after.allowance).to_mm();
        let reach = (reach * SHOWN).max(LEAST_SHOWN_MM);
        let last = SCALES[SCALES.len() - 1];
        let scale = SCALES
            .into_iter()
            .find(|s| reach * s <= PICTURE_MM)
            .unwrap_or(last);
        let drawn = |line: &[Point]| -> Vec<Point> {
            let to =
                |p: &Point| Point::new((p.x - corner.at.x) * scale, (corner.at.y - p.y) * scale);
            line.iter().map(to).collect()
        };
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

    /// Outward of an edge. With y down the outline runs clockwise, and this is away from it.
    fn outward(&self, k: usize) -> Vec2 {
        let on = if k == 0 {
            -self.along[0]
        } else {
            self.along[1]
        };
        left_of(on)
    }

    /// The edges in the order in which they are folded.
    fn order(&self) -> Vec<usize> {
        match self.corner.shaped {
            Some(name) if name == self.corner.before => vec![0],
            Some(_) => vec![1],
            None => vec![0, 1],
        }
    }

    fn folds(&self, k: usize) -> Vec<Fold> {
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

    fn folded_words(&self) -> &'static str {
        let folds: Vec<usize> = self
            .order()
            .into_iter()
            .map(|k| self.folds(k).len())
            .collect();
        match folds.iter().sum::<usize>() {
            0 => "sewn, the allowance lies flat",
            1 => "folded as sewn",
            _ if folds.len() == 1 => "folded twice, as sewn",
            _ => "both edges folded, one after the other",
        }
    }

    /// The middle of a picture lies a little inside the corner, so that both pictures show what is
    /// folded and what it is folded onto.
    fn middle(&self, picture: Rect) -> Vec2 {
        let inward = unit(-(self.outward(0) + self.outward(1))).unwrap_or(Vec2::ZERO);
        picture.center().to_vec2() - inward * (PICTURE_MM * 0.1)
    }

    fn flat(&self, picture: Rect) -> Layer {
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
        let at = self.corner.at;
        let to = |p: &Point| Point::new((p.x - at.x) * self.scale, (at.y - p.y) * self.scale);
        self.piece.sewn().iter().map(to).collect()
    }

    /// The cloth as it lies once the edges are folded in their order.
    fn folded(&self, picture: Rect) -> Layer {
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
    fn figures(&self, layer: &mut Layer, picture: Rect) {
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

/// A straight fold: what lies outward of it is turned over it.
#[derive(Clone, Copy)]
struct Fold {
    on: Point,
    out: Vec2,
}

impl Fold {
    fn beyond(self, p: Point) -> f64 {
        (p - self.on).dot(self.out)
    }

    /// What of an outline lies on one side of the fold (Sutherland and Hodgman's clipping).
    fn side(self, outline: &[Point], sign: f64) -> Vec<Point> {
        let mut out = Vec::with_capacity(outline.len() + 2);
        let next = outline.iter().cycle().skip(1);
        for (a, b) in outline.iter().zip(next) {
            let (da, db) = (self.beyond(*a) * sign, self.beyond(*b) * sign);
            if da >= 0.0 {
                out.push(*a);
            }
            if (da > 0.0 && db < 0.0) || (da < 0.0 && db > 0.0) {
                out.push(a.lerp(*b, da / (da - db)));
            }
        }
        out
    }

    fn inside(self, outline: &[Point]) -> Vec<Point> {
        self.side(outline, -1.0)
    }

    /// What lies beyond the fold, turned over it.
    fn over(self, outline: &[Point]) -> Vec<Point> {
        let beyond = self.side(outline, 1.0);
        let has_width = beyond.iter().any(|p| self.beyond(*p) > SAME_MM);
        if !has_width {
            return Vec::new();
        }
        let turned = |p: &Point| *p - self.out * (2.0 * self.beyond(*p));
        beyond.iter().map(turned).collect()
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::samples::{cut_out, words_stand_clear};
    use geometry::tolerance::NO_SQUARE_MM2;

    #[test]
    fn every_kind_is_shown_flat_and_folded() {
        let cut = cut_out(32, 32);
        let sheet = corner_sheet(&cut);
        let count = |name: &str| sheet.layers.iter().filter(|l| l.name == name).count();
        assert_eq!((count("flat"), count("folded")), (4, 4));
        words_stand_clear(&sheet);
    }

    /// Where one edge is shaped so that it ends flush, the folded end lies on the piece, not beside it.
    #[test]
    fn a_folded_end_does_not_look_out() {
        let cut = cut_out(32, 32);
        for kind in [CornerKind::Squared, CornerKind::Mirrored] {
            let (piece, corner) = corner_of(&cut, kind).unwrap();
            let shown = Shown::of(piece, corner).unwrap();
            let [k] = shown.order()[..] else {
                panic!("one edge is shaped")
            };
            let line: Vec<Point> = corner
                .line
                .iter()
                .map(|p| {
                    let v = (*p - corner.at) * shown.scale;
                    Point::new(v.x, -v.y)
                })
                .collect();
            for fold in shown.folds(k) {
                for p in line.iter().filter(|p| fold.beyond(**p) > 0.1) {
                    let turned = *p - fold.out * (2.0 * fold.beyond(*p));
                    let ring: Vec<Point> =
                        shown.cut.iter().chain(shown.cut.first()).copied().collect();
                    let from = ring
                        .windows(2)
                        .map(|w| {
                            geometry::Straight::between(w[0], w[1])
                                .distance(turned, NO_SQUARE_MM2)
                                .to_mm()
                        })
                        .fold(f64::INFINITY, f64::min);
                    let inside = geometry::contains(&shown.cut, turned);
                    assert!(inside || from < 0.3 * shown.scale, "{kind:?}: {from}");
                }
            }
        }
    }

    #[test]
    fn words_are_broken_between_words() {
        let lines = wrapped("a longer sentence that has to be broken", TYPE_WORDS, 20.0);
        assert!(lines.len() > 2);
        assert_eq!(lines.join(" "), "a longer sentence that has to be broken");
    }
}
