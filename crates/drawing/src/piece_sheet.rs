//! One pattern piece, true to scale: cut line, sewn line, grain, notches, folds, placements and words.

use draft::{Cut, InnerKind, Notch, Piece};
use geometry::{Affine, Point, Rect, Vec2, left_of};
use sewing::{CutPiece, On};
use trade::Length;

use crate::dimension::{arrow_head, dash_dot, unit};
use crate::lettering::{Taken, touches};
use crate::palette::{CONSTRUCTION, CUT_LINE, HAIRLINE, INK, NOTCH, Pen, SEWN_LINE};
use crate::piece_words::{allowance_figures, caption_words};
use crate::sheet::{Layer, Sheet, closed, on_paper, open};

/// No chord of a drawn curve is longer than this on the cloth.
const STEP: Length = Length::mm(2.0);
/// Depth of a notch (common practice: 4 to 6 mm, never as far as the seam).
const NOTCH_DEPTH_MM: f64 = 5.0;
/// Distance of the two cuts of a double notch (common practice: 5 to 6 mm).
const NOTCH_PAIR_MM: f64 = 6.0;
/// Notches print at least this long, and this far apart, however small the piece is printed.
const NOTCH_SHOWN_MM: f64 = 1.3;
const NOTCH_PAIR_SHOWN_MM: f64 = 0.9;
/// White round the drawing, as printed.
const MARGIN_MM: f64 = 2.0;
/// The box a thumbnail is meant for.
const THUMBNAIL_MM: f64 = 40.0;

/// What is written on a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceCaption {
    /// Style name or code; left out when empty.
    pub style: String,
    /// Size as tagged; left out when empty.
    pub size: String,
    /// Number of the piece in the list of pieces, from 1.
    pub number: usize,
    /// How the sheet will be printed: 1.0 at true size, 0.2 at 1:5. Words and lines are drawn larger
    /// in proportion, so that they print at the same size at any scale.
    pub scale: f64,
}

/// A piece on the drawing: everything already turned, scaled and mirrored by `map`.
pub(crate) struct Drawn {
    pub layers: Vec<Layer>,
    /// Everything drawn lies inside.
    pub bounds: Rect,
}

/// A piece as lines on the drawing, before any words.
pub(crate) struct Laid<'a> {
    pub piece: &'a Piece,
    pub pen: Pen,
    /// How many are cut of this shape.
    pub cut: Cut,
    /// Sewn edges in order.
    pub edges: Vec<Vec<Point>>,
    /// Allowances of the edges, on the cloth; `None` when no cut line is known.
    pub allowances: Vec<Option<Length>>,
    /// The cut line, or the sewn outline when no cut line is known.
    pub outer: Vec<Point>,
    /// The sewn outline.
    pub sewn: Vec<Point>,
    map: Affine,
    /// Drawing millimetres per cloth millimetre.
    pub factor: f64,
    /// Whether the map turns left into right: pattern y runs up, paper y down.
    flipped: bool,
}

impl<'a> Laid<'a> {
    fn new(piece: &'a Piece, cut: Option<&CutPiece>, map: Affine, pen: Pen) -> Laid<'a> {
        let edges: Vec<Vec<Point>> = piece
            .edges
            .iter()
            .map(|e| e.path.dense(STEP).iter().map(|p| map * *p).collect())
            .collect();
        let sewn: Vec<Point> = edges
            .iter()
            .flat_map(|e: &Vec<Point>| e[..e.len().saturating_sub(1)].iter().copied())
            .collect();
        let outer = match cut {
            Some(cut) if cut.outline.len() > 2 => cut.outline.iter().map(|p| map * *p).collect(),
            _ => sewn.clone(),
        };
        let allowances = piece
            .edges
            .iter()
            .map(|e| {
                let (_, a) = cut?.allowances.iter().find(|(name, _)| *name == e.name)?;
                Some(*a)
            })
            .collect();
        let det = map.determinant();
        Laid {
            piece,
            pen,
            cut: cut_of(piece, cut),
            edges,
            allowances,
            outer,
            sewn,
            map,
            factor: det.abs().sqrt(),
            flipped: det < 0.0,
        }
    }

    /// Away from the piece, square to an edge that runs along `along` on the drawing.
    pub fn outward(&self, along: Vec2) -> Vec2 {
        if self.flipped {
            left_of(along)
        } else {
            -left_of(along)
        }
    }

    /// How far it is from a point on the sewn line outward to the cut line, on the drawing.
    pub fn to_cut_line(&self, from: Point, outward: Vec2, allowance: Option<Length>) -> f64 {
        let asked = allowance.unwrap_or(Length::ZERO).to_mm() * self.factor;
        let n = self.outer.len();
        let mut nearest = f64::INFINITY;
        for k in 0..n {
            let (a, b) = (self.outer[k], self.outer[(k + 1) % n]);
            let d = b - a;
            let across = outward.cross(d);
            if across.abs() < 1e-12 {
                continue;
            }
            let t = (a - from).cross(d) / across;
            let s = (a - from).cross(outward) / across;
            if t > -1e-6 && (-1e-9..=1.0 + 1e-9).contains(&s) {
                nearest = nearest.min(t.max(0.0));
            }
        }
        // At a corner the ray may miss the allowance meant; then the stated one is used.
        if nearest <= asked * 1.5 + 1e-6 {
            nearest
        } else {
            asked
        }
    }
}

/// How many of a piece are cut to this cut line: left and right may differ.
fn cut_of(piece: &Piece, cut: Option<&CutPiece>) -> Cut {
    let Cut { as_drawn, mirrored } = piece.cut;
    match cut.map(|c| c.on) {
        Some(On::AsDrawn) => Cut {
            as_drawn,
            mirrored: 0,
        },
        Some(On::Mirrored) => Cut {
            as_drawn: 0,
            mirrored,
        },
        Some(On::Both) | None => piece.cut,
    }
}

/// One piece true to scale, with everything a cutter needs to read on it.
///
/// Coordinates are millimetres of cloth, y down, in the frame of the piece. Without a cut piece
/// only the sewn outline is drawn and no allowance is stated.
pub fn piece_sheet(piece: &Piece, cut: Option<&CutPiece>, caption: &PieceCaption) -> Sheet {
    let pen = Pen::for_scale(caption.scale);
    let drawn = draw(piece, cut, upright(), pen, Some(caption));
    let size = if caption.size.is_empty() {
        String::new()
    } else {
        format!(", {}", caption.size)
    };
    sheet_around(drawn, pen, format!("{}{size}", piece.id))
}

/// The piece without words, for lists: its lines print well about 40 mm tall or wide.
pub fn piece_thumbnail(piece: &Piece, cut: Option<&CutPiece>) -> Sheet {
    let laid = Laid::new(piece, cut, upright(), Pen::FULL);
    let bounds = bounds_of(&laid.outer);
    let pen = Pen::for_scale(THUMBNAIL_MM / bounds.width().max(bounds.height()));
    let drawn = draw(piece, cut, upright(), pen, None);
    sheet_around(drawn, pen, piece.id.to_string())
}

fn upright() -> Affine {
    crate::sheet::to_paper(0.0, 0.0)
}

fn sheet_around(drawn: Drawn, pen: Pen, title: String) -> Sheet {
    let room = drawn.bounds.inflate(pen.mm(MARGIN_MM), pen.mm(MARGIN_MM));
    Sheet {
        title,
        origin: room.origin(),
        width: Length::mm(room.width()),
        height: Length::mm(room.height()),
        layers: drawn.layers,
    }
}

/// The smallest upright rectangle round the points; a point at the origin when there are none.
pub(crate) fn bounds_of(points: &[Point]) -> Rect {
    let Some(first) = points.first() else {
        return Rect::ZERO;
    };
    let start = Rect::from_points(*first, *first);
    points.iter().fold(start, |r, p| r.union_pt(*p))
}

/// Draws a piece under a map (which may scale, turn and mirror).
pub(crate) fn draw(
    piece: &Piece,
    cut: Option<&CutPiece>,
    map: Affine,
    pen: Pen,
    caption: Option<&PieceCaption>,
) -> Drawn {
    let laid = Laid::new(piece, cut, map, pen);
    let part = format!("piece:{}", piece.id.code());
    let part = Some(part.as_str());
    let mut taken = Taken::default();

    let mut outline = Layer::named("outline");
    if cut.is_some() {
        outline.line(part, closed(&laid.outer), pen.stroke(INK, CUT_LINE));
        outline.line(part, closed(&laid.sewn), pen.stroke(INK, SEWN_LINE));
    } else {
        outline.line(part, closed(&laid.sewn), pen.stroke(INK, NOTCH));
    }
    let mut ring = laid.outer.clone();
    ring.extend(laid.outer.first().copied());
    taken.keep_clear_of(&ring);

    let mut bounds = bounds_of(&laid.outer);
    let mut lines = Layer::named("lines");
    for line in &piece.lines {
        let points: Vec<Point> = line.path.dense(STEP).iter().map(|p| map * *p).collect();
        match line.kind {
            InnerKind::Fold => {
                lines.line(part, dash_dot(&points, pen), pen.stroke(INK, HAIRLINE));
            }
            InnerKind::Placement => {
                let path = on_paper(&line.path, map);
                lines.line(part, path, pen.fine_dashes(CONSTRUCTION, HAIRLINE));
            }
        }
        taken.keep_clear_of(&points);
        // A placement may reach beyond the piece that carries it, as a pocket set over a seam does.
        bounds = bounds.union(bounds_of(&points));
    }

    let mut grain = Layer::named("grain");
    let (from, to) = (map * piece.grain.0, map * piece.grain.1);
    if let Some(along) = unit(to - from) {
        grain.line(part, open(&[from, to]), pen.stroke(INK, SEWN_LINE));
        let room = (to - from).hypot();
        arrow_head(&mut grain, pen, to, along, room);
        arrow_head(&mut grain, pen, from, -along, room);
        taken.keep_clear_of(&[from, to]);
    }

    let mut notches = Layer::named("notches");
    for notch in &piece.notches {
        for tick in ticks(&laid, notch) {
            notches.line(part, open(&tick), pen.stroke(INK, NOTCH));
            taken.keep_clear_of(&tick);
        }
    }

    let mut layers = vec![outline, lines, grain, notches];
    if let Some(caption) = caption {
        let mut figures = Layer::named("allowances");
        let room = allowance_figures(&laid, &mut taken, &mut figures, part);
        bounds = bounds.union(room.unwrap_or(bounds));
        let mut words = Layer::named("words");
        let room = caption_words(&laid, caption, bounds, &mut taken, &mut words, part);
        bounds = bounds.union(room);
        layers.extend([figures, words]);
    }
    Drawn { layers, bounds }
}

/// The cuts of a notch: from the cut line inward, square to the sewn edge.
fn ticks(laid: &Laid, notch: &Notch) -> Vec<[Point; 2]> {
    let Some(k) = laid.piece.edges.iter().position(|e| e.name == notch.edge) else {
        return Vec::new();
    };
    let path = &laid.piece.edges[k].path;
    let at = laid.map * path.point_at(notch.along);
    let ahead = laid.map * (path.point_at(notch.along) + path.direction_at(notch.along));
    let Some(along) = unit(ahead - at) else {
        return Vec::new();
    };
    let outward = laid.outward(along);
    let allowance = laid.allowances.get(k).copied().flatten();
    let depth = (NOTCH_DEPTH_MM * laid.factor).max(laid.pen.mm(NOTCH_SHOWN_MM));
    let apart = (NOTCH_PAIR_MM * laid.factor).max(laid.pen.mm(NOTCH_PAIR_SHOWN_MM));
    let shifts: &[f64] = if notch.double { &[-0.5, 0.5] } else { &[0.0] };
    shifts
        .iter()
        .map(|s| {
            let p = at + along * (s * apart);
            let reach = laid.to_cut_line(p, outward, allowance);
            // Inside the allowance where there is one; on a raw edge, into the piece.
            let depth = if reach > 0.5 * depth {
                depth.min(reach)
            } else {
                depth
            };
            [p + outward * reach, p + outward * (reach - depth)]
        })
        .collect()
}

/// Whether an upright box lies wholly inside a polygon.
pub(crate) fn box_inside(polygon: &[Point], r: Rect) -> bool {
    let n = polygon.len();
    geometry::contains(polygon, r.center())
        && (0..n).all(|k| !touches(r, polygon[k], polygon[(k + 1) % n]))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::samples::{ferryman, sewn, texts, words_stand_clear};
    use crate::sheet::Shape;
    use draft::{PieceId, Spec};

    fn caption(number: usize, scale: f64) -> PieceCaption {
        PieceCaption {
            style: "Ferryman".to_owned(),
            size: "32x32".to_owned(),
            number,
            scale,
        }
    }

    fn layer<'a>(sheet: &'a Sheet, name: &str) -> &'a Layer {
        sheet.layers.iter().find(|l| l.name == name).unwrap()
    }

    #[test]
    fn the_back_says_all_a_cutter_needs() {
        let garment = sewn(32, 32);
        let back = garment.pattern.piece(PieceId::Back).unwrap();
        let cut = garment
            .cut
            .iter()
            .find(|c| c.piece == PieceId::Back)
            .unwrap();
        let sheet = piece_sheet(back, Some(cut), &caption(2, 0.2));
        // Cut line and sewn line; three double notches; a grain line with two heads.
        assert_eq!(layer(&sheet, "outline").marks.len(), 2);
        assert_eq!(layer(&sheet, "notches").marks.len(), 2 * back.notches.len());
        assert_eq!(layer(&sheet, "grain").marks.len(), 3);
        let words: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
        assert!(words.contains(&"2 Back"), "{words:?}");
        assert!(words.contains(&"Ferryman 32x32"));
        assert!(words.contains(&"shell"));
        // Seat, inseam, hem, side and yoke seam each have their allowance.
        assert_eq!(layer(&sheet, "allowances").marks.len(), 5);
    }

    #[test]
    fn words_print_at_a_readable_size_at_any_scale_and_never_collide() {
        let garment = sewn(32, 32);
        for scale in [1.0, 0.5, 0.2, 0.1] {
            for (k, cut) in garment.cut.iter().enumerate() {
                let piece = garment.pattern.piece(cut.piece).unwrap();
                let sheet = piece_sheet(piece, Some(cut), &caption(k + 1, scale));
                for text in texts(&sheet) {
                    assert!(text.size.to_mm() * scale >= 2.2);
                }
                words_stand_clear(&sheet);
            }
        }
    }

    #[test]
    fn notches_are_cut_square_and_stop_before_the_seam() {
        let garment = sewn(32, 32);
        let front = garment.pattern.piece(PieceId::Front).unwrap();
        let cut = garment
            .cut
            .iter()
            .find(|c| c.piece == PieceId::Front)
            .unwrap();
        let laid = Laid::new(front, Some(cut), upright(), Pen::FULL);
        let knee = front
            .notches
            .iter()
            .find(|n| n.name == "outseam knee")
            .unwrap();
        let [tick] = ticks(&laid, knee)[..] else {
            panic!("one cut")
        };
        let sewn = front.notch_point(knee).unwrap();
        let sewn = Point::new(sewn.x, -sewn.y);
        let (_, allowance) = cut.allowances.iter().find(|(e, _)| *e == "side").unwrap();
        assert!(((tick[0] - sewn).hypot() - allowance.to_mm()).abs() < 0.2);
        assert!(((tick[1] - tick[0]).hypot() - NOTCH_DEPTH_MM).abs() < 1e-6);
        assert!((tick[1] - sewn).hypot() < allowance.to_mm());
    }

    #[test]
    fn thumbnails_carry_no_words() {
        let garment = sewn(28, 30);
        for piece in &garment.pattern.pieces {
            let cut = garment.cut.iter().find(|c| c.piece == piece.id);
            assert!(texts(&piece_thumbnail(piece, cut)).is_empty());
        }
    }

    #[test]
    fn a_chart_of_noughts_and_a_scale_of_none_still_draw() {
        let mut doc = ferryman().style;
        doc.chart.clear();
        let pattern = draft::draft(&Spec::of(&doc, style::Size::new(32, 32))).pattern;
        for piece in &pattern.pieces {
            for scale in [0.0, f64::NAN, 1e9] {
                let sheet = piece_sheet(piece, None, &caption(0, scale));
                assert!(crate::svg(&sheet).ends_with("</svg>\n"));
            }
        }
    }

    #[test]
    fn without_a_cut_line_nothing_is_said_of_allowances() {
        let garment = sewn(32, 32);
        let yoke = garment.pattern.piece(PieceId::Yoke).unwrap();
        let sheet = piece_sheet(yoke, None, &caption(3, 0.2));
        assert!(layer(&sheet, "allowances").marks.is_empty());
        let lines = &layer(&sheet, "outline").marks;
        assert!(matches!(
            lines[..],
            [crate::sheet::Mark {
                shape: Shape::Line { .. },
                ..
            }]
        ));
    }
}
