//! The names of plies: where they leave the drawing, or beside them.

use geometry::{Point, Vec2, bounds_of};
use trade::Length;
use words::{Key, Words};

use super::model::{End, Section, SectionPly, heights};
use super::page::{AROUND, Page, TRIED};
use super::section_size::Look;
use crate::lettering::{CAPITALS, DESCENT, text_width};
use crate::palette::{HAIRLINE, QUIET};
use crate::sheet::{Anchor, Layer, Stroke, circle, open};

/// From the cloth to a name that stands beside it with a leader.
const LEADER: f64 = 2.4;

impl Page<'_> {
    /// The names of the plies where they leave the drawing, and what finished edges are.
    pub fn names(&mut self) -> Layer {
        let mut layer = Layer::named("names");
        // Plies of one name that lie on one another are named once.
        let mut named = Vec::new();
        for ply in &self.section.plies {
            if !named.contains(&ply.name) {
                named.push(ply.name);
                self.name(&mut layer, ply);
            }
        }
        // Two finished edges on one another are named once.
        let mut edges: Vec<(f64, &str)> = Vec::new();
        for ply in &self.section.plies {
            let word = match ply.ends.1 {
                End::Selvedge => self.words.section_selvedge(),
                End::Overedged => self.words.section_overedged(),
                End::GoesOn | End::Raw => continue,
            };
            let x = ply.corners.last().map_or(0.0, |c| c.at.x);
            if edges.iter().all(|(other, _)| (other - x).abs() > 1.0) {
                edges.push((x, word));
            }
        }
        for (x, word) in edges {
            let half = text_width(word, self.look.figures).to_mm() / 2.0;
            let inward = if x > 0.0 { -half } else { half };
            let at = self.scale.at(Point::new(x, 0.0)).x + inward;
            let y = self.foot + 1.3 + self.look.figures.to_mm() * CAPITALS / 2.0;
            // Where dimensions take that place the list says it.
            self.write_if_clear(&mut layer, word, Point::new(at, y));
        }
        layer
    }

    fn name(&mut self, layer: &mut Layer, ply: &SectionPly) {
        let name = self.words.named(ply.name);
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
        let tall = self.look.figures.to_mm() * (CAPITALS + DESCENT) / 2.0 + 0.5;
        let wide = text_width(name, self.look.figures).to_mm() / 2.0;
        let half = ply.thickness.to_mm() / 2.0;
        let Some(at) = on else {
            self.name_beside(layer, ply, (wide, tall));
            return;
        };
        let out = if at.x > 0.0 { 1.0 } else { -1.0 };
        let end = Point::new(at.x - out * 0.4, at.y);
        let (top, foot) = heights(&self.section.plies, end.x).unwrap_or((at.y, at.y));
        let page = |y: f64| self.scale.at(Point::new(end.x, y));
        let above = page(top) + Vec2::new(-out * wide, -tall);
        let below = page(foot) + Vec2::new(-out * wide, tall);
        let topmost = at.y + half > top - 0.1;
        let lowest = at.y - half < foot + 0.1;
        // The outermost ply is named above and the innermost below, so that a name is never nearer to
        // another ply than to its own, unless there is no room.
        let (first, second) = if topmost && !(lowest && at.x < 0.0) {
            (above, below)
        } else {
            (below, above)
        };
        let places = [first, second].into_iter().flat_map(|start| {
            let up = if start == above { -1.0 } else { 1.0 };
            (0..3).flat_map(move |line| {
                let away = up * f64::from(line) * 2.0 * (tall - 0.3);
                (0..60).map(move |k| start + Vec2::new(-out * TRIED * f64::from(k), away))
            })
        });
        let places: Vec<Point> = places.collect();
        self.write(layer, name, QUIET, |_| places);
    }

    /// Names a ply that does not leave the drawing, with a leader to it where the name stands right of it.
    fn name_beside(&mut self, layer: &mut Layer, ply: &SectionPly, (wide, tall): (f64, f64)) {
        let name = self.words.named(ply.name);
        let page: Vec<Point> = ply
            .outline()
            .into_iter()
            .map(|p| self.scale.at(p))
            .collect();
        let room = bounds_of(&page);
        let left = (0..60).flat_map(|k| {
            let x = room.x0 + wide + TRIED * f64::from(k);
            [room.y0 - tall, room.y1 + tall].map(|y| Point::new(x, y))
        });
        let end = rightmost(&page);
        let far = self.scale.right(Point::ORIGIN).x.max(end.x);
        // Names that stand below one another keep as far apart as their plies.
        let (nth, count) = self.among_those_that_stay(ply);
        let level = end.y + tall * 0.6 * (2.0 * nth as f64 + 1.0 - count as f64);
        let right = (0..60).map(|k| {
            let down = f64::from(k / 2) * TRIED * if k % 2 == 0 { -1.0 } else { 1.0 };
            Point::new(far + LEADER + wide, level + down)
        });
        let inside = room.x1 <= self.scale.right(Point::ORIGIN).x + 0.1;
        let places: Vec<Point> = match inside && count == 1 {
            true => left.chain(right).collect(),
            false => right.chain(left).collect(),
        };
        let Some(centre) = self.placed(name, places) else {
            return;
        };
        let start = Point::new(centre.x - wide - 0.3, centre.y);
        self.set(layer, name, QUIET, (centre, Anchor::Start));
        if start.x > end.x {
            let leader = [end, start];
            layer.line(None, open(&leader), Stroke::plain(QUIET, HAIRLINE));
            layer.area(None, circle(end, Length::mm(0.3)), QUIET, None);
            self.taken.keep_clear_of(&leader);
        }
    }

    /// Where a ply comes among those of other names that stay on the drawing, and how many these are.
    fn among_those_that_stay(&self, ply: &SectionPly) -> (usize, usize) {
        let names = staying(self.section);
        let nth = names.iter().position(|name| *name == ply.name);
        (nth.unwrap_or(0), names.len())
    }
}

/// The names of the plies that do not leave the drawing, each once.
fn staying(section: &Section) -> Vec<Key> {
    let mut names = Vec::new();
    for ply in &section.plies {
        let stays = ply.ends.0 != End::GoesOn && ply.ends.1 != End::GoesOn;
        if stays && !names.contains(&ply.name) {
            names.push(ply.name);
        }
    }
    names
}

/// The room that names take right of the cloth: of several plies that stay on the drawing.
pub(super) fn room_beside(section: &Section, look: &Look, words: &Words) -> f64 {
    let names = staying(section);
    if names.len() < 2 {
        return 0.0;
    }
    let wide = |name: &Key| text_width(words.named(*name), look.figures).to_mm();
    LEADER + AROUND + names.iter().map(wide).fold(0.0, f64::max)
}

/// The point of an outline farthest to the right.
fn rightmost(outline: &[Point]) -> Point {
    let most = outline.iter().copied().max_by(|a, b| a.x.total_cmp(&b.x));
    most.unwrap_or(Point::ORIGIN)
}
