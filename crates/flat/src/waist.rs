//! The waist seam, the band above it and the folds at either side.

use geometry::Point;
use trade::Length;

use crate::mapping::Flat;
use crate::side::{Half, Spot};

/// The two folds of one leg of the flat garment, from the hem up.
pub struct Folds {
    /// The outer one, from hem to waist.
    pub outer: Vec<Point>,
    /// The inner one, from hem to crotch.
    pub inner: Vec<Point>,
}

impl Flat {
    /// Distance from centre front (or back) to the side fold, at the waist.
    pub(crate) fn fold(&self) -> f64 {
        (self.front_waist_length + self.yoke_waist_length) / 2.0
    }

    /// Height of the waist seam on the back face, `x` from the centre back.
    pub(crate) fn back_waist_y(&self, x: f64) -> f64 {
        let t = (x / self.yoke_waist_length.max(1.0)).clamp(-1.0, 1.2);
        self.side_waist_y + (self.centre_back_y - self.side_waist_y) * (1.0 - t * t)
    }

    /// Height of the waist seam on the front face, `x` from the centre front.
    fn front_waist_y(&self, x: f64) -> f64 {
        if x <= self.front_waist_length {
            let p = self.front_waist.point_at(Length::mm(x));
            return self.front(p).at.y;
        }
        // Round the fold the yoke's waist goes on.
        self.back_waist_y(self.yoke_waist_length - (x - self.front_waist_length))
    }

    /// A point of the band: `along` from the centre front of this half over the side towards the
    /// centre back, `up` above the band seam.
    pub(crate) fn band(&self, along: f64, up: f64) -> Spot {
        let along = along * self.band_ease_scale;
        let fold = self.fold();
        if along <= fold {
            return Spot {
                half: Half::Front,
                at: Point::new(along, self.front_waist_y(along.abs()) + up),
            };
        }
        let x = 2.0 * fold - along;
        Spot {
            half: Half::Back,
            at: Point::new(x, self.back_waist_y(x) + up),
        }
    }

    /// The waist seam of a face from the centre to the fold.
    pub(crate) fn waist_line(&self, half: Half) -> Vec<Point> {
        let fold = self.fold();
        (0..=60)
            .map(|k| {
                let x = fold * f64::from(k) / 60.0;
                let y = match half {
                    Half::Front => self.front_waist_y(x),
                    Half::Back => self.back_waist_y(x),
                };
                Point::new(x, y)
            })
            .collect()
    }

    /// The outer fold from hem to waist, and the inner fold from hem to crotch.
    pub(crate) fn folds(&self) -> Folds {
        let heights = |from: f64, to: f64| {
            let n = ((to - from) / 4.0).ceil().max(1.0) as usize;
            (0..=n).map(move |k| from + (to - from) * k as f64 / n as f64)
        };
        let mut outer: Vec<Point> = heights(self.hem_y, self.side_waist_y - 8.0)
            .map(|y| self.level(y).outer)
            .collect();
        // Into the waist the fold meets the band where the band folds.
        outer.push(Point::new(self.fold(), self.front_waist_y(self.fold())));
        let inner = heights(self.hem_y, 0.0)
            .map(|y| self.level(y).place(0.0))
            .collect();
        Folds { outer, inner }
    }
}
