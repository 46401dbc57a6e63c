//! One sun and the sky over a height field. A matte rough surface (Oren and Nayar, roughness 0.5); a place sees as much sun and
//! sky as the horizon about it leaves.

use trade::Angle;

use crate::chance::smooth;
use crate::dye::Rgb;

/// Where the light comes from: one sun, 40° high, and an even sky.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Light {
    /// From which side, anticlockwise from the right of the picture.
    pub sun: Angle,
}

impl Default for Light {
    /// From the upper left.
    fn default() -> Light {
        Light {
            sun: Angle::deg(135.0),
        }
    }
}

/// Share of the sky in the light of an open flat place.
pub(crate) const SKY: f32 = 0.42;
/// Height of the sun: sine and cosine of 40°.
const SINE: f32 = 0.642_787_6;
const COSINE: f32 = 0.766_044_4;
/// The sun is half hidden at 40°; its shade is soft from 31° to 49°, as tangents.
const SHADE_FROM: f32 = 0.600_86;
const SHADE_TO: f32 = 1.150_37;
/// Oren and Nayar at a roughness of 0.5.
const ROUGH_A: f32 = 0.784_48;
const ROUGH_B: f32 = 0.330_88;

/// The light as numbers.
#[derive(Clone, Copy)]
pub(crate) struct Sun {
    /// Towards the sun, y up.
    pub(crate) towards: [f32; 3],
    /// Sky directions on the plane.
    round: [[f32; 2]; ROUND],
}

/// Directions in which the sky is looked for.
const ROUND: usize = 8;

impl Sun {
    pub(crate) fn of(light: &Light) -> Sun {
        let turn = light.sun.to_rad() as f32;
        let turn = if turn.is_finite() { turn } else { 0.0 };
        let way = |angle: f32| [libm::cosf(angle), libm::sinf(angle)];
        let [c, s] = way(turn);
        Sun {
            towards: [c * COSINE, s * COSINE, SINE],
            round: std::array::from_fn(|k| {
                way(k as f32 * std::f32::consts::TAU / ROUND as f32 + 0.2)
            }),
        }
    }

    /// The same sun as a cloth sees it whose warp runs along `warp`.
    pub(crate) fn turned(&self, warp: [f32; 2]) -> Sun {
        // The cloth's own x runs to the right of its warp.
        let turn = |v: [f32; 2]| {
            [
                v[0] * warp[1] - v[1] * warp[0],
                v[0] * warp[0] + v[1] * warp[1],
            ]
        };
        let [x, y] = turn([self.towards[0], self.towards[1]]);
        Sun {
            towards: [x, y, self.towards[2]],
            round: self.round.map(turn),
        }
    }

    /// Direct light by slope: 1 on a flat place, before shade.
    #[inline]
    pub(crate) fn direct(&self, slope_x: f32, slope_y: f32) -> f32 {
        let up = 1.0 / (1.0 + slope_x * slope_x + slope_y * slope_y).sqrt();
        let [lx, ly, lz] = self.towards;
        let towards = ((lz - slope_x * lx - slope_y * ly) * up).max(0.0);
        let s = lz - towards * up;
        let t = if s > 0.0 { towards.max(up) } else { 1.0 };
        towards * (ROUGH_A + ROUGH_B * s / t.max(0.001)) / (SINE * ROUGH_A)
    }

    /// How much of the sun is seen over a horizon of this tangent.
    #[inline]
    pub(crate) fn seen_over(horizon: f32) -> f32 {
        smooth((SHADE_TO - horizon) / (SHADE_TO - SHADE_FROM))
    }
}

/// What leaves a place, by channel: what the sky does not reach is lit by neighbours of about the same colour.
#[inline]
pub(crate) fn leaves(direct: f32, sky: f32, albedo: Rgb) -> Rgb {
    albedo.map(|a| {
        let bounced = sky / (1.0 - 0.8 * a * (1.0 - sky));
        a * ((1.0 - SKY) * direct + SKY * bounced)
    })
}

/// Heights in rows, for light that looks at neighbours.
pub(crate) struct Heights<'a> {
    pub(crate) z: &'a [f32],
    pub(crate) wide: usize,
    pub(crate) high: usize,
}

/// Steps to the horizon, in samples, and what a step's rise is to be divided by.
pub(crate) struct Steps {
    sun: Vec<(isize, isize, f32)>,
    sky: Vec<Vec<(isize, isize, f32)>>,
}

impl Steps {
    /// Looks from `near` to `far` millimetres.
    pub(crate) fn of(sun: &Sun, step: f32, near: f32, far: f32) -> Steps {
        let along = |way: [f32; 2], growth: f32| {
            let mut out: Vec<(isize, isize, f32)> = Vec::new();
            let mut k = (near / step).max(1.0);
            while k * step <= far {
                let (dx, dy) = ((k * way[0]).round(), (k * way[1]).round());
                let long = step * (dx * dx + dy * dy).sqrt();
                let same = out
                    .last()
                    .is_some_and(|l| (l.0, l.1) == (dx as isize, -dy as isize));
                if long > 0.0 && !same {
                    out.push((dx as isize, -dy as isize, 1.0 / long));
                }
                k = (k + 1.0).max(k * growth);
            }
            out
        };
        let level = (sun.towards[0].powi(2) + sun.towards[1].powi(2))
            .sqrt()
            .max(0.001);
        Steps {
            sun: along([sun.towards[0] / level, sun.towards[1] / level], 1.22),
            sky: sun.round.iter().map(|way| along(*way, 1.7)).collect(),
        }
    }
}

/// The light on one row.
#[derive(Default)]
pub(crate) struct Lit {
    /// The tangent of the horizon towards the sun.
    pub(crate) horizon: Vec<f32>,
    /// The share of the sky that is seen.
    pub(crate) sky: Vec<f32>,
    spare: Vec<f32>,
}

impl Lit {
    /// Looks round from each sample of a row.
    pub(crate) fn look(&mut self, heights: &Heights, steps: &Steps, row: usize) {
        let wide = heights.wide;
        self.horizon.clear();
        self.horizon.resize(wide, 0.0);
        self.sky.clear();
        self.sky.resize(wide, 0.0);
        for step in &steps.sun {
            rise(heights, row, *step, &mut self.horizon);
        }
        for way in &steps.sky {
            self.spare.clear();
            self.spare.resize(wide, 0.0);
            for step in way {
                rise(heights, row, *step, &mut self.spare);
            }
            let share = 1.0 / steps.sky.len() as f32;
            for (sky, t) in self.sky.iter_mut().zip(&self.spare) {
                *sky += share / (1.0 + t * t);
            }
        }
    }
}

/// Raises the horizon of a row by what stands one step away; beyond the border there is nothing.
fn rise(heights: &Heights, row: usize, (dx, dy, share): (isize, isize, f32), horizon: &mut [f32]) {
    let there = row as isize + dy;
    if there < 0 || there >= heights.high as isize {
        return;
    }
    let wide = heights.wide as isize;
    let (from, to) = ((-dx).max(0), (wide - dx).min(wide));
    if from >= to {
        return;
    }
    let own =
        &heights.z[(row as isize * wide + from) as usize..(row as isize * wide + to) as usize];
    let other = there * wide + dx;
    let other = &heights.z[(other + from) as usize..(other + to) as usize];
    let into = &mut horizon[from as usize..to as usize];
    for ((h, a), b) in into.iter_mut().zip(own).zip(other) {
        *h = h.max((b - a) * share);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_flat_place_has_all_the_light_there_is() {
        let sun = Sun::of(&Light::default());
        assert!(
            (sun.direct(0.0, 0.0) - 1.0).abs() < 0.01,
            "{}",
            sun.direct(0.0, 0.0)
        );
        let z = vec![0.0; 50 * 50];
        let heights = Heights {
            z: &z,
            wide: 50,
            high: 50,
        };
        let steps = Steps::of(&sun, 0.1, 0.1, 2.0);
        let mut lit = Lit::default();
        lit.look(&heights, &steps, 25);
        assert!(lit.horizon.iter().all(|h| *h == 0.0));
        assert!(lit.sky.iter().all(|s| (s - 1.0).abs() < 1e-5));
    }

    /// From each of eight sides: the flank that looks away from the sun is darker, and what lies behind a wall in its shade.
    #[test]
    fn shade_falls_away_from_the_sun_from_every_side() {
        const N: usize = 81;
        for eighth in 0..8 {
            let light = Light {
                sun: Angle::deg(f64::from(eighth) * 45.0),
            };
            let sun = Sun::of(&light);
            let (lx, ly) = (sun.towards[0], sun.towards[1]);
            assert!(
                sun.direct(0.5 * lx, 0.5 * ly) < sun.direct(-0.5 * lx, -0.5 * ly),
                "{eighth}"
            );
            // A post in the middle.
            let mut z = vec![0.0; N * N];
            for row in 38..43 {
                for column in 38..43 {
                    z[row * N + column] = 2.0;
                }
            }
            let heights = Heights {
                z: &z,
                wide: N,
                high: N,
            };
            let steps = Steps::of(&sun, 0.1, 0.1, 3.0);
            let mut lit = Lit::default();
            let level = (lx * lx + ly * ly).sqrt();
            let at = |away: f32, lit: &mut Lit| {
                let column = (40.0 - away * lx / level * 10.0).round() as usize;
                let row = (40.0 + away * ly / level * 10.0).round() as usize;
                lit.look(&heights, &steps, row);
                lit.horizon[column]
            };
            assert!(at(1.0, &mut lit) > 1.0, "{eighth}");
            assert!(at(-1.0, &mut lit) == 0.0, "{eighth}");
        }
    }
}
