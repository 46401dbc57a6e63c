//! Straight lines: where two of them meet, and which place of one is nearest to a point.

use kurbo::{Point, Vec2};
use trade::Length;

/// A straight line: where it begins, and the way to where it ends. Places on it are named by their share of the
/// way; it runs on at both ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Straight {
    /// Where it begins.
    pub from: Point,
    /// The way from there to its end.
    pub way: Vec2,
}

/// Where two straight lines meet, as a share of the way of either.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Meeting {
    /// Of the first line.
    pub first: f64,
    /// Of the second line.
    pub second: f64,
}

impl Meeting {
    /// Whether the place lies between the ends of both lines, or no more than this share of them beyond.
    pub fn on_both(self, beyond: f64) -> bool {
        let on = -beyond..=1.0 + beyond;
        on.contains(&self.first) && on.contains(&self.second)
    }
}

impl Straight {
    /// From one point to another.
    pub fn between(from: Point, to: Point) -> Straight {
        Straight {
            from,
            way: to - from,
        }
    }

    /// The place at this share of the way.
    pub fn at(self, share: f64) -> Point {
        self.from + self.way * share
    }

    /// Where this line, run on as far as need be, meets another. `None` where the cross product of their ways is
    /// below `parallel`; with nought, lines side by side meet at places that are not finite.
    pub fn meeting(self, other: Straight, parallel: f64) -> Option<Meeting> {
        let across = self.way.cross(other.way);
        if across.is_nan() || across.abs() < parallel {
            return None;
        }
        let between = other.from - self.from;
        Some(Meeting {
            first: between.cross(other.way) / across,
            second: between.cross(self.way) / across,
        })
    }

    /// Where this line, from its beginning to its end, crosses another or ends on it.
    pub fn crossing(self, other: Straight, parallel: f64) -> Option<Point> {
        let meeting = self.meeting(other, parallel)?;
        meeting.on_both(0.0).then(|| self.at(meeting.first))
    }

    /// The share of the way at which the square to a point stands, the line run on. The square of a line's length
    /// counts as no less than `least_mm2`.
    pub fn share_beside(self, p: Point, least_mm2: f64) -> f64 {
        (p - self.from).dot(self.way) / self.way.hypot2().max(least_mm2)
    }

    /// The share of the way, between beginning and end, that is nearest to a point.
    pub fn share_nearest(self, p: Point, least_mm2: f64) -> f64 {
        self.share_beside(p, least_mm2).clamp(0.0, 1.0)
    }

    /// The place between beginning and end that is nearest to a point.
    pub fn nearest(self, p: Point, least_mm2: f64) -> Point {
        self.at(self.share_nearest(p, least_mm2))
    }

    /// How far a point is from the nearest place between beginning and end.
    pub fn distance(self, p: Point, least_mm2: f64) -> Length {
        Length::mm((p - self.nearest(p, least_mm2)).hypot())
    }
}

/// Whether two stretches cross so that either has its ends on both sides of the other; touching is not crossing.
pub fn crosses(first: (Point, Point), second: (Point, Point)) -> bool {
    let side = |(a, b): (Point, Point), p: Point| (b - a).cross(p - a);
    side(first, second.0) * side(first, second.1) < 0.0
        && side(second, first.0) * side(second, first.1) < 0.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tolerance::{NO_SQUARE_MM2, PARALLEL};
    use proptest::prelude::*;

    fn point() -> impl Strategy<Value = Point> {
        (-1000.0..1000.0, -1000.0..1000.0).prop_map(Point::from)
    }

    #[test]
    fn two_diagonals_cross_in_the_middle() {
        let p = |x: f64, y: f64| Point::new(x, y);
        let one = Straight::between(p(0.0, 0.0), p(4.0, 4.0));
        let other = Straight::between(p(0.0, 4.0), p(4.0, 0.0));
        assert_eq!(one.crossing(other, PARALLEL), Some(p(2.0, 2.0)));
        // Short of the other: they meet, run on, but do not cross.
        let short = Straight::between(p(0.0, 4.0), p(1.0, 3.0));
        assert_eq!(one.crossing(short, PARALLEL), None);
        let meeting = one.meeting(short, PARALLEL);
        assert_eq!(
            meeting,
            Some(Meeting {
                first: 0.5,
                second: 2.0
            })
        );
        // Ending on it counts, a hair beyond its end only when asked for.
        let upright = Straight::between(p(4.000_000_1, 0.0), p(4.000_000_1, 8.0));
        assert_eq!(one.crossing(upright, PARALLEL), None);
        let near = one.meeting(upright, PARALLEL);
        assert!(near.is_some_and(|m| m.on_both(1e-6)));
    }

    #[test]
    fn lines_side_by_side_meet_nowhere() {
        let one = Straight::between(Point::ORIGIN, Point::new(5.0, 0.0));
        let other = Straight::between(Point::new(0.0, 1.0), Point::new(5.0, 1.0));
        assert_eq!(one.meeting(other, PARALLEL), None);
        assert!(
            one.meeting(other, 0.0)
                .is_some_and(|m| !m.first.is_finite())
        );
    }

    #[test]
    fn a_line_of_no_length_is_its_point() {
        let dot = Straight::between(Point::new(1.0, 1.0), Point::new(1.0, 1.0));
        let away = dot.distance(Point::new(4.0, 5.0), NO_SQUARE_MM2);
        assert_eq!(away, Length::mm(5.0));
    }

    proptest! {
        #[test]
        fn where_two_lines_meet_lies_on_both(a in point(), b in point(), c in point(), d in point()) {
            let (one, other) = (Straight::between(a, b), Straight::between(c, d));
            prop_assume!(one.way.cross(other.way).abs() > 1.0);
            let meeting = one.meeting(other, PARALLEL);
            let meeting = meeting.ok_or_else(|| TestCaseError::fail("no meeting"))?;
            let (here, there) = (one.at(meeting.first), other.at(meeting.second));
            let scale = 1.0 + here.to_vec2().hypot();
            prop_assert!((here - there).hypot() < 1e-7 * scale, "{here:?} {there:?}");
        }

        #[test]
        fn which_line_is_first_makes_no_difference(a in point(), b in point(), c in point(), d in point()) {
            prop_assert_eq!(crosses((a, b), (c, d)), crosses((c, d), (a, b)));
            prop_assert_eq!(crosses((a, b), (c, d)), crosses((b, a), (c, d)));
            let (one, other) = (Straight::between(a, b), Straight::between(c, d));
            let (ab, ba) = (one.meeting(other, PARALLEL), other.meeting(one, PARALLEL));
            prop_assert_eq!(ab.map(|m| m.on_both(0.0)), ba.map(|m| m.on_both(0.0)));
        }

        #[test]
        fn what_crosses_has_its_crossing_on_both(a in point(), b in point(), c in point(), d in point()) {
            let (one, other) = (Straight::between(a, b), Straight::between(c, d));
            prop_assume!(one.way.cross(other.way).abs() > 1.0);
            let meeting = one.meeting(other, PARALLEL);
            if crosses((a, b), (c, d)) {
                prop_assert!(meeting.is_some_and(|m| m.on_both(1e-9)));
            } else {
                prop_assert!(meeting.is_none_or(|m| !m.on_both(-1e-9)));
            }
        }

        #[test]
        fn no_place_of_a_line_is_nearer_than_the_nearest(
            a in point(), b in point(), p in point(), share in 0.0..=1.0,
        ) {
            let line = Straight::between(a, b);
            let nearest = line.distance(p, NO_SQUARE_MM2).to_mm();
            prop_assert!(nearest <= (p - line.at(share)).hypot() + 1e-9);
            prop_assert!(nearest <= (p - a).hypot().min((p - b).hypot()) + 1e-9);
        }
    }
}
