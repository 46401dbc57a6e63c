//! What the lines and marks on piece sheets are, each drawn once with its words beside it.

use cutting::{CutSize, DOUBLE_NOTCH, DRILL_INSIDE, NotchKind};
use drawing::dimension::{arrow_head, dash_dot};
use drawing::lettering::{CAPITALS, text_width};
use drawing::palette::{CONSTRUCTION, CUT_LINE, HAIRLINE, INK, NOTCH, Pen, SEWN_LINE, TYPE_WORDS};
use drawing::{Anchor, Layer, Sheet, Text, circle, open};
use geometry::{Point, Vec2};
use trade::Length;
use words::{Words, key, say};

use crate::piece_words::figure;

/// Width of a mark, from it to its words, from one line to the next and between the two columns.
const MARK_MM: f64 = 12.0;
const BESIDE_MM: f64 = 3.0;
const LINE_MM: f64 = 6.0;
const BETWEEN_MM: f64 = 8.0;

/// What is marked.
#[derive(Clone, Copy)]
enum Mark {
    CutLine,
    SewnLine,
    Fold,
    Placement,
    Grain,
    Slit,
    Double,
    Drawn,
    Drill,
}

/// The marks that stand on the pieces of a size, in two columns at their printed size.
pub fn mark_legend(cut: &CutSize, words: &Words) -> Sheet {
    let entries = entries(cut, words);
    let mut layer = Layer::named("legend");
    let rows = entries.len().div_ceil(2);
    let mut left = 0.0;
    for column in entries.chunks(rows.max(1)) {
        let mut wide: f64 = 0.0;
        for (k, (mark, told)) in column.iter().enumerate() {
            let middle = Point::new(left, LINE_MM * (k as f64 + 0.5));
            draw(&mut layer, *mark, middle);
            wide = wide.max(text_width(told, TYPE_WORDS).to_mm());
            layer.text(None, beside(told, middle));
        }
        left += MARK_MM + BESIDE_MM + wide + BETWEEN_MM;
    }
    Sheet {
        title: words.legend_title().to_owned(),
        origin: Point::new(-1.0, 0.0),
        width: Length::mm((left - BETWEEN_MM).max(0.0) + 2.0),
        height: Length::mm(LINE_MM * rows as f64),
        layers: vec![layer],
    }
}

fn entries(cut: &CutSize, words: &Words) -> Vec<(Mark, String)> {
    let notches = || cut.pieces.iter().flat_map(|piece| &piece.notches);
    let mut depths: Vec<Length> = notches().map(|notch| notch.depth).collect();
    depths.sort_by(|a, b| a.to_mm().total_cmp(&b.to_mm()));
    let (least, most) = (depths.first().copied(), depths.last().copied());
    let depth = match (least.map(figure), most.map(figure)) {
        (Some(least), Some(most)) if least != most => words.say(say::LegendFromTo { least, most }),
        (Some(depth), _) => depth,
        _ => String::new(),
    };
    let named = |key| words.named(key).to_owned();
    let any = |is: NotchKind| notches().any(|notch| notch.kind == is);
    let mut out = vec![
        (Mark::CutLine, named(key::LEGEND_CUT_LINE)),
        (Mark::SewnLine, named(key::LEGEND_SEWN_LINE)),
        (Mark::Fold, named(key::LEGEND_FOLD)),
        (Mark::Placement, named(key::LEGEND_PLACEMENT)),
        (Mark::Grain, named(key::LEGEND_GRAIN)),
    ];
    if any(NotchKind::Slit) {
        out.push((Mark::Slit, words.legend_slit(depth)));
    }
    if notches().any(|notch| notch.double) {
        out.push((Mark::Double, words.legend_double(figure(DOUBLE_NOTCH))));
    }
    if any(NotchKind::Drawn) {
        out.push((Mark::Drawn, named(key::LEGEND_DRAWN)));
    }
    if cut.pieces.iter().any(|piece| !piece.drills.is_empty()) {
        out.push((Mark::Drill, words.legend_drill(figure(DRILL_INSIDE))));
    }
    out
}

fn beside(words: &str, middle: Point) -> Text {
    let base = TYPE_WORDS.to_mm() * CAPITALS / 2.0;
    Text {
        at: middle + Vec2::new(MARK_MM + BESIDE_MM, base),
        words: words.to_owned(),
        size: TYPE_WORDS,
        anchor: Anchor::Start,
        turn_deg: 0.0,
        colour: INK,
        bold: false,
    }
}

/// A mark as it stands on a piece, from a point at its left end on.
fn draw(layer: &mut Layer, mark: Mark, from: Point) {
    let pen = Pen::FULL;
    let to = from + Vec2::new(MARK_MM, 0.0);
    let middle = from.midpoint(to);
    let tick = |layer: &mut Layer, x: f64, stroke| {
        let foot = middle + Vec2::new(x, 1.4);
        layer.line(None, open(&[foot, foot - Vec2::new(0.0, 2.4)]), stroke);
    };
    let edge = [from + Vec2::new(0.0, 1.4), to + Vec2::new(0.0, 1.4)];
    match mark {
        Mark::CutLine => layer.line(None, open(&[from, to]), pen.stroke(INK, CUT_LINE)),
        Mark::SewnLine => layer.line(None, open(&[from, to]), pen.stroke(INK, SEWN_LINE)),
        Mark::Fold => layer.line(None, dash_dot(&[from, to], pen), pen.stroke(INK, HAIRLINE)),
        Mark::Placement => {
            layer.line(
                None,
                open(&[from, to]),
                pen.fine_dashes(CONSTRUCTION, HAIRLINE),
            );
        }
        Mark::Grain => {
            layer.line(None, open(&[from, to]), pen.stroke(INK, SEWN_LINE));
            let way = Vec2::new(1.0, 0.0);
            arrow_head(layer, pen, to, way, Length::mm(MARK_MM));
            arrow_head(layer, pen, from, -way, Length::mm(MARK_MM));
        }
        Mark::Slit | Mark::Double | Mark::Drawn => {
            layer.line(None, open(&edge), pen.stroke(INK, CUT_LINE));
            let slit = pen.stroke(INK, NOTCH);
            match mark {
                Mark::Double => {
                    tick(layer, -0.8, slit);
                    tick(layer, 0.8, slit);
                }
                Mark::Drawn => {
                    let drawn = pen.stroke(INK, HAIRLINE);
                    tick(layer, 0.0, drawn.dashed(Length::mm(0.5), Length::mm(0.3)));
                }
                _ => tick(layer, 0.0, slit),
            }
        }
        Mark::Drill => {
            let stroke = pen.stroke(INK, HAIRLINE);
            layer.line(None, circle(middle, Length::mm(0.8)), stroke);
            for arm in [Vec2::new(1.5, 0.0), Vec2::new(0.0, 1.5)] {
                layer.line(None, open(&[middle - arm, middle + arm]), stroke);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::samples::{cut_out, texts, words_stand_clear};

    #[test]
    fn every_mark_on_the_pieces_is_told_with_its_depth() {
        let sheet = mark_legend(&cut_out(32, 32), Words::english());
        words_stand_clear(&sheet);
        let all: Vec<&str> = texts(&sheet).iter().map(|t| t.words.as_str()).collect();
        for said in ["slit", "drill mark", "seam line", "drawn"] {
            assert!(all.iter().any(|w| w.contains(said)), "{said}: {all:?}");
        }
        let depth = figure(cutting::NOTCH_DEPTH);
        assert!(
            all.iter().any(|w| w.contains(&format!("{depth} mm deep"))),
            "{all:?}"
        );
    }
}
