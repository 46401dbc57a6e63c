//! The picture of a window.

use trade::Length;

use crate::asked::Asked;
use crate::calibrated::gains_of;
use crate::chance::smooth;
use crate::dye::Rgb;
use crate::far::far;
use crate::field::Frame;
use crate::light::{Light, Sun};
use crate::near::near;
use crate::scene::Scene;
use crate::tables::Tables;
use crate::wear::Wear;

/// What part of a view is looked at, and in how many pixels.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// Its middle, millimetres, x from the centre line, y up, as [`flat::LaidGarment`] has them.
    pub middle: geometry::Point,
    /// How much of the pair its width shows.
    pub width: Length,
    /// Pixels across.
    pub wide: u32,
    /// Pixels down.
    pub high: u32,
}

/// A picture, rows from the top, three bytes a pixel: sRGB red, green, blue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Pixels across.
    pub wide: u32,
    /// Pixels down.
    pub high: u32,
    /// The bytes.
    pub rgb: Vec<u8>,
}

/// Pictures larger than this each way are not made.
pub const MOST_PIXELS: u32 = 8192;

impl Window {
    pub(crate) fn frame(&self) -> Frame {
        let (wide, high) = (
            self.wide.clamp(1, MOST_PIXELS),
            self.high.clamp(1, MOST_PIXELS),
        );
        let width = self.width.to_mm();
        let width = if width.is_finite() {
            width.clamp(0.5, 5000.0)
        } else {
            100.0
        };
        let step = (width / f64::from(wide)) as f32;
        let finite = |v: f64| {
            if v.is_finite() {
                v.clamp(-10_000.0, 10_000.0) as f32
            } else {
                0.0
            }
        };
        Frame {
            left: finite(self.middle.x) - step * wide as f32 / 2.0,
            top: finite(self.middle.y) + step * high as f32 / 2.0,
            step,
            wide: wide as usize,
            high: high as usize,
        }
    }
}

const MOST_THREADS: usize = 64;

/// Up to so many millimetres a pixel every yarn is drawn, and from so many on cloth is seen from afar; between, both are mixed.
const NEAR_TO: f32 = 0.10;
const FAR_FROM: f32 = 0.25;

/// Draws a window of a scene; the same bytes on any number of threads.
pub fn picture(
    scene: &Scene,
    window: &Window,
    light: &Light,
    wear: Wear,
    threads: usize,
) -> Picture {
    let frame = window.frame();
    let asked = Asked {
        scene,
        sun: Sun::of(light),
        causes: wear.causes(),
        threads: threads.clamp(1, MOST_THREADS),
    };
    let from_afar = smooth((frame.step - NEAR_TO) / (FAR_FROM - NEAR_TO));
    let close = || near(&asked, &frame, &gains_of(scene, frame.step));
    let lit = if from_afar <= 0.0 {
        close()
    } else {
        let mut lit = far(&asked, &frame);
        if from_afar < 1.0 {
            for (a, b) in lit.iter_mut().zip(close()) {
                a.iter_mut()
                    .zip(b)
                    .for_each(|(a, b)| *a = b + (*a - b) * from_afar);
            }
        }
        lit
    };
    let tables = Tables::new();
    let tones = |pixel: &Rgb| pixel.map(|v| tables.tone(v));
    Picture {
        wide: frame.wide as u32,
        high: frame.high as u32,
        rgb: lit.iter().flat_map(tones).collect(),
    }
}
