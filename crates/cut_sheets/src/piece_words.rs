//! The words on a piece: allowance figures beside its edges, what holds for one copy only, and what
//! the piece is.

mod figures;
mod which;

use drawing::dimension::unit;
use drawing::lettering::{CAPITALS, DESCENT, Taken, text_width, touches};
use drawing::palette::{CONSTRUCTION, HAIRLINE, INK, Pen, TYPE_FIGURES, TYPE_HEADING, TYPE_WORDS};
use drawing::{Anchor, Layer, Text, circle, open};
use geometry::{Point, Rect, Vec2, bounds_of};
use trade::Length;
use words::{Words, say};

use crate::laid_piece::{Laid, PieceCaption, box_inside};
pub(crate) use figures::{allowance_figures, figure};
pub(crate) use which::which_copy;

/// Clear space round figures and caption, as printed.
const CLEAR_MM: f64 = 0.7;
/// From a caption outside the piece to the piece, as printed.
const ASIDE_MM: f64 = 4.0;
/// Radius of the dot at the end of a leader, as printed.
const DOT_MM: f64 = 0.45;
/// Base line to base line, in ems.
const LEADING: f64 = 1.3;
/// The caption is tried at this many places across and down a piece.
const ACROSS: u32 = 24;
const DOWN: u32 = 48;

/// One line of a caption.
#[derive(Clone)]
struct Line {
    words: String,
    size: Length,
    bold: bool,
}

/// A block of lines, set from the left.
struct Block {
    lines: Vec<Line>,
    wide: f64,
    tall: f64,
}

impl Block {
    fn new(lines: Vec<Line>) -> Block {
        let wide = lines
            .iter()
            .map(|l| text_width(&l.words, l.size).to_mm())
            .fold(0.0, f64::max);
        let tall = lines
            .iter()
            .enumerate()
            .map(|(k, l)| l.size.to_mm() * if k == 0 { CAPITALS } else { LEADING })
            .sum::<f64>()
            + lines.last().map_or(0.0, |l| DESCENT * l.size.to_mm());
        Block { lines, wide, tall }
    }

    /// Sets the block with its middle at `centre`, upright or read from the right.
    fn set(&self, layer: &mut Layer, part: Option<&str>, centre: Point, turned: bool) {
        let mut down = -self.tall / 2.0;
        for (k, line) in self.lines.iter().enumerate() {
            down += line.size.to_mm() * if k == 0 { CAPITALS } else { LEADING };
            let (x, y) = (-self.wide / 2.0, down);
            let at = if turned {
                Vec2::new(y, -x)
            } else {
                Vec2::new(x, y)
            };
            layer.text(
                part,
                Text {
                    at: centre + at,
                    words: line.words.clone(),
                    size: line.size,
                    anchor: Anchor::Start,
                    turn_deg: if turned { -90.0 } else { 0.0 },
                    colour: INK,
                    bold: line.bold,
                },
            );
        }
    }

    fn extent(&self, turned: bool) -> Vec2 {
        if turned {
            Vec2::new(self.tall, self.wide)
        } else {
            Vec2::new(self.wide, self.tall)
        }
    }
}

/// The caption in more and more compact settings.
fn blocks(laid: &Laid, caption: &PieceCaption, words: &Words) -> Vec<Block> {
    let pen = laid.words;
    let line = |words: String, size: Length, bold: bool| Line {
        words,
        size: pen.length(size),
        bold,
    };
    let heading = |words: &str| line(words.to_owned(), TYPE_HEADING, true);
    let plain = |words: String| line(words, TYPE_WORDS, false);
    let label = laid.piece.label_as_cut();
    let name = match caption.number {
        Some(number) => words.say(say::CutNumbered {
            number,
            piece: label.piece.clone(),
        }),
        None => words.saying(&label.piece),
    };
    let (cut, side) = (words.saying(&label.cut), label.side_in(words));
    let (style, size) = if caption.style_and_size {
        (label.style.clone(), words.cut_size(label.size))
    } else {
        (String::new(), String::new())
    };
    let given = |lines: &[&str]| -> Vec<String> {
        let said = lines.iter().filter(|w| !w.is_empty());
        said.map(|w| (*w).to_owned()).collect()
    };
    let head = given(&[&style, &size]);
    let foot = given(&[&cut, &side, &label.cloth]);
    let all = [head.clone(), foot.clone()].concat();
    let with = |lines: Vec<String>| {
        let mut out = vec![heading(&name)];
        out.extend(lines.into_iter().map(plain));
        out
    };
    let pairs = given(&[&head.join(", "), &foot.join(", ")]);
    let least = given(&[&name, &size, &cut]);
    let one = |words: Vec<String>, size: Length| vec![line(words.join(", "), size, false)];
    [
        with(all.clone()),
        with(pairs),
        with(vec![all.join(", ")]),
        one([vec![name.clone()], all].concat(), TYPE_WORDS),
        one(least, TYPE_FIGURES),
    ]
    .into_iter()
    .map(Block::new)
    .collect()
}

/// Where the caption of a piece may stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Place {
    /// In the piece, else beside it with a leader.
    InsideOrBeside,
    /// In the piece, else nowhere.
    InsideOrNowhere,
}

/// Writes the caption inside the piece where it fits, upright or turned, else outside with a
/// leader. Returns the room taken.
pub(crate) fn caption_words(
    laid: &Laid,
    (caption, words, place): (&PieceCaption, &Words, Place),
    bounds: Rect,
    taken: &mut Taken,
    layer: &mut Layer,
    part: Option<&str>,
) -> Rect {
    let blocks = blocks(laid, caption, words);
    let clear = laid.words.mm(2.0 * CLEAR_MM);
    if let Some(place) = set_inside(&blocks, &laid.sewn, clear, taken, layer, part) {
        return place;
    }
    match blocks.first().filter(|_| place == Place::InsideOrBeside) {
        Some(block) => outside(laid, block, bounds, taken, layer, part),
        None => bounds,
    }
}

/// Sets the first block that finds room inside an outline, upright or turned, and returns its place.
fn set_inside(
    blocks: &[Block],
    outline: &[Point],
    clear: f64,
    taken: &mut Taken,
    layer: &mut Layer,
    part: Option<&str>,
) -> Option<Rect> {
    for turned in [false, true] {
        for block in blocks {
            let size = block.extent(turned) + Vec2::new(2.0 * clear, 2.0 * clear);
            if let Some(centre) = inside(outline, taken, size) {
                block.set(layer, part, centre, turned);
                let place = Rect::from_center_size(centre, (size.x, size.y));
                taken.boxes.push(place);
                return Some(place);
            }
        }
    }
    None
}

/// A heading with lines below it, inside an outline where it fits, else below `bounds`. Returns the
/// room taken.
pub(crate) fn heading_words(
    heading: &str,
    lines: &[String],
    (outline, bounds): (&[Point], Rect),
    pen: Pen,
    taken: &mut Taken,
    layer: &mut Layer,
) -> Rect {
    let line = |words: &str, size: Length, bold: bool| Line {
        words: words.to_owned(),
        size: pen.length(size),
        bold,
    };
    let mut all = vec![line(heading, TYPE_HEADING, true)];
    let said = lines.iter().filter(|l| !l.is_empty());
    all.extend(said.map(|l| line(l, TYPE_WORDS, false)));
    let rest = lines.iter().filter(|l| !l.is_empty()).cloned();
    let joined: Vec<String> = std::iter::once(heading.to_owned()).chain(rest).collect();
    let blocks = [
        Block::new(all),
        Block::new(vec![line(&joined.join(", "), TYPE_WORDS, false)]),
    ];
    let clear = pen.mm(2.0 * CLEAR_MM);
    if let Some(place) = set_inside(&blocks, outline, clear, taken, layer, None) {
        return place;
    }
    let size = blocks[0].extent(false);
    let corner = Point::new(bounds.x0, bounds.y1 + pen.mm(ASIDE_MM));
    blocks[0].set(layer, None, corner + size / 2.0, false);
    let place = Rect::from_points(corner, corner + size);
    taken.boxes.push(place);
    place
}

/// The free place inside an outline nearest to its middle.
fn inside(outline: &[Point], taken: &Taken, size: Vec2) -> Option<Point> {
    let bounds = bounds_of(outline);
    if size.x >= bounds.width() || size.y >= bounds.height() {
        return None;
    }
    let middle = bounds.center();
    let mut best: Option<(f64, Point)> = None;
    for i in 0..=ACROSS {
        for j in 0..=DOWN {
            let share = |k: u32, of: u32| f64::from(k) / f64::from(of);
            let centre = Point::new(
                bounds.x0 + size.x / 2.0 + (bounds.width() - size.x) * share(i, ACROSS),
                bounds.y0 + size.y / 2.0 + (bounds.height() - size.y) * share(j, DOWN),
            );
            let far = (centre - middle).hypot();
            if best.is_some_and(|(least, _)| far >= least) {
                continue;
            }
            let place = Rect::from_center_size(centre, (size.x, size.y));
            let free = box_inside(outline, place)
                && taken.lines.iter().all(|(a, b)| !touches(place, *a, *b))
                && !taken.boxes.iter().any(|b| b.overlaps(place));
            if free {
                best = Some((far, centre));
            }
        }
    }
    best.map(|(_, centre)| centre)
}

/// Beside a tall piece, below a wide one, with a leader that ends in a dot on bare cloth and runs
/// over no other words.
fn outside(
    laid: &Laid,
    block: &Block,
    bounds: Rect,
    taken: &mut Taken,
    layer: &mut Layer,
    part: Option<&str>,
) -> Rect {
    let pen = laid.words;
    let piece = bounds_of(&laid.sewn);
    let size = block.extent(false);
    let (aside, gap, radius) = (pen.mm(ASIDE_MM), pen.mm(CLEAR_MM), pen.mm(DOT_MM));
    let heading = CAPITALS / 2.0 * pen.length(TYPE_HEADING).to_mm();
    let good = |from: Point, dot: Point| {
        let around = Rect::from_center_size(dot, (1.6 * radius, 1.6 * radius));
        box_inside(&laid.sewn, around)
            && taken.lines.iter().all(|(a, b)| !touches(around, *a, *b))
            && taken.boxes.iter().all(|b| !touches(*b, from, dot))
    };
    // The upper left corner of the block, the start of the leader and its dot.
    let mut places = Vec::new();
    for share in [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82] {
        for inward in [0.25, 0.35, 0.15, 0.45, 0.55, 0.65] {
            places.push(if bounds.height() > bounds.width() {
                let y = piece.y0 + share * piece.height();
                let (left, right) = crossed(&laid.sewn, y).unwrap_or((piece.x0, piece.x1));
                let corner = Point::new(bounds.x1 + aside, y - heading);
                let dot = Point::new(right - inward * (right - left), y);
                (corner, Point::new(corner.x - gap, y), dot)
            } else {
                let corner = Point::new(bounds.x0, bounds.y1 + aside);
                let x = bounds.x0 + pen.mm(2.0) + share * (size.x - pen.mm(4.0)).max(0.0);
                let from = Point::new(x.clamp(piece.x0, piece.x1.max(piece.x0)), corner.y - gap);
                (
                    corner,
                    from,
                    Point::new(from.x, piece.y1 - inward * piece.height()),
                )
            });
        }
    }
    let found = places.iter().find(|(_, from, dot)| good(*from, *dot));
    let (corner, from, dot) = *found.unwrap_or(&places[0]);
    block.set(layer, part, corner + size / 2.0, false);
    if let Some(along) = unit(dot - from) {
        let leader = [from, dot - along * radius];
        layer.line(part, open(&leader), pen.stroke(CONSTRUCTION, HAIRLINE));
        layer.area(part, circle(dot, Length::mm(radius)), INK, None);
    }
    let place = Rect::from_points(corner, corner + size);
    taken.boxes.push(place);
    place
}

/// Where the outline is crossed at height `y`: its rightmost stretch.
fn crossed(outline: &[Point], y: f64) -> Option<(f64, f64)> {
    let n = outline.len();
    let mut at: Vec<f64> = (0..n)
        .filter_map(|k| {
            let (a, b) = (outline[k], outline[(k + 1) % n]);
            ((a.y > y) != (b.y > y)).then(|| a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y))
        })
        .collect();
    at.sort_by(f64::total_cmp);
    match at[..] {
        [.., left, right] => Some((left, right)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn allowances_to_the_tenth() {
        assert_eq!(figure(Length::mm(12.7)), "12.7");
        assert_eq!(figure(Length::mm(10.04)), "10");
        assert_eq!(figure(Length::ZERO), "0");
    }
}
