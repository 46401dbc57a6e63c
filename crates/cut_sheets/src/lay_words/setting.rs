//! Words of a piece as large as its free room lets them be, in one line or several.

use drawing::lettering::{CAPITALS, DESCENT, text_width};
use drawing::palette::{INK, Pen, TYPE_WORDS};
use drawing::{Anchor, Layer, Text};
use geometry::{Clear, Point, Rect, Vec2, bounds_of, largest_box};
use trade::Length;

use super::{LEAST_TYPE, Lying};

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

/// Words as they are set: lines one below the other with their middle at a place.
pub(super) struct Setting {
    pub(super) lines: Vec<String>,
    pub(super) size: f64,
    pub(super) centre: Point,
    pub(super) upright: bool,
    pub(super) bold: bool,
}

/// The room lines take at a type of one, clear space included.
pub(super) fn room_for(lines: &[String], upright: bool) -> Vec2 {
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
    pub(super) fn place(&self) -> Rect {
        let room = room_for(&self.lines, self.upright) * self.size;
        Rect::from_center_size(self.centre, (room.x, room.y))
    }

    /// Writes it and gives the room it takes.
    pub(super) fn write(&self, part: &str, layer: &mut Layer) -> Rect {
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
pub(super) fn words_in(free: &Clear<'_>, piece: &Lying, pen: Pen) -> Option<Setting> {
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
pub(super) fn broken(words: &str, lines: usize) -> Vec<String> {
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
pub(super) fn number_in(free: &Clear<'_>, number: &str, pen: Pen) -> Option<Setting> {
    let lines = vec![number.to_owned()];
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
