//! Colour of dyed fibre: linear light, and how much dye there is (Kubelka and Munk, an opaque layer).

use trade::Colour;

/// Linear red, green and blue, 1 is a white that gives all light back.
pub(crate) type Rgb = [f32; 3];

/// A colour of a file as linear light (IEC 61966-2-1).
pub(crate) fn linear(colour: Colour) -> Rgb {
    [colour.red, colour.green, colour.blue].map(|channel| {
        let c = f32::from(channel) / 255.0;
        if c <= 0.040_45 {
            c / 12.92
        } else {
            libm::powf((c + 0.055) / 1.055, 2.4)
        }
    })
}

/// Absorption over scattering of what gives back so much light: it adds up where dyes do.
#[inline(always)]
pub(crate) fn absorbed(reflected: f32) -> f32 {
    let r = reflected.clamp(0.001, 0.97);
    (1.0 - r) * (1.0 - r) / (2.0 * r)
}

/// The light given back by so much absorption.
#[inline(always)]
pub(crate) fn reflected(k: f32) -> f32 {
    1.0 + k - (k * k + 2.0 * k).sqrt()
}

/// Channel by channel.
pub(crate) fn each(a: Rgb, b: Rgb, f: impl Fn(f32, f32) -> f32) -> Rgb {
    [f(a[0], b[0]), f(a[1], b[1]), f(a[2], b[2])]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn absorption_and_reflection_undo_one_another() {
        for k in 1..95 {
            let r = k as f32 / 100.0;
            assert!((reflected(absorbed(r)) - r).abs() < 2e-4, "{r}");
        }
    }
}
