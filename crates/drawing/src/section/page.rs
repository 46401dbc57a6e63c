//! Numbers and words around a section, each where nothing else stands.

use geometry::tolerance::ROUNDING;
use geometry::{Point, Rect, Vec2};
use trade::{Colour, Length};
use words::Words;

use super::model::{RowOf, Section, heights};
use super::scale::Scale;
use super::section_size::Look;
use super::thread;
use crate::lettering::{CAPITALS, DESCENT, Taken, centred, text_width, touches};
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, PAPER, QUIET};
use crate::sheet::{Anchor, Layer, Stroke, Text, circle, open};

/// Clear paper between cloth and words.
pub(super) const CLEAR: f64 = 1.0;
/// Clear paper between the numbers of two rows.
const BETWEEN: f64 = 0.4;
/// Clear paper around words, both sides together.
pub(super) const AROUND: f64 = 0.5;
/// Words are tried at places this far from one another.
pub(super) const TRIED: f64 = 0.5;

/// The page while words are set on it.
pub(super) struct Page<'a> {
    pub section: &'a Section,
    pub words: &'a Words,
    pub scale: Scale,
    pub look: &'a Look,
    /// The cloth lies between these heights.
    pub top: f64,
    /// Its lower one.
    pub foot: f64,
    /// Words end here.
    pub bottom: f64,
    pub taken: Taken,
}

impl<'a> Page<'a> {
    pub fn new(
        (section, words): (&'a Section, &'a Words),
        scale: Scale,
        look: &'a Look,
        (top, foot, bottom): (f64, f64, f64),
    ) -> Page<'a> {
        let mut taken = Taken::default();
        for ply in &section.plies {
            let middle: Vec<Point> = ply.line().into_iter().map(|(p, _)| p).collect();
            for line in [ply.outline(), middle] {
                let line: Vec<Point> = line.into_iter().map(|p| scale.at(p)).collect();
                taken.keep_clear_of(&line);
            }
        }
        for [a, b] in thread::threads_on_faces(section, &scale, look) {
            taken.keep_clear_of(&[a, b]);
        }
        Page {
            section,
            words,
            scale,
            look,
            top,
            foot,
            bottom,
            taken,
        }
    }

    fn left(&self) -> f64 {
        self.look.margin
    }

    fn right(&self) -> f64 {
        self.look.width - self.look.margin
    }

    /// The numbers of the rows, all above the cloth and side by side. A row that is hidden outside
    /// has its leader over the cloth, down to where its thread begins.
    pub fn numbers(&mut self) -> Layer {
        let mut layer = Layer::named("numbers");
        let mut rows: Vec<(usize, Point, bool)> = Vec::new();
        for row in &self.section.rows {
            let RowOf::Numbered(number) = row.row else {
                continue;
            };
            let start = if (row.from.y - row.to.y).abs() < ROUNDING {
                row.from.midpoint(row.to)
            } else if row.from.y > row.to.y {
                row.from
            } else {
                row.to
            };
            let hidden =
                heights(&self.section.plies, start.x).is_some_and(|(top, _)| top > start.y + 0.2);
            rows.push((number, self.scale.at(start), hidden));
        }
        rows.sort_by(|a, b| a.1.x.total_cmp(&b.1.x).then(a.0.cmp(&b.0)));
        let radius = self.look.circle;
        let wanted: Vec<f64> = rows.iter().map(|(_, start, _)| start.x).collect();
        let between = (self.left() + radius, self.right() - radius);
        let places = apart(&wanted, 2.0 * radius + BETWEEN, between);
        let thin = Stroke::plain(CONSTRUCTION, HAIRLINE);
        for ((number, start, hidden), x) in rows.into_iter().zip(places) {
            let centre = Point::new(x, self.top - CLEAR - radius);
            let mut leader = vec![start];
            if hidden {
                leader.push(Point::new(start.x, self.top - 0.2));
            } else {
                leader[0].y -= 0.5;
            }
            leader.push(Point::new(x, centre.y + radius));
            if hidden {
                let pale = Stroke::plain(PAPER, Length::mm(HAIRLINE.to_mm() + 0.24));
                layer.line(None, open(&leader), pale);
                layer.area(None, circle(start, Length::mm(0.45)), PAPER, None);
                layer.area(None, circle(start, Length::mm(0.3)), INK, None);
            }
            layer.line(None, open(&leader), thin);
            self.taken.keep_clear_of(&leader);
            let name = format!("row:{}:{number}", self.section.seam.code());
            let ring = Stroke::plain(INK, HAIRLINE);
            layer.area(
                Some(&name),
                circle(centre, Length::mm(radius)),
                PAPER,
                Some(ring),
            );
            layer.text(
                Some(&name),
                centred(&number.to_string(), self.look.figures, centre),
            );
            let square = Vec2::new(radius, radius);
            self.taken
                .boxes
                .push(Rect::from_points(centre - square, centre + square));
        }
        layer
    }

    /// What is outside above the cloth and what is inside below it: on the left, unless something stands there.
    pub fn sides(&mut self) -> Layer {
        let mut layer = Layer::named("words");
        let above = self.top - CLEAR - self.look.circle;
        let heights = [above - self.look.circle * 0.6, above];
        let words = self.words;
        self.write(
            &mut layer,
            words.section_outside(),
            INK,
            across(heights.into_iter()),
        );
        let first = self.level(0) + self.look.figures.to_mm() * 0.9;
        let last = self.bottom - self.look.figures.to_mm() * 0.5;
        let count = ((last - first) / TRIED).max(0.0) as usize;
        let heights = (0..=count).map(move |k| first + TRIED * k as f64);
        self.write(&mut layer, words.section_inside(), INK, across(heights));
        layer
    }

    /// A length of cloth at the scale of the drawing, with its figure, at the left end of a line.
    pub fn bar(&mut self, line: f64) -> Layer {
        let mut layer = Layer::named("scale");
        let mm = if self.scale.times > 3.0 { 5.0 } else { 10.0 };
        let length = Length::mm(mm).show_mm();
        let words = if self.look.listed {
            self.words.section_bar_face(length)
        } else {
            length
        };
        let long = self.scale.mm(mm);
        let wide = text_width(&words, self.look.figures).to_mm();
        let tall = self.look.figures.to_mm() * (CAPITALS + DESCENT);
        let size = Vec2::new(long + 1.0 + wide, tall);
        let room = self.right() - self.left() - size.x;
        let free = (0..)
            .map(|k| self.left() + 2.0 * f64::from(k))
            .take_while(|x| *x <= self.left() + room)
            .map(|x| Point::new(x + size.x / 2.0, line))
            .find(|centre| self.is_clear(*centre, size));
        let Some(centre) = free else { return layer };
        self.taken.boxes.push(around(centre, size));
        let start = centre.x - size.x / 2.0;
        let stroke = Stroke::plain(QUIET, HAIRLINE);
        let at = |x: f64, y: f64| Point::new(start + x, line + y);
        layer.line(None, open(&[at(0.0, 0.0), at(long, 0.0)]), stroke);
        for x in [0.0, long] {
            layer.line(None, open(&[at(x, -0.6), at(x, 0.6)]), stroke);
        }
        let middle = centred(&words, self.look.figures, at(long + 1.0, 0.0));
        layer.text(
            None,
            Text {
                anchor: Anchor::Start,
                colour: QUIET,
                ..middle
            },
        );
        layer
    }

    /// The room some words take, with a little clear paper around them.
    fn size(&self, words: &str) -> Vec2 {
        let size = self.look.figures;
        let tall = size.to_mm() * (CAPITALS + DESCENT);
        Vec2::new(text_width(words, size).to_mm() + AROUND, tall + AROUND)
    }

    fn is_clear(&self, centre: Point, size: Vec2) -> bool {
        let place = around(centre, size);
        let on_words = |b: &Rect| b.overlaps(place);
        let on_line = |(a, b): &(Point, Point)| touches(place, *a, *b);
        !self.taken.boxes.iter().any(on_words) && !self.taken.lines.iter().any(on_line)
    }

    /// Writes at the best of some places inside the sheet.
    pub(super) fn write(
        &mut self,
        layer: &mut Layer,
        words: &str,
        colour: Colour,
        places: impl FnOnce(&Page<'_>) -> Vec<Point>,
    ) {
        let places = places(self);
        if let Some(centre) = self.placed(words, places) {
            self.set(layer, words, colour, (centre, self.near_margin(centre)));
        }
    }

    /// The best of some places for words, moved inside the sheet.
    pub(super) fn placed(&mut self, words: &str, places: Vec<Point>) -> Option<Point> {
        let size = self.size(words);
        let (left, right) = (self.left() + size.x / 2.0, self.right() - size.x / 2.0);
        let (top, bottom) = (size.y / 2.0, self.bottom - size.y / 2.0);
        let inside = |p: Point| Point::new(p.x.min(right).max(left), p.y.min(bottom).max(top));
        let places = places.into_iter().map(inside);
        self.taken.place(size, places, |_| None)
    }

    /// A reader's face may be narrower than the room kept: words keep to the near margin.
    pub(super) fn near_margin(&self, centre: Point) -> Anchor {
        if centre.x < self.look.width / 2.0 {
            Anchor::Start
        } else {
            Anchor::End
        }
    }

    pub(super) fn write_if_clear(&mut self, layer: &mut Layer, words: &str, centre: Point) {
        let size = self.size(words);
        if self.is_clear(centre, size) {
            self.taken.boxes.push(around(centre, size));
            self.set(layer, words, QUIET, (centre, self.near_margin(centre)));
        }
    }

    pub(super) fn set(
        &self,
        layer: &mut Layer,
        words: &str,
        colour: Colour,
        (centre, anchor): (Point, Anchor),
    ) {
        // Capitals and descenders together stand in the middle of the place.
        let size = self.look.figures.to_mm();
        let line = centre.y + size * (CAPITALS - DESCENT) / 2.0;
        let half = text_width(words, self.look.figures).to_mm() / 2.0;
        let x = match anchor {
            Anchor::End => centre.x + half,
            Anchor::Start | Anchor::Middle => centre.x - half,
        };
        layer.text(
            None,
            Text {
                at: Point::new(x, line),
                anchor,
                colour,
                ..centred(words, self.look.figures, centre)
            },
        );
    }
}

fn around(centre: Point, size: Vec2) -> Rect {
    Rect::from_points(centre - size / 2.0, centre + size / 2.0)
}

/// Places at these heights, from the left margin to the right one, both ends first.
fn across(heights: impl Iterator<Item = f64>) -> impl FnOnce(&Page<'_>) -> Vec<Point> {
    move |page| {
        let (left, right) = (page.left(), page.right());
        let steps = ((right - left) / TRIED).max(0.0) as usize;
        let heights: Vec<f64> = heights.collect();
        let ends = [left, right].into_iter();
        let between = (0..=steps).map(|k| left + TRIED * k as f64);
        ends.chain(between)
            .flat_map(|x| heights.iter().map(move |y| Point::new(x, *y)))
            .collect()
    }
}

/// Places in the order wanted, no two nearer than `gap`, moved as little as possible (least squares:
/// neighbours that are too near share their mean), inside `between` where there is room.
fn apart(wanted: &[f64], gap: f64, between: (f64, f64)) -> Vec<f64> {
    // With the gaps taken out the places only have to be in order.
    let mut groups: Vec<(f64, usize)> = Vec::new();
    for (k, x) in wanted.iter().enumerate() {
        groups.push((x - gap * k as f64, 1));
        while let [.., (a, n), (b, m)] = groups.as_slice() {
            if a <= b {
                break;
            }
            let both = (a * *n as f64 + b * *m as f64) / (n + m) as f64;
            let count = n + m;
            groups.truncate(groups.len() - 2);
            groups.push((both, count));
        }
    }
    let most = between.1 - gap * wanted.len().saturating_sub(1) as f64;
    groups
        .into_iter()
        .flat_map(|(x, n)| std::iter::repeat_n(x.min(most).max(between.0), n))
        .enumerate()
        .map(|(k, x)| x + gap * k as f64)
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_that_are_too_near_part_and_keep_their_order() {
        let found = apart(&[10.0, 10.0, 11.0, 30.0], 3.0, (0.0, 100.0));
        for (x, wanted) in found.iter().zip([7.333, 10.333, 13.333, 30.0]) {
            assert!((x - wanted).abs() < 0.001, "{found:?}");
        }
        let at_the_edge = apart(&[1.0, 1.0], 3.0, (1.5, 100.0));
        assert_eq!(at_the_edge, [1.5, 4.5]);
        assert_eq!(apart(&[99.0, 99.0], 3.0, (1.5, 98.5)), [95.5, 98.5]);
    }
}
