//! Outlines of many corners with fewer of them, only ever grown.

use geometry::{Point, Straight, bounds_of, is_simple};

use crate::convex::turn;
use crate::problem::tidy;

/// Outlines with more corners than this are simplified for the search, to `FEW_CORNERS` if that
/// makes them no larger than `MOST_GROWTH` allows.
const MANY_CORNERS: usize = 40;
const FEW_CORNERS: usize = 28;

/// The share of its area by which simplifying may make a piece larger.
const MOST_GROWTH: f64 = 0.001;

/// A step that saves a corner by adding a triangle.
#[derive(Clone, Copy)]
enum Step {
    /// Leaves out a corner that points inward.
    Fill(usize),
    /// Puts one corner, where the sides beside it meet, in place of a side and its two ends.
    Extend(usize, Point),
}

/// The outline, simplified if it has many corners. It runs anticlockwise and is tidy, and so is the
/// answer, which contains it and lies within the rectangle round it.
pub(crate) fn simpler(outline: Vec<Point>) -> Vec<Point> {
    if outline.len() <= MANY_CORNERS {
        return outline;
    }
    let mut left = MOST_GROWTH * geometry::area(&outline).to_mm2();
    let mut points = outline.clone();
    while points.len() > FEW_CORNERS {
        let Some((added, step)) = cheapest(&points) else {
            break;
        };
        if added > left {
            break;
        }
        left -= added;
        match step {
            Step::Fill(i) => drop(points.remove(i)),
            Step::Extend(i, corner) => {
                points[i] = corner;
                points.remove((i + 1) % points.len());
            }
        }
    }
    let points = tidy(&points);
    // Two triangles added from different sides may meet in a narrow hollow.
    if points.len() >= 3 && is_simple(&points) {
        points
    } else {
        outline
    }
}

/// The possible step that adds the least area.
fn cheapest(points: &[Point]) -> Option<(f64, Step)> {
    let n = points.len();
    let at = |i: usize| points[i % n];
    let rect = bounds_of(points);
    let mut steps: Vec<(f64, Step)> = Vec::new();
    for i in 0..n {
        let (a, b, c, d) = (at(i + n - 1), at(i), at(i + 1), at(i + 2));
        let (first, second) = (turn(a, b, c), turn(b, c, d));
        if first <= 0.0 {
            steps.push((-first / 2.0, Step::Fill(i)));
        } else if second > 0.0 {
            let (one, other) = (Straight::between(a, b), Straight::between(c, d));
            // The sides meet beyond b only when together they turn by less than half a circle.
            if one.way.cross(other.way) > 0.0
                && let Some(meeting) = one.meeting(other, 0.0)
            {
                let corner = one.at(meeting.first);
                if corner.x >= rect.x0
                    && corner.x <= rect.x1
                    && corner.y >= rect.y0
                    && corner.y <= rect.y1
                {
                    steps.push((turn(b, corner, c) / 2.0, Step::Extend(i, corner)));
                }
            }
        }
    }
    steps.sort_by(|a, b| a.0.total_cmp(&b.0));
    steps
        .into_iter()
        .find(|(added, step)| *added >= 0.0 && clear(points, *step))
}

/// Whether no other corner lies in the triangle the step adds.
fn clear(points: &[Point], step: Step) -> bool {
    let n = points.len();
    let (i, triangle) = match step {
        Step::Fill(i) => (i, [points[(i + n - 1) % n], points[(i + 1) % n], points[i]]),
        Step::Extend(i, corner) => (i, [points[i], corner, points[(i + 1) % n]]),
    };
    let near = [(i + n - 1) % n, i, (i + 1) % n, (i + 2) % n];
    let [a, b, c] = triangle;
    points
        .iter()
        .enumerate()
        .filter(|(k, _)| !near.contains(k))
        .all(|(_, p)| {
            let sides = [turn(a, b, *p), turn(b, c, *p), turn(c, a, *p)];
            sides.iter().any(|s| *s < 0.0) && sides.iter().any(|s| *s > 0.0)
        })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::check::shared_area;

    /// A kidney of a hundred corners, hollow on one side.
    fn kidney(corners: usize) -> Vec<Point> {
        (0..corners)
            .map(|i| {
                let t = i as f64 / corners as f64 * std::f64::consts::TAU;
                let radius = 100.0 + 45.0 * (2.0 * t).cos();
                Point::new(radius * t.cos() * 2.0, radius * t.sin())
            })
            .collect()
    }

    #[test]
    fn a_simplified_outline_contains_the_piece_and_is_hardly_larger() {
        let piece = tidy(&kidney(120));
        let simple = simpler(piece.clone());
        assert!(simple.len() <= 80, "{}", simple.len());
        let area = |p: &[Point]| geometry::area(p).to_mm2();
        assert!((shared_area(&piece, &simple) - area(&piece)).abs() < 1e-6 * area(&piece));
        assert!(area(&simple) <= area(&piece) * 1.0011);
        let (a, b) = (bounds_of(&piece), bounds_of(&simple));
        assert!(b.x0 >= a.x0 && b.x1 <= a.x1 && b.y0 >= a.y0 && b.y1 <= a.y1);
    }

    #[test]
    fn an_outline_of_few_corners_is_kept() {
        let piece = tidy(&kidney(30));
        assert_eq!(simpler(piece.clone()), piece);
    }
}
