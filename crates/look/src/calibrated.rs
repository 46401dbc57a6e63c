//! The last word on colour: what the whole chain on flat raw cloth gives is brought to the stated colour.

use std::sync::OnceLock;

use crate::asked::Asked;
use crate::cloth::Woven;
use crate::cloth_colour::ClothColour;
use crate::dye::{Rgb, each};
use crate::field::Frame;
use crate::hairs::SEEN_TO;
use crate::light::{Heights, Light, Lit, Steps, Sun, leaves};
use crate::near::near;
use crate::scene::{ClothLook, Scene};
use crate::sewing_yarn::{Lying, SewingYarn, Strand};
use crate::wear::Wear;

/// How wide a pixel is for which the gain of a cloth is found.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Zoom {
    /// Single fibres are drawn.
    Fibres,
    /// Fibres lie over the cloth, but its yarns are even.
    Hairs,
    /// Yarns alone.
    Yarns,
}

impl Zoom {
    pub(crate) fn of(step: f32) -> Zoom {
        if step <= FIBRES_TO {
            Zoom::Fibres
        } else if step < SEEN_TO {
            Zoom::Hairs
        } else {
            Zoom::Yarns
        }
    }

    const fn step(self) -> f32 {
        match self {
            Zoom::Fibres => 0.02,
            Zoom::Hairs => 0.035,
            Zoom::Yarns => 0.045,
        }
    }
}

/// Pixels up to this are sampled so closely that single fibres are drawn.
const FIBRES_TO: f32 = 0.024;
/// A picture of nothing but cloth is so many millimetres wide.
const WIDE_MM: f32 = 7.0;

/// By what the lit faces of a cloth are to be multiplied, so that flat raw cloth has its stated colours.
pub(crate) fn gains(look: &ClothLook, zoom: Zoom) -> [Rgb; 2] {
    let mut scene = Scene::plain(look.clone(), false, [0.0, 1.0]);
    [false, true].map(|reverse| {
        scene.turn_over(reverse);
        let stated = look.colour.stated[usize::from(reverse)];
        let seen = mean(&scene, zoom.step());
        std::array::from_fn(|k| stated[k] / seen[k].max(0.000_5))
    })
}

/// The same for every cloth of a scene, found once.
pub(crate) fn gains_of(scene: &Scene, step: f32) -> Vec<[Rgb; 2]> {
    let zoom = Zoom::of(step);
    let each = scene.cloths.iter();
    each.map(|look| match zoom {
        Zoom::Yarns => look.colour.gain,
        Zoom::Hairs => *look.hairs.get_or_init(|| gains(look, zoom)),
        Zoom::Fibres => *look.fibres.get_or_init(|| gains(look, zoom)),
    })
    .collect()
}

/// A cloth whose flat faces have the stated colours under the usual light.
pub(crate) fn calibrated(woven: Woven, colour: ClothColour) -> ClothLook {
    let mut look = ClothLook {
        woven,
        colour,
        hairs: OnceLock::new(),
        fibres: OnceLock::new(),
    };
    look.colour.gain = gains(&look, Zoom::Yarns);
    look
}

fn mean(scene: &Scene, step: f32) -> Rgb {
    let count = (WIDE_MM / step) as usize;
    let frame = Frame {
        left: 3.0,
        top: 5.0,
        step,
        wide: count,
        high: count,
    };
    let asked = Asked {
        scene,
        sun: Sun::of(&Light::default()),
        causes: Wear::RAW.causes(),
        threads: 1,
    };
    let lit = near(&asked, &frame, &[]);
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
