//! The colours of a cloth's yarns, found so that the lit cloth has the colours its file states, on both faces.

use trade::Colour;

use crate::cloth::Woven;
use crate::dye::{Rgb, absorbed, each, linear, reflected};
use crate::light::{Heights, Light, Lit, Steps, Sun, leaves};
use crate::weave::Face;

/// The colours of the yarns, as dye on undyed fibre.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct ClothColour {
    /// What the warp took up.
    pub(crate) warp: Rgb,
    /// Loose dye that stains the weft on the face.
    pub(crate) stain: Rgb,
    /// The fibre without either.
    pub(crate) ground: Rgb,
    /// What the lit picture is multiplied by for the last of the difference: face and reverse.
    pub(crate) gain: [Rgb; 2],
    /// The stated colours, face and reverse.
    pub(crate) stated: [Rgb; 2],
}

/// The warp gives at least this share of the face's light (chosen): the stain of the weft follows.
const KEEP: f32 = 0.55;
const STEP: f32 = 0.03;
const WIDE: usize = 180;

/// How one face is lit: the share of its light that comes from each system of yarns is found from these.
struct LitFace {
    samples: Vec<(bool, f32, f32)>,
}

impl LitFace {
    fn of(woven: &Woven, reverse: bool) -> LitFace {
        const RIM: usize = 30;
        let face = Face::of(woven, reverse, STEP);
        let sun = Sun::of(&Light::default());
        let mut z = vec![0.0; WIDE * WIDE];
        let mut weft = vec![false; WIDE * WIDE];
        for row in 0..WIDE {
            for column in 0..WIDE {
                let hit = face.at(column as f32 * STEP, (WIDE - row) as f32 * STEP);
                z[row * WIDE + column] = hit.z + woven.fibre * face.fibres(&hit);
                weft[row * WIDE + column] = hit.weft;
            }
        }
        let heights = Heights {
            z: &z,
            wide: WIDE,
            high: WIDE,
        };
        let steps = Steps::of(&sun, STEP, STEP, 0.9);
        let mut lit = Lit::default();
        let mut samples = Vec::new();
        for row in RIM..WIDE - RIM {
            lit.look(&heights, &steps, row);
            for column in RIM..WIDE - RIM {
                let at = row * WIDE + column;
                let slope = [
                    (z[at + 1] - z[at - 1]) / (2.0 * STEP),
                    (z[at - WIDE] - z[at + WIDE]) / (2.0 * STEP),
                ];
                let direct = sun.direct(slope[0], slope[1]) * Sun::seen_over(lit.horizon[column]);
                samples.push((weft[at], direct, lit.sky[column]));
            }
        }
        LitFace { samples }
    }

    /// Mean light for each unit of the warp's and of the weft's colour.
    fn shares(&self, warp: Rgb, weft: Rgb) -> [Rgb; 2] {
        let mut sums = [[0.0_f64; 3]; 2];
        for (is_weft, direct, sky) in &self.samples {
            let own = if *is_weft { weft } else { warp };
            let out = leaves(*direct, *sky, own);
            for k in 0..3 {
                sums[usize::from(*is_weft)][k] += f64::from(out[k] / own[k].max(0.0005));
            }
        }
        let count = self.samples.len().max(1) as f64;
        sums.map(|sum| sum.map(|v| (v / count) as f32))
    }
}

impl ClothColour {
    /// How much of the warp's colour is dye, from 0 to 1: so much its yarns differ.
    pub(crate) fn dyed(&self) -> f32 {
        let share = |k: usize| self.warp[k] / (self.warp[k] + self.ground[k]).max(0.001);
        ((share(0) + share(1) + share(2)) / 3.0).clamp(0.08, 1.0)
    }

    /// Solves warp and weft, two unknowns a channel, from the stated face and reverse.
    pub(crate) fn of(woven: &Woven, face: Colour, reverse: Colour) -> ClothColour {
        let stated = [face, reverse].map(linear);
        let lit = [false, true].map(|reverse| LitFace::of(woven, reverse));
        let [front, back] = stated;
        let (mut warp, mut weft, mut stained) = (front, back, back);
        for _ in 0..6 {
            let [a, b] = [lit[0].shares(warp, stained), lit[1].shares(warp, weft)];
            weft = std::array::from_fn(|k| {
                ((back[k] - b[0][k] * warp[k]) / b[1][k].max(0.01)).clamp(0.02, 0.95)
            });
            stained = stain(front, a[1], warp, weft);
            warp = std::array::from_fn(|k| {
                ((front[k] - a[1][k] * stained[k]) / a[0][k].max(0.01)).clamp(0.002, 0.95)
            });
        }
        let ground = weft.map(absorbed);
        let over = |colour: Rgb| each(colour, ground, |c, g| (absorbed(c) - g).max(0.0));
        ClothColour {
            warp: over(warp),
            stain: over(stained),
            ground,
            gain: [[1.0; 3]; 2],
            stated,
        }
    }
}

/// The least stain of the weft that leaves the warp most of the face's colour.
fn stain(front: Rgb, share: Rgb, warp: Rgb, weft: Rgb) -> Rgb {
    const TRIES: u32 = 50;
    let mut out = weft;
    for q in 0..=TRIES {
        let q = q as f32 / TRIES as f32;
        out = std::array::from_fn(|k| {
            let (w, f) = (absorbed(warp[k]), absorbed(weft[k]));
            reflected(f + q * (w - f).max(0.0))
        });
        if (0..3).all(|k| front[k] - share[k] * out[k] > KEEP * front[k]) {
            break;
        }
    }
    out
}
