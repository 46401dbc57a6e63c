//! Rivets and buttons: bodies of revolution, mirrored against a plain sky.

use crate::chance::{over, smooth};
use crate::dye::Rgb;
use crate::light::Sun;
use crate::place::Place;

/// A body of metal, turned about its middle.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Metal {
    pub(crate) at: Place,
    pub(crate) radius: f32,
    pub(crate) button: bool,
    pub(crate) colour: Rgb,
    pub(crate) level: usize,
}

/// How high a head of metal stands `d` from its middle, over the cloth it is pressed into.
pub(crate) fn profile(metal: &Metal, d: f32) -> f32 {
    let r = metal.radius;
    let t = (d / r).clamp(0.0, 1.0);
    let bell = |at: f32, wide: f32| {
        let u = (d - at) / wide;
        1.0 / (1.0 + u * u * (1.0 + u * u))
    };
    let rim = (1.0 - t * t).max(0.0).sqrt();
    if metal.button {
        // A turned-over rim, a dished middle with a raised ring and a boss (common practice).
        let edge = 2.1 * smooth((r - d) / 0.9).sqrt();
        let dish = 0.55 * smooth((0.72 * r - d) / 0.8);
        let ring = 0.22 * bell(0.46 * r, 0.35);
        let boss = 0.5 * smooth((0.24 * r - d) / 0.7);
        return edge - dish + ring + boss;
    }
    let dome = 0.95 * rim * (0.6 + 0.4 * rim);
    let groove = 0.16 * bell(0.70 * r, 0.28);
    let nub = 0.5 * (1.0 - (d / 1.25).min(1.0).powi(2)).sqrt();
    0.30 + dome - groove + nub
}

/// Light from a head of metal: its slopes, the light that reaches it, how old it is.
pub(crate) fn shine(
    metal: &Metal,
    sun: &Sun,
    slope: [f32; 2],
    (seen, sky): (f32, f32),
    at: [f32; 2],
    age: f32,
) -> Rgb {
    let up = 1.0 / (1.0 + slope[0] * slope[0] + slope[1] * slope[1]).sqrt();
    let n = [-slope[0] * up, -slope[1] * up, up];
    // The mirrored view, straight down.
    let mirrored = [
        2.0 * n[2] * n[0],
        2.0 * n[2] * n[1],
        2.0 * n[2] * n[2] - 1.0,
    ];
    let to_sun =
        mirrored[0] * sun.towards[0] + mirrored[1] * sun.towards[1] + mirrored[2] * sun.towards[2];
    // A sky that is brighter overhead and towards the sun, and a dark horizon.
    let side = (mirrored[0] * sun.towards[0] + mirrored[1] * sun.towards[1]) * 0.6;
    let open = 0.10 + 0.72 * smooth((mirrored[2] + 0.15) / 0.95) * (0.55 + 0.55 * side);
    let spark =
        2.2 * smooth((to_sun - 0.86) / 0.13) * seen + 0.35 * smooth((to_sun - 0.4) / 0.6) * seen;
    // Fine scratches, and the dullness of air and hands.
    let brushed = 1.0
        - 0.05 * over(at[0] / 0.3, at[1] / 0.3, 72)
        - 0.04 * over(at[0] / 0.07, at[1] / 0.07, 73);
    let dull = 1.0 - 0.22 * age * (0.6 + 0.4 * over(at[0] / 2.1, at[1] / 1.7, 74));
    let light = (open * (0.35 + 0.65 * sky) * (0.45 + 0.55 * seen) + spark * 0.55) * brushed * dull;
    metal.colour.map(|c| c / 0.62 * light)
}
