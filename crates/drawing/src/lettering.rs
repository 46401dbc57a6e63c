//! Where words may stand: how much room they take, and a placer that keeps them apart.

use geometry::tolerance::ROUNDING;
use geometry::{BezPath, Point, Rect, Vec2, crosses};
use trade::Length;

use crate::palette::INK;
use crate::sheet::{Anchor, Sheet, Text};

/// A leader begins on what it points at: this share of its way is not looked at.
const OFF_ITS_START: f64 = 1e-3;

/// Height of capitals and figures above the base line, in ems (common to plain sans-serif faces).
pub const CAPITALS: f64 = 0.72;
/// Depth of descending letters below the base line, in ems.
pub const DESCENT: f64 = 0.22;

/// Width of words set in a plain sans-serif face, on the generous side: the reader's face is not
/// known when the drawing is made.
pub fn text_width(words: &str, size: Length) -> Length {
    let ems: f64 = words
        .chars()
        .map(|c| match c {
            ' ' | '.' | ',' | ':' | ';' | '\'' | '|' | '!' | 'i' | 'j' | 'l' => 0.32,
            'f' | 'r' | 't' | '(' | ')' | '-' | 'I' => 0.42,
            'm' | 'w' | 'M' | 'W' | '@' | '%' => 0.95,
            c if c.is_ascii_uppercase() => 0.72,
            c if c.is_ascii() => 0.61,
            _ => 0.8,
        })
        .sum();
    size * ems
}

/// One line of words with its middle at `centre`.
pub fn centred(words: &str, size: Length, centre: Point) -> Text {
    Text {
        at: Point::new(centre.x, centre.y + CAPITALS / 2.0 * size.to_mm()),
        words: words.to_owned(),
        size,
        anchor: Anchor::Middle,
        turn_deg: 0.0,
        colour: INK,
        bold: false,
    }
}

/// A stroke for every word of a line that is too small to be read, through the middle of the line along a unit vector.
pub fn too_small_to_read(words: &str, size: Length, middle: Point, along: Vec2) -> BezPath {
    let gap = text_width(" ", size).to_mm();
    let mut x = -text_width(words, size).to_mm() / 2.0;
    let mut path = BezPath::new();
    for word in words.split(' ') {
        let long = text_width(word, size).to_mm();
        path.move_to(middle + along * x);
        path.line_to(middle + along * (x + long));
        x += long + gap;
    }
    path
}

/// The upright rectangle around words, for turns by quarter circles.
pub fn text_box(text: &Text) -> Rect {
    let size = text.size.to_mm();
    let width = text_width(&text.words, text.size).to_mm();
    let left = match text.anchor {
        Anchor::Start => 0.0,
        Anchor::Middle => -width / 2.0,
        Anchor::End => -width,
    };
    let turn = Vec2::from_angle(text.turn_deg.to_radians());
    let corner =
        |x: f64, y: f64| text.at + Vec2::new(x * turn.x - y * turn.y, x * turn.y + y * turn.x);
    Rect::from_points(
        corner(left, -CAPITALS * size),
        corner(left + width, DESCENT * size),
    )
}

/// Words that run off a sheet and words that stand on others, each said for people; none on a sheet that can be read.
pub fn crowding(sheet: &Sheet) -> Vec<String> {
    let page = Rect::new(
        sheet.origin.x,
        sheet.origin.y,
        sheet.origin.x + sheet.width.to_mm(),
        sheet.origin.y + sheet.height.to_mm(),
    );
    let placed: Vec<(Rect, &str)> = sheet
        .texts()
        .map(|t| (text_box(t), t.words.as_str()))
        .collect();
    let mut crowded = Vec::new();
    for (k, (r, words)) in placed.iter().enumerate() {
        if page.union(*r) != page {
            crowded.push(format!("\"{words}\" runs off the sheet"));
        }
        for (other, more) in &placed[k + 1..] {
            // The lines of one caption stand close: their boxes may touch, not overlap by a tenth.
            let both = r.intersect(*other);
            let (wide, tall) = (both.x1 - both.x0, both.y1 - both.y0);
            if wide > 0.1 && tall > 0.1 * r.height().min(r.width()) {
                crowded.push(format!("\"{words}\" stands on \"{more}\""));
            }
        }
    }
    crowded
}

/// What is already on the drawing, so that further words find a free place.
#[derive(Clone, Debug, Default)]
pub struct Taken {
    /// Words and numbers: nothing else may stand here.
    pub boxes: Vec<Rect>,
    /// Lines that words should not stand on.
    pub lines: Vec<(Point, Point)>,
}

impl Taken {
    /// Adds a run of lines to keep clear of.
    pub fn keep_clear_of(&mut self, points: &[Point]) {
        self.lines.extend(points.windows(2).map(|w| (w[0], w[1])));
    }

    /// How badly a box would stand: nought when it is free. Words on words count far more than
    /// words on a line.
    fn cost(&self, place: Rect) -> f64 {
        let on_words = self
            .boxes
            .iter()
            .filter(|b| b.overlaps(place) && area_of(b.intersect(place)) > ROUNDING)
            .count();
        let on_lines = self
            .lines
            .iter()
            .filter(|(a, b)| touches(place, *a, *b))
            .count();
        1000.0 * on_words as f64 + on_lines as f64
    }

    /// How many words and lines a leader would run over, `from` not counted.
    fn crossed_by(&self, from: Point, to: Point) -> usize {
        let away = from + (to - from) * OFF_ITS_START;
        let words = self.boxes.iter().filter(|b| touches(**b, away, to)).count();
        let lines = self
            .lines
            .iter()
            .filter(|line| crosses((away, to), **line))
            .count();
        words + lines
    }

    /// Takes the first free candidate, or the least bad one, and keeps it from then on. `None` when
    /// there is no candidate. `leader` says where a leader to a candidate would start, if it needs one;
    /// a leader over words or lines is bad too.
    pub fn place(
        &mut self,
        size: Vec2,
        candidates: impl Iterator<Item = Point>,
        leader: impl Fn(Point) -> Option<Point>,
    ) -> Option<Point> {
        let mut best: Option<(f64, Point)> = None;
        for centre in candidates {
            let mut cost = self.cost(box_at(centre, size));
            if let Some(from) = leader(centre) {
                cost += 2.0 * self.crossed_by(from, centre) as f64;
            }
            if best.is_none_or(|(b, _)| cost < b) {
                best = Some((cost, centre));
            }
            if cost == 0.0 {
                break;
            }
        }
        let (_, centre) = best?;
        self.boxes.push(box_at(centre, size));
        Some(centre)
    }
}

impl Taken {
    /// As [`Taken::place`], but a place on nothing at all comes before every other, even where its
    /// leader runs over lines; of those, the one whose leader runs over fewest.
    pub fn place_clear(
        &mut self,
        size: Vec2,
        candidates: impl Iterator<Item = Point> + Clone,
        leader: impl Fn(Point) -> Option<Point>,
    ) -> Option<Point> {
        let mut best: Option<(usize, Point)> = None;
        for centre in candidates.clone() {
            if self.cost(box_at(centre, size)) > 0.0 {
                continue;
            }
            let crossed = leader(centre).map_or(0, |from| self.crossed_by(from, centre));
            if best.is_none_or(|(least, _)| crossed < least) {
                best = Some((crossed, centre));
            }
            if crossed == 0 {
                break;
            }
        }
        match best {
            Some((_, centre)) => {
                self.boxes.push(box_at(centre, size));
                Some(centre)
            }
            None => self.place(size, candidates, leader),
        }
    }

    /// As [`Taken::place_clear`] for words one can do without: `None` where they would stand on others.
    pub fn place_or_leave(
        &mut self,
        size: Vec2,
        candidates: impl Iterator<Item = Point> + Clone,
    ) -> Option<Point> {
        let off_words = candidates.filter(|centre| {
            let place = box_at(*centre, size);
            self.boxes
                .iter()
                .all(|b| !b.overlaps(place) || area_of(b.intersect(place)) <= ROUNDING)
        });
        let off_words: Vec<Point> = off_words.collect();
        self.place_clear(size, off_words.into_iter(), no_leader)
    }
}

/// No leader is needed.
pub fn no_leader(_: Point) -> Option<Point> {
    None
}

fn box_at(centre: Point, size: Vec2) -> Rect {
    Rect::from_points(centre - size / 2.0, centre + size / 2.0)
}

fn area_of(r: Rect) -> f64 {
    (r.x1 - r.x0).max(0.0) * (r.y1 - r.y0).max(0.0)
}

/// Whether a straight line enters the rectangle (clipping by each side in turn).
pub fn touches(r: Rect, a: Point, b: Point) -> bool {
    let d = b - a;
    let (mut t0, mut t1) = (0.0_f64, 1.0_f64);
    for (p, q) in [
        (-d.x, a.x - r.x0),
        (d.x, r.x1 - a.x),
        (-d.y, a.y - r.y0),
        (d.y, r.y1 - a.y),
    ] {
        if p == 0.0 {
            if q < 0.0 {
                return false;
            }
        } else if p < 0.0 {
            t0 = t0.max(q / p);
        } else {
            t1 = t1.min(q / p);
        }
    }
    t0 <= t1
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;

    #[test]
    fn a_line_touches_only_the_boxes_it_enters() {
        let r = Rect::new(0.0, 0.0, 10.0, 5.0);
        assert!(touches(r, Point::new(-5.0, 2.0), Point::new(20.0, 2.0)));
        assert!(touches(r, Point::new(2.0, 2.0), Point::new(3.0, 3.0)));
        assert!(!touches(r, Point::new(-5.0, 2.0), Point::new(-1.0, 2.0)));
        assert!(!touches(r, Point::new(-2.0, 4.0), Point::new(5.0, 9.0)));
    }

    #[test]
    fn words_move_on_to_the_first_free_place() {
        let mut taken = Taken::default();
        let size = Vec2::new(4.0, 2.0);
        let row = || (0..5).map(|k| Point::new(f64::from(k) * 3.0, 0.0));
        assert_eq!(taken.place(size, row(), no_leader).unwrap().x, 0.0);
        assert_eq!(taken.place(size, row(), no_leader).unwrap().x, 6.0);
        taken.keep_clear_of(&[Point::new(12.0, -5.0), Point::new(12.0, 5.0)]);
        // Everything else is full: on the line is better than on words.
        assert_eq!(taken.place(size, row(), no_leader).unwrap().x, 12.0);
        assert!(taken.place(size, std::iter::empty(), no_leader).is_none());
    }

    #[test]
    fn a_place_whose_leader_runs_over_a_line_comes_second() {
        let mut taken = Taken::default();
        taken.keep_clear_of(&[Point::new(5.0, -9.0), Point::new(5.0, 9.0)]);
        let sides = [Point::new(10.0, 0.0), Point::new(-10.0, 0.0)];
        let from_the_middle = |_| Some(Point::ORIGIN);
        let found = taken.place(Vec2::new(2.0, 2.0), sides.into_iter(), from_the_middle);
        assert_eq!(found.unwrap().x, -10.0);
    }

    #[test]
    fn a_clear_place_comes_before_one_without_a_crossed_leader() {
        let mut taken = Taken::default();
        taken.keep_clear_of(&[Point::new(5.0, -9.0), Point::new(5.0, 9.0)]);
        taken.keep_clear_of(&[Point::new(-20.0, 0.0), Point::new(-5.0, 0.0)]);
        // Beyond a line, or on one that the leader does not cross.
        let places = [Point::new(-10.0, 0.0), Point::new(10.0, 3.0)];
        let from_the_middle = |_| Some(Point::ORIGIN);
        let size = Vec2::new(2.0, 2.0);
        let found = taken.place_clear(size, places.into_iter(), from_the_middle);
        assert_eq!(found.unwrap().x, 10.0);
    }

    #[test]
    fn words_one_can_do_without_never_stand_on_others() {
        let mut taken = Taken::default();
        let size = Vec2::new(4.0, 2.0);
        let here = || std::iter::once(Point::ORIGIN);
        assert!(taken.place_or_leave(size, here()).is_some());
        assert!(taken.place_or_leave(size, here()).is_none());
    }

    #[test]
    fn turned_words_take_their_room_upright() {
        let mut text = centred("Waistband", Length::mm(2.0), Point::new(0.0, 0.0));
        let flat = text_box(&text);
        text.turn_deg = -90.0;
        let upright = text_box(&text);
        assert!((flat.width() - upright.height()).abs() < 1e-9);
    }
}
