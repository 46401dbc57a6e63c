//! Checks on the pixels of pictures, against what was stated or worked out apart from them.

mod cloth;
mod garment;
mod stitches;

use std::path::Path;

use geometry::Point;
use sewing::Garment;
use trade::{Colour, Length};

use crate::dye::Rgb;
use crate::light::Light;
use crate::picture::{Picture, Window, picture};
use crate::scene::Scene;
use crate::wear::Wear;

/// The demo, sewn in its base size.
fn ferryman() -> Garment {
    let style =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../style/demo/saltmarsh/styles/ferryman");
    match style::load(&style) {
        Ok(loaded) => sewing::make(&loaded.style, &loaded.collection, loaded.style.sizes.base),
        Err(report) => panic!("{report}"),
    }
}

fn window(x: f64, y: f64, step: f64, wide: u32, high: u32) -> Window {
    Window {
        middle: Point::new(x, y),
        width: Length::mm(step * f64::from(wide)),
        wide,
        high,
    }
}

fn seen(scene: &Scene, window: &Window, wear: Wear) -> Picture {
    picture(scene, window, &Light::default(), wear, 2)
}

impl Picture {
    fn pixel(&self, x: u32, y: u32) -> [f32; 3] {
        let at = ((y * self.wide + x) * 3) as usize;
        [0, 1, 2].map(|k| f32::from(self.rgb[at + k]))
    }

    /// Brightness of a pixel, 0 to 255.
    fn grey(&self, x: u32, y: u32) -> f32 {
        let [r, g, b] = self.pixel(x, y);
        0.3 * r + 0.6 * g + 0.1 * b
    }

    /// The colour an eye sees from so far that pixels run together: the mean of linear light.
    fn mean(&self) -> Colour {
        let mut sum = [0.0_f64; 3];
        for pixel in self.rgb.chunks_exact(3) {
            let lit: Rgb = crate::dye::linear(Colour::rgb(pixel[0], pixel[1], pixel[2]));
            sum.iter_mut()
                .zip(lit)
                .for_each(|(s, v)| *s += f64::from(v));
        }
        let tables = crate::tables::Tables::new();
        let count = f64::from(self.wide * self.high);
        let [r, g, b] = sum.map(|s| tables.tone((s / count) as f32));
        Colour::rgb(r, g, b)
    }
}
