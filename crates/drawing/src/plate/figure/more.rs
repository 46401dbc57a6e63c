//! What some figures carry beyond cloth, rows and dimensions: drawings broken in the middle, places
//! told along a tape, sewing arrows, the maker's own lines and words, and a section beside them.

use geometry::tolerance::NO_LENGTH_MM;
use geometry::{Affine, BezPath, Point, Rect, Vec2, left_of};
use trade::{Colour, Length};
use words::Key;

use super::Figure;
use crate::dimension::{arrow_head, unit};
use crate::lettering::{centred, text_box, text_width, too_small_to_read};
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, PAPER, Pen, QUIET, TYPE_FIGURES};
use crate::plate::measure::Side;
use crate::plate::tone::{AROUND, BELOW};
use crate::plate::words::{is_unit, with_units};
use crate::sheet::{Layer, Sheet, Stroke, closed, open};

/// Height of a break line's waves, and from crest to crest, on paper.
const WAVE_MM: f64 = 0.7;
const CREST_MM: f64 = 6.0;
/// From the drawing to the words at the foot of a tape's places, and from line to line.
const TAPE_MM: f64 = 3.0;
const TAPE_LINE_MM: f64 = 3.1;
/// How far aside the words of a place may stand.
const BENT_MM: f64 = 7.0;

/// Lettering on patch and label: lines at most, from line to line in ems, type at most and at least on paper.
const MOST_LINES: usize = 12;
const LETTER_LINE: f64 = 1.2;
const MOST_LETTER_MM: f64 = 9.0;

/// Height of the strokes that stand for letters too small to be read, in ems.
const STROKE_EMS: f64 = 0.4;

/// A place along a tape: where it is, and its words, one line each.
pub(crate) struct Spot {
    pub at: Point,
    pub words: Vec<String>,
}

impl Figure<'_> {
    /// A further stretch of a broken drawing: what is drawn from now on shows within these corners.
    pub fn next_window(&mut self, corners: &[Point]) {
        let before = self.body;
        self.window(corners);
        if let (Some(a), Some(b)) = (before, self.body) {
            self.body = Some(a.union(b));
        }
    }

    /// The wavy line where the drawing breaks off, between two points of the frame; `out` points to
    /// what is left out. To be drawn after everything it cuts.
    pub fn break_line(&mut self, from: Point, to: Point, out: Vec2) {
        let (a, b) = (self.map * from, self.map * to);
        let away = unit(self.map * (from + out) - a);
        let (Some(along), Some(away)) = (unit(b - a), away) else {
            return;
        };
        let long = (b - a).hypot();
        let steps = (long / 0.5).clamp(4.0, 800.0) as u32;
        let wave: Vec<Point> = (0..=steps)
            .map(|k| {
                let s = long * f64::from(k) / f64::from(steps);
                let turn = std::f64::consts::TAU * s / CREST_MM;
                a + along * s + away * (WAVE_MM * (turn.sin() - 1.0))
            })
            .collect();
        let mut beyond = wave.clone();
        beyond.extend([b + away * 2.0, a + away * 2.0]);
        self.taken.keep_clear_of(&wave);
        let mut layer = Layer::named("break");
        layer.area(None, closed(&beyond), PAPER, None);
        layer.line(None, open(&wave), Stroke::plain(CONSTRUCTION, AROUND));
        self.layers.push(layer);
    }

    /// A dimension whose line runs over a break: its value is that on the whole cloth.
    pub fn over_break(
        &mut self,
        side: Side,
        (from, to): (Point, Point),
        value: Length,
        name: Option<Key>,
    ) {
        let ends = (self.map * from, self.map * to);
        self.dimensioned(side, ends, value, name);
    }

    /// Places told as on a tape laid along the lower edge of the drawing: a tick down from each and its words
    /// below, on as many levels as keeps them apart.
    pub fn tape(&mut self, spots: &[Spot]) {
        let Some(body) = self.body else { return };
        let mut sorted: Vec<(Point, &[String])> = spots
            .iter()
            .map(|s| (self.map * s.at, s.words.as_slice()))
            .filter(|(p, _)| p.x >= body.x0 - 0.01 && p.x <= body.x1 + 0.01)
            .collect();
        sorted.sort_by(|a, b| a.0.x.total_cmp(&b.0.x));
        let tall = |words: &[String]| TAPE_LINE_MM * words.len() as f64 + 1.6;
        let level_mm = sorted.iter().map(|s| tall(s.1)).fold(0.0, f64::max);
        // How far words reach on each level, and the ticks that run down through it.
        let mut ends: Vec<f64> = Vec::new();
        let mut layer = Layer::named("tape");
        let mut foot = body.y1;
        for (p, words) in sorted {
            let wide = words
                .iter()
                .map(|w| text_width(w, TYPE_FIGURES).to_mm())
                .fold(0.0, f64::max);
            let half = wide / 2.0 + 0.8;
            let free = |end: f64| (end + half).max(p.x);
            // The first level on which the words stand no further aside than their tick may bend.
            let level = ends
                .iter()
                .position(|end| free(*end) - p.x <= BENT_MM)
                .unwrap_or(ends.len());
            if level >= ends.len() {
                ends.push(f64::NEG_INFINITY);
            }
            let middle = ends.get(level).map_or(p.x, |end| free(*end));
            // On the levels above, later words keep clear of the tick.
            for (n, end) in ends.iter_mut().enumerate() {
                if n < level {
                    *end = end.max(p.x + 0.6);
                } else if n == level {
                    *end = middle + half;
                }
            }
            let top = body.y1 + TAPE_MM + level_mm * level as f64;
            let tick = [
                Point::new(p.x, p.y.min(body.y1)),
                Point::new(p.x, top - 1.4),
                Point::new(middle, top),
            ];
            layer.line(None, open(&tick), Stroke::plain(CONSTRUCTION, HAIRLINE));
            self.taken.keep_clear_of(&tick);
            for (k, line) in words.iter().enumerate() {
                let y = top + 1.0 + TAPE_LINE_MM * (k as f64 + 0.5);
                let mut text = centred(line, TYPE_FIGURES, Point::new(middle, y));
                if k > 0 {
                    text.colour = QUIET;
                }
                self.taken.boxes.push(text_box(&text));
                layer.text(None, text);
            }
            foot = foot.max(top + tall(words));
        }
        self.layers.push(layer);
        self.body = Some(Rect::new(body.x0, body.y0, body.x1, foot));
    }

    /// An arrow along a line of the frame, moved `beside_mm` on paper to the left of its way (as the frame has left):
    /// the direction of sewing.
    pub fn sewing_arrow(&mut self, from: Point, to: Point, beside_mm: f64) {
        let (a, b) = (self.map * from, self.map * to);
        let side = unit(self.map * (from + left_of(to - from)) - a);
        let (Some(along), Some(side)) = (unit(b - a), side) else {
            return;
        };
        let (a, b) = (a + side * beside_mm, b + side * beside_mm);
        let mut layer = Layer::named("sewing");
        layer.line(None, open(&[a, b - along]), Stroke::plain(INK, BELOW));
        arrow_head(&mut layer, Pen::FULL, b, along, Length::mm(f64::INFINITY));
        self.taken.keep_clear_of(&[a, b]);
        self.layers.push(layer);
    }

    /// A line in the frame with a stroke of its own.
    pub fn stroke(&mut self, part: &str, path: &BezPath, stroke: Stroke) {
        let mut path = path.clone();
        path.apply_affine(self.map);
        self.layer("lines").line(Some(part), path, stroke);
    }

    /// An area in the frame with a fill of its own.
    pub fn fill(&mut self, part: &str, points: &[Point], fill: Colour, stroke: Option<Stroke>) {
        let points: Vec<Point> = points.iter().map(|p| self.map * *p).collect();
        self.grow(&points);
        self.layer("cloth")
            .area(Some(part), closed(&points), fill, stroke);
    }

    /// Words that are on the thing itself: level on paper, in as many lines as make them largest, their middle at a
    /// point of the frame, no wider and no higher than so much cloth.
    pub fn lettering(
        &mut self,
        part: &str,
        at: Point,
        words: &str,
        (wide, tall): (Length, Length),
        colour: Colour,
    ) {
        let (wide, tall) = (wide.to_mm() * self.times, tall.to_mm() * self.times);
        let sized = (1..=MOST_LINES).filter_map(|count| {
            let lines = split_evenly(words, count);
            let longest = lines
                .iter()
                .map(|l| text_width(l, Length::mm(1.0)).to_mm())
                .fold(0.0, f64::max);
            let fits = (wide / longest).min(tall / (LETTER_LINE * lines.len() as f64));
            (longest > 0.0 && fits.is_finite()).then_some((fits, lines))
        });
        let Some((size, lines)) = sized.max_by(|a, b| a.0.total_cmp(&b.0)) else {
            return;
        };
        let size = size.min(MOST_LETTER_MM);
        let told = size >= TYPE_FIGURES.to_mm();
        let middle = self.map * at;
        let top = middle.y - LETTER_LINE * size * (lines.len() as f64 - 1.0) / 2.0;
        for (k, line) in lines.iter().enumerate() {
            let y = top + LETTER_LINE * size * k as f64;
            let mut text = centred(line, Length::mm(size), Point::new(middle.x, y));
            text.colour = colour;
            self.taken.boxes.push(text_box(&text));
            if told {
                self.layer("letters").text(Some(part), text);
            } else {
                let centre = Point::new(middle.x, y);
                let across = Vec2::new(1.0, 0.0);
                let strokes = too_small_to_read(line, Length::mm(size), centre, across);
                let stroke = Stroke::plain(colour, Length::mm(size * STROKE_EMS));
                self.layer("letters").line(Some(part), strokes, stroke);
            }
        }
    }

    /// How long so much cloth is on paper.
    pub fn on_paper(&self, length: Length) -> Length {
        length * self.times
    }

    /// Room that belongs to the figure although nothing is drawn in it yet.
    pub fn hold(&mut self, corners: &[Point]) {
        let corners: Vec<Point> = corners.iter().map(|p| self.map * *p).collect();
        self.grow(&corners);
    }

    /// Puts a whole drawing into the figure, its upper left corner at the origin of the paper.
    pub fn embed(&mut self, sheet: Sheet) {
        let shift = Affine::translate(-sheet.origin.to_vec2());
        for mut layer in sheet.layers {
            for path in layer.paths_mut() {
                path.apply_affine(shift);
            }
            for text in layer.texts_mut() {
                text.at = shift * text.at;
            }
            self.layers.push(layer);
        }
        let (w, h) = (sheet.width.to_mm(), sheet.height.to_mm());
        self.body = Some(Rect::new(0.0, 0.0, w, h));
    }
}

/// Words in so many lines, or fewer, none much longer than another.
fn split_evenly(words: &str, count: usize) -> Vec<String> {
    let whole = text_width(words, Length::mm(1.0)).to_mm();
    let mut out: Vec<String> = Vec::new();
    let mut done = 0.0;
    for word in with_units(words.split_whitespace(), is_unit) {
        let word = word.as_str();
        let line = (done / whole.max(NO_LENGTH_MM) * count as f64).floor() as usize;
        done +=
            text_width(word, Length::mm(1.0)).to_mm() + text_width(" ", Length::mm(1.0)).to_mm();
        if line < out.len()
            && let Some(last) = out.last_mut()
        {
            last.push(' ');
            last.push_str(word);
        } else {
            out.push(word.to_owned());
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_on_a_label_stays_with_its_unit() {
        let words = "100 % cotton. Wash at 30 °C inside out, dry on a line. Made in Portugal";
        for count in 1..=MOST_LINES {
            for line in split_evenly(words, count) {
                assert!(!line.starts_with('°') && !line.starts_with('%'), "{line}");
                assert!(!line.ends_with(|c: char| c.is_ascii_digit()), "{line}");
            }
        }
    }
}
