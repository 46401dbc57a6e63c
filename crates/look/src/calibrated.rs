//! The last word on colour: what the whole chain on flat raw cloth gives is brought to the stated colour.

use crate::dye::Rgb;
use crate::field::Frame;
use crate::light::Light;
use crate::near::near;
use crate::scene::{ClothLook, Scene};
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
