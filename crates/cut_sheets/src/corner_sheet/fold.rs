//! An outline folded along a straight line.

use geometry::tolerance::SAME_MM;
use geometry::{Point, Vec2};

/// A straight fold: what lies outward of it is turned over it.
#[derive(Clone, Copy)]
pub(super) struct Fold {
    pub(super) on: Point,
    pub(super) out: Vec2,
}

impl Fold {
    pub(super) fn beyond(self, p: Point) -> f64 {
        (p - self.on).dot(self.out)
    }

    /// What of an outline lies on one side of the fold (Sutherland and Hodgman's clipping).
    fn side(self, outline: &[Point], sign: f64) -> Vec<Point> {
        let mut out = Vec::with_capacity(outline.len() + 2);
        let next = outline.iter().cycle().skip(1);
        for (a, b) in outline.iter().zip(next) {
            let (da, db) = (self.beyond(*a) * sign, self.beyond(*b) * sign);
            if da >= 0.0 {
                out.push(*a);
            }
            if (da > 0.0 && db < 0.0) || (da < 0.0 && db > 0.0) {
                out.push(a.lerp(*b, da / (da - db)));
            }
        }
        out
    }

    pub(super) fn inside(self, outline: &[Point]) -> Vec<Point> {
        self.side(outline, -1.0)
    }

    /// What lies beyond the fold, turned over it.
    pub(super) fn over(self, outline: &[Point]) -> Vec<Point> {
        let beyond = self.side(outline, 1.0);
        let has_width = beyond.iter().any(|p| self.beyond(*p) > SAME_MM);
        if !has_width {
            return Vec::new();
        }
        let turned = |p: &Point| *p - self.out * (2.0 * self.beyond(*p));
        beyond.iter().map(turned).collect()
    }
}
