//! The near picture: every yarn and every stitch as a height, lit sample by sample.

use crate::asked::Asked;
use crate::dye::Rgb;
use crate::field::{Frame, in_bands};
use crate::filling::{Filling, Tops, Woven};
use crate::fold::Fold;
use crate::hairs;
use crate::light::{Heights, Lit, Steps};
use crate::relief::Relief;
use crate::scene::Stuff;
use crate::shading::{Here, Kind, Sample, Shader, Soft};
use crate::weave::Face;
use crate::weave_tile::Tile;

/// Between samples of the relief at the least.
const RELIEF_STEP: f32 = 0.12;
/// How far the light looks round at the samples themselves, and at the relief.
const LOOKS_NEAR: f32 = 0.8;
const LOOKS_FAR: f32 = 7.0;
/// Pixels wider than this are looked at more than once.
const ONCE_TO: f32 = 0.045;

/// A near picture as it is made.
struct Near<'a> {
    asked: &'a Asked<'a>,
    pixels: Frame,
    /// How samples make pixels.
    fold: Fold,
    /// Samples about the picture, for its shade.
    rim: usize,
    fine: Frame,
}

/// Linear light for each pixel of a frame; `gains` bring each cloth's faces to their stated colours.
pub(crate) fn near(asked: &Asked, pixels: &Frame, gains: &[[Rgb; 2]]) -> Vec<Rgb> {
    let fold = if pixels.step > ONCE_TO {
        Fold::ThreeOverTwo
    } else {
        Fold::One
    };
    let step = pixels.step / fold.ratio();
    let rim = (LOOKS_NEAR / step).ceil() as usize + 2;
    let fine = Frame {
        left: pixels.left - rim as f32 * step,
        top: pixels.top + rim as f32 * step,
        step,
        wide: fold.samples(pixels.wide) + 2 * rim,
        high: fold.samples(pixels.high) + 2 * rim,
    };
    let near = Near {
        asked,
        pixels: *pixels,
        fold,
        rim,
        fine,
    };
    let relief = near.relief();
    let soft = near.soft(&relief);
    let samples = near.samples(&relief);
    let z: Vec<f32> = samples.iter().map(|s| s.z).collect();
    let plane = Plane {
        near: &near,
        soft,
        z: &z,
        shader: Shader::of(asked, gains),
        steps: Steps::of(&asked.sun, step, step, LOOKS_NEAR),
        samples: &samples,
    };
    let mut out = vec![[0.0; 3]; pixels.wide * pixels.high];
    in_bands(asked.threads, &mut out, pixels.wide, |first, band| {
        plane.light(first, band);
        if pixels.step < hairs::SEEN_TO {
            plane.hairs(first, band);
        }
    });
    out
}

/// All samples, ready to be lit.
struct Plane<'a> {
    near: &'a Near<'a>,
    soft: Field,
    z: &'a [f32],
    shader: Shader<'a>,
    steps: Steps,
    samples: &'a [Sample],
}

impl Plane<'_> {
    fn light(&self, first: usize, band: &mut [Rgb]) {
        let (near, fold) = (self.near, self.near.fold);
        let wide = near.pixels.wide;
        let heights = Heights {
            z: self.z,
            wide: near.fine.wide,
            high: near.fine.high,
        };
        let mut lit = Lit::default();
        let mut line = vec![[0.0; 3]; fold.samples(wide)];
        let rows = band.len() / wide;
        for sample in fold.first_of(first)..fold.first_of(first) + fold.samples(rows) {
            self.line(sample + near.rim, &heights, &mut lit, &mut line);
            for (row, down) in fold.shares(sample) {
                let Some(row) = row.checked_sub(first).filter(|r| *r < rows) else {
                    continue;
                };
                let into = &mut band[row * wide..(row + 1) * wide];
                for (n, light) in line.iter().enumerate() {
                    for (column, across) in fold.shares(n) {
                        if let Some(pixel) = into.get_mut(column) {
                            let share = down * across;
                            pixel
                                .iter_mut()
                                .zip(light)
                                .for_each(|(p, l)| *p += l * share);
                        }
                    }
                }
            }
        }
    }

    /// The light of one row of samples, without those about the picture.
    fn line(&self, at: usize, heights: &Heights, lit: &mut Lit, line: &mut [Rgb]) {
        let (fine, z) = (&self.near.fine, self.z);
        lit.look(heights, &self.steps, at);
        let around = self.soft.row(fine.y(at));
        let scale = 0.5 / fine.step;
        for (n, light) in line.iter_mut().enumerate() {
            let c = self.near.rim + n;
            let i = at * fine.wide + c;
            let place = [fine.x(c), fine.y(at)];
            let here = Here {
                slope: [
                    (z[i + 1] - z[i - 1]) * scale,
                    (z[i - fine.wide] - z[i + fine.wide]) * scale,
                ],
                horizon: lit.horizon[c],
                sky: lit.sky[c],
                soft: around.at(place[0]),
                place,
            };
            *light = self.shader.light(&self.samples[i], &here);
        }
    }

    /// Fibres over the cloth: what lies takes more light, what stands off has the colour of its yarn.
    fn hairs(&self, first: usize, band: &mut [Rgb]) {
        let near = self.near;
        let part = near.pixels.part(first, band.len() / near.pixels.wide);
        let cover = hairs::Cover::of(&part, near.asked.causes.hairs);
        for (k, pixel) in band.iter_mut().enumerate() {
            let (row, column) = (first + k / near.pixels.wide, k % near.pixels.wide);
            let (row, column) = (near.fold.middle_of(row), near.fold.middle_of(column));
            let at = (row + near.rim) * near.fine.wide + column + near.rim;
            let (lies, own) = match self.samples[at].kind {
                Kind::Warp | Kind::Weft => (0.55, self.shader.hair(&self.samples[at])),
                Kind::Thread { .. } => (0.3, self.shader.hair(&self.samples[at])),
                Kind::Table | Kind::Metal(_) | Kind::Flat => continue,
            };
            let loose = 0.30 * cover.loose[k];
            let lit = 1.0 + lies * cover.lying[k];
            for (p, own) in pixel.iter_mut().zip(own) {
                *p = *p * lit * (1.0 - loose) + own * loose;
            }
        }
    }
}

impl Near<'_> {
    fn relief(&self) -> Relief {
        let fine = &self.fine;
        let step = RELIEF_STEP.max(fine.step);
        let rim = LOOKS_FAR + 1.0;
        let left = ((fine.left - rim) / step).floor() * step;
        let top = ((fine.top + rim) / step).ceil() * step;
        let cells = |long: f32| ((long + 2.0 * rim) / step) as usize + 4;
        let frame = Frame {
            left,
            top,
            step,
            wide: cells(fine.wide as f32 * fine.step),
            high: cells(fine.high as f32 * fine.step),
        };
        Relief::of(self.asked, frame)
    }

    /// What changes slowly: how proud and how rubbed a place is, and the light that the relief leaves it.
    fn soft(&self, relief: &Relief) -> Field {
        let body: Vec<f32> = relief.cells.iter().map(|c| c.body).collect();
        let frame = relief.frame;
        let heights = Heights {
            z: &body,
            wide: frame.wide,
            high: frame.high,
        };
        let steps = Steps::of(&self.asked.sun, frame.step, LOOKS_NEAR, LOOKS_FAR);
        let mut values = vec![Soft::default(); relief.cells.len()];
        in_bands(
            self.asked.threads,
            &mut values,
            frame.wide,
            |first, band| {
                let mut lit = Lit::default();
                for (k, row) in band.chunks_mut(frame.wide).enumerate() {
                    lit.look(&heights, &steps, first + k);
                    for (c, value) in row.iter_mut().enumerate() {
                        let at = (first + k) * frame.wide + c;
                        *value = Soft {
                            proud: relief.proud[at],
                            zone: relief.cells[at].zone,
                            horizon: lit.horizon[c],
                            sky: lit.sky[c],
                        };
                    }
                }
            },
        );
        Field { frame, values }
    }

    /// A face of a cloth as samples so far apart ask it.
    fn woven(&self, cloth: usize, reverse: bool, step: f32) -> Woven {
        let woven = self.asked.scene.cloths[cloth]
            .woven
            .washed(self.asked.causes.rinsed);
        let face = Face::of(&woven, reverse, step);
        let used = self
            .asked
            .scene
            .sheets
            .iter()
            .any(|sheet| match sheet.stuff {
                Stuff::Woven {
                    cloth: c,
                    reverse: r,
                    ..
                } => (c, r) == (cloth, reverse),
                Stuff::Flat(_) => false,
            });
        let tile = (used && !face.fine).then(|| Tile::of(&Face::of(&woven.even(), reverse, step)));
        Woven { face, tile }
    }

    fn samples(&self, relief: &Relief) -> Vec<Sample> {
        let (fine, scene) = (&self.fine, self.asked.scene);
        let faces: Vec<[Woven; 2]> = (0..scene.cloths.len())
            .map(|cloth| [false, true].map(|reverse| self.woven(cloth, reverse, fine.step)))
            .collect();
        let blank = Sample::table(scene.table);
        let mut samples = vec![blank; fine.wide * fine.high];
        in_bands(
            self.asked.threads,
            &mut samples,
            fine.wide,
            |first, band| {
                let part = fine.part(first, band.len() / fine.wide);
                let tops = Tops::of(scene, &part);
                let mut work = Filling {
                    scene,
                    faces: &faces,
                    relief,
                    frame: part,
                    tops,
                    samples: band,
                };
                work.cloth();
                work.strands();
                work.metals();
            },
        );
        samples
    }
}

/// Slow values between their cells.
pub(crate) struct Field {
    frame: Frame,
    values: Vec<Soft>,
}

/// The same on one row.
pub(crate) struct FieldRow<'a> {
    frame: Frame,
    rows: [&'a [Soft]; 2],
    f: f32,
}

impl Field {
    fn row(&self, y: f32) -> FieldRow<'_> {
        let at = self
            .frame
            .row_of(y)
            .clamp(0.0, self.frame.high as f32 - 2.0);
        let r = at as usize;
        let row = |r: usize| &self.values[r * self.frame.wide..(r + 1) * self.frame.wide];
        FieldRow {
            frame: self.frame,
            rows: [row(r), row(r + 1)],
            f: at - r as f32,
        }
    }
}

impl FieldRow<'_> {
    fn at(&self, x: f32) -> Soft {
        let at = self
            .frame
            .column_of(x)
            .clamp(0.0, self.frame.wide as f32 - 2.0);
        let c = at as usize;
        let g = at - c as f32;
        let mix = |row: &[Soft]| row[c].mixed(&row[c + 1], g);
        mix(self.rows[0]).mixed(&mix(self.rows[1]), self.f)
    }
}
