//! What each piece of a lay is called, written in it where a person can read it there, else a number
//! and a line in a key.
//!
//! Nothing written crosses an outline, another label or a line that is marked across the cloth.

use geometry::{Clear, Point, Rect, Vec2, bounds_of, largest_box};
use lay::Turn;
use trade::Length;

use crate::piece_sheet::box_inside;
use drawing::lettering::{CAPITALS, DESCENT, text_width, touches};
use drawing::palette::{CONSTRUCTION, HAIRLINE, INK, Pen, SEWN_LINE, TYPE_WORDS};
use drawing::{Anchor, Layer, Text, circle, closed, open};

/// The smallest type that a person reads without a glass, as printed (common practice: 4 1/2 point).
const LEAST_TYPE: Length = Length::mm(1.6);
/// Base line to base line, in ems.
const LEADING: f64 = 1.2;
/// Clear space round words, in ems.
const CLEAR: f64 = 0.28;
/// A name is broken onto no more lines than this.
const MOST_LINES: usize = 3;
/// A setting less plain than the one before has to be so much larger.
const WORTH: f64 = 1.15;
/// A piece so much taller than wide is read upright.
const TALL: f64 = 1.6;
/// The arrow along the warp, as printed: its length at most and at least, and the height of its head.
const ARROW_MM: (f64, f64) = (12.0, 2.0);
const HEAD_MM: f64 = 1.1;
/// Radius of the dot at the end of a leader, as printed.
const DOT_MM: f64 = 0.35;
/// How deep the row of numbers below the cloth is, as printed.
pub(crate) const NUMBERS_MM: f64 = 3.4;

/// A piece as it lies on the drawing.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Lying {
    /// Its outline on the drawing.
    pub outline: Vec<Point>,
    /// What a click on it or its words asks for.
    pub part: String,
    /// "32x32".
    pub size: String,
    /// "Front, mirrored".
    pub name: String,
    /// How it is turned.
    pub turn: Turn,
}

/// What could not be written in its piece.
#[derive(Clone, Debug, PartialEq, Default)]
pub(crate) struct Key {
    /// Size and name for each number, from 1.
    pub names: Vec<String>,
    /// Whether numbers stand in the row below the cloth.
    pub below: bool,
}

/// Writes what every piece is and which way up it lies.
pub(crate) fn name_pieces(
    pieces: &[Lying],
    lines: &[(Point, Point)],
    cloth: Rect,
    pen: Pen,
    layer: &mut Layer,
) -> Key {
    let mut key = Key::default();
    let mut labels: Vec<Rect> = Vec::new();
    let mut beside = Vec::new();
    for piece in pieces {
        let room = bounds_of(&piece.outline);
        let over: Vec<(Point, Point)> = lines
            .iter()
            .copied()
            .filter(|(a, b)| touches(room, *a, *b))
            .collect();
        let free = Clear {
            outline: &piece.outline,
            lines: &over,
            boxes: &[],
        };
        let taken = match words_in(&free, piece, pen) {
            Some(set) => Some(set.write(&piece.part, layer)),
            None => {
                let number = key.number(piece);
                let set = number_in(&free, number, pen);
                if set.is_none() {
                    beside.push((piece, number));
                }
                set.map(|set| set.write(&piece.part, layer))
            }
        };
        let boxes: Vec<Rect> = taken.into_iter().collect();
        arrow(
            &Clear {
                boxes: &boxes,
                ..free
            },
            piece,
            pen,
            layer,
        );
        labels.extend(boxes);
    }
    for (piece, number) in beside {
        let place = Beside {
            pieces,
            lines,
            labels: &labels,
            cloth,
            pen,
        };
        let (set, dot) = place.find(piece, number);
        key.below |= set.centre.y > cloth.y1;
        lead(&piece.part, (set.place(), dot), pen, layer);
        labels.push(set.write(&piece.part, layer));
    }
    key
}

impl Key {
    /// The number of a piece; pieces that are called alike share one.
    fn number(&mut self, piece: &Lying) -> usize {
        let name = format!("{} {}", piece.size, piece.name);
        let known = self.names.iter().position(|n| *n == name);
        known.unwrap_or_else(|| {
            self.names.push(name);
            self.names.len() - 1
        }) + 1
    }
}

/// Words as they are set: lines one below the other with their middle at a place.
struct Setting {
    lines: Vec<String>,
    size: f64,
    centre: Point,
    upright: bool,
    bold: bool,
}

/// The room lines take at a type of one, clear space included.
fn room_for(lines: &[String], upright: bool) -> Vec2 {
    let widths = lines.iter().map(|l| text_width(l, Length::mm(1.0)).to_mm());
    let wide = widths.fold(0.0, f64::max) + 2.0 * CLEAR;
    let further = lines.len().saturating_sub(1) as f64;
    let tall = CAPITALS + DESCENT + LEADING * further + 2.0 * CLEAR;
    if upright {
        Vec2::new(tall, wide)
    } else {
        Vec2::new(wide, tall)
    }
}

impl Setting {
    /// The room it takes.
    fn place(&self) -> Rect {
        let room = room_for(&self.lines, self.upright) * self.size;
        Rect::from_center_size(self.centre, (room.x, room.y))
    }

    /// Writes it and gives the room it takes.
    fn write(&self, part: &str, layer: &mut Layer) -> Rect {
        let all = CAPITALS + DESCENT + LEADING * self.lines.len().saturating_sub(1) as f64;
        for (k, words) in self.lines.iter().enumerate() {
            let down = (CAPITALS - all / 2.0 + LEADING * k as f64) * self.size;
            let off = if self.upright {
                Vec2::new(down, 0.0)
            } else {
                Vec2::new(0.0, down)
            };
            layer.text(
                Some(part),
                Text {
                    at: self.centre + off,
                    words: words.clone(),
                    size: Length::mm(self.size),
                    anchor: Anchor::Middle,
                    turn_deg: if self.upright { -90.0 } else { 0.0 },
                    colour: INK,
                    bold: self.bold,
                },
            );
        }
        self.place()
    }
}

/// Size and name in the setting that is read best: on one line or several, along the piece.
/// `None` where all would be too small to read.
fn words_in(free: &Clear<'_>, piece: &Lying, pen: Pen) -> Option<Setting> {
    let room = bounds_of(free.outline);
    let tall = room.height() > TALL * room.width();
    let settings = [tall, !tall].into_iter().flat_map(|upright| {
        let one = vec![format!("{} {}", piece.size, piece.name)];
        let below = (1..=MOST_LINES).map(|count| {
            let mut lines = vec![piece.size.clone()];
            lines.extend(broken(&piece.name, count));
            lines
        });
        let all = std::iter::once(one).chain(below);
        all.map(move |lines| (lines, upright))
    });
    let (least, most) = (
        pen.length(LEAST_TYPE).to_mm(),
        pen.length(TYPE_WORDS).to_mm(),
    );
    let mut best: Option<Setting> = None;
    for (lines, upright) in settings {
        let Some(found) = largest_box(free, room_for(&lines, upright), most) else {
            continue;
        };
        if best.as_ref().is_none_or(|b| found.times > b.size * WORTH) {
            best = Some(Setting {
                lines,
                size: found.times,
                centre: found.centre,
                upright,
                bold: false,
            });
        }
    }
    best.filter(|set| set.size >= least)
}

/// Words on so many lines, or fewer, the longest as short as can be.
fn broken(words: &str, lines: usize) -> Vec<String> {
    let words: Vec<&str> = words.split(' ').collect();
    let set = |most: usize| {
        let mut set: Vec<String> = Vec::new();
        for word in &words {
            match set.last_mut() {
                Some(line) if line.chars().count() + 1 + word.chars().count() <= most => {
                    line.push(' ');
                    line.push_str(word);
                }
                _ => set.push((*word).to_owned()),
            }
        }
        set
    };
    let all = words.iter().map(|w| w.chars().count() + 1).sum();
    (1..=all)
        .map(set)
        .find(|set| set.len() <= lines)
        .unwrap_or_default()
}

/// A number in the piece; `None` where it would be too small to read.
fn number_in(free: &Clear<'_>, number: usize, pen: Pen) -> Option<Setting> {
    let lines = vec![number.to_string()];
    let most = pen.length(TYPE_WORDS).to_mm();
    let found = largest_box(free, room_for(&lines, false), most)?;
    (found.times >= pen.length(LEAST_TYPE).to_mm()).then_some(Setting {
        lines,
        size: found.times,
        centre: found.centre,
        upright: false,
        bold: true,
    })
}

/// An arrow along the warp towards the head of the piece: below its words where there is room, else
/// wherever there is most; none in a piece too small for one.
fn arrow(free: &Clear<'_>, piece: &Lying, pen: Pen, layer: &mut Layer) {
    let long = (bounds_of(free.outline).width() * 0.3).min(pen.mm(ARROW_MM.0));
    let head = pen.mm(HEAD_MM);
    let clear = pen.mm(0.4);
    let size = Vec2::new(long + 2.0 * clear, head + 2.0 * clear);
    let beneath = free
        .boxes
        .first()
        .map(|b| Point::new(b.center().x, b.y1 + size.y / 2.0));
    let beneath = beneath
        .filter(|at| free.holds(*at, size))
        .map(|at| (at, 1.0));
    let found = beneath.or_else(|| {
        let found = largest_box(free, size, 1.0)?;
        Some((found.centre, found.times))
    });
    let Some((middle, times)) = found.filter(|(_, times)| long * times >= pen.mm(ARROW_MM.1))
    else {
        return;
    };
    let towards = match piece.turn {
        Turn::Half => Vec2::new(-1.0, 0.0),
        _ => Vec2::new(1.0, 0.0),
    };
    let half = towards * (long * times / 2.0);
    let (tail, tip) = (middle - half, middle + half);
    let deep = (head * 1.4 * times).min(long * times * 0.4);
    let back = tip - towards * deep;
    let side = Vec2::new(0.0, head * times / 2.0);
    layer.line(
        Some(&piece.part),
        open(&[tail, back]),
        pen.stroke(CONSTRUCTION, SEWN_LINE),
    );
    layer.area(
        Some(&piece.part),
        closed(&[tip, back + side, back - side]),
        CONSTRUCTION,
        None,
    );
}

/// Looks for a place beside a piece that is too small for its number.
struct Beside<'a> {
    pieces: &'a [Lying],
    lines: &'a [(Point, Point)],
    labels: &'a [Rect],
    cloth: Rect,
    pen: Pen,
}

impl Beside<'_> {
    /// The number's place and the point in the piece it belongs to: on bare cloth near by, else in a
    /// row below the cloth, with a leader that runs over no other label where that can be.
    fn find(&self, piece: &Lying, number: usize) -> (Setting, Point) {
        let lines = vec![number.to_string()];
        let size = self.pen.length(LEAST_TYPE * 1.2).to_mm();
        let room = room_for(&lines, false) * size;
        let free = Clear {
            outline: &piece.outline,
            lines: &[],
            boxes: &[],
        };
        let dot = largest_box(&free, Vec2::new(1.0, 1.0), f64::INFINITY)
            .map_or(bounds_of(&piece.outline).center(), |found| found.centre);
        let rings = (1..=12).flat_map(|ring| {
            (0..16).map(move |k| {
                let out = Vec2::from_angle(f64::from(k) * std::f64::consts::TAU / 16.0);
                dot + Vec2::new(out.x * room.x, out.y * room.y) * (0.5 + 0.5 * f64::from(ring))
            })
        });
        let near = rings
            .filter(|at| self.bare(Rect::from_center_size(*at, (room.x, room.y))))
            .find(|at| self.run_over(*at, dot) == 0);
        let centre = near.unwrap_or_else(|| self.below(dot, room));
        let set = Setting {
            lines,
            size,
            centre,
            upright: false,
            bold: true,
        };
        (set, dot)
    }

    /// Whether a box lies on bare cloth.
    fn bare(&self, place: Rect) -> bool {
        let crossed = |outline: &[Point]| {
            let ends = outline.iter().zip(outline.iter().cycle().skip(1));
            ends.into_iter().any(|(a, b)| touches(place, *a, *b))
        };
        self.cloth.union(place) == self.cloth
            && self.labels.iter().all(|b| !b.overlaps(place))
            && self.lines.iter().all(|(a, b)| !touches(place, *a, *b))
            && self
                .pieces
                .iter()
                .filter(|p| bounds_of(&p.outline).overlaps(place))
                .all(|p| !crossed(&p.outline) && !box_inside(&p.outline, place))
    }

    /// The free place in the row below the cloth whose leader is best.
    fn below(&self, dot: Point, room: Vec2) -> Point {
        let y = self.cloth.y1 + self.pen.mm(NUMBERS_MM) - room.y / 2.0;
        let steps = self.labels.len() as i32 + 8;
        let places = (0..=2 * steps).map(|k| {
            let by = if k % 2 == 0 { k / 2 } else { -(k + 1) / 2 };
            Point::new(dot.x + f64::from(by) * room.x, y)
        });
        let free = places.filter(|at| {
            let place = Rect::from_center_size(*at, (room.x, room.y));
            self.labels.iter().all(|b| !b.overlaps(place))
                && self.lines.iter().all(|(a, b)| !touches(place, *a, *b))
        });
        free.min_by_key(|at| self.run_over(*at, dot))
            .unwrap_or(Point::new(dot.x, y))
    }

    /// How many labels a leader would run over.
    fn run_over(&self, from: Point, dot: Point) -> usize {
        self.labels
            .iter()
            .filter(|b| touches(**b, from, dot))
            .count()
    }
}

/// A leader from the edge of a label to a dot.
fn lead(part: &str, (label, dot): (Rect, Point), pen: Pen, layer: &mut Layer) {
    let from = label.center();
    let along = dot - from;
    let reach = (label.width() / 2.0 / along.x.abs()).min(label.height() / 2.0 / along.y.abs());
    if reach < 1.0 {
        let leader = open(&[from + along * reach, dot]);
        layer.line(Some(part), leader, pen.stroke(CONSTRUCTION, HAIRLINE));
    }
    layer.area(
        Some(part),
        circle(dot, pen.length(Length::mm(DOT_MM))),
        INK,
        None,
    );
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use drawing::Shape;
    use drawing::lettering::text_box;
    use proptest::prelude::*;

    fn rectangle(x0: f64, y0: f64, x1: f64, y1: f64) -> Vec<Point> {
        [(x0, y0), (x1, y0), (x1, y1), (x0, y1)]
            .map(Point::from)
            .to_vec()
    }

    fn lying(outline: Vec<Point>, name: &str) -> Lying {
        Lying {
            outline,
            part: String::new(),
            size: "32x32".to_owned(),
            name: name.to_owned(),
            turn: Turn::None,
        }
    }

    fn named(pieces: &[Lying], lines: &[(Point, Point)], cloth: Rect) -> (Layer, Key) {
        let mut layer = Layer::named("words");
        let key = name_pieces(pieces, lines, cloth, Pen::FULL, &mut layer);
        (layer, key)
    }

    /// The boxes of all words of a layer.
    fn word_boxes(layer: &Layer) -> Vec<Rect> {
        let texts = layer.marks.iter().filter_map(|mark| match &mark.shape {
            Shape::Text(text) => Some(text_box(text)),
            _ => None,
        });
        texts.collect()
    }

    fn words(layer: &Layer) -> Vec<(&str, f64)> {
        let texts = layer.marks.iter().filter_map(|mark| match &mark.shape {
            Shape::Text(text) => Some((text.words.as_str(), text.turn_deg)),
            _ => None,
        });
        texts.collect()
    }

    const CLOTH: Rect = Rect::new(0.0, 0.0, 200.0, 80.0);

    #[test]
    fn words_take_one_line_or_several_and_stand_upright_in_a_tall_piece() {
        let said = |w: f64, h: f64| {
            let piece = lying(rectangle(0.0, 0.0, w, h), "Coin pocket");
            let (layer, key) = named(&[piece], &[], CLOTH);
            assert!(key.names.is_empty());
            let words: Vec<(String, f64)> = words(&layer)
                .iter()
                .map(|(w, t)| ((*w).to_owned(), *t))
                .collect();
            words
        };
        assert_eq!(said(60.0, 20.0), [("32x32 Coin pocket".to_owned(), 0.0)]);
        assert_eq!(said(60.0, 3.0), [("32x32 Coin pocket".to_owned(), 0.0)]);
        assert_eq!(said(3.0, 60.0), [("32x32 Coin pocket".to_owned(), -90.0)]);
        assert_eq!(said(14.0, 9.0).len(), 2);
        assert_eq!(said(9.0, 9.0).len(), 3);
    }

    #[test]
    fn a_name_is_broken_where_its_lines_are_shortest() {
        assert_eq!(
            broken("Back pocket lining, left", 1),
            ["Back pocket lining, left"]
        );
        assert_eq!(
            broken("Back pocket lining, left", 2),
            ["Back pocket", "lining, left"]
        );
        assert_eq!(broken("Yoke", 3), ["Yoke"]);
    }

    #[test]
    fn what_holds_no_words_has_a_number_and_a_line_in_the_key() {
        let small = |x: f64| lying(rectangle(x, 10.0, x + 4.0, 14.0), "Belt loop");
        let (layer, key) = named(&[small(0.0), small(20.0)], &[], CLOTH);
        // Called alike, they share a number.
        assert_eq!(
            key,
            Key {
                names: vec!["32x32 Belt loop".to_owned()],
                below: false
            }
        );
        assert_eq!(words(&layer), [("1", 0.0), ("1", 0.0)]);
    }

    #[test]
    fn a_piece_too_small_for_its_number_has_it_beside() {
        let dot = lying(rectangle(50.0, 40.0, 51.0, 41.0), "Belt loop");
        let (layer, key) = named(std::slice::from_ref(&dot), &[], CLOTH);
        assert_eq!((key.names.len(), key.below), (1, false));
        let place = word_boxes(&layer)[0];
        assert!(!place.overlaps(bounds_of(&dot.outline)) && CLOTH.union(place) == CLOTH);
        // Walled in on all sides it goes below the cloth.
        let walls = [
            rectangle(0.0, 0.0, 200.0, 40.0),
            rectangle(0.0, 41.0, 200.0, 80.0),
            rectangle(0.0, 40.0, 50.0, 41.0),
            rectangle(51.0, 40.0, 200.0, 41.0),
        ];
        let mut pieces: Vec<Lying> = walls.into_iter().map(|w| lying(w, "Front")).collect();
        pieces.push(dot);
        let (layer, key) = named(&pieces, &[], CLOTH);
        assert!(key.below);
        assert!(word_boxes(&layer).iter().any(|b| b.y0 > CLOTH.y1));
    }

    #[test]
    fn words_keep_off_lines_across_the_cloth() {
        let front = lying(rectangle(0.0, 0.0, 100.0, 20.0), "Front");
        let line = (Point::new(50.0, 0.0), Point::new(50.0, 80.0));
        let (layer, _) = named(&[front], &[line], CLOTH);
        assert!(
            word_boxes(&layer)
                .iter()
                .all(|b| !touches(*b, line.0, line.1))
        );
    }

    proptest! {
        /// Stars of any shape in the squares of a net: every label is inside its own star or on bare
        /// cloth, and none stands on another.
        #[test]
        fn labels_stand_inside_and_apart(
            rays in proptest::collection::vec(proptest::collection::vec(0.5..14.0_f64, 9), 12),
            across in 0.0..200.0_f64,
        ) {
            let pieces: Vec<Lying> = rays.iter().enumerate().map(|(k, rays)| {
                let middle = Point::new(15.0 + 30.0 * (k % 6) as f64, 15.0 + 30.0 * (k / 6) as f64);
                let outline = rays.iter().enumerate()
                    .map(|(i, r)| middle + Vec2::from_angle(i as f64 * 0.698) * *r)
                    .collect();
                lying(outline, ["Coin pocket, mirrored", "Front"][k % 2])
            }).collect();
            let line = (Point::new(across, 0.0), Point::new(across, 80.0));
            let (layer, key) = named(&pieces, &[line], CLOTH);
            let boxes = word_boxes(&layer);
            for (k, one) in boxes.iter().enumerate() {
                prop_assert!(boxes[k + 1..].iter().all(|b| !b.overlaps(*one)));
                prop_assert!(!touches(*one, line.0, line.1));
                for piece in &pieces {
                    let ends = piece.outline.iter().zip(piece.outline.iter().cycle().skip(1));
                    for (a, b) in ends {
                        prop_assert!(!touches(*one, *a, *b));
                    }
                }
            }
            // Each piece is told, by words or by a number of the key.
            let said = words(&layer);
            let whole = said.iter().filter(|(w, _)| w.starts_with("32x32")).count();
            let numbers = said.iter().filter(|(w, _)| w.parse::<usize>().is_ok()).count();
            prop_assert_eq!(whole + numbers, pieces.len());
            prop_assert!(numbers == 0 || !key.names.is_empty());
        }
    }
}
