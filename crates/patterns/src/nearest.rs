//! The place of a closed line that is nearest to a point.

use geometry::{Point, Straight, Vec2, left_of};
use trade::Angle;

/// The nearest place.
pub(crate) struct Nearest {
    /// How far away, millimetres.
    pub distance: f64,
    along: Vec2,
}

impl Nearest {
    /// On a ring; none where the ring is empty.
    pub fn on_ring(ring: &[Point], p: Point) -> Option<Nearest> {
        let next = ring.iter().cycle().skip(1);
        ring.iter()
            .zip(next)
            .map(|(a, b)| {
                let side = Straight::between(*a, *b);
                Nearest {
                    distance: side.distance(p, f64::MIN_POSITIVE).to_mm(),
                    along: side.way,
                }
            })
            .min_by(|a, b| a.distance.total_cmp(&b.distance))
    }

    /// The direction into the ring, which runs anticlockwise.
    pub fn inward(&self) -> Angle {
        Angle::rad(left_of(self.along).atan2())
    }
}
