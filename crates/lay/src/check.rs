//! The last word on a lay: does it keep every rule, measured on the pieces as they were given.
//!
//! Nothing of the search is used here, neither its simplified shapes nor its no-fit areas.

use std::collections::BTreeMap;

use geometry::{Point, Rect, Straight, bounds_of};
use thiserror::Error;
use trade::{Area, Length};

use crate::crossings::{heights, sides};
use crate::lay::Placement;
use crate::problem::{Problem, StraightSide, Turn, touch};

/// Two pieces may overlap by this share of the smaller one's area, and no more: what sums of
/// floating point numbers may lose where two pieces touch along their whole length.
const OVERLAP: f64 = 1e-7;

/// What is wrong with a lay.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum Mistake {
    /// A piece lies there too often, too seldom, or is not known.
    #[error("piece {key}: {laid} laid, {wanted} wanted")]
    Count {
        /// The piece.
        key: String,
        /// How often it lies there.
        laid: usize,
        /// How often it should.
        wanted: usize,
    },
    /// A piece is turned as it must not be.
    #[error("piece {key}: turned by {degrees} degrees, which is not allowed")]
    Turn {
        /// The piece.
        key: String,
        /// Its turn.
        degrees: u16,
    },
    /// A piece reaches beyond the cloth.
    #[error("piece {key}: reaches {by} beyond the cloth")]
    Outside {
        /// The piece.
        key: String,
        /// By how much.
        by: Length,
    },
    /// The straight side of a piece is off the finished edge.
    #[error("piece {key}: its straight side lies {by} off its place on the finished edge")]
    OffEdge {
        /// The piece.
        key: String,
        /// By how much.
        by: Length,
    },
    /// A piece reaches out of its zone.
    #[error("piece {key}: reaches {by} out of its zone across the cloth")]
    OutOfZone {
        /// The piece.
        key: String,
        /// By how much.
        by: Length,
    },
    /// Two pieces that have to match in shade are too far apart along the cloth.
    #[error(
        "pieces {first} and {second} have to match and lie {apart} apart along the cloth, more than {within}"
    )]
    Apart {
        /// One.
        first: String,
        /// The other.
        second: String,
        /// Their distance, from middle to middle.
        apart: Length,
        /// The most allowed.
        within: Length,
    },
    /// Two pieces, or a piece and a fault of the cloth, overlap.
    #[error("pieces {first} and {second} overlap by {area}")]
    Overlap {
        /// One.
        first: String,
        /// The other.
        second: String,
        /// The area they share.
        area: Area,
    },
    /// Two pieces are nearer than the gap.
    #[error("pieces {first} and {second} are {distance} apart, nearer than the gap of {gap}")]
    Near {
        /// One.
        first: String,
        /// The other.
        second: String,
        /// Their distance.
        distance: Length,
        /// The least allowed.
        gap: Length,
    },
}

/// The length of cloth that the placements take: how far the pieces reach along it.
#[must_use]
pub fn reach(problem: &Problem, placements: &[Placement]) -> Length {
    let right = |placement: &Placement| {
        let piece = problem.pieces.iter().find(|p| p.key == placement.key)?;
        Some(bounds_of(&placement.outline(piece)).x1)
    };
    Length::mm(placements.iter().filter_map(right).fold(0.0, f64::max))
}

/// Everything that is wrong with the placements on a cloth of that length; nothing when it keeps
/// every rule of the problem.
pub fn check(problem: &Problem, placements: &[Placement], length: Length) -> Vec<Mistake> {
    let mut mistakes = counts(problem, placements);
    let slack = touch(problem.width) / 10.0;
    let mut laid: Vec<(&str, Vec<Point>, Rect)> = Vec::new();
    for placement in placements {
        let Some(piece) = problem.pieces.iter().find(|p| p.key == placement.key) else {
            continue;
        };
        let key = || piece.key.clone();
        if !piece.turns.contains(&placement.turn) {
            mistakes.push(Mistake::Turn {
                key: key(),
                degrees: placement.turn.degrees(),
            });
        }
        let outline = placement.outline(piece);
        let rect = bounds_of(&outline);
        let by = (-rect.x0)
            .max(-rect.y0)
            .max(rect.x1 - length.to_mm())
            .max(rect.y1 - problem.width.to_mm());
        if by > slack {
            mistakes.push(Mistake::Outside {
                key: key(),
                by: Length::mm(by),
            });
        }
        if let Some(zone) = piece.within {
            let by = (zone.from.to_mm() - rect.y0).max(rect.y1 - zone.to.to_mm());
            if by > slack {
                mistakes.push(Mistake::OutOfZone {
                    key: key(),
                    by: Length::mm(by),
                });
            }
        }
        if let Some(rule) = piece.on_edge {
            let inset = rule.inset.to_mm().max(0.0);
            let at_bottom = (rule.side == StraightSide::Lower) == (placement.turn == Turn::None);
            let off = if at_bottom {
                rect.y0 - inset
            } else {
                problem.width.to_mm() - inset - rect.y1
            };
            if off.abs() > slack {
                mistakes.push(Mistake::OffEdge {
                    key: key(),
                    by: Length::mm(off.abs()),
                });
            }
        }
        laid.push((&piece.key, outline, rect));
    }
    let pieces = laid.len();
    for rect in &problem.faults {
        let corners = [
            (rect.x0, rect.y0),
            (rect.x1, rect.y0),
            (rect.x1, rect.y1),
            (rect.x0, rect.y1),
        ];
        laid.push((
            "(fault of the cloth)",
            corners.map(Point::from).to_vec(),
            *rect,
        ));
    }
    for (i, a) in laid.iter().enumerate().take(pieces) {
        for b in &laid[i + 1..] {
            mistakes.extend(between(problem, a, b, slack));
        }
    }
    mistakes
}

fn counts(problem: &Problem, placements: &[Placement]) -> Vec<Mistake> {
    let mut counts: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    for piece in &problem.pieces {
        counts.entry(&piece.key).or_default().1 += piece.demand;
    }
    for placement in placements {
        counts.entry(&placement.key).or_default().0 += 1;
    }
    counts
        .into_iter()
        .filter(|(_, (laid, wanted))| laid != wanted)
        .map(|(key, (laid, wanted))| Mistake::Count {
            key: key.to_owned(),
            laid,
            wanted,
        })
        .collect()
}

type Laid<'a> = (&'a str, Vec<Point>, Rect);

fn between(problem: &Problem, a: &Laid, b: &Laid, slack: f64) -> Option<Mistake> {
    let gap = problem.gap.to_mm();
    let near = a.2.inflate(gap, gap).intersect(b.2);
    if near.width() <= 0.0 || near.height() <= 0.0 {
        return None;
    }
    let (first, second) = (a.0.to_owned(), b.0.to_owned());
    let area = shared_area(&a.1, &b.1);
    let smaller = geometry::area(&a.1)
        .to_mm2()
        .abs()
        .min(geometry::area(&b.1).to_mm2().abs());
    if area > OVERLAP * smaller {
        return Some(Mistake::Overlap {
            first,
            second,
            area: Area::mm2(area),
        });
    }
    let apart = distance(&a.1, &b.1);
    (gap > 0.0 && apart < gap - slack).then(|| Mistake::Near {
        first,
        second,
        distance: Length::mm(apart),
        gap: problem.gap,
    })
}

/// The area two simple polygons share.
///
/// The plane is cut into upright slabs at every corner and every crossing. Within a slab no two
/// sides cross, so the shared height changes evenly and its value in the middle, times the width,
/// is the area exactly.
pub(crate) fn shared_area(a: &[Point], b: &[Point]) -> f64 {
    let both = bounds_of(a).intersect(bounds_of(b));
    if both.width() <= 0.0 || both.height() <= 0.0 {
        return 0.0;
    }
    let mut cuts: Vec<f64> = a.iter().chain(b).map(|p| p.x).collect();
    for (p, q) in sides(a) {
        for (r, s) in sides(b) {
            let side = Straight::between(p, q);
            // Sides that lie along one another meet at no share of their way, and cut nothing.
            if let Some(meeting) = side.meeting(Straight::between(r, s), 0.0)
                && (0.0..=1.0).contains(&meeting.first)
            {
                cuts.push(p.x + meeting.first * side.way.x);
            }
        }
    }
    cuts.retain(|x| *x >= both.x0 && *x <= both.x1);
    cuts.push(both.x0);
    cuts.push(both.x1);
    cuts.sort_by(f64::total_cmp);
    let mut area = 0.0;
    for cut in cuts.windows(2) {
        let (width, x) = (cut[1] - cut[0], (cut[0] + cut[1]) / 2.0);
        if width > 0.0 {
            area += width * shared_height(&heights(a, x), &heights(b, x));
        }
    }
    area
}

fn shared_height(a: &[f64], b: &[f64]) -> f64 {
    let mut sum = 0.0;
    for p in a.chunks_exact(2) {
        for q in b.chunks_exact(2) {
            sum += (p[1].min(q[1]) - p[0].max(q[0])).max(0.0);
        }
    }
    sum
}

/// The distance between the rims of two polygons that do not overlap.
fn distance(a: &[Point], b: &[Point]) -> f64 {
    let from_corners = |p: &[Point], q: &[Point]| {
        p.iter()
            .flat_map(|&c| sides(q).map(move |(r, s)| to_side(c, r, s)))
            .fold(f64::INFINITY, f64::min)
    };
    from_corners(a, b).min(from_corners(b, a))
}

fn to_side(p: Point, from: Point, to: Point) -> f64 {
    Straight::between(from, to)
        .distance(p, f64::MIN_POSITIVE)
        .to_mm()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn points(xy: &[(f64, f64)]) -> Vec<Point> {
        xy.iter().map(|&p| p.into()).collect()
    }

    #[test]
    fn shared_areas_by_hand() {
        let square = points(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]);
        let shifted: Vec<Point> = square
            .iter()
            .map(|p| Point::new(p.x + 3.0, p.y + 1.0))
            .collect();
        assert!((shared_area(&square, &shifted) - 3.0).abs() < 1e-12);
        let beside: Vec<Point> = square.iter().map(|p| Point::new(p.x + 4.0, p.y)).collect();
        assert_eq!(shared_area(&square, &beside), 0.0);
        // A triangle cut off by the square's top: base 2 at y = 4 shrinking to the tip at y = 2.
        let tip = points(&[(1.0, 6.0), (2.0, 2.0), (3.0, 6.0)]);
        assert!((shared_area(&square, &tip) - 1.0).abs() < 1e-12);
        let inside = points(&[(1.0, 1.0), (2.0, 1.0), (2.0, 2.0), (1.0, 2.0)]);
        assert!((shared_area(&square, &inside) - 1.0).abs() < 1e-12);
    }

    #[test]
    fn distance_between_a_corner_and_a_side() {
        let square = points(&[(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)]);
        let tip = points(&[(7.0, 2.0), (9.0, 0.0), (9.0, 4.0)]);
        assert!((distance(&square, &tip) - 3.0).abs() < 1e-12);
    }
}
