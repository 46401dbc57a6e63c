//! The waist seam, the band above it and the folds at either side.

use geometry::Point;
use trade::Length;

use crate::level::Level;
use crate::looks::BAND_LEAN;
use crate::mapping::Flat;
use crate::side::{Half, Spot};
use crate::smooth;

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
        let (half, x) = if along <= fold {
            (Half::Front, along)
        } else {
            (Half::Back, 2.0 * fold - along)
        };
        Spot {
            half,
            at: self.on_band(half, x, up),
        }
    }

    /// A place of the band on a face, `x` along it from the centre. Its top edge is as wide as the waist is; towards the seam
    /// it widens a little, as the hip below does.
    fn on_band(&self, half: Half, x: f64, up: f64) -> Point {
        let lean = BAND_LEAN * (self.band_height - up) / self.fold().max(1.0);
        let y = match half {
            Half::Front => self.front_waist_y(x.abs()),
            Half::Back => self.back_waist_y(x),
        };
        Point::new(x * (1.0 + lean), y + up)
    }

    /// A line along the band on a face, `up` above the band seam, from the centre to the fold.
    pub(crate) fn along_band(&self, half: Half, up: f64) -> Vec<Point> {
        const STEPS: u32 = 60;
        let fold = self.fold();
        (0..=STEPS)
            .map(|k| self.on_band(half, fold * f64::from(k) / f64::from(STEPS), up))
            .collect()
    }

    /// The shade along the inner edge of one face, closed: at the fork as deep as `reach` times what is tucked away behind it
    /// there, less and less up to the seat and down the thigh, and `beside` deep along the fold of the leg.
    pub(crate) fn inner_shade(&self, half: Half, reach: f64, beside: f64) -> Vec<Point> {
        const STEPS: u32 = 96;
        /// Over this height below the fork the one becomes the other.
        const PASSES_MM: f64 = 150.0;
        let fork = self.level(0.0).tucked;
        let deepest = match half {
            Half::Front => fork.front,
            Half::Back => fork.back,
        };
        let levels: Vec<(Level, f64)> = (0..=STEPS)
            .map(|k| {
                let y =
                    self.hem_y + (0.9 * self.seat_y - self.hem_y) * f64::from(k) / f64::from(STEPS);
                let way = y / (self.seat_y * if y < 0.0 { 2.2 } else { 0.9 }).max(1.0);
                let fades = (1.0 - way * way).max(0.0).powi(2);
                let deep = deepest.max(0.0) * reach * fades + beside * smooth(-y / PASSES_MM);
                (self.level(y), deep)
            })
            .collect();
        let edge = levels.iter().map(|(level, _)| level.place(0.0));
        let depth = levels.iter().rev();
        edge.chain(depth.map(|(level, deep)| level.place(*deep)))
            .collect()
    }

    /// The outer fold from hem to waist, and the inner fold from hem to crotch.
    pub(crate) fn folds(&self) -> Folds {
        let heights = |from: f64, to: f64| {
            let n = ((to - from) / 4.0).ceil().max(1.0) as usize;
            (0..=n).map(move |k| from + (to - from) * k as f64 / n as f64)
        };
        // Into the waist the fold comes to meet the band where that folds.
        const MEETS_MM: f64 = 40.0;
        let corner = self.on_band(Half::Front, self.fold(), 0.0);
        let off = corner.x - self.level(corner.y).outer.x;
        let outer = heights(self.hem_y, corner.y)
            .map(|y| {
                let at = self.level(y).outer;
                Point::new(at.x + off * smooth(1.0 - (corner.y - y) / MEETS_MM), at.y)
            })
            .collect();
        let inner = heights(self.hem_y, 0.0)
            .map(|y| self.level(y).place(0.0))
            .collect();
        Folds { outer, inner }
    }
}
