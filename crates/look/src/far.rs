//! The far picture: cloth by its baked mean, relief and light at the size of a pixel, stitches by the share they cover.

use std::ops::Range;
use std::sync::OnceLock;

use crate::areas::{around, runs};
use crate::asked::Asked;
use crate::baked::Baked;
use crate::chance::{along, chance};
use crate::dye::Rgb;
use crate::field::{Frame, in_bands};
use crate::flats::OnFlat;
use crate::light::{Heights, Lit, SKY, Steps, Sun, leaves};
use crate::metal::shine;
use crate::place::Place;
use crate::relief::{Relief, TABLE};
use crate::scene::{Scene, Stuff};
use crate::sewing_yarn::Strand;
use crate::shading::TABLE_TONE;
use crate::tables::Tables;

/// How far round the relief is known, for its shade.
const ABOUT: f32 = 7.0;
/// Each pixel is looked at so often each way for which sheet is on top.
const FINER: usize = 3;

/// What a far picture is made with.
struct Far<'a> {
    asked: &'a Asked<'a>,
    scene: &'a Scene,
    relief: &'a Relief,
    pixels: Frame,
    rim: usize,
    baked: Vec<OnceLock<Baked>>,
    tables: Tables,
}

/// Linear light for each pixel of a frame.
pub(crate) fn far(asked: &Asked, pixels: &Frame) -> Vec<Rgb> {
    let rim = (ABOUT / pixels.step).ceil() as usize + 2;
    let frame = pixels.rimmed(rim);
    let relief = Relief::of(asked, frame);
    let far = Far {
        asked,
        scene: asked.scene,
        relief: &relief,
        pixels: *pixels,
        rim,
        baked: asked.scene.sheets.iter().map(|_| OnceLock::new()).collect(),
        tables: Tables::new(),
    };
    let body: Vec<f32> = relief.cells.iter().map(|c| c.body).collect();
    let mut out = vec![[0.0; 3]; pixels.wide * pixels.high];
    in_bands(asked.threads, &mut out, pixels.wide, |first, band| {
        far.band(&body, first, band);
    });
    out
}

/// The light at a pixel.
#[derive(Clone, Copy)]
struct At {
    slope: Place,
    direct: f32,
    seen: f32,
    sky: f32,
}

impl At {
    /// The light here against that of an open flat place.
    fn lit(&self) -> f32 {
        ((1.0 - SKY) * self.direct + SKY * self.sky).clamp(0.0, 1.8)
    }
}

impl Far<'_> {
    fn band(&self, body: &[f32], first: usize, band: &mut [Rgb]) {
        let (wide, frame) = (self.pixels.wide, self.relief.frame);
        let rows = band.len() / wide;
        let heights = Heights {
            z: body,
            wide: frame.wide,
            high: frame.high,
        };
        let steps = Steps::of(&self.asked.sun, frame.step, frame.step, ABOUT - 1.0);
        let tops = FineTops::of(self.scene, &self.pixels.part(first, rows));
        let mut lit = Lit::default();
        let mut lights = Vec::with_capacity(band.len());
        for row in 0..rows {
            let there = first + row + self.rim;
            lit.look(&heights, &steps, there);
            for column in 0..wide {
                let at = there * frame.wide + column + self.rim;
                let slope = [
                    (body[at + 1] - body[at - 1]) / (2.0 * frame.step),
                    (body[at - frame.wide] - body[at + frame.wide]) / (2.0 * frame.step),
                ];
                let seen = Sun::seen_over(lit.horizon[column + self.rim]);
                let direct = self.asked.sun.direct(slope[0], slope[1]) * seen;
                let here = At {
                    slope,
                    direct,
                    seen,
                    sky: lit.sky[column + self.rim],
                };
                lights.push(here);
                let place = [self.pixels.x(column), self.pixels.y(first + row)];
                band[row * wide + column] =
                    tops.mixed(row, column, |top| self.colour(top, at, &here, place));
            }
        }
        self.strands(first, band, &lights);
        self.metals(first, band, &lights);
    }

    /// The colour of one sheet at a place.
    fn colour(&self, top: u16, cell: usize, here: &At, [x, y]: Place) -> Rgb {
        match self.scene.sheets.get(top as usize).map(|s| &s.stuff) {
            None => leaves(here.direct, here.sky, TABLE_TONE),
            Some(Stuff::Flat(index)) => {
                let flat = &self.scene.flats[*index];
                let on = flat.at(x, y, false);
                let albedo = flat.albedo(
                    &OnFlat {
                        z: 0.0,
                        letter: on.letter,
                    },
                    x,
                    y,
                    self.asked.causes.age,
                );
                leaves(here.direct, here.sky, albedo)
            }
            Some(Stuff::Woven {
                cloth,
                reverse,
                warp,
                from,
            }) => {
                let baked = self.baked[top as usize].get_or_init(|| {
                    let look = &self.scene.cloths[*cloth];
                    let woven = look.woven.washed(self.asked.causes.rinsed);
                    let sun = self.asked.sun.turned(*warp);
                    Baked::of(
                        &woven,
                        &look.colour,
                        *reverse,
                        &sun,
                        &self.asked.causes,
                        self.pixels.step,
                    )
                });
                let known = &self.relief.cells[cell];
                let dose = self.asked.causes.dose * known.zone * (1.0 + self.relief.proud[cell]);
                let (dx, dy) = (x - from[0], y - from[1]);
                let (across, up) = (dx * warp[1] - dy * warp[0], dx * warp[0] + dy * warp[1]);
                let colour = baked.colour(across, up, dose);
                let light = here.lit()
                    * self
                        .tables
                        .fade(2.0 + 0.55 * baked.dyed * self.yarns(baked.pitch, across, up))
                    * E_SQUARED;
                colour.map(|c| c * light)
            }
        }
    }

    /// Yarns took up dye unevenly: the mean of those below the pixel.
    fn yarns(&self, pitch: f32, across: f32, up: f32) -> f32 {
        let count = ((self.pixels.step / pitch).round() as i32).clamp(1, 8);
        let first = (across / pitch).floor() as i32 - count / 2;
        let one = |i: i32| {
            let drift = along(up / 12.0 + i as f32 * 0.618_034, i, 4);
            0.35 * (chance(i, 9, 3) - 0.5) + 0.2 * drift
        };
        (0..count).map(|k| one(first.wrapping_add(k))).sum::<f32>() / count as f32
    }

    fn strands(&self, first: usize, band: &mut [Rgb], lights: &[At]) {
        let wide = self.pixels.wide;
        let part = self.pixels.part(first, band.len() / wide);
        let mut cover = vec![(0.0_f32, 0_usize); band.len()];
        let mut shade = vec![0.0_f32; band.len()];
        // Its shade falls away from the sun by half its thickness.
        let away = [
            -0.24 * self.asked.sun.towards[0],
            -0.24 * self.asked.sun.towards[1],
        ];
        for strand in &self.scene.strands {
            let radius = self.scene.yarns[strand.yarn].diameter / 2.0;
            let reach = radius + 1.5 * part.step + 0.3;
            let Some((columns, rows)) = around(&[strand.from, strand.to], reach, &part) else {
                continue;
            };
            for row in rows {
                for column in columns.clone() {
                    let cell =
                        (first + row + self.rim) * self.relief.frame.wide + column + self.rim;
                    let top = self.relief.cells[cell].top;
                    if top as usize >= strand.level {
                        continue;
                    }
                    let at = row * wide + column;
                    let place = [part.x(column), part.y(row)];
                    let on = covered(strand, place, radius, part.step);
                    if on > cover[at].0 {
                        cover[at] = (on, strand.yarn);
                    }
                    let behind = [place[0] - away[0], place[1] - away[1]];
                    shade[at] = shade[at].max(covered(strand, behind, radius, part.step));
                }
            }
        }
        for (at, pixel) in band.iter_mut().enumerate() {
            let dark = 1.0 - 0.5 * shade[at];
            let (on, yarn) = cover[at];
            let colour = self.thread(yarn, lights[at].lit());
            for (p, c) in pixel.iter_mut().zip(colour) {
                *p = *p * dark * (1.0 - on) + c * on;
            }
        }
    }

    fn thread(&self, yarn: usize, lit: f32) -> Rgb {
        let Some(yarn) = self.scene.yarns.get(yarn) else {
            return [0.0; 3];
        };
        let lost = 0.30
            * (self.asked.causes.loss + 0.8 * self.asked.causes.dose)
            * self.asked.causes.rinsed;
        yarn.faded(yarn.colour, self.tables.fade(lost))
            .map(|c| c * lit)
    }

    fn metals(&self, first: usize, band: &mut [Rgb], lights: &[At]) {
        let wide = self.pixels.wide;
        let part = self.pixels.part(first, band.len() / wide);
        for metal in &self.scene.metals {
            let Some((columns, rows)) = around(&[metal.at; 2], metal.radius + part.step, &part)
            else {
                continue;
            };
            for row in rows {
                for column in columns.clone() {
                    let cell =
                        (first + row + self.rim) * self.relief.frame.wide + column + self.rim;
                    let top = self.relief.cells[cell].top;
                    if top != TABLE && top as usize >= metal.level {
                        continue;
                    }
                    let place = [part.x(column), part.y(row)];
                    let (dx, dy) = (place[0] - metal.at[0], place[1] - metal.at[1]);
                    let d = (dx * dx + dy * dy).sqrt();
                    let on = ((metal.radius - d) / part.step + 0.5).clamp(0.0, 1.0);
                    let here = &lights[row * wide + column];
                    let shine = shine(
                        metal,
                        &self.asked.sun,
                        here.slope,
                        (here.seen, here.sky),
                        place,
                        self.asked.causes.age,
                    );
                    let pixel = &mut band[row * wide + column];
                    pixel
                        .iter_mut()
                        .zip(shine)
                        .for_each(|(p, s)| *p += (s - *p) * on);
                }
            }
        }
    }
}

/// `e` squared: the table of fading begins at nothing, and unevenness goes to both sides.
const E_SQUARED: f32 = 7.389_056;

/// How much of a pixel a strand covers. Its ends are in their holes.
fn covered(strand: &Strand, [x, y]: Place, radius: f32, pixel: f32) -> f32 {
    let (a, b) = (strand.from, strand.to);
    let (dx, dy) = (b[0] - a[0], b[1] - a[1]);
    let long = (dx * dx + dy * dy).sqrt().max(0.01);
    let (px, py) = (x - a[0], y - a[1]);
    let (s, v) = ((px * dx + py * dy) / long, (py * dx - px * dy) / long);
    let hidden = if strand.pulls { 0.27 } else { 0.0 };
    let lengthwise = ((s.min(long - s) - hidden) / pixel + 0.5).clamp(0.0, 1.0);
    let half = pixel / 2.0;
    let across = ((v + half).min(radius) - (v - half).max(-radius)).clamp(0.0, pixel) / pixel;
    lengthwise * across
}

/// The sheets on top within each pixel of a band.
struct FineTops {
    tops: Vec<u16>,
    wide: usize,
}

impl FineTops {
    fn of(scene: &Scene, band: &Frame) -> FineTops {
        let frame = Frame {
            step: band.step / FINER as f32,
            wide: band.wide * FINER,
            high: band.high * FINER,
            ..*band
        };
        let mut tops = vec![TABLE; frame.wide * frame.high];
        for (index, sheet) in scene.sheets.iter().enumerate() {
            if around(&sheet.outline, 0.0, &frame).is_none() {
                continue;
            }
            let clip = sheet.clip.map(|k| &scene.clips[k][..]);
            for (row, runs) in runs(&sheet.outline, clip, &frame).iter().enumerate() {
                for Range { start, end } in runs {
                    tops[row * frame.wide + start..row * frame.wide + end].fill(index as u16);
                }
            }
        }
        FineTops {
            tops,
            wide: frame.wide,
        }
    }

    /// The colours of all sheets within a pixel, each by its share.
    fn mixed(&self, row: usize, column: usize, colour: impl Fn(u16) -> Rgb) -> Rgb {
        let at = |k: usize| {
            self.tops[(row * FINER + k / FINER) * self.wide + column * FINER + k % FINER]
        };
        const ALL: usize = FINER * FINER;
        let first = at(0);
        if (1..ALL).all(|k| at(k) == first) {
            return colour(first);
        }
        let mut known: Option<(u16, Rgb)> = None;
        let mut sum = [0.0; 3];
        for k in 0..ALL {
            let top = at(k);
            let own = match known {
                Some((same, own)) if same == top => own,
                _ => colour(top),
            };
            known = Some((top, own));
            sum.iter_mut()
                .zip(own)
                .for_each(|(s, c)| *s += c / ALL as f32);
        }
        sum
    }
}
