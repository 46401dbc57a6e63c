//! Dimensions of a section: rows and widths from the seam line.

use geometry::tolerance::SAME_MM;
use geometry::{Point, Vec2};
use trade::Length;
use words::{Words, key, say};

use super::model::{RowOf, Section, heights};
use super::page::{CLEAR, Page};
use crate::dimension::{arrow_head, dash_dot};
use crate::lettering::{CAPITALS, centred, text_box};
use crate::palette::{CONSTRUCTION, HAIRLINE, Pen};
use crate::sheet::{Anchor, Layer, Stroke, Text, open};

/// One dimension line, between two places on the section, millimetres.
pub(super) struct Measure {
    from: f64,
    to: f64,
    pub words: String,
    /// Whether it measures a row.
    row: bool,
}

impl Measure {
    /// How far it reaches to the right of the seam line.
    pub fn right(&self) -> f64 {
        self.from.max(self.to).max(0.0)
    }
}

/// The dimensions of a section, those nearest to the seam line first. A drawing without a list shows
/// those of rows and finished widths alone.
pub(super) fn measures(section: &Section, listed: bool, words: &Words) -> Vec<Measure> {
    let mut found: Vec<Measure> = section
        .rows
        .iter()
        .filter(|r| matches!(r.row, RowOf::Numbered(_)) && r.offset.to_mm().abs() >= 0.5)
        // A row drawn elsewhere than stated, around an edge or in an allowance, is not measured.
        .filter(|r| (r.from.x + r.offset.to_mm()).abs() < SAME_MM)
        .map(|r| Measure {
            from: 0.0,
            to: r.from.x,
            words: r.offset.abs().show_mm(),
            row: true,
        })
        .collect();
    found.sort_by(|a, b| a.to.abs().total_cmp(&b.to.abs()));
    found.dedup_by(|b, a| (b.to - a.to).abs() < SAME_MM);
    let inner = [
        key::SECTION_WIDTH_ALLOWANCE,
        key::SECTION_WIDTH_TURNED_IN,
        key::SECTION_WIDTH_FIRST_ROW,
    ];
    let widths = section
        .widths
        .iter()
        .filter(|w| listed || !inner.contains(&w.name))
        .filter(|w| (w.to - w.from).to_mm().abs() > 0.05);
    found.extend(widths.map(|w| Measure {
        from: -w.from.to_mm(),
        to: -w.to.to_mm(),
        words: words.say(say::SectionWidth {
            length: (w.to - w.from).abs().show_mm(),
            name: w.name,
        }),
        row: false,
    }));
    found
}

impl Page<'_> {
    pub fn dimensions(&mut self, measures: &[Measure]) -> Layer {
        let mut layer = Layer::named("dimensions");
        let thin = Stroke::plain(CONSTRUCTION, HAIRLINE);
        let zero = self.scale.right(Point::ORIGIN).x;
        let size = self.look.figures;
        let pen = Pen::for_scale(if self.look.listed { 1.0 } else { 1.6 });
        // The words of what lies right of the seam line stand right of all of it.
        let farthest = measures.iter().map(Measure::right).fold(0.0, f64::max);
        let beyond = self.scale.right(Point::new(farthest, 0.0)).x;
        for (k, measure) in measures.iter().enumerate() {
            let y = self.level(k);
            let ends = [measure.from, measure.to].map(|x| self.scale.at(Point::new(x, 0.0)).x);
            for (x, end) in [measure.from, measure.to].into_iter().zip(ends) {
                if x == 0.0 {
                    continue;
                }
                let foot = heights(&self.section.plies, x)
                    .map_or(self.foot, |(_, foot)| self.scale.at(Point::new(x, foot)).y);
                let below = if measure.row { 1.6 } else { CLEAR * 0.5 };
                let line = [
                    Point::new(end, (foot + below).min(y)),
                    Point::new(end, y + 0.6),
                ];
                layer.line(None, open(&line), thin);
                self.taken.keep_clear_of(&line);
            }
            let [a, b] = ends.map(|x| Point::new(x, y));
            layer.line(None, open(&[a, b]), thin);
            self.taken.keep_clear_of(&[a, b]);
            let room = (b.x - a.x).abs();
            if room > SAME_MM {
                let way = Vec2::new((b.x - a.x).signum(), 0.0);
                arrow_head(&mut layer, pen, b, way, Length::mm(room));
                arrow_head(&mut layer, pen, a, -way, Length::mm(room));
            }
            let text = Text {
                at: Point::new(
                    if measure.right() > 0.0 { beyond } else { zero } + 1.0,
                    y + size.to_mm() * CAPITALS / 2.0,
                ),
                anchor: Anchor::Start,
                ..centred(&measure.words, size, Point::ORIGIN)
            };
            self.taken.boxes.push(text_box(&text));
            layer.text(None, text);
        }
        if let Some(last) = measures.len().checked_sub(1) {
            let line = [
                Point::new(zero, self.top - CLEAR),
                Point::new(zero, self.level(last) + 0.6),
            ];
            let pen = Pen::for_scale(if self.look.listed { 1.0 } else { 2.0 });
            layer.line(None, dash_dot(&line, pen), thin);
            self.taken.keep_clear_of(&line);
        }
        layer
    }

    /// The height of a dimension line on the page.
    pub fn level(&self, k: usize) -> f64 {
        self.foot + CLEAR + self.look.level * (k as f64 + 0.55)
    }
}
