//! The yoke as a ruled strip, and where its points lie.

use draft::{EdgeId, Piece, PointId};
use geometry::tolerance::ROUNDING;
use geometry::{Path, Point, Straight};

use crate::mapping::Flat;
use crate::side::{Half, Spot};

/// The yoke as a ruled strip between its two long edges.
pub(crate) struct YokeRules {
    lower: Vec<Point>,
    upper: Vec<Point>,
    /// Places of the lower edge on the unfolded back: distance from centre, height.
    lower_flat: Vec<(f64, f64)>,
    low_flat_width: f64,
}

/// The square of the length of a rule counts as no less.
const LEAST_RULE_MM2: f64 = 1e-9;
/// Into how many rules the strip is cut.
const YOKE_RULES: usize = 160;

impl YokeRules {
    pub(crate) fn new(flat: &Flat, back: &Piece, yoke: &Piece) -> Option<YokeRules> {
        let along = |path: &Path| -> Vec<Point> {
            let total = path.length();
            (0..=YOKE_RULES)
                .map(|k| path.point_at(total * (k as f64 / YOKE_RULES as f64)))
                .collect()
        };
        let seam = along(&back.edge(EdgeId::Top)?.reversed());
        let lower_flat = seam
            .iter()
            .map(|p| {
                let level = flat.level(p.y);
                let x = p.x - level.back_in;
                let share = x / level.flat.max(1.0);
                (x, flat.squeezed(level.outer.y, p.y, share))
            })
            .collect();
        let side = back.point(PointId::YokeSide)?;
        Some(YokeRules {
            lower: along(yoke.edge(EdgeId::Lower)?),
            upper: along(&yoke.edge(EdgeId::Top)?.reversed()),
            lower_flat,
            low_flat_width: flat.level(side.y).flat,
        })
    }

    /// Share along and share up of a point, by finding the rule it lies on.
    fn locate(&self, p: Point) -> (f64, f64) {
        let rule = |k: usize| (self.lower[k], self.upper[k] - self.lower[k]);
        let off = |k: usize| {
            let (from, to) = rule(k);
            to.cross(p - from)
        };
        // Left of a rule the cross product is positive; it changes sign once along the strip.
        let (mut low, mut high) = (0, YOKE_RULES);
        while high - low > 1 {
            let middle = (low + high) / 2;
            if off(middle) > 0.0 {
                high = middle;
            } else {
                low = middle;
            }
        }
        let (a, b) = (off(low), off(high));
        let f = if (a - b).abs() > ROUNDING {
            a / (a - b)
        } else {
            0.0
        };
        let f = f.clamp(-3.0, 4.0);
        let (from, to) = rule(low);
        let (from2, to2) = rule(high);
        let foot = from.lerp(from2, f);
        let up = to.lerp(to2, f);
        let t = Straight {
            from: foot,
            way: up,
        }
        .share_beside(p, LEAST_RULE_MM2);
        ((low as f64 + f) / YOKE_RULES as f64, t)
    }
}

impl Flat {
    /// A point in the frame of the yoke.
    pub(crate) fn yoke(&self, p: Point) -> Spot {
        let (at, fold) = self.yoke_on_back(p);
        folded(at.x, at.y, fold)
    }

    /// A point in the frame of the yoke, unfolded onto the back face.
    pub(crate) fn yoke_unfolded(&self, p: Point) -> Point {
        self.yoke_on_back(p).0
    }

    fn yoke_on_back(&self, p: Point) -> (Point, f64) {
        let Some(rules) = &self.yoke else {
            return (self.back_unfolded(p), f64::INFINITY);
        };
        let (s, t) = rules.locate(p);
        let k = (s * YOKE_RULES as f64).clamp(0.0, YOKE_RULES as f64);
        let i = (k.floor() as usize).min(YOKE_RULES - 1);
        let (a, b) = (rules.lower_flat[i], rules.lower_flat[i + 1]);
        let f = k - i as f64;
        let low = (a.0 + (b.0 - a.0) * f, a.1 + (b.1 - a.1) * f);
        let top_x = s * self.yoke_waist_length;
        let top = (top_x, self.back_waist_y(top_x));
        let x = low.0 + (top.0 - low.0) * t;
        let y = low.1 + (top.1 - low.1) * t;
        let fold = rules.low_flat_width + (self.fold() - rules.low_flat_width) * t;
        (Point::new(x, y), fold)
    }
}

/// A point on the unfolded back, folded to the front where it lies beyond the fold.
fn folded(x: f64, y: f64, fold: f64) -> Spot {
    if x > fold {
        Spot {
            half: Half::Front,
            at: Point::new(2.0 * fold - x, y),
        }
    } else {
        Spot {
            half: Half::Back,
            at: Point::new(x, y),
        }
    }
}
