//! One cut piece, true to scale: cut line with its corners, sewn line, grain, notches, drill holes,
//! folds, placements and words.

use cutting::{CutNotch, CutPiece, DOUBLE_NOTCH, Drill, NotchKind};
use draft::InnerKind;
use drawing::dimension::{arrow_head, dash_dot, unit};
use drawing::lettering::Taken;
use drawing::palette::{CONSTRUCTION, CUT_LINE, HAIRLINE, INK, NOTCH, Pen, SEWN_LINE};
use drawing::{Layer, Sheet, circle, closed, open};
use geometry::{Affine, Point, Rect, Vec2, bounds_of};
use trade::Length;
use words::{Words, say};

use crate::laid_piece::{Laid, PieceCaption};
use crate::piece_words::{Place, allowance_figures, caption_words, which_copy};

/// Notches print at least this long, and this far apart, however small the piece is printed.
const NOTCH_SHOWN_MM: f64 = 1.3;
const NOTCH_PAIR_SHOWN_MM: f64 = 0.9;
/// Printed radius of the ring round a drill hole, and the reach of its cross.
const DRILL_RING_MM: f64 = 0.8;
const DRILL_CROSS_MM: f64 = 1.5;
/// White round the drawing, as printed.
const MARGIN_MM: f64 = 2.0;
/// The box a thumbnail is meant for.
const THUMBNAIL_MM: f64 = 40.0;

/// A piece on the drawing: everything already turned, scaled and mirrored by `map`.
pub(crate) struct Drawn {
    pub layers: Vec<Layer>,
    /// Everything drawn lies inside.
    pub bounds: Rect,
}

/// One cut piece true to scale, with everything a cutter needs to read on it.
///
/// Coordinates are millimetres of cloth, y down, in the frame of the piece.
pub fn piece_sheet(piece: &CutPiece, caption: &PieceCaption, words: &Words) -> Sheet {
    sheet_of(piece, caption, words, Place::InsideOrBeside)
}

/// The same for a page that says of itself what the piece is: where the piece has no room for its words, they are
/// left out.
pub fn piece_figure(piece: &CutPiece, caption: &PieceCaption, words: &Words) -> Sheet {
    sheet_of(piece, caption, words, Place::InsideOrNowhere)
}

fn sheet_of(piece: &CutPiece, caption: &PieceCaption, words: &Words, place: Place) -> Sheet {
    let pen = Pen::for_scale(caption.scale);
    let drawn = draw(piece, upright(), pen, Some((caption, words, place)));
    let title = words.say(say::CutPieceTitle {
        piece: piece.said(),
        size: piece.label.size.to_string(),
    });
    sheet_around(drawn, pen, title)
}

/// The piece without words, for lists: its lines print well about 40 mm tall or wide.
pub fn piece_thumbnail(piece: &CutPiece, words: &Words) -> Sheet {
    let bounds = bounds_of(&piece.cut);
    let pen = Pen::for_scale(THUMBNAIL_MM / bounds.width().max(bounds.height()));
    let drawn = draw(piece, upright(), pen, None);
    sheet_around(drawn, pen, words.say(piece.said()))
}

fn upright() -> Affine {
    drawing::to_paper(0.0, 0.0)
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

/// Draws a piece as it is cut, under a map (which may scale, turn and mirror).
pub(crate) fn draw(
    piece: &CutPiece,
    map: Affine,
    pen: Pen,
    caption: Option<(&PieceCaption, &Words, Place)>,
) -> Drawn {
    let words = pen.enlarged(caption.map_or(1.0, |(caption, ..)| caption.type_size));
    let map = map * piece.as_cut();
    let laid = Laid::new(piece, map, pen, words);
    let part = format!("piece:{}", piece.piece.code());
    let part = Some(part.as_str());
    let mut taken = Taken::default();

    let mut outline = Layer::named("outline");
    outline.line(part, closed(&laid.outer), pen.stroke(INK, CUT_LINE));
    outline.line(part, closed(&laid.sewn), pen.stroke(INK, SEWN_LINE));
    let mut ring = laid.outer.clone();
    ring.extend(laid.outer.first().copied());
    taken.keep_clear_of(&ring);
    let mut bounds = bounds_of(&laid.outer);

    let mut lines = Layer::named("lines");
    for line in &piece.inner {
        let points: Vec<Point> = line.line.iter().map(|p| map * *p).collect();
        match line.kind {
            InnerKind::Fold => {
                lines.line(part, dash_dot(&points, pen), pen.stroke(INK, HAIRLINE));
            }
            InnerKind::Placement => {
                lines.line(part, open(&points), pen.fine_dashes(CONSTRUCTION, HAIRLINE));
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
        arrow_head(&mut grain, pen, to, along, Length::mm(room));
        arrow_head(&mut grain, pen, from, -along, Length::mm(room));
        taken.keep_clear_of(&[from, to]);
    }

    let mut notches = Layer::named("notches");
    for notch in &piece.notches {
        for tick in ticks(&laid, notch) {
            let stroke = match notch.kind {
                NotchKind::Slit => pen.stroke(INK, NOTCH),
                NotchKind::Drawn => pen
                    .stroke(INK, HAIRLINE)
                    .dashed(pen.length(Length::mm(0.5)), pen.length(Length::mm(0.3))),
            };
            notches.line(part, open(&tick), stroke);
            taken.keep_clear_of(&tick);
        }
    }
    let mut drills = Layer::named("drills");
    for drill in &piece.drills {
        mark_drill(&mut drills, &laid, drill, part);
        let (at, half) = (map * drill.at, pen.mm(DRILL_CROSS_MM));
        taken
            .boxes
            .push(Rect::from_center_size(at, (2.0 * half, 2.0 * half)));
    }

    let mut layers = vec![outline, lines, grain, notches, drills];
    if let Some((caption, say, place)) = caption {
        let mut words = Layer::named("words");
        let mut figures = Layer::named("allowances");
        let mut grow = |room: Option<Rect>| bounds = bounds.union(room.unwrap_or(bounds));
        grow(which_copy(&laid, say, &mut taken, &mut words, part));
        grow(allowance_figures(
            &laid,
            say,
            &mut taken,
            &mut figures,
            part,
        ));
        let said = (caption, say, place);
        let room = caption_words(&laid, said, bounds, &mut taken, &mut words, part);
        bounds = bounds.union(room);
        layers.extend([figures, words]);
    }
    Drawn { layers, bounds }
}

/// A ring with a cross through it, as drill holes are marked (common practice).
fn mark_drill(layer: &mut Layer, laid: &Laid, drill: &Drill, part: Option<&str>) {
    let pen = laid.pen;
    let at = laid.map * drill.at;
    let stroke = pen.stroke(INK, HAIRLINE);
    layer.line(
        part,
        circle(at, pen.length(Length::mm(DRILL_RING_MM))),
        stroke,
    );
    let reach = pen.mm(DRILL_CROSS_MM);
    for arm in [Vec2::new(reach, 0.0), Vec2::new(0.0, reach)] {
        layer.line(part, open(&[at - arm, at + arm]), stroke);
    }
}

/// The cuts of a notch as they are made, but never too small to see.
fn ticks(laid: &Laid, notch: &CutNotch) -> Vec<[Point; 2]> {
    let at = laid.map * notch.at;
    let (Some(into), Some(beside)) = (
        unit(laid.map * (notch.at + notch.into) - at),
        unit(laid.map * (notch.at + notch.beside) - at),
    ) else {
        return Vec::new();
    };
    let depth = (notch.depth.to_mm() * laid.factor).max(laid.pen.mm(NOTCH_SHOWN_MM));
    let apart = (DOUBLE_NOTCH.to_mm() * laid.factor).max(laid.pen.mm(NOTCH_PAIR_SHOWN_MM));
    let shifts: &[f64] = if notch.double { &[-0.5, 0.5] } else { &[0.0] };
    shifts
        .iter()
        .map(|s| {
            let from = at + beside * (s * apart);
            [from, from + into * depth]
        })
        .collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use crate::samples::{cut_out, ferryman, plan, texts, words_stand_clear};
    use cutting::{CornerKind, CutSize, cut};
    use draft::PieceId;
    use sewing::make;

    fn caption(number: usize, scale: f64) -> PieceCaption {
        PieceCaption {
            number: Some(number),
            style_and_size: true,
            scale,
            type_size: 1.0,
        }
    }

    fn layer<'a>(sheet: &'a Sheet, name: &str) -> &'a Layer {
        sheet.layers.iter().find(|l| l.name == name).unwrap()
    }

    fn piece(cut: &CutSize, id: PieceId) -> &CutPiece {
        cut.of(id).next().unwrap()
    }

    #[test]
    fn the_back_says_all_a_cutter_needs() {
        let cut = cut_out(32, 32);
        let back = piece(&cut, PieceId::Back);
        let sheet = piece_sheet(back, &caption(2, 0.2), Words::english());
        // Cut line and sewn line; every cut of every notch; a grain line with two heads; a ring and two
        // arms for each drill hole.
        assert_eq!(layer(&sheet, "outline").marks.len(), 2);
        let cuts: usize = back.notches.iter().map(|n| n.cuts().len()).sum();
        assert_eq!(layer(&sheet, "notches").marks.len(), cuts);
        assert_eq!(layer(&sheet, "grain").marks.len(), 3);
        assert!(!back.drills.is_empty());
        assert_eq!(layer(&sheet, "drills").marks.len(), 3 * back.drills.len());
        let words: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
        for said in ["2 Back", "SY-101 Ferryman", "size 32x32", "Tideline"] {
            let said = said.to_lowercase();
            let found = words.iter().any(|w| w.to_lowercase().contains(&said));
            assert!(found, "{said}: {words:?}");
        }
        // Seat, inseam, hem and yoke seam have their allowance; the outseam ends at the cloth's edge.
        assert_eq!(layer(&sheet, "allowances").marks.len(), 5);
        assert!(words.contains(&"cloth's own edge, 12.7"), "{words:?}");
    }

    #[test]
    fn corners_are_drawn_as_they_are_cut() {
        let cut = cut_out(32, 32);
        let back = piece(&cut, PieceId::Back);
        let shaped = back.corners.iter().filter(|c| c.kind() != CornerKind::Full);
        assert!(shaped.count() > 0);
        let sheet = piece_sheet(back, &caption(2, 1.0), Words::english());
        let drawn = match &layer(&sheet, "outline").marks[0].shape {
            drawing::Shape::Line { path, .. } => geometry::bounds(path),
            other => panic!("{other:?}"),
        };
        let meant = bounds_of(&back.cut);
        assert!((drawn.width() - meant.width()).abs() < 1e-9);
        assert!((drawn.height() - meant.height()).abs() < 1e-9);
    }

    /// Who lays a drawn piece on cloth, face up, cuts the copy it is for: the mirror image where only that is cut.
    #[test]
    fn a_piece_is_drawn_as_it_is_cut() {
        let cut = cut_out(32, 32);
        let mut turned = 0;
        for piece in &cut.pieces {
            let sheet = piece_sheet(piece, &caption(1, 1.0), Words::english());
            let drawn = match &layer(&sheet, "outline").marks[0].shape {
                drawing::Shape::Line { path, .. } => geometry::bounds(path),
                other => panic!("{other:?}"),
            };
            let on_paper = |points: Vec<Point>| {
                let down: Vec<Point> = points.iter().map(|p| upright() * *p).collect();
                bounds_of(&down)
            };
            let plain = on_paper(piece.cut.clone());
            let over = on_paper(piece.cut.iter().map(|p| piece.turned_over(*p)).collect());
            let wanted = if piece.is_cut_mirrored() { over } else { plain };
            let off = (drawn.x0 - wanted.x0)
                .abs()
                .max((drawn.x1 - wanted.x1).abs());
            assert!(off < 1e-6, "{}: {off}", piece.code());
            if piece.is_cut_mirrored() {
                turned += usize::from((plain.x0 - over.x0).abs() > 1.0);
                let words: Vec<String> = texts(&sheet).iter().map(|t| t.words.clone()).collect();
                assert!(words.iter().all(|w| !w.contains("mirrored")), "{words:?}");
            }
        }
        assert!(
            turned > 0,
            "only {turned} pieces differ from their mirror image"
        );
    }

    #[test]
    fn words_print_at_a_readable_size_at_any_scale_and_never_collide() {
        let cut = cut_out(32, 32);
        for (scale, type_size) in [(1.0, 2.0), (1.0, 1.0), (0.5, 1.0), (0.2, 1.0), (0.1, 1.0)] {
            for (k, piece) in cut.pieces.iter().enumerate() {
                let caption = PieceCaption {
                    type_size,
                    ..caption(k + 1, scale)
                };
                let sheet = piece_sheet(piece, &caption, Words::english());
                for text in texts(&sheet) {
                    assert!(text.size.to_mm() * scale >= 2.2);
                }
                words_stand_clear(&sheet);
            }
        }
    }

    #[test]
    fn what_is_on_one_copy_only_is_said() {
        let loaded = ferryman();
        let garment = make(&loaded.style, &loaded.collection, loaded.style.sizes.base);
        let cut = cut(&garment, &plan());
        let facing = piece(&cut, PieceId::PocketFacing);
        let one_copy = facing.inner.iter().any(|l| l.on != sewing::On::Both);
        assert!(one_copy && facing.as_drawn > 0 && facing.mirrored > 0);
        let sheet = piece_sheet(facing, &caption(7, 0.5), Words::english());
        assert!(texts(&sheet).iter().any(|t| t.words == "right only"));
    }

    #[test]
    fn thumbnails_carry_no_words() {
        for piece in &cut_out(28, 30).pieces {
            assert!(texts(&piece_thumbnail(piece, Words::english())).is_empty());
        }
    }

    #[test]
    fn a_chart_of_noughts_and_a_scale_of_none_still_draw() {
        let loaded = ferryman();
        let mut doc = loaded.style;
        doc.chart.clear();
        let garment = make(&doc, &loaded.collection, style::Size::new(32, 32));
        for piece in &cut(&garment, &plan()).pieces {
            for scale in [0.0, f64::NAN, 1e9] {
                let sheet = piece_sheet(piece, &caption(0, scale), Words::english());
                assert!(drawing::svg(&sheet).ends_with("</svg>\n"));
            }
        }
    }
}
