//! The largest box of a given shape that fits inside an outline.

use std::cmp::Ordering;
use std::collections::BinaryHeap;

use crate::{Point, Rect, Vec2, bounds_of};

/// A box found is at most about twice this share smaller than the largest there is.
const NEAR_ENOUGH: f64 = 0.02;
/// Cells looked at before the best so far is taken; outlines of pieces need a fraction of it.
const MOST_CELLS: usize = 600;
/// Cells along the longer side at the beginning.
const MOST_ACROSS: f64 = 24.0;

/// What a box inside an outline keeps clear of.
#[derive(Clone, Copy, Debug)]
pub struct Clear<'a> {
    /// The closed outline it lies in.
    pub outline: &'a [Point],
    /// Lines that run over the outline's inside.
    pub lines: &'a [(Point, Point)],
    /// Boxes that are taken.
    pub boxes: &'a [Rect],
}

/// A box of the shape asked for, so many times as large.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Inscribed {
    /// Its middle.
    pub centre: Point,
    /// How many times as large.
    pub times: f64,
}

/// The largest upright box of the shape `size` that lies free, no more than `most` times as large as
/// asked. `None` where not even a small one does.
///
/// Measured in halves of the box across and down, the largest box about a place is the nearest line's
/// distance in the sense of the larger coordinate. That distance changes no faster than the place, so
/// a cell of places cannot hold a larger box than its middle does by more than its own half: cells
/// are halved, the most promising first, until none can be better.
pub fn largest_box(free: &Clear<'_>, size: Vec2, most: f64) -> Option<Inscribed> {
    let bounds = bounds_of(free.outline);
    let half = size / 2.0;
    let usable = |v: f64| v.is_finite() && v > 0.0;
    let across = Vec2::new(bounds.width() / half.x, bounds.height() / half.y);
    if ![half.x, half.y, across.x, across.y].into_iter().all(usable) {
        return None;
    }
    let look = |centre: Point| Inscribed {
        centre,
        times: free.times_at(centre, half),
    };
    let middle = bounds.center();
    let mut best = look(middle);
    if best.times >= most {
        return Some(Inscribed {
            times: most,
            ..best
        });
    }
    let reach = (across.x.min(across.y) / 2.0).max(across.x.max(across.y) / MOST_ACROSS) / 2.0;
    let mut cells = BinaryHeap::new();
    let columns = (across.x / (2.0 * reach)).ceil() as u32;
    let rows = (across.y / (2.0 * reach)).ceil() as u32;
    for column in 0..columns {
        for row in 0..rows {
            let at = |k: u32, half: f64| (2.0 * f64::from(k) + 1.0) * reach * half;
            let centre = bounds.origin() + Vec2::new(at(column, half.x), at(row, half.y));
            cells.push(Cell::new(look(centre), reach));
        }
    }
    for _ in 0..MOST_CELLS {
        let Some(cell) = cells.pop() else { break };
        if cell.found.times > best.times {
            best = cell.found;
        }
        let good = best.times.max(0.0) * (1.0 + NEAR_ENOUGH);
        if best.times >= most || cell.at_most <= good {
            break;
        }
        let reach = cell.reach / 2.0;
        for (x, y) in [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)] {
            let off = Vec2::new(x * half.x, y * half.y) * reach;
            cells.push(Cell::new(look(cell.found.centre + off), reach));
        }
    }
    // Of places about as good, one nearer the middle looks better.
    let wanted = most.min(best.times * (1.0 - NEAR_ENOUGH));
    (wanted > 0.0).then(|| nearer(free, best.centre, middle, half, wanted))
}

/// A box that is large enough moves towards the middle as far as it stays so, straight or else only
/// down or across.
fn nearer(free: &Clear<'_>, from: Point, middle: Point, half: Vec2, times: f64) -> Inscribed {
    const STEPS: u32 = 8;
    let mut centre = from;
    for way in [(1.0, 1.0), (1.0, 0.0), (0.0, 1.0)] {
        let whole = middle - centre;
        let by = Vec2::new(whole.x * way.0, whole.y * way.1);
        let mut steps = (1..=STEPS)
            .rev()
            .map(|k| centre + by * (f64::from(k) / f64::from(STEPS)));
        centre = steps
            .find(|at| free.times_at(*at, half) >= times)
            .unwrap_or(centre);
    }
    Inscribed { centre, times }
}

impl Clear<'_> {
    /// How many times as large as `half` across and down a box about a place may be: negative outside
    /// the outline and in a box that is taken.
    fn times_at(&self, at: Point, half: Vec2) -> f64 {
        let ends = self.outline.iter().zip(self.outline.iter().cycle().skip(1));
        let mut inside = false;
        let mut edge = f64::INFINITY;
        for (a, b) in ends {
            if (a.y > at.y) != (b.y > at.y) && at.x < a.x + (b.x - a.x) * (at.y - a.y) / (b.y - a.y)
            {
                inside = !inside;
            }
            edge = edge.min(apart(*a - at, *b - at, half));
        }
        let edge = if inside { edge } else { -edge };
        let lines = self
            .lines
            .iter()
            .map(|(a, b)| apart(*a - at, *b - at, half));
        let boxes = self.boxes.iter().map(|r| {
            let off = r.center() - at;
            ((off.x.abs() - r.width() / 2.0) / half.x)
                .max((off.y.abs() - r.height() / 2.0) / half.y)
        });
        lines.chain(boxes).fold(edge, f64::min)
    }

    /// Whether a box of that size lies free about a place.
    pub fn holds(&self, centre: Point, size: Vec2) -> bool {
        self.times_at(centre, size / 2.0) >= 1.0
    }
}

/// The distance from the origin to a straight line, the larger of its two parts in halves of the box.
/// Along a line that distance is least at an end, where a part is nought, or where both are alike.
fn apart(a: Vec2, b: Vec2, half: Vec2) -> f64 {
    let (a, b) = (
        Vec2::new(a.x / half.x, a.y / half.y),
        Vec2::new(b.x / half.x, b.y / half.y),
    );
    let d = b - a;
    let far = |v: Vec2| v.x.abs().max(v.y.abs());
    let nought = [
        (a.x, d.x),
        (a.y, d.y),
        (a.x - a.y, d.x - d.y),
        (a.x + a.y, d.x + d.y),
    ];
    let between = nought
        .into_iter()
        .map(|(from, by)| -from / by)
        .filter(|t| (0.0..=1.0).contains(t))
        .map(|t| far(a + d * t));
    between.fold(far(a).min(far(b)), f64::min)
}

/// A square of places, in halves of the box, with what its middle holds.
struct Cell {
    found: Inscribed,
    reach: f64,
    at_most: f64,
}

impl Cell {
    fn new(found: Inscribed, reach: f64) -> Cell {
        Cell {
            at_most: found.times + reach,
            found,
            reach,
        }
    }
}

impl Ord for Cell {
    fn cmp(&self, other: &Self) -> Ordering {
        self.at_most.total_cmp(&other.at_most)
    }
}

impl PartialOrd for Cell {
    fn partial_cmp(&self, other: &Self) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Cell {
    fn eq(&self, other: &Self) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Cell {}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]
    use super::*;
    use proptest::prelude::*;

    fn points(all: &[(f64, f64)]) -> Vec<Point> {
        all.iter().copied().map(Point::from).collect()
    }

    fn alone(outline: &[Point]) -> Clear<'_> {
        Clear {
            outline,
            lines: &[],
            boxes: &[],
        }
    }

    #[test]
    fn a_rectangle_holds_itself() {
        let outline = points(&[(10.0, 5.0), (40.0, 5.0), (40.0, 15.0), (10.0, 15.0)]);
        let found = largest_box(&alone(&outline), Vec2::new(3.0, 1.0), 100.0).unwrap();
        assert!((found.times - 10.0).abs() < 0.4, "{found:?}");
        let capped = largest_box(&alone(&outline), Vec2::new(3.0, 1.0), 2.0).unwrap();
        assert_eq!((capped.times, capped.centre), (2.0, Point::new(25.0, 10.0)));
    }

    #[test]
    fn the_middle_of_a_bent_piece_is_no_place() {
        // An L whose arms are 10 wide; the box lies in the longer one.
        let outline = points(&[
            (0.0, 0.0),
            (60.0, 0.0),
            (60.0, 10.0),
            (10.0, 10.0),
            (10.0, 30.0),
            (0.0, 30.0),
        ]);
        let found = largest_box(&alone(&outline), Vec2::new(5.0, 1.0), 100.0).unwrap();
        assert!(found.times > 9.5 && found.centre.y < 10.0, "{found:?}");
    }

    #[test]
    fn lines_and_boxes_are_kept_clear_of() {
        let outline = points(&[(0.0, 0.0), (40.0, 0.0), (40.0, 10.0), (0.0, 10.0)]);
        let free = Clear {
            lines: &[(Point::new(10.0, -5.0), Point::new(10.0, 15.0))],
            boxes: &[Rect::new(30.0, 0.0, 40.0, 10.0)],
            ..alone(&outline)
        };
        let found = largest_box(&free, Vec2::new(2.0, 1.0), 100.0).unwrap();
        assert!(
            (found.centre - Point::new(20.0, 5.0)).hypot() < 0.5,
            "{found:?}"
        );
        assert!((found.times - 10.0).abs() < 0.4, "{found:?}");
    }

    #[test]
    fn what_has_no_inside_holds_nothing() {
        for outline in [
            vec![],
            points(&[(1.0, 1.0)]),
            points(&[(0.0, 0.0), (9.0, 0.0), (3.0, 0.0)]),
            points(&[(0.0, f64::NAN), (9.0, 0.0), (3.0, 3.0)]),
        ] {
            assert_eq!(
                largest_box(&alone(&outline), Vec2::new(1.0, 1.0), 5.0),
                None
            );
        }
        let square = points(&[(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]);
        assert_eq!(largest_box(&alone(&square), Vec2::ZERO, 5.0), None);
    }

    proptest! {
        /// Any star of twelve rays: the box lies inside, and no place of a fine net holds a larger one.
        #[test]
        fn the_box_lies_inside_and_is_about_the_largest(
            rays in proptest::collection::vec(4.0..40.0_f64, 12),
            wide in 0.3..6.0_f64,
        ) {
            let outline: Vec<Point> = rays
                .iter()
                .enumerate()
                .map(|(k, r)| Point::ORIGIN + Vec2::from_angle(k as f64 * 0.523) * *r)
                .collect();
            let size = Vec2::new(wide, 1.0);
            let free = alone(&outline);
            let found = largest_box(&free, size, 1e3).unwrap();
            // Corners and the middles of the sides lie inside.
            let half = size * found.times * 0.4995;
            for (x, y) in [(-1.0, -1.0), (0.0, -1.0), (1.0, -1.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0), (-1.0, 1.0), (-1.0, 0.0)] {
                let at = found.centre + Vec2::new(half.x * x, half.y * y);
                prop_assert!(crate::contains(&outline, at), "{at:?} lies outside");
            }
            let bounds = bounds_of(&outline);
            for i in 0..=60 {
                for j in 0..=60 {
                    let at = bounds.origin()
                        + Vec2::new(bounds.width() * f64::from(i), bounds.height() * f64::from(j)) / 60.0;
                    let here = free.times_at(at, size / 2.0);
                    prop_assert!(here <= found.times * 1.05, "{at:?} holds {here}, not {}", found.times);
                }
            }
        }
    }
}
