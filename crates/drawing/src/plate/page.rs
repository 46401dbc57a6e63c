//! The figures of a plate on its page: beside one another, each with its dimensions round it, below
//! them the scale bar and the key to the numbers.

use geometry::{Affine, Point, Rect, Vec2};
use trade::Length;
use words::{Given, Words, say};

use super::figure::{Figure, Note, Said};
use super::measure;
use super::scale::{BAR_ROOM_MM, PlateScale, bar};
use super::stitch::DrawnStitches;
use super::words::{is_unit, system, with_units};
use crate::dimension::{CIRCLE_MM, unit};
use crate::lettering::{CAPITALS, centred, text_width};
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, PAPER, TYPE_FIGURES, TYPE_WORDS};
use crate::sheet::{Anchor, Layer, Shape, Sheet, Stroke, Text, circle, open};

/// What an A4 page leaves for a plate under its title and over a caption of three lines.
pub(super) const WIDE_MM: f64 = 172.0;
pub(super) const TALL_MM: f64 = 226.0;
/// Between figures, and between them and what stands below.
const BETWEEN_MM: f64 = 5.5;
/// Between the figures and the scale bar.
const ABOVE_BAR_MM: f64 = 3.5;
const MARGIN_MM: f64 = 1.5;
/// Title of a figure.
const HEAD_MM: f64 = 5.5;
/// The key.
const TYPE_KEY: Length = Length::mm(2.6);
const LINE_MM: f64 = 3.6;
const ENTRY_MM: f64 = 0.8;
const NUMBER_MM: f64 = 6.6;
/// Radius of a number of the key.
const RING_MM: f64 = CIRCLE_MM * 0.86;
/// The same in front of its words.
const KEY_RING_MM: f64 = 1.95;

/// A plate before it is put on its page.
pub(super) struct Draft<'a> {
    pub title: String,
    pub caption: String,
    pub figures: Vec<Figure<'a>>,
}

impl Draft<'_> {
    /// The largest figure, without its dimensions, as a multiple of the page either way.
    pub fn times_the_page(&self) -> f64 {
        let bodies = self.figures.iter().filter_map(|f| f.body);
        bodies
            .map(|b| (b.width() / WIDE_MM).max(b.height() / TALL_MM))
            .fold(0.0, f64::max)
    }
}

/// A plate on its page.
pub(super) struct Paged {
    pub sheet: Sheet,
    pub title: String,
    pub caption: String,
    pub stitches: Vec<DrawnStitches>,
}

/// A figure with its dimensions drawn and the room it takes.
struct Measured<'a> {
    figure: Figure<'a>,
    dimensions: Layer,
    body: Rect,
    room: Rect,
}

/// The draft on its page; `None` where it does not fit, or has nothing to show.
pub(super) fn page(draft: Draft<'_>, scale: PlateScale) -> Option<Paged> {
    let Draft {
        title,
        caption,
        figures,
    } = draft;
    let first = figures.first()?;
    let (garment, words) = (first.garment, first.words);
    let mut measured: Vec<Measured> = figures.into_iter().map(measured).collect::<Option<_>>()?;
    let key = entries(&measured);
    let remarks = measured.iter().flat_map(|m| &m.figure.remarks);
    let lines: Vec<Vec<String>> = key
        .iter()
        .chain(remarks)
        .map(|said| words.putting(said))
        .map(|told| wrapped(&told, WIDE_MM - 2.0 * MARGIN_MM - NUMBER_MM, words))
        .collect();
    let places = arranged(&measured)?;
    let below = places
        .iter()
        .zip(&measured)
        .map(|(p, m)| p.y + m.room.height())
        .fold(0.0, f64::max);
    let key_mm: f64 = lines
        .iter()
        .map(|l| LINE_MM * l.len() as f64 + ENTRY_MM)
        .sum();
    let bar_at = below + ABOVE_BAR_MM;
    let key_at = bar_at + BAR_ROOM_MM + if lines.is_empty() { 0.0 } else { 2.8 };
    let tall = key_at + key_mm + MARGIN_MM;
    if tall.is_nan() || tall > TALL_MM {
        return None;
    }
    let mut layers = Vec::new();
    let mut stitches = Vec::new();
    for (m, at) in measured.iter_mut().zip(places) {
        let shift = Affine::translate(at - m.room.origin());
        let told = said(m, &key);
        let figure = &mut m.figure;
        stitches.append(&mut figure.counted);
        let dimensions = std::mem::take(&mut m.dimensions);
        let mine = figure.layers.drain(..).chain([dimensions, told]);
        for mut layer in mine {
            layer.marks.retain(|m| finite(&m.shape));
            moved(&mut layer, shift);
            layers.push(layer);
        }
        layers.push(heading(&figure.title, at));
    }
    let mut foot = Layer::named("scale");
    let units = system(&garment.collection);
    let place = Point::new(MARGIN_MM + 0.6, bar_at);
    bar(&mut foot, place, scale, units, words);
    layers.push(foot);
    layers.push(listed(&lines, key.len(), key_at));
    layers.retain(|l| !l.marks.is_empty());
    let sheet = Sheet {
        title: words.say(say::DrawnSheet {
            size: garment.size.to_string(),
            title: &title,
        }),
        origin: Point::ORIGIN,
        width: Length::mm(WIDE_MM),
        height: Length::mm(tall),
        layers,
    };
    Some(Paged {
        sheet,
        title,
        caption,
        stitches,
    })
}

fn measured(mut figure: Figure<'_>) -> Option<Measured<'_>> {
    let body = figure.body?;
    let sound = [body.x0, body.x1, body.y0, body.y1]
        .iter()
        .all(|v| v.is_finite());
    if !sound || body.width() > 2000.0 || body.height() > 2000.0 {
        return None;
    }
    let mut dimensions = Layer::named("dimensions");
    let mut taken = std::mem::take(&mut figure.taken);
    let drawn = (figure.linear.as_slice(), figure.aligned.as_slice());
    let mut room = measure::draw(&mut dimensions, &mut taken, drawn, body);
    figure.taken = taken;
    let wide = text_width(&figure.title, TYPE_WORDS).to_mm() * 1.06;
    room.x1 = room.x1.max(room.x0 + wide);
    room.y0 -= HEAD_MM;
    Some(Measured {
        figure,
        dimensions,
        body,
        room,
    })
}

/// Upper left corners of the figures: beside one another, then below, each line centred.
fn arranged(figures: &[Measured<'_>]) -> Option<Vec<Point>> {
    let wide = WIDE_MM - 2.0 * MARGIN_MM;
    let mut rows = lines_of(figures, wide, usize::MAX)?;
    // As many in every line, where that needs no more lines: pairs stay together.
    let even = figures.len().div_ceil(rows.len().max(1));
    if let Some(balanced) = lines_of(figures, wide, even)
        && balanced.len() == rows.len()
    {
        rows = balanced;
    }
    let mut out = vec![Point::ORIGIN; figures.len()];
    let mut y = MARGIN_MM;
    for row in rows {
        let sum: f64 = row.iter().map(|k| figures[*k].room.width()).sum();
        let gaps = row.len() as f64 + 1.0;
        let gap = ((wide - sum) / gaps).max(0.0);
        let mut x = MARGIN_MM + gap;
        let mut tall: f64 = 0.0;
        for k in row {
            out[k] = Point::new(x, y);
            x += figures[k].room.width() + gap;
            tall = tall.max(figures[k].room.height());
        }
        y += tall + BETWEEN_MM;
    }
    Some(out)
}

/// Figures in lines no wider than this and of no more figures than `most`; `None` where one is wider.
fn lines_of(figures: &[Measured<'_>], wide: f64, most: usize) -> Option<Vec<Vec<usize>>> {
    let mut rows: Vec<Vec<usize>> = Vec::new();
    let mut used = f64::INFINITY;
    for (k, m) in figures.iter().enumerate() {
        let w = m.room.width();
        if w > wide {
            return None;
        }
        match rows.last_mut() {
            Some(row) if row.len() < most && used + BETWEEN_MM + w <= wide => {
                used += BETWEEN_MM + w;
                row.push(k);
            }
            _ => {
                used = w;
                rows.push(vec![k]);
            }
        }
    }
    Some(rows)
}

/// What the key says, each thing once, in the order it is met.
fn entries(figures: &[Measured<'_>]) -> Vec<Given> {
    let mut out: Vec<Given> = Vec::new();
    for note in figures.iter().flat_map(|m| &m.figure.notes) {
        if !out.contains(&note.said) {
            out.push(note.said.clone());
        }
    }
    out
}

/// Numbers, names, arrows and angles of a figure, kept clear of one another and of its lines.
fn said(m: &mut Measured<'_>, key: &[Given]) -> Layer {
    let mut layer = Layer::named("words");
    let (body, room) = (m.body, m.room);
    let figure = &mut m.figure;
    let taken = &mut figure.taken;
    let within = Rect::new(room.x0, room.y0 + HEAD_MM, room.x1, room.y1);
    for what in &figure.said {
        if let Said::Angle(corner, from, to, radius) = what {
            measure::angle(&mut layer, taken, *corner, (*from, *to), *radius, within);
        }
    }
    for what in &figure.said {
        if let Said::Pointed(at, words) = what {
            measure::pointed(&mut layer, taken, (*at, words), within);
        }
    }
    for what in &figure.said {
        if let Said::Marked(at, letter) = what {
            measure::marked(&mut layer, taken, *at, *letter);
        }
    }
    for note in &figure.notes {
        if let Some(k) = key.iter().position(|w| *w == note.said) {
            number(&mut layer, taken, note, k + 1, body);
        }
    }
    for what in &figure.said {
        if let Said::Named(at, words, colour) = what {
            measure::named(&mut layer, taken, (words, *colour), at, body);
        }
    }
    layer
}

/// The number of a note in a circle near what it is about, with a leader and a dot on it.
fn number(
    layer: &mut Layer,
    taken: &mut crate::lettering::Taken,
    note: &Note,
    n: usize,
    body: Rect,
) {
    let size = Vec2::new(2.0 * RING_MM + 0.8, 2.0 * RING_MM + 0.8);
    let keep_in = body.inflate(1.0, 1.0);
    let ring = (0..14).flat_map(|step| {
        let out = RING_MM + 2.2 + 1.6 * f64::from(step);
        note.at.iter().flat_map(move |at| {
            (0..16).map(move |k| {
                let turn = std::f64::consts::PI * (0.25 + f64::from(k) / 8.0);
                *at + Vec2::from_angle(turn) * out
            })
        })
    });
    let inside = ring.filter(|c| {
        let r = Rect::from_points(*c - size / 2.0, *c + size / 2.0);
        keep_in.union(r) == keep_in
    });
    let nearest = |c: Point| {
        note.at
            .iter()
            .copied()
            .min_by(|a, b| (*a - c).hypot().total_cmp(&(*b - c).hypot()))
    };
    let Some(centre) = taken.place_clear(size, inside, nearest) else {
        return;
    };
    let Some(at) = nearest(centre) else { return };
    if let Some(out) = unit(centre - at) {
        let line = [at, centre - out * RING_MM];
        layer.line(None, open(&line), Stroke::plain(INK, HAIRLINE));
        layer.area(None, circle(at, Length::mm(0.42)), INK, None);
        taken.keep_clear_of(&line);
    }
    ringed(layer, centre, n, RING_MM);
}

fn ringed(layer: &mut Layer, centre: Point, n: usize, radius: f64) {
    layer.area(
        None,
        circle(centre, Length::mm(radius)),
        PAPER,
        Some(Stroke::plain(INK, HAIRLINE)),
    );
    let mut words = centred(&n.to_string(), TYPE_FIGURES, centre);
    words.bold = true;
    layer.text(None, words);
}

fn heading(title: &str, at: Point) -> Layer {
    let mut layer = Layer::named("title");
    layer.text(
        None,
        Text {
            at: at + Vec2::new(0.0, TYPE_WORDS.to_mm() * CAPITALS),
            words: title.to_owned(),
            size: TYPE_WORDS,
            anchor: Anchor::Start,
            turn_deg: 0.0,
            colour: INK,
            bold: true,
        },
    );
    layer
}

/// The entries below a rule, the first `numbered` of them with their numbers.
fn listed(lines: &[Vec<String>], numbered: usize, top: f64) -> Layer {
    let mut layer = Layer::named("key");
    if lines.is_empty() {
        return layer;
    }
    let rule = [
        Point::new(MARGIN_MM, top - 2.2),
        Point::new(WIDE_MM - MARGIN_MM, top - 2.2),
    ];
    layer.line(None, open(&rule), Stroke::plain(CONSTRUCTION, HAIRLINE));
    let mut y = top;
    for (k, entry) in lines.iter().enumerate() {
        let middle = y + LINE_MM / 2.0;
        let ring = Point::new(MARGIN_MM + RING_MM, middle);
        if k < numbered {
            ringed(&mut layer, ring, k + 1, KEY_RING_MM);
        }
        for line in entry {
            let base = y + LINE_MM / 2.0 + TYPE_KEY.to_mm() * CAPITALS / 2.0;
            layer.text(
                None,
                Text {
                    at: Point::new(MARGIN_MM + NUMBER_MM, base),
                    words: line.clone(),
                    size: TYPE_KEY,
                    anchor: Anchor::Start,
                    turn_deg: 0.0,
                    colour: INK,
                    bold: false,
                },
            );
            y += LINE_MM;
        }
        y += ENTRY_MM;
    }
    layer
}

/// The words in lines no wider than this; a word that is wider stands alone, cut.
fn wrapped(text: &str, wide: f64, words: &Words) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for word in unparted(text, words) {
        let word = word.as_str();
        let longer = out.last().map(|line| format!("{line} {word}"));
        match longer {
            Some(longer) if text_width(&longer, TYPE_KEY).to_mm() <= wide => {
                if let Some(last) = out.last_mut() {
                    *last = longer;
                }
            }
            _ => out.push(fitting(word, wide)),
        }
    }
    out
}

/// The words one by one, a figure never parted from its unit.
fn unparted(text: &str, words: &Words) -> Vec<String> {
    let counted = words.drawn_stitch_unit();
    with_units(text.split(' '), |word| is_unit(word) || word == counted)
}

fn fitting(word: &str, wide: f64) -> String {
    if text_width(word, TYPE_KEY).to_mm() <= wide {
        return word.to_owned();
    }
    let mut out = String::new();
    for c in word.chars() {
        out.push(c);
        if text_width(&out, TYPE_KEY).to_mm() > wide - 4.0 {
            out.push('…');
            break;
        }
    }
    out
}

/// Whether a mark has a place on paper; a row without a pitch has none.
fn finite(shape: &Shape) -> bool {
    match shape {
        Shape::Area { path, .. } | Shape::Line { path, .. } => path.is_finite(),
        Shape::Text(text) => text.at.is_finite(),
    }
}

fn moved(layer: &mut Layer, shift: Affine) {
    for path in layer.paths_mut() {
        path.apply_affine(shift);
    }
    for text in layer.texts_mut() {
        text.at = shift * text.at;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_stay_with_their_units_when_lines_are_broken() {
        let words = "middle 5.6 mm from the band seam, 10 cm from the outseam; 96 stitches";
        for wide in [20.0, 30.0, 45.0, 80.0] {
            let lines = wrapped(words, wide, Words::english());
            assert_eq!(lines.join(" "), words);
            for line in &lines {
                assert!(!line.starts_with("mm") && !line.starts_with("cm"));
                assert!(!line.starts_with("stitches"));
            }
        }
    }

    #[test]
    fn a_word_wider_than_the_page_is_cut() {
        let line = wrapped(&"x".repeat(500), 60.0, Words::english());
        assert_eq!(line.len(), 1);
        assert!(text_width(&line[0], TYPE_KEY).to_mm() <= 60.0);
    }
}
