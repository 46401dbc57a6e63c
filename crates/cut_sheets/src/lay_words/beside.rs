//! A number beside a piece that is too small to hold it, with a leader to the piece.

use drawing::lettering::touches;
use drawing::palette::{CONSTRUCTION, HAIRLINE, INK, Pen};
use drawing::{Layer, circle, open};
use geometry::{Clear, Point, Rect, Vec2, bounds_of, largest_box};
use trade::Length;

use super::setting::{Setting, room_for};
use super::{LEAST_TYPE, Lying, NUMBERS_MM};
use crate::laid_piece::box_inside;

/// Radius of the dot at the end of a leader, as printed.
const DOT_MM: f64 = 0.35;

/// Looks for a place beside a piece that is too small for its number.
pub(super) struct Beside<'a> {
    pub(super) pieces: &'a [Lying],
    pub(super) lines: &'a [(Point, Point)],
    pub(super) labels: &'a [Rect],
    pub(super) cloth: Rect,
    pub(super) pen: Pen,
}

impl Beside<'_> {
    /// The number's place and the point in the piece it belongs to: on bare cloth near by, else in a
    /// row below the cloth, with a leader that runs over no other label where that can be.
    pub(super) fn find(&self, piece: &Lying, number: &str) -> (Setting, Point) {
        let lines = vec![number.to_owned()];
        let size = self.pen.length(LEAST_TYPE).to_mm();
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
    pub(super) fn bare(&self, place: Rect) -> bool {
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
    pub(super) fn below(&self, dot: Point, room: Vec2) -> Point {
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
pub(super) fn lead(part: &str, (label, dot): (Rect, Point), pen: Pen, layer: &mut Layer) {
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
