//! The words on a piece: allowance figures beside its edges, and what the piece is.

use draft::Cut;
use geometry::{Point, Rect, Vec2, angle_between};
use trade::{Angle, Length};

use crate::dimension::{place_along, unit};
use crate::lettering::{
    CAPITALS, DESCENT, Taken, centred, no_leader, text_box, text_width, touches,
};
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, TYPE_FIGURES, TYPE_HEADING, TYPE_WORDS};
use crate::piece_sheet::{Laid, PieceCaption, bounds_of, box_inside};
use crate::sheet::{Anchor, Layer, Text, circle, open};

/// Clear space round figures and caption, as printed.
const CLEAR_MM: f64 = 0.7;
/// From a caption outside the piece to the piece, as printed.
const ASIDE_MM: f64 = 4.0;
/// Radius of the dot at the end of a leader, as printed.
const DOT_MM: f64 = 0.45;
/// Base line to base line, in ems.
const LEADING: f64 = 1.3;
/// Two edges that bend by less than this read as one.
const SMOOTH: Angle = Angle::deg(8.0);
/// The caption is tried at this many places across and down a piece.
const ACROSS: u32 = 24;
const DOWN: u32 = 48;

/// How many are cut to this cut line, in words. `of_a_pair`: the piece is cut both ways, so a count
/// without a word would leave open which.
pub(crate) fn cut_words(cut: Cut, of_a_pair: bool) -> String {
    match (cut.as_drawn, cut.mirrored) {
        (0, 0) => "cut none".to_owned(),
        (n, 0) if of_a_pair => format!("cut {n} as drawn"),
        (n, 0) => format!("cut {n}"),
        (0, m) => format!("cut {m} mirrored"),
        (n, m) => format!("cut {n} + {m} mirrored"),
    }
}

/// Writes every allowance in millimetres outside the cut line, beside the middle of its edge.
/// Neighbouring edges that run on smoothly with the same allowance share one figure. Returns the
/// room taken.
pub(crate) fn allowance_figures(
    laid: &Laid,
    taken: &mut Taken,
    layer: &mut Layer,
    part: Option<&str>,
) -> Option<Rect> {
    let mut room: Option<Rect> = None;
    let size = laid.pen.length(TYPE_FIGURES);
    for (run, allowance) in runs_of_one_allowance(laid) {
        let words = figure(allowance);
        let clear = laid.pen.mm(CLEAR_MM);
        let wide = text_width(&words, size) + 2.0 * clear;
        let tall = CAPITALS * size.to_mm() + 2.0 * clear;
        let shares = [
            0.5, 0.44, 0.56, 0.37, 0.63, 0.3, 0.7, 0.22, 0.78, 0.12, 0.88,
        ];
        let candidates = [0.0, 0.8, 1.8, 3.0].into_iter().flat_map(|further| {
            let run = &run;
            shares.into_iter().filter_map(move |share| {
                let (p, along) = place_along(run, share)?;
                let out = laid.outward(along);
                let reach = laid.to_cut_line(p, out, Some(allowance));
                // Half the extent of the box in this direction, so that it just stands clear.
                let half = (out.x.abs() * wide + out.y.abs() * tall) / 2.0;
                Some(p + out * (reach + half + laid.pen.mm(further + 0.3)))
            })
        });
        if let Some(centre) = taken.place(Vec2::new(wide, tall), candidates, no_leader) {
            let mut text = centred(&words, size, centre);
            text.colour = CONSTRUCTION;
            let place = text_box(&text);
            room = Some(room.map_or(place, |r| r.union(place)));
            layer.text(part, text);
        }
    }
    room
}

fn runs_of_one_allowance(laid: &Laid) -> Vec<(Vec<Point>, Length)> {
    let mut runs: Vec<(Vec<Point>, Length)> = Vec::new();
    for (edge, allowance) in laid.edges.iter().zip(&laid.allowances) {
        let Some(allowance) = *allowance else {
            continue;
        };
        if let Some((run, same)) = runs.last_mut()
            && (*same - allowance).abs() < Length::mm(0.05)
            && runs_on(run, edge)
        {
            run.extend_from_slice(&edge[1..]);
        } else {
            runs.push((edge.clone(), allowance));
        }
    }
    runs
}

fn runs_on(run: &[Point], next: &[Point]) -> bool {
    let ([.., a, b], [c, d, ..]) = (run, next) else {
        return false;
    };
    (*c - *b).hypot() < 1e-3 && angle_between(*b - *a, *d - *c) < SMOOTH
}

/// Millimetres to the tenth, without a needless nought.
fn figure(allowance: Length) -> String {
    let tenths = (allowance.to_mm() * 10.0).round() / 10.0;
    if tenths.fract() == 0.0 {
        format!("{tenths:.0}")
    } else {
        format!("{tenths:.1}")
    }
}

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
            .map(|l| text_width(&l.words, l.size))
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
fn blocks(laid: &Laid, caption: &PieceCaption) -> Vec<Block> {
    let pen = laid.pen;
    let heading = |words: String| Line {
        words,
        size: pen.length(TYPE_HEADING),
        bold: true,
    };
    let plain = |words: String| Line {
        words,
        size: pen.length(TYPE_WORDS),
        bold: false,
    };
    let name = format!("{} {}", caption.number, laid.piece.id);
    let style = [caption.style.trim(), caption.size.trim()]
        .into_iter()
        .filter(|s| !s.is_empty())
        .collect::<Vec<_>>()
        .join(" ");
    let both = laid.piece.cut.as_drawn > 0 && laid.piece.cut.mirrored > 0;
    let cut = cut_words(laid.cut, both);
    let cloth = laid.piece.cloth.code();
    let mut full = vec![heading(name.clone())];
    if !style.is_empty() {
        full.push(plain(style.clone()));
    }
    let mut two = full.clone();
    full.extend([plain(cut.clone()), plain(cloth.to_owned())]);
    let short = format!("{cut}, {cloth}");
    two.push(plain(short.clone()));
    let rest = [style.as_str(), short.as_str()]
        .into_iter()
        .filter(|s| !s.is_empty())
        .collect::<Vec<_>>()
        .join(", ");
    let one = vec![heading(name), plain(rest)];
    [full, two, one].into_iter().map(Block::new).collect()
}

/// Writes the caption inside the piece where it fits, upright or turned, else outside with a
/// leader. Returns the room taken.
pub(crate) fn caption_words(
    laid: &Laid,
    caption: &PieceCaption,
    bounds: Rect,
    taken: &mut Taken,
    layer: &mut Layer,
    part: Option<&str>,
) -> Rect {
    let blocks = blocks(laid, caption);
    let clear = laid.pen.mm(2.0 * CLEAR_MM);
    for turned in [false, true] {
        for block in &blocks {
            let size = block.extent(turned) + Vec2::new(2.0 * clear, 2.0 * clear);
            if let Some(centre) = inside(laid, taken, size) {
                block.set(layer, part, centre, turned);
                let place = Rect::from_center_size(centre, (size.x, size.y));
                taken.boxes.push(place);
                return place;
            }
        }
    }
    match blocks.first() {
        Some(block) => outside(laid, block, bounds, taken, layer, part),
        None => bounds,
    }
}

/// The free place inside the piece nearest to its middle.
fn inside(laid: &Laid, taken: &Taken, size: Vec2) -> Option<Point> {
    let bounds = bounds_of(&laid.sewn);
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
            let free = box_inside(&laid.sewn, place)
                && taken.lines.iter().all(|(a, b)| !touches(place, *a, *b));
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
    let pen = laid.pen;
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
    fn counts_in_words() {
        assert_eq!(cut_words(Cut::PAIR, true), "cut 1 + 1 mirrored");
        assert_eq!(cut_words(Cut::ONE, false), "cut 1");
        assert_eq!(cut_words(Cut::ONE, true), "cut 1 as drawn");
        let mirrored = Cut {
            as_drawn: 0,
            mirrored: 2,
        };
        assert_eq!(cut_words(mirrored, false), "cut 2 mirrored");
    }

    #[test]
    fn allowances_to_the_tenth() {
        assert_eq!(figure(Length::mm(12.7)), "12.7");
        assert_eq!(figure(Length::mm(10.04)), "10");
        assert_eq!(figure(Length::ZERO), "0");
    }
}
