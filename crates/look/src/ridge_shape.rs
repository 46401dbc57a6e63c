//! The shape of what stands out: rounded edges, and a ridge of more plies across and along.

use crate::chance::{along, smooth};
use crate::place::Place;
use crate::scene::{Border, Ridge};
use crate::tables::Tables;

/// How far up a rounded edge is, as a share, `s` in from it.
pub(crate) fn rounded(s: f32, radius: f32) -> f32 {
    if radius <= 0.0 || s >= radius {
        return 1.0;
    }
    let t = 1.0 - (s / radius).clamp(0.0, 1.0);
    (1.0 - t * t).sqrt()
}

/// Round a fold cloth goes on by the length of its arc: how far the cloth seen at `s` would lie further out, were it flat.
pub(crate) fn round_a_fold(s: f32, radius: f32, way: Place, side: f32) -> [f32; 2] {
    if radius <= 0.0 || s >= radius {
        return [0.0; 2];
    }
    // The arc less the straight: (π/2 - 1) radii at the edge, none where it lies flat; a cubic is near enough.
    let t = 1.0 - (s / radius).clamp(0.0, 1.0);
    let out = 0.57 * radius * t * t * t;
    [way[1] * side * out, -way[0] * side * out]
}

/// The shape of a ridge across and along.
pub(crate) struct Shape<'a> {
    pub(crate) ridge: &'a Ridge,
    pub(crate) tables: &'a Tables,
    pub(crate) feed: f32,
    pub(crate) long: f32,
}

pub(crate) fn length_of(line: &[Place]) -> f32 {
    line.windows(2)
        .map(|w| ((w[1][0] - w[0][0]).powi(2) + (w[1][1] - w[0][1]).powi(2)).sqrt())
        .sum()
}

impl Shape<'_> {
    /// `s` into the ridge from its line, `t` along it.
    pub(crate) fn height(&self, s: f32, t: f32) -> f32 {
        let r = self.ridge;
        let radius = 0.8 * r.ply;
        let up = match r.near {
            // The fold itself and what it encloses; the inner edges lie a little further in.
            Border::Fold => 0.68 * rounded(s, radius) + 0.32 * smooth((s - 0.7) / 1.5),
            Border::Slope(wide) => smooth((s + wide / 2.0) / wide),
            Border::Valley => smooth(s / 1.2),
            Border::Rise => smooth(s / 1.6),
        };
        let up = if r.near == Border::Fold && s < 0.0 {
            0.0
        } else {
            up
        };
        let down = match r.far {
            Border::Fold => rounded((r.width - s).max(0.0), radius),
            Border::Slope(wide) => smooth((r.width + wide / 2.0 - s) / wide),
            Border::Valley | Border::Rise => smooth((r.width - s) / 1.2),
        };
        let ends = if r.taper > 0.0 {
            smooth(t.min(self.long - t) / r.taper)
        } else {
            1.0
        };
        (r.height * up * down + self.waves(s, t)) * ends
    }

    /// A ply longer by `feed` than the other lies in waves of wave length · √feed / π (derived).
    fn waves(&self, s: f32, t: f32) -> f32 {
        let r = self.ridge;
        let Some(waves) = r.waves else { return 0.0 };
        let salt = 41 + r.sheet as u32;
        let long = waves.length;
        let drift = 0.35 * along(t / 9.0, r.sheet as i32, salt) * long;
        let turns = (t + waves.lean * s + drift) / long;
        let high = long * (self.feed * waves.more).sqrt() / std::f32::consts::PI
            * (0.75 + 0.35 * along(t / long, r.sheet as i32, salt + 100));
        let envelope = smooth((s + 2.2) / 3.0) * smooth((r.width + 3.4 - s) / 3.4);
        high * (self.tables.sine(turns) + 0.25 * self.tables.sine(2.0 * turns + 0.16)) * envelope
    }

    /// What is drawn down beside a fold, or between two plies that part.
    pub(crate) fn groove(&self, s: f32) -> f32 {
        match self.ridge.near {
            Border::Fold => {
                let t = (s + 0.1) / 0.30;
                0.16 * self.tables.fade(t * t)
            }
            Border::Valley => {
                let t = s / 0.45;
                0.24 * self.tables.fade(t * t)
            }
            Border::Slope(_) | Border::Rise => 0.0,
        }
    }
}
