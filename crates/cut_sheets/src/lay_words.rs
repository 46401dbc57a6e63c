//! What each piece of a lay is called, written in it where a person can read it there, else a number
//! and a line in a key.
//!
//! Nothing written crosses an outline, another label or a line that is marked across the cloth.

mod beside;
mod setting;

use drawing::lettering::touches;
use drawing::palette::{CONSTRUCTION, Pen, SEWN_LINE, TYPE_FIGURES};
use drawing::{Layer, closed, open};
use geometry::{Clear, Point, Rect, Vec2, bounds_of, largest_box};
use lay::Turn;
use trade::Length;

use beside::{Beside, lead};
use setting::{number_in, words_in};

/// No type is smaller, as printed.
const LEAST_TYPE: Length = TYPE_FIGURES;
/// The arrow along the warp, as printed: its length at most and at least, and the height of its head.
const ARROW_MM: (f64, f64) = (12.0, 2.0);
const HEAD_MM: f64 = 1.1;
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
    /// Its number in the list of pieces; pieces without one are numbered here.
    pub number: Option<String>,
    /// How it is turned.
    pub turn: Turn,
}

/// What could not be written in its piece.
#[derive(Clone, Debug, PartialEq, Default)]
pub(crate) struct Key {
    /// Each number with size and name.
    pub names: Vec<(String, String)>,
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
                let set = number_in(&free, &number, pen);
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
        let (set, dot) = place.find(piece, &number);
        key.below |= set.centre.y > cloth.y1;
        lead(&piece.part, (set.place(), dot), pen, layer);
        labels.push(set.write(&piece.part, layer));
    }
    key.names.sort_by_key(|(number, _)| in_order(number));
    key
}

/// Numbers in the order of counting, a mirror image after its piece.
fn in_order(number: &str) -> (usize, usize) {
    let digits: String = number.chars().take_while(char::is_ascii_digit).collect();
    (digits.parse().unwrap_or(usize::MAX), number.len())
}

impl Key {
    /// The number of a piece; pieces that are called alike share one.
    fn number(&mut self, piece: &Lying) -> String {
        let name = format!("{} {}", piece.size, piece.name);
        if let Some((number, _)) = self.names.iter().find(|(_, known)| *known == name) {
            return number.clone();
        }
        let next = (self.names.len() + 1).to_string();
        let number = piece.number.clone().unwrap_or(next);
        self.names.push((number.clone(), name));
        number
    }
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

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::setting::broken;
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
            number: None,
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
        assert_eq!(said(60.0, 4.0), [("32x32 Coin pocket".to_owned(), 0.0)]);
        assert_eq!(said(4.0, 60.0), [("32x32 Coin pocket".to_owned(), -90.0)]);
        assert_eq!(said(18.0, 9.0).len(), 2);
        assert_eq!(said(12.0, 12.0).len(), 3);
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
                names: vec![("1".to_owned(), "32x32 Belt loop".to_owned())],
                below: false
            }
        );
        assert_eq!(words(&layer), [("1", 0.0), ("1", 0.0)]);
    }

    #[test]
    fn a_number_is_that_of_the_list_of_pieces() {
        let strip = |x: f64, name: &str, number: &str| Lying {
            number: Some(number.to_owned()),
            ..lying(rectangle(x, 10.0, x + 5.0, 15.0), name)
        };
        let pieces = [
            strip(0.0, "Belt loop strip", "14"),
            strip(20.0, "Yoke, mirrored copy", "3m"),
            strip(40.0, "Yoke", "3"),
        ];
        let (layer, key) = named(&pieces, &[], CLOTH);
        let numbers: Vec<&str> = key.names.iter().map(|(n, _)| n.as_str()).collect();
        assert_eq!(numbers, ["3", "3m", "14"]);
        assert_eq!(words(&layer), [("14", 0.0), ("3m", 0.0), ("3", 0.0)]);
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
