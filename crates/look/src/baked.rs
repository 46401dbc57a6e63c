//! Cloth from afar: the mean colour of its lit repeat and its strongest waves, for several doses of wear, so that a pixel wider
//! than a yarn has the colour of all the yarns below it and no moiré.

use crate::cloth::Woven;
use crate::cloth_colour::ClothColour;
use crate::dye::{Rgb, reflected};
use crate::light::{Heights, Lit, Steps, Sun, leaves};
use crate::tables::Tables;
use crate::wear::Causes;
use crate::weave::Face;

/// Doses of rubbing that cloth is baked at.
const DOSES: [f32; 5] = [0.0, 0.5, 1.0, 2.0, 3.5];
/// Samples across a repeat.
const WIDE: usize = 48;
/// Waves that would be weaker than this are left out.
const FAINT: f32 = 0.02;
const HIGHEST: i32 = 6;
/// A baked repeat is too coarse for single fibres.
const BAKED_STEP: f32 = 0.05;
const MOST_WAVES: usize = 12;

/// One wave of the repeat.
struct Wave {
    /// Turns a millimetre, across the warp and along it.
    turns: [f32; 2],
    /// What the pixel leaves of it.
    left: f32,
    /// Cosine and sine part at each dose.
    parts: [[Rgb; 2]; DOSES.len()],
}

/// A face of cloth as it is seen from afar, its warp lying in one direction.
pub(crate) struct Baked {
    means: [Rgb; DOSES.len()],
    waves: Vec<Wave>,
    pub(crate) pitch: f32,
    /// How much a yarn's own shade shows.
    pub(crate) dyed: f32,
    tables: Tables,
}

/// The lit repeat, sample by sample.
struct Repeat {
    /// Weft, direct light, sky, how much it bears.
    samples: Vec<(bool, f32, f32, f32)>,
    high: usize,
}

impl Repeat {
    fn of(face: &Face, sun: &Sun) -> Repeat {
        const RIM_MM: f32 = 0.8;
        let [long, tall] = face.woven.repeat();
        let step = long / WIDE as f32;
        let high = ((tall / step).round() as usize).clamp(8, 400);
        let down = tall / high as f32;
        let rim = ((RIM_MM / step) as usize + 2).min(200);
        let (wide, rows) = (WIDE + 2 * rim, high + 2 * rim);
        let hits: Vec<_> = (0..WIDE * high)
            .map(|k| {
                let (c, r) = (k % WIDE, k / WIDE);
                face.at((c as f32 + 0.5) * step, tall - (r as f32 + 0.5) * down)
            })
            .collect();
        let within = |k: usize, count: usize| (k + count * 64 - rim) % count;
        let z: Vec<f32> = (0..wide * rows)
            .map(|k| hits[within(k / wide, high) * WIDE + within(k % wide, WIDE)].z)
            .collect();
        let heights = Heights {
            z: &z,
            wide,
            high: rows,
        };
        let steps = Steps::of(sun, step, step, RIM_MM);
        let mut lit = Lit::default();
        let mut samples = Vec::with_capacity(hits.len());
        for row in rim..rim + high {
            lit.look(&heights, &steps, row);
            for column in rim..rim + WIDE {
                let at = row * wide + column;
                let slope = [
                    (z[at + 1] - z[at - 1]) / (2.0 * step),
                    (z[at - wide] - z[at + wide]) / (2.0 * down),
                ];
                let direct = sun.direct(slope[0], slope[1]) * Sun::seen_over(lit.horizon[column]);
                let hit = &hits[(row - rim) * WIDE + column - rim];
                let micro = (1.0 - (face.crown - hit.z) / 0.14).clamp(0.0, 1.3);
                samples.push((hit.weft, direct, lit.sky[column], micro));
            }
        }
        Repeat { samples, high }
    }

    /// The colours of the repeat when so much is rubbed.
    fn colours(
        &self,
        colour: &ClothColour,
        reverse: bool,
        causes: &Causes,
        dose: f32,
        tables: &Tables,
    ) -> Vec<Rgb> {
        let gain = colour.gain[usize::from(reverse)];
        let stain = if reverse { 0.0 } else { causes.stain };
        let samples = self.samples.iter();
        samples
            .map(|(weft, direct, sky, micro)| {
                let left = tables.fade(causes.loss + dose * micro);
                let albedo: Rgb = std::array::from_fn(|k| {
                    let dye = if *weft {
                        colour.stain[k] * stain
                    } else {
                        colour.warp[k]
                    };
                    reflected(dye * left + colour.ground[k])
                });
                let out = leaves(*direct, *sky, albedo);
                std::array::from_fn(|k| out[k] * gain[k])
            })
            .collect()
    }
}

impl Baked {
    pub(crate) fn of(
        woven: &Woven,
        colour: &ClothColour,
        reverse: bool,
        sun: &Sun,
        causes: &Causes,
        pixel: f32,
    ) -> Baked {
        let tables = Tables::new();
        let face = Face::of(&woven.even(), reverse, BAKED_STEP);
        let repeat = Repeat::of(&face, sun);
        let doses = DOSES.map(|dose| repeat.colours(colour, reverse, causes, dose, &tables));
        let count = repeat.samples.len() as f32;
        let means = std::array::from_fn(|d| {
            let mut sum = [0.0; 3];
            for c in &doses[d] {
                sum.iter_mut().zip(c).for_each(|(s, v)| *s += v);
            }
            sum.map(|s| s / count)
        });
        let mut waves = Vec::new();
        let [long, tall] = woven.repeat();
        for kx in 0..=HIGHEST {
            for ky in -HIGHEST..=HIGHEST {
                if kx == 0 && ky <= 0 {
                    continue;
                }
                let turns = [kx as f32 / long, ky as f32 / tall];
                let left = pixel_leaves(turns, pixel, &tables);
                if left > FAINT {
                    let parts =
                        std::array::from_fn(|d| parts(&doses[d], repeat.high, (kx, ky), &tables));
                    waves.push(Wave { turns, left, parts });
                }
            }
        }
        let strength = |w: &Wave| {
            w.left
                * w.parts[0]
                    .iter()
                    .flatten()
                    .map(|v| v * v)
                    .sum::<f32>()
                    .sqrt()
        };
        waves.sort_by(|a, b| strength(b).total_cmp(&strength(a)));
        waves.truncate(MOST_WAVES);
        Baked {
            means,
            waves,
            pitch: woven.warp.pitch,
            dyed: colour.dyed(),
            tables,
        }
    }

    /// Its colour where `across` and `along` are of its own frame, rubbed by a dose.
    pub(crate) fn colour(&self, across: f32, along: f32, dose: f32) -> Rgb {
        let above = DOSES
            .iter()
            .position(|d| *d > dose)
            .unwrap_or(DOSES.len() - 1)
            .max(1);
        let (low, high) = (DOSES[above - 1], DOSES[above]);
        let f = ((dose - low) / (high - low)).clamp(0.0, 1.0);
        let mix = |a: f32, b: f32| a + (b - a) * f;
        let mut out: Rgb =
            std::array::from_fn(|k| mix(self.means[above - 1][k], self.means[above][k]));
        for wave in &self.waves {
            let turns = wave.turns[0] * across + wave.turns[1] * along;
            let (c, s) = (
                self.tables.cosine(turns) * wave.left,
                self.tables.sine(turns) * wave.left,
            );
            let (a, b) = (&wave.parts[above - 1], &wave.parts[above]);
            for (k, v) in out.iter_mut().enumerate() {
                *v += mix(a[0][k], b[0][k]) * c + mix(a[1][k], b[1][k]) * s;
            }
        }
        out.map(|v| v.max(0.0001))
    }
}

/// What a pixel leaves of a wave: it sees as a bell half a pixel wide.
fn pixel_leaves(turns: [f32; 2], pixel: f32, tables: &Tables) -> f32 {
    let sigma = 0.5 * pixel;
    let square = turns[0] * turns[0] + turns[1] * turns[1];
    tables.fade(2.0 * std::f32::consts::PI * std::f32::consts::PI * sigma * sigma * square)
}

/// Cosine and sine part of one wave of the repeat.
fn parts(colours: &[Rgb], high: usize, (kx, ky): (i32, i32), tables: &Tables) -> [Rgb; 2] {
    let mut sums = [[0.0_f32; 3]; 2];
    for (at, colour) in colours.iter().enumerate() {
        let (c, r) = (at % WIDE, at / WIDE);
        let x = (c as f32 + 0.5) / WIDE as f32;
        let y = 1.0 - (r as f32 + 0.5) / high as f32;
        let turns = kx as f32 * x + ky as f32 * y;
        let (cosine, sine) = (tables.cosine(turns), tables.sine(turns));
        for k in 0..3 {
            sums[0][k] += colour[k] * cosine;
            sums[1][k] += colour[k] * sine;
        }
    }
    let share = 2.0 / colours.len() as f32;
    sums.map(|sum| sum.map(|v| v * share))
}
