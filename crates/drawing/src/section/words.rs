//! Numbers, dimensions and words around a section.

use geometry::{Point, Vec2};
use trade::{Colour, Length};

use super::look::{LIST_LINE, LIST_TYPE, Look};
use super::model::{End, RowOf, Section, SectionPly, SectionRow, heights};
use super::scale::{self, Scale};
use crate::dimension::{arrow_head, dash_dot};
use crate::lettering::{CAPITALS, centred, text_width};
use crate::palette::{CONSTRUCTION, HAIRLINE, INK, PAPER, Pen, QUIET};
use crate::sheet::{Anchor, Layer, Stroke, Text, circle, open};

/// Clear paper between cloth and words.
const CLEAR: f64 = 1.0;

/// One dimension line from the seam line.
pub(super) struct Measure {
    /// On the section, millimetres.
    x: f64,
    words: String,
    /// The row measured, if it is one.
    row: bool,
}

/// The dimensions of a section, those nearest to the seam line first.
pub(super) fn measures(section: &Section) -> Vec<Measure> {
    let mut found: Vec<Measure> = section
        .rows
        .iter()
        .filter(|r| matches!(r.row, RowOf::Numbered(_)) && r.offset.to_mm().abs() >= 0.5)
        .map(|r| Measure {
            x: -r.offset.to_mm(),
            words: mm(r.offset),
            row: true,
        })
        .collect();
    found.sort_by(|a, b| b.x.total_cmp(&a.x));
    found.dedup_by(|b, a| (b.x - a.x).abs() < 1e-6);
    found.extend(section.widths.iter().map(|w| Measure {
        x: -w.to.to_mm(),
        words: format!("{} {}", w.name, mm(w.to - w.from)),
        row: false,
    }));
    found
}

/// "8 mm", "1.6 mm".
pub(super) fn mm(length: Length) -> String {
    let text = format!("{:.1}", length.to_mm() + 0.0);
    format!("{} mm", text.strip_suffix(".0").unwrap_or(&text))
}

impl Measure {
    pub fn words(&self) -> &str {
        &self.words
    }
}

/// Heights on the page between which the cloth lies.
#[derive(Clone, Copy, Debug)]
pub(super) struct Between {
    pub top: f64,
    pub foot: f64,
}

pub(super) fn dimensions(
    section: &Section,
    measures: &[Measure],
    scale: &Scale,
    look: &Look,
    between: Between,
) -> Layer {
    let mut layer = Layer::named("dimensions");
    let thin = Stroke::plain(CONSTRUCTION, HAIRLINE);
    let zero = scale.right(Point::ORIGIN).x;
    let level = |k: usize| between.foot + CLEAR + look.level * (k as f64 + 0.55);
    for (k, measure) in measures.iter().enumerate() {
        let x = scale.at(Point::new(measure.x, 0.0)).x;
        let y = level(k);
        let foot = heights(&section.plies, measure.x).map_or(between.foot, |(_, foot)| {
            scale.at(Point::new(measure.x, foot)).y
        });
        let below = if measure.row { 1.6 } else { CLEAR * 0.5 };
        let starts = (foot + below).min(y);
        layer.line(
            None,
            open(&[Point::new(x, starts), Point::new(x, y + 0.6)]),
            thin,
        );
        layer.line(None, open(&[Point::new(x, y), Point::new(zero, y)]), thin);
        let way = Vec2::new((zero - x).signum(), 0.0);
        let pen = Pen::for_scale(if look.listed { 1.0 } else { 1.6 });
        let room = (zero - x).abs();
        arrow_head(&mut layer, pen, Point::new(x, y), -way, room);
        arrow_head(&mut layer, pen, Point::new(zero, y), way, room);
        layer.text(
            None,
            Text {
                at: Point::new(zero + 1.0, y + look.figures.to_mm() * CAPITALS / 2.0),
                anchor: Anchor::Start,
                ..centred(&measure.words, look.figures, Point::ORIGIN)
            },
        );
    }
    if let Some(last) = measures.len().checked_sub(1) {
        let line = [
            Point::new(zero, between.top - CLEAR),
            Point::new(zero, level(last) + 0.6),
        ];
        let pen = Pen::for_scale(if look.listed { 1.0 } else { 2.0 });
        layer.line(None, dash_dot(&line, pen), thin);
    }
    layer
}

/// The numbers of the rows: above the cloth, or below it where the row is hidden outside.
pub(super) fn numbers(section: &Section, scale: &Scale, look: &Look, between: Between) -> Layer {
    let mut layer = Layer::named("numbers");
    for row in &section.rows {
        let RowOf::Numbered(number) = row.row else {
            continue;
        };
        let level = (row.from.y - row.to.y).abs() < 1e-9;
        let middle = row.from.midpoint(row.to);
        let hidden = !level
            && heights(&section.plies, row.from.x).is_some_and(|(top, _)| top > row.from.y + 0.2);
        let start = if level {
            middle
        } else if hidden {
            row.to
        } else {
            row.from
        };
        let start = scale.at(start);
        let (centre, ends) = if hidden {
            let y = between.foot + CLEAR + 2.2 + look.circle;
            (Point::new(start.x, y), y - look.circle)
        } else {
            let y = between.top - CLEAR - look.circle;
            (Point::new(start.x, y), y + look.circle)
        };
        let gap = match (level, hidden) {
            (true, _) => 0.0,
            (false, true) => look.thread * 4.0,
            (false, false) => -0.5,
        };
        let leader = open(&[
            Point::new(start.x, start.y + gap),
            Point::new(start.x, ends),
        ]);
        layer.line(None, leader, Stroke::plain(CONSTRUCTION, HAIRLINE));
        let ring = Stroke::plain(INK, HAIRLINE);
        let name = format!("row:{}:{number}", section.seam);
        layer.area(
            Some(&name),
            circle(centre, Length::mm(look.circle)),
            PAPER,
            Some(ring),
        );
        layer.text(
            Some(&name),
            centred(&number.to_string(), look.figures, centre),
        );
    }
    layer
}

/// Where the drawing begins and ends on the page.
#[derive(Clone, Copy, Debug)]
pub(super) struct Across {
    pub left: f64,
    pub right: f64,
}

/// "outside" and "inside": on the left, unless a number or a dimension stands there.
pub(super) fn sides(
    section: &Section,
    measures: &[Measure],
    scale: &Scale,
    look: &Look,
    (between, across): (Between, Across),
) -> Layer {
    let mut layer = Layer::named("words");
    let capitals = look.figures.to_mm() * CAPITALS;
    let page = |x: f64| scale.at(Point::new(x, 0.0)).x;
    let room = |words: &str| across.left + text_width(words, look.figures) + 1.0;
    let mut numbers = section
        .rows
        .iter()
        .filter(|r| matches!(r.row, RowOf::Numbered(_)));
    let crowded = numbers.any(|r| page(r.from.x) - look.circle < room("outside"));
    let above = between.top - CLEAR - 2.0 * look.circle + capitals * 0.6;
    let (x, anchor) = if crowded {
        (across.right, Anchor::End)
    } else {
        (across.left, Anchor::Start)
    };
    let word = |words: &str, at: Point, anchor: Anchor| Text {
        at,
        anchor,
        ..centred(words, look.figures, Point::ORIGIN)
    };
    layer.text(None, word("outside", Point::new(x, above), anchor));
    let crowded = measures.iter().any(|m| page(m.x) < room("inside"));
    let under = if crowded { measures.len() as f64 } else { 0.55 };
    let below = between.foot + CLEAR + look.level * under + capitals * 1.9;
    layer.text(
        None,
        word("inside", Point::new(across.left, below), Anchor::Start),
    );
    layer
}

/// The names of the plies where they leave the drawing, and what finished edges are.
pub(super) fn names(
    section: &Section,
    measures: &[Measure],
    scale: &Scale,
    look: &Look,
    between: Between,
) -> Layer {
    let mut layer = Layer::named("names");
    let capitals = look.figures.to_mm() * CAPITALS;
    let mut write = |words: &str, at: Point, anchor: Anchor| {
        layer.text(
            None,
            Text {
                at,
                anchor,
                colour: QUIET,
                ..centred(words, look.figures, Point::ORIGIN)
            },
        );
    };
    for ply in &section.plies {
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
        let half = ply.thickness.to_mm() / 2.0;
        if let Some(at) = on {
            let inward = if at.x > 0.0 { -0.4 } else { 0.4 };
            let foot = heights(&section.plies, at.x + inward).map_or(at.y, |(_, foot)| foot);
            let lowest = foot > at.y - half - 0.1;
            let (y, down) = if at.x < 0.0 && lowest {
                (at.y - half, 0.8 + capitals)
            } else {
                (at.y + half, -0.8)
            };
            let place = scale.at(Point::new(at.x + inward, y));
            let anchor = if at.x > 0.0 {
                Anchor::End
            } else {
                Anchor::Start
            };
            write(&ply.name, Point::new(place.x, place.y + down), anchor);
        }
    }
    // Finished edges are named where no dimension lines are in the way; two on one another once.
    let mut edges: Vec<(f64, &str)> = Vec::new();
    for ply in section.plies.iter().filter(|_| measures.is_empty()) {
        let word = match ply.ends.1 {
            End::Selvedge => "selvedge",
            End::Overedged => "overedged",
            End::GoesOn | End::Raw => continue,
        };
        let x = ply.corners.last().map_or(0.0, |c| c.at.x);
        if edges.iter().all(|(other, _)| (other - x).abs() > 1.0) {
            edges.push((x, word));
        }
    }
    for (x, word) in edges {
        let anchor = if x > 0.0 { Anchor::End } else { Anchor::Start };
        let at = Point::new(
            scale.at(Point::new(x, 0.0)).x,
            between.foot + 1.3 + capitals,
        );
        write(word, at, anchor);
    }
    layer
}

/// The rows and the plies in words.
pub(super) fn list(section: &Section, (left, top): (f64, f64), times: f64) -> Layer {
    let mut layer = Layer::named("list");
    for (k, (words, colour)) in lines(section, times).into_iter().enumerate() {
        layer.text(
            None,
            Text {
                at: Point::new(left, top + LIST_LINE * k as f64),
                anchor: Anchor::Start,
                colour,
                ..centred(&words, LIST_TYPE, Point::ORIGIN)
            },
        );
    }
    layer
}

/// What the list says, a line each: rows, plies, and how large everything is drawn.
pub(super) fn lines(section: &Section, times: f64) -> Vec<(String, Colour)> {
    let rows = section.rows.iter().filter_map(|row| row_line(section, row));
    let plies = section.plies.iter().map(ply_line);
    let cloth = if (section.thickened - 1.0).abs() < 1e-9 {
        "cloth at its true thickness".to_owned()
    } else {
        format!("cloth {:.1} times as thick as it is", section.thickened)
    };
    let broken = if scale::cut(section).is_some() {
        "; a plain stretch left out"
    } else {
        ""
    };
    let drawn = format!("drawn {times:.1} : 1, {cloth}{broken}");
    let inked = rows.chain(plies).map(|line| (line, INK));
    inked.chain([(drawn, QUIET)]).collect()
}

fn ply_line(ply: &SectionPly) -> String {
    let end = match (ply.ends, ply.allowance_from.is_some()) {
        ((End::Overedged, _) | (_, End::Overedged), _) => ", edge overedged",
        ((_, End::Selvedge), _) => ", ends in the selvedge",
        ((_, End::Raw), true) => ", cut edge covered",
        ((_, End::Raw), false) => ", cut edges meet",
        _ => "",
    };
    let beyond = if ply.allowance > Length::ZERO {
        format!(", allowance {}", mm(ply.allowance))
    } else {
        String::new()
    };
    format!("{}{beyond}{end}", ply.name)
}

fn row_line(section: &Section, row: &SectionRow) -> Option<String> {
    let plies = section.plies_at(row);
    let word = if plies == 1 { "ply" } else { "plies" };
    match row.row {
        RowOf::Numbered(number) => Some(format!("row {number}: {} · {plies} {word}", row.words)),
        RowOf::Joining => Some(format!("grey: joining row, {plies} {word}")),
        RowOf::Overedge => None,
    }
}
