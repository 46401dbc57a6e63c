//! Numbers and words around a section, each where nothing else stands.

use geometry::tolerance::ROUNDING;
use geometry::{Point, Rect, Vec2, bounds_of};
use trade::{Colour, Length};
use words::{Key, Words};

use super::model::{End, RowOf, Section, SectionPly, heights};
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
const AROUND: f64 = 0.5;
/// Words are tried at places this far from one another.
const TRIED: f64 = 0.5;
/// From the cloth to a name that stands beside it with a leader.
const LEADER: f64 = 2.4;

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

    /// The names of the plies where they leave the drawing, and what finished edges are.
    pub fn names(&mut self) -> Layer {
        let mut layer = Layer::named("names");
        // Plies of one name that lie on one another are named once.
        let mut named = Vec::new();
        for ply in &self.section.plies {
            if !named.contains(&ply.name) {
                named.push(ply.name);
                self.name(&mut layer, ply);
            }
        }
        // Two finished edges on one another are named once.
        let mut edges: Vec<(f64, &str)> = Vec::new();
        for ply in &self.section.plies {
            let word = match ply.ends.1 {
                End::Selvedge => self.words.section_selvedge(),
                End::Overedged => self.words.section_overedged(),
                End::GoesOn | End::Raw => continue,
            };
            let x = ply.corners.last().map_or(0.0, |c| c.at.x);
            if edges.iter().all(|(other, _)| (other - x).abs() > 1.0) {
                edges.push((x, word));
            }
        }
        for (x, word) in edges {
            let half = text_width(word, self.look.figures).to_mm() / 2.0;
            let inward = if x > 0.0 { -half } else { half };
            let at = self.scale.at(Point::new(x, 0.0)).x + inward;
            let y = self.foot + 1.3 + self.look.figures.to_mm() * CAPITALS / 2.0;
            // Where dimensions take that place the list says it.
            self.write_if_clear(&mut layer, word, Point::new(at, y));
        }
        layer
    }

    fn name(&mut self, layer: &mut Layer, ply: &SectionPly) {
        let name = self.words.named(ply.name);
        let ends = [
            (ply.ends.0, ply.corners.first()),
            (ply.ends.1, ply.corners.last()),
        ];
        // A ply that goes on at both ends is named on the right, where there is more room.
        let on = ends
            .iter()
            .filter(|(end, _)| *end == End::GoesOn)
            .filter_map(|(_, corner)| corner.map(|c| c.at))
            .max_by(|a, b| a.x.total_cmp(&b.x));
        let tall = self.look.figures.to_mm() * (CAPITALS + DESCENT) / 2.0 + 0.5;
        let wide = text_width(name, self.look.figures).to_mm() / 2.0;
        let half = ply.thickness.to_mm() / 2.0;
        let Some(at) = on else {
            self.name_beside(layer, ply, (wide, tall));
            return;
        };
        let out = if at.x > 0.0 { 1.0 } else { -1.0 };
        let end = Point::new(at.x - out * 0.4, at.y);
        let (top, foot) = heights(&self.section.plies, end.x).unwrap_or((at.y, at.y));
        let page = |y: f64| self.scale.at(Point::new(end.x, y));
        let above = page(top) + Vec2::new(-out * wide, -tall);
        let below = page(foot) + Vec2::new(-out * wide, tall);
        let topmost = at.y + half > top - 0.1;
        let lowest = at.y - half < foot + 0.1;
        // The outermost ply is named above and the innermost below, so that a name is never nearer to
        // another ply than to its own, unless there is no room.
        let (first, second) = if topmost && !(lowest && at.x < 0.0) {
            (above, below)
        } else {
            (below, above)
        };
        let places = [first, second].into_iter().flat_map(|start| {
            let up = if start == above { -1.0 } else { 1.0 };
            (0..3).flat_map(move |line| {
                let away = up * f64::from(line) * 2.0 * (tall - 0.3);
                (0..60).map(move |k| start + Vec2::new(-out * TRIED * f64::from(k), away))
            })
        });
        let places: Vec<Point> = places.collect();
        self.write(layer, name, QUIET, |_| places);
    }

    /// Names a ply that does not leave the drawing, with a leader to it where the name stands right of it.
    fn name_beside(&mut self, layer: &mut Layer, ply: &SectionPly, (wide, tall): (f64, f64)) {
        let name = self.words.named(ply.name);
        let page: Vec<Point> = ply
            .outline()
            .into_iter()
            .map(|p| self.scale.at(p))
            .collect();
        let room = bounds_of(&page);
        let left = (0..60).flat_map(|k| {
            let x = room.x0 + wide + TRIED * f64::from(k);
            [room.y0 - tall, room.y1 + tall].map(|y| Point::new(x, y))
        });
        let end = rightmost(&page);
        let far = self.scale.right(Point::ORIGIN).x.max(end.x);
        // Names that stand below one another keep as far apart as their plies.
        let (nth, count) = self.among_those_that_stay(ply);
        let level = end.y + tall * 0.6 * (2.0 * nth as f64 + 1.0 - count as f64);
        let right = (0..60).map(|k| {
            let down = f64::from(k / 2) * TRIED * if k % 2 == 0 { -1.0 } else { 1.0 };
            Point::new(far + LEADER + wide, level + down)
        });
        let inside = room.x1 <= self.scale.right(Point::ORIGIN).x + 0.1;
        let places: Vec<Point> = match inside && count == 1 {
            true => left.chain(right).collect(),
            false => right.chain(left).collect(),
        };
        let Some(centre) = self.placed(name, places) else {
            return;
        };
        let start = Point::new(centre.x - wide - 0.3, centre.y);
        self.set(layer, name, QUIET, (centre, Anchor::Start));
        if start.x > end.x {
            let leader = [end, start];
            layer.line(None, open(&leader), Stroke::plain(QUIET, HAIRLINE));
            layer.area(None, circle(end, Length::mm(0.3)), QUIET, None);
            self.taken.keep_clear_of(&leader);
        }
    }

    /// Where a ply comes among those of other names that stay on the drawing, and how many these are.
    fn among_those_that_stay(&self, ply: &SectionPly) -> (usize, usize) {
        let names = staying(self.section);
        let nth = names.iter().position(|name| *name == ply.name);
        (nth.unwrap_or(0), names.len())
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
    fn write(
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
    fn placed(&mut self, words: &str, places: Vec<Point>) -> Option<Point> {
        let size = self.size(words);
        let (left, right) = (self.left() + size.x / 2.0, self.right() - size.x / 2.0);
        let (top, bottom) = (size.y / 2.0, self.bottom - size.y / 2.0);
        let inside = |p: Point| Point::new(p.x.min(right).max(left), p.y.min(bottom).max(top));
        let places = places.into_iter().map(inside);
        self.taken.place(size, places, |_| None)
    }

    /// A reader's face may be narrower than the room kept: words keep to the near margin.
    fn near_margin(&self, centre: Point) -> Anchor {
        if centre.x < self.look.width / 2.0 {
            Anchor::Start
        } else {
            Anchor::End
        }
    }

    fn write_if_clear(&mut self, layer: &mut Layer, words: &str, centre: Point) {
        let size = self.size(words);
        if self.is_clear(centre, size) {
            self.taken.boxes.push(around(centre, size));
            self.set(layer, words, QUIET, (centre, self.near_margin(centre)));
        }
    }

    fn set(
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

/// The names of the plies that do not leave the drawing, each once.
fn staying(section: &Section) -> Vec<Key> {
    let mut names = Vec::new();
    for ply in &section.plies {
        let stays = ply.ends.0 != End::GoesOn && ply.ends.1 != End::GoesOn;
        if stays && !names.contains(&ply.name) {
            names.push(ply.name);
        }
    }
    names
}

/// The room that names take right of the cloth: of several plies that stay on the drawing.
pub(super) fn room_beside(section: &Section, look: &Look, words: &Words) -> f64 {
    let names = staying(section);
    if names.len() < 2 {
        return 0.0;
    }
    let wide = |name: &Key| text_width(words.named(*name), look.figures).to_mm();
    LEADER + AROUND + names.iter().map(wide).fold(0.0, f64::max)
}

/// The point of an outline farthest to the right.
fn rightmost(outline: &[Point]) -> Point {
    let most = outline.iter().copied().max_by(|a, b| a.x.total_cmp(&b.x));
    most.unwrap_or(Point::ORIGIN)
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
