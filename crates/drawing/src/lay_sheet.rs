//! A lay: the pieces where they lie on the cloth, true to scale.

use cutting::Spread;
use geometry::{Point, Rect, Vec2, bounds};
use lay::{Lay, Splice, Turn};
use style::Cloth;
use trade::{Colour, Length, System};

use crate::palette::{
    CONSTRUCTION, CUT_LINE, HAIRLINE, INK, Pen, QUIET, SEWN_LINE, TINT, TYPE_FIGURES, TYPE_WORDS,
};
use crate::sheet::{Anchor, Layer, Sheet, Stroke, Text, closed, open};

/// A lay is read from across a table: it is drawn at full size, its words as if at a tenth.
const READ_AT: f64 = 0.1;

/// Room round the cloth, printed millimetres.
const ROUND_MM: f64 = 9.0;

/// The undyed threads of a finished edge, as drawn.
const FINISHED_EDGE: Length = Length::mm(6.0);

/// What is marked on a lay besides its pieces.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct LayMarks {
    /// What the lay is and how it is spread: "Lay 2 of 4: 8 plies". Stands over the figures; may be empty.
    pub heading: String,
    /// Where a roll may end. Two lines across: the new cloth begins at the first, the old one may be cut
    /// off at the second.
    pub splices: Vec<Splice>,
    /// How many shade zones the width is parted into; nothing is drawn for one or none.
    pub zones: u32,
}

/// The cloth from above with every piece of the lay, x along the warp; what the figures say stands
/// over it.
pub fn lay_sheet(
    spread: &Spread,
    lay: &Lay,
    cloth: &Cloth,
    marks: &LayMarks,
    system: System,
) -> Sheet {
    let pen = Pen::for_scale(READ_AT);
    let (long, wide) = (lay.length.to_mm(), spread.problem.width.to_mm());
    // The lay's y runs up from the lower edge.
    let on_sheet = |p: Point| Point::new(p.x, wide - p.y);
    let mut ground = Layer::named("cloth");
    let rect = |x0: f64, y0: f64, x1: f64, y1: f64| {
        closed(&[
            Point::new(x0, y0),
            Point::new(x1, y0),
            Point::new(x1, y1),
            Point::new(x0, y1),
        ])
    };
    let edge = pen.stroke(CONSTRUCTION, SEWN_LINE);
    ground.area(None, rect(0.0, 0.0, long, wide), Colour::WHITE, Some(edge));
    if cloth.selvedge {
        let deep = FINISHED_EDGE.to_mm();
        for (top, foot) in [(0.0, deep), (wide - deep, wide)] {
            ground.area(
                None,
                rect(0.0, top, long, foot),
                cloth.colour.mixed(Colour::WHITE, 0.75),
                None,
            );
        }
    }
    let mut pieces = Layer::named("pieces");
    let mut words = Layer::named("words");
    for placed in &lay.placements {
        let Some(piece) = spread.problem.pieces.iter().find(|p| p.key == placed.key) else {
            continue;
        };
        let outline: Vec<Point> = placed.outline(piece).into_iter().map(on_sheet).collect();
        let path = closed(&outline);
        let room = bounds(&path);
        pieces.area(
            Some(&format!("cut:{}", placed.key)),
            path,
            TINT,
            Some(pen.stroke(INK, SEWN_LINE)),
        );
        let Some(named) = spread.named(&placed.key) else {
            continue;
        };
        let Some(room) = inside(&outline, room) else {
            continue;
        };
        grain(&mut pieces, pen, room, placed.turn);
        let hand = if named.mirrored { ", mirrored" } else { "" };
        name(
            &mut words,
            pen,
            room,
            &named.size,
            &format!("{}{hand}", named.piece),
        );
    }
    let mut across = Layer::named("marks");
    zones(&mut across, pen, (long, wide), marks.zones);
    splices(&mut across, pen, (long, wide), &marks.splices, system);
    let margin = pen.mm(ROUND_MM);
    let line = |words: &str, above: f64, bold: bool| Text {
        at: Point::new(0.0, -pen.mm(above)),
        words: words.to_owned(),
        size: pen.length(TYPE_WORDS),
        anchor: Anchor::Start,
        turn_deg: 0.0,
        colour: INK,
        bold,
    };
    words.text(None, line(&figures(spread, lay, cloth, system), 3.0, false));
    let mut over = 0.0;
    if !marks.heading.is_empty() {
        over = pen.mm(4.0);
        words.text(None, line(&marks.heading, 7.0, true));
    }
    // The words over a short lay may be longer than the lay.
    let letters =
        words_length(&marks.heading).max(words_length(&figures(spread, lay, cloth, system)));
    let held = long.max(pen.mm(letters * TYPE_WORDS.to_mm()));
    let below = if marks.splices.is_empty() {
        0.0
    } else {
        pen.mm(SPLICE_WORDS_MM)
    };
    Sheet {
        title: format!("Lay on {}", cloth.name),
        origin: Point::new(-margin, -margin - over),
        width: Length::mm(held + 2.0 * margin),
        height: Length::mm(wide + 2.0 * margin + over + below),
        layers: vec![ground, pieces, across, words],
    }
}

/// Room under the cloth for what splices say, printed millimetres.
const SPLICE_WORDS_MM: f64 = 6.0;

/// How long words are, in heights of their type; a letter of a plain face is about half as wide.
fn words_length(words: &str) -> f64 {
    0.52 * words.chars().count() as f64
}

/// Shade zones: thin lines along the cloth, numbered at its end.
fn zones(layer: &mut Layer, pen: Pen, (long, wide): (f64, f64), zones: u32) {
    if zones < 2 {
        return;
    }
    let each = wide / f64::from(zones);
    for zone in 0..zones {
        // Counted from the lower edge, as the lay's own y runs.
        let foot = wide - each * f64::from(zone);
        if zone > 0 {
            let stroke = pen.stroke(CONSTRUCTION, HAIRLINE);
            let stroke = stroke.dashed(pen.length(Length::mm(4.0)), pen.length(Length::mm(1.2)));
            layer.line(
                Some("zones"),
                open(&[Point::new(0.0, foot), Point::new(long, foot)]),
                stroke,
            );
        }
        layer.text(
            Some("zones"),
            Text {
                at: Point::new(-pen.mm(2.0), foot - each / 2.0),
                words: format!("zone {}", zone + 1),
                size: pen.length(TYPE_FIGURES),
                anchor: Anchor::Middle,
                turn_deg: -90.0,
                colour: CONSTRUCTION,
                bold: false,
            },
        );
    }
}

/// Splices: two dashed lines across and a bar under the cloth that joins them, with the lap beside it.
fn splices(
    layer: &mut Layer,
    pen: Pen,
    (long, wide): (f64, f64),
    splices: &[Splice],
    system: System,
) {
    let (tick, words_at) = (wide + pen.mm(1.6), wide + pen.mm(4.4));
    let mut free_from = f64::NEG_INFINITY;
    for (number, splice) in splices.iter().enumerate() {
        let part = format!("splice:{}", number + 1);
        let (from, until) = (splice.from.to_mm(), splice.until.to_mm());
        let dashed = pen.fine_dashes(INK, HAIRLINE);
        for x in [from, until] {
            layer.line(
                Some(&part),
                open(&[Point::new(x, 0.0), Point::new(x, tick)]),
                dashed,
            );
        }
        layer.line(
            Some(&part),
            open(&[Point::new(from, tick), Point::new(until, tick)]),
            pen.stroke(INK, CUT_LINE),
        );
        let words = format!("{}: lap {}", number + 1, splice.lap().show(system));
        // Laps that lie close together go one below the other.
        let half = pen.mm(words_length(&words) * TYPE_FIGURES.to_mm()) / 2.0;
        let middle =
            ((from + until) / 2.0).clamp(half.min(long / 2.0), (long - half).max(long / 2.0));
        let lower = middle - half < free_from;
        if !lower {
            free_from = middle + half + pen.mm(1.0);
        }
        layer.text(
            Some(&part),
            Text {
                at: Point::new(middle, words_at + if lower { pen.mm(2.9) } else { 0.0 }),
                words,
                size: pen.length(TYPE_FIGURES),
                anchor: Anchor::Middle,
                turn_deg: 0.0,
                colour: INK,
                bold: false,
            },
        );
    }
}

fn figures(spread: &Spread, lay: &Lay, cloth: &Cloth, system: System) -> String {
    format!(
        "{}, {} wide: {} long, {:.1} % of the cloth used; no lay is shorter than {}",
        cloth.name,
        spread.problem.width.show(system),
        lay.length.show(system),
        lay.efficiency.to_percent(),
        lay.bounds.best().show(system),
    )
}

/// The widest stretch inside an outline along a level through its middle, as a box as high as the
/// outline's own; `None` for an outline no level crosses.
fn inside(outline: &[Point], room: Rect) -> Option<Rect> {
    let widest = |y: f64| {
        let ends = outline.iter().zip(outline.iter().cycle().skip(1));
        let mut crossed: Vec<f64> = ends
            .filter(|(a, b)| (a.y <= y) != (b.y <= y))
            .map(|(a, b)| a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y))
            .collect();
        crossed.sort_by(f64::total_cmp);
        let stretches = crossed.chunks_exact(2).map(|pair| (pair[0], pair[1]));
        stretches.max_by(|a, b| (a.1 - a.0).total_cmp(&(b.1 - b.0)))
    };
    // The words and the arrow below them both have to fit.
    let levels = [0.0, 0.12].map(|down| widest(room.center().y + room.height() * down));
    let (left, right) = (
        levels[0]?.0.max(levels[1]?.0),
        levels[0]?.1.min(levels[1]?.1),
    );
    (right > left).then(|| Rect::new(left, room.y0, right, room.y1))
}

/// An arrow along the warp, towards the head of the piece.
fn grain(layer: &mut Layer, pen: Pen, room: Rect, turn: Turn) {
    let long = (room.width() * 0.3).min(pen.mm(12.0));
    let towards = match turn {
        Turn::Half => Vec2::new(-1.0, 0.0),
        _ => Vec2::new(1.0, 0.0),
    };
    let middle = room.center() + Vec2::new(0.0, pen.mm(2.4).min(room.height() * 0.3));
    let (tail, tip) = (
        middle - towards * (long / 2.0),
        middle + towards * (long / 2.0),
    );
    layer.line(
        None,
        open(&[tail, tip]),
        Stroke::plain(CONSTRUCTION, pen.length(SEWN_LINE)),
    );
    let head = (long * 0.25).min(pen.mm(1.6));
    let side = Vec2::new(0.0, head * 0.35);
    let back = tip - towards * head;
    layer.area(
        None,
        closed(&[tip, back + side, back - side]),
        CONSTRUCTION,
        None,
    );
}

/// Type a person can still read, as printed; words that would have to be smaller are left out.
const LEAST_TYPE_MM: f64 = 1.2;

/// Size and piece above the arrow, on one line or two, or upright in the upper half of a tall piece:
/// whatever is read best.
fn name(layer: &mut Layer, pen: Pen, room: Rect, size: &str, piece: &str) {
    let one = vec![format!("{size} {piece}")];
    let two = vec![size.to_owned(), piece.to_owned()];
    let above = room.center().y - room.y0;
    let fits = |lines: &[String], along: f64, across: f64| {
        let count = lines.iter().map(|l| l.chars().count()).max().unwrap_or(1);
        // Words of a plain face are about half as wide as they are high, letter for letter.
        let wide = along * 0.86 / (0.54 * count.max(1) as f64);
        wide.min(across / (1.25 * lines.len() as f64))
            .min(pen.mm(2.6))
    };
    let flat = |lines: &[String]| fits(lines, room.width(), above * 0.8);
    let upright = fits(&one, above * 0.9, room.width() * 0.8);
    let (best, lines, turned) = [
        (flat(&one), &one, false),
        (flat(&two), &two, false),
        (upright, &one, true),
    ]
    .into_iter()
    // A later setting has to be clearly larger than the plainer one before it.
    .fold(
        (0.0, &one, false),
        |a, b| if b.0 > a.0 * 1.15 { b } else { a },
    );
    if best < pen.mm(LEAST_TYPE_MM) {
        return;
    }
    let last = lines.len().saturating_sub(1) as f64;
    for (k, words) in lines.iter().enumerate() {
        let at = if turned {
            Point::new(room.center().x + best * 0.36, room.y0 + above / 2.0)
        } else {
            room.center() - Vec2::new(0.0, (last - k as f64) * best * 1.25)
        };
        layer.text(
            None,
            Text {
                at,
                words: words.clone(),
                size: Length::mm(best),
                anchor: Anchor::Middle,
                turn_deg: if turned { -90.0 } else { 0.0 },
                colour: QUIET,
                bold: false,
            },
        );
    }
}
