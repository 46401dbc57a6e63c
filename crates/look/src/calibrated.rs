//! The last word on colour: what the whole chain on flat raw cloth gives is brought to the stated colour.

use crate::dye::{Rgb, each};
use crate::field::Frame;
use crate::light::{Heights, Light, Lit, Steps, Sun, leaves};
use crate::near::near;
use crate::scene::{ClothLook, Scene};
use crate::sewing_yarn::{Lying, SewingYarn, Strand};
use crate::wear::Wear;

/// A picture of nothing but cloth is so wide, and its samples so far apart.
const WIDE_MM: f32 = 7.5;
const STEP: f32 = 0.05;

/// A cloth whose flat faces have the stated colours under the usual light.
pub(crate) fn calibrated(look: ClothLook) -> ClothLook {
    let mut scene = Scene::plain(look, false, [0.0, 1.0]);
    let gain = [false, true].map(|reverse| {
        scene.turn_over(reverse);
        let stated = scene.cloths[0].colour.stated[usize::from(reverse)];
        let seen = mean(&scene);
        std::array::from_fn(|k| stated[k] / seen[k].max(0.000_5))
    });
    let mut look = scene.cloths.swap_remove(0);
    look.colour.gain = gain;
    look
}

fn mean(scene: &Scene) -> Rgb {
    let count = (WIDE_MM / STEP) as usize;
    let frame = Frame {
        left: 3.0,
        top: 5.0,
        step: STEP,
        wide: count,
        high: count,
    };
    let lit = near(scene, &frame, 1, &Light::default(), &Wear::RAW.causes(), 1);
    let mut sum = [0.0_f64; 3];
    for pixel in &lit {
        sum.iter_mut()
            .zip(pixel)
            .for_each(|(s, p)| *s += f64::from(*p));
    }
    sum.map(|s| (s / lit.len() as f64) as f32)
}

/// A yarn of which a straight length lying on flat cloth, seen along with its shaded flanks, has the stated colour: the mean
/// over four directions.
pub(crate) fn calibrated_yarn(yarn: SewingYarn) -> SewingYarn {
    let lit = lengths_lit(&yarn);
    let mut out = yarn;
    for _ in 0..4 {
        let mut sum = [0.0_f32; 3];
        for (direct, sky) in &lit {
            sum = each(sum, leaves(*direct, *sky, out.fibre), |s, l| s + l);
        }
        let count = lit.len().max(1) as f32;
        let seen = sum.map(|s| s / count);
        let factor = each(out.colour, seen, |stated, seen| stated / seen.max(0.000_5));
        out.fibre = each(out.fibre, factor, |f, k| (f * k).clamp(0.002, 0.95));
    }
    out
}

/// Direct light and sky on the samples of lengths of a yarn in four directions.
fn lengths_lit(yarn: &SewingYarn) -> Vec<(f32, f32)> {
    const STEP: f32 = 0.03;
    const SIDE: usize = 64;
    let sun = Sun::of(&Light::default());
    let steps = Steps::of(&sun, STEP, STEP, 0.8);
    let mut out = Vec::new();
    for [c, s] in [[1.0, 0.0], [0.707, 0.707], [0.0, 1.0], [-0.707, 0.707]] {
        let middle = SIDE as f32 * STEP / 2.0;
        let strand = Strand {
            from: [middle - 9.0 * c, middle - 9.0 * s],
            to: [middle + 9.0 * c, middle + 9.0 * s],
            yarn: 0,
            level: 0,
            bow: 0.0,
            sink: 1.5,
            rest: 0.2,
            pulls: true,
        };
        let lying = Lying::of(&strand, yarn);
        let at = |k: usize| lying.at((k % SIDE) as f32 * STEP, (SIDE - k / SIDE) as f32 * STEP);
        let on: Vec<Option<f32>> = (0..SIDE * SIDE).map(|k| at(k).map(|p| p.z)).collect();
        let z: Vec<f32> = on.iter().map(|z| z.unwrap_or(0.0).max(0.0)).collect();
        let heights = Heights {
            z: &z,
            wide: SIDE,
            high: SIDE,
        };
        let mut lit = Lit::default();
        for row in 8..SIDE - 8 {
            lit.look(&heights, &steps, row);
            for column in 8..SIDE - 8 {
                let k = row * SIDE + column;
                if on[k].is_some_and(|z| z > 0.0) {
                    let slope = [
                        (z[k + 1] - z[k - 1]) / (2.0 * STEP),
                        (z[k - SIDE] - z[k + SIDE]) / (2.0 * STEP),
                    ];
                    let direct =
                        sun.direct(slope[0], slope[1]) * Sun::seen_over(lit.horizon[column]);
                    out.push((direct, lit.sky[column]));
                }
            }
        }
    }
    out
}
