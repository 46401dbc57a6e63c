//! Dimensions of a plate: the value itself on a line between two arrows, lines stacked at even
//! distances beside the drawing.
//!
//! What is written is measured on the drawing, never handed in: a dimension of a plate cannot say
//! anything else than what is drawn.

use geometry::{Point, Rect, Vec2, left_of};
use trade::Length;

use super::levels::{
    AIR_MM, ASIDE_MM, FIRST_MM, SHORT_MM, Stacked, TAIL_MM, along, levels_out, stack,
};
pub(super) use super::levels::{Linear, Side};
use crate::dimension::{arrow_head, unit};
use crate::lettering::{CAPITALS, Taken, centred, no_leader, text_box, text_width};
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, PAPER, Pen, TYPE_FIGURES};
use crate::sheet::{Layer, Stroke, Text, closed, open};

/// Extension lines start this far from the point and end this far beyond the dimension line.
const GAP_MM: f64 = 0.8;
const BEYOND_MM: f64 = 0.9;

/// A length along a slanted line, drawn parallel to it.
#[derive(Clone, Debug)]
pub(super) struct Aligned {
    pub from: Point,
    pub to: Point,
    /// How far to the left of the line from `from` to `to`, on paper; negative to the right.
    pub beside_mm: f64,
    pub words: String,
}

/// Draws all dimensions round `body` and gives the room everything takes.
pub(super) fn draw(
    layer: &mut Layer,
    taken: &mut Taken,
    (linear, aligned): (&[Linear], &[Aligned]),
    body: Rect,
) -> Rect {
    let mut body = body;
    let mut words: Vec<Text> = Vec::new();
    for dim in aligned {
        body = body.union(parallel(layer, taken, dim));
    }
    let mut room = body;
    let mut later: Vec<(Side, f64, Stacked<'_>)> = Vec::new();
    for side in Side::ALL {
        let stacked = stack(linear, side);
        let levels = levels_out(&stacked);
        for stacked in stacked {
            let off = levels.get(stacked.level).copied().unwrap_or(FIRST_MM);
            let line = match side {
                Side::Above => body.y0 - off,
                Side::Below => body.y1 + off,
                Side::Left => body.x0 - off,
                Side::Right => body.x1 + off,
            };
            later.push((side, line, stacked));
        }
    }
    for (side, line, stacked) in &later {
        let at = |s: f64| {
            if side.level() {
                Point::new(s, *line)
            } else {
                Point::new(*line, s)
            }
        };
        for p in [stacked.dim.from, stacked.dim.to] {
            extension(layer, taken, p, at(along(*side, p)));
        }
        line_between(layer, taken, at(stacked.lo), at(stacked.hi));
        let place = stacked.place;
        let (from, to) = (at(place.reach.0), at(place.reach.1));
        let half = TYPE_FIGURES.to_mm() * 0.55;
        let text = told(stacked, *side, at(place.words_at));
        room = room
            .union(Rect::from_points(from, to).inflate(half, half))
            .union(text_box(&text));
        words.push(text);
    }
    for text in words {
        set(layer, taken, text);
    }
    room
}

/// The words of a dimension whose line is at `on` where they stand.
fn told(stacked: &Stacked<'_>, side: Side, on: Point) -> Text {
    let words = &stacked.dim.words;
    if side.level() {
        return centred(words, TYPE_FIGURES, on);
    }
    if stacked.place.beside {
        let out = ASIDE_MM + text_width(words, TYPE_FIGURES).to_mm() / 2.0;
        let out = if side == Side::Left { -out } else { out };
        return centred(words, TYPE_FIGURES, on + Vec2::new(out, 0.0));
    }
    let mut text = centred(words, TYPE_FIGURES, on);
    text.turn_deg = -90.0;
    text.at = Point::new(on.x + CAPITALS / 2.0 * TYPE_FIGURES.to_mm(), on.y);
    text
}

/// Words on a line: the line makes way for them.
fn set(layer: &mut Layer, taken: &mut Taken, text: Text) {
    let r = text_box(&text);
    let r = r.inflate(AIR_MM * 0.6, 0.1);
    let corners = [
        Point::new(r.x0, r.y0),
        Point::new(r.x1, r.y0),
        Point::new(r.x1, r.y1),
        Point::new(r.x0, r.y1),
    ];
    layer.area(None, closed(&corners), PAPER, None);
    taken.boxes.push(r);
    layer.text(None, text);
}

fn extension(layer: &mut Layer, taken: &mut Taken, on: Point, off: Point) {
    let Some(out) = unit(off - on) else { return };
    if (off - on).hypot() <= GAP_MM {
        return;
    }
    let line = [on + out * GAP_MM, off + out * BEYOND_MM];
    layer.line(None, open(&line), Stroke::plain(CONSTRUCTION, HAIRLINE));
    taken.keep_clear_of(&line);
}

/// The line from arrow to arrow; where it is short the heads stand outside and point in.
fn line_between(layer: &mut Layer, taken: &mut Taken, from: Point, to: Point) {
    let Some(way) = unit(to - from) else { return };
    let long = (to - from).hypot();
    let thin = Stroke::plain(INK, HAIRLINE);
    if long >= SHORT_MM {
        layer.line(None, open(&[from, to]), thin);
        arrow_head(layer, Pen::FULL, from, -way, Length::mm(long));
        arrow_head(layer, Pen::FULL, to, way, Length::mm(long));
        taken.keep_clear_of(&[from, to]);
    } else {
        let ends = [from - way * TAIL_MM, to + way * TAIL_MM];
        layer.line(None, open(&ends), thin);
        arrow_head(layer, Pen::FULL, from, way, Length::mm(f64::INFINITY));
        arrow_head(layer, Pen::FULL, to, -way, Length::mm(f64::INFINITY));
        taken.keep_clear_of(&ends);
    }
}

/// A dimension parallel to a slanted line; its words level beside it. Gives the room it takes.
fn parallel(layer: &mut Layer, taken: &mut Taken, dim: &Aligned) -> Rect {
    let Some(way) = unit(dim.to - dim.from) else {
        return Rect::from_points(dim.from, dim.to);
    };
    let off = left_of(way) * dim.beside_mm;
    let (from, to) = (dim.from + off, dim.to + off);
    extension(layer, taken, dim.from, from);
    extension(layer, taken, dim.to, to);
    line_between(layer, taken, from, to);
    // The words stand level beside the line, on its far side.
    let wide = text_width(&dim.words, TYPE_FIGURES).to_mm() / 2.0;
    let tall = TYPE_FIGURES.to_mm() / 2.0;
    let out = left_of(way) * dim.beside_mm.signum();
    let half = |v: Vec2| v.x.abs() * wide + v.y.abs() * tall;
    let middle = if (to - from).hypot() < 2.0 * half(way) {
        // Too short for its words: they follow the tail at the edge measured from.
        from - way * (TAIL_MM + half(way) + AIR_MM)
    } else {
        from.midpoint(to) + out * (half(out) + AIR_MM + 0.4)
    };
    let text = centred(&dim.words, TYPE_FIGURES, middle);
    let place = text_box(&text);
    taken.boxes.push(place);
    layer.text(None, text);
    Rect::from_points(from, to).union(place).inflate(0.5, 0.5)
}

/// Words beside an arrow that points at `at`: a radius, a name. They stand where they are free,
/// outside `keep_in` nowhere.
pub(super) fn pointed(
    layer: &mut Layer,
    taken: &mut Taken,
    (at, words): (Point, &str),
    keep_in: Rect,
) {
    let size = Vec2::new(
        text_width(words, TYPE_FIGURES).to_mm() + 2.0 * AIR_MM,
        TYPE_FIGURES.to_mm() * 1.2,
    );
    let ring = (0..12).flat_map(|n| {
        let out = 6.0 + 2.0 * f64::from(n);
        (0..16).map(move |k| {
            let turn = std::f64::consts::PI * (0.25 + f64::from(k) / 8.0);
            let way = Vec2::from_angle(turn);
            at + Vec2::new(way.x * (out + size.x / 2.0), way.y * out)
        })
    });
    let inside = ring.filter(|c| {
        let r = Rect::from_points(*c - size / 2.0, *c + size / 2.0);
        keep_in.union(r) == keep_in
    });
    let end = |centre: Point| leader_end(centre, size, at);
    let found = taken.place_clear(size, inside, |_| Some(at));
    let Some(centre) = found else { return };
    let to = end(centre);
    if let Some(way) = unit(at - to) {
        layer.line(None, open(&[to, at]), Stroke::plain(CONSTRUCTION, HAIRLINE));
        arrow_head(layer, Pen::FULL, at, way, Length::mm(3.0 * 1.5));
        taken.keep_clear_of(&[to, at]);
    }
    layer.text(None, centred(words, TYPE_FIGURES, centre));
}

/// The point of the words' box nearest to what they point at, level with their middle or at an end.
fn leader_end(centre: Point, size: Vec2, at: Point) -> Point {
    let half = size / 2.0;
    Point::new(
        at.x.clamp(centre.x - half.x, centre.x + half.x),
        at.y.clamp(centre.y - half.y, centre.y + half.y),
    )
}

/// The angle at `corner` from direction `from` to `to`, on paper, with an arc and its value.
pub(super) fn angle(
    layer: &mut Layer,
    taken: &mut Taken,
    corner: Point,
    (from, to): (Vec2, Vec2),
    radius_mm: f64,
    keep_in: Rect,
) {
    let (Some(a), Some(b)) = (unit(from), unit(to)) else {
        return;
    };
    let turn = a.cross(b).atan2(a.dot(b));
    let steps = 24;
    let arc: Vec<Point> = (0..=steps)
        .map(|k| {
            let t = a.atan2() + turn * f64::from(k) / f64::from(steps);
            corner + Vec2::from_angle(t) * radius_mm
        })
        .collect();
    layer.line(None, open(&arc), Stroke::plain(INK, HAIRLINE));
    for (tip, way) in [(arc[0], arc[0] - arc[1]), (arc[24], arc[24] - arc[23])] {
        if let Some(way) = unit(way) {
            arrow_head(
                layer,
                Pen::FULL,
                tip,
                way,
                Length::mm(radius_mm * turn.abs()),
            );
        }
    }
    taken.keep_clear_of(&arc);
    let words = format!("{:.0}°", turn.abs().to_degrees());
    let wide = text_width(&words, TYPE_FIGURES).to_mm() + 2.0 * AIR_MM;
    let size = Vec2::new(wide, TYPE_FIGURES.to_mm() * 1.2);
    let middle = Vec2::from_angle(a.atan2() + turn / 2.0);
    let near = (0..30).map(|k| corner + middle * (radius_mm + 2.2 + 0.8 * f64::from(k)));
    let far = (0..30).map(|k| corner - middle * (3.0 + 0.8 * f64::from(k)));
    // Beside the middle, where a line runs along it.
    let aside = (0..12).flat_map(|k| {
        let out = radius_mm + 3.0 + 0.8 * f64::from(k);
        [0.27, -0.27].map(|share| corner + Vec2::from_angle(middle.atan2() + turn * share) * out)
    });
    let inside = near
        .chain(aside)
        .chain(far)
        .filter(|c| keep_in.union(Rect::from_points(*c - size / 2.0, *c + size / 2.0)) == keep_in);
    if let Some(centre) = taken.place_clear(size, inside, no_leader) {
        layer.text(None, centred(&words, TYPE_FIGURES, centre));
    }
}

/// A small cross at a point and its letter beside it.
pub(super) fn marked(layer: &mut Layer, taken: &mut Taken, at: Point, letter: char) {
    let arm = 0.7;
    let thin = Stroke::plain(INK, HAIRLINE);
    for way in [Vec2::new(arm, arm), Vec2::new(arm, -arm)] {
        layer.line(None, open(&[at - way, at + way]), thin);
    }
    let words = letter.to_string();
    let size = Vec2::new(
        text_width(&words, TYPE_FIGURES).to_mm() + 0.9,
        TYPE_FIGURES.to_mm() * 1.3,
    );
    let ring = (0..12).flat_map(|n| {
        let out = 2.4 + 0.4 * f64::from(n);
        (0..16).map(move |k| {
            let turn = std::f64::consts::PI * (0.125 * f64::from(k) - 0.5);
            at + Vec2::from_angle(turn) * out
        })
    });
    if let Some(centre) = taken.place_clear(size, ring, no_leader) {
        layer.text(None, centred(&words, TYPE_FIGURES, centre));
    }
}

/// A plain name at the first free of some places or near one of them; left out where there is none.
pub(super) fn named(
    layer: &mut Layer,
    taken: &mut Taken,
    (words, colour): (&str, trade::Colour),
    places: &[Point],
    keep_in: Rect,
) {
    let size = Vec2::new(
        text_width(words, TYPE_FIGURES).to_mm() + AIR_MM,
        TYPE_FIGURES.to_mm() * 1.15,
    );
    let near = (1..6).flat_map(|n| {
        places.iter().flat_map(move |p| {
            (0..8).map(move |k| {
                let way = Vec2::from_angle(std::f64::consts::FRAC_PI_4 * f64::from(k));
                *p + way * (2.0 * f64::from(n))
            })
        })
    });
    let inside = places.iter().copied().chain(near).filter(|c| {
        let r = Rect::from_points(*c - size / 2.0, *c + size / 2.0);
        keep_in.union(r) == keep_in
    });
    if let Some(centre) = taken.place_or_leave(size, inside) {
        let mut text = centred(words, TYPE_FIGURES, centre);
        text.colour = colour;
        layer.text(None, text);
    }
}

/// The width or height of a dimension on paper.
pub(super) fn on_paper(side: Side, from: Point, to: Point) -> Length {
    Length::mm((along(side, from) - along(side, to)).abs())
}
